//! A trunnion or a wheel that is not square to the drawn plane, in words.
use gearswing_gear::model::{MovingPart, View};
use gearswing_solver::clearance::TOLD_SKEW;
use gearswing_solver::result::SkewLoss;
use gearswing_units::Quantity;

use super::beside::side_words;
use crate::subject::{Subject, obstacle_words, part_name};

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

/// Where a good answer might not stand at the skew that is told of where none is measured; empty where it
/// stands everywhere, or where all is measured.
pub(super) fn at_stake(subject: &Subject) -> String {
    let clearance = &subject.result.clearance;
    let Some(told) = clearance.skew.told else {
        return String::new();
    };
    let wheels = clearance.pairs.iter();
    let wheels = wheels.filter(|pair| pair.part == MovingPart::Wheel);
    let to_well = wheels.map(|pair| {
        let what = obstacle_words(&pair.obstacle_name, pair.obstacle);
        (pair.spare() - told.to_well, format!("at {what}"))
    });
    let to_own = clearance.own.iter().map(|own| {
        let what = part_name(own.part);
        (own.spare() - told.to_own_leg, format!("at its own {what}"))
    });
    let along = clearance.room.rows.iter().map(|room| {
        let side = side_words(subject, room.side);
        let spare = room.spare() - told.along_trunnion;
        (spare, format!("along its trunnion, {side}"))
    });
    let all = to_well.chain(to_own).chain(along);
    let Some((spare, place)) = all.min_by(|a, b| a.0.total_cmp(&b.0)) else {
        return String::new();
    };
    if spare >= 0.0 {
        return String::new();
    }
    let what = match clearance.skew.trunnion {
        None => "the trunnion is square to the drawn plane",
        Some(_) => "the wheel is square to its leg",
    };
    format!(
        " Whether {what} is not measured: {} could leave the tire up to {} short of what is required {place}.",
        subject.say(Quantity::Angle, TOLD_SKEW),
        subject.size(-spare)
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
            told.contains(
                "3.0° could leave the tire up to 4.2 mm short of what is required at Bay rib"
            ),
            "{told}"
        );
        assert_eq!(said(MovingPart::Wheel, 0.0195), "");
        assert_eq!(said(MovingPart::LegBody, 0.0152), "");
        result.clearance.pairs = vec![pair(MovingPart::Wheel, Some(TireState::New), 0.0152, 0.003)];
        // of all rows the one that could lack most is named
        let (own, along) = (0.0005, 0.06);
        let told = result.clearance.skew.told.as_mut().unwrap();
        (told.to_own_leg, told.along_trunnion) = (own, along);
        let said = at_stake(&subject(&gear, &result, UnitChoice::METRIC));
        assert!(
            said.contains("4.2 mm short of what is required at Bay rib"),
            "{said}"
        );
        result.clearance.skew.trunnion = Some(0.0);
        let said = at_stake(&subject(&gear, &result, UnitChoice::METRIC));
        assert!(
            said.contains("Whether the wheel is square to its leg"),
            "{said}"
        );
        result.clearance.skew.told = None;
        assert_eq!(at_stake(&subject(&gear, &result, UnitChoice::METRIC)), "");
    }
}
