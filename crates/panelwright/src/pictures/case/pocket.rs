//! Openings of a plate as the eye sees them: everything inside an opening shows only through its mouth, the outline of
//! the opening on the plate's face. What stands in an opening is trimmed to the mouth along the lines of sight.

use kurbo::{Point, Rect, Vec2};

use super::piece::{At, Facet, Piece};
use crate::solid::PanelFrame;

/// A plate turned to the eye: its frame, and where the plane of the face that the eye sees lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Front {
    /// The plate's frame in the picture's case frame (moved when panels are drawn apart).
    pub frame: PanelFrame,
    /// Outward distance of the visible face from the outside face: 0, or minus the thickness.
    pub w: f64,
    /// How far the far rim of an opening seems moved against its near rim, in the plane of the face.
    pub shift: Vec2,
    /// How far one moves in the plane of the face when going 1 mm outward along a line of sight.
    pub slope: Vec2,
}

impl Front {
    /// The face of a plate of thickness `thickness_mm` that this direction to the eye sees; `None` when it is seen
    /// edge-on.
    pub(super) fn of(frame: PanelFrame, thickness_mm: f64, eye: [f64; 3], edge_on: f64) -> Option<Self> {
        let along = |axis: [f64; 3]| eye[0] * axis[0] + eye[1] * axis[1] + eye[2] * axis[2];
        let outward = along(frame.out);
        if outward.abs() <= edge_on {
            return None;
        }
        let slope = Vec2::new(along(frame.u), along(frame.v)) / outward;
        let w = if outward > 0.0 { 0.0 } else { -thickness_mm };
        Some(Self { frame, w, shift: slope * (thickness_mm * outward.signum()), slope })
    }

    /// Where the line of sight through a case point meets the plane of the face.
    pub(super) fn seen_at(&self, at: At) -> Point {
        let (point, w) = self.frame.to_panel(at);
        point + self.slope * (self.w - w)
    }

    /// A point of the face in the case frame.
    pub(super) fn place(&self, point: Point) -> At {
        self.frame.to_case(point, self.w)
    }
}

/// A straight limit in the plane of the face: points with `normal · p >= least` are inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Limit {
    normal: Vec2,
    least: f64,
}

impl Limit {
    fn depth(&self, point: Point) -> f64 {
        self.normal.dot(point.to_vec2()) - self.least
    }
}

/// The mouth of an opening: convex, or a notch that is open to one or more edges of the plate.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Pocket {
    /// The rectangle around the opening.
    bounds: Rect,
    closed: Vec<Limit>,
    open: Vec<Limit>,
}

impl Pocket {
    /// The mouth of a convex opening that runs counter-clockwise.
    pub(super) fn convex(ring: &[Point], bounds: Rect) -> Self {
        let next = ring.iter().cycle().skip(1);
        let closed = ring
            .iter()
            .zip(next)
            .map(|(from, to)| {
                let along = *to - *from;
                let normal = Vec2::new(-along.y, along.x);
                Limit { normal, least: normal.dot(from.to_vec2()) }
            })
            .collect();
        Self { bounds, closed, open: Vec::new() }
    }

    /// The mouth of a notch: the rectangle `notch`, open where it reaches the edges of `plate`.
    pub(super) fn notch(notch: Rect, plate: Rect, reach: f64) -> Self {
        let mut pocket = Self { bounds: notch, closed: Vec::new(), open: Vec::new() };
        for (normal, inner, edge) in [
            (Vec2::new(1.0, 0.0), notch.x0, plate.x0),
            (Vec2::new(-1.0, 0.0), -notch.x1, -plate.x1),
            (Vec2::new(0.0, 1.0), notch.y0, plate.y0),
            (Vec2::new(0.0, -1.0), -notch.y1, -plate.y1),
        ] {
            if inner <= edge + reach {
                pocket.open.push(Limit { normal: -normal, least: -edge });
            } else {
                pocket.closed.push(Limit { normal, least: inner });
            }
        }
        pocket
    }

    /// Whether a point of the plate lies in the mouth or within `reach` of it.
    pub(super) fn holds(&self, point: Point, reach: f64) -> bool {
        self.closed.iter().all(|limit| limit.depth(point) >= -reach)
    }

    /// The parts of a facet that show through the mouth. Beyond an open side of a notch everything shows.
    pub(super) fn trim(&self, facet: &Facet, front: &Front, out: &mut Vec<Facet>) {
        let mut rest = Some(facet.clone());
        for limit in &self.open {
            let Some(facet) = rest else { return };
            out.extend(facet.clipped(|at| limit.depth(front.seen_at(*at))));
            rest = facet.clipped(|at| -limit.depth(front.seen_at(*at)));
        }
        for limit in &self.closed {
            let Some(facet) = rest else { return };
            rest = facet.clipped(|at| limit.depth(front.seen_at(*at)));
        }
        out.extend(rest);
    }
}

/// The mouths of a plate and what stands in its openings.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Pockets {
    /// The plate's visible face.
    pub front: Front,
    /// Its mouths.
    pub mouths: Vec<Pocket>,
    /// Pieces that lie between its faces.
    pub within: Vec<Piece>,
}

impl Pockets {
    /// The same plate's share beyond a cut (see [`Piece::cut`]).
    pub(super) fn beyond(&self, axis: usize, at: f64, sign: f64) -> Self {
        let within = self
            .within
            .iter()
            .filter_map(|piece| {
                let [min, max] = [piece.bounds.min[axis], piece.bounds.max[axis]];
                if piece.is_cut_by(axis, at) {
                    let [low, high] = piece.cut(axis, at);
                    Some(if sign < 0.0 { low } else { high })
                } else {
                    (sign * ((min + max) / 2.0 - at) >= 0.0).then(|| piece.clone())
                }
            })
            .collect();
        Self { front: self.front, mouths: self.mouths.clone(), within }
    }

    /// What of the pieces within shows, with its owner, in drawing order.
    pub(super) fn showing(&self) -> Vec<(usize, Facet)> {
        let mut out = Vec::new();
        let mut shown = Vec::new();
        for piece in &self.within {
            let corners = [piece.bounds.min, piece.bounds.max].map(|at| self.front.frame.to_panel(at).0);
            let stands_on = Rect::from_points(corners[0], corners[1]);
            for facet in piece.under.iter().chain(&piece.over) {
                for mouth in self.mouths.iter().filter(|mouth| mouth.bounds.overlaps(stands_on)) {
                    mouth.trim(facet, &self.front, &mut shown);
                }
                out.extend(shown.drain(..).map(|facet| (piece.owner, facet)));
            }
        }
        out
    }
}
