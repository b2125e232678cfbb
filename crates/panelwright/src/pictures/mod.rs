//! Pictures: the case as one sees it, and each panel flat.
//!
//! Invariant: pictures show what the build says and decide nothing.

#[allow(dead_code, reason = "the picture itself is being built on top of it")]
pub mod case;
mod projection;

pub use projection::Projection;
