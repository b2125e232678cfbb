//! A box with its edges along the axes of the case frame, in millimetres.

use super::{TOUCH_MM, by_axis, larger, smaller};

/// A box `min..max` along x, y, z (mm, case frame). `min <= max` on every axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aabb {
    /// Lower corner: left, front, bottom.
    pub min: [f64; 3],
    /// Upper corner: right, back, top.
    pub max: [f64; 3],
}

impl Aabb {
    /// The box spanned by two opposite corners, in any order.
    #[must_use]
    pub fn new(a: [f64; 3], b: [f64; 3]) -> Self {
        let mut min = a;
        let mut max = b;
        for axis in 0..3 {
            min[axis] = smaller(a[axis], b[axis]);
            max[axis] = larger(a[axis], b[axis]);
        }
        Self { min, max }
    }

    /// Length along each axis.
    #[must_use]
    pub fn size(&self) -> [f64; 3] {
        by_axis(|axis| self.max[axis] - self.min[axis])
    }

    /// Middle of the box.
    #[must_use]
    pub fn centre(&self) -> [f64; 3] {
        by_axis(|axis| (self.min[axis] + self.max[axis]) / 2.0)
    }

    /// The box moved by `by`.
    #[must_use]
    pub fn moved(&self, by: [f64; 3]) -> Self {
        Self { min: by_axis(|axis| self.min[axis] + by[axis]), max: by_axis(|axis| self.max[axis] + by[axis]) }
    }

    /// The box grown by `by` on every side.
    #[must_use]
    pub fn grown(&self, by: f64) -> Self {
        Self { min: by_axis(|axis| self.min[axis] - by), max: by_axis(|axis| self.max[axis] + by) }
    }

    /// The space the box sweeps when it moves straight by `by` along one axis.
    #[must_use]
    pub fn swept(&self, axis: usize, by: f64) -> Self {
        let mut out = *self;
        if by < 0.0 {
            out.min[axis] += by;
        } else {
            out.max[axis] += by;
        }
        out
    }

    /// How deep the two boxes go into each other along each axis; negative is a gap on that axis.
    #[must_use]
    pub fn overlap_by_axis(&self, other: &Self) -> [f64; 3] {
        by_axis(|axis| self.overlap_along(other, axis))
    }

    /// How deep the two boxes go into each other along one axis; negative is a gap.
    #[must_use]
    pub fn overlap_along(&self, other: &Self, axis: usize) -> f64 {
        smaller(self.max[axis], other.max[axis]) - larger(self.min[axis], other.min[axis])
    }

    /// Whether the boxes share space (more than [`TOUCH_MM`] on every axis).
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        // The least of four differences, the ones that mostly decide first: the page has no instruction for the lesser of
        // two numbers that treats what is no number as this language does.
        let more = |high: f64, low: f64| high - low > TOUCH_MM;
        let meet = by_axis(|axis| more(self.max[axis], other.min[axis]) & more(other.max[axis], self.min[axis]));
        meet[0] && meet[1] && meet[2] && self.is_thick() && other.is_thick()
    }

    /// Whether it has more than [`TOUCH_MM`] along every axis.
    fn is_thick(&self) -> bool {
        let thick = by_axis(|axis| self.max[axis] - self.min[axis] > TOUCH_MM);
        thick[0] && thick[1] && thick[2]
    }

    /// The least move along one axis that parts the two boxes; 0 when they do not share space.
    #[must_use]
    pub fn overlap_depth(&self, other: &Self) -> f64 {
        let depths = self.overlap_by_axis(other);
        let least = smaller(smaller(depths[0], depths[1]), depths[2]);
        if least > TOUCH_MM { least } else { 0.0 }
    }

    /// Shortest distance between the boxes; 0 when they touch or share space.
    #[must_use]
    pub fn distance(&self, other: &Self) -> f64 {
        let gaps = by_axis(|axis| larger(-self.overlap_along(other, axis), 0.0));
        f64::sqrt(gaps[0] * gaps[0] + gaps[1] * gaps[1] + gaps[2] * gaps[2])
    }

    /// What two boxes have in common; an empty box, with the greater of both lower ends, when they have nothing.
    #[must_use]
    pub fn intersection(&self, other: &Self) -> Self {
        let min = by_axis(|axis| larger(self.min[axis], other.min[axis]));
        let max = by_axis(|axis| larger(smaller(self.max[axis], other.max[axis]), min[axis]));
        Self { min, max }
    }

    /// The smallest box holding both.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        Self {
            min: by_axis(|axis| smaller(self.min[axis], other.min[axis])),
            max: by_axis(|axis| larger(self.max[axis], other.max[axis])),
        }
    }

    /// `[x0, y0, z0, x1, y1, z1]`, as `build.json` states a box.
    #[must_use]
    pub fn flat(&self) -> [f64; 6] {
        let [a, b] = [self.min, self.max];
        [a[0], a[1], a[2], b[0], b[1], b[2]]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn touching_is_not_overlapping_and_a_hair_more_is() {
        let a = Aabb::new([0.0, 0.0, 0.0], [10.0, 10.0, 10.0]);
        assert!(!a.overlaps(&Aabb::new([10.0, 0.0, 0.0], [20.0, 10.0, 10.0])));
        assert!(a.overlaps(&Aabb::new([9.999, 0.0, 0.0], [20.0, 10.0, 10.0])));
    }

    /// Swept volume of a box along one axis: V + |v| * silhouette (translation sweep of a convex body).
    #[test]
    fn a_swept_box_has_the_volume_of_the_box_and_its_silhouette_times_the_way() {
        let a = Aabb::new([0.0; 3], [100.0, 50.0, 20.0]).swept(2, 30.0).size();
        assert_eq!(a[0] * a[1] * a[2], 250_000.0);
    }

    #[test]
    fn distance_is_measured_corner_to_corner() {
        let a = Aabb::new([0.0; 3], [1.0; 3]);
        let b = Aabb::new([4.0, 5.0, 0.0], [6.0, 6.0, 1.0]);
        assert_eq!(a.distance(&b), 5.0);
    }
}
