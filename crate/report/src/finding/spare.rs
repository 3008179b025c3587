//! Will it lock? What a fall without power has to spare, in words.
use gearswing_gear::model::{FrictionTyped, Joint};
use gearswing_solver::result::{Fall, FallStart, Phase, Unpowered};
use gearswing_units::Quantity;

use crate::cases::joint_words;
use crate::subject::Subject;

/// Above this, friction times so many is only said to be over it (ratio).
const MANY: f64 = 20.0;

/// Travels nearer than this are one (ratio).
const NEAR: f64 = 5e-3;

const MEASURE_SEALS: &str = "Measure the friction: by spring scale at the rod, lines open, for the seals; by spring scale at the axle, actuator and brace disconnected, for the bushings.";
const MEASURE_DRIVE: &str =
    "Measure what drives the electric actuator back without power, by spring scale at its rod.";

/// Whether more friction than is required stops it, or it stays where it is let go.
pub(super) fn is_small(fall: &Fall) -> bool {
    fall.required.is_some_and(|required| !required.reaches)
        || fall.start.is_some_and(|start| start.ratio < 1.0)
}

/// What it has to spare; each sentence begins with a blank.
pub(super) fn sentence(subject: &Subject, fall: &Fall) -> String {
    let mut said = String::new();
    if fall.reaches_lock() {
        if let Some(start) = fall.start.filter(|start| start.ratio < 1.0) {
            said.push_str(&stays(subject, &start));
        }
        said.push_str(&against(fall));
        said.push_str(&starts(fall));
    }
    said.push_str(&missing(subject, fall));
    said
}

/// Against how many times its friction it falls.
fn against(fall: &Fall) -> String {
    let Some(required) = fall.required else {
        return String::new();
    };
    let needs = times(required.times, f64::INFINITY);
    let found = fall.friction_factor.or(fall.friction_factor_tried);
    let Some(found) = found else {
        return String::new();
    };
    let over = match fall.friction_factor {
        Some(_) => "",
        None if found > MANY => "",
        None => "over ",
    };
    let has = times(found, required.times);
    if required.reaches {
        format!(" It does so against {over}{has} its friction; {needs} is required.")
    } else {
        format!(" It does so against only {has} its friction, and {needs} is required.")
    }
}

/// So many times, to 2 % and never more than it is; not below what is required where it is not.
pub(crate) fn times(factor: f64, required: f64) -> String {
    if factor > MANY {
        return format!("over {MANY:.0} times");
    }
    let step = match factor {
        ..2.5 => 0.02,
        2.5..5.0 => 0.05,
        5.0..10.0 => 0.1,
        _ => 0.2,
    };
    let mut shown = (factor / step + 1e-9).floor() * step;
    if factor >= required && shown < required {
        shown = required;
    }
    let text = format!("{shown:.2}");
    format!("{} times", text.strip_suffix('0').unwrap_or(&text))
}

/// Where a leg that is let go there stays.
fn stays(subject: &Subject, start: &FallStart) -> String {
    let stretch = start.stays_from.zip(start.stays_to).filter(|(from, to)| {
        let swings = from.phase == Phase::Swing && to.phase == Phase::Swing;
        swings && (from.travel - to.travel).abs() > NEAR
    });
    let place = match stretch {
        Some((from, to)) => format!(
            "between {} and {} of travel",
            subject.say(Quantity::Travel, to.travel),
            subject.say(Quantity::Travel, from.travel)
        ),
        None => subject.at(&start.place),
    };
    format!(
        " Stopped and let go again {place}, it stays there: break-out friction holds more than what closes it."
    )
}

/// What starts it again after it has stood, where it is hardest.
fn starts(fall: &Fall) -> String {
    let friction = fall
        .start
        .filter(|start| start.ratio >= 1.0 && start.ratio.is_finite());
    friction.map_or_else(String::new, |start| {
        format!(
            " Let go anywhere after it has stood, it starts against {} its break-out friction; 1.0 times is required.",
            times(start.ratio, 1.0)
        )
    })
}

/// Which friction is not given.
fn missing(subject: &Subject, fall: &Fall) -> String {
    let Some(leg) = subject.model() else {
        return String::new();
    };
    let typed = leg.friction_typed(&subject.gear.supply.source);
    let actuator = match fall.actuator {
        Unpowered::Fluid => "its seals",
        Unpowered::DrivenBack | Unpowered::Released => "its actuator",
    };
    if !typed.any() {
        return format!(
            " No friction is typed, of {actuator} or its pins: how much it has to spare is not known."
        );
    }
    not_counted(&typed, (!typed.actuator).then_some(actuator))
}

/// Pins whose friction is not given while other friction is, for the force: where none is, more must be left
/// over for it.
pub(super) fn pins_not_counted(subject: &Subject) -> String {
    let typed = subject
        .model()
        .map(|leg| leg.friction_typed(&subject.gear.supply.source));
    let typed = typed.filter(FrictionTyped::any);
    typed.map_or_else(String::new, |typed| not_counted(&typed, None))
}

/// What of friction counts as none; empty where nothing does.
fn not_counted(typed: &FrictionTyped, actuator: Option<&str>) -> String {
    let pins: Vec<Joint> = typed.pins_missing().collect();
    let mut names: Vec<String> = actuator.map(str::to_owned).into_iter().collect();
    if typed.pins.iter().flatten().count() == pins.len() {
        names.push("its pins".to_owned());
    } else {
        names.extend(pins.iter().map(|joint| joint_words(*joint).to_owned()));
    }
    match names.split_last() {
        None => String::new(),
        Some((one, [])) => format!(" Friction not typed, and counted as none: of {one}."),
        Some((last, others)) => format!(
            " Friction not typed, and counted as none: of {} and {last}.",
            others.join(", ")
        ),
    }
}

/// What to measure where no friction is given.
pub(super) fn measure(subject: &Subject) -> Option<String> {
    let typed = subject.model()?.friction_typed(&subject.gear.supply.source);
    if typed.any() {
        return None;
    }
    let fall = subject.result.fall.as_ref()?;
    Some(
        match fall.actuator {
            Unpowered::Fluid => MEASURE_SEALS,
            Unpowered::DrivenBack | Unpowered::Released => MEASURE_DRIVE,
        }
        .to_owned(),
    )
}

#[cfg(test)]
mod tests {
    use super::times;

    /// Never more than it is, and never on the other side of what is required.
    #[test]
    fn times_are_told_to_two_percent() {
        for (factor, required, told) in [
            (1.9, 1.5, "1.9 times"),
            (1.0, 1.5, "1.0 times"),
            (1.4985, 1.5, "1.48 times"),
            (1.5, 1.5, "1.5 times"),
            (1.375, 1.37, "1.37 times"),
            (2.551, 1.5, "2.55 times"),
            (3.834, 1.5, "3.8 times"),
            (7.77, 1.5, "7.7 times"),
            (19.99, 1.5, "19.8 times"),
            (20.01, 1.5, "over 20 times"),
        ] {
            assert_eq!(times(factor, required), told, "{factor}");
        }
        for i in 0..2_000 {
            let factor = 1.0 + 0.0095 * f64::from(i);
            let text = times(factor, f64::INFINITY);
            let shown: f64 = text.trim_end_matches(" times").parse().unwrap();
            assert!(
                shown <= factor + 1e-9 && factor - shown <= 0.0201 * factor,
                "{factor} {text}"
            );
        }
    }
}
