//! Attitude, load factor, air and the required clearances.
use serde::{Deserialize, Serialize};

/// The case for which forces are worked out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Conditions {
    /// Load factor n: every weight is multiplied by it (ratio). 1 on jacks.
    #[serde(rename = "load_factor")]
    pub load_factor: f64,
    /// Pitch attitude, nose up positive (rad).
    #[serde(rename = "pitch_rad")]
    pub pitch: f64,
    /// Bank, right wing down positive (rad).
    #[serde(rename = "bank_rad")]
    pub bank: f64,
    /// True airspeed (m/s); 0 on jacks.
    #[serde(rename = "airspeed_m_s")]
    pub airspeed: f64,
    /// Sideslip: wind from the right of the nose positive (rad).
    #[serde(rename = "sideslip_rad")]
    pub sideslip: f64,
    /// Air density (kg/m3); 1.225 at sea level (US Standard Atmosphere 1976).
    #[serde(rename = "air_density_kg_m3")]
    pub air_density: f64,
    /// Airspeed at which the gear is moved in flight, calibrated (m/s): for the load cases in flight.
    #[serde(rename = "gear_speed_m_s", skip_serializing_if = "Option::is_none")]
    pub gear_speed: Option<f64>,
    /// Stall speed VS1 with flaps up, calibrated (m/s): for the air-load case.
    #[serde(rename = "stall_speed_m_s", skip_serializing_if = "Option::is_none")]
    pub stall_speed: Option<f64>,
    /// Pitch of the climb case (rad); absent = [`DEFAULT_CLIMB_PITCH`].
    #[serde(rename = "climb_pitch_rad", skip_serializing_if = "Option::is_none")]
    pub climb_pitch: Option<f64>,
    /// Load factor of the turn and of the air-load case (ratio); absent = [`DEFAULT_TURN_LOAD_FACTOR`].
    #[serde(rename = "turn_load_factor", skip_serializing_if = "Option::is_none")]
    pub turn_load_factor: Option<f64>,
}

/// Pitch of the climb case where none is given (rad): 10°, common practice.
pub const DEFAULT_CLIMB_PITCH: f64 = 10.0 * std::f64::consts::PI / 180.0;

/// Load factor of the turn and air-load cases where none is given (ratio): 2.0, the positive limit
/// maneuvering load factor with flaps fully extended of 14 CFR 23.345(a)(1) before amendment 23-64
/// (from memory); a level turn at 60°. 14 CFR 23.729(a)(1), found, requires retraction at any load
/// factor up to those of 23.345 for the flaps-extended condition.
pub const DEFAULT_TURN_LOAD_FACTOR: f64 = 2.0;

/// Density of air at sea level (kg/m3): US Standard Atmosphere 1976.
pub const SEA_LEVEL_DENSITY: f64 = 1.225;

impl Conditions {
    /// Whether load factor, attitude and air are those of the airplane level on jacks, no wind.
    #[must_use]
    pub fn are_on_jacks(&self) -> bool {
        let jacks = Self::default();
        (self.load_factor, self.pitch, self.bank, self.airspeed)
            == (jacks.load_factor, jacks.pitch, jacks.bank, jacks.airspeed)
    }

    /// The same at no more than 1 g: what a fall without pressure and a lock can count on, on jacks and
    /// in straight flight. A larger load factor set for the forces would flatter both.
    #[must_use]
    pub fn at_most_1_g(&self) -> Self {
        Self {
            load_factor: self.load_factor.min(1.0),
            ..*self
        }
    }

    /// The calibrated airspeed of a true one in this air (m/s): the same dynamic pressure at sea level.
    #[must_use]
    pub fn calibrated(&self, true_airspeed: f64) -> f64 {
        true_airspeed * (self.air_density / SEA_LEVEL_DENSITY).sqrt()
    }
}

impl Default for Conditions {
    /// Level on jacks, no wind, sea level air.
    fn default() -> Self {
        Self {
            load_factor: 1.0,
            pitch: 0.0,
            bank: 0.0,
            airspeed: 0.0,
            sideslip: 0.0,
            air_density: SEA_LEVEL_DENSITY,
            gear_speed: None,
            stall_speed: None,
            climb_pitch: None,
            turn_load_factor: None,
        }
    }
}

/// Required clearances; `None` takes the default marked common practice.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct ClearanceRule {
    /// Tire as fitted new to any structure (m).
    #[serde(rename = "tire_new_m", skip_serializing_if = "Option::is_none")]
    pub tire_new: Option<f64>,
    /// Tire at its grown size to any structure (m).
    #[serde(rename = "tire_grown_m", skip_serializing_if = "Option::is_none")]
    pub tire_grown: Option<f64>,
    /// Every other moving part to any structure (m).
    #[serde(rename = "parts_m", skip_serializing_if = "Option::is_none")]
    pub parts: Option<f64>,
}
