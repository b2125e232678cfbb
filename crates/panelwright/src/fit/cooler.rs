//! The cooler and the memory under it.
//!
//! Heights are measured above the board's top face.

use super::finding::Finding;
use super::mend::{Remedy, least};
use super::room::Look;
use super::rule::Rule;
use super::scene::Scene;
use super::solids::shared;
use super::unknowns::measure_socket;
use super::words;
use crate::design::{CoolerAir, CoolerSpec, Wall};
use crate::dimensions::coolers::{GAP_ABOVE_DOWN_BLOWER, SPREADER_ALLOWANCE};
use crate::dimensions::source::{Source, Sourced};
use crate::parts::{Part, PartKind};
use crate::solid::TOUCH_MM;

/// Gap wanted above a cooler that needs no air from above, mm.
const GAP_ABOVE: Sourced<f64> = Sourced::new(
    2.0,
    Source::common_practice("Workshop custom", "a cooler's height and the socket's vary by a few tenths"),
);

/// Gap wanted between memory and whatever is above it, mm.
const MEMORY_GAP: Sourced<f64> =
    Sourced::new(1.0, Source::common_practice("Workshop custom", "seated modules differ by a few tenths"));

pub(super) const COOLER_UNDER_TOP: Rule = Rule {
    name: "cooler-under-top",
    what: "The cooler ends below the top, with the gap its air needs.",
    source: GAP_ABOVE_DOWN_BLOWER.source(),
    look: cooler_under_top,
};

pub(super) const MEMORY_HEIGHT: Rule = Rule {
    name: "memory-height",
    what: "The memory fits under the cooler's fins and under the top.",
    source: MEMORY_GAP.source(),
    look: memory_height,
};

/// The gap a cooler wants above it.
fn gap_above(spec: &CoolerSpec) -> Sourced<f64> {
    match spec.air {
        CoolerAir::Down | CoolerAir::Up => GAP_ABOVE_DOWN_BLOWER,
        CoolerAir::Back | CoolerAir::Front | CoolerAir::Left | CoolerAir::Right | CoolerAir::None => GAP_ABOVE,
    }
}

fn cooler_under_top(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(spec), Some(part)) = (&scene.case.spec.cooler, scene.first(PartKind::Cooler)) else { return };
    let bounds = part.bounds();
    // What begins above the lowest cooler could be cleared by another cooler.
    let start = scene.board_top() + SPREADER_ALLOWANCE.get() + least("cooler.height");
    let look = Look { section: bounds, toward: Wall::Top, start, straddle: false, share: 0.0 };
    let Some(by) = scene.nearest(&look, |other| !matches!(other.kind, PartKind::Cooler | PartKind::Memory)) else {
        return;
    };
    let needs = gap_above(spec);
    let gap = by.at - bounds.max[2];
    let finding = if gap < -TOUCH_MM {
        COOLER_UNDER_TOP
            .blocks(format!("The cooler stands {} too high for {}.", words::short(-gap), by.name))
            .with_mm(gap, 0.0)
            .with_source(Source::derived("Geometry of the design", "two solids cannot share space"))
    } else if gap < needs.get() - TOUCH_MM {
        let why = if needs.get() > GAP_ABOVE.get() { "its air wants" } else { "it should have" };
        COOLER_UNDER_TOP
            .caution(format!(
                "The cooler has {} to {}; {why} {}.",
                words::mm(gap.max(0.0)),
                by.name,
                words::limit(needs.get())
            ))
            .with_mm(gap, needs.get())
            .with_source(needs.source())
    } else {
        return;
    };
    // What ends the finding altogether, its caution included.
    let remedy = remedy(scene, &by, spec, needs.get() - gap);
    found.push(finding.with_mends(remedy).with_about([part.id.as_str(), by.id]).with_at(by.point));
}

fn remedy(scene: &Scene, by: &super::room::Obstacle, spec: &CoolerSpec, missing: f64) -> Remedy {
    let remedy = Remedy::new().room(scene, by, Wall::Top, missing);
    let remedy = if scene.keeps(by, Wall::Top) {
        remedy.at_most("cooler.height", spec.height_mm - missing, |height| format!("take a cooler of {height} or less"))
    } else {
        remedy
    };
    remedy.otherwise("take a lower cooler")
}

fn memory_height(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(part) = scene.first(PartKind::Memory) else { return };
    let bounds = part.bounds();
    let top = scene.board_top();
    // A cooler's base stands on the board itself: no memory is low enough for it.
    let look = Look { section: bounds, toward: Wall::Top, start: top + 1.0, straddle: false, share: 0.0 };
    // Only what hangs over the memory: what also stands beside it, down to the board, would not be cleared by lower
    // modules and is left to the general rule.
    let over = |other: &Part| {
        !matches!(other.kind, PartKind::Memory | PartKind::Board)
            && (shared(part, other).is_none() || other.kind == PartKind::Cooler)
    };
    let Some(by) = scene.nearest(&look, over) else { return };
    let (room, height) = (by.at - top, bounds.max[2] - top);
    let gap = room - height;
    let finding = if gap < -TOUCH_MM {
        MEMORY_HEIGHT
            .blocks(format!("The memory is {} too high for {}.", words::short(-gap), by.name))
            .with_mm(room, height)
    } else if gap < MEMORY_GAP.get() - TOUCH_MM {
        MEMORY_HEIGHT
            .caution(format!(
                "The memory has {} to {}; {} is safe.",
                words::mm(gap.max(0.0)),
                by.name,
                words::limit(MEMORY_GAP.get())
            ))
            .with_mm(room, height + MEMORY_GAP.get())
    } else {
        return;
    };
    let missing = MEMORY_GAP.get() - gap;
    let below_cooler = by.part.is_some_and(|part| part.kind == PartKind::Cooler);
    let remedy = Remedy::new().say_if(measure_socket(scene).filter(|_| below_cooler));
    let remedy = if scene.keeps(&by, Wall::Top) {
        let most = scene.case.spec.board.memory_height_mm - missing;
        remedy.at_most("board.memory_height", most, |height| format!("take memory of {height} or less"))
    } else {
        remedy
    };
    let remedy = match (by.part, &scene.case.spec.cooler) {
        (Some(part), Some(cooler)) if part.kind == PartKind::Cooler => {
            let least = by.at - top + missing;
            // The fins themselves are a tenth of a cooler at least.
            if least <= SPREADER_ALLOWANCE.get() + 0.9 * cooler.height_mm {
                remedy.at_least("cooler.under", least, |under| format!("take a cooler with {under} under its fins"))
            } else {
                remedy.say("take a higher cooler")
            }
        }
        _ => remedy.room(scene, &by, Wall::Top, missing),
    };
    found.push(finding.with_mends(remedy).with_about([part.id.as_str(), by.id]).with_at(by.point));
}
