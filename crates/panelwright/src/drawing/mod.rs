//! A picture in millimetres, and the ways to write it.
//!
//! Invariant: nothing in here knows a panel, a part or a page of the web. What prints is what is shown: every
//! picture and every file is one [`Drawing`], and [`svg`](svg()) and [`pdf`](pdf()) only spell it. A file for a machine,
//! where the order of contours matters, is one [`Dxf`], spelled by [`dxf`](dxf()).

mod colour;
mod contour;
mod dxf;
pub mod font;
mod letters;
pub mod number;
mod pdf;
mod picture;
mod svg;

pub use colour::{Colour, Shade};
pub use contour::{
    Arc, CURVE_TOLERANCE_MM, Contour, SAME_POINT_MM, Segment, Vertex, chords_for_arc, chords_for_circle,
};
pub use dxf::{Dxf, DxfForm, DxfItem, DxfLayer, dxf};
pub use font::{Weight, cap_height_mm};
pub use letters::text_width_mm;
pub use pdf::{Page, PdfInfo, pdf};
pub use picture::{
    Anchor, Dash, Drawing, Form, Group, Item, Layer, Shape, Stroke, Style, THIN_LINE_MM, Text, VISIBLE_LINE_MM,
};
pub use svg::{Letters, SvgOptions, contour_path_data, svg};
