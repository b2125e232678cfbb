//! What a router leaves: holding tabs, relief, webs.

use super::catalogue::Entry;
use super::documents::WORKSHOP;
use super::source::Source;
use super::table::sizes;

sizes! {
    group "making";
    TABS_A_PART: [f64; 2] = [3.0, 5.0], "Holding tabs on a routed part", "{} to {}",
        Source::common_practice(WORKSHOP, "holding tabs");
    TAB_WIDTH: [f64; 2] = [4.0, 6.0], "Width of a holding tab", "{} to {} mm",
        Source::common_practice(WORKSHOP, "holding tabs");
    TAB_HEIGHT: [f64; 2] = [1.5, 2.0], "Height of a holding tab, from the underside", "{} to {} mm",
        Source::common_practice(WORKSHOP, "holding tabs");
    RELIEF_ROOM: [f64; 2] = [1.02, 1.10], "Corner relief wider than the cutter, so that it turns and does not stop", "{} to {} times",
        Source::common_practice(WORKSHOP, "corner relief");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    size_entries(out);
}
