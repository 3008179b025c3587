//! A linearly implicit time step: RODAS, a Rosenbrock method of order 4 with an embedded one of order 3 and
//! six stages, L-stable and stiffly accurate, with its continuous output.
//!
//! Coefficients: E. Hairer, G. Wanner, "Solving Ordinary Differential Equations II", 2nd ed. 1996, IV.7; from
//! memory, held to their order by tests.
//!
//! Beside the other implicit step, for smooth slopes of few parts: a stage is one question for the slope and
//! not four or five. A fall through an orifice of 0.7 mm takes 1,400 questions to the same accuracy, not 8,000,
//! through one of 0.4 mm 1,900, not 5,500 (measured). It asks how the slopes of all parts change with those on
//! which they depend, though, also of those that are only summed up, of which a supply has many.
//!
//! It wants these changes exact, and the other step does not, which corrects itself: of legs that share one flow
//! against steep loads, whose states come together at 5e6 /s, derivatives by differences are off by 1e-6 of that,
//! some 10 /s in what the flow is in sum; tried with them, the steps stay at 3 µs, for the sum goes astray by
//! more than is allowed. That is why there are two.
//!
//! By hand, for want of a crate: diffsol costs the page a tenth of its size.
use super::step::{Dense, Step, add};

/// Diagonal of the method.
const GAMMA: f64 = 0.25;

/// Weights of the earlier stages in the state of a stage.
const A: [&[f64]; 5] = [
    &[],
    &[1.544],
    &[0.946_678_528_081_582_6, 0.255_701_169_898_328_4],
    &[
        3.314_825_187_068_521,
        2.896_124_015_972_201,
        0.998_641_913_997_781_7,
    ],
    &[
        1.221_224_509_226_641,
        6.019_134_481_288_629,
        12.537_083_329_320_87,
        -0.687_886_036_105_895,
    ],
];

/// Weights of the earlier stages in the right-hand side of a stage, over the step.
const C: [&[f64]; 6] = [
    &[],
    &[-5.6688],
    &[-2.430_093_356_833_875, -0.206_359_915_709_191_5],
    &[
        -0.107_352_905_815_137_5,
        -9.594_562_251_023_355,
        -20.470_286_148_096_16,
    ],
    &[
        7.496_443_313_967_647,
        -10.246_804_314_643_52,
        -33.999_903_528_199_05,
        11.708_908_932_061_6,
    ],
    &[
        8.083_246_795_921_522,
        -7.981_132_988_064_893,
        -31.521_594_328_743_71,
        16.319_305_431_231_36,
        -6.058_818_238_834_054,
    ],
];

/// Continuous output: weights of the first five stages in what goes with θ(1 − θ) and with θ²(1 − θ) of the
/// share θ, beside the straight line between both ends.
const D: [[f64; 5]; 2] = [
    [
        10.126_235_083_445_86,
        -7.487_995_877_610_167,
        -34.800_918_615_557_47,
        -7.992_771_707_568_823,
        1.025_137_723_295_662,
    ],
    [
        -0.676_280_339_280_125_3,
        6.087_714_651_680_015,
        16.430_843_208_924_78,
        24.767_225_114_183_86,
        -6.594_389_125_716_872,
    ],
];

/// Tries a step of `size` from `from`, whose slope is `first`. The slopes depend on the first two parts of the
/// state, and on no other.
pub(crate) fn rosenbrock<const N: usize>(
    from: &[f64; N],
    first: &[f64; N],
    size: f64,
    slope: impl Fn(&[f64; N]) -> [f64; N],
) -> Step<[f64; N]> {
    let matrix = Matrix::new(&slope, (from, first), size);
    let per = 1.0 / size;
    let mut stages = [[0.0; N]; C.len()];
    let (mut here, mut right) = (*from, *first);
    for (at, sums) in C.iter().enumerate() {
        if at > 0 {
            match A.get(at) {
                Some(weights) => {
                    here = *from;
                    let stages = weights.iter().zip(&stages);
                    stages.for_each(|(weight, stage)| add(&mut here, *weight, stage));
                }
                // the last stage stands where the one before it has come to
                None => add(&mut here, 1.0, &stages[at - 1]),
            }
            right = slope(&here);
        }
        for (weight, stage) in sums.iter().zip(&stages) {
            add(&mut right, weight * per, stage);
        }
        stages[at] = matrix.solve(right);
    }
    let [.., error] = stages;
    let mut to = here;
    add(&mut to, 1.0, &error);
    let sums = D.map(|weights| {
        let mut sum = [0.0; N];
        let stages = weights.iter().zip(&stages);
        stages.for_each(|(weight, stage)| add(&mut sum, *weight, stage));
        sum
    });
    let powers = [
        std::array::from_fn(|at| to[at] - from[at] + sums[0][at]),
        std::array::from_fn(|at| sums[1][at] - sums[0][at]),
        sums[1].map(|sum| -sum),
        [0.0; N],
    ];
    Step {
        size,
        from: *from,
        to,
        ends: [*first, slope(&to)],
        error,
        dense: Dense::Powers(powers),
        beside: None,
    }
}

/// The matrix of the stages, 1/(h·γ) less the derivatives: nothing depends on the parts behind the first two, so
/// it is one of two rows and sums.
struct Matrix<const N: usize> {
    /// Of the diagonal, and of the determinant of the two rows.
    per: [f64; 2],
    rows: [[f64; 2]; 2],
    by: [[f64; N]; 2],
}

impl<const N: usize> Matrix<N> {
    fn new(
        slope: &impl Fn(&[f64; N]) -> [f64; N],
        (from, first): (&[f64; N], &[f64; N]),
        size: f64,
    ) -> Self {
        let by = [0, 1].map(|part| {
            let mut beside = *from;
            let here = from[part];
            beside[part] = here + f64::EPSILON.sqrt() * here.abs().max(1e-3);
            let per = 1.0 / (beside[part] - here);
            let rates = slope(&beside);
            std::array::from_fn(|at| (rates[at] - first[at]) * per)
        });
        let diagonal = 1.0 / (GAMMA * size);
        let [p, s]: &[[f64; N]; 2] = &by;
        let rows = [[diagonal - p[0], -s[0]], [-p[1], diagonal - s[1]]];
        let [[a, b], [c, d]] = rows;
        Self {
            per: [GAMMA * size, 1.0 / (a * d - b * c)],
            rows,
            by,
        }
    }

    /// Solves for a right hand side.
    fn solve(&self, right: [f64; N]) -> [f64; N] {
        let ([[a, b], [c, d]], [p, s]) = (self.rows, &self.by);
        let [per, per_whole] = self.per;
        let x = (right[0] * d - b * right[1]) * per_whole;
        let v = (a * right[1] - c * right[0]) * per_whole;
        std::array::from_fn(|at| match at {
            0 => x,
            1 => v,
            _ => (right[at] + p[at] * x + s[at] * v) * per,
        })
    }
}
