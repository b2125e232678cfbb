//! Where a corner bracket can stand that holds the tongue of a card's bracket.
//!
//! ```text
//!     seen from above                              section
//!
//!     ====== back ==================               || back
//!        [washers]    tongue                       ||| tongue, in the gap of the washers
//!     +---------------+----                        || |
//!     | leg           | overlaps the tongue        ||o| leg of the bracket, screw through washers and back
//!     +---------------+                            ||_|______
//!     |  other leg, on the floor                   =============== floor
//! ```

use super::BoardPlace;
use crate::design::{BoardSpec, BracketSize, BracketThread, CardSpec};
use crate::dimensions::fasteners::{Thread, washer};
use crate::dimensions::{boards, cards};
use crate::parts::card;
use crate::solid::Aabb;

/// The leg covers at least so much of the tongue's width, mm (common practice).
const OVERLAP_MM: f64 = 3.0;

/// Air between washers and tongue, mm, where the bracket is wide enough for it (common practice).
const AIR_MM: f64 = 0.5;

/// Play of the tongue in its gap, mm: its thickness strays by 0.08 (CEM 3.0, figure 9-5).
const PLAY_MM: f64 = 0.08;

/// Fewest washers between bracket and back (common practice).
const WASHERS_LEAST: u32 = 2;

/// A place for the bracket beside one tongue.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Middle of the bracket across the case, in the frame the board's place is given in.
    pub x: f64,
    /// Washers between its leg and the back.
    pub washers: u32,
    /// Their height together, mm.
    pub stack_mm: f64,
    /// The gap the tongue needs, mm: what the washers must reach.
    pub needed_mm: f64,
    /// The room its legs and washers fill, as a box around them.
    pub room: Aabb,
}

/// The thread of brackets as the tables name it.
#[must_use]
pub const fn thread(thread: BracketThread) -> Thread {
    match thread {
        BracketThread::M3 => Thread::M3,
        BracketThread::M4 => Thread::M4,
    }
}

/// Least that a bracket's leg must reach past the tip of a tongue to hold it, mm (common practice).
const HELD_MM: f64 = 1.0;

/// Places beside the tongues, the likeliest first; none where the bracket is too low or too narrow, or the tongue
/// ends in a slot of the floor.
#[must_use]
pub fn seats(
    spec: &CardSpec,
    board: &BoardSpec,
    place: &BoardPlace,
    bracket: &BracketSize,
    bracket_thread: BracketThread,
) -> Vec<Seat> {
    let height = card::table_height(spec.kind);
    let tip = cards::tongue_tip_z(height).get();
    let floor = place.origin[2] - board.standoff_mm;
    let leg_end = floor + bracket.leg_mm;
    if place.origin[2] + tip <= floor || leg_end - (place.origin[2] + tip) < HELD_MM {
        return Vec::new();
    }
    let washer = washer(thread(bracket_thread));
    // From the back's inside face to the tongue's inner face.
    let reach = cards::BRACKET_INNER_Y.get() - boards::REAR_WALL_INNER_Y.get();
    let needed_mm = reach + PLAY_MM;
    let washers = (f64::ceil(needed_mm / washer.thickness_mm) as u32).max(WASHERS_LEAST);
    let stack_mm = f64::from(washers) * washer.thickness_mm;
    let tongue = cards::bracket(height).tongue_width_mm / 2.0;
    let nearest = tongue + washer.outside_mm / 2.0;
    let farthest = tongue + bracket.width_mm / 2.0 - OVERLAP_MM;
    if farthest < nearest {
        return Vec::new();
    }
    let beside = (nearest + AIR_MM).min(farthest);
    let back = place.to_case([0.0, boards::REAR_WALL_INNER_Y.get(), 0.0])[1];
    let first = card::slot(spec, board);
    (first..first + u32::from(spec.slots).max(1))
        .flat_map(|slot| {
            let middle = place.to_case([cards::tongue_centre_x(slot).get(), 0.0, 0.0])[0];
            [middle - beside, middle + beside]
        })
        .map(|x| Seat {
            x,
            washers,
            stack_mm,
            needed_mm,
            room: Aabb::new(
                [x - bracket.width_mm / 2.0, back - stack_mm - bracket.leg_mm, floor],
                [x + bracket.width_mm / 2.0, back, leg_end],
            ),
        })
        .collect()
}
