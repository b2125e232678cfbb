//! Kits: several designs cut from one stack of sheets, whole cases or only their sleeves.
//!
//! ```text
//! KitRequest (designs as texts, counts, sheets) -> KitWork, step by step -> Kits -> KitAnswer, report, files
//! ```
//!
//! Two questions: how many sheets so many kits take ([`KitAsk::Counts`]), and how many whole rounds the sheets at hand
//! give, each round holding every unit as often as its count says ([`KitAsk::Most`]). Designs of another material or
//! another measured thickness are cut from other sheets: each has a stack of its own, and a round is whole only when
//! every stack gives its share.

mod answer;
mod files;
mod work;

use serde::Deserialize;
use thiserror::Error;

use crate::design::{DesignErrors, LinkError};
use crate::stock::JobError;

pub use answer::{KitAnswer, KitStackAnswer, KitUnitAnswer};
pub use work::{KitWork, Kits};

/// What is asked: plain values, so that a page or a shell can put it together.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KitRequest {
    /// The designs, each with how many.
    pub units: Vec<KitUnit>,
    /// The sheets at hand; without any, each stack has those of the first design in it.
    #[serde(default)]
    pub sheets: Vec<KitSheet>,
    /// The question.
    #[serde(default)]
    pub ask: KitAsk,
}

/// A design of the kits.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KitUnit {
    /// The text of a design file, or a link.
    pub design: String,
    /// What to call it; empty: the design's own name.
    #[serde(default)]
    pub label: String,
    /// How many: of each round, or altogether.
    #[serde(default = "one")]
    pub count: usize,
    /// Which panels of it.
    #[serde(default)]
    pub part: KitPart,
}

const fn one() -> usize {
    1
}

/// Which panels of a design are wanted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum KitPart {
    /// All of them.
    #[default]
    Case,
    /// The sleeve alone: another one, perhaps in another material, for a chassis that is there.
    Sleeve,
    /// The chassis alone.
    Chassis,
}

impl KitPart {
    /// The word used in files and on the command line.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Case => "case",
            Self::Sleeve => "sleeve",
            Self::Chassis => "chassis",
        }
    }
}

/// Sheets of one size.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KitSheet {
    /// Width, mm.
    pub width_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
    /// How many; open: as many as it takes.
    #[serde(default)]
    pub count: Option<usize>,
    /// For designs of this material only, by its name in design files: `fibreboard`; open: for all.
    #[serde(default)]
    pub material: Option<String>,
}

/// The question.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum KitAsk {
    /// The counts as they are: how many sheets do they take?
    #[default]
    Counts,
    /// The sheets as they are: how many rounds do they give?
    Most,
}

/// The most units in one request: more designs than anybody mixes on one stack; a choice.
pub const MOST_UNITS: usize = 50;

/// Why a request cannot be worked on.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum KitError {
    /// No units, or more than [`MOST_UNITS`].
    #[error("{0} designs; there must be 1 to {MOST_UNITS}")]
    Units(usize),
    /// A unit of which there shall be none.
    #[error("{0}: how many? It must be at least 1")]
    None(String),
    /// A design file that does not read.
    #[error("{label}: {problems}")]
    Design {
        /// The unit.
        label: String,
        /// What is wrong.
        problems: DesignErrors,
    },
    /// A link that does not open.
    #[error("{label}: {error}")]
    Link {
        /// The unit.
        label: String,
        /// What is wrong.
        error: LinkError,
    },
    /// A material that no design can have.
    #[error("there is no material \"{given}\"; it must be {allowed}")]
    Material {
        /// What was given.
        given: String,
        /// The names there are.
        allowed: String,
    },
    /// Sheets were named, but none for a stack.
    #[error("{0}: there is no sheet to cut it from; name one for this material, or one for all")]
    NoSheet(String),
    /// The most kits from sheets without end.
    #[error("{0}: say how many sheets there are; from as many as it takes, any number of kits can be cut")]
    Uncounted(String),
    /// A number of sheets or sizes that makes no sense, or too many panels at once.
    #[error(transparent)]
    Job(#[from] JobError),
}

#[cfg(test)]
mod tests;
