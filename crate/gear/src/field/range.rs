//! What each number of a model may be, in its own SI unit.
use crate::model::MOST_PIN_FRICTION;
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, TAU};

/// Least and largest value allowed, both included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Least.
    pub min: f64,
    /// Largest.
    pub max: f64,
    /// Least and largest hold for the size; the sign is free.
    pub either_way: bool,
}

impl Range {
    /// The number that is held against least and largest.
    #[must_use]
    pub fn measure(self, value: f64) -> f64 {
        if self.either_way { value.abs() } else { value }
    }

    /// Whether a number may be used; one that is not finite may not.
    #[must_use]
    pub fn holds(self, value: f64) -> bool {
        (self.min..=self.max).contains(&self.measure(value))
    }
}

const fn range(min: f64, max: f64) -> Range {
    Range {
        min,
        max,
        either_way: false,
    }
}

/// Coordinates (m): the airplane lies within 100 m of its origin.
pub(super) const COORDINATE: Range = range(-100.0, 100.0);
/// Sizes of parts (m): 0.1 mm to 20 m.
pub(super) const SIZE: Range = range(1e-4, 20.0);
/// Sizes that may be nothing (m).
pub(super) const SIZE_OR_NONE: Range = range(0.0, 20.0);
/// Masses (kg).
pub(super) const MASS: Range = range(0.0, 10_000.0);
/// Swing (rad), either way; zero and over a turn make no arc.
pub(super) const SWING: Range = Range {
    either_way: true,
    ..range(0.01, TAU)
};
/// Lean of the wheel (rad).
pub(super) const LEAN: Range = range(-FRAC_PI_2, FRAC_PI_2);
/// Skew of trunnion or wheel to the drawn plane (rad): past an eighth of a turn it is another plane.
pub(super) const SKEW: Range = range(0.0, FRAC_PI_4);
/// Seal friction (N).
pub(super) const FRICTION: Range = range(0.0, 1e6);
/// Pitch of the thread of a rod end (m).
pub(super) const THREAD_PITCH: Range = range(1e-4, 0.02);
/// Drag areas (m2).
pub(super) const AREA: Range = range(0.0, 100.0);
/// Load factor (ratio).
pub(super) const LOAD_FACTOR: Range = range(-10.0, 10.0);
/// Pitch and sideslip (rad).
pub(super) const TILT: Range = range(-FRAC_PI_2, FRAC_PI_2);
/// Bank (rad).
pub(super) const BANK: Range = range(-PI, PI);
/// Airspeed (m/s).
pub(super) const AIRSPEED: Range = range(0.0, 340.0);
/// Air density (kg/m3).
pub(super) const DENSITY: Range = range(0.0, 2.0);
/// Available pressure (Pa).
pub(super) const PRESSURE: Range = range(1e3, 1e8);
/// Back pressure (Pa).
pub(super) const BACK_PRESSURE: Range = range(0.0, 1e8);
/// Margin (ratio).
pub(super) const MARGIN: Range = range(0.0, 0.9);
/// Ratio of a movement to that of the drive (ratio).
pub(super) const RATIO: Range = range(0.01, 100.0);
/// Density of the fluid (kg/m3).
pub(super) const FLUID_DENSITY: Range = range(500.0, 2000.0);
/// Moment of inertia (kg·m2); 0 is a point mass.
pub(super) const INERTIA: Range = range(0.0, 1e5);
/// Diameter of an orifice (m).
pub(super) const ORIFICE: Range = range(1e-4, 0.1);
/// Discharge coefficient (ratio).
pub(super) const DISCHARGE: Range = range(0.1, 1.0);
/// Play (m).
pub(super) const PLAY: Range = range(0.0, 0.1);
/// Travel (ratio).
pub(super) const TRAVEL: Range = range(0.0, 1.0);
/// Clearance asked for (m).
pub(super) const CLEARANCE: Range = range(0.0, 1.0);
/// Flow of a pump (m3/s): 0.06 mL/min to 60 m3/min.
pub(super) const FLOW: Range = range(1e-9, 1.0);
/// Voltages (V).
pub(super) const VOLTAGE: Range = range(0.1, 1_000.0);
/// Resistances (Ω).
pub(super) const RESISTANCE: Range = range(0.0, 100.0);
/// Currents (A).
pub(super) const CURRENT: Range = range(1e-3, 10_000.0);
/// Currents without load (A).
pub(super) const IDLE_CURRENT: Range = range(0.0, 10_000.0);
/// Fluid of one stroke of a hand pump (m3).
pub(super) const STROKE_VOLUME: Range = range(1e-8, 1e-2);
/// Time of one stroke of a hand pump (s).
pub(super) const STROKE_TIME: Range = range(0.05, 600.0);
/// Area of a strut jack (m2).
pub(super) const JACK_AREA: Range = range(1e-7, 1.0);
/// Gas of an accumulator (m3).
pub(super) const GAS_VOLUME: Range = range(1e-6, 0.1);
/// Speed of an actuator (m/s).
pub(super) const STROKE_SPEED: Range = range(1e-5, 10.0);
/// Force that stops an actuator (N).
pub(super) const STALL_FORCE: Range = range(1.0, 1e7);

/// Pin radius (m); none = no friction.
pub(super) const PIN_RADIUS: Range = range(0.0, 0.5);
/// Friction coefficient (ratio).
pub(super) const FRICTION_COEFFICIENT: Range = range(0.0, MOST_PIN_FRICTION);
/// Couple of friction of a pin (N·m).
pub(super) const PIN_COUPLE: Range = range(0.0, 1e5);
/// Friction of what has stood over that which it runs with, and how many times its friction a leg must
/// fall against (ratio).
pub(super) const BREAK_OUT: Range = range(1.0, 5.0);
pub(super) const FRICTION_TIMES: Range = BREAK_OUT;
/// Rate of a linear spring (N/m).
pub(super) const SPRING_RATE: Range = range(0.0, 1e7);
/// Force of a linear spring, either way (N).
pub(super) const SPRING_FORCE: Range = range(-1e6, 1e6);
/// Push of a gas spring (N).
pub(super) const GAS_FORCE: Range = range(0.1, 1e6);
/// Polytropic exponent (ratio): 1 isothermal to 5/3, a monatomic gas without heat exchange.
pub(super) const EXPONENT: Range = range(1.0, 5.0 / 3.0);
/// Rate of a torsion spring (N·m/rad).
pub(super) const TORSION_RATE: Range = range(0.0, 1e6);
/// Moment of a torsion spring, either way (N·m).
pub(super) const MOMENT: Range = range(-1e5, 1e5);
/// Stall speed (m/s).
pub(super) const STALL_SPEED: Range = range(1.0, 340.0);

/// How well a share, of travel or of force, is known (ratio).
pub(super) const SHARE_WITHIN: Range = range(1e-4, 1.0);
/// Angle swung (rad).
pub(super) const ANGLE: Range = range(0.0, TAU);
/// How well an angle is known (rad).
pub(super) const ANGLE_WITHIN: Range = range(1e-4, TAU);
/// How well a length is known (m): a tenth of a millimeter to a meter.
pub(super) const LENGTH_WITHIN: Range = range(1e-4, 1.0);
/// How well a pressure is known (Pa).
pub(super) const PRESSURE_WITHIN: Range = range(1e2, 1e8);
/// How well a voltage is known (V).
pub(super) const VOLTAGE_WITHIN: Range = range(1e-3, 100.0);
