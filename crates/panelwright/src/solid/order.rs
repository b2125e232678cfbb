//! The larger and the smaller of two numbers, for the innermost loops.
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

#[cfg(test)]
mod tests {
    use super::*;

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
