//! What carries the board: its rows of standoffs, and whether standoffs are sold that long.

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::dimensions::boards::{self, BoardForm, HOLE_DIAMETER, MIN_STANDOFF};
use crate::dimensions::source::Source;
use crate::dimensions::standoffs::{STANDOFF_LENGTHS, sold_beside};
use crate::parts::board::{holes, outline, table_form};
use crate::parts::{Part, PartKind};
use crate::solid::TOUCH_MM;

pub(super) const BOARD_SUPPORT: Rule = Rule {
    name: "board-support",
    what: "Standoffs carry the board's front as well as its rear.",
    source: Source::derived(
        "Outlines and holes of the board standards",
        "no board stands out further before its front row than the largest FlexATX",
    ),
    look: board_support,
};

pub(super) const STANDOFF_SOLD: Rule = Rule {
    name: "standoff-sold",
    what: "Standoffs are sold in the length that is chosen.",
    source: STANDOFF_LENGTHS.source(),
    look: standoff_sold,
};

/// How far the front edge of any board, as deep as its standard allows, lies before its front row of holes, mm.
fn most_overhang() -> f64 {
    let of = |form: &BoardForm| boards::outline(*form).front_y - front_row(&boards::holes_on(*form, f64::INFINITY));
    BoardForm::ALL.iter().map(of).fold(0.0, f64::max)
}

fn front_row(holes: &[boards::BoardHole]) -> f64 {
    holes.iter().map(|hole| hole.y_mm).fold(f64::NEG_INFINITY, f64::max)
}

/// Middle of the board's front edge, on its underside.
fn front_edge(scene: &Scene, board: &Part) -> [f64; 3] {
    let bounds = board.bounds();
    [bounds.centre()[0], bounds.min[1], scene.board_under()]
}

fn board_support(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(board) = scene.first(PartKind::Board) else { return };
    let spec = &scene.case.spec.board;
    let (outline, form) = (outline(spec), table_form(spec.form));
    let drilled = holes(spec);
    let row = front_row(&drilled);
    let (overhang, limit) = (outline.front_y - row, most_overhang());
    if overhang <= limit + TOUCH_MM {
        return;
    }
    // With its middle before the front row it stands on nothing: a card or memory pushed in bends or tips it.
    let falls = (outline.rear_y + outline.front_y) / 2.0 > row;
    let next = boards::holes_on(form, f64::INFINITY).into_iter().map(|hole| hole.y_mm).filter(|y| *y > row + TOUCH_MM);
    let next = next.fold(f64::INFINITY, f64::min);
    let (severity, text) = if falls {
        (
            Severity::Blocks,
            format!(
                "A board {} deep has standoffs only near its rear edge: {} of it stand out before the last of them.",
                words::limit(outline.depth),
                words::mm(overhang)
            ),
        )
    } else {
        (
            Severity::Caution,
            format!("The board's front edge stands out {} before its last row of standoffs.", words::mm(overhang)),
        )
    };
    let pad = "rest the front edge on a soft pad as high as the standoffs.";
    let remedy = if next.is_finite() {
        // A hole counts once the board reaches past its rim.
        let depth = words::at_least(next + HOLE_DIAMETER.get() / 2.0 - outline.rear_y + 0.1);
        let again = format!("Measure the depth again: from {depth} on, boards of this form have another row of holes");
        if falls { format!("{again}.") } else { format!("{again}. Else {pad}") }
    } else {
        words::capital(pad)
    };
    found.push(
        BOARD_SUPPORT
            .finds(severity, text)
            .with_mm(overhang, limit)
            .with_remedy(remedy)
            .with_about([board.id.as_str(), "floor"])
            .with_at(front_edge(scene, board)),
    );
}

fn standoff_sold(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(board) = scene.first(PartKind::Board) else { return };
    let length = scene.case.spec.board.standoff_mm;
    let beside = sold_beside(length);
    if beside.into_iter().flatten().any(|sold| (sold - length).abs() < TOUCH_MM) {
        return;
    }
    let sold: Vec<String> =
        beside.into_iter().flatten().filter(|sold| *sold >= MIN_STANDOFF.get() - TOUCH_MM).map(words::limit).collect();
    found.push(
        STANDOFF_SOLD
            .note(format!("Standoffs of {} are not usually sold.", words::limit(length)))
            .with_measured_mm(length)
            .with_remedy(format!("Take standoffs of {}, or measure what you have.", sold.join(" or ")))
            .with_about([board.id.as_str()])
            .with_at(front_edge(scene, board)),
    );
}
