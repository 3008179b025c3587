//! Clearance asked for: the obstacle's own figure, then the gear's rule, then common practice.
use crate::model::{ClearanceRule, MovingPart, Obstacle};
use crate::result::{Requirement, RequirementBasis, TireState};

/// Default for a new, inflated tire to structure (m): 1/2 in, common practice on light airplanes.
///
/// No regulation read for this program gives a number; 14 CFR 23.733(c) before amendment 23-64, which
/// binds types certificated under it and guides others, requires that the largest size in service does
/// not touch. Printed are, for a retracted wheel and its closed doors, 10 mm (a glider), 10 to 15 mm (a
/// motor glider) and at least 20 mm (a light twin), in their maintenance manuals; for wheel fairings,
/// builders found rubbing at 1/2 in and ask for 3/4 in.
pub const DEFAULT_TIRE_NEW: f64 = 0.0127;

/// Default for the grown tire to structure (m): our own figure, common practice being that it must
/// not touch; the 3 mm are left for flex of structure and play in the joints.
pub const DEFAULT_TIRE_GROWN: f64 = 0.003;

/// Default for every other moving part to structure (m): our own figure, as for the grown tire.
pub const DEFAULT_PARTS: f64 = 0.003;

/// Default for a new tire to its own leg, brace and actuator (m): 1/8 in, our own figure. They hang
/// on one casting and keep their distance but for play, so less than to structure does.
pub const DEFAULT_OWN_NEW: f64 = 0.003_175;

/// Default for the grown tire to its own leg, brace and actuator (m): 1/16 in, the least clearance
/// between a brace and structure that was found in print (shop manual of a light twin).
pub const DEFAULT_OWN_GROWN: f64 = 0.001_587_5;

/// Required clearance between a tire and its own leg: the figure for other moving parts where one is
/// given, else the default.
#[must_use]
pub fn own_requirement(rule: &ClearanceRule, tire: TireState) -> Requirement {
    let default = match tire {
        TireState::New => DEFAULT_OWN_NEW,
        TireState::Grown => DEFAULT_OWN_GROWN,
    };
    of_gear(rule.parts, default)
}

/// Required clearance along the trunnion axis: as for the tire to structure.
#[must_use]
pub fn room_requirement(rule: &ClearanceRule, tire: TireState) -> Requirement {
    let given = match tire {
        TireState::New => rule.tire_new,
        TireState::Grown => rule.tire_grown,
    };
    of_gear(given, default_clearance(MovingPart::Wheel, Some(tire)))
}

fn of_gear(given: Option<f64>, default: f64) -> Requirement {
    Requirement {
        clearance: given.unwrap_or(default),
        basis: match given {
            Some(_) => RequirementBasis::Gear,
            None => RequirementBasis::CommonPractice,
        },
    }
}

/// Built-in default for a part (m); `tire` is the size of the wheel's tire, ignored for others.
#[must_use]
pub fn default_clearance(part: MovingPart, tire: Option<TireState>) -> f64 {
    match (part, tire) {
        (MovingPart::Wheel, Some(TireState::Grown)) => DEFAULT_TIRE_GROWN,
        (MovingPart::Wheel, _) => DEFAULT_TIRE_NEW,
        _ => DEFAULT_PARTS,
    }
}

/// Clearance asked for between `part` and `obstacle`, and whose figure it is.
///
/// An obstacle's own figure holds for every part and both tire sizes.
#[must_use]
pub fn requirement(
    obstacle: &Obstacle,
    rule: &ClearanceRule,
    part: MovingPart,
    tire: Option<TireState>,
) -> Requirement {
    let of_gear = match (part, tire) {
        (MovingPart::Wheel, Some(TireState::Grown)) => rule.tire_grown,
        (MovingPart::Wheel, _) => rule.tire_new,
        _ => rule.parts,
    };
    let (clearance, basis) = match (obstacle.required_clearance, of_gear) {
        (Some(own), _) => (own, RequirementBasis::Obstacle),
        (None, Some(gear)) => (gear, RequirementBasis::Gear),
        (None, None) => (
            default_clearance(part, tire),
            RequirementBasis::CommonPractice,
        ),
    };
    Requirement { clearance, basis }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Shape;

    #[test]
    fn order_of_figures() {
        let mut rib = Obstacle {
            name: "Rib".to_owned(),
            shape: Shape::Surface { points: Vec::new() },
            required_clearance: None,
            ignores: Vec::new(),
        };
        let mut rule = ClearanceRule::default();
        let cases = [
            (MovingPart::Wheel, Some(TireState::New), 0.0127),
            (MovingPart::Wheel, Some(TireState::Grown), 0.003),
            (MovingPart::LowerLink, None, 0.003),
        ];
        for (part, tire, default) in cases {
            let got = requirement(&rib, &rule, part, tire);
            assert_eq!(got.basis, RequirementBasis::CommonPractice);
            assert_eq!(got.clearance, default);
        }
        rule = ClearanceRule {
            tire_new: Some(0.02),
            tire_grown: Some(0.01),
            parts: Some(0.0),
        };
        for ((part, tire, _), figure) in cases.into_iter().zip([0.02, 0.01, 0.0]) {
            let got = requirement(&rib, &rule, part, tire);
            assert_eq!((got.clearance, got.basis), (figure, RequirementBasis::Gear));
        }
        rib.required_clearance = Some(0.005);
        for (part, tire, _) in cases {
            let got = requirement(&rib, &rule, part, tire);
            assert_eq!(
                (got.clearance, got.basis),
                (0.005, RequirementBasis::Obstacle)
            );
        }
    }
}
