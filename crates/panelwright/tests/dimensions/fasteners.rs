//! Clearance holes, screw lengths, hole accuracy and pilot holes against worked examples.

use super::near;
use panelwright::dimensions::fasteners::*;

const EXACT_MM: f64 = 1e-9;

#[test]
fn clearance_holes_are_those_of_iso_273() {
    let table = [
        (Thread::M2, 2.2, 2.4, 2.6),
        (Thread::M2_5, 2.7, 2.9, 3.1),
        (Thread::M3, 3.2, 3.4, 3.6),
        (Thread::M4, 4.3, 4.5, 4.8),
        (Thread::M5, 5.3, 5.5, 5.8),
        (Thread::M6, 6.4, 6.6, 7.0),
        (Thread::M8, 8.4, 9.0, 10.0),
        (Thread::Unc6_32, 3.7, 3.9, 4.2),
    ];
    for (thread, fine, medium, coarse) in table {
        assert_eq!(clearance_hole(thread, Fit::Fine).get(), fine);
        assert_eq!(clearance_hole(thread, Fit::Medium).get(), medium);
        assert_eq!(clearance_hole(thread, Fit::Coarse).get(), coarse);
    }
}

#[test]
fn the_inch_thread_is_0_1380_inch_by_32_turns() {
    near(major_diameter(Thread::Unc6_32).get(), 0.1380 * 25.4, 0.0003);
    near(pitch(Thread::Unc6_32).get(), 0.79375, EXACT_MM);
}

/// Required and sold length.
#[track_caller]
fn screw(clamped: f64, thread: Thread, washers: u32, required: f64, sold: f64) {
    let length = required_length_mm(clamped, thread, washers, true);
    near(length, required, EXACT_MM);
    assert_eq!(sold_length_of_mm(Thread::M3, length), Some(sold));
}

#[test]
fn screw_lengths_f1_to_f6() {
    screw(12.0, Thread::M4, 2, 18.2, 20.0);
    // A 10 mm screw may be 9.71 mm long: too short for 9.9 mm.
    screw(6.0, Thread::M3, 1, 9.9, 12.0);
    screw(6.0 + 10.0 + 1.6, Thread::M3, 1, 21.5, 25.0);
    screw(12.0, Thread::M5, 2, 20.3, 25.0);
    screw(6.0, Thread::M4, 1, 11.4, 12.0);
    screw(12.0, Thread::M6, 2, 22.4, 25.0);
    // Two sheets that are 0.2 mm too thick each.
    screw(6.2, Thread::M4, 1, 11.6, 12.0);
    screw(12.4, Thread::M4, 2, 18.6, 20.0);
}

#[test]
fn a_length_is_refused_just_above_its_shortest_piece() {
    for (nominal, shortest, next) in [
        (6.0, 5.76, 8.0),
        (8.0, 7.71, 10.0),
        (10.0, 9.71, 12.0),
        (12.0, 11.65, 16.0),
        (16.0, 15.65, 20.0),
        (20.0, 19.58, 25.0),
        (25.0, 24.58, 30.0),
        (30.0, 29.58, 35.0),
        (35.0, 34.5, 40.0),
        (40.0, 39.5, 45.0),
    ] {
        assert_eq!(sold_length_of_mm(Thread::M3, shortest), Some(nominal));
        assert_eq!(sold_length_of_mm(Thread::M3, shortest + 0.001), Some(next));
    }
    assert_eq!(sold_length_of_mm(Thread::M3, -3.0), Some(2.5));
    assert_eq!(sold_length_of_mm(Thread::M3, 89.3), Some(90.0));
    assert_eq!(sold_length_of_mm(Thread::M3, 89.31), None);
}

#[test]
fn a_screw_for_a_blind_hole_keeps_both_limits() {
    // 6 mm of sheet and a washer of 0.5, then 3.0 to 3.8 mm into a large drive.
    assert_eq!(sold_length_between_mm(Thread::M3, 9.5, 10.3), Some(10.0), "9.71 to 10.29 mm");
    assert_eq!(sold_length_between_mm(Thread::M3, 9.0, 9.8), None);
    // 3/8 inch, 9.02 to 9.53 mm.
    let inch = sold_length_between_mm(Thread::Unc6_32, 9.0, 9.8);
    near(inch.unwrap_or(0.0), 9.525, EXACT_MM);
}

#[test]
fn a_tapped_hole_takes_one_diameter_in_steel_and_two_in_plastics() {
    near(tapped_length_mm(6.0, Thread::M4, 1, TappedInto::Steel), 10.8, EXACT_MM);
    near(tapped_length_mm(6.0, Thread::M4, 1, TappedInto::Brass), 12.8, EXACT_MM);
    near(tapped_length_mm(6.0, Thread::M4, 1, TappedInto::Aluminium), 14.8, EXACT_MM);
    near(required_length_mm(6.0, Thread::M4, 1, false), 10.8, EXACT_MM);
}

#[test]
fn allowed_errors_f7() {
    for (screw, hole, floating, fixed) in [
        (3.0, 3.4, 0.1414, 0.0707),
        (3.0, 3.6, 0.2121, 0.1061),
        (4.0, 4.5, 0.1768, 0.0884),
        (4.0, 4.8, 0.2828, 0.1414),
        (5.0, 5.5, 0.1768, 0.0884),
        (5.0, 5.8, 0.2828, 0.1414),
    ] {
        near(allowed_error_mm(screw, hole, Fixing::Floating), floating, 1e-4);
        near(allowed_error_mm(screw, hole, Fixing::Fixed), fixed, 1e-4);
    }
}

#[test]
fn holes_for_a_given_hand_f8() {
    let errors = [0.1, 0.2, 0.3, 0.5, 0.8];
    for (screw, holes) in [
        (3.0, [3.283, 3.566, 3.849, 4.414, 5.263]),
        (4.0, [4.283, 4.566, 4.849, 5.414, 6.263]),
        (5.0, [5.283, 5.566, 5.849, 6.414, 7.263]),
    ] {
        for (error, hole) in errors.iter().zip(holes) {
            near(hole_for_error_mm(screw, *error, Fixing::Floating), hole, 1e-3);
        }
    }
    for (error, hole) in errors.iter().zip([3.566, 4.131, 4.697, 5.828, 7.525]) {
        near(hole_for_error_mm(3.0, *error, Fixing::Fixed), hole, 1e-3);
    }
}

#[test]
fn pilot_holes_f9() {
    for (screw, least, most, drill) in [
        (TappingScrew::St2_9, 1.853, 2.071, 2.0),
        (TappingScrew::St3_5, 2.244, 2.508, 2.4),
        (TappingScrew::St4_2, 2.635, 2.945, 2.8),
        (TappingScrew::St4_8, 3.043, 3.401, 3.2),
    ] {
        let range = pilot_range(screw).get();
        near(range[0], least, 1e-3);
        near(range[1], most, 1e-3);
        near(pilot_drill(screw).get(), drill, EXACT_MM);
    }
}

#[test]
fn washers_and_nuts_are_those_of_iso_7089_and_4032() {
    for (thread, hole, outside, thickness, height, flats, corners) in [
        (Thread::M2_5, 2.7, 6.0, 0.5, 2.0, 5.0, 5.45),
        (Thread::M3, 3.2, 7.0, 0.5, 2.4, 5.5, 6.01),
        (Thread::M4, 4.3, 9.0, 0.8, 3.2, 7.0, 7.66),
        (Thread::M5, 5.3, 10.0, 1.0, 4.7, 8.0, 8.79),
        (Thread::M6, 6.4, 12.0, 1.6, 5.2, 10.0, 11.05),
        (Thread::M8, 8.4, 16.0, 1.6, 6.8, 13.0, 14.38),
    ] {
        let washer = washer(thread);
        assert_eq!((washer.hole_mm, washer.outside_mm, washer.thickness_mm), (hole, outside, thickness));
        let nut = nut(thread);
        assert_eq!((nut.height_mm, nut.flats_mm, nut.corners_min_mm), (height, flats, corners));
    }
    near(sharp_corners_mm(7.0), 7.0 * 1.154_701, 1e-5);
    for thread in Thread::ALL {
        let nut = nut(thread);
        assert!(nut.corners_min_mm < sharp_corners_mm(nut.flats_mm));
        assert!(nut.corners_min_mm > nut.flats_mm);
    }
}

#[test]
fn a_washer_passes_its_screw_and_covers_the_coarse_hole() {
    for thread in Thread::ALL {
        let washers = [Some(washer(thread)), penny_washer(thread)];
        for washer in washers.into_iter().flatten() {
            assert!(washer.hole_mm > major_diameter(thread).get());
            assert!(washer.outside_mm > clearance_hole(thread, Fit::Coarse).get() + 1.0);
        }
    }
}

#[test]
fn heads_are_those_of_the_iso_tables() {
    for (thread, pan, sunk, mouth, cap) in [
        (Thread::M2_5, (5.0, 2.1), (4.7, 1.5), 5.5, (4.5, 2.5, 2.0)),
        (Thread::M3, (5.6, 2.4), (5.5, 1.65), 6.3, (5.5, 3.0, 2.5)),
        (Thread::M4, (8.0, 3.1), (8.4, 2.7), 9.4, (7.0, 4.0, 3.0)),
        (Thread::M5, (9.5, 3.7), (9.3, 2.7), 10.4, (8.5, 5.0, 4.0)),
        (Thread::M6, (12.0, 4.6), (11.3, 3.3), 12.6, (10.0, 6.0, 5.0)),
    ] {
        let found = pan_head(thread);
        assert_eq!((found.diameter_mm, found.height_mm), pan);
        let found = sunk_head(thread).expect("listed");
        assert_eq!((found.diameter_mm, found.depth_mm), sunk);
        assert_eq!(found.mouth_mm, mouth);
        let found = cap_head(thread).expect("listed");
        assert_eq!((found.diameter_mm, found.height_mm, found.key_mm), cap);
    }
}

#[test]
fn thicker_washers_and_the_recalled_rows() {
    for (thread, most) in [
        (Thread::M2_5, Some(0.55)),
        (Thread::M3, Some(0.55)),
        (Thread::M4, Some(0.9)),
        (Thread::M5, Some(1.1)),
        (Thread::M6, Some(1.8)),
        (Thread::M8, Some(1.8)),
        (Thread::M2, None),
        (Thread::Unc6_32, None),
    ] {
        assert_eq!(washer(thread).thickness_max_mm, most, "{thread:?}");
    }
    for (thread, outside, thickness) in
        [(Thread::M3, 9.0, 0.8), (Thread::M4, 12.0, 1.0), (Thread::M5, 15.0, 1.2), (Thread::M6, 18.0, 1.6)]
    {
        let found = penny_washer(thread).expect("listed");
        assert_eq!([found.outside_mm, found.thickness_mm], [outside, thickness]);
        assert_eq!(found.hole_mm, washer(thread).hole_mm);
    }
    assert_eq!(penny_washer(Thread::M2), None);
    for (thread, hole, outside, thick, nut_height, flats, pan, pan_height) in [
        (Thread::M2, 2.2, 5.0, 0.3, 1.6, 4.0, 4.0, 1.6),
        // Nut of 5/16 inch across flats, head of 0.270 by 0.097 inch.
        (Thread::Unc6_32, 3.7, 8.0, 0.5, 0.114 * 25.4, 25.4 * 5.0 / 16.0, 0.270 * 25.4, 0.097 * 25.4),
    ] {
        let found = washer(thread);
        assert_eq!([found.hole_mm, found.outside_mm, found.thickness_mm], [hole, outside, thick]);
        near(nut(thread).height_mm, nut_height, 0.01);
        near(nut(thread).flats_mm, flats, 0.01);
        near(pan_head(thread).diameter_mm, pan, 0.01);
        near(pan_head(thread).height_mm, pan_height, 0.01);
        assert_eq!(found.source.confidence, panelwright::dimensions::source::Confidence::FromMemory);
    }
    assert_eq!([pan_head(Thread::M8).diameter_mm, pan_head(Thread::M8).height_mm], [16.0, 6.0]);
}

#[test]
fn distances_for_screws_in_board() {
    assert_eq!([FACE_SCREW_TO_EDGE.get(), FACE_SCREW_TO_CORNER.get(), EDGE_SCREW_TO_CORNER.get()], [12.0, 25.0, 70.0]);
    assert_eq!(PILOT_DEEPER.get(), 1.0);
    assert_eq!(BATTEN.get(), 12.0);
    near(EDGE_SCREW_SHARE.get()[0] * 6.0, 1.5, 1e-3);
    near(EDGE_SCREW_SHARE.get()[1] * 6.0, 2.0, 1e-3);
}
