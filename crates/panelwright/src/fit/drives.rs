//! Drives: under the board, their washers, their plugs.

use super::backplate;
use super::board::hidden_below;
use super::finding::Finding;
use super::mend::Remedy;
use super::plugs::{PLUG_SHARE, PlugWords, short_of_room};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{DriveSpec, PlugShape, Value};
use crate::dimensions::boards::{UNDERSIDE_BACKPLATE, UNDERSIDE_LEADS};
use crate::dimensions::drives::{self as tables, SMALL_HOLES_OPTIONAL_UP_TO, sata_data_room};
use crate::dimensions::source::{Source, Sourced};
use crate::drawing::number::format_number;
use crate::parts::{Part, PartKind, drive};
use crate::solid::{Aabb, TOUCH_MM};

/// Washers wanted under a drive.
pub(super) const LEAST_WASHERS: Sourced<usize> =
    Sourced::new(2, Source::common_practice("Workshop custom", "fewer bend the plugs against the sheet"));

/// A straight plug by itself, from the drive's end, mm.
const STRAIGHT_PLUG: Sourced<f64> =
    Sourced::new(20.0, Source::from_memory("Trade sizes", "straight SATA plug without its cable"));

pub(super) const DRIVE_UNDER_BOARD: Rule = Rule {
    name: "drive-under-board",
    what: "A drive below the board stays clear of the leads, the cooler's backplate and the M.2 card on its underside.",
    source: UNDERSIDE_LEADS.source(),
    look: drive_under_board,
};

pub(super) const DRIVE_WASHERS: Rule = Rule {
    name: "drive-washers",
    what: "At least two washers lift a drive, so that its plugs are not bent.",
    source: LEAST_WASHERS.source(),
    look: drive_washers,
};

pub(super) const DRIVE_PLUGS: Rule = Rule {
    name: "drive-plugs",
    what: "A drive's plugs go in, and their cables have room to bend.",
    source: Source::from_memory("Trade sizes", "SATA data and power plugs with their cables"),
    look: drive_plugs,
};

pub(super) const DRIVE_HOLES: Rule = Rule {
    name: "drive-holes",
    what: "Some drives lack holes that their panel is drilled for.",
    source: SMALL_HOLES_OPTIONAL_UP_TO.source(),
    look: drive_holes,
};

/// The drives as chosen and as placed.
fn drives<'a>(scene: &Scene<'a>) -> impl Iterator<Item = (&'a DriveSpec, &'a Part)> {
    let parts = scene.case.parts;
    scene.case.spec.drives.iter().filter_map(move |spec| {
        let id = format!("drive-{}", spec.number);
        parts.iter().find(|part| part.id == id).map(|part| (spec, part))
    })
}

fn over(one: &Aabb, other: &Aabb) -> bool {
    let [x, y, _] = one.overlap_by_axis(other);
    x > TOUCH_MM && y > TOUCH_MM
}

fn drive_under_board(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(board_part) = scene.first(PartKind::Board) else { return };
    let under = scene.board_under();
    let Some(plate) = board_part.bodies.iter().find(|body| (body.min[2] - under).abs() < TOUCH_MM) else { return };
    for (spec, part) in drives(scene) {
        let bounds = part.bounds();
        if !over(plate, &bounds) || bounds.min[2] >= under - TOUCH_MM {
            continue;
        }
        let standoff = scene.case.spec.board.standoff_mm;
        let name = words::capital(&words::part(part));
        let at = [bounds.centre()[0], bounds.centre()[1], bounds.max[2]];
        let m2 =
            hidden_below(board_part, under).find(|body| over(body, &bounds) && body.min[2] < bounds.max[2] - TOUCH_MM);
        let free = under - bounds.max[2];
        // What ends the finding altogether: the leads, a card below the board, and where a backplate may be.
        let under_plate = backplate::rooms(scene).any(|room| over(&room, &bounds));
        let wanted = if under_plate { UNDERSIDE_BACKPLATE.get() } else { UNDERSIDE_LEADS.get() };
        let missing = m2.map_or(0.0, |body| bounds.max[2] - body.min[2]).max(wanted - free);
        let finding = if let Some(body) = m2 {
            let gap = body.min[2] - bounds.max[2];
            DRIVE_UNDER_BOARD
                .blocks(format!("{name} stands {} into the M.2 card on the board's underside.", words::short(-gap)))
                .with_mm(gap, 0.0)
                .with_source(Source::derived("Geometry of the design", "two solids cannot share space"))
        } else if free < UNDERSIDE_LEADS.get() - TOUCH_MM {
            let text = if free < 0.0 {
                format!("{name} reaches {} into the board.", words::short(-free))
            } else {
                format!(
                    "{name} has {} to the board's underside; the leads there may be {} long.",
                    words::mm(free),
                    words::limit(UNDERSIDE_LEADS.get())
                )
            };
            DRIVE_UNDER_BOARD.blocks(text).with_mm(free, UNDERSIDE_LEADS.get())
        } else if free < UNDERSIDE_BACKPLATE.get() - TOUCH_MM && under_plate {
            DRIVE_UNDER_BOARD
                .caution(format!(
                    "{name} has {} to the board; a cooler's backplate there may be {} thick.",
                    words::mm(free),
                    words::limit(UNDERSIDE_BACKPLATE.get())
                ))
                .with_mm(free, UNDERSIDE_BACKPLATE.get())
                .with_source(UNDERSIDE_BACKPLATE.source())
        } else {
            continue;
        };
        let remedy = lower_or_lift(spec, standoff, missing);
        found.push(finding.with_mends(remedy).with_about([part.id.as_str(), board_part.id.as_str()]).with_at(at));
    }
}

/// Ways to `missing` more room between a drive and the board above it.
fn lower_or_lift(spec: &DriveSpec, standoff: f64, missing: f64) -> Remedy {
    let key = |field: &str| format!("drive{}.{field}", spec.number);
    let remedy = Remedy::new()
        .at_least("board.standoff", standoff + missing, |height| format!("take standoffs of {height} or more"))
        .at_most(&key("height"), spec.height_mm - missing, |height| format!("take a drive of {height} or less"));
    let fewer = f64::from(spec.washers) - f64::ceil(missing / drive::WASHER_MM - 1e-6);
    let remedy = if fewer >= LEAST_WASHERS.get() as f64 {
        let washers = vec![(key("washers"), Value::Number(fewer))];
        remedy.mend(format!("put {} washers under each screw", format_number(fewer, 0)), washers)
    } else {
        remedy
    };
    remedy.say(format!("lay drive {} elsewhere", spec.number))
}

fn drive_washers(scene: &Scene, found: &mut Vec<Finding>) {
    for (spec, part) in drives(scene) {
        let washers = usize::from(spec.washers);
        if washers >= LEAST_WASHERS.get() {
            continue;
        }
        let bounds = part.bounds();
        found.push(
            DRIVE_WASHERS
                .caution(format!(
                    "{} stands on {} under each screw; fewer than two bend its plugs against the sheet.",
                    words::capital(&words::part(part)),
                    if washers == 0 { "no washer" } else { "one washer" }
                ))
                .with_counts(washers, LEAST_WASHERS.get())
                .with_mends(Remedy::new().mend(
                    "put two washers under each screw",
                    vec![(format!("drive{}.washers", spec.number), Value::Number(LEAST_WASHERS.get() as f64))],
                ))
                .with_about([&part.id])
                .with_at([bounds.centre()[0], bounds.centre()[1], bounds.min[2]]),
        );
    }
}

/// A plug without its bend.
const fn plug_itself(shape: PlugShape) -> Sourced<f64> {
    match shape {
        PlugShape::Straight => STRAIGHT_PLUG,
        PlugShape::RightAngle => {
            let room = sata_data_room(tables::PlugShape::RightAngle);
            Sourced::new(room.get()[0], room.source())
        }
    }
}

fn drive_plugs(scene: &Scene, found: &mut Vec<Finding>) {
    for (spec, part) in drives(scene) {
        for keep in &part.keep_clear {
            let Some(room) = scene.zone_room(part, &keep.zone, PLUG_SHARE) else { continue };
            let name = words::part(part);
            let bent = sata_data_room(tables::PlugShape::RightAngle).get()[1];
            let remedy = Remedy::new().say(format!("lay {name} elsewhere"));
            let remedy = if spec.plug == PlugShape::Straight && bent <= room.free + TOUCH_MM {
                remedy.pick(&format!("drive{}.plug", spec.number), "right-angle", "take right-angle plugs")
            } else {
                remedy
            };
            let say = PlugWords {
                stuck: &format!("The plugs of {name} do not go in"),
                alone: "a plug alone is",
                has: &format!("The plugs of {name} have"),
                wants: "with their bend they want",
            };
            found.push(
                short_of_room(&DRIVE_PLUGS, &room, plug_itself(spec.plug), keep.source, &say)
                    .with_mends(remedy)
                    .with_about([part.id.as_str(), room.by.id]),
            );
        }
    }
}

fn drive_holes(scene: &Scene, found: &mut Vec<Finding>) {
    for (spec, part) in drives(scene) {
        if drive::table_kind(spec.kind) != tables::DriveKind::Small
            || spec.height_mm > SMALL_HOLES_OPTIONAL_UP_TO.get() + TOUCH_MM
        {
            continue;
        }
        found.push(
            DRIVE_HOLES
                .note(format!(
                    "{} is so thin that its standard lets it do without holes in its underside.",
                    words::capital(&words::part(part))
                ))
                .with_mm(spec.height_mm, SMALL_HOLES_OPTIONAL_UP_TO.get())
                .with_remedy("Look at your drive before you drill; fix one without holes with tape or a bracket.")
                .with_about([&part.id])
                .with_at(part.bounds().centre()),
        );
    }
}
