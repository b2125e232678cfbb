//! Chance from a seed: the same seed gives the same search on every machine.

/// SplitMix64 (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators").
#[derive(Clone, Debug)]
pub(super) struct Dice(u64);

impl Dice {
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ z >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ z >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ z >> 31
    }

    /// A whole number from 0 to `limit - 1`; 0 when `limit` is 0.
    pub const fn below(&mut self, limit: usize) -> usize {
        match limit {
            0 => 0,
            _ => (self.next() % limit as u64) as usize,
        }
    }
}
