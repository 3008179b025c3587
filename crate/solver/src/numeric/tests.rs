//! Time steps: their order, what they damp, and falls with closed forms.
use super::rosenbrock::rosenbrock;
use super::*;

#[test]
fn time_step_has_its_order() {
    // y' = y and the oscillator: halving the step divides the error of one step by 2^6, that of
    // the continuous output by 2^5.
    let rate = |y: &Vec<f64>| Ok::<_, ()>(vec![y[0], y[2], -y[1]]);
    let errors = |size: f64| {
        let from = vec![1.0, 0.0, 1.0];
        let step = explicit(&from, &rate(&from).unwrap(), size, rate).unwrap();
        let error = |state: &[f64], t: f64| {
            (state[0] - t.exp()).abs() + (state[1] - t.sin()).abs() + (state[2] - t.cos()).abs()
        };
        (error(&step.to, size), error(&step.at(0.4), 0.4 * size))
    };
    let (whole, half) = (errors(0.2), errors(0.1));
    assert!(
        (50.0..80.0).contains(&(whole.0 / half.0)),
        "{whole:?} {half:?}"
    );
    assert!(
        (26.0..40.0).contains(&(whole.1 / half.1)),
        "{whole:?} {half:?}"
    );
}

/// For y' = −k·y neighbors come together at k: so many times the step.
#[test]
fn stiffness_of_a_step_is_its_size_over_its_time_constant() {
    for (k, size) in [(50.0, 0.02), (2.0, 0.1), (10.0, 0.3)] {
        let rate = |y: &Vec<f64>| Ok::<_, ()>(vec![-k * y[0]]);
        let step = explicit(&vec![1.0], &vec![-k], size, rate).unwrap();
        let found = step.stiffness(&[1e-6]);
        assert!((found / (k * size) - 1.0).abs() < 1e-9, "{found}");
    }
}

/// Halving a step divides the error of one step by 2^5 (order 4) and that of its continuous output by no
/// less than 2^4 (order 3), of a system with both fast and slow
/// parts: y' = y², x' = −x/2, an oscillator.
#[test]
fn implicit_step_has_its_order() {
    let rate = |y: &Vec<f64>| Ok::<_, ()>(Some(vec![y[0] * y[0], -0.5 * y[1], y[3], -y[2]]));
    let from = vec![0.5, 1.0, 0.0, 1.0];
    let parts = [0, 1, 2, 3];
    let implicit = Implicit {
        parts: &parts,
        scales: &[1e-10; 4],
        derivatives: None,
    };
    let error = |size: f64| {
        let first = rate(&from).unwrap().unwrap();
        let (step, _) = implicit.step(&from, &first, size, rate).unwrap().unwrap();
        let off = |y: &[f64], time: f64| {
            (y[0] - 1.0 / (2.0 - time)).abs()
                + (y[1] - (-0.5 * time).exp()).abs()
                + (y[2] - time.sin()).abs()
                + (y[3] - time.cos()).abs()
        };
        assert!((off(&step.at(1.0), size) - off(&step.to, size)).abs() < 1e-14);
        let within = [0.2, 0.4, 0.6, 0.8].map(|share| off(&step.at(share), share * size));
        (off(&step.to, size), within.into_iter().fold(0.0, f64::max))
    };
    let (whole, half) = (error(0.2), error(0.1));
    let ratios = [whole.0 / half.0, whole.1 / half.1];
    assert!((26.0..42.0).contains(&ratios[0]), "{whole:?} {half:?}");
    assert!((14.0..42.0).contains(&ratios[1]), "{whole:?} {half:?}");
}

/// What dies out within the step is damped, not rung on (L-stable), and the slow part keeps its value.
#[test]
fn implicit_step_damps_what_dies_out() {
    let rate = |y: &Vec<f64>| Ok::<_, ()>(Some(vec![-1e8 * (y[0] - y[1]), 1.0]));
    let from = vec![1.0, 0.0];
    let implicit = Implicit {
        parts: &[0, 1],
        scales: &[1e-9; 2],
        derivatives: None,
    };
    let first = rate(&from).unwrap().unwrap();
    let (step, fastest) = implicit.step(&from, &first, 0.1, rate).unwrap().unwrap();
    assert!((step.to[0] - 0.1).abs() < 1e-6, "{:?}", step.to);
    assert!((step.to[1] - 0.1).abs() < 1e-12);
    assert!((fastest / 1e8 - 1.0).abs() < 1e-3, "{fastest}");
}

/// Corrections that do not come nearer find no stage: y' = −k·y, corrected as if it stayed, moves each by
/// −γ·k·h of the one before, γ = 1/4.
#[test]
fn a_stage_that_is_not_found_makes_no_step() {
    for (k_h, found) in [(0.2, true), (3.6, false), (6.0, false), (12.0, false)] {
        let rate = |y: &Vec<f64>| Ok::<_, ()>(Some(vec![-k_h * y[0]]));
        let implicit = Implicit {
            parts: &[0],
            scales: &[1e-6],
            derivatives: Some(vec![0.0]),
        };
        let step = implicit.step(&vec![1.0], &vec![-k_h], 1.0, rate).unwrap();
        assert_eq!(step.is_some(), found, "{k_h}");
    }
}

/// Where the corrections have no sense there is no step: derivatives without end, and some that leave 1 − h·γ·λ
/// at nothing (h = 1, γ = 1/4, λ = 4).
#[test]
fn derivatives_that_cannot_be_solved_with_make_no_step() {
    for (rate, found) in [
        (-1.0, true),
        (f64::INFINITY, false),
        (f64::NAN, false),
        (4.0, false),
    ] {
        let implicit = Implicit {
            parts: &[0],
            scales: &[1e-6],
            derivatives: Some(vec![rate]),
        };
        let slope = |y: &Vec<f64>| Ok::<_, ()>(Some(vec![-y[0]]));
        let step = implicit.step(&vec![1.0], &vec![-1.0], 1.0, slope).unwrap();
        assert_eq!(step.is_some(), found, "{rate}");
    }
}

const BOUNDS: Bounds = Bounds {
    tolerance: 1e-9,
    longest_step: 0.05,
    end: 2.0,
};

/// A weight on a dashpot: x'' = 1 − x'/τ from rest, x' = τ(1 − e^(−t/τ)) (textbook); the energies are
/// ∫x'²/τ dt and ∫x'² dt.
fn dashpot(tau: f64, t: f64) -> [f64; 4] {
    let e = (-t / tau).exp();
    let v2 = tau * tau * (t - 2.0 * tau * (1.0 - e) + 0.5 * tau * (1.0 - e * e));
    [tau * (t - tau * (1.0 - e)), tau * (1.0 - e), v2 / tau, v2]
}

#[test]
fn a_dashpot_is_followed_and_a_stiff_one_takes_few_steps() {
    for (method, tau, most) in [
        (Method::Explicit, 1.0, 100),
        (Method::Explicit, 1e-2, 400),
        (Method::Stiff, 1.0, 400),
        (Method::Stiff, 1e-2, 400),
        (Method::Stiff, 1e-4, 400),
        (Method::Stiff, 1e-6, 400),
    ] {
        let slope = |&[_, v, ..]: &[f64; 4]| [v, 1.0 - v / tau, v * v / tau, v * v];
        let mut steps = 0;
        let watch = |begins: f64, step: &Step<[f64; 4]>| {
            steps += 1;
            let exact = dashpot(tau, begins + 0.5 * step.size);
            for (a, b) in step.at(0.5).iter().zip(exact) {
                assert!((a - b).abs() < 1e-6, "{method:?} {tau} {begins}");
            }
            None
        };
        let last = follow(method, slope, [0.0; 4], BOUNDS, watch).unwrap();
        let (time, found) = (last.time, last.state);
        assert!((time - 2.0).abs() < 1e-11);
        for (a, b) in found.iter().zip(dashpot(tau, 2.0)) {
            assert!((a - b).abs() < 1e-8, "{method:?} {tau} {found:?}");
        }
        assert!(steps < most, "{method:?} {tau} {steps}");
    }
}

/// A pendulum, not linear: halving a step divides the error of one step by 2^5 (order 4) and that of its
/// continuous output by no less than 2^4 (order 3), against many small ones.
#[test]
fn linearly_implicit_step_has_its_order() {
    let slope = |&[x, v, ..]: &[f64; 4]| [v, -x.sin() - 0.3 * v * v, 0.3 * v * v * v, v];
    let from = [1.0, 0.2, 0.0, 0.0];
    let step = |from: [f64; 4], size: f64| rosenbrock(&from, &slope(&from), size, slope);
    let exact = |time: f64| (0..200).fold(from, |at, _| step(at, time / 200.0).to);
    let errors = |size: f64| {
        let step = step(from, size);
        let off = |state: [f64; 4], time: f64| -> f64 {
            let parts = state.iter().zip(exact(time));
            parts.map(|(a, b)| (a - b).abs()).sum()
        };
        assert!((step.at(1.0)[0] - step.to[0]).abs() < 1e-14);
        [off(step.to, size), off(step.at(0.4), 0.4 * size)]
    };
    let (whole, half) = (errors(0.2), errors(0.1));
    assert!(
        (26.0..42.0).contains(&(whole[0] / half[0])),
        "{whole:?} {half:?}"
    );
    assert!(
        (14.0..42.0).contains(&(whole[1] / half[1])),
        "{whole:?} {half:?}"
    );
}

/// What a step is said not to come below holds for its continuous output, of both kinds.
#[test]
fn no_part_of_a_step_comes_below_its_least() {
    let slope = |&[x, v, ..]: &[f64; 4]| [v, -9.0 * x - 0.3 * v * v, v * v, 1.0];
    for from in [[1.0, 0.2, 0.0, 0.0], [0.01, -2.0, 0.3, 0.0]] {
        for size in [0.05, 0.3, 0.8] {
            let first = slope(&from);
            let implicit = rosenbrock(&from, &first, size, slope);
            let step = explicit(&from, &first, size, |at| Ok::<_, ()>(slope(at))).unwrap();
            for (step, part) in [implicit, step]
                .iter()
                .flat_map(|step| (0..4).map(move |at| (step, at)))
            {
                let looks = (0..=50).map(|look| step.part_at(part, f64::from(look) / 50.0));
                let least = looks.fold(f64::INFINITY, f64::min);
                assert!(least >= step.least(part) - 1e-14, "{part} {size} {least}");
            }
        }
    }
}

/// y' = y² from 1 is endless at 1.
#[test]
fn what_cannot_be_followed_is_an_error() {
    let blows_up = |&[y, ..]: &[f64; 4]| [y * y, 0.0, 0.0, 0.0];
    let bounds = Bounds {
        end: 10.0,
        ..BOUNDS
    };
    for method in [Method::Explicit, Method::Stiff] {
        let last = follow(method, blows_up, [1.0, 0.0, 0.0, 0.0], bounds, |_, _| None);
        assert!(last.unwrap_err().time < 1.0 + 1e-6);
    }
}

/// What falls by g and starts with v is down again at 2v/g (textbook), and at rest between: a look at the ends of
/// the step alone would see neither. It is above nothing again at the end of a step that passes both ends.
#[test]
fn an_event_within_a_step_is_found() {
    let slope = |&[_, v, ..]: &[f64; 4]| [v, 2.0, 0.0, 0.0];
    let from = [0.75, -2.0, 0.0, 0.0];
    let step = explicit(&from, &slope(&from), 2.0, |at| Ok::<_, ()>(slope(at))).unwrap();
    let place = |share: f64| step.part_at(0, share);
    assert!(place(0.0) > 0.0 && place(1.0) > 0.0);
    // 0.75 − 2t + t² = 0 at ½
    let share = first_end(place, 16).unwrap();
    assert!((share * step.size - 0.5).abs() < 1e-12, "{share}");
    let rest = event_between(|share| step.part_at(1, share), 0.0, 1.0).unwrap();
    assert!((rest.x * step.size - 1.0).abs() < 1e-12);
    assert!(event_between(place, 0.0, 1.0).is_err());
}

/// A rate that is not a number makes no good step, of neither kind.
#[test]
fn what_is_not_a_number_is_no_step() {
    let mut looks = 0;
    let rate = |y: &Vec<f64>| {
        looks += 1;
        let bad = looks > 3;
        Ok::<_, ()>(vec![if bad { f64::NAN } else { -y[0] }, -y[1]])
    };
    let step = explicit(&vec![1.0, 1.0], &vec![-1.0, -1.0], 0.1, rate).unwrap();
    assert!(step.error(&[1e-9, 1e-9]).is_nan());
    let scales = [1e-9, 1e-9];
    for parts in [&[0, 1][..], &[]] {
        let implicit = Implicit {
            parts,
            scales: &scales,
            derivatives: Some(vec![-1.0, 0.0, 0.0, -1.0]),
        };
        let nowhere = |_: &Vec<f64>| Ok::<_, ()>(Some(vec![f64::NAN, -1.0]));
        let found = implicit.step(&vec![1.0, 1.0], &vec![-1.0, -1.0], 0.1, nowhere);
        assert!(found.unwrap().is_none(), "{parts:?}");
    }
}
