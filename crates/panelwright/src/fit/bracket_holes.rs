//! Holes of brackets: whether screw, washer and nut have their place on the legs.

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{BracketSize, Spec};
use crate::dimensions::fasteners::{
    Fit, Thread, clearance_hole, major_diameter, nut, required_length_mm, sharp_corners_mm, sold_length_of_mm, washer,
};
use crate::dimensions::source::Source;
use crate::parts::{PartKind, tongue};
use crate::solid::TOUCH_MM;

pub(super) const BRACKET_HOLE: Rule = Rule {
    name: "bracket-hole",
    what: "The holes of brackets lie on their legs, with room for washers and nuts beside the other leg.",
    source: Source::published("ISO 7089, ISO 4032", "outside diameter of washers, height and width of nuts"),
    look: bracket_hole,
};

/// Where a hole may be on a leg, mm from the bracket's corner.
struct Range {
    /// Nearer, and a washer stands on the other leg, or the two screws and their nuts meet.
    least: f64,
    /// Further out, and the washer stands over the end.
    seated: f64,
    /// Further out, and the hole runs out of the end.
    most: f64,
    /// Radius of the washer.
    washer: f64,
}

fn range(spec: &Spec, kind: PartKind, size: &BracketSize) -> Range {
    let thread = tongue::thread(spec.hardware.thread);
    let washer = washer(thread).outside_mm / 2.0;
    // Nuts of both legs side by side in the corner. A captive-nut bracket has one at most: the other screw is a short one.
    let nuts = match kind {
        PartKind::Bracket => nuts_meet(spec, size, thread),
        _ => 0.0,
    };
    Range {
        least: (size.thickness_mm + washer).max(nuts),
        seated: size.leg_mm - washer,
        most: size.leg_mm - clearance_hole(thread, Fit::Medium).get() / 2.0,
        washer,
    }
}

/// Nearer to the corner than this the nuts of the two legs, or the ends of their screws, share room, mm.
fn nuts_meet(spec: &Spec, size: &BracketSize, thread: Thread) -> f64 {
    let nut = nut(thread);
    let sheet = spec.sheet.thickness_mm();
    let clamped = sheet + size.thickness_mm;
    let length = sold_length_of_mm(thread, required_length_mm(clamped, thread, 1, true)).unwrap_or(0.0);
    let end = length - washer(thread).thickness_mm - sheet;
    (size.thickness_mm + nut.height_mm + sharp_corners_mm(nut.flats_mm) / 2.0)
        .max(end + major_diameter(thread).get() / 2.0)
}

fn size(spec: &Spec, kind: PartKind) -> Option<&BracketSize> {
    match kind {
        PartKind::Bracket => Some(&spec.hardware.bracket),
        PartKind::CaptiveNut => Some(&spec.hardware.captive),
        _ => None,
    }
}

/// How much it weighs that the holes of a kind of bracket are where they are; `None` when all is well.
fn weight(spec: &Spec, kind: PartKind) -> Option<Severity> {
    let size = size(spec, kind)?;
    let range = range(spec, kind, size);
    if size.hole_mm < range.least - TOUCH_MM || size.hole_mm > range.most + TOUCH_MM {
        Some(Severity::Blocks)
    } else {
        (size.hole_mm > range.seated + TOUCH_MM).then_some(Severity::Caution)
    }
}

/// Whether no screw can hold brackets of a kind: nothing that follows from their place is worth telling then.
pub(super) fn is_off_leg(spec: &Spec, kind: PartKind) -> bool {
    weight(spec, kind) == Some(Severity::Blocks)
}

fn bracket_hole(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = scene.case.spec;
    for (kind, name, start) in
        [(PartKind::Bracket, "corner bracket", "bracket-"), (PartKind::CaptiveNut, "captive-nut bracket", "captive-")]
    {
        let (Some(severity), Some(size)) = (weight(spec, kind), size(spec, kind)) else { continue };
        let placed = scene.first(kind);
        let missing = scene.case.unplaced.iter().find(|missing| missing.id.starts_with(start));
        if placed.is_none() && missing.is_none() {
            continue;
        }
        let range = range(spec, kind, size);
        let (hole, leg) = (size.hole_mm, size.leg_mm);
        let (text, needed) = if hole < range.least - TOUCH_MM {
            (
                format!(
                    "The hole of each {name}, {} from its corner, leaves no room for washers and nuts beside the other leg.",
                    words::limit(hole)
                ),
                range.least,
            )
        } else if severity == Severity::Blocks {
            (
                format!(
                    "The hole of each {name}, {} from its corner, lies off its leg of {}.",
                    words::limit(hole),
                    words::limit(leg)
                ),
                range.most,
            )
        } else {
            (
                format!(
                    "The washer at the hole of each {name} stands {} over the end of its leg.",
                    words::short(hole - range.seated)
                ),
                range.seated,
            )
        };
        // Rounded to tenths, as both are entered.
        let longer = words::at_least(hole.max(range.least) + range.washer);
        let within = format!("a hole {} to {}", words::bare_at_least(range.least), words::at_most(range.seated));
        let remedy = match (range.least <= range.seated + TOUCH_MM, hole < range.least - TOUCH_MM) {
            (true, true) => format!("Measure again: {within} from the corner has room."),
            (true, false) => {
                format!("Measure again: {within} from the corner has room, or take legs of {longer} or more.")
            }
            (false, true) => format!(
                "Take legs of {longer} or more, with a hole {} or more from the corner.",
                words::at_least(range.least)
            ),
            (false, false) => format!("Take legs of {longer} or more."),
        };
        let mut finding = BRACKET_HOLE.finds(severity, text).with_mm(hole, needed).with_remedy(remedy);
        if let Some(part) = placed {
            finding = finding.with_about([&part.id]).with_at(part.bounds().centre());
        } else if let Some(missing) = missing {
            finding = finding.with_about(missing.walls.map(|wall| wall.name()));
            finding.at = scene.sheet(missing.walls[0]).map(|sheet| sheet.solid.centre());
        }
        found.push(finding);
    }
}
