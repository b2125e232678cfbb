//! Fasteners in `build.json`: what to buy, and each screw in its place.

use serde::Serialize;

use super::number::{Number, Numbers, numbers};
use crate::fastening::{Fastener, Screw};

#[derive(Serialize)]
pub(super) struct FastenerEntry<'a> {
    what: &'a str,
    count: usize,
    length_mm: Option<Number>,
    joins: &'a [String],
}

#[derive(Serialize)]
pub(super) struct ScrewEntry<'a> {
    id: &'a str,
    what: &'a str,
    thread: &'static str,
    diameter_mm: Number,
    head_mm: Numbers,
    direction: Numbers,
    clamped_mm: Number,
    least_mm: Number,
    most_mm: Option<Number>,
    length_mm: Option<Number>,
    nut: bool,
    washers: u8,
    joins: &'a [String],
    source: String,
}

pub(super) fn fastener(line: &Fastener) -> FastenerEntry<'_> {
    FastenerEntry { what: &line.what, count: line.count, length_mm: line.length_mm.map(Number), joins: &line.joins }
}

pub(super) fn screw(screw: &Screw) -> ScrewEntry<'_> {
    ScrewEntry {
        id: &screw.id,
        what: &screw.what,
        thread: screw.thread,
        diameter_mm: Number(screw.diameter_mm),
        head_mm: numbers(screw.head_at),
        direction: numbers(screw.direction),
        clamped_mm: Number(screw.clamped_mm),
        least_mm: Number(screw.least_mm),
        most_mm: screw.most_mm.map(Number),
        length_mm: screw.length_mm.map(Number),
        nut: screw.nut,
        washers: screw.washers,
        joins: &screw.joins,
        source: screw.source.cite(),
    }
}
