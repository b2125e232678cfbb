//! A given outside size that is too small for what goes in.

use super::finding::Finding;
use super::mend::Remedy;
use super::more_room::{elsewhere, larger, stands_fast};
use super::rule::Rule;
use super::scene::{Scene, face, outward};
use super::words;
use crate::design::{SizeRule, Wall};
use crate::dimensions::source::Source;
use crate::parts::{Carrier, Part, PartKind};
use crate::solid::TOUCH_MM;

pub(super) const SIZE_TOO_SMALL: Rule = Rule {
    name: "size-too-small",
    what: "A given outside size holds everything that is fixed to floor and back.",
    source: Source::derived("Geometry of the design", "extent of the parts and twice the sheet"),
    look: size_too_small,
};

/// The panels that give way along each axis; the back and the floor stay where the board needs them.
const MOVING: [&[Wall]; 3] = [&[Wall::Left, Wall::Right], &[Wall::Front], &[Wall::Top]];

fn is_inside(part: &Part) -> bool {
    let outside_by_nature = matches!(part.kind, PartKind::Foot | PartKind::Jack);
    let hardware = matches!(part.kind, PartKind::Bracket | PartKind::CaptiveNut | PartKind::Block | PartKind::Washer);
    part.carrier == Carrier::Chassis && !outside_by_nature && !hardware
}

/// Whether a larger case helps a part that reaches past a panel: not what is held to the wall it reaches past, by a
/// place that the maker gave from there.
fn is_helped(scene: &Scene, part: &Part, wall: Wall) -> bool {
    let spec = scene.case.spec;
    let pinned_to = match part.kind {
        // Seen from outside, the left edge of the back and of the floor is the case's right side; the front edge is
        // the floor's lower one.
        PartKind::Fan => spec.fans.iter().find(|fan| part.id == format!("fan-{}", fan.number)).map(|fan| {
            let across = fan.across_mm.is_some();
            match wall {
                Wall::Right => across && matches!(fan.wall, Wall::Back | Wall::Floor),
                Wall::Front => fan.up_mm.is_some() && fan.wall == Wall::Floor,
                _ => false,
            }
        }),
        _ => None,
    };
    !pinned_to.unwrap_or(false)
}

fn size_too_small(scene: &Scene, found: &mut Vec<Finding>) {
    let SizeRule::Given(given) = scene.case.spec.size else { return };
    for (axis, walls) in MOVING.into_iter().enumerate() {
        let mut missing = 0.0;
        let mut about: Vec<&str> = Vec::new();
        let mut worst: Option<(f64, [f64; 3], String)> = None;
        for wall in walls {
            let Some(inside) = scene.inside(*wall) else { continue };
            let (_, sense) = outward(*wall);
            let mut most = 0.0_f64;
            let held = |part: &Part| is_inside(part) && is_helped(scene, part, *wall);
            for (part, bounds) in scene.case.parts.iter().zip(&scene.bounds).filter(|(part, _)| held(part)) {
                let over = (face(bounds, axis, sense) - inside) * sense;
                if over <= TOUCH_MM {
                    continue;
                }
                about.extend([part.id.as_str(), wall.name()]);
                most = most.max(over);
                if worst.as_ref().is_none_or(|(known, ..)| over > *known) {
                    let mut at = bounds.centre();
                    at[axis] = inside;
                    worst = Some((over, at, format!("{} reaches past {}", words::part(part), words::the_panel(*wall))));
                }
            }
            missing += most;
        }
        let Some((_, at, what)) = worst else { continue };
        // Not only what reaches past the panels must fit: everything with the air it needs at least.
        let shell = scene.case.arrangement.case.outside_mm[axis] - scene.case.arrangement.case.inside_mm[axis];
        let least = scene.case.arrangement.needs.least_inside()[axis] + shell;
        let enough = least.max(given[axis] + missing);
        // A drive that finds its place by itself may find another one in a larger case: then no number is promised.
        let fast = about
            .iter()
            .filter_map(|id| scene.part(id))
            .all(|part| part.kind != PartKind::Drive || stands_fast(scene, part));
        let remedy = if fast {
            Remedy::new().outside(scene, axis, enough)
        } else {
            let first = about.iter().filter_map(|id| scene.part(id)).find(|part| part.kind == PartKind::Drive);
            Remedy::new().say(larger(axis)).say_if(first.and_then(elsewhere))
        };
        let name = ["width", "depth", "height"][axis];
        found.push(
            SIZE_TOO_SMALL
                .blocks(format!("The outside {name} you gave is {} too small: {what}.", words::short(missing)))
                .with_mm(given[axis], given[axis] + missing)
                .with_mends(remedy.otherwise("take smaller parts: no choice of size is as large"))
                .with_about(about)
                .with_at(at),
        );
    }
}
