//! Screws driven into the board itself: how near the edge, and how big a pilot hole.

use super::catalogue::Entry;
use super::documents::{ISO_1478, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

/// A tapping screw by the number of ISO 1478.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TappingScrew {
    /// 2.2 mm.
    St2_2,
    /// 2.9 mm.
    St2_9,
    /// 3.5 mm.
    St3_5,
    /// 4.2 mm.
    St4_2,
    /// 4.8 mm.
    St4_8,
}

impl TappingScrew {
    /// All sizes, the thinnest first.
    pub const ALL: [Self; 5] = [Self::St2_2, Self::St2_9, Self::St3_5, Self::St4_2, Self::St4_8];

    /// The name in the standard.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::St2_2 => "ST2.2",
            Self::St2_9 => "ST2.9",
            Self::St3_5 => "ST3.5",
            Self::St4_2 => "ST4.2",
            Self::St4_8 => "ST4.8",
        }
    }
}

/// Greatest diameter of the screw's core.
#[must_use]
pub const fn core_diameter(screw: TappingScrew) -> Sourced<f64> {
    let source = Source::from_memory(ISO_1478, "core diameter, greatest");
    match screw {
        TappingScrew::St2_2 => Sourced::new(1.63, source),
        TappingScrew::St2_9 => Sourced::new(2.18, source),
        TappingScrew::St3_5 => Sourced::new(2.64, source),
        TappingScrew::St4_2 => Sourced::new(3.10, source),
        TappingScrew::St4_8 => Sourced::new(3.58, source),
    }
}

const MDF_GUIDE: &str = "Technical guides of the fibreboard trade";

sizes! {
    group "fasteners";
    PILOT_SHARE: [f64; 2] = [0.85, 0.95], "Pilot hole in fibreboard, share of the screw's core", "{} to {}",
        Source::published(MDF_GUIDE, "pilot holes");
    PILOT_DEEPER: f64 = 1.0, "Pilot hole deeper than the screw goes", "at least {} mm",
        Source::published(MDF_GUIDE, "pilot holes");
    FACE_SCREW_TO_EDGE: f64 = 12.0, "Screw in the face of fibreboard, from an edge", "at least {} mm",
        Source::published(MDF_GUIDE, "edge distances");
    FACE_SCREW_TO_CORNER: f64 = 25.0, "Screw in the face of fibreboard, from a corner", "at least {} mm",
        Source::published(MDF_GUIDE, "edge distances");
    EDGE_SCREW_TO_CORNER: f64 = 70.0, "Screw in the edge of fibreboard, from a corner", "at least {} mm",
        Source::published(MDF_GUIDE, "edge distances");
    EDGE_SCREW_SHARE: [f64; 2] = [0.25, 0.3333], "Thickest screw into an edge, share of the sheet", "{} to {}",
        Source::common_practice(WORKSHOP, "a thicker screw splits the sheet: 6 mm takes none");
    BATTEN: f64 = 12.0, "Batten behind a 6 mm panel", "at least {} mm square",
        Source::common_practice(WORKSHOP, "softwood; screws end 2 mm short of its far face");
}

/// A published rule on recalled cores is recalled.
const PILOT_SOURCE: Source = Source::from_memory(ISO_1478, "0.85 to 0.95 of the core, as the fibreboard trade asks");

/// Least and greatest pilot hole for a screw, mm.
#[must_use]
pub fn pilot_range(screw: TappingScrew) -> Sourced<[f64; 2]> {
    let core = core_diameter(screw);
    Sourced::new(PILOT_SHARE.get().map(|share| share * core.get()), PILOT_SOURCE)
}

/// The drill of the 0.1 mm series nearest the middle of the range.
#[must_use]
pub fn pilot_drill(screw: TappingScrew) -> Sourced<f64> {
    let [least, most] = pilot_range(screw).get();
    Sourced::new(((least + most) / 2.0 * 10.0).round() / 10.0, PILOT_SOURCE)
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for screw in TappingScrew::ALL {
        let core = core_diameter(screw);
        let pilot = pilot_drill(screw);
        out.push(Entry::new("fasteners", format!("{}: core", screw.label()), "{} mm", &[core.get()], core.source()));
        out.push(Entry::new(
            "fasteners",
            format!("{}: pilot drill in fibreboard", screw.label()),
            "{} mm",
            &[pilot.get()],
            pilot.source(),
        ));
    }
    size_entries(out);
}
