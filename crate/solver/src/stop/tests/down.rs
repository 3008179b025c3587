//! Stops on the way down: a cause is built in, the run against time or a closed form says where the
//! leg stops, and the file without that cause is asked what explains it.
use super::causes::{explained, of, one_leg, seen_in};
use super::contact::under_a_skin;
use crate::model::*;
use crate::result::{
    Check, Direction, Explanation, Finds, Fit, Run, RunEnd, StopCause, StopExplained,
};
use crate::supply::{LegStages, SupplyOptions, cycle};
use gearswing_samples::pack::holds_it_up;

/// A leg that a spring at the trunnion holds up: down, the pump has to push it.
fn sprung_up() -> Gear {
    let mut gear = one_leg();
    gear.legs[0].springs.push(holds_it_up());
    gear
}

fn down(gear: &Gear) -> Run {
    let cycle = cycle(gear, &SupplyOptions::default()).unwrap();
    cycle.down.unwrap()
}

fn seen_down(gear: &Gear) -> SeenStop {
    SeenStop {
        selected: Direction::Down,
        ..seen_in(&down(gear))
    }
}

/// The load that the pump has to overcome down rises from place to place where the leg stops.
fn needs_more_and_more(gear: &Gear, seen: &SeenStop) {
    let HowFar::Travel {
        travel: Some(travel),
        ..
    } = seen.how_far
    else {
        unreachable!()
    };
    let track = LegStages::of(gear, 0, Direction::Down);
    let swing = track.stages.iter().find(|stage| !stage.is_strut).unwrap();
    let here = swing.fluid_at_travel(travel).unwrap();
    let load = |fluid: f64| swing.load.value(fluid);
    assert!(load(here) > 0.0 && load(1.02 * here) > load(here));
}

#[test]
fn a_tired_battery_is_found_with_its_voltage() {
    let fresh = sprung_up();
    let mut tired = fresh.clone();
    tired.supply.battery.open_circuit_voltage = Some(9.0);
    let seen = seen_down(&tired);
    needs_more_and_more(&fresh, &seen);
    let found = explained(&fresh, seen);
    let best = &found.explanations[0];
    let StopCause::BatteryLow { open_circuit, .. } = best.cause else {
        panic!("{best:?}");
    };
    assert_eq!(best.fit, Fit::Fits);
    assert!((open_circuit - 9.0).abs() < 0.1, "{open_circuit}");
}

#[test]
fn extra_friction_is_found_with_its_size() {
    let smooth = sprung_up();
    let mut rough = smooth.clone();
    let extra = 500.0;
    rough.legs[0].actuator.seal_friction = Some(rough.legs[0].actuator.seals() + extra);
    let seen = seen_down(&rough);
    needs_more_and_more(&smooth, &seen);
    let found = explained(&smooth, seen);
    let friction = of(&found, |c| matches!(c, StopCause::Friction { .. }));
    let StopCause::Friction { extra_thrust, .. } = friction.cause else {
        unreachable!()
    };
    assert_eq!(friction.fit, Fit::Fits);
    assert!((extra_thrust / extra - 1.0).abs() < 0.05, "{extra_thrust}");
    assert!(of(&found, |c| matches!(c, StopCause::BatteryLow { .. })).fit == Fit::RuledOut);
}

/// A floor that the wheel comes down on when its axle is one radius above it, whatever the angle.
fn over_a_floor(travel: f64) -> Gear {
    let mut gear = under_a_skin(travel);
    let leg = &mut gear.legs[0];
    if let Shape::Surface { points } = &mut leg.well[0].shape {
        points.reverse();
        for point in points {
            point.y -= leg.wheel.tire.diameter;
        }
    }
    gear
}

#[test]
fn contact_is_found_where_it_begins_on_the_way_down() {
    let travel = 0.4;
    let gear = over_a_floor(travel);
    let seen = |selected, travel| SeenStop {
        selected,
        ..SeenStop::at(HowFar::Travel {
            travel: Some(travel),
            within: 0.01,
        })
    };
    let found = explained(&gear, seen(Direction::Down, travel));
    let best = &found.explanations[0];
    let StopCause::Touches { clearance, .. } = best.cause else {
        panic!("{best:?}");
    };
    assert!(clearance.abs() < 1e-3, "{clearance}");
    assert_eq!((best.fit, best.fitted), (Fit::Fits, 0));
    let touching = |found: &StopExplained| {
        let as_drawn =
            |one: &&Explanation| one.fitted == 0 && matches!(one.cause, StopCause::Touches { .. });
        let mut drawn = found.explanations.iter().filter(as_drawn);
        drawn.all(|one| one.fit == Fit::RuledOut)
    };
    // Higher up it is still free of the floor, and on the way up it comes away from it.
    assert!(touching(&explained(&gear, seen(Direction::Down, 0.6))));
    assert!(touching(&explained(&gear, seen(Direction::Up, travel))));
}

/// A pressure switch that stops the pump too low, against a leg that drags: the gauge tells them apart at
/// the instant of the cut-out.
#[test]
fn a_low_pressure_switch_is_told_from_friction_by_its_cut_out() {
    let mut file = one_leg();
    file.supply.pressure_switch = Some(2.9e6);
    let mut low = file.clone();
    low.supply.pressure_switch = Some(2.2e6);
    let run = cycle(&low, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::PressureSwitch);
    let stall = run.stalls[0];
    let found = explained(
        &file,
        SeenStop {
            pump: PumpSeen::Stopped,
            forces_within: 0.02,
            ..SeenStop::at(HowFar::Travel {
                travel: Some(stall.place.travel),
                within: 0.01,
            })
        },
    );
    let StopCause::PressureSwitchLow { opens, .. } =
        of(&found, |c| matches!(c, StopCause::PressureSwitchLow { .. })).cause
    else {
        unreachable!()
    };
    // what the leg needs there, and what the line takes of it moving
    assert!((opens / 2.2e6 - 1.0).abs() < 0.01, "{opens}");
    let next = found.next_check.unwrap();
    assert_eq!(next.check, Check::CutOut, "{:?}", found.explanations);
    let Finds::Pressure(first) = next.if_first else {
        panic!("{next:?}");
    };
    let Finds::Pressure(second) = next.if_second else {
        panic!("{next:?}");
    };
    assert!((first - second).abs() > 5e5, "{first} {second}");
}

/// Where a pressure switch stops the pump while the leg moves, friction is what is left of its pressure
/// less the drop of the line; a file that stops there by itself is too weak by its own figures.
#[test]
fn friction_under_a_pressure_switch_has_its_size() {
    let mut file = one_leg();
    file.supply.pressure_switch = Some(2.9e6);
    let mut drags = file.clone();
    drags.legs[0].actuator.seal_friction = Some(drags.legs[0].actuator.seals() + 150.0);
    let run = cycle(&drags, &SupplyOptions::default())
        .unwrap()
        .up
        .unwrap();
    assert_eq!(run.end, RunEnd::PressureSwitch);
    let seen = SeenStop {
        pump: PumpSeen::Stopped,
        forces_within: 0.02,
        ..SeenStop::at(HowFar::Travel {
            travel: Some(run.stalls[0].place.travel),
            within: 0.01,
        })
    };
    let found = explained(&file, seen.clone());
    let best = of(&found, |c| matches!(c, StopCause::Friction { .. }));
    let StopCause::Friction { extra_thrust, .. } = best.cause else {
        unreachable!()
    };
    assert!((extra_thrust / 150.0 - 1.0).abs() < 0.05, "{extra_thrust}");
    assert_eq!(best.fit, Fit::Fits);
    let by_itself = explained(&drags, seen);
    let short = of(&by_itself, |c| matches!(c, StopCause::ForceShort { .. }));
    assert_eq!(short.fit, Fit::Fits);
    let is_switch = |c: &Explanation| matches!(c.cause, StopCause::PressureSwitchLow { .. });
    assert!(!by_itself.explanations.iter().any(is_switch));
}
