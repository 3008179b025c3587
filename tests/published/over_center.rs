//! Source: through-center travel of the knee as maintenance manuals of light airplanes print it (service
//! and maintenance manuals of two light singles, three light twins and a turboprop twin, read page by page;
//! rows 3.1 of our source page on tires and locks): 0.062 to 0.281 in. Computed from them for two equal
//! links L with the knee t off the straight line: bend 2 asin(t/L), shorter than straight by
//! 2 (L − √(L² − t²)).
use gearswing_gear::model::*;
use gearswing_solver::result::{FindingDetail, LegResult, Question, Verdict};
use gearswing_solver::{LEAST_OVER_CENTRE, PRINTED_OVER_CENTER};
use gearswing_tests::{bare_gear, bare_leg, near, solve};
use gearswing_units::factors::M_PER_INCH;

const LINK: Link = Link {
    thickness: 0.01,
    mass: 0.0,
};

/// Distance of brace attach and of the axle from the trunnion (m).
const ARMS: (f64, f64) = (0.3, 0.6);

/// A leg that hangs straight down with a brace of two links of `link` (in), square to it, its knee
/// `offset` (in) past the line; it goes up toward the brace pivot.
fn braced(link: f64, offset: f64) -> LegResult {
    let half = (link * link - offset * offset).sqrt() * M_PER_INCH;
    let mut leg = bare_leg();
    let attach = leg.trunnion + Vector::new(0.0, -ARMS.0);
    leg.strut.axle = leg.trunnion + Vector::new(0.0, -ARMS.1);
    leg.wheel.mass = 10.0;
    leg.brace = Brace::Folding(FoldingBrace {
        airframe_pivot: attach + Vector::new(2.0 * half, 0.0),
        knee: attach + Vector::new(half, -offset * M_PER_INCH),
        leg_attach: attach,
        folds: Folds::ThroughCentre,
        unlocked_by: UnlockedBy::Separate,
        knee_given: Default::default(),
        excursion_allowed: None,
        upper: LINK,
        lower: LINK,
    });
    leg.swing_up = 0.5;
    leg.actuator.mount = leg.trunnion + Vector::new(0.5, 1.0);
    solve(&bare_gear(leg), 721)
}

/// Bend of the knee in degrees.
#[test]
fn bend_of_printed_offsets() {
    for (link, offset, degrees) in [
        (8.0, 0.062, 0.89),
        (8.0, 0.125, 1.79),
        (8.0, 0.170, 2.44),
        (8.0, 0.250, 3.58),
        (10.0, 0.062, 0.71),
        (10.0, 0.125, 1.43),
        (10.0, 0.170, 1.95),
        (10.0, 0.250, 2.87),
    ] {
        let lock = braced(link, offset).lock;
        let what = format!("{offset} in on {link} in");
        near(&what, lock.over_centre.unwrap() / M_PER_INCH, offset, 1e-9);
        near(
            &what,
            lock.past_centre.unwrap().to_degrees(),
            degrees,
            5.1e-3,
        );
    }
}

/// Links of 8 in and 1/8 in: 0.00195 in shorter than straight. The leg has to give that way as the
/// knee comes through: by the ratio of the arms at the axle.
#[test]
fn two_thousandths_are_a_whole_margin() {
    let excursion = braced(8.0, 0.125).excursion.unwrap();
    let at_attach = excursion.at_axle * ARMS.0 / ARMS.1;
    near("inch", at_attach / M_PER_INCH, 0.001_95, 4e-6);
}

/// No printed offset is flagged as little, and less than all of them is.
#[test]
fn printed_offsets_are_enough() {
    for printed in [
        0.062, 0.063, 0.125, 0.145, 0.156, 0.170, 0.219, 0.220, 0.250, 0.280, 0.281,
    ] {
        let (least, most) = PRINTED_OVER_CENTER;
        let offset = braced(9.0, printed).lock.over_centre.unwrap();
        assert!(offset > LEAST_OVER_CENTRE, "{printed}");
        assert!(
            (least - 1e-12..=most + 1e-12).contains(&offset),
            "{printed}"
        );
    }
    let finding = |offset: f64| {
        let findings = braced(9.0, offset).findings;
        findings
            .into_iter()
            .find(|f| f.question == Question::Locks)
            .unwrap()
    };
    let little = finding(0.055);
    assert!(
        matches!(little.detail, FindingDetail::OverCentre { offset, .. } if offset < LEAST_OVER_CENTRE)
    );
    assert_ne!(little.verdict, Verdict::Good);
}
