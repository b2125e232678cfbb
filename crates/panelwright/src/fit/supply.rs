//! The supply: mains plug and feet, cables, air.

use super::finding::Finding;
use super::mend::Remedy;
use super::room::Look;
use super::rule::Rule;
use super::scene::{Scene, face, opposite, outward, towards};
use super::words;
use crate::arrangement::SupplyPlace;
use crate::design::{PlugShape, SizeRule, Value, Wall};
use crate::dimensions::plugs::mains_plug_room;
use crate::dimensions::source::Source;
use crate::dimensions::supplies::{AIR_GAP, CABLE_ROOM};
use crate::parts::supply::plug_room;
use crate::parts::{Part, PartKind};
use crate::solid::TOUCH_MM;

/// Share of the supply's end or side that must be covered before it counts as stopped (common practice).
const SUPPLY_SHARE: f64 = 0.25;

pub(super) const SUPPLY_INLET_FEET: Rule = Rule {
    name: "supply-inlet-feet",
    what: "With the mains inlet in the floor, the feet leave room for the plug and its cord.",
    source: Source::from_memory("Trade sizes", "C13 plugs: straight 60 to 65 mm, right-angle 25 to 30 mm"),
    look: supply_inlet_feet,
};

pub(super) const SUPPLY_CABLES: Rule = Rule {
    name: "supply-cables",
    what: "The supply's leads or plugs have room at its inner end.",
    source: CABLE_ROOM.source(),
    look: supply_cables,
};

pub(super) const SUPPLY_AIR: Rule = Rule {
    name: "supply-air",
    what: "The supply's large fan has 12.7 mm of free air before it; its outlet has the room of the mains plug.",
    source: AIR_GAP.source(),
    look: supply_air,
};

fn supply<'a>(scene: &Scene<'a>) -> Option<(&'a SupplyPlace, &'a Part)> {
    Some((scene.case.arrangement.supply.as_ref()?, scene.first(PartKind::Supply)?))
}

fn supply_inlet_feet(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((place, part)) = supply(scene).filter(|(place, _)| place.wall == Wall::Floor) else { return };
    let shape = scene.case.spec.supply.plug;
    let room = plug_room(&scene.case.spec.supply);
    let [least, easy] = room.get();
    let height = scene.case.spec.feet.height_mm;
    let name = match shape {
        PlugShape::Straight => "a straight mains plug",
        PlugShape::RightAngle => "a right-angle mains plug",
    };
    let feet = if height > 0.0 {
        format!("The feet leave {} under the floor", words::mm(height))
    } else {
        "There are no feet, and the mains inlet faces the floor".to_owned()
    };
    let finding = if height < least - TOUCH_MM {
        SUPPLY_INLET_FEET
            .blocks(format!("{feet}; {name} and its cord need {}.", words::limit(least)))
            .with_mm(height, least)
    } else if height < easy - TOUCH_MM {
        SUPPLY_INLET_FEET
            .caution(format!("{feet}; {name} may need up to {}.", words::limit(easy)))
            .with_mm(height, easy)
    } else {
        return;
    };
    let [width, depth, _] = place.size_mm;
    let remedy = Remedy::new().feet(scene, easy);
    let remedy = if shape == PlugShape::Straight && mains_plug_room(PlugShape::RightAngle.table()).get()[1] <= height {
        remedy.pick("supply.plug", "right-angle", "take a right-angle plug")
    } else {
        remedy
    };
    // Lying at the back the supply makes the case wider or higher, where that may be.
    let remedy = if scene.case.spec.size == SizeRule::Smallest {
        remedy.pick("supply.pose", "back-flat", "lay the supply at the back")
    } else {
        remedy
    };
    found.push(
        finding
            .with_source(room.source())
            .with_mends(remedy)
            .with_about([part.id.as_str(), "floor"])
            .with_at(place.face.to_case(kurbo::Point::new(width / 2.0, depth / 2.0), 0.0)),
    );
}

fn supply_cables(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((place, part)) = supply(scene) else { return };
    let inner = opposite(place.wall);
    let (axis, sense) = outward(inner);
    let bounds = part.bounds();
    let start = face(&bounds, axis, sense);
    let look = Look { section: bounds, toward: inner, start, straddle: true, share: SUPPLY_SHARE };
    let Some(by) = scene.nearest(&look, |other| other.kind != PartKind::Supply) else { return };
    let free = (by.at - start) * sense;
    let [least, _] = CABLE_ROOM.get();
    let wanted = scene.case.spec.supply.cable_room_mm;
    let finding = if free < least - TOUCH_MM {
        SUPPLY_CABLES
            .blocks(format!(
                "The supply's leads do not bend in {}: that is all there is to {}, and fixed leads need {}.",
                words::mm(free.max(0.0)),
                by.name,
                words::limit(least)
            ))
            .with_mm(free, least)
    } else if free < wanted - TOUCH_MM {
        SUPPLY_CABLES
            .caution(format!(
                "The supply's cables have {} to {}; you want {}.",
                words::mm(free),
                by.name,
                words::limit(wanted)
            ))
            .with_mm(free, wanted)
    } else {
        return;
    };
    // What ends the finding altogether, its caution included.
    let missing = wanted.max(least) - free;
    let remedy = Remedy::new().room(scene, &by, inner, missing);
    let remedy = if scene.keeps(&by, inner) {
        let most = place.size_mm[2] - missing;
        remedy.at_most("supply.depth", most, |depth| format!("take a supply of {depth} depth or less"))
    } else {
        remedy
    };
    // The room is the maker's own wish, but for what leads need to bend.
    let remedy = if free >= least - TOUCH_MM && matches!(scene.case.spec.size, SizeRule::Given(_)) {
        remedy.at_most("supply.cable_room", free, |room| format!("let {room} do for the cables"))
    } else {
        remedy
    };
    let remedy = remedy.otherwise("take a shorter supply");
    found.push(finding.with_mends(remedy).with_about([part.id.as_str(), by.id]).with_at(by.point));
}

fn supply_air(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((place, part)) = supply(scene) else { return };
    let needed = AIR_GAP.get();
    let bounds = part.bounds();
    if let Some(side) = place.fan_towards.and_then(towards) {
        let (axis, sense) = outward(side);
        let start = face(&bounds, axis, sense);
        let look = Look { section: bounds, toward: side, start, straddle: true, share: SUPPLY_SHARE };
        if let Some(by) = scene.nearest(&look, |other| other.kind != PartKind::Supply) {
            let free = (by.at - start) * sense;
            if free < needed - TOUCH_MM {
                let remedy = Remedy::new().room(scene, &by, side, needed - free);
                let other = opposite(side);
                let (axis, sense) = outward(other);
                let start = face(&bounds, axis, sense);
                let look = Look { section: bounds, toward: other, start, straddle: true, share: SUPPLY_SHARE };
                let beyond = scene.nearest(&look, |other| other.kind != PartKind::Supply);
                let remedy = if beyond.is_some_and(|by| (by.at - start) * sense >= needed - TOUCH_MM) {
                    let turned = Value::Switch(!scene.case.spec.supply.turned);
                    remedy.mend("turn the supply by half a turn", vec![("supply.turned".to_owned(), turned)])
                } else {
                    remedy
                };
                let remedy = remedy.otherwise("stand the supply elsewhere");
                found.push(
                    SUPPLY_AIR
                        .caution(format!(
                            "The supply's fan has {} to {}; it needs {} of free air.",
                            words::mm(free.max(0.0)),
                            by.name,
                            words::limit(needed)
                        ))
                        .with_mm(free, needed)
                        .with_mends(remedy)
                        .with_about([part.id.as_str(), by.id])
                        .with_at(by.point),
                );
            }
        }
    }
}
