//! Will it lock? The way down without the normal power, in words.
use gearswing_solver::model::EmergencyWay;
use gearswing_solver::result::{HandPumpDown, Verdict};
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
