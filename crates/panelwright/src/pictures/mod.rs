//! Pictures: the case as one sees it, and each panel flat.
//!
//! Invariant: pictures show what the build says and decide nothing.

mod case;
pub mod panel;
mod projection;
pub mod sheet;
mod sheet_names;

pub use case::{CasePicture, CaseView, case_picture};
pub use projection::Projection;
