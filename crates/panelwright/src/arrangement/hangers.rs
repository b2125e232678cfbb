//! What hangs on the walls: the size of each, and where it would best be.

use kurbo::Point;

use super::arrange::gap;
use super::hang::HungPart;
use super::needs::Room;
use super::walls::{self, Hanger};
use super::{BoardPlace, CaseSize, PortKind, hardware_room};
use crate::design::{FanSpec, Spec, SupplyKind, Wall};
use crate::dimensions::margins;
use crate::dimensions::{boards, fans as fan_table};
use crate::parts::{board, cooler, wall};
use crate::sorting::sort_by;

/// Air before a fan on a wall: least and comfortable, mm (fan handbooks: leave depth free on the intake side; figure
/// common practice).
const BEFORE_FAN_MM: [f64; 2] = margins::BEFORE_FAN.get();

/// Sheet beside what hangs on a panel, beyond the sleeve's gap, and how much more beside a nut, mm (common practice).
const BESIDE_MM: f64 = 2.0;
const BESIDE_NUT_MM: f64 = 4.0;

/// Air behind a button or a jack, and behind a front connector, whose lead has to bend: least and comfortable, mm
/// (common practice).
const BEHIND_NUT_MM: [f64; 2] = [0.0, 5.0];
const BEHIND_PORT_MM: [f64; 2] = [0.0, 20.0];

/// Where a hand finds a button: so far from the right wall, and from the corner that front and top make, on either of
/// them, mm (common practice).
const FROM_RIGHT_MM: f64 = 30.0;
const FROM_TOP_MM: f64 = 18.0;
const FROM_FRONT_MM: f64 = 25.0;

/// Between a button and the row of connectors beside it, and from the row to the left wall, mm (common practice).
const BESIDE_BUTTON_MM: f64 = 30.0;
const FROM_LEFT_MM: f64 = 6.0;

/// Where the jack of a brick would best be on the back: from the right wall, and above the board, mm: clear of the
/// board's own connectors, which end 42 above it (common practice).
const JACK_FROM_RIGHT_MM: f64 = 25.0;
const JACK_ABOVE_BOARD_MM: f64 = 60.0;

/// Middle of the air that a fan moves where no cooler says it, above the board, mm (common practice).
const AIR_ABOVE_BOARD_MM: f64 = 40.0;

/// Everything that hangs on a wall, in the order in which it may choose: what the maker pinned, then the largest.
pub(super) fn hangers(
    spec: &Spec,
    room: &Room,
    case: &CaseSize,
    shift: [f64; 3],
    board_place: &BoardPlace,
    may_grow: bool,
) -> Vec<(HungPart, Hanger)> {
    let margin = gap(spec) + BESIDE_MM;
    let around_nut = [[margin + BESIDE_NUT_MM; 2]; 2];
    let middle = |wall: Wall| -> [f64; 2] {
        let spans = [[room.left, room.right], [room.front, 0.0], [0.0, room.top]];
        walls::plane(wall).map(|axis| (spans[axis][0] + spans[axis][1]) / 2.0)
    };
    // A place given on a panel, seen from outside, in the plane of the rear frame.
    let pin = |wall: Wall, across: Option<f64>, up: Option<f64>| -> [Option<f64>; 2] {
        let ([_, _], frame) = case.panel(wall);
        let at = frame.to_case(Point::new(across.unwrap_or(0.0), up.unwrap_or(0.0)), 0.0);
        let axes = walls::plane(wall);
        [0, 1].map(|index| {
            let along_u = frame.u[axes[index]] != 0.0;
            let given = if along_u { across } else { up };
            given.map(|_| at[axes[index]] - shift[axes[index]])
        })
    };
    let mut out: Vec<(HungPart, Hanger)> = Vec::new();
    let mut fans: Vec<usize> = (0..spec.fans.len()).collect();
    sort_by(&mut fans, |a, b| {
        let pinned = |index: usize| spec.fans[index].across_mm.is_none();
        (pinned(*a), -spec.fans[*a].size_mm)
            .partial_cmp(&(pinned(*b), -spec.fans[*b].size_mm))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    for index in fans {
        let fan = &spec.fans[index];
        let target = match fan.wall {
            Wall::Front | Wall::Floor => middle(fan.wall),
            wall => walls::plane(wall).map(|axis| before_cooler(spec, board_place)[axis]),
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
                margin: beside_corners(spec, room, fan, margin),
                opening: [opening; 2],
                may_grow,
            },
        ));
    }
    // High and to the right, where a hand finds it. A row of connectors takes most of the corner between front and top:
    // it keeps off the brackets there, and the button stands in line with it.
    let row = spec.ports.as_ref().filter(|_| spec.has_sleeve_brackets());
    let handy = |wall: Wall| {
        let off = match row {
            Some(row) if row.wall == wall => {
                let half = spec.button.as_ref().filter(|button| button.wall == wall);
                let half = half.map_or(0.0, |button| wall::button_body_mm(button.size_mm) / 2.0);
                spec.hardware.bracket.leg_mm
                    + hardware_room::AIR_MM
                    + half.max(wall::port_size_mm(PortKind::UsbA)[1] / 2.0)
            }
            _ => 0.0,
        };
        match wall {
            Wall::Top => [room.right - FROM_RIGHT_MM, room.front + off.max(FROM_FRONT_MM)],
            _ => [room.right - FROM_RIGHT_MM, room.top - off.max(FROM_TOP_MM)],
        }
    };
    if let Some(button) = &spec.button {
        let side = wall::button_body_mm(button.size_mm);
        out.push((
            HungPart::Button,
            Hanger {
                wall: button.wall,
                size: [side; 2],
                depth: button.depth_mm,
                air: BEHIND_NUT_MM,
                target: handy(button.wall),
                pinned: pin(button.wall, button.across_mm, button.up_mm),
                margin: around_nut,
                opening: [side / 2.0; 2],
                may_grow,
            },
        ));
    }
    out.extend(ports(spec, room, handy, &pin, margin, may_grow));
    if spec.supply.kind == SupplyKind::Brick {
        let side = wall::jack_side_mm(spec.supply.jack_hole_mm);
        out.push((
            HungPart::Jack,
            Hanger {
                wall: Wall::Back,
                size: [side; 2],
                depth: wall::JACK_DEPTH_MM,
                air: BEHIND_NUT_MM,
                target: [room.right - JACK_FROM_RIGHT_MM, board_place.origin[2] + JACK_ABOVE_BOARD_MM],
                pinned: [None, None],
                margin: around_nut,
                opening: [side / 2.0; 2],
                may_grow,
            },
        ));
    }
    out
}

/// Distance of a fan from its panel's edges: where it fills a corner of the sleeve from end to end, it leaves the
/// corner's brackets their legs.
fn beside_corners(spec: &Spec, room: &Room, fan: &FanSpec, margin: f64) -> [[f64; 2]; 2] {
    let mut out = [[margin; 2]; 2];
    if !spec.has_sleeve_brackets() {
        return out;
    }
    let bracket = &spec.hardware.bracket;
    let spans = [room.right - room.left, -room.front, room.top];
    let fills = |axis: usize| spans[axis] - fan.size_mm < 2.0 * (bracket.width_mm + margin);
    let leg = margin.max(bracket.leg_mm + hardware_room::AIR_MM);
    match fan.wall {
        // Both upright corners, and the one to the top.
        Wall::Front => {
            out[0] = if fills(2) { [leg; 2] } else { out[0] };
            out[1][1] = if fills(0) { leg } else { margin };
        }
        Wall::Left | Wall::Right => {
            out[0][0] = if fills(2) { leg } else { margin };
            out[1][1] = if fills(1) { leg } else { margin };
        }
        Wall::Top => {
            out[0] = if fills(1) { [leg; 2] } else { out[0] };
            out[1][0] = if fills(0) { leg } else { margin };
        }
        Wall::Back | Wall::Floor => {}
    }
    out
}

/// The middle of the cooler: a fan does best before it.
pub(super) fn before_cooler(spec: &Spec, board_place: &BoardPlace) -> [f64; 3] {
    let [x, y] = board::socket(&spec.board);
    let height = spec
        .cooler
        .as_ref()
        .map_or(AIR_ABOVE_BOARD_MM, |cooler_spec| cooler::PROCESSOR_MM + cooler_spec.height_mm / 2.0);
    board_place.to_case([x, y, boards::PCB_THICKNESS.get() + height])
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
    let around_nut = [[margin + BESIDE_NUT_MM; 2]; 2];
    let kinds = [(PortKind::UsbA, wanted.usb_a), (PortKind::UsbC, wanted.usb_c), (PortKind::Audio, wanted.audio)];
    let row: Vec<(PortKind, usize)> = kinds
        .into_iter()
        .flat_map(|(kind, count)| (1..=usize::from(count)).map(move |number| (kind, number)))
        .collect();
    // Between neighbours, mm: plugs side by side (from memory: measure yours; a USB-A plug's body is up to 16 wide).
    const BETWEEN_MM: f64 = margins::BETWEEN_CONNECTORS.get();
    let total: f64 = row.iter().map(|(kind, _)| wall::port_size_mm(*kind)[0] + BETWEEN_MM).sum::<f64>() - BETWEEN_MM;
    let pinned = pin(wanted.wall, wanted.across_mm, wanted.up_mm);
    let mut x = pinned[0].map_or_else(
        || {
            let right = handy(wanted.wall)[0] - BESIDE_BUTTON_MM;
            (right - total).max(room.left + margin + FROM_LEFT_MM)
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
                air: BEHIND_PORT_MM,
                target: [centre, handy(wanted.wall)[1]],
                pinned: [pinned[0].map(|_| centre), pinned[1]],
                margin: around_nut,
                opening: [size[0] / 2.0, size[1] / 2.0],
                may_grow,
            },
        ));
    }
    out
}
