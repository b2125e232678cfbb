//! Finds places for drives: below the board, on the floor, on the back (rear frame, see [`super::needs`]).

use crate::arrangement::{DrivePlace, Room};
use crate::design::{DrivePlace as Wanted, DriveSpec, Wall};
use crate::parts::{Part, drive};
use crate::solid::Aabb;

/// Air left around a drive, mm (common practice: room for a fingertip's worth of slack).
const AIR_MM: f64 = 2.0;

/// Step of the search, mm.
const STEP_MM: f64 = 4.0;

/// Strip along the back kept free on the floor for brackets, mm: a bracket's leg of 20 and air (common practice).
const BRACKET_STRIP_MM: f64 = 22.0;

/// How far beyond the present room the search for a place goes, mm.
const REACH_MM: f64 = 240.0;

/// The four ways a drive lies flat: unit vectors of `a` (across) and `b` (away from the connector) in a plane.
const TURNS: [([f64; 2], [f64; 2]); 4] =
    [([1.0, 0.0], [0.0, 1.0]), ([-1.0, 0.0], [0.0, -1.0]), ([0.0, 1.0], [-1.0, 0.0]), ([0.0, -1.0], [1.0, 0.0])];

/// The rectangle a drive may use in its plane, `[from, to]` along both plane axes, and what growing it costs.
struct Field {
    first: [f64; 2],
    second: [f64; 2],
}

/// Places one drive so that it shares no space with `taken`, growing the room as little as possible.
#[must_use]
pub fn place(spec: &DriveSpec, room: &Room, under_board: &Aabb, taken: &[Part]) -> DrivePlace {
    let size = drive::size(spec);
    let washers_mm = f64::from(spec.washers) * drive::WASHER_MM;
    let wall = if spec.place == Wanted::Back { Wall::Back } else { Wall::Floor };
    let plug = drive::plug_room(spec).get();
    let obstacles: Vec<Aabb> = taken.iter().flat_map(|part| part.bodies.iter().copied()).collect();
    let zones: Vec<Aabb> = taken.iter().flat_map(|part| part.keep_clear.iter().map(|keep| keep.zone)).collect();
    let inner = match spec.place {
        Wanted::Below => {
            Field { first: [under_board.min[0], under_board.max[0]], second: [under_board.min[1], -BRACKET_STRIP_MM] }
        }
        Wanted::Floor => {
            Field { first: [room.left + AIR_MM, room.right - AIR_MM], second: [room.front, -BRACKET_STRIP_MM] }
        }
        Wanted::Back => {
            Field { first: [room.left + AIR_MM, room.right - AIR_MM], second: [BRACKET_STRIP_MM, room.top] }
        }
    };
    let reach = if spec.place == Wanted::Below { 0.0 } else { REACH_MM };
    let mut best: Option<(f64, DrivePlace)> = None;
    for (turn, (a, b)) in TURNS.iter().enumerate() {
        // Below the board the plugs point to the front, where a hand can reach them.
        if spec.place == Wanted::Below && turn != 0 {
            continue;
        }
        let extent = [0, 1].map(|axis| (a[axis] * size[0] + b[axis] * size[1]).abs());
        let pinned = [
            spec.across_mm.map(|across| room.left + across),
            spec.along_mm.map(|along| if wall == Wall::Back { along } else { room.front + along }),
        ];
        let starts = candidates(&inner, extent, pinned, reach, wall);
        for (steps, at) in starts {
            let candidate = lay(spec, wall, at, extent, (*a, *b), washers_mm);
            let body = Aabb::new(candidate.to_case(0.0, 0.0, 0.0), candidate.to_case(size[0], size[1], size[2]));
            let zone = Aabb::new(candidate.to_case(0.0, 0.0, 0.0), candidate.to_case(size[0], -plug, size[2]));
            let hits = obstacles.iter().filter(|other| body.grown(AIR_MM - 0.01).overlaps(other)).count();
            let crowds = obstacles.iter().filter(|other| zone.overlaps(other)).count()
                + zones.iter().filter(|other| body.overlaps(other)).count();
            let both = body.union(&zone);
            let outside = (room.left + AIR_MM - both.min[0]).max(0.0)
                + (both.max[0] + AIR_MM - room.right).max(0.0)
                + (room.front + AIR_MM - both.min[1]).max(0.0)
                + (both.max[1]).max(0.0)
                + (both.max[2] + AIR_MM - room.top).max(0.0);
            let outside = if spec.place == Wanted::Below { 0.0 } else { outside };
            let cost = 1e6 * hits as f64 + 1e3 * crowds as f64 + 4.0 * outside + 0.01 * steps + 0.5 * turn as f64;
            if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                best = Some((cost, candidate));
            }
            if hits == 0 && crowds == 0 && outside == 0.0 {
                break;
            }
        }
    }
    best.map_or_else(
        || lay(spec, wall, [room.left, room.front], [size[0], size[1]], TURNS[0], washers_mm),
        |(_, place)| place,
    )
}

/// Lower corners to try, nearest to the preferred corner first: against the back and the left, or low on the back.
fn candidates(
    field: &Field,
    extent: [f64; 2],
    pinned: [Option<f64>; 2],
    reach: f64,
    wall: Wall,
) -> Vec<(f64, [f64; 2])> {
    let rightmost = field.first[1] - extent[0] + reach;
    let firsts: Vec<f64> = match pinned[0] {
        Some(at) => vec![at],
        None => steps(field.first[0], rightmost.max(field.first[0])),
    };
    let seconds: Vec<f64> = match (pinned[1], wall) {
        (Some(at), _) => vec![at],
        // On the back: from low to high.
        (None, Wall::Back) => steps(field.second[0], (field.second[1] - extent[1] + reach).max(field.second[0])),
        // On the floor: from the back to the front.
        (None, _) => {
            let rear = field.second[1] - extent[1];
            let front = (field.second[0] - reach).min(rear);
            steps(-rear, -front).into_iter().map(|value| -value).collect()
        }
    };
    let mut out = Vec::with_capacity(firsts.len() * seconds.len());
    for (row, second) in seconds.iter().enumerate() {
        for (column, first) in firsts.iter().enumerate() {
            out.push(((row * 3 + column) as f64, [*first, *second]));
        }
    }
    out
}

fn steps(from: f64, to: f64) -> Vec<f64> {
    let count = libm::floor((to - from) / STEP_MM).clamp(0.0, 400.0) as usize;
    (0..=count).map(|index| from + index as f64 * STEP_MM).collect()
}

/// A drive with the lower corner of its rectangle at `at` in the plane of floor (x, y) or back (x, z).
fn lay(
    spec: &DriveSpec,
    wall: Wall,
    at: [f64; 2],
    extent: [f64; 2],
    (a, b): ([f64; 2], [f64; 2]),
    washers_mm: f64,
) -> DrivePlace {
    // The drive's origin is the corner from which a and b lead into its rectangle.
    let corner = [0, 1].map(|axis| if a[axis] + b[axis] > 0.0 { at[axis] } else { at[axis] + extent[axis] });
    let (origin, a, b, h) = match wall {
        // Seen from the front, the back's plane is x to the right and z up, and the underside looks to the back.
        Wall::Back => ([corner[0], -washers_mm, corner[1]], [a[0], 0.0, a[1]], [b[0], 0.0, b[1]], [0.0, -1.0, 0.0]),
        _ => ([corner[0], corner[1], washers_mm], [a[0], a[1], 0.0], [b[0], b[1], 0.0], [0.0, 0.0, 1.0]),
    };
    DrivePlace { number: spec.number, kind: spec.kind, wall, origin, a, b, h, washers_mm }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// SFF-8201 and SFF-8301 show drives from below: connector end on top, `a` to the right, `b` down. The viewer looks
    /// along `h`, so right x up = a x (-b) points to the viewer = -h, and a x b = h.
    #[test]
    fn a_drive_is_never_laid_mirrored() {
        let cross = |a: [f64; 3], b: [f64; 3]| {
            [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
        };
        let mut design = crate::design::Design::default();
        design.set_json("drive1.kind", &"2.5".into()).unwrap();
        let spec = crate::design::Spec::of(&design);
        for wall in [Wall::Floor, Wall::Back] {
            for turn in TURNS {
                let place = lay(&spec.drives[0], wall, [0.0, 0.0], [10.0, 10.0], turn, 1.0);
                assert_eq!(cross(place.a, place.b).map(|v| v + 0.0), place.h, "{wall:?} {turn:?}");
            }
        }
    }
}
