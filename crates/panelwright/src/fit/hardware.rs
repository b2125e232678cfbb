//! Brackets and captive nuts that found no free place.

use super::bracket_holes::is_off_leg;
use super::finding::Finding;
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{IoOpening, Joint, Seam, SizeRule, Spec, Wall};
use crate::dimensions::boards::{IO_BORDER, IO_Z};
use crate::dimensions::source::Source;
use crate::panels::{THINNEST_BLOCK_MM, Unplaced, stem as seam_of};
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

/// The least standoffs that leave something of this height its room below the connector opening, mm.
fn below_opening(height: f64) -> f64 {
    height - IO_Z.get()[0]
}

/// Between floor and back a low board is in the way, with the opening for its connectors: higher standoffs leave the
/// brackets, or at least a strip glued in, their room below both.
fn above_it(scene: &Scene, missing: &Unplaced, kind: PartKind, placed: usize) -> Remedy {
    let spec = scene.case.spec;
    let whole = match kind {
        PartKind::Block => spec.making.block_mm,
        _ => spec.hardware.bracket.leg_mm,
    };
    let border = if spec.board.io_opening == IoOpening::Rebate { IO_BORDER.get() } else { 0.0 };
    // With two of three the joint holds: nothing need be taken anew for the third.
    let low = |least: f64| {
        placed < 2
            && kind != PartKind::CaptiveNut
            && missing.walls == [Wall::Floor, Wall::Back]
            && spec.board.standoff_mm < least - TOUCH_MM
    };
    let strip = below_opening(THINNEST_BLOCK_MM + border);
    let high = below_opening(whole + BELOW_OPENING_MM);
    let mut remedy = Remedy::new();
    if low(strip) {
        remedy = remedy.at_least("board.standoff", strip, |height| {
            format!("take standoffs of {height} or more, for blocks glued in")
        });
    }
    if low(high) {
        remedy = brackets_below(spec, remedy, high);
    }
    remedy
}

/// Standoffs under which brackets, or whole blocks, find their room.
fn brackets_below(spec: &Spec, remedy: Remedy, least: f64) -> Remedy {
    if matches!(spec.size, SizeRule::Given(_)) {
        // What stands beside the board in a case that does not grow may be in the way as well.
        return remedy.say("take higher standoffs");
    }
    remedy.at_least("board.standoff", least, |height| format!("take standoffs of {height} or more"))
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
        let spec = scene.case.spec;
        let high = below_opening(spec.hardware.bracket.leg_mm + BELOW_OPENING_MM);
        let glue = Remedy::new().say("cut the blocks of the list and glue them in");
        // Where not one finds a place more is in the way than the board.
        let low = seam.seam == Seam::FloorBack && brackets > 0 && spec.board.standoff_mm < high - TOUCH_MM;
        let remedy = if low { brackets_below(spec, glue, high) } else { glue };
        found.push(
            BRACKET_WITHOUT_PLACE
                .note(text)
                .with_counts(brackets, brackets + blocks.len())
                .with_mends(remedy.say("make the case larger"))
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
