//! Blade entries and saw reach against worked examples and against a search by points.

use super::*;
use crate::design::Design;
use crate::dimensions::source::Source;
use crate::panels::Purpose;

fn opening(contour: Contour) -> Feature {
    Feature {
        id: "a".to_owned(),
        kind: FeatureKind::Opening,
        purpose: Purpose::FanOpening,
        blind: None,
        centre: contour.bbox().center(),
        contour,
        diameter_mm: None,
        key: None,
        notch: false,
        why: "Made up.".to_owned(),
        about: Vec::new(),
        source: Source::common_practice("Test", "made up"),
    }
}

const ALL: [Edge; 4] = [Edge::Left, Edge::Right, Edge::Lower, Edge::Upper];

/// A fan opening of 116 mm in the middle of 350 x 300 mm: 208 mm from one long edge, 150 from both (worked by hand).
#[test]
fn a_fan_opening_in_the_middle_needs_a_deep_frame() {
    let circle = Contour::circle(175.0, 150.0, 58.0);
    let needed = |edges: &[Edge]| frame_needed_mm(&circle, [350.0, 300.0], edges);
    assert!((needed(&[Edge::Upper]) - 208.0).abs() < 1e-9);
    assert!((needed(&[Edge::Upper, Edge::Lower]) - 150.0).abs() < 1e-9);
    // From all four the deepest point lies where x = y on the circle: (325 - sqrt(2 r² - 25²)) / 2 = 123.44.
    let half = (2.0 * 58.0_f64 * 58.0 - 25.0 * 25.0).sqrt() / 2.0;
    assert!((needed(&ALL) - (162.5 - half)).abs() < 1e-9);
}

/// The exact depth is never less than at any of many points of the line, and some point comes as near as they lie.
#[test]
fn reach_agrees_with_a_search_by_points() {
    for (contour, size) in [
        (Contour::circle(175.0, 150.0, 58.0), [350.0, 300.0]),
        (Contour::rect(30.0, 40.0, 170.0, 260.0), [210.0, 297.0]),
        (Contour::rounded_rect(90.0, 20.0, 280.0, 190.0, 12.0), [300.0, 240.0]),
        (Contour::slot(20.0, 30.0, 120.0, 30.0, 6.0), [400.0, 200.0]),
    ] {
        for edges in [&ALL[..], &ALL[..2], &ALL[2..], &ALL[3..]] {
            let exact = frame_needed_mm(&contour, size, edges);
            let mut most: f64 = 0.0;
            for segment in contour.segments() {
                for index in 0..=2000 {
                    let share = f64::from(index) / 2000.0;
                    let at = match &segment {
                        Segment::Line { from, to } => from.lerp(*to, share),
                        Segment::Arc(arc) => arc.point_at(share),
                    };
                    let from = |edge: &Edge| match edge {
                        Edge::Left => at.x,
                        Edge::Right => size[0] - at.x,
                        Edge::Lower => at.y,
                        Edge::Upper => size[1] - at.y,
                    };
                    most = most.max(edges.iter().map(from).fold(f64::INFINITY, f64::min));
                }
            }
            assert!(exact >= most - 1e-9 && exact - most < 0.2, "{exact} {most}");
        }
    }
}

#[test]
fn every_tight_corner_gets_a_hole_inside_the_line_and_a_round_opening_one() {
    let rect = opening(Contour::rect(0.0, 0.0, 60.0, 40.0));
    let holes = blade_holes(&rect, 8.0);
    assert_eq!(holes.len(), 4);
    for hole in &holes {
        assert!(rect.contour.contains(hole.centre));
        let air = rect.contour.distance_to_point(hole.centre) - hole.diameter_mm / 2.0;
        assert!((BLADE_AIR_MM - 1e-9..BLADE_AIR_MM + 0.3).contains(&air), "{air}");
    }
    assert_eq!(blade_holes(&opening(Contour::circle(0.0, 0.0, 58.0)), 8.0).len(), 1);
    // A corner that the blade's own hole could have made is followed; a tighter one is not.
    assert_eq!(blade_holes(&opening(Contour::rounded_rect(0.0, 0.0, 60.0, 40.0, 4.0)), 8.0).len(), 1);
    assert_eq!(blade_holes(&opening(Contour::rounded_rect(0.0, 0.0, 60.0, 40.0, 3.9)), 8.0).len(), 4);
    // Too narrow for the saw chosen: a finer one.
    assert_eq!(blade_holes(&opening(Contour::rect(0.0, 0.0, 60.0, 6.0)), 12.0)[0].diameter_mm, 3.0);
    assert!(blade_holes(&Feature { notch: true, ..rect.clone() }, 8.0).is_empty());
}

#[test]
fn the_order_goes_from_the_inside_out_and_keeps_a_long_edge_to_the_last() {
    let build = crate::Build::of(&Design::default());
    for panel in &build.panels {
        let order = hand_order(panel);
        let notched: Vec<bool> = order.inside.iter().map(|index| panel.features[*index].notch).collect();
        assert!(notched.windows(2).all(|two| two[0] <= two[1]), "notches come last");
        let length = |edge: Edge| panel.size_mm[usize::from(matches!(edge, Edge::Left | Edge::Right))];
        assert!(order.edges.windows(2).all(|two| length(two[0]) <= length(two[1]) + 1e-9));
        let drilled: usize =
            drill_list(panel, &build.spec.making.hand).iter().map(|drill| drill.through + drill.blind).sum();
        let holes = panel.features.iter().filter(|feature| feature.kind == FeatureKind::Hole).count();
        assert!(drilled >= holes);
    }
}
