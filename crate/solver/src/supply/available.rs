//! The most that the source makes against a stopped leg.
use super::source::{Circuit, Pump};
use crate::faults::check_leg;
use crate::kinematics::Linkage;
use crate::model::{Gear, Leg, Shortening, Source};
use crate::result::{DrivenBy, SetBy};
use crate::statics::areas;

/// What an actuator can count on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Available {
    /// Gauge pressure [Pa]; with an electric actuator its thrust, over one square metre.
    pub(crate) pressure: f64,
    /// The same while the actuators of all legs stand stalled on the battery; absent with fluid.
    pub(crate) among_all: Option<f64>,
    /// What drives it.
    pub(crate) driven_by: DrivenBy,
    /// What sets it.
    pub(crate) set_by: SetBy,
}

/// The pressure given, or less where the pump on its battery, its relief valve, the switch that stops
/// it, a hand, or what an accumulator alone has left behind all legs makes less; with electric actuators
/// what that of the leg makes alone on the battery. A pump that does not turn makes none.
pub(crate) fn available(gear: &Gear, leg: &Leg) -> Available {
    let supply = &gear.supply;
    let given = supply.available_pressure;
    if matches!(supply.source, Source::ElectricActuators) {
        let circuit = Circuit::new(&supply.battery);
        let all: Vec<_> = gear.legs.iter().filter_map(|l| l.drive.electric).collect();
        let own = leg.drive.electric;
        return Available {
            pressure: own.map_or(0.0, |m| circuit.stall_force(&m)),
            among_all: own.map(|m| circuit.stall_force_among(&m, &all)),
            driven_by: DrivenBy::Electricity,
            set_by: SetBy::Source,
        };
    }
    let most = match Pump::new(supply) {
        Ok(Some(Pump {
            gas: Some(gas),
            free: None,
            ..
        })) => {
            let left = gas.first - taken(gear);
            if left > 0.0 { gas.pressure(left) } else { 0.0 }
        }
        Ok(pump) => pump.map_or(given, |pump| pump.most),
        Err(_) => 0.0,
    };
    let most = supply.pump_switch().map_or(most, |set| set.min(most));
    Available {
        pressure: given.min(most),
        among_all: None,
        driven_by: DrivenBy::Fluid,
        set_by: if most < given {
            SetBy::Source
        } else {
            SetBy::File
        },
    }
}

/// Fluid that all sound legs take on their way up [m3]: by the lengths of their actuators at its ends.
fn taken(gear: &Gear) -> f64 {
    let of = |leg: &Leg| {
        let linkage = Linkage::new(leg);
        let length = |progress| linkage.pose(progress).map_or(0.0, |p| p.actuator_length);
        let path = linkage.path();
        let stroke = length(path.end()) - length(path.start());
        let (bore, annulus) = areas(&leg.actuator);
        let jack = match (leg.drive.strut_jack, &leg.strut.shortening) {
            (Some(jack), Shortening::BeforeSwing { amount }) => jack.area * amount,
            _ => 0.0,
        };
        stroke.abs() * if stroke > 0.0 { bore } else { annulus } + jack
    };
    let sound = |(at, _): &(usize, &Leg)| check_leg(gear, *at).is_ok();
    let legs = gear.legs.iter().enumerate().filter(sound);
    legs.map(|(_, leg)| of(leg)).sum()
}

impl Available {
    /// What is left of it above what is needed, as a share of it [1]; −1 where there is none at all.
    pub(crate) fn margin(&self, needed: f64) -> f64 {
        if self.pressure > 0.0 {
            (self.pressure - needed) / self.pressure
        } else if needed > 0.0 {
            -1.0
        } else {
            0.0
        }
    }
}
