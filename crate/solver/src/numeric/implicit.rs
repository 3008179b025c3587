//! An implicit time step: SDIRK of order 4 with an estimate of order 3.
//!
//! Where the load of a leg rises steeply with the fluid it has taken, as beside a straight knee, legs on
//! one manifold share the flow so that their loads stay alike; neighboring states then come together
//! within microseconds, and an explicit step may be no longer than that.
//!
//! Coefficients: E. Hairer, G. Wanner, "Solving Ordinary Differential Equations II", 2nd ed., IV.6,
//! method of order 4 with γ = 1/4, L-stable, and its continuous output; from memory, held by the tests of
//! their order.
//!
//! By hand, for want of a crate: diffsol, which has implicit methods with continuous output, costs the page
//! a tenth of its size.
use std::borrow::Cow;

use nalgebra::{DMatrix, DVectorViewMut};

use super::step::{Dense, State, Step, add, get, larger};

/// Diagonal of the method.
const GAMMA: f64 = 0.25;

/// Weights of the stages before each; the last stage is the end of the step.
const A: [&[f64]; 5] = [
    &[],
    &[1.0 / 2.0],
    &[17.0 / 50.0, -1.0 / 25.0],
    &[371.0 / 1_360.0, -137.0 / 2_720.0, 15.0 / 544.0],
    &[25.0 / 24.0, -49.0 / 48.0, 125.0 / 16.0, -85.0 / 12.0],
];

/// Weights of the difference between orders 4 and 3.
const E: [f64; 5] = [-3.0 / 16.0, -27.0 / 32.0, 25.0 / 32.0, 0.0, 1.0 / 4.0];

/// Continuous output: weight of each stage, as factors of the powers of the share, from the first on. It
/// asks no slope at the start of the step, where a part that is off its balance by the error allowed has
/// another slope than on its way.
const D: [[f64; 4]; 5] = [
    [11.0 / 3.0, -463.0 / 72.0, 217.0 / 36.0, -20.0 / 9.0],
    [11.0 / 2.0, -385.0 / 16.0, 661.0 / 24.0, -10.0],
    [
        -125.0 / 18.0,
        20_125.0 / 432.0,
        -8_875.0 / 216.0,
        250.0 / 27.0,
    ],
    [0.0, -85.0 / 4.0, 85.0 / 6.0, 0.0],
    [-11.0 / 9.0, 557.0 / 108.0, -359.0 / 54.0, 80.0 / 27.0],
];

/// Bound on the corrections of a stage, and when they are small enough, by the scale of each part (ratio).
const MOST_CORRECTIONS: usize = 12;
pub(crate) const SMALL: f64 = 1e-4;

/// Part of the state, as multiple of its scale, by which it is moved to see what follows (ratio): by little, for
/// a load may rise so steeply that more of it bends the flow, or ends the rise.
pub(crate) const MOVED: f64 = 1e-2;

/// What is solved implicitly of a state, and how fine.
pub(crate) struct Implicit<'a> {
    /// Parts of the state on which the slopes depend.
    pub parts: &'a [usize],
    /// Error allowed in each part.
    pub scales: &'a [f64],
    /// Derivatives of the slopes of the parts by the parts, row after row, where they are known; else they
    /// are found by moving each part a little.
    pub derivatives: Option<Vec<f64>>,
}

impl Implicit<'_> {
    /// Tries a step of `size` from `from`, whose slope is `first`; with it, how fast neighboring states
    /// come together or apart (1/s). `None` where a stage is not found, or `slope` has none: a shorter step
    /// may be.
    pub(crate) fn step<S: State, X>(
        &self,
        from: &S,
        first: &S,
        size: f64,
        mut slope: impl FnMut(&S) -> Result<Option<S>, X>,
    ) -> Result<Option<(Step<S>, f64)>, X> {
        let count = self.parts.len();
        if count == 0 {
            return Ok(None);
        }
        let scale = |at: usize| self.scale(at);
        let derivatives = match &self.derivatives {
            Some(known) => Cow::Borrowed(known),
            None => match self.differences(from, &mut slope)? {
                Some(found) => Cow::Owned(found),
                None => return Ok(None),
            },
        };
        let mut fastest = 0.0_f64;
        let mut matrix = Vec::with_capacity(count * count);
        for (row, (&of, rates)) in self.parts.iter().zip(derivatives.chunks(count)).enumerate() {
            for (column, (&part, rate)) in self.parts.iter().zip(rates).enumerate() {
                fastest = fastest.max(rate.abs() * scale(part) / scale(of));
                matrix.push(f64::from(u8::from(row == column)) - size * GAMMA * rate);
            }
        }
        // the library looks at zeros only
        let is_finite = matrix.iter().all(|entry| entry.is_finite());
        let solver = DMatrix::from_row_iterator(count, count, matrix).lu();
        if !(is_finite && solver.is_invertible()) {
            return Ok(None);
        }
        let solve = |side: &mut [f64]| {
            let mut side = DVectorViewMut::from_slice(side, count);
            solver.solve_mut(&mut side);
        };
        let mut slopes: Vec<S> = Vec::with_capacity(A.len());
        let mut guess = first.clone();
        for row in A {
            let mut base = from.clone();
            for (weight, known) in row.iter().zip(&slopes) {
                add(&mut base, size * weight, known);
            }
            let mut state = base.clone();
            add(&mut state, size * GAMMA, &guess);
            let Some(mut there) = slope(&state)? else {
                return Ok(None);
            };
            let mut before = f64::INFINITY;
            let mut found = false;
            for _ in 0..MOST_CORRECTIONS {
                let off = |part: usize| {
                    get(&base, part) + size * GAMMA * get(&there, part) - get(&state, part)
                };
                let mut change: Vec<f64> = self.parts.iter().map(|&part| off(part)).collect();
                solve(&mut change);
                let mut largest = 0.0_f64;
                for (&part, change) in self.parts.iter().zip(&change) {
                    largest = larger(largest, (change / scale(part)).abs());
                    if let Some(value) = state.as_mut().get_mut(part) {
                        *value += change;
                    }
                }
                let Some(now) = slope(&state)? else {
                    return Ok(None);
                };
                there = now;
                // what no longer comes nearer is at its rounding
                found = largest <= SMALL || (largest <= 1e2 * SMALL && largest >= 0.5 * before);
                if found || largest.is_nan() || largest >= 2.0 * before {
                    break;
                }
                before = largest;
            }
            if !found {
                return Ok(None);
            }
            guess.clone_from(&there);
            slopes.push(there);
        }
        let mut to = from.clone();
        let nothing = nothing(from);
        let mut error = nothing.clone();
        let last = A.last().copied().unwrap_or_default();
        let weights = last.iter().copied().chain([GAMMA]);
        for ((weight, part), known) in weights.zip(E).zip(&slopes) {
            add(&mut to, size * weight, known);
            add(&mut error, size * part, known);
        }
        let mut powers = std::array::from_fn(|_| nothing.clone());
        for (factors, known) in D.iter().zip(&slopes) {
            for (power, factor) in powers.iter_mut().zip(factors) {
                add(power, size * factor, known);
            }
        }
        // what dies out at once is no error
        let mut damped: Vec<f64> = self.parts.iter().map(|&part| get(&error, part)).collect();
        solve(&mut damped);
        for (&part, damped) in self.parts.iter().zip(&damped) {
            if let Some(value) = error.as_mut().get_mut(part) {
                *value = *damped;
            }
        }
        // the last stage is the end of the step
        let end = slopes.pop().unwrap_or_else(|| first.clone());
        let step = Step {
            size,
            from: from.clone(),
            to,
            ends: [first.clone(), end],
            error,
            dense: Dense::Powers(powers),
            beside: None,
        };
        Ok(Some((step, fastest)))
    }

    /// Error allowed in a part.
    fn scale(&self, part: usize) -> f64 {
        let scale = self.scales.get(part).copied().unwrap_or(0.0);
        scale.max(f64::MIN_POSITIVE)
    }

    /// The derivatives by moving each part a little; `None` where `slope` has none.
    fn differences<S: State, X>(
        &self,
        from: &S,
        slope: &mut impl FnMut(&S) -> Result<Option<S>, X>,
    ) -> Result<Option<Vec<f64>>, X> {
        let count = self.parts.len();
        if count == 0 {
            return Ok(None);
        }
        // not the slope with which the step begins: what stands there may flow both ways in it
        let Some(here) = slope(from)? else {
            return Ok(None);
        };
        let mut found = vec![0.0; count * count];
        for (column, &part) in self.parts.iter().enumerate() {
            let mut beside = from.clone();
            let moved = MOVED * self.scale(part);
            if let Some(value) = beside.as_mut().get_mut(part) {
                *value += moved;
            }
            let Some(there) = slope(&beside)? else {
                return Ok(None);
            };
            for (row, &of) in self.parts.iter().enumerate() {
                if let Some(entry) = found.get_mut(row * count + column) {
                    *entry = (get(&there, of) - get(&here, of)) / moved;
                }
            }
        }
        Ok(Some(found))
    }
}

/// A state all of whose parts are nothing.
fn nothing<S: State>(like: &S) -> S {
    let mut state = like.clone();
    state.as_mut().fill(0.0);
    state
}
