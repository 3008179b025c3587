//! Random numbers that are the same on every run.

/// SplitMix64 (Steele, Lea, Flood 2014, from memory).
#[derive(Clone, Debug)]
pub struct Draw(u64);

impl Draw {
    /// Begins at `start`; near starts give unlike numbers.
    #[must_use]
    pub fn new(start: u64) -> Self {
        let mut draw = Self(start.wrapping_mul(0xD134_2543_DE82_EF95));
        draw.bits();
        draw
    }

    /// Begins with this very state: for the seeds that property tests have found and print.
    #[must_use]
    pub fn from_state(state: u64) -> Self {
        Self(state)
    }

    /// 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number from `low` up to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.bits() >> 11) as f64 / (1_u64 << 53) as f64)
    }

    /// A whole number below `count`.
    pub fn below(&mut self, count: usize) -> usize {
        (self.bits() % count.max(1) as u64) as usize
    }

    /// Heads or tails.
    pub fn either(&mut self) -> bool {
        self.below(2) == 0
    }

    /// One of a list.
    pub fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }
}
