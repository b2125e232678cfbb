//! Where a number comes from, and how far it can be trusted.
//!
//! Invariant: a size is a [`Sourced`] value or a table row with a [`Source`] in it. There is no
//! way to make either without saying which document the number stands in.

/// How far a number can be trusted before the maker has measured the part.
///
/// A size that nobody could give is not listed at all (`None`, or no row): nothing is drilled
/// for it until the maker types in a measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// Read in the named document, or in a published copy of it.
    Published,
    /// Plain arithmetic from published numbers.
    Derived,
    /// What makers and dealers do; no document stands behind it.
    CommonPractice,
    /// Recalled and not read again: measure the part before drilling.
    FromMemory,
}

impl Confidence {
    /// The words shown to the maker.
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

/// The document a number stands in, the place in it, and how far to trust it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// The standard, guide or custom, with its edition where it has one.
    pub document: &'static str,
    /// Figure, table, section, or what exactly is meant.
    pub place: &'static str,
    /// How far the number can be trusted.
    pub confidence: Confidence,
}

impl Source {
    /// A number read in `document` at `place`.
    #[must_use]
    pub const fn published(document: &'static str, place: &'static str) -> Self {
        Self::of(document, place, Confidence::Published)
    }

    /// A number worked out from published ones; `place` says how.
    #[must_use]
    pub const fn derived(document: &'static str, place: &'static str) -> Self {
        Self::of(document, place, Confidence::Derived)
    }

    /// A custom of the trade or the workshop.
    #[must_use]
    pub const fn common_practice(document: &'static str, place: &'static str) -> Self {
        Self::of(document, place, Confidence::CommonPractice)
    }

    /// A number recalled, not read: the maker should measure.
    #[must_use]
    pub const fn from_memory(document: &'static str, place: &'static str) -> Self {
        Self::of(document, place, Confidence::FromMemory)
    }

    const fn of(document: &'static str, place: &'static str, confidence: Confidence) -> Self {
        Self { document, place, confidence }
    }

    /// One line for a tooltip or a list: `ATX Specification 2.2, figure 3 (published)`.
    #[must_use]
    pub fn cite(&self) -> String {
        format!("{}, {} ({})", self.document, self.place, self.confidence.label())
    }
}

/// A value that cannot be separated from its source.
///
/// ```
/// use panelwright::dimensions::boards::HOLE_DIAMETER;
/// assert_eq!(HOLE_DIAMETER.get(), 3.96);
/// assert_eq!(HOLE_DIAMETER.source().cite(), "ATX Specification 2.2, figure 3 (published)");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    value: T,
    source: Source,
}

impl<T> Sourced<T> {
    /// Ties a value to its source.
    #[must_use]
    pub const fn new(value: T, source: Source) -> Self {
        Self { value, source }
    }

    /// The value itself, where it lies.
    pub(super) const fn get_ref(&self) -> &T {
        &self.value
    }

    /// Where the value comes from.
    #[must_use]
    pub const fn source(&self) -> Source {
        self.source
    }
}

impl<T: Copy> Sourced<T> {
    /// The value itself.
    #[must_use]
    pub const fn get(&self) -> T {
        self.value
    }
}
