//! Parts as simple drawn forms: what lies within each body's box, so that one knows a part at a glance.
//!
//! The boxes are the build's; what is drawn on them (fins, blades, slots, labels) is drawn by eye and measures
//! nothing, save where a comment says so.

mod air;
mod board;
mod card;

use super::piece::Piece;
use super::solids::{OnFace, bar, block};
use crate::Build;
use crate::drawing::Colour;
use crate::parts::{Part, PartKind};
use crate::pictures::Projection;
use crate::solid::Aabb;

/// What a form needs to know besides its part.
pub(super) struct Scene<'a> {
    /// The build.
    pub build: &'a Build,
    /// The way one looks at it.
    pub view: &'a Projection,
    /// How far the part is moved from its place in the case.
    pub moved: [f64; 3],
}

/// The pieces of a part, in the scene.
pub(super) fn pieces(owner: usize, part: &Part, scene: &Scene, out: &mut Vec<Piece>) {
    let view = scene.view;
    let bodies: Vec<Aabb> = part.bodies.iter().map(|body| body.moved(scene.moved)).collect();
    let Some(first) = bodies.first().copied() else { return };
    let plain = |colour: Colour| bodies.iter().map(move |body| block(owner, *body, colour, view));
    match part.kind {
        PartKind::Board => board::board(owner, &bodies, scene, out),
        PartKind::Memory => board::memory(owner, first, view, out),
        PartKind::Cooler => air::cooler(owner, &bodies, scene, out),
        PartKind::Fan => out.push(air::fan(owner, first, view)),
        PartKind::Supply => out.push(air::supply(owner, first, scene)),
        PartKind::Card => out.push(card::card(owner, first, view)),
        PartKind::CardBracket => card::bracket(owner, &bodies, view, out),
        PartKind::Drive => out.push(drive(owner, first, view)),
        PartKind::Standoff => out.push(bar(owner, first, 2, Colour::Metal, view)),
        PartKind::Washer => {
            out.extend(bodies.iter().map(|body| bar(owner, *body, thin_axis(body), Colour::Metal, view)))
        }
        // What stands below the floor, then its nut.
        PartKind::Foot => out.extend(bodies.iter().enumerate().map(|(index, body)| {
            let colour = if index == 0 { Colour::Fitting } else { Colour::Metal };
            bar(owner, *body, 2, colour, view)
        })),
        PartKind::Button | PartKind::Jack => {
            // What hangs on a panel has its bezel, the last body, flat on the outside.
            let axis = bodies.last().map_or(1, thin_axis);
            out.extend(bodies.iter().map(|body| round_fitting(owner, *body, axis, view)));
        }
        PartKind::Port => port(owner, &bodies, view, out),
        PartKind::Bracket | PartKind::CaptiveNut => out.extend(bodies.iter().map(|leg| bracket_leg(owner, *leg, view))),
        PartKind::Shelf => out.extend(plain(Colour::Metal)),
        PartKind::Block => out.extend(plain(Colour::Fitting)),
    }
}

/// The axis along which a box is thinnest.
fn thin_axis(bounds: &Aabb) -> usize {
    let size = bounds.size();
    (0..3).min_by(|a, b| size[*a].total_cmp(&size[*b])).unwrap_or(2)
}

/// Draws on both big faces of a block, those square to `axis`; only one of them is seen.
fn on_big_faces(piece: &mut Piece, axis: usize, view: &Projection, draw: impl Fn(&mut OnFace)) {
    for upper in [true, false] {
        if let Some(mut face) = OnFace::of(piece, axis, upper, view) {
            draw(&mut face);
        }
    }
}

/// A drive: its label on the big faces, with two lines of writing.
fn drive(owner: usize, bounds: Aabb, view: &Projection) -> Piece {
    let mut piece = block(owner, bounds, Colour::Drive, view);
    on_big_faces(&mut piece, thin_axis(&bounds), view, |face| {
        label(face, [0.12, 0.2], [0.88, 0.72]);
    });
    piece
}

/// A label between two places given as fractions of the face, with writing on it.
fn label(face: &mut OnFace, from: [f64; 2], to: [f64; 2]) {
    let [w, h] = face.size();
    let at = |fraction: [f64; 2]| [face.min[0] + w * fraction[0], face.min[1] + h * fraction[1]];
    let (low, high) = (at(from), at(to));
    face.rect(Colour::Paper, low, high);
    let (width, height) = (high[0] - low[0], high[1] - low[1]);
    let line = |up: f64, to: f64| {
        vec![[low[0] + width * 0.1, low[1] + height * up], [low[0] + width * to, low[1] + height * up]]
    };
    face.lines([line(0.75, 0.6), line(0.5, 0.9), line(0.3, 0.8)]);
}

/// A button or jack: round, with a ring on its cap.
fn round_fitting(owner: usize, bounds: Aabb, axis: usize, view: &Projection) -> Piece {
    let mut piece = bar(owner, bounds, axis, Colour::Fitting, view);
    on_big_faces(&mut piece, axis, view, |face| {
        let [w, h] = face.size();
        face.disc(Colour::Metal, face.middle(), w.min(h) * 0.32);
    });
    piece
}

/// A front connector: its socket on the bezel. Wide ones are slots, square ones round.
fn port(owner: usize, bodies: &[Aabb], view: &Projection, out: &mut Vec<Piece>) {
    let axis = bodies.last().map_or(1, thin_axis);
    for body in bodies {
        let mut piece = block(owner, *body, Colour::Fitting, view);
        on_big_faces(&mut piece, axis, view, |face| {
            let ([w, h], [x, y]) = (face.size(), face.middle());
            if (w - h).abs() < 1.0 {
                face.disc(Colour::Metal, [x, y], w.min(h) * 0.3);
            } else {
                let (a, b) = (w * 0.2, h * 0.22);
                face.rect(Colour::Metal, [x - a, y - b], [x + a, y + b]);
            }
        });
        out.push(piece);
    }
}

/// A leg of a bracket, with its hole.
fn bracket_leg(owner: usize, leg: Aabb, view: &Projection) -> Piece {
    let mut piece = block(owner, leg, Colour::Metal, view);
    on_big_faces(&mut piece, thin_axis(&leg), view, |face| {
        let [w, h] = face.size();
        face.disc(Colour::Fitting, face.middle(), w.min(h) * 0.16);
    });
    piece
}
