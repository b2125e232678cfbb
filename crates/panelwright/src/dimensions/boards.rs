//! Motherboards: outlines, mounting holes, slots, and what the metal around them must leave free.
//!
//! Frame U, used by these tables and by [`super::cards`] exactly as the standards allow:
//!
//! ```text
//!            REAR (inner face of the I/O wall: y = -12.27)
//!    -x  <-----------------------------------------> +x      z: up, out of the page
//!    +--A-----------B-------C-------[ I/O aperture ]-+       board's rear edge  y = -10.16
//!    |                      o (0, 0)                F|       y =  22.86
//!    |  slots n = 6 .. 0, at and left of C           |
//!    |                                               |
//!    |  G           R   S   H                       J|       y = 154.94
//!    |                                               |
//!    |  K                   L                       M|       y = 227.33
//!    +-----------------------------------------------+       front edge         y = 233.68
//!            FRONT (+y)                right edge x = +163.83
//! ```
//!
//! The origin is the centre of mounting hole C on the underside of the board: z = 0 is also the
//! top of the standoffs. +x goes to the right, toward the I/O connectors; +y to the *front* edge of
//! the board; +z up, away from the tray. The view is from the component side, rear edge on top;
//! with x right and y toward the viewer the frame is left-handed as drawn, so whoever maps it to
//! another frame must turn one axis over. All lengths are millimetres.

use super::catalogue::Entry;
use super::documents::{ATX, CEM, DTX, FLEX, ITX, MATX, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

pub use super::board_heights::*;
pub use super::io_aperture::*;

/// The board forms that share hole C, the rear edge and the I/O aperture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BoardForm {
    /// 170 x 170 mm, one slot.
    MiniItx,
    /// 203.2 x 170.18 mm, two slots.
    MiniDtx,
    /// 203.2 x 243.84 mm, two slots.
    Dtx,
    /// At most 228.6 x 190.5 mm.
    FlexAtx,
    /// At most 243.84 x 243.84 mm, four slots.
    MicroAtx,
    /// 304.8 x 243.84 mm, seven slots.
    Atx,
}

impl BoardForm {
    /// All forms, the narrowest first.
    pub const ALL: [Self; 6] = [Self::MiniItx, Self::MiniDtx, Self::Dtx, Self::FlexAtx, Self::MicroAtx, Self::Atx];

    /// The name as printed on boxes.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::MiniItx => "Mini-ITX",
            Self::MiniDtx => "Mini-DTX",
            Self::Dtx => "DTX",
            Self::FlexAtx => "FlexATX",
            Self::MicroAtx => "microATX",
            Self::Atx => "ATX",
        }
    }
}

/// The edges of a board in frame U, mm.
///
/// Many boards are shallower than their form allows: take the depth from the maker when given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outline {
    /// Left edge (the side of the slots).
    pub left_x: f64,
    /// Right edge (the side of the I/O connectors).
    pub right_x: f64,
    /// Rear edge.
    pub rear_y: f64,
    /// Front edge of a board of full depth.
    pub front_y: f64,
    /// Left to right.
    pub width: f64,
    /// Rear to front.
    pub depth: f64,
    /// Where width and depth stand.
    pub source: Source,
}

/// A mounting hole of the family, at its centre in frame U.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardHole {
    /// The letter the standards use.
    pub letter: char,
    /// Centre, to the right of hole C, mm.
    pub x_mm: f64,
    /// Centre, in front of hole C, mm.
    pub y_mm: f64,
    /// Where the position stands.
    pub source: Source,
}

sizes! {
    group "boards";
    HOLE_DIAMETER: f64 = 3.96, "Mounting hole in the board", "{} mm diameter",
        Source::published(ATX, "figure 3");
    PAD_SQUARE: f64 = 10.16, "Square kept free for each standoff", "{} mm",
        Source::published(ATX, "section 3.4.2; microATX 1.2 section 2.4.2");
    STANDOFF_ROUND_MAX: f64 = 10.16, "Thickest round standoff", "{} mm diameter",
        Source::derived(ATX, "inside the 10.16 mm square of section 3.4.2");
    STANDOFF_HEX_MAX: f64 = 8.8, "Thickest hexagonal standoff", "{} mm across flats",
        Source::derived(ATX, "inside the 10.16 mm square of section 3.4.2");
    MIN_STANDOFF: f64 = 6.35, "Shortest standoff: board underside to any metal", "{} mm",
        Source::published(ATX, "section 3.4.2");
    USUAL_STANDOFF_ABOVE_DRIVES: f64 = 25.0, "Standoff that leaves room for a drive below", "{} mm",
        Source::common_practice(WORKSHOP, "board on long standoffs over 2.5 inch drives");
    PCB_THICKNESS: f64 = 1.57, "Thickness of the board", "{} mm",
        Source::published(ATX, "section 3.3.5 and figure 7");
    REAR_EDGE_Y: f64 = -10.16, "Rear edge of every board of the family, from hole C", "y = {} mm",
        Source::published(ATX, "figure 3");
    RIGHT_EDGE_X: f64 = 163.83, "Right edge of every board of the family, from hole C", "x = {} mm",
        Source::published(ATX, "figure 3");
    MINI_ITX_RESERVE: f64 = 170.2, "Room to keep for a Mini-ITX board, either way", "{} mm",
        Source::derived(ITX, "page 5: 170 mm, while 6.7 inches are 170.18 mm");
    SLOT_PITCH: f64 = 20.32, "Distance between neighbouring card slots", "{} mm",
        Source::published(ATX, "figure 3; PCI Express CEM 3.0 figure 9-20");
    SLOT_0_X: f64 = 1.57, "Centre line of slot 0, the one nearest the processor", "x = {} mm",
        Source::derived(CEM, "figure 9-20: 47.29 mm right of hole B, hole B 45.72 mm left of C");
    SLOT_KEY_Y: f64 = 46.94, "Connector key of a slot, in front of the row of hole C", "y = {} mm",
        Source::published(CEM, "figure 9-20");
}

/// An outline from its size: the rear and right edges are shared by the whole family, because the
/// I/O aperture is.
const fn family(width: f64, depth: f64, source: Source) -> Outline {
    let right_x = RIGHT_EDGE_X.get();
    let rear_y = REAR_EDGE_Y.get();
    Outline { left_x: right_x - width, right_x, rear_y, front_y: rear_y + depth, width, depth, source }
}

/// The largest outline of a form, in frame U.
#[must_use]
pub const fn outline(form: BoardForm) -> Outline {
    match form {
        BoardForm::MiniItx => {
            family(170.18, 170.18, Source::published(ITX, "page 5: 170 mm; 6.7 inches in other texts"))
        }
        BoardForm::MiniDtx => {
            family(203.20, 170.18, Source::published(DTX, "8.0 x 6.7 inches, as quoted by two texts"))
        }
        BoardForm::Dtx => family(203.20, 243.84, Source::published(DTX, "8.0 x 9.6 inches, as quoted by two texts")),
        BoardForm::FlexAtx => {
            family(228.60, 190.50, Source::published(FLEX, "9.0 x 7.5 inches at most, as quoted by two texts"))
        }
        BoardForm::MicroAtx => family(243.84, 243.84, Source::published(MATX, "table 3")),
        BoardForm::Atx => family(304.80, 243.84, Source::published(ATX, "section 3.1 and figure 3")),
    }
}

const fn hole(letter: char, x_mm: f64, y_mm: f64, place: &'static str) -> BoardHole {
    BoardHole { letter, x_mm, y_mm, source: Source::published(ATX, place) }
}

const A: BoardHole = hole('A', -124.46, 0.0, "figure 3");
const B: BoardHole = hole('B', -45.72, 0.0, "figure 3; CEM 3.0 figure 9-20 agrees");
const C: BoardHole = hole('C', 0.0, 0.0, "figure 3");
const F: BoardHole = hole('F', 157.48, 22.86, "figure 3");
const G: BoardHole = hole('G', -124.46, 154.94, "figure 3");
const H: BoardHole = hole('H', 0.0, 154.94, "figure 3");
const J: BoardHole = hole('J', 157.48, 154.94, "figure 3");
const K: BoardHole = hole('K', -124.46, 227.33, "figure 3");
const L: BoardHole = hole('L', 0.0, 227.33, "figure 3");
const M: BoardHole = hole('M', 157.48, 227.33, "figure 3");
const R: BoardHole = BoardHole {
    letter: 'R',
    x_mm: -66.04,
    y_mm: 154.94,
    source: Source::from_memory(MATX, "figure 3; scaled on CEM 3.0 figure 9-20, good to 0.4 mm"),
};
const S: BoardHole = BoardHole {
    letter: 'S',
    x_mm: -45.72,
    y_mm: 154.94,
    source: Source::from_memory(MATX, "figure 3; drawn under hole B in ATX 2.2 figure 2; optional"),
};

/// The mounting holes a board of this form may use. Fit standoffs for these and no others: metal
/// under a place foreign to the form can short the board (microATX 1.2, section 2.4.2).
#[must_use]
pub const fn holes(form: BoardForm) -> &'static [BoardHole] {
    match form {
        BoardForm::MiniItx | BoardForm::MiniDtx => &[C, F, H, J],
        BoardForm::Dtx => &[C, F, H, J, L, M],
        BoardForm::FlexAtx => &[B, C, F, H, J, S],
        BoardForm::MicroAtx => &[B, C, F, H, J, L, M, R, S],
        BoardForm::Atx => &[A, C, F, G, H, J, K, L, M],
    }
}

/// Why a form has the holes it has.
#[must_use]
pub const fn hole_set_source(form: BoardForm) -> Source {
    match form {
        BoardForm::MiniItx => Source::published(ITX, "page 5: four holes shared with microATX"),
        BoardForm::MiniDtx | BoardForm::Dtx => Source::derived(DTX, "the only holes of the family inside the outline"),
        BoardForm::FlexAtx => Source::published(FLEX, "as quoted by one text; the only holes inside the outline"),
        BoardForm::MicroAtx => Source::published(MATX, "figure 2 and section 2.2"),
        BoardForm::Atx => Source::published(ATX, "figure 2"),
    }
}

/// The holes that lie wholly on a board of this form cut short to `depth_mm`.
///
/// A shallow ATX board has no front row: its front edge lies behind holes K, L and M.
#[must_use]
pub fn holes_on(form: BoardForm, depth_mm: f64) -> Vec<BoardHole> {
    let front_y = REAR_EDGE_Y.get() + depth_mm;
    holes(form).iter().copied().filter(|hole| hole.y_mm + HOLE_DIAMETER.get() / 2.0 < front_y).collect()
}

/// How many card slots a form offers.
#[must_use]
pub const fn slot_count(form: BoardForm) -> Sourced<u32> {
    match form {
        BoardForm::MiniItx => Sourced::new(1, Source::published(ITX, "one slot")),
        BoardForm::MiniDtx | BoardForm::Dtx => {
            Sourced::new(2, Source::published(DTX, "two slots, as quoted by texts on it"))
        }
        BoardForm::FlexAtx => Sourced::new(3, Source::from_memory(FLEX, "texts disagree: two, three or four slots")),
        BoardForm::MicroAtx => Sourced::new(4, Source::published(MATX, "four slots")),
        BoardForm::Atx => Sourced::new(7, Source::published(ATX, "section 3.3.1")),
    }
}

/// Centre line of slot `n` in frame U: `1.57 - 20.32 n`. Slot 0 is nearest the processor.
#[must_use]
pub fn slot_centre_x(slot: u32) -> Sourced<f64> {
    Sourced::new(SLOT_0_X.get() - SLOT_PITCH.get() * f64::from(slot), SLOT_0_X.source())
}

/// Lists what this file and its neighbours on boards hold.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for form in BoardForm::ALL {
        let outline = outline(form);
        out.push(Entry::new(
            "boards",
            format!("{} outline", form.label()),
            "{} × {} mm",
            &[outline.width, outline.depth],
            outline.source,
        ));
    }
    for hole in [A, B, C, F, G, H, J, K, L, M, R, S] {
        out.push(Entry::new(
            "boards",
            format!("Hole {} from hole C", hole.letter),
            "x = {}, y = {} mm",
            &[hole.x_mm, hole.y_mm],
            hole.source,
        ));
    }
    for form in BoardForm::ALL {
        let letters: Vec<String> = holes(form).iter().map(|h| h.letter.to_string()).collect();
        out.push(Entry {
            group: "boards",
            name: format!("{} mounting holes", form.label()),
            value: letters.join(" "),
            source: hole_set_source(form),
        });
        let slots = slot_count(form);
        out.push(Entry::new(
            "boards",
            format!("{} card slots", form.label()),
            "{}",
            &[f64::from(slots.get())],
            slots.source(),
        ));
    }
    size_entries(out);
    super::io_aperture::entries(out);
    super::board_heights::entries(out);
}
