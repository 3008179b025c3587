//! One time step: Dormand–Prince 5(4) with its continuous output of order 4.
//!
//! Coefficients: J. R. Dormand, P. J. Prince, "A family of embedded Runge–Kutta formulae", J. Comp.
//! Appl. Math. 6 (1980) 19–26; continuous output as in E. Hairer, S. P. Nørsett, G. Wanner,
//! "Solving Ordinary Differential Equations I", 2nd ed., II.6 (code DOPRI5); from memory, held by
//! the tests of order and of known solutions.

const STAGES: usize = 7;

/// Row s: weights of the earlier slopes for stage s; the last row makes the step itself.
const A: [[f64; 6]; STAGES] = [
    [0.0; 6],
    [1.0 / 5.0, 0.0, 0.0, 0.0, 0.0, 0.0],
    [3.0 / 40.0, 9.0 / 40.0, 0.0, 0.0, 0.0, 0.0],
    [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0, 0.0, 0.0, 0.0],
    [
        19_372.0 / 6_561.0,
        -25_360.0 / 2_187.0,
        64_448.0 / 6_561.0,
        -212.0 / 729.0,
        0.0,
        0.0,
    ],
    [
        9_017.0 / 3_168.0,
        -355.0 / 33.0,
        46_732.0 / 5_247.0,
        49.0 / 176.0,
        -5_103.0 / 18_656.0,
        0.0,
    ],
    [
        35.0 / 384.0,
        0.0,
        500.0 / 1_113.0,
        125.0 / 192.0,
        -2_187.0 / 6_784.0,
        11.0 / 84.0,
    ],
];

/// Weights of the difference between orders 5 and 4.
const E: [f64; STAGES] = [
    71.0 / 57_600.0,
    0.0,
    -71.0 / 16_695.0,
    71.0 / 1_920.0,
    -17_253.0 / 339_200.0,
    22.0 / 525.0,
    -1.0 / 40.0,
];

/// Weights of the continuous output.
const D: [f64; STAGES] = [
    -12_715_105_075.0 / 11_282_082_432.0,
    0.0,
    87_487_479_700.0 / 32_700_410_799.0,
    -10_690_763_975.0 / 1_880_347_072.0,
    701_980_252_875.0 / 199_316_789_632.0,
    -1_453_857_185.0 / 822_651_844.0,
    69_997_945.0 / 29_380_423.0,
];

/// A step that has been tried.
#[derive(Clone, Debug)]
pub(super) struct Step {
    size: f64,
    from: Vec<f64>,
    /// State at its end.
    pub to: Vec<f64>,
    /// Slopes at both ends.
    ends: [Vec<f64>; 2],
    /// Estimated error of the state at its end.
    error: Vec<f64>,
    /// What the continuous output has beyond a cubic; an implicit step has its own.
    last: Vec<f64>,
    /// Continuous output of an implicit step: factors of the powers of the share, from the first on.
    powers: Option<[Vec<f64>; 4]>,
    /// State and slope of the last stage but one, which is of the same time as the end.
    beside: Option<(Vec<f64>, Vec<f64>)>,
}

impl Step {
    /// Tries a step of `size` from `from`, whose slope is `first`.
    pub(super) fn new<E>(
        from: &[f64],
        first: &[f64],
        size: f64,
        mut slope: impl FnMut(&[f64]) -> Result<Vec<f64>, E>,
    ) -> Result<Self, E> {
        let mut slopes = vec![first.to_vec()];
        let mut to = from.to_vec();
        let mut before = Vec::new();
        for row in A.iter().skip(1) {
            before = std::mem::replace(&mut to, from.to_vec());
            for (weight, known) in row.iter().zip(&slopes) {
                if *weight != 0.0 {
                    for (value, k) in to.iter_mut().zip(known) {
                        *value += size * weight * k;
                    }
                }
            }
            slopes.push(slope(&to)?);
        }
        let weighted = |weights: &[f64; STAGES]| -> Vec<f64> {
            let sum = |at: usize| -> f64 {
                let terms = weights.iter().zip(&slopes);
                terms.filter_map(|(w, k)| Some(w * k.get(at)?)).sum()
            };
            (0..from.len()).map(|at| size * sum(at)).collect()
        };
        let (error, last) = (weighted(&E), weighted(&D));
        let end = slopes.pop().unwrap_or_default();
        Ok(Self {
            size,
            from: from.to_vec(),
            to,
            ends: [first.to_vec(), end],
            error,
            last,
            powers: None,
            beside: slopes.pop().map(|slope| (before, slope)),
        })
    }

    /// An implicit step that has been worked out, with its estimated error and continuous output.
    pub(super) fn implicit(
        size: f64,
        [from, to]: [Vec<f64>; 2],
        ends: [Vec<f64>; 2],
        error: Vec<f64>,
        powers: [Vec<f64>; 4],
    ) -> Self {
        Self {
            size,
            from,
            to,
            ends,
            error,
            last: Vec::new(),
            powers: Some(powers),
            beside: None,
        }
    }

    /// A part of the state and its rate at the end of the step.
    pub(super) fn end(&self, at: usize) -> (f64, f64) {
        let get = |list: &[f64]| list.get(at).copied().unwrap_or(0.0);
        (get(&self.to), get(&self.ends[1]))
    }

    /// Largest estimated error of the first parts of the state, each measured by its scale.
    pub(super) fn error(&self, scales: &[f64]) -> f64 {
        let parts = self.error.iter().zip(scales);
        parts
            .map(|(e, scale)| (e / scale).abs())
            .fold(0.0, f64::max)
    }

    /// Size of the step times how fast neighbouring states come together, by its last two stages (E.
    /// Hairer, G. Wanner, "Solving Ordinary Differential Equations II", 2nd ed., IV.2, from memory): an
    /// explicit step that is held back by this and not by its error comes to some 3.
    pub(super) fn stiffness(&self, scales: &[f64]) -> f64 {
        let Some((state, slope)) = &self.beside else {
            return 0.0;
        };
        let apart = |a: &[f64], b: &[f64]| -> f64 {
            let each = a.iter().zip(b).zip(scales);
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
    pub(super) fn at(&self, share: f64) -> Vec<f64> {
        (0..self.from.len())
            .map(|at| self.part_at(at, share))
            .collect()
    }

    /// One part of the state at a share of the step.
    pub(super) fn part_at(&self, at: usize, share: f64) -> f64 {
        let get = |list: &[f64]| list.get(at).copied().unwrap_or(0.0);
        if let Some(powers) = &self.powers {
            let sum = |sum: f64, factors: &Vec<f64>| share * (sum + get(factors));
            return get(&self.from) + powers.iter().rev().fold(0.0, sum);
        }
        let rest = 1.0 - share;
        let (from, [first, last]) = (get(&self.from), &self.ends);
        let change = get(&self.to) - from;
        let bend = self.size * get(first) - change;
        let end = change - self.size * get(last) - bend;
        from + share * (change + rest * (bend + share * (end + rest * get(&self.last))))
    }
}
