//! Room for the hardware without which a case cannot be built: it is kept before walls, fans and feet take it.
//!
//! The panels place brackets and captive nuts where there is room; that there is some for the captive nut that holds
//! the sleeve to the floor, and for one bracket between floor and back, must be seen to here, where walls can still
//! move.

use super::arrange::gap;
use crate::design::{Slide, Spec, Wall};
use crate::dimensions::margins;
use crate::solid::{Aabb, within};
use crate::sorting::sort_by;

/// Air around room kept for hardware, mm (common practice: brackets are bent by hand).
pub const AIR_MM: f64 = margins::AROUND_HARDWARE.get();

/// Beyond the bracket's own width, mm: the search along a corner goes in steps (common practice).
const PLAY_MM: f64 = margins::ALONG_HARDWARE.get();

/// Where the nut may stand: the panels' inside faces and what stands between them, in either frame.
pub struct Inside<'a> {
    /// Inside faces of left and right.
    pub x: [f64; 2],
    /// Inside faces of front and back.
    pub y: [f64; 2],
    /// Upper face of the floor.
    pub floor: f64,
    /// What stands on the chassis.
    pub chassis: &'a [Aabb],
    /// What hangs in the sleeve.
    pub sleeve: &'a [Aabb],
    /// Stretches of the back, along x, with openings where a bracket's leg would stand.
    pub open: &'a [[f64; 2]],
}

/// A place for the captive nut between floor and front: the room it takes, the panel it hangs on, and how far that
/// panel must move outward for it (0 where the room is free as it is).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    /// The panel its upright leg is fixed to.
    pub wall: Wall,
    /// Room of its legs, screws and nut, with air around.
    pub room: Aabb,
    /// Outward move of that panel, mm.
    pub missing: f64,
}

/// How far from the front corner the nut on left or right still holds the front, mm (common practice).
pub const NEAR_FRONT_MM: f64 = margins::NUT_NEAR_FRONT.get();

/// The best place for the captive nut that holds the sleeve to the floor: on the front, else on left or right near the
/// front; the least move of a panel first, then the nearest to the middle of the front.
#[must_use]
pub fn front_captive(spec: &Spec, inside: &Inside) -> Option<Kept> {
    let size = &spec.hardware.captive;
    let deep = size.leg_mm + AIR_MM;
    let high = gap(spec) + size.leg_mm + AIR_MM;
    let half = size.width_mm / 2.0 + AIR_MM + PLAY_MM;
    let near_front = [inside.y[0], (inside.y[0] + NEAR_FRONT_MM).min(inside.y[1])];
    // The panel, the axis along its lower edge, the axis square to it, its sense inward, the stretch, the best place.
    let edges = [
        (Wall::Front, 0, 1, 1.0, inside.x, (inside.x[0] + inside.x[1]) / 2.0),
        (Wall::Left, 1, 0, 1.0, near_front, inside.y[0]),
        (Wall::Right, 1, 0, -1.0, near_front, inside.y[0]),
    ];
    let mut best: Option<(f64, f64, Kept)> = None;
    for (wall, along, square, sense, range, target) in edges {
        let face = match wall {
            Wall::Front => inside.y[0],
            Wall::Left => inside.x[0],
            _ => inside.x[1],
        };
        // Of what stands on the chassis everything above counts when the sleeve comes off upward.
        let reach = if spec.sleeve.slide == Slide::Up { f64::INFINITY } else { inside.floor + high };
        let in_way: Vec<&Aabb> = inside
            .chassis
            .iter()
            .filter(|body| body.min[2] < reach)
            .chain(inside.sleeve.iter().filter(|body| body.min[2] < inside.floor + high))
            .filter(|body| body.max[2] > inside.floor)
            .collect();
        let [low, high_end] = [range[0] + half, range[1] - half];
        if high_end < low {
            continue;
        }
        let mut places = vec![within(target, low, high_end), low, high_end];
        places.extend(in_way.iter().flat_map(|body| [body.min[along] - half, body.max[along] + half]));
        places.retain(|at| (low..=high_end).contains(at));
        for at in places {
            let free = in_way
                .iter()
                .filter(|body| body.min[along] < at + half && body.max[along] > at - half)
                .map(|body| if sense > 0.0 { body.min[square] - face } else { face - body.max[square] })
                .fold(f64::INFINITY, f64::min);
            let missing = (deep - free).max(0.0);
            let far = (at - target).abs();
            if best.as_ref().is_none_or(|(least, nearest, _)| (missing, far) < (*least, *nearest)) {
                let outer = face - sense * missing;
                let mut room = Aabb::new([0.0; 3], [0.0; 3]);
                room.min[2] = inside.floor;
                room.max[2] = inside.floor + high;
                room.min[along] = at - half;
                room.max[along] = at + half;
                room.min[square] = outer.min(outer + sense * deep);
                room.max[square] = outer.max(outer + sense * deep);
                best = Some((missing, far, Kept { wall, room, missing }));
            }
        }
        // Left and right are looked at only where the front has no room.
        if best.as_ref().is_some_and(|(missing, _, _)| *missing == 0.0) {
            break;
        }
    }
    best.map(|(_, _, kept)| kept)
}

/// The widest free stretch of the corner between floor and back, if a bracket has room in it: the room of a bracket in
/// its middle; else how much wider the case must be, mm.
pub fn back_bracket(spec: &Spec, inside: &Inside) -> Result<Aabb, f64> {
    let size = &spec.hardware.bracket;
    let reach = size.leg_mm + AIR_MM;
    let wide = size.width_mm + 2.0 * AIR_MM + PLAY_MM;
    let [low, high] = [inside.x[0] + gap(spec), inside.x[1] - gap(spec)];
    let mut in_way: Vec<[f64; 2]> = inside
        .chassis
        .iter()
        .chain(inside.sleeve)
        .filter(|body| body.max[1] > inside.y[1] - reach && body.min[1] < inside.y[1])
        .filter(|body| body.max[2] > inside.floor && body.min[2] < inside.floor + reach)
        .map(|body| [body.min[0], body.max[0]])
        .collect();
    in_way.extend(inside.open.iter().copied().filter(|[from, to]| *from < high && *to > low));
    in_way.push([high, high]);
    sort_by(&mut in_way, |a, b| a[0].total_cmp(&b[0]));
    let mut widest = [low, low];
    let mut end = low;
    for [from, to] in in_way {
        if from.min(high) - end > widest[1] - widest[0] {
            widest = [end, from.min(high)];
        }
        end = end.max(to);
    }
    if widest[1] - widest[0] < wide {
        // To the right of everything there.
        return Err((end.min(high) + wide - high).max(0.0));
    }
    let middle = (widest[0] + widest[1]) / 2.0;
    Ok(Aabb::new(
        [middle - wide / 2.0, inside.y[1] - reach, inside.floor],
        [middle + wide / 2.0, inside.y[1], inside.floor + reach],
    ))
}
