//! A given outside size that is too small for what goes in.

use super::finding::Finding;
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
            for (part, bounds) in scene.case.parts.iter().zip(&scene.bounds).filter(|(part, _)| is_inside(part)) {
                let over = (face(bounds, axis, sense) - inside) * sense;
                if over <= TOUCH_MM {
                    continue;
                }
                about.extend([part.id.as_str(), wall.name()]);
                most = most.max(over);
                if worst.as_ref().is_none_or(|(known, ..)| over > *known) {
                    let mut at = bounds.centre();
                    at[axis] = inside;
                    worst = Some((over, at, format!("{} reaches past {}", words::part(part), words::panel(*wall))));
                }
            }
            missing += most;
        }
        let Some((_, at, what)) = worst else { continue };
        let name = ["width", "depth", "height"][axis];
        found.push(
            SIZE_TOO_SMALL
                .blocks(format!("The outside {name} you gave is {} too small: {what}.", words::short(missing)))
                .with_mm(given[axis], given[axis] + missing)
                .with_remedy(format!("Give an outside {name} of {} or more.", words::at_least(given[axis] + missing)))
                .with_about(about)
                .with_at(at),
        );
    }
}
