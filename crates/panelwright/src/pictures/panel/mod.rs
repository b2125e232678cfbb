//! Panels flat, as seen from outside: a picture for the page, and files for a saw or a router.

mod file;
mod page;

pub use file::{FILE_LAYERS, all_panels, all_panels_svg, file_drawing, file_svg};
pub use page::page_picture;
