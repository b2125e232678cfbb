//! How far a case may be tilted before it tips over.

use super::catalogue::Entry;
use super::documents::WORKSHOP;
use super::source::Source;
use super::table::sizes;

sizes! {
    group "making";
    TILT_LEAST: f64 = 10.0, "Tilt a case on its feet bears without tipping, in every direction", "{} degrees",
        Source::published("IEC 62368-1, edition 3", "stability test, tilt of 10 degrees, as quoted on a standards mailing list");
    TILT_EASY: f64 = 15.0, "The same for a case that stands easily", "{} degrees",
        Source::common_practice(WORKSHOP, "half as much again: cables pull at a case");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    size_entries(out);
}
