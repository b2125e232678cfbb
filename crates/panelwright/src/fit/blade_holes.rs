//! Openings too narrow for the hole that the maker's saw blade starts in.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::{Scene, Shape, Sheet};
use super::words;
use crate::cutting::{BLADE_AIR_MM, drill_chain, is_sawn};
use crate::design::Method;
use crate::dimensions::hand_work::{Saw, blade_hole};
use crate::dimensions::source::Source;
use crate::panels::FeatureKind;
use crate::solid::TOUCH_MM;

pub(super) const BLADE_HOLE: Rule = Rule {
    name: "blade-hole",
    what: "The blade of the saw that is used goes into every opening sawn by hand.",
    source: Source::common_practice("Workshop custom", "holes to start a blade"),
    look: blade_hole_small,
};

/// The widest hole that an opening takes for a blade, mm. Slots are drilled at their ends, as wide as they are;
/// elsewhere the hole keeps some air to the line.
fn takes(shape: &Shape) -> f64 {
    let slim = shape.bounds.width().min(shape.bounds.height());
    if shape.feature.kind == FeatureKind::Vent { slim } else { slim - 2.0 * BLADE_AIR_MM }
}

fn blade_hole_small(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    let entry = making.hand.entry_mm;
    let fret = blade_hole(Saw::Fret).get();
    let mut small: Vec<(&Sheet, &Shape, f64)> = Vec::new();
    for sheet in scene.sheets.iter().filter(|sheet| making.method(sheet.wall()) == Method::Hand) {
        let narrowest = sheet
            .shapes
            .iter()
            .filter(|shape| is_sawn(shape.feature) && !shape.feature.notch)
            // What no blade at all enters has a finding of its own.
            .filter(|shape| (fret - TOUCH_MM..entry - TOUCH_MM).contains(&takes(shape)))
            .filter(|shape| drill_chain(sheet.panel, shape.feature, &making.hand).is_empty())
            .min_by(|a, b| takes(a).total_cmp(&takes(b)));
        small.extend(narrowest.map(|shape| (sheet, shape, takes(shape))));
    }
    let Some((sheet, shape, hole)) = small.iter().min_by(|a, b| a.2.total_cmp(&b.2)) else { return };
    let panels: Vec<String> = small.iter().map(|(sheet, ..)| words::the_panel(sheet.wall()).to_owned()).collect();
    let wider = match shape.feature.kind {
        FeatureKind::Vent => format!("make the slots {} wide or more", words::at_least(entry)),
        _ => "make the opening wider".to_owned(),
    };
    found.push(
        BLADE_HOLE
            .note(format!(
                "Openings in {} take a hole of {} at most; your saw's blade wants {} to start in.",
                words::list(&panels),
                words::at_most(*hole),
                words::limit(entry)
            ))
            .with_mm(*hole, entry)
            .with_remedy(format!(
                "Take a saw with a finer blade there, such as a fret saw ({}), or {wider}.",
                words::limit(fret)
            ))
            .with_about(small.iter().map(|(sheet, shape, _)| format!("{}/{}", sheet.id(), shape.feature.id)))
            .with_at(sheet.panel.frame.to_case(shape.feature.centre, 0.0)),
    );
}
