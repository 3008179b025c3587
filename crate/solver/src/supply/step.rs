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
    slopes: Vec<Vec<f64>>,
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
        for row in A.iter().skip(1) {
            to = from.to_vec();
            for (weight, known) in row.iter().zip(&slopes) {
                if *weight != 0.0 {
                    for (value, k) in to.iter_mut().zip(known) {
                        *value += size * weight * k;
                    }
                }
            }
            slopes.push(slope(&to)?);
        }
        Ok(Self {
            size,
            from: from.to_vec(),
            to,
            slopes,
        })
    }

    /// A part of the state and its rate at the end of the step.
    pub(super) fn end(&self, at: usize) -> (f64, f64) {
        let get = |list: &[f64]| list.get(at).copied().unwrap_or(0.0);
        (
            get(&self.to),
            self.slopes.last().map_or(0.0, |last| get(last)),
        )
    }

    /// Largest estimated error of the first parts of the state, each measured by its scale.
    pub(super) fn error(&self, scales: &[f64]) -> f64 {
        scales
            .iter()
            .enumerate()
            .map(|(at, scale)| (self.size * self.weighted(&E, at) / scale).abs())
            .fold(0.0, f64::max)
    }

    /// State at a share of the step, 0 … 1.
    pub(super) fn at(&self, share: f64) -> Vec<f64> {
        let rest = 1.0 - share;
        let slope_at = |list: Option<&Vec<f64>>, at: usize| {
            list.and_then(|slope| slope.get(at)).copied().unwrap_or(0.0)
        };
        self.from
            .iter()
            .zip(&self.to)
            .enumerate()
            .map(|(at, (from, to))| {
                let change = to - from;
                let bend = self.size * slope_at(self.slopes.first(), at) - change;
                let end = change - self.size * slope_at(self.slopes.last(), at) - bend;
                let last = self.size * self.weighted(&D, at);
                from + share * (change + rest * (bend + share * (end + rest * last)))
            })
            .collect()
    }

    fn weighted(&self, weights: &[f64; STAGES], at: usize) -> f64 {
        weights
            .iter()
            .zip(&self.slopes)
            .filter_map(|(weight, slope)| slope.get(at).map(|slope| weight * slope))
            .sum()
    }
}
