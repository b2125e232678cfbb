//! Button and front connectors: depth behind their panel, and sheet thicker than they are made for.

use super::finding::Finding;
use super::mend::Remedy;
use super::room::Look;
use super::rule::Rule;
use super::scene::{Scene, face, opposite, outward};
use super::words;
use crate::arrangement::PortKind;
use crate::design::Wall;
use crate::dimensions::connectors::{THIN_PANEL_SWITCH, USB_A_PLUG_BODY, USB_C_PANEL_MAX, USB_C_PLUG_BODY};
use crate::dimensions::plugs::{self, front_lead_room};
use crate::dimensions::sheets::WEB_MIN_FIBREBOARD;
use crate::dimensions::source::{Source, Sourced};
use crate::panels::{Face, Purpose};
use crate::parts::{Part, PartKind};
use crate::solid::{Aabb, TOUCH_MM};

/// Thickest sheet a threaded 3.5 mm socket clamps, mm.
const AUDIO_GRIP: Sourced<f64> =
    Sourced::new(2.5, Source::from_memory("Trade sizes", "threaded 3.5 mm sockets: thread of 4 to 5 mm, nut of 2 mm"));

/// Share of a lead's cross-section that must be covered before it counts as stopped (common practice).
const LEAD_SHARE: f64 = 0.25;

pub(super) const BUTTON_DEPTH: Rule = Rule {
    name: "button-depth",
    what: "The power button has its depth free behind its panel.",
    source: Source::from_memory("Trade sizes", "depth of buttons with their leads"),
    look: button_depth,
};

pub(super) const BUTTON_GRIP: Rule = Rule {
    name: "button-grip",
    what: "In sheet thicker than the button clamps, a counterbore lets it hold.",
    source: THIN_PANEL_SWITCH.source(),
    look: button_grip,
};

pub(super) const FRONT_CONNECTOR_DEPTH: Rule = Rule {
    name: "front-connector-depth",
    what: "Front connectors and their leads have room behind their panel.",
    source: Source::from_memory("Trade sizes", "USB front lead: 40 to 50 mm behind the wall"),
    look: front_connector_depth,
};

pub(super) const CONNECTOR_IN_THICK_SHEET: Rule = Rule {
    name: "connector-in-thick-sheet",
    what: "In thick sheet a connector's window takes the whole plug, or the sheet is thinned around it.",
    source: USB_C_PANEL_MAX.source(),
    look: connector_in_thick_sheet,
};

/// The solid of a part behind its panel: what lies inward of the inside face.
fn behind(scene: &Scene, part: &Part, wall: Wall) -> Option<(Aabb, f64)> {
    let inside = scene.inside(wall)?;
    let (axis, sense) = outward(wall);
    let bounds = part
        .bodies
        .iter()
        .filter(|body| (inside - face(body, axis, -sense)) * sense > TOUCH_MM)
        .copied()
        .reduce(|all, body| all.union(&body))?;
    Some((bounds, inside))
}

/// What stands nearer to a panel than this is beside a part that hangs on it, not behind it, mm: less than the shallowest
/// such part is deep (common practice).
const BESIDE_MM: f64 = 1.0;

/// Room behind a panel for a part that hangs on it: what ends it, how much there is, how deep the part is.
fn depth<'a>(scene: &Scene<'a>, part: &Part, wall: Wall) -> Option<(super::room::Obstacle<'a>, f64, f64)> {
    let (solid, inside) = behind(scene, part, wall)?;
    let (axis, sense) = outward(wall);
    let look =
        Look { section: solid, toward: opposite(wall), start: inside - BESIDE_MM * sense, straddle: false, share: 0.0 };
    let by = scene.nearest(&look, |other| other.id != part.id)?;
    let free = (inside - by.at) * sense;
    let needed = (inside - face(&solid, axis, -sense)) * sense;
    Some((by, free, needed))
}

fn button_depth(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(spec), Some(part)) = (&scene.case.spec.button, scene.first(PartKind::Button)) else { return };
    let Some((by, free, needed)) = depth(scene, part, spec.wall) else { return };
    if free >= needed - TOUCH_MM {
        return;
    }
    let panel = words::the_panel(spec.wall);
    let move_it = Remedy::new().say(format!("move the button along {panel}"));
    found.push(
        BUTTON_DEPTH
            .blocks(format!(
                "The power button is {} too deep: there are {} behind {panel} to {}.",
                words::short(needed - free),
                words::mm(free),
                by.name
            ))
            .with_mm(free, needed)
            .with_mends(if scene.keeps(&by, opposite(spec.wall)) {
                move_it.at_most("button.depth", free, |depth| format!("take one of {depth} depth or less"))
            } else {
                move_it
            })
            .with_about([part.id.as_str(), by.id])
            .with_at(by.point),
    );
}

/// Thickness of sheet left by a recess of a purpose, at the same centre as a hole.
fn left_over(scene: &Scene, wall: Wall, recess: Purpose, centre: kurbo::Point) -> Option<f64> {
    let sheet = scene.sheet(wall)?;
    let thickness = sheet.panel.thickness_mm;
    let depth = sheet
        .with_purpose(recess)
        .filter(|shape| shape.feature.centre.distance_squared(centre) < 1.0)
        .filter_map(|shape| shape.feature.blind)
        .map(|(depth, _): (f64, Face)| depth)
        .fold(0.0, f64::max);
    Some(thickness - depth)
}

fn button_grip(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(spec), Some(sheet)) =
        (&scene.case.spec.button, scene.case.spec.button.as_ref().and_then(|button| scene.sheet(button.wall)))
    else {
        return;
    };
    let Some(hole) = sheet.with_purpose(Purpose::Button).next() else { return };
    let Some(left) = left_over(scene, spec.wall, Purpose::ButtonCounterbore, hole.feature.centre) else { return };
    let at = sheet.panel.frame.to_case(hole.feature.centre, 0.0);
    let about = ["button".to_owned(), format!("{}/{}", sheet.id(), hole.feature.id)];
    let finding =
        if left > spec.grip_mm + TOUCH_MM {
            BUTTON_GRIP
                .blocks(format!(
                    "The button clamps {} of sheet at most; {} are left at its hole.",
                    words::limit(spec.grip_mm),
                    words::mm(left)
                ))
                .with_mm(left, spec.grip_mm)
                .with_mends(Remedy::new().at_least("button.grip", sheet.panel.thickness_mm, |grip| {
                    format!("take a button that clamps {grip}")
                }))
        } else if left < WEB_MIN_FIBREBOARD.get() - TOUCH_MM && left < sheet.panel.thickness_mm - TOUCH_MM {
            BUTTON_GRIP
                .caution(format!(
                    "The counterbore leaves {} of sheet to carry the button; {} is the least that lasts.",
                    words::mm(left),
                    words::limit(WEB_MIN_FIBREBOARD.get())
                ))
                .with_mm(left, WEB_MIN_FIBREBOARD.get())
                .with_mends(Remedy::new().at_least("button.grip", WEB_MIN_FIBREBOARD.get(), |grip| {
                    format!("take a button that clamps {grip} or more")
                }))
                .with_source(WEB_MIN_FIBREBOARD.source())
        } else {
            return;
        };
    found.push(finding.with_about(about).with_at(at));
}

fn front_connector_depth(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(spec) = &scene.case.spec.ports else { return };
    let lead = front_lead_room(plugs::PlugShape::Straight);
    for part in scene.of(PartKind::Port) {
        let Some((by, free, needed)) = depth(scene, part, spec.wall) else { continue };
        let name = words::capital(&words::part(part));
        let panel = words::the_panel(spec.wall);
        let finding = if free < needed - TOUCH_MM {
            FRONT_CONNECTOR_DEPTH
                .blocks(format!("{name} is {} too deep: {} is behind {panel}.", words::short(needed - free), by.name))
                .with_mm(free, needed)
        } else if free < lead.get() - TOUCH_MM && by.share >= LEAD_SHARE {
            FRONT_CONNECTOR_DEPTH
                .caution(format!(
                    "{name} has {} behind {panel} to {}; its lead wants {}.",
                    words::mm(free),
                    by.name,
                    words::limit(lead.get())
                ))
                .with_mm(free, lead.get())
                .with_source(lead.source())
        } else {
            continue;
        };
        found.push(
            finding
                .with_mends(Remedy::new().say(format!("move the connectors along {panel}")))
                .with_about([part.id.as_str(), by.id])
                .with_at(by.point),
        );
    }
}

fn connector_in_thick_sheet(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(sheet) = scene.case.spec.ports.as_ref().and_then(|ports| scene.sheet(ports.wall)) else { return };
    for shape in sheet.with_purpose(Purpose::Port) {
        let kind = port_kind(&shape.feature.id);
        let Some(left) = left_over(scene, sheet.wall(), Purpose::PortCounterbore, shape.feature.centre) else {
            continue;
        };
        let (width, height) = (shape.bounds.width(), shape.bounds.height());
        let (most, plug, source) = match kind {
            Some(PortKind::Audio) => (AUDIO_GRIP.get(), None, AUDIO_GRIP.source()),
            Some(PortKind::UsbC) => (USB_C_PANEL_MAX.get(), Some(USB_C_PLUG_BODY.get()), USB_C_PANEL_MAX.source()),
            Some(PortKind::UsbA) => (USB_C_PANEL_MAX.get(), Some(USB_A_PLUG_BODY.get()), USB_A_PLUG_BODY.source()),
            None => continue,
        };
        // The window of a panel lead is cut a little narrower than the greatest plug: half a millimetre each way.
        let takes_plug = plug
            .is_some_and(|[w, h]| width.max(height) >= w - 1.0 - TOUCH_MM && width.min(height) >= h - 0.5 - TOUCH_MM);
        if left <= most + TOUCH_MM || takes_plug {
            continue;
        }
        let id = format!("{}/{}", sheet.id(), shape.feature.id);
        let text = match plug {
            None => format!(
                "An audio jack clamps {} of sheet at most; {} are left at its hole.",
                words::limit(most),
                words::mm(left)
            ),
            Some([w, h]) => format!(
                "A plug does not reach through {} of sheet: the window is {} × {}, a plug's body up to {} × {}.",
                words::mm(left),
                words::bare(width),
                words::mm(height),
                words::bare(w),
                words::limit(h)
            ),
        };
        found.push(
            CONNECTOR_IN_THICK_SHEET
                .caution(text)
                .with_mm(left, most)
                .with_remedy("Thin the sheet from inside, or widen the window to the plug.")
                .with_about([id])
                .with_at(sheet.panel.frame.to_case(shape.feature.centre, 0.0))
                .with_source(source),
        );
    }
}

/// Which connector an opening is for, by its id: `port-usb-a-1`.
fn port_kind(id: &str) -> Option<PortKind> {
    [("port-usb-a", PortKind::UsbA), ("port-usb-c", PortKind::UsbC), ("port-audio", PortKind::Audio)]
        .into_iter()
        .find(|(start, _)| id.starts_with(start))
        .map(|(_, kind)| kind)
}
