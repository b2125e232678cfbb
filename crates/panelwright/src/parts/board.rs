//! The board, its memory and its standoffs.

use super::BoardPlace;
use crate::design::{BoardForm, BoardSpec, MemorySide};
use crate::dimensions::boards::{self, BoardHole, Outline};
use crate::parts::{Carrier, Part, PartKind};
use crate::solid::Aabb;

/// Side of the square a standoff fills, mm: hexagonal standoffs of 5 to 7 mm across flats (from memory: measure yours),
/// inside the 10.16 mm square the ATX specification keeps free (section 3.4.2).
pub const STANDOFF_MM: f64 = 7.0;

/// How far the rear connectors reach in over the board from hole row A-B-C, mm in frame U (from memory: measure
/// yours; the standards fix their outer face only).
pub const CONNECTORS_REACH_Y: f64 = 14.0;

/// Assumed middle of the processor from the right and the rear edge where the maker has not measured, mm (from
/// memory: measure yours; ATX specification 2.2, section 3.3.7, fixes none).
pub const ASSUMED_SOCKET_MM: [f64; 2] = [79.0, 75.0];

/// Length and width of the room two memory modules take, mm (from memory: measure yours; modules are 133.35 long).
const MEMORY_MM: [f64; 2] = [136.0, 24.0];

/// Gap between memory and the edge of the board it stands along, mm (from memory: measure yours).
const MEMORY_FROM_EDGE_MM: f64 = 8.0;

/// An M.2 card on the underside: length, width and how far it stands down, mm (width and length: M.2 2280; height
/// from memory: measure yours).
const M2_BELOW_MM: [f64; 3] = [80.0, 22.0, 5.0];

/// From the processor's middle to the near side of such a card, towards the front, mm (from memory: measure yours).
const M2_BEFORE_SOCKET_MM: f64 = 40.0;

/// Between the rear connectors and memory along the right edge, mm (from memory: measure yours).
const MEMORY_FROM_CONNECTORS_MM: f64 = 6.0;

/// The tables' name of a board form.
#[must_use]
pub const fn table_form(form: BoardForm) -> boards::BoardForm {
    match form {
        BoardForm::MiniItx => boards::BoardForm::MiniItx,
        BoardForm::MiniDtx => boards::BoardForm::MiniDtx,
        BoardForm::Dtx => boards::BoardForm::Dtx,
        BoardForm::FlexAtx => boards::BoardForm::FlexAtx,
        BoardForm::MicroAtx => boards::BoardForm::MicroAtx,
        BoardForm::Atx => boards::BoardForm::Atx,
    }
}

/// Outline of the board in frame U, with the maker's depth.
#[must_use]
pub fn outline(spec: &BoardSpec) -> Outline {
    let mut outline = boards::outline(table_form(spec.form));
    if let Some(depth) = spec.depth_mm {
        outline.front_y = outline.rear_y + depth;
        outline.depth = depth;
    }
    outline
}

/// The mounting holes that lie on the board as deep as it is.
#[must_use]
pub fn holes(spec: &BoardSpec) -> Vec<BoardHole> {
    boards::holes_on(table_form(spec.form), outline(spec).depth)
}

/// Middle of the processor in frame U: measured, else assumed.
#[must_use]
pub fn socket(spec: &BoardSpec) -> [f64; 2] {
    let outline = outline(spec);
    [
        outline.right_x - spec.socket_from_right_mm.unwrap_or(ASSUMED_SOCKET_MM[0]),
        outline.rear_y + spec.socket_from_rear_mm.unwrap_or(ASSUMED_SOCKET_MM[1]),
    ]
}

/// A box of frame U in the case.
#[must_use]
pub fn u_box(place: &BoardPlace, x: [f64; 2], y: [f64; 2], z: [f64; 2]) -> Aabb {
    Aabb::new(place.to_case([x[0], y[0], z[0]]), place.to_case([x[1], y[1], z[1]]))
}

/// Board, memory and standoffs in their place.
#[must_use]
pub fn parts(spec: &BoardSpec, place: &BoardPlace) -> Vec<Part> {
    let outline = outline(spec);
    let top = boards::PCB_THICKNESS.get();
    let part = |id: &str, kind, label: &str, bodies| Part {
        id: id.to_owned(),
        kind,
        label: label.to_owned(),
        carrier: Carrier::Chassis,
        bodies,
        keep_clear: Vec::new(),
    };
    let mut bodies = vec![
        u_box(place, [outline.left_x, outline.right_x], [outline.rear_y, outline.front_y], [0.0, top]),
        u_box(
            place,
            boards::IO_CONNECTOR_X.get(),
            [boards::IO_CONNECTOR_FACE_Y.get(), CONNECTORS_REACH_Y],
            boards::IO_CONNECTOR_Z.get(),
        ),
    ];
    if spec.m2_below {
        let [x, y] = socket(spec);
        let [length, width, down] = M2_BELOW_MM;
        let front = (y + M2_BEFORE_SOCKET_MM + width).min(outline.front_y);
        bodies.push(u_box(place, [x - length / 2.0, x + length / 2.0], [front - width, front], [-down, 0.0]));
    }
    let mut parts = vec![part("board", PartKind::Board, boards::BoardForm::label(table_form(spec.form)), bodies)];
    parts.push(part("memory", PartKind::Memory, "Memory", vec![memory(spec, place, &outline, top)]));
    for hole in holes(spec) {
        let half = STANDOFF_MM / 2.0;
        let id = format!("standoff-{}", hole.letter);
        let body = u_box(
            place,
            [hole.x_mm - half, hole.x_mm + half],
            [hole.y_mm - half, hole.y_mm + half],
            [-spec.standoff_mm, 0.0],
        );
        parts.push(part(&id, PartKind::Standoff, &format!("Standoff {}", hole.letter), vec![body]));
    }
    parts
}

fn memory(spec: &BoardSpec, place: &BoardPlace, outline: &Outline, top: f64) -> Aabb {
    let [length, width] = MEMORY_MM;
    let z = [top, top + spec.memory_height_mm];
    let rear_limit = CONNECTORS_REACH_Y;
    match spec.memory_side {
        MemorySide::Right => {
            let right = outline.right_x - MEMORY_FROM_EDGE_MM;
            let front = (rear_limit + MEMORY_FROM_CONNECTORS_MM + length).min(outline.front_y);
            let rear = (front - length).max(rear_limit);
            u_box(place, [right - width, right], [rear, front], z)
        }
        MemorySide::Front => {
            let front = outline.front_y - MEMORY_FROM_EDGE_MM;
            let middle = socket(spec)[0];
            let left = (middle - length / 2.0).max(outline.left_x).min(outline.right_x - length);
            u_box(place, [left, left + length], [(front - width).max(rear_limit), front], z)
        }
    }
}
