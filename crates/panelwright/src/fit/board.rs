//! The board: its standoffs, what lies below it, its connector shield.

use super::finding::Finding;
use super::mend::Remedy;
use super::more_room::elsewhere;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{IoOpening, SizeRule, Value, Wall};
use crate::dimensions::boards::{IO_SHIELD_WALL, MIN_STANDOFF, UNDERSIDE_LEADS};
use crate::panels::Purpose;
use crate::parts::{Part, PartKind};
use crate::solid::{Aabb, TOUCH_MM};

pub(super) const STANDOFF_LEAST: Rule = Rule {
    name: "standoff-least",
    what: "The board stands at least 6.35 mm above the floor.",
    source: MIN_STANDOFF.source(),
    look: standoff_least,
};

pub(super) const METAL_UNDER_BOARD: Rule = Rule {
    name: "metal-under-board",
    what: "Brackets, nuts and washers below the board keep 6.35 mm from it.",
    source: MIN_STANDOFF.source(),
    look: metal_under_board,
};

pub(super) const SHIELD_DOES_NOT_CLIP: Rule = Rule {
    name: "shield-does-not-clip",
    what: "The board's connector shield clips only to sheet of 0.94 to 1.32 mm.",
    source: IO_SHIELD_WALL.source(),
    look: shield_does_not_clip,
};

/// The bodies of the board that hang below its underside.
pub(super) fn hidden_below(board: &Part, under: f64) -> impl Iterator<Item = &Aabb> {
    board.bodies.iter().filter(move |body| body.min[2] < under - TOUCH_MM)
}

fn standoff_least(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(floor), Some(board)) = (scene.sheet(Wall::Floor), scene.first(PartKind::Board)) else { return };
    let height = scene.board_under() - floor.solid.max[2];
    if height >= MIN_STANDOFF.get() - TOUCH_MM {
        return;
    }
    let centre = board.bounds().centre();
    found.push(
        STANDOFF_LEAST
            .blocks(format!(
                "The board stands {} above the floor; {} is the least.",
                words::mm(height),
                words::limit(MIN_STANDOFF.get())
            ))
            .with_mm(height, MIN_STANDOFF.get())
            .with_mends(Remedy::new().mend(
                format!("take standoffs of {} or more", words::limit(MIN_STANDOFF.get())),
                vec![("board.standoff".to_owned(), Value::Number(MIN_STANDOFF.get()))],
            ))
            .with_about([board.id.as_str(), floor.id()])
            .with_at([centre[0], centre[1], scene.board_under()]),
    );
}

fn metal_under_board(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(board) = scene.first(PartKind::Board) else { return };
    let under = scene.board_under();
    let Some(plate) = board.bodies.iter().find(|body| (body.min[2] - under).abs() < TOUCH_MM) else { return };
    let metal = [PartKind::Bracket, PartKind::CaptiveNut, PartKind::Block, PartKind::Washer, PartKind::Foot];
    for part in metal.into_iter().flat_map(|kind| scene.of(kind)) {
        let nearest = part
            .bodies
            .iter()
            .filter(|body| body.max[2] < under + TOUCH_MM)
            .filter(|body| plate.overlap_by_axis(body)[..2].iter().all(|shared| *shared > TOUCH_MM))
            .max_by(|a, b| a.max[2].total_cmp(&b.max[2]));
        let Some(body) = nearest else { continue };
        let gap = under - body.max[2];
        // Wood may come as near as the leads allow.
        let wood = part.kind == PartKind::Block;
        let needed = if wood { UNDERSIDE_LEADS } else { MIN_STANDOFF };
        if gap >= needed.get() - TOUCH_MM {
            continue;
        }
        let name = words::capital(&words::part(part));
        let finding = if gap < UNDERSIDE_LEADS.get() - TOUCH_MM {
            METAL_UNDER_BOARD
                .blocks(format!(
                    "{name} comes within {} of the board; its leads may be {} long and would touch {}.",
                    words::mm(gap),
                    words::limit(UNDERSIDE_LEADS.get()),
                    if wood { "it" } else { "metal" }
                ))
                .with_mm(gap, UNDERSIDE_LEADS.get())
                .with_source(UNDERSIDE_LEADS.source())
        } else {
            METAL_UNDER_BOARD
                .caution(format!(
                    "{name} comes within {} of the board; metal should keep {}.",
                    words::mm(gap),
                    words::limit(MIN_STANDOFF.get())
                ))
                .with_mm(gap, MIN_STANDOFF.get())
        };
        let standoff = scene.case.spec.board.standoff_mm + needed.get() - gap;
        found.push(
            finding
                .with_mends(
                    Remedy::new()
                        .at_least("board.standoff", standoff, |height| format!("take standoffs of {height} or more"))
                        .say_if(elsewhere(part)),
                )
                .with_about([part.id.as_str(), board.id.as_str()])
                .with_at([body.centre()[0], body.centre()[1], body.max[2]]),
        );
    }
}

fn shield_does_not_clip(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(back) = scene.sheet(Wall::Back) else { return };
    let Some(aperture) = back.with_purpose(Purpose::IoAperture).next() else { return };
    let thickness = back.panel.thickness_mm;
    let rebated = back.with_purpose(Purpose::ShieldRebate).filter_map(|shape| shape.feature.blind).next();
    let left = rebated.map_or(thickness, |(depth, _)| thickness - depth);
    let [least, most] = IO_SHIELD_WALL.get();
    if (least - TOUCH_MM..=most + TOUCH_MM).contains(&left) {
        return;
    }
    let centre = aperture.feature.centre;
    let remedy = Remedy::new().say("leave the shield away");
    // A rebate wants its border beside the opening: only a case that is free to grow surely has it.
    let remedy = match (scene.case.spec.board.io_opening, scene.case.spec.size) {
        (IoOpening::Open, SizeRule::Smallest) => {
            remedy.pick("board.io_opening", "rebate", "choose the opening with a rebate")
        }
        _ => remedy,
    };
    found.push(
        SHIELD_DOES_NOT_CLIP
            .note(format!("The board's shield does not clip to {} of sheet.", words::mm(left)))
            .with_mm(left, if left < least { least } else { most })
            .with_mends(remedy)
            .with_about([format!("back/{}", aperture.feature.id)])
            .with_at(back.panel.frame.to_case(centre, 0.0)),
    );
}
