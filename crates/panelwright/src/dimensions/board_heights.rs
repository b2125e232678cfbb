//! How tall the parts on a board may be, above and below it, in frame U (see [`super::boards`]).
//!
//! These are limits for whoever lays out a board. Coolers and memory stand higher: see
//! [`super::coolers`].

use super::catalogue::Entry;
use super::documents::{ATX, CEM, ITX};
use super::source::Source;
use super::table::sizes;

/// The three areas of an ATX or microATX board with their own height limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HeightArea {
    /// Processor and I/O side, rear.
    A,
    /// Card slots.
    B,
    /// Front right.
    C,
}

/// The height limits of one area, mm above the top of the board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AreaHeight {
    /// The tallest part a board may carry here.
    pub tallest_mm: f64,
    /// What a case must leave free.
    pub keep_clear_mm: f64,
    /// What a case should leave free.
    pub recommended_mm: f64,
    /// Where the limits stand.
    pub source: Source,
}

/// A height zone of a Mini-ITX board. The borders of the zones were not found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MiniItxZone {
    /// The zone's letter.
    pub letter: char,
    /// Where on the board.
    pub place: &'static str,
    /// The tallest part, mm above the top of the board.
    pub tallest_mm: f64,
    /// Where it stands.
    pub source: Source,
}

sizes! {
    group "boards";
    AREA_B_RIGHT_X: f64 = 6.35, "Border between slots (area B) and the rest", "x = {} mm",
        Source::published(ATX, "figure 7");
    AREA_C_STEP_X: f64 = 49.53, "Step in the border of area C", "x = {} mm",
        Source::published(ATX, "figure 7");
    AREA_C_REAR_Y_RIGHT: f64 = 154.94, "Area C begins, right of its step", "y = {} mm",
        Source::published(ATX, "figure 7");
    AREA_C_REAR_Y_LEFT: f64 = 180.34, "Area C begins, left of its step", "y = {} mm",
        Source::published(ATX, "figure 7");
    SLOT_ZONE_REAR_HEIGHT: f64 = 5.08, "Tallest part beside a card bracket", "{} mm above the board",
        Source::published(CEM, "figures 9-20 and 9-21");
    SLOT_ZONE_REAR_DEPTH: f64 = 15.2, "Depth of the low strip beside the card brackets", "{} mm from the rear edge",
        Source::published(CEM, "figures 9-20 and 9-21");
    UNDERSIDE_AT_STANDOFF: f64 = 0.25, "Below the board, inside the standoff square", "at most {} mm",
        Source::published(ATX, "section 3.4.2; microATX 1.2 section 2.4.2");
    UNDERSIDE_LEADS: f64 = 2.49, "Below the board, live leads and parts", "at most {} mm",
        Source::published(ATX, "section 3.4.2; microATX 1.2 section 2.4.2");
    UNDERSIDE_PEGS: f64 = 3.05, "Below the board, insulating pegs", "at most {} mm",
        Source::published(ATX, "section 3.4.2; microATX 1.2 section 2.4.2");
    UNDERSIDE_BACKPLATE: f64 = 5.08, "Below the board, stiffeners and cooler backplates", "at most {} mm",
        Source::published(ATX, "section 3.4.2; microATX 1.2 section 2.4.2");
}

/// The limits of one area.
#[must_use]
pub const fn area_height(area: HeightArea) -> AreaHeight {
    let source = Source::published(ATX, "figure 7; microATX 1.2 section 2.4.1");
    match area {
        HeightArea::A => AreaHeight { tallest_mm: 71.12, keep_clear_mm: 76.2, recommended_mm: 88.9, source },
        HeightArea::B => AreaHeight { tallest_mm: 15.24, keep_clear_mm: 15.24, recommended_mm: 15.24, source },
        HeightArea::C => AreaHeight { tallest_mm: 38.1, keep_clear_mm: 38.1, recommended_mm: 38.1, source },
    }
}

/// The area in which a point of an ATX or microATX board lies (frame U).
#[must_use]
pub fn area_at(x_mm: f64, y_mm: f64) -> HeightArea {
    let front = if x_mm > AREA_C_STEP_X.get() { AREA_C_REAR_Y_RIGHT.get() } else { AREA_C_REAR_Y_LEFT.get() };
    if x_mm <= AREA_B_RIGHT_X.get() {
        HeightArea::B
    } else if y_mm > front {
        HeightArea::C
    } else {
        HeightArea::A
    }
}

/// Mini-ITX height zones, from one copied text of the addendum.
pub const MINI_ITX_ZONES: [MiniItxZone; 4] = [
    zone('A', "processor and middle", 57.0),
    zone('B', "strip on the slot's side", 16.0),
    zone('C', "front strip", 38.0),
    zone('D', "strip under the rear connectors", 39.0),
];

const fn zone(letter: char, place: &'static str, tallest_mm: f64) -> MiniItxZone {
    MiniItxZone {
        letter,
        place,
        tallest_mm,
        source: Source::published(ITX, "height zones, second hand: one copied text"),
    }
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for (area, name) in
        [(HeightArea::A, "A (processor, I/O)"), (HeightArea::B, "B (slots)"), (HeightArea::C, "C (front right)")]
    {
        let height = area_height(area);
        out.push(Entry::new(
            "boards",
            format!("Area {name}: tallest part, free height, better"),
            "{} / {} / {} mm above the board",
            &[height.tallest_mm, height.keep_clear_mm, height.recommended_mm],
            height.source,
        ));
    }
    for zone in MINI_ITX_ZONES {
        out.push(Entry::new(
            "boards",
            format!("Mini-ITX zone {} ({})", zone.letter, zone.place),
            "at most {} mm above the board",
            &[zone.tallest_mm],
            zone.source,
        ));
    }
    size_entries(out);
}
