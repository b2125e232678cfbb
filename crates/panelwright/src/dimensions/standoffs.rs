//! Standoffs under the board: the lengths they are sold in.

use super::catalogue::Entry;
use super::documents::TRADE;
use super::source::Source;
use super::table::sizes;

/// The lengths, the shortest first.
const LENGTHS: &[f64] = &[5.0, 6.0, 6.35, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0];

sizes! {
    group "fasteners";
    STANDOFF_LENGTHS: &'static [f64] = LENGTHS, "M3 standoffs, lengths sold", "{*} mm",
        Source::from_memory(TRADE, "lengths of hexagonal standoffs; 6.35 is a quarter of an inch");
}

/// The nearest length sold at or below one, and at or above it.
#[must_use]
pub fn sold_beside(length_mm: f64) -> [Option<f64>; 2] {
    [LENGTHS.iter().copied().rfind(|sold| *sold <= length_mm), LENGTHS.iter().copied().find(|sold| *sold >= length_mm)]
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    size_entries(out);
}
