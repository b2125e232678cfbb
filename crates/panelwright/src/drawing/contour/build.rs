//! Ways to make a contour. All of them run counter-clockwise, save [`Contour::polygon`], which keeps your order.

use kurbo::{Point, Vec2};

use super::segment::length;
use super::{Contour, Vertex};

/// Bulge of a quarter circle: tan(90° / 4) = √2 - 1.
const QUARTER: f64 = core::f64::consts::SQRT_2 - 1.0;

const fn corner(x: f64, y: f64) -> Vertex {
    Vertex { at: Point::new(x, y), bulge: 0.0 }
}

const fn bend(x: f64, y: f64, bulge: f64) -> Vertex {
    Vertex { at: Point::new(x, y), bulge }
}

impl Contour {
    /// An upright rectangle between two opposite corners, in any order.
    #[must_use]
    pub fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> Self {
        let (x0, x1) = (x0.min(x1), x0.max(x1));
        let (y0, y1) = (y0.min(y1), y0.max(y1));
        Self::new(vec![corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)])
    }

    /// A rectangle with corners of radius `radius_mm`; a radius above half the shorter side counts as that half.
    #[must_use]
    pub fn rounded_rect(x0: f64, y0: f64, x1: f64, y1: f64, radius_mm: f64) -> Self {
        let (x0, x1) = (x0.min(x1), x0.max(x1));
        let (y0, y1) = (y0.min(y1), y0.max(y1));
        let r = radius_mm.min((x1 - x0) / 2.0).min((y1 - y0) / 2.0);
        if r <= 0.0 {
            return Self::rect(x0, y0, x1, y1);
        }
        Self::new(vec![
            corner(x0 + r, y0),
            bend(x1 - r, y0, QUARTER),
            corner(x1, y0 + r),
            bend(x1, y1 - r, QUARTER),
            corner(x1 - r, y1),
            bend(x0 + r, y1, QUARTER),
            corner(x0, y1 - r),
            bend(x0, y0 + r, QUARTER),
        ])
    }

    /// A whole circle, as two half circles from its right-hand point.
    #[must_use]
    pub fn circle(x: f64, y: f64, radius_mm: f64) -> Self {
        let r = radius_mm.abs();
        Self::new(vec![bend(x + r, y, 1.0), bend(x - r, y, 1.0)])
    }

    /// A slot with round ends whose *end centres* are the two points: its overall length is their distance plus
    /// `width_mm`. Two equal points give a circle.
    #[must_use]
    pub fn slot(x0: f64, y0: f64, x1: f64, y1: f64, width_mm: f64) -> Self {
        let (from, to) = (Point::new(x0, y0), Point::new(x1, y1));
        let along = to - from;
        let r = width_mm.abs() / 2.0;
        let apart = length(along);
        if apart == 0.0 {
            return Self::circle(x0, y0, r);
        }
        let left = Vec2::new(-along.y, along.x) * (r / apart);
        Self::new(vec![
            Vertex { at: from - left, bulge: 0.0 },
            Vertex { at: to - left, bulge: 1.0 },
            Vertex { at: to + left, bulge: 0.0 },
            Vertex { at: from + left, bulge: 1.0 },
        ])
    }

    /// A polygon through these points, in their order.
    #[must_use]
    pub fn polygon<P: Into<Point>>(points: impl IntoIterator<Item = P>) -> Self {
        Self::new(points.into_iter().map(|point| Vertex { at: point.into(), bulge: 0.0 }).collect())
    }
}
