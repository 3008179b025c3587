//! Arrow keys.

use gearswing_units::{MetricPressure, Quantity, StepSize, UnitChoice, format_exact};

const INCH: UnitChoice = UnitChoice::INCH;
const METRIC: UnitChoice = UnitChoice::METRIC;

#[test]
fn steps_suit_the_unit() {
    let mpa = UnitChoice {
        metric_pressure: MetricPressure::Megapascal,
        ..METRIC
    };
    let cases = [
        (Quantity::Length, INCH, 0.001_587_5),
        (Quantity::Length, METRIC, 0.001),
        (Quantity::Angle, INCH, std::f64::consts::PI / 360.0),
        (Quantity::Pressure, METRIC, 1e5),
        (Quantity::Pressure, mpa, 1e5),
        (Quantity::Travel, INCH, 0.01),
    ];
    for (quantity, choice, normal) in cases {
        let error = quantity.step(choice).normal - normal;
        assert!(error.abs() < 1e-15 * normal, "{quantity:?}: off by {error}");
    }
    let psi = Quantity::Pressure.step(INCH).normal / gearswing_units::factors::PA_PER_PSI;
    assert!((psi - 10.0).abs() < 1e-12);
}

#[test]
fn fine_is_finer_and_coarse_is_coarser() {
    for &quantity in Quantity::ALL {
        for choice in [INCH, METRIC] {
            let step = quantity.step(choice);
            let finer = step.fine < step.normal || quantity == Quantity::Count;
            assert!(
                step.fine > 0.0 && finer && step.normal < step.coarse,
                "{quantity:?}: {step:?}"
            );
        }
    }
}

#[test]
fn nudging_does_not_drift() {
    let mut si = Quantity::Length.to_si(INCH, 0.375);
    for _ in 0..1000 {
        si = Quantity::Length.nudged(INCH, si, StepSize::Normal, true);
    }
    assert_eq!(format_exact(Quantity::Length, INCH, si), "62.875");
    for _ in 0..1000 {
        si = Quantity::Length.nudged(INCH, si, StepSize::Normal, false);
    }
    assert_eq!(si, 0.009_525);
    for _ in 0..5 {
        si = Quantity::Length.nudged(INCH, si, StepSize::Fine, false);
    }
    assert_eq!(format_exact(Quantity::Length, INCH, si), "0.325");
    let through_zero = Quantity::Angle.nudged(
        METRIC,
        Quantity::Angle.to_si(METRIC, 0.3),
        StepSize::Normal,
        false,
    );
    assert_eq!(format_exact(Quantity::Angle, METRIC, through_zero), "-0.2");
    assert!(
        Quantity::Angle
            .nudged(METRIC, f64::NAN, StepSize::Fine, true)
            .is_nan()
    );
}
