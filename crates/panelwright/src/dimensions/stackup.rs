//! Adding up tolerances: what is left of a gap, at worst and most likely.
//!
//! A gap is a sum of lengths, some counted positive and some negative, each with its tolerance.
//! A lopsided tolerance (+u, -l) is first made symmetrical: the mean moves by (u - l) / 2, and the
//! half width is (u + l) / 2.

/// One length in a chain, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Link {
    /// Whether it opens the gap; otherwise it closes it.
    pub opens: bool,
    /// The stated length.
    pub nominal_mm: f64,
    /// How much longer it may be.
    pub plus_mm: f64,
    /// How much shorter it may be.
    pub minus_mm: f64,
}

impl Link {
    /// A length that opens the gap, ± `half_mm`.
    #[must_use]
    pub const fn opening(nominal_mm: f64, half_mm: f64) -> Self {
        Self { opens: true, nominal_mm, plus_mm: half_mm, minus_mm: half_mm }
    }

    /// A length that closes the gap, ± `half_mm`.
    #[must_use]
    pub const fn closing(nominal_mm: f64, half_mm: f64) -> Self {
        Self { opens: false, nominal_mm, plus_mm: half_mm, minus_mm: half_mm }
    }

    /// The same length with a lopsided tolerance.
    #[must_use]
    pub const fn with_limits(self, plus_mm: f64, minus_mm: f64) -> Self {
        Self { plus_mm, minus_mm, ..self }
    }

    /// The middle of what it may measure, signed.
    fn mean_mm(&self) -> f64 {
        let middle = self.nominal_mm + (self.plus_mm - self.minus_mm) / 2.0;
        if self.opens { middle } else { -middle }
    }

    /// Half of the range it may measure.
    fn half_mm(&self) -> f64 {
        (self.plus_mm + self.minus_mm) / 2.0
    }
}

/// What is left of a gap, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StackUp {
    /// The middle.
    pub mean_mm: f64,
    /// ± when every length strays the wrong way at once.
    pub worst_mm: f64,
    /// ± most likely: the root of the sum of squares.
    pub likely_mm: f64,
}

impl StackUp {
    /// Least and greatest gap at worst.
    #[must_use]
    pub fn worst_range_mm(&self) -> [f64; 2] {
        [self.mean_mm - self.worst_mm, self.mean_mm + self.worst_mm]
    }

    /// Least and greatest gap that is likely.
    #[must_use]
    pub fn likely_range_mm(&self) -> [f64; 2] {
        [self.mean_mm - self.likely_mm, self.mean_mm + self.likely_mm]
    }
}

/// Adds up a chain.
///
/// ```
/// use panelwright::dimensions::stackup::{Link, stack_up};
/// // A board of 170 ±0.2 mm between two spacers of 10 ±0.1 mm in an opening of 191 ±0.5 mm.
/// let gap = stack_up(&[
///     Link::opening(191.0, 0.5),
///     Link::closing(170.0, 0.2),
///     Link::closing(10.0, 0.1),
///     Link::closing(10.0, 0.1),
/// ]);
/// assert!((gap.mean_mm - 1.0).abs() < 1e-9);
/// assert!((gap.worst_mm - 0.9).abs() < 1e-9);
/// assert!((gap.likely_mm - 0.556776).abs() < 1e-6);
/// ```
#[must_use]
pub fn stack_up(chain: &[Link]) -> StackUp {
    let squares: f64 = chain.iter().map(|link| link.half_mm() * link.half_mm()).sum();
    StackUp {
        mean_mm: chain.iter().map(Link::mean_mm).sum(),
        worst_mm: chain.iter().map(Link::half_mm).sum(),
        likely_mm: squares.sqrt(),
    }
}
