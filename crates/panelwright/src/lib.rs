//! Panelwright's core: from what the maker chose to a small computer case of flat panels.
//!
//! The flow goes one way, each arrow one function from earlier results to one plain value; [`Build::of`] is the whole
//! of it on one screen:
//!
//! ```text
//! Design -> Spec -> Arrangement (parts placed) -> panels, hardware, screws -> findings
//!                                                        |
//!                                                        +-> pictures, templates, files
//! ```
//!
//! Invariant: this crate touches no file, clock, randomness, thread or page.
#![forbid(unsafe_code)]

pub mod arrangement;
mod build;
mod chance;
pub mod cutting;
pub mod design;
pub mod dimensions;
pub mod documents;
pub mod drawing;
pub mod fastening;
pub mod fit;
mod fnv;
pub mod json;
pub mod panels;
pub mod parts;
pub mod pictures;
#[doc(hidden)]
pub mod same_bytes;
#[doc(hidden)]
pub mod sample;
pub mod solid;
mod sorting;
pub mod stock;

pub use build::Build;
