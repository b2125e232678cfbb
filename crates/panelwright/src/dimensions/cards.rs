//! Expansion cards: the card itself, in frame U of [`super::boards`].
//!
//! ```text
//!   a card in slot n, seen from the -x side            looking down on slots, rear on top
//!
//!   tab ___ shelf z = 109.83                            bracket y = -12.11 .. -11.25
//!      |  |________________________ top z <= 116.12      ____|____
//!      |  |                        |                    parts <-|V|-> solder side
//!      |  |   component side       |                    (-x)    | |      (+x, processor)
//!      |  |________   _____________|  body z >= 17.72            |
//!      |  |        |_|                fingers: W z = 4.97    key X y = 46.94
//!   ---|--|-------------------------  board top z = 1.57
//!      |__|  tongue tip z = -10.19
//! ```
//!
//! Datums of the card specification: **W** the bottom edge of the gold fingers, **X** the key in
//! them, **V** the component side of the card's own board. The component side faces away from the
//! processor: thick cards grow toward -x, over the slots with higher numbers.

use super::boards::{PCB_THICKNESS, SLOT_KEY_Y, slot_centre_x};
use super::catalogue::Entry;
use super::documents::{CEM, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

pub use super::card_brackets::*;

/// The two card heights the specification knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CardHeight {
    /// Full height, 111.15 mm above the fingers.
    Standard,
    /// Low profile, 68.90 mm.
    LowProfile,
}

impl CardHeight {
    /// Both heights.
    pub const ALL: [Self; 2] = [Self::Standard, Self::LowProfile];

    /// The name as dealers print it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Standard => "standard height",
            Self::LowProfile => "low profile",
        }
    }
}

/// The three lengths the specification names; real cards have any length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CardLength {
    /// At most 167.65 mm.
    Half,
    /// At most 254 mm.
    ThreeQuarter,
    /// At most 312 mm.
    Full,
}

impl CardLength {
    /// All three, the shortest first.
    pub const ALL: [Self; 3] = [Self::Half, Self::ThreeQuarter, Self::Full];

    /// The name of the length.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Half => "half length",
            Self::ThreeQuarter => "three-quarter length",
            Self::Full => "full length",
        }
    }
}

sizes! {
    group "cards";
    STANDARD_HEIGHT_MAX: f64 = 111.28, "Standard card: height with its tolerance, above the fingers' edge", "{} mm",
        Source::published(CEM, "figure 9-1, 111.15 ±0.13");
    FINGER_EDGE_ABOVE_BOARD: f64 = 3.40, "Fingers' edge above the board's top when seated", "{} mm",
        Source::derived(CEM, "figure 9-26: 114.55 less 111.15");
    FINGER_EDGE_Z: f64 = 4.97, "Datum W, the fingers' edge", "z = {} mm",
        Source::derived(CEM, "figure 9-26 on a board of 1.57 mm");
    BODY_UNDERSIDE_ABOVE_BOARD: f64 = 16.15, "Underside of a card's body above the board's top", "{} mm",
        Source::published(CEM, "figure 9-26");
    FOOT_UNDERSIDE_ABOVE_BOARD: f64 = 7.90, "Underside of a card at its bracket foot above the board's top", "{} mm",
        Source::published(CEM, "figure 9-26");
    CARD_END_BEHIND_KEY: f64 = 57.15, "Bracket end of a card's board behind the key", "{} mm",
        Source::published(CEM, "figure 9-1");
    CARD_START_Y: f64 = -10.21, "Bracket end of a card's board", "y = {} mm",
        Source::derived(CEM, "figures 9-1 and 9-20: 46.94 less 57.15");
    DUAL_SLOT_LENGTH_ADVISED: f64 = 241.30, "Advised greatest length of a two-slot card", "{} mm",
        Source::published(CEM, "section 9.1, note");
    RETAINER_ZONE: [f64; 2] = [326.03, 338.96], "Card retainer beyond a full-length card, from the card's bracket end", "{} to {} mm",
        Source::published(CEM, "figure 9-3");
    SOLDER_SIDE: f64 = 2.67, "Parts on the solder side", "at most {} mm",
        Source::published(CEM, "figure 9-1");
    CARD_THICKNESS: f64 = 1.57, "Thickness of a card's board", "{} mm",
        Source::published(CEM, "figure 9-1");
    CARD_MASS_TO_SUPPORT: f64 = 1.0, "Mass from which a card wants a support", "{} kg",
        Source::common_practice(WORKSHOP, "an upright case with its card level");
}

/// Height of a card above the edge of its gold fingers (datum W).
#[must_use]
pub const fn card_height(height: CardHeight) -> Sourced<f64> {
    match height {
        CardHeight::Standard => Sourced::new(111.15, Source::published(CEM, "figure 9-1 and table 9-1")),
        CardHeight::LowProfile => Sourced::new(68.90, Source::published(CEM, "figure 9-6")),
    }
}

/// Top edge of a card above the top surface of the board.
#[must_use]
pub const fn card_top_above_board(height: CardHeight) -> Sourced<f64> {
    let source = Source::published(CEM, "figure 9-26");
    match height {
        CardHeight::Standard => Sourced::new(114.55, source),
        CardHeight::LowProfile => Sourced::new(72.30, source),
    }
}

/// Top edge of a card in frame U: 116.12 mm, or 73.87 mm for low profile.
#[must_use]
pub fn card_top_z(height: CardHeight) -> Sourced<f64> {
    Sourced::new(
        PCB_THICKNESS.get() + card_top_above_board(height).get(),
        Source::derived(CEM, "figure 9-26 on a board of 1.57 mm"),
    )
}

/// Depth of the component side from datum V for a card of 1 to 4 slots; nothing is known of others.
#[must_use]
pub const fn card_thickness(slots: u32) -> Option<Sourced<f64>> {
    let (depth_mm, source) = match slots {
        1 => (14.47, Source::published(CEM, "figure 9-1")),
        2 => (34.80, Source::published(CEM, "figure 9-11")),
        3 => (55.12, Source::published(CEM, "figure 9-12")),
        4 => (75.44, Source::derived(CEM, "figure 9-12 and one more slot of 20.32 mm")),
        _ => return None,
    };
    Some(Sourced::new(depth_mm, source))
}

/// Greatest length of a card's board, from its bracket end.
#[must_use]
pub const fn card_length(length: CardLength) -> Sourced<f64> {
    let source = Source::published(CEM, "figure 9-2");
    match length {
        CardLength::Half => Sourced::new(167.65, source),
        CardLength::ThreeQuarter => Sourced::new(254.0, source),
        CardLength::Full => Sourced::new(312.0, source),
    }
}

/// Datum V of a card in slot `n`: its component side, half a card left of the slot's centre.
#[must_use]
pub fn card_face_x(slot: u32) -> Sourced<f64> {
    Sourced::new(
        slot_centre_x(slot).get() - CARD_THICKNESS.get() / 2.0,
        Source::derived(CEM, "figures 9-1 and 9-20: half a card left of the slot's centre"),
    )
}

/// Datum X of every card: the key, in front of the row of hole C.
#[must_use]
pub const fn card_key_y() -> Sourced<f64> {
    SLOT_KEY_Y
}

/// The room a card takes across, `[least x, greatest x]`, from the parts on its component side to
/// those on its solder side.
///
/// `thickness_mm` is the depth of the component side from datum V, the maker's own measure or
/// [`card_thickness`].
#[must_use]
pub fn card_x_range(slot: u32, thickness_mm: f64) -> Sourced<[f64; 2]> {
    let face = card_face_x(slot).get();
    Sourced::new(
        [face - thickness_mm, face + CARD_THICKNESS.get() + SOLDER_SIDE.get()],
        Source::derived(CEM, "figures 9-1, 9-11 and 9-12 about datum V"),
    )
}

/// The room a card's board takes along the case, `[bracket end, far end]` in y.
#[must_use]
pub fn card_y_range(length_mm: f64) -> Sourced<[f64; 2]> {
    Sourced::new(
        [CARD_START_Y.get(), CARD_START_Y.get() + length_mm],
        Source::derived(CEM, "figures 9-1, 9-2 and 9-20"),
    )
}

/// Lists the sizes of this file and of the brackets.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for height in CardHeight::ALL {
        let above_fingers = card_height(height);
        let above_board = card_top_above_board(height);
        out.push(Entry::new(
            "cards",
            format!("Card, {}: above the fingers' edge", height.label()),
            "{} mm",
            &[above_fingers.get()],
            above_fingers.source(),
        ));
        out.push(Entry::new(
            "cards",
            format!("Card, {}: above the board's top", height.label()),
            "at most {} mm",
            &[above_board.get()],
            above_board.source(),
        ));
    }
    for (slots, name) in [(1, "one slot"), (2, "two slots"), (3, "three slots"), (4, "four slots")] {
        if let Some(depth) = card_thickness(slots) {
            let name = format!("Card of {name}: depth of the component side");
            out.push(Entry::new("cards", name, "at most {} mm", &[depth.get()], depth.source()));
        }
    }
    for length in CardLength::ALL {
        let value = card_length(length);
        out.push(Entry::new(
            "cards",
            format!("Card, {}", length.label()),
            "at most {} mm",
            &[value.get()],
            value.source(),
        ));
    }
    size_entries(out);
    super::card_brackets::entries(out);
}
