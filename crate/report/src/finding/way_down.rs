//! Will it lock? The way down without the normal power, in words.
use gearswing_gear::model::EmergencyWay;
use gearswing_solver::result::{DrivenBy, HandPumpDown, Verdict};
use gearswing_units::Quantity;

use crate::subject::Subject;

/// What the way down does, where it is not free fall; begins with a blank.
pub(super) fn sentence(subject: &Subject) -> String {
    let Some(down) = subject.result.way_down else {
        return String::new();
    };
    match (down.way, down.hand_pump) {
        (EmergencyWay::FreeFall, _) => String::new(),
        (EmergencyWay::HandPump, Some(pump)) => hand_pump(subject, down.verdict, &pump),
        (EmergencyWay::HandPump, None) if is_electric(subject) => {
            " Whether a hand pump brings it down is not shown: its actuator works without fluid.".to_owned()
        }
        (EmergencyWay::HandPump, None) => {
            " Whether the hand pump brings it down is not shown: its largest pressure is not typed.".to_owned()
        }
        (EmergencyWay::StoredGas, _) => {
            " Whether stored gas blows it down is not shown: it needs a look at the bottle, its pressure and its release.".to_owned()
        }
        (EmergencyWay::HandCrank, _) => {
            " Whether the hand crank or lever brings it down is not shown: it needs a look at its drive.".to_owned()
        }
        (EmergencyWay::NoneGiven, _) => {
            " No way down without the normal power is given, so this is marginal at best.".to_owned()
        }
    }
}

fn hand_pump(subject: &Subject, verdict: Verdict, pump: &HandPumpDown) -> String {
    let needs = format!(
        "{} of its {} is needed {}",
        subject.say(Quantity::Pressure, pump.needed),
        subject.say(Quantity::Pressure, pump.available),
        subject.at(&pump.place)
    );
    let required = subject.say(Quantity::Travel, subject.result.force.required_margin);
    match verdict {
        Verdict::Bad if pump.stopped => {
            " The hand pump does not bring it down: no pressure does, see “Can it be driven?”."
                .to_owned()
        }
        Verdict::Bad => format!(" The hand pump does not bring it down: {needs}."),
        Verdict::Marginal if pump.margin < subject.result.force.required_margin => format!(
            " The hand pump brings it down with {} to spare, and {required} is required: {needs}.",
            subject.say(Quantity::Travel, pump.margin)
        ),
        Verdict::Marginal | Verdict::Good | Verdict::NotShown => format!(
            " The hand pump brings it down with {} to spare ({required} is required): {needs}.",
            subject.say(Quantity::Travel, pump.margin)
        ),
    }
}

/// What to look at, where the way down is not worked out.
pub(super) fn look(subject: &Subject) -> Option<String> {
    let down = subject.result.way_down?;
    let text = match (down.way, down.hand_pump) {
        (EmergencyWay::HandPump, None) if is_electric(subject) => {
            "Find out how the actuator is released or driven by hand, and say so at the supply."
        }
        (EmergencyWay::HandPump, None) => {
            "Type the largest pressure of the emergency hand pump, or pump a gauge up until the handle is too heavy."
        }
        (EmergencyWay::StoredGas, _) => {
            "Check the bottle's pressure, its date and its release by the maker's data, and blow the legs down on jacks."
        }
        (EmergencyWay::HandCrank, _) => {
            "Crank or lever the legs down on jacks: count the turns and measure the hand force."
        }
        (EmergencyWay::NoneGiven, _) => {
            "Find the emergency extension procedure in the flight manual, and say which way it is."
        }
        _ => return None,
    };
    Some(text.to_owned())
}

/// The number or the reason in a few words, where the way down is what makes the answer.
pub(super) fn short(subject: &Subject, verdict: Verdict) -> Option<String> {
    let Some(down) = subject.result.way_down else {
        return (verdict == Verdict::NotShown).then(|| "does not come up".to_owned());
    };
    if down.verdict != verdict {
        return None;
    }
    let bad = verdict != Verdict::Good;
    match (down.way, down.hand_pump) {
        (EmergencyWay::HandPump, Some(pump)) if bad && pump.stopped => {
            Some("no pump brings it down".to_owned())
        }
        (EmergencyWay::HandPump, Some(pump)) if bad && pump.margin < 0.0 => Some(format!(
            "hand pump {} short",
            subject.say(Quantity::Pressure, pump.needed - pump.available)
        )),
        (EmergencyWay::HandPump, Some(pump)) if bad => Some(format!(
            "hand pump: {} to spare",
            subject.say(Quantity::Travel, pump.margin)
        )),
        (EmergencyWay::HandPump, None) if is_electric(subject) => {
            Some("needs a look at its release".to_owned())
        }
        (EmergencyWay::HandPump, None) => Some("needs the hand pump's pressure".to_owned()),
        (EmergencyWay::StoredGas, _) => Some("needs a look at the bottle".to_owned()),
        (EmergencyWay::HandCrank, _) => Some("needs a look at crank or lever".to_owned()),
        (EmergencyWay::NoneGiven, _) if verdict == Verdict::Marginal => {
            Some("no way down is given".to_owned())
        }
        (EmergencyWay::HandPump | EmergencyWay::FreeFall | EmergencyWay::NoneGiven, _) => None,
    }
}

fn is_electric(subject: &Subject) -> bool {
    subject.result.force.driven_by == DrivenBy::Electricity
}
