//! A panel's flat frame and its one map to the case frame.

use kurbo::{Point, Rect};

use super::{Aabb, by_axis, dot};

/// Where a panel's flat frame lies in the case: `case = origin + p.x * u + p.y * v + w * out`, in mm.
///
/// `u`, `v`, `out` are unit vectors along the case's axes with `u x v = out`; `out` points out of the case and `w`
/// is 0 on the outside face, `-thickness` on the inside face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelFrame {
    /// Panel point (0, 0) on the outside face.
    pub origin: [f64; 3],
    /// Panel x in the case frame: to the right as seen from outside.
    pub u: [f64; 3],
    /// Panel y in the case frame: up as seen from outside.
    pub v: [f64; 3],
    /// The outside normal.
    pub out: [f64; 3],
}

impl PanelFrame {
    /// A point of the panel, `w` mm outward from its outside face, in the case frame.
    #[must_use]
    pub fn to_case(&self, point: Point, w: f64) -> [f64; 3] {
        by_axis(|axis| self.origin[axis] + point.x * self.u[axis] + point.y * self.v[axis] + w * self.out[axis])
    }

    /// A point of the case in the panel's frame, with its distance outward from the outside face.
    #[must_use]
    pub fn to_panel(&self, point: [f64; 3]) -> (Point, f64) {
        let rel = by_axis(|axis| point[axis] - self.origin[axis]);
        (Point::new(dot(rel, self.u), dot(rel, self.v)), dot(rel, self.out))
    }

    /// The room of a sheet of this size and thickness in the case, openings and all.
    #[must_use]
    pub fn plate(&self, size_mm: [f64; 2], thickness_mm: f64) -> Aabb {
        let far = Point::new(size_mm[0], size_mm[1]);
        Aabb::new(self.to_case(Point::ZERO, 0.0), self.to_case(far, -thickness_mm))
    }

    /// A box of the case seen square to the panel, in the panel's frame.
    #[must_use]
    pub fn shadow(&self, solid: &Aabb) -> Rect {
        Rect::from_points(self.to_panel(solid.min).0, self.to_panel(solid.max).0)
    }

    /// The case axis (0 x, 1 y, 2 z) the panel is square to.
    #[must_use]
    pub fn normal_axis(&self) -> usize {
        if self.out[0] != 0.0 {
            0
        } else if self.out[1] != 0.0 {
            1
        } else {
            2
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn to_panel_undoes_to_case() {
        let back =
            PanelFrame { origin: [210.0, 297.0, 0.0], u: [-1.0, 0.0, 0.0], v: [0.0, 0.0, 1.0], out: [0.0, 1.0, 0.0] };
        let at = back.to_case(Point::new(12.5, 40.0), -6.0);
        assert_eq!(at, [197.5, 291.0, 40.0]);
        assert_eq!(back.to_panel(at), (Point::new(12.5, 40.0), -6.0));
    }
}
