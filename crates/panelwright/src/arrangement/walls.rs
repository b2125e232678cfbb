//! Finds places on panels for what hangs there: fans, button, connectors, jack (rear frame, see [`super::needs`]).
//!
//! A panel of the sleeve moves outward when nothing else helps; the back stays where the board needs it and the floor
//! where the feet do. Where the sleeve comes off, what hangs on it sweeps a way that must be free.

use crate::arrangement::{Need, Needs, Room};
use crate::design::{Slide, Wall};
use crate::solid::{Aabb, TOUCH_MM, larger, smaller, within};
use crate::sorting::sort_by;

/// Something that wants a place on a panel.
#[derive(Clone, Debug)]
pub struct Hanger {
    /// The panel.
    pub wall: Wall,
    /// Its size in the panel's plane, along the plane's first and second case axis (see [`plane`]).
    pub size: [f64; 2],
    /// Depth inward from the inside face.
    pub depth: f64,
    /// Air wanted before it: least and comfortable.
    pub air: [f64; 2],
    /// Where it would best be, in the plane.
    pub target: [f64; 2],
    /// Where the maker put it, in the plane.
    pub pinned: [Option<f64>; 2],
    /// Distance of its edge from the panel's edges, at least: low and high end of each axis.
    pub margin: [[f64; 2]; 2],
    /// Half the size of the opening it needs in the panel; kept clear of `taken` rectangles.
    pub opening: [f64; 2],
    /// Whether the room may grow for it.
    pub may_grow: bool,
}

/// A rectangle `[from, to]` along both axes of a panel's plane.
pub type Rectangle = [[f64; 2]; 2];

/// The two case axes of a panel's plane.
#[must_use]
pub const fn plane(wall: Wall) -> [usize; 2] {
    match wall {
        Wall::Left | Wall::Right => [1, 2],
        Wall::Front | Wall::Back => [0, 2],
        Wall::Top | Wall::Floor => [0, 1],
    }
}

/// The axis square to a panel, and +1 when the inside lies in its positive direction.
const fn inward(wall: Wall) -> (usize, f64) {
    match wall {
        Wall::Left => (0, 1.0),
        Wall::Right => (0, -1.0),
        Wall::Front => (1, 1.0),
        Wall::Back => (1, -1.0),
        Wall::Floor => (2, 1.0),
        Wall::Top => (2, -1.0),
    }
}

/// Position of a panel's inside face along its axis.
fn face(room: &Room, wall: Wall) -> f64 {
    match wall {
        Wall::Left => room.left,
        Wall::Right => room.right,
        Wall::Front => room.front,
        Wall::Back | Wall::Floor => 0.0,
        Wall::Top => room.top,
    }
}

/// The room's extent along an axis.
fn extent(room: &Room, axis: usize) -> [f64; 2] {
    match axis {
        0 => [room.left, room.right],
        1 => [room.front, 0.0],
        _ => [0.0, room.top],
    }
}

/// Finest step of the search, mm; a wide panel is searched in [`STEPS`] steps instead.
const STEP_MM: f64 = 8.0;

/// Most steps of the search along one axis: a change must redraw within a frame, and a fan's place is not worth more.
const STEPS: f64 = 16.0;

/// Standing in the room of another part's plugs, cables or air costs as much as moving the panel by this many tenths
/// of a mm: a hand's width, for plugs that do not go in cannot be helped later.
const CROWDED: f64 = 600.0;

/// What an opening of another part in the place costs: more than any size, for it cannot be built.
const TAKEN: f64 = 1e7;

/// What a millimetre of another part's body costs on a panel that does not give way: as much as that.
const FIXED: f64 = 1e6;

/// What a millimetre of air costs that is missing before a panel that does not give way: less than a millimetre beyond
/// the size rule, for a case that keeps to it can be built.
const AIRLESS: f64 = 5e2;

/// A millimetre beyond the size rule costs as much as moving a panel by this many tenths of a mm.
const OVER: f64 = 1e3;

/// How far beyond the present room the search goes (right, to the front or up), mm.
const GROWTH_MM: f64 = 120.0;

/// A place found and how far its panel should move outward for it: least and comfortable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Found {
    /// Centre in the panel's plane.
    pub centre: [f64; 2],
    /// Outward move wanted.
    pub push: Need,
    /// Body in the rear frame, against the panel where it is now.
    pub body: Aabb,
}

/// What a hanger could meet.
#[derive(Clone, Copy, Debug)]
pub struct Way<'a> {
    /// How the sleeve comes off.
    pub slide: Slide,
    /// Bodies of parts.
    pub obstacles: &'a [Aabb],
    /// Room that plugs, cables and air want.
    pub zones: &'a [Aabb],
    /// Rectangles of the panel that others take.
    pub taken: &'a [Rectangle],
}

/// Finds the best place: no rectangle of `taken` touched, nothing in the way, the panel moved as little as possible,
/// near the target.
///
/// `over` says by how much a place breaks the size rule, mm.
#[must_use]
pub fn find(hanger: &Hanger, room: &Room, way: &Way, over: &dyn Fn(&Found) -> f64) -> Found {
    let Way { slide, obstacles, zones, taken } = *way;
    let axes = plane(hanger.wall);
    let (axis, sign) = inward(hanger.wall);
    let at = face(room, hanger.wall);
    let reach = hanger.depth + hanger.air[1];
    // Only what comes near the panel matters: its shadow on the panel, and how much is free before it.
    let near: Vec<(Rectangle, f64)> = obstacles
        .iter()
        .map(|body| {
            let free = if sign > 0.0 { body.min[axis] - at } else { at - body.max[axis] };
            (body, free)
        })
        .filter(|(body, _)| if sign > 0.0 { body.min[axis] < at + reach } else { body.max[axis] > at - reach })
        .map(|(body, free)| (axes.map(|plane_axis| [body.min[plane_axis], body.max[plane_axis]]), free))
        .collect();
    let spans = axes.map(|plane_axis| extent(room, plane_axis));
    let choices = [0, 1].map(|index| {
        let half = hanger.size[index] / 2.0;
        let [low, high] = hanger.margin[index];
        let [from, to] = [spans[index][0] + half + low, spans[index][1] - half - high];
        match hanger.pinned[index] {
            Some(place) => vec![place],
            None if to <= from && !hanger.may_grow => vec![(spans[index][0] + spans[index][1]) / 2.0],
            None => {
                // Where the panel is too small, it grows from the end that stands: the back does, and left and floor do.
                let to_front = axes[index] == 1;
                let [from, to] = if to_front { [from.min(to), to] } else { [from, to.max(from)] };
                let target = within(hanger.target[index], from, to);
                let mut places = vec![target, from, to];
                let reach = to - from + if hanger.may_grow { GROWTH_MM } else { 0.0 };
                let step = STEP_MM.max(reach / STEPS);
                let count = f64::floor(reach / step) as usize;
                places.extend((1..=count).map(|index| {
                    let way = index as f64 * step;
                    if to_front { to - way } else { from + way }
                }));
                // Nearest first: once a free place is found, those further away need not be looked at.
                sort_by(&mut places, |a, b| (a - target).abs().total_cmp(&(b - target).abs()));
                places
            }
        }
    });
    // The back and the floor do not give way: what is in the way there stays in the way.
    let stands = matches!(hanger.wall, Wall::Back | Wall::Floor);
    let zones = zones_before(hanger, room, zones);
    let mut best: Option<(f64, Found)> = None;
    let least = [0, 1].map(|index| -> Vec<f64> {
        choices[index].iter().map(|place| least_cost(hanger, &spans, index, *place)).collect()
    });
    let least_second = least[1].iter().copied().fold(f64::INFINITY, f64::min);
    for (first, least_first) in choices[0].iter().zip(&least[0]) {
        if best.as_ref().is_some_and(|(limit, _)| least_first + least_second > *limit) {
            continue;
        }
        let column = Column::new(hanger, *first, slide, &near, &zones);
        for (second, least_second) in choices[1].iter().zip(&least[1]) {
            let centre = [*first, *second];
            let limit = best.as_ref().map_or(f64::INFINITY, |(least, _)| *least);
            // Most places are decided by this: it need not be exact.
            if least_first + least_second > limit {
                continue;
            }
            let mut cost = from_target(hanger, centre) * 0.01 + 10.0 * beyond(hanger, &spans, centre);
            if cost >= limit {
                continue;
            }
            let opening = around(centre, hanger.opening);
            cost += TAKEN * taken.iter().filter(|other| overlap(&opening, other) > 1e-6).count() as f64;
            let along = own(hanger, centre)[1];
            cost += CROWDED * column.zones.iter().filter(|zone| depth(&along, zone) > TOUCH_MM).count() as f64;
            if cost >= limit {
                continue;
            }
            let mut push = Need { least: 0.0, easy: 0.0 };
            // How far bodies share its room.
            let mut into = 0.0;
            let total = |push: &Need, into: f64| {
                let moves = if stands { FIXED * into + AIRLESS * (push.least - into) } else { 10.0 * push.least };
                cost + moves + 2.0 * (push.easy - push.least)
            };
            let way = sweep(own(hanger, centre), hanger.wall, slide)[1];
            for (stretch, free) in &column.near {
                if depth(&way, stretch) <= 1e-6 {
                    continue;
                }
                push.least = larger(push.least, hanger.depth + hanger.air[0] - free);
                push.easy = larger(push.easy, hanger.depth + hanger.air[1] - free);
                into = larger(into, hanger.depth - free);
                if total(&push, into) >= limit {
                    break;
                }
            }
            let cost = total(&push, into);
            if cost >= limit {
                continue;
            }
            let found = Found { centre, push, body: body_at(hanger, room, centre) };
            let cost = cost + OVER * over(&found);
            if cost < limit {
                best = Some((cost, found));
            }
        }
    }
    best.map_or(
        Found {
            centre: hanger.target,
            push: Need { least: 0.0, easy: 0.0 },
            body: Aabb { min: [0.0; 3], max: [0.0; 3] },
        },
        |(_, found)| found,
    )
}

/// What a place costs along one axis at least, a hair less than the exact sum: what is more than the best is no better.
fn least_cost(hanger: &Hanger, spans: &[[f64; 2]; 2], index: usize, place: f64) -> f64 {
    let exact = (place - hanger.target[index]).abs() * 0.01 + 10.0 * beyond_along(hanger, spans, index, place);
    exact - 1e-6
}

/// The body of a hanger with its centre at a place of its panel's plane.
fn body_at(hanger: &Hanger, room: &Room, centre: [f64; 2]) -> Aabb {
    let (axis, sign) = inward(hanger.wall);
    let at = face(room, hanger.wall);
    let mut low = [0.0; 3];
    let mut high = [0.0; 3];
    low[axis] = at;
    high[axis] = at + sign * hanger.depth;
    for (index, plane_axis) in plane(hanger.wall).into_iter().enumerate() {
        low[plane_axis] = centre[index] - hanger.size[index] / 2.0;
        high[plane_axis] = centre[index] + hanger.size[index] / 2.0;
    }
    Aabb::new(low, high)
}

/// What a rectangle on a sleeve panel sweeps of its own plane when the sleeve comes off.
fn sweep(mut rectangle: Rectangle, wall: Wall, slide: Slide) -> Rectangle {
    const FAR_MM: f64 = 2000.0;
    match (wall, slide) {
        (Wall::Left | Wall::Right | Wall::Front, Slide::Up) => rectangle[1][1] += FAR_MM,
        (Wall::Left | Wall::Right, Slide::Forward) => rectangle[0][0] -= FAR_MM,
        (Wall::Top, Slide::Forward) => rectangle[1][0] -= FAR_MM,
        _ => {}
    }
    rectangle
}

/// The rectangle of a hanger with its centre at a place.
fn own(hanger: &Hanger, centre: [f64; 2]) -> Rectangle {
    around(centre, [hanger.size[0] / 2.0, hanger.size[1] / 2.0])
}

/// The rectangle that reaches this far around a place.
fn around(centre: [f64; 2], reach: [f64; 2]) -> Rectangle {
    [[centre[0] - reach[0], centre[0] + reach[0]], [centre[1] - reach[1], centre[1] + reach[1]]]
}

/// How far a place is from where the hanger would best be.
fn from_target(hanger: &Hanger, centre: [f64; 2]) -> f64 {
    (centre[0] - hanger.target[0]).abs() + (centre[1] - hanger.target[1]).abs()
}

/// How far a place lies beyond the panel as it is now, to the front, to the right and upward.
fn beyond(hanger: &Hanger, spans: &[[f64; 2]; 2], centre: [f64; 2]) -> f64 {
    beyond_along(hanger, spans, 0, centre[0]) + beyond_along(hanger, spans, 1, centre[1])
}

/// The same along one axis of the plane.
fn beyond_along(hanger: &Hanger, spans: &[[f64; 2]; 2], index: usize, place: f64) -> f64 {
    let half = hanger.size[index] / 2.0;
    let [low, high] = hanger.margin[index];
    let beyond = match plane(hanger.wall)[index] {
        1 => spans[index][0] - (place - half - low),
        _ => place + half + high - spans[index][1],
    };
    larger(beyond, 0.0)
}

/// The zones that a hanger could stand in, wherever on its panel it is.
fn zones_before(hanger: &Hanger, room: &Room, zones: &[Aabb]) -> Vec<Aabb> {
    let (axis, _) = inward(hanger.wall);
    let body = body_at(hanger, room, hanger.target);
    zones.iter().filter(|zone| zone.overlap_along(&body, axis) > TOUCH_MM).copied().collect()
}

/// What can matter to all places with the same first coordinate: the search goes along the second.
struct Column {
    /// Stretches along the second axis that bodies take, and how much is free before each.
    near: Vec<([f64; 2], f64)>,
    /// Stretches along the second axis that zones before the panel take.
    zones: Vec<[f64; 2]>,
}

impl Column {
    fn new(hanger: &Hanger, first: f64, slide: Slide, near: &[(Rectangle, f64)], zones: &[Aabb]) -> Self {
        let [across, _] = own(hanger, [first, 0.0]);
        let [way, _] = sweep([across; 2], hanger.wall, slide);
        let [axis, second] = plane(hanger.wall);
        Self {
            near: near
                .iter()
                .filter(|(shadow, _)| depth(&way, &shadow[0]) > 1e-6)
                .map(|(shadow, free)| (shadow[1], *free))
                .collect(),
            zones: zones
                .iter()
                .filter(|zone| depth(&across, &[zone.min[axis], zone.max[axis]]) > TOUCH_MM)
                .map(|zone| [zone.min[second], zone.max[second]])
                .collect(),
        }
    }
}

/// How much two stretches share; negative is a gap.
fn depth(a: &[f64; 2], b: &[f64; 2]) -> f64 {
    smaller(a[1], b[1]) - larger(a[0], b[0])
}

fn overlap(a: &Rectangle, b: &Rectangle) -> f64 {
    smaller(depth(&a[0], &b[0]), depth(&a[1], &b[1]))
}

/// Adds to `needs` what a found place asks of its own panel and of the panels beside it.
pub fn push(needs: &mut Needs, room: &Room, hanger: &Hanger, found: &Found) {
    let least = found.push.least.max(0.0);
    let easy = found.push.easy.max(least);
    match hanger.wall {
        Wall::Left if easy > 0.0 => needs.left(room.left - least, room.left - easy),
        Wall::Right if easy > 0.0 => needs.right(room.right + least, room.right + easy),
        Wall::Front if easy > 0.0 => needs.front(room.front - least, room.front - easy),
        Wall::Top if easy > 0.0 => needs.top(room.top + least, room.top + easy),
        _ => {}
    }
    for (index, axis) in plane(hanger.wall).into_iter().enumerate() {
        let half = hanger.size[index] / 2.0;
        let [before, after] = hanger.margin[index];
        let [low, high] = [found.centre[index] - half - before, found.centre[index] + half + after];
        match axis {
            0 => {
                needs.left(low, low);
                needs.right(high, high);
            }
            1 => needs.front(low, low),
            _ => needs.top(high, high),
        }
    }
}
