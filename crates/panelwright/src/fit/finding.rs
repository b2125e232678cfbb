//! What a check says.

use super::mend::Mend;
use crate::dimensions::source::Source;

/// How much a finding weighs. Ordered: the heaviest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The case cannot be built or used so.
    Blocks,
    /// It can, with care.
    Caution,
    /// Worth knowing.
    Note,
}

impl Severity {
    /// The word used in files and on the page.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Blocks => "blocks",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}

/// What a check found. A finding is a value; a remedy is words, and a change of the design where there is a number.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Name of the rule: `cooler-under-top`.
    pub rule: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// What is so, in a sentence with the numbers.
    pub text: String,
    /// What would mend it, in a sentence; empty when nothing needs mending.
    pub remedy: String,
    /// The changes of the design behind the remedy's numbers: each clears the finding by itself.
    pub mends: Vec<Mend>,
    /// Value measured, in `unit`.
    pub measured: Option<f64>,
    /// Value needed, in `unit`.
    pub needed: Option<f64>,
    /// Unit of both: `mm`, or empty for counts.
    pub unit: &'static str,
    /// Parts, panels and features it is about: `cooler`, `top`, `back/fan-1-opening`.
    pub about: Vec<String>,
    /// Where in the case frame, for a leader line.
    pub at: Option<[f64; 3]>,
    /// Where the limit comes from.
    pub source: Source,
}
