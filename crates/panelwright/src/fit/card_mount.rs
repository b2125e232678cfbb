//! How the card is held: its window, its tab on the way down, its tongue.

use kurbo::Point;

use super::bracket_holes::is_off_leg;
use super::finding::Finding;
use super::mend::Remedy;
use super::region::free_way;
use super::rule::Rule;
use super::scene::{FLAT_MM, Scene, Shape};
use super::solids::crosses;
use super::words;
use crate::design::{BoardSpec, BracketSize, CardHold, Wall};
use crate::dimensions::boards::REAR_WALL_INNER_Y;
use crate::dimensions::cards;
use crate::dimensions::margins::AROUND_HARDWARE;
use crate::dimensions::source::{Source, Sourced};
use crate::panels::Purpose;
use crate::parts::{Part, PartKind, card, tongue};
use crate::solid::{Aabb, TOUCH_MM};

const CEM: &str = "PCI Express Card Electromechanical Specification 3.0";

/// How far a leg that holds the tongue must reach across and along it, mm.
const TONGUE_GRIP: Sourced<f64> =
    Sourced::new(3.0, Source::common_practice("Workshop custom", "a corner bracket set off the wall by two washers"));

/// Air around a bracket, mm (common practice: as brackets are placed).
const SEAT_AIR_MM: f64 = AROUND_HARDWARE.get();

/// Widest gap in which a tongue still counts as held, mm (common practice).
const TONGUE_PLAY_MM: f64 = 3.0;

pub(super) const CARD_TONGUE: Rule = Rule {
    name: "card-tongue",
    what: "The tongue of the card's bracket has room below the board, above the floor or in a slot in it.",
    source: Source::derived(CEM, "figures 9-3 and 9-5: the tip lies 10.19 mm below the board, 6.14 for low profile"),
    look: card_tongue,
};

pub(super) const CARD_TONGUE_HELD: Rule = Rule {
    name: "card-tongue-held",
    what: "A bracket, or a slot in the floor, holds the tongue of the card's bracket.",
    source: TONGUE_GRIP.source(),
    look: card_tongue_held,
};

pub(super) const CARD_TAB: Rule = Rule {
    name: "card-tab",
    what: "A window closed at its top leaves room for the card's tab on its way down.",
    source: Source::derived(CEM, "figures 9-3 and 9-5: the tongue must pass behind the board from above its top face"),
    look: card_tab,
};

pub(super) const CARD_HOLD: Rule = Rule {
    name: "card-hold",
    what: "The card's tab rests on its shelf, or is tied.",
    source: Source::published(CEM, "figures 9-3 and 9-8: shelf within 0.52 mm"),
    look: card_hold,
};

pub(super) const DISPLAY_PLUG_WINDOW: Rule = Rule {
    name: "display-plug-window",
    what: "In a wall of more than 3 mm the window is wide enough for display plugs to seat.",
    source: cards::PLUG_FREE_WIDTHS.source(),
    look: display_plug_window,
};

fn tongues(scene: &Scene, bracket: &Part) -> Vec<Aabb> {
    let under = scene.board_under();
    bracket.bodies.iter().filter(|body| body.min[2] < under - TOUCH_MM).copied().collect()
}

fn tip(tongues: &[Aabb]) -> Option<f64> {
    tongues.iter().map(|body| body.min[2]).min_by(f64::total_cmp)
}

fn card_tongue(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(bracket), Some(floor)) = (scene.first(PartKind::CardBracket), scene.sheet(Wall::Floor)) else { return };
    for tongue in tongues(scene, bracket) {
        if !crosses(floor, bracket, &tongue) {
            continue;
        }
        let under = scene.board_under();
        let (room, depth) = (under - floor.solid.max[2], under - tongue.min[2]);
        found.push(
            CARD_TONGUE
                .blocks(format!("The card's tongue reaches {} into the floor.", words::short(depth - room)))
                .with_mm(room, depth)
                .with_mends(Remedy::new().at_least(
                    "board.standoff",
                    scene.case.spec.board.standoff_mm + depth - room + cards::TONGUE_OVER_FLOOR.get(),
                    |height| format!("take standoffs of {height} or more"),
                ))
                .with_about([bracket.id.as_str(), floor.id()])
                .with_at([tongue.centre()[0], tongue.centre()[1], floor.solid.max[2]]),
        );
        return;
    }
}

/// How far a leg reaches along a tongue, when it stands close in front of it and far enough across it.
fn grip(tongue: &Aabb, leg: &Aabb) -> Option<f64> {
    let [across, _, along] = tongue.overlap_by_axis(leg);
    let gap = tongue.min[1] - leg.max[1];
    let close = (-TOUCH_MM..=TONGUE_PLAY_MM).contains(&gap);
    (close && across >= TONGUE_GRIP.get() - TOUCH_MM).then_some(along)
}

fn card_tongue_held(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(bracket), Some(floor)) = (scene.first(PartKind::CardBracket), scene.sheet(Wall::Floor)) else { return };
    let tongues = tongues(scene, bracket);
    let Some(tip) = tip(&tongues) else { return };
    let floor_top = floor.solid.max[2];
    let slotted = floor.with_purpose(Purpose::TongueRelief).next().is_some() && tip < floor_top + TOUCH_MM;
    let legs = scene.of(PartKind::Bracket).flat_map(|part| part.bodies.iter());
    let best = legs.flat_map(|leg| tongues.iter().filter_map(|tongue| grip(tongue, leg))).max_by(f64::total_cmp);
    let held = best.is_some_and(|along| along >= TONGUE_GRIP.get() - TOUCH_MM);
    if slotted || held {
        return;
    }
    let leg = scene.case.spec.hardware.bracket.leg_mm;
    let depth = scene.board_under() - tip;
    let standoff = scene.case.spec.board.standoff_mm;
    let highest = leg + depth - TONGUE_GRIP.get();
    let reach = leg - (tip - floor_top);
    let text = if reach < TONGUE_GRIP.get() - TOUCH_MM {
        format!(
            "Nothing holds the card's tongue: its tip ends {} above the floor, a bracket's leg {}.",
            words::mm(tip - floor_top),
            words::mm(leg)
        )
    } else {
        "Nothing holds the card's tongue: no bracket stands before it.".to_owned()
    };
    found.push(
        CARD_TONGUE_HELD
            .caution(text)
            .with_mm(best.unwrap_or(0.0), TONGUE_GRIP.get())
            .with_mends(if is_off_leg(scene.case.spec, PartKind::Bracket) {
                Remedy::new()
                    .say("measure again where the brackets' hole is: off its leg, no bracket can hold the tongue")
            } else if reach < TONGUE_GRIP.get() - TOUCH_MM {
                let longer = leg + TONGUE_GRIP.get() - reach;
                let mut remedy = Remedy::new();
                if seat_is_free(scene, standoff.min(highest), leg) {
                    remedy = remedy.say("take lower standoffs");
                }
                if seat_is_free(scene, standoff, longer) {
                    remedy = remedy
                        .at_least("bracket.leg", longer, |leg| format!("take brackets with legs of {leg} or more"));
                }
                remedy.otherwise("take lower standoffs and make room for a bracket before the tongue")
            } else {
                Remedy::new().say("make room for a bracket before the tongue: move what stands there")
            })
            .with_about([bracket.id.as_str()])
            .with_at([tongues[0].centre()[0], tongues[0].centre()[1], tip]),
    );
}

/// Whether a bracket would find its place before a tongue, with standoffs and legs of some length.
fn seat_is_free(scene: &Scene, standoff_mm: f64, leg_mm: f64) -> bool {
    let spec = scene.case.spec;
    let (Some(card), Some(floor)) = (&spec.card, scene.sheet(Wall::Floor)) else { return false };
    let board = BoardSpec { standoff_mm, ..spec.board.clone() };
    let bracket = BracketSize { leg_mm, ..spec.hardware.bracket };
    let mut place = scene.case.arrangement.board;
    place.origin[2] += standoff_mm - spec.board.standoff_mm;
    tongue::seats(card, &board, &place, &bracket, spec.hardware.thread).iter().any(|seat| {
        let room = seat.room.grown(SEAT_AIR_MM);
        seat.room.min[0] >= floor.solid.min[0]
            && seat.room.max[0] <= floor.solid.max[0]
            && scene
                .bodies
                .iter()
                .filter(|body| !matches!(body.part.kind, PartKind::Card | PartKind::CardBracket))
                .all(|body| !body.solid.overlaps(&room))
    })
}

/// The part of the bracket that reaches out through the back.
fn tab(scene: &Scene, bracket: &Part) -> Option<Aabb> {
    let inside = scene.inside(Wall::Back)?;
    bracket
        .bodies
        .iter()
        .filter(|body| body.max[1] > inside + TOUCH_MM && body.min[2] > scene.board_top())
        .copied()
        .reduce(|all, body| all.union(&body))
}

fn windows<'s, 'a>(scene: &'s Scene<'a>) -> impl Iterator<Item = &'s Shape<'a>> {
    scene.sheet(Wall::Back).into_iter().flat_map(|back| back.with_purpose(Purpose::CardWindow))
}

fn card_tab(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(bracket), Some(back)) = (scene.first(PartKind::CardBracket), scene.sheet(Wall::Back)) else { return };
    let Some(tab) = tab(scene, bracket) else { return };
    let Some(tip) = tip(&tongues(scene, bracket)) else { return };
    let shadow = back.shadow(&tab);
    let middle = shadow.center();
    let Some(window) = windows(scene).find(|shape| shape.bounds.x0 <= middle.x && middle.x <= shape.bounds.x1) else {
        return;
    };
    let points = window.feature.contour.flatten(FLAT_MM);
    let strip = [shadow.x0, shadow.x1];
    let mut headroom = free_way(&points, 1, 1.0, middle.y, strip) - (shadow.y1 - middle.y);
    let travel = scene.board_top() - tip;
    if window.feature.notch && window.bounds.y1 - shadow.y1 - headroom <= TOUCH_MM {
        // It runs out to the edge all the way above the tab.
        headroom = f64::INFINITY;
    }
    if headroom >= travel - TOUCH_MM {
        return;
    }
    let at = [tab.centre()[0], back.solid.centre()[1], tab.max[2] + headroom.max(0.0)];
    found.push(
        CARD_TAB
            .blocks(format!(
                "The window stops the card on its way down: {} above the tab, and the card must be lifted {} to get its tongue behind the board.",
                words::mm(headroom.max(0.0)),
                words::at_least(travel)
            ))
            .with_mm(headroom, travel)
            .with_mends(
                Remedy::new()
                    .at_least("card.headroom", scene.case.spec.card.as_ref().map_or(0.0, |card| card.headroom_mm) + travel - headroom, |room| {
                        format!("leave {room} above the tab")
                    })
                    .pick("card.window", "edge", "run the window out to the top edge"),
            )
            .with_about([bracket.id.as_str(), back.id()])
            .with_about([format!("back/{}", window.feature.id)])
            .with_at(at),
    );
}

fn card_hold(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(spec), Some(bracket)) = (&scene.case.spec.card, scene.first(PartKind::CardBracket)) else { return };
    let Some(tab) = tab(scene, bracket) else { return };
    let tie = Remedy::new().pick("card.hold", "tie", "take a tie through two holes");
    let shelf = scene.first(PartKind::Shelf);
    let finding = match (spec.hold, shelf) {
        (CardHold::Tie, _) => return,
        (CardHold::Shelf, Some(shelf)) => {
            let gap = tab.min[2] - shelf.bounds().max[2];
            if gap.abs() <= cards::SHELF_TOLERANCE.get() + TOUCH_MM {
                return;
            }
            CARD_HOLD
                .caution(format!("The card's tab lies {} from its shelf.", words::mm(gap.abs())))
                .with_mm(gap.abs(), cards::SHELF_TOLERANCE.get())
                .with_mends(tie)
                .with_about([bracket.id.as_str(), shelf.id.as_str()])
        }
        (CardHold::Shelf | CardHold::None, _) => CARD_HOLD
            .caution("Nothing holds the card at its top: it leans out of its slot when the case is moved.")
            .with_mends(if spec.hold == CardHold::None { tie.pick("card.hold", "shelf", "a screw shelf") } else { tie })
            .with_about([bracket.id.as_str()])
            .with_source(Source::common_practice("Workshop custom", "a card is screwed or tied at its tab")),
    };
    found.push(finding.with_at(tab.centre()));
}

fn display_plug_window(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(spec), Some(place)) = (&scene.case.spec.card, scene.case.arrangement.card) else { return };
    let Some(back) = scene.sheet(Wall::Back) else { return };
    let thickness = back.panel.thickness_mm;
    let needed = cards::window_width_in_wall(thickness).get();
    let mut worst: Option<(f64, [f64; 3])> = None;
    for slot in u32::from(place.slot)..u32::from(place.slot) + u32::from(place.slots) {
        let least = cards::window(slot, card::table_height(spec.kind));
        let middle =
            [(least.x_mm[0] + least.x_mm[1]) / 2.0, REAR_WALL_INNER_Y.get(), (least.z_mm[0] + least.z_mm[1]) / 2.0];
        let at = scene.case.arrangement.board.to_case(middle);
        let (centre, _) = back.panel.frame.to_panel(at);
        let [panel_width, _] = back.panel.size_mm;
        if centre.x <= 0.0 || centre.x >= panel_width {
            // The slot lies beside the back altogether: the size of the case is what is wrong, and told elsewhere.
            continue;
        }
        let half = (least.z_mm[1] - least.z_mm[0]) / 2.0;
        let heights = [centre.y - half, centre.y + half];
        let width = windows(scene).map(|shape| free_width(shape, centre, heights)).fold(0.0, f64::max);
        if worst.is_none_or(|(least, _)| width < least) {
            worst = Some((width, at));
        }
    }
    let Some((width, at)) = worst.filter(|(width, _)| *width < needed - TOUCH_MM) else { return };
    found.push(
        DISPLAY_PLUG_WINDOW
            .blocks(format!(
                "Display plugs do not seat: the window is {} wide about a plug, and in a wall of {} it must be {}.",
                words::mm(width),
                words::mm(thickness),
                words::limit(needed)
            ))
            .with_mm(width, needed)
            .with_mends(
                Remedy::new()
                    .say("give the back more width beside the card (a larger outside width), or thinner sheet"),
            )
            .with_about(["card-bracket", "back"])
            .with_at(at),
    );
}

/// Width of a window that is free to both sides of a plug over a range of heights, mm; 0 when the plug is not before
/// it.
fn free_width(shape: &Shape, centre: Point, heights: [f64; 2]) -> f64 {
    if !shape.feature.contour.contains(centre) {
        return 0.0;
    }
    let points = shape.feature.contour.flatten(FLAT_MM);
    let way = |sense| free_way(&points, 0, sense, centre.x, heights);
    2.0 * way(1.0).min(way(-1.0)).min(shape.bounds.width())
}
