//! A named rule, and the way its findings are put together.

use super::finding::{Finding, Severity};
use super::scene::Scene;
use crate::dimensions::source::Source;

/// One rule: what it looks after, where its limit comes from, and the function that looks.
#[derive(Clone, Copy)]
pub struct Rule {
    /// Its name, as findings carry it: `cooler-under-top`.
    pub name: &'static str,
    /// What it looks after, one line.
    pub what: &'static str,
    /// Where its limit comes from; a finding may name a more exact place.
    pub source: Source,
    /// Looks at the whole case. It is handed what the rules before it found and adds its own.
    pub(super) look: fn(&Scene, &mut Vec<Finding>),
}

impl std::fmt::Debug for Rule {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Rule").field("name", &self.name).finish_non_exhaustive()
    }
}

impl Rule {
    /// A finding of this rule; what it is about and where follows with the `with_…` functions.
    pub(super) fn finds(&self, severity: Severity, text: impl Into<String>) -> Finding {
        Finding {
            rule: self.name,
            severity,
            text: text.into(),
            remedy: String::new(),
            mends: Vec::new(),
            measured: None,
            needed: None,
            unit: "",
            about: Vec::new(),
            at: None,
            source: self.source,
        }
    }

    pub(super) fn blocks(&self, text: impl Into<String>) -> Finding {
        self.finds(Severity::Blocks, text)
    }

    pub(super) fn caution(&self, text: impl Into<String>) -> Finding {
        self.finds(Severity::Caution, text)
    }

    pub(super) fn note(&self, text: impl Into<String>) -> Finding {
        self.finds(Severity::Note, text)
    }
}

/// Rounds away the noise of binary fractions, so that a file says 213.4 and not 213.40000000000003.
fn tidy(value: f64) -> f64 {
    let rounded = libm::round(value * 1e4) / 1e4;
    if rounded == 0.0 { 0.0 } else { rounded }
}

impl Finding {
    /// Both lengths, mm.
    pub(super) fn with_mm(mut self, measured: f64, needed: f64) -> Self {
        self.measured = Some(tidy(measured));
        self.needed = Some(tidy(needed));
        self.unit = "mm";
        self
    }

    /// A length without a limit, mm.
    pub(super) fn with_measured_mm(mut self, measured: f64) -> Self {
        self.measured = Some(tidy(measured));
        self.unit = "mm";
        self
    }

    /// Both counts.
    pub(super) fn with_counts(mut self, measured: usize, needed: usize) -> Self {
        self.measured = Some(measured as f64);
        self.needed = Some(needed as f64);
        self
    }

    pub(super) fn with_remedy(mut self, remedy: impl Into<String>) -> Self {
        self.remedy = remedy.into();
        self
    }

    /// What it is about; ids given before stay in front.
    pub(super) fn with_about<S: AsRef<str>>(mut self, ids: impl IntoIterator<Item = S>) -> Self {
        for id in ids {
            let id = id.as_ref();
            if !self.about.iter().any(|known| known == id) {
                self.about.push(id.to_owned());
            }
        }
        self
    }

    pub(super) fn with_at(mut self, at: [f64; 3]) -> Self {
        self.at = Some(at.map(tidy));
        self
    }

    pub(super) fn with_source(mut self, source: Source) -> Self {
        self.source = source;
        self
    }

    /// Whether it blocks and names both.
    pub(super) fn blocks_both(&self, one: &str, other: &str) -> bool {
        self.severity == Severity::Blocks
            && self.about.iter().any(|id| id == one)
            && self.about.iter().any(|id| id == other)
    }
}
