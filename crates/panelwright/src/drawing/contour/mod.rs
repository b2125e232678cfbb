//! A closed outline of straight lines and true circular arcs, in millimetres.
//!
//! ```text
//!      y up                 the outline runs counter-clockwise: material on its left, area positive
//!      |   3 <------ 2      bulge of a corner = tan(sweep / 4) of the arc to the next corner:
//!      |   |         ^        0 straight, +1 a half circle turning left, -1 one turning right
//!      |   v         |
//!      |   0 ------> 1
//!      +------------ x right
//! ```
//!
//! Invariant: arcs stay arcs until a writer cannot say them.
//!
//! # Guarantees
//! A contour is closed: the last vertex joins the first.
//!
//! # Not checked here
//! That it does not cross itself ([`Contour::is_simple`] tells), that its numbers are finite, and which way it runs
//! ([`Contour::area`] tells).

mod build;
mod distance;
mod measure;
mod path_data;
mod segment;
#[cfg(test)]
mod tests;

pub use segment::{Arc, Segment, chords_for_arc, chords_for_circle};

use kurbo::{BezPath, Point, Vec2};

/// Two points nearer than this are one point, mm. Far above the rounding of `f64` at case sizes (1e-13), far below
/// anything a saw can do.
pub const SAME_POINT_MM: f64 = 1e-7;

/// Farthest that a cubic curve standing in for an arc may lie off it, mm: a tenth of the 0.01 mm a printed line may
/// be off. Tighter costs curves as the sixth root.
pub const CURVE_TOLERANCE_MM: f64 = 0.001;

/// A corner of a contour, and how the way to the next corner bends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Where it is, mm.
    pub at: Point,
    /// tan(sweep / 4) of the arc to the next vertex: 0 straight, positive to the left (counter-clockwise).
    pub bulge: f64,
}

/// A closed outline of lines and arcs; see the module's notes for the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour {
    vertices: Vec<Vertex>,
}

impl Contour {
    /// A contour through these vertices; the last joins the first.
    #[must_use]
    pub const fn new(vertices: Vec<Vertex>) -> Self {
        Self { vertices }
    }

    /// Its vertices, in order.
    #[must_use]
    pub fn vertices(&self) -> &[Vertex] {
        &self.vertices
    }

    /// Its lines and arcs, in order. Stretches without length are left out.
    pub fn segments(&self) -> impl Iterator<Item = Segment> + '_ {
        let next = self.vertices.iter().cycle().skip(1);
        self.vertices.iter().zip(next).filter(|(vertex, next)| vertex.at != next.at).map(|(vertex, next)| {
            Arc::from_bulge(vertex.at, next.at, vertex.bulge)
                .map_or(Segment::Line { from: vertex.at, to: next.at }, Segment::Arc)
        })
    }

    /// Centre and radius, mm, when the contour is one whole circle.
    #[must_use]
    pub fn as_circle(&self) -> Option<(Point, f64)> {
        let mut arcs = self.segments().map(|segment| match segment {
            Segment::Arc(arc) => Some(arc),
            Segment::Line { .. } => None,
        });
        let first = arcs.next()??;
        let mut sweep = first.sweep;
        for arc in arcs {
            let arc = arc?;
            let apart = segment::length(arc.centre - first.centre) + (arc.radius_mm - first.radius_mm).abs();
            if apart > SAME_POINT_MM {
                return None;
            }
            sweep += arc.sweep;
        }
        ((sweep.abs() - core::f64::consts::TAU).abs() < 1e-9).then_some((first.centre, first.radius_mm))
    }

    /// Moved by `by`, mm.
    #[must_use]
    pub fn translate(&self, by: Vec2) -> Self {
        self.map(|at| at + by, 1.0)
    }

    /// Mirrored in the upright line x = `about`. It still runs the way it ran (counter-clockwise stays so).
    #[must_use]
    pub fn mirror_x(&self, about: f64) -> Self {
        self.map(|at| Point::new(2.0 * about - at.x, at.y), -1.0).reversed()
    }

    /// Turned by `quarters` quarter turns counter-clockwise about the origin, exactly.
    #[must_use]
    pub fn quarter_turns(&self, quarters: i32) -> Self {
        self.map(
            |at| match quarters.rem_euclid(4) {
                1 => Point::new(-at.y, at.x),
                2 => Point::new(-at.x, -at.y),
                3 => Point::new(at.y, -at.x),
                _ => at,
            },
            1.0,
        )
    }

    /// The same outline walked the other way.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let count = self.vertices.len();
        let vertices = (0..count)
            .rev()
            .map(|index| Vertex {
                at: self.vertices[index].at,
                // The way onwards is now the way that led here.
                bulge: -self.vertices[(index + count - 1) % count].bulge,
            })
            .collect();
        Self { vertices }
    }

    /// The same outline running counter-clockwise.
    #[must_use]
    pub fn counter_clockwise(self) -> Self {
        if self.area() < 0.0 { self.reversed() } else { self }
    }

    /// As a path of lines and cubic curves, each within [`CURVE_TOLERANCE_MM`] of its arc.
    #[must_use]
    pub fn to_path(&self) -> BezPath {
        let mut path = BezPath::new();
        let mut started = false;
        for segment in self.segments() {
            if !started {
                path.move_to(segment.from());
                started = true;
            }
            match segment {
                Segment::Line { to, .. } => path.line_to(to),
                Segment::Arc(arc) => append_arc(&mut path, &arc),
            }
        }
        if started {
            path.close_path();
        }
        path
    }

    fn map(&self, place: impl Fn(Point) -> Point, bend: f64) -> Self {
        let vertices =
            self.vertices.iter().map(|vertex| Vertex { at: place(vertex.at), bulge: vertex.bulge * bend }).collect();
        Self { vertices }
    }
}

/// Cubic curves that an arc of this radius and sweep needs to stay within [`CURVE_TOLERANCE_MM`].
///
/// The cubic with handles 4/3·tan(δ/4) lies at most r·(2/27)·sin⁶(δ/4)/cos²(δ/4) off its arc δ (worked out from the
/// curve's radius; δ = 90° gives the well-known 0.000273 r).
pub(super) fn cubics_for_arc(radius_mm: f64, sweep: f64) -> usize {
    let mut pieces = (f64::ceil(sweep.abs() / core::f64::consts::FRAC_PI_2 - 1e-9) as usize).max(1);
    while pieces < MOST_CUBICS {
        let quarter = sweep.abs() / pieces as f64 / 4.0;
        let (sine, cosine) = (libm::sin(quarter), libm::cos(quarter));
        let off = radius_mm * (2.0 / 27.0) * (sine * sine * sine) * (sine * sine * sine) / (cosine * cosine);
        if off <= CURVE_TOLERANCE_MM {
            break;
        }
        pieces += 1;
    }
    pieces
}

/// Bound on [`cubics_for_arc`], reached only by radii above a kilometre.
const MOST_CUBICS: usize = 64;

fn append_arc(path: &mut BezPath, arc: &Arc) {
    let pieces = cubics_for_arc(arc.radius_mm, arc.sweep);
    let step = arc.sweep / pieces as f64;
    let handle = 4.0 / 3.0 * libm::tan(step / 4.0);
    let mut here = arc.from;
    for piece in 1..=pieces {
        let there = if piece == pieces { arc.to } else { arc.point_at(piece as f64 / pieces as f64) };
        let (out, back) = (here - arc.centre, there - arc.centre);
        path.curve_to(here + Vec2::new(-out.y, out.x) * handle, there - Vec2::new(-back.y, back.x) * handle, there);
        here = there;
    }
}
