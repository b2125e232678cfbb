//! Drives: bodies, screw holes, and how deep a screw may go.
//!
//! The drive is seen **from below**, connector end on top. Origin: the corner at the connector end
//! on the left; `a` across to the right, `b` away from the connector end, `h` up from the drive's
//! bottom face; mm:
//!
//! ```text
//!    connector end (b = 0)
//!    +---[ connector ]-------------+
//!    | o                         o |   b = 14.00 (2.5 inch)   41.28 (3.5 inch)
//!    |                             |
//!    | o                         o |   b = 90.60 (2.5 inch)   85.73 or 117.48 (3.5 inch)
//!    +-----------------------------+
//!    a = 0                      a = width
//! ```
//!
//! Which side is the viewing side was read off the projection of the drawings.

use super::catalogue::Entry;
use super::documents::{SFF_8201, SFF_8223, SFF_8301, SFF_8323, TRADE, WORKSHOP};
use super::fasteners::Thread;
use super::source::{Source, Sourced};
use super::table::sizes;

pub use super::plugs::{PlugShape, sata_data_room, sata_power_room};

/// The two sizes of drive.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DriveKind {
    /// 2.5 inch.
    Small,
    /// 3.5 inch.
    Large,
}

/// The face of a drive a screw goes into.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DriveFace {
    /// The bottom, four holes.
    Bottom,
    /// One of the two long sides.
    Side,
}

/// A drive's body, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriveBody {
    /// Across the side-hole bosses.
    pub width_mm: f64,
    /// Plus and minus on the width.
    pub width_tolerance_mm: f64,
    /// Greatest length, connector end to far end.
    pub length_max_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// One of the heights a drive comes in, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriveHeight {
    /// The nominal height.
    pub height_mm: f64,
    /// Tolerance upward.
    pub plus_mm: f64,
    /// Tolerance downward; `None` where only a greatest height is given.
    pub minus_mm: Option<f64>,
    /// Where it stands.
    pub source: Source,
}

/// Which row of bottom holes a hole belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HoleRow {
    /// The row near the connector; always present.
    Near,
    /// The second row of a 2.5 inch drive, or the nearer one of a 3.5 inch drive, which may lack it.
    Second,
    /// The far row of a 3.5 inch drive: it takes the place of the second row on large modern drives.
    Far,
}

/// A screw hole in the bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BottomHole {
    /// Across, mm.
    pub a_mm: f64,
    /// From the connector end, mm.
    pub b_mm: f64,
    /// The row it belongs to.
    pub row: HoleRow,
    /// Where it stands.
    pub source: Source,
}

/// A screw hole in each long side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideHole {
    /// From the connector end, mm.
    pub b_mm: f64,
    /// Above the bottom face, mm.
    pub h_mm: f64,
    /// Where it stands.
    pub source: Source,
}

/// How far a screw must and may go into a drive, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Penetration {
    /// Least depth that holds.
    pub least: Sourced<f64>,
    /// Greatest depth that harms nothing.
    pub most: Sourced<f64>,
}

/// The connector at a drive's end, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriveConnector {
    /// Where its tongue starts.
    pub tongue_a_mm: f64,
    /// Length of the tongue.
    pub tongue_length_mm: f64,
    /// Overall width.
    pub overall_width_mm: f64,
    /// Middle of the tongue.
    pub centre_a_mm: f64,
    /// Height of the tongue above the bottom, ±0.38.
    pub tongue_h_mm: f64,
    /// Seating plane inside the drive's end.
    pub seat_b_mm: f64,
    /// Where these stand.
    pub source: Source,
}

impl DriveKind {
    /// Both kinds.
    pub const ALL: [Self; 2] = [Self::Small, Self::Large];

    /// The name of the size.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Small => "2.5 inch drive",
            Self::Large => "3.5 inch drive",
        }
    }
}

/// Width and length.
#[must_use]
pub const fn body(kind: DriveKind) -> DriveBody {
    match kind {
        DriveKind::Small => DriveBody {
            width_mm: 69.85,
            width_tolerance_mm: 0.25,
            length_max_mm: 100.45,
            source: Source::published(SFF_8201, "table 3-1; older drives up to 101.85 mm"),
        },
        DriveKind::Large => DriveBody {
            width_mm: 101.60,
            width_tolerance_mm: 0.25,
            length_max_mm: 147.0,
            source: Source::published(SFF_8301, "figure 4-1"),
        },
    }
}

const fn small_height(height_mm: f64, plus_mm: f64, minus_mm: f64) -> DriveHeight {
    DriveHeight { height_mm, plus_mm, minus_mm: Some(minus_mm), source: Source::published(SFF_8201, "table 3-1") }
}

const fn large_height(height_mm: f64) -> DriveHeight {
    DriveHeight {
        height_mm,
        plus_mm: 0.0,
        minus_mm: None,
        source: Source::published(SFF_8301, "figure 4-1, greatest height"),
    }
}

/// The heights a drive comes in, the lowest first.
#[must_use]
pub const fn heights(kind: DriveKind) -> &'static [DriveHeight] {
    const SMALL: [DriveHeight; 6] = [
        small_height(5.0, 0.20, 0.20),
        small_height(7.0, 0.20, 0.50),
        small_height(9.5, 0.20, 0.20),
        small_height(12.7, 0.0, 0.50),
        small_height(15.0, 0.0, 0.50),
        small_height(19.05, 0.0, 0.50),
    ];
    const LARGE: [DriveHeight; 3] = [large_height(17.8), large_height(26.1), large_height(42.0)];
    match kind {
        DriveKind::Small => &SMALL,
        DriveKind::Large => &LARGE,
    }
}

const fn small_hole(a_mm: f64, b_mm: f64, row: HoleRow) -> BottomHole {
    BottomHole { a_mm, b_mm, row, source: Source::published(SFF_8201, "table 3-1 and figure 3-1") }
}

const fn large_hole(a_mm: f64, b_mm: f64, row: HoleRow) -> BottomHole {
    BottomHole { a_mm, b_mm, row, source: Source::published(SFF_8301, "figure 4-1") }
}

/// The holes in the bottom.
///
/// A 3.5 inch drive has the near row and *either* the second or the far row: offer all six places,
/// or ask. Drives of 2.5 inch at most 7 mm high may lack bottom holes altogether.
#[must_use]
pub const fn bottom_holes(kind: DriveKind) -> &'static [BottomHole] {
    const SMALL: [BottomHole; 4] = [
        small_hole(4.07, 14.0, HoleRow::Near),
        small_hole(65.79, 14.0, HoleRow::Near),
        small_hole(4.07, 90.6, HoleRow::Second),
        small_hole(65.79, 90.6, HoleRow::Second),
    ];
    const LARGE: [BottomHole; 6] = [
        large_hole(3.18, 41.28, HoleRow::Near),
        large_hole(98.43, 41.28, HoleRow::Near),
        large_hole(3.18, 85.73, HoleRow::Second),
        large_hole(98.43, 85.73, HoleRow::Second),
        large_hole(3.18, 117.48, HoleRow::Far),
        large_hole(98.43, 117.48, HoleRow::Far),
    ];
    match kind {
        DriveKind::Small => &SMALL,
        DriveKind::Large => &LARGE,
    }
}

/// The holes in each long side, the near one first.
#[must_use]
pub const fn side_holes(kind: DriveKind) -> &'static [SideHole] {
    const SMALL_SOURCE: Source = Source::published(SFF_8201, "table 3-1 and figure 3-1");
    const LARGE_SOURCE: Source = Source::published(SFF_8301, "figure 4-1; no middle hole");
    const SMALL: [SideHole; 2] = [
        SideHole { b_mm: 14.0, h_mm: 3.0, source: SMALL_SOURCE },
        SideHole { b_mm: 90.6, h_mm: 3.0, source: SMALL_SOURCE },
    ];
    const LARGE: [SideHole; 2] = [
        SideHole { b_mm: 28.5, h_mm: 6.35, source: LARGE_SOURCE },
        SideHole { b_mm: 130.1, h_mm: 6.35, source: LARGE_SOURCE },
    ];
    match kind {
        DriveKind::Small => &SMALL,
        DriveKind::Large => &LARGE,
    }
}

/// The thread of a drive's screws.
#[must_use]
pub const fn thread(kind: DriveKind) -> Sourced<Thread> {
    match kind {
        DriveKind::Small => Sourced::new(Thread::M3, Source::published(SFF_8201, "table 3-1")),
        DriveKind::Large => Sourced::new(Thread::Unc6_32, Source::published(SFF_8301, "figure 4-1, 6-32 UNC-2B")),
    }
}

/// How deep a screw may go: a deeper one can ruin the drive.
///
/// `height_mm` is the drive's height: thin 2.5 inch drives have shallower side holes.
#[must_use]
pub fn penetration(kind: DriveKind, face: DriveFace, height_mm: f64) -> Penetration {
    match (kind, face) {
        (DriveKind::Large, _) => Penetration {
            least: Sourced::new(3.0, Source::published(SFF_8301, "screw penetration, second hand")),
            most: Sourced::new(3.8, Source::published(SFF_8301, "screw penetration, second hand")),
        },
        (DriveKind::Small, face) => {
            let depth_mm = match face {
                DriveFace::Bottom => 2.5,
                DriveFace::Side if height_mm <= 7.0 => 2.0,
                DriveFace::Side => 3.0,
            };
            Penetration {
                least: Sourced::new(1.5, Source::common_practice(WORKSHOP, "three turns of an M3 screw")),
                most: Sourced::new(depth_mm, Source::published(SFF_8201, "table 3-1, least depth of full thread")),
            }
        }
    }
}

/// Where the plugs go.
#[must_use]
pub const fn connector(kind: DriveKind) -> DriveConnector {
    match kind {
        DriveKind::Small => DriveConnector {
            tongue_a_mm: 13.43,
            tongue_length_mm: 33.39,
            overall_width_mm: 42.73,
            centre_a_mm: 30.13,
            tongue_h_mm: 3.50,
            seat_b_mm: 4.60,
            source: Source::published(SFF_8223, "figure 3-1 and its table"),
        },
        DriveKind::Large => DriveConnector {
            tongue_a_mm: 13.43,
            tongue_length_mm: 33.39,
            overall_width_mm: 42.73,
            centre_a_mm: 30.12,
            tongue_h_mm: 3.50,
            seat_b_mm: 4.90,
            source: Source::published(SFF_8323, "figure 3-1 and its table"),
        },
    }
}

/// The room to plan behind a drive for both its plugs: the longer of the two.
#[must_use]
pub const fn plug_room(shape: PlugShape) -> Sourced<f64> {
    let room = sata_power_room(shape);
    Sourced::new(room.get()[1], room.source())
}

sizes! {
    group "drives";
    SMALL_HOLES_OPTIONAL_UP_TO: f64 = 7.0, "2.5 inch drive: bottom holes are optional up to a height of", "{} mm",
        Source::published(SFF_8201, "table 3-1");
    SMALL_HOLE_ZONE: f64 = 0.50, "2.5 inch drive: holes lie within a zone of", "{} mm diameter",
        Source::published(SFF_8201, "table 3-1");
    M2_CARD_WIDTH: f64 = 22.0, "M.2 card, width", "{} mm",
        Source::published("Texts on M.2 cards", "names 2230 to 22110");
    M2_CARD_LENGTHS: [f64; 5] = [30.0, 42.0, 60.0, 80.0, 110.0], "M.2 card, lengths", "{} / {} / {} / {} / {} mm",
        Source::published("Texts on M.2 cards", "names 2230 to 22110");
    M2_CARD_PARTS: f64 = 1.5, "M.2 card, parts on each side", "up to {} mm",
        Source::published("Texts on M.2 cards", "second hand: one text");
    M2_HEATSINK: [f64; 2] = [10.0, 25.0], "M.2 card, upright heatsink", "{} to {} mm",
        Source::from_memory(TRADE, "M.2 heatsinks");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for kind in DriveKind::ALL {
        list_drive(kind, out);
    }
    size_entries(out);
}

/// Lists one size of drive.
fn list_drive(kind: DriveKind, out: &mut Vec<Entry>) {
    let mut push = |what: String, pattern: &str, numbers: &[f64], source: Source| {
        let name = format!("{}: {what}", kind.label());
        out.push(Entry::new("drives", name, pattern, numbers, source));
    };
    let body = body(kind);
    push(
        "width, greatest length".to_owned(),
        "{} ±{} × {} mm",
        &[body.width_mm, body.width_tolerance_mm, body.length_max_mm],
        body.source,
    );
    for height in heights(kind) {
        let what = format!("height {}", height.height_mm);
        match height.minus_mm {
            Some(minus) => push(what, "{} +{}/-{} mm", &[height.height_mm, height.plus_mm, minus], height.source),
            None => push(what, "at most {} mm", &[height.height_mm], height.source),
        }
    }
    for (index, hole) in bottom_holes(kind).iter().enumerate() {
        push(format!("bottom hole {}", index + 1), "a = {}, b = {} mm", &[hole.a_mm, hole.b_mm], hole.source);
    }
    for (index, hole) in side_holes(kind).iter().enumerate() {
        push(format!("side hole {}", index + 1), "b = {}, h = {} mm", &[hole.b_mm, hole.h_mm], hole.source);
    }
    for (what, face, height_mm) in [
        ("bottom", DriveFace::Bottom, f64::INFINITY),
        ("side", DriveFace::Side, f64::INFINITY),
        ("side, drive up to 7 mm high", DriveFace::Side, 7.0),
    ] {
        let depth = penetration(kind, face, height_mm);
        if kind == DriveKind::Large && height_mm.is_finite() {
            continue;
        }
        push(format!("least depth of a screw, {what}"), "{} mm", &[depth.least.get()], depth.least.source());
        push(format!("greatest depth of a screw, {what}"), "{} mm", &[depth.most.get()], depth.most.source());
    }
    let plug = connector(kind);
    push(
        "connector: tongue from the edge, length, overall width".to_owned(),
        "{} / {} / {} mm",
        &[plug.tongue_a_mm, plug.tongue_length_mm, plug.overall_width_mm],
        plug.source,
    );
    push(
        "connector: centre of the tongue, height, seat inside the end".to_owned(),
        "a = {}, h = {}, b = {} mm",
        &[plug.centre_a_mm, plug.tongue_h_mm, plug.seat_b_mm],
        plug.source,
    );
}
