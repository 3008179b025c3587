//! A time step that has been made: its end, its error, and its dense output.

/// A state of some parts, or the slopes of these over time.
pub(crate) trait State: Clone + AsRef<[f64]> + AsMut<[f64]> {}

impl<T: Clone + AsRef<[f64]> + AsMut<[f64]>> State for T {}

/// A step that has been tried.
#[derive(Clone, Debug)]
pub(crate) struct Step<S> {
    pub(super) size: f64,
    pub(super) from: S,
    /// State at its end.
    pub(crate) to: S,
    /// Slopes at both ends.
    pub(super) ends: [S; 2],
    /// Estimated error of the state at its end.
    pub(super) error: S,
    pub(super) dense: Dense<S>,
    /// State and slope of the last stage but one, which is of the same time as the end.
    pub(super) beside: Option<(S, S)>,
}

/// What the continuous output has besides the ends of the step.
#[derive(Clone, Debug)]
pub(super) enum Dense<S> {
    /// What it has beyond the cubic through both ends and their slopes.
    BeyondCubic(S),
    /// Factors of the powers of the share, from the first on.
    Powers([S; 4]),
}

impl<S: State> Step<S> {
    /// A part of the state and its rate at the end of the step.
    pub(crate) fn end(&self, at: usize) -> (f64, f64) {
        (get(&self.to, at), get(&self.ends[1], at))
    }

    /// Largest estimated error of the first parts of the state, each measured by its scale; not a number
    /// where one of them is not.
    pub(crate) fn error(&self, scales: &[f64]) -> f64 {
        let parts = self.error.as_ref().iter().zip(scales);
        parts.map(|(e, scale)| (e / scale).abs()).fold(0.0, larger)
    }

    /// Root mean square of the estimated errors of all parts, each over what is allowed in it: a tolerance,
    /// relative, and absolute in the state's own units.
    pub(crate) fn mean_error(&self, tolerance: f64) -> f64 {
        let ends = self.from.as_ref().iter().zip(self.to.as_ref());
        let parts = self.error.as_ref().iter().zip(ends);
        let squares =
            parts.map(|(e, (a, b))| (e / (tolerance * (1.0 + a.abs().max(b.abs())))).powi(2));
        (squares.sum::<f64>() / self.error.as_ref().len() as f64).sqrt()
    }

    /// Size of the step times how fast neighboring states come together, by its last two stages (E.
    /// Hairer, G. Wanner, "Solving Ordinary Differential Equations II", 2nd ed., IV.2, from memory): an
    /// explicit step that is held back by this and not by its error comes to some 3.
    pub(crate) fn stiffness(&self, scales: &[f64]) -> f64 {
        let Some((state, slope)) = &self.beside else {
            return 0.0;
        };
        let apart = |a: &S, b: &S| -> f64 {
            let each = a.as_ref().iter().zip(b.as_ref()).zip(scales);
            each.map(|((a, b), scale)| ((a - b) / scale).powi(2)).sum()
        };
        let (states, slopes) = (apart(&self.to, state), apart(&self.ends[1], slope));
        if states > 0.0 {
            self.size * (slopes / states).sqrt()
        } else {
            0.0
        }
    }

    /// State at a share of the step, 0 … 1.
    pub(crate) fn at(&self, share: f64) -> S {
        let mut state = self.from.clone();
        for (at, part) in state.as_mut().iter_mut().enumerate() {
            *part = self.part_at(at, share);
        }
        state
    }

    /// A value below which one part of the state does not come within the step: that of its lower end less what
    /// the continuous output can be off the straight line between both, share·(1 − share) being ¼ at most.
    pub(crate) fn least(&self, at: usize) -> f64 {
        let (from, to) = (get(&self.from, at), get(&self.to, at));
        let off = match &self.dense {
            Dense::Powers([_, square, cube, fourth]) => {
                let [square, cube, fourth] = [square, cube, fourth].map(|of| get(of, at).abs());
                // share − shareⁿ = share·(1 − share)·(1 + … + shareⁿ⁻²)
                square + 2.0 * cube + 3.0 * fourth
            }
            Dense::BeyondCubic(beyond) => {
                let [first, last] = self.ends.each_ref().map(|slope| self.size * get(slope, at));
                (first - (to - from)).abs() + (last - (to - from)).abs() + get(beyond, at).abs()
            }
        };
        from.min(to) - 0.25 * off
    }

    /// One part of the state at a share of the step.
    pub(crate) fn part_at(&self, at: usize, share: f64) -> f64 {
        let from = get(&self.from, at);
        match &self.dense {
            Dense::Powers(powers) => {
                let sum = |sum: f64, factors: &S| share * (sum + get(factors, at));
                from + powers.iter().rev().fold(0.0, sum)
            }
            Dense::BeyondCubic(beyond) => {
                let rest = 1.0 - share;
                let [first, last] = &self.ends;
                let change = get(&self.to, at) - from;
                let bend = self.size * get(first, at) - change;
                let end = change - self.size * get(last, at) - bend;
                from + share * (change + rest * (bend + share * (end + rest * get(beyond, at))))
            }
        }
    }
}

/// One part of a state; one that it has not is nothing.
pub(super) fn get(list: &impl State, at: usize) -> f64 {
    list.as_ref().get(at).copied().unwrap_or(0.0)
}

/// Adds so many times another state.
pub(super) fn add(to: &mut impl State, factor: f64, what: &impl State) {
    for (value, part) in to.as_mut().iter_mut().zip(what.as_ref()) {
        *value += factor * part;
    }
}

/// The larger of two, or what is not a number of them: no error may be lost.
pub(super) fn larger(a: f64, b: f64) -> f64 {
    if a.is_nan() || b <= a { a } else { b }
}
