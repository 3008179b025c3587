//! How far an arrow key moves a value, and the move itself, without drift.

use crate::choice::{AirspeedUnit, MetricPressure, UnitChoice, UnitSystem};
use crate::exact::Rational;
use crate::format::shortest;
use crate::quantity::Quantity;

/// Which of the three steps.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum StepSize {
    /// A tenth or so of the normal one.
    Fine,
    /// The sensible step of the unit.
    #[default]
    Normal,
    /// Ten times or so the normal one.
    Coarse,
}

/// The three arrow-key steps of a quantity, in SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// The small step.
    pub fine: f64,
    /// The sensible step of the unit.
    pub normal: f64,
    /// The large step.
    pub coarse: f64,
}

impl Step {
    /// The step of a size, in SI.
    #[must_use]
    pub fn of(self, size: StepSize) -> f64 {
        match size {
            StepSize::Fine => self.fine,
            StepSize::Normal => self.normal,
            StepSize::Coarse => self.coarse,
        }
    }
}

/// Steps in the shown unit as decimal texts: fine, normal, coarse.
fn steps_in_unit(quantity: Quantity, choice: UnitChoice) -> [&'static str; 3] {
    let by_system = |inch, metric| match choice.system {
        UnitSystem::Inch => inch,
        UnitSystem::Metric => metric,
    };
    let tenth = ["0.01", "0.1", "1"];
    let one = ["0.1", "1", "10"];
    match quantity {
        // 0.01 in, 1/16 in, 1/2 in: the figure shown, the tape's mark, the large mark.
        Quantity::Length => by_system(["0.01", "0.0625", "0.5"], one),
        Quantity::Pitch => by_system(["0.0001", "0.001", "0.005"], ["0.01", "0.05", "0.25"]),
        Quantity::Hole => by_system(["0.001", "0.005", "0.02"], ["0.01", "0.1", "0.5"]),
        Quantity::Angle => ["0.1", "0.5", "5"],
        Quantity::Mass => by_system(["0.1", "0.5", "5"], tenth),
        Quantity::Force => by_system(one, ["1", "5", "50"]),
        Quantity::Pressure => match (choice.system, choice.metric_pressure) {
            (UnitSystem::Inch, _) => ["1", "10", "100"],
            (UnitSystem::Metric, MetricPressure::Bar) => one,
            (UnitSystem::Metric, MetricPressure::Megapascal) => tenth,
        },
        Quantity::Speed => match choice.airspeed {
            AirspeedUnit::Knot | AirspeedUnit::MilePerHour | AirspeedUnit::KilometrePerHour => {
                ["1", "5", "20"]
            }
        },
        Quantity::Area => by_system(["0.001", "0.01", "0.1"], tenth),
        Quantity::DragArea => by_system(["0.01", "0.05", "0.5"], ["0.001", "0.005", "0.05"]),
        Quantity::Density => by_system(["0.00001", "0.0001", "0.001"], ["0.001", "0.01", "0.1"]),
        Quantity::Ratio => ["0.001", "0.01", "0.1"],
        Quantity::Travel | Quantity::Stiffness => one,
        Quantity::Count => ["1", "1", "10"],
        Quantity::LoadFactor | Quantity::Time | Quantity::StrokeSpeed => {
            match (quantity, choice.system) {
                (Quantity::StrokeSpeed, UnitSystem::Metric) => one,
                _ => tenth,
            }
        }
        Quantity::Volume => by_system(tenth, one),
        Quantity::AngularSpeed => one,
        Quantity::Moment => by_system(["1", "5", "50"], ["0.1", "0.5", "5"]),
        Quantity::TorsionalStiffness => by_system(tenth, ["0.001", "0.01", "0.1"]),
        Quantity::Inertia => by_system(["1", "5", "50"], ["0.0005", "0.001", "0.01"]),
        Quantity::Flow => by_system(["0.01", "0.05", "0.5"], tenth),
        Quantity::Voltage => tenth,
        Quantity::Current => one,
        Quantity::Energy => tenth,
        Quantity::Resistance => ["0.0001", "0.001", "0.01"],
    }
}

fn in_unit(text: &str) -> Rational {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    Rational::decimal(
        &format!("{whole}{part}"),
        -i32::try_from(part.len()).unwrap_or(0),
    )
}

impl Quantity {
    /// The arrow-key steps in SI: 1/16 in or 1 mm, 0.5°, 10 psi or 1 bar, and a finer and a coarser one.
    #[must_use]
    pub fn step(self, choice: UnitChoice) -> Step {
        let si = |text| in_unit(text).times(self.unit(choice).factor).to_f64();
        let [fine, normal, coarse] = steps_in_unit(self, choice).map(si);
        Step {
            fine,
            normal,
            coarse,
        }
    }

    /// The SI value moved by one step up or down. Worked out in the shown unit's own decimals, so that
    /// 0.375 in and 1/16 in make 0.4375 in exactly, however often. Not finite in, unchanged out.
    #[must_use]
    pub fn nudged(self, choice: UnitChoice, si: f64, size: StepSize, up: bool) -> f64 {
        if !si.is_finite() {
            return si;
        }
        let [fine, normal, coarse] = steps_in_unit(self, choice);
        let text = match size {
            StepSize::Fine => fine,
            StepSize::Normal => normal,
            StepSize::Coarse => coarse,
        };
        let unit = self.unit(choice);
        let mut step = in_unit(text);
        step.negative = !up;
        shortest(unit, si)
            .value()
            .plus(&step)
            .times(unit.factor)
            .to_f64()
    }
}
