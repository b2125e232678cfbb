//! Parallel projection of the case onto a flat picture, from any side and any height.
//!
//! Frames: the case frame of [`crate::solid`] (x right, y back, z up, mm); the picture has x to the right and y *up*,
//! mm. Formulas: orthographic axonometric projection as in ISO 5456-3; the eye is so far away that all lines of sight
//! are parallel.
//!
//! Invariant: trigonometry goes through `libm`, so that native and wasm agree to the last bit.

use kurbo::Point;

use crate::solid::dot;

/// A way to look at the case: two rows that make the picture, and the direction towards the eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Projection {
    /// Picture x of a step along each case axis.
    pub right: [f64; 3],
    /// Picture y (up) of a step along each case axis.
    pub up: [f64; 3],
    /// Direction from the case towards the eye, square to the other two.
    pub eye: [f64; 3],
}

/// Sine and cosine of an angle in degrees, exact at the quarter turns, so that views square to a wall are square.
fn sine_cosine(degrees: f64) -> (f64, f64) {
    let turned = degrees - 360.0 * f64::floor(degrees / 360.0);
    if turned == 0.0 {
        (0.0, 1.0)
    } else if turned == 90.0 {
        (1.0, 0.0)
    } else if turned == 180.0 {
        (0.0, -1.0)
    } else if turned == 270.0 {
        (-1.0, 0.0)
    } else {
        let angle = turned.to_radians();
        (libm::sin(angle), libm::cos(angle))
    }
}

impl Projection {
    /// The orthographic view from azimuth `azimuth_deg` (0: from the right, 90: from the back, -90: from the front)
    /// and elevation `elevation_deg` (0: level, 90: from above). Angles that are not finite count as 0.
    #[must_use]
    pub fn orthographic(azimuth_deg: f64, elevation_deg: f64) -> Self {
        let sane = |angle: f64| if angle.is_finite() { angle } else { 0.0 };
        let (sin_a, cos_a) = sine_cosine(sane(azimuth_deg));
        let (sin_e, cos_e) = sine_cosine(sane(elevation_deg));
        Self {
            right: [-sin_a, cos_a, 0.0],
            up: [-sin_e * cos_a, -sin_e * sin_a, cos_e],
            eye: [cos_e * cos_a, cos_e * sin_a, sin_e],
        }
    }

    /// A case point in the picture.
    #[must_use]
    pub fn point(&self, at: [f64; 3]) -> Point {
        Point::new(dot(at, self.right), dot(at, self.up))
    }

    /// How near the eye a case point is: larger is nearer.
    #[must_use]
    pub fn nearness(&self, at: [f64; 3]) -> f64 {
        dot(at, self.eye)
    }

    /// Whether a face with this outside normal is turned towards the eye.
    #[must_use]
    pub fn sees(&self, normal: [f64; 3]) -> bool {
        dot(normal, self.eye) > EDGE_ON
    }
}

/// Cosine below which a face counts as seen edge-on: at 500 mm it would show less than 0.001 mm of its width.
pub(super) const EDGE_ON: f64 = 1e-6;

#[cfg(test)]
mod tests {
    use super::*;

    /// atan(1/√2), the elevation of the isometric view (ISO 5456-3).
    const ISOMETRIC: f64 = 35.264_389_682_754_654;

    fn near(found: Point, x: f64, y: f64) {
        assert!((found.x - x).abs() < 1e-5 && (found.y - y).abs() < 1e-5, "{found:?} is not ({x}, {y})");
    }

    /// Worked examples of the isometric view from azimuth 45°: u = (y - x)/√2, v = (2z - x - y)/√6.
    #[test]
    fn isometric_from_behind_on_the_right() {
        let view = Projection::orthographic(45.0, ISOMETRIC);
        near(view.point([100.0, 0.0, 0.0]), -70.710_678, -40.824_829);
        near(view.point([0.0, 100.0, 0.0]), 70.710_678, -40.824_829);
        near(view.point([0.0, 0.0, 100.0]), 0.0, 81.649_658);
        near(view.point([100.0, 50.0, 20.0]), -35.355_339, -44.907_312);
    }

    /// The same from azimuth -45°: u = (x + y)/√2, v = (2z - x + y)/√6.
    #[test]
    fn isometric_from_the_front_right() {
        near(Projection::orthographic(-45.0, ISOMETRIC).point([100.0, 50.0, 20.0]), 106.066_017, -4.082_483);
    }

    /// Silhouette of a box in the isometric view: the sum of its three faces over √3.
    #[test]
    fn the_silhouette_of_a_box_has_the_area_of_its_three_faces_foreshortened() {
        let view = Projection::orthographic(45.0, ISOMETRIC);
        let [a, b, c] = [[100.0, 0.0, 0.0], [0.0, 50.0, 0.0], [0.0, 0.0, 20.0]].map(|at| view.point(at).to_vec2());
        let area = a.cross(b).abs() + a.cross(c).abs() + b.cross(c).abs();
        assert!((area - 4_618.802_154).abs() < 1e-5, "{area}");
    }

    #[test]
    fn square_views_are_square() {
        let front = Projection::orthographic(-90.0, 0.0);
        assert_eq!(front.point([100.0, 50.0, 20.0]), Point::new(100.0, 20.0));
        assert!(!front.sees([1.0, 0.0, 0.0]) && !front.sees([0.0, 0.0, 1.0]) && front.sees([0.0, -1.0, 0.0]));
        let above = Projection::orthographic(270.0, 90.0);
        assert_eq!(above.point([100.0, 50.0, 20.0]), Point::new(100.0, 50.0));
    }

    #[test]
    fn the_three_rows_are_square_to_each_other_and_of_length_one() {
        for (azimuth, elevation) in
            [(-55.0, 25.0), (35.0, 25.0), (125.0, ISOMETRIC), (217.3, -61.0), (0.0, 0.0), (-90.0, 90.0), (1e4, 12.0)]
        {
            let view = Projection::orthographic(azimuth, elevation);
            let rows = [view.right, view.up, view.eye];
            for (i, a) in rows.iter().enumerate() {
                for (j, b) in rows.iter().enumerate() {
                    assert!((dot(*a, *b) - f64::from(u8::from(i == j))).abs() < 1e-12, "{azimuth} {elevation}");
                }
            }
            let [r, u, e] = rows;
            let cross = [r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0]];
            assert!((dot(cross, e) - 1.0).abs() < 1e-12, "right-handed: right × up points to the eye");
        }
    }
}
