//! Plugs that want room: whether what stands in the way stops the plug itself, or only the bend of its cable.

use super::finding::Finding;
use super::room::ZoneRoom;
use super::rule::Rule;
use super::words;
use crate::dimensions::source::{Source, Sourced};
use crate::solid::TOUCH_MM;

/// Share of a plug's cross-section that must be covered before it counts as stopped (common practice).
pub(super) const PLUG_SHARE: f64 = 0.25;

/// How a finding speaks of a plug; lengths follow each piece.
pub(super) struct PlugWords<'a> {
    /// `The plug does not go in`.
    pub stuck: &'a str,
    /// `the plug alone is`.
    pub alone: &'a str,
    /// `The plug has`.
    pub has: &'a str,
    /// `with its bend it wants`.
    pub wants: &'a str,
}

/// A plug that by itself is so long, of which `room` says what is free and what it wants with its bend (by `bend`).
pub(super) fn short_of_room(
    rule: &Rule,
    room: &ZoneRoom,
    itself: Sourced<f64>,
    bend: Source,
    say: &PlugWords,
) -> Finding {
    let (free, by) = (words::mm(room.free), &room.by.name);
    let finding = if room.free < itself.get() - TOUCH_MM {
        rule.blocks(format!("{}: {free} to {by}, and {} {}.", say.stuck, say.alone, words::limit(itself.get())))
            .with_mm(room.free, itself.get())
            .with_source(itself.source())
    } else {
        rule.caution(format!("{} {free} to {by}; {} {}.", say.has, say.wants, words::limit(room.wanted)))
            .with_mm(room.free, room.wanted)
            .with_source(bend)
    };
    finding.with_at(room.by.point)
}
