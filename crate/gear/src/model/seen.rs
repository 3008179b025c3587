//! A leg that stopped on the jacks: what was seen and read.
//!
//! Each "within" is the half-width that the person would stake nineteen times out of twenty: two
//! standard uncertainties (coverage factor 2; JCGM 100:2008, 2.3.5 and 6.2.2).
use serde::{Deserialize, Serialize};

use super::Point;

/// Which way the gear is selected.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Direction {
    /// Retracting.
    #[default]
    Up,
    /// Extending.
    Down,
}

/// A leg that stopped short, with the airplane level on jacks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SeenStop {
    /// Which way the gear was selected.
    #[serde(default, skip_serializing_if = "is_default")]
    pub selected: Direction,
    /// How far the leg came.
    pub how_far: HowFar,
    /// Gauge pressure read at the stop, at the manifold (Pa); absent = not read.
    #[serde(rename = "gauge_pa", default, skip_serializing_if = "Option::is_none")]
    pub pressure: Option<f64>,
    /// The reading holds within this (Pa).
    #[serde(
        rename = "gauge_within_pa",
        default = "pressure_within",
        skip_serializing_if = "is_pressure_within"
    )]
    pub pressure_within: f64,
    /// Voltage read at the battery's posts at the stop (V); absent = not read.
    #[serde(rename = "posts_v", default, skip_serializing_if = "Option::is_none")]
    pub voltage: Option<f64>,
    /// The reading holds within this (V).
    #[serde(
        rename = "posts_within_v",
        default = "voltage_within",
        skip_serializing_if = "is_voltage_within"
    )]
    pub voltage_within: f64,
    /// What the pump or motor did at the stop.
    #[serde(default, skip_serializing_if = "is_default")]
    pub pump: PumpSeen,
    /// Distances in the drawing agree with the airplane within this (m).
    #[serde(
        rename = "drawing_within_m",
        default = "drawing_within",
        skip_serializing_if = "is_drawing_within"
    )]
    pub drawing_within: f64,
    /// Forces and pressures that are worked out hold within this share of the most that the source
    /// makes (ratio).
    #[serde(
        rename = "forces_within",
        default = "forces_within",
        skip_serializing_if = "is_forces_within"
    )]
    pub forces_within: f64,
}

/// How far a leg came.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HowFar {
    /// As a share of the swing.
    Travel {
        /// Travel, 0 down … 1 up (ratio); absent = not entered yet.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        travel: Option<f64>,
        /// It holds within this (ratio).
        #[serde(rename = "travel_within")]
        within: f64,
    },
    /// As the angle swung from down and locked.
    Angle {
        /// Angle, positive toward up (rad); absent = not entered yet.
        #[serde(rename = "angle_rad", default, skip_serializing_if = "Option::is_none")]
        angle: Option<f64>,
        /// It holds within this (rad).
        #[serde(rename = "angle_within_rad")]
        within: f64,
    },
    /// By the actuator: from pin to pin.
    ActuatorPins {
        /// Distance of its two pins (m); absent = not entered yet.
        #[serde(
            rename = "pins_apart_m",
            default,
            skip_serializing_if = "Option::is_none"
        )]
        distance: Option<f64>,
        /// It holds within this (m).
        #[serde(rename = "pins_within_m")]
        within: f64,
    },
    /// By the axle: its distance from a fixed place in the plane of the leg.
    AxleFrom {
        /// The fixed place (m).
        #[serde(rename = "from_m")]
        #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
        from: Point,
        /// Distance of the axle from it (m); absent = not entered yet.
        #[serde(
            rename = "axle_apart_m",
            default,
            skip_serializing_if = "Option::is_none"
        )]
        distance: Option<f64>,
        /// It holds within this (m).
        #[serde(rename = "axle_within_m")]
        within: f64,
    },
}

/// What the pump or motor did while the leg stood.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum PumpSeen {
    /// Nobody noticed.
    #[default]
    NotNoticed,
    /// It ran on.
    Running,
    /// It had stopped.
    Stopped,
}

/// Default of [`SeenStop::pressure_within`] (Pa): 50 psi, a needle of a shop gauge (common practice).
pub const DEFAULT_PRESSURE_WITHIN: f64 = 344_738.0;
/// Default of [`SeenStop::voltage_within`] (V): a hand meter on a busy bus (common practice).
pub const DEFAULT_VOLTAGE_WITHIN: f64 = 0.2;
/// Default of [`SeenStop::drawing_within`] (m): an eighth of an inch, a tape in a wheel well (common
/// practice).
pub const DEFAULT_DRAWING_WITHIN: f64 = 0.003_175;
/// Default of [`SeenStop::forces_within`] (ratio): weights and friction as estimated (common practice).
pub const DEFAULT_FORCES_WITHIN: f64 = 0.10;

impl SeenStop {
    /// Travel that was read (ratio), of a leg that swings by `swing` (rad) either way; `None` where it is not
    /// what was read, or outside of 0 … 1.
    #[must_use]
    pub fn travel(&self, swing: f64) -> Option<f64> {
        let travel = match self.how_far {
            HowFar::Travel { travel, .. } => travel,
            HowFar::Angle { angle, .. } => angle.map(|angle| angle / swing.abs()),
            HowFar::ActuatorPins { .. } | HowFar::AxleFrom { .. } => None,
        };
        travel.filter(|travel| (0.0..=1.0).contains(travel))
    }

    /// A leg that came so far and no reading besides.
    #[must_use]
    pub fn at(how_far: HowFar) -> Self {
        Self {
            selected: Direction::Up,
            how_far,
            pressure: None,
            pressure_within: DEFAULT_PRESSURE_WITHIN,
            voltage: None,
            voltage_within: DEFAULT_VOLTAGE_WITHIN,
            pump: PumpSeen::NotNoticed,
            drawing_within: DEFAULT_DRAWING_WITHIN,
            forces_within: DEFAULT_FORCES_WITHIN,
        }
    }
}

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

macro_rules! defaults {
    ($($name:ident, $is:ident, $value:expr;)*) => {
        $(
            fn $name() -> f64 {
                $value
            }

            fn $is(value: &f64) -> bool {
                *value == $value
            }
        )*
    };
}

defaults! {
    pressure_within, is_pressure_within, DEFAULT_PRESSURE_WITHIN;
    voltage_within, is_voltage_within, DEFAULT_VOLTAGE_WITHIN;
    drawing_within, is_drawing_within, DEFAULT_DRAWING_WITHIN;
    forces_within, is_forces_within, DEFAULT_FORCES_WITHIN;
}
