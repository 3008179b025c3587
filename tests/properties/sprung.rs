//! Springs and rubbing pins: the same changes, work and power as without them, and the worst place.
use gearswing_gear::model::*;
use gearswing_solver::Options;
use gearswing_solver::kinematics::Linkage;
use gearswing_solver::result::{CaseOutcome, MechanismEventKind, Motion, Reactions};
use gearswing_solver::statics::{
    Loads, free_bodies, pin_rates, placed, spring_energy, spring_loads, weight_and_wind,
};
use gearswing_tests::changes::{enlarged, heavier};
use gearswing_tests::same::Change;
use gearswing_tests::{Case, solve, sprung_cases};

use crate::alike::{STATIONS, compare_mirrored, compare_moved, leave_out_lock};

#[test]
fn mirror_image() {
    for mut case in sprung_cases(2, 0, 40) {
        compare_mirrored(&mut case, 1e-8);
    }
}

#[test]
fn aeroplane_moved() {
    for mut case in sprung_cases(2, 0, 41) {
        compare_moved(&mut case);
    }
}

/// Two choices of units: lengths in another one, and forces in another one.
#[test]
fn larger_and_heavier() {
    for mut case in sprung_cases(2, 0, 42) {
        let (length, force) = (case.draw.between(0.7, 1.0), case.draw.between(0.2, 5.0));
        let mut first = solve(&case.gear, STATIONS);
        let mut second = solve(&heavier(&enlarged(&case.gear, length), force), STATIONS);
        leave_out_lock([&mut first, &mut second]);
        Change {
            point: &|p| Point::from(p.coords * length),
            length,
            force,
            rounding: 1e-8,
            ..Change::NONE
        }
        .compare(&first, &second);
    }
}

/// Loads at a pose, weights and wind as the gear's conditions have them.
fn loads(
    case: &Case,
    linkage: &Linkage,
    progress: f64,
) -> Option<(gearswing_solver::kinematics::Pose, Loads)> {
    let (leg, conditions) = (case.leg(), &case.gear.conditions);
    let pose = linkage.pose(progress).ok()?;
    let [weight, air] = weight_and_wind(leg.view, conditions);
    let loads = Loads::new(leg, linkage, &pose, weight, air);
    Some((pose, loads))
}

/// The thrust from velocities is the thrust from the equilibrium of every body, springs on all of
/// them.
#[test]
fn virtual_work_is_free_body() {
    let mut compared = 0;
    for case in sprung_cases(3, 0, 43) {
        let linkage = case.linkage();
        for station in solve(&case.gear, 721).stations.iter().step_by(9) {
            let Some((pose, loads)) = loads(&case, &linkage, station.progress) else {
                continue;
            };
            let bodies = free_bodies(case.leg(), &linkage, &pose, &loads);
            let (Some(force), Some(bodies)) = (station.force, bodies) else {
                continue;
            };
            let size = force.holding.abs().max(100.0);
            let size = size * (size / 1000.0).max(1.0);
            let off = (force.holding - bodies.thrust).abs();
            assert!(
                off <= 1e-9 * size,
                "{off} of {size} at {}",
                station.progress
            );
            compared += 1;
        }
    }
    assert!(compared > 5_000, "{compared}");
}

fn sizes(reactions: &Reactions) -> [f64; 6] {
    let size = |force: Option<Vector>| force.map_or(0.0, |force| force.norm());
    [
        reactions.trunnion.norm(),
        size(reactions.brace_pivot),
        size(reactions.knee),
        size(reactions.brace_attach),
        reactions.mount.norm(),
        reactions.actuator_attach.norm(),
    ]
}

/// Power in is power out and what the pins and seals take: Coulomb friction μ·r·|R|·|ω| of every pin
/// (any text on machine elements), the loads R being those that the free bodies give with it.
#[test]
fn power_in_is_power_out_and_loss() {
    let mut compared = 0;
    for case in sprung_cases(3, 0, 44) {
        let (leg, linkage) = (case.leg(), case.linkage());
        let stations = solve(&case.gear, 721).stations;
        let first = stations.iter().find(|station| station.force.is_some());
        let begins = first.map(|station| station.progress);
        for station in stations.iter().step_by(9) {
            let (Some((pose, loads)), Some(force)) =
                (loads(&case, &linkage, station.progress), station.force)
            else {
                continue;
            };
            let out = -loads.power(leg, &linkage, &pose);
            let rates = pin_rates(leg, &linkage, &pose);
            let stroke = pose.rates.actuator.abs();
            for (motion, sign) in [(Motion::Retract, 1.0), (Motion::Extend, -1.0)] {
                let (Some((_, effort)), Some(reactions)) =
                    (force.needed(motion), force.reactions_in(motion))
                else {
                    continue;
                };
                // a motion begins with the friction of what has stood
                let stands = match motion {
                    Motion::Retract => begins == Some(station.progress),
                    Motion::Extend => station.progress >= 1.0,
                };
                let (seals, times) = match stands {
                    true => (leg.actuator.seals_stood() * stroke, leg.fall.pins_stood()),
                    false => (leg.actuator.seals() * stroke, 1.0),
                };
                let losses = leg.pins.all().into_iter().zip(rates).zip(sizes(reactions));
                let pins: f64 = losses
                    .map(|((pin, rate), load)| {
                        times * (pin.friction_radius() * load + pin.tightness()) * rate.abs()
                    })
                    .sum();
                let off = effort * stroke - sign * out - seals - pins;
                let size = (effort * stroke).abs() + out.abs() + seals + pins;
                assert!(
                    off.abs() <= 1e-8 * size,
                    "{motion:?} at {}: {off} of {size}",
                    station.progress
                );
                assert!(pins > 0.0);
                compared += 1;
            }
        }
    }
    assert!(compared > 10_000, "{compared}");
}

/// What the springs push is what their stored energy loses, and both ends of a spring keep their
/// places on their bodies (work–energy theorem; central differences, Richardson).
#[test]
fn springs_give_what_they_store() {
    let mut compared = 0;
    for case in sprung_cases(4, 0, 45) {
        let (mut leg, linkage) = (case.leg().clone(), case.linkage());
        for spring in &mut leg.springs {
            // a spring that goes slack has a kink that differences do not take
            if let SpringKind::Linear(spring) = &mut spring.kind {
                spring.acts = Acts::Both;
            }
        }
        for station in solve(&case.gear, 721).stations.iter().step_by(40) {
            let at = station.progress;
            let Ok(pose) = linkage.pose(at) else { continue };
            let start = linkage.path().start();
            if pose.rates.swing.abs() < 0.2 || !(0.02..=0.98).contains(&at) || start > at - 0.02 {
                continue;
            }
            let kinked = |table: &[ShorteningRow]| {
                table
                    .iter()
                    .any(|row| (row.travel - station.travel).abs() < 0.01)
            };
            if matches!(&leg.strut.shortening, Shortening::WithTravel { table } if kinked(table)) {
                continue;
            }
            let energy = |at: f64| {
                let pose = linkage.pose(at).ok()?;
                Some((spring_energy(&leg, &linkage, &pose), pose.place.swing))
            };
            let slope = |h: f64| {
                let ((a, x), (b, y)) = (energy(at - h)?, energy(at + h)?);
                Some((b - a) / (y - x))
            };
            let (Some(coarse), Some(fine)) = (slope(2e-4), slope(1e-4)) else {
                continue;
            };
            let stored = fine + (fine - coarse) / 3.0;
            let pushed =
                spring_loads(&leg, &linkage, &pose).power(&leg, &linkage, &pose) / pose.rates.swing;
            let size = stored.abs() + pushed.abs() + 100.0;
            assert!(
                (stored + pushed).abs() <= 1e-6 * size,
                "{stored} and {pushed} at {at}"
            );
            for spring in &leg.springs {
                if let SpringKind::Linear(LinearSpring { first, .. }) = &spring.kind
                    && first.body == Body::Airframe
                {
                    assert_eq!(placed(&leg, &linkage, &pose, first), first.point);
                }
            }
            compared += 1;
        }
    }
    assert!(compared > 1_000, "{compared}");
}

/// No peak hides between the stations: with ten times as many, the pressures needed in every load
/// case stay within 0.5 %, also where the load jumps.
#[test]
fn peaks_do_not_hide_between_stations() {
    let mut missed = Vec::new();
    let mut compared = 0;
    for case in sprung_cases(1, 0, 46) {
        let mut gear = case.gear.clone();
        gear.conditions.gear_speed = Some(45.0);
        gear.conditions.stall_speed = Some(30.0);
        let finer = Options {
            stations: 7210,
            ..Options::default()
        };
        let coarse = solve(&gear, 721);
        let fine = gearswing_solver::solve_leg(&gear, 0, &finer).unwrap();
        if !coarse.jams.is_empty() || !coarse.force.binds.is_empty() || !fine.force.binds.is_empty()
        {
            continue;
        }
        // at a dead point the pressure has no bound and the station nearest to it decides
        if coarse
            .events
            .iter()
            .any(|event| event.kind == MechanismEventKind::ActuatorDeadPoint)
        {
            continue;
        }
        for (a, b) in coarse.force.cases.iter().zip(&fine.force.cases) {
            let (
                CaseOutcome::Worked {
                    retract: r,
                    extend: e,
                    ..
                },
                CaseOutcome::Worked {
                    retract: s,
                    extend: f,
                    ..
                },
            ) = (&a.outcome, &b.outcome)
            else {
                continue;
            };
            for (coarse, fine) in [(r, s), (e, f)] {
                let (Some(coarse), Some(fine)) = (coarse, fine) else {
                    continue;
                };
                let off = (coarse.pressure - fine.pressure).abs() / fine.pressure.max(1e5);
                if off > 0.005 {
                    missed.push(format!(
                        "{:?}: {} and {} at {}",
                        a.case, coarse.pressure, fine.pressure, fine.place.travel
                    ));
                }
                compared += 1;
            }
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
    assert!(compared > 200, "{compared}");
}
