//! Fall without pressure, and what axle loads do to the lock.
use gearswing_solver::result::{AxleLoad, Fall, FallAirspeed, FallOutcome, Unpowered};
use gearswing_units::Quantity;

use super::cases::TitledTable;
use super::lines::Lines;
use super::numbers::title;
use crate::cases::load_name;
use crate::finding::spare::times;
use crate::subject::Subject;
use crate::text::capital_first;

/// Load at the axle for which the effect at the knee is said (N): 100 lb or 100 N in the units
/// chosen.
const ROUND_LOAD: f64 = 100.0;

pub(super) fn fall(lines: &mut Lines, subject: &Subject) {
    for load in &subject.result.lock.axle_loads {
        lines.item(2, "- ", &axle_load(subject, load));
    }
    let Some(fall) = &subject.result.fall else {
        return;
    };
    title(lines, "Free fall, without power or pressure");
    for text in rows(subject, fall) {
        lines.item(2, "- ", &text);
    }
}

/// What axle loads do to the lock, then the fall without pressure, for the screen.
#[must_use]
pub fn lock_facts(subject: &Subject) -> TitledTable {
    let loads = &subject.result.lock.axle_loads;
    let mut notes: Vec<String> = loads.iter().map(|load| axle_load(subject, load)).collect();
    let air = subject.result.lock.knee_push_at_gear_speed;
    if let Some((push, speed)) = air.zip(subject.gear.conditions.gear_speed) {
        notes.push(format!(
            "Push that unlocks the hanging leg in the air at {}: {}.",
            subject.say(Quantity::Speed, speed),
            subject.signed(Quantity::Force, push)
        ));
    }
    if let Some(fall) = &subject.result.fall {
        notes.extend(rows(subject, fall));
    }
    TitledTable {
        title: "Lock, and free fall without power or pressure",
        columns: Vec::new(),
        notes,
    }
}

fn axle_load(subject: &Subject, load: &AxleLoad) -> String {
    let round = Quantity::Force.to_si(subject.units, ROUND_LOAD);
    let share = load.effect.into_lock;
    let way = if share < 0.0 { "out of" } else { "into" };
    format!(
        "{} of {} at the axle pushes the knee {way} its lock with {}.",
        capital_first(load_name(load.direction)),
        subject.say(Quantity::Force, round),
        subject.say(Quantity::Force, round * share.abs())
    )
}

fn rows(subject: &Subject, fall: &Fall) -> Vec<String> {
    let moment = |si| subject.signed(Quantity::Moment, si);
    let force = |si| subject.say(Quantity::Force, si);
    let mut rows = outcome(subject, fall);
    rows.push(match fall.moment_at_up {
        Some(left) => format!(
            "Net moment about the trunnion at up, toward down: {}.",
            moment(left)
        ),
        None => "At up its pins bind: no moment about the trunnion starts it.".to_owned(),
    });
    if let Some(least) = &fall.least_moment {
        rows.push(format!(
            "Least net moment: {}, {}.",
            moment(least.moment),
            subject.at(&least.place)
        ));
    }
    if let Some(least) = &fall.least_knee_push {
        rows.push(format!(
            "Least net push at the nearly straight knee, into the lock: {}, {}.",
            subject.signed(Quantity::Force, least.push),
            subject.at(&least.place)
        ));
    }
    rows.extend(match fall.airspeed {
        FallAirspeed::NoAirLoad => None,
        FallAirspeed::NotInStillAir => Some("In still air it does not reach the lock.".to_owned()),
        FallAirspeed::UpTo { airspeed } => Some(format!(
            "It reaches the lock up to a true airspeed of {}.",
            subject.say(Quantity::Speed, airspeed)
        )),
        FallAirspeed::AtEvery { tried } => Some(format!(
            "It reaches the lock at every true airspeed up to {}.",
            subject.say(Quantity::Speed, tried)
        )),
    });
    if let Some(limit) = fall.seal_friction_limit {
        rows.push(format!(
            "{} that just stops it short: {}.",
            match fall.actuator {
                Unpowered::Fluid => "Seal friction",
                Unpowered::DrivenBack | Unpowered::Released => "Force to drive its actuator back",
            },
            force(limit)
        ));
    }
    let required = fall.required.map_or(f64::INFINITY, |one| one.times);
    if let Some(factor) = fall.friction_factor {
        rows.push(format!(
            "All friction given, of actuator and pins, just stops it short when it is {} as much.",
            times(factor, required)
        ));
    }
    if let Some(tried) = fall.friction_factor_tried {
        rows.push(format!(
            "All friction given, of actuator and pins, doesn't stop it short even when it is {} as much.",
            times(tried, required)
        ));
    }
    if let Some(required) = fall.required {
        rows.push(format!(
            "Against {} times its friction it {}.",
            subject.say(Quantity::Ratio, required.times),
            if required.reaches {
                "reaches its lock"
            } else {
                "stops short"
            }
        ));
    }
    if let Some(start) = fall.start {
        rows.push(format!(
            "Hardest to start, let go after it has stood: what closes it is {} its break-out friction, {}.",
            if start.ratio >= 0.0 {
                times(start.ratio, 1.0)
            } else {
                format!("{} times", subject.say(Quantity::Ratio, start.ratio))
            },
            subject.at(&start.place)
        ));
    }
    if let Some(short) = fall.short {
        rows.push(format!(
            "Missing: {}; the axle is {} from where it is at the stop.",
            short.missing_share.map_or_else(
                || "more than any moment gives, since pins bind on the way".to_owned(),
                |share| format!(
                    "{} of the largest moment of its weight",
                    subject.say(Quantity::Travel, share)
                ),
            ),
            subject.size(short.from_stop)
        ));
    }
    if let Some(pump) = subject.result.way_down.and_then(|down| down.hand_pump) {
        rows.push(format!(
            "Hand pump, at most {}: needs {} to extend, {}.",
            subject.say(Quantity::Pressure, pump.available),
            subject.say(Quantity::Pressure, pump.needed),
            subject.at(&pump.place)
        ));
    }
    rows
}

fn outcome(subject: &Subject, fall: &Fall) -> Vec<String> {
    let time = |si| subject.say(Quantity::Time, si);
    match &fall.outcome {
        FallOutcome::ReachesLock(arrival) => vec![
            format!("Reaches its lock in {}.", time(arrival.time)),
            format!(
                "At the stop: swing {}, axle {}{}; fastest axle on the way {}.",
                subject.say(Quantity::AngularSpeed, arrival.swing_rate.abs()),
                subject.say(Quantity::StrokeSpeed, arrival.axle_speed),
                arrival.knee_speed.map_or_else(String::new, |speed| format!(
                    ", knee {}",
                    subject.say(Quantity::StrokeSpeed, speed)
                )),
                subject.say(Quantity::StrokeSpeed, arrival.largest_axle_speed)
            ),
        ],
        FallOutcome::StopsShort { place, time: at } => vec![format!(
            "Comes to rest short of its lock, {}, after {}.",
            subject.at(place),
            time(*at)
        )],
        FallOutcome::StaysUp => vec!["Does not start down on its own.".to_owned()],
        FallOutcome::Creeps { place, time: at } => {
            vec![format!("Still {} after {}.", subject.at(place), time(*at))]
        }
        FallOutcome::NotFollowed { place, time: at } => vec![format!(
            "Could not be worked out beyond the place {}, reached after {}: how it ends is not known.",
            subject.at(place),
            time(*at)
        )],
    }
}
