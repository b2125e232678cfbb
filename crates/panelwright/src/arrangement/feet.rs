//! Finds places for the four feet on the floor (case frame): near the corners, clear of what stands there.

use crate::design::{FeetKind, FeetSpec, Spec};
use crate::dimensions::boards::UNDERSIDE_LEADS;
use crate::dimensions::fasteners::{Thread, major_diameter};
use crate::dimensions::margins;
use crate::parts::{Part, PartKind, feet, holes};
use crate::solid::{Aabb, larger};

/// Air around a foot's nut, mm: enough to turn a nut by its flats from above (common practice).
const AIR_MM: f64 = margins::AROUND_FOOT_NUT.get();

/// How far across the floor a foot may move from its edge (common practice).
const REACH: f64 = 0.66;

/// How far across the floor it moves for the sake of its hole's distance from the edge: not where the case would stand
/// less steady (common practice).
const SOUND_REACH: f64 = 0.25;

/// Keeps a foot that stands beside something from touching it by a binary fraction, mm.
const HAIR_MM: f64 = 1e-6;

/// Nearest a foot's hole may come to the floor's edge, centre to edge, mm (common practice: its own diameter).
const EDGE_MM: f64 = margins::FOOT_FROM_EDGE.get();

/// Strip along an edge of the floor in which a foot's nut finds room, mm.
pub const STRIP_MM: f64 = EDGE_MM + feet::NUT_SIDE_MM / 2.0 + AIR_MM;

/// Whether what holds a foot above the floor has room below the board and its leads.
#[must_use]
pub fn fit_below_board(spec: &Spec) -> bool {
    let floor = spec.sheet.thickness_mm();
    let high = feet::above_floor(&spec.feet, floor)[1].max(feet::bolt_end_mm(&spec.feet, floor));
    if high <= 0.0 {
        return true;
    }
    high + AIR_MM + UNDERSIDE_LEADS.get() <= spec.board.standoff_mm
}

/// Centres of the feet, case x and y. `longest_mm` is the case's longest side; `floor` are the floor's edges: left,
/// front, right, rear; `reserved` is room for hardware that has no choice of place.
#[must_use]
pub fn place(
    case_spec: &Spec,
    longest_mm: f64,
    floor: [f64; 4],
    floor_z: [f64; 2],
    parts: &[Part],
    reserved: &[Aabb],
) -> Vec<[f64; 2]> {
    let spec = &case_spec.feet;
    if spec.kind == FeetKind::None {
        return Vec::new();
    }
    let floor_mm = floor_z[1] - floor_z[0];
    // Brittle sheet wants their holes further from its edges.
    let sound = feet::thread(spec, floor_mm)
        .and_then(|thread| holes::from_edge_mm(case_spec, holes::clearance(case_spec, longest_mm, thread).get()))
        .filter(|sound| *sound > EDGE_MM);
    let [left, front, right, rear] = floor;
    let inset = larger(spec.inset_mm, sound.unwrap_or(0.0));
    let inset = inset.min((right - left) / 2.0 - 1.0).min((rear - front) / 2.0 - 1.0).max(1.0);
    let corners = [
        ([left + inset, front + inset], [1.0, 1.0]),
        ([right - inset, front + inset], [-1.0, 1.0]),
        ([right - inset, rear - inset], [-1.0, -1.0]),
        ([left + inset, rear - inset], [1.0, -1.0]),
    ];
    // At best the end of the bolt, too, and the leads under the board have their room; at least the nut has.
    let end = feet::bolt_end_mm(spec, floor_mm);
    let nut = feet::above_floor(spec, floor_mm)[1];
    let mut best = taken(spec, floor_z, parts, reserved, nut.max(end), UNDERSIDE_LEADS.get());
    let mut least = taken(spec, floor_z, parts, reserved, nut, 0.0);
    let usual = Band { edge_mm: EDGE_MM, reach: REACH };
    let sound = sound.map(|edge_mm| Band { edge_mm, reach: SOUND_REACH });
    let mut out = Vec::new();
    for (corner, towards) in corners {
        let look = |taken: &[Aabb], end: f64| {
            let bands = sound.iter().chain(std::iter::once(&usual));
            bands.into_iter().find_map(|band| search(spec, (corner, towards), floor, floor_z, taken, end, band))
        };
        let at = look(&best, end).or_else(|| look(&least, 0.0)).unwrap_or(corner);
        let own: Vec<Aabb> = solids(spec, at, floor_z, 0.0).into_iter().map(|body| body.grown(AIR_MM)).collect();
        best.extend_from_slice(&own);
        least.extend(own);
        out.push(at);
    }
    out
}

/// The strip of the floor in which a foot looks for its place.
struct Band {
    /// Nearest to the floor's edge, mm.
    edge_mm: f64,
    /// How far across the floor from there.
    reach: f64,
}

/// What feet could meet: up to so far above the floor, the board lower by so much, mm.
fn taken(spec: &FeetSpec, floor_z: [f64; 2], parts: &[Part], reserved: &[Aabb], above: f64, leads: f64) -> Vec<Aabb> {
    let lower = |part: &Part| if part.kind == PartKind::Board { leads } else { 0.0 };
    parts
        .iter()
        .flat_map(|part| {
            let solids = part.bodies.iter().chain(part.keep_clear.iter().map(|keep| &keep.zone));
            solids.map(move |body| Aabb { min: [body.min[0], body.min[1], body.min[2] - lower(part)], max: body.max })
        })
        .chain(reserved.iter().copied())
        .filter(|body| body.min[2] < floor_z[1] + above && body.max[2] > floor_z[0] - spec.height_mm)
        .map(|body| body.grown(AIR_MM))
        .collect()
}

/// What a foot fills: its parts, and its bolt up to `end` above the floor.
fn solids(spec: &FeetSpec, at: [f64; 2], floor_z: [f64; 2], end: f64) -> Vec<Aabb> {
    let mut out = feet::part(spec, 1, at, floor_z).bodies;
    if end > 0.0 {
        let half = major_diameter(Thread::M6).get() / 2.0;
        out.push(Aabb::new([at[0] - half, at[1] - half, floor_z[1]], [at[0] + half, at[1] + half, floor_z[1] + end]));
    }
    out
}

/// The free place nearest to a corner.
fn search(
    spec: &FeetSpec,
    (corner, towards): ([f64; 2], [f64; 2]),
    floor: [f64; 4],
    floor_z: [f64; 2],
    taken: &[Aabb],
    end: f64,
    band: &Band,
) -> Option<[f64; 2]> {
    let [left, front, right, rear] = floor;
    let is_free = |at: [f64; 2]| {
        !solids(spec, at, floor_z, end).iter().any(|body| taken.iter().any(|other| body.overlaps(other)))
    };
    if is_free(corner) {
        return Some(corner);
    }
    let mut best: Option<(f64, [f64; 2])> = None;
    // From the very edge to two thirds across: further in, the case would stand on a narrow base. Tried are the corner,
    // the edge, and beside everything that stands there: the nearest free place rests against two of them.
    let half = solids(spec, [0.0, 0.0], floor_z, end).iter().map(|body| body.max[0]).fold(0.0, f64::max);
    let places = [0, 1].map(|axis| {
        let [low, high] = if axis == 0 { [left, right] } else { [front, rear] };
        let edge = if towards[axis] > 0.0 { low + band.edge_mm } else { high - band.edge_mm };
        let inner = edge + towards[axis] * (high - low) * band.reach;
        let mut places = vec![corner[axis], edge];
        places.extend(taken.iter().flat_map(|body| [body.min[axis] - half - HAIR_MM, body.max[axis] + half + HAIR_MM]));
        places.retain(|place| (edge.min(inner)..=edge.max(inner)).contains(place));
        places
    });
    for x in &places[0] {
        for y in &places[1] {
            let at = [*x, *y];
            let far = (at[0] - corner[0]).abs() + (at[1] - corner[1]).abs();
            if best.is_none_or(|(least, _)| far < least) && is_free(at) {
                best = Some((far, at));
            }
        }
    }
    best.map(|(_, at)| at)
}
