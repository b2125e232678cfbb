//! No two things in one place: part against part, part against panel, nothing outside the case.
//!
//! These rules come last in the list. They say nothing about a pair of which a more exact rule has already said that it
//! blocks.

use super::finding::Finding;
use super::mend::Remedy;
use super::more_room::{elsewhere, stands_fast};
use super::rule::Rule;
use super::scene::{Scene, Sheet, face, outward};
use super::unknowns::measure_socket;
use super::words;
use crate::design::Wall;
use crate::dimensions::source::Source;
use crate::panels::{Feature, Purpose};
use crate::parts::{Part, PartKind};
use crate::solid::{Aabb, TOUCH_MM};

const SPACE: Source = Source::derived("Geometry of the design", "two solids cannot share space");

pub(super) const PART_OVERLAPS_PART: Rule = Rule {
    name: "part-overlaps-part",
    what: "No two parts share space, hardware included.",
    source: SPACE,
    look: part_overlaps_part,
};

pub(super) const PART_CROSSES_PANEL: Rule = Rule {
    name: "part-crosses-panel",
    what: "No part passes through a panel but through an opening made for it.",
    source: SPACE,
    look: part_crosses_panel,
};

pub(super) const PART_OUTSIDE_CASE: Rule = Rule {
    name: "part-outside-case",
    what: "Nothing stands outside the case but feet, rims of buttons and connectors, and the card's tab.",
    source: SPACE,
    look: part_outside_case,
};

pub(super) const BRACKET_HITS_PART: Rule = Rule {
    name: "bracket-hits-part",
    what: "Brackets, captive nuts and washers stay clear of everything else.",
    source: SPACE,
    look: bracket_hits_part,
};

/// Whether an opening is made for parts of a kind to pass through.
pub(super) fn admits(feature: &Feature, kind: PartKind) -> bool {
    matches!(
        (feature.purpose, kind),
        (Purpose::CardWindow, PartKind::CardBracket | PartKind::Shelf)
            | (Purpose::TongueRelief, PartKind::CardBracket)
            | (Purpose::IoAperture | Purpose::ShieldRebate, PartKind::Board)
            | (Purpose::SupplyOpening, PartKind::Supply)
            | (Purpose::FanOpening, PartKind::Fan)
            | (Purpose::Button | Purpose::ButtonCounterbore, PartKind::Button)
            | (Purpose::Port | Purpose::PortCounterbore, PartKind::Port)
            | (Purpose::BrickJack, PartKind::Jack)
            | (Purpose::Foot, PartKind::Foot)
            | (Purpose::BoardStandoff, PartKind::Standoff)
    )
}

/// Deepest shared space of two parts: depth along each axis of the pair of bodies that share most, and where.
pub(super) fn shared(one: &Part, other: &Part) -> Option<(Aabb, f64)> {
    let mut deepest: Option<(Aabb, f64)> = None;
    for a in &one.bodies {
        for b in &other.bodies {
            let depth = a.overlap_depth(b);
            if depth > 0.0 && deepest.is_none_or(|(_, most)| depth > most) {
                deepest = Some((a.intersection(b), depth));
            }
        }
    }
    deepest
}

const WAYS: [&str; 3] = ["left to right", "front to back", "in height"];

/// The axis along which two solids are parted soonest.
fn easiest_axis(common: &Aabb) -> usize {
    let size = common.size();
    (0..3).min_by(|a, b| size[*a].total_cmp(&size[*b])).unwrap_or(0)
}

fn is_hardware(part: &Part) -> bool {
    matches!(part.kind, PartKind::Bracket | PartKind::CaptiveNut | PartKind::Block | PartKind::Washer)
}

/// Every pair of parts that shares space.
fn pairs<'a>(scene: &Scene<'a>) -> Vec<(&'a Part, &'a Part, Aabb, f64)> {
    let parts = scene.case.parts;
    let mut found = Vec::new();
    for (index, one) in parts.iter().enumerate() {
        for (offset, other) in parts[index + 1..].iter().enumerate() {
            if scene.bounds[index].overlaps(&scene.bounds[index + 1 + offset])
                && let Some((common, depth)) = shared(one, other)
            {
                found.push((one, other, common, depth));
            }
        }
    }
    found
}

fn clash(scene: &Scene, rule: &Rule, one: &Part, other: &Part, common: &Aabb, depth: f64) -> Finding {
    let axis = easiest_axis(common);
    let (a, b) = (words::part(one), words::part(other));
    rule.blocks(format!(
        "{} and {b} are in the same place: they share {} {}.",
        words::capital(&a),
        words::short(depth),
        WAYS[axis]
    ))
    .with_mm(-depth, 0.0)
    .with_about([&one.id, &other.id])
    .with_at(common.centre())
    .with_mends(apart(scene, one, other))
}

/// What the maker can do about either of two parts, said once where it is the same.
fn apart(scene: &Scene, one: &Part, other: &Part) -> Remedy {
    let (first, second) = (elsewhere(one), elsewhere(other));
    let second = second.filter(|words| Some(words) != first.as_ref());
    // The cooler stands where the processor is taken to sit; what else stands on the board is less of a guess.
    let guessed = [one, other].iter().any(|part| part.kind == PartKind::Cooler)
        && [one, other].iter().any(|part| matches!(part.kind, PartKind::Board | PartKind::Memory | PartKind::Card));
    let socket = measure_socket(scene).filter(|_| guessed);
    Remedy::new().say_if(socket).say_if(first).say_if(second).otherwise("make the case larger")
}

fn part_overlaps_part(scene: &Scene, found: &mut Vec<Finding>) {
    let mut new = Vec::new();
    for (one, other, common, depth) in pairs(scene) {
        if !found.iter().any(|finding| finding.blocks_both(&one.id, &other.id)) {
            new.push(clash(scene, &PART_OVERLAPS_PART, one, other, &common, depth));
        }
    }
    found.append(&mut new);
}

fn bracket_hits_part(scene: &Scene, found: &mut Vec<Finding>) {
    for (one, other, common, depth) in pairs(scene) {
        let (hardware, hit) = match (is_hardware(one), is_hardware(other)) {
            (true, _) => (one, other),
            (_, true) => (other, one),
            _ => continue,
        };
        found.push(clash(scene, &BRACKET_HITS_PART, hardware, hit, &common, depth));
    }
}

/// The part of a body that lies in a sheet's thickness, and how far it would have to move to come out on the inside.
fn bite(sheet: &Sheet, solid: &Aabb) -> (Aabb, f64) {
    let (axis, sense) = outward(sheet.wall());
    let inside = face(&sheet.solid, axis, -sense);
    let into = (face(solid, axis, sense) - inside) * sense;
    (solid.intersection(&sheet.solid), into)
}

/// Whether a body passes through a sheet where no opening is made for it.
pub(super) fn crosses(sheet: &Sheet, part: &Part, solid: &Aabb) -> bool {
    sheet.crossing(solid, |feature| admits(feature, part.kind)) > 0.0
}

fn part_crosses_panel(scene: &Scene, found: &mut Vec<Finding>) {
    let mut new = Vec::new();
    for (part, bounds) in scene.case.parts.iter().zip(&scene.bounds) {
        for sheet in scene.sheets.iter().filter(|sheet| sheet.solid.overlaps(bounds)) {
            let worst = part
                .bodies
                .iter()
                .filter(|solid| crosses(sheet, part, solid))
                .map(|solid| bite(sheet, solid))
                .max_by(|a, b| a.1.total_cmp(&b.1));
            let Some((common, into)) = worst else { continue };
            if found.iter().any(|finding| finding.blocks_both(&part.id, sheet.id())) {
                continue;
            }
            let (name, panel) = (words::part(part), words::the_panel(sheet.wall()));
            new.push(
                PART_CROSSES_PANEL
                    .blocks(format!(
                        "{} reaches {} into {panel}, and no opening there is made for it.",
                        words::capital(&name),
                        words::short(into)
                    ))
                    .with_mm(-into, 0.0)
                    .with_about([part.id.as_str(), sheet.id()])
                    .with_at(common.centre())
                    .with_mends(inward(scene, part, sheet.wall(), into)),
            );
        }
    }
    found.append(&mut new);
}

/// Ways to get a part `by` further in from a panel: a larger case, unless the part goes with the case's
/// walls, or another place for the part.
fn inward(scene: &Scene, part: &Part, wall: Wall, by: f64) -> Remedy {
    let hangs = matches!(part.kind, PartKind::Fan | PartKind::Drive);
    let grows = stands_fast(scene, part) && !hangs;
    let remedy = if grows { Remedy::new().further_out(scene, wall, by) } else { Remedy::new() };
    remedy.say_if(elsewhere(part)).otherwise("make the case larger")
}

/// How far beyond the outside box a part may stand out of a wall.
fn may_stand_out(kind: PartKind, wall: Wall) -> bool {
    match kind {
        PartKind::Foot => wall == Wall::Floor,
        PartKind::Button | PartKind::Port => true,
        PartKind::Jack | PartKind::CardBracket | PartKind::Shelf => wall == Wall::Back,
        _ => false,
    }
}

/// Air left below what comes out of the floor, mm (common practice: tables are not flat).
const BELOW_TONGUE_MM: f64 = 1.0;

/// A tongue that comes out below the floor: no matter where the feet hold it off the table.
fn tongue_below(scene: &Scene, bracket: &Part, over: f64) -> Finding {
    let spec = scene.case.spec;
    let text = format!("The tongue of the card's bracket comes {} out below the floor.", words::short(over));
    let clear = spec.feet.height_mm >= over + BELOW_TONGUE_MM - TOUCH_MM;
    let finding = if clear { PART_OUTSIDE_CASE.caution(text) } else { PART_OUTSIDE_CASE.blocks(text) };
    let remedy = Remedy::new().at_least("board.standoff", spec.board.standoff_mm + over, |height| {
        format!("take standoffs of {height} or more")
    });
    let remedy = if clear { remedy } else { remedy.say("take higher feet") };
    finding.with_mm(-over, 0.0).with_about([bracket.id.as_str(), "floor"]).with_mends(remedy)
}

fn part_outside_case(scene: &Scene, found: &mut Vec<Finding>) {
    let outside = scene.case.arrangement.case.outside_mm;
    let walls = [[Wall::Left, Wall::Right], [Wall::Front, Wall::Back], [Wall::Floor, Wall::Top]];
    let mut new = Vec::new();
    for (part, bounds) in scene.case.parts.iter().zip(&scene.bounds) {
        for axis in 0..3 {
            let over = [-bounds.min[axis], bounds.max[axis] - outside[axis]];
            for (side, over) in over.into_iter().enumerate() {
                let wall = walls[axis][side];
                if over <= TOUCH_MM
                    || may_stand_out(part.kind, wall)
                    || found.iter().any(|finding| finding.blocks_both(&part.id, wall.name()))
                {
                    continue;
                }
                let name = words::part(part);
                let mut at = bounds.centre();
                at[axis] = if side == 0 { bounds.min[axis] } else { bounds.max[axis] };
                if part.kind == PartKind::CardBracket && wall == Wall::Floor {
                    new.push(tongue_below(scene, part, over).with_at(at));
                    continue;
                }
                new.push(
                    PART_OUTSIDE_CASE
                        .blocks(format!(
                            "{} stands {} out of the case, past {}.",
                            words::capital(&name),
                            words::short(over),
                            words::the_panel(wall)
                        ))
                        .with_mm(-over, 0.0)
                        .with_about([part.id.as_str(), wall.name()])
                        .with_at(at)
                        .with_mends(inward(scene, part, wall, over)),
                );
            }
        }
    }
    found.append(&mut new);
}
