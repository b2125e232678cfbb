//! Drives.

use super::DrivePlace;
use crate::design::{DriveKind, DriveSpec};
use crate::dimensions::drives;
use crate::parts::{Carrier, KeepClear, Part, PartKind};
use crate::solid::Aabb;

/// Thickness of one washer under a drive, mm: M3, ISO 7089 (0.5 nominal).
pub const WASHER_MM: f64 = 0.5;

/// The tables' name of a drive's width class.
#[must_use]
pub const fn table_kind(kind: DriveKind) -> drives::DriveKind {
    match kind {
        DriveKind::Inch2_5 => drives::DriveKind::Small,
        DriveKind::Inch3_5 => drives::DriveKind::Large,
    }
}

/// Width across, greatest length, height.
#[must_use]
pub fn size(spec: &DriveSpec) -> [f64; 3] {
    let body = drives::body(table_kind(spec.kind));
    [body.width_mm, body.length_max_mm, spec.height_mm]
}

/// Room behind its connector end.
#[must_use]
pub fn plug_room(spec: &DriveSpec) -> crate::dimensions::source::Sourced<f64> {
    drives::plug_room(spec.plug.table())
}

/// The drive in its place.
#[must_use]
pub fn part(spec: &DriveSpec, place: &DrivePlace) -> Part {
    let [width, length, height] = size(spec);
    let room = plug_room(spec);
    Part {
        id: format!("drive-{}", spec.number),
        kind: PartKind::Drive,
        label: match spec.kind {
            DriveKind::Inch2_5 => format!("Drive {}, 2.5 in", spec.number),
            DriveKind::Inch3_5 => format!("Drive {}, 3.5 in", spec.number),
        },
        carrier: Carrier::Chassis,
        bodies: vec![Aabb::new(place.to_case(0.0, 0.0, 0.0), place.to_case(width, length, height))],
        keep_clear: vec![KeepClear {
            zone: Aabb::new(place.to_case(0.0, 0.0, 0.0), place.to_case(width, -room.get(), height)),
            purpose: "the drive's plugs and their bend",
            source: room.source(),
        }],
    }
}
