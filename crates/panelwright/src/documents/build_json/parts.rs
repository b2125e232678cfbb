//! Parts in `build.json`.

use serde::Serialize;

use super::number::{Numbers, numbers};
use crate::parts::{KeepClear, Part};

#[derive(Serialize)]
pub(super) struct PartEntry<'a> {
    id: &'a str,
    kind: &'static str,
    label: &'a str,
    carrier: &'static str,
    bodies_mm: Vec<Numbers>,
    keep_clear_mm: Vec<Numbers>,
    keep_clear_for: Vec<ZoneEntry>,
}

/// What the zone at the same place of `keep_clear_mm` is for.
#[derive(Serialize)]
struct ZoneEntry {
    purpose: &'static str,
    source: String,
}

pub(super) fn entry(part: &Part) -> PartEntry<'_> {
    PartEntry {
        id: &part.id,
        kind: part.kind.name(),
        label: &part.label,
        carrier: part.carrier.name(),
        bodies_mm: part.bodies.iter().map(|body| numbers(body.flat())).collect(),
        keep_clear_mm: part.keep_clear.iter().map(|room| numbers(room.zone.flat())).collect(),
        keep_clear_for: part.keep_clear.iter().map(zone).collect(),
    }
}

fn zone(room: &KeepClear) -> ZoneEntry {
    ZoneEntry { purpose: room.purpose, source: room.source.cite() }
}
