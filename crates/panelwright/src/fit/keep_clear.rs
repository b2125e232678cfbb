//! Rooms kept clear for other parts than card, supply, drives and front connectors, which have rules of their own.

use super::finding::Finding;
use super::mend::Remedy;
use super::more_room::elsewhere;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::dimensions::source::Source;
use crate::parts::PartKind;

/// Share of a room that must be covered before it counts as stopped (common practice).
const ROOM_SHARE: f64 = 0.25;

pub(super) const KEEP_CLEAR: Rule = Rule {
    name: "keep-clear",
    what: "Nothing stands in the room a part needs beside it.",
    source: Source::common_practice("Workshop custom", "room for plugs, air and hands"),
    look: keep_clear,
};

fn keep_clear(scene: &Scene, found: &mut Vec<Finding>) {
    let has_own_rule = |kind| matches!(kind, PartKind::Card | PartKind::Supply | PartKind::Drive | PartKind::Port);
    for part in scene.case.parts.iter().filter(|part| !has_own_rule(part.kind)) {
        for keep in &part.keep_clear {
            let Some(room) = scene.zone_room(part, &keep.zone, ROOM_SHARE) else { continue };
            found.push(
                KEEP_CLEAR
                    .caution(format!(
                        "{} leaves {} to {}; {} wants {}.",
                        words::capital(&words::part(part)),
                        words::mm(room.free),
                        room.by.name,
                        keep.purpose,
                        words::limit(room.wanted)
                    ))
                    .with_mm(room.free, room.wanted)
                    .with_mends(
                        Remedy::new()
                            .room(scene, &room.by, room.toward, room.wanted - room.free)
                            .say_if(elsewhere(part))
                            .otherwise("give it more room in a larger case"),
                    )
                    .with_about([part.id.as_str(), room.by.id])
                    .with_at(room.by.point)
                    .with_source(keep.source),
            );
        }
    }
}
