//! From what a screw clamps to the length that is sold.
//!
//! ```text
//!      head   washer  sheet  sheet  washer  nut   two turns
//!     (####)|   |  |       |       |   |  |      |    |
//!           |<-------- required length -------------->|     measured under the head
//! ```
//!
//! A screw sold as 10 mm may be 9.71 mm long: a length is long enough when its *shortest* piece is.

use super::catalogue::Entry;
use super::documents::{ASME_B18_6_3, ISO_888, ISO_4762, WORKSHOP};
use super::fasteners::{Thread, major_diameter, nut as nut_of, pitch, washer};
use super::source::{Source, Sourced};
use super::table::sizes;

/// A length screws are sold in, with the length of its shortest and longest piece, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SoldLength {
    /// As printed on the bag.
    pub nominal_mm: f64,
    /// The shortest piece that passes.
    pub shortest_mm: f64,
    /// The longest piece that passes.
    pub longest_mm: f64,
    /// Where the tolerance stands.
    pub source: Source,
}

/// What a screw is driven into when there is no nut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TappedInto {
    /// A steel bracket, standoff or insert.
    Steel,
    /// Brass or zinc.
    Brass,
    /// Aluminium or plastics.
    Aluminium,
}

sizes! {
    group "fasteners";
    TURNS_PROUD_OF_NUT: f64 = 2.0, "Turns of thread that stand out of a nut", "{}",
        Source::common_practice(WORKSHOP, "one to three turns are asked for");
}

/// The length a screw needs, under its head, mm.
///
/// `clamped_mm` is all sheet, board and spacers between head and nut or thread; `washers` counts
/// ordinary washers of the thread. With a nut the screw passes it by two turns. Without one it is
/// driven into a steel thread as deep as it is thick: use [`tapped_length_mm`] for other metals.
#[must_use]
pub fn required_length_mm(clamped_mm: f64, thread: Thread, washers: u32, nut: bool) -> f64 {
    if !nut {
        return tapped_length_mm(clamped_mm, thread, washers, TappedInto::Steel);
    }
    let proud = TURNS_PROUD_OF_NUT.get() * pitch(thread).get();
    under_washers(clamped_mm, thread, washers) + nut_of(thread).height_mm + proud
}

/// The length a screw needs when driven into a thread, mm.
#[must_use]
pub fn tapped_length_mm(clamped_mm: f64, thread: Thread, washers: u32, into: TappedInto) -> f64 {
    under_washers(clamped_mm, thread, washers) + engagement(into).get() * major_diameter(thread).get()
}

fn under_washers(clamped_mm: f64, thread: Thread, washers: u32) -> f64 {
    clamped_mm + f64::from(washers) * washer(thread).thickness_mm
}

/// How deep a screw must sit in a thread, in diameters.
#[must_use]
pub const fn engagement(into: TappedInto) -> Sourced<f64> {
    let source = Source::from_memory("Machine design handbooks", "least thread engagement");
    match into {
        TappedInto::Steel => Sourced::new(1.0, source),
        TappedInto::Brass => Sourced::new(1.5, source),
        TappedInto::Aluminium => Sourced::new(2.0, source),
    }
}

/// The metric lengths sold, the shortest first.
const METRIC_LENGTHS: Sourced<[f64; 22]> = Sourced::new(
    [
        2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0,
        70.0, 80.0, 90.0,
    ],
    Source::published(ISO_888, "lengths, without the second-choice 14 mm"),
);

/// The inch lengths sold for 6-32 screws, in inches.
const INCH_LENGTHS: Sourced<[f64; 11]> = Sourced::new(
    [0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 0.875, 1.0, 1.25, 1.5],
    Source::from_memory(ASME_B18_6_3, "lengths of size 6 screws"),
);

/// Half the length tolerance, by the greatest length it holds for: (up to and including, ± mm).
///
/// Grade js15 of ISO 286. The lengths from 6 to 40 mm are printed with their limits in ISO 4762 and
/// agree; the others are worked out from the grade as remembered.
const LENGTH_TOLERANCES: [(f64, f64); 8] =
    [(3.0, 0.20), (6.0, 0.24), (10.0, 0.29), (18.0, 0.35), (30.0, 0.42), (50.0, 0.50), (80.0, 0.60), (120.0, 0.70)];

/// The lengths whose limits were read, least and greatest, mm.
const PRINTED_MM: [f64; 2] = [6.0, 40.0];

/// Every length a thread is sold in, the shortest first.
#[must_use]
pub fn sold_lengths(thread: Thread) -> Vec<SoldLength> {
    if thread == Thread::Unc6_32 {
        return INCH_LENGTHS.get().iter().map(|l| inch_piece(*l)).collect();
    }
    METRIC_LENGTHS.get().iter().map(|l| metric_piece(*l)).collect()
}

fn metric_piece(nominal_mm: f64) -> SoldLength {
    let row = LENGTH_TOLERANCES.iter().find(|row| nominal_mm <= row.0);
    let half = row.map_or(0.70, |row| row.1);
    let printed = (PRINTED_MM[0]..=PRINTED_MM[1]).contains(&nominal_mm);
    let source = if printed {
        Source::published(ISO_4762, "table of lengths")
    } else {
        Source::from_memory("ISO 286-1", "grade js15 on the length")
    };
    SoldLength { nominal_mm, shortest_mm: nominal_mm - half, longest_mm: nominal_mm + half, source }
}

fn inch_piece(inches: f64) -> SoldLength {
    let minus = if inches <= 0.5 {
        0.02
    } else if inches <= 1.0 {
        0.03
    } else {
        0.06
    };
    SoldLength {
        nominal_mm: inches * 25.4,
        shortest_mm: (inches - minus) * 25.4,
        longest_mm: inches * 25.4,
        source: Source::from_memory(ASME_B18_6_3, "tolerance on length of size 6 screws"),
    }
}

/// A billionth of a millimetre: sums of tenths must not fall short of themselves.
const ROUNDING_MM: f64 = 1e-9;

/// The shortest screw sold of which even the shortest piece reaches `required_mm`; 6-32 screws are sold by the inch.
#[must_use]
pub fn sold_length_of_mm(thread: Thread, required_mm: f64) -> Option<f64> {
    sold_length_between_mm(thread, required_mm, f64::INFINITY)
}

/// The shortest screw sold of which every piece reaches `least_mm` and none passes `most_mm`:
/// drives and blind threads have both limits.
#[must_use]
pub fn sold_length_between_mm(thread: Thread, least_mm: f64, most_mm: f64) -> Option<f64> {
    sold_lengths(thread)
        .into_iter()
        .find(|piece| piece.shortest_mm >= least_mm - ROUNDING_MM && piece.longest_mm <= most_mm + ROUNDING_MM)
        .map(|piece| piece.nominal_mm)
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    out.push(Entry::new(
        "fasteners",
        "Metric screw lengths sold",
        "{*} mm",
        &METRIC_LENGTHS.get(),
        METRIC_LENGTHS.source(),
    ));
    for piece in METRIC_LENGTHS.get().map(metric_piece) {
        out.push(Entry::new(
            "fasteners",
            format!("Screw of {} mm: shortest piece", piece.nominal_mm),
            "{} mm",
            &[piece.shortest_mm],
            piece.source,
        ));
    }
    out.push(Entry::new(
        "fasteners",
        "6-32 screw lengths sold",
        "{*} inch",
        &INCH_LENGTHS.get(),
        INCH_LENGTHS.source(),
    ));
    for inches in INCH_LENGTHS.get() {
        let piece = inch_piece(inches);
        out.push(Entry::new(
            "fasteners",
            format!("6-32 screw of {inches} inch: shortest piece"),
            "{} mm",
            &[piece.shortest_mm],
            piece.source,
        ));
    }
    for (into, name) in [
        (TappedInto::Steel, "steel"),
        (TappedInto::Brass, "brass or zinc"),
        (TappedInto::Aluminium, "aluminium or plastics"),
    ] {
        let depth = engagement(into);
        out.push(Entry::new(
            "fasteners",
            format!("Thread engagement in {name}"),
            "{} diameters",
            &[depth.get()],
            depth.source(),
        ));
    }
    size_entries(out);
}
