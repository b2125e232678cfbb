//! What saw, drill and file can do: holes to start a blade, reach, accuracy, films.

use super::catalogue::Entry;
use super::documents::WORKSHOP;
use super::source::{Source, Sourced};
use super::table::sizes;

/// Saws for openings inside a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Saw {
    /// Fret saw: fine blade, deep frame.
    Fret,
    /// Coping saw: blade with pins, shallow frame.
    Coping,
    /// Jigsaw: no frame.
    Jigsaw,
}

impl Saw {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Fret, Self::Coping, Self::Jigsaw];

    /// The plain name.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Fret => "fret saw",
            Self::Coping => "coping saw",
            Self::Jigsaw => "jigsaw",
        }
    }
}

/// Hole through which its blade starts an inner cut.
#[must_use]
pub const fn blade_hole(saw: Saw) -> Sourced<f64> {
    let source = Source::common_practice(WORKSHOP, "holes to start a blade");
    match saw {
        Saw::Fret => Sourced::new(3.0, source),
        Saw::Coping => Sourced::new(8.0, source),
        Saw::Jigsaw => Sourced::new(12.0, source),
    }
}

/// From the blade to the frame: how far inside the panel it reaches; a jigsaw reaches everywhere.
#[must_use]
pub const fn throat(saw: Saw) -> Option<Sourced<f64>> {
    match saw {
        Saw::Fret => Some(Sourced::new(300.0, Source::common_practice(WORKSHOP, "fret saws of 200 to 500 mm"))),
        Saw::Coping => {
            Some(Sourced::new(152.0, Source::published("Guides to hand saws", "coping saw throat, 102 to 152 mm")))
        }
        Saw::Jigsaw => None,
    }
}

/// Width of the cut, least and greatest.
#[must_use]
pub const fn saw_kerf(saw: Saw) -> Sourced<[f64; 2]> {
    let source = Source::common_practice(WORKSHOP, "width of a saw cut");
    match saw {
        Saw::Fret => Sourced::new([0.3, 0.6], source),
        Saw::Coping => Sourced::new([0.5, 1.0], source),
        Saw::Jigsaw => Sourced::new([1.0, 1.5], source),
    }
}

sizes! {
    group "making";
    SAWN_ACCURACY: f64 = 0.5, "Sawn to a glued template and filed, features up to 120 mm", "±{} mm",
        Source::common_practice(WORKSHOP, "careful hand work");
    SAWN_ACCURACY_LONG: [f64; 2] = [0.8, 1.2], "The same, above 120 mm", "±{} to {} mm",
        Source::common_practice(WORKSHOP, "careful hand work");
    DRILLED_ACCURACY: [f64; 2] = [0.3, 0.5], "Hole drilled at a punched centre", "±{} to {} mm",
        Source::common_practice(WORKSHOP, "careful hand work");
    SANDING_ALLOWANCE: [f64; 2] = [0.3, 0.5], "Leave outside the line for sanding", "{} to {} mm",
        Source::common_practice(WORKSHOP, "sawn edges");
    CHAIN_WEB: f64 = 0.5, "Sheet between the holes of a drill chain, cut with a chisel", "{} mm",
        Source::common_practice(WORKSHOP, "nearer, and the drill runs into the hole before");
    PAINT_FILM: [f64; 2] = [0.05, 0.15], "Paint on one face", "{} to {} mm",
        Source::common_practice(WORKSHOP, "primer and two coats");
    GLUE_LINE: [f64; 2] = [0.05, 0.2], "Glue in a joint", "{} to {} mm",
        Source::common_practice(WORKSHOP, "none in a tight butt joint");
    HAND_DRILL_MIN: f64 = 3.0, "Smallest hole worth drilling many times by hand", "{} mm",
        Source::common_practice(WORKSHOP, "thinner drills wander and break");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for saw in Saw::ALL {
        let name = |what: &str| format!("{}: {what}", saw.label());
        let hole = blade_hole(saw);
        let kerf = saw_kerf(saw);
        out.push(Entry::new("making", name("hole for the blade"), "{} mm", &[hole.get()], hole.source()));
        out.push(Entry::new("making", name("width of cut"), "{} to {} mm", &kerf.get(), kerf.source()));
        if let Some(throat) = throat(saw) {
            out.push(Entry::new("making", name("reach from an edge"), "{} mm", &[throat.get()], throat.source()));
        }
    }
    size_entries(out);
}
