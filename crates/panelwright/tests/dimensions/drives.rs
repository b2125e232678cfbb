//! Drives against the inch and millimetre sizes of SFF-8201, SFF-8301, SFF-8223 and SFF-8323.

use super::near;
use panelwright::dimensions::drives::*;
use panelwright::dimensions::fasteners::{Thread, major_diameter, sold_length_between_mm, washer};

const INCH: f64 = 25.4;
const ROUNDED_MM: f64 = 0.0051;

#[test]
fn bodies_and_heights() {
    let small = body(DriveKind::Small);
    assert_eq!([small.width_mm, small.width_tolerance_mm, small.length_max_mm], [69.85, 0.25, 100.45]);
    let large = body(DriveKind::Large);
    near(large.width_mm, 4.000 * INCH, 1e-9);
    near(large.length_max_mm, 5.787 * INCH, 0.011);
    let rows = heights(DriveKind::Small).iter().map(|h| (h.height_mm, h.plus_mm, h.minus_mm)).collect::<Vec<_>>();
    assert_eq!(
        rows,
        [
            (5.0, 0.20, Some(0.20)),
            (7.0, 0.20, Some(0.50)),
            (9.5, 0.20, Some(0.20)),
            (12.7, 0.0, Some(0.50)),
            (15.0, 0.0, Some(0.50)),
            (19.05, 0.0, Some(0.50)),
        ]
    );
    for (height, inches) in heights(DriveKind::Large).iter().zip([0.700, 1.028, 1.654]) {
        near(height.height_mm, inches * INCH, 0.025);
        assert_eq!(height.minus_mm, None);
    }
    assert_eq!(heights(DriveKind::Large).len(), 3);
}

#[test]
fn small_bottom_holes_are_61_72_by_76_60_apart() {
    let holes = bottom_holes(DriveKind::Small);
    let places = holes.iter().map(|hole| (hole.a_mm, hole.b_mm)).collect::<Vec<_>>();
    assert_eq!(places, [(4.07, 14.0), (65.79, 14.0), (4.07, 90.6), (65.79, 90.6)]);
    near(holes[1].a_mm - holes[0].a_mm, 2.430 * INCH, ROUNDED_MM);
    near(holes[2].b_mm - holes[0].b_mm, 76.60, 1e-9);
    // Centred across the drive.
    near(holes[0].a_mm + holes[1].a_mm, body(DriveKind::Small).width_mm, 0.011);
}

#[test]
fn large_bottom_holes_offer_both_second_rows() {
    let holes = bottom_holes(DriveKind::Large);
    assert_eq!(holes.len(), 6);
    let b_of = |row| holes.iter().filter(|hole| hole.row == row).map(|hole| hole.b_mm).collect::<Vec<_>>();
    let near_row = b_of(HoleRow::Near)[0];
    near(near_row, 1.625 * INCH, ROUNDED_MM);
    assert_eq!(b_of(HoleRow::Second).len(), 2);
    assert_eq!(b_of(HoleRow::Far).len(), 2);
    near(b_of(HoleRow::Second)[0] - near_row, 1.750 * INCH, 1e-9);
    near(b_of(HoleRow::Far)[0] - near_row, 3.000 * INCH, 1e-9);
    for pair in holes.chunks(2) {
        near(pair[0].a_mm, 0.125 * INCH, ROUNDED_MM);
        near(pair[1].a_mm - pair[0].a_mm, 3.750 * INCH, 1e-9);
    }
}

#[test]
fn side_holes_are_where_the_tables_say() {
    let small = side_holes(DriveKind::Small).iter().map(|hole| (hole.b_mm, hole.h_mm)).collect::<Vec<_>>();
    assert_eq!(small, [(14.0, 3.0), (90.6, 3.0)]);
    let large = side_holes(DriveKind::Large);
    near(large[0].b_mm, 1.122 * INCH, ROUNDED_MM);
    near(large[1].b_mm - large[0].b_mm, 4.000 * INCH, 1e-9);
    near(large[0].h_mm, 0.250 * INCH, 1e-9);
}

#[test]
fn every_hole_lies_within_its_drive() {
    for kind in DriveKind::ALL {
        let body = body(kind);
        for hole in bottom_holes(kind) {
            assert!(hole.a_mm > 0.0 && hole.a_mm < body.width_mm);
            assert!(hole.b_mm > 0.0 && hole.b_mm < body.length_max_mm);
        }
        for hole in side_holes(kind) {
            assert!(hole.b_mm < body.length_max_mm);
            assert!(hole.h_mm < heights(kind)[0].height_mm);
        }
    }
}

#[test]
fn screws_may_go_so_deep_and_no_deeper() {
    let most = |kind, face, height| penetration(kind, face, height).most.get();
    assert_eq!(most(DriveKind::Small, DriveFace::Bottom, 9.5), 2.5);
    assert_eq!(most(DriveKind::Small, DriveFace::Bottom, 5.0), 2.5);
    assert_eq!(most(DriveKind::Small, DriveFace::Side, 9.5), 3.0);
    assert_eq!(most(DriveKind::Small, DriveFace::Side, 7.01), 3.0);
    assert_eq!(most(DriveKind::Small, DriveFace::Side, 7.0), 2.0);
    for face in [DriveFace::Bottom, DriveFace::Side] {
        let depth = penetration(DriveKind::Large, face, 26.1);
        assert_eq!([depth.least.get(), depth.most.get()], [3.0, 3.8]);
    }
    assert_eq!(thread(DriveKind::Small).get(), Thread::M3);
    assert_eq!(thread(DriveKind::Large).get(), Thread::Unc6_32);
}

#[test]
fn a_sold_screw_holds_each_drive_through_a_6_mm_floor() {
    for kind in DriveKind::ALL {
        let thread = thread(kind).get();
        let depth = penetration(kind, DriveFace::Bottom, 9.5);
        let found = (0..=3).find_map(|washers| {
            let clamped = 6.0 + f64::from(washers) * washer(thread).thickness_mm;
            sold_length_between_mm(thread, clamped + depth.least.get(), clamped + depth.most.get())
                .map(|length| (washers, length))
        });
        let (_, length) = found.expect("a screw and up to three washers");
        assert!(length > 6.0 + major_diameter(thread).get() / 2.0);
    }
}

#[test]
fn the_connector_is_left_of_the_middle() {
    let small = connector(DriveKind::Small);
    near(small.centre_a_mm, body(DriveKind::Small).width_mm / 2.0 - 4.80, ROUNDED_MM);
    let large = connector(DriveKind::Large);
    near(large.centre_a_mm, body(DriveKind::Large).width_mm / 2.0 - 20.68, ROUNDED_MM);
    for plug in [small, large] {
        near(plug.tongue_a_mm + plug.tongue_length_mm / 2.0, plug.centre_a_mm, ROUNDED_MM);
        near(plug.tongue_h_mm, 3.50, 1e-9);
        near(plug.overall_width_mm, 42.73, 1e-9);
    }
    near(small.seat_b_mm, 14.00 - 9.40, 1e-9);
    near(large.seat_b_mm, 41.28 - 36.38, 1e-9);
}

#[test]
fn plugs_want_40_or_20_behind_the_drive() {
    assert_eq!(sata_data_room(PlugShape::Straight).get(), [30.0, 35.0]);
    assert_eq!(sata_power_room(PlugShape::Straight).get(), [35.0, 40.0]);
    assert_eq!(sata_data_room(PlugShape::RightAngle).get(), [12.0, 15.0]);
    assert_eq!(sata_power_room(PlugShape::RightAngle).get(), [15.0, 20.0]);
    assert_eq!(plug_room(PlugShape::Straight).get(), 40.0);
    assert_eq!(plug_room(PlugShape::RightAngle).get(), 20.0);
}

#[test]
fn thin_drives_may_lack_bottom_holes() {
    let limit = SMALL_HOLES_OPTIONAL_UP_TO.get();
    assert_eq!(limit, 7.0);
    assert!(heights(DriveKind::Small).iter().any(|row| row.height_mm == limit));
    assert_eq!(SMALL_HOLE_ZONE.get(), 0.5);
    assert_eq!(M2_CARD_WIDTH.get(), 22.0);
    assert_eq!(M2_CARD_LENGTHS.get(), [30.0, 42.0, 60.0, 80.0, 110.0]);
}
