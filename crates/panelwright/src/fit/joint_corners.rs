//! Joints in corners that a round cutter leaves round.

use core::f64::consts::FRAC_PI_2;

use super::finding::Finding;
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::cutting::{CornerFault, LEAST_RESIDUE_MM, residue_mm};
use crate::design::{Joint, Method, Relief, Wall};
use crate::dimensions::source::Source;

pub(super) const JOINT_CORNERS_ROUND: Rule = Rule {
    name: "joint-corners-round",
    what: "Where a round cutter makes fingers or tabs, it relieves their inside corners, so that the joint closes.",
    source: Source::derived(
        "Geometry of the design",
        "a square edge in a corner of the cutter's radius r stands off r(√2 - 1)",
    ),
    look: joint_corners_round,
};

fn joint_corners_round(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    if making.router.relief != Relief::None {
        walls_too_short(scene, found);
        return;
    }
    let left = residue_mm(making.router.cutter_mm / 2.0, FRAC_PI_2);
    if left <= LEAST_RESIDUE_MM {
        return;
    }
    let routed = |wall: &Wall| making.method(*wall) == Method::Router;
    let mut walls: Vec<Wall> = Vec::new();
    for seam in making.joints.seams.iter().filter(|seam| matches!(seam.joint, Joint::Finger | Joint::Tab)) {
        // A square edge of either panel meets the other's corners: one routed panel is enough.
        let both = [seam.through, seam.covered];
        if both.iter().any(routed) {
            walls.extend(both.into_iter().filter(|wall| !walls.contains(wall)).collect::<Vec<_>>());
        }
    }
    let Some(first) = walls.first() else { return };
    let names: Vec<String> = walls.iter().map(|wall| words::the_panel(*wall).to_owned()).collect();
    let mut finding = JOINT_CORNERS_ROUND
        .blocks(format!(
            "The cutter leaves {} standing in each inside corner of the fingers and tabs of {}: the joints do not close.",
            words::short(left),
            words::list(&names)
        ))
        .with_mm(left, LEAST_RESIDUE_MM)
        .with_remedy("Choose corners relieved across the corner or along one edge, under Making.")
        .with_about(walls.iter().map(|wall| wall.name()));
    finding.at = scene.sheet(*first).map(|sheet| sheet.solid.centre());
    found.push(finding);
}

/// Relief is wanted, but some walls of a joint are too short for it.
fn walls_too_short(scene: &Scene, found: &mut Vec<Finding>) {
    let cutter = scene.case.spec.making.router.cutter_mm;
    let left = residue_mm(cutter / 2.0, FRAC_PI_2);
    let sheets: Vec<_> = scene.sheets.iter().filter(|sheet| !sheet.joint_faults.is_empty()).collect();
    let Some(first) = sheets.first().filter(|_| left > LEAST_RESIDUE_MM) else { return };
    let names: Vec<String> = sheets.iter().map(|sheet| words::the_panel(sheet.wall()).to_owned()).collect();
    // Relief grows with the cutter: the shortest wall says how much thinner it must be.
    let share = |fault: &CornerFault| match fault {
        CornerFault::WallTooShort { needed_mm, wall_mm } => wall_mm / needed_mm,
        _ => 0.0,
    };
    let share = sheets.iter().flat_map(|sheet| &sheet.joint_faults).map(share).fold(1.0, f64::min);
    let remedy = if share > 0.0 {
        Remedy::new().at_most("router.cutter", cutter * share, |value| format!("take a cutter of {value} or less"))
    } else {
        Remedy::new()
    };
    let count: usize = sheets.iter().map(|sheet| sheet.joint_faults.len()).sum();
    let corners = if count == 1 { "one inside corner".to_owned() } else { format!("{count} inside corners") };
    found.push(
        JOINT_CORNERS_ROUND
            .caution(format!(
                "The cutter leaves {} standing in {corners} of the joints of {}, too narrow for relief: they do not close.",
                words::short(left),
                words::list(&names)
            ))
            .with_mm(left, LEAST_RESIDUE_MM)
            .with_mends(remedy.say("file these corners square"))
            .with_about(sheets.iter().map(|sheet| sheet.id()))
            .with_at(first.solid.centre()),
    );
}
