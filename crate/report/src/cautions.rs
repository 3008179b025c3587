//! Cautions, and what the model leaves out: said wherever results are shown.
use gearswing_solver::result::Caution;

/// The rule behind the first answer. 14 CFR 23.733(c) before amendment 23-64, read in a public copy
/// of the regulation (eCFR mirror, title 14 part 23).
pub const TIRE_CLEARANCE_RULE: &str = "14 CFR 23.733(c) (before amendment 23-64) requires that each tire of a retractable gear, at the maximum size of its type expected in service, has a clearance to the structure and systems around it that is adequate to prevent contact. It gives no number. It binds the types certificated under it; amateur-built and older types are not under it: for them it is guidance.";

/// What a squat switch does on jacks; common practice.
pub(crate) const LIVE_SELECTOR: &str = "On jacks the squat switch reads “in the air”, so the gear selector is live: pull the breaker of the gear or put ground locks in while hands are in the wells.";

/// What comes before the jacks are let down; common practice.
pub(crate) const OFF_THE_JACKS: &str = "Confirm that every leg is down and locked, at the legs and by the lights, before the airplane comes off the jacks.";

/// Cautions that hold for every leg, the gravest first.
#[must_use]
pub fn general_cautions() -> &'static [&'static str] {
    &[
        "On jacks: jack as the maker says, lock the jacks, support the tail, keep the airplane steady. A swing shakes it.",
        LIVE_SELECTOR,
        "Nobody, no hands and no tools in the arc of a leg, its doors or its brace while pressure is on or the leg is unlocked.",
        "First swing slow and on low pressure, one hand on the switch that stops it, somebody watching each leg.",
        "Hydraulic fluid under pressure, 1,000 psi (69 bar) and more, goes through skin from a pinhole. Never feel for a leak by hand; let the pressure down before a line is opened. A jet that has entered the skin is an emergency, however small the wound.",
        OFF_THE_JACKS,
        "These answers are figures from the numbers put in. They do not replace the gear swing on the airplane, the kit or type maker's data, the regulations of your country, or the inspection and signature of a certificated mechanic, repairman or licensed engineer.",
        "The maker's figure wins over any figure here.",
    ]
}

/// What the model does not contain.
#[must_use]
pub fn not_modelled() -> &'static [&'static str] {
    &[
        "anything out of the drawn plane, beyond the room and the angles that are put in for the tire: walls, doors, brake caliper, hub cap and valve ahead of, behind or beside the wheel; a wheel that turns as it goes up; a brace, an actuator or walls of the well that are not square to the plane",
        "contact among the parts of a leg but for its tire: an actuator, its mount or a brace that runs into leg, brace or strut",
        "up-locks, and what hangs on them",
        "bellcranks, push-pull rods, torque tubes and rotary drives: the actuator acts straight on the leg or a brace link",
        "lock links (jury struts), and locks inside a brace or an actuator",
        "two wheels on one leg",
        "flex of leg, tire, brace and structure, and play in the pins",
        "friction in the pins, springs, gas struts and cords beyond those that are put in; springs without mass or friction of their own",
        "time, fluid flow, pump, motor and battery, unless the file names a pump or electric actuators: a pressure that suffices says nothing of how fast the gear moves",
        "what else holds a leg back that is let down without pressure: valves, long lines, cold fluid, doors",
        "gear doors and their linkage",
        "growth of a tire by spinning (beyond its grown size), a flat or burst tire, thrown tread, rocks, water, slush, mud, ice (14 CFR 23.729(g), to amendment 23-49, requires equipment kept in the gear bay to be arranged to limit the damage from them)",
        "the gear warning and its lights beyond the switches given (14 CFR 23.729(f)(2), to amendment 23-49: a warning that works whenever the flaps are past their maximum approach setting with the gear not down and locked)",
        "brake lines, hoses and wires that move with the leg",
        "strength of any part, and wear",
    ]
}

/// A caution that belongs to one answer.
#[must_use]
pub fn caution_text(caution: Caution) -> &'static str {
    match caution {
        Caution::MovingLeg => {
            "A moving leg crushes: lock the jacks, support the tail, keep everybody out of the arc, make the first swing slow. On jacks the squat switch reads “in the air” and the selector is live: breaker pulled or ground locks in while hands are in the well."
        }
        Caution::Pressure => {
            "Hydraulic fluid under pressure goes through skin: never feel for a leak by hand, and let the pressure down before opening a line."
        }
        Caution::Trimming => {
            "Do not cut or trim structure on this figure: ask the kit or type maker, and have the change approved and signed for."
        }
        Caution::TireApproval => {
            "A larger tire changes more than clearance (loads, speed rating, drag, ground attitude): it needs the kit or type maker's data or an approval."
        }
        Caution::Unlocked => {
            "A leg that is not locked can fold on the jacks or on the ground: hold it down by other means until the lock is proved. Every leg must be confirmed down and locked before the airplane comes off the jacks."
        }
        Caution::MountStrength => {
            "The load on the actuator mount is worked out, its strength is not: check bolt and structure by the maker's data."
        }
    }
}
