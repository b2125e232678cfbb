//! Parts that hang on a panel: fans, the power button, front connectors, the jack of an external brick.

use kurbo::Point;

use super::PortKind;
use crate::design::{ButtonSpec, FanSpec};
use crate::dimensions::connectors::push_button;
use crate::dimensions::fasteners::sharp_corners_mm;
use crate::dimensions::plugs;
use crate::drawing::number::format_number;
use crate::parts::{Carrier, KeepClear, Part, PartKind};
use crate::solid::{Aabb, PanelFrame};

/// Depth of a front connector behind its panel, without its lead, mm (from memory: measure yours).
pub const PORT_DEPTH_MM: f64 = 20.0;

/// Depth of a jack for an external brick behind the back, with its wires, mm (from memory: measure yours).
pub const JACK_DEPTH_MM: f64 = 25.0;

/// How far a button's rim stands out of its panel, mm (from memory: measure yours).
const BEZEL_MM: f64 = 2.0;

/// Width and height of a front connector as it stands behind its panel, mm (from memory: measure yours; the USB-A
/// panel lead has screw holes 28 mm apart).
#[must_use]
pub const fn port_size_mm(kind: PortKind) -> [f64; 2] {
    match kind {
        PortKind::UsbA => [36.0, 12.0],
        PortKind::UsbC => [18.0, 12.0],
        PortKind::Audio => [12.0, 12.0],
    }
}

/// Side of a nut around its thread, where no table knows it: so much wider, mm (from memory: measure yours).
const NUT_AROUND_MM: f64 = 4.0;

/// Hole of a jack that nobody has measured, mm (from memory: measure yours; the usual threads are 8 to 12 mm).
const JACK_MM: f64 = 12.0;

/// Side of the jack of an external brick behind the panel, mm: over its nut.
#[must_use]
pub fn jack_side_mm(hole_mm: Option<f64>) -> f64 {
    hole_mm.unwrap_or(JACK_MM) + NUT_AROUND_MM
}

/// Diameter of a button behind the panel, mm: over the corners of its nut.
#[must_use]
pub fn button_body_mm(size_mm: f64) -> f64 {
    push_button(size_mm as u32).map_or(size_mm + NUT_AROUND_MM, |button| sharp_corners_mm(button.nut_flats.get()))
}

/// A box behind (`depth` > 0 inward) a panel, centred on a point of it.
#[must_use]
pub fn behind(frame: &PanelFrame, sheet_mm: f64, centre: Point, size: [f64; 2], depth: f64) -> Aabb {
    let half = kurbo::Vec2::new(size[0] / 2.0, size[1] / 2.0);
    Aabb::new(frame.to_case(centre - half, -sheet_mm), frame.to_case(centre + half, -sheet_mm - depth))
}

fn before(frame: &PanelFrame, centre: Point, size: [f64; 2]) -> Aabb {
    let half = kurbo::Vec2::new(size[0] / 2.0, size[1] / 2.0);
    Aabb::new(frame.to_case(centre - half, 0.0), frame.to_case(centre + half, BEZEL_MM))
}

/// A fan on the inside of its panel.
#[must_use]
pub fn fan(spec: &FanSpec, frame: &PanelFrame, sheet_mm: f64, centre: Point, carrier: Carrier) -> Part {
    let size = [spec.size_mm, spec.size_mm];
    Part {
        id: format!("fan-{}", spec.number),
        kind: PartKind::Fan,
        label: format!("Fan {}, {} mm", spec.number, format_number(spec.size_mm, 2)),
        carrier,
        bodies: vec![behind(frame, sheet_mm, centre, size, spec.thickness_mm)],
        keep_clear: Vec::new(),
    }
}

/// The power button: its collar and wires inside, its rim outside.
#[must_use]
pub fn button(spec: &ButtonSpec, frame: &PanelFrame, sheet_mm: f64, centre: Point) -> Part {
    let size = [button_body_mm(spec.size_mm); 2];
    Part {
        id: "button".to_owned(),
        kind: PartKind::Button,
        label: format!("Power button, {} mm", format_number(spec.size_mm, 2)),
        carrier: Carrier::Sleeve,
        bodies: vec![behind(frame, sheet_mm, centre, size, spec.depth_mm), before(frame, centre, size)],
        keep_clear: Vec::new(),
    }
}

/// A front connector with the room for its lead.
#[must_use]
pub fn port(id: &str, kind: PortKind, frame: &PanelFrame, sheet_mm: f64, centre: Point) -> Part {
    let size = port_size_mm(kind);
    let room = plugs::front_lead_room(plugs::PlugShape::Straight);
    let body = behind(frame, sheet_mm, centre, size, PORT_DEPTH_MM);
    Part {
        id: id.to_owned(),
        kind: PartKind::Port,
        label: match kind {
            PortKind::UsbA => "USB-A socket".to_owned(),
            PortKind::UsbC => "USB-C socket".to_owned(),
            PortKind::Audio => "Audio jack".to_owned(),
        },
        carrier: Carrier::Sleeve,
        bodies: vec![body],
        keep_clear: vec![KeepClear {
            zone: behind(frame, sheet_mm, centre, size, room.get()),
            purpose: "the lead of a front connector and its bend",
            source: room.source(),
        }],
    }
}

/// The jack of an external brick, on the back.
#[must_use]
pub fn jack(hole_mm: Option<f64>, frame: &PanelFrame, sheet_mm: f64, centre: Point) -> Part {
    let side = jack_side_mm(hole_mm);
    Part {
        id: "jack".to_owned(),
        kind: PartKind::Jack,
        label: "Jack of the external brick".to_owned(),
        carrier: Carrier::Chassis,
        bodies: vec![behind(frame, sheet_mm, centre, [side, side], JACK_DEPTH_MM), before(frame, centre, [side, side])],
        keep_clear: Vec::new(),
    }
}
