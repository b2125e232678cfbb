//! Cards and brackets against the figures of CEM 3.0, which count from datums V, W and X, and
//! against the positions worked out from them slot by slot.

use super::{near, near_both};
use panelwright::dimensions::boards::{
    BoardForm, PCB_THICKNESS, REAR_WALL_INNER_Y, SLOT_PITCH, outline, slot_centre_x,
};
use panelwright::dimensions::cards::*;
use panelwright::dimensions::source::Confidence;

/// Numbers printed to a hundredth of a millimetre, one of them halved.
const ROUNDED_MM: f64 = 0.0101;

#[test]
fn heights_close_on_each_other() {
    near(card_height(CardHeight::Standard).get(), 111.15, 1e-9);
    near(card_height(CardHeight::LowProfile).get(), 68.90, 1e-9);
    for height in CardHeight::ALL {
        near(card_top_above_board(height).get() - card_height(height).get(), FINGER_EDGE_ABOVE_BOARD.get(), 1e-9);
    }
    near(card_top_z(CardHeight::Standard).get(), 116.12, 1e-9);
    near(card_top_z(CardHeight::LowProfile).get(), 73.87, 1e-9);
    near(FINGER_EDGE_Z.get(), PCB_THICKNESS.get() + 3.40, 1e-9);
    near(BODY_UNDERSIDE_ABOVE_BOARD.get(), 12.75 + 3.40, 1e-9);
    near(FOOT_UNDERSIDE_ABOVE_BOARD.get(), 4.50 + 3.40, 1e-9);
    near(STANDARD_HEIGHT_MAX.get(), 111.15 + 0.13, 1e-9);
}

#[test]
fn thickness_grows_by_a_slot() {
    for (slots, depth) in [(1, 14.47), (2, 34.80), (3, 55.12), (4, 75.44)] {
        near(card_thickness(slots).expect("listed").get(), depth, 1e-9);
    }
    assert_eq!(card_thickness(0), None);
    assert_eq!(card_thickness(5), None);
    for slots in 1..4 {
        let step = card_thickness(slots + 1).expect("listed").get() - card_thickness(slots).expect("listed").get();
        near(step, SLOT_PITCH.get(), 0.011);
    }
    assert_eq!(card_thickness(4).expect("listed").source().confidence, Confidence::Derived);
}

#[test]
fn lengths_end_where_the_figures_say() {
    for (length, end) in [(CardLength::Half, 157.44), (CardLength::ThreeQuarter, 243.79), (CardLength::Full, 301.79)] {
        let [start, found] = card_y_range(card_length(length).get()).get();
        near(start, -10.21, 1e-9);
        near(found, end, 1e-9);
    }
    near(CARD_START_Y.get(), card_key_y().get() - CARD_END_BEHIND_KEY.get(), 1e-9);
    // Past the front edge of the board.
    let past = |form, length| card_y_range(card_length(length).get()).get()[1] - outline(form).front_y;
    near(past(BoardForm::MicroAtx, CardLength::Full), 68.1, 0.051);
    near(past(BoardForm::MiniItx, CardLength::Half), -2.6, 0.051);
    near(past(BoardForm::MiniItx, CardLength::ThreeQuarter), 83.8, 0.051);
    near(past(BoardForm::MiniItx, CardLength::Full), 141.8, 0.051);
}

#[test]
fn a_card_in_slot_0_reaches_left_past_a_mini_itx_board() {
    let left_edge = outline(BoardForm::MiniItx).left_x;
    for (slots, reach, past) in [(1, -13.7, 7.3), (2, -34.0, 27.7), (3, -54.3, 48.0), (4, -74.7, 68.3)] {
        let [left, right] = card_x_range(0, card_thickness(slots).expect("listed").get()).get();
        near(left, reach, 0.051);
        near(left_edge - left, past, 0.051);
        // The solder side looks toward the processor.
        near(right, 1.57 + 0.785 + 2.67, 1e-9);
    }
}

#[test]
fn slot_table_row_by_row() {
    for (slot, centre, from, to, screw) in [
        (0, 1.57, -12.21, 1.04, 3.62),
        (1, -18.75, -32.53, -19.29, -16.70),
        (2, -39.07, -52.85, -39.60, -37.02),
        (3, -59.39, -73.17, -59.92, -57.33),
        (4, -79.71, -93.50, -80.25, -77.66),
        (5, -100.03, -113.81, -100.56, -97.97),
        (6, -120.35, -134.13, -120.88, -118.29),
    ] {
        near(slot_centre_x(slot).get(), centre, 1e-9);
        let standard = window(slot, CardHeight::Standard);
        near_both(standard.x_mm, [from, to], ROUNDED_MM);
        near_both(standard.z_mm, [4.30, 105.01], 1e-9);
        near_both(screw_axis(slot, CardHeight::Standard).get(), [screw, -17.19], ROUNDED_MM);
        let low = window(slot, CardHeight::LowProfile);
        near_both(low.x_mm, [from, to], ROUNDED_MM);
        near_both(low.z_mm, [4.02, 69.36], 1e-9);
        near_both(screw_axis(slot, CardHeight::LowProfile).get(), [centre - 15.50, -18.46], ROUNDED_MM);
        near_both(bracket_x_range(slot).get(), [centre - 16.36, centre + 2.06], ROUNDED_MM);
        near_both(tab_x_range(slot, CardHeight::Standard).get(), [centre - 13.82, centre + 5.23], ROUNDED_MM);
        near(tongue_centre_x(slot).get(), centre - 7.15, ROUNDED_MM);
        near(window_centre_x(slot).get(), centre - 7.16, 1e-9);
        near(card_face_x(slot).get(), centre - 0.785, 1e-9);
    }
}

#[test]
fn window_widths_leave_the_web_between_neighbours() {
    for height in CardHeight::ALL {
        let [left, right] = window(0, height).x_mm;
        near(right - left, WINDOW_WIDTH.get(), 1e-9);
        let [_, next_right] = window(1, height).x_mm;
        near(left - next_right, WINDOW_WEB.get(), 1e-9);
    }
}

#[test]
fn brackets_are_those_of_figures_9_5_and_9_9() {
    let standard = bracket(CardHeight::Standard);
    assert_eq!(
        [
            standard.length_mm,
            standard.straight_mm,
            standard.tongue_width_mm,
            standard.tab_depth_mm,
            standard.tab_width_mm,
            standard.screw_out_mm
        ],
        [120.02, 112.75, 10.19, 11.43, 19.05, 5.08]
    );
    let low = bracket(CardHeight::LowProfile);
    assert_eq!(
        [low.length_mm, low.straight_mm, low.tongue_width_mm, low.tab_depth_mm, low.tab_width_mm, low.screw_out_mm],
        [79.20, 71.46, 10.20, 11.84, 18.59, 6.35]
    );
    let [left, right] = tab_x_range(0, CardHeight::Standard).get();
    near(right - left, standard.tab_width_mm, 1e-9);
    let [left, right] = bracket_x_range(0).get();
    near(right - left, 18.42, 1e-9);
    // The tongue is centred: 4.11 from each side.
    near((right - left - standard.tongue_width_mm) / 2.0, 4.11, ROUNDED_MM);
    for (wide, body, length) in [(WIDE_BRACKETS[0], 38.74, 120.07), (WIDE_BRACKETS[1], 60.06, 120.11)] {
        assert_eq!((wide.body_mm, wide.length_mm), (body, length));
        assert_eq!(wide.notches_mm.len(), wide.slots as usize);
        near(*wide.notches_mm.last().expect("a notch"), body, 1e-9);
    }
    assert_eq!(WIDE_BRACKETS[1].notches_mm, &[19.42, 39.74, 60.06]);
}

#[test]
fn the_bracket_stands_against_the_wall() {
    near(BRACKET_OUTER_Y.get(), card_key_y().get() - BRACKET_FACE_BEHIND_KEY.get(), 1e-9);
    near(BRACKET_INNER_Y.get(), BRACKET_OUTER_Y.get() + BRACKET_THICKNESS.get(), 1e-9);
    // The wall's inner face lies within its tolerance of the bracket's outer face.
    near(BRACKET_OUTER_Y.get(), REAR_WALL_INNER_Y.get(), 0.25);
    // 57.15 to the card's end, 1.04 and the bracket's own thickness.
    near(BRACKET_FACE_BEHIND_KEY.get(), 57.15 + 1.04 + 0.86, 1e-9);
    for height in CardHeight::ALL {
        let [_, screw_y] = screw_axis(0, height).get();
        near(BRACKET_OUTER_Y.get() - screw_y, bracket(height).screw_out_mm, 1e-9);
        assert!(tab_outer_y(height).get() < screw_y);
    }
    near(tab_outer_y(CardHeight::Standard).get(), -23.54, 1e-9);
    near(tab_outer_y(CardHeight::LowProfile).get(), -23.95, 1e-9);
}

#[test]
fn shelf_and_tongue_follow_from_the_fingers() {
    for (height, above_fingers, window_gap, tip, bend) in
        [(CardHeight::Standard, 104.86, 4.82, -10.19, -2.92), (CardHeight::LowProfile, 68.09, 3.70, -6.14, 1.60)]
    {
        near(shelf_z(height).get(), FINGER_EDGE_Z.get() + above_fingers, 1e-9);
        near(shelf_z(height).get() - window(0, height).z_mm[1], window_gap, 1e-9);
        near(tongue_tip_z(height).get(), tip, 1e-9);
        near(straight_end_z(height).get(), bend, 1e-9);
    }
    near(shelf_z(CardHeight::Standard).get(), 109.83, 1e-9);
    near(shelf_z(CardHeight::LowProfile).get(), 73.06, 1e-9);
    assert!(STANDOFF_CLEARING_TONGUE.get() > -tongue_tip_z(CardHeight::Standard).get());
    // 5 mm bent by 5 degrees reach 0.44 mm outward.
    near(BRACKET_OUTER_Y.get() - TONGUE_TIP_OUTER_Y.get(), 0.45, 0.05);
    let [from, to] = TONGUE_SLOT_Y.get();
    assert!(from <= TONGUE_TIP_OUTER_Y.get() - 0.5 && to >= BRACKET_INNER_Y.get() + 0.5);
    assert!(TONGUE_SLOT_WIDTH.get() > bracket(CardHeight::LowProfile).tongue_width_mm);
}

#[test]
fn the_room_for_a_low_tab_holds_its_width_and_says_it_is_recalled() {
    let range = tab_x_range(2, CardHeight::LowProfile);
    let [left, right] = range.get();
    assert!(right - left >= bracket(CardHeight::LowProfile).tab_width_mm);
    let [screw_x, _] = screw_axis(2, CardHeight::LowProfile).get();
    assert!(left < screw_x && screw_x < right);
    assert_eq!(range.source().confidence, Confidence::FromMemory);
}

#[test]
fn plugs_need_a_wider_window_in_thicker_walls() {
    // Figure 9-24, from the bracket's outer face.
    for (distance, width) in
        [(0.9, 13.25), (3.0, 13.25), (3.01, 17.25), (4.0, 17.25), (4.01, 20.0), (6.0, 20.0), (12.0, 20.0)]
    {
        near(plug_free_width(distance).get(), width, 1e-9);
    }
    // The wall begins at y = -12.27 (ATX 2.2, figure 4), the bracket ends at -12.11: 0.16 more.
    for (thickness, width) in [(0.9, 13.25), (2.84, 13.25), (3.0, 17.25), (3.84, 17.25), (4.0, 20.0), (6.0, 20.0)] {
        near(window_width_in_wall(thickness).get(), width, 1e-9);
    }
    // Free widths of neighbours do not run into each other.
    assert!(plug_free_width(6.0).get() < SLOT_PITCH.get());
}
