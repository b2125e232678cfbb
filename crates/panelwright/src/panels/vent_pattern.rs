//! Fields of vents: where the openings of a region lie.
//!
//! ```text
//!    staggered rounds, pitch p, web p - d          slots, pitches px and py, webs px - b and py - L
//!
//!      o   o   o   o      rows p * sqrt(3) / 2        () () () ()
//!        o   o   o        apart, every other row      || || || ||   L long, b wide, round ends
//!      o   o   o   o      shifted by p / 2            () () () ()
//! ```
//!
//! Formulas: plane geometry of lattices (one opening per cell).

use kurbo::Point;

/// Rounding of sums of pitches must not lose the last row, mm.
const ROUNDING_MM: f64 = 1e-9;

const SQRT_3: f64 = 1.732_050_807_568_877_2;

/// How many openings of a size fit into a length at a pitch.
fn count(length: f64, size: f64, pitch: f64) -> usize {
    if length + ROUNDING_MM < size || pitch <= 0.0 {
        return 0;
    }
    f64::floor((length - size + ROUNDING_MM) / pitch) as usize + 1
}

/// Centres of staggered rounds of diameter `d` that lie wholly inside a field from (0, 0) to (width, height).
#[must_use]
pub fn staggered(size: [f64; 2], d: f64, pitch: f64) -> Vec<Point> {
    let [width, height] = size;
    let row_pitch = pitch * SQRT_3 / 2.0;
    let mut out = Vec::new();
    for row in 0..count(height, d, row_pitch) {
        let shift = if row % 2 == 1 { pitch / 2.0 } else { 0.0 };
        let y = d / 2.0 + row as f64 * row_pitch;
        out.extend((0..count(width - shift, d, pitch)).map(|i| Point::new(d / 2.0 + shift + i as f64 * pitch, y)));
    }
    out
}

/// Centres of upright slots `b` wide and `length` long (rounds when both are equal) wholly inside a field.
#[must_use]
pub fn slots(size: [f64; 2], b: f64, length: f64, pitches: [f64; 2]) -> Vec<Point> {
    let mut out = Vec::new();
    for row in 0..count(size[1], length, pitches[1]) {
        let y = length / 2.0 + row as f64 * pitches[1];
        out.extend((0..count(size[0], b, pitches[0])).map(|i| Point::new(b / 2.0 + i as f64 * pitches[0], y)));
    }
    out
}

#[cfg(test)]
mod tests {
    use core::f64::consts::FRAC_PI_4;

    use super::*;

    fn close(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-6, "{a} is not {b}");
    }

    /// 100 x 80, rounds of 5 at 7.5: 12 rows 6.495 apart with 13 each (the shifted ones too).
    #[test]
    fn a_real_field_of_staggered_rounds() {
        let field = staggered([100.0, 80.0], 5.0, 7.5);
        assert_eq!(field.len(), 156);
        close(field.len() as f64 * FRAC_PI_4 * 25.0 / 8000.0, 0.382_882);
        for (index, a) in field.iter().enumerate() {
            assert!(a.x >= 2.5 && a.x <= 97.5 + 1e-9 && a.y >= 2.5 && a.y <= 77.5 + 1e-9);
            assert!(field[index + 1..].iter().all(|b| (*a - *b).hypot() >= 7.5 - 1e-9), "web of 2.5");
        }
    }

    #[test]
    fn a_real_field_in_a_square_lattice() {
        let field = slots([100.0, 80.0], 5.0, 5.0, [7.5, 7.5]);
        assert_eq!(field.len(), 143);
        close(field.len() as f64 * FRAC_PI_4 * 25.0 / 8000.0, 0.350_975);
    }

    #[test]
    fn a_field_smaller_than_one_opening_is_empty_and_an_exact_one_holds_it() {
        assert!(staggered([4.9, 80.0], 5.0, 7.5).is_empty() && slots([80.0, 29.9], 5.0, 30.0, [10.0, 40.0]).is_empty());
        assert_eq!(slots([15.0, 30.0], 5.0, 30.0, [10.0, 40.0]).len(), 2);
    }
}
