//! Screws, nuts, washers, and the holes they need.
//!
//! One thread has one row in [`Thread`]; heads, nuts and washers are in the neighbours re-exported
//! here. `Option` means that no size is known: the maker measures.

use super::catalogue::Entry;
use super::documents::{ASME_B1_1, ISO_261, ISO_273};
use super::source::{Source, Sourced};

pub use super::hardware::*;
pub use super::hole_accuracy::*;
pub use super::screw_lengths::*;
pub use super::wood_screws::*;

/// The threads a small case uses.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thread {
    /// Metric, 2 mm.
    M2,
    /// Metric, 2.5 mm.
    M2_5,
    /// Metric, 3 mm: small drives, fans, boards.
    M3,
    /// Metric, 4 mm: brackets, fans.
    M4,
    /// Metric, 5 mm.
    M5,
    /// Metric, 6 mm: feet.
    M6,
    /// Metric, 8 mm.
    M8,
    /// Inch, 6-32 UNC: large drives, supplies, cards.
    Unc6_32,
}

/// How much room a clearance hole leaves around its screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fit {
    /// Close: machine work.
    Fine,
    /// Normal.
    Medium,
    /// Free: hand work.
    Coarse,
}

impl Thread {
    /// All threads, the thinnest first; the inch thread last.
    pub const ALL: [Self; 8] = [Self::M2, Self::M2_5, Self::M3, Self::M4, Self::M5, Self::M6, Self::M8, Self::Unc6_32];

    /// The name as printed on the bag.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::M2 => "M2",
            Self::M2_5 => "M2.5",
            Self::M3 => "M3",
            Self::M4 => "M4",
            Self::M5 => "M5",
            Self::M6 => "M6",
            Self::M8 => "M8",
            Self::Unc6_32 => "6-32 UNC",
        }
    }
}

impl Fit {
    /// All three, the closest first.
    pub const ALL: [Self; 3] = [Self::Fine, Self::Medium, Self::Coarse];

    /// The word of the standard.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Medium => "medium",
            Self::Coarse => "coarse",
        }
    }
}

/// Outside diameter of a thread.
#[must_use]
pub const fn major_diameter(thread: Thread) -> Sourced<f64> {
    let metric = Source::published(ISO_261, "nominal diameter");
    match thread {
        Thread::M2 => Sourced::new(2.0, metric),
        Thread::M2_5 => Sourced::new(2.5, metric),
        Thread::M3 => Sourced::new(3.0, metric),
        Thread::M4 => Sourced::new(4.0, metric),
        Thread::M5 => Sourced::new(5.0, metric),
        Thread::M6 => Sourced::new(6.0, metric),
        Thread::M8 => Sourced::new(8.0, metric),
        Thread::Unc6_32 => Sourced::new(3.505, Source::published(ASME_B1_1, "size 6: 0.1380 inch")),
    }
}

/// One turn of a thread.
#[must_use]
pub const fn pitch(thread: Thread) -> Sourced<f64> {
    let metric = Source::published(ISO_261, "coarse pitch");
    match thread {
        Thread::M2 => Sourced::new(0.40, metric),
        Thread::M2_5 => Sourced::new(0.45, metric),
        Thread::M3 => Sourced::new(0.50, metric),
        Thread::M4 => Sourced::new(0.70, metric),
        Thread::M5 => Sourced::new(0.80, metric),
        Thread::M6 => Sourced::new(1.00, metric),
        Thread::M8 => Sourced::new(1.25, metric),
        Thread::Unc6_32 => Sourced::new(25.4 / 32.0, Source::published(ASME_B1_1, "size 6: 32 turns to the inch")),
    }
}

/// Diameter of the hole a screw passes through freely.
///
/// 6-32 UNC lies between metric sizes and takes the row of M3.5.
#[must_use]
pub const fn clearance_hole(thread: Thread, fit: Fit) -> Sourced<f64> {
    let metric = Source::published(ISO_273, "table of clearance holes, reprinted");
    let (row, source) = match thread {
        Thread::M2 => ([2.2, 2.4, 2.6], metric),
        Thread::M2_5 => ([2.7, 2.9, 3.1], metric),
        Thread::M3 => ([3.2, 3.4, 3.6], metric),
        Thread::M4 => ([4.3, 4.5, 4.8], metric),
        Thread::M5 => ([5.3, 5.5, 5.8], metric),
        Thread::M6 => ([6.4, 6.6, 7.0], metric),
        Thread::M8 => ([8.4, 9.0, 10.0], metric),
        Thread::Unc6_32 => ([3.7, 3.9, 4.2], Source::published(ISO_273, "row of M3.5, one reprint, used for 6-32")),
    };
    Sourced::new(row[fit as usize], source)
}

/// Lists the sizes of this file and of its neighbours.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for thread in Thread::ALL {
        let name = |what: &str| format!("{}: {what}", thread.label());
        for (what, size) in [("outside diameter", major_diameter(thread)), ("pitch", pitch(thread))] {
            out.push(Entry::new("fasteners", name(what), "{} mm", &[size.get()], size.source()));
        }
        let holes = Fit::ALL.map(|fit| clearance_hole(thread, fit).get());
        out.push(Entry::new(
            "fasteners",
            name("clearance hole, fine / medium / coarse"),
            "{} / {} / {} mm",
            &holes,
            clearance_hole(thread, Fit::Medium).source(),
        ));
    }
    super::hardware::entries(out);
    super::screw_lengths::entries(out);
    super::wood_screws::entries(out);
}
