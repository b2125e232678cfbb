//! The rule by which everything is placed.
//!
//! Parts are first placed in the *rear frame* (see [`super::needs`]), where the board and the back stand still; then the
//! walls are put around them by the size rule, what hangs on walls finds its place (which may move a wall once more),
//! and all of it is moved into the case frame.

use kurbo::Point;

use super::needs::{Needs, Room, Settled, settle};
use super::walls::{self, Found, Hanger, Rectangle};
use super::{
    Arrangement, BoardPlace, CardPlace, CaseSize, DrivePlace, FanPlace, PortKind, SupplyPlace, WallPlace, drives, feet,
};
use crate::design::{
    CoolerAir, Corners, DrivePlace as DriveWanted, FanSide, FeetKind, IoOpening, SizeRule, Spec, SupplyKind,
    SupplyPose, Wall,
};
use crate::dimensions::{boards, cards, fans as fan_table, supplies};
use crate::parts::{Carrier, Part, PartKind, board, card, cooler, drive, feet as feet_parts, supply, tongue, wall};
use crate::solid::Aabb;

/// Air beside a part that the sleeve slides past, beyond the running clearance: least and comfortable, mm (common
/// practice: edges of hand-cut sheet are not straight to better than this).
const BESIDE_MM: [f64; 2] = [1.0, 3.0];
/// Air before a card's fans, mm: a vent beside them lets them breathe; comfortable is a finger's width (common practice).
const CARD_AIR_MM: [f64; 2] = [3.0, 10.0];
/// Beyond the far end of a card, mm (common practice).
const CARD_END_MM: [f64; 2] = [2.0, 10.0];
/// Above a tower cooler, mm (common practice).
const OVER_TOWER_MM: [f64; 2] = [2.0, 6.0];
/// Above a cooler that takes its air from above, mm: 81.28 less 71.12 in the thermal design guides of the LGA775 era;
/// comfortable is 15 (from memory: measure yours).
const OVER_INTAKE_MM: [f64; 2] = [10.16, 15.0];
/// Sheet left between an opening and the panel's edge, mm: half the usual sheet, comfortable a whole one (common
/// practice).
const EDGE_WEB_MM: [f64; 2] = [3.0, 6.0];
/// Between the board's front edge and a supply before it, mm: leads leave the board here (common practice).
const BEFORE_BOARD_MM: f64 = 10.0;
/// Between parts and a supply beside them, mm (common practice).
const BESIDE_SUPPLY_MM: f64 = 3.0;
/// Air before a fan on a wall: least and comfortable, mm (fan handbooks: leave depth free on the intake side; figure
/// common practice).
const BEFORE_FAN_MM: [f64; 2] = [5.0, 15.0];
/// Rounds of moving walls for what hangs on them; each round settles what the one before moved.
const ROUNDS: usize = 4;

/// Places everything and finds the size of the case.
#[must_use]
pub fn arrange(spec: &Spec) -> Arrangement {
    let poses: &[SupplyPose] = match (spec.supply.kind, &spec.supply.pose) {
        (SupplyKind::Brick, _) => &[SupplyPose::EndFront],
        (_, SupplyPose::Auto) => {
            &[SupplyPose::EndFront, SupplyPose::EndBeside, SupplyPose::BackFlat, SupplyPose::BackTall]
        }
        (_, pose) => std::slice::from_ref(pose),
    };
    // Drives, fans and connectors can only push walls outward: a pose whose size without them is already no better than
    // the best complete one need not be finished.
    let mut begun: Vec<(f64, f64, Begun)> = poses
        .iter()
        .map(|pose| {
            let begun = begin(spec, *pose);
            let settled = settle(&begun.needs, spec);
            (settled.excess, volume(&settled), begun)
        })
        .collect();
    begun.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut best: Option<(f64, f64, Draft)> = None;
    for (missing, least, start) in begun {
        if best.as_ref().is_some_and(|(m, v, _)| (*m, *v) <= (missing, least)) {
            break;
        }
        let draft = complete(spec, start);
        let (missing, size) = (draft.settled.excess, volume(&draft.settled));
        if best.as_ref().is_none_or(|(m, v, _)| (missing, size) < (*m, *v)) {
            best = Some((missing, size, draft));
        }
    }
    let chosen = best.map_or_else(|| complete(spec, begin(spec, SupplyPose::EndFront)), |(_, _, draft)| draft);
    finish(spec, chosen)
}

fn volume(settled: &Settled) -> f64 {
    settled.outside.iter().product()
}

/// Board, what stands on it and the supply in their places.
struct Begun {
    needs: Needs,
    parts: Vec<Part>,
    board: BoardPlace,
    supply: Option<SupplyPlace>,
}

/// Everything placed in the rear frame for one pose of the supply.
struct Draft {
    settled: Settled,
    parts: Vec<Part>,
    board: BoardPlace,
    supply: Option<SupplyPlace>,
    drives: Vec<DrivePlace>,
    hung: Vec<Hung>,
}

/// What hangs on a wall.
#[derive(Clone)]
enum HungPart {
    Fan(usize),
    Button,
    Port(PortKind, usize),
    Jack,
}

struct Hung {
    part: HungPart,
    wall: Wall,
    centre: [f64; 2],
}

fn gap(spec: &Spec) -> f64 {
    // Both faces that slide past each other carry their finish: inside of the sleeve, edges of the chassis.
    spec.sleeve.clearance_mm + spec.sheet.finish_in_mm + spec.sheet.paint_edges_mm
}

fn begin(spec: &Spec, pose: SupplyPose) -> Begun {
    let t = spec.sheet.thickness_mm();
    let place = BoardPlace { origin: [0.0, boards::REAR_WALL_INNER_Y.get(), spec.board.standoff_mm] };
    let mut parts = board::parts(&spec.board, &place);
    if let Some(cooler_spec) = &spec.cooler {
        parts.push(cooler::part(cooler_spec, &spec.board, &place));
    }
    if let Some(card_spec) = &spec.card {
        parts.extend(card::parts(card_spec, &spec.board, &place, t));
    }
    let mut needs = around_board(spec, &place, &parts);
    let supply_place = place_supply(spec, pose, &parts, &mut needs);
    if let Some(supply_place) = &supply_place {
        parts.push(supply::part(&spec.supply, supply_place, t));
    }
    Begun { needs, parts, board: place, supply: supply_place }
}

fn complete(spec: &Spec, begun: Begun) -> Draft {
    let Begun { mut needs, mut parts, board: place, supply } = begun;
    let mut drive_places = Vec::new();
    // Below the board first, then the back, then the floor: the later ones have the larger choice of places.
    for wanted in [DriveWanted::Below, DriveWanted::Back, DriveWanted::Floor] {
        for drive_spec in spec.drives.iter().filter(|drive_spec| drive_spec.place == wanted) {
            let room = settle(&needs, spec).room;
            let found = drives::place(drive_spec, &room, &parts[0].bodies[0], &parts);
            let part = drive::part(drive_spec, &found);
            if wanted != DriveWanted::Below {
                surround(&mut needs, spec, &part.bounds(), BESIDE_MM);
            }
            for keep in &part.keep_clear {
                surround(&mut needs, spec, &keep.zone, [0.0, 0.0]);
            }
            parts.push(part);
            drive_places.push(found);
        }
    }
    drive_places.sort_by_key(|drive_place| drive_place.number);
    let (settled, hung) = hang(spec, &mut needs, &parts, &place);
    Draft { settled, parts, board: place, supply, drives: drive_places, hung }
}

/// Walls around a box, `air` beyond the running clearance.
fn surround(needs: &mut Needs, spec: &Spec, body: &Aabb, air: [f64; 2]) {
    let least = gap(spec) + air[0];
    let easy = gap(spec) + air[1];
    needs.left(body.min[0] - least, body.min[0] - easy);
    needs.right(body.max[0] + least, body.max[0] + easy);
    needs.front(body.min[1] - least, body.min[1] - easy);
    needs.top(body.max[2] + least, body.max[2] + easy);
}

/// What board, cooler, memory and card ask of the walls.
fn around_board(spec: &Spec, place: &BoardPlace, parts: &[Part]) -> Needs {
    let mut needs = Needs::around_origin();
    let g = gap(spec);
    for part in parts {
        match part.kind {
            PartKind::Cooler | PartKind::Shelf | PartKind::CardBracket => {}
            PartKind::Card => {
                let body = part.bounds();
                needs.left(body.min[0] - g - CARD_AIR_MM[0], body.min[0] - g - CARD_AIR_MM[1]);
                needs.front(body.min[1] - g - CARD_END_MM[0], body.min[1] - g - CARD_END_MM[1]);
                needs.top(body.max[2] + g + BESIDE_MM[0], body.max[2] + g + BESIDE_MM[1]);
                for keep in &part.keep_clear {
                    needs.front(keep.zone.min[1] - g, keep.zone.min[1] - g);
                    needs.top(keep.zone.max[2] + g, keep.zone.max[2] + g);
                }
            }
            _ => surround(&mut needs, spec, &part.bounds(), BESIDE_MM),
        }
    }
    if let Some(cooler_spec) = &spec.cooler
        && let Some(part) = parts.iter().find(|part| part.kind == PartKind::Cooler)
    {
        let body = part.bounds();
        let over = match cooler_spec.air {
            CoolerAir::Down | CoolerAir::Up => OVER_INTAKE_MM,
            _ => OVER_TOWER_MM,
        };
        needs.top(body.max[2] + over[0], body.max[2] + over[1]);
        needs.left(body.min[0] - g - BESIDE_MM[0], body.min[0] - g - BESIDE_MM[1]);
        needs.right(body.max[0] + g + BESIDE_MM[0], body.max[0] + g + BESIDE_MM[1]);
        needs.front(body.min[1] - g - BESIDE_MM[0], body.min[1] - g - BESIDE_MM[1]);
    }
    // The connector opening and the card window need sheet beside them in the back, which is a gap narrower.
    let right = place.to_case([boards::IO_X.get()[1], 0.0, 0.0])[0];
    let border = if spec.board.io_opening == IoOpening::Rebate { boards::IO_BORDER.get() } else { 0.0 };
    needs.right(right + g + border + EDGE_WEB_MM[0], right + g + border + EDGE_WEB_MM[1]);
    let io_top = place.to_case([0.0, 0.0, boards::IO_Z.get()[1]])[2] + border;
    needs.top(io_top + g + EDGE_WEB_MM[0], io_top + g + EDGE_WEB_MM[1]);
    if let Some(card_spec) = &spec.card {
        let window = card::window(card_spec, &spec.board, spec.sheet.thickness_mm());
        needs.left(window.x[0] - g - EDGE_WEB_MM[0], window.x[0] - g - EDGE_WEB_MM[1]);
        let tab_top = cards::shelf_z(card::table_height(card_spec.kind)).get() + cards::BRACKET_THICKNESS.get();
        let top = place.origin[2] + window.top.unwrap_or(tab_top);
        needs.top(top + g + EDGE_WEB_MM[0], top + g + EDGE_WEB_MM[1]);
    }
    needs
}

/// Places the supply and asks for walls around it.
fn place_supply(spec: &Spec, pose: SupplyPose, parts: &[Part], needs: &mut Needs) -> Option<SupplyPlace> {
    let size = supply::size(&spec.supply)?;
    let extent = supply::footprint(size, pose);
    let g = gap(spec);
    let air = supplies::AIR_GAP.get();
    let board_box = parts.first()?.bodies.first()?;
    // A side whose fan has not been looked up gets the published air; a side known to have none, a hair.
    let side = |upper: bool| match (spec.supply.fan_side, upper) {
        (FanSide::Unknown, _) | (FanSide::Upper, true) | (FanSide::Lower, false) => air,
        _ => BESIDE_SUPPLY_MM,
    };
    // "Upper" looks along the face's v (see parts::supply): to the back, to the right, up, or to the right.
    let turned = spec.supply.turned;
    let along = side(!turned);
    let against = side(turned);
    let cables = spec.supply.cable_room_mm;
    let cables_least = cables.min(supplies::CABLE_ROOM.get()[0]);
    let widest = |low: f64, high: f64, y: [f64; 2], z_top: f64| -> [f64; 2] {
        // The free stretch of x between parts that reach into these y and below this z.
        let mut from = low;
        let mut to = high;
        for body in parts.iter().flat_map(|part| &part.bodies) {
            if body.min[1] < y[1] && body.max[1] > y[0] && body.min[2] < z_top {
                if body.centre()[0] < 60.0 {
                    from = from.max(body.max[0]);
                } else {
                    to = to.min(body.min[0]);
                }
            }
        }
        [from, to]
    };
    let min = match pose {
        SupplyPose::EndFront | SupplyPose::Auto => {
            let rear = board_box.min[1] - BEFORE_BOARD_MM.max(along);
            let y = [rear - extent[1], rear];
            let [from, to] = widest(needs.left.least, f64::INFINITY, y, extent[2]);
            let has_card = spec.card.is_some() && from > needs.left.least;
            let x = if has_card {
                // Between the card and the right wall, to the right where there is more room than needed.
                let right = (needs.right.least - g - BESIDE_MM[1] - extent[0]).min(to - extent[0]);
                right.max(from + BESIDE_SUPPLY_MM)
            } else {
                // In the middle of what the board takes.
                let middle = (needs.left.least + needs.right.least) / 2.0;
                (middle - extent[0] / 2.0).max(needs.left.least + g + BESIDE_MM[0])
            };
            // The front feet stand in the strip between supply and front, unless the supply leaves them the corners.
            let strip = if spec.feet.kind == FeetKind::None { 0.0 } else { g + feet::STRIP_MM };
            let before = against.max(strip);
            needs.front(y[0] - before.max(g + BESIDE_MM[0]), y[0] - before.max(g + BESIDE_MM[1]));
            needs.top(extent[2] + g + cables_least, extent[2] + g + cables);
            [x, y[0], 0.0]
        }
        SupplyPose::EndBeside => {
            let right = boards::IO_X.get()[1].max(board_box.max[0]);
            let x = right + BESIDE_SUPPLY_MM.max(against);
            needs.right(x + extent[0] + along.max(g + BESIDE_MM[0]), x + extent[0] + along.max(g + BESIDE_MM[1]));
            needs.top(extent[2] + g + cables_least, extent[2] + g + cables);
            [x, -BACK_STRIP_MM - extent[1], 0.0]
        }
        SupplyPose::BackFlat | SupplyPose::BackTall => {
            let right = boards::IO_X.get()[1].max(board_box.max[0]);
            // Lying flat the fan looks up or down; on its side it looks to the right or the left.
            let (left_air, right_air) =
                if pose == SupplyPose::BackTall { (against, along) } else { (BESIDE_SUPPLY_MM, BESIDE_SUPPLY_MM) };
            let x = right + EDGE_WEB_MM[1] + left_air.max(supplies::FACE_FLANGE.get());
            needs.right(
                x + extent[0] + right_air.max(g + EDGE_WEB_MM[0]),
                x + extent[0] + right_air.max(g + EDGE_WEB_MM[1]),
            );
            let above = if pose == SupplyPose::BackFlat { along } else { BESIDE_MM[0] };
            needs.top(extent[2] + g + above, extent[2] + g + above.max(BESIDE_MM[1]));
            needs.front(-extent[1] - cables_least - g, -extent[1] - cables - g);
            [x, -extent[1], 0.0]
        }
    };
    let body = Aabb::new(min, [0, 1, 2].map(|axis| min[axis] + extent[axis]));
    surround(needs, spec, &body, BESIDE_MM);
    Some(supply::place(&spec.supply, size, pose, min))
}

/// Strip along the back kept free beside a supply on end, mm: a bracket's leg and air (common practice).
const BACK_STRIP_MM: f64 = 22.0;

/// Finds places for what hangs on walls, moving walls as needed.
fn hang(spec: &Spec, needs: &mut Needs, parts: &[Part], board_place: &BoardPlace) -> (Settled, Vec<Hung>) {
    let may_grow = !matches!(spec.size, SizeRule::Given(_));
    let bodies: Vec<Aabb> = parts.iter().flat_map(|part| part.bodies.iter().copied()).collect();
    let zones: Vec<Aabb> = parts.iter().flat_map(|part| part.keep_clear.iter().map(|keep| keep.zone)).collect();
    let mut settled = settle(needs, spec);
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
            let found: Found = walls::find(&hanger, &room, spec.sleeve.slide, &obstacles, &zones, &on_wall);
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
            hung.push(Hung { part, wall: hanger.wall, centre: found.centre });
        }
        if !may_grow || grown == *needs || round + 1 == ROUNDS {
            break;
        }
        *needs = grown;
        settled = settle(needs, spec);
    }
    (settled, hung)
}

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
        out.push((Wall::Back, [[x + window.x[0] - web, x + window.x[1] + web], [z - 20.0, top]]));
        if spec.parts_shelf() {
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
    fn parts_shelf(&self) -> bool {
        self.card.as_ref().is_some_and(|card_spec| card_spec.hold == crate::design::CardHold::Shelf)
    }
}

/// Everything that hangs on a wall, in the order in which it may choose: what the maker pinned, then the largest.
fn hangers(
    spec: &Spec,
    room: &Room,
    case: &CaseSize,
    shift: [f64; 3],
    board_place: &BoardPlace,
    may_grow: bool,
) -> Vec<(HungPart, Hanger)> {
    let sides = spec.sleeve.corners == Corners::Sides;
    let margin = gap(spec) + 2.0;
    let middle = |wall: Wall| -> [f64; 2] {
        let spans = [[room.left, room.right], [room.front, 0.0], [0.0, room.top]];
        walls::plane(wall).map(|axis| (spans[axis][0] + spans[axis][1]) / 2.0)
    };
    // A place given on a panel, seen from outside, in the plane of the rear frame.
    let pin = |wall: Wall, across: Option<f64>, up: Option<f64>| -> [Option<f64>; 2] {
        let ([_, _], frame) = case.panel(wall, sides);
        let at = frame.to_case(Point::new(across.unwrap_or(0.0), up.unwrap_or(0.0)), 0.0);
        let axes = walls::plane(wall);
        [0, 1].map(|index| {
            let along_u = frame.u[axes[index]] != 0.0;
            let given = if along_u { across } else { up };
            given.map(|_| at[axes[index]] - shift[axes[index]])
        })
    };
    let [socket_x, socket_y] = board::socket(&spec.board);
    let socket = board_place.to_case([socket_x, socket_y, 0.0]);
    let cooler_z = board_place.origin[2]
        + boards::PCB_THICKNESS.get()
        + spec.cooler.as_ref().map_or(40.0, |cooler_spec| cooler::PROCESSOR_MM + cooler_spec.height_mm / 2.0);
    let mut out: Vec<(HungPart, Hanger)> = Vec::new();
    let mut fans: Vec<usize> = (0..spec.fans.len()).collect();
    fans.sort_by(|a, b| {
        let pinned = |index: usize| spec.fans[index].across_mm.is_none();
        (pinned(*a), -spec.fans[*a].size_mm)
            .partial_cmp(&(pinned(*b), -spec.fans[*b].size_mm))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    for index in fans {
        let fan = &spec.fans[index];
        let target = match fan.wall {
            Wall::Back => [socket[0], cooler_z],
            Wall::Top => [socket[0], socket[1]],
            Wall::Left | Wall::Right => [socket[1], cooler_z],
            Wall::Front | Wall::Floor => middle(fan.wall),
        };
        let opening = fan_table::fan(fan.size_mm as u32).map_or(fan.size_mm, |row| row.opening.get()) / 2.0;
        out.push((
            HungPart::Fan(index),
            Hanger {
                wall: fan.wall,
                size: [fan.size_mm; 2],
                depth: fan.thickness_mm,
                air: BEFORE_FAN_MM,
                target,
                pinned: pin(fan.wall, fan.across_mm, fan.up_mm),
                margin,
                opening: [opening; 2],
                may_grow,
            },
        ));
    }
    // High and to the right, where a hand finds it.
    let handy = |wall: Wall| match wall {
        Wall::Top => [room.right - 30.0, room.front + 25.0],
        _ => [room.right - 30.0, room.top - 18.0],
    };
    if let Some(button) = &spec.button {
        let side = wall::button_body_mm(button.size_mm);
        out.push((
            HungPart::Button,
            Hanger {
                wall: button.wall,
                size: [side; 2],
                depth: button.depth_mm,
                air: [0.0, 5.0],
                target: handy(button.wall),
                pinned: pin(button.wall, button.across_mm, button.up_mm),
                margin: margin + 4.0,
                opening: [side / 2.0; 2],
                may_grow,
            },
        ));
    }
    out.extend(ports(spec, room, handy, &pin, margin, may_grow));
    if spec.supply.kind == SupplyKind::Brick {
        let side = spec.supply.jack_hole_mm.unwrap_or(12.0) + 4.0;
        out.push((
            HungPart::Jack,
            Hanger {
                wall: Wall::Back,
                size: [side; 2],
                depth: wall::JACK_DEPTH_MM,
                air: [0.0, 5.0],
                target: [room.right - 25.0, board_place.origin[2] + 60.0],
                pinned: [None, None],
                margin: margin + 4.0,
                opening: [side / 2.0; 2],
                may_grow,
            },
        ));
    }
    out
}

/// Front connectors in a row; each finds its own place near the row's.
fn ports(
    spec: &Spec,
    room: &Room,
    handy: impl Fn(Wall) -> [f64; 2],
    pin: &impl Fn(Wall, Option<f64>, Option<f64>) -> [Option<f64>; 2],
    margin: f64,
    may_grow: bool,
) -> Vec<(HungPart, Hanger)> {
    let Some(wanted) = &spec.ports else { return Vec::new() };
    let kinds = [(PortKind::UsbA, wanted.usb_a), (PortKind::UsbC, wanted.usb_c), (PortKind::Audio, wanted.audio)];
    let row: Vec<(PortKind, usize)> = kinds
        .into_iter()
        .flat_map(|(kind, count)| (1..=usize::from(count)).map(move |number| (kind, number)))
        .collect();
    // Between neighbours, mm: plugs side by side (from memory: measure yours; a USB-A plug's body is up to 16 wide).
    const BETWEEN_MM: f64 = 6.0;
    let total: f64 = row.iter().map(|(kind, _)| wall::port_size_mm(*kind)[0] + BETWEEN_MM).sum::<f64>() - BETWEEN_MM;
    let pinned = pin(wanted.wall, wanted.across_mm, wanted.up_mm);
    let mut x = pinned[0].map_or_else(
        || {
            let right = handy(wanted.wall)[0] - 30.0;
            (right - total).max(room.left + margin + 6.0)
        },
        |middle| middle - total / 2.0,
    );
    let mut out = Vec::new();
    for (kind, number) in row {
        let size = wall::port_size_mm(kind);
        let centre = x + size[0] / 2.0;
        x += size[0] + BETWEEN_MM;
        out.push((
            HungPart::Port(kind, number),
            Hanger {
                wall: wanted.wall,
                size,
                depth: wall::PORT_DEPTH_MM,
                air: [0.0, 20.0],
                target: [centre, handy(wanted.wall)[1]],
                pinned: [pinned[0].map(|_| centre), pinned[1]],
                margin: margin + 4.0,
                opening: [size[0] / 2.0, size[1] / 2.0],
                may_grow,
            },
        ));
    }
    out
}

fn case_size(spec: &Spec, settled: &Settled) -> CaseSize {
    let t = spec.sheet.thickness_mm();
    CaseSize {
        outside_mm: settled.outside,
        inside_mm: settled.outside.map(|length| length - 2.0 * t),
        thickness_mm: t,
        gap_mm: gap(spec),
    }
}

/// From the rear frame to the case frame.
fn shift(spec: &Spec, settled: &Settled) -> [f64; 3] {
    let t = spec.sheet.thickness_mm();
    [t - settled.room.left, settled.outside[1] - t, t]
}

fn finish(spec: &Spec, draft: Draft) -> Arrangement {
    let case = case_size(spec, &draft.settled);
    let by = shift(spec, &draft.settled);
    let t = case.thickness_mm;
    let sides = spec.sleeve.corners == Corners::Sides;
    let move_point = |point: [f64; 3]| [0, 1, 2].map(|axis| point[axis] + by[axis]);
    let mut parts: Vec<Part> = draft.parts.into_iter().map(|part| moved(part, by)).collect();
    let mut fans = Vec::new();
    let mut button = None;
    let mut ports = Vec::new();
    let mut jack = None;
    for hung in &draft.hung {
        let ([_, _], frame) = case.panel(hung.wall, sides);
        let axes = walls::plane(hung.wall);
        let mut at = frame.origin;
        for index in 0..2 {
            at[axes[index]] = hung.centre[index] + by[axes[index]];
        }
        let centre = frame.to_panel(at).0;
        let place = WallPlace { wall: hung.wall, centre };
        let carrier = if matches!(hung.wall, Wall::Back | Wall::Floor) { Carrier::Chassis } else { Carrier::Sleeve };
        match &hung.part {
            HungPart::Fan(index) => {
                let fan = &spec.fans[*index];
                parts.push(wall::fan(fan, &frame, t, centre, carrier));
                let table = fan_table::fan(fan.size_mm as u32).and_then(|row| row.spacing).map(|sourced| sourced.get());
                let spacing_mm = fan.spacing_mm.or(table);
                fans.push(FanPlace { number: fan.number, at: place, size_mm: fan.size_mm, spacing_mm });
            }
            HungPart::Button => {
                if let Some(wanted) = &spec.button {
                    parts.push(wall::button(wanted, &frame, t, centre));
                    button = Some(place);
                }
            }
            HungPart::Port(kind, number) => {
                let name = match kind {
                    PortKind::UsbA => "usb-a",
                    PortKind::UsbC => "usb-c",
                    PortKind::Audio => "audio",
                };
                parts.push(wall::port(&format!("port-{name}-{number}"), *kind, &frame, t, centre));
                ports.push((*kind, place));
            }
            HungPart::Jack => {
                parts.push(wall::jack(spec.supply.jack_hole_mm, &frame, t, centre));
                jack = Some(place);
            }
        }
    }
    fans.sort_by_key(|fan| fan.number);
    let (floor_size, floor_frame) = case.panel(Wall::Floor, sides);
    let far = floor_frame.to_case(Point::new(floor_size[0], floor_size[1]), 0.0);
    let near = floor_frame.origin;
    let floor = [near[0].min(far[0]), near[1].min(far[1]), near[0].max(far[0]), near[1].max(far[1])];
    let board_place = BoardPlace { origin: move_point(draft.board.origin) };
    let mut reserved = heads_below(&parts, t);
    reserved.extend(tongue_room(spec, &board_place, [floor[0], floor[2]], &parts));
    let feet = feet::place(&spec.feet, floor, [0.0, t], &parts, &reserved);
    for (index, at) in feet.iter().enumerate() {
        parts.push(feet_parts::part(&spec.feet, index + 1, *at, [0.0, t]));
    }
    let shelf_screws = shelf_screws(spec, &board_place, &case, sides);
    Arrangement {
        case,
        parts,
        board: board_place,
        card: spec
            .card
            .as_ref()
            .map(|card_spec| CardPlace { slot: card::slot(card_spec, &spec.board) as u8, slots: card_spec.slots }),
        supply: draft.supply.map(|mut place| {
            place.face.origin = move_point(place.face.origin);
            place
        }),
        drives: draft
            .drives
            .into_iter()
            .map(|mut place| {
                place.origin = move_point(place.origin);
                place
            })
            .collect(),
        fans,
        button,
        ports,
        jack,
        feet,
        shelf_screws,
    }
}

/// Height of screw heads below the floor, mm: 6-32 pan head 2.46 (ASME B18.6.3) and washers.
const HEADS_MM: f64 = 5.0;

/// Room below the floor for the heads of the screws that come up into what stands on it.
fn heads_below(parts: &[Part], floor_top: f64) -> Vec<Aabb> {
    parts
        .iter()
        .filter(|part| matches!(part.kind, PartKind::Standoff | PartKind::Drive | PartKind::Fan))
        .filter(|part| part.carrier == Carrier::Chassis)
        .flat_map(|part| &part.bodies)
        // Drives stand on washers.
        .filter(|body| body.min[2] - floor_top < HEADS_MM)
        .map(|body| Aabb::new([body.min[0], body.min[1], -HEADS_MM], [body.max[0], body.max[1], 0.0]))
        .collect()
}

/// Air around room reserved for hardware, mm (common practice).
const HARDWARE_AIR_MM: f64 = 0.5;

/// Room for the bracket that holds the card's tongue, which stands where feet like to stand: the first place beside a
/// tongue that is free of other parts.
fn tongue_room(spec: &Spec, place: &BoardPlace, floor_x: [f64; 2], parts: &[Part]) -> Option<Aabb> {
    let card_spec = spec.card.as_ref()?;
    let hardware = &spec.hardware;
    tongue::seats(card_spec, &spec.board, place, &hardware.bracket, hardware.thread)
        .into_iter()
        .map(|seat| seat.room)
        .filter(|room| room.min[0] >= floor_x[0] && room.max[0] <= floor_x[1])
        .find(|room| {
            parts
                .iter()
                .filter(|part| !matches!(part.kind, PartKind::Card | PartKind::CardBracket))
                .all(|part| part.bodies.iter().all(|body| !body.overlaps(room)))
        })
        .map(|room| room.grown(HARDWARE_AIR_MM))
}

fn shelf_screws(spec: &Spec, place: &BoardPlace, case: &CaseSize, sides: bool) -> Vec<Point> {
    let Some(card_spec) = spec.card.as_ref().filter(|_| spec.parts_shelf()) else { return Vec::new() };
    let (_, frame) = case.panel(Wall::Back, sides);
    card::shelf_screws(card_spec, &spec.board, case.thickness_mm)
        .into_iter()
        .map(|[x, z]| frame.to_panel(place.to_case([x, 0.0, z])).0)
        .collect()
}

fn moved(mut part: Part, by: [f64; 3]) -> Part {
    for body in &mut part.bodies {
        *body = body.moved(by);
    }
    for keep in &mut part.keep_clear {
        keep.zone = keep.zone.moved(by);
    }
    part
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    fn design(changes: &[(&str, serde_json::Value)]) -> Spec {
        let mut design = Design::default();
        for (key, value) in changes {
            design.set_json(key, value).unwrap();
        }
        Spec::of(&design)
    }

    /// Pairs of parts that share space.
    fn overlaps(arrangement: &Arrangement) -> Vec<(String, String)> {
        let mut out = Vec::new();
        for (index, a) in arrangement.parts.iter().enumerate() {
            for b in &arrangement.parts[index + 1..] {
                if a.bodies.iter().any(|x| b.bodies.iter().any(|y| x.overlaps(y))) {
                    out.push((a.id.clone(), b.id.clone()));
                }
            }
        }
        out
    }

    /// Common practice says this can be built: Mini-ITX, 158 mm cooler, full-size supply 160 deep on end, two-slot card
    /// of 267 mm, drive below the board, rear fan, every panel within A4 (ISO 216: 210 x 297).
    #[test]
    fn a_full_size_supply_a_tall_cooler_and_a_long_card_fit_into_panels_of_a4() {
        let arrangement = arrange(&design(&[("supply.depth", 160.into())]));
        assert_eq!(overlaps(&arrangement), []);
        for wall in [Wall::Floor, Wall::Back, Wall::Left, Wall::Right, Wall::Front, Wall::Top] {
            let ([w, h], _) = arrangement.case.panel(wall, true);
            assert!(w.min(h) <= 210.0 && w.max(h) <= 297.0, "{wall:?} {w} x {h}");
        }
    }

    /// The rear wall's inside face is 12.27 behind hole row A-B-C (ATX 2.2, figure 4); the floor's top face is the
    /// standoffs' length below the board.
    #[test]
    fn the_board_stands_at_its_published_distance_from_the_back_and_on_its_standoffs() {
        for (form, thickness) in [("mini-itx", 6.0), ("microatx", 3.2), ("atx", 9.0)] {
            let spec = design(&[
                ("board.form", form.into()),
                ("sheet.measured", thickness.into()),
                ("size.rule", "smallest".into()),
            ]);
            let arrangement = arrange(&spec);
            let inside_of_back = arrangement.case.outside_mm[1] - thickness;
            assert!((inside_of_back - arrangement.board.origin[1] - 12.27).abs() < 1e-9);
            assert!((arrangement.board.origin[2] - thickness - 25.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_taller_cooler_makes_a_case_that_may_grow_higher_and_moves_nothing_else_of_the_board() {
        let size = |height: f64| {
            let rule = ("size.rule", "smallest".into());
            arrange(&design(&[("cooler.height", height.into()), ("fan1.size", "none".into()), rule])).case.outside_mm
        };
        let (low, high) = (size(160.0), size(175.0));
        assert!((high[2] - low[2] - 15.0).abs() < 1e-9);
        assert_eq!([low[0], low[1]], [high[0], high[1]]);
    }

    #[test]
    fn a_given_size_is_kept_whatever_the_parts_need() {
        let spec = design(&[
            ("size.rule", "given".into()),
            ("size.width", 230.into()),
            ("size.depth", 310.5.into()),
            ("size.height", 190.into()),
        ]);
        assert_eq!(arrange(&spec).case.outside_mm, [230.0, 310.5, 190.0]);
    }

    #[test]
    fn every_pose_of_the_supply_lays_its_face_on_its_wall() {
        for (pose, wall, extent) in [
            ("end-front", Wall::Floor, [150.0, 86.0, 140.0]),
            ("end-beside", Wall::Floor, [86.0, 150.0, 140.0]),
            ("back-flat", Wall::Back, [150.0, 140.0, 86.0]),
            ("back-tall", Wall::Back, [86.0, 140.0, 150.0]),
        ] {
            for turned in [false, true] {
                let arrangement = arrange(&design(&[
                    ("supply.pose", pose.into()),
                    ("supply.turned", turned.into()),
                    ("supply.depth", 140.into()),
                    ("size.rule", "smallest".into()),
                ]));
                let place = arrangement.supply.unwrap();
                assert_eq!(place.wall, wall);
                let body = arrangement.parts.iter().find(|part| part.kind == PartKind::Supply).unwrap().bounds();
                for (length, expected) in body.size().into_iter().zip(extent) {
                    assert!((length - expected).abs() < 1e-9, "{pose} {turned}");
                }
                let inside = if wall == Wall::Floor { 6.0 } else { arrangement.case.outside_mm[1] - 6.0 };
                let axis = if wall == Wall::Floor { 2 } else { 1 };
                assert!((place.face.origin[axis] - inside).abs() < 1e-9);
                // u x v = out, or the hole pattern would be mirrored.
                let (u, v, out) = (place.face.u, place.face.v, place.face.out);
                let cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
                assert_eq!(cross.map(|value| value + 0.0), out.map(|value| value + 0.0));
            }
        }
    }

    #[test]
    fn a_place_given_by_the_maker_is_where_the_part_goes() {
        let arrangement = arrange(&design(&[
            ("fan2.size", "80".into()),
            ("fan2.wall", "left".into()),
            ("fan2.across", 120.into()),
            ("fan2.up", 100.into()),
            ("size.rule", "smallest".into()),
        ]));
        let fan = arrangement.fans.iter().find(|fan| fan.number == 2).unwrap();
        assert!((fan.at.centre.x - 120.0).abs() < 1e-9 && (fan.at.centre.y - 100.0).abs() < 1e-9);
    }
}
