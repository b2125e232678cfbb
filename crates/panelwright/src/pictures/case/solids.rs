//! Simple solids as pieces: blocks and cylinders, with the faces that the eye can see, and a way to draw on a face.

use super::piece::{At, Facet, Pen, Piece, Side, Stroke};
use crate::drawing::Colour;
use crate::pictures::Projection;
use crate::solid::{Aabb, within};

/// The corners of the face of a box square to `axis`, on its upper or lower side.
fn face_ring(bounds: &Aabb, axis: usize, upper: bool) -> Vec<At> {
    let (b, c) = others(axis);
    let corner = |high_b: bool, high_c: bool| {
        let pick = |axis: usize, high: bool| if high { bounds.max[axis] } else { bounds.min[axis] };
        let mut at = [0.0; 3];
        at[axis] = pick(axis, upper);
        at[b] = pick(b, high_b);
        at[c] = pick(c, high_c);
        at
    };
    vec![corner(false, false), corner(true, false), corner(true, true), corner(false, true)]
}

/// The two other axes, in order.
const fn others(axis: usize) -> (usize, usize) {
    match axis {
        0 => (1, 2),
        1 => (0, 2),
        _ => (0, 1),
    }
}

/// Whether the eye sees the upper (`Some(true)`) or the lower face square to `axis`, or neither.
fn seen_side(view: &Projection, axis: usize) -> Option<bool> {
    let mut normal = [0.0; 3];
    normal[axis] = 1.0;
    if view.sees(normal) {
        return Some(true);
    }
    normal[axis] = -1.0;
    view.sees(normal).then_some(false)
}

/// A plain block.
pub(super) fn block(owner: usize, bounds: Aabb, colour: Colour, view: &Projection) -> Piece {
    let facets = (0..3)
        .filter_map(|axis| {
            let ring = face_ring(&bounds, axis, seen_side(view, axis)?);
            let side = Side::of_axis(axis);
            Some(Facet { rings: vec![ring], colour, side, outline: Some(Pen::Thin), strokes: Vec::new() })
        })
        .collect();
    Piece::solid(owner, bounds, facets)
}

/// A round bar that fills the box along `axis`.
pub(super) fn bar(owner: usize, bounds: Aabb, axis: usize, colour: Colour, view: &Projection) -> Piece {
    let (b, c) = others(axis);
    let (size, centre) = (bounds.size(), bounds.centre());
    let count = corners_of_round(size[b].max(size[c]) / 2.0);
    let rim = |upper: bool| -> Vec<At> {
        let step = |index: usize| {
            let angle = core::f64::consts::TAU * index as f64 / count as f64;
            let mut at = [0.0; 3];
            at[axis] = if upper { bounds.max[axis] } else { bounds.min[axis] };
            at[b] = centre[b] + size[b] / 2.0 * libm::cos(angle);
            at[c] = centre[c] + size[c] / 2.0 * libm::sin(angle);
            at
        };
        (0..count).map(step).collect()
    };
    let (low, high) = (rim(false), rim(true));
    // A side is seen when its normal leans to the eye.
    let leans = |index: usize| {
        let angle = core::f64::consts::TAU * (index as f64 + 0.5) / count as f64;
        let mut normal = [0.0; 3];
        normal[b] = libm::cos(angle) / size[b];
        normal[c] = libm::sin(angle) / size[c];
        view.sees(normal)
    };
    let mut facets = Vec::new();
    if let Some(start) = (0..count).find(|index| leans(*index) && !leans((*index + count - 1) % count)) {
        let seen = (0..count).take_while(|step| leans((start + step) % count)).count();
        let along = |rim: &[At]| -> Vec<At> { (0..=seen).map(|step| rim[(start + step) % count]).collect() };
        let mut ring = along(&low);
        ring.extend(along(&high).into_iter().rev());
        facets.push(Facet {
            rings: vec![ring],
            colour,
            side: Side::Round,
            outline: Some(Pen::Thin),
            strokes: Vec::new(),
        });
    }
    if let Some(upper) = seen_side(view, axis) {
        let cap = if upper { high } else { low };
        let side = Side::of_axis(axis);
        facets.push(Facet { rings: vec![cap], colour, side, outline: Some(Pen::Thin), strokes: Vec::new() });
    }
    Piece::solid(owner, bounds, facets)
}

/// Corners enough for a circle of this radius: chords within [`super::plate::CHORD_MM`].
fn corners_of_round(radius_mm: f64) -> usize {
    crate::drawing::chords_for_circle(radius_mm, super::plate::CHORD_MM).clamp(10, 64)
}

/// The visible face of a block, to draw on. Points on it are case coordinates along the two other axes, in order
/// (x, y), (x, z) or (y, z).
pub(super) struct OnFace<'a> {
    piece: &'a mut Piece,
    axis: usize,
    level: f64,
    /// Lower corner of the face.
    pub min: [f64; 2],
    /// Upper corner of the face.
    pub max: [f64; 2],
}

impl<'a> OnFace<'a> {
    /// The face of a block square to `axis`, on its upper or lower side; `None` when the eye does not see it.
    pub(super) fn of(piece: &'a mut Piece, axis: usize, upper: bool, view: &Projection) -> Option<Self> {
        if seen_side(view, axis) != Some(upper) {
            return None;
        }
        let bounds = piece.bounds;
        let (b, c) = others(axis);
        let level = if upper { bounds.max[axis] } else { bounds.min[axis] };
        let (min, max) = ([bounds.min[b], bounds.min[c]], [bounds.max[b], bounds.max[c]]);
        Some(Self { piece, axis, level, min, max })
    }

    /// Width and height of the face.
    pub(super) fn size(&self) -> [f64; 2] {
        [self.max[0] - self.min[0], self.max[1] - self.min[1]]
    }

    /// Middle of the face.
    pub(super) fn middle(&self) -> [f64; 2] {
        [(self.max[0] + self.min[0]) / 2.0, (self.max[1] + self.min[1]) / 2.0]
    }

    fn place(&self, point: [f64; 2]) -> At {
        let (b, c) = others(self.axis);
        let mut at = [0.0; 3];
        at[self.axis] = self.level;
        at[b] = point[0];
        at[c] = point[1];
        at
    }

    /// An area with a thin line around it.
    pub(super) fn area(&mut self, colour: Colour, corners: impl IntoIterator<Item = [f64; 2]>) {
        let ring = corners.into_iter().map(|point| self.place(point)).collect();
        let side = Side::of_axis(self.axis);
        let facet = Facet { rings: vec![ring], colour, side, outline: Some(Pen::Thin), strokes: Vec::new() };
        self.piece.under.push(facet);
    }

    /// A rectangle between two corners, kept inside the face.
    pub(super) fn rect(&mut self, colour: Colour, from: [f64; 2], to: [f64; 2]) {
        let keep = |value: f64, way: usize| within(value, self.min[way], self.max[way]);
        let (x0, y0, x1, y1) = (keep(from[0], 0), keep(from[1], 1), keep(to[0], 0), keep(to[1], 1));
        if x1 > x0 && y1 > y0 {
            self.area(colour, [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]);
        }
    }

    /// A disc.
    pub(super) fn disc(&mut self, colour: Colour, centre: [f64; 2], radius_mm: f64) {
        self.area(colour, round(centre, radius_mm));
    }

    /// Thin lines, each through its points.
    pub(super) fn lines(&mut self, lines: impl IntoIterator<Item = Vec<[f64; 2]>>) {
        let strokes: Vec<Stroke> = lines
            .into_iter()
            .map(|points| {
                let points = points.into_iter().map(|point| self.place(point)).collect();
                Stroke { points, closed: false, pen: Pen::Thin }
            })
            .collect();
        if let Some(facet) = self.piece.under.last_mut() {
            facet.strokes.extend(strokes);
        }
    }

    /// Circles as thin lines.
    pub(super) fn circles(&mut self, circles: impl IntoIterator<Item = ([f64; 2], f64)>) {
        let closed = circles.into_iter().map(|(centre, radius)| {
            let mut points: Vec<[f64; 2]> = round(centre, radius).collect();
            points.extend(points.first().copied());
            points
        });
        self.lines(closed);
    }
}

/// Corners of a circle.
fn round(centre: [f64; 2], radius_mm: f64) -> impl Iterator<Item = [f64; 2]> {
    let count = corners_of_round(radius_mm);
    (0..count).map(move |index| {
        let angle = core::f64::consts::TAU * index as f64 / count as f64;
        [centre[0] + radius_mm * libm::cos(angle), centre[1] + radius_mm * libm::sin(angle)]
    })
}
