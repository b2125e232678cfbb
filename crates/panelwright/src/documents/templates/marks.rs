//! The marks every page of templates has.

/// Length of the check bars, mm.
pub const BAR_MM: f64 = 100.0;
