//! Blocks that are glued in where brackets found no place.

use super::super::bench::Bench;
use super::super::corner::axis_along;
use super::super::joints;
use super::super::site::Site;
use super::{Wanted, clear_of_sliding};
use crate::parts::{Part, PartKind};

/// Fewer hold no joint: it turns on one (common practice).
const BRACKETS_LEAST: usize = 2;

/// Two side by side hold a corner no better than one: further apart than this share of its length they do (common
/// practice).
const APART: f64 = 0.25;

/// Where too few brackets of a joint found a place, blocks are glued into the corner as far as there is room for them:
/// first each in the part of the corner that its bracket was to hold, then anywhere well beside what holds already. They
/// are lower than a bracket's leg, and no nut stands on them.
pub(super) fn blocks(bench: &mut Bench, site: &mut Site, all: &[Wanted]) {
    for anywhere in [false, true] {
        for wanted in all.iter().filter(|wanted| wanted.kind == PartKind::Bracket) {
            let Some(missing) = bench.unplaced.iter().position(|unplaced| unplaced.id == wanted.id) else { continue };
            let Some(spot) = wanted.spots.first() else { continue };
            let own = |part: &&Part| joints::stem(&part.id) == joints::stem(&wanted.id);
            let of = |kind: PartKind| bench.hardware.iter().filter(own).filter(|part| part.kind == kind).count();
            let (brackets, blocks) = (of(PartKind::Bracket), of(PartKind::Block));
            // A joint that is glued anyway gets all it can hold.
            if blocks == 0 && brackets >= BRACKETS_LEAST || anywhere && brackets + blocks >= BRACKETS_LEAST {
                continue;
            }
            let axis = axis_along(spot.walls);
            let held: Vec<f64> = bench.hardware.iter().filter(own).map(|part| part.bounds().centre()[axis]).collect();
            let ranges = if anywhere { beside(clear_of_sliding(bench, spot.walls), &held) } else { vec![spot.range] };
            let id = wanted.id.replacen("bracket", "block", 1);
            if ranges.into_iter().any(|range| joints::block(bench, site, spot.walls, range, &id)) {
                bench.unplaced.remove(missing);
            }
        }
    }
}

/// The stretches of a corner that lie well beside what holds it already.
fn beside([from, to]: [f64; 2], held: &[f64]) -> Vec<[f64; 2]> {
    let apart = (to - from) * APART;
    held.iter().fold(vec![[from, to]], |ranges, at| {
        let halves =
            ranges.into_iter().flat_map(|[low, high]| [[low, high.min(at - apart)], [low.max(at + apart), high]]);
        halves.filter(|[low, high]| low < high).collect()
    })
}
