//! How far a length strays when nothing else is agreed: ISO 2768-1, table 1.

use super::catalogue::Entry;
use super::documents::{ISO_2768, WORKSHOP};
use super::source::{Source, Sourced};

/// The four classes of the standard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ToleranceClass {
    /// f: a laser on small features, once its kerf is measured.
    Fine,
    /// m: router, laser.
    Medium,
    /// c: hand work.
    Coarse,
    /// v: first hand work, without a vice.
    VeryCoarse,
}

/// How a panel is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Making {
    /// Computer-guided router.
    Router,
    /// Laser cutter.
    Laser,
    /// Saw and file, to a template.
    Hand,
    /// The same, for the first time.
    FirstHand,
}

impl ToleranceClass {
    /// All classes, the finest first.
    pub const ALL: [Self; 4] = [Self::Fine, Self::Medium, Self::Coarse, Self::VeryCoarse];

    /// The letter and word of the standard.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Fine => "f, fine",
            Self::Medium => "m, medium",
            Self::Coarse => "c, coarse",
            Self::VeryCoarse => "v, very coarse",
        }
    }
}

/// Each range is "over the one before, up to and including this", mm.
const UP_TO_MM: [f64; 8] = [3.0, 6.0, 30.0, 120.0, 400.0, 1000.0, 2000.0, 4000.0];

/// The smallest length the table covers, mm.
const FROM_MM: f64 = 0.5;

/// ± mm, one row a class, one column a range; `None` where the table has a dash.
const TABLE: [[Option<f64>; 8]; 4] = [
    [Some(0.05), Some(0.05), Some(0.10), Some(0.15), Some(0.20), Some(0.30), Some(0.50), None],
    [Some(0.10), Some(0.10), Some(0.20), Some(0.30), Some(0.50), Some(0.80), Some(1.20), Some(2.00)],
    [Some(0.20), Some(0.30), Some(0.50), Some(0.80), Some(1.20), Some(2.00), Some(3.00), Some(4.00)],
    [None, Some(0.50), Some(1.00), Some(1.50), Some(2.50), Some(4.00), Some(6.00), Some(8.00)],
];

/// The class to expect of a way of making.
#[must_use]
pub const fn class_of(making: Making) -> Sourced<ToleranceClass> {
    let class = match making {
        Making::Router | Making::Laser => ToleranceClass::Medium,
        Making::Hand => ToleranceClass::Coarse,
        Making::FirstHand => ToleranceClass::VeryCoarse,
    };
    Sourced::new(class, Source::common_practice(WORKSHOP, "classes of ISO 2768-1 reached by hand and machine"))
}

/// ± for a length; `None` where the standard gives none.
#[must_use]
pub fn general_tolerance(class: ToleranceClass, length_mm: f64) -> Option<Sourced<f64>> {
    if length_mm < FROM_MM {
        return None;
    }
    let column = UP_TO_MM.iter().position(|most| length_mm <= *most)?;
    let half = TABLE[class as usize][column]?;
    Some(Sourced::new(half, cell_source(class, column)))
}

/// One cell pair of the copy that was read did not agree with the standard as remembered.
const fn cell_source(class: ToleranceClass, column: usize) -> Source {
    if matches!(class, ToleranceClass::Coarse) && column < 2 {
        Source::from_memory(ISO_2768, "table 1, class c up to 6 mm")
    } else {
        Source::published(ISO_2768, "table 1")
    }
}

/// Lists the table.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for class in ToleranceClass::ALL {
        let mut over = FROM_MM;
        for (column, most) in UP_TO_MM.into_iter().enumerate() {
            if let Some(half) = TABLE[class as usize][column] {
                let name = format!("General tolerance {}: {over} to {most} mm", class.label());
                out.push(Entry::new("sheets", name, "±{} mm", &[half], cell_source(class, column)));
            }
            over = most;
        }
    }
}
