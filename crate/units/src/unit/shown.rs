//! The unit shown for each quantity under each choice.

use super::{Unit, units_of};
use crate::choice::{AirspeedUnit, MetricPressure, UnitChoice, UnitSystem};
use crate::quantity::Quantity;

static PLAIN: Unit = Unit::new("", &[], crate::factors::Factor::ONE);

/// The unit in which `choice` shows `quantity`.
pub(crate) fn shown_unit(quantity: Quantity, choice: UnitChoice) -> &'static Unit {
    let symbol = shown_symbol(quantity, choice);
    // A test holds every shown symbol to be in the table, so the plain unit never stands in.
    units_of(quantity)
        .iter()
        .find(|unit| unit.symbol() == symbol)
        .unwrap_or(&PLAIN)
}

fn shown_symbol(quantity: Quantity, choice: UnitChoice) -> &'static str {
    let by_system = |inch, metric| match choice.system {
        UnitSystem::Inch => inch,
        UnitSystem::Metric => metric,
    };
    match quantity {
        Quantity::Length | Quantity::Hole | Quantity::Pitch => by_system("in", "mm"),
        Quantity::Angle => "°",
        Quantity::Mass => by_system("lb", "kg"),
        Quantity::Force => by_system("lb", "N"),
        Quantity::Pressure => match choice.metric_pressure {
            MetricPressure::Bar => by_system("psi", "bar"),
            MetricPressure::Megapascal => by_system("psi", "MPa"),
        },
        Quantity::Area => by_system("in²", "cm²"),
        Quantity::DragArea => by_system("ft²", "m²"),
        Quantity::Volume => by_system("in³", "cm³"),
        Quantity::Speed => match choice.airspeed {
            AirspeedUnit::Knot => "kt",
            AirspeedUnit::MilePerHour => "mph",
            AirspeedUnit::KilometrePerHour => "km/h",
        },
        Quantity::StrokeSpeed => by_system("in/s", "mm/s"),
        Quantity::AngularSpeed => "deg/s",
        Quantity::Density => by_system("slug/ft³", "kg/m³"),
        Quantity::Ratio | Quantity::Count => "",
        Quantity::Travel => "%",
        Quantity::LoadFactor => "g",
        Quantity::Moment => by_system("in-lb", "N·m"),
        Quantity::Time => "s",
        Quantity::Stiffness => by_system("lb/in", "N/mm"),
        Quantity::TorsionalStiffness => by_system("in-lb/deg", "N·m/deg"),
        Quantity::Inertia => by_system("lb·in²", "kg·m²"),
        Quantity::Flow => by_system("gal/min", "L/min"),
        Quantity::Voltage => "V",
        Quantity::Current => "A",
        Quantity::Resistance => "Ω",
        Quantity::Energy => "Wh",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shown_symbol_is_in_the_table() {
        for &quantity in Quantity::ALL {
            for &system in UnitSystem::ALL {
                for &metric_pressure in MetricPressure::ALL {
                    for &airspeed in AirspeedUnit::ALL {
                        let choice = UnitChoice {
                            system,
                            metric_pressure,
                            airspeed,
                        };
                        let unit = shown_unit(quantity, choice);
                        assert_eq!(unit.symbol(), shown_symbol(quantity, choice));
                        assert!(units_of(quantity).contains(unit), "{quantity:?}");
                    }
                }
            }
        }
    }
}
