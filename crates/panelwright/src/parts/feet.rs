//! Feet: what stands below the floor and what holds it above.

use crate::design::{FeetKind, FeetSpec};
use crate::dimensions::fasteners::{Thread, required_length_mm, sold_length_between_mm, washer};
use crate::parts::{Carrier, Part, PartKind};
use crate::solid::Aabb;

/// Side of the square a foot's washer and nut fill above the floor, mm: M6 washer 12 outside (ISO 7089).
pub const NUT_SIDE_MM: f64 = 12.0;

/// Washer and nut above the floor, mm: M6 washer 1.6 (ISO 7089) and nut 5.2 (ISO 4032).
pub const NUT_HEIGHT_MM: f64 = 6.8;

/// Head of a pad's screw above the floor, mm: M4 pan head 3.1 (ISO 7045) on a washer 0.8 (ISO 7089).
pub const PAD_SCREW_HEIGHT_MM: f64 = 3.9;

/// Thread that holds a pad, mm: one diameter of M4 (common practice).
const PAD_HOLDS_MM: f64 = 4.0;

/// Pad left under the point of its screw, mm (common practice).
const PAD_LEFT_MM: f64 = 1.0;

/// How deep a pad's screw from inside goes into it, at least and at most, mm; `None` for a pad so low that no length
/// sold holds in it and stays inside it: such a pad is stuck on, as low ones are sold (common practice).
#[must_use]
pub fn pad_depth_mm(spec: &FeetSpec, floor_mm: f64) -> Option<[f64; 2]> {
    let depth = [PAD_HOLDS_MM, spec.height_mm - PAD_LEFT_MM];
    let [least, most] = depth.map(|depth| floor_mm + washer(Thread::M4).thickness_mm + depth);
    sold_length_between_mm(Thread::M4, least, most).map(|_| depth)
}

/// Whether the feet are pads that nothing but their own glue holds: the floor gets no hole for them.
#[must_use]
pub fn are_stuck(spec: &FeetSpec, floor_mm: f64) -> bool {
    spec.kind == FeetKind::Pads && pad_depth_mm(spec, floor_mm).is_none()
}

/// The thread that a foot's hole is for; `None` where it has no hole.
#[must_use]
pub fn thread(spec: &FeetSpec, floor_mm: f64) -> Option<Thread> {
    match spec.kind {
        FeetKind::Bolts | FeetKind::Spikes => Some(Thread::M6),
        FeetKind::Pads if !are_stuck(spec, floor_mm) => Some(Thread::M4),
        FeetKind::Pads | FeetKind::None => None,
    }
}

/// A foot's parts above the floor: side and height, mm; 0 where it has none.
#[must_use]
pub fn above_floor(spec: &FeetSpec, floor_mm: f64) -> [f64; 2] {
    match spec.kind {
        FeetKind::Bolts | FeetKind::Spikes => [NUT_SIDE_MM, NUT_HEIGHT_MM],
        // M4 washer 9 outside (ISO 7089).
        FeetKind::Pads if !are_stuck(spec, floor_mm) => [9.0, PAD_SCREW_HEIGHT_MM],
        FeetKind::Pads | FeetKind::None => [0.0, 0.0],
    }
}

/// Height of a hexagon bolt's head, mm: M6, ISO 4017 (from memory: measure yours).
pub const BOLT_HEAD_MM: f64 = 4.0;

/// What lies between the head of a foot's bolt and the nut above the floor, mm: free length, floor, a washer.
#[must_use]
pub fn bolt_clamped_mm(spec: &FeetSpec, floor_mm: f64) -> f64 {
    free_mm(spec) + floor_mm + washer(Thread::M6).thickness_mm
}

/// Free length of a bolt or spike below the floor, mm.
#[must_use]
pub fn free_mm(spec: &FeetSpec) -> f64 {
    if spec.kind == FeetKind::Bolts { (spec.height_mm - BOLT_HEAD_MM).max(0.0) } else { 0.0 }
}

/// How far the end of a bolt or spike, in the length that is sold, stands above the floor, mm; 0 for other feet.
#[must_use]
pub fn bolt_end_mm(spec: &FeetSpec, floor_mm: f64) -> f64 {
    if !matches!(spec.kind, FeetKind::Bolts | FeetKind::Spikes) {
        return 0.0;
    }
    let least = required_length_mm(bolt_clamped_mm(spec, floor_mm), Thread::M6, 0, true);
    sold_length_between_mm(Thread::M6, least, f64::INFINITY).unwrap_or(least) - free_mm(spec) - floor_mm
}

/// One foot at a place of the floor; `floor_z` are the floor's lower and upper faces.
#[must_use]
pub fn part(spec: &FeetSpec, number: usize, at: [f64; 2], floor_z: [f64; 2]) -> Part {
    let [side, height] = above_floor(spec, floor_z[1] - floor_z[0]);
    // Below: a bolt head or nut with its washer, a pad of 20 mm, a spike's collar (from memory: measure yours).
    let below = if spec.kind == FeetKind::Pads { 20.0 } else { NUT_SIDE_MM };
    let square = |side: f64, z: [f64; 2]| {
        Aabb::new([at[0] - side / 2.0, at[1] - side / 2.0, z[0]], [at[0] + side / 2.0, at[1] + side / 2.0, z[1]])
    };
    let mut bodies = vec![square(below, [floor_z[0] - spec.height_mm, floor_z[0]])];
    if height > 0.0 {
        bodies.push(square(side, [floor_z[1], floor_z[1] + height]));
    }
    Part {
        id: format!("foot-{number}"),
        kind: PartKind::Foot,
        label: format!("Foot {number}"),
        carrier: Carrier::Chassis,
        bodies,
        keep_clear: Vec::new(),
    }
}
