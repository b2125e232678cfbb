//! How much sheet there is between two features, exactly: of their nominal edges, and as they are cut.

use kurbo::{Point, Rect};

use super::scene::Shape;
use crate::cutting::ReliefCircle;

/// Distance between two rectangles' sides, 0 when they meet.
pub(super) fn apart(a: &Rect, b: &Rect) -> f64 {
    let x = (a.x0 - b.x1).max(b.x0 - a.x1);
    let y = (a.y0 - b.y1).max(b.y0 - a.y1);
    x.max(y)
}

/// Whether one rectangle lies within another.
fn within(inner: &Rect, outer: &Rect) -> bool {
    outer.x0 <= inner.x0 && inner.x1 <= outer.x1 && outer.y0 <= inner.y0 && inner.y1 <= outer.y1
}

/// Sheet between two shapes as they are cut, corner relief included: 0 when they touch, cross, or one lies in the
/// other.
pub(super) fn web(one: &Shape, other: &Shape) -> f64 {
    let to = |shape: &Shape, circle: &ReliefCircle| match shape.round() {
        Some((centre, radius)) => round_pair(centre, radius, circle.centre, circle.radius_mm),
        None => round_web(circle.centre, circle.radius_mm, shape),
    };
    let crossed = one
        .relief
        .iter()
        .flat_map(|a| other.relief.iter().map(move |b| round_pair(a.centre, a.radius_mm, b.centre, b.radius_mm)));
    let mine = one.relief.iter().map(|circle| to(other, circle));
    let theirs = other.relief.iter().map(|circle| to(one, circle));
    mine.chain(theirs).chain(crossed).fold(nominal_web(one, other), f64::min)
}

fn round_pair(a: Point, r: f64, b: Point, s: f64) -> f64 {
    (f64::sqrt(a.distance_squared(b)) - r - s).max(0.0)
}

/// The same without relief.
pub(super) fn nominal_web(one: &Shape, other: &Shape) -> f64 {
    match (one.round(), other.round()) {
        (Some((a, r)), Some((b, s))) => round_pair(a, r, b, s),
        (Some((centre, radius)), None) => round_web(centre, radius, other),
        (None, Some((centre, radius))) => round_web(centre, radius, one),
        (None, None) => {
            let (a, b) = (&one.feature.contour, &other.feature.contour);
            let holds = |outer: &Shape, inner: &Shape| {
                within(&inner.bounds, &outer.bounds)
                    && inner.feature.contour.vertices().first().is_some_and(|at| outer.feature.contour.contains(at.at))
            };
            if holds(one, other) || holds(other, one) { 0.0 } else { a.distance_to(b) }
        }
    }
}

/// Sheet between a circle and a shape of another form.
fn round_web(centre: Point, radius: f64, shape: &Shape) -> f64 {
    let contour = &shape.feature.contour;
    let inside = shape.bounds.contains(centre) && contour.contains(centre);
    if inside { 0.0 } else { (contour.distance_to_point(centre) - radius).max(0.0) }
}
