//! Corner relief: what a round cutter takes out so that a square part fits into an inside corner.
//!
//! ```text
//!      wall |              diagonal: the circle's centre lies on the bisector at its radius from the corner, so it
//!           |  void        just reaches it; entries 2r·cos(φ/2) from the corner; arc of 360° - 2φ through the corner
//!      P2 __|              along an edge: the circle touches one wall at the corner and goes past the other; entry
//!        (  `.             2r·sin φ from the corner on that other wall, the same sweep
//!         `._ C___P1____ wall          (plane geometry; φ is the opening angle, r the radius)
//! ```
//!
//! # Guarantees
//! Only corners of two straight walls in which a cutter leaves something behind are changed; arcs are exact (a bulge of
//! 1 for 90°). Corners that cannot be relieved keep their form and are named.

use kurbo::{Point, Vec2};

use crate::drawing::{Arc, Contour, Segment, Vertex};

/// Which way relief is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Relief {
    /// Into both walls alike, along the bisector.
    Diagonal,
    /// Into the longer wall only, where the mating part hides it.
    AlongEdge,
}

/// On which side of a contour the cutter is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Void {
    /// Inside: an opening, a hole, a pocket.
    Inside,
    /// Outside: the outline of a part.
    Outside,
}

/// Why a corner keeps what the cutter leaves in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CornerFault {
    /// A wall is shorter than its reliefs need, mm.
    WallTooShort {
        /// What both ends need.
        needed_mm: f64,
        /// What there is.
        wall_mm: f64,
    },
    /// A corner with a curved wall; relief is cut between straight walls only.
    Curved,
    /// An inside corner rounded more tightly than the cutter.
    TooTight {
        /// Its radius, mm.
        radius_mm: f64,
    },
    /// No relief is wanted: an inside corner comes out with the cutter's radius.
    LeftRound {
        /// That radius, mm.
        radius_mm: f64,
    },
    /// Its relief would meet another stretch of the same outline.
    Crowded,
}

/// A contour with its corners relieved.
#[derive(Clone, Debug, PartialEq)]
pub struct Relieved {
    /// What to cut.
    pub contour: Contour,
    /// Corners that stay as they are, and why.
    pub faults: Vec<(Point, CornerFault)>,
    /// The circles cut into its corners.
    pub circles: Vec<ReliefCircle>,
}

/// One circle of relief; all of it is void.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReliefCircle {
    /// The corner it relieves, on its rim.
    pub corner: Point,
    /// Its centre.
    pub centre: Point,
    /// Its radius, mm.
    pub radius_mm: f64,
}

/// Most that may stay in a corner unrelieved, mm along the bisector: what a stroke of a file takes (common practice).
pub const LEAST_RESIDUE_MM: f64 = 0.05;

/// Two radii or lengths nearer than this are the same, mm.
const SAME_MM: f64 = 1e-6;

/// What a cutter of `radius_mm` leaves in a corner of opening angle `angle` (radians), mm along the bisector:
/// r(1/sin(φ/2) - 1) (plane geometry).
#[must_use]
pub fn residue_mm(radius_mm: f64, angle: f64) -> f64 {
    radius_mm * (1.0 / libm::sin(angle / 2.0) - 1.0)
}

/// One inside corner between two straight walls.
struct Corner {
    at: Point,
    /// Along the wall back from the corner, unit length.
    before: Vec2,
    /// Along the wall onwards, unit length.
    after: Vec2,
    /// Half the opening angle, radians.
    half: f64,
}

/// How far relief reaches along the wall before and the wall after a corner, mm.
type Entries = [f64; 2];

/// Relieves every inside corner of `contour` for a relief circle of `radius_mm`.
#[must_use]
pub fn relieve(contour: &Contour, void: Void, radius_mm: f64, relief: Relief) -> Relieved {
    // From here on the void lies to the left, and inside corners turn left.
    let void_left = (contour.area() > 0.0) == (void == Void::Inside);
    let walked = if void_left { contour.clone() } else { contour.reversed() };
    let segments: Vec<Segment> = walked.segments().collect();
    let count = segments.len();
    let mut faults = Vec::new();
    let corners: Vec<Option<Corner>> = (0..count)
        .map(|index| match inside_corner(&segments[(index + count - 1) % count], &segments[index], radius_mm)? {
            Ok(corner) => Some(corner),
            Err(at) => {
                faults.push((at, CornerFault::Curved));
                None
            }
        })
        .collect();
    faults.extend(segments.iter().filter_map(|segment| match segment {
        Segment::Arc(arc) if arc.sweep > 0.0 && arc.radius_mm < radius_mm - SAME_MM => {
            Some((arc.point_at(0.5), CornerFault::TooTight { radius_mm: arc.radius_mm }))
        }
        _ => None,
    }));
    // Where the chosen relief does not fit, relief into the longer wall may.
    let wanted: Vec<Option<Entries>> = (0..count)
        .map(|index| corners[index].as_ref().map(|corner| entries(corner, radius_mm, relief, walls(&segments, index))))
        .collect();
    let second: Vec<Option<Entries>> = (0..count)
        .map(|index| {
            let corner = corners[index].as_ref()?;
            let cramped = [(index + count - 1) % count, index].iter().any(|wall| short(&segments, &wanted, *wall));
            let relief = if cramped { Relief::AlongEdge } else { relief };
            Some(entries(corner, radius_mm, relief, walls(&segments, index)))
        })
        .collect();
    let mut chosen = second.clone();
    for wall in 0..count {
        if !short(&segments, &second, wall) {
            continue;
        }
        let wall_mm = segments[wall].length_mm();
        let fault = CornerFault::WallTooShort { needed_mm: needed(&second, wall), wall_mm };
        for end in [wall, (wall + 1) % count] {
            if chosen[end].take().is_some() {
                faults.push((segments[end].from(), fault));
            }
        }
    }
    let mut vertices = Vec::with_capacity(walked.vertices().len() * 3);
    let mut circles = Vec::new();
    for (index, segment) in segments.iter().enumerate() {
        let onwards = match segment {
            Segment::Line { .. } => 0.0,
            Segment::Arc(arc) => arc.bulge(),
        };
        match (&corners[index], chosen[index]) {
            (Some(corner), Some([back, ahead])) => {
                let [from, to] = push_relief(&mut vertices, corner, back, ahead);
                let arc = Arc::from_bulge(from.at, to.at, from.bulge);
                circles.extend(arc.map(|Arc { centre, radius_mm, .. }| ReliefCircle {
                    corner: corner.at,
                    centre,
                    radius_mm,
                }));
            }
            _ => vertices.push(Vertex { at: segment.from(), bulge: onwards }),
        }
    }
    let cut = Contour::new(vertices);
    if !circles.is_empty() && !cut.is_simple() {
        let crowded = corners.iter().flatten().map(|corner| (corner.at, CornerFault::Crowded));
        return Relieved {
            contour: contour.clone(),
            faults: faults.into_iter().chain(crowded).collect(),
            circles: Vec::new(),
        };
    }
    Relieved { contour: if void_left { cut } else { cut.reversed() }, faults, circles }
}

/// Lengths of the walls before and after the corner at the start of a segment, mm.
fn walls(segments: &[Segment], index: usize) -> [f64; 2] {
    let count = segments.len();
    [segments[(index + count - 1) % count].length_mm(), segments[index].length_mm()]
}

/// What the reliefs at both ends of a wall need of it, mm.
fn needed(entries: &[Option<Entries>], wall: usize) -> f64 {
    let start = entries[wall].map_or(0.0, |[_, ahead]| ahead);
    let end = entries[(wall + 1) % entries.len()].map_or(0.0, |[back, _]| back);
    start + end
}

fn short(segments: &[Segment], entries: &[Option<Entries>], wall: usize) -> bool {
    needed(entries, wall) > segments[wall].length_mm() + SAME_MM
}

/// The corner between two segments when a cutter leaves something in it: `Err` when a wall of it is curved.
fn inside_corner(before: &Segment, after: &Segment, radius_mm: f64) -> Option<Result<Corner, Point>> {
    let (arriving, leaving) = (heading(before, true), heading(after, false));
    let turn = libm::atan2(arriving.cross(leaving), arriving.dot(leaving));
    // Not past 179.9°: that is a spike, not a corner.
    if !(1e-6..core::f64::consts::PI - 2e-3).contains(&turn) {
        return None;
    }
    let angle = core::f64::consts::PI - turn;
    if residue_mm(radius_mm, angle) <= LEAST_RESIDUE_MM {
        return None;
    }
    let at = after.from();
    if matches!(before, Segment::Arc(_)) || matches!(after, Segment::Arc(_)) {
        return Some(Err(at));
    }
    Some(Ok(Corner { at, before: -arriving, after: leaving, half: angle / 2.0 }))
}

/// Direction in which a segment ends, or starts; unit length.
fn heading(segment: &Segment, at_end: bool) -> Vec2 {
    match segment {
        Segment::Line { from, to } => {
            let along = *to - *from;
            along / f64::sqrt(along.hypot2())
        }
        Segment::Arc(arc) => {
            let out = (if at_end { arc.to } else { arc.from } - arc.centre) / arc.radius_mm;
            if arc.sweep > 0.0 { Vec2::new(-out.y, out.x) } else { Vec2::new(out.y, -out.x) }
        }
    }
}

fn entries(corner: &Corner, radius_mm: f64, relief: Relief, [before_mm, after_mm]: [f64; 2]) -> Entries {
    match relief {
        Relief::Diagonal => [2.0 * radius_mm * libm::cos(corner.half); 2],
        Relief::AlongEdge => {
            let reach = 2.0 * radius_mm * libm::sin(2.0 * corner.half);
            if before_mm > after_mm { [reach, 0.0] } else { [0.0, reach] }
        }
    }
}

/// The arc that stands in for the corner. Both kinds turn through 360° - 2φ, which one bulge can say.
fn push_relief(vertices: &mut Vec<Vertex>, corner: &Corner, back: f64, ahead: f64) -> [Vertex; 2] {
    // cot(φ/2), exactly 1 for a right angle.
    let bulge = if (corner.before.dot(corner.after)).abs() < 1e-12 { 1.0 } else { 1.0 / libm::tan(corner.half) };
    let arc = [
        Vertex { at: corner.at + corner.before * back, bulge },
        Vertex { at: corner.at + corner.after * ahead, bulge: 0.0 },
    ];
    vertices.extend(arc);
    arc
}

#[cfg(test)]
mod tests;
