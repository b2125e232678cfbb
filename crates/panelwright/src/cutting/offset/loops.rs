//! Closed ways made of the stretches of an offset: stretches are cut where they meet, what is too near to the contour
//! goes, and what is left is walked from end to start.

use kurbo::{Point, Rect};

use super::stretches::SHORT_MM;
use crate::drawing::{Arc, Contour, Segment, Vertex};
use crate::sorting::sort_by;

/// Nearer to the contour than the offset by more than this, mm, and a stretch is no part of it: above the errors of the
/// sums, and below what a stretch that touches another lies too near once it is a thousandth of a mm long.
const TOO_NEAR_MM: f64 = 1e-8;

/// The closed ways at `distance_mm` from the contour that `stretches` make; `None` when they do not close.
pub(super) fn loops(contour: &[Segment], stretches: &[Segment], distance_mm: f64) -> Option<Vec<Contour>> {
    let near = ByX::of(contour);
    let mut parts: Vec<Part> = Vec::new();
    for (of, (stretch, mut at)) in stretches.iter().zip(cuts(stretches)).enumerate() {
        sort_by(&mut at, |a, b| a.0.total_cmp(&b.0));
        let mut start = (0.0, stretch.from());
        at.push((1.0, stretch.to()));
        for end in at {
            let is_last = end.0 == 1.0;
            // Cuts that are one point are one cut.
            if (end.0 - start.0) * stretch.length_mm() <= SHORT_MM && !is_last {
                continue;
            }
            let part = Part { of, ends: [start, end] };
            start = end;
            if part.length_mm(stretch) > SHORT_MM && !near.is_within(part.middle(stretch), distance_mm - TOO_NEAR_MM) {
                parts.push(part);
            }
        }
    }
    walk(stretches, parts, sliver_mm(distance_mm))
}

/// A part of a stretch: the fraction of the way along it, and the point, at both ends.
#[derive(Clone, Copy)]
struct Part {
    of: usize,
    ends: [(f64, Point); 2],
}

impl Part {
    fn share(&self) -> f64 {
        self.ends[1].0 - self.ends[0].0
    }

    fn length_mm(&self, stretch: &Segment) -> f64 {
        self.share() * stretch.length_mm()
    }

    fn middle(&self, stretch: &Segment) -> Point {
        stretch.point_at((self.ends[0].0 + self.ends[1].0) / 2.0)
    }

    fn bulge(&self, stretch: &Segment) -> f64 {
        match stretch {
            Segment::Line { .. } => 0.0,
            Segment::Arc(arc) => Arc { sweep: arc.sweep * self.share(), ..*arc }.bulge(),
        }
    }
}

/// Where each stretch is met by another between its ends: the fraction of the way, and the point.
fn cuts(stretches: &[Segment]) -> Vec<Vec<(f64, Point)>> {
    let mut cuts = vec![Vec::new(); stretches.len()];
    let by_x = ByX::of(stretches);
    for (place, (first, bounds)) in by_x.order.iter().enumerate() {
        for (second, others) in &by_x.order[place + 1..] {
            if others.x0 > bounds.x1 + SHORT_MM {
                break;
            }
            if others.y0 > bounds.y1 + SHORT_MM || bounds.y0 > others.y1 + SHORT_MM {
                continue;
            }
            let (a, b) = (&stretches[*first], &stretches[*second]);
            for point in a.common_points(b) {
                cuts[*first].extend(inside(a, point));
                cuts[*second].extend(inside(b, point));
            }
            // Stretches that run along each other have no single common point: their ends tell.
            for (index, one, other) in [(*first, a, b), (*second, b, a)] {
                for end in [other.from(), other.to()] {
                    if one.distance_to_point(end) <= SHORT_MM {
                        cuts[index].extend(inside(one, end));
                    }
                }
            }
        }
    }
    cuts
}

/// How far along a stretch a point on it lies, when it is not one of its ends.
fn inside(stretch: &Segment, point: Point) -> Option<(f64, Point)> {
    let share = stretch.share_at(point);
    let length = stretch.length_mm();
    (share * length > SHORT_MM && (1.0 - share) * length > SHORT_MM).then_some((share, point))
}

/// Segments by the left end of their bounds, so that those near a place are found without looking at all.
struct ByX<'a> {
    segments: &'a [Segment],
    order: Vec<(usize, Rect)>,
}

impl<'a> ByX<'a> {
    fn of(segments: &'a [Segment]) -> Self {
        let mut order: Vec<(usize, Rect)> = segments.iter().map(Segment::bbox).enumerate().collect();
        sort_by(&mut order, |a, b| a.1.x0.total_cmp(&b.1.x0));
        Self { segments, order }
    }

    /// Whether a segment is nearer to the point than this.
    fn is_within(&self, point: Point, distance_mm: f64) -> bool {
        self.order
            .iter()
            .take_while(|(_, bounds)| bounds.x0 - point.x < distance_mm)
            .filter(|(_, bounds)| {
                point.x - bounds.x1 < distance_mm
                    && bounds.y0 - point.y < distance_mm
                    && point.y - bounds.y1 < distance_mm
            })
            .any(|(index, _)| self.segments[*index].distance_to_point(point) < distance_mm)
    }
}

/// The longest way of slivers that lead nowhere, mm.
///
/// Two stretches that all but run on cross, and both go on beyond the crossing. Halfway there, each is too near to the
/// contour by the square of its length over the distance; where that is less than [`TOO_NEAR_MM`], it stays beside the
/// way that is taken. Two such make a way; half as much again is for arcs, which bend away more slowly.
fn sliver_mm(distance_mm: f64) -> f64 {
    4.0 * SHORT_MM + 3.0 * f64::sqrt(TOO_NEAR_MM * distance_mm)
}

/// Walks the parts from end to start until each way closes; `None` when one does not, slivers aside.
fn walk(stretches: &[Segment], parts: Vec<Part>, sliver_mm: f64) -> Option<Vec<Contour>> {
    let mut left: Vec<Option<Part>> = parts.into_iter().map(Some).collect();
    let mut found = Vec::new();
    for first in 0..left.len() {
        let Some(mut last) = left[first].take() else { continue };
        let start = last.ends[0].1;
        let mut way = vec![last];
        let closes = loop {
            if near(last.ends[1].1, start) {
                break true;
            }
            let Some(part) = next(&left, stretches, last.ends[1].1).and_then(|index| left[index].take()) else {
                break false;
            };
            last = part;
            way.push(last);
        };
        if closes {
            found.push(closed(stretches, way));
        } else if way.iter().map(|part| part.length_mm(&stretches[part.of])).sum::<f64>() > sliver_mm {
            return None;
        }
    }
    Some(found)
}

/// The part that goes on from a point: the longest, should slivers start there too.
fn next(left: &[Option<Part>], stretches: &[Segment], from: Point) -> Option<usize> {
    let mut best: Option<(f64, usize)> = None;
    for (index, part) in left.iter().enumerate() {
        let Some(part) = part.as_ref().filter(|part| near(part.ends[0].1, from)) else { continue };
        let length = part.length_mm(&stretches[part.of]);
        if best.is_none_or(|(longest, _)| length > longest) {
            best = Some((length, index));
        }
    }
    best.map(|(_, index)| index)
}

/// The contour of a closed way; parts of one stretch that follow each other are one again.
fn closed(stretches: &[Segment], way: Vec<Part>) -> Contour {
    let goes_on = |a: &Part, b: &Part| a.of == b.of && a.ends[1].0 == b.ends[0].0;
    let mut whole: Vec<Part> = Vec::with_capacity(way.len());
    for part in way {
        match whole.last_mut().filter(|last| goes_on(last, &part)) {
            Some(last) => last.ends[1] = part.ends[1],
            None => whole.push(part),
        }
    }
    if whole.len() > 1 && goes_on(&whole[whole.len() - 1], &whole[0]) {
        let last = whole.remove(whole.len() - 1);
        whole[0].ends[0] = last.ends[0];
    }
    Contour::new(
        whole.iter().map(|part| Vertex { at: part.ends[0].1, bulge: part.bulge(&stretches[part.of]) }).collect(),
    )
}

/// Whether an end meets a start: a stretch between them would be too short to be kept.
pub(super) fn near(a: Point, b: Point) -> bool {
    (a - b).hypot2() <= SHORT_MM * SHORT_MM
}
