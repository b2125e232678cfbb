//! Fit: named rules over solids and panels. Each says what it measured, what is needed, where, and what would mend it.
//!
//! [`check`] runs the list [`RULES`]; each rule is one function, one family of rules is one file. The last rules of the
//! list, part against part and part against panel, catch whatever no more exact rule has spoken about.
//!
//! Invariants: nothing here changes a design; nothing is decided by drawing; two solids that share space, and a part
//! that passes through a panel outside the openings made for it, are always named by a finding that blocks.
//!
//! One finding can stand for several of a kind (the thinnest of many thin webs, with their number): mend it and check
//! again.

mod backplate;
mod blade_holes;
mod board;
mod board_support;
mod bracket_edges;
mod bracket_holes;
mod card;
mod card_mount;
mod card_slot;
mod closest;
mod cooler;
mod cut_edges;
mod drives;
mod fan_spacing;
mod fans;
mod finding;
mod front;
mod hand;
mod hardware;
mod hole_play;
mod joint_corners;
mod joints;
mod keep_clear;
mod mend;
mod methods;
mod more_room;
mod moves;
mod paper;
mod plugs;
mod recesses;
mod region;
mod room;
mod rule;
mod scene;
mod screw_remedy;
mod screws;
mod sheet_label;
mod size;
mod sleeve;
mod solids;
mod stability;
mod stock_gap;
mod stock_sides;
mod supply;
mod supply_face;
#[cfg(test)]
mod tests;
mod tongue_bend;
mod unknowns;
mod vents;
mod web_between;
mod web_limits;
mod webs;
mod words;

pub use closest::closest;
pub use finding::{Finding, Severity};
pub use mend::Mend;
pub use rule::Rule;

use crate::arrangement::Arrangement;
use crate::design::Spec;
use crate::fastening::Screw;
use crate::panels::{Panel, Unplaced, VentLeftOut};
use crate::parts::Part;
use crate::sorting::sort_by;
use scene::Scene;

/// Everything the rules look at.
#[derive(Clone, Copy, Debug)]
pub struct Case<'a> {
    /// What the maker chose.
    pub spec: &'a Spec,
    /// Where everything is.
    pub arrangement: &'a Arrangement,
    /// The panels with their features.
    pub panels: &'a [Panel],
    /// The screws.
    pub screws: &'a [Screw],
    /// All parts, brackets and other hardware included.
    pub parts: &'a [Part],
    /// Brackets and captive nuts that found no free place.
    pub unplaced: &'a [Unplaced],
    /// Vents of which not one opening was cut.
    pub left_out: &'a [VentLeftOut],
}

/// Every rule, in the order in which they look.
pub const RULES: &[Rule] = &[
    card_slot::CARD_SLOT,
    card::CARD_LENGTH,
    card::CARD_HEIGHT,
    card::CARD_THICKNESS,
    card::CARD_PLUG_ROOM,
    card::CARD_AIR_RULE,
    card_mount::CARD_TONGUE,
    card_mount::CARD_TONGUE_HELD,
    tongue_bend::TONGUE_BEND,
    card_mount::CARD_TAB,
    card_mount::CARD_HOLD,
    card_mount::DISPLAY_PLUG_WINDOW,
    cooler::COOLER_UNDER_TOP,
    cooler::MEMORY_HEIGHT,
    board::STANDOFF_LEAST,
    board::METAL_UNDER_BOARD,
    board_support::BOARD_SUPPORT,
    board_support::STANDOFF_SOLD,
    board::SHIELD_DOES_NOT_CLIP,
    backplate::STANDOFF_AT_SOCKET,
    drives::DRIVE_UNDER_BOARD,
    drives::DRIVE_WASHERS,
    drives::DRIVE_PLUGS,
    drives::DRIVE_HOLES,
    supply::SUPPLY_INLET_FEET,
    supply::SUPPLY_CABLES,
    supply::SUPPLY_AIR,
    supply_face::SUPPLY_CUT_OFF_FACE,
    fans::FAN_GAP,
    fans::FLOOR_OPENING_FEET,
    fan_spacing::FAN_SPACING,
    vents::VENT_NOT_CUT,
    vents::AIR_WAYS,
    front::BUTTON_DEPTH,
    front::BUTTON_GRIP,
    front::FRONT_CONNECTOR_DEPTH,
    front::CONNECTOR_IN_THICK_SHEET,
    keep_clear::KEEP_CLEAR,
    sleeve::SLEEVE_PATH,
    sleeve::SLEEVE_JAMS,
    sleeve::SLEEVE_RATTLES,
    paper::PANEL_ON_PAPER,
    paper::PANEL_ON_STOCK,
    stock_sides::STOCK_SIDE_MISSING,
    paper::PRINTER_SCALE,
    size::SIZE_TOO_SMALL,
    stability::FEET_BASE,
    webs::HOLE_TO_EDGE,
    webs::OPENING_TO_EDGE,
    webs::APERTURE_TO_EDGE,
    webs::HOLE_TO_HOLE,
    webs::HOLE_TO_OPENING,
    webs::OPENING_TO_OPENING,
    recesses::RECESS_MEETS_OPENING,
    recesses::OPENING_OVER_EDGE,
    joints::JOINT_BEYOND_METHOD,
    joint_corners::JOINT_CORNERS_ROUND,
    joints::REBATE_LEAVES,
    joints::FINGER_WIDTH,
    joints::FINGERS_PRESS,
    joints::GLUE_AREA,
    joints::CORNER_OPEN,
    methods::LASER_MATERIAL,
    methods::CANNOT_BE_CUT,
    hand::SAW_REACH,
    hand::BLADE_ENTRY,
    blade_holes::BLADE_HOLE,
    hole_play::HOLE_PLAY,
    methods::TAB_HEIGHT,
    stock_gap::STOCK_GAP,
    screws::SCREW_LENGTH,
    screws::SCREW_POINTS_OUT,
    screws::SCREW_HITS_PART,
    screws::SCREW_HITS_SCREW,
    unknowns::SUPPLY_HOLES_UNKNOWN,
    unknowns::SUPPLY_FAN_UNKNOWN,
    unknowns::FAN_HOLES_UNKNOWN,
    unknowns::JACK_HOLE_UNKNOWN,
    unknowns::SOCKET_ASSUMED,
    unknowns::SHEET_NOT_MEASURED,
    sheet_label::SHEET_NOT_AS_SOLD,
    unknowns::HOLE_FROM_MEMORY,
    unknowns::MATERIAL,
    bracket_holes::BRACKET_HOLE,
    hardware::BRACKET_WITHOUT_PLACE,
    solids::BRACKET_HITS_PART,
    // What no rule above has said of a pair.
    solids::PART_OVERLAPS_PART,
    solids::PART_CROSSES_PANEL,
    solids::PART_OUTSIDE_CASE,
];

/// Looks at a case with every rule. Sorted by weight, then rule, then what it is about.
#[must_use]
pub fn check(case: &Case) -> Vec<Finding> {
    let scene = Scene::new(case);
    let mut found = Vec::new();
    for rule in RULES {
        (rule.look)(&scene, &mut found);
    }
    sort_by(&mut found, |a, b| (a.severity, a.rule, &a.about).cmp(&(b.severity, b.rule, &b.about)));
    found
}
