//! What the board asks of floor and back: its standoffs' holes and the opening for its rear connectors.

use super::bench::{Bench, Cut};
use super::panel::{Face, FeatureKind, Purpose};
use super::screws::{Grip, Plan};
use crate::design::{IoOpening, Wall};
use crate::dimensions::boards;
use crate::dimensions::fasteners::{Thread, pitch, washer};
use crate::drawing::Contour;
use crate::drawing::number::format_number;
use crate::fastening::Fastener;
use crate::fastening::Screw;
use crate::parts::board;

/// The thread of standoffs in both ends (from memory: measure yours; some are 6-32).
pub(super) const STANDOFF_THREAD: Thread = Thread::M3;

/// Thread of a standoff that stays free for the board's own screw, mm: five turns of M3 and a little (common practice).
const KEPT_FOR_BOARD_MM: f64 = 2.7;

/// Turns of thread that hold where a standoff is too short for a whole diameter (common practice).
const TURNS_SHORT: f64 = 5.0;

/// Turns of thread that hold the board itself, which pulls at nothing, where a standoff has no room for a whole diameter
/// (common practice).
const TURNS_BOARD: f64 = 4.0;

/// Sheet left behind a rebate for the shield's springs, mm: inside the 0.94 to 1.32 of ATX 2.2, figure 4.
const SHIELD_SHEET_MM: f64 = 1.2;

pub(super) fn features(bench: &mut Bench) {
    standoffs(bench);
    aperture(bench);
}

fn standoffs(bench: &mut Bench) {
    let spec = &bench.spec.board;
    let place = bench.arrangement.board;
    let thread = STANDOFF_THREAD;
    let diameter = bench.clearance(thread);
    let holes = board::holes(spec);
    for hole in &holes {
        let letter = hole.letter;
        let at = bench.on(Wall::Floor, place.to_case([hole.x_mm, hole.y_mm, 0.0]));
        let cut = Cut::new(
            format!("board-standoff-{letter}"),
            Purpose::BoardStandoff,
            format!("Standoff {letter} of the board: {} from below", thread.label()),
            hole.source,
        )
        .about(format!("standoff-{letter}"))
        .about("board");
        bench.hole(Wall::Floor, cut, at, diameter);
        let from_below = from_below(bench, letter, spec.standoff_mm);
        bench.screw_from_outside(Wall::Floor, at, from_below);
        let lower = bench.screws.last().map_or(0.0, depth);
        let top = place.to_case([hole.x_mm, hole.y_mm, boards::PCB_THICKNESS.get()]);
        bench.screws.push(from_above(letter, spec.standoff_mm - lower).screw(top, [0.0, 0.0, -1.0]));
    }
    bench.loose.push(Fastener::new(
        format!("{} standoff, thread in both ends", thread.label()),
        holes.len(),
        Some(spec.standoff_mm),
        ["floor", "board"],
    ));
}

/// How deep a screw enters beyond what it clamps, at most: sold lengths stray by a quarter millimetre or so upward.
fn depth(screw: &Screw) -> f64 {
    /// Upward tolerance of lengths up to 18 mm (ISO 4762, table of lengths).
    const LONGER_MM: f64 = 0.35;
    let under = f64::from(screw.washers) * washer(STANDOFF_THREAD).thickness_mm;
    screw.length_mm.map_or(0.0, |length| length + LONGER_MM - screw.clamped_mm - under)
}

fn from_below(bench: &Bench, letter: char, standoff_mm: f64) -> Plan {
    let most = standoff_mm - KEPT_FOR_BOARD_MM;
    let id = format!("screw-board-standoff-{letter}");
    let plan =
        Plan::new(id, "screw from below into a standoff", STANDOFF_THREAD, bench.clamped(), Grip::Steel(Some(most)))
            .joins(["floor".to_owned(), format!("standoff-{letter}")]);
    if plan.has_length() {
        return plan;
    }
    let least = TURNS_SHORT * pitch(STANDOFF_THREAD).get();
    Plan { washers: 0..=4, grip: Grip::Depth(least, Some(most)), ..plan }
}

fn from_above(letter: char, room_mm: f64) -> Plan {
    let plan = Plan::new(
        format!("screw-board-{letter}"),
        "screw of the board into a standoff",
        STANDOFF_THREAD,
        boards::PCB_THICKNESS.get(),
        Grip::Steel(Some(room_mm)),
    )
    .joins(["board".to_owned(), format!("standoff-{letter}")]);
    let plan = Plan { washers: 0..=0, ..plan };
    if plan.has_length() {
        return plan;
    }
    let least = TURNS_BOARD * pitch(STANDOFF_THREAD).get();
    Plan { grip: Grip::Depth(least, Some(room_mm)), ..plan }
}

fn aperture(bench: &mut Bench) {
    let place = bench.arrangement.board;
    let [x0, x1] = boards::IO_X.get();
    let [z0, z1] = boards::IO_Z.get();
    let low = bench.on(Wall::Back, place.to_case([x1, 0.0, z0]));
    let high = bench.on(Wall::Back, place.to_case([x0, 0.0, z1]));
    let radius = boards::IO_CORNER_RADIUS_MAX.get();
    let rebate = bench.spec.board.io_opening == IoOpening::Rebate;
    let why = if rebate {
        "Opening for the board's rear connectors; their shield clips into it"
    } else {
        "Opening for the board's rear connectors, left open: a shield does not clip to sheet this thick"
    };
    let cut = Cut::new("io-aperture", Purpose::IoAperture, why, boards::IO_X.source()).about("board");
    let contour = Contour::rounded_rect(low.x, low.y, high.x, high.y, radius);
    bench.shape(Wall::Back, cut, FeatureKind::Opening, None, contour);
    let deep = bench.thickness() - SHIELD_SHEET_MM;
    if rebate && bench.thickness() > boards::IO_SHIELD_WALL.get()[1] {
        let border = boards::IO_BORDER.get();
        let cut = Cut::new(
            "io-rebate",
            Purpose::ShieldRebate,
            format!(
                "Rebate from outside that leaves {} mm of sheet for the shield's springs",
                format_number(SHIELD_SHEET_MM, 2)
            ),
            boards::IO_SHIELD_WALL.source(),
        )
        .about("io-aperture");
        let contour =
            Contour::rounded_rect(low.x - border, low.y - border, high.x + border, high.y + border, radius + border);
        bench.shape(Wall::Back, cut, FeatureKind::Rebate, Some((deep, Face::Outside)), contour);
    }
}
