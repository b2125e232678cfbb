//! The card, its bracket, and the shelf its tab is screwed to.

use super::BoardPlace;
use crate::design::{BoardSpec, CardHold, CardKind, CardPlug, CardSpec, PlugAt, Window};
use crate::dimensions::cards::{self, CardHeight, WIDE_BRACKETS};
use crate::dimensions::source::{Confidence, Source};
use crate::dimensions::{boards, plugs};
use crate::parts::board::u_box;
use crate::parts::{Carrier, KeepClear, Part, PartKind};
use crate::solid::Aabb;

/// Air left on each side of the tab in a window that runs out to the edge, mm (common practice).
pub const TAB_AIR_MM: f64 = 0.5;

/// The screw shelf: how far its lug reaches past the window and down from the tab, and how far the bar stands out
/// from the back, mm (common practice: a piece of angle or of sheet).
pub const SHELF_LUG_MM: [f64; 2] = [12.0, 26.0];

/// Thickness of the shelf's lug that lies on the back, mm (common practice).
pub const LUG_THICK_MM: f64 = 2.0;

/// From the ends of the lug to its screws, mm (common practice: a washer of 7 and sheet around it).
const LUG_SCREW_MM: f64 = 6.0;

/// How far the wide part of the window begins below the shelf's bar, mm: a card's 6-32 screw of 6.35 (ASME B18.6.3)
/// through tab (0.86) and bar (4.82) ends 0.67 below the bar, in the sheet's thickness and beside the narrow part
/// (common practice).
const CARD_SCREW_BELOW_SHELF_MM: f64 = 2.0;

/// Room for the nuts of the shelf's screws inside the back: beside the lug, and deep (an M3 of 16 mm through lug and 6 mm
/// of sheet stands out 7.5), mm (common practice).
const SHELF_NUTS_MM: [f64; 2] = [1.0, 8.0];

/// Length of a power plug's room along the card's edge, mm: an 8-pin housing is 18.0 wide (CEM 3.0, figure 8-6), and
/// some cards carry two or three.
const PLUG_ALONG_MM: f64 = 40.0;

/// Width of a power plug's room across the card, mm: height over the latch while it is being released (CEM 3.0,
/// figure 8-8).
const PLUG_ACROSS_MM: f64 = 17.0;

/// The tables' name of a bracket height.
#[must_use]
pub const fn table_height(kind: CardKind) -> CardHeight {
    match kind {
        CardKind::Standard => CardHeight::Standard,
        CardKind::LowProfile => CardHeight::LowProfile,
    }
}

/// The card as the board takes it: the slot it is really in, when the board has fewer slots than asked for.
#[must_use]
pub fn slot(spec: &CardSpec, board: &BoardSpec) -> u32 {
    let slots = boards::slot_count(crate::parts::board::table_form(board.form)).get();
    u32::from(spec.slot).min(slots.saturating_sub(1))
}

/// Depth of the component side: measured, else the standard's limit for its slots.
#[must_use]
pub fn thickness(spec: &CardSpec) -> f64 {
    let standard = |slots: u32| cards::card_thickness(slots).map_or(0.0, |sourced| sourced.get());
    spec.thickness_mm.unwrap_or_else(|| standard(u32::from(spec.slots)))
}

/// Window in the back for all slots of a card, frame U: `x` from and to, `z` from and to; an open top is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CardWindow {
    /// Across its upper part, where the tab passes, mm in frame U.
    pub x: [f64; 2],
    /// Across its lower part, where only plugs pass, mm in frame U.
    pub plug_x: [f64; 2],
    /// Lower edge, mm in frame U.
    pub bottom: f64,
    /// Where the lower part ends and the upper begins: underside of the shelf for the tab, mm in frame U.
    pub step: f64,
    /// Upper edge; `None` when it runs out to the panel's edge.
    pub top: Option<f64>,
}

/// The window a card wants in a back of this thickness.
///
/// Up to 3 mm from the bracket the wall may hug the least opening; beyond, the plug needs the widths of CEM 3.0,
/// figure 9-24. Above the connectors it is also wide enough for the tab, which comes down there.
#[must_use]
pub fn window(spec: &CardSpec, board: &BoardSpec, thickness_mm: f64) -> CardWindow {
    let height = table_height(spec.kind);
    let first = slot(spec, board);
    let last = first + u32::from(spec.slots).max(1) - 1;
    let width = cards::window_width_in_wall(thickness_mm).get();
    let least = |slot| cards::window(slot, height);
    let middle = |slot| {
        let [from, to] = least(slot).x_mm;
        (from + to) / 2.0
    };
    let plug_x = [middle(last) - width / 2.0, middle(first) + width / 2.0];
    let tab_left = cards::tab_x_range(last, height).get()[0] - TAB_AIR_MM;
    let tab_right = cards::tab_x_range(first, height).get()[1] + TAB_AIR_MM;
    let x = [plug_x[0].min(tab_left), plug_x[1].max(tab_right)];
    let tab_top = cards::shelf_z(height).get() + cards::BRACKET_THICKNESS.get();
    CardWindow {
        x,
        plug_x,
        bottom: least(first).z_mm[0],
        step: least(first).z_mm[1] - CARD_SCREW_BELOW_SHELF_MM,
        top: match spec.window {
            Window::Edge => None,
            Window::Closed => Some(tab_top + spec.headroom_mm),
        },
    }
}

/// Card, bracket and shelf in their place. `thickness_mm` is the sheet's.
#[must_use]
pub fn parts(spec: &CardSpec, board: &BoardSpec, place: &BoardPlace, thickness_mm: f64) -> Vec<Part> {
    let mut parts = vec![card(spec, board, place), bracket(spec, board, place)];
    if spec.hold == CardHold::Shelf {
        parts.push(shelf(spec, board, place, thickness_mm));
    }
    parts
}

fn card(spec: &CardSpec, board: &BoardSpec, place: &BoardPlace) -> Part {
    let height = table_height(spec.kind);
    let [left, right] = cards::card_x_range(slot(spec, board), thickness(spec)).get();
    let [near, far] = cards::card_y_range(spec.length_mm).get();
    let bottom = boards::PCB_THICKNESS.get() + cards::BODY_UNDERSIDE_ABOVE_BOARD.get();
    let top = cards::card_top_z(height).get() + spec.above_mm;
    let mut keep_clear = Vec::new();
    let face = cards::card_face_x(slot(spec, board)).get();
    let across = [face - PLUG_ACROSS_MM / 2.0, face + PLUG_ACROSS_MM / 2.0];
    let room = plugs::card_power_room(table_plug(spec.plug), plugs::PlugShape::Straight);
    if let Some(room) = room {
        let zone = match spec.plug_at {
            PlugAt::None => None,
            PlugAt::Top => Some(u_box(place, across, [(far - PLUG_ALONG_MM).max(near), far], [top, top + room.get()])),
            PlugAt::End => {
                let middle = (bottom + top) / 2.0;
                let z = [middle - PLUG_ALONG_MM / 2.0, middle + PLUG_ALONG_MM / 2.0];
                Some(u_box(place, across, [far, far + room.get()], z))
            }
        };
        keep_clear.extend(zone.map(|zone| KeepClear {
            zone,
            purpose: "the card's power plug and its bend",
            source: room.source(),
        }));
    }
    Part {
        id: "card".to_owned(),
        kind: PartKind::Card,
        label: match spec.kind {
            CardKind::Standard => format!("Card, {} slots wide", spec.slots),
            CardKind::LowProfile => format!("Low-profile card, {} slots wide", spec.slots),
        },
        carrier: Carrier::Chassis,
        bodies: vec![u_box(place, [left, right], [near, far], [bottom, top])],
        keep_clear,
    }
}

const fn table_plug(plug: CardPlug) -> plugs::CardPowerPlug {
    match plug {
        CardPlug::SixPin => plugs::CardPowerPlug::SixPin,
        CardPlug::EightPin => plugs::CardPowerPlug::EightPin,
        CardPlug::SixteenPin => plugs::CardPowerPlug::SixteenPin,
    }
}

fn bracket(spec: &CardSpec, board: &BoardSpec, place: &BoardPlace) -> Part {
    let height = table_height(spec.kind);
    let first = slot(spec, board);
    let last = first + u32::from(spec.slots).max(1) - 1;
    let outer = cards::BRACKET_OUTER_Y.get();
    let inner = cards::BRACKET_INNER_Y.get();
    let shelf = cards::shelf_z(height).get();
    let tab_top = shelf + cards::BRACKET_THICKNESS.get();
    let right = cards::bracket_x_range(first).get()[1];
    // The wide bracket's figure leaves open on which side its last millimetre lies: taken away from the processor.
    let wide = WIDE_BRACKETS.iter().find(|wide| wide.slots == u32::from(spec.slots) && height == CardHeight::Standard);
    let left = wide.map_or(cards::bracket_x_range(last).get()[0], |wide| right - wide.body_mm);
    let plate_x = [left, right];
    let tab_x = [cards::tab_x_range(last, height).get()[0], cards::tab_x_range(first, height).get()[1]];
    let straight = cards::straight_end_z(height).get();
    let mut bodies = vec![
        u_box(place, plate_x, [outer, inner], [straight, tab_top]),
        u_box(place, tab_x, [cards::tab_outer_y(height).get(), outer], [shelf, tab_top]),
    ];
    let half = cards::bracket(height).tongue_width_mm / 2.0;
    for slot in first..=last {
        let middle = cards::tongue_centre_x(slot).get();
        let tip = cards::tongue_tip_z(height).get();
        bodies.push(u_box(place, [middle - half, middle + half], [outer, inner], [tip, straight]));
    }
    Part {
        id: "card-bracket".to_owned(),
        kind: PartKind::CardBracket,
        label: "Bracket of the card".to_owned(),
        carrier: Carrier::Chassis,
        bodies,
        keep_clear: Vec::new(),
    }
}

/// Where the shelf's two screws go through the back: frame U x and z.
#[must_use]
pub fn shelf_screws(spec: &CardSpec, board: &BoardSpec, thickness_mm: f64) -> [[f64; 2]; 2] {
    let right = window(spec, board, thickness_mm).x[1];
    let top = cards::shelf_z(table_height(spec.kind)).get();
    let x = right + SHELF_LUG_MM[0] / 2.0;
    [[x, top - LUG_SCREW_MM], [x, top - SHELF_LUG_MM[1] + LUG_SCREW_MM]]
}

/// A bar under the tab, inside the window and outside the back, with a lug beside the window.
fn shelf(spec: &CardSpec, board: &BoardSpec, place: &BoardPlace, thickness_mm: f64) -> Part {
    let height = table_height(spec.kind);
    let hole = window(spec, board, thickness_mm);
    let wall = boards::REAR_WALL_INNER_Y.get();
    let outside = wall - thickness_mm;
    let reach = cards::tab_outer_y(height).get().min(outside - LUG_THICK_MM);
    let top = cards::shelf_z(height).get();
    // The bar fills what is left between the window the plugs need and the tab.
    let bottom = cards::window(0, height).z_mm[1];
    let lug = [hole.x[1], hole.x[1] + SHELF_LUG_MM[0]];
    let inset = TAB_AIR_MM;
    // Nuts of its two screws stand out inside the back.
    let nuts = u_box(
        place,
        [lug[0] - SHELF_NUTS_MM[0], lug[1] + SHELF_NUTS_MM[0]],
        [wall, wall + SHELF_NUTS_MM[1]],
        [top - SHELF_LUG_MM[1] - SHELF_NUTS_MM[0], bottom],
    );
    let bodies: Vec<Aabb> = vec![
        u_box(place, [hole.x[0] + inset, hole.x[1] - inset], [outside, wall - inset], [bottom, top]),
        u_box(place, [hole.x[0] + inset, lug[1]], [reach, outside], [bottom, top]),
        u_box(place, lug, [outside - LUG_THICK_MM, outside], [top - SHELF_LUG_MM[1], bottom]),
    ];
    Part {
        id: "shelf".to_owned(),
        kind: PartKind::Shelf,
        label: "Screw shelf under the card's tab".to_owned(),
        carrier: Carrier::Chassis,
        bodies,
        keep_clear: vec![KeepClear { zone: nuts, purpose: "the nuts of the card's shelf", source: SHELF_SOURCE }],
    }
}

/// Source of the shelf's own sizes.
pub const SHELF_SOURCE: Source = Source {
    document: "workshop custom",
    place: "a piece of angle beside the card window",
    confidence: Confidence::CommonPractice,
};
