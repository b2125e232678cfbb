//! Expected places worked out by hand from the published figures, not from this program's tables.
//!
//! The case: Mini-ITX, 222 x 297 x 210 outside, gap 0.5, hole C at x = 46. With sheet t the floor's frame is
//! u = 222 - t - 0.5 - x, v = y - t - 0.5; the back's is u = 222 - t - 0.5 - x, v = z; hole C lies 12.27 before the
//! back's inside face (ATX 2.2, figure 4) and the standoff's length above the floor.

mod finish;
mod hardware;
mod joints;
mod lane;
mod random;
mod vents;

use kurbo::Point;
use serde_json::{Value, json};

use super::*;
use crate::arrangement::arrange;
use crate::design::Design;
use crate::design::Wall;

pub(super) fn spec(changes: &[(&str, Value)]) -> Spec {
    let mut design = Design::default();
    for (key, value) in changes {
        design.set_json(key, value).unwrap();
    }
    Spec::of(&design)
}

/// The case above, worked out.
pub(super) fn worked(changes: &[(&str, Value)]) -> Worked {
    worked_at(46.0, changes)
}

/// The case above with hole C elsewhere across it.
fn worked_at(hole_c_x: f64, changes: &[(&str, Value)]) -> Worked {
    let mut all = vec![
        ("size.rule", json!("given")),
        ("size.width", json!(222)),
        ("size.depth", json!(297)),
        ("size.height", json!(210)),
    ];
    all.extend_from_slice(changes);
    let spec = spec(&all);
    let mut arrangement = arrange(&spec);
    arrangement.board.origin[0] = hole_c_x;
    work_out(&spec, &arrangement)
}

pub(super) fn panel(worked: &Worked, wall: Wall) -> &Panel {
    let panel = &worked.panels[wall as usize];
    assert_eq!(panel.wall, wall);
    panel
}

pub(super) fn feature<'a>(worked: &'a Worked, wall: Wall, id: &str) -> &'a Feature {
    find(worked, wall, id).unwrap_or_else(|| panic!("no {id} on {wall:?}"))
}

pub(super) fn find<'a>(worked: &'a Worked, wall: Wall, id: &str) -> Option<&'a Feature> {
    panel(worked, wall).features.iter().find(|feature| feature.id == id)
}

fn near(at: Point, x: f64, y: f64) {
    assert!((at.x - x).abs() < 1e-6 && (at.y - y).abs() < 1e-6, "{at:?} is not ({x}, {y})");
}

/// Mini-ITX: C (0,0), F (157.48, 22.86), H (0, 154.94), J (157.48, 154.94) in ATX 2.2, figure 3.
#[test]
fn standoffs_of_a_mini_itx_board_are_drilled_where_the_atx_figure_puts_them_and_nowhere_else() {
    for (t, fit, drill) in
        [(6.0, "medium", 3.4), (3.0, "fine", 3.2), (4.0, "coarse", 3.6), (9.0, "medium", 3.4), (5.7, "medium", 3.4)]
    {
        let worked = worked(&[("sheet.measured", json!(t)), ("hardware.fit", json!(fit))]);
        let u = 222.0 - t - 0.5 - 46.0;
        let v = 297.0 - t - 12.27 - t - 0.5;
        for (letter, x, y) in [('C', 0.0, 0.0), ('F', 157.48, 22.86), ('H', 0.0, 154.94), ('J', 157.48, 154.94)] {
            let hole = feature(&worked, Wall::Floor, &format!("board-standoff-{letter}"));
            near(hole.centre, u - x, v - y);
            assert_eq!(hole.diameter_mm, Some(drill));
        }
        let count = panel(&worked, Wall::Floor).features.iter().filter(|f| f.purpose == Purpose::BoardStandoff).count();
        assert_eq!(count, 4);
    }
}

/// Aperture x 7.52 to 166.27, z -2.24 to 42.21 (ATX 2.2, figure 4): seen from behind it is on the LEFT.
#[test]
fn the_connector_opening_lies_left_of_the_middle_seen_from_behind() {
    let worked = worked(&[]);
    let bbox = feature(&worked, Wall::Back, "io-aperture").contour.bbox();
    near(bbox.origin(), 215.5 - 46.0 - 166.27, 31.0 - 2.24);
    near(Point::new(bbox.x1, bbox.y1), 215.5 - 46.0 - 7.52, 31.0 + 42.21);
    assert!((bbox.width() - 158.75).abs() < 1e-6 && (bbox.height() - 44.45).abs() < 1e-6);
    assert!(bbox.center().x < panel(&worked, Wall::Back).size_mm[0] / 2.0);
    // The window of the card is to the right of it.
    assert!(feature(&worked, Wall::Back, "card-window").centre.x > bbox.x1);
}

#[test]
fn a_rebate_leaves_sheet_that_a_shield_clips_to() {
    let in_sheet = |t: f64| worked(&[("sheet.measured", json!(t)), ("board.io_opening", json!("rebate"))]);
    let worked = in_sheet(6.0);
    let rebate = feature(&worked, Wall::Back, "io-rebate");
    let (depth, face) = rebate.blind.unwrap();
    assert!(face == Face::Outside && (0.94..=1.32).contains(&(6.0 - depth)));
    let (ring, hole) = (rebate.contour.bbox(), feature(&worked, Wall::Back, "io-aperture").contour.bbox());
    assert!((hole.x0 - ring.x0 - 2.54).abs() < 1e-9 && (ring.y1 - hole.y1 - 2.54).abs() < 1e-9);
}

/// Two slots, slots 0 and 1, standard: centres of the least windows at 1.57 - 7.165 and 20.32 further left; the plug
/// needs 20.00 beyond 4 mm from the bracket, 17.25 beyond 3, else 13.25, and the wall begins 0.16 from it (CEM 3.0, figures
/// 9-22 and 9-24; ATX 2.2, figure 4). Bottom 4.30.
#[test]
fn the_card_window_is_as_wide_as_the_plugs_need_in_this_sheet() {
    for (t, width) in [(6.0, 20.0), (9.0, 20.0), (5.7, 20.0), (4.0, 20.0), (3.8, 17.25), (3.0, 17.25), (2.8, 13.25)] {
        let worked = worked_at(60.0, &[("size.width", json!(240)), ("sheet.measured", json!(t))]);
        let u = 240.0 - t - 0.5 - 60.0;
        let z = t + 25.0;
        let window = feature(&worked, Wall::Back, "card-window");
        let contour = &window.contour;
        let lower = |x: f64| contour.contains(Point::new(u - x, z + 50.0));
        let (right, left) = (-5.595 + width / 2.0, -5.595 - 20.32 - width / 2.0);
        assert!(lower(right - 0.01) && !lower(right + 0.01), "{t}");
        assert!(lower(left + 0.01), "{t}");
        // No sliver of less than 10 mm is left standing beside it: the window then runs out to the side.
        let (end, edge) = (contour.bbox().x1, panel(&worked, Wall::Back).size_mm[0]);
        assert!((end - edge).abs() < 1e-9 || edge - end >= 10.0, "{t}: {end} of {edge}");
        assert!(end == edge || !lower(left - 0.01), "{t}");
        assert!((contour.bbox().y0 - z - 4.30).abs() < 1e-6);
        // The tab of slots 0 and 1: -32.57 .. 6.80 with half a millimetre of air, from the shelf up and out.
        let upper = |x: f64| contour.contains(Point::new(u - x, z + 109.83));
        assert!(upper(6.80 + 0.49) && !upper(6.80 + 0.51) && upper(-32.57 - 0.49));
        assert!(window.notch && (contour.bbox().y1 - panel(&worked, Wall::Back).size_mm[1]).abs() < 1e-9);
        assert!(!panel(&worked, Wall::Back).outline.contains(Point::new(u + 10.0, z + 60.0)));
    }
}

/// The default case is as wide as A4 allows: the window ends 3.8 mm from the back's edge, and so runs out to it.
#[test]
fn a_window_that_would_leave_a_sliver_runs_out_to_the_side() {
    let build = crate::Build::of(&crate::design::Design::default());
    let back = build.panel(Wall::Back).expect("a back");
    let window = back.features.iter().find(|feature| feature.id == "card-window").expect("a window");
    assert!((window.contour.bbox().x1 - back.size_mm[0]).abs() < 1e-9);
}

/// Tab 109.83 and 0.86 thick (CEM 3.0, figures 9-3 and 9-5).
#[test]
fn a_closed_window_ends_its_headroom_above_the_tab() {
    let worked = worked(&[("card.window", json!("closed")), ("card.headroom", json!(25)), ("card.hold", json!("tie"))]);
    let window = feature(&worked, Wall::Back, "card-window");
    assert!(!window.notch);
    assert!((window.contour.bbox().y1 - (31.0 + 110.69 + 25.0)).abs() < 1e-6);
    assert!(feature(&worked, Wall::Back, "card-tie-1").centre.y < 31.0 + 109.83);
}

/// The hollow behind a tongue: 11 wide about its centre, 1 deep from inside, from the window's lower edge at 4.30 to the
/// tip at -10.19, less 0.77 of play; the board lies on 25 mm of standoff and 6 of floor. A laser cuts none.
#[test]
fn the_bent_end_of_a_tongue_has_a_hollow_in_the_back() {
    let by_hand = worked(&[]);
    for (id, slot) in [("tongue-hollow-1", 0.0), ("tongue-hollow-2", 1.0)] {
        let hollow = feature(&by_hand, Wall::Back, id);
        let area = hollow.contour.bbox();
        let u = 215.5 - (46.0 + 1.57 - 7.15 - 20.32 * slot);
        assert!((area.center().x - u).abs() < 0.01 && (area.width() - 11.0).abs() < 0.01, "{area:?}");
        assert!((area.y1 - (31.0 + 4.30)).abs() < 0.01 && (area.y0 - (31.0 - 10.96)).abs() < 0.01, "{area:?}");
        assert_eq!(hollow.blind, Some((1.0, Face::Inside)));
    }
    let lasered = worked(&[("method", json!("laser"))]);
    assert!(find(&lasered, Wall::Back, "tongue-hollow-1").is_none());
}

/// The tongue ends 10.19 below the board, its centre 7.15 left of the slot (CEM 3.0, figures 9-3 and 9-5): 1.57 - 7.15.
#[test]
fn a_tongue_that_would_stab_the_floor_gets_a_slot_and_one_that_does_not_gets_none() {
    let low = worked(&[("board.standoff", json!(10.45)), ("drive1.kind", json!("none"))]);
    let slot = feature(&low, Wall::Floor, "tongue-slot-1").contour.bbox();
    let u = 215.5 - 46.0;
    // The reference rounds half of 1.57 to 0.785 in between: a hundredth.
    assert!((slot.center().x - (u + 5.58)).abs() < 0.01 && slot.width() >= 11.0 - 1e-9);
    let floor = panel(&low, Wall::Floor);
    assert!((slot.y1 - floor.size_mm[1]).abs() < 1e-9, "it runs out at the rear edge");
    assert!((slot.height() - (12.27 - 10.5)).abs() < 1e-6);
    assert!(!floor.outline.contains(Point::new(u + 5.58, floor.size_mm[1] - 0.5)));
    let high = worked(&[("board.standoff", json!(10.96)), ("drive1.kind", json!("none"))]);
    assert!(find(&high, Wall::Floor, "tongue-slot-1").is_none());
}

/// ATX supply, face seen from outside, level pair on top: (6,80) (144,80) (6,16) (120,6). Seen from below the floor.
#[test]
fn a_supply_on_end_has_its_holes_in_the_floor_as_seen_from_below() {
    for turned in [false, true] {
        let spec = spec(&[("supply.turned", json!(turned)), ("supply.depth", json!(160))]);
        let arrangement = arrange(&spec);
        let body = arrangement.parts.iter().find(|part| part.id == "supply").unwrap().bounds();
        let worked = work_out(&spec, &arrangement);
        let floor = panel(&worked, Wall::Floor);
        // The face's lower left corner seen from below: right front of the body in the case; u runs to the left.
        let corner = floor.frame.to_panel([body.max[0], body.min[1], 0.0]).0;
        for (index, (x, y)) in [(6.0, 80.0), (144.0, 80.0), (6.0, 16.0), (120.0, 6.0)].into_iter().enumerate() {
            let (x, y) = if turned { (150.0 - x, 86.0 - y) } else { (x, y) };
            let hole = feature(&worked, Wall::Floor, &format!("supply-hole-{}", index + 1));
            near(hole.centre, corner.x + x, corner.y + y);
            assert_eq!(hole.diameter_mm, Some(3.9));
        }
        let opening = feature(&worked, Wall::Floor, "supply-opening").contour.bbox();
        assert!(opening.width() > 100.0 && opening.height() > 60.0);
    }
}

#[test]
fn nothing_is_drilled_whose_place_nobody_knows() {
    let sfx = worked(&[("supply.kind", json!("sfx"))]);
    let about_supply = |worked: &Worked| {
        worked.panels.iter().flat_map(|panel| &panel.features).filter(|f| f.about.contains(&"supply".into())).count()
    };
    assert_eq!(about_supply(&sfx), 0);
    let measured = worked(&[("supply.kind", json!("sfx")), ("supply.holes", json!([[6, 6], [119, 6], [6, 57.5]]))]);
    assert_eq!(about_supply(&measured), 4, "three holes and the opening");
    let fan = |spacing: Value| {
        let worked = worked(&[("fan1.size", json!("200")), ("fan1.wall", json!("left")), ("fan1.spacing", spacing)]);
        panel(&worked, Wall::Left).features.iter().filter(|f| f.about.contains(&"fan-1".into())).count()
    };
    assert_eq!((fan(Value::Null), fan(json!(154))), (0, 5));
    let brick = |hole: Value| {
        let worked = worked(&[("supply.kind", json!("brick")), ("supply.jack_hole", hole)]);
        find(&worked, Wall::Back, "jack").map(|jack| jack.diameter_mm)
    };
    assert_eq!((brick(Value::Null), brick(json!(11.2))), (None, Some(Some(11.2))));
}

/// SFF-8201: 61.72 apart across, 14.0 and 90.6 from the connector end; the drive is 69.85 wide and seen from below.
#[test]
fn a_small_drive_under_the_board_has_its_four_holes_and_screws_that_go_neither_too_deep_nor_too_shallow() {
    let spec = spec(&[]);
    let arrangement = arrange(&spec);
    let worked = work_out(&spec, &arrangement);
    let body = arrangement.parts.iter().find(|part| part.id == "drive-1").unwrap().bounds();
    // Its plugs point to the front: b runs to the back, a (to the right seen from below, plugs on top) to the right.
    let holes: Vec<Point> =
        (1..=4).map(|n| feature(&worked, Wall::Floor, &format!("drive-1-hole-{n}")).centre).collect();
    let floor = panel(&worked, Wall::Floor).frame;
    for (hole, (a, b)) in holes.iter().zip([(4.07, 14.0), (65.79, 14.0), (4.07, 90.6), (65.79, 90.6)]) {
        let expected = floor.to_panel([body.min[0] + a, body.min[1] + b, 0.0]).0;
        near(*hole, expected.x, expected.y);
    }
    // 6 of sheet, two washers of 0.5 below the drive: 10 with two more under the head goes in 1.71 to 2.29.
    let screws: Vec<&Screw> = worked.screws.iter().filter(|screw| screw.id.starts_with("screw-drive-1")).collect();
    assert_eq!(screws.len(), 4);
    for screw in screws {
        let into = screw.length_mm.unwrap() - 6.0 - 1.0 - f64::from(screw.washers) * 0.5;
        assert!((1.5..=2.5).contains(&into) && screw.direction == [0.0, 0.0, 1.0]);
        assert!((screw.head_at[2] + f64::from(screw.washers) * 0.5).abs() < 1e-9);
    }
}

/// SFF-8301: 95.25 apart across, 41.28 from the connector end, then 85.73 or 117.48.
#[test]
fn a_large_drive_is_offered_both_far_rows() {
    let spec = spec(&[
        ("drive1.kind", json!("3.5")),
        ("drive1.place", json!("floor")),
        ("drive1.washers", json!(3)),
        ("size.rule", json!("smallest")),
    ]);
    let worked = work_out(&spec, &arrange(&spec));
    let at = |n: usize| feature(&worked, Wall::Floor, &format!("drive-1-hole-{n}")).centre;
    for (near_row, far) in [(1, 2), (3, 4), (5, 6)] {
        assert!(((at(near_row) - at(far)).hypot() - 95.25).abs() < 1e-6);
    }
    assert!(((at(3) - at(1)).hypot() - 44.45).abs() < 1e-6 && ((at(5) - at(1)).hypot() - 76.20).abs() < 1e-6);
    let screws: Vec<&Screw> = worked.screws.iter().filter(|screw| screw.id.starts_with("screw-drive-1")).collect();
    assert_eq!(screws.len(), 4);
    for screw in screws {
        let into = screw.length_mm.unwrap() - 6.0 - 1.5 - f64::from(screw.washers) * 0.5;
        assert!((3.0..=3.8).contains(&into), "{into}");
    }
}

#[test]
fn a_fan_of_120_has_four_holes_on_a_square_of_105_about_its_opening() {
    let worked = worked(&[]);
    let opening = feature(&worked, Wall::Back, "fan-1-opening");
    assert_eq!(opening.diameter_mm, Some(114.0));
    for (n, (x, y)) in [(52.5, 52.5), (-52.5, 52.5), (-52.5, -52.5), (52.5, -52.5)].into_iter().enumerate() {
        let hole = feature(&worked, Wall::Back, &format!("fan-1-hole-{}", n + 1));
        near(hole.centre, opening.centre.x + x, opening.centre.y + y);
    }
    // 6 of sheet, 4 of flange, washer 0.8, nut 3.2, two turns of 0.7: 15.4; a 16 is 15.65 at least.
    let screw = worked.screws.iter().find(|screw| screw.id == "screw-fan-1-1").unwrap();
    assert!((screw.least_mm - 15.4).abs() < 1e-9 && screw.length_mm == Some(16.0));
    // A thin fan has closed corners: 6 and 15 and the same 5.4, and a 30 is 29.58 at least.
    let thin = self::worked(&[("fan1.thickness", json!(15))]);
    let screw = thin.screws.iter().find(|screw| screw.id == "screw-fan-1-1").unwrap();
    assert!((screw.least_mm - 26.4).abs() < 1e-9 && screw.length_mm == Some(30.0));
}

#[test]
fn a_button_for_thin_sheet_gets_a_counterbore_that_leaves_what_it_clamps() {
    let thick = worked(&[]);
    let (depth, face) = feature(&thick, Wall::Front, "button-counterbore").blind.unwrap();
    assert!((6.0 - depth - 3.2).abs() < 1e-9 && face == Face::Inside);
    assert_eq!(feature(&thick, Wall::Front, "button").diameter_mm, Some(16.2));
    let thin = worked(&[("sheet.measured", json!(3))]);
    assert!(find(&thin, Wall::Front, "button-counterbore").is_none());
}

#[test]
fn front_connectors_have_windows_screws_and_counterbores() {
    let worked = worked(&[("ports.wall", json!("front")), ("ports.audio", json!(1))]);
    let window = feature(&worked, Wall::Front, "port-usb-a-1");
    let apart = feature(&worked, Wall::Front, "port-usb-a-1-screw-2").centre
        - feature(&worked, Wall::Front, "port-usb-a-1-screw-1").centre;
    assert!((apart.x - 28.0).abs() < 1e-9 && apart.y == 0.0 && window.contour.bbox().width() >= 16.0);
    assert!(feature(&worked, Wall::Front, "port-usb-c-1").contour.bbox().width() >= 12.35);
    assert_eq!(feature(&worked, Wall::Front, "port-audio-1").diameter_mm, Some(6.2));
    assert!(find(&worked, Wall::Front, "port-audio-1-counterbore").is_some());
    assert!(find(&worked, Wall::Front, "port-usb-a-2").is_some());
}

#[test]
fn feet_are_drilled_where_they_stand() {
    let spec = spec(&[]);
    let arrangement = arrange(&spec);
    let worked = work_out(&spec, &arrangement);
    for (index, [x, y]) in arrangement.feet.iter().enumerate() {
        let hole = feature(&worked, Wall::Floor, &format!("foot-{}", index + 1));
        let [w, _, _] = arrangement.case.outside_mm;
        near(hole.centre, w - 6.5 - x, y - 6.5);
        assert_eq!(hole.diameter_mm, Some(6.6));
    }
    // Free height 40 less a head of 4; sheet 6, washer 1.6, nut 5.2, two turns of 1.0: 50.8, sold as 55.
    let bolt = worked.screws.iter().find(|screw| screw.id == "screw-foot-1").unwrap();
    assert!((bolt.least_mm - 50.8).abs() < 1e-9, "{}", bolt.least_mm);
    assert_eq!(bolt.length_mm, Some(55.0));
    assert!((bolt.head_at[2] + 36.0).abs() < 1e-9);
}

/// 25 mm standoffs: 6 of sheet, a washer of 0.5 and 3 of thread want 9.5; a 10 is 9.71 at least.
#[test]
fn screws_of_short_standoffs_leave_room_for_the_boards_own() {
    let usual = worked(&[]);
    let screw = |worked: &Worked, id: &str| worked.screws.iter().find(|screw| screw.id == id).cloned().unwrap();
    assert_eq!(screw(&usual, "screw-board-standoff-C").length_mm, Some(10.0));
    // 1.57 of board and 3 of thread want 4.57; a 5 is 4.76 at least.
    assert_eq!(screw(&usual, "screw-board-C").length_mm, Some(5.0));
    for t in [3.0, 4.0, 5.7, 6.0, 9.0] {
        let short =
            worked(&[("board.standoff", json!(6.35)), ("drive1.kind", json!("none")), ("sheet.measured", json!(t))]);
        let (below, above) = (screw(&short, "screw-board-standoff-F"), screw(&short, "screw-board-F"));
        let lower = below.length_mm.unwrap() - t - f64::from(below.washers) * 0.5;
        let upper = above.length_mm.unwrap() - 1.57;
        assert!(lower + upper <= 6.35, "{t}: {lower} and {upper} meet in a standoff of 6.35");
    }
}
