//! Card brackets and what a wall must offer them: window, shelf for the tab, screw, room for the
//! tongue, room for the plugs. Frame U of [`super::boards`].
//!
//! ```text
//!   a bracket seen from outside (x mirrored: +x to the left)     section, seen from the -x side
//!
//!       tab, screw notch on the processor's side                 outside | wall | inside
//!      ___________                                               tab ____|______| z = 109.83
//!     |  _______  |   shelf z = 109.83                           screw 5.08 out |bracket y = -12.11
//!     | |       | |   window z 4.30 .. 105.01                           |      ||
//!     | |       | |   window x_n - 13.79 .. x_n - 0.54                  window ||
//!     | |_______| |   body   x_n - 16.36 .. x_n + 2.06                  |      ||
//!     |___________|   z = -2.92                                         |      | \   the last 5 mm
//!        |     |      tongue, centre x_n - 7.15                                   \  bend outward
//!        |_____|      tip z = -10.19
//! ```

use super::boards::slot_centre_x;
use super::cards::{CardHeight, FINGER_EDGE_Z, card_face_x, card_key_y};
use super::catalogue::Entry;
use super::documents::CEM;
use super::io_aperture::REAR_WALL_INNER_Y;
use super::source::{Source, Sourced};
use super::table::sizes;

/// One bracket, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bracket {
    /// Underside of the tab to the tip of the tongue.
    pub length_mm: f64,
    /// Underside of the tab to where the tongue begins to bend.
    pub straight_mm: f64,
    /// Width of the tongue, centred on the body.
    pub tongue_width_mm: f64,
    /// How far the tab reaches outward from the bracket's outer face.
    pub tab_depth_mm: f64,
    /// Width of the tab.
    pub tab_width_mm: f64,
    /// Axis of the screw outside the bracket's outer face.
    pub screw_out_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// The least window in the wall for one bracket, frame U.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CardWindow {
    /// From (away from the processor) to, mm.
    pub x_mm: [f64; 2],
    /// Bottom to top, mm.
    pub z_mm: [f64; 2],
    /// Where it stands.
    pub source: Source,
}

/// The bracket of a card that fills several slots, mm from its component-side edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WideBracket {
    /// Slots it covers.
    pub slots: u32,
    /// Width of the body.
    pub body_mm: f64,
    /// Underside of the tab to the tip of the tongue.
    pub length_mm: f64,
    /// Axes of the screw notches.
    pub notches_mm: &'static [f64],
    /// Where it stands.
    pub source: Source,
}

sizes! {
    group "cards";
    BRACKET_BODY_WIDTH: f64 = 18.42, "Bracket, width of the body", "{} mm",
        Source::published(CEM, "figures 9-5 and 9-9; PCI 3.0 figure 5-8");
    BRACKET_THICKNESS: f64 = 0.86, "Bracket, thickness", "{} ±0.08 mm",
        Source::published(CEM, "figures 9-5 and 9-9");
    BRACKET_TOLERANCE: f64 = 0.25, "Bracket, general tolerance", "±{} mm",
        Source::published(CEM, "figures 9-5 and 9-9");
    SCREW_NOTCH: f64 = 4.42, "Bracket, width of the open screw notch", "{} mm",
        Source::published(CEM, "figures 9-5 and 9-9");
    BRACKET_FACE_BEHIND_KEY: f64 = 59.05, "Bracket's outer face behind the key", "{} ±0.40 mm",
        Source::published(CEM, "figure 9-3");
    BRACKET_OUTER_Y: f64 = -12.11, "Bracket's outer face, against the inside of the wall", "y = {} mm",
        Source::derived(CEM, "figures 9-3 and 9-20: 46.94 less 59.05");
    BRACKET_INNER_Y: f64 = -11.25, "Bracket's inner face", "y = {} mm",
        Source::derived(CEM, "figures 9-3 and 9-5: outer face and 0.86 mm");
    WINDOW_WIDTH: f64 = 13.25, "Card window, least width", "{} mm",
        Source::published(CEM, "figures 9-22 and 9-23");
    WINDOW_PAST_V: f64 = 0.25, "Card window, edge toward the processor past datum V", "at most {} mm",
        Source::published(CEM, "figure 9-22");
    SCREW_PAST_V: f64 = 2.84, "Bracket's edge and screw past datum V, toward the processor", "{} mm",
        Source::published(CEM, "figure 9-3");
    WINDOW_WEB: f64 = 7.07, "Wall left between neighbouring card windows", "{} mm",
        Source::derived(CEM, "figure 9-22: 20.32 less 13.25");
    SHELF_TOLERANCE: f64 = 0.52, "Shelf for the tab, tolerance of its height", "±{} mm",
        Source::published(CEM, "figures 9-3 and 9-8");
    TONGUE_BEND_LENGTH: f64 = 5.0, "Bracket, length of the tongue that bends outward", "the last {} mm",
        Source::published(CEM, "figure 9-3 detail C and figure 9-5: about 5 degrees");
    TONGUE_TIP_OUTER_Y: f64 = -12.6, "Tip of the tongue, outermost", "y = {} mm",
        Source::derived(CEM, "figure 9-5: 5 mm bent by 5 degrees from the outer face");
    TONGUE_RELIEF: f64 = 1.0, "Room for the bent tongue outside the bracket's face", "at least {} mm",
        Source::derived(CEM, "figure 9-5: the tip stands about 0.45 mm out");
    HOLLOW_LEAVES: f64 = 2.0, "Sheet left behind the hollow for a bent tongue", "at least {} mm",
        Source::common_practice("Workshop custom", "what a chisel or a cutter does not break through");
    TONGUE_OVER_FLOOR: f64 = 0.3, "Air under a tongue that ends above the floor", "at least {} mm",
        Source::common_practice("Workshop custom", "what shows that two parts do not touch");
    TONGUE_SLOT_WIDTH: f64 = 11.0, "Slot in the tray for a tongue, width", "at least {} mm",
        Source::derived(CEM, "figure 9-5: a tongue of 10.19 mm and play");
    TONGUE_SLOT_Y: [f64; 2] = [-13.3, -10.5], "Slot in the tray for a tongue, along the case", "y = {} to {} mm",
        Source::derived(CEM, "figures 9-3 and 9-5: the bent tongue and play");
    STANDOFF_CLEARING_TONGUE: f64 = 10.96, "Standoff that lifts a standard tongue clear of the tray", "at least {} mm",
        Source::derived(CEM, "figure 9-5: tip 10.19 mm below the board's underside, 0.52 for the shelf and 0.25 for the bracket");
}

/// Free width a display plug needs, by distance outward from the bracket's outer face: pairs of
/// (beyond this distance, mm; free width, mm).
///
/// A wall of 4 mm or more with windows of the least width keeps plugs from seating: widen the
/// window, or step it.
pub const PLUG_FREE_WIDTHS: Sourced<[[f64; 2]; 3]> =
    Sourced::new([[0.0, 13.25], [3.0, 17.25], [4.0, 20.0]], Source::published(CEM, "figure 9-24"));

/// The free width a plug needs at a distance outward from the bracket's outer face.
#[must_use]
pub fn plug_free_width(distance_mm: f64) -> Sourced<f64> {
    let mut width = PLUG_FREE_WIDTHS.get()[0][1];
    for [beyond, free] in PLUG_FREE_WIDTHS.get() {
        if distance_mm > beyond {
            width = free;
        }
    }
    Sourced::new(width, PLUG_FREE_WIDTHS.source())
}

/// The width a window needs in a rear wall of this thickness.
///
/// Its far side stands further out than its thickness: the wall begins behind the bracket's outer face, at the plane that
/// the board's standard sets.
#[must_use]
pub fn window_width_in_wall(thickness_mm: f64) -> Sourced<f64> {
    let behind_bracket = BRACKET_OUTER_Y.get() - REAR_WALL_INNER_Y.get();
    Sourced::new(
        plug_free_width(thickness_mm + behind_bracket).get(),
        Source::derived(CEM, "figure 9-24, from the rear wall's plane of ATX 2.2, figure 4"),
    )
}

/// The bracket of a card height.
#[must_use]
pub const fn bracket(height: CardHeight) -> Bracket {
    match height {
        CardHeight::Standard => Bracket {
            length_mm: 120.02,
            straight_mm: 112.75,
            tongue_width_mm: 10.19,
            tab_depth_mm: 11.43,
            tab_width_mm: 19.05,
            screw_out_mm: 5.08,
            source: Source::published(CEM, "figure 9-5; PCI 3.0 figure 5-8"),
        },
        CardHeight::LowProfile => Bracket {
            length_mm: 79.20,
            straight_mm: 71.46,
            tongue_width_mm: 10.20,
            tab_depth_mm: 11.84,
            tab_width_mm: 18.59,
            screw_out_mm: 6.35,
            source: Source::published(CEM, "figure 9-9"),
        },
    }
}

/// Brackets of two and three slots, standard height.
pub const WIDE_BRACKETS: [WideBracket; 2] = [
    WideBracket {
        slots: 2,
        body_mm: 38.74,
        length_mm: 120.07,
        notches_mm: &[19.0, 38.74],
        source: Source::published(CEM, "figure 9-13"),
    },
    WideBracket {
        slots: 3,
        body_mm: 60.06,
        length_mm: 120.11,
        notches_mm: &[19.42, 39.74, 60.06],
        source: Source::published(CEM, "figure 9-15"),
    },
];

/// The middle of the least window in slot `n`: where a plug's middle is, 7.16 mm left of the slot.
///
/// A wider window for thick sheet is widened about it.
#[must_use]
pub fn window_centre_x(slot: u32) -> Sourced<f64> {
    let [left, right] = window(slot, CardHeight::Standard).x_mm;
    Sourced::new((left + right) / 2.0, Source::derived(CEM, "figures 9-20 and 9-22: middle of the least window"))
}

/// Height of the least window, and how far its bottom lies below datum W.
const fn window_height(height: CardHeight) -> (f64, f64, Source) {
    match height {
        CardHeight::Standard => (100.71, 0.67, Source::published(CEM, "figure 9-22")),
        CardHeight::LowProfile => (65.34, 0.95, Source::published(CEM, "figure 9-23")),
    }
}

/// The least window for a card in slot `n`.
#[must_use]
pub fn window(slot: u32, height: CardHeight) -> CardWindow {
    let right = card_face_x(slot).get() + WINDOW_PAST_V.get();
    let (tall, below_fingers, source) = window_height(height);
    let bottom = FINGER_EDGE_Z.get() - below_fingers;
    CardWindow { x_mm: [right - WINDOW_WIDTH.get(), right], z_mm: [bottom, bottom + tall], source }
}

/// Top of the shelf on which the tab lies: 109.83 mm, or 73.06 mm for low profile.
#[must_use]
pub const fn shelf_z(height: CardHeight) -> Sourced<f64> {
    match height {
        CardHeight::Standard => Sourced::new(109.83, Source::derived(CEM, "figure 9-3: 104.86 mm above datum W")),
        CardHeight::LowProfile => Sourced::new(73.06, Source::derived(CEM, "figure 9-8: 68.09 mm above datum W")),
    }
}

/// Axis of the bracket's screw in slot `n`, `[x, y]`; it is upright.
#[must_use]
pub fn screw_axis(slot: u32, height: CardHeight) -> Sourced<[f64; 2]> {
    let face = card_face_x(slot).get();
    let key = card_key_y().get();
    match height {
        CardHeight::Standard => Sourced::new(
            [face + SCREW_PAST_V.get(), key - 64.13],
            Source::derived(CEM, "figure 9-3: 2.84 mm from datum V, 64.13 mm behind X"),
        ),
        CardHeight::LowProfile => Sourced::new(
            [face - 14.71, key - 65.40],
            Source::derived(CEM, "figure 9-8: 14.71 mm from datum V, 65.40 mm behind X"),
        ),
    }
}

/// The bracket's body across, `[least x, greatest x]`.
#[must_use]
pub fn bracket_x_range(slot: u32) -> Sourced<[f64; 2]> {
    let right = card_face_x(slot).get() + SCREW_PAST_V.get();
    Sourced::new(
        [right - BRACKET_BODY_WIDTH.get(), right],
        Source::derived(CEM, "figures 9-3 and 9-5: 2.84 mm from datum V, 18.42 mm wide"),
    )
}

/// The tab across, `[least x, greatest x]`.
///
/// For low profile only the tab's width and its screw were found; the range given is the room that
/// surely holds it.
#[must_use]
pub fn tab_x_range(slot: u32, height: CardHeight) -> Sourced<[f64; 2]> {
    let [left, right] = bracket_x_range(slot).get();
    match height {
        CardHeight::Standard => Sourced::new(
            [left + 2.54, left + 21.59],
            Source::derived(CEM, "figure 9-5: 2.54 to 21.59 mm from the body's edge"),
        ),
        CardHeight::LowProfile => Sourced::new(
            [screw_axis(slot, height).get()[0] - 3.17, right],
            Source::from_memory(CEM, "figure 9-9: place of the low tab not read, room around it"),
        ),
    }
}

/// How far outward the tab reaches: y of its outer edge.
#[must_use]
pub fn tab_outer_y(height: CardHeight) -> Sourced<f64> {
    Sourced::new(
        BRACKET_OUTER_Y.get() - bracket(height).tab_depth_mm,
        Source::derived(CEM, "figures 9-3, 9-5 and 9-9: tab beyond the outer face"),
    )
}

/// Centre of the tongue across: the middle of the bracket's body, 7.15 mm left of the slot.
#[must_use]
pub fn tongue_centre_x(slot: u32) -> Sourced<f64> {
    let [left, right] = bracket_x_range(slot).get();
    Sourced::new((left + right) / 2.0, Source::derived(CEM, "figure 9-5: tongue centred on the body"))
}

/// Tip of the tongue: 10.19 mm below the board's underside, or 6.14 mm for low profile.
#[must_use]
pub fn tongue_tip_z(height: CardHeight) -> Sourced<f64> {
    Sourced::new(
        shelf_z(height).get() - bracket(height).length_mm,
        Source::derived(CEM, "figures 9-3, 9-5, 9-8 and 9-9: shelf less bracket length"),
    )
}

/// Where the bracket's straight part ends and its tongue begins to bend.
#[must_use]
pub fn straight_end_z(height: CardHeight) -> Sourced<f64> {
    Sourced::new(
        shelf_z(height).get() - bracket(height).straight_mm,
        Source::derived(CEM, "figures 9-3, 9-5, 9-8 and 9-9: shelf less straight part"),
    )
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for height in CardHeight::ALL {
        list_bracket(height, out);
    }
    for wide in WIDE_BRACKETS {
        out.push(Entry::new(
            "cards",
            format!("Bracket of {} slots: body, length", wide.slots),
            "{} × {} mm",
            &[wide.body_mm, wide.length_mm],
            wide.source,
        ));
        out.push(Entry::new(
            "cards",
            format!("Bracket of {} slots: screw notches from its edge", wide.slots),
            "{*} mm",
            wide.notches_mm,
            wide.source,
        ));
    }
    for slot in 0..7 {
        let slot_x = slot_centre_x(slot);
        let [from, to] = window(slot, CardHeight::Standard).x_mm;
        let [screw, _] = screw_axis(slot, CardHeight::Standard).get();
        out.push(Entry::new(
            "cards",
            format!("Slot {slot}: centre, window, screw"),
            "x = {}, {} to {}, {} mm",
            &[slot_x.get(), from, to, screw],
            Source::derived(CEM, "figures 9-3, 9-20 and 9-22"),
        ));
    }
    for [beyond, free] in PLUG_FREE_WIDTHS.get() {
        out.push(Entry::new(
            "cards",
            format!("Free width for a plug, more than {beyond} mm out from the bracket"),
            "{} mm",
            &[free],
            PLUG_FREE_WIDTHS.source(),
        ));
    }
    size_entries(out);
}

/// Lists one bracket with its window, shelf and tongue.
fn list_bracket(height: CardHeight, out: &mut Vec<Entry>) {
    let name = |what: &str| format!("Bracket, {}: {what}", height.label());
    let shape = bracket(height);
    let (tall, _, window_source) = window_height(height);
    let mut push = |what: &str, pattern: &str, numbers: &[f64], source: Source| {
        out.push(Entry::new("cards", name(what), pattern, numbers, source));
    };
    push("tab to tip", "{} mm", &[shape.length_mm], shape.source);
    push("tab to bend", "{} mm", &[shape.straight_mm], shape.source);
    push("width of the tongue", "{} mm", &[shape.tongue_width_mm], shape.source);
    push("tab, outward by across", "{} × {} mm", &[shape.tab_depth_mm, shape.tab_width_mm], shape.source);
    push("screw outside the outer face", "{} mm", &[shape.screw_out_mm], shape.source);
    push("least window, width and height", "{} × {} mm", &[WINDOW_WIDTH.get(), tall], window_source);
    let shelf = shelf_z(height);
    push("shelf for the tab", "z = {} mm", &[shelf.get()], shelf.source());
    let tip = tongue_tip_z(height);
    push("tip of the tongue", "z = {} mm", &[tip.get()], tip.source());
    let bend = straight_end_z(height);
    push("tongue bends below", "z = {} mm", &[bend.get()], bend.source());
}
