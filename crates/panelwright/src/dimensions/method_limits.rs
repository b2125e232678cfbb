//! The narrowest web each method leaves standing while it is cut.

use super::catalogue::Entry;
use super::general_tolerances::Making;
use super::hand_work::DRILLED_ACCURACY;
use super::laser_kerf::{CLOSEST_CUTS, LEAST_FEATURE};
use super::router_work::TAB_HEIGHT;
use super::source::{Source, Sourced};

/// A web narrower than this does not survive being cut, mm.
///
/// *Hand*: two holes each drilled true to ± half a millimetre may meet. *Router*: the thinnest holding tab that is
/// trusted against a cutter is as thick. *Laser*: what is between two cuts nearer than this burns.
#[must_use]
pub const fn least_web(making: Making) -> Sourced<f64> {
    match making {
        Making::Hand | Making::FirstHand => Sourced::new(
            2.0 * DRILLED_ACCURACY.get()[1],
            Source::derived("Workshop custom", "two holes drilled at ±0.5 mm, each towards the other"),
        ),
        Making::Router => Sourced::new(
            TAB_HEIGHT.get()[0],
            Source::derived("Workshop custom", "a web thinner than a holding tab does not stand the cutter"),
        ),
        Making::Laser => CLOSEST_CUTS,
    }
}

/// Below this a web breaks whatever made it, mm.
pub const FRAGILE_WEB: Sourced<f64> = LEAST_FEATURE;

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for (making, name) in
        [(Making::Hand, "by hand"), (Making::Router, "with a router"), (Making::Laser, "with a laser")]
    {
        let least = least_web(making);
        out.push(Entry::new("making", format!("Narrowest web cut {name}"), "{} mm", &[least.get()], least.source()));
    }
}
