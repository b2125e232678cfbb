//! What was asked for and found no place on the panels.

use kurbo::Rect;

use crate::design::{VentFor, Wall};

/// A bracket or captive nut for which there was no free place.
#[derive(Clone, Debug, PartialEq)]
pub struct Unplaced {
    /// The name it would have had: `bracket-left-top-2`.
    pub id: String,
    /// The panels it was to join.
    pub walls: [Wall; 2],
}

/// A vent of which not one opening was cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VentLeftOut {
    /// What it was for.
    pub purpose: VentFor,
    /// The panel it was to be cut in.
    pub wall: Wall,
    /// The region it was to fill, in the panel's frame.
    pub wanted: Rect,
    /// Where openings may lie on that panel.
    pub free: Rect,
    /// Width of a slot or diameter of a round.
    pub opening_mm: f64,
    /// What stands in its way.
    pub why: NoVent,
}

/// Why a vent was left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoVent {
    /// Its region lies off the panel, or where its edges and joints are.
    OffPanel,
    /// What is left of its region is smaller than one opening.
    TooSmall,
    /// Holes, openings, or parts against the panel take all of its region.
    Taken,
}
