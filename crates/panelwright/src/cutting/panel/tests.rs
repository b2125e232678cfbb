//! Panels of many designs, cut by every rule: what must hold of each.

use super::*;
use crate::cutting::offset::{Joins, offset};
use crate::cutting::relief::Relief;
use crate::cutting::tabs::TabRule;
use crate::design::Design;
use crate::{Build, sample};

const RULES: [CutRule; 5] = [
    CutRule::Nominal,
    CutRule::Laser { kerf_mm: 0.2 },
    CutRule::Router(RouterRule { cutter_mm: 3.175, relief: Some(Relief::Diagonal), compensated: false, tabs: None }),
    CutRule::Router(RouterRule {
        cutter_mm: 3.175,
        relief: Some(Relief::AlongEdge),
        compensated: true,
        tabs: Some(TabRule { count: 4, width_mm: 5.0, height_mm: 1.5, from_corner_mm: 15.0 }),
    }),
    CutRule::Router(RouterRule { cutter_mm: 6.0, relief: Some(Relief::Diagonal), compensated: true, tabs: None }),
];

#[test]
fn layers_are_named_by_what_they_hold_and_how_deep() {
    for (kind, blind, name) in [
        (FeatureKind::Hole, None, "holes"),
        (FeatureKind::Vent, None, "vents"),
        (FeatureKind::Opening, None, "openings"),
        (FeatureKind::Rebate, Some((2.0, Face::Outside)), "rebate-2.0mm"),
        (FeatureKind::Groove, Some((2.25, Face::Inside)), "groove-2.25mm-inside"),
        (FeatureKind::Counterbore, Some((3.5, Face::Outside)), "counterbore-3.5mm"),
    ] {
        assert_eq!(layer_name(kind, blind), name);
    }
}

#[test]
fn every_feature_is_cut_once_or_named_as_trouble() {
    for seed in 0..40 {
        let build = Build::of(&sample::design(seed, seed % 2 == 0));
        for panel in &build.panels {
            for rule in RULES {
                let cut = CutPanel::of(panel, rule);
                let mut left: Vec<&str> = panel
                    .features
                    .iter()
                    .filter(|feature| !(feature.notch && feature.blind.is_none()))
                    .map(|feature| feature.id.as_str())
                    .chain([OUTLINE])
                    .collect();
                for (_, cut) in cut.cuts() {
                    let place = left.iter().position(|id| *id == cut.of).expect("a feature, once");
                    left.swap_remove(place);
                    assert!(cut.contour.is_simple(), "{seed} {} {} {rule:?}", panel.id(), cut.of);
                    assert!(cut.contour.area() > 0.0);
                }
                // What is not cut is trouble, or the very same cut as another.
                for id in left {
                    let trouble = cut.problems.iter().any(|problem| problem.of == id);
                    let feature = panel.features.iter().find(|feature| feature.id == id).expect("no outline is lost");
                    let twin = panel.features.iter().any(|other| {
                        other.id != id
                            && (other.contour.bbox().center() - feature.contour.bbox().center()).hypot() < 1e-3
                    });
                    assert!(trouble || twin, "{seed} {} {id} {rule:?}", panel.id());
                }
                assert!(cut.problems.iter().all(|problem| problem.says().starts_with(&problem.of)));
            }
        }
    }
}

#[test]
fn the_nominal_panel_comes_back_from_its_beams_paths() {
    for seed in 0..30 {
        let build = Build::of(&sample::design(seed, false));
        for panel in &build.panels {
            let cut = CutPanel::of(panel, CutRule::Laser { kerf_mm: 0.2 });
            for (_, path) in cut.cuts() {
                let (nominal, back) = if path.of == OUTLINE {
                    (&panel.outline, -0.1)
                } else {
                    let feature = panel.features.iter().find(|feature| feature.id == path.of).unwrap();
                    (&feature.contour, 0.1)
                };
                let again = offset(&path.contour, back, Joins::Sharp).unwrap();
                assert!((again.area() - nominal.area()).abs() < 1e-3, "{} {}", panel.id(), path.of);
                for vertex in nominal.vertices() {
                    assert!(again.distance_to_point(vertex.at) < 1e-3, "{} {}", panel.id(), path.of);
                }
            }
        }
    }
}

#[test]
fn the_outline_is_last_and_what_does_not_go_through_first() {
    let build = Build::of(&Design::default());
    for panel in &build.panels {
        for rule in RULES {
            let cut = CutPanel::of(panel, rule);
            assert_eq!(cut.layers.last().unwrap().name, OUTLINE);
            let through: Vec<bool> =
                cut.layers.iter().filter(|layer| layer.usage != LayerUse::Mark).map(|layer| layer.through).collect();
            assert!(through.windows(2).all(|pair| pair[0] <= pair[1]), "{through:?}");
            for layer in &cut.layers {
                let sizes: Vec<f64> =
                    layer.cuts.iter().map(|c| c.contour.bbox().width() + c.contour.bbox().height()).collect();
                assert!(sizes.windows(2).all(|pair| pair[0] <= pair[1] + 0.02));
            }
        }
    }
}

#[test]
fn a_router_path_stays_a_radius_away_from_the_part() {
    let build = Build::of(&Design::default());
    for panel in &build.panels {
        let rule = RouterRule { cutter_mm: 3.175, relief: None, compensated: true, tabs: None };
        let cut = CutPanel::of(panel, CutRule::Router(rule));
        let mut checked = 0;
        for (layer, path) in cut.cuts().filter(|(layer, _)| layer.usage == LayerUse::Cut) {
            if path.of.starts_with("tongue-hollow") {
                // Open at the card window: there the cutter runs out.
                let hollow = panel.features.iter().find(|feature| feature.id == path.of).unwrap().contour.bbox();
                let area = path.contour.bbox();
                let [left, low] = [area.x0 - hollow.x0, area.y0 - hollow.y0];
                let [right, out] = [hollow.x1 - area.x1, area.y1 - hollow.y1];
                assert!(
                    [left, low, right, out].iter().all(|apart| (apart - 1.5875).abs() < 1e-4),
                    "{hollow:?} {area:?}"
                );
                checked += 1;
                continue;
            }
            let nominal = match path.of.as_str() {
                OUTLINE => &panel.outline,
                of => &panel.features.iter().find(|feature| feature.id == of).unwrap().contour,
            };
            let apart = path.contour.distance_to(nominal);
            assert!((apart - 1.5875).abs() < 1e-4, "{} {} {apart}", layer.name, path.of);
            checked += 1;
        }
        assert!(checked > 0);
    }
}

#[test]
fn tabs_keep_off_corners_and_mating_edges() {
    let rule = RouterRule { cutter_mm: 3.175, relief: None, compensated: true, tabs: Some(TabRule::default()) };
    for seed in 0..30 {
        let build = Build::of(&sample::design(seed, false));
        for panel in &build.panels {
            let cut = CutPanel::of(panel, CutRule::Router(rule));
            let marks = &cut.layers.iter().find(|layer| layer.name == "tabs-1.5mm").unwrap().lines;
            assert!((3..=5).contains(&marks.len()), "{seed} {} {}", panel.id(), marks.len());
            let told = cut.problems.iter().any(|problem| problem.what == Trouble::TabsOnMatingEdge);
            for mark in marks {
                for corner in panel.outline.vertices() {
                    assert!((mark[0].midpoint(mark[3]) - corner.at).hypot() > 15.0);
                }
                let bounds = panel.outline.bbox();
                for joint in panel.edges.iter().filter(|joint| joint.fixed() && !joint.runs_through) {
                    let off = match joint.edge {
                        crate::panels::Edge::Left => (mark[0].x - bounds.x0).abs(),
                        crate::panels::Edge::Right => (mark[0].x - bounds.x1).abs(),
                        crate::panels::Edge::Lower => (mark[0].y - bounds.y0).abs(),
                        crate::panels::Edge::Upper => (mark[0].y - bounds.y1).abs(),
                    };
                    assert!(told || off > 2.0, "{seed} {} {joint:?} {mark:?}", panel.id());
                }
            }
        }
    }
}

#[test]
fn a_panel_turned_and_moved_is_the_same_panel() {
    let build = Build::of(&Design::default());
    let cut = CutPanel::of(&build.panels[1], CutRule::Laser { kerf_mm: 0.2 });
    let placed = cut.placed(1, Vec2::new(500.0, 20.0));
    assert_eq!(placed.size_mm, [cut.size_mm[1], cut.size_mm[0]]);
    for ((_, before), (_, after)) in cut.cuts().zip(placed.cuts()) {
        assert!((before.contour.area() - after.contour.area()).abs() < 1e-6);
        let (old, new) = (before.contour.bbox().center(), after.contour.bbox().center());
        assert!((new - Point::new(500.0 - old.y, 20.0 + old.x)).hypot() < 1e-6);
    }
}

#[test]
fn trouble_is_told() {
    let build = Build::of(&Design::default());
    let blind = build.panels.iter().flat_map(|panel| &panel.features).filter(|f| f.blind.is_some()).count();
    let told = |rule| -> Vec<Trouble> {
        build.panels.iter().flat_map(|panel| CutPanel::of(panel, rule).problems).map(|problem| problem.what).collect()
    };
    let laser = told(CutRule::Laser { kerf_mm: 0.2 });
    assert_eq!(laser.iter().filter(|what| **what == Trouble::NoDepth).count(), blind);
    let rule = RouterRule { cutter_mm: 6.0, relief: None, compensated: false, tabs: None };
    let drills = told(CutRule::Router(rule)).iter().filter(|what| matches!(what, Trouble::Drill { .. })).count();
    let small =
        build.panels.iter().flat_map(|panel| &panel.features).filter(|f| f.diameter_mm.is_some_and(|d| d <= 6.0));
    assert_eq!(drills, small.count());
    // A beam as wide as a hole leaves none of it.
    let wide = told(CutRule::Laser { kerf_mm: 4.0 });
    assert!(wide.contains(&Trouble::Lost(Lost::Vanished)));
    assert!(told(CutRule::Nominal).is_empty());
}
