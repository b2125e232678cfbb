//! Fingers and tabs in corners that a round cutter leaves round.

use core::f64::consts::FRAC_PI_2;

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::cutting::{LEAST_RESIDUE_MM, residue_mm};
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
    let names: Vec<String> = walls.iter().map(|wall| words::panel(*wall).to_owned()).collect();
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
