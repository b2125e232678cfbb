//! Chance from a seed: the same seed gives the same numbers on every machine. The packer draws its orders from it, tests
//! and benches their designs.

/// A small seeded generator: SplitMix64 (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators").
#[derive(Clone, Debug)]
pub struct Random(u64);

impl Random {
    /// A generator that starts from `seed`.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next 64 random bits.
    pub const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ z >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ z >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ z >> 31
    }

    /// A whole number from 0 to `limit - 1`; 0 when `limit` is 0. The bias of the remainder is below 2^-50 here.
    pub const fn below(&mut self, limit: usize) -> usize {
        match limit {
            0 => 0,
            _ => (self.next() % limit as u64) as usize,
        }
    }

    /// True `percent` times out of 100.
    pub const fn chance(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }

    /// A multiple of 0.01 from `min` to `max`, both included.
    pub fn hundredths(&mut self, min: f64, max: f64) -> f64 {
        let steps = libm::round((max - min) * 100.0).max(0.0) as usize;
        let number = min + self.below(steps + 1) as f64 / 100.0;
        (libm::round(number * 100.0) / 100.0).clamp(min, max)
    }
}
