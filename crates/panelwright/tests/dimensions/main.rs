//! The tables of sizes, held against numbers copied out of the standards a second time.

mod boards;
mod cards;
mod catalogue;
mod drives;
mod fans;
mod fasteners;
mod paper_and_cautions;
mod plugs_coolers_connectors;
mod sheets;
mod source;
mod stackup;
mod supplies;

/// Fails unless two lengths agree within `tolerance_mm`.
#[track_caller]
fn near(found: f64, expected: f64, tolerance_mm: f64) {
    assert!((found - expected).abs() <= tolerance_mm, "found {found}, expected {expected} within {tolerance_mm}");
}

/// Fails unless both ends of two ranges agree within `tolerance_mm`.
#[track_caller]
fn near_both(found: [f64; 2], expected: [f64; 2], tolerance_mm: f64) {
    near(found[0], expected[0], tolerance_mm);
    near(found[1], expected[1], tolerance_mm);
}
