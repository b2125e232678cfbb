//! The board with its slots and rear connectors, and the memory on it.

use super::{Scene, thin_axis};
use crate::dimensions::boards;
use crate::drawing::Colour;
use crate::parts::board as board_parts;
use crate::pictures::Projection;
use crate::pictures::case::piece::Piece;
use crate::pictures::case::solids::{OnFace, block};
use crate::solid::Aabb;

/// Width and length of a slot as drawn (a x16 slot is about 89 mm long and 7.5 wide), and its rear end in frame U.
const SLOT_MM: [f64; 2] = [7.5, 89.0];
const SLOT_FROM_Y: f64 = 22.0;
/// Side of the processor's socket as drawn.
const SOCKET_MM: f64 = 45.0;

/// Bodies: circuit board, connector block, then anything on the underside.
pub(super) fn board(owner: usize, bodies: &[Aabb], scene: &Scene, out: &mut Vec<Piece>) {
    for (index, body) in bodies.iter().enumerate() {
        let mut piece = block(owner, *body, if index == 1 { Colour::Metal } else { Colour::Board }, scene.view);
        match index {
            0 => top_of_board(&mut piece, scene),
            1 => connectors(&mut piece, scene.view),
            _ => {}
        }
        out.push(piece);
    }
}

/// Slots at their true places across the board, the socket at its place, mounting holes at theirs.
fn top_of_board(piece: &mut Piece, scene: &Scene) {
    let Some(mut face) = OnFace::of(piece, 2, true, scene.view) else { return };
    let spec = &scene.build.spec.board;
    let place = scene.build.arrangement.board;
    let at = |x: f64, y: f64| {
        let [x, y, _] = place.to_case([x, y, 0.0]);
        [x + scene.moved[0], y + scene.moved[1]]
    };
    for slot in 0..boards::slot_count(board_parts::table_form(spec.form)).get() {
        let x = boards::slot_centre_x(slot).get();
        let half = SLOT_MM[0] / 2.0;
        face.rect(Colour::Fitting, at(x - half, SLOT_FROM_Y + SLOT_MM[1]), at(x + half, SLOT_FROM_Y));
    }
    let [x, y] = board_parts::socket(spec);
    let half = SOCKET_MM / 2.0;
    face.rect(Colour::Metal, at(x - half, y + half), at(x + half, y - half));
    for hole in board_parts::holes(spec) {
        face.disc(Colour::Metal, at(hole.x_mm, hole.y_mm), 3.0);
    }
    // Small parts along the front edge.
    let [x0, y0] = face.min;
    for index in 0..4 {
        let x = x0 + 70.0 + 16.0 * f64::from(index);
        face.rect(Colour::Fitting, [x, y0 + 3.0], [x + 11.0, y0 + 10.0]);
    }
}

/// The rear connectors: a row of sockets on the side that shows in the aperture.
fn connectors(piece: &mut Piece, view: &Projection) {
    let Some(mut face) = OnFace::of(piece, 1, true, view) else { return };
    let ([x0, z0], [w, h]) = (face.min, face.size());
    for (from, to, low, high) in [
        (0.03, 0.13, 0.08, 0.42),
        (0.03, 0.13, 0.52, 0.88),
        (0.18, 0.29, 0.08, 0.30),
        (0.18, 0.29, 0.38, 0.60),
        (0.34, 0.45, 0.08, 0.30),
        (0.34, 0.45, 0.38, 0.85),
        (0.50, 0.61, 0.08, 0.30),
        (0.50, 0.61, 0.38, 0.85),
        (0.68, 0.75, 0.10, 0.30),
        (0.68, 0.75, 0.40, 0.60),
        (0.84, 0.93, 0.10, 0.34),
        (0.84, 0.93, 0.42, 0.66),
    ] {
        face.rect(Colour::Fitting, [x0 + w * from, z0 + h * low], [x0 + w * to, z0 + h * high]);
    }
}

/// Two sticks standing in the room that memory may fill.
pub(super) fn memory(owner: usize, bounds: Aabb, view: &Projection, out: &mut Vec<Piece>) {
    let size = bounds.size();
    let across = usize::from(size[0] > size[1]);
    for middle in [0.3, 0.7] {
        let mut stick = bounds;
        let centre = bounds.min[across] + size[across] * middle;
        let half = (size[across] * 0.1).min(2.0);
        stick.min[across] = centre - half;
        stick.max[across] = centre + half;
        let mut piece = block(owner, stick, Colour::Memory, view);
        super::on_big_faces(&mut piece, thin_axis(&stick), view, |face| {
            let ([a, z], [w, h]) = (face.min, face.size());
            for chip in 0..6 {
                let from = a + w * (0.06 + 0.155 * f64::from(chip));
                face.rect(Colour::Fitting, [from, z + h * 0.35], [from + w * 0.1, z + h * 0.8]);
            }
        });
        out.push(piece);
    }
}
