//! Arrangements of usual designs.

use super::{Arrangement, arrange};
use crate::design::{Design, Spec, Wall};
use crate::fit::{Finding, Severity};
use crate::parts::PartKind;

fn design(changes: &[(&str, serde_json::Value)]) -> Spec {
    let mut design = Design::default();
    for (key, value) in changes {
        design.set_json(key, value).unwrap();
    }
    Spec::of(&design)
}

/// Pairs of parts that share space.
fn overlaps(arrangement: &Arrangement) -> Vec<(String, String)> {
    let mut out = Vec::new();
    for (index, a) in arrangement.parts.iter().enumerate() {
        for b in &arrangement.parts[index + 1..] {
            if a.bodies.iter().any(|x| b.bodies.iter().any(|y| x.overlaps(y))) {
                out.push((a.id.clone(), b.id.clone()));
            }
        }
    }
    out
}

/// Common practice says this can be built: Mini-ITX, 158 mm cooler, full-size supply 160 deep on end, two-slot card
/// of 267 mm, drive below the board, rear fan, every panel within A4 (ISO 216: 210 x 297).
#[test]
fn a_full_size_supply_a_tall_cooler_and_a_long_card_fit_into_panels_of_a4() {
    let arrangement = arrange(&design(&[("supply.depth", 160.into())]));
    assert_eq!(overlaps(&arrangement), []);
    for wall in Wall::ALL {
        let ([w, h], _) = arrangement.case.panel(wall);
        assert!(w.min(h) <= 210.0 && w.max(h) <= 297.0, "{wall:?} {w} x {h}");
    }
}

/// The rear wall's inside face is 12.27 behind hole row A-B-C (ATX 2.2, figure 4); the floor's top face is the
/// standoffs' length below the board.
#[test]
fn the_board_stands_at_its_published_distance_from_the_back_and_on_its_standoffs() {
    for (form, thickness) in [("mini-itx", 6.0), ("microatx", 3.2), ("atx", 9.0)] {
        let spec = design(&[
            ("board.form", form.into()),
            ("sheet.measured", thickness.into()),
            ("size.rule", "smallest".into()),
        ]);
        let arrangement = arrange(&spec);
        let inside_of_back = arrangement.case.outside_mm[1] - thickness;
        assert!((inside_of_back - arrangement.board.origin[1] - 12.27).abs() < 1e-9);
        assert!((arrangement.board.origin[2] - thickness - 25.0).abs() < 1e-9);
    }
}

#[test]
fn a_taller_cooler_makes_a_case_that_may_grow_higher_and_moves_nothing_else_of_the_board() {
    let size = |height: f64| {
        let rule = ("size.rule", "smallest".into());
        arrange(&design(&[("cooler.height", height.into()), ("fan1.size", "none".into()), rule])).case.outside_mm
    };
    let (low, high) = (size(160.0), size(175.0));
    assert!((high[2] - low[2] - 15.0).abs() < 1e-9);
    assert_eq!([low[0], low[1]], [high[0], high[1]]);
}

#[test]
fn a_given_size_is_kept_whatever_the_parts_need() {
    let spec = design(&[
        ("size.rule", "given".into()),
        ("size.width", 230.into()),
        ("size.depth", 310.5.into()),
        ("size.height", 190.into()),
    ]);
    assert_eq!(arrange(&spec).case.outside_mm, [230.0, 310.5, 190.0]);
}

#[test]
fn every_pose_of_the_supply_lays_its_face_on_its_wall() {
    for (pose, wall, extent) in [
        ("end-front", Wall::Floor, [150.0, 86.0, 140.0]),
        ("end-beside", Wall::Floor, [86.0, 150.0, 140.0]),
        ("back-flat", Wall::Back, [150.0, 140.0, 86.0]),
        ("back-tall", Wall::Back, [86.0, 140.0, 150.0]),
    ] {
        for turned in [false, true] {
            let arrangement = arrange(&design(&[
                ("supply.pose", pose.into()),
                ("supply.turned", turned.into()),
                ("supply.depth", 140.into()),
                ("size.rule", "smallest".into()),
            ]));
            let place = arrangement.supply.unwrap();
            assert_eq!(place.wall, wall);
            let body = arrangement.parts.iter().find(|part| part.kind == PartKind::Supply).unwrap().bounds();
            for (length, expected) in body.size().into_iter().zip(extent) {
                assert!((length - expected).abs() < 1e-9, "{pose} {turned}");
            }
            let inside = if wall == Wall::Floor { 6.0 } else { arrangement.case.outside_mm[1] - 6.0 };
            let axis = if wall == Wall::Floor { 2 } else { 1 };
            assert!((place.face.origin[axis] - inside).abs() < 1e-9);
            // u x v = out, or the hole pattern would be mirrored.
            let (u, v, out) = (place.face.u, place.face.v, place.face.out);
            let cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
            assert_eq!(cross.map(|value| value + 0.0), out.map(|value| value + 0.0));
        }
    }
}

#[test]
fn a_place_given_by_the_maker_is_where_the_part_goes() {
    let arrangement = arrange(&design(&[
        ("fan2.size", "80".into()),
        ("fan2.wall", "left".into()),
        ("fan2.across", 120.into()),
        ("fan2.up", 100.into()),
        ("size.rule", "smallest".into()),
    ]));
    let fan = arrangement.fans.iter().find(|fan| fan.number == 2).unwrap();
    assert!((fan.at.centre.x - 120.0).abs() < 1e-9 && (fan.at.centre.y - 100.0).abs() < 1e-9);
}

/// Board and supply side by side fill the case to the front: it grows by the room of the captive nut there (a leg of
/// 16 by default), and a shallow case still gets all its hardware.
#[test]
fn a_case_filled_to_the_front_keeps_room_for_the_captive_nut_of_the_front() {
    let spec = design(&[
        ("size.rule", "smallest".into()),
        ("card.kind", "none".into()),
        ("supply.pose", "end-beside".into()),
        ("drive2.kind", "3.5".into()),
        ("drive2.place", "floor".into()),
        ("fan2.size", "120".into()),
        ("fan2.wall", "front".into()),
    ]);
    let worked = crate::panels::work_out(&spec, &arrange(&spec));
    assert_eq!(worked.unplaced.iter().filter(|missing| missing.id == "captive-front").count(), 0);
}

/// Standoffs of 10 leave no room for a bracket of 20 under the board; beside the supply there is room for one.
#[test]
fn a_case_with_low_standoffs_keeps_room_for_a_bracket_between_floor_and_back() {
    let spec = design(&[
        ("size.rule", "smallest".into()),
        ("card.kind", "none".into()),
        ("board.standoff", 10.into()),
        ("supply.kind", "sfx".into()),
        ("drive1.kind", "none".into()),
    ]);
    let worked = crate::panels::work_out(&spec, &arrange(&spec));
    assert!(worked.hardware.iter().any(|part| part.id.starts_with("bracket-floor-back")));
}

/// A straight C13 plug needs 60 (trade sizes): feet of 40 do not leave it, so the inlet goes to the back; feet of 65 do.
#[test]
fn a_supply_left_to_the_tool_stands_on_its_inlet_only_over_feet_that_are_long_enough() {
    let wall = |feet: f64| {
        let spec = design(&[
            ("size.rule", "smallest".into()),
            ("supply.plug", "straight".into()),
            ("feet.height", feet.into()),
        ]);
        arrange(&spec).supply.unwrap().wall
    };
    assert_eq!((wall(40.0), wall(65.0)), (Wall::Back, Wall::Floor));
}

/// The back stands where the board needs it: a case grows to the front for a fan on the floor.
#[test]
fn a_fan_on_a_crowded_floor_stays_before_the_back() {
    let arrangement = arrange(&design(&[
        ("size.rule", "smallest".into()),
        ("board.form", "microatx".into()),
        ("card.kind", "none".into()),
        ("fan1.wall", "floor".into()),
    ]));
    let fan = arrangement.parts.iter().find(|part| part.id == "fan-1").unwrap().bounds();
    assert!(fan.min[1] >= 6.0 && fan.max[1] <= arrangement.case.outside_mm[1] - 6.0, "{fan:?}");
    assert_eq!(overlaps(&arrangement), []);
}

/// On low standoffs (6.35 mm are the least of ATX 2.2, section 3.4.2) no nut has room below the board: the feet stand
/// beside it, far enough apart, and a drive on the floor keeps out from under the board's leads.
#[test]
fn low_boards_leave_room_beside_them_for_feet_and_drives() {
    use crate::Build;
    use crate::fit::Severity;
    for form in ["mini-itx", "mini-dtx", "flexatx", "microatx", "atx"] {
        for (card, feet, pose) in [
            ("none", "bolts", "auto"),
            ("standard", "bolts", "end-front"),
            ("none", "spikes", "back-flat"),
            ("standard", "pads", "back-tall"),
            ("none", "bolts", "end-beside"),
        ] {
            for standoff in [6.35, 10.0, 12.0] {
                let mut design = Design::default();
                for (key, value) in [
                    ("size.rule", "smallest".into()),
                    ("board.form", form.into()),
                    ("board.standoff", standoff.into()),
                    ("card.kind", card.into()),
                    ("feet.kind", feet.into()),
                    ("supply.pose", pose.into()),
                    ("drive1.place", "floor".into()),
                ] {
                    let value: serde_json::Value = value;
                    design.set_json(key, &value).unwrap();
                }
                let build = Build::of(&design);
                let about = |finding: &&crate::fit::Finding| {
                    finding.severity == Severity::Blocks
                        && (["feet-base", "drive-under-board"].contains(&finding.rule)
                            || finding.about.iter().any(|id| id.contains("foot")))
                };
                let found: Vec<&str> =
                    build.findings.iter().filter(about).map(|finding| finding.text.as_str()).collect();
                assert!(found.is_empty(), "{form} {card} {feet} {pose} {standoff}: {found:?}");
            }
        }
    }
}

/// A pad below the floor is wider than the strip behind a bracket's screw: it must not take the last place from which
/// floor and back can be screwed together.
#[test]
fn pads_leave_the_brackets_of_a_low_board_their_screws() {
    for form in ["mini-itx", "dtx", "microatx"] {
        for standoff in [6.35, 10.0, 12.0] {
            let mut design = Design::default();
            for (key, value) in [
                ("size.rule", "smallest".into()),
                ("board.form", form.into()),
                ("board.standoff", standoff.into()),
                ("feet.kind", "pads".into()),
                ("supply.kind", "brick".into()),
            ] {
                let value: serde_json::Value = value;
                design.set_json(key, &value).unwrap();
            }
            let build = crate::Build::of(&design);
            let joined = build.parts.iter().any(|part| part.id.starts_with("bracket-floor-back"));
            assert!(joined, "{form} {standoff}");
        }
    }
}

/// Low pads, as they are sold to be stuck on, take no screw: nothing is drilled for them and nothing blocks. From the
/// height on at which an M4 of a sold length holds in them and stays inside, they are screwed: 12 is 12.35 at most, and
/// 6 of sheet, 0.8 of washer and 5.6 of pad less 1 left are as much.
#[test]
fn low_pads_are_stuck_on_and_higher_ones_screwed() {
    for (height, screwed) in [(2.0, false), (5.0, false), (6.5, false), (6.55, true), (8.0, true), (12.0, true)] {
        let mut design = Design::default();
        for (key, value) in [
            ("size.rule", serde_json::Value::from("smallest")),
            ("feet.kind", "pads".into()),
            ("feet.height", height.into()),
            ("supply.kind", "brick".into()),
            ("supply.jack_hole", 8.0.into()),
        ] {
            design.set_json(key, &value).unwrap();
        }
        let build = crate::Build::of(&design);
        assert!(!build.blocked(), "{height}: {:#?}", build.findings);
        let drilled = build.panels.iter().flat_map(|panel| &panel.features).any(|feature| feature.id == "foot-1");
        let lengths: Vec<_> = build
            .screws
            .iter()
            .filter(|screw| screw.id.starts_with("screw-foot"))
            .map(|screw| screw.length_mm)
            .collect();
        assert_eq!((drilled, lengths.len()), (screwed, if screwed { 4 } else { 0 }), "{height}");
        assert!(lengths.iter().all(Option::is_some), "{height}: {lengths:?}");
        let pads = if screwed { "Pad, screwed" } else { "Pad, stuck on" };
        assert!(build.fasteners.iter().any(|line| line.what == pads && line.count == 4), "{height}");
    }
}

fn build(choices: &str) -> crate::Build {
    crate::Build::of(&crate::design::read_file(choices).unwrap())
}

/// A case as small as its parts allow leaves the cables of a supply on end what the maker wants, and not a hair more.
#[test]
fn the_smallest_case_has_the_room_for_cables_that_was_asked_for() {
    let height = |cables: f64| {
        let build = build(&format!(
            r#"{{"size.rule":"smallest","supply.kind":"tfx","supply.pose":"end-front","supply.cable_room":{cables}}}"#
        ));
        assert!(build.findings.iter().all(|finding| finding.rule != "supply-cables"), "{cables}");
        build.size().outside_mm[2]
    };
    assert!((height(70.0) - height(50.0) - 20.0).abs() < 1e-9);
}

/// A fan whose best place is above a low cooler makes the case higher than its paper: it goes before the cooler, with
/// less air than it should have, for a case on its paper can be built.
#[test]
fn a_fan_has_rather_too_little_air_than_a_case_larger_than_its_paper() {
    let choices = r#""cooler.kind":"flat","cooler.height":55,"cooler.width":92,"cooler.depth":92,"cooler.under":0,
        "cooler.air":"down","card.kind":"none","supply.kind":"sfx""#;
    let on_paper = build(&format!("{{{choices}}}"));
    assert!(!on_paper.blocked(), "{:#?}", on_paper.findings);
    // Where nothing bounds the case the fan keeps its air.
    let free = build(&format!(r#"{{{choices},"size.rule":"smallest"}}"#));
    assert!(free.findings.iter().all(|finding| finding.rule != "fan-gap"), "{:#?}", free.findings);
}

/// ATX 2.2, figure 4: the connector opening starts 2.24 mm below the board; 2.49 mm below it are for its leads (section
/// 3.4.2), and 0.4 of air. Below a low board brackets of 20 find no place: blocks of 12 do from 14.89 on, of 5 from 7.89
/// on, and so forth. Where a shield clips in, 2.54 mm around its opening stay free.
#[test]
fn blocks_join_floor_and_back_below_a_board_too_low_for_brackets() {
    let of = |standoff: f64, opening: &str| {
        let build = build(&format!(
            r#"{{"size.rule":"smallest","board.form":"microatx","card.kind":"none","drive1.kind":"none",
            "feet.kind":"none","supply.kind":"brick","supply.jack_hole":8,"board.standoff":{standoff},
            "board.io_opening":"{opening}"}}"#
        ));
        // In the middle third of the corner, below the opening.
        let block = build.parts.iter().find(|part| part.id == "block-floor-back-3");
        let high = block.map_or(0.0, |part| part.bounds().size()[2]);
        let rule = "bracket-without-place";
        let missing = build.findings.into_iter().find(|found| found.rule == rule && found.severity != Severity::Note);
        (high, missing)
    };
    let open = [(7.88, 4.0), (7.9, 5.0), (12.88, 8.0), (12.9, 10.0), (14.88, 10.0), (14.9, 12.0), (25.0, 0.0)];
    for (standoff, high) in open {
        assert_eq!(of(standoff, "open"), (high, None), "{standoff}");
    }
    for (standoff, high) in [(7.9, 3.0), (9.75, 4.0), (9.8, 5.0), (12.75, 6.0), (12.8, 8.0)] {
        assert_eq!(of(standoff, "rebate"), (high, None), "{standoff}");
    }
}

/// Below a shield's border a strip of 3 finds room from 3 + 2.54 + 2.24 on: what is missing before says so.
#[test]
fn a_board_too_low_for_any_strip_says_how_high_it_must_be() {
    let mut design =
        crate::design::read_file(r#"{"size.rule":"smallest","board.io_opening":"rebate","board.standoff":6.35}"#)
            .unwrap();
    let missing = |design: &crate::design::Design| -> Vec<Finding> {
        let rule = |found: &Finding| found.rule == "bracket-without-place" && found.severity != Severity::Note;
        crate::Build::of(design).findings.into_iter().filter(rule).collect()
    };
    let before = missing(&design);
    assert_eq!(before.len(), 1, "{before:?}");
    let words = "Take standoffs of 7.8 mm or more, for blocks glued in, or take standoffs of 22.8 mm or more, ";
    assert!(before[0].remedy.starts_with(words), "{}", before[0].remedy);
    for mend in &before[0].mends {
        let mut changed = design.clone();
        mend.apply(&mut changed).unwrap();
        assert_eq!(missing(&changed), []);
    }
    design.set_json("board.standoff", &7.75.into()).unwrap();
    assert_eq!(missing(&design).len(), 1);
}

/// An M6 foot's hole of 7 wants its middle 14 from the edge of acrylic of 6 (two diameters); other sheet leaves it where the
/// maker put it.
#[test]
fn feet_stand_further_in_where_the_sheet_is_brittle() {
    let least = |material: &str| {
        let build = build(&format!(
            r#"{{"size.rule":"given","size.width":300,"size.depth":400,"size.height":320,"card.kind":"none",
            "supply.kind":"brick","supply.jack_hole":8,"sheet.material":"{material}","feet.inset":8}}"#
        ));
        let near = build.findings.iter().any(|found| found.rule == "hole-to-edge" && found.text.contains("foot"));
        let floor = build.panel(Wall::Floor).unwrap();
        let feet = floor.features.iter().filter(|feature| feature.id.starts_with("foot"));
        let edge = |at: kurbo::Point| {
            let [wide, deep] = floor.size_mm;
            at.x.min(at.y).min(wide - at.x).min(deep - at.y)
        };
        (feet.map(|feature| edge(feature.centre)).fold(f64::INFINITY, f64::min), near)
    };
    let (fibreboard, _) = least("fibreboard");
    assert!((fibreboard - 8.0).abs() < 1e-9, "fibreboard {fibreboard}");
    let (acrylic, near) = least("acrylic");
    assert!(acrylic >= 14.0 - 1e-9 && !near, "acrylic {acrylic}");
}
