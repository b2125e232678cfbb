//! The opening in the rear wall for a board's connectors, in frame U (see [`super::boards`]).
//!
//! ```text
//!                        wall, seen from inside, rear wall's inner face y = -12.27
//!    x = 7.52                                                      x = 166.27
//!       +-----------------------------------------------------------+  z = 42.21
//!       |   connectors: x 10.82 .. 162.97, z 1.57 .. 38.91          |
//!       +-----------------------------------------------------------+  z = -2.24
//!    z = 0 is the underside of the board; its right edge x = 163.83 lies 2.44 inside the opening
//! ```

use super::catalogue::Entry;
use super::documents::ATX;
use super::source::Source;
use super::table::sizes;

sizes! {
    group "boards";
    IO_SIZE: [f64; 2] = [158.75, 44.45], "I/O aperture, width and height", "{} × {} mm",
        Source::published(ATX, "figure 4; microATX 1.2 page 14");
    IO_SIZE_TOLERANCE: f64 = 0.20, "I/O aperture, tolerance of width and height", "±{} mm",
        Source::published(ATX, "figure 4");
    IO_X: [f64; 2] = [7.52, 166.27], "I/O aperture across, from hole C", "x = {} to {} mm",
        Source::derived(ATX, "figures 3 and 4: 5.196 inches from hole A, 6.250 wide");
    IO_Z: [f64; 2] = [-2.24, 42.21], "I/O aperture in height, from the board's underside", "z = {} to {} mm",
        Source::derived(ATX, "figure 4: 0.088 inch below the standoff's top, 1.750 high");
    IO_POSITION_TOLERANCE: f64 = 0.25, "I/O aperture, tolerance of its place", "±{} mm",
        Source::published(ATX, "figure 4");
    IO_CORNER_RADIUS_MAX: f64 = 0.99, "I/O aperture, largest corner radius", "{} mm",
        Source::published(ATX, "figure 4; microATX 1.2 page 14");
    IO_BORDER: f64 = 2.54, "Flat border around the I/O aperture, both faces", "{} mm",
        Source::published(ATX, "figure 4; microATX 1.2 page 14");
    IO_SHIELD_WALL: [f64; 2] = [0.94, 1.32], "Wall thickness an I/O shield clips to", "{} to {} mm",
        Source::published(ATX, "figure 4; microATX 1.2 page 14");
    IO_PAST_RIGHT_EDGE: f64 = 2.44, "I/O aperture past the board's right edge", "{} mm",
        Source::derived(ATX, "figures 3 and 4: 11.446 less 11.350 inches from hole A");
    IO_SIDE_WALL_GAP: f64 = 4.98, "Board's right edge to a side wall, with a shield", "{} mm",
        Source::derived(ATX, "figure 4: aperture past the edge and its flat border");
    REAR_WALL_INNER_Y: f64 = -12.27, "Inner face of the rear wall, behind the row of hole C", "y = {} mm",
        Source::published(ATX, "figure 4");
    REAR_WALL_TOLERANCE: f64 = 0.25, "Inner face of the rear wall, tolerance", "±{} mm",
        Source::published(ATX, "figure 4");
    IO_CONNECTOR_FACE_Y: f64 = -11.30, "Face of the I/O connectors", "y = {} mm",
        Source::published(ATX, "figure 5; microATX 1.2 page 15");
    IO_CONNECTOR_X: [f64; 2] = [10.82, 162.97], "Zone of the I/O connectors across", "x = {} to {} mm",
        Source::published(ATX, "figure 5; microATX 1.2 page 15");
    IO_CONNECTOR_Z: [f64; 2] = [1.57, 38.91], "Zone of the I/O connectors in height", "z = {} to {} mm",
        Source::published(ATX, "figure 5; microATX 1.2 page 15");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    size_entries(out);
}
