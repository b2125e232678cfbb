//! Fans: air before them.

use super::finding::Finding;
use super::mend::Remedy;
use super::more_room::stands_fast;
use super::room::Look;
use super::rule::Rule;
use super::scene::{Scene, face, opposite, outward};
use super::words;
use crate::design::Wall;
use crate::dimensions::fans::GRILLE_GAP;
use crate::panels::Purpose;
use crate::parts::PartKind;
use crate::solid::TOUCH_MM;

/// Share of a fan's frame that must be covered before it counts as stopped (common practice).
const FAN_SHARE: f64 = 0.25;

pub(super) const FAN_GAP: Rule = Rule {
    name: "fan-gap",
    what: "Each fan has free air on its inner side; only a cooler that blows along may stand closer.",
    source: GRILLE_GAP.source(),
    look: fan_gap,
};

pub(super) const FLOOR_OPENING_FEET: Rule = Rule {
    name: "floor-opening-feet",
    what: "Openings for air in the floor stand on feet.",
    source: GRILLE_GAP.source(),
    look: floor_opening_feet,
};

fn fan_gap(scene: &Scene, found: &mut Vec<Finding>) {
    let needed = GRILLE_GAP.get()[0];
    for place in &scene.case.arrangement.fans {
        let Some(part) = scene.part(&format!("fan-{}", place.number)) else { continue };
        let (axis, out) = outward(place.at.wall);
        let toward = opposite(place.at.wall);
        let bounds = part.bounds();
        let start = face(&bounds, axis, -out);
        let look = Look { section: bounds, toward, start, straddle: false, share: FAN_SHARE };
        let Some(by) = scene.nearest(&look, |other| !matches!(other.kind, PartKind::Cooler) && other.id != part.id)
        else {
            continue;
        };
        let free = (start - by.at) * out;
        if free >= needed - TOUCH_MM {
            continue;
        }
        let name = words::part(part);
        let fixed = matches!(place.at.wall, Wall::Back | Wall::Floor) && by.part.is_some();
        let move_it = Remedy::new().say(format!("move {name} on its panel or to another one"));
        found.push(
            FAN_GAP
                .caution(format!(
                    "{} has {} of air to {}; {} keeps it quiet and moving air.",
                    words::capital(&name),
                    words::mm(free.max(0.0)),
                    by.name,
                    words::limit(needed)
                ))
                .with_mm(free, needed)
                .with_mends(if by.part.is_none_or(|part| stands_fast(scene, part)) && (fixed || scene.stays(axis)) {
                    let thickness = bounds.size()[axis] - (needed - free);
                    let key = format!("fan{}.thickness", place.number);
                    move_it.at_most(&key, thickness, |thickness| format!("take a fan {thickness} thick or less"))
                } else {
                    move_it
                })
                .with_about([part.id.as_str(), by.id])
                .with_at(by.point),
        );
    }
}

fn floor_opening_feet(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(floor) = scene.sheet(Wall::Floor) else { return };
    let height = scene.case.spec.feet.height_mm;
    let needed = GRILLE_GAP.get()[0];
    if height >= needed - TOUCH_MM {
        return;
    }
    let openings: Vec<_> = floor
        .shapes
        .iter()
        .filter(|shape| matches!(shape.feature.purpose, Purpose::FanOpening | Purpose::Vent) && shape.is_through())
        .collect();
    let Some(first) = openings.first() else { return };
    let finding = if height <= 0.0 {
        FLOOR_OPENING_FEET.blocks("The floor has openings for air and no feet: the table closes them.")
    } else {
        FLOOR_OPENING_FEET.caution(format!(
            "The floor's openings for air stand {} above the table; they want {}.",
            words::mm(height),
            words::limit(needed)
        ))
    };
    found.push(
        finding
            .with_mm(height, needed)
            .with_mends(Remedy::new().feet(scene, needed))
            .with_about(["floor".to_owned(), format!("floor/{}", first.feature.id)])
            .with_at(floor.panel.frame.to_case(first.feature.centre, 0.0)),
    );
}
