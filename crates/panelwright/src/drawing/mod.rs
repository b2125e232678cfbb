//! A picture in millimetres, and the ways to write it.
//!
//! Invariant: nothing in here knows a panel, a part or a page of the web. What prints is what is shown: every
//! picture and every file is one [`Contour`]-and-text value, and the writers only spell it.

mod contour;
pub mod number;

pub use contour::{
    Arc, CURVE_TOLERANCE_MM, Contour, PathDataError, SAME_POINT_MM, Segment, Vertex, chords_for_arc, chords_for_circle,
};
