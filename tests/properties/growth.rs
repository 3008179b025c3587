//! A larger tire has less room.
use gearswing_gear::model::{Basis, Grown, View};
use gearswing_solver::result::TireState;
use gearswing_tests::{cases, solve};

#[test]
fn clearance_falls_as_the_tire_grows() {
    let (mut apart, mut touching) = (0, 0);
    for mut case in cases(3, 2, 40) {
        let tire = case.leg().wheel.tire.clone();
        let mut before: Option<Vec<(f64, f64)>> = None;
        let mut last = 0.0;
        for step in 0..4 {
            let growth = 0.008 * f64::from(step) + case.draw.between(0.0, 0.006);
            case.gear.legs[0].wheel.tire.grown = Grown::Given {
                diameter: tire.diameter + growth,
                width: tire.width + growth,
                basis: Basis::Measured,
            };
            let result = solve(&case.gear, 2);
            let grown = |state| {
                result
                    .clearance
                    .pairs
                    .iter()
                    .filter(move |p| p.tire == Some(state))
                    .map(|p| (p.tightest.clearance, p.certified_to))
            };
            let now: Vec<_> = grown(TireState::Grown).collect();
            // the new tire is the smaller one at every step
            let before = before.replace(now.clone());
            let before = before.unwrap_or_else(|| grown(TireState::New).collect());
            for ((less, e), (more, f)) in before.into_iter().zip(now) {
                if less > 0.0 {
                    assert!(more <= less + e + f, "{less} became {more}");
                    apart += 1;
                } else {
                    assert!(more <= 0.0, "{less} became free, {more}");
                    touching += 1;
                }
                // a disc loses just its radius, in contact too
                if case.kind.view == View::Side {
                    let lost = 0.5 * (growth - last);
                    assert!(
                        (less - more - lost).abs() <= e + f + 1e-9,
                        "{less} {more} {lost}"
                    );
                } else if less > 0.0 && more > 0.0 {
                    // a rounded rectangle at most half the growth both ways
                    let most = 0.5 * (growth - last) * 2_f64.sqrt();
                    assert!(less - more <= most + e + f + 1e-9, "{less} {more} {most}");
                }
            }
            last = growth;
        }
    }
    assert!(apart > 300 && touching > 100, "{apart} {touching}");
}
