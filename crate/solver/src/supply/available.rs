//! The most that the source makes against a stopped leg.
use super::source::{Circuit, Pump};
use crate::model::{Leg, Source, Supply};
use crate::result::{DrivenBy, SetBy};

/// What an actuator can count on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Available {
    /// Gauge pressure [Pa]; with an electric actuator its thrust, over one square metre.
    pub(crate) pressure: f64,
    /// What drives it.
    pub(crate) driven_by: DrivenBy,
    /// What sets it.
    pub(crate) set_by: SetBy,
}

/// The pressure given, or less where the pump on its battery, its relief valve, a hand or the charge of
/// an accumulator alone makes less; with electric actuators what that of the leg makes alone on the
/// battery. A pump that does not turn makes none.
pub(crate) fn available(supply: &Supply, leg: &Leg) -> Available {
    let given = supply.available_pressure;
    if matches!(supply.source, Source::ElectricActuators) {
        let circuit = Circuit::new(&supply.battery);
        let thrust = leg.drive.electric.map_or(0.0, |m| circuit.stall_force(&m));
        return Available {
            pressure: thrust,
            driven_by: DrivenBy::Electricity,
            set_by: SetBy::Source,
        };
    }
    let most = match Pump::new(supply) {
        Ok(pump) => pump.map_or(given, |pump| pump.most),
        Err(_) => 0.0,
    };
    Available {
        pressure: given.min(most),
        driven_by: DrivenBy::Fluid,
        set_by: if most < given {
            SetBy::Source
        } else {
            SetBy::File
        },
    }
}

impl Available {
    /// What is left of it above what is needed, as a share of it [1]; −1 and less where there is none.
    pub(crate) fn margin(&self, needed: f64) -> f64 {
        (self.pressure - needed) / self.pressure.max(f64::MIN_POSITIVE.sqrt())
    }
}
