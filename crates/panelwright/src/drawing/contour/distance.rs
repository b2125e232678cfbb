//! How far contours are apart, and whether one crosses itself; exact for lines and arcs.
//!
//! The nearest points of two segments are one of: a common point, an end of one and its nearest on the other, or, at
//! an arc, points on the line through the centre square to the other. All are tried; nothing is flattened.

use kurbo::{Point, Rect, Vec2};

use super::segment::length;
use super::{Arc, Contour, SAME_POINT_MM, Segment};

impl Contour {
    /// Distance from a point to the nearest point of the outline, mm, exact; infinite for an empty contour.
    #[must_use]
    pub fn distance_to_point(&self, point: Point) -> f64 {
        self.segments().map(|segment| segment.distance_to_point(point)).fold(f64::INFINITY, f64::min)
    }

    /// Least distance between the two outlines, mm, exact: 0 when they cross or touch, also positive when one lies
    /// inside the other; infinite when one is empty.
    #[must_use]
    pub fn distance_to(&self, other: &Self) -> f64 {
        let others: Vec<(Segment, Rect)> = other.segments().map(|segment| (segment, segment.bbox())).collect();
        let mut least = f64::INFINITY;
        for segment in self.segments() {
            let bounds = segment.bbox();
            for (theirs, their_bounds) in &others {
                if gap(bounds, *their_bounds) < least {
                    least = least.min(segment_distance(&segment, theirs));
                }
            }
        }
        least
    }

    /// Least distance to a line or arc, mm, exact: 0 when they cross or touch; infinite for an empty contour.
    #[must_use]
    pub fn distance_to_segment(&self, other: &Segment) -> f64 {
        self.segments().map(|segment| segment_distance(&segment, other)).fold(f64::INFINITY, f64::min)
    }

    /// Whether the outline encloses something and never touches or crosses itself.
    #[must_use]
    pub fn is_simple(&self) -> bool {
        let segments: Vec<Segment> = self.segments().collect();
        let bounds: Vec<Rect> = segments.iter().map(Segment::bbox).collect();
        let count = segments.len();
        if count < 2 || self.area().abs() <= SAME_POINT_MM {
            return false;
        }
        for first in 0..count {
            for second in first + 1..count {
                let (a, b) = (&segments[first], &segments[second]);
                let (after, before) = (second == first + 1, (second + 1) % count == first);
                let clean = if after || before {
                    let ends = [a.to(), a.from()];
                    meet_only_at(a, b, &ends[usize::from(!after)..1 + usize::from(before)])
                } else {
                    let (a_bounds, b_bounds) = (bounds[first], bounds[second]);
                    // Most segments are far apart in one direction already.
                    a_bounds.x0 - b_bounds.x1 > SAME_POINT_MM
                        || b_bounds.x0 - a_bounds.x1 > SAME_POINT_MM
                        || gap(a_bounds, b_bounds) > SAME_POINT_MM
                        || segment_distance(a, b) > SAME_POINT_MM
                };
                if !clean {
                    return false;
                }
            }
        }
        true
    }
}

impl Segment {
    /// Isolated points that lie on both segments (none for stretches that coincide; their ends tell).
    #[must_use]
    pub fn common_points(&self, other: &Self) -> Vec<Point> {
        common_points(self, other)
    }
}

/// Distance between two rectangles, mm; 0 when they overlap.
fn gap(a: Rect, b: Rect) -> f64 {
    let x = (a.x0 - b.x1).max(b.x0 - a.x1).max(0.0);
    let y = (a.y0 - b.y1).max(b.y0 - a.y1).max(0.0);
    length(Vec2::new(x, y))
}

/// Least distance between two segments, mm.
fn segment_distance(a: &Segment, b: &Segment) -> f64 {
    if !common_points(a, b).is_empty() {
        return 0.0;
    }
    let mut least = [b.distance_to_point(a.from()), b.distance_to_point(a.to())]
        .into_iter()
        .chain([a.distance_to_point(b.from()), a.distance_to_point(b.to())])
        .fold(f64::INFINITY, f64::min);
    // Inner points of an arc that may be nearest lie on the line through its centre square to the other.
    match (a, b) {
        (Segment::Line { .. }, Segment::Line { .. }) => {}
        (Segment::Line { from, to }, Segment::Arc(arc)) | (Segment::Arc(arc), Segment::Line { from, to }) => {
            let along = *to - *from;
            let foot = *from + along * ((arc.centre - *from).dot(along) / along.dot(along));
            let line = Segment::Line { from: *from, to: *to };
            for point in on_arc_towards(arc, foot - arc.centre) {
                least = least.min(line.distance_to_point(point));
            }
        }
        (Segment::Arc(one), Segment::Arc(two)) => {
            for point in on_arc_towards(one, two.centre - one.centre) {
                least = least.min(b.distance_to_point(point));
            }
        }
    }
    least
}

/// The arc's points in the direction `out` from its centre and opposite, where it has them.
fn on_arc_towards(arc: &Arc, out: Vec2) -> impl Iterator<Item = Point> + '_ {
    let reach = length(out);
    let unit = if reach > 0.0 { out / reach } else { Vec2::ZERO };
    [unit, -unit]
        .into_iter()
        .filter(move |direction| reach > 0.0 && arc.spans(*direction))
        .map(|direction| arc.centre + direction * arc.radius_mm)
}

/// Isolated points that lie on both segments (none for stretches that coincide; their ends tell).
fn common_points(a: &Segment, b: &Segment) -> Vec<Point> {
    match (a, b) {
        (Segment::Line { from, to }, Segment::Line { from: other, to: other_to }) => {
            let (along, across) = (*to - *from, *other_to - *other);
            let turn = along.cross(across);
            if turn == 0.0 {
                return Vec::new();
            }
            let (mine, theirs) = ((*other - *from).cross(across) / turn, (*other - *from).cross(along) / turn);
            if (0.0..=1.0).contains(&mine) && (0.0..=1.0).contains(&theirs) {
                vec![*from + along * mine]
            } else {
                Vec::new()
            }
        }
        (Segment::Line { from, to }, Segment::Arc(arc)) | (Segment::Arc(arc), Segment::Line { from, to }) => {
            line_and_circle(*from, *to, arc).into_iter().filter(|point| arc.spans(*point - arc.centre)).collect()
        }
        (Segment::Arc(one), Segment::Arc(two)) => circle_and_circle(one, two)
            .into_iter()
            .filter(|point| one.spans(*point - one.centre) && two.spans(*point - two.centre))
            .collect(),
    }
}

fn line_and_circle(from: Point, to: Point, arc: &Arc) -> Vec<Point> {
    let along = to - from;
    let out = from - arc.centre;
    let (a, half_b) = (along.dot(along), out.dot(along));
    let c = out.dot(out) - arc.radius_mm * arc.radius_mm;
    let inner = half_b * half_b - a * c;
    if inner < 0.0 {
        return Vec::new();
    }
    let root = f64::sqrt(inner);
    [(-half_b - root) / a, (-half_b + root) / a]
        .into_iter()
        .filter(|fraction| (0.0..=1.0).contains(fraction))
        .map(|fraction| from + along * fraction)
        .collect()
}

fn circle_and_circle(one: &Arc, two: &Arc) -> Vec<Point> {
    let between = two.centre - one.centre;
    let apart = length(between);
    let (r, s) = (one.radius_mm, two.radius_mm);
    if apart == 0.0 || apart > r + s || apart < (r - s).abs() {
        return Vec::new();
    }
    let along = (apart * apart + r * r - s * s) / (2.0 * apart);
    let up = f64::sqrt((r * r - along * along).max(0.0));
    let unit = between / apart;
    let middle = one.centre + unit * along;
    let side = Vec2::new(-unit.y, unit.x) * up;
    vec![middle + side, middle - side]
}

/// Whether two neighbouring segments have nothing in common but their common ends.
fn meet_only_at(a: &Segment, b: &Segment, shared: &[Point]) -> bool {
    let is_shared = |point: Point| shared.iter().any(|end| length(point - *end) <= 10.0 * SAME_POINT_MM);
    if !common_points(a, b).into_iter().all(is_shared) {
        return false;
    }
    // Stretches that coincide: the free end, or the middle, of one lies on the other.
    let middle = |segment: &Segment| match segment {
        Segment::Line { from, to } => from.midpoint(*to),
        Segment::Arc(arc) => arc.point_at(0.5),
    };
    let clear = |segment: &Segment, other: &Segment| {
        [segment.from(), segment.to(), middle(segment)]
            .into_iter()
            .all(|point| is_shared(point) || other.distance_to_point(point) > SAME_POINT_MM)
    };
    clear(a, b) && clear(b, a)
}
