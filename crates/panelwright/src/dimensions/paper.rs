//! Paper for templates. A printed line is never placed from the paper's edge: paper is cut to about
//! 2 mm, and printers feed it with as much again.

use super::catalogue::Entry;
use super::documents::{ANSI_PAPER, ISO_216, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

/// The papers templates are made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Paper {
    /// 210 x 297 mm.
    A4,
    /// 297 x 420 mm.
    A3,
    /// 8.5 x 11 inches.
    Letter,
    /// 8.5 x 14 inches.
    Legal,
    /// 11 x 17 inches.
    Tabloid,
    /// 594 x 841 mm, for plotters.
    A1,
    /// 841 x 1189 mm, for plotters.
    A0,
}

impl Paper {
    /// All papers.
    pub const ALL: [Self; 7] = [Self::A4, Self::A3, Self::Letter, Self::Legal, Self::Tabloid, Self::A1, Self::A0];

    /// The name printed on the packet.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::A3 => "A3",
            Self::Letter => "Letter",
            Self::Legal => "Legal",
            Self::Tabloid => "Tabloid",
            Self::A1 => "A1",
            Self::A0 => "A0",
        }
    }
}

/// Width and height of a sheet of paper, upright.
#[must_use]
pub const fn size(paper: Paper) -> Sourced<[f64; 2]> {
    match paper {
        Paper::A4 => Sourced::new([210.0, 297.0], Source::published(ISO_216, "A4")),
        Paper::A3 => Sourced::new([297.0, 420.0], Source::published(ISO_216, "A3")),
        Paper::Letter => Sourced::new([215.9, 279.4], Source::published(ANSI_PAPER, "Letter, 8.5 x 11 inches")),
        Paper::Legal => Sourced::new([215.9, 355.6], Source::from_memory(ANSI_PAPER, "Legal, 8.5 x 14 inches")),
        Paper::Tabloid => Sourced::new([279.4, 431.8], Source::from_memory(ANSI_PAPER, "Tabloid, 11 x 17 inches")),
        Paper::A1 => Sourced::new([594.0, 841.0], Source::from_memory(ISO_216, "A1")),
        Paper::A0 => Sourced::new([841.0, 1189.0], Source::from_memory(ISO_216, "A0")),
    }
}

sizes! {
    group "paper";
    PRINTER_MARGIN: f64 = 10.0, "Margin kept free on each side of a template", "{} mm",
        Source::common_practice(WORKSHOP, "printers leave more than they claim");
    UNPRINTABLE: [f64; 2] = [3.0, 6.0], "Border most printers cannot print", "{} to {} mm; some 12 to 15 at one end",
        Source::common_practice(WORKSHOP, "desktop printers");
    TILE_OVERLAP: f64 = 10.0, "Overlap of a template's pages", "{} mm",
        Source::common_practice(WORKSHOP, "room for two register marks and glue");
    CHECK_BAR: f64 = 100.0, "Bars to measure on each page", "{} mm",
        Source::common_practice(WORKSHOP, "both ways, with end ticks");
    CHECK_BAR_TOLERANCE: f64 = 0.3, "Bar that needs no correction", "within ±{} mm",
        Source::common_practice(WORKSHOP, "hand work");
    FIT_TO_PAGE: f64 = 3.0, "Bar that tells of scaling by the printer's settings", "off by more than {} %",
        Source::common_practice(WORKSHOP, "fitting a page inside a printer's margins scales to 93 to 97 %");
    PAPER_CUT: f64 = 2.0, "Paper's own size is only good to", "±{} mm (150 to 600 mm)",
        Source::from_memory(ISO_216, "trimming tolerance");
    PAPER_MOVES: [f64; 2] = [0.1, 0.3], "Paper grows across its grain from 40 to 60 % humidity", "{} to {} %",
        Source::from_memory("Paper handbooks", "expansion with humidity");
    POINTS_PER_MM: f64 = 72.0 / 25.4, "PDF points to the millimetre", "{}",
        Source::published("ISO 32000-1", "user space: 72 units to the inch");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for paper in Paper::ALL {
        let sheet = size(paper);
        out.push(Entry::new("paper", paper.label(), "{} × {} mm", &sheet.get(), sheet.source()));
    }
    size_entries(out);
}
