//! Processor coolers and memory: how high they stand above the board.
//!
//! ```text
//!     ------------------------------  inside of the wall above
//!        gap, at least 10 mm over a cooler that blows down
//!     +--------------------------+
//!     |  cooler, height as sold  |
//!     +--------------------------+   heat spreader's top, about 8 mm above the board
//!       socket and processor
//!     ==============================  top of the board
//! ```
//!
//! No standard fixes where the socket is: the maker measures its centre.

use super::catalogue::Entry;
use super::documents::{COOLER_GUIDE_1, COOLER_GUIDE_2, TRADE};
use super::source::{Source, Sourced};
use super::table::sizes;

/// Classes of cooler by their height above the heat spreader.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CoolerClass {
    /// 27 to 47 mm.
    Low,
    /// 48 to 70 mm.
    Medium,
    /// 71 to 119 mm.
    TallLow,
    /// 120 to 165 mm.
    Tower,
    /// 165 to 170 mm.
    LargeTower,
}

impl CoolerClass {
    /// All classes, the lowest first.
    pub const ALL: [Self; 5] = [Self::Low, Self::Medium, Self::TallLow, Self::Tower, Self::LargeTower];

    /// The plain name.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Low => "low",
            Self::Medium => "medium",
            Self::TallLow => "high, short of a tower",
            Self::Tower => "tower",
            Self::LargeTower => "large tower",
        }
    }
}

/// Height of a class above the heat spreader, least and greatest.
#[must_use]
pub const fn class_height(class: CoolerClass) -> Sourced<[f64; 2]> {
    let source = Source::from_memory(TRADE, "cooler heights");
    match class {
        CoolerClass::Low => Sourced::new([27.0, 47.0], source),
        CoolerClass::Medium => Sourced::new([48.0, 70.0], source),
        CoolerClass::TallLow => Sourced::new([71.0, 119.0], source),
        CoolerClass::Tower => Sourced::new([120.0, 165.0], source),
        CoolerClass::LargeTower => Sourced::new([165.0, 170.0], source),
    }
}

sizes! {
    group "coolers";
    SPREADER_ABOVE_BOARD: f64 = 7.78, "Heat spreader's top above the board, LGA1150 to LGA1156", "{} ±0.34 mm",
        Source::published(COOLER_GUIDE_1, "stack-up height: 3.4 of socket and 4.38 of package");
    SPREADER_OF_OTHER_SOCKETS: [f64; 2] = [6.5, 8.2], "Heat spreader's top above the board, other sockets", "{} to {} mm",
        Source::from_memory(TRADE, "LGA1200, LGA1700, AM4 and AM5");
    SPREADER_ALLOWANCE: f64 = 8.2, "Room to add to a cooler's height, above the board's top", "{} mm",
        Source::derived(COOLER_GUIDE_1, "7.78 ±0.34 mm; other sockets up to 8.2 mm from memory");
    GAP_ABOVE_DOWN_BLOWER: f64 = 10.16, "Free gap above a cooler that blows down", "at least {} mm",
        Source::derived(COOLER_GUIDE_2, "nothing nearer than 81.28 mm over a cooler of 71.12 mm");
    BETTER_GAP_ABOVE_DOWN_BLOWER: f64 = 20.0, "Better gap above a cooler that blows down", "15 to {} mm",
        Source::derived(COOLER_GUIDE_2, "twice the least gap");
    REFERENCE_COOLER: [f64; 2] = [71.12, 81.28], "Reference cooler above the board, nearest wall above the board", "{} / {} mm",
        Source::published(COOLER_GUIDE_2, "geometric envelope, two editions");
    MEMORY_LOW: f64 = 31.25, "Plain memory module", "{} mm",
        Source::from_memory(TRADE, "memory without heat spreader");
    MEMORY_TALL: [f64; 2] = [45.0, 56.0], "Memory module with heat spreader", "up to {} to {} mm",
        Source::from_memory(TRADE, "memory with heat spreader");
    MOUNT_LGA115X: f64 = 75.0, "Cooler holes about LGA115x and LGA1200 sockets", "{} mm square",
        Source::from_memory(TRADE, "inside the board: only backplates matter");
    MOUNT_LGA1700: f64 = 78.0, "Cooler holes about an LGA1700 socket", "{} mm square",
        Source::from_memory(TRADE, "inside the board: only backplates matter");
    MOUNT_AM4: [f64; 2] = [54.0, 90.0], "Cooler holes about AM4 and AM5 sockets", "{} × {} mm",
        Source::from_memory(TRADE, "inside the board: only backplates matter");
    SOCKET_SCATTER: [f64; 2] = [5.0, 15.0], "How far the socket's place differs between boards", "±{} on Mini-ITX, ±{} mm on larger ones",
        Source::common_practice(TRADE, "makers' reports; no standard fixes the socket");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for class in CoolerClass::ALL {
        let height = class_height(class);
        let name = format!("Cooler, {}: height", class.label());
        out.push(Entry::new("coolers", name, "{} to {} mm", &height.get(), height.source()));
    }
    size_entries(out);
}
