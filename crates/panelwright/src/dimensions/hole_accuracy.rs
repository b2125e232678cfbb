//! How big a hole must be for the hand that makes it.
//!
//! Each hole centre may be out by ±δ in x and in y, so two centres are at most 2√2·δ apart. A screw
//! with clearance in *both* parts (floating) has room H - F for that; a screw held by a thread in
//! one part (fixed) has half of it. The same as the position rules of ASME Y14.5.

use std::f64::consts::SQRT_2;

/// Whether the far part has a clearance hole too.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fixing {
    /// Clearance holes in both parts.
    Floating,
    /// A thread, standoff or insert in the far part.
    Fixed,
}

impl Fixing {
    /// Parts that share the hole's play.
    const fn share(self) -> f64 {
        match self {
            Self::Floating => 1.0,
            Self::Fixed => 2.0,
        }
    }
}

/// How far each hole centre may be out, ± mm along each axis, for a hole of `hole_mm` around a
/// screw of `screw_mm`. Negative when the screw is thicker than the hole.
#[must_use]
pub fn allowed_error_mm(screw_mm: f64, hole_mm: f64, fixing: Fixing) -> f64 {
    (hole_mm - screw_mm) / (2.0 * SQRT_2 * fixing.share())
}

/// The hole that makes up for centres out by ±`error_mm` along each axis.
#[must_use]
pub fn hole_for_error_mm(screw_mm: f64, error_mm: f64, fixing: Fixing) -> f64 {
    screw_mm + 2.0 * SQRT_2 * fixing.share() * error_mm
}
