//! Hole patterns of bought parts against how true holes are drilled.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::{Scene, Sheet};
use super::words;
use crate::design::Method;
use crate::dimensions::fasteners::{Fixing, allowed_error_mm, hole_for_error_mm};
use crate::dimensions::source::Source;
use crate::fastening::Screw;
use crate::panels::{Feature, Purpose};
use crate::solid::TOUCH_MM;

/// A washer covers a hole this much wider than its screw: it is about twice as wide as the screw (ISO 7089), and a
/// quarter of the screw's width is left to bear all around.
const WASHER_COVERS: f64 = 1.5;

/// Length of a part's hole pattern that stands for all, mm: drives' holes lie 76.6 apart (SFF-8201), a supply's 64 to
/// 138: one range of ISO 2768-1.
const PATTERN_MM: f64 = 76.6;

pub(super) const HOLE_PLAY: Rule = Rule {
    name: "hole-play",
    what: "Holes for the threads of a bought part forgive how far they stray.",
    source: Source::derived("ASME Y14.5", "fixed fastener: half of the hole's play, shared by both axes"),
    look: hole_play,
};

/// A hole whose screw goes into a thread that the maker cannot move.
struct Fixed<'a> {
    sheet: &'a Sheet<'a>,
    feature: &'a Feature,
    hole_mm: f64,
    screw_mm: f64,
    allows_mm: f64,
    strays_mm: f64,
}

/// The screw that goes through a hole.
fn screw_of<'a>(scene: &'a Scene, sheet: &Sheet, feature: &Feature) -> Option<&'a Screw> {
    scene.case.screws.iter().find(|screw| {
        screw.joins.iter().any(|id| id == sheet.id()) && {
            let (at, _) = sheet.panel.frame.to_panel(screw.head_at);
            (at - feature.centre).hypot2() < TOUCH_MM * TOUCH_MM
        }
    })
}

fn hole_play(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    for methods in [&[Method::Hand][..], &[Method::Router, Method::Laser]] {
        let mut tight: Vec<Fixed> = Vec::new();
        for sheet in scene.sheets.iter().filter(|sheet| methods.contains(&making.method(sheet.wall()))) {
            for shape in &sheet.shapes {
                let feature = shape.feature;
                // A standoff moves in its hole, and a bracket is marked from itself: only these cannot give way.
                if !matches!(feature.purpose, Purpose::DriveScrew | Purpose::SupplyScrew) {
                    continue;
                }
                let (Some(hole_mm), Some(screw)) = (feature.diameter_mm, screw_of(scene, sheet, feature)) else {
                    continue;
                };
                let allows_mm = allowed_error_mm(screw.diameter_mm, hole_mm, Fixing::Fixed);
                let strays_mm = making.place_accuracy_mm(sheet.wall(), PATTERN_MM).get();
                if strays_mm > allows_mm + TOUCH_MM {
                    tight.push(Fixed { sheet, feature, hole_mm, screw_mm: screw.diameter_mm, allows_mm, strays_mm });
                }
            }
        }
        // The one that misses most speaks for all.
        let worst = tight.iter().max_by(|a, b| (a.strays_mm - a.allows_mm).total_cmp(&(b.strays_mm - b.allows_mm)));
        let Some(worst) = worst else { continue };
        let would_do = hole_for_error_mm(worst.screw_mm, worst.strays_mm, Fixing::Fixed);
        let remedy = if would_do <= WASHER_COVERS * worst.screw_mm {
            format!(
                "Mark these holes from the part itself, or open the {} hole to {} under a washer.",
                words::limit(worst.hole_mm),
                words::at_least(would_do)
            )
        } else {
            "Mark these holes from the part itself, or drill one, fix the part by it and mark the others.".to_owned()
        };
        found.push(
            HOLE_PLAY
                .note(format!(
                    "Holes come out true to ±{}; {} of drives and supply forgive less, down to ±{}.",
                    words::limit(worst.strays_mm),
                    if tight.len() == 1 { "one".to_owned() } else { tight.len().to_string() },
                    words::limit(worst.allows_mm),
                ))
                .with_mm(worst.allows_mm, worst.strays_mm)
                .with_remedy(remedy)
                .with_about(tight.iter().map(|fixed| format!("{}/{}", fixed.sheet.id(), fixed.feature.id)))
                .with_at(worst.sheet.panel.frame.to_case(worst.feature.centre, 0.0)),
        );
    }
}
