//! The card with its fans, and its bracket with the display plugs.

use crate::drawing::Colour;
use crate::pictures::Projection;
use crate::pictures::case::piece::Piece;
use crate::pictures::case::solids::{OnFace, block};
use crate::solid::Aabb;

/// The card stands along y; its component side, with the fans, looks to the left (-x).
pub(super) fn card(owner: usize, bounds: Aabb, view: &Projection) -> Piece {
    let mut piece = block(owner, bounds, Colour::Card, view);
    if let Some(mut face) = OnFace::of(&mut piece, 0, false, view) {
        let ([y, z], [length, height]) = (face.middle(), face.size());
        // As many fans as fit side by side, at most three.
        let count = ((length / (height * 0.86)) as usize).clamp(1, 3);
        let radius = (height * 0.42).min(length / count as f64 * 0.46);
        for index in 0..count {
            let along = y + (index as f64 + 0.5 - count as f64 / 2.0) * (length / count as f64);
            super::air::rotor(&mut face, [along, z], radius, 9, Colour::Card);
        }
    }
    // The circuit board, on the side away from the fans, shows on top and at the end.
    let edge = bounds.max[0] - 3.5;
    if edge > bounds.min[0] {
        if let Some(mut top) = OnFace::of(&mut piece, 2, true, view) {
            let (low, high) = (top.min[1], top.max[1]);
            top.lines([vec![[edge, low], [edge, high]]]);
        }
        for upper in [true, false] {
            if let Some(mut end) = OnFace::of(&mut piece, 1, upper, view) {
                let (low, high) = (end.min[1], end.max[1]);
                end.lines([vec![[edge, low], [edge, high]]]);
            }
        }
    }
    piece
}

/// Bodies: plate, tab, tongues. Display plugs show on the plate from behind.
pub(super) fn bracket(owner: usize, bodies: &[Aabb], view: &Projection, out: &mut Vec<Piece>) {
    for (index, body) in bodies.iter().enumerate() {
        let mut piece = block(owner, *body, Colour::Metal, view);
        if index == 0
            && let Some(mut plate) = OnFace::of(&mut piece, 1, true, view)
        {
            let ([x, z], [w, h]) = (plate.min, plate.size());
            // The plugs stand at the card's own slot, on the right as the case is seen from the front.
            let from = x + w - 15.0;
            for low in [0.14, 0.36, 0.58] {
                plate.rect(Colour::Fitting, [from, z + h * low], [from + 7.0, z + h * (low + 0.15)]);
            }
        }
        out.push(piece);
    }
}
