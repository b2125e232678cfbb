//! Power supplies: size, holes where they are known, air and cables.
//!
//! The face is the side with the mains inlet, **seen from outside the case**, the level pair of
//! holes on top; origin at its lower left corner, X right, Y up, mm:
//!
//! ```text
//!   +------------------------------------------+ 86
//!   | o (6, 80)                      (144, 80) o|
//!   |                                          |
//!   |        vent                    [inlet]   |
//!   | o (6, 16)                                |
//!   |                         (120, 6) o       |
//!   +------------------------------------------+ 0
//!   0                                        150
//! ```
//!
//! Only the full-size pattern is known well enough to drill. It does not say which way round the
//! supply's fan looks; a plate with both patterns takes the supply either way up.

use super::catalogue::Entry;
use super::documents::{SUPPLY_GUIDE, SUPPLY_LISTS, SUPPLY_MODELS, TRADE};
use super::fasteners::Thread;
use super::source::{Source, Sourced};
use super::table::sizes;

pub use super::plugs::{PlugShape, mains_plug_room};

/// The kinds of supply a case can hold, or stand beside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SupplyKind {
    /// Full size, 150 x 86 mm face, any depth.
    Atx,
    /// 125 x 63.5 mm face, 100 mm deep.
    Sfx,
    /// 125 x 63.5 mm face, 130 mm deep.
    SfxL,
    /// 85 x 65 mm face, 175 mm deep.
    Tfx,
    /// 81.5 x 40.5 mm face, 150 mm deep.
    FlexAtx,
    /// Outside the case, on a cable.
    Brick,
}

/// The body of a supply, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupplySize {
    /// Width of the face.
    pub face_width_mm: f64,
    /// Height of the face.
    pub face_height_mm: f64,
    /// Usual depth, without cables; the maker's own measure comes first.
    pub depth_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// A screw hole of a supply, on its face as seen from outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupplyHole {
    /// From the lower left corner to the right, mm.
    pub x_mm: f64,
    /// From the lower left corner up, mm.
    pub y_mm: f64,
    /// Where it stands.
    pub source: Source,
}

impl SupplyKind {
    /// All kinds, the full size first.
    pub const ALL: [Self; 6] = [Self::Atx, Self::Sfx, Self::SfxL, Self::Tfx, Self::FlexAtx, Self::Brick];

    /// The name as dealers print it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Atx => "ATX (full size)",
            Self::Sfx => "SFX",
            Self::SfxL => "SFX-L",
            Self::Tfx => "TFX",
            Self::FlexAtx => "Flex ATX",
            Self::Brick => "external brick",
        }
    }
}

/// Face and usual depth of a supply inside the case; `None` for a brick outside it.
#[must_use]
pub const fn size(kind: SupplyKind) -> Option<SupplySize> {
    let (face_width_mm, face_height_mm, depth_mm, place) = match kind {
        SupplyKind::Atx => (150.0, 86.0, 140.0, "ATX; depths of 100 to 230 mm are sold"),
        SupplyKind::Sfx => (125.0, 63.5, 100.0, "SFX"),
        SupplyKind::SfxL => (125.0, 63.5, 130.0, "SFX-L"),
        SupplyKind::Tfx => (85.0, 65.0, 175.0, "TFX; one list says 64 mm high"),
        SupplyKind::FlexAtx => (81.5, 40.5, 150.0, "Flex ATX; one unit measured 83 x 41 x 150.5 mm"),
        SupplyKind::Brick => return None,
    };
    Some(SupplySize { face_width_mm, face_height_mm, depth_mm, source: Source::published(SUPPLY_LISTS, place) })
}

const fn model_hole(x_mm: f64, y_mm: f64) -> SupplyHole {
    SupplyHole { x_mm, y_mm, source: Source::published(SUPPLY_MODELS, "four holes, agreeing within 0.7 mm") }
}

const fn turned_hole(x_mm: f64, y_mm: f64) -> SupplyHole {
    SupplyHole { x_mm, y_mm, source: Source::derived(SUPPLY_MODELS, "the four holes turned by half a turn") }
}

const fn recalled_hole(x_mm: f64, y_mm: f64) -> SupplyHole {
    SupplyHole { x_mm, y_mm, source: Source::from_memory(SUPPLY_GUIDE, "SFX12V guide, face with six tapped holes") }
}

/// The full-size pattern as its models show it, and the same turned by half a turn.
const ATX_HOLES: [SupplyHole; 8] = [
    model_hole(6.0, 80.0),
    model_hole(144.0, 80.0),
    model_hole(6.0, 16.0),
    model_hole(120.0, 6.0),
    turned_hole(144.0, 6.0),
    turned_hole(6.0, 6.0),
    turned_hole(144.0, 70.0),
    turned_hole(30.0, 80.0),
];

/// Holes recalled for SFX and SFX-L: they may be shown, but are not drilled unless the maker has
/// measured them.
const SFX_RECALLED: [SupplyHole; 6] = [
    recalled_hole(6.0, 6.0),
    recalled_hole(119.0, 6.0),
    recalled_hole(6.0, 31.7),
    recalled_hole(119.0, 31.7),
    recalled_hole(6.0, 57.5),
    recalled_hole(119.0, 57.5),
];

/// The holes that can be drilled without measuring: the four of a full-size supply, none of any
/// other kind.
#[must_use]
pub fn holes(kind: SupplyKind) -> Option<&'static [SupplyHole]> {
    match kind {
        SupplyKind::Atx => Some(&ATX_HOLES[..4]),
        _ => None,
    }
}

/// The same holes with the supply turned by half a turn on its face.
#[must_use]
pub fn turned_holes(kind: SupplyKind) -> Option<&'static [SupplyHole]> {
    match kind {
        SupplyKind::Atx => Some(&ATX_HOLES[4..]),
        _ => None,
    }
}

/// Both ways round: the eight holes of a plate that takes a full-size supply either way up.
#[must_use]
pub fn holes_both_ways(kind: SupplyKind) -> Option<&'static [SupplyHole]> {
    match kind {
        SupplyKind::Atx => Some(&ATX_HOLES),
        _ => None,
    }
}

/// Holes that are only recalled: compare them with the supply in hand, never drill from them.
#[must_use]
pub fn recalled_holes(kind: SupplyKind) -> Option<&'static [SupplyHole]> {
    match kind {
        SupplyKind::Sfx | SupplyKind::SfxL => Some(&SFX_RECALLED),
        _ => None,
    }
}

/// The thread of a supply's screws.
#[must_use]
pub const fn thread() -> Sourced<Thread> {
    Sourced::new(Thread::Unc6_32, Source::published(SUPPLY_MODELS, "screws 6-32 UNC"))
}

sizes! {
    group "supplies";
    DEPTHS_ATX: &'static [f64] = &[100.0, 140.0, 160.0, 180.0, 230.0], "Depths of full-size supplies", "{*} mm",
        Source::published(SUPPLY_LISTS, "ATX, several lists");
    AIR_GAP: f64 = 12.7, "Free air before a supply's intake and outlet", "at least {} mm",
        Source::published(SUPPLY_GUIDE, "guide 0.9 section 4.3; document 336521, venting");
    CABLE_ROOM: [f64; 2] = [30.0, 60.0], "Room for cables or plugs at a supply's inner end", "{} to {} mm",
        Source::from_memory(TRADE, "fixed cables need less, pluggable ones more");
    FACE_FLANGE: f64 = 2.0, "Face flange past the body", "about {} mm",
        Source::published(SUPPLY_MODELS, "second hand: one model");
    HARNESS_LENGTH: [f64; 2] = [250.0, 280.0], "Lead from a supply to its first connector", "at least {} to {} mm",
        Source::published(SUPPLY_GUIDE, "ATX12V guide 2.0, page 32");
    TFX_FAN: f64 = 80.0, "Fan of a TFX supply", "{} mm",
        Source::published(SUPPLY_GUIDE, "TFX12V guide 2.0 section 3.5");
    ATX_FAN: [f64; 2] = [120.0, 140.0], "Intake fan on a large side of a full-size supply", "{} to {} mm",
        Source::from_memory(TRADE, "which of the two large sides is not standardised");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for kind in SupplyKind::ALL {
        if let Some(size) = size(kind) {
            out.push(Entry::new(
                "supplies",
                format!("{}: face and usual depth", kind.label()),
                "{} × {} x {} mm",
                &[size.face_width_mm, size.face_height_mm, size.depth_mm],
                size.source,
            ));
        }
    }
    list_holes("ATX (full size)", &ATX_HOLES[..4], out);
    list_holes("ATX (full size), turned", &ATX_HOLES[4..], out);
    list_holes("SFX and SFX-L, not drilled", &SFX_RECALLED, out);
    out.push(Entry {
        group: "supplies",
        name: "Screws of a supply".to_owned(),
        value: thread().get().label().to_owned(),
        source: thread().source(),
    });
    size_entries(out);
}

/// Lists a pattern hole by hole.
fn list_holes(name: &str, holes: &[SupplyHole], out: &mut Vec<Entry>) {
    for (index, hole) in holes.iter().enumerate() {
        out.push(Entry::new(
            "supplies",
            format!("{name}: hole {}", index + 1),
            "{}, {} mm",
            &[hole.x_mm, hole.y_mm],
            hole.source,
        ));
    }
}
