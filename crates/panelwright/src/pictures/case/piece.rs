//! Pieces: what the case picture is made of. A piece is a solid inside a box, with the facets of it that the eye can
//! see; it can be cut in two by a plane square to an axis.
//!
//! Case frame, mm. A piece knows nothing of panels or parts but the number of its owner.

use crate::drawing::Colour;
use crate::solid::{Aabb, TOUCH_MM, by_axis};

/// A point in the case frame.
pub(super) type At = [f64; 3];

/// Which way a facet faces, for its shade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Side {
    /// Square to x.
    Across,
    /// Square to y.
    Along,
    /// Square to z.
    Level,
    /// Anything between.
    Round,
    /// The inside of a hole or recess.
    Inner,
}

impl Side {
    /// The side square to a case axis.
    pub(super) const fn of_axis(axis: usize) -> Self {
        match axis {
            0 => Self::Across,
            1 => Self::Along,
            _ => Self::Level,
        }
    }
}

/// Weight of a line; ISO 128-2: two weights, 1 : 0.5.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Pen {
    /// Visible outlines.
    Thick,
    /// Everything drawn on a face.
    Thin,
}

/// A line in space.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Stroke {
    /// Its corners.
    pub points: Vec<At>,
    /// Whether the last corner joins the first.
    pub closed: bool,
    /// Its weight.
    pub pen: Pen,
}

/// A flat area in space that the eye can see, with the lines on it. Areas follow the even-odd rule.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Facet {
    /// Boundary and holes; may be empty when there are only lines.
    pub rings: Vec<Vec<At>>,
    /// What it is made of.
    pub colour: Colour,
    /// Which way it faces.
    pub side: Side,
    /// The line along every ring, if any.
    pub outline: Option<Pen>,
    /// Lines on it.
    pub strokes: Vec<Stroke>,
}

/// A solid in a box, with the facets of it that the eye can see.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Piece {
    /// Number of its owner in the scene.
    pub owner: usize,
    /// The box it fills, or lies in.
    pub bounds: Aabb,
    /// What is drawn first: for a plate, the walls of its openings.
    pub under: Vec<Facet>,
    /// What is drawn last: for a plate, its outer edges and its face.
    pub over: Vec<Facet>,
    /// For a plate: what stands in its openings, and how to trim it to them.
    pub plate: Option<Box<super::pocket::Pockets>>,
}

impl Piece {
    /// A piece that is no plate.
    pub(super) const fn solid(owner: usize, bounds: Aabb, facets: Vec<Facet>) -> Self {
        Self { owner, bounds, under: facets, over: Vec::new(), plate: None }
    }

    /// Whether the plane `axis = at` goes through its inside.
    pub(super) fn is_cut_by(&self, axis: usize, at: f64) -> bool {
        self.bounds.min[axis] + TOUCH_MM < at && at < self.bounds.max[axis] - TOUCH_MM
    }

    /// The two pieces on the lower and the upper side of the plane `axis = at`.
    ///
    /// No new facet closes the cut: whoever looks at it looks through the other half, which is drawn over it.
    pub(super) fn cut(&self, axis: usize, at: f64) -> [Self; 2] {
        [-1.0, 1.0].map(|sign| {
            let mut bounds = self.bounds;
            if sign < 0.0 {
                bounds.max[axis] = at;
            } else {
                bounds.min[axis] = at;
            }
            let clip = |facets: &[Facet]| {
                let inside = |point: &At| sign * (point[axis] - at);
                facets.iter().filter_map(|facet| facet.clipped(inside)).collect::<Vec<Facet>>()
            };
            let plate = self.plate.as_ref().map(|pockets| Box::new(pockets.beyond(axis, at, sign)));
            Self { owner: self.owner, bounds, under: clip(&self.under), over: clip(&self.over), plate }
        })
    }
}

impl Facet {
    /// The part of the facet where `inside` (a linear function) is not negative; `None` when nothing is left.
    pub(super) fn clipped(&self, inside: impl Fn(&At) -> f64) -> Option<Self> {
        if self
            .rings
            .iter()
            .flatten()
            .chain(self.strokes.iter().flat_map(|stroke| &stroke.points))
            .all(|at| inside(at) >= 0.0)
        {
            return Some(self.clone());
        }
        let clipped = self.rings.iter().map(|ring| clip_ring(ring, &inside)).filter(|ring| ring.len() > 2);
        // An outline that is cut is no closed line any more.
        let outlines = self
            .outline
            .iter()
            .flat_map(|pen| self.rings.iter().map(|ring| Stroke { points: ring.clone(), closed: true, pen: *pen }));
        let strokes: Vec<Stroke> = outlines
            .collect::<Vec<_>>()
            .iter()
            .chain(&self.strokes)
            .flat_map(|stroke| stroke.clipped(&inside))
            .collect();
        let rings: Vec<Vec<At>> = clipped.collect();
        (!rings.is_empty() || !strokes.is_empty()).then_some(Self {
            rings,
            colour: self.colour,
            side: self.side,
            outline: None,
            strokes,
        })
    }
}

impl Stroke {
    /// The stretches of the line where `inside` is not negative.
    pub(super) fn clipped(&self, inside: impl Fn(&At) -> f64) -> Vec<Self> {
        if self.points.iter().all(|point| inside(point) >= 0.0) {
            return vec![self.clone()];
        }
        let mut stretches: Vec<Vec<At>> = Vec::new();
        let count = self.points.len();
        let steps = if self.closed { count } else { count.saturating_sub(1) };
        let mut open = false;
        for step in 0..steps {
            let (from, to) = (self.points[step], self.points[(step + 1) % count]);
            let Some((from, to, goes_on)) = clip_step(from, to, &inside) else {
                open = false;
                continue;
            };
            match stretches.last_mut() {
                Some(last) if open => last.push(to),
                _ => stretches.push(vec![from, to]),
            }
            open = goes_on;
        }
        stretches.into_iter().map(|points| Self { points, closed: false, pen: self.pen }).collect()
    }
}

/// The stretch of one step inside, and whether it goes on inside at its end.
fn clip_step(from: At, to: At, inside: &impl Fn(&At) -> f64) -> Option<(At, At, bool)> {
    let (a, b) = (inside(&from), inside(&to));
    match (a >= 0.0, b >= 0.0) {
        (true, true) => Some((from, to, true)),
        (true, false) => Some((from, between(from, to, a / (a - b)), false)),
        (false, true) => Some((between(from, to, a / (a - b)), to, true)),
        (false, false) => None,
    }
}

fn between(from: At, to: At, fraction: f64) -> At {
    by_axis(|axis| from[axis] + (to[axis] - from[axis]) * fraction)
}

/// The part of a ring where `inside` (a linear function) is not negative, by walking its edges (Sutherland and
/// Hodgman). A ring that is not convex may come back with edges that run along the cut and back: they fill nothing.
pub(super) fn clip_ring(ring: &[At], inside: impl Fn(&At) -> f64) -> Vec<At> {
    let mut out = Vec::with_capacity(ring.len() + 2);
    let Some(mut from) = ring.last().copied() else { return out };
    let mut a = inside(&from);
    for to in ring {
        let b = inside(to);
        if (a >= 0.0) != (b >= 0.0) {
            out.push(between(from, *to, a / (a - b)));
        }
        if b >= 0.0 {
            out.push(*to);
        }
        (from, a) = (*to, b);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Vec<At> {
        vec![[0.0, 0.0, 5.0], [10.0, 0.0, 5.0], [10.0, 10.0, 5.0], [0.0, 10.0, 5.0]]
    }

    #[test]
    fn a_cut_shares_out_area_and_line_without_loss() {
        let facet = Facet {
            rings: vec![square()],
            colour: Colour::Metal,
            side: Side::Level,
            outline: Some(Pen::Thick),
            strokes: Vec::new(),
        };
        let piece = Piece::solid(0, Aabb::new([0.0; 3], [10.0, 10.0, 5.0]), vec![facet]);
        assert!(piece.is_cut_by(0, 3.0) && !piece.is_cut_by(0, 10.0) && !piece.is_cut_by(0, 0.0));
        let [low, high] = piece.cut(0, 3.0);
        assert_eq!((low.bounds.max[0], high.bounds.min[0]), (3.0, 3.0));
        let area = |piece: &Piece| {
            let ring = &piece.under[0].rings[0];
            let next = ring.iter().cycle().skip(1);
            ring.iter().zip(next).map(|(a, b)| (a[0] * b[1] - a[1] * b[0]) / 2.0).sum::<f64>()
        };
        let length = |piece: &Piece| {
            let steps = piece.under[0].strokes.iter().flat_map(|stroke| stroke.points.windows(2));
            steps.map(|step| (step[0][0] - step[1][0]).abs() + (step[0][1] - step[1][1]).abs()).sum::<f64>()
        };
        assert_eq!((area(&low), area(&high)), (30.0, 70.0));
        // The new edges along the cut carry no line.
        assert_eq!((length(&low), length(&high)), (16.0, 24.0));
    }
}
