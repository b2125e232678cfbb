//! What moves air: coolers with their fins, fans with their blades, the supply with its grille.

use core::f64::consts::TAU;

use super::{Scene, label, on_big_faces, thin_axis};
use crate::design::CoolerKind;
use crate::drawing::Colour;
use crate::pictures::Projection;
use crate::pictures::case::piece::Piece;
use crate::pictures::case::solids::{OnFace, block};
use crate::solid::Aabb;

/// Distance between the fins as drawn, mm.
const FIN_PITCH_MM: f64 = 4.0;
/// Blades of a fan as drawn.
const BLADES: usize = 7;

/// Bodies: fins, then the base under them.
pub(super) fn cooler(owner: usize, bodies: &[Aabb], scene: &Scene, out: &mut Vec<Piece>) {
    let view = scene.view;
    let flat = scene.build.spec.cooler.as_ref().is_some_and(|cooler| cooler.kind == CoolerKind::Flat);
    for (index, body) in bodies.iter().enumerate() {
        let mut piece = block(owner, *body, if index == 0 { Colour::Cooler } else { Colour::Metal }, view);
        if index == 0 {
            for (axis, upper) in [(0, true), (0, false), (1, true), (1, false)] {
                if let Some(mut face) = OnFace::of(&mut piece, axis, upper, view) {
                    fins(&mut face, flat);
                }
            }
            if let Some(mut top) = OnFace::of(&mut piece, 2, true, view) {
                if flat { blades(&mut top) } else { pipe_ends(&mut top) }
            }
        }
        out.push(piece);
    }
}

/// Fins seen from the side: a tower's lie level, a flat cooler's stand.
fn fins(face: &mut OnFace, standing: bool) {
    let (min, max) = (face.min, face.max);
    let way = usize::from(!standing);
    let count = ((max[way] - min[way]) / FIN_PITCH_MM) as usize;
    face.lines((1..count).map(|index| {
        let at = min[way] + (max[way] - min[way]) * index as f64 / count as f64;
        if standing { vec![[at, min[1]], [at, max[1]]] } else { vec![[min[0], at], [max[0], at]] }
    }));
}

/// Ends of the heat pipes on top of a tower, in two rows.
fn pipe_ends(face: &mut OnFace) {
    let ([x, y], [w, h]) = (face.middle(), face.size());
    let (wide, long) = if w >= h { (w, true) } else { (h, false) };
    for row in [-0.2, 0.2] {
        for step in [-0.3, -0.1, 0.1, 0.3] {
            let (along, across) = (wide * step, w.min(h) * row);
            let at = if long { [x + along, y + across] } else { [x + across, y + along] };
            face.disc(Colour::Metal, at, 3.0);
        }
    }
}

/// A fan: ring, hub and blades on both sides, holes in the corners.
pub(super) fn fan(owner: usize, bounds: Aabb, view: &Projection) -> Piece {
    let mut piece = block(owner, bounds, Colour::Fan, view);
    on_big_faces(&mut piece, thin_axis(&bounds), view, |face| {
        blades(face);
        let ([x, y], [w, h]) = (face.middle(), face.size());
        let corner = [w, h].map(|size| size * 0.44);
        for (a, b) in [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)] {
            face.disc(Colour::Fitting, [x + a * corner[0], y + b * corner[1]], w * 0.022);
        }
    });
    piece
}

/// The mouth of a fan, as large as the face takes.
fn blades(face: &mut OnFace) {
    let [w, h] = face.size();
    rotor(face, face.middle(), w.min(h) * 0.47, BLADES, Colour::Fan);
}

/// A mouth with blades and a hub.
pub(super) fn rotor(face: &mut OnFace, [x, y]: [f64; 2], radius: f64, blades: usize, colour: Colour) {
    let hub = radius * 0.36;
    face.disc(Colour::Fitting, [x, y], radius);
    let at = |r: f64, turn: f64| [x + r * libm::cos(turn), y + r * libm::sin(turn)];
    let width = TAU / blades as f64;
    let tip = radius * 0.94;
    for blade in 0..blades {
        let turn = width * blade as f64;
        // Leading edge outward with a sweep, along the ring, trailing edge back to the hub.
        let out = (0..=3).map(|step| f64::from(step) / 3.0);
        let leading = out.clone().map(|s| at(hub + (tip - hub) * s, turn + 0.5 * s * s));
        let ring = (1..3).map(|step| at(tip, turn + 0.5 + width * 0.62 * f64::from(step) / 3.0));
        let trailing =
            out.rev().map(|s| at(hub + (tip - hub) * s, turn + 0.62 * width * (0.55 + 0.45 * s) + 0.5 * s * s));
        face.area(colour, leading.chain(ring).chain(trailing).collect::<Vec<_>>());
    }
    face.disc(colour, [x, y], hub);
}

/// The supply: inlet and switch on the face that lies against its panel, the grille of its fan where the fan is known
/// to be, a label on the other sides.
pub(super) fn supply(owner: usize, bounds: Aabb, scene: &Scene) -> Piece {
    let view = scene.view;
    let mut piece = block(owner, bounds, Colour::Supply, view);
    let Some(place) = &scene.build.arrangement.supply else { return piece };
    let side_of = |towards: [f64; 3]| (0..3).find(|axis| towards[*axis] != 0.0).map(|axis| (axis, towards[axis] > 0.0));
    let (face_side, fan_side) = (side_of(place.face.out), place.fan_towards.and_then(side_of));
    for axis in 0..3 {
        for upper in [true, false] {
            let Some(mut face) = OnFace::of(&mut piece, axis, upper, view) else { continue };
            if face_side == Some((axis, upper)) {
                inlet(&mut face);
            } else if fan_side == Some((axis, upper)) {
                grille(&mut face);
            } else if face_side.is_some_and(|(inlet_axis, _)| inlet_axis != axis) {
                label(&mut face, [0.2, 0.3], [0.8, 0.72]);
            }
        }
    }
    piece
}

/// Mains inlet and switch.
fn inlet(face: &mut OnFace) {
    let ([x, y], [w, h]) = (face.min, face.size());
    face.rect(Colour::Fitting, [x + w * 0.1, y + h * 0.3], [x + w * 0.1 + 27.0, y + h * 0.3 + 20.0]);
    face.rect(Colour::Fitting, [x + w * 0.1 + 34.0, y + h * 0.3], [x + w * 0.1 + 47.0, y + h * 0.3 + 20.0]);
}

/// A wire grille: rings and two bars over the mouth of the fan.
fn grille(face: &mut OnFace) {
    let ([x, y], [w, h]) = (face.middle(), face.size());
    let radius = w.min(h) * 0.44;
    face.disc(Colour::Fitting, [x, y], radius);
    let bar = radius * core::f64::consts::FRAC_1_SQRT_2;
    face.disc(Colour::Supply, [x, y], radius * 0.22);
    face.circles([0.42, 0.62, 0.82].map(|part| ([x, y], radius * part)));
    face.lines([vec![[x - bar, y - bar], [x + bar, y + bar]], vec![[x - bar, y + bar], [x + bar, y - bar]]]);
}
