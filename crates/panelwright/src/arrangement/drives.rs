//! Finds places for drives: below the board, on the floor, on the back (rear frame, see [`super::needs`]).

use crate::arrangement::{DrivePlace, Room};
use crate::design::{DrivePlace as Wanted, DriveSpec, Wall};
use crate::dimensions::margins;
use crate::parts::drive;
use crate::solid::{Aabb, TOUCH_MM};
use crate::sorting::sort_by;

/// Air left around a drive, mm (common practice: room for a fingertip's worth of slack).
const AIR_MM: f64 = margins::AROUND_DRIVE.get();

/// Strip along the back kept free on the floor for brackets, mm: a bracket's leg of 20 and air (common practice).
const BRACKET_STRIP_MM: f64 = margins::BRACKET_STRIP.get();

/// The four ways a drive lies flat: unit vectors of `a` (across) and `b` (away from the connector) in a plane.
const TURNS: [([f64; 2], [f64; 2]); 4] =
    [([1.0, 0.0], [0.0, 1.0]), ([-1.0, 0.0], [0.0, -1.0]), ([0.0, 1.0], [-1.0, 0.0]), ([0.0, -1.0], [1.0, 0.0])];

/// What a place costs by its order among those tried: little, so that it decides only between places as good.
const ROW: f64 = 0.03;
const COLUMN: f64 = 0.01;
const TURN: f64 = 0.5;

/// What a millimetre beyond the room costs, by which the case grows.
const OUTSIDE: f64 = 4.0;

/// What sharing space with a body costs: more than anything else together.
const IN_BODY: f64 = 1e6;

/// What standing in the room of another part's plugs costs, or plugs that another part keeps from going in.
const IN_PLUGS: f64 = 1e3;

/// What standing where a fan would best be costs: as much as a case 25 mm larger.
const BEFORE_FAN: f64 = 25.0 * OUTSIDE;

/// What a millimetre beyond the size rule costs: as much as standing in the room of another part's plugs.
const OVER: f64 = IN_PLUGS;

/// Places one drive so that it shares no space with bodies, and if it can none with zones kept clear, growing the room
/// as little as possible; `fan` is where a fan would best be. `over` says by how much a body and the room of its plugs
/// break the size rule, mm.
///
/// Tried are all corners that the edges of the field and of what stands in it make: a rectangle that can be pushed no
/// further to the left and to the rear (or down) rests against two of them.
#[must_use]
pub fn place(
    spec: &DriveSpec,
    room: &Room,
    under_board: &Aabb,
    [bodies, zones]: [&[Aabb]; 2],
    fan: Option<Aabb>,
    over: &dyn Fn(&Aabb, &Aabb) -> f64,
) -> DrivePlace {
    let size = drive::size(spec);
    let washers_mm = f64::from(spec.washers) * drive::WASHER_MM;
    let wall = if spec.place == Wanted::Back { Wall::Back } else { Wall::Floor };
    let plug = drive::plug_room(spec).get();
    let depth = washers_mm + size[2];
    let [first_axis, second_axis] = if wall == Wall::Back { [0, 2] } else { [0, 1] };
    let reaches =
        |body: &&Aabb| if wall == Wall::Back { body.max[1] > -depth - AIR_MM } else { body.min[2] < depth + AIR_MM };
    let near = |bodies: &[Aabb]| -> Vec<Aabb> { bodies.iter().filter(reaches).copied().collect() };
    let obstacles = near(bodies);
    let zones = near(zones);
    let beside: Vec<Aabb> = obstacles.iter().copied().chain(fan).collect();
    let field = match spec.place {
        Wanted::Below => [[under_board.min[0], under_board.max[0]], [under_board.min[1], -BRACKET_STRIP_MM]],
        Wanted::Floor => [[room.left + AIR_MM, room.right - AIR_MM], [room.front + AIR_MM, -BRACKET_STRIP_MM]],
        Wanted::Back => [[room.left + AIR_MM, room.right - AIR_MM], [BRACKET_STRIP_MM, room.top - AIR_MM]],
    };
    let roomy = |body: &Aabb| body.grown(AIR_MM - 0.01);
    let mut best: Option<(f64, DrivePlace)> = None;
    for (turn, (a, b)) in TURNS.iter().enumerate() {
        // Below the board the plugs point to the front, where a hand can reach them.
        if spec.place == Wanted::Below && turn != 0 {
            continue;
        }
        let extent = [0, 1].map(|axis| (a[axis] * size[0] + b[axis] * size[1]).abs());
        let firsts = match spec.across_mm {
            Some(across) => vec![room.left + across],
            None => corners(&beside, first_axis, field[0], extent[0], false),
        };
        let seconds = match (spec.along_mm, wall) {
            (Some(along), Wall::Back) => vec![along],
            (Some(along), _) => vec![room.front + along],
            (None, _) => corners(&beside, second_axis, field[1], extent[1], wall == Wall::Floor),
        };
        for (row, second) in seconds.iter().enumerate() {
            let places = |first: f64| {
                let place = lay(spec, wall, [first, *second], extent, (*a, *b), washers_mm);
                let corner = place.to_case(0.0, 0.0, 0.0);
                let body = Aabb::new(corner, place.to_case(size[0], size[1], size[2]));
                (place, body, Aabb::new(corner, place.to_case(size[0], -plug, size[2])))
            };
            // Along a row a drive changes on one axis only: what it and its plugs miss on the others they always miss.
            let (_, body, zone) = places(field[0][0]);
            let meets = |other: &Aabb, solid: &Aabb| {
                (0..3).all(|axis| axis == first_axis || solid.overlap_along(other, axis) > TOUCH_MM)
            };
            let in_row = |others: &[Aabb], solid: &Aabb| -> Vec<Aabb> {
                others.iter().filter(|other| meets(other, solid)).copied().collect()
            };
            let beside_body = in_row(&obstacles, &roomy(&body));
            let beside_plugs = in_row(&obstacles, &zone);
            let zones = in_row(&zones, &body);
            for (column, first) in firsts.iter().enumerate() {
                let limit = best.as_ref().map_or(f64::INFINITY, |(least, _)| *least);
                let in_order = |cost: f64| cost + ROW * row as f64 + COLUMN * column as f64 + TURN * turn as f64;
                if in_order(0.0) >= limit {
                    // Those further on cost more still.
                    break;
                }
                let (candidate, body, zone) = places(*first);
                let both = body.union(&zone);
                let outside = if spec.place == Wanted::Below {
                    0.0
                } else {
                    (room.left + AIR_MM - both.min[0]).max(0.0)
                        + (both.max[0] + AIR_MM - room.right).max(0.0)
                        + (room.front + AIR_MM - both.min[1]).max(0.0)
                        + (both.max[1] - if wall == Wall::Back { 0.0 } else { -1.0 }).max(0.0)
                        + (both.max[2] + AIR_MM - room.top).max(0.0)
                };
                let mut cost = in_order(OUTSIDE * outside);
                if cost >= limit {
                    continue;
                }
                let count =
                    |others: &[Aabb], solid: &Aabb| others.iter().filter(|other| solid.overlaps(other)).count() as f64;
                let roomy = roomy(&body);
                cost += IN_BODY * count(&beside_body, &roomy);
                if cost >= limit {
                    continue;
                }
                cost += IN_PLUGS * count(&beside_plugs, &zone);
                cost += IN_PLUGS * count(&zones, &body);
                cost +=
                    if fan.is_some_and(|fan| fan.overlaps(&roomy) || fan.overlaps(&zone)) { BEFORE_FAN } else { 0.0 };
                if cost >= limit {
                    continue;
                }
                cost += OVER * over(&body, &zone);
                if cost < limit {
                    best = Some((cost, candidate));
                }
            }
        }
    }
    best.map_or_else(
        || lay(spec, wall, [room.left, room.front], [size[0], size[1]], TURNS[0], washers_mm),
        |(_, place)| place,
    )
}

/// Lower ends to try along one axis, the preferred ones first: against the field's near end and behind every obstacle.
///
/// `from_high` prefers the high end (the rear, on the floor).
fn corners(obstacles: &[Aabb], axis: usize, field: [f64; 2], extent: f64, from_high: bool) -> Vec<f64> {
    let mut out = vec![field[0], field[1] - extent];
    for body in obstacles {
        out.push(body.max[axis] + AIR_MM);
        out.push(body.min[axis] - AIR_MM - extent);
    }
    // The far end may be passed (the room then grows), the near end never: there the back or a strip for brackets is.
    if from_high {
        out.retain(|low| *low + extent <= field[1] + 1e-9);
        sort_by(&mut out, |a, b| b.total_cmp(a));
    } else {
        out.retain(|low| *low >= field[0] - 1e-9);
        sort_by(&mut out, f64::total_cmp);
    }
    out.dedup_by(|a, b| (*a - *b).abs() < 0.5);
    out
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
