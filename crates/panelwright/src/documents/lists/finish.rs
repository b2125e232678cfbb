//! Finish: film with the sizes to cut it to, and paint for the edges.

use super::cut_list::edge_length_mm;
use super::table::{Cell, Table};
use crate::Build;
use crate::dimensions::source::{Source, Sourced};
use crate::drawing::number::format_number;

/// Film beyond each edge of a face, so that it can be laid a little askew and trimmed, mm.
pub(super) const FILM_OVER_MM: Sourced<f64> =
    Sourced::new(10.0, Source::common_practice("Workshop custom", "film cut 5 to 15 mm larger and trimmed"));

/// What a litre of paint covers once, m².
pub(super) const PAINT_M2_PER_L: Sourced<f64> =
    Sourced::new(10.0, Source::common_practice("Trade sizes", "paint covers 8 to 12 m² a litre"));

/// Coats on a cut edge: it drinks the first.
pub(super) const EDGE_COATS: Sourced<f64> =
    Sourced::new(3.0, Source::common_practice("Workshop custom", "a sealing coat and two of paint on cut edges"));

/// Paint in a tin, ml.
pub(super) const TIN_ML: Sourced<f64> =
    Sourced::new(125.0, Source::common_practice("Trade sizes", "smallest tin of paint"));

/// A piece of film for one face of one panel.
#[derive(Clone, Debug, PartialEq)]
pub struct FilmPiece {
    /// The panel.
    pub panel: &'static str,
    /// `outside` or `inside`.
    pub face: &'static str,
    /// Width and height to cut it to.
    pub size_mm: [f64; 2],
}

impl FilmPiece {
    /// Its area.
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        self.size_mm[0] * self.size_mm[1] / 1e6
    }
}

/// The pieces of film for one case; empty without film.
#[must_use]
pub fn film_pieces(build: &Build) -> Vec<FilmPiece> {
    let faces = [("outside", build.spec.sheet.film_out_mm), ("inside", build.spec.sheet.film_in_mm)];
    let mut out = Vec::new();
    for (face, thickness) in faces {
        if thickness <= 0.0 {
            continue;
        }
        out.extend(build.panels.iter().map(|panel| FilmPiece {
            panel: panel.label,
            face,
            size_mm: panel.size_mm.map(|length| length + 2.0 * FILM_OVER_MM.get()),
        }));
    }
    out
}

/// Paint for the cut edges of one case, ml; 0 without.
pub(super) fn edge_paint_ml(build: &Build) -> f64 {
    if build.spec.sheet.paint_edges_mm <= 0.0 {
        return 0.0;
    }
    let edges: f64 = build.panels.iter().map(edge_length_mm).sum();
    let area_m2 = edges * build.size().thickness_mm / 1e6;
    area_m2 * EDGE_COATS.get() / PAINT_M2_PER_L.get() * 1000.0
}

pub(super) fn table(build: &Build, pieces: &[FilmPiece]) -> Table {
    let mut table =
        Table::new("film", "Film", &["panel", "face", "#width, mm", "#height, mm", "#pieces", "#area of each, m²"]);
    for piece in pieces {
        table.rows.push(vec![
            Cell::text(piece.panel),
            Cell::text(piece.face),
            Cell::number(piece.size_mm[0], 1),
            Cell::number(piece.size_mm[1], 1),
            Cell::count(build.spec.prices.cases as usize),
            Cell::number(piece.area_m2(), 4),
        ]);
    }
    let over = format_number(FILM_OVER_MM.get(), 1);
    table.notes.push(format!("Each piece is {over} mm larger than its panel on every side: lay it, then trim it."));
    table
}
