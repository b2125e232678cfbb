//! Fans, button, connectors and jack find their places on the walls, and move the walls as needed.

use super::arrange::EDGE_WEB_MM;
use super::finish::{case_size, shift};
use super::hangers::hangers;
use super::needs::{Needs, Room, Settled, Sizing};
use super::walls::{self, Found, Rectangle};
use super::{BoardPlace, PortKind};
use crate::design::{SizeRule, Spec, Wall};
use crate::dimensions::boards;
use crate::parts::{Part, card};
use crate::solid::Aabb;

/// Rounds of moving walls for what hangs on them; each round settles what the one before moved.
const ROUNDS: usize = 4;

/// What hangs on a wall.
#[derive(Clone)]
pub(super) enum HungPart {
    Fan(usize),
    Button,
    Port(PortKind, usize),
    Jack,
}

pub(super) struct Hung {
    pub(super) part: HungPart,
    pub(super) wall: Wall,
    pub(super) centre: [f64; 2],
    /// Its body in the rear frame, without what stands outside the panel.
    pub(super) body: Aabb,
}

/// Finds places for what hangs on walls, moving walls as needed.
pub(super) fn hang(
    spec: &Spec,
    sizing: &Sizing,
    needs: &mut Needs,
    parts: &[Part],
    board_place: &BoardPlace,
) -> (Settled, Vec<Hung>) {
    let may_grow = !matches!(spec.size, SizeRule::Given(_));
    let bodies: Vec<Aabb> = parts.iter().flat_map(|part| part.bodies.iter().copied()).collect();
    let zones: Vec<Aabb> = parts.iter().flat_map(|part| part.keep_clear.iter().map(|keep| keep.zone)).collect();
    let mut settled = sizing.settle(needs);
    let mut hung = Vec::new();
    for round in 0..ROUNDS {
        hung.clear();
        let room = settled.room;
        let case = case_size(spec, &settled);
        let shift = shift(spec, &settled);
        let mut obstacles = bodies.clone();
        let mut taken = back_openings(spec, board_place);
        let mut grown = *needs;
        for (part, hanger) in hangers(spec, &room, &case, shift, board_place, may_grow) {
            let on_wall: Vec<Rectangle> =
                taken.iter().filter(|(wall, _)| *wall == hanger.wall).map(|(_, rectangle)| *rectangle).collect();
            let over = |found: &Found| {
                let mut needs = grown;
                walls::push(&mut needs, &room, &hanger, found);
                sizing.excess(&needs)
            };
            let way = walls::Way { slide: spec.sleeve.slide, obstacles: &obstacles, zones: &zones, taken: &on_wall };
            let found = walls::find(&hanger, &room, &way, &over);
            walls::push(&mut grown, &room, &hanger, &found);
            obstacles.push(found.body);
            let web = EDGE_WEB_MM[0];
            taken.push((
                hanger.wall,
                [0, 1].map(|index| {
                    let half = hanger.size[index] / 2.0 + web;
                    [found.centre[index] - half, found.centre[index] + half]
                }),
            ));
            hung.push(Hung { part, wall: hanger.wall, centre: found.centre, body: found.body });
        }
        if !may_grow || grown == *needs || round + 1 == ROUNDS {
            break;
        }
        *needs = grown;
        settled = sizing.settle(needs);
    }
    (settled, hung)
}

/// The openings of the back and what else takes its sheet, as solids that reach far into the case.
pub(super) fn openings_as_solids(spec: &Spec, place: &BoardPlace, room: &Room) -> Vec<Aabb> {
    back_openings(spec, place)
        .into_iter()
        .map(|(_, [x, z])| Aabb::new([x[0], room.front, z[0]], [x[1], 0.0, z[1].min(room.top.max(z[0]))]))
        .collect()
}

/// Stretches of the back, along x, whose openings come so far down that a bracket's leg would stand before them.
pub(super) fn low_openings(spec: &Spec, place: &BoardPlace) -> Vec<[f64; 2]> {
    let (above_floor, x) = (spec.board.standoff_mm, place.origin[0]);
    let io_x = boards::IO_X.get();
    let mut out = vec![([io_x[0], io_x[1]], boards::IO_Z.get()[0])];
    if let Some(card_spec) = &spec.card {
        let window = card::window(card_spec, &spec.board, spec.sheet.thickness_mm());
        out.push((window.x, window.bottom));
    }
    let leg = spec.hardware.bracket.leg_mm;
    out.into_iter().filter(|(_, bottom)| above_floor + bottom < leg).map(|([from, to], _)| [x + from, x + to]).collect()
}

/// Below the board's underside nothing hangs on the back before the card's tongues, which end 10 below it, and the
/// brackets that hold them, mm (common practice).
const BELOW_WINDOW_MM: f64 = 20.0;

/// Rectangles of the back that openings and the shelf's lug take, with sheet left around them.
fn back_openings(spec: &Spec, place: &BoardPlace) -> Vec<(Wall, Rectangle)> {
    let web = EDGE_WEB_MM[0];
    let z = place.origin[2];
    let x = place.origin[0];
    let io_x = boards::IO_X.get();
    let io_z = boards::IO_Z.get();
    let mut out = vec![(Wall::Back, [[x + io_x[0] - web, x + io_x[1] + web], [z + io_z[0] - web, z + io_z[1] + web]])];
    if let Some(card_spec) = &spec.card {
        let window = card::window(card_spec, &spec.board, spec.sheet.thickness_mm());
        let top = window.top.map_or(f64::INFINITY, |top| z + top + web);
        out.push((Wall::Back, [[x + window.x[0] - web, x + window.x[1] + web], [z - BELOW_WINDOW_MM, top]]));
        if spec.has_shelf() {
            let screws = card::shelf_screws(card_spec, &spec.board, spec.sheet.thickness_mm());
            let lug = card::SHELF_LUG_MM[0] / 2.0;
            out.push((
                Wall::Back,
                [[x + screws[0][0] - lug, x + screws[0][0] + lug], [z + screws[1][1] - lug, z + screws[0][1] + lug]],
            ));
        }
    }
    out
}

impl Spec {
    /// Whether a screw shelf holds the card's tab.
    pub(super) fn has_shelf(&self) -> bool {
        self.card.as_ref().is_some_and(|card_spec| card_spec.hold == crate::design::CardHold::Shelf)
    }
}
