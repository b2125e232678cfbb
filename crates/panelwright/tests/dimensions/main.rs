//! The tables of sizes, held against numbers copied out of the standards a second time.

mod catalogue;
mod fasteners;

/// Fails unless two lengths agree within `tolerance_mm`.
#[track_caller]
fn near(found: f64, expected: f64, tolerance_mm: f64) {
    assert!((found - expected).abs() <= tolerance_mm, "found {found}, expected {expected} within {tolerance_mm}");
}
