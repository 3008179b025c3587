//! A trunnion or a wheel that is not square to the drawn plane, in words.
use gearswing_gear::model::{MovingPart, View};
use gearswing_solver::clearance::TOLD_SKEW;
use gearswing_solver::result::SkewLoss;
use gearswing_units::Quantity;

use crate::subject::Subject;

/// What the skews given have taken off; `None` where nothing.
pub(super) fn less(subject: &Subject, of: impl Fn(&SkewLoss) -> f64) -> Option<String> {
    let skew = &subject.result.clearance.skew;
    let (new, grown) = (of(&skew.new), of(&skew.grown));
    if grown <= 0.0 && new <= 0.0 {
        return None;
    }
    let (new, grown) = (subject.size(new), subject.size(grown));
    let much = if new == grown {
        new
    } else {
        format!("{new} (new) and {grown} (grown)")
    };
    let whose: Vec<String> = [("trunnion", skew.trunnion), ("wheel", skew.wheel)]
        .into_iter()
        .filter_map(|(whose, angle)| {
            let angle = angle.filter(|angle| *angle > 0.0)?;
            Some(format!(
                "the {whose}'s {}",
                subject.say(Quantity::Angle, angle)
            ))
        })
        .collect();
    Some(format!("less {much} for {}", whose.join(" and ")))
}

/// What a skew that is not measured might cost, and how to measure it.
pub(super) fn line(subject: &Subject) -> Option<String> {
    let skew = &subject.result.clearance.skew;
    let told = skew.told?;
    let much = subject.size(told.to_well);
    let three = subject.say(Quantity::Angle, TOLD_SKEW);
    let plane = match subject.result.view {
        View::Front => {
            "a straightedge along the trunnion's bearings should point straight fore and aft"
        }
        View::Side => {
            "a straightedge along the trunnion's bearings should point straight left and right"
        }
    };
    Some(match skew.trunnion {
        None => format!(
            "Whether the trunnion is square to the drawn plane is not measured, and nothing is taken off for it: {three} from square can cost the tire {much} of its clearances to the well. To measure, gear down and airplane level: {plane}; take the angle by which it does not, seen from above and from the side, and put in the larger one, 0 if it is square."
        ),
        Some(_) => format!(
            "Whether the wheel is square to its leg is not measured, and nothing is taken off for it: {three} can cost the tire {much} more. To measure: a straightedge across the rim, gear down, against the drawn plane."
        ),
    })
}

/// That a good answer would not stand at the skew that is told of where none is measured; empty where it
/// would, or where all is measured.
pub(super) fn at_stake(subject: &Subject) -> String {
    let clearance = &subject.result.clearance;
    let Some(told) = clearance.skew.told else {
        return String::new();
    };
    let wheels = clearance.pairs.iter();
    let wheels = wheels.filter(|pair| pair.part == MovingPart::Wheel);
    let after = (wheels.map(|pair| pair.spare() - told.to_well))
        .chain(
            clearance
                .own
                .iter()
                .map(|own| own.spare() - told.to_own_leg),
        )
        .chain(
            clearance
                .room
                .rows
                .iter()
                .map(|room| room.spare() - told.along_trunnion),
        )
        .fold(f64::INFINITY, f64::min);
    if after >= 0.0 {
        return String::new();
    }
    let what = match clearance.skew.trunnion {
        None => "the trunnion is square to the drawn plane",
        Some(_) => "the wheel is square to its leg",
    };
    format!(
        " That stands only if {what}, which is not measured: {} from square would leave {} too little.",
        subject.say(Quantity::Angle, TOLD_SKEW),
        subject.size(-after)
    )
}

#[cfg(test)]
mod tests {
    use gearswing_gear::model::MovingPart;
    use gearswing_solver::result::TireState;
    use gearswing_units::UnitChoice;

    use super::at_stake;
    use crate::sample::{full_gear, pair, result, subject};

    /// The sample's tire may lose 16.4 mm at 3°; 3 mm are required.
    #[test]
    fn a_clearance_that_a_skew_would_take_is_told() {
        let (gear, mut result) = (full_gear(), result());
        let mut said = |part, clearance| {
            let tire = (part == MovingPart::Wheel).then_some(TireState::Grown);
            result.clearance.pairs = vec![pair(part, tire, clearance, 0.003)];
            at_stake(&subject(&gear, &result, UnitChoice::METRIC))
        };
        let told = said(MovingPart::Wheel, 0.0152);
        assert!(
            told.contains("3.0° from square would leave 4.2 mm too little"),
            "{told}"
        );
        assert_eq!(said(MovingPart::Wheel, 0.0195), "");
        assert_eq!(said(MovingPart::LegBody, 0.0152), "");
        result.clearance.pairs = vec![pair(MovingPart::Wheel, Some(TireState::New), 0.0152, 0.003)];
        result.clearance.skew.told = None;
        assert_eq!(at_stake(&subject(&gear, &result, UnitChoice::METRIC)), "");
    }
}
