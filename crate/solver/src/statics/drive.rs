//! What works in an actuator: fluid on a piston, or an electric motor. It alone turns thrust into what the
//! source must give, and back, so that no pressure of fluid is read as a force.
use std::f64::consts::FRAC_PI_4;

use crate::model::{Actuator, Source, Supply};

/// Bore area and bore less rod area (m2): πD²/4 and π(D² − d²)/4, textbook.
pub(crate) fn areas(actuator: &Actuator) -> (f64, f64) {
    let bore = FRAC_PI_4 * actuator.bore * actuator.bore;
    (bore, bore - FRAC_PI_4 * actuator.rod * actuator.rod)
}

/// What works in an actuator.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Drive {
    /// Fluid on a piston.
    Fluid {
        /// Bore area (m2).
        bore: f64,
        /// Bore area less that of the rod (m2).
        annulus: f64,
        /// Gauge pressure of the return line, against which it works (Pa).
        back: f64,
    },
    /// An electric motor.
    Electric,
}

impl Drive {
    /// What works in an actuator on a supply.
    pub(crate) fn new(actuator: &Actuator, supply: &Supply) -> Self {
        match supply.source {
            Source::ElectricActuators => Self::Electric,
            Source::ConstantPressure | Source::HandPump(_) | Source::MotorPump(_) => {
                let (bore, annulus) = areas(actuator);
                Self::Fluid {
                    bore,
                    annulus,
                    back: supply.return_pressure,
                }
            }
        }
    }

    /// As it lengthens, or as it shortens.
    pub(crate) fn going(&self, lengthens: bool) -> OneWay {
        match *self {
            Self::Fluid {
                bore,
                annulus,
                back,
            } => {
                let [working, emptied] = match lengthens {
                    true => [bore, annulus],
                    false => [annulus, bore],
                };
                OneWay {
                    face: Face::Fluid { area: working },
                    against: back * emptied,
                    ratio: working / emptied,
                }
            }
            Self::Electric => OneWay {
                face: Face::Electric,
                against: 0.0,
                ratio: 1.0,
            },
        }
    }
}

/// An actuator as it works one way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct OneWay {
    /// What it pushes with.
    pub(crate) face: Face,
    /// Force of the back pressure against it, none on a motor (N).
    against: f64,
    /// Area filled over area emptied; 1 without fluid (ratio).
    pub(crate) ratio: f64,
}

impl OneWay {
    /// What the source must give for a thrust (N): gauge pressure of fluid (Pa), force of a motor (N);
    /// below 0 where the load pulls.
    pub(crate) fn balances(&self, effort: f64) -> f64 {
        match self.face {
            Face::Fluid { area } => (effort + self.against) / area,
            Face::Electric => effort + self.against,
        }
    }

    /// As [`Self::balances`], never below 0: what a load pulls asks for nothing (Pa, N).
    pub(crate) fn needs(&self, effort: f64) -> f64 {
        self.balances(effort).max(0.0)
    }
}

/// What a thrust is made with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Face {
    /// Fluid on an area (m2).
    Fluid {
        /// The area (m2).
        area: f64,
    },
    /// An electric motor, whose force it is.
    Electric,
}

impl Face {
    /// Thrust (N) of what a source gives: of a gauge pressure of fluid (Pa), of a motor's force (N).
    pub(crate) fn thrust(&self, given: f64) -> f64 {
        match self {
            Self::Fluid { area } => given * area,
            Self::Electric => given,
        }
    }

    /// What a stroke (m) takes: fluid (m3), or itself with a motor (m).
    pub(crate) fn takes(&self, stroke: f64) -> f64 {
        match self {
            Self::Fluid { area } => stroke * area,
            Self::Electric => stroke,
        }
    }
}

#[cfg(test)]
mod tests {
    use gearswing_samples::leg as sample;

    use super::*;

    /// A 30 mm bore with a 12 mm rod by hand: 706.86 and 593.76 mm²; 1 MPa on the one makes 706.86 N, against
    /// 0.1 MPa on the other 59.376 N less. A motor's force is itself, whatever bore and return line say.
    #[test]
    fn a_motor_has_no_area_and_no_return_line() {
        let mut actuator = sample::leg().actuator;
        (actuator.bore, actuator.rod) = (0.030, 0.012);
        let near = |found: f64, wanted: f64| {
            assert!((found / wanted - 1.0).abs() < 1e-4, "{found} {wanted}");
        };
        let mut supply = gearswing_samples::full::full_gear().supply;
        supply.source = Source::ConstantPressure;
        supply.return_pressure = 1e5;
        let fluid = Drive::new(&actuator, &supply).going(true);
        near(fluid.face.thrust(1e6), 706.86);
        near(fluid.face.takes(0.1), 70.686e-6);
        near(fluid.needs(706.86 - 59.376), 1e6);
        near(fluid.ratio, 706.86 / 593.76);
        let back = Drive::new(&actuator, &supply).going(false);
        near(back.face.thrust(1e6), 593.76);
        near(back.balances(-2.0 * 70.686), -70.686 / 593.76e-6);
        assert_eq!(back.needs(-2.0 * 70.686), 0.0);
        supply.source = Source::ElectricActuators;
        for lengthens in [true, false] {
            let motor = Drive::new(&actuator, &supply).going(lengthens);
            assert_eq!(motor.face, Face::Electric);
            assert_eq!(motor.needs(640.0), 640.0);
            assert_eq!(motor.balances(-640.0), -640.0);
            assert_eq!(motor.face.thrust(640.0), 640.0);
            assert_eq!(motor.face.takes(0.1), 0.1);
            assert_eq!(motor.ratio, 1.0);
        }
    }
}
