//! Numbers of our JSON files: at most four decimals, whole ones without a point, never `-0`.

use serde::{Serialize, Serializer};

/// A number written to 0.0001: for millimetres far below anything a tool or a printer can do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number(pub f64);

/// Decimals are 1 / this.
const SCALE: f64 = 10_000.0;

impl Serialize for Number {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let rounded = libm::round(self.0 * SCALE) / SCALE;
        if f64::trunc(rounded) == rounded && rounded.abs() < 1e15 {
            // Also turns -0 into 0.
            serializer.serialize_i64(rounded as i64)
        } else {
            serializer.serialize_f64(rounded)
        }
    }
}

/// Numbers side by side.
pub(super) type Numbers = Vec<Number>;

/// Some numbers, each rounded.
pub(super) fn numbers<const N: usize>(values: [f64; N]) -> Numbers {
    values.map(Number).to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_rounded_and_whole_ones_have_no_point() {
        for (value, text) in [
            (12.0, "12"),
            (-0.0, "0"),
            (-0.000_04, "0"),
            (0.000_05, "0.0001"),
            (0.1 + 0.2, "0.3"),
            (109.834_999_99, "109.835"),
            (-11.302_999_999_999_997, "-11.303"),
            (f64::NAN, "null"),
        ] {
            assert_eq!(serde_json::to_string(&Number(value)).unwrap(), text);
        }
        assert_eq!(serde_json::to_string(&numbers([1.0, 2.25])).unwrap(), "[1,2.25]");
    }
}
