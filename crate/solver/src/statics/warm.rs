//! What is known of the friction of the pins at the stations before one.
use super::eliminate::Eliminated;
use super::friction::Four;

/// The solutions at the last stations at which the pins turn the same way, the latest first, to start from at
/// the next one.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Warm {
    turns: u8,
    found: [Four; 4],
    count: usize,
    /// The derivative as it was worked out last.
    pub(super) slope: Eliminated,
}

impl Warm {
    /// A guess where the motion of the pins is the same as before: on the straight line, the parabola or
    /// the cubic through the last solutions.
    pub(super) fn guess(&self, turns: u8) -> Option<Four> {
        if self.turns != turns {
            return None;
        }
        let [a, b, c, d] = &self.found;
        match self.count {
            0 => None,
            1 => Some(*a),
            2 => Some(std::array::from_fn(|i| 2.0 * a[i] - b[i])),
            3 => Some(std::array::from_fn(|i| 3.0 * (a[i] - b[i]) + c[i])),
            _ => Some(std::array::from_fn(|i| {
                4.0 * (a[i] + c[i]) - 6.0 * b[i] - d[i]
            })),
        }
    }

    pub(super) fn note(&mut self, turns: u8, couples: Four) {
        let known = if self.turns == turns { self.count } else { 0 };
        self.turns = turns;
        self.found.rotate_right(1);
        self.found[0] = couples;
        self.count = (known + 1).min(self.found.len());
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
