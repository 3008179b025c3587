//! What is known of the friction of the pins at the stations before one.
use super::eliminate::Eliminated;
use super::friction::Four;

/// Most solutions that a guess is made from.
const MOST: usize = 5;
/// Weights of the last values of a polynomial in its next one, for each count of them (binomial coefficients).
const NEXT: [[f64; MOST]; MOST] = [
    [1.0, 0.0, 0.0, 0.0, 0.0],
    [2.0, -1.0, 0.0, 0.0, 0.0],
    [3.0, -3.0, 1.0, 0.0, 0.0],
    [4.0, -6.0, 4.0, -1.0, 0.0],
    [5.0, -10.0, 10.0, -5.0, 1.0],
];

/// The solutions at the last stations at which the pins turn the same way, the latest first, to start from at
/// the next one.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Warm {
    turns: u8,
    found: [Four; MOST],
    count: usize,
    /// The derivative as it was worked out last.
    pub(super) slope: Eliminated,
}

impl Warm {
    /// A guess where the motion of the pins is the same as before: on the polynomial through the last solutions.
    pub(super) fn guess(&self, turns: u8) -> Option<Four> {
        if self.turns != turns || self.count == 0 {
            return None;
        }
        let mut guess = [0.0; 4];
        for (found, weight) in self.found.iter().zip(NEXT.get(self.count - 1)?) {
            for (guess, found) in guess.iter_mut().zip(found) {
                *guess += weight * found;
            }
        }
        Some(guess)
    }

    pub(super) fn note(&mut self, turns: u8, couples: Four) {
        let known = if self.turns == turns { self.count } else { 0 };
        self.turns = turns;
        self.found.rotate_right(1);
        self.found[0] = couples;
        self.count = (known + 1).min(MOST);
    }

    /// Whether there is one to start from.
    pub(crate) fn is_known(&self) -> bool {
        self.count > 0
    }

    /// The latest only, for the same place again.
    pub(crate) fn latest(&self) -> Self {
        Self {
            count: self.count.min(1),
            ..*self
        }
    }
}
