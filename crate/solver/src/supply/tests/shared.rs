//! Legs on one drive, and a supply that differs up and down.
use super::super::{SupplyError, SupplyOptions, cycle};
use super::counts_on::level_flight_alone;
use crate::kinematics::Linkage;
use crate::model::{Brace, Gear, Source, Supply};
use crate::result::{FindingDetail, Force, LegResult, Question, RunEnd, Verdict};
use crate::statics::{STANDARD_GRAVITY, areas};
use crate::{Options, solve_leg};
use gearswing_samples::pack::{accumulator_alone, gear};

fn solved(gear: &Gear, leg: usize) -> LegResult {
    solve_leg(gear, leg, &Options::default()).unwrap()
}

fn driven(result: &LegResult) -> (Verdict, &FindingDetail) {
    let mut found = result.findings.iter();
    let answer = found.find(|f| f.question == Question::Driven).unwrap();
    (answer.verdict, &answer.detail)
}

/// Two legs of one shape on one shaft, the second heavier, without friction; pressure that returns freely.
fn on_one_shaft() -> Gear {
    let mut gear = gear();
    gear.supply = Supply::constant(9e6);
    gear.legs.remove(0);
    for leg in &mut gear.legs {
        leg.shared_drive = "Shaft".into();
        leg.actuator.seal_friction = Some(0.0);
    }
    gear
}

fn pressures(result: &LegResult) -> Vec<(f64, f64, f64)> {
    let rows = result.stations.iter();
    rows.filter_map(|row| {
        let force = row.force?;
        Some((
            row.travel,
            force.retract_pressure?,
            force.retract_effort? / areas_of(result),
        ))
    })
    .collect()
}

fn areas_of(result: &LegResult) -> f64 {
    let force: &Force = &result.force;
    match force.stroke {
        crate::result::Stroke::Push => force.bore_area,
        crate::result::Stroke::Pull => force.annulus_area,
    }
}

/// The drive needs the sum of what its legs need at the same travel, and both legs say the same.
#[test]
fn one_drive_carries_the_sum() {
    let gear = on_one_shaft();
    let (left, right) = (solved(&gear, 0), solved(&gear, 1));
    assert_eq!(left.force.shares_drive_with, [1]);
    assert_eq!(right.force.shares_drive_with, [0]);
    let (a, b) = (pressures(&left), pressures(&right));
    assert_eq!(a.len(), b.len());
    let most = a.iter().fold(0.0, |most: f64, row| most.max(row.1));
    let mut checked = 0;
    for ((_, all, own), (_, all_too, other)) in a.iter().zip(&b) {
        let sum = (own + other).max(0.0);
        assert!((all - sum).abs() < 1e-4 * most, "{all} {sum}");
        assert!((all_too - sum).abs() < 1e-4 * most, "{all_too} {sum}");
        checked += 1;
    }
    assert!(checked > 700);
}

/// Conservation of energy (any statics text): what the drive does over its stroke is what all its legs
/// have gained in height, times their weight.
#[test]
fn the_work_of_the_drive_lifts_all_its_legs() {
    let mut gear = on_one_shaft();
    for leg in &mut gear.legs {
        // all the mass at the axle
        leg.body.mass = 0.0;
        leg.actuator.mass = 0.0;
        if let Brace::Folding(brace) = &mut leg.brace {
            brace.upper.mass = 0.0;
            brace.lower.mass = 0.0;
        }
    }
    let result = solved(&gear, 0);
    let area = areas_of(&result);
    let swing: Vec<_> = result
        .stations
        .iter()
        .filter(|row| row.force.is_some())
        .collect();
    let work: f64 = swing
        .windows(2)
        .filter_map(|pair| {
            let of = |at: usize| pair[at].force?.retract_pressure;
            let stroke = (pair[1].actuator_length - pair[0].actuator_length).abs();
            Some(0.5 * (of(0)? + of(1)?) * area * stroke)
        })
        .sum();
    let mass: f64 = gear.legs.iter().map(|leg| leg.wheel.mass).sum();
    let rise = swing.last().unwrap().axle.y - swing[0].axle.y;
    let gained = mass * STANDARD_GRAVITY * rise;
    assert!((work / gained - 1.0).abs() < 1e-3, "{work} {gained}");
}

/// A ratio counts as a lever does: half the movement, half the force on the drive.
#[test]
fn a_leg_that_moves_half_as_far_takes_half() {
    let mut gear = on_one_shaft();
    gear.legs[1].drive_ratio = 0.5;
    let (left, right) = (solved(&gear, 0), solved(&gear, 1));
    let rows = pressures(&left).into_iter().zip(pressures(&right));
    for ((_, all, own), (_, _, other)) in rows {
        let sum = (own + 0.5 * other).max(0.0);
        assert!((all - sum).abs() < 1e3, "{all} {sum}");
    }
}

/// No leg says Yes of a source that the sum overloads, each with the same figures; bore and ends of the
/// second leg's actuator do not count.
#[test]
fn no_leg_says_yes_of_an_overloaded_drive() {
    let mut gear = on_one_shaft();
    let alone = {
        let mut gear = gear.clone();
        gear.legs[0].shared_drive.clear();
        solved(&gear, 0).force.peak.unwrap().pressure
    };
    gear.supply.available_pressure = 1.6 * alone;
    let one = &mut gear.legs[1].actuator;
    one.bore *= 2.0;
    one.longest = one.shortest * 1.001;
    let results = [solved(&gear, 0), solved(&gear, 1)];
    for result in &results {
        let (verdict, detail) = driven(result);
        assert_eq!(verdict, Verdict::Bad);
        let FindingDetail::Pressure {
            needed, available, ..
        } = detail
        else {
            panic!("{detail:?}");
        };
        assert_eq!(*available, 1.6 * alone);
        assert!((1.9 * alone..2.6 * alone).contains(needed), "{needed}");
    }
    let error = cycle(&gear, &SupplyOptions::default()).unwrap_err();
    assert_eq!(error, SupplyError::SharedDrive { leg: 0 });
}

/// Where nothing moves the one, the other does not come up either.
#[test]
fn a_leg_that_jams_stops_the_drive() {
    let mut gear = on_one_shaft();
    let length = |progress: f64| {
        let linkage = Linkage::new(&gear.legs[0]);
        linkage.pose(progress).unwrap().actuator_length
    };
    let (down, half) = (length(-2.0), length(0.5));
    let ends = &mut gear.legs[0].actuator;
    if half > down {
        ends.longest = half;
    } else {
        ends.shortest = half;
        ends.body_length = 0.5 * half;
    }
    assert_eq!(solved(&gear, 0).jams.len(), 1);
    let other = solved(&gear, 1);
    let (verdict, detail) = driven(&other);
    assert_eq!(verdict, Verdict::Bad);
    assert_eq!(*detail, FindingDetail::PartnerStands { leg: 0 });
    let travel = other.force.partner_stands.unwrap().place.travel;
    assert!((0.4..0.6).contains(&travel), "{travel}");
}

/// A lower relief valve for down counts on the way down alone, in the answer and against time.
#[test]
fn up_and_down_are_apart() {
    let mut gear = gear();
    let before = solved(&gear, 1);
    let down = before.force.extend_peak.unwrap().pressure;
    gear.supply.relief_down = Some(down + 2e5);
    gear.supply.margin_wanted = Some(0.0);
    let after = solved(&gear, 1);
    assert_eq!(after.force.peak, before.force.peak);
    assert_eq!(after.force.available_extend_pressure, down + 2e5);
    assert_eq!(after.force.extend_peak.unwrap().available, down + 2e5);
    let found = cycle(&gear, &SupplyOptions::default()).unwrap();
    let most = |run: Option<crate::result::Run>| run.unwrap().largest_pressure.unwrap();
    let Source::MotorPump(pump) = gear.supply.source else {
        unreachable!()
    };
    assert_eq!(most(found.up), pump.relief_pressure);
    assert_eq!(most(found.down), down + 2e5);
    // a switch too
    gear.supply.pressure_switch = Some(4e6);
    gear.supply.pressure_switch_down = Some(down + 1e5);
    let switched = solved(&gear, 1).force;
    assert_eq!(switched.available_pressure, 4e6);
    assert_eq!(switched.available_extend_pressure, down + 1e5);
}

/// With an accumulator alone each place has what is left there, and the leg that needs most at the start
/// of its way has more to count on than what is left at its end. Gas law p·V^n (textbook), the fluid by
/// the cylinders' areas and lengths.
#[test]
fn an_accumulator_gives_what_is_left_at_each_place() {
    let mut gear = gear();
    gear.supply = accumulator_alone();
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Complete);
    let result = solved(&gear, 2);
    let peak = result.force.peak.unwrap();
    let taken: f64 = gear
        .legs
        .iter()
        .map(|leg| {
            let linkage = Linkage::new(leg);
            let length = |progress: f64| linkage.pose(progress).unwrap().actuator_length;
            let start = linkage.path().start();
            let here = length(linkage.progress_at_travel(peak.place.travel.max(0.0)));
            let (bore, annulus) = areas(&leg.actuator);
            let area = if length(1.0) > length(start) {
                bore
            } else {
                annulus
            };
            let jack = leg.drive.strut_jack.unwrap().area * 0.05;
            area * (here - length(start)).abs() + jack
        })
        .sum();
    let base = 3e6 + 101_325.0;
    let first: f64 = base / (7e6 + 101_325.0);
    let volume = 1e-3 * first.powf(1.0 / 1.4) + taken;
    let left = base * (1e-3 / volume).powf(1.4) - 101_325.0;
    assert!(
        (peak.available / left - 1.0).abs() < 1e-3,
        "{} {left}",
        peak.available
    );
    assert!(peak.available >= result.force.available_pressure);
}

/// Required by itself: 10 % where some friction is given (0 counts), 25 % where none is, and what is typed
/// as typed, 10 % too. A quarter is what the one printed ratio of relief to switch, 1.33, leaves (service
/// manual of a light twin, second hand): 1 − 1/1.33.
#[test]
fn the_required_margin_goes_with_what_is_known_of_friction() {
    let required = |change: &dyn Fn(&mut Gear)| {
        let mut gear = gear();
        change(&mut gear);
        let result = solved(&gear, 1);
        let peak = result.force.peak.unwrap();
        let hardest = peak.margin.min(result.force.extend_peak.unwrap().margin);
        let verdict = driven(&result).0;
        (result.force.required_margin, hardest, verdict)
    };
    let none = |gear: &mut Gear| {
        for leg in &mut gear.legs {
            leg.actuator.seal_friction = None;
        }
    };
    assert_eq!(required(&|_| {}).0, 0.1);
    assert_eq!(required(&none).0, 0.25);
    assert!((1.0 - 1.0 / 1.33 - 0.25_f64).abs() < 0.003);
    let zero = required(&|gear: &mut Gear| gear.legs[1].actuator.seal_friction = Some(0.0));
    assert_eq!(zero.0, 0.1);
    let typed = required(&|gear: &mut Gear| {
        none(gear);
        gear.supply.margin_wanted = Some(0.1);
    });
    assert_eq!(typed.0, 0.1);
    // between the two figures the same leg is marginal without friction and Yes with it
    let between = |gear: &mut Gear, seals: Option<f64>| {
        none(gear);
        level_flight_alone(gear);
        let peak = solved(gear, 1).force.peak.unwrap().pressure;
        gear.supply = Supply {
            return_pressure: gear.supply.return_pressure,
            ..Supply::constant(peak / 0.83)
        };
        gear.legs[1].actuator.seal_friction = seals;
    };
    let (_, margin, verdict) = required(&|gear: &mut Gear| between(gear, None));
    assert!((0.1..0.25).contains(&margin), "{margin}");
    assert_eq!(verdict, Verdict::Marginal);
    assert_eq!(
        required(&|gear: &mut Gear| between(gear, Some(0.0))).2,
        Verdict::Good
    );
}
