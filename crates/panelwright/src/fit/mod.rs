//! Fit: named rules over solids and panels. Each says what it measured, what is needed, where, and what would mend it.
//!
//! Invariant: nothing here changes a design, and nothing is decided by drawing.

mod finding;

pub use finding::{Finding, Severity};
