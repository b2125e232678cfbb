//! What is told of changes: nothing where nothing changes, and never too little.

use kurbo::{Point, Vec2};
use proptest::prelude::*;

use super::*;
use crate::design::Design;
use crate::drawing::Contour;
use crate::panels::{FeatureKind, Panel};
use crate::sample;

fn verdict(recut: &Recut, wall: Wall) -> Verdict {
    recut.panels.iter().find(|panel| panel.panel == wall.name()).unwrap().verdict
}

/// The same feature elsewhere.
fn moved(panel: &Panel, index: usize, by: Vec2) -> Panel {
    let mut panel = panel.clone();
    let feature = &mut panel.features[index];
    feature.contour = feature.contour.translate(by);
    feature.centre += by;
    panel
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, ..ProptestConfig::default() })]

    #[test]
    fn a_design_against_itself_changes_nothing(seed in 0_u64..100_000) {
        let build = Build::of(&sample::design(seed, seed % 2 == 0));
        prop_assert!(compare(&build, &build).nothing());
    }

    #[test]
    fn whatever_hole_moves_too_far_is_told_and_what_stays_is_not(
        seed in 0_u64..100_000, pick in 0.0..1.0_f64, angle in 0.0..core::f64::consts::TAU, far in 0.0501..3.0_f64,
    ) {
        let build = Build::of(&sample::design(seed, false));
        let way = Vec2::new(libm::cos(angle), libm::sin(angle));
        for panel in build.panels.iter().filter(|panel| panel.features.iter().any(|feature| !feature.notch)) {
            let inner: Vec<usize> =
                (0..panel.features.len()).filter(|index| !panel.features[*index].notch).collect();
            let index = inner[(pick * inner.len() as f64) as usize];
            let after = super::panel::compare(panel, &moved(panel, index, way * far));
            prop_assert_ne!(after.verdict, Verdict::Unchanged);
            let after = super::panel::compare(panel, &moved(panel, index, way * 0.0499));
            prop_assert_eq!(after.verdict, Verdict::Unchanged);
        }
    }
}

#[test]
fn a_hole_more_is_drilled_and_one_less_is_a_new_panel() {
    let build = Build::of(&Design::default());
    let floor = build.panel(Wall::Floor).unwrap();
    let index = floor.features.iter().position(|feature| feature.kind == FeatureKind::Hole).unwrap();
    let mut without = floor.clone();
    let gone = without.features.remove(index);
    let more = super::panel::compare(&without, floor);
    assert_eq!((more.verdict, more.added.len()), (Verdict::DrillMore, 1));
    assert_eq!(more.added[0].id, gone.id);
    assert_eq!(more.added[0].centre_mm, [gone.centre.x, gone.centre.y]);
    assert!(more.why[0].starts_with("Drill"), "{:?}", more.why);
    let less = super::panel::compare(floor, &without);
    assert_eq!(less.verdict, Verdict::Recut);
    assert!(less.why[0].contains("no longer wanted"), "{:?}", less.why);
}

#[test]
fn a_hole_is_enlarged_but_never_made_smaller() {
    let build = Build::of(&Design::default());
    let floor = build.panel(Wall::Floor).unwrap();
    let index = floor.features.iter().position(|feature| feature.kind == FeatureKind::Hole).unwrap();
    let mut larger = floor.clone();
    let hole = &mut larger.features[index];
    hole.diameter_mm = hole.diameter_mm.map(|diameter| diameter + 1.0);
    hole.contour = Contour::circle(hole.centre.x, hole.centre.y, hole.diameter_mm.unwrap() / 2.0);
    let change = super::panel::compare(floor, &larger);
    assert_eq!(change.verdict, Verdict::DrillMore);
    assert!(change.added[0].enlarges);
    assert_eq!(super::panel::compare(&larger, floor).verdict, Verdict::Recut);
}

#[test]
fn a_smaller_panel_is_trimmed_at_the_edge_its_holes_ask_for() {
    let plain = |width: f64, hole: f64| {
        let build = Build::of(&Design::default());
        let mut panel = build.panel(Wall::Front).unwrap().clone();
        panel.size_mm = [width, 100.0];
        panel.outline = Contour::rect(0.0, 0.0, width, 100.0);
        let mut one =
            build.panel(Wall::Floor).unwrap().features.iter().find(|feature| feature.key.is_some()).unwrap().clone();
        one.centre = Point::new(hole, 50.0);
        one.contour = Contour::circle(hole, 50.0, one.diameter_mm.unwrap() / 2.0);
        panel.features = vec![one];
        panel
    };
    for (new_hole, edges) in
        [(50.0, vec![("right", 10.0)]), (40.0, vec![("left", 10.0)]), (46.0, vec![("left", 4.0), ("right", 6.0)])]
    {
        let change = super::panel::compare(&plain(200.0, 50.0), &plain(190.0, new_hole));
        assert_eq!(change.verdict, Verdict::Trim, "{:?}", change.why);
        let trims: Vec<(&str, f64)> = change.trims.iter().map(|trim| (trim.edge, trim.by_mm)).collect();
        assert_eq!(trims, edges);
    }
    // A hole that moved against every edge, and a panel that grew.
    assert_eq!(super::panel::compare(&plain(200.0, 50.0), &plain(190.0, 60.0)).verdict, Verdict::Recut);
    let grown = super::panel::compare(&plain(190.0, 50.0), &plain(200.0, 50.0));
    assert_eq!(grown.verdict, Verdict::Recut);
    assert!(grown.why.iter().any(|why| why.contains("10 mm further")), "{:?}", grown.why);
}

#[test]
fn another_material_is_a_new_panel_and_another_film_a_new_cover() {
    let old = Build::of(&Design::default());
    let with = |key: &str, value: serde_json::Value| {
        let mut design = Design::default();
        design.set_json(key, &value).unwrap();
        compare(&old, &Build::of(&design))
    };
    let plywood = with("sheet.material", "plywood".into());
    for change in &plywood.panels {
        assert_eq!(change.verdict, Verdict::Recut);
        let name = old.spec.sheet.material.name();
        assert!(change.why[0].ends_with(&format!("instead of {name}.")), "{:?}", change.why);
    }
    assert!(plywood.cover.is_empty());
    for (key, words) in [
        ("sheet.film_out", "Film outside: 0.25 mm"),
        ("sheet.film_in", "Film inside: 0.25 mm"),
        ("sheet.paint_out", "Paint outside: 0.25 mm"),
        ("sheet.paint_in", "Paint inside: 0.25 mm"),
        ("sheet.paint_edges", "Paint on cut edges: 0.25 mm"),
    ] {
        let change = with(key, 0.25.into());
        assert!(!change.nothing());
        assert!(change.cover.len() == 1 && change.cover[0].starts_with(words), "{:?}", change.cover);
        assert!(report(&change).contains(words) && change.json().contains(words));
    }
}

#[test]
fn a_deeper_recess_is_deepened() {
    let build = Build::of(&Design::default());
    let floor = build.panel(Wall::Floor).unwrap();
    let mut shallow = floor.clone();
    let index = floor.features.iter().position(|feature| feature.diameter_mm.is_some()).unwrap();
    let mut deep = floor.clone();
    shallow.features[index].blind = Some((3.0, crate::panels::Face::Inside));
    deep.features[index].blind = Some((3.2, crate::panels::Face::Inside));
    let change = super::panel::compare(&shallow, &deep);
    assert_eq!(change.verdict, Verdict::DrillMore);
    assert!(change.added[0].deepens && change.added[0].depth_mm == Some(3.2));
    assert!(change.why[0].starts_with("Deepen") && change.why[0].contains(", 3.2 mm deep at"), "{:?}", change.why);
    let back = super::panel::compare(&deep, &shallow);
    assert_eq!(back.verdict, Verdict::Recut);
    assert!(back.why[0].contains(", 3 mm deep instead of Ø"), "{:?}", back.why);
}

#[test]
fn a_smaller_panel_whose_holes_moved_says_its_size() {
    let mut lower = Design::default();
    lower.set_json("cooler.height", &100.into()).unwrap();
    let mut higher = Design::default();
    higher.set_json("cooler.height", &170.into()).unwrap();
    let [lower, higher] = [lower, higher].map(|design| Build::of(&design));
    let (before, after) = (higher.panel(Wall::Left).unwrap().size_mm, lower.panel(Wall::Left).unwrap().size_mm);
    assert!(after[1] < before[1]);
    let change = compare(&higher, &lower).panels.into_iter().find(|change| change.panel == "left").unwrap();
    assert_eq!(change.verdict, Verdict::Recut);
    assert!(change.why[0].starts_with("It measures "), "{:?}", change.why);
}

#[test]
fn another_fit_of_the_screw_holes_leaves_the_opening_beside_them() {
    let opening = |fit: &str| {
        let mut design = Design::default();
        design.set_json("hardware.fit", &fit.into()).unwrap();
        let build = Build::of(&design);
        let features = build.panels.iter().flat_map(|panel| panel.features.clone());
        features.into_iter().find(|feature| feature.id == "supply-opening").unwrap().contour
    };
    assert_eq!(opening("medium"), opening("coarse"));
    assert_eq!(opening("medium"), opening("fine"));
}

#[test]
fn another_sheet_or_another_fan_is_told() {
    let old = Build::of(&Design::default());
    let mut design = Design::default();
    design.set_json("sheet.measured", &5.8.into()).unwrap();
    let thinner = compare(&old, &Build::of(&design));
    assert!(thinner.panels.iter().all(|panel| panel.verdict == Verdict::Recut));
    let mut design = Design::default();
    design.set_json("feet.kind", &"none".into()).unwrap();
    let other = Build::of(&design);
    let more = compare(&other, &old);
    assert_eq!(verdict(&more, Wall::Floor), Verdict::Recut, "its brackets stand elsewhere");
    assert!(more.fasteners.iter().any(|change| change.old == 0 && change.new > 0));
    assert!(!report(&more).is_empty() && more.json().contains("\"recut\""));
    for change in &more.panels {
        assert!(overlay_svg(&other, &old, change).is_some_and(|text| text.contains("<svg")));
    }
}
