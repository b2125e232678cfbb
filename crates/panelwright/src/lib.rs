//! Panelwright's core: from what the maker chose to a small computer case of flat panels.
//!
//! Invariant: this crate touches no file, clock, randomness, thread or page.
#![forbid(unsafe_code)]

pub mod arrangement;
pub mod design;
pub mod dimensions;
pub mod documents;
pub mod drawing;
pub mod fastening;
pub mod fit;
pub mod panels;
pub mod parts;
pub mod pictures;
#[doc(hidden)]
pub mod sample;
pub mod solid;
