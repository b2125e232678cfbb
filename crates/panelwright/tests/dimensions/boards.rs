//! Board outlines, holes, slots and the I/O aperture against the figures of the standards, which are
//! in inches from other datums (ATX 2.2 figures 3 and 4; CEM 3.0 figure 9-20).

use super::{near, near_both};
use panelwright::dimensions::boards::*;
use panelwright::dimensions::source::Confidence;

const INCH: f64 = 25.4;
/// Numbers printed to a hundredth of a millimetre.
const ROUNDED_MM: f64 = 0.0051;

#[test]
fn outlines_are_the_inch_sizes_of_their_documents() {
    for (form, width, depth, left, front) in [
        (BoardForm::Atx, 12.0, 9.6, -140.97, 233.68),
        (BoardForm::MicroAtx, 9.6, 9.6, -80.01, 233.68),
        (BoardForm::FlexAtx, 9.0, 7.5, -64.77, 180.34),
        (BoardForm::Dtx, 8.0, 9.6, -39.37, 233.68),
        (BoardForm::MiniDtx, 8.0, 6.7, -39.37, 160.02),
        (BoardForm::MiniItx, 6.7, 6.7, -6.35, 160.02),
    ] {
        let found = outline(form);
        near(found.width, width * INCH, 1e-9);
        near(found.depth, depth * INCH, 1e-9);
        near(found.left_x, left, 1e-9);
        near(found.front_y, front, 1e-9);
        near(found.right_x, 6.450 * INCH, 1e-9);
        near(found.rear_y, -0.400 * INCH, 1e-9);
        near(found.right_x - found.left_x, found.width, 1e-9);
        near(found.front_y - found.rear_y, found.depth, 1e-9);
    }
}

#[test]
fn forms_are_listed_by_width_and_a_mini_itx_board_has_its_reserve() {
    let widths = BoardForm::ALL.map(|form| outline(form).width);
    assert!(widths.is_sorted(), "{widths:?}");
    let shape = outline(BoardForm::MiniItx);
    assert!(MINI_ITX_RESERVE.get() >= shape.width && MINI_ITX_RESERVE.get() >= shape.depth);
}

#[test]
fn each_hole_is_where_the_figures_put_it() {
    // Inches from hole C: across, forward.
    let expected = [
        ('A', -4.900, 0.0),
        ('B', -1.800, 0.0),
        ('C', 0.0, 0.0),
        ('F', 6.200, 0.900),
        ('G', -4.900, 6.100),
        ('H', 0.0, 6.100),
        ('J', 6.200, 6.100),
        ('K', -4.900, 8.950),
        ('L', 0.0, 8.950),
        ('M', 6.200, 8.950),
        ('R', -2.600, 6.100),
        ('S', -1.800, 6.100),
    ];
    let mut checked = 0;
    for form in BoardForm::ALL {
        for hole in holes(form) {
            let row = expected.iter().find(|row| row.0 == hole.letter);
            let (_, x, y) = row.expect("a letter of the family");
            near(hole.x_mm, x * INCH, 1e-9);
            near(hole.y_mm, y * INCH, 1e-9);
            checked += 1;
        }
    }
    assert_eq!(checked, 4 + 4 + 6 + 6 + 9 + 9);
}

#[test]
fn each_form_has_its_own_set_of_holes() {
    let letters = |form| holes(form).iter().map(|hole| hole.letter).collect::<String>();
    assert_eq!(letters(BoardForm::Atx), "ACFGHJKLM");
    assert_eq!(letters(BoardForm::MicroAtx), "BCFHJLMRS");
    assert_eq!(letters(BoardForm::FlexAtx), "BCFHJS");
    assert_eq!(letters(BoardForm::Dtx), "CFHJLM");
    assert_eq!(letters(BoardForm::MiniDtx), "CFHJ");
    assert_eq!(letters(BoardForm::MiniItx), "CFHJ");
}

/// From a hole's centre to the nearest edge; negative outside.
fn to_edge(outline: &Outline, hole: &BoardHole) -> f64 {
    (hole.x_mm - outline.left_x)
        .min(outline.right_x - hole.x_mm)
        .min(hole.y_mm - outline.rear_y)
        .min(outline.front_y - hole.y_mm)
}

#[test]
fn every_hole_lies_on_its_board_as_far_from_the_edge_as_the_figures_say() {
    for form in BoardForm::ALL {
        let shape = outline(form);
        let shallow = matches!(form, BoardForm::MiniItx | BoardForm::MiniDtx);
        let least = if shallow { 5.08 } else { 6.35 };
        let nearest = holes(form).iter().map(|hole| to_edge(&shape, hole)).fold(f64::INFINITY, f64::min);
        near(nearest, least, 1e-6);
    }
}

#[test]
fn small_boards_own_every_hole_of_the_family_inside_their_outline() {
    let mut family: Vec<BoardHole> = Vec::new();
    for form in BoardForm::ALL {
        for hole in holes(form) {
            if !family.iter().any(|known| known.letter == hole.letter) {
                family.push(*hole);
            }
        }
    }
    assert_eq!(family.len(), 12);
    for form in [BoardForm::MiniItx, BoardForm::MiniDtx, BoardForm::Dtx, BoardForm::FlexAtx] {
        let shape = outline(form);
        for hole in &family {
            let inside = to_edge(&shape, hole) > 0.0;
            let owned = holes(form).iter().any(|own| own.letter == hole.letter);
            assert_eq!(inside, owned, "{} of {form:?}", hole.letter);
        }
    }
    // Hole R just misses a FlexATX board.
    let flex = outline(BoardForm::FlexAtx);
    let r = family.iter().find(|hole| hole.letter == 'R').expect("listed");
    near(flex.left_x - r.x_mm, 1.27, 1e-9);
}

#[test]
fn holes_that_were_recalled_say_so() {
    for hole in holes(BoardForm::MicroAtx) {
        let recalled = matches!(hole.letter, 'R' | 'S');
        assert_eq!(hole.source.confidence == Confidence::FromMemory, recalled, "{}", hole.letter);
    }
}

#[test]
fn a_shallow_board_loses_its_front_row() {
    let letters = |depth| holes_on(BoardForm::Atx, depth).iter().map(|hole| hole.letter).collect::<String>();
    assert_eq!(letters(243.84), "ACFGHJKLM");
    // Hole K ends at 227.33 + 1.98 in front of hole C, 239.47 in front of the rear edge.
    assert_eq!(letters(239.48), "ACFGHJKLM");
    assert_eq!(letters(239.46), "ACFGHJ");
    assert_eq!(letters(170.0), "ACFGHJ");
    assert_eq!(letters(150.0), "ACF");
}

#[test]
fn hole_diameter_and_standoffs() {
    near(HOLE_DIAMETER.get(), 0.156 * INCH, 0.003);
    near(PAD_SQUARE.get(), 0.400 * INCH, 1e-9);
    near(MIN_STANDOFF.get(), 0.250 * INCH, 1e-9);
    near(PCB_THICKNESS.get(), 0.062 * INCH, 0.005);
    // A hexagon of 8.8 across flats has sharp corners of 10.16 across.
    near(STANDOFF_HEX_MAX.get() / 0.75_f64.sqrt(), PAD_SQUARE.get(), 0.01);
}

#[test]
fn slots_are_20_32_apart_from_1_57() {
    for (slot, centre) in [(0, 1.57), (1, -18.75), (2, -39.07), (3, -59.39), (4, -79.71), (5, -100.03), (6, -120.35)] {
        near(slot_centre_x(slot).get(), centre, 1e-9);
    }
    // CEM 3.0 figure 9-20 counts from hole B, 45.72 left of C.
    for (slot, from_b) in [(3, -13.67), (2, 6.65), (1, 26.97), (0, 47.29)] {
        near(slot_centre_x(slot).get(), -45.72 + from_b, 1e-9);
    }
    near(SLOT_PITCH.get(), 0.800 * INCH, 1e-9);
    near(SLOT_KEY_Y.get(), 1.848 * INCH, ROUNDED_MM);
    for (form, count) in [
        (BoardForm::Atx, 7),
        (BoardForm::MicroAtx, 4),
        (BoardForm::Dtx, 2),
        (BoardForm::MiniDtx, 2),
        (BoardForm::MiniItx, 1),
    ] {
        assert_eq!(slot_count(form).get(), count);
    }
    assert_eq!(slot_count(BoardForm::FlexAtx).source().confidence, Confidence::FromMemory);
}

#[test]
fn the_last_slot_of_each_form_is_on_its_board() {
    for form in BoardForm::ALL {
        let last = slot_centre_x(slot_count(form).get() - 1).get();
        assert!(last > outline(form).left_x, "{form:?}");
    }
}

#[test]
fn the_io_aperture_is_where_figure_4_puts_it() {
    // 5.196 inches from hole A, which is 4.900 left of C.
    near_both(IO_X.get(), [(5.196 - 4.900) * INCH, (5.196 - 4.900 + 6.250) * INCH], ROUNDED_MM);
    near_both(IO_Z.get(), [-0.088 * INCH, (1.750 - 0.088) * INCH], ROUNDED_MM);
    near_both(IO_SIZE.get(), [6.250 * INCH, 1.750 * INCH], 1e-9);
    near(IO_X.get()[1] - IO_X.get()[0], IO_SIZE.get()[0], 1e-9);
    near(IO_Z.get()[1] - IO_Z.get()[0], IO_SIZE.get()[1], 1e-9);
    near(IO_CORNER_RADIUS_MAX.get(), 0.039 * INCH, ROUNDED_MM);
    near(IO_BORDER.get(), 0.100 * INCH, 1e-9);
    near_both(IO_SHIELD_WALL.get(), [0.037 * INCH, 0.052 * INCH], ROUNDED_MM);
    near(IO_PAST_RIGHT_EDGE.get(), 0.096 * INCH, ROUNDED_MM);
    near(IO_X.get()[1] - RIGHT_EDGE_X.get(), IO_PAST_RIGHT_EDGE.get(), 1e-9);
    near(IO_SIDE_WALL_GAP.get(), IO_PAST_RIGHT_EDGE.get() + IO_BORDER.get(), 1e-9);
    // 0.150 inch below the top of a board of 1.57 mm.
    near(PCB_THICKNESS.get() - IO_Z.get()[0], 0.150 * INCH, ROUNDED_MM);
}

#[test]
fn wall_and_connectors_stand_behind_the_board_in_order() {
    near(REAR_WALL_INNER_Y.get(), -0.483 * INCH, ROUNDED_MM);
    near(IO_CONNECTOR_FACE_Y.get(), -0.445 * INCH, ROUNDED_MM);
    near(REAR_EDGE_Y.get() - REAR_WALL_INNER_Y.get(), 2.11, 1e-9);
    near(REAR_EDGE_Y.get() - IO_CONNECTOR_FACE_Y.get(), 1.14, 1e-9);
    near(IO_CONNECTOR_FACE_Y.get() - REAR_WALL_INNER_Y.get(), 0.97, 1e-9);
    let [x0, x1] = IO_CONNECTOR_X.get();
    let [z0, z1] = IO_CONNECTOR_Z.get();
    near(x1 - x0, 5.990 * INCH, ROUNDED_MM);
    near(z1 - z0, 1.470 * INCH, ROUNDED_MM);
    // Every connector keeps 0.130 inch from the sides and the top.
    near(x0 - IO_X.get()[0], 3.30, 1e-9);
    near(IO_X.get()[1] - x1, 3.30, 1e-9);
    near(IO_Z.get()[1] - z1, 3.30, 1e-9);
}

#[test]
fn heights_belong_to_their_areas() {
    assert_eq!(area_at(0.0, 0.0), HeightArea::B);
    assert_eq!(area_at(6.35, 200.0), HeightArea::B);
    assert_eq!(area_at(6.36, 0.0), HeightArea::A);
    assert_eq!(area_at(49.0, 170.0), HeightArea::A);
    assert_eq!(area_at(49.0, 181.0), HeightArea::C);
    assert_eq!(area_at(60.0, 154.0), HeightArea::A);
    assert_eq!(area_at(60.0, 155.0), HeightArea::C);
    for (area, tallest, clear, better) in
        [(HeightArea::A, 2.8, 3.0, 3.5), (HeightArea::B, 0.6, 0.6, 0.6), (HeightArea::C, 1.5, 1.5, 1.5)]
    {
        let found = area_height(area);
        near(found.tallest_mm, tallest * INCH, 1e-9);
        near(found.keep_clear_mm, clear * INCH, 1e-9);
        near(found.recommended_mm, better * INCH, 1e-9);
    }
    let zones = MINI_ITX_ZONES.map(|zone| (zone.letter, zone.tallest_mm));
    assert_eq!(zones, [('A', 57.0), ('B', 16.0), ('C', 38.0), ('D', 39.0)]);
}

#[test]
fn underside_limits_leave_room_above_the_shortest_standoff() {
    near(UNDERSIDE_AT_STANDOFF.get(), 0.010 * INCH, ROUNDED_MM);
    near(UNDERSIDE_LEADS.get(), 0.098 * INCH, ROUNDED_MM);
    near(UNDERSIDE_PEGS.get(), 0.120 * INCH, ROUNDED_MM);
    near(UNDERSIDE_BACKPLATE.get(), 0.200 * INCH, ROUNDED_MM);
    assert!(UNDERSIDE_BACKPLATE.get() < MIN_STANDOFF.get());
}
