//! The kerf test piece: rectangles in a row that share their cuts, numbered.
//!
//! ```text
//!   +----+----+----+----+      drawn W wide with N rectangles and N + 1 upright cuts; cut, push the loose
//!   | 1  | 2  | 3  | 4  |      pieces together, measure S; the cut is (W - S) / N wide, see
//!   +----+----+----+----+      `kerf_from_test`
//! ```

use kurbo::Point;

use super::lettering::LETTERING;
use super::panel::{Cut, CutPanel, LayerUse, OUTLINE, layer};
use super::rule::CutRule;
use super::strokes::{strokes, strokes_width_mm};
use crate::drawing::Contour;
use crate::drawing::number::format_number;
use crate::panels::Face;

/// How many rectangles the test piece of a pack has: enough to make the error of a calliper small (common practice).
pub const KERF_PIECES: u32 = 10;

/// How wide they are drawn together, mm: a calliper opens that far (common practice).
pub const KERF_DRAWN_MM: f64 = 100.0;

/// Height of the pieces, mm: enough to hold and to measure across (common practice).
const HIGH_MM: f64 = 20.0;

/// Height of their numbers, mm (common practice).
const NUMBER_MM: f64 = 4.0;

/// A test piece of `pieces` rectangles, together `drawn_mm` wide, in a sheet of this thickness. At least one piece.
#[must_use]
pub fn kerf_test_piece(pieces: u32, drawn_mm: f64, thickness_mm: f64) -> CutPanel {
    let pieces = pieces.max(1);
    let each = drawn_mm / f64::from(pieces);
    let blank = |name: &str, usage, depth_mm, through| layer(name.to_owned(), usage, depth_mm, through, Face::Outside);
    let mut numbers = blank(LETTERING, LayerUse::Engrave, 0.0, false);
    let mut parting = blank("parting", LayerUse::Cut, thickness_mm, true);
    let mut outline = blank(OUTLINE, LayerUse::Cut, thickness_mm, true);
    for piece in 0..pieces {
        let left = each * f64::from(piece);
        let number = (piece + 1).to_string();
        let start = left + (each - strokes_width_mm(&number, NUMBER_MM)) / 2.0;
        numbers.lines.extend(strokes(&number, Point::new(start, (HIGH_MM - NUMBER_MM) / 2.0), NUMBER_MM));
        if piece > 0 {
            parting.lines.push(vec![Point::new(left, 0.0), Point::new(left, HIGH_MM)]);
        }
    }
    outline.cuts.push(Cut { of: OUTLINE.to_owned(), contour: Contour::rect(0.0, 0.0, drawn_mm, HIGH_MM) });
    CutPanel {
        id: "kerf-test".to_owned(),
        label: "Kerf test piece".to_owned(),
        size_mm: [drawn_mm, HIGH_MM],
        rule: CutRule::Nominal,
        seen_from: Face::Outside,
        notes: vec![
            format!("cut it, push the {pieces} loose pieces together again and measure them: S mm"),
            format!("the cut is ({} - S) / {pieces} mm wide: enter that for the laser", format_number(drawn_mm, 2)),
        ],
        layers: vec![numbers, parting, outline],
        problems: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cutting::kerf_from_test;

    #[test]
    fn ten_pieces_have_eleven_upright_cuts_and_give_the_kerf_back() {
        let piece = kerf_test_piece(10, 100.0, 6.0);
        let parting = &piece.layers[1].lines;
        assert_eq!(parting.len(), 9);
        // Every piece loses half the beam at both of its upright cuts.
        let mut cuts: Vec<f64> = parting.iter().map(|line| line[0].x).collect();
        cuts.extend([0.0, 100.0]);
        cuts.sort_by(f64::total_cmp);
        let together: f64 = cuts.windows(2).map(|pair| pair[1] - pair[0] - 0.15).sum();
        assert!((together - 98.5).abs() < 1e-9);
        assert!((kerf_from_test(100.0, together, 10).unwrap() - 0.15).abs() < 1e-9);
        // Numbers stay on their pieces.
        for at in piece.layers[0].lines.iter().flatten() {
            let nearest = cuts.iter().map(|cut| (at.x - cut).abs()).fold(f64::MAX, f64::min);
            assert!(nearest > 0.5 && (1.0..19.0).contains(&at.y));
        }
    }
}
