//! Fans and radiators. The four holes of a fan lie on a square about its centre:
//!
//! ```text
//!    +-------------+     frame
//!    | o   ___   o |     holes on a square of side `spacing`
//!    |   /     \   |
//!    |  | open. |  |     opening: the round cut-out proposed for the panel
//!    |   \_____/   |
//!    | o         o |
//!    +-------------+
//! ```

use super::catalogue::Entry;
use super::documents::{FAN_LISTS, TRADE, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

/// A size of fan, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fan {
    /// Side of the square frame: the fan's name.
    pub frame_mm: u32,
    /// Side of the square of its four holes; `None` when several are in use: measure.
    pub spacing: Option<Sourced<f64>>,
    /// Least and greatest hole drilled in the panel for one of its screws.
    pub panel_hole: Sourced<[f64; 2]>,
    /// Thicknesses it is sold in, the thinnest first.
    pub thicknesses: Sourced<&'static [f64]>,
    /// Diameter of the round opening proposed for the panel.
    pub opening: Sourced<f64>,
}

impl Fan {
    /// The hole to drill for its screws when nothing else is known: the largest usual one.
    #[must_use]
    pub const fn drill_mm(&self) -> f64 {
        self.panel_hole.get()[1]
    }
}

/// The centres of holes of a spacing about the fan's centre, anticlockwise from the upper right.
#[must_use]
pub fn hole_centres(spacing_mm: f64) -> [[f64; 2]; 4] {
    let half = spacing_mm / 2.0;
    [[half, half], [-half, half], [-half, -half], [half, -half]]
}

/// One retrieved list, or several that agree.
const fn listed(value: f64, place: &'static str) -> Option<Sourced<f64>> {
    Some(Sourced::new(value, Source::published(FAN_LISTS, place)))
}

const fn recalled(value: f64, place: &'static str) -> Option<Sourced<f64>> {
    Some(Sourced::new(value, Source::from_memory(FAN_LISTS, place)))
}

const fn sold(values: &'static [f64]) -> Sourced<&'static [f64]> {
    Sourced::new(values, Source::from_memory(TRADE, "fan thicknesses"))
}

const fn drilled(least: f64, most: f64) -> Sourced<[f64; 2]> {
    Sourced::new([least, most], Source::from_memory(TRADE, "panel holes for fan screws"))
}

const fn opened(value: f64) -> Sourced<f64> {
    Sourced::new(value, Source::from_memory(TRADE, "fan openings"))
}

const fn opened_as_listed(value: f64) -> Sourced<f64> {
    Sourced::new(value, Source::published(FAN_LISTS, "fan openings, second hand: one text"))
}

/// Every size of fan, the smallest first.
pub const FANS: [Fan; 9] = [
    Fan {
        frame_mm: 40,
        spacing: listed(32.0, "40 mm, one list"),
        panel_hole: drilled(3.5, 4.3),
        thicknesses: sold(&[10.0, 20.0, 28.0]),
        opening: opened(38.0),
    },
    Fan {
        frame_mm: 50,
        spacing: recalled(40.0, "50 mm"),
        panel_hole: drilled(4.3, 4.3),
        thicknesses: sold(&[10.0, 15.0]),
        opening: opened(47.0),
    },
    Fan {
        frame_mm: 60,
        spacing: recalled(50.0, "60 mm"),
        panel_hole: drilled(4.3, 4.3),
        thicknesses: sold(&[15.0, 20.0, 25.0]),
        opening: opened(57.0),
    },
    Fan {
        frame_mm: 70,
        spacing: recalled(60.0, "70 mm"),
        panel_hole: drilled(4.3, 4.3),
        thicknesses: sold(&[15.0, 25.0]),
        opening: opened(66.0),
    },
    Fan {
        frame_mm: 80,
        spacing: listed(71.5, "80 mm, two lists; another says 72"),
        panel_hole: drilled(4.3, 4.5),
        thicknesses: sold(&[15.0, 25.0]),
        opening: opened_as_listed(76.0),
    },
    Fan {
        frame_mm: 92,
        spacing: listed(82.5, "92 mm, one list; 3.25 inches in another text"),
        panel_hole: drilled(4.3, 4.5),
        thicknesses: sold(&[15.0, 25.0]),
        opening: opened(88.0),
    },
    Fan {
        frame_mm: 120,
        spacing: listed(105.0, "120 mm, two lists"),
        panel_hole: drilled(4.3, 4.5),
        thicknesses: sold(&[15.0, 25.0, 38.0]),
        opening: opened_as_listed(114.0),
    },
    Fan {
        frame_mm: 140,
        spacing: recalled(124.5, "140 mm; two lists round it to 125; some have 105"),
        panel_hole: drilled(4.3, 4.5),
        thicknesses: sold(&[25.0]),
        opening: opened(134.0),
    },
    Fan {
        frame_mm: 200,
        spacing: None,
        panel_hole: drilled(4.3, 4.5),
        thicknesses: sold(&[20.0, 25.0, 30.0]),
        opening: opened(190.0),
    },
];

/// The fan with this frame, if there is one.
#[must_use]
pub fn fan(frame_mm: u32) -> Option<&'static Fan> {
    const ALL: &[Fan] = &FANS;
    ALL.iter().find(|fan| fan.frame_mm == frame_mm)
}

/// A radiator, by the class it is sold under, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Radiator {
    /// Its class: frame times number of fans.
    pub class_mm: u32,
    /// The fans on it.
    pub fan_frame_mm: u32,
    /// How many fans in a row.
    pub fans: u32,
    /// From one fan's centre to the next; `None` with a single fan.
    pub pitch: Option<Sourced<f64>>,
    /// Width, length and thickness of one unit that was seen; others differ.
    pub seen_size: Sourced<[f64; 3]>,
}

/// Three classes of radiator. Their length beyond the fans differs by maker: measure.
pub const RADIATORS: [Radiator; 3] = [
    Radiator {
        class_mm: 120,
        fan_frame_mm: 120,
        fans: 1,
        pitch: None,
        seen_size: Sourced::new([120.0, 155.0, 27.0], Source::from_memory(TRADE, "radiator of class 120")),
    },
    Radiator {
        class_mm: 240,
        fan_frame_mm: 120,
        fans: 2,
        pitch: Some(Sourced::new(120.0, Source::from_memory(TRADE, "radiator of class 240"))),
        seen_size: Sourced::new(
            [123.0, 275.0, 30.0],
            Source::common_practice(TRADE, "one radiator of class 240, second hand"),
        ),
    },
    Radiator {
        class_mm: 280,
        fan_frame_mm: 140,
        fans: 2,
        pitch: Some(Sourced::new(140.0, Source::from_memory(TRADE, "radiator of class 280"))),
        seen_size: Sourced::new(
            [143.0, 315.0, 30.0],
            Source::common_practice(TRADE, "one radiator of class 280, second hand"),
        ),
    },
];

sizes! {
    group "fans";
    SPACINGS_OF_200: [f64; 4] = [154.0, 110.0, 170.0, 180.0], "200 mm fan: hole spacings in use, so none is drilled", "{} / {} / {} / {} mm",
        Source::from_memory(TRADE, "200 mm fans follow no common pattern");
    GRILLE_GAP: [f64; 2] = [10.0, 15.0], "Free air between a fan and a grille", "at least {} to {} mm",
        Source::common_practice(WORKSHOP, "better half the fan's thickness");
    RADIATOR_END_TANKS: [f64; 2] = [25.0, 40.0], "Radiator longer than its class", "by {} to {} mm",
        Source::from_memory(TRADE, "end tanks");
    RADIATOR_AND_FAN: f64 = 52.0, "Radiator of 27 and fan of 25 mm, without screw heads", "{} mm",
        Source::common_practice(TRADE, "stack of radiator and fan, second hand");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for fan in FANS {
        let mut push = |what: &str, pattern: &str, numbers: &[f64], source: Source| {
            let name = format!("Fan {}: {what}", fan.frame_mm);
            out.push(Entry::new("fans", name, pattern, numbers, source));
        };
        if let Some(spacing) = fan.spacing {
            push("hole spacing", "{} mm", &[spacing.get()], spacing.source());
        }
        let [least, most] = fan.panel_hole.get();
        if least < most {
            push("hole in the panel", "{} to {} mm", &[least, most], fan.panel_hole.source());
        } else {
            push("hole in the panel", "{} mm", &[most], fan.panel_hole.source());
        }
        push("thicknesses", "{*} mm", fan.thicknesses.get(), fan.thicknesses.source());
        push("opening", "{} mm diameter", &[fan.opening.get()], fan.opening.source());
    }
    for radiator in RADIATORS {
        let size = radiator.seen_size;
        out.push(Entry::new(
            "fans",
            format!("Radiator {}: size seen", radiator.class_mm),
            "about {} × {} x {} mm",
            &size.get(),
            size.source(),
        ));
        if let Some(pitch) = radiator.pitch {
            out.push(Entry::new(
                "fans",
                format!("Radiator {}: pitch of its fans", radiator.class_mm),
                "{} mm",
                &[pitch.get()],
                pitch.source(),
            ));
        }
    }
    size_entries(out);
}
