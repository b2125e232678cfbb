//! The rule by which everything is placed.
//!
//! Parts are first placed in the *rear frame* (see [`super::needs`]), where the board and the back stand still; then the
//! walls are put around them by the size rule, what hangs on walls finds its place (which may move a wall once more),
//! and all of it is moved into the case frame.

use super::around_board::around_board;
use super::finish::finish;
use super::hang::{Hung, hang, low_openings, openings_as_solids};
use super::hangers::before_cooler;
use super::needs::{Needs, Settled, Sizing};
use super::supply::place_supply;
use super::{Arrangement, BoardPlace, DrivePlace, SupplyPlace, drives, feet, hardware_room};
use crate::design::{DrivePlace as DriveWanted, SizeRule, Spec, SupplyKind, SupplyPose, Wall};
use crate::dimensions::boards;
use crate::dimensions::margins;
use crate::parts::{Part, PartKind, board, card, cooler, drive, supply};
use crate::solid::Aabb;
use crate::sorting::{sort_by, sort_by_key};

/// Air beside a part that the sleeve slides past, beyond the running clearance: least and comfortable, mm (common
/// practice: edges of hand-cut sheet are not straight to better than this).
pub(super) const BESIDE_MM: [f64; 2] = margins::BESIDE_PART.get();
/// Sheet left between an opening and the panel's edge, mm: half the usual sheet, comfortable a whole one (common
/// practice).
pub(super) const EDGE_WEB_MM: [f64; 2] = margins::EDGE_WEB.get();

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
    // Drives, fans and connectors can only push walls outward: a pose that without them is already no better than the
    // best complete one need not be finished.
    let sizing = Sizing::of(spec);
    let mut begun: Vec<(Merit, Begun)> = poses
        .iter()
        .map(|pose| {
            let begun = begin(spec, &sizing, *pose);
            let settled = sizing.settle(&begun.needs);
            (Merit::of(spec, *pose, &settled), begun)
        })
        .collect();
    sort_by(&mut begun, |a, b| a.0.order(&b.0));
    let mut best: Option<(Merit, Draft)> = None;
    for (least, start) in begun {
        if best.as_ref().is_some_and(|(merit, _)| merit.order(&least).is_le()) {
            break;
        }
        let pose = least.pose;
        let draft = complete(spec, &sizing, start);
        let merit = Merit::of(spec, pose, &draft.settled);
        if best.as_ref().is_none_or(|(known, _)| merit.order(known).is_lt()) {
            best = Some((merit, draft));
        }
    }
    let chosen =
        best.map_or_else(|| complete(spec, &sizing, begin(spec, &sizing, SupplyPose::EndFront)), |(_, draft)| draft);
    finish(spec, chosen)
}

/// How good a pose of the supply is: one that can be built before one that cannot, then by what is missing and by size.
struct Merit {
    pose: SupplyPose,
    /// By how much the size rule is not kept, mm.
    excess: f64,
    /// By how much the feet are too short for the plug of an inlet in the floor, mm.
    feet: f64,
    /// Outside volume, mm³.
    volume: f64,
}

impl Merit {
    fn of(spec: &Spec, pose: SupplyPose, settled: &Settled) -> Self {
        let stands =
            matches!(pose, SupplyPose::EndFront | SupplyPose::EndBeside) && spec.supply.kind != SupplyKind::Brick;
        let plug = supply::plug_room(&spec.supply).get()[0];
        let feet = if stands { (plug - spec.feet.height_mm).max(0.0) } else { 0.0 };
        Self { pose, excess: settled.excess, feet, volume: volume(settled) }
    }

    fn order(&self, other: &Self) -> std::cmp::Ordering {
        let fails = |merit: &Self| merit.excess > 0.0 || merit.feet > 0.0;
        fails(self)
            .cmp(&fails(other))
            .then(self.excess.total_cmp(&other.excess))
            .then(self.feet.total_cmp(&other.feet))
            .then(self.volume.total_cmp(&other.volume))
    }
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
    /// What a case of a given size would ask of its walls: without what hangs on them.
    pub(super) needs: Needs,
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

fn begin(spec: &Spec, sizing: &Sizing, pose: SupplyPose) -> Begun {
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
    let feet_beside = !feet::fit_below_board(spec);
    if feet_beside {
        needs = beside_feet(spec, sizing, needs, &parts[0].bodies[0]);
    }
    let supply_place = place_supply(spec, pose, &parts, &mut needs);
    if let Some(supply_place) = &supply_place {
        let part = supply::part(&spec.supply, supply_place, t);
        // One on end in front of the board leaves the feet the corners before it.
        if feet_beside && !matches!(pose, SupplyPose::EndFront | SupplyPose::Auto) {
            needs = beside_feet(spec, sizing, needs, &part.bounds());
        }
        parts.push(part);
    }
    Begun { needs, parts, board: place, supply: supply_place }
}

/// Room on both sides of what no foot fits below, unless a case with it would not keep its size rule.
fn beside_feet(spec: &Spec, sizing: &Sizing, needs: Needs, body: &Aabb) -> Needs {
    let strip = gap(spec) + feet::STRIP_MM;
    let mut wider = needs;
    wider.left(body.min[0] - strip, body.min[0] - strip);
    wider.right(body.max[0] + strip, body.max[0] + strip);
    if sizing.excess(&wider) <= sizing.excess(&needs) { wider } else { needs }
}

fn complete(spec: &Spec, sizing: &Sizing, begun: Begun) -> Draft {
    let Begun { mut needs, mut parts, board: place, supply } = begun;
    let mut drive_places = Vec::new();
    // Below the board first, then the back, then the floor: the later ones have the larger choice of places.
    for wanted in [DriveWanted::Below, DriveWanted::Back, DriveWanted::Floor] {
        for drive_spec in spec.drives.iter().filter(|drive_spec| drive_spec.place == wanted) {
            let room = sizing.settle(&needs).room;
            let around = |mut needs: Needs, body: &Aabb, zone: &Aabb| {
                if wanted != DriveWanted::Below {
                    surround(&mut needs, spec, body, BESIDE_MM);
                }
                surround(&mut needs, spec, zone, [0.0, 0.0]);
                needs
            };
            let over = |body: &Aabb, zone: &Aabb| sizing.excess(&around(needs, body, zone));
            // What is on the underside of the board comes down into the room of a drive on the floor.
            let lower = |part: &Part| {
                if part.kind == PartKind::Board && wanted == DriveWanted::Floor {
                    boards::UNDERSIDE_BACKPLATE.get()
                } else {
                    0.0
                }
            };
            let lowered = |part: &Part, body: &Aabb| Aabb {
                min: [body.min[0], body.min[1], body.min[2] - lower(part)],
                max: body.max,
            };
            let mut obstacles: Vec<Aabb> =
                parts.iter().flat_map(|part| part.bodies.iter().map(move |body| lowered(part, body))).collect();
            if wanted == DriveWanted::Back {
                // Its screws go through the back: not where an opening is.
                obstacles.extend(openings_as_solids(spec, &place, &room));
            }
            let zones: Vec<Aabb> = parts.iter().flat_map(|part| part.keep_clear.iter().map(|keep| keep.zone)).collect();
            let fan = if wanted == DriveWanted::Back { rear_fan(spec, &place) } else { None };
            let found = drives::place(drive_spec, &room, &parts[0].bodies[0], [&obstacles, &zones], fan, &over);
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
    sort_by_key(&mut drive_places, |drive_place| drive_place.number);
    let fixed = needs;
    let (settled, hung) = hang_with_hardware(spec, sizing, &mut needs, &parts, &place);
    Draft { settled, needs: fixed, parts, board: place, supply, drives: drive_places, hung }
}

/// Where the largest fan on the back would best be: drives there leave it free when they can.
fn rear_fan(spec: &Spec, place: &BoardPlace) -> Option<Aabb> {
    let rear = spec.fans.iter().filter(|fan| fan.wall == Wall::Back && fan.across_mm.is_none());
    let fan = rear.max_by(|a, b| a.size_mm.total_cmp(&b.size_mm))?;
    let [x, _, z] = before_cooler(spec, place);
    let half = fan.size_mm / 2.0 + EDGE_WEB_MM[0];
    // Never before the board's connectors, which lie lower.
    let z = z.max(place.origin[2] + boards::IO_Z.get()[1] + half);
    Some(Aabb::new([x - half, -fan.thickness_mm, z - half], [x + half, 0.0, z + half]))
}

/// Rounds of moving a wall for hardware; what hangs on walls finds new places after each.
const HARDWARE_ROUNDS: usize = 2;

/// Finds places for what hangs on walls, with room left for the captive nut between floor and front and
/// for a bracket between floor and back.
fn hang_with_hardware(
    spec: &Spec,
    sizing: &Sizing,
    needs: &mut Needs,
    parts: &[Part],
    place: &BoardPlace,
) -> (Settled, Vec<Hung>) {
    let (mut settled, mut hung) = hang(spec, sizing, needs, parts, place);
    if matches!(spec.size, SizeRule::Given(_)) {
        return (settled, hung);
    }
    for _ in 0..HARDWARE_ROUNDS {
        let room = settled.room;
        let is_on_chassis = |hung: &&Hung| matches!(hung.wall, Wall::Back | Wall::Floor);
        let mut chassis: Vec<Aabb> = parts.iter().flat_map(|part| part.bodies.iter().copied()).collect();
        chassis.extend(hung.iter().filter(is_on_chassis).map(|hung| hung.body));
        let sleeve: Vec<Aabb> = hung.iter().filter(|hung| !is_on_chassis(hung)).map(|hung| hung.body).collect();
        let inside = hardware_room::Inside {
            x: [room.left, room.right],
            y: [room.front, 0.0],
            floor: 0.0,
            chassis: &chassis,
            sleeve: &sleeve,
            open: &low_openings(spec, place),
        };
        let before = *needs;
        if let Some(kept) = hardware_room::front_captive(spec, &inside).filter(|kept| kept.missing > 0.0) {
            match kept.wall {
                Wall::Left => needs.left(kept.room.min[0], kept.room.min[0]),
                Wall::Right => needs.right(kept.room.max[0], kept.room.max[0]),
                _ => needs.front(kept.room.min[1], kept.room.min[1]),
            }
        }
        let brackets = spec.has_chassis_brackets();
        if let Some(missing) = hardware_room::back_bracket(spec, &inside).err().filter(|_| brackets) {
            let mut wider = *needs;
            wider.right(room.right + missing, room.right + missing);
            // Past its paper a case is no better than without the bracket.
            if sizing.excess(&wider) <= sizing.excess(needs) {
                *needs = wider;
            }
        }
        if *needs == before {
            break;
        }
        (settled, hung) = hang(spec, sizing, needs, parts, place);
    }
    (settled, hung)
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
