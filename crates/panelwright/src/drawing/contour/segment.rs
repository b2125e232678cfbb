//! One stretch of a contour: a straight line or a circular arc.
//!
//! Angles are radians, counter-clockwise positive with y up. Lengths are mm. Trigonometry goes through `libm`, so
//! that native and wasm agree to the last bit; a root is exact everywhere.

use core::f64::consts::{PI, TAU};

use kurbo::{Point, Rect, Vec2};

/// A piece of a circle, walked from `start_angle` through `sweep`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc {
    /// Centre of the circle.
    pub centre: Point,
    /// Radius, mm, positive.
    pub radius_mm: f64,
    /// How far the arc turns, radians: counter-clockwise positive, at most a full turn.
    pub sweep: f64,
    /// Where it starts (kept, so that neighbours meet exactly).
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

/// One stretch of a contour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Segment {
    /// A straight line.
    Line {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// A piece of a circle.
    Arc(Arc),
}

/// Length of a vector, by the processor's own root: `kurbo`'s goes through `libm` here, which takes longer.
pub(super) fn length(vector: Vec2) -> f64 {
    f64::sqrt(vector.x * vector.x + vector.y * vector.y)
}

impl Arc {
    /// The arc from `from` to `to` with `bulge` = tan(sweep / 4); `None` when it is straight or has no length.
    ///
    /// Formulas: chord c, radius c(1 + b²)/(4|b|), centre at h = c(1 - b²)/(4b) on the left normal of the chord's
    /// middle (the definition of the bulge in the DXF reference).
    #[must_use]
    pub fn from_bulge(from: Point, to: Point, bulge: f64) -> Option<Self> {
        let chord = to - from;
        let c = length(chord);
        if bulge == 0.0 || c == 0.0 || !bulge.is_finite() || !c.is_finite() {
            return None;
        }
        let normal = Vec2::new(-chord.y, chord.x) / c;
        let centre = from.midpoint(to) + normal * (c * (1.0 - bulge * bulge) / (4.0 * bulge));
        Some(Self {
            centre,
            radius_mm: c * (1.0 + bulge * bulge) / (4.0 * bulge.abs()),
            sweep: 4.0 * libm::atan(bulge),
            from,
            to,
        })
    }

    /// tan(sweep / 4), the form in which contours keep an arc.
    #[must_use]
    pub fn bulge(&self) -> f64 {
        libm::tan(self.sweep / 4.0)
    }

    /// Direction from the centre to the start, radians.
    fn start_angle(&self) -> f64 {
        let out = self.from - self.centre;
        libm::atan2(out.y, out.x)
    }

    /// The point at a fraction 0..1 of the way.
    #[must_use]
    pub fn point_at(&self, fraction: f64) -> Point {
        let angle = self.start_angle() + self.sweep * fraction;
        self.centre + Vec2::new(libm::cos(angle), libm::sin(angle)) * self.radius_mm
    }

    /// Whether the ray from the centre in direction `out` meets the arc.
    #[must_use]
    pub fn spans(&self, out: Vec2) -> bool {
        // Asked of every arc of every panel for each change: by sides of lines instead of angles.
        let (first, last) = (self.from - self.centre, self.to - self.centre);
        let left = |a: Vec2, b: Vec2| a.cross(b) * self.sweep.signum();
        if self.sweep.abs() <= PI {
            left(first, out) >= 0.0 && left(out, last) >= 0.0
        } else {
            left(last, out) <= 0.0 || left(out, first) <= 0.0
        }
    }

    /// How far the arc has turned when it meets the ray from the centre in direction `out`, radians, 0 to a full turn.
    fn turn_to(&self, out: Vec2) -> f64 {
        let angle = libm::atan2(out.y, out.x);
        let ahead = if self.sweep >= 0.0 { angle - self.start_angle() } else { self.start_angle() - angle };
        ahead - TAU * f64::floor(ahead / TAU)
    }

    /// The direction in which it runs at one of its points; as long as its radius.
    fn heading(&self, at: Point) -> Vec2 {
        let out = at - self.centre;
        Vec2::new(-out.y, out.x) * self.sweep.signum()
    }

    /// The smallest upright rectangle around the arc.
    #[must_use]
    pub fn bbox(&self) -> Rect {
        let mut bounds = Rect::from_points(self.from, self.to);
        for out in [Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0), Vec2::new(-1.0, 0.0), Vec2::new(0.0, -1.0)] {
            if self.spans(out) {
                bounds = bounds.union_pt(self.centre + out * self.radius_mm);
            }
        }
        bounds
    }
}

impl Segment {
    /// Where it starts.
    #[must_use]
    pub const fn from(&self) -> Point {
        match self {
            Self::Line { from, .. } => *from,
            Self::Arc(arc) => arc.from,
        }
    }

    /// Where it ends.
    #[must_use]
    pub const fn to(&self) -> Point {
        match self {
            Self::Line { to, .. } => *to,
            Self::Arc(arc) => arc.to,
        }
    }

    /// The direction in which it starts; its length says nothing.
    #[must_use]
    pub fn heading_from(&self) -> Vec2 {
        match self {
            Self::Line { from, to } => *to - *from,
            Self::Arc(arc) => arc.heading(arc.from),
        }
    }

    /// The direction in which it ends; its length says nothing.
    #[must_use]
    pub fn heading_to(&self) -> Vec2 {
        match self {
            Self::Line { from, to } => *to - *from,
            Self::Arc(arc) => arc.heading(arc.to),
        }
    }

    /// The point at a fraction 0..1 of the way.
    #[must_use]
    pub fn point_at(&self, fraction: f64) -> Point {
        match self {
            Self::Line { from, to } => from.lerp(*to, fraction),
            Self::Arc(arc) => arc.point_at(fraction),
        }
    }

    /// The fraction of the way at which a point on it lies; on an arc never less than 0.
    #[must_use]
    pub fn share_at(&self, point: Point) -> f64 {
        match self {
            Self::Line { from, to } => {
                let along = *to - *from;
                (point - *from).dot(along) / along.dot(along)
            }
            Self::Arc(arc) => arc.turn_to(point - arc.centre) / arc.sweep.abs(),
        }
    }

    /// Its length along the curve, mm, exact.
    #[must_use]
    pub fn length_mm(&self) -> f64 {
        match self {
            Self::Line { from, to } => length(*to - *from),
            Self::Arc(arc) => arc.radius_mm * arc.sweep.abs(),
        }
    }

    /// The smallest upright rectangle around it.
    #[must_use]
    pub fn bbox(&self) -> Rect {
        match self {
            Self::Line { from, to } => Rect::from_points(*from, *to),
            Self::Arc(arc) => arc.bbox(),
        }
    }

    /// Distance from a point to the nearest point of the segment, mm, exact.
    #[must_use]
    pub fn distance_to_point(&self, point: Point) -> f64 {
        match self {
            Self::Line { from, to } => {
                let along = *to - *from;
                let squared = along.dot(along);
                if squared == 0.0 {
                    return length(point - *from);
                }
                let fraction = ((point - *from).dot(along) / squared).clamp(0.0, 1.0);
                length(point - (*from + along * fraction))
            }
            Self::Arc(arc) => {
                let out = point - arc.centre;
                if out == Vec2::ZERO {
                    return arc.radius_mm;
                }
                if arc.spans(out) {
                    return (length(out) - arc.radius_mm).abs();
                }
                length(point - arc.from).min(length(point - arc.to))
            }
        }
    }
}

/// How many equal chords an arc needs so that none lies farther than `tolerance_mm` inside it.
///
/// Sagitta s = r(1 - cos(θ/2)), so θ = 2·acos(1 - s/r) (plane geometry). At least one chord per third of a turn.
#[must_use]
pub fn chords_for_arc(radius_mm: f64, sweep: f64, tolerance_mm: f64) -> usize {
    let sweep = sweep.abs().min(TAU);
    let cosine = (1.0 - tolerance_mm / radius_mm).clamp(-1.0, 1.0);
    let widest = (2.0 * libm::acos(cosine)).clamp(SMALLEST_STEP, TAU / 3.0);
    // A sliver below a whole number of chords is rounding, not a chord more.
    f64::ceil(sweep / widest - 1e-9).max(1.0) as usize
}

/// [`chords_for_arc`] for a whole circle.
#[must_use]
pub fn chords_for_circle(radius_mm: f64, tolerance_mm: f64) -> usize {
    chords_for_arc(radius_mm, TAU, tolerance_mm)
}

/// Finest step that flattening takes, radians: bounds the number of chords when a tolerance of nearly 0 is asked for.
const SMALLEST_STEP: f64 = PI / 2048.0;
