//! Plane helpers: how much of a polygon lies inside an upright rectangle.

use kurbo::{Point, Rect};

use crate::solid::TOUCH_MM;

/// Area, mm², that a polygon and an upright rectangle share; exact for the polygon given, whichever way it runs.
///
/// The polygon is cut at the rectangle's four sides one after the other (Sutherland and Hodgman). Where a hollow
/// polygon falls apart its pieces stay joined by edges along the cut, which enclose nothing, so the area is right.
pub(super) fn overlap_area(polygon: &[Point], rect: Rect) -> f64 {
    let mut points = polygon.to_vec();
    let mut next = Vec::with_capacity(points.len() + 8);
    // Axis (0 x, 1 y), position of the side, and whether the inside lies above it.
    let sides = [(0, rect.x0, true), (0, rect.x1, false), (1, rect.y0, true), (1, rect.y1, false)];
    for (axis, at, above) in sides {
        next.clear();
        let of = |point: Point| if axis == 0 { point.x } else { point.y };
        let inside = |point: Point| if above { of(point) >= at } else { of(point) <= at };
        for (index, to) in points.iter().enumerate() {
            let from = points[(index + points.len() - 1) % points.len()];
            if inside(from) != inside(*to) {
                let part = (at - of(from)) / (of(*to) - of(from));
                next.push(from + (*to - from) * part);
            }
            if inside(*to) {
                next.push(*to);
            }
        }
        std::mem::swap(&mut points, &mut next);
    }
    area(&points).abs()
}

/// How far one can go from `from` along an axis (0 x, 1 y) in a sense before an edge of the polygon is met, within a
/// strip of the other axis, mm; infinite when none is. An edge along the strip's border is not met.
pub(super) fn free_way(polygon: &[Point], axis: usize, sense: f64, from: f64, strip: [f64; 2]) -> f64 {
    let of = |point: Point| if axis == 0 { (point.x, point.y) } else { (point.y, point.x) };
    let mut free = f64::INFINITY;
    for (index, to) in polygon.iter().enumerate() {
        let start = polygon[(index + polygon.len() - 1) % polygon.len()];
        let ((a, p), (b, q)) = (of(start), of(*to));
        let (low, high) = (p.min(q).max(strip[0] + TOUCH_MM), p.max(q).min(strip[1] - TOUCH_MM));
        if low > high {
            continue;
        }
        // Where the edge enters and leaves the strip.
        let at = |across: f64| if p == q { a } else { a + (b - a) * (across - p) / (q - p) };
        let ends = if p == q { [a, b] } else { [at(low), at(high)] };
        for end in ends {
            let way = (end - from) * sense;
            if way >= 0.0 {
                free = free.min(way);
            }
        }
    }
    free
}

/// Signed area of a polygon, mm², measured from its first point so that far-away polygons lose nothing.
fn area(points: &[Point]) -> f64 {
    let Some(origin) = points.first() else { return 0.0 };
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(a, b)| (*a - *origin).cross(*b - *origin) / 2.0).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().map(|point| Point::from(*point)).collect()
    }

    #[test]
    fn a_hollow_polygon_that_falls_apart_keeps_its_area() {
        // A U: 10 wide, 10 high, legs 2 wide. Above y = 5 only the legs remain: 2 * 2 * 5.
        let u = polygon(&[(0., 0.), (10., 0.), (10., 10.), (8., 10.), (8., 2.), (2., 2.), (2., 10.), (0., 10.)]);
        assert!((overlap_area(&u, Rect::new(-1.0, 5.0, 11.0, 20.0)) - 20.0).abs() < 1e-12);
        let turned: Vec<Point> = u.into_iter().rev().collect();
        assert!((overlap_area(&turned, Rect::new(3.0, 0.0, 7.0, 1.0)) - 4.0).abs() < 1e-12);
    }

    #[test]
    fn a_way_ends_at_the_first_edge_inside_its_strip() {
        // A window that is narrow below y = 5 and wide above.
        let window = polygon(&[(-2., 0.), (2., 0.), (2., 5.), (6., 5.), (6., 9.), (-2., 9.)]);
        assert_eq!(free_way(&window, 0, 1.0, 0.0, [0.0, 9.0]), 2.0);
        assert_eq!(free_way(&window, 0, 1.0, 0.0, [5.0, 9.0]), 6.0);
        assert_eq!(free_way(&window, 0, -1.0, 0.0, [0.0, 9.0]), 2.0);
        assert_eq!(free_way(&window, 1, 1.0, 6.0, [2.0, 6.0]), 3.0);
        assert_eq!(free_way(&window, 1, -1.0, 6.0, [2.0, 6.0]), 1.0);
    }

    #[test]
    fn apart_is_nothing_and_inside_is_all() {
        let square = polygon(&[(0., 0.), (4., 0.), (4., 4.), (0., 4.)]);
        assert_eq!(overlap_area(&square, Rect::new(5.0, 5.0, 6.0, 6.0)), 0.0);
        assert_eq!(overlap_area(&square, Rect::new(-5.0, -5.0, 60.0, 60.0)), 16.0);
        assert_eq!(overlap_area(&[], Rect::new(0.0, 0.0, 1.0, 1.0)), 0.0);
    }
}
