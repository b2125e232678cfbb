//! Solids and frames: boxes, sweeps, and the map between a flat panel and the case.
//!
//! **The case frame**, used by every solid: stand in front of the case.
//!
//! ```text
//!        z up
//!        |   y to the back
//!        |  /
//!        | /
//!        |/_______ x to the right        origin: lower left front corner of the
//!                                        case's outside box (feet have z < 0); mm
//! ```
//!
//! **A panel's frame** is flat: seen from outside the case, `u` to the right, `v` up (on top and floor `v` points
//! to the back of the case), origin at the lower left corner of the panel's bounding box on its *outside* face.

mod aabb;
mod frame;
mod order;
mod vector;

pub use aabb::Aabb;
pub use frame::PanelFrame;
pub(crate) use order::{larger, smaller, within};
pub(crate) use vector::{by_axis, dot, minus};

/// Touching is not overlapping: solids that share less than this depth (mm) only touch.
///
/// Reason: sums of inch sizes in binary floating point differ by about 1e-13; a hundredth of the finest printed
/// length (0.01 mm) is far above that and far below anything a saw can do.
pub const TOUCH_MM: f64 = 1e-4;
