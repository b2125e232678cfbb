//! Work by hand: whether the saw reaches what it has to cut.

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::cutting::{BLADE_AIR_MM, FRAME_EDGES, drill_chain, frame_needed_mm, is_out_of_reach, is_sawn};
use crate::design::Method;
use crate::dimensions::hand_work::{Saw, blade_hole, throat};
use crate::dimensions::source::Source;
use crate::panels::{Feature, FeatureKind};
use crate::solid::TOUCH_MM;
use crate::sorting::sort_by;

pub(super) const SAW_REACH: Rule = Rule {
    name: "saw-reach",
    what: "The saw's frame reaches every line that is sawn by hand, from one outside edge of the panel or another.",
    source: Source::derived(
        "Geometry of the design",
        "distance of each line from the nearest of the four outside edges; depth of the frame",
    ),
    look: saw_reach,
};

pub(super) const BLADE_ENTRY: Rule = Rule {
    name: "blade-entry",
    what: "Every opening sawn by hand passes a blade, and is wider than the saw's cut.",
    source: Source::derived(
        "Geometry of the design",
        "width of each opening; smallest hole for a blade; width of the cut",
    ),
    look: blade_entry,
};

fn saw_reach(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    let frame = making.hand.frame_mm;
    for sheet in scene.sheets.iter().filter(|sheet| making.method(sheet.wall()) == Method::Hand) {
        let mut far: Vec<(&Feature, f64)> = sheet
            .panel
            .features
            .iter()
            .filter(|feature| is_out_of_reach(sheet.panel, feature, &making.hand))
            .map(|feature| (feature, frame_needed_mm(&feature.contour, sheet.panel.size_mm, &FRAME_EDGES)))
            .collect();
        sort_by(&mut far, |a, b| b.1.total_cmp(&a.1));
        let Some((worst, needed)) = far.first() else { continue };
        let lines = if far.len() == 1 { "An opening".to_owned() } else { format!("{} openings", far.len()) };
        let verb = if far.len() == 1 { "lies" } else { "lie" };
        let fret = throat(Saw::Fret).map_or(0.0, |sourced| sourced.get());
        let saw = if *needed <= fret { "a fret saw" } else { "a saw" };
        let chained = far.iter().all(|(feature, _)| !drill_chain(sheet.panel, feature, &making.hand).is_empty());
        let (severity, remedy) = if chained {
            (
                Severity::Note,
                "Drill the chains that the template shows, break the waste out and file to the line.".to_owned(),
            )
        } else {
            let remedy = format!(
                "Take {saw} with a frame of {} or a jigsaw, choose drill chains under Making, or make the opening smaller.",
                words::at_least(*needed)
            );
            (Severity::Caution, remedy)
        };
        let ids = far.iter().map(|(feature, _)| format!("{}/{}", sheet.id(), feature.id));
        found.push(
            SAW_REACH
                .finds(
                    severity,
                    format!(
                        "{lines} in {} {verb} up to {} inside the nearest of its four outside edges; the saw's frame reaches {}.",
                        words::the_panel(sheet.wall()),
                        words::at_least(*needed),
                        words::limit(frame)
                    ),
                )
                .with_mm(frame, *needed)
                .with_remedy(remedy)
                .with_about(std::iter::once(sheet.id().to_owned()).chain(ids))
                .with_at(sheet.panel.frame.to_case(worst.centre, 0.0)),
        );
    }
}

fn blade_entry(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    let finest = blade_hole(Saw::Fret).get() + 2.0 * BLADE_AIR_MM;
    for sheet in scene.sheets.iter().filter(|sheet| making.method(sheet.wall()) == Method::Hand) {
        for shape in sheet.shapes.iter().filter(|shape| is_sawn(shape.feature) && !shape.feature.notch) {
            let slim = shape.bounds.width().min(shape.bounds.height());
            // A slot's round ends are drilled as wide as it is; elsewhere a hole of its own passes the blade.
            let kerf = making.hand.kerf_mm;
            let by_saw = shape.feature.kind == FeatureKind::Vent || kerf > finest;
            let (needed, what, source) = if by_saw {
                (kerf, "the saw's cut", BLADE_ENTRY.source)
            } else {
                (finest, "the hole that passes a fret saw's blade", blade_hole(Saw::Fret).source())
            };
            if slim >= needed - TOUCH_MM {
                continue;
            }
            found.push(
                BLADE_ENTRY
                    .caution(format!(
                        "An opening in {} is {} wide: {what} asks for {}.",
                        words::the_panel(sheet.wall()),
                        words::short(slim),
                        words::limit(needed)
                    ))
                    .with_mm(slim, needed)
                    .with_remedy("Make it wider, drill it out and file it, or choose a machine for that panel.")
                    .with_about([sheet.id().to_owned(), format!("{}/{}", sheet.id(), shape.feature.id)])
                    .with_at(sheet.panel.frame.to_case(shape.feature.centre, 0.0))
                    .with_source(source),
            );
            // One of a kind is enough: vents are alike.
            break;
        }
    }
}
