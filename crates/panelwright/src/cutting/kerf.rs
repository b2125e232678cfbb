//! Kerf: the width a beam burns away, and the paths that make up for it.
//!
//! ```text
//!     path of the beam's middle
//!   - - - - - - - - - - - - - -   k/2 outside the outline: the part keeps its size
//!   ===========================   edge of the part
//!         opening:  - - -         k/2 inside the edge of the opening
//! ```
//!
//! Open lines (lettering) are not moved. Never let the machine's own program do it a second time.

use super::offset::{Joins, Lost, offset};
use super::relief::Void;
use crate::drawing::Contour;

/// The path of a beam of width `kerf_mm` that leaves `contour` as the edge.
///
/// # Errors
/// [`Lost`] when an opening is too narrow for the beam, or an outline has a gap narrower than it.
pub fn compensated(contour: &Contour, void: Void, kerf_mm: f64) -> Result<Contour, Lost> {
    let outward = match void {
        Void::Inside => -kerf_mm / 2.0,
        Void::Outside => kerf_mm / 2.0,
    };
    offset(contour, outward, Joins::Sharp)
}

/// Kerf from the test piece: `pieces` rectangles drawn `drawn_mm` wide in all, cut apart by single lines, pushed
/// together again and measured as `measured_mm`. Each piece has lost half a kerf on both sides: k = (W - S) / N.
///
/// `None` when the numbers cannot be: no piece, a width that is none, or pieces that have grown.
///
/// ```
/// use panelwright::cutting::kerf_from_test;
/// assert!((kerf_from_test(100.0, 98.5, 10).unwrap() - 0.15).abs() < 1e-9);
/// assert_eq!(kerf_from_test(100.0, 100.2, 10), None);
/// ```
#[must_use]
pub fn kerf_from_test(drawn_mm: f64, measured_mm: f64, pieces: u32) -> Option<f64> {
    let plausible = pieces > 0 && measured_mm > 0.0 && measured_mm <= drawn_mm && drawn_mm.is_finite();
    plausible.then(|| (drawn_mm - measured_mm) / f64::from(pieces))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Width across of what is left after a beam of `kerf` followed `path`.
    fn cut_width(path: &Contour, void: Void, kerf: f64) -> f64 {
        path.bbox().width() + if void == Void::Inside { kerf } else { -kerf }
    }

    #[test]
    fn parts_and_holes_keep_their_size() {
        let square = Contour::rect(0.0, 0.0, 40.0, 40.0);
        for (void, uncompensated, drawn) in [(Void::Outside, 39.8, 40.2), (Void::Inside, 40.2, 39.8)] {
            assert!((cut_width(&square, void, 0.2) - uncompensated).abs() < 1e-9);
            let path = compensated(&square, void, 0.2).unwrap();
            assert!((path.bbox().width() - drawn).abs() < 1e-9);
            assert!((cut_width(&path, void, 0.2) - 40.0).abs() < 1e-9);
        }
        let hole = compensated(&Contour::circle(5.0, 5.0, 1.7), Void::Inside, 0.2).unwrap();
        assert!((hole.as_circle().unwrap().1 - 1.6).abs() < 1e-9);
        let outline = compensated(&Contour::rect(0.0, 0.0, 100.0, 60.0), Void::Outside, 0.2).unwrap();
        assert!((outline.area() - 6032.04).abs() < 1e-6);
    }

    #[test]
    fn tab_and_slot_fit_without_play_once_compensated() {
        let (tab, slot) = (Contour::rect(0.0, 0.0, 10.0, 6.0), Contour::rect(0.0, 0.0, 10.0, 6.0));
        let play =
            |tab: &Contour, slot: &Contour| cut_width(slot, Void::Inside, 0.2) - cut_width(tab, Void::Outside, 0.2);
        assert!((play(&tab, &slot) - 0.4).abs() < 1e-9);
        let tab = compensated(&tab, Void::Outside, 0.2).unwrap();
        let slot = compensated(&slot, Void::Inside, 0.2).unwrap();
        assert!(play(&tab, &slot).abs() < 1e-9);
    }

    #[test]
    fn a_test_piece_that_cannot_be_gives_no_kerf() {
        for (drawn, measured, pieces) in
            [(100.0, 98.5, 0), (100.0, 0.0, 10), (100.0, 101.0, 10), (f64::NAN, 98.0, 10), (f64::INFINITY, 98.0, 10)]
        {
            assert_eq!(kerf_from_test(drawn, measured, pieces), None);
        }
    }
}
