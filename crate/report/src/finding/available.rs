//! Can it be driven? What there is to drive a leg, what sets it, and how to get more of it, in words.
use gearswing_gear::model::{MotorPump, Source};
use gearswing_solver::result::{DrivenBy, Motion, SetBy, Stroke};
use gearswing_solver::supply::open_circuit_voltage;
use gearswing_units::Quantity;

use super::driven::Pressure;
use crate::subject::Subject;

/// What there is one way, and what sets it.
pub(super) fn available(subject: &Subject, motion: Motion, si: f64) -> String {
    let force = &subject.result.force;
    let amount = subject.say(subject.drive(), si);
    let supply = &subject.gear.supply.going(motion.direction());
    let set_by = match motion {
        Motion::Retract => force.available_set_by,
        Motion::Extend => force.available_extend_set_by,
    };
    match (force.driven_by, set_by, supply.source) {
        (DrivenBy::Electricity, ..) if force.available_among_all.is_some() && subject.gear.legs.len() > 1 => {
            format!("it makes {amount} there while the others run on the same battery")
        }
        (DrivenBy::Electricity, ..) => format!("it makes {amount} at most"),
        (_, SetBy::File, _) => format!("{amount} is available"),
        (_, SetBy::Source, _) if supply.pump_switch().is_some_and(|set| set <= si) => {
            format!("the pressure switch stops the pump at {amount}")
        }
        (_, SetBy::Source, Source::ConstantPressure) if si <= 0.0 => {
            "the accumulator is empty before all legs are up: the gear against time shows how far each comes"
                .to_owned()
        }
        (_, SetBy::Source, Source::ConstantPressure) => {
            format!("with all legs there the accumulator has {amount} left")
        }
        (_, SetBy::Source, Source::MotorPump(pump)) if short_of_relief(&pump, si) => {
            format!("battery, wires and pump make {amount} at most, and the relief valve opens only at {}", subject.say(Quantity::Pressure, pump.relief_pressure))
        }
        (_, SetBy::Source, Source::MotorPump(_)) => {
            format!("the relief valve lets the pump make {amount} at most")
        }
        (_, SetBy::Source, _) => format!("the source makes {amount} at most"),
    }
}

/// Whether a pump stalls before its relief valve opens.
fn short_of_relief(pump: &MotorPump, stalls: f64) -> bool {
    stalls < pump.relief_pressure * (1.0 - SAME)
}

/// Pressures nearer than this are one (ratio): they would be printed alike.
const SAME: f64 = 1e-3;

/// The way that has less pressure to count on.
pub(super) fn least_way(subject: &Subject) -> Motion {
    let force = &subject.result.force;
    if force.available_extend_pressure < force.available_pressure {
        Motion::Extend
    } else {
        Motion::Retract
    }
}

/// What to try where there is too little.
pub(super) fn more_force(subject: &Subject, pressure: &Pressure, wanted: f64) -> Vec<String> {
    let force = &subject.result.force;
    let fluid = force.driven_by == DrivenBy::Fluid;
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
    let left = pressure.available * (1.0 - wanted);
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

/// What to do first where it is the battery that lets the pump make no more.
fn charge(subject: &Subject, pressure: &Pressure) -> Option<String> {
    let force = &subject.result.force;
    let set_by = match pressure.motion {
        Motion::Retract => force.available_set_by,
        Motion::Extend => force.available_extend_set_by,
    };
    let supply = subject.gear.supply.going(pressure.motion.direction());
    let electric = match supply.source {
        Source::MotorPump(pump) => {
            set_by == SetBy::Source && short_of_relief(&pump, pressure.available)
        }
        Source::ElectricActuators => true,
        Source::ConstantPressure | Source::HandPump(_) => false,
    };
    electric.then(|| format!(
        "Charge the battery and try again: it is put in as {} at rest. Where that is not enough, look for loose or thin wires, and have the battery tested under load.",
        subject.say(Quantity::Voltage, open_circuit_voltage(&supply.battery))
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
    use gearswing_gear::model::{MotorPump, Source};
    use gearswing_solver::result::{LoadCase, Motion, SetBy};
    use gearswing_units::UnitChoice;

    use super::{Pressure, available, more_area, more_force};
    use crate::sample::{full_gear, result, subject};

    /// A pump that stalls at 2.8 MPa on its battery, below its relief valve, is the battery's matter first; one
    /// that its relief valve holds at 6.9 MPa is not.
    #[test]
    fn what_sets_the_pressure_is_named() {
        let (mut gear, mut result) = (full_gear(), result());
        gear.supply.source = Source::MotorPump(MotorPump {
            free_flow: 4e-5,
            rated_voltage: 12.0,
            stall_pressure: 9e6,
            no_load_current: 14.0,
            stall_current: 130.0,
            relief_pressure: 6.9e6,
        });
        gear.supply.pressure_switch = None;
        gear.supply.pressure_switch_down = None;
        let mut said = |set_by, most: f64| {
            result.force.available_set_by = set_by;
            let subject = subject(&gear, &result, UnitChoice::METRIC);
            let pressure = Pressure {
                case: LoadCase::AsSet,
                motion: Motion::Retract,
                needed: 7.5e6,
                available: most,
                margin: 1.0 - 7.5e6 / most,
                required: 0.1,
                mount_load: 1_000.0,
            };
            let first = more_force(&subject, &pressure, 0.1).swap_remove(0);
            (available(&subject, Motion::Retract, most), first)
        };
        let (set, first) = said(SetBy::Source, 2.8e6);
        assert_eq!(
            set,
            "battery, wires and pump make 28.0 bar at most, and the relief valve opens only at 69.0 bar"
        );
        assert!(first.starts_with("Charge the battery"), "{first}");
        let (set, first) = said(SetBy::Source, 6.9e6);
        assert_eq!(set, "the relief valve lets the pump make 69.0 bar at most");
        assert!(first.starts_with("Read the pressure"), "{first}");
        let (_, first) = said(SetBy::File, 2.8e6);
        assert!(first.starts_with("Read the pressure"), "{first}");
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
