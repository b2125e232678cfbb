//! Brackets and captive nuts whose holes acrylic has too near to an edge: which others would do.

use super::mend::{Remedy, enter_at_least, entered};
use super::scene::{Scene, Shape, Sheet};
use crate::design::Value;
use crate::dimensions::fasteners::washer;
use crate::panels::{Edge, Purpose};
use crate::parts::tongue;
use crate::solid::TOUCH_MM;

/// Brackets with their holes further from the corner: by how much, where the corner is what they are too near to.
pub(super) fn other_brackets(scene: &Scene, sheet: &Sheet, shape: &Shape, [web, needed]: [f64; 2]) -> Remedy {
    match shape.feature.purpose {
        Purpose::CaptiveScrew if follows_the_corner(scene, shape, web) => {
            let hole = scene.case.spec.hardware.captive.hole_mm + needed - web;
            Remedy::new().at_least("captive.hole", hole, |hole| {
                format!("take captive-nut brackets whose hole lies {hole} or more from the corner")
            })
        }
        Purpose::BracketScrew | Purpose::TongueBracketScrew if is_across_the_corner(sheet, shape, web) => {
            other_corner_brackets(scene, needed - web)
        }
        _ => Remedy::new().say("take brackets whose hole lies further from the corner"),
    }
}

/// Whether the web beside a captive nut's hole is what the hole's distance from the corner leaves of it, less the gap
/// that the sheet keeps to the corner; else the nut stands near another edge.
fn follows_the_corner(scene: &Scene, shape: &Shape, web: f64) -> bool {
    let radius = shape.feature.diameter_mm.unwrap_or_default() / 2.0;
    let left = scene.case.spec.hardware.captive.hole_mm - scene.case.arrangement.case.gap_mm - radius;
    (web - left).abs() < TOUCH_MM
}

/// Whether the web beside a bracket's hole is what the hole's distance from its corner leaves, and not the web to another
/// edge, near an end of the corner.
fn is_across_the_corner(sheet: &Sheet, shape: &Shape, web: f64) -> bool {
    let (sound, cut) = (sheet.panel.sound(), shape.cut);
    sheet
        .panel
        .edges
        .iter()
        .filter(|edge| shape.feature.about.iter().any(|id| id == edge.meets.name()))
        .map(|edge| match edge.edge {
            Edge::Left => cut.x0 - sound.x0,
            Edge::Right => sound.x1 - cut.x1,
            Edge::Lower => cut.y0 - sound.y0,
            Edge::Upper => sound.y1 - cut.y1,
        })
        .any(|left| (left - web).abs() < TOUCH_MM)
}

/// Brackets whose holes lie so much further from the corner, on longer legs where theirs end before.
fn other_corner_brackets(scene: &Scene, further: f64) -> Remedy {
    let spec = scene.case.spec;
    let size = &spec.hardware.bracket;
    let hole = enter_at_least("bracket.hole", size.hole_mm + further);
    let Some(hole) = hole else { return Remedy::new().say("take brackets whose hole lies further from the corner") };
    let words = format!("take brackets whose hole lies {} or more from the corner", entered(hole));
    let choice = |key: &str, value: f64| (key.to_owned(), Value::Number(value));
    let leg = hole + washer(tongue::thread(spec.hardware.thread)).outside_mm / 2.0;
    if leg <= size.leg_mm + TOUCH_MM {
        return Remedy::new().mend(words, vec![choice("bracket.hole", hole)]);
    }
    match enter_at_least("bracket.leg", leg) {
        Some(leg) => Remedy::new().mend(
            format!("{words}, on legs of {} or more", entered(leg)),
            vec![choice("bracket.hole", hole), choice("bracket.leg", leg)],
        ),
        None => Remedy::new().say(words),
    }
}
