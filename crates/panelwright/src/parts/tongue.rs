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
use crate::parts::{board as board_part, card};
use crate::solid::{Aabb, TOUCH_MM};

/// The leg covers at least so much of the tongue's width, mm (common practice).
const OVERLAP_MM: f64 = 3.0;

/// A leg reaches along the tongue by so much, mm, to hold it (common practice).
const HELD_MM: f64 = 3.0;

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
    /// How much is filed off the end of its upright leg, which would come too near to the board above it, mm.
    pub filed_mm: f64,
    /// The room its legs and washers fill, as a box around them.
    pub room: Aabb,
}

/// Filed legs are marked out in tenths, mm.
const FILED_TO_MM: f64 = 0.1;

/// How much of an upright leg under the board is filed off so that it keeps the room metal owes the board, mm; 0 where
/// it need not, or where what is left would not hold the tongue or not carry its screw.
fn filed_mm(standoff_mm: f64, tip_mm: f64, bracket: &BracketSize, washer_mm: f64) -> f64 {
    let most = f64::floor((standoff_mm - boards::MIN_STANDOFF.get()) / FILED_TO_MM + 1e-6) * FILED_TO_MM;
    let holds = most - tip_mm >= HELD_MM && most >= bracket.hole_mm + washer_mm / 2.0;
    if bracket.leg_mm > standoff_mm - boards::MIN_STANDOFF.get() && holds { bracket.leg_mm - most } else { 0.0 }
}

/// The thread of brackets as the tables name it.
#[must_use]
pub const fn thread(thread: BracketThread) -> Thread {
    match thread {
        BracketThread::M3 => Thread::M3,
        BracketThread::M4 => Thread::M4,
    }
}

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
    if place.origin[2] + tip <= floor || leg_end - (place.origin[2] + tip) < HELD_MM - TOUCH_MM {
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
    let outline = board_part::outline(board);
    let over = [outline.left_x, outline.right_x].map(|x| place.to_case([x, 0.0, 0.0])[0]);
    let filed = filed_mm(board.standoff_mm, board.standoff_mm + tip, bracket, washer.outside_mm);
    (first..first + u32::from(spec.slots).max(1))
        .flat_map(|slot| {
            let middle = place.to_case([cards::tongue_centre_x(slot).get(), 0.0, 0.0])[0];
            [middle - beside, middle + beside]
        })
        .map(|x| {
            let half = bracket.width_mm / 2.0;
            let filed_mm = if x + half > over[0] && x - half < over[1] { filed } else { 0.0 };
            Seat {
                x,
                washers,
                stack_mm,
                needed_mm,
                filed_mm,
                room: Aabb::new(
                    [x - half, back - stack_mm - bracket.leg_mm, floor],
                    [x + half, back, leg_end - filed_mm],
                ),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const BRACKET: BracketSize = BracketSize { leg_mm: 20.0, width_mm: 15.0, thickness_mm: 1.5, hole_mm: 13.0 };

    /// Standard brackets end 10.19 below the board. ATX 2.2, section 3.4.2: 6.35 to metal. On 25 a leg of 20 is filed to
    /// 18.6; on 26.35 it need not be; on 24.3 it would end 17.9 above the floor and hold 3.79; a hole 15.2 from the corner
    /// wants a leg of 18.7 for its washer of 7.
    #[test]
    fn a_leg_below_the_board_is_filed_as_much_as_the_board_asks() {
        let tip = -10.19;
        for (standoff, bracket, left) in [
            (25.0, BRACKET, 18.6),
            (26.35, BRACKET, 20.0),
            (26.34, BRACKET, 19.9),
            (24.3, BRACKET, 17.9),
            (25.0, BracketSize { hole_mm: 15.1, ..BRACKET }, 18.6),
            (25.0, BracketSize { hole_mm: 15.2, ..BRACKET }, 20.0),
            (40.0, BRACKET, 20.0),
        ] {
            let filed = filed_mm(standoff, standoff + tip, &bracket, 7.0);
            assert!((bracket.leg_mm - filed - left).abs() < 1e-9, "{standoff}: {filed}");
        }
        // A low-profile bracket ends 6.14 below the board: what is left would hold 0.
        assert!(filed_mm(25.0, 25.0 - 6.14, &BRACKET, 7.0).abs() < 1e-9);
    }
}
