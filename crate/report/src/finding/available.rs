//! Can it be driven? What there is to drive a leg, what sets it, and how to get more of it, in words.
use gearswing_gear::model::{Battery, Source};
use gearswing_solver::result::{DrivenBy, Motion, SetBy, Stroke};
use gearswing_solver::supply::{open_circuit_voltage, pump_holds};
use gearswing_units::Quantity;

use super::driven::Pressure;
use crate::subject::Subject;

/// What sets the most that there is one way.
enum SetWhere {
    /// The figure in the file.
    Figure,
    /// The switch that stops the pump.
    Switch,
    /// An accumulator that is empty before all legs are there.
    Empty,
    /// What an accumulator has left.
    Left,
    /// Battery, wires and pump, short of the relief valve (Pa).
    Battery { relief: f64 },
    /// The relief valve of a pump.
    Relief,
    /// The hand at a pump.
    Hand,
    /// An electric actuator on its battery.
    Electric,
    /// The same while the others run on that battery.
    AmongOthers,
}

fn set_where(subject: &Subject, motion: Motion, most: f64) -> SetWhere {
    let force = &subject.result.force;
    let supply = subject.gear.supply.going(motion.direction());
    let set_by = match motion {
        Motion::Retract => force.available_set_by,
        Motion::Extend => force.available_extend_set_by,
    };
    if force.driven_by == DrivenBy::Electricity {
        let among = force.available_among_all.is_some() && subject.gear.legs.len() > 1;
        return if among {
            SetWhere::AmongOthers
        } else {
            SetWhere::Electric
        };
    }
    if set_by == SetBy::File {
        return SetWhere::Figure;
    }
    if supply.pump_switch().is_some_and(|set| set <= most) {
        return SetWhere::Switch;
    }
    match supply.source {
        Source::ConstantPressure if most <= 0.0 => SetWhere::Empty,
        Source::ConstantPressure => SetWhere::Left,
        Source::MotorPump(pump) if most < pump.relief_pressure * (1.0 - SAME) => {
            SetWhere::Battery {
                relief: pump.relief_pressure,
            }
        }
        Source::MotorPump(_) => SetWhere::Relief,
        Source::HandPump(_) => SetWhere::Hand,
        Source::ElectricActuators => SetWhere::Electric,
    }
}

/// What there is one way, and what sets it.
pub(super) fn available(subject: &Subject, motion: Motion, most: f64) -> String {
    let amount = subject.say(subject.drive(), most);
    match set_where(subject, motion, most) {
        SetWhere::AmongOthers => {
            format!("it makes {amount} there while the others run on the same battery")
        }
        SetWhere::Electric => format!("it makes {amount} at most"),
        SetWhere::Figure => format!("{amount} is available"),
        SetWhere::Switch => format!("the pressure switch stops the pump at {amount}"),
        SetWhere::Empty => {
            "the accumulator is empty before all legs are up: the gear against time shows how far each comes"
                .to_owned()
        }
        SetWhere::Left => format!("with all legs there the accumulator has {amount} left"),
        SetWhere::Battery { relief } => format!(
            "battery, wires and pump make {amount} at most, and the relief valve opens only at {}",
            subject.say(Quantity::Pressure, relief)
        ),
        SetWhere::Relief => format!("the relief valve lets the pump make {amount} at most"),
        SetWhere::Hand => format!("the source makes {amount} at most"),
    }
}

/// Pressures nearer than this are one (ratio): they would be printed alike.
const SAME: f64 = 1e-3;

/// The way on which there is so much and no more (Pa).
pub(super) fn way_of(subject: &Subject, most: f64) -> Motion {
    let force = &subject.result.force;
    let off = |available: f64| (available - most).abs();
    if off(force.available_extend_pressure) < off(force.available_pressure) {
        Motion::Extend
    } else {
        Motion::Retract
    }
}

/// What to try where there is too little.
pub(super) fn more_force(subject: &Subject, pressure: &Pressure) -> Vec<String> {
    let force = &subject.result.force;
    let fluid = force.driven_by == DrivenBy::Fluid;
    if pressure.needed > BEYOND * pressure.available && pressure.available > 0.0 {
        return what_holds(subject);
    }
    let first = if fluid {
        "Read the pressure with a gauge at the actuator while it is held: a tired pump or relief valve gives less than its plate says."
    } else {
        "Read the volts at the actuator while it works: a tired battery or thin wires leave it less than its plate says."
    };
    let mut steps: Vec<String> = charge(subject, pressure).into_iter().collect();
    steps.extend([
        first.to_owned(),
        "Move the actuator's mount or attach point so that it has more arm at this place."
            .to_owned(),
    ]);
    let left = pressure.available * (1.0 - pressure.required);
    let more = more_area(pressure.needed, left, subject.gear.supply.return_pressure);
    if fluid && more.is_finite() && more > 0.0 {
        let side = match (force.stroke, pressure.motion) {
            (Stroke::Push, Motion::Retract) | (Stroke::Pull, Motion::Extend) => "piston area",
            _ => "piston area on the rod side",
        };
        steps.push(format!(
            "Or about {} more {side}: a larger bore, which also takes more hydraulic fluid and time.",
            subject.say(Quantity::Travel, more)
        ));
    }
    steps.push("Check for drag in pins and brace before changing any part.".to_owned());
    steps
}

/// A leg that needs so many times what there is has no want of pressure: something all but binds it (ratio).
/// Our own figure, no source.
pub(crate) const BEYOND: f64 = 3.0;

/// What to look at where no pressure and no bore would do.
fn what_holds(subject: &Subject) -> Vec<String> {
    let mut steps = vec![
        "No pressure, battery or bore makes up so much: something all but holds the leg at this place.".to_owned(),
    ];
    if subject.model().is_some_and(|leg| leg.pins.rub()) {
        steps.push("Check radius and friction of the pins first: near a straight knee or a small arm a dry or tight bushing jams where a greased one moves.".to_owned());
    }
    steps.push(
        "Then the arm of the actuator there: does its line run past the pivot as in the drawing?"
            .to_owned(),
    );
    steps
}

/// What to do first where a battery that is not full lets the drive make no more.
fn charge(subject: &Subject, pressure: &Pressure) -> Option<String> {
    let supply = subject.gear.supply.going(pressure.motion.direction());
    let charged = Battery {
        charge: 1.0,
        open_circuit_voltage: None,
        ..supply.battery
    };
    let at_rest = open_circuit_voltage(&supply.battery);
    if at_rest >= open_circuit_voltage(&charged) {
        return None;
    }
    let at_rest = subject.say(Quantity::Voltage, at_rest);
    let full = match set_where(subject, pressure.motion, pressure.available) {
        SetWhere::Battery { .. } => {
            let mut full = supply;
            full.battery = charged;
            let makes = pump_holds(&full)?.min(supply.available_pressure);
            let makes = supply.pump_switch().map_or(makes, |set| set.min(makes));
            let enough = makes * (1.0 - pressure.required) >= pressure.needed;
            let makes = subject.say(Quantity::Pressure, makes);
            if enough {
                format!("a full one lets the pump make {makes}, which is enough")
            } else {
                format!(
                    "even a full one lets the pump make no more than {makes}, which is not enough"
                )
            }
        }
        SetWhere::Electric | SetWhere::AmongOthers => {
            "put a full one in, and see whether it is enough".to_owned()
        }
        _ => return None,
    };
    Some(format!(
        "Charge the battery: it is put in as {at_rest} at rest; {full}. Have one that does not hold its charge tested under load, and look for loose or thin wires."
    ))
}

/// By how much the working area must grow to need `left` of a pressure and not `needed`, against a back
/// pressure (all Pa; ratio), rod, seal friction and weights unchanged: of the force p·A = F + back·(A ∓ rod)
/// the part back·A grows with it.
fn more_area(needed: f64, left: f64, back: f64) -> f64 {
    (needed - back) / (left - back) - 1.0
}

#[cfg(test)]
mod tests {
    use gearswing_gear::model::{Gear, MotorPump};
    use gearswing_solver::result::{LoadCase, Motion, SetBy};
    use gearswing_units::UnitChoice;

    use super::{Battery, Pressure, Source, available, more_area, more_force, way_of, what_holds};
    use crate::sample::{full_gear, result, subject};

    const PUMP: MotorPump = MotorPump {
        free_flow: 4e-5,
        rated_voltage: 12.0,
        stall_pressure: 9e6,
        no_load_current: 14.0,
        stall_current: 130.0,
        relief_pressure: 6.9e6,
    };

    /// What sets so much, retracting, and the first thing to try of a leg that needs `needed` (Pa).
    fn said(gear: &Gear, set_by: SetBy, most: f64, needed: f64) -> (String, String) {
        let mut result = result();
        result.force.available_set_by = set_by;
        let subject = subject(gear, &result, UnitChoice::METRIC);
        let pressure = Pressure {
            case: LoadCase::AsSet,
            motion: Motion::Retract,
            needed,
            available: most,
            margin: 1.0 - needed / most,
            required: 0.1,
            mount_load: 1_000.0,
        };
        let first = more_force(&subject, &pressure).swap_remove(0);
        (available(&subject, Motion::Retract, most), first)
    }

    fn on_a_pump(charge: f64) -> Gear {
        let mut gear = full_gear();
        gear.supply.source = Source::MotorPump(PUMP);
        gear.supply.available_pressure = 7e6;
        gear.supply.accumulator = None;
        gear.supply.pressure_switch = None;
        gear.supply.battery = Battery {
            charge,
            ..Battery::FRESH
        };
        gear
    }

    /// A pump that stalls on its battery below its relief valve is the battery's matter first, where that is
    /// not full; what a full one makes is that of the straight line from the figures on a pump's plate.
    #[test]
    fn what_sets_the_pressure_is_named() {
        let low = on_a_pump(0.2);
        let (set, first) = said(&low, SetBy::Source, 2.8e6, 5e6);
        assert_eq!(
            set,
            "battery, wires and pump make 28.0 bar at most, and the relief valve opens only at 69.0 bar"
        );
        assert!(first.starts_with("Charge the battery"), "{first}");
        assert!(first.contains("make 69.0 bar, which is enough"), "{first}");
        let (_, first) = said(&low, SetBy::Source, 2.8e6, 6.5e6);
        assert!(first.contains("which is not enough"), "{first}");
        for (gear, set_by, most, told) in [
            (
                &low,
                SetBy::Source,
                6.9e6,
                "the relief valve lets the pump make 69.0 bar at most",
            ),
            (&low, SetBy::File, 2.8e6, "28.0 bar is available"),
            (
                &on_a_pump(1.0),
                SetBy::Source,
                2.8e6,
                "battery, wires and pump make 28.0 bar",
            ),
        ] {
            let (set, first) = said(gear, set_by, most, 7.5e6);
            assert!(set.starts_with(told), "{set}");
            assert!(first.starts_with("Read the pressure"), "{first}");
        }
        let mut switched = low;
        switched.supply.pressure_switch = Some(6e6);
        let (set, first) = said(&switched, SetBy::Source, 6e6, 7.5e6);
        assert_eq!(set, "the pressure switch stops the pump at 60.0 bar");
        assert!(first.starts_with("Read the pressure"), "{first}");
    }

    /// What needs many times what there is wants no pressure: the pins come first where they rub.
    #[test]
    fn what_all_but_binds_is_no_want_of_pressure() {
        let gear = on_a_pump(1.0);
        let steps = |needed| said(&gear, SetBy::File, 2.8e6, needed).1;
        assert!(steps(2.99 * 2.8e6).starts_with("Read the pressure"));
        assert!(steps(3.01 * 2.8e6).starts_with("No pressure, battery or bore"));
        let result = result();
        let subject = subject(&gear, &result, UnitChoice::METRIC);
        let pins = what_holds(&subject);
        let rub = gear.legs[0].pins.rub();
        assert_eq!(
            pins.iter().any(|step| step.contains("of the pins first")),
            rub
        );
        assert!(!pins.iter().any(|step| step.contains("piston area")));
    }

    /// The way down has a relief valve of its own.
    #[test]
    fn each_way_has_what_sets_it() {
        let mut gear = on_a_pump(0.2);
        gear.supply.relief_down = Some(4e6);
        let mut result = result();
        let force = &mut result.force;
        (force.available_pressure, force.available_extend_pressure) = (6e6, 4e6);
        force.available_set_by = SetBy::Source;
        force.available_extend_set_by = SetBy::Source;
        let subject = subject(&gear, &result, UnitChoice::METRIC);
        assert_eq!(way_of(&subject, 6e6), Motion::Retract);
        assert_eq!(way_of(&subject, 4e6), Motion::Extend);
        let up = available(&subject, Motion::Retract, 6e6);
        assert!(
            up.starts_with("battery, wires and pump make 60.0 bar"),
            "{up}"
        );
        let down = available(&subject, Motion::Extend, 4e6);
        assert_eq!(down, "the relief valve lets the pump make 40.0 bar at most");
    }

    /// 1,500 N on a bore of 10 cm2 with a rod of 3 cm2, 0.2 MPa in the return line, by F = p·A (textbook): the
    /// bore that is told needs the pressure that is left, pushing and, from the rod's side, pulling.
    #[test]
    fn the_area_that_is_told_is_enough() {
        let (force, rod, back, left) = (1_500.0, 3e-4, 2e5, 1.2e6);
        for (area, sign) in [(10e-4, -1.0), (7e-4, 1.0)] {
            let needs = |area: f64| (force + back * (area + sign * rod)) / area;
            let more = more_area(needs(area), left, back);
            assert!(more > 0.0);
            assert!((needs(area * (1.0 + more)) / left - 1.0).abs() < 1e-12);
        }
    }
}
