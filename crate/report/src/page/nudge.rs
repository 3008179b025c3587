//! Moving a point by steps, after a finger has let it go.
use gearswing_units::{StepSize, UnitChoice, UnitSystem};

/// The step that is taken, on its press.
#[must_use]
pub fn step_words(fine: bool, units: UnitChoice) -> &'static str {
    match (units.system, fine) {
        (UnitSystem::Inch, false) => "Step 1/16 in",
        (UnitSystem::Inch, true) => "Step 0.01 in",
        (UnitSystem::Metric, false) => "Step 1 mm",
        (UnitSystem::Metric, true) => "Step 0.1 mm",
    }
}

/// Size of the step.
#[must_use]
pub fn step_size(fine: bool) -> StepSize {
    if fine {
        StepSize::Fine
    } else {
        StepSize::Normal
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gearswing_units::{Quantity, parse};

    /// What is said is what the unit's own step is.
    #[test]
    fn a_step_is_as_long_as_it_says() {
        for units in [UnitChoice::INCH, UnitChoice::METRIC] {
            for fine in [false, true] {
                let step = Quantity::Length.step(units);
                let si = if fine { step.fine } else { step.normal };
                let words = step_words(fine, units);
                let said = parse(Quantity::Length, units, &words["Step ".len()..]).unwrap();
                assert!((said.si - si).abs() < 1e-12, "{words}: {si} m");
            }
        }
    }
}
