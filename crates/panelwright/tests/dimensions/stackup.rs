//! Worked examples of tolerance chains.

use super::{near, near_both};
use panelwright::dimensions::stackup::{Link, stack_up};

const EXACT_MM: f64 = 1e-6;

#[test]
fn chain_k12() {
    let gap = stack_up(&[
        Link::opening(40.0, 0.10),
        Link::closing(25.0, 0.05),
        Link::closing(2.0, 0.03),
        Link::closing(10.0, 0.05),
    ]);
    near(gap.mean_mm, 3.0, EXACT_MM);
    near(gap.worst_mm, 0.23, EXACT_MM);
    near_both(gap.worst_range_mm(), [2.770, 3.230], EXACT_MM);
    near(gap.likely_mm, 0.126_095, EXACT_MM);
    near_both(gap.likely_range_mm(), [3.0 - 0.126_095, 3.0 + 0.126_095], EXACT_MM);
}

#[test]
fn chain_k13_with_lopsided_tolerances() {
    let gap = stack_up(&[
        Link::opening(60.0, 0.0).with_limits(0.20, 0.0),
        Link::closing(58.0, 0.0).with_limits(0.0, 0.30),
        Link::closing(0.5, 0.05),
    ]);
    near(gap.mean_mm, 1.750, EXACT_MM);
    near_both(gap.worst_range_mm(), [1.450, 2.050], EXACT_MM);
    near(gap.likely_mm, 0.187_083, EXACT_MM);
}

#[test]
fn chain_k14_board_and_spacers_in_a_panel() {
    let gap = stack_up(&[
        Link::opening(191.0, 0.5),
        Link::closing(170.0, 0.2),
        Link::closing(10.0, 0.1),
        Link::closing(10.0, 0.1),
    ]);
    near(gap.mean_mm, 1.0, EXACT_MM);
    near_both(gap.worst_range_mm(), [0.1, 1.9], EXACT_MM);
    near(gap.likely_mm, 0.556_776, EXACT_MM);
}

#[test]
fn an_empty_chain_is_no_gap_and_one_link_is_itself() {
    let nothing = stack_up(&[]);
    assert_eq!([nothing.mean_mm, nothing.worst_mm, nothing.likely_mm], [0.0; 3]);
    let one = stack_up(&[Link::closing(6.0, 0.2)]);
    near(one.mean_mm, -6.0, EXACT_MM);
    near(one.worst_mm, one.likely_mm, EXACT_MM);
}
