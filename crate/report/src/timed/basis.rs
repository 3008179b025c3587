//! What times rest on: conditions, cautions, what is made simple.
use gearswing_gear::model::Source;
use gearswing_solver::result::{Cycle, LoadCase};
use gearswing_units::Quantity;

use super::Timed;

const NEW_TIRES: &str =
    "The tires are as fitted new: whether grown ones clear is said by the answers.";

/// In which case the times are worked out.
#[must_use]
pub fn case_sentence(timed: &Timed, cycle: &Cycle) -> String {
    let set = &timed.gear.conditions;
    if cycle.case == LoadCase::OnJacks || set.are_on_jacks() {
        return format!("For the airplane level on jacks, no wind. {NEW_TIRES}");
    }
    let mut parts = vec![format!(
        "load factor {}",
        timed.say(Quantity::LoadFactor, set.load_factor)
    )];
    if set.airspeed != 0.0 {
        parts.push(timed.say(Quantity::Speed, set.airspeed));
    }
    for (name, angle) in [("pitch", set.pitch), ("bank", set.bank)] {
        if angle != 0.0 {
            parts.push(format!("{name} {}", timed.say(Quantity::Angle, angle)));
        }
    }
    format!(
        "With attitude and air as set ({}), not as on the jacks. {NEW_TIRES}",
        parts.join(", ")
    )
}

/// Cautions that belong to times.
#[must_use]
pub fn supply_cautions(source: &Source) -> &'static [&'static str] {
    const PRESSURE: &str = "Pressure can start a leg without warning, and a stalled leg can move on when it comes back: keep out of the arc until the pressure is down.";
    const RELIEF: &str = "Do not raise a relief valve or change a breaker to cure a stall: find the load, and ask the maker's data.";
    match source {
        Source::MotorPump(_) => &[
            "A pump can start a leg without warning, and a stalled leg can move on when the pressure comes back: keep out of the arc until the power is off and the pressure is down.",
            "A pump motor is made for one cycle at a time: let it cool as its maker says before the next swing, and have ground power on the battery.",
            RELIEF,
        ],
        Source::ConstantPressure | Source::HandPump(_) => &[PRESSURE, RELIEF],
        Source::ElectricActuators => &[
            "An actuator can start a leg without warning, and a stalled leg can move on: keep out of the arc until the power is off.",
            "An actuator's motor is made for one cycle at a time: let it cool as its maker says before the next swing, and have ground power on the battery.",
            "Do not change a breaker to cure a stall: find the load, and ask the maker's data.",
        ],
    }
}

/// Why a gear has no times at all.
#[must_use]
pub fn times_missing() -> &'static str {
    "No times: they need an orifice up on every leg, an accumulator, a pump or electric actuators."
}

const SEPARATE: &str = "A separate unlock device, and a strut without a shortening cylinder, take no time and no fluid.";
const SWITCHES: &str = "The switches sit where the file says; doors are not modeled.";
const CONTACT: &str = "A leg stops where its new tire or another part first touches its well, or the tire its own leg, by the drawing: how far either gives way is not worked out. What touches where a leg starts stops nothing.";
const ALIKE: &str = "Of legs that are alike on one pump, which goes first is decided by less than any figure is worth: it may be the other one on the airplane, and another in another browser.";
const STARTS: &str = "A leg that has stood stays where the most of its source does not start it; what starts runs at once against its running friction.";

/// What the times leave out or make simple.
#[must_use]
pub fn supply_simplified(source: &Source) -> &'static [&'static str] {
    if matches!(source, Source::ElectricActuators) {
        return &[
            "Everything is in balance at each instant: no motor run-up and no inrush current, no inertia of the legs.",
            "A leg that its weight drives goes no faster than its actuator: the screw holds it.",
            SEPARATE,
            "Battery and motors are straight lines at one temperature; how soon a breaker trips is not worked out.",
            SWITCHES,
            CONTACT,
            STARTS,
        ];
    }
    &[
        "Everything is in balance at each instant: no motor run-up and no inrush current, no inertia of the legs, incompressible fluid without air in it, stiff hoses.",
        "A leg that its weight drives down runs ahead of the pump, held back by its orifice alone; the manifold then stays at the return pressure.",
        "The flow of an orifice goes over from the root of the pressure across it to a straight line at about 100 Pa (0.015 psi).",
        SEPARATE,
        "Pump, battery and motor are straight lines at one temperature; how soon a breaker trips is not worked out.",
        SWITCHES,
        CONTACT,
        STARTS,
        ALIKE,
        "An accumulator takes and gives up no heat.",
        "Behind an orifice a load that pulls draws the pressure down to nothing at most (absolute zero at the standard atmosphere): from there on the leg runs ahead of the fluid, and only the fluid is timed.",
        "No position switch stops a hand or a constant pressure: either goes on until every leg is at the end of its way.",
    ]
}
