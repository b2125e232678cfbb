//! Drill chains: what a saw's frame does not reach is drilled out, hole beside hole, and filed to the line.
//!
//! ```text
//!     +--------------------+     line of the opening
//!     | o o o o o o o o o  |     holes inside it, a web between them that a chisel takes,
//!     | o               o  |     and sheet left to the line for the file
//! ```

use kurbo::Point;

use super::hand::{BladeHole, blade_holes, frame_needed_mm, is_sawn, slot_ends};
use super::offset::{Joins, offset};
use crate::design::HandSpec;
use crate::dimensions::hand_work::{CHAIN_WEB, SANDING_ALLOWANCE};
use crate::drawing::{Contour, Segment};
use crate::panels::{Edge, Feature, FeatureKind, Panel};
use crate::solid::TOUCH_MM;

/// The frame goes around an edge of the bare panel; before assembly all four are free.
pub const FRAME_EDGES: [Edge; 4] = [Edge::Left, Edge::Right, Edge::Lower, Edge::Upper];

/// Whether a line lies deeper inside the panel than the saw's frame reaches.
#[must_use]
pub fn is_out_of_reach(panel: &Panel, feature: &Feature, hand: &HandSpec) -> bool {
    is_sawn(feature) && frame_needed_mm(&feature.contour, panel.size_mm, &FRAME_EDGES) > hand.frame_mm + TOUCH_MM
}

/// The chain of an opening or slot that the saw does not reach, when the maker wants chains; empty otherwise, and for
/// what is too narrow for the drill.
#[must_use]
pub fn drill_chain(panel: &Panel, feature: &Feature, hand: &HandSpec) -> Vec<BladeHole> {
    let Some(drill_mm) = hand.chain_mm else { return Vec::new() };
    if feature.notch || !is_out_of_reach(panel, feature, hand) {
        return Vec::new();
    }
    if feature.kind == FeatureKind::Vent {
        return slot_chain(feature);
    }
    let inset = drill_mm / 2.0 + SANDING_ALLOWANCE.get()[1];
    let Ok(path) = offset(&feature.contour, -inset, Joins::Round) else { return Vec::new() };
    let count = f64::floor(path.length_mm() / (drill_mm + CHAIN_WEB.get())).max(1.0) as usize;
    along(&path, count).into_iter().map(|centre| BladeHole { centre, diameter_mm: drill_mm }).collect()
}

/// What is drilled in an opening before it is cut out by hand: its chain, or the holes that pass the blade.
#[must_use]
pub fn opening_holes(panel: &Panel, feature: &Feature, hand: &HandSpec) -> Vec<BladeHole> {
    let chain = drill_chain(panel, feature, hand);
    if chain.is_empty() { blade_holes(feature, hand.entry_mm) } else { chain }
}

/// A slot is as wide as its drill: holes from one round end to the other.
fn slot_chain(feature: &Feature) -> Vec<BladeHole> {
    let bounds = feature.contour.bbox();
    let diameter_mm = bounds.width().min(bounds.height());
    let ends = slot_ends(feature);
    let [first, last] = ends[..] else { return Vec::new() };
    let gaps = f64::floor((last - first).hypot() / (diameter_mm + CHAIN_WEB.get())).max(1.0);
    (0..=gaps as usize).map(|index| BladeHole { centre: first.lerp(last, index as f64 / gaps), diameter_mm }).collect()
}

/// So many points, evenly along a contour.
fn along(contour: &Contour, count: usize) -> Vec<Point> {
    let step = contour.length_mm() / count as f64;
    let mut points = Vec::with_capacity(count);
    let mut before = 0.0;
    for segment in contour.segments() {
        let length = segment.length_mm();
        while points.len() < count && step * points.len() as f64 <= before + length {
            let share = if length > 0.0 { (step * points.len() as f64 - before) / length } else { 0.0 };
            points.push(match &segment {
                Segment::Line { from, to } => from.lerp(*to, share),
                Segment::Arc(arc) => arc.point_at(share),
            });
        }
        before += length;
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::design::Design;

    fn panel_with(contour: Contour, kind: FeatureKind) -> Panel {
        let build = Build::of(&Design::default());
        let mut panel = build.panels[0].clone();
        panel.size_mm = [400.0, 400.0];
        let pattern = panel.features[0].clone();
        panel.features = vec![Feature {
            kind,
            blind: None,
            centre: contour.bbox().center(),
            contour,
            diameter_mm: None,
            key: None,
            notch: false,
            ..pattern
        }];
        panel
    }

    const HAND: HandSpec =
        HandSpec { entry_mm: 8.0, frame_mm: 127.0, kerf_mm: 1.0, marking: false, chain_mm: Some(5.0) };

    #[test]
    fn a_chain_stays_inside_its_line_and_its_holes_apart() {
        for contour in [
            Contour::rounded_rect(150.0, 150.0, 250.0, 230.0, 3.0),
            Contour::circle(200.0, 200.0, 58.0),
            Contour::rect(180.0, 180.0, 220.0, 190.0),
        ] {
            let panel = panel_with(contour.clone(), FeatureKind::Opening);
            let chain = drill_chain(&panel, &panel.features[0], &HAND);
            assert!(chain.len() > 5);
            for (index, hole) in chain.iter().enumerate() {
                assert!(contour.contains(hole.centre));
                assert!((contour.distance_to_point(hole.centre) - 3.0).abs() < 1e-4);
                // Along a corner the chord is shorter than the way: still no hole runs into its neighbour's middle.
                let next = &chain[(index + 1) % chain.len()];
                let apart = (next.centre - hole.centre).hypot();
                assert!(apart > 3.5 && apart < 7.5, "{apart}");
            }
        }
    }

    #[test]
    fn only_what_the_frame_does_not_reach_gets_one_and_only_when_wanted() {
        let near = panel_with(Contour::rect(20.0, 20.0, 60.0, 60.0), FeatureKind::Opening);
        assert!(drill_chain(&near, &near.features[0], &HAND).is_empty());
        assert_eq!(opening_holes(&near, &near.features[0], &HAND)[0].diameter_mm, 8.0);
        let far = panel_with(Contour::rect(180.0, 180.0, 220.0, 220.0), FeatureKind::Opening);
        assert!(!drill_chain(&far, &far.features[0], &HAND).is_empty());
        assert!(drill_chain(&far, &far.features[0], &HandSpec { chain_mm: None, ..HAND }).is_empty());
        let slim = panel_with(Contour::rect(180.0, 180.0, 220.0, 185.9), FeatureKind::Opening);
        assert!(drill_chain(&slim, &slim.features[0], &HAND).is_empty(), "too narrow for the drill");
    }

    #[test]
    fn a_slot_is_drilled_from_end_to_end_by_a_drill_as_wide() {
        let panel = panel_with(Contour::slot(180.0, 200.0, 220.0, 200.0, 6.0), FeatureKind::Vent);
        let chain = drill_chain(&panel, &panel.features[0], &HAND);
        // 40 mm from centre to centre: six gaps of 6.67, a web of 0.67 each.
        assert_eq!(chain.len(), 7);
        assert!(chain.iter().all(|hole| (hole.diameter_mm - 6.0).abs() < 1e-9 && (hole.centre.y - 200.0).abs() < 1e-9));
        assert!((chain[0].centre.x - 180.0).abs() < 1e-9 && (chain[6].centre.x - 220.0).abs() < 1e-9);
    }
}
