//! What a contour measures: area, length, bounding box, what lies inside, chords.

use kurbo::{Point, Rect, Vec2};

use super::segment::{chords_for_arc, chords_for_circle};
use super::{Contour, Segment};

/// Which side of the directed line `from` to `to` a point lies on: positive left. Never 0: a point on the line counts
/// as moved a little to the right (+x) and, less, up (+y), the same for every line, so that the sides of a
/// subdivided plane always agree.
fn is_left(from: Point, to: Point, point: Point) -> bool {
    // Worked out from the lower end whichever way the line runs: the two directions must give opposite answers to
    // the last bit.
    let ordered = (from.x, from.y) <= (to.x, to.y);
    let (low, high) = if ordered { (from, to) } else { (to, from) };
    let along = high - low;
    let cross = along.cross(point - low);
    let left_of_ordered = if cross == 0.0 {
        // cross(along, (much, little)) = along.x·little - along.y·much
        if along.y == 0.0 { along.x > 0.0 } else { along.y < 0.0 }
    } else {
        cross > 0.0
    };
    left_of_ordered == ordered
}

/// Turns that the straight line `from` to `to` adds around `point`, counted where a ray to the right crosses it.
fn crossing(from: Point, to: Point, point: Point) -> i32 {
    if from.y <= point.y && point.y < to.y {
        i32::from(is_left(from, to, point))
    } else if to.y <= point.y && point.y < from.y {
        -i32::from(!is_left(from, to, point))
    } else {
        0
    }
}

impl Contour {
    /// Enclosed area, mm², exact with arcs: positive when the contour runs counter-clockwise.
    ///
    /// Shoelace over the chords plus a circular segment r²(θ - sin θ)/2 per arc.
    #[must_use]
    pub fn area(&self) -> f64 {
        let Some(origin) = self.vertices().first().map(|vertex| vertex.at) else {
            return 0.0;
        };
        self.segments()
            .map(|segment| {
                let chord = (segment.from() - origin).cross(segment.to() - origin) / 2.0;
                match segment {
                    Segment::Line { .. } => chord,
                    Segment::Arc(arc) => {
                        chord + arc.radius_mm * arc.radius_mm * (arc.sweep - libm::sin(arc.sweep)) / 2.0
                    }
                }
            })
            .sum()
    }

    /// Length of the outline, mm, exact with arcs.
    #[must_use]
    pub fn length_mm(&self) -> f64 {
        self.segments().map(|segment| segment.length_mm()).sum()
    }

    /// The smallest upright rectangle around it, exact with arcs; an empty one at the origin for no segments.
    #[must_use]
    pub fn bbox(&self) -> Rect {
        self.segments().map(|segment| segment.bbox()).reduce(|bounds, next| bounds.union(next)).unwrap_or_else(|| {
            self.vertices().first().map_or(Rect::ZERO, |vertex| Rect::from_points(vertex.at, vertex.at))
        })
    }

    /// Whether a point lies inside. A point on the outline may count as either; ask [`Contour::distance_to_point`]
    /// when that matters.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        self.winding(point) != 0
    }

    /// Turns of the outline around a point: the chords' winding, and one turn for each arc whose circular segment
    /// holds the point.
    fn winding(&self, point: Point) -> i32 {
        self.segments()
            .map(|segment| {
                let (from, to) = (segment.from(), segment.to());
                let straight = crossing(from, to, point);
                let Segment::Arc(arc) = segment else {
                    return straight;
                };
                let out: Vec2 = point - arc.centre;
                let in_circle = out.dot(out) < arc.radius_mm * arc.radius_mm;
                let beyond_chord = is_left(from, to, point) != (arc.sweep > 0.0);
                let bulging = i32::from(in_circle && beyond_chord);
                straight + if arc.sweep > 0.0 { bulging } else { -bulging }
            })
            .sum()
    }

    /// Points of a polygon that runs through the contour's vertices with every arc as chords at most `tolerance_mm`
    /// inside it. The chords of a bulge outward make the figure smaller, of a bulge inward larger.
    #[must_use]
    pub fn flatten(&self, tolerance_mm: f64) -> Vec<Point> {
        if let Some((centre, radius)) = self.as_circle() {
            let count = chords_for_circle(radius, tolerance_mm);
            let turn = core::f64::consts::TAU.copysign(self.area());
            return (0..count)
                .map(|index| {
                    let angle = turn * index as f64 / count as f64;
                    centre + Vec2::new(libm::cos(angle), libm::sin(angle)) * radius
                })
                .collect();
        }
        let mut points = Vec::new();
        for segment in self.segments() {
            points.push(segment.from());
            if let Segment::Arc(arc) = segment {
                let count = chords_for_arc(arc.radius_mm, arc.sweep, tolerance_mm);
                points.extend((1..count).map(|index| arc.point_at(index as f64 / count as f64)));
            }
        }
        points
    }
}
