//! From the rear frame to the case: everything is moved, the feet find their places, and the result is put together.

use kurbo::Point;

use super::arrange::{Draft, gap};
use super::hang::{HungPart, low_openings};
use super::needs::{self, Settled};
use super::{Arrangement, BoardPlace, CardPlace, CaseSize, FanPlace, PortKind, WallPlace, feet, hardware_room, walls};
use crate::design::{Spec, Wall};
use crate::dimensions::fans as fan_table;
use crate::dimensions::margins;
use crate::parts::{Carrier, Part, PartKind, card, feet as feet_parts, tongue, wall};
use crate::solid::{Aabb, TOUCH_MM};
use crate::sorting::sort_by_key;

pub(super) fn case_size(spec: &Spec, settled: &Settled) -> CaseSize {
    let t = spec.sheet.thickness_mm();
    let shell = needs::shell(spec);
    CaseSize {
        outside_mm: settled.outside,
        inside_mm: [0, 1, 2].map(|axis| settled.outside[axis] - shell[axis]),
        thickness_mm: t,
        gap_mm: gap(spec),
        joints: spec.making.joints,
    }
}

/// From the rear frame to the case frame.
pub(super) fn shift(spec: &Spec, settled: &Settled) -> [f64; 3] {
    let t = spec.sheet.thickness_mm();
    [spec.making.joints.shell_mm(Wall::Left, t) - settled.room.left, settled.outside[1] - t, t]
}

pub(super) fn finish(spec: &Spec, draft: Draft) -> Arrangement {
    let case = case_size(spec, &draft.settled);
    let by = shift(spec, &draft.settled);
    let t = case.thickness_mm;
    let move_point = |point: [f64; 3]| [0, 1, 2].map(|axis| point[axis] + by[axis]);
    let mut parts: Vec<Part> = draft.parts.into_iter().map(|part| moved(part, by)).collect();
    let mut fans = Vec::new();
    let mut button = None;
    let mut ports = Vec::new();
    let mut jack = None;
    for hung in &draft.hung {
        let ([_, _], frame) = case.panel(hung.wall);
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
    sort_by_key(&mut fans, |fan| fan.number);
    let (floor_size, floor_frame) = case.panel(Wall::Floor);
    let far = floor_frame.to_case(Point::new(floor_size[0], floor_size[1]), 0.0);
    let near = floor_frame.origin;
    let floor = [near[0].min(far[0]), near[1].min(far[1]), near[0].max(far[0]), near[1].max(far[1])];
    let board_place = BoardPlace { origin: move_point(draft.board.origin) };
    let mut reserved = heads_below(&parts, t);
    reserved.extend(tongue_room(spec, &board_place, [floor[0], floor[2]], &parts));
    reserved.extend(hardware_rooms(spec, &case, &board_place, &parts));
    let feet = feet::place(spec, case.longest_mm(), floor, [0.0, t], &parts, &reserved);
    for (index, at) in feet.iter().enumerate() {
        parts.push(feet_parts::part(&spec.feet, index + 1, *at, [0.0, t]));
    }
    let shelf_screws = shelf_screws(spec, &board_place, &case);
    Arrangement {
        case,
        needs: draft.needs,
        room: draft.settled.room,
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
const HEADS_MM: f64 = margins::SCREW_HEADS_BELOW.get();

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
const HARDWARE_AIR_MM: f64 = margins::AROUND_HARDWARE.get();

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

/// Room for the captive nut that holds the sleeve to the floor and for a bracket between floor and back, where there is
/// any.
fn hardware_rooms(spec: &Spec, case: &CaseSize, place: &BoardPlace, parts: &[Part]) -> Vec<Aabb> {
    let at = |wall: Wall| case.inner(wall).2;
    let bodies = |carrier: Carrier| -> Vec<Aabb> {
        parts.iter().filter(|part| part.carrier == carrier).flat_map(|part| part.bodies.iter().copied()).collect()
    };
    let inside = hardware_room::Inside {
        x: [at(Wall::Left), at(Wall::Right)],
        y: [at(Wall::Front), at(Wall::Back)],
        floor: at(Wall::Floor),
        chassis: &bodies(Carrier::Chassis),
        sleeve: &bodies(Carrier::Sleeve),
        open: &low_openings(spec, place),
    };
    let captive = hardware_room::front_captive(spec, &inside).filter(|kept| kept.missing <= TOUCH_MM);
    let mut rooms: Vec<Aabb> =
        captive.map(|kept| kept.room).into_iter().chain(hardware_room::back_bracket(spec, &inside).ok()).collect();
    // Their screws come up through the floor: no foot stands on the heads.
    for room in &mut rooms {
        room.min[2] = -HEADS_MM;
    }
    rooms
}

fn shelf_screws(spec: &Spec, place: &BoardPlace, case: &CaseSize) -> Vec<Point> {
    let Some(card_spec) = spec.card.as_ref().filter(|_| spec.has_shelf()) else { return Vec::new() };
    let (_, frame) = case.panel(Wall::Back);
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
