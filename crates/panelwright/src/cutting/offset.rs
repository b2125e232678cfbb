//! A closed outline made larger or smaller by a fixed distance everywhere; arcs stay arcs.
//!
//! ```text
//!    larger, sharp joins        larger, round joins       smaller
//!    +---------------+           .-------------.          +-------+
//!    | +-----------+ |          | +-----------+ |         | +---+ |
//!    | |           | |          | |           | |         | |   | |
//! ```
//!
//! Every point of the offset lies square to a line or arc, or on an arc about a corner. All of these are made
//! ([`stretches`]), cut where they meet, and kept where they are as far from the contour as they should be ([`loops`]):
//! exact for lines and arcs, nothing is flattened. Where two straight edges meet and sharp joins are asked for, the arc
//! about the corner is turned back into the corner.
//!
//! # Guarantees
//! What comes back is one closed contour that runs the way the given one ran, encloses something and does not cross
//! itself. Everything else is a [`Lost`].

mod loops;
mod stretches;

use kurbo::{Point, Vec2};

use loops::{loops, near};
use stretches::stretches;

use crate::drawing::{Contour, SAME_POINT_MM, Segment, Vertex};

/// What becomes of a corner around which the offset runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joins {
    /// Straight edges meet in a corner again: the path of a beam that leaves a sharp corner. A join that runs into
    /// another stretch of the offset before it is done stays round.
    Sharp,
    /// An arc about the corner: the path of a cutter's middle that rolls around it.
    Round,
}

/// Why there is no single offset contour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lost {
    /// Nothing is left of it.
    Vanished,
    /// It falls apart into this many.
    Split(usize),
    /// What was given crosses itself, or what came out does.
    Crossing,
}

/// Sharpest corner whose join is kept sharp: the mitre of a corner of 30° reaches 3.9 times the distance. Beyond, the
/// join is round (common practice of drawing programs: mitre limit 4).
const MITRE_LIMIT: f64 = 4.0;

/// A contour with less area is rounding, mm².
const NOTHING_MM2: f64 = 1e-6;

/// `contour` grown by `outward_mm` on every side, or shrunk when that is negative.
///
/// # Errors
/// [`Lost`] when the result would not be one simple contour.
///
/// ```
/// use panelwright::cutting::{Joins, offset};
/// use panelwright::drawing::Contour;
/// let path = offset(&Contour::rect(0.0, 0.0, 100.0, 60.0), 0.1, Joins::Sharp).unwrap();
/// assert!((path.area() - 6032.04).abs() < 1e-6);
/// ```
pub fn offset(contour: &Contour, outward_mm: f64, joins: Joins) -> Result<Contour, Lost> {
    if outward_mm == 0.0 {
        return Ok(contour.clone());
    }
    if let Some((centre, radius)) = contour.as_circle() {
        let grown = radius + outward_mm;
        if grown <= SAME_POINT_MM {
            return Err(Lost::Vanished);
        }
        let circle = Contour::circle(centre.x, centre.y, grown);
        return Ok(if contour.area() < 0.0 { circle.reversed() } else { circle });
    }
    if !contour.is_simple() {
        return Err(Lost::Crossing);
    }
    let clockwise = contour.area() < 0.0;
    let ours = contour.clone().counter_clockwise();
    let segments: Vec<Segment> = ours.segments().collect();
    let ways = loops(&segments, &stretches(&segments, outward_mm), outward_mm.abs()).ok_or(Lost::Crossing)?;
    let mut found: Vec<Contour> = ways.into_iter().filter(|one| one.area().abs() > NOTHING_MM2).collect();
    let round = match (found.pop(), found.len()) {
        (None, _) => return Err(Lost::Vanished),
        (Some(only), 0) => only,
        (Some(_), more) => return Err(Lost::Split(more + 1)),
    };
    let path = match joins {
        Joins::Round => round,
        Joins::Sharp => {
            let sharp = sharpened(&round, &ours, outward_mm);
            // Two sharp joins may meet where the round ones passed each other.
            if sharp.is_simple() { sharp } else { round }
        }
    };
    if !path.is_simple() {
        return Err(Lost::Crossing);
    }
    Ok(if clockwise { path.reversed() } else { path })
}

/// The offset contour with every whole arc about a corner of two straight edges replaced by their corner.
fn sharpened(round: &Contour, original: &Contour, outward_mm: f64) -> Contour {
    let corners = corners(original, outward_mm);
    let vertices = round.vertices();
    let count = vertices.len();
    let join = |index: usize| {
        let (here, next) = (vertices[index % count], vertices[(index + 1) % count]);
        corners.iter().find(|corner| here.bulge != 0.0 && near(corner.from, here.at) && near(corner.to, next.at))
    };
    let mut sharp = Vec::with_capacity(count);
    for (index, vertex) in vertices.iter().enumerate() {
        if join(index + count - 1).is_some() && join(index).is_none() {
            // The end of a join: its bend, onwards, belongs to the corner that was put in its place.
            continue;
        }
        match join(index) {
            Some(corner) => sharp.push(Vertex { at: corner.tip, bulge: vertices[(index + 1) % count].bulge }),
            None => sharp.push(*vertex),
        }
    }
    Contour::new(sharp)
}

/// Where the offset runs around a corner of two straight edges.
struct Corner {
    /// Where the edge before it ends.
    from: Point,
    /// Where the edge after it starts.
    to: Point,
    /// Where the two would meet.
    tip: Point,
}

fn corners(original: &Contour, outward_mm: f64) -> Vec<Corner> {
    let segments: Vec<Segment> = original.segments().collect();
    let count = segments.len();
    let outward = |segment: &Segment| match segment {
        Segment::Line { from, to } => {
            let along = *to - *from;
            Some(Vec2::new(along.y, -along.x) / f64::sqrt(along.hypot2()))
        }
        Segment::Arc(_) => None,
    };
    (0..count)
        .filter_map(|index| {
            let before = outward(&segments[(index + count - 1) % count])?;
            let after = outward(&segments[index])?;
            // Grown, it runs around corners that turn left; shrunk, around those that turn right.
            let around = before.cross(after) * outward_mm > 0.0;
            let reach = 1.0 + before.dot(after);
            // The mitre is sqrt(2 / reach) times as long as the distance.
            if !around || reach < 2.0 / (MITRE_LIMIT * MITRE_LIMIT) {
                return None;
            }
            let corner = segments[index].from();
            Some(Corner {
                from: corner + before * outward_mm,
                to: corner + after * outward_mm,
                tip: corner + (before + after) * (outward_mm / reach),
            })
        })
        .collect()
}

#[cfg(test)]
mod tests;
