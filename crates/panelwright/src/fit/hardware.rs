//! Brackets and captive nuts that found no free place.

use super::bracket_holes::is_off_leg;
use super::finding::Finding;
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::dimensions::source::Source;
use crate::panels::Unplaced;
use crate::parts::PartKind;

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

fn bracket_without_place(scene: &Scene, found: &mut Vec<Finding>) {
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
                matches!(part.kind, PartKind::Bracket | PartKind::CaptiveNut | PartKind::Block)
                    && stem(&part.id) == joint
            })
            .count();
        let (what, smaller) = match kind {
            PartKind::CaptiveNut => ("captive nut", "take a smaller captive-nut bracket"),
            PartKind::Block => ("locating block", "take thinner locating blocks"),
            _ => ("bracket", "take smaller brackets"),
        };
        let [a, b] = missing.walls.map(words::panel);
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
            .with_mends(Remedy::new().say(smaller).say("make the case larger"))
            .with_about(missing.walls.map(|wall| wall.name()));
        finding.at = at;
        found.push(finding);
    }
}
