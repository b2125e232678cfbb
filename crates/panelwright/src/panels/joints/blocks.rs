//! Locating blocks: square strips of wood glued into the corner of a butt joint.

use super::super::bench::Bench;
use super::super::corner::axis_along;
use super::super::panel::{Assembly, Feature, Purpose};
use super::super::sheet::covers_nothing;
use super::super::site::{AIR_MM, Site};
use super::super::{Unplaced, sleeve};
use crate::design::{IoOpening, Joint, SeamSpec, Wall};
use crate::dimensions::boards::{IO_BORDER, UNDERSIDE_LEADS};
use crate::dimensions::joints::{CASE_IS_LIFTED_BY, FACE_SHEAR, JOINT_SAFETY};
use crate::dimensions::margins::BESIDE_PART;
use crate::drawing::number::format_number;
use crate::fastening::Fastener;
use crate::parts::{Carrier, Part, PartKind};
use crate::solid::{Aabb, smaller};

/// Lengths tried for each block, mm, the longest that fits (*common practice*: glue wants length; a short block still
/// locates).
const LENGTHS_MM: [f64; 4] = [60.0, 40.0, 25.0, 15.0];

/// Sides of thinner strips, mm, tried where no block of the maker's thickness fits: below a low board, before a supply
/// (*common practice*: wooden strips are sold so).
const THIN_MM: [f64; 6] = [10.0, 8.0, 6.0, 5.0, 4.0, 3.0];

/// The thinnest strip that stands in for a block, mm.
pub(crate) const THINNEST_MM: f64 = THIN_MM[THIN_MM.len() - 1];

/// Lengths tried for each thinner strip, mm, the longest that fits: it holds by its length (*common practice*).
const THIN_LENGTHS_MM: [f64; 6] = [100.0, 80.0, 60.0, 45.0, 25.0, 15.0];

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

/// The narrower of its glued faces that a thin strip needs, mm²: two of them bear what a glued corner should.
fn face_least_mm2() -> f64 {
    CASE_IS_LIFTED_BY.get() * JOINT_SAFETY.get() / FACE_SHEAR.get() / 2.0
}

/// A block's section: how far it reaches from each of its two panels, and the lengths to try.
struct Section {
    sides_mm: [f64; 2],
    lengths_mm: &'static [f64],
}

/// The sections to try, the thickest first. A thin strip keeps its width on one of its panels where it can.
fn sections(block_mm: f64) -> impl Iterator<Item = Section> {
    let whole = Section { sides_mm: [block_mm; 2], lengths_mm: &LENGTHS_MM };
    let thin = THIN_MM.into_iter().filter(move |thin| *thin < block_mm).flat_map(move |thin| {
        [[thin, block_mm], [block_mm, thin], [thin, thin]]
            .map(|sides_mm| Section { sides_mm, lengths_mm: &THIN_LENGTHS_MM })
    });
    std::iter::once(whole).chain(thin)
}

/// Glues a block into a stretch of a corner, the thickest and longest that finds room; false where none does.
pub(in super::super) fn block(bench: &mut Bench, site: &mut Site, walls: [Wall; 2], range: [f64; 2], id: &str) -> bool {
    let axis = axis_along(walls);
    let carrier = match sleeve::assembly(walls[0]) {
        Assembly::Chassis => Carrier::Chassis,
        Assembly::Sleeve => Carrier::Sleeve,
    };
    let Some((block, section)) = place(bench, site, walls, range, carrier) else { return false };
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
    let [thin, wide] = [section.sides_mm[0].min(section.sides_mm[1]), section.sides_mm[0].max(section.sides_mm[1])];
    let name = format!("Locating block {} × {}", format_number(thin, 2), format_number(wide, 2));
    bench.loose.push(Fastener::new(&name, 1, Some(length), walls.map(|wall| wall.name())));
    true
}

/// The first free place of a block between two ends of a corner.
fn place(
    bench: &Bench,
    site: &Site,
    walls: [Wall; 2],
    [low, high]: [f64; 2],
    carrier: Carrier,
) -> Option<(Aabb, Section)> {
    let case = &bench.arrangement.case;
    let axis = axis_along(walls);
    let beside = BESIDE_PART.get()[0] - AIR_MM;
    // The board's leads come down to what lies below it.
    let (_, _, top) = case.inner(Wall::Top);
    let with_air = |block: &Aabb| {
        let mut room = *block;
        room.max[2] = (room.max[2] + UNDERSIDE_LEADS.get()).min(top).max(block.max[2]);
        // What is let down beside it, such as a card, scrapes on nothing.
        for (across, sense, _) in walls.map(|wall| case.inner(wall)) {
            match across {
                2 => {}
                _ if sense > 0.0 => room.max[across] += beside,
                _ => room.min[across] -= beside,
            }
        }
        room
    };
    let body = |sides: [f64; 2], [from, to]: [f64; 2]| {
        let mut body = Aabb::new([0.0; 3], [0.0; 3]);
        for (index, wall) in walls.into_iter().enumerate() {
            let (across, sense, at) = case.inner(wall);
            let end = at + sense * sides[index];
            body.min[across] = at.min(end);
            body.max[across] = at.max(end);
        }
        body.min[axis] = from;
        body.max[axis] = to;
        body
    };
    let near = site.near(&with_air(&body([bench.spec.making.block_mm; 2], [low, high])), carrier);
    let middle = (low + high) / 2.0;
    for section in sections(bench.spec.making.block_mm) {
        let [one, other] = section.sides_mm;
        let whole = one == bench.spec.making.block_mm && one == other;
        for length in section.lengths_mm.iter().copied().filter(|length| *length <= high - low) {
            if !whole && length * smaller(one, other) < face_least_mm2() {
                break;
            }
            let steps = f64::floor((high - low - length) / 2.0 / STEP_MM) as i32;
            let found = (0..=2 * steps)
                .map(|step| {
                    // From the middle outward, to both sides in turn.
                    let by = f64::from((step + 1) / 2) * STEP_MM;
                    let at = if step % 2 == 0 { middle + by } else { middle - by };
                    body(section.sides_mm, [at - length / 2.0, at + length / 2.0])
                })
                .find(|block| {
                    near.is_free(&with_air(block)) && walls.iter().all(|wall| lies_on_sheet(bench, *wall, block))
                });
            if let Some(block) = found {
                return Some((block, section));
            }
        }
    }
    None
}

/// Whether a block covers no opening of a panel, nor the border that a shield clips to.
fn lies_on_sheet(bench: &Bench, wall: Wall, block: &Aabb) -> bool {
    let panel = bench.panel(wall);
    let shielded = bench.spec.board.io_opening == IoOpening::Rebate;
    let border = |feature: &&Feature| shielded && feature.purpose == Purpose::IoAperture;
    covers_nothing(panel, block)
        && panel.features.iter().find(border).is_none_or(|aperture| {
            let kept = aperture.contour.bbox().inflate(IO_BORDER.get(), IO_BORDER.get());
            let common = kept.intersect(panel.frame.shadow(block));
            common.width() <= 0.0 || common.height() <= 0.0
        })
}
