//! Locating blocks: square strips of wood glued into the corner of a butt joint.

use super::super::bench::Bench;
use super::super::corner::axis_along;
use super::super::panel::Assembly;
use super::super::sheet::covers_nothing;
use super::super::site::Site;
use super::super::{Unplaced, sleeve};
use crate::design::{Joint, SeamSpec, Wall};
use crate::dimensions::boards::UNDERSIDE_LEADS;
use crate::drawing::number::format_number;
use crate::fastening::Fastener;
use crate::parts::{Carrier, Part, PartKind};
use crate::solid::Aabb;

/// Lengths tried for each block, mm, the longest that fits (*common practice*: glue wants length; a short block still
/// locates).
const LENGTHS_MM: [f64; 4] = [60.0, 40.0, 25.0, 15.0];

/// Steps in which a place is looked for, mm.
const STEP_MM: f64 = 5.0;

/// From here on a corner gets three blocks rather than two, mm (*common practice*).
const THIRD_FROM_MM: f64 = 250.0;

/// Places the blocks of every glued butt joint.
pub(in super::super) fn features(bench: &mut Bench, site: &mut Site) {
    for seam in bench.arrangement.case.joints.seams {
        if seam.joint == Joint::Blocks {
            of_seam(bench, site, &seam);
        }
    }
}

fn of_seam(bench: &mut Bench, site: &mut Site, seam: &SeamSpec) {
    let walls = seam.seam.walls();
    let [from, to] = super::super::hardware::clear_of_sliding(bench, walls);
    let count = if to - from > THIRD_FROM_MM { 3 } else { 2 };
    for index in 0..count {
        let share = (to - from) / count as f64;
        let range = [from + share * index as f64, from + share * (index + 1) as f64];
        let id = format!("block-{}-{}-{}", walls[0].name(), walls[1].name(), index + 1);
        if !block(bench, site, walls, range, &id) {
            bench.unplaced.push(Unplaced { id, walls });
        }
    }
}

/// Glues a block into a stretch of a corner, the longest that finds room; false where none does.
pub(in super::super) fn block(
    bench: &mut Bench,
    site: &mut Site,
    walls: [Wall; 2],
    [low, high]: [f64; 2],
    id: &str,
) -> bool {
    let case = bench.arrangement.case;
    let axis = axis_along(walls);
    let carrier = match sleeve::assembly(walls[0]) {
        Assembly::Chassis => Carrier::Chassis,
        Assembly::Sleeve => Carrier::Sleeve,
    };
    let size = bench.spec.making.block_mm;
    let body = |middle: f64, length: f64| {
        let (mut low, mut high) = ([0.0; 3], [0.0; 3]);
        for wall in walls {
            let (across, sense, at) = case.inner(wall);
            low[across] = at;
            high[across] = at + sense * size;
        }
        low[axis] = middle - length / 2.0;
        high[axis] = middle + length / 2.0;
        Aabb::new(low, high)
    };
    // The board's leads come down to what lies below it.
    let (_, _, top) = case.inner(Wall::Top);
    let with_air = |block: &Aabb| {
        let mut room = *block;
        room.max[2] = (room.max[2] + UNDERSIDE_LEADS.get()).min(top).max(block.max[2]);
        room
    };
    let found = LENGTHS_MM.into_iter().filter(|length| *length <= high - low).find_map(|length| {
        let middle = (low + high) / 2.0;
        let half = (high - low - length) / 2.0;
        let steps = f64::floor(half / STEP_MM) as i32;
        (0..=2 * steps)
            .map(|step| {
                // From the middle outward, to both sides in turn.
                let by = f64::from((step + 1) / 2) * STEP_MM;
                body(if step % 2 == 0 { middle + by } else { middle - by }, length)
            })
            .find(|block| {
                site.is_free(&[with_air(block)], carrier)
                    && walls.iter().all(|wall| covers_nothing(bench.panel(*wall), block))
            })
    });
    let Some(block) = found else { return false };
    let part = Part {
        id: id.to_owned(),
        kind: PartKind::Block,
        label: "Locating block".to_owned(),
        carrier,
        bodies: vec![block],
        keep_clear: Vec::new(),
    };
    site.add(&part);
    bench.hardware.push(part);
    let length = block.size()[axis];
    let side = format_number(size, 2);
    let name = format!("Locating block {side} × {side}");
    bench.loose.push(Fastener::new(&name, 1, Some(length), walls.map(|wall| wall.name())));
    true
}
