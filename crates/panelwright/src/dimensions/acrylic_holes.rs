//! Screw holes in acrylic: it grows with warmth, and cracks from a hole that holds it or lies near an edge.
//!
//! A panel is taken to be fixed in its middle and to grow from there, so that a hole wants room on both sides of its
//! screw for what the sheet between them grows or shrinks.

use super::catalogue::Entry;
use super::documents::WORKSHOP;
use super::sheets::{ACRYLIC_EXPANDS, ACRYLIC_HOLE_EXTRA};
use super::source::{Source, Sourced};
use super::table::sizes;

sizes! {
    group "sheets";
    ACRYLIC_WARMS: f64 = 20.0, "Acrylic in a case is warmer or colder than on the bench by", "±{} K",
        Source::common_practice(WORKSHOP, "a bench of 20 °C and a wall of 40 °C beside parts that give off heat");
    ACRYLIC_FROM_EDGE: [f64; 2] = [2.0, 1.5], "Acrylic hole's middle from the panel's edge, times its diameter and times the sheet's thickness", "{} diameters and {} thicknesses",
        Source::common_practice(WORKSHOP, "nearer to an edge acrylic cracks");
}

/// Drills are sold by the tenth of a millimetre.
const DRILLS_PER_MM: f64 = 10.0;

/// Guards a figure that is a whole tenth already.
const HAIR: f64 = 1e-6;

/// The hole for a screw that lies so far from the middle of its panel, rounded up to a drill.
#[must_use]
pub fn acrylic_hole(screw_mm: f64, from_middle_mm: f64) -> Sourced<f64> {
    let grows = from_middle_mm / 1000.0 * ACRYLIC_EXPANDS.get() * ACRYLIC_WARMS.get();
    let needed = screw_mm + ACRYLIC_HOLE_EXTRA.get() + 2.0 * grows;
    Sourced::new(f64::ceil(needed * DRILLS_PER_MM - HAIR) / DRILLS_PER_MM, HOLE_SOURCE)
}

/// Where the width of such a hole comes from.
pub const HOLE_SOURCE: Source =
    Source::common_practice(WORKSHOP, "acrylic: half a millimetre and what the sheet grows, soft washers");

/// Sheet wanted between the edge of a hole and the panel's edge, mm.
#[must_use]
pub fn acrylic_edge_web(hole_mm: f64, thickness_mm: f64) -> Sourced<f64> {
    let [diameters, thicknesses] = ACRYLIC_FROM_EDGE.get();
    let middle = (diameters * hole_mm).max(thicknesses * thickness_mm);
    Sourced::new(middle - hole_mm / 2.0, ACRYLIC_FROM_EDGE.source())
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    size_entries(out);
}
