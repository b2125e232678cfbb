//! The rule by which everything is placed.
//!
//! Parts are first placed in the *rear frame* (see [`super::needs`]), where the board and the back stand still; then the
//! walls are put around them by the size rule, what hangs on walls finds its place (which may move a wall once more),
//! and all of it is moved into the case frame.

use super::around_board::around_board;
use super::finish::finish;
use super::hang::{Hung, hang};
use super::needs::{Needs, Settled, settle};
use super::supply::place_supply;
use super::{Arrangement, BoardPlace, DrivePlace, SupplyPlace, drives};
use crate::design::{DrivePlace as DriveWanted, Spec, SupplyKind, SupplyPose};
use crate::dimensions::boards;
use crate::parts::{Part, board, card, cooler, drive, supply};
use crate::solid::Aabb;

/// Air beside a part that the sleeve slides past, beyond the running clearance: least and comfortable, mm (common
/// practice: edges of hand-cut sheet are not straight to better than this).
pub(super) const BESIDE_MM: [f64; 2] = [1.0, 3.0];
/// Sheet left between an opening and the panel's edge, mm: half the usual sheet, comfortable a whole one (common
/// practice).
pub(super) const EDGE_WEB_MM: [f64; 2] = [3.0, 6.0];

/// Places everything and finds the size of the case.
#[must_use]
pub fn arrange(spec: &Spec) -> Arrangement {
    let poses: &[SupplyPose] = match (spec.supply.kind, &spec.supply.pose) {
        (SupplyKind::Brick, _) => &[SupplyPose::EndFront],
        (_, SupplyPose::Auto) => {
            &[SupplyPose::EndFront, SupplyPose::EndBeside, SupplyPose::BackFlat, SupplyPose::BackTall]
        }
        (_, pose) => std::slice::from_ref(pose),
    };
    // Drives, fans and connectors can only push walls outward: a pose whose size without them is already no better than
    // the best complete one need not be finished.
    let mut begun: Vec<(f64, f64, Begun)> = poses
        .iter()
        .map(|pose| {
            let begun = begin(spec, *pose);
            let settled = settle(&begun.needs, spec);
            (settled.excess, volume(&settled), begun)
        })
        .collect();
    begun.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut best: Option<(f64, f64, Draft)> = None;
    for (missing, least, start) in begun {
        if best.as_ref().is_some_and(|(m, v, _)| (*m, *v) <= (missing, least)) {
            break;
        }
        let draft = complete(spec, start);
        let (missing, size) = (draft.settled.excess, volume(&draft.settled));
        if best.as_ref().is_none_or(|(m, v, _)| (missing, size) < (*m, *v)) {
            best = Some((missing, size, draft));
        }
    }
    let chosen = best.map_or_else(|| complete(spec, begin(spec, SupplyPose::EndFront)), |(_, _, draft)| draft);
    finish(spec, chosen)
}

fn volume(settled: &Settled) -> f64 {
    settled.outside.iter().product()
}

/// Board, what stands on it and the supply in their places.
struct Begun {
    needs: Needs,
    parts: Vec<Part>,
    board: BoardPlace,
    supply: Option<SupplyPlace>,
}

/// Everything placed in the rear frame for one pose of the supply.
pub(super) struct Draft {
    pub(super) settled: Settled,
    pub(super) parts: Vec<Part>,
    pub(super) board: BoardPlace,
    pub(super) supply: Option<SupplyPlace>,
    pub(super) drives: Vec<DrivePlace>,
    pub(super) hung: Vec<Hung>,
}

pub(super) fn gap(spec: &Spec) -> f64 {
    // Both faces that slide past each other carry their finish: inside of the sleeve, edges of the chassis.
    spec.sleeve.clearance_mm + spec.sheet.finish_in_mm + spec.sheet.paint_edges_mm
}

fn begin(spec: &Spec, pose: SupplyPose) -> Begun {
    let t = spec.sheet.thickness_mm();
    let place = BoardPlace { origin: [0.0, boards::REAR_WALL_INNER_Y.get(), spec.board.standoff_mm] };
    let mut parts = board::parts(&spec.board, &place);
    if let Some(cooler_spec) = &spec.cooler {
        parts.push(cooler::part(cooler_spec, &spec.board, &place));
    }
    if let Some(card_spec) = &spec.card {
        parts.extend(card::parts(card_spec, &spec.board, &place, t));
    }
    let mut needs = around_board(spec, &place, &parts);
    let supply_place = place_supply(spec, pose, &parts, &mut needs);
    if let Some(supply_place) = &supply_place {
        parts.push(supply::part(&spec.supply, supply_place, t));
    }
    Begun { needs, parts, board: place, supply: supply_place }
}

fn complete(spec: &Spec, begun: Begun) -> Draft {
    let Begun { mut needs, mut parts, board: place, supply } = begun;
    let mut drive_places = Vec::new();
    // Below the board first, then the back, then the floor: the later ones have the larger choice of places.
    for wanted in [DriveWanted::Below, DriveWanted::Back, DriveWanted::Floor] {
        for drive_spec in spec.drives.iter().filter(|drive_spec| drive_spec.place == wanted) {
            let room = settle(&needs, spec).room;
            let found = drives::place(drive_spec, &room, &parts[0].bodies[0], &parts);
            let part = drive::part(drive_spec, &found);
            if wanted != DriveWanted::Below {
                surround(&mut needs, spec, &part.bounds(), BESIDE_MM);
            }
            for keep in &part.keep_clear {
                surround(&mut needs, spec, &keep.zone, [0.0, 0.0]);
            }
            parts.push(part);
            drive_places.push(found);
        }
    }
    drive_places.sort_by_key(|drive_place| drive_place.number);
    let (settled, hung) = hang(spec, &mut needs, &parts, &place);
    Draft { settled, parts, board: place, supply, drives: drive_places, hung }
}

/// Walls around a box, `air` beyond the running clearance.
pub(super) fn surround(needs: &mut Needs, spec: &Spec, body: &Aabb, air: [f64; 2]) {
    let least = gap(spec) + air[0];
    let easy = gap(spec) + air[1];
    needs.left(body.min[0] - least, body.min[0] - easy);
    needs.right(body.max[0] + least, body.max[0] + easy);
    needs.front(body.min[1] - least, body.min[1] - easy);
    needs.top(body.max[2] + least, body.max[2] + easy);
}
