//! What is known of the friction of the pins at the stations before one.
use super::against::Against;
use super::friction::{Four, Six};

/// The solutions at the last stations at which the pins turn the same way, the latest first, to start from at
/// the next one.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Warm {
    turns: Six,
    found: [Four; 3],
    count: usize,
}

impl Warm {
    /// A guess where the motion of the pins is the same as before: on the straight line or the parabola through
    /// the last solutions.
    pub(super) fn guess(&self, against: &Against) -> Option<Four> {
        if self.turns != against.turns() {
            return None;
        }
        let [a, b, c] = &self.found;
        match self.count {
            0 => None,
            1 => Some(*a),
            2 => Some(std::array::from_fn(|i| 2.0 * a[i] - b[i])),
            _ => Some(std::array::from_fn(|i| 3.0 * (a[i] - b[i]) + c[i])),
        }
    }

    pub(super) fn note(&mut self, against: &Against, couples: Four) {
        let turns = against.turns();
        let known = if self.turns == turns { self.count } else { 0 };
        let [a, b, _] = self.found;
        *self = Self {
            turns,
            found: [couples, a, b],
            count: (known + 1).min(self.found.len()),
        };
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
