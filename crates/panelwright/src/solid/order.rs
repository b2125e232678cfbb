//! The larger and the smaller of two numbers, for the innermost loops, and the nearest within a range.
//!
//! `f64::max` and `f64::min` must put up with what is no number in their own way, for which wasm has no instruction: each
//! is a call there. Nothing that is compared in these loops is no number.

/// The larger of two numbers; the second when either is no number.
#[inline(always)]
#[must_use]
pub const fn larger(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// The smaller of two numbers; the second when either is no number.
#[inline(always)]
#[must_use]
pub const fn smaller(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The nearest to a number within a range; no number stays none.
///
/// A range whose ends have changed places gives one of them: `f64::clamp` would panic, and its message brings the
/// library's writing of numbers into the page's module.
#[inline(always)]
#[must_use]
pub const fn within(number: f64, low: f64, high: f64) -> f64 {
    if number < low {
        low
    } else if number > high {
        high
    } else {
        number
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn within_is_the_librarys_clamp_and_puts_up_with_a_range_turned_about() {
        for number in [-3.0, -1.0, 0.0, 0.5, 2.0, 9.0, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(within(number, -1.0, 2.0), number.clamp(-1.0, 2.0));
            assert!([-1.0, 2.0].contains(&within(number, 2.0, -1.0)));
        }
        assert!(within(f64::NAN, 0.0, 1.0).is_nan());
    }

    #[test]
    fn they_are_the_librarys_for_numbers() {
        let numbers = [-1.5, -0.25, 0.0, 0.1, 7.0, f64::INFINITY, f64::NEG_INFINITY];
        for a in numbers {
            for b in numbers {
                assert_eq!((larger(a, b), smaller(a, b)), (a.max(b), a.min(b)));
            }
        }
    }
}
