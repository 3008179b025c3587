//! Work and energy, virtual work against free bodies, equilibrium of the whole, pressure and areas.
use gearswing_gear::model::*;
use gearswing_solver::kinematics::{Linkage, Pose};
use gearswing_solver::result::{Motion, Reactions};
use gearswing_solver::statics::{Loads, free_bodies, gravity, station_force, wind};
use gearswing_tests::{Case, cases, solve};
use std::f64::consts::FRAC_PI_4;

/// Weights, wind and leg of a case.
struct Statics<'a> {
    case: &'a Case,
    linkage: Linkage,
    weight: Vector,
    wind: Vector,
}

impl<'a> Statics<'a> {
    fn new(case: &'a Case) -> Self {
        let view = case.leg().view;
        Self {
            case,
            linkage: case.linkage(),
            weight: gravity(view, &case.gear.conditions),
            wind: wind(view, &case.gear.conditions),
        }
    }

    fn holding(&self, pose: &Pose) -> Option<f64> {
        let (leg, supply) = (self.case.leg(), &self.case.gear.supply);
        station_force(leg, supply, &self.linkage, pose, self.weight, self.wind).map(|f| f.holding)
    }

    /// Sum of mass × position over all parts that move, and the axle's drag: what a constant force
    /// has done up to this pose, from the model's own masses (N·m).
    fn done_by_loads(&self, pose: &Pose) -> f64 {
        let leg = self.case.leg();
        let (sin, cos) = pose.place.swing.sin_cos();
        let c = leg.body.centre - leg.trunnion;
        let centre = leg.trunnion + Vector::new(cos * c.x - sin * c.y, sin * c.x + cos * c.y);
        let mut moments = centre.coords * leg.body.mass + pose.axle.coords * leg.wheel.mass;
        moments += pose.actuator_attach.coords * (0.5 * leg.actuator.mass);
        match &leg.brace {
            Brace::None => {}
            Brace::Sliding(b) => moments += pose.brace_attach.unwrap().coords * (0.5 * b.mass),
            Brace::Folding(b) => {
                let (knee, attach) = (pose.knee.unwrap().coords, pose.brace_attach.unwrap().coords);
                moments += knee * (0.5 * b.upper.mass);
                // a straight bar's weight goes with its middle
                moments += (knee + attach) * (0.5 * b.lower.mass);
            }
        }
        self.weight.dot(&moments) + self.wind.dot(&pose.axle.coords) * leg.air.wheel_drag_area
    }

    /// Moment of the wind on the leg itself about the trunnion (N·m).
    fn leg_air(&self, pose: &Pose) -> f64 {
        let arm = (pose.axle - self.linkage.trunnion()) * 0.5;
        arm.perp(&(self.wind * self.case.leg().air.leg_drag_area))
    }

    /// Work of the actuator and of the wind on the leg from `from` to `to`, by `steps` trapezoids.
    fn trapezoids(&self, from: f64, to: f64, steps: usize) -> Option<Work> {
        let mut sum = Work::default();
        let mut last: Option<(Pose, f64)> = None;
        for i in 0..=steps {
            let pose = self
                .linkage
                .pose(from + (to - from) * i as f64 / steps as f64)
                .ok()?;
            let thrust = self.holding(&pose)?;
            if let Some((before, thrust_before)) = &last {
                let stroke = pose.actuator_length - before.actuator_length;
                let mean = 0.5 * (thrust + thrust_before);
                sum.actuator += mean * stroke;
                sum.gross += (mean * stroke).abs();
                let swing = pose.place.swing - before.place.swing;
                sum.leg_air += 0.5 * (self.leg_air(&pose) + self.leg_air(before)) * swing;
            }
            last = Some((pose, thrust));
        }
        Some(sum)
    }
}

#[derive(Clone, Copy, Debug, Default)]
struct Work {
    actuator: f64,
    leg_air: f64,
    gross: f64,
}

/// Stretches of the path, in progress, on which nothing kinks and the actuator has a fair arm.
fn smooth_stretches(statics: &Statics, end: f64) -> Vec<(f64, f64)> {
    let linkage = &statics.linkage;
    let mut ends = vec![linkage.path().start(), -1.0, 0.0, end];
    if let Shortening::WithTravel { table } = &statics.case.leg().strut.shortening {
        ends.extend(
            table
                .iter()
                .map(|row| linkage.progress_at_travel(row.travel)),
        );
    }
    ends.retain(|s| *s >= linkage.path().start() && *s <= end);
    ends.sort_by(f64::total_cmp);
    ends.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    let arm = |s: f64| linkage.pose(s).map_or(0.0, |pose| pose.rates.actuator);
    let mut stretches = Vec::new();
    for pair in ends.windows(2) {
        // just inside, on one side of each kink
        let (from, to) = (pair[0] + 1e-10, pair[1] - 1e-10);
        let parts = 12;
        let at = |i: usize| from + (to - from) * i as f64 / f64::from(parts);
        let largest = (0..=100)
            .map(|i| arm(from + (to - from) * f64::from(i) / 100.0).abs())
            .fold(0.0, f64::max);
        for i in 0..parts as usize {
            let (a, b) = (at(i), at(i + 1));
            let fair = (0..=10).all(|k| {
                let here = arm(a + (b - a) * f64::from(k) / 10.0);
                here * arm(a) > 0.0 && here.abs() > 0.1 * largest
            });
            if fair {
                stretches.push((a, b));
            }
        }
    }
    stretches
}

/// The actuator's work is what the weights gain and the wind takes (work–energy theorem). Trapezoids,
/// their error taken off by halving the step (Richardson).
#[test]
fn work_is_gain_of_energy() {
    let mut compared = 0;
    for case in cases(3, 0, 3) {
        let statics = Statics::new(&case);
        let result = solve(&case.gear, 2);
        // before a jam the knee may run ahead of the leg without bound
        let margin = if result.jams.is_empty() { 0.0 } else { 0.1 };
        let end = result.stations.last().unwrap().progress - margin;
        for (from, to) in smooth_stretches(&statics, end) {
            let (Some(coarse), Some(fine)) = (
                statics.trapezoids(from, to, 128),
                statics.trapezoids(from, to, 256),
            ) else {
                // only the strut shortens, or a device of its own moves the knee
                continue;
            };
            let better = |a: f64, b: f64| b + (b - a) / 3.0;
            let actuator = better(coarse.actuator, fine.actuator);
            let air = better(coarse.leg_air, fine.leg_air);
            let at = |s| statics.linkage.pose(s).unwrap();
            let loads = statics.done_by_loads(&at(to)) - statics.done_by_loads(&at(from));
            let size = fine.gross + air.abs() + loads.abs();
            assert!(
                (actuator + air + loads).abs() <= 1e-6 * size + 1e-9,
                "{from} to {to}: actuator {actuator}, leg air {air}, loads {loads}"
            );
            compared += 1;
        }
    }
    assert!(compared > 1000, "{compared}");
}

/// The thrust from velocities is the thrust from the equilibrium of every body, to 1e-9.
#[test]
fn virtual_work_is_free_body() {
    let mut compared = 0;
    for case in cases(6, 0, 4) {
        let statics = Statics::new(&case);
        let leg = case.leg();
        for station in solve(&case.gear, 721).stations.iter().step_by(5) {
            let pose = statics.linkage.pose(station.progress).unwrap();
            let loads = Loads::new(leg, &statics.linkage, &pose, statics.weight, statics.wind);
            let (Some(force), Some(bodies)) = (
                station.force,
                free_bodies(leg, &statics.linkage, &pose, &loads),
            ) else {
                continue;
            };
            // toward a dead point thrust grows as one over the arm, and rounding with it
            let size = force.holding.abs().max(100.0);
            let size = size * (size / 1000.0).max(1.0);
            assert!(
                (force.holding - bodies.thrust).abs() <= 1e-9 * size,
                "{} and {} at {}",
                force.holding,
                bodies.thrust,
                station.progress
            );
            // a case is a sum of unit loads: the same but for rounding
            let vectors = |r: Reactions| {
                let none = Vector::zeros();
                let braced = [r.brace_pivot, r.knee, r.brace_attach].map(|v| v.unwrap_or(none));
                [[r.trunnion, r.mount, r.actuator_attach], braced]
            };
            let (a, b) = (vectors(force.reactions), vectors(bodies.reactions));
            for (a, b) in a.as_flattened().iter().zip(b.as_flattened()) {
                assert!(
                    (a - b).norm() <= 1e-9 * size,
                    "{a} and {b} at {}",
                    station.progress
                );
            }
            compared += 1;
        }
    }
    assert!(compared > 20_000, "{compared}");
}

/// Airframe reactions balance all weights and the wind, in force and in moment about any point.
#[test]
fn reactions_balance_everything() {
    let mut compared = 0;
    for case in cases(4, 0, 5) {
        let statics = Statics::new(&case);
        let leg = case.leg();
        let half_weights = |mass: f64| statics.weight * (0.5 * mass);
        for station in solve(&case.gear, 721).stations.iter().step_by(7) {
            let Some(force) = station.force else { continue };
            let (sin, cos) = station.swing.sin_cos();
            let c = leg.body.centre - leg.trunnion;
            let centre = leg.trunnion + Vector::new(cos * c.x - sin * c.y, sin * c.x + cos * c.y);
            let middle = halfway(leg.trunnion, station.axle);
            let drag = |area: f64| statics.wind * area;
            let mut loads = vec![
                (centre, statics.weight * leg.body.mass),
                (
                    station.axle,
                    statics.weight * leg.wheel.mass + drag(leg.air.wheel_drag_area),
                ),
                (middle, drag(leg.air.leg_drag_area)),
                (leg.actuator.mount, half_weights(leg.actuator.mass)),
                (station.actuator_attach, half_weights(leg.actuator.mass)),
                (leg.trunnion, force.reactions.trunnion),
                (leg.actuator.mount, force.reactions.mount),
            ];
            match &leg.brace {
                Brace::None => {}
                Brace::Sliding(b) => {
                    loads.push((b.airframe_pivot, half_weights(b.mass)));
                    loads.push((station.brace_attach.unwrap(), half_weights(b.mass)));
                    loads.push((b.airframe_pivot, force.reactions.brace_pivot.unwrap()));
                }
                Brace::Folding(b) => {
                    let (knee, attach) = (station.knee.unwrap(), station.brace_attach.unwrap());
                    loads.push((b.airframe_pivot, half_weights(b.upper.mass)));
                    loads.push((knee, half_weights(b.upper.mass + b.lower.mass)));
                    loads.push((attach, half_weights(b.lower.mass)));
                    loads.push((b.airframe_pivot, force.reactions.brace_pivot.unwrap()));
                }
            }
            let size: f64 = loads.iter().map(|(_, f)| f.norm()).sum();
            let sum: Vector = loads.iter().map(|(_, f)| *f).sum();
            assert!(
                sum.norm() <= 1e-9 * size,
                "{sum} of {size} at {}",
                station.progress
            );
            // moment about the origin; a strut that slides while it swings is driven by a couple
            // that has no place in this sum
            if !matches!(leg.strut.shortening, Shortening::WithTravel { .. }) {
                let moment: f64 = loads.iter().map(|(at, f)| at.coords.perp(f)).sum();
                assert!(
                    moment.abs() <= 1e-8 * size,
                    "{moment} at {}",
                    station.progress
                );
                compared += 1;
            }
        }
    }
    assert!(compared > 5000, "{compared}");
}

fn halfway(a: Point, b: Point) -> Point {
    Point::from((a.coords + b.coords) * 0.5)
}

/// Pressure × area on the working side carries the effort and the back pressure on the other side;
/// both efforts together are twice the friction of the seals.
#[test]
fn pressure_carries_effort() {
    for case in cases(2, 0, 6) {
        let a = &case.leg().actuator;
        let back = case.gear.supply.return_pressure;
        let bore = FRAC_PI_4 * a.bore.powi(2);
        let annulus = FRAC_PI_4 * (a.bore.powi(2) - a.rod.powi(2));
        let stations = solve(&case.gear, 721).stations;
        let first = stations.iter().find(|station| station.force.is_some());
        let begins = first.map(|station| station.progress);
        for pair in stations.windows(2) {
            let Some(force) = pair[0].force else { continue };
            // the first movement up is that of seals that have stood
            let starts = if begins == Some(pair[0].progress) {
                a.seals_stood()
            } else {
                a.seals()
            };
            let (retract_pressure, retract_effort) = force.needed(Motion::Retract).unwrap();
            let (extend_pressure, extend_effort) = force.needed(Motion::Extend).unwrap();
            let seals = retract_effort + extend_effort;
            assert!((seals - starts - a.seals()).abs() <= 1e-9 * force.holding.abs().max(100.0));
            let growth = pair[1].actuator_length - pair[0].actuator_length;
            let rate = case
                .linkage()
                .pose(pair[0].progress)
                .unwrap()
                .rates
                .actuator;
            if rate * growth <= 0.0 {
                continue; // a dead point between the two
            }
            let (up, down) = if growth > 0.0 {
                (bore, annulus)
            } else {
                (annulus, bore)
            };
            for (pressure, working, other, effort) in [
                (retract_pressure, up, down, retract_effort),
                (extend_pressure, down, up, extend_effort),
            ] {
                let carried = pressure * working;
                let asked = (effort + back * other).max(0.0);
                assert!(
                    (carried - asked).abs() <= 1e-9 * asked.max(100.0),
                    "{pair:?}"
                );
            }
            let sense = if growth > 0.0 { 1.0 } else { -1.0 };
            let holding = retract_effort - starts;
            assert!((holding - sense * force.holding).abs() <= 1e-9 * holding.abs().max(100.0));
        }
    }
}
