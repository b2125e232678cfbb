//! Brackets and captive nuts that found no free place.

use super::bracket_holes::is_off_leg;
use super::finding::Finding;
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{Joint, SizeRule, Wall};
use crate::dimensions::boards::IO_Z;
use crate::dimensions::source::Source;
use crate::panels::{Unplaced, stem as seam_of};
use crate::parts::{Part, PartKind};
use crate::solid::TOUCH_MM;

pub(super) const BRACKET_WITHOUT_PLACE: Rule = Rule {
    name: "bracket-without-place",
    what: "Every joint keeps at least one of its brackets, better all.",
    source: Source::common_practice("Workshop custom", "two brackets on each joint, a third on long ones"),
    look: bracket_without_place,
};

/// An id without its number at the end: alike hardware of one joint.
fn stem(id: &str) -> &str {
    id.trim_end_matches(|end: char| end.is_ascii_digit()).trim_end_matches('-')
}

/// What hardware of a joint is, by the start of its id.
fn kind(joint: &str) -> PartKind {
    match joint.split('-').next() {
        Some("captive") => PartKind::CaptiveNut,
        Some("block") => PartKind::Block,
        _ => PartKind::Bracket,
    }
}

/// Room above a bracket's leg below the connector opening, mm (common practice).
const BELOW_OPENING_MM: f64 = 0.5;

/// Between floor and back a low board is in the way, with the opening for its connectors: higher standoffs leave the
/// brackets their room below both.
fn above_it(scene: &Scene, missing: &Unplaced, kind: PartKind, placed: usize) -> Remedy {
    let remedy = Remedy::new();
    let spec = scene.case.spec;
    let leg = match kind {
        PartKind::Block => spec.making.block_mm,
        _ => spec.hardware.bracket.leg_mm,
    };
    let least = leg - IO_Z.get()[0] + BELOW_OPENING_MM;
    // With two of three the joint holds: nothing need be taken anew for the third.
    let low = placed < 2 && missing.walls == [Wall::Floor, Wall::Back] && spec.board.standoff_mm < least - TOUCH_MM;
    if !low {
        remedy
    } else if matches!(spec.size, SizeRule::Given(_)) {
        // What stands beside the board in a case that does not grow may be in the way as well.
        remedy.say("take higher standoffs")
    } else {
        remedy.at_least("board.standoff", least, |height| format!("take standoffs of {height} or more"))
    }
}

/// Says where blocks are glued in because brackets found no place.
fn blocks_instead(scene: &Scene, found: &mut Vec<Finding>) {
    for seam in scene.case.arrangement.case.joints.seams.iter().filter(|seam| seam.joint == Joint::Brackets) {
        let walls = seam.seam.walls();
        let name = format!("{}-{}", walls[0].name(), walls[1].name());
        let blocks: Vec<&Part> = scene.of(PartKind::Block).filter(|part| seam_of(&part.id) == name).collect();
        let Some(first) = blocks.first() else { continue };
        let brackets = scene.of(PartKind::Bracket).filter(|part| seam_of(&part.id) == name).count();
        let [a, b] = walls.map(words::the_panel);
        let text = if blocks.len() == 1 {
            format!("A bracket between {a} and {b} finds no free place: a locating block is glued there instead.")
        } else {
            format!(
                "{} brackets between {a} and {b} find no free place: locating blocks are glued there instead.",
                blocks.len()
            )
        };
        found.push(
            BRACKET_WITHOUT_PLACE
                .note(text)
                .with_counts(brackets, brackets + blocks.len())
                .with_remedy("Cut the blocks of the list and glue them in, or make the case larger.")
                .with_about(blocks.iter().map(|part| part.id.as_str()))
                .with_at(first.bounds().centre()),
        );
    }
}

fn bracket_without_place(scene: &Scene, found: &mut Vec<Finding>) {
    blocks_instead(scene, found);
    let mut told: Vec<&str> = Vec::new();
    for missing in scene.case.unplaced {
        let joint = stem(&missing.id);
        let kind = kind(joint);
        // Hardware whose holes are off its legs has no place anywhere, and no other place would help.
        if told.contains(&joint) || is_off_leg(scene.case.spec, kind) {
            continue;
        }
        told.push(joint);
        let alike = |unplaced: &&Unplaced| stem(&unplaced.id) == joint;
        let count = scene.case.unplaced.iter().filter(alike).count();
        let placed = scene
            .case
            .parts
            .iter()
            .filter(|part| {
                match part.kind {
                    PartKind::Bracket | PartKind::CaptiveNut => stem(&part.id) == joint,
                    // Blocks stand in for brackets, too.
                    PartKind::Block => kind != PartKind::CaptiveNut && seam_of(&part.id) == seam_of(&missing.id),
                    _ => false,
                }
            })
            .count();
        let (what, smaller) = match kind {
            PartKind::CaptiveNut => ("captive nut", "take a smaller captive-nut bracket"),
            PartKind::Block => ("locating block", "take thinner locating blocks"),
            _ => ("bracket", "take smaller brackets"),
        };
        let [a, b] = missing.walls.map(words::the_panel);
        let (start, verb) =
            if count == 1 { (format!("One {what}"), "finds") } else { (format!("{count} {what}s"), "find") };
        let text = format!("{start} between {a} and {b} {verb} no free place; {placed} of {} remain.", placed + count);
        // Two hold a joint; one lets it turn.
        let finding = match placed {
            0 => BRACKET_WITHOUT_PLACE.blocks(text),
            1 => BRACKET_WITHOUT_PLACE.caution(text),
            _ => BRACKET_WITHOUT_PLACE.note(text),
        };
        let at = scene.sheet(missing.walls[0]).map(|sheet| sheet.solid.centre());
        let mut finding = finding
            .with_counts(placed, placed + count)
            .with_mends(above_it(scene, missing, kind, placed).say(smaller).say("make the case larger"))
            .with_about(missing.walls.map(|wall| wall.name()));
        finding.at = at;
        found.push(finding);
    }
}
