//! Buttons and sockets mounted in a panel.
//!
//! Most are made for thin panels. In sheet of 6 mm the nut needs a counterbore on the inside, or a
//! thin plate behind a larger opening:
//!
//! ```text
//!        outside |====|   sheet   |====| inside
//!         bezel #|    |___________|    |
//!                |     thread          |# nut in a counterbore, sheet left <= clamping range
//!         bezel #|     ___________     |
//! ```

use super::catalogue::Entry;
use super::documents::{PARTS_LISTS, SWITCH_SHEETS, TRADE};
use super::source::{Source, Sourced};
use super::table::sizes;

pub use super::plugs::{PlugShape, front_lead_room};

/// Push buttons, by their mounting size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PushButton {
    /// The size it is sold under, mm.
    pub nominal_mm: u32,
    /// Hole to make.
    pub hole: Sourced<f64>,
    /// Least distance between the centres of two, where known.
    pub pitch: Option<Sourced<f64>>,
    /// Panel thickness it clamps, least and greatest, where known.
    pub panel: Option<Sourced<[f64; 2]>>,
    /// Bezel, diameter.
    pub bezel: Sourced<f64>,
    /// Nut, across flats: a counterbore must leave room to turn it.
    pub nut_flats: Sourced<f64>,
    /// Depth behind the panel with its leads bent away.
    pub depth: Sourced<f64>,
}

const fn recalled(value: f64, place: &'static str) -> Sourced<f64> {
    Sourced::new(value, Source::from_memory(TRADE, place))
}

const fn read(value: f64, place: &'static str) -> Sourced<f64> {
    Sourced::new(value, Source::published(SWITCH_SHEETS, place))
}

/// Push buttons, the smallest first.
pub const PUSH_BUTTONS: [PushButton; 5] = [
    PushButton {
        nominal_mm: 12,
        hole: recalled(12.2, "12 mm button: hole of 12.0 to 12.2"),
        pitch: None,
        panel: None,
        bezel: recalled(14.0, "12 mm button: bezel"),
        nut_flats: recalled(15.0, "12 mm button: nut of 14 to 15"),
        depth: recalled(25.0, "12 mm button: depth"),
    },
    PushButton {
        nominal_mm: 16,
        hole: read(16.2, "16 mm series: 16.0 +0.2; IEC 60947-5-1, recalled, has 16.2 +0.2"),
        pitch: Some(read(19.0, "16 mm series: round or square; oblong ones 24")),
        panel: Some(THIN_PANEL_SWITCH),
        bezel: recalled(18.0, "16 mm button: bezel"),
        nut_flats: recalled(19.0, "16 mm button: nut"),
        depth: recalled(40.0, "16 mm button: depth"),
    },
    PushButton {
        nominal_mm: 19,
        hole: recalled(19.2, "19 mm button: hole of 19.0 to 19.2"),
        pitch: None,
        panel: None,
        bezel: recalled(22.0, "19 mm button: bezel"),
        nut_flats: recalled(23.0, "19 mm button: nut"),
        depth: recalled(45.0, "19 mm button: depth"),
    },
    PushButton {
        nominal_mm: 22,
        hole: read(22.5, "22 mm series: 22.5; IEC 60947-5-1, recalled, has 22.3 +0.4"),
        pitch: Some(recalled(30.0, "22 mm button: pitch")),
        panel: Some(Sourced::new(
            [1.0, 6.0],
            Source::from_memory("IEC 60947-5-1", "panel thickness for 22 mm buttons"),
        )),
        bezel: recalled(29.0, "22 mm button: bezel"),
        nut_flats: recalled(29.0, "22 mm button: round nut"),
        depth: recalled(60.0, "22 mm button: depth"),
    },
    PushButton {
        nominal_mm: 30,
        hole: read(30.5, "22 and 30 mm series, flush version"),
        pitch: None,
        panel: Some(Sourced::new(
            [1.0, 6.0],
            Source::from_memory("IEC 60947-5-1", "panel thickness for 30 mm buttons"),
        )),
        bezel: recalled(36.0, "30 mm button: bezel"),
        nut_flats: recalled(36.0, "30 mm button: round nut"),
        depth: recalled(60.0, "30 mm button: depth"),
    },
];

/// The button of this mounting size.
#[must_use]
pub fn push_button(nominal_mm: u32) -> Option<&'static PushButton> {
    const ALL: &[PushButton] = &PUSH_BUTTONS;
    ALL.iter().find(|button| button.nominal_mm == nominal_mm)
}

/// A round threaded socket in a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadedSocket {
    /// What it is.
    pub name: &'static str,
    /// Its thread, mm.
    pub thread_mm: f64,
    /// Hole to make, mm.
    pub hole_mm: f64,
    /// Thickest panel it clamps, mm.
    pub panel_max_mm: f64,
    /// Where these stand.
    pub source: Source,
}

const fn barrel(name: &'static str, thread_mm: f64, hole_mm: f64) -> ThreadedSocket {
    ThreadedSocket {
        name,
        thread_mm,
        hole_mm,
        panel_max_mm: 6.0,
        source: Source::from_memory(TRADE, "threaded barrel sockets; panel of 6 to 7 mm at most"),
    }
}

const fn jack(name: &'static str, thread_mm: f64, hole_mm: f64) -> ThreadedSocket {
    ThreadedSocket {
        name,
        thread_mm,
        hole_mm,
        // A thread of 4 to 5 mm less a nut of 2 mm.
        panel_max_mm: 2.5,
        source: Source::from_memory(TRADE, "threaded 3.5 mm sockets: thread of 4 to 5 mm, nut of 8 to 10"),
    }
}

/// Sockets for the plug of an external supply.
pub const BARREL_SOCKETS: [ThreadedSocket; 3] = [
    barrel("Barrel socket M8", 8.0, 8.0),
    barrel("Barrel socket M11", 11.0, 11.2),
    barrel("Barrel socket M12", 12.0, 12.2),
];

/// Sockets for the 3.5 mm plug of headphones.
pub const AUDIO_JACKS: [ThreadedSocket; 2] = [jack("3.5 mm socket M6", 6.0, 6.2), jack("3.5 mm socket M8", 8.0, 8.2)];

sizes! {
    group "connectors";
    USB_C_MOUTH: [f64; 2] = [8.34, 2.56], "USB-C socket, mouth", "{} × {} mm",
        Source::published(PARTS_LISTS, "USB-C receptacle, two texts");
    USB_C_SHELL: [f64; 2] = [8.25, 2.4], "USB-C plug, metal shell", "{} × {} mm",
        Source::published(PARTS_LISTS, "USB-C plug, two texts");
    USB_C_PANEL_MAX: f64 = 2.0, "USB-C socket, wall in front of it", "at most {} mm",
        Source::published(PARTS_LISTS, "USB-C receptacle behind a knock-out of 10 x 4 mm");
    USB_C_PLUG_BODY: [f64; 2] = [12.35, 6.5], "USB-C plug, largest body: the window in thick sheet", "{} × {} mm",
        Source::from_memory(TRADE, "USB-C plug overmould, greatest size");
    USB_C_KNOCK_OUT: [f64; 2] = [10.0, 4.0], "USB-C opening in thin sheet", "{} × {} mm",
        Source::published(PARTS_LISTS, "USB-C receptacle, two texts");
    USB_A_SHELL: [f64; 2] = [13.1, 5.7], "USB-A socket, shell", "{} × {} mm",
        Source::published(PARTS_LISTS, "USB-A receptacle, one text");
    USB_A_WINDOW: [f64; 2] = [15.0, 8.0], "USB-A lead for panels, window", "{} × {} mm",
        Source::published(PARTS_LISTS, "panel lead, one panel");
    USB_A_SCREWS: f64 = 28.0, "USB-A lead for panels, screw holes apart", "{} mm; others 30",
        Source::published(PARTS_LISTS, "panel lead, one panel");
    USB_A_SCREW_HOLE: f64 = 3.1, "USB-A lead for panels, screw hole", "{} mm diameter",
        Source::published(PARTS_LISTS, "panel lead, one panel");
    USB_A_PLUG_BODY: [f64; 2] = [16.0, 8.0], "USB-A plug, largest body: the window in thick sheet", "{} × {} mm",
        Source::from_memory(TRADE, "USB-A plug overmould");
    AUDIO_DEPTH: f64 = 30.0, "3.5 mm socket with its leads, behind the panel", "{} mm",
        Source::from_memory(TRADE, "threaded 3.5 mm sockets");
    BARREL_DEPTH: f64 = 30.0, "Barrel socket with its leads, behind the panel", "{} mm",
        Source::from_memory(TRADE, "threaded barrel sockets");
    AERIAL_HOLE: [f64; 2] = [6.5, 6.0], "SMA aerial socket, D hole: diameter, across the flat", "{} / {} mm",
        Source::published(PARTS_LISTS, "SMA bulkhead, 1/4-36 UNS, nut of 7.94 mm");
    INLET_C14_SCREWS: f64 = 40.0, "Mains inlet C14 for screws, holes apart", "{} mm",
        Source::published(PARTS_LISTS, "three panels agree; one file has 45");
    INLET_C14_WINDOW: [f64; 2] = [28.0, 20.0], "Mains inlet C14 for screws, window", "27 to {} x 19 to {} mm, two corners cut by 5",
        Source::published(PARTS_LISTS, "three panels; mains parts need earth and creepage too");
    INLET_C14_SWITCHED_WINDOW: [f64; 2] = [48.0, 28.0], "Mains inlet C14 with fuse and switch, window", "47 to {} x 27 to {} mm",
        Source::published(PARTS_LISTS, "several panels; holes about 40 mm apart");
    THIN_PANEL_SWITCH: [f64; 2] = [0.5, 3.2], "Panel thickness most buttons are made for", "{} to {} mm",
        Source::published(SWITCH_SHEETS, "16 mm series, panel thickness");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for button in PUSH_BUTTONS {
        let mut push = |what: &str, pattern: &str, numbers: &[f64], source: Source| {
            let name = format!("Button {}: {what}", button.nominal_mm);
            out.push(Entry::new("connectors", name, pattern, numbers, source));
        };
        push("hole", "{} mm diameter", &[button.hole.get()], button.hole.source());
        if let Some(pitch) = button.pitch {
            push("distance between two", "at least {} mm", &[pitch.get()], pitch.source());
        }
        if let Some(panel) = button.panel {
            push("panel it clamps", "{} to {} mm", &panel.get(), panel.source());
        }
        push("bezel", "{} mm diameter", &[button.bezel.get()], button.bezel.source());
        push("nut across flats", "{} mm", &[button.nut_flats.get()], button.nut_flats.source());
        push("depth behind the panel", "{} mm", &[button.depth.get()], button.depth.source());
    }
    for socket in BARREL_SOCKETS.into_iter().chain(AUDIO_JACKS) {
        let numbers = [socket.hole_mm, socket.panel_max_mm];
        let name = format!("{}: hole, thickest panel", socket.name);
        out.push(Entry::new("connectors", name, "{} / {} mm", &numbers, socket.source));
    }
    size_entries(out);
}
