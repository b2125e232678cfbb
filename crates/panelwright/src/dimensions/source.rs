//! Where a number comes from: no size can be stated without it.

/// How far a number can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// Printed in the named document.
    Published,
    /// Worked out from published numbers.
    Derived,
    /// Workshop custom.
    CommonPractice,
    /// Recalled, not read.
    FromMemory,
}

impl Confidence {
    /// The words shown beside a number.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Derived => "derived",
            Self::CommonPractice => "common practice",
            Self::FromMemory => "from memory: measure yours",
        }
    }
}

/// The document a number comes from, the place in it, and how far it can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// The document with its edition.
    pub document: &'static str,
    /// Figure, table or section.
    pub place: &'static str,
    /// How far it can be trusted.
    pub confidence: Confidence,
}

impl Source {
    /// In words: `ATX Specification 2.2, figure 3 (published)`.
    #[must_use]
    pub fn cite(&self) -> String {
        format!("{}, {} ({})", self.document, self.place, self.confidence.label())
    }
}

/// A value that carries its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    value: T,
    source: Source,
}

impl<T: Copy> Sourced<T> {
    /// States a value with its source; there is no other way to make one.
    #[must_use]
    pub const fn new(value: T, source: Source) -> Self {
        Self { value, source }
    }

    /// The value.
    #[must_use]
    pub const fn get(&self) -> T {
        self.value
    }

    /// Its source.
    #[must_use]
    pub const fn source(&self) -> Source {
        self.source
    }
}
