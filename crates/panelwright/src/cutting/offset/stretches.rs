//! The stretches an offset can consist of: every line and arc moved to its side, and an arc about every corner that
//! opens there. What of them is really as far from the contour as it should be, [`super::loops`] finds out.

use kurbo::Vec2;

use crate::drawing::{Arc, Segment};

/// Shorter than this, mm, a stretch is rounding: a thousandth of what any machine can do, and far above the errors of
/// the sums (1e-11 at case sizes).
pub(super) const SHORT_MM: f64 = 4e-5;

/// Every stretch at `outward_mm` from a contour that runs counter-clockwise, in its order.
pub(super) fn stretches(contour: &[Segment], outward_mm: f64) -> Vec<Segment> {
    let mut found = Vec::with_capacity(contour.len() * 2);
    let mut before = contour.last();
    for here in contour {
        if let Some(arc) = before.and_then(|before| around_corner(before, here, outward_mm)) {
            found.push(Segment::Arc(arc));
        }
        found.extend(moved(here, outward_mm));
        before = Some(here);
    }
    found.retain(|stretch| stretch.length_mm() > SHORT_MM);
    found
}

/// A line or arc moved to its right; none when nothing is left of an arc.
fn moved(segment: &Segment, outward_mm: f64) -> Option<Segment> {
    match segment {
        Segment::Line { from, to } => {
            let by = to_the_right(segment.heading_from()) * outward_mm;
            Some(Segment::Line { from: *from + by, to: *to + by })
        }
        Segment::Arc(arc) => {
            // To the right of an arc that turns left is away from its centre.
            let radius_mm = arc.radius_mm + outward_mm * arc.sweep.signum();
            let scaled = |out: Vec2| arc.centre + out * (radius_mm / arc.radius_mm);
            (radius_mm > SHORT_MM).then(|| {
                Segment::Arc(Arc {
                    radius_mm,
                    from: scaled(arc.from - arc.centre),
                    to: scaled(arc.to - arc.centre),
                    ..*arc
                })
            })
        }
    }
}

/// The arc about the corner between two segments, where the offset opens there.
fn around_corner(before: &Segment, after: &Segment, outward_mm: f64) -> Option<Arc> {
    let (arriving, leaving) = (to_the_right(before.heading_to()), to_the_right(after.heading_from()));
    let turn = libm::atan2(arriving.cross(leaving), arriving.dot(leaving));
    // A way that turns back on itself opens on either side.
    let back = turn.abs() > core::f64::consts::PI - 1e-9;
    if turn * outward_mm <= 0.0 && !back {
        return None;
    }
    let sweep = turn.abs() * outward_mm.signum();
    let (centre, first) = (after.from(), arriving * outward_mm);
    Some(Arc { centre, radius_mm: outward_mm.abs(), sweep, from: centre + first, to: centre + leaving * outward_mm })
}

/// A direction of length 1, square to the heading, to its right.
fn to_the_right(heading: Vec2) -> Vec2 {
    let length = f64::sqrt(heading.x * heading.x + heading.y * heading.y);
    Vec2::new(heading.y, -heading.x) / length
}
