//! Power button and front connectors: their holes, and counterbores where the sheet is too thick for them.

use kurbo::{Point, Vec2};

use super::bench::{Bench, Cut};
use super::panel::{Face, FeatureKind, Purpose};
use super::screws::{Grip, Plan};
use crate::arrangement::PortKind;
use crate::design::Wall;
use crate::dimensions::connectors::{self, AUDIO_JACKS};
use crate::dimensions::fasteners::{Thread, sharp_corners_mm};
use crate::dimensions::source::Source;
use crate::drawing::Contour;
use crate::drawing::number::format_number;

/// Room around a nut's corners in a counterbore, mm across: a box spanner's wall (common practice).
pub(super) const SPANNER_MM: f64 = 3.0;

/// Play of a plug's body in its window, mm across (common practice).
const PLAY_MM: f64 = 0.5;

/// Radius of a window's corners, mm: a round file (common practice).
const CORNER_MM: f64 = 1.0;

/// Sheet up to this thickness lets a USB plug in through an opening the size of its shell, mm (`USB_C_PANEL_MAX`).
const THIN_MM: f64 = connectors::USB_C_PANEL_MAX.get();

/// Turns into the tapped ears of a USB-A lead, mm: a millimetre and a half to five (from memory: measure yours).
const EAR_MM: [f64; 2] = [1.5, 5.0];

/// Across the flats of the largest nut of a 3.5 mm socket, mm (from memory: nuts of 8 to 10).
const AUDIO_NUT_MM: f64 = 10.0;

pub(super) fn features(bench: &mut Bench) {
    button(bench);
    ports(bench);
}

fn button(bench: &mut Bench) {
    let (Some(place), Some(spec)) = (bench.arrangement.button, bench.spec.button.as_ref()) else { return };
    let Some(table) = connectors::push_button(spec.size_mm as u32) else { return };
    let cut = Cut::new(
        "button",
        Purpose::Button,
        format!("Hole for the power button, {} mm", format_number(spec.size_mm, 2)),
        table.hole.source(),
    )
    .about("button");
    bench.hole(place.wall, cut, place.centre, table.hole.get());
    let deep = bench.thickness() - spec.grip_mm;
    if deep > 1e-9 {
        let wide = f64::ceil(sharp_corners_mm(table.nut_flats.get()) + SPANNER_MM);
        let why = format!(
            "Counterbore from inside for the button's nut: it clamps {} mm of sheet at most",
            format_number(spec.grip_mm, 2)
        );
        let cut =
            Cut::new("button-counterbore", Purpose::ButtonCounterbore, why, table.nut_flats.source()).about("button");
        let kind = FeatureKind::Counterbore;
        bench.round(place.wall, cut, kind, Some((deep, Face::Inside)), place.centre, wide);
    }
}

fn ports(bench: &mut Bench) {
    let mut counts = [0_usize; 3];
    for index in 0..bench.arrangement.ports.len() {
        let (kind, place) = bench.arrangement.ports[index];
        counts[kind as usize] += 1;
        let number = counts[kind as usize];
        match kind {
            PortKind::UsbA => usb_a(bench, place.wall, place.centre, number),
            PortKind::UsbC => usb_c(bench, place.wall, place.centre, number),
            PortKind::Audio => audio(bench, place.wall, place.centre, number),
        }
    }
}

fn window(bench: &mut Bench, wall: Wall, centre: Point, size: [f64; 2], id: String, why: &str, source: Source) {
    let half = Vec2::new(size[0] / 2.0, size[1] / 2.0);
    let (low, high) = (centre - half, centre + half);
    let contour = Contour::rounded_rect(low.x, low.y, high.x, high.y, CORNER_MM);
    let cut = Cut::new(id.clone(), Purpose::Port, why, source).about(id);
    bench.shape(wall, cut, FeatureKind::Opening, None, contour);
}

fn usb_a(bench: &mut Bench, wall: Wall, centre: Point, number: usize) {
    let id = format!("port-usb-a-{number}");
    let thin = connectors::USB_A_WINDOW;
    let thick = connectors::USB_A_PLUG_BODY;
    if bench.thickness() <= THIN_MM {
        window(bench, wall, centre, thin.get(), id.clone(), "Window of a USB-A socket", thin.source());
    } else {
        let why = "Window of a USB-A socket, wide enough for the plug's body: the sheet is thick";
        window(bench, wall, centre, thick.get().map(|side| side + PLAY_MM), id.clone(), why, thick.source());
    }
    let apart = connectors::USB_A_SCREWS;
    for (index, side) in [-0.5, 0.5].into_iter().enumerate() {
        let at = centre + Vec2::new(side * apart.get(), 0.0);
        let why = "Screw of a USB-A socket: M3 from outside; measure yours, some are 30 mm apart";
        let cut =
            Cut::new(format!("{id}-screw-{}", index + 1), Purpose::PortScrew, why, apart.source()).about(id.as_str());
        bench.hole(wall, cut, at, connectors::USB_A_SCREW_HOLE.get());
        let grip = Grip::Depth(EAR_MM[0], Some(EAR_MM[1]));
        let plan = Plan::new(
            format!("screw-{id}-{}", index + 1),
            "screw of a USB-A socket",
            Thread::M3,
            bench.clamped(),
            grip,
        )
        .joins([wall.name(), id.as_str()]);
        bench.screw_from_outside(wall, at, Plan { washers: 0..=3, ..plan });
    }
}

fn usb_c(bench: &mut Bench, wall: Wall, centre: Point, number: usize) {
    let id = format!("port-usb-c-{number}");
    if bench.thickness() <= THIN_MM {
        let size = connectors::USB_C_KNOCK_OUT;
        window(bench, wall, centre, size.get(), id, "Window of a USB-C socket", size.source());
    } else {
        let size = connectors::USB_C_PLUG_BODY;
        let why = "Window of a USB-C socket, wide enough for the plug's body: the sheet is thick";
        window(bench, wall, centre, size.get().map(|side| side + PLAY_MM), id, why, size.source());
    }
}

fn audio(bench: &mut Bench, wall: Wall, centre: Point, number: usize) {
    let id = format!("port-audio-{number}");
    let socket = &AUDIO_JACKS[0];
    let cut = Cut::new(id.clone(), Purpose::Port, "Hole for an audio jack", socket.source).about(id.as_str());
    bench.hole(wall, cut, centre, socket.hole_mm);
    let deep = bench.thickness() - socket.panel_max_mm;
    if deep > 1e-9 {
        let wide = f64::ceil(sharp_corners_mm(AUDIO_NUT_MM) + SPANNER_MM);
        let why = format!(
            "Counterbore from inside for the jack's nut: it clamps {} mm of sheet at most",
            format_number(socket.panel_max_mm, 2)
        );
        let cut = Cut::new(format!("{id}-counterbore"), Purpose::PortCounterbore, why, socket.source).about(id);
        bench.round(wall, cut, FeatureKind::Counterbore, Some((deep, Face::Inside)), centre, wide);
    }
}
