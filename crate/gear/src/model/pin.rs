//! Pins: radius and friction of each.
use serde::{Deserialize, Serialize};

/// Pins of a leg; a pin without radius or friction turns freely.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Pins {
    /// Trunnion P.
    #[serde(skip_serializing_if = "Pin::is_default")]
    pub trunnion: Pin,
    /// Brace pivot B0.
    #[serde(skip_serializing_if = "Pin::is_default")]
    pub brace_pivot: Pin,
    /// Knee K.
    #[serde(skip_serializing_if = "Pin::is_default")]
    pub knee: Pin,
    /// Brace attach B1 on the leg.
    #[serde(skip_serializing_if = "Pin::is_default")]
    pub leg_attach: Pin,
    /// Actuator mount A0.
    #[serde(skip_serializing_if = "Pin::is_default")]
    pub actuator_mount: Pin,
    /// Actuator attach A1.
    #[serde(skip_serializing_if = "Pin::is_default")]
    pub actuator_attach: Pin,
}

/// Largest coefficient of friction that a pin can be given (ratio).
pub const MOST_PIN_FRICTION: f64 = 1.5;

/// One pin.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Pin {
    /// Radius on which it rubs (m).
    #[serde(rename = "radius_m", skip_serializing_if = "Option::is_none")]
    pub radius: Option<f64>,
    /// Friction coefficient (ratio).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction: Option<f64>,
    /// Couple of friction that stays the same whatever the pin carries, as of a tight bushing or a brake
    /// that drags, against its turning (N·m).
    #[serde(rename = "couple_n_m", skip_serializing_if = "Option::is_none")]
    pub couple: Option<f64>,
}

/// Friction of pins that have stood over that which they run with, where none is given (ratio): from
/// memory.
pub const PIN_BREAK_OUT: f64 = 1.5;

impl Pin {
    /// A pin that rubs with this coefficient on this radius (m).
    #[must_use]
    pub const fn rubbing(radius: f64, friction: f64) -> Self {
        Self {
            radius: Some(radius),
            friction: Some(friction),
            couple: None,
        }
    }

    /// A pin that holds with this couple (N·m).
    #[must_use]
    pub const fn tight(couple: f64) -> Self {
        Self {
            radius: None,
            friction: None,
            couple: Some(couple),
        }
    }

    fn is_default(&self) -> bool {
        *self == Self::default()
    }

    /// The same with so many times the friction.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self {
            friction: self.friction.map(|friction| friction * factor),
            couple: self.couple.map(|couple| couple * factor),
            ..self
        }
    }

    /// Whether its friction is given, none included: radius and coefficient, or a couple.
    #[must_use]
    pub fn is_typed(&self) -> bool {
        self.couple.is_some() || self.radius.is_some() && self.friction.is_some()
    }

    /// Whether anything in it rubs.
    #[must_use]
    pub fn rubs(&self) -> bool {
        self.friction_radius() > 0.0 || self.tightness() > 0.0
    }

    /// Couple of friction whatever it carries, none where none is given (N·m).
    #[must_use]
    pub fn tightness(&self) -> f64 {
        self.couple.unwrap_or(0.0)
    }

    /// Radius of its friction circle (m): friction moment = this × load (dry journal bearing,
    /// M = μ·r·R, any statics text; exact would be r·sin(arctan μ), 0.5 % less at μ = 0.1).
    #[must_use]
    pub fn friction_radius(&self) -> f64 {
        self.radius.unwrap_or(0.0) * self.friction.unwrap_or(0.0)
    }
}

/// A joint of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Joint {
    /// Trunnion P.
    Trunnion,
    /// Brace pivot B0.
    BracePivot,
    /// Knee K.
    Knee,
    /// Brace attach B1 on the leg.
    LegAttach,
    /// Actuator mount A0.
    ActuatorMount,
    /// Actuator attach A1.
    ActuatorAttach,
}

impl Joint {
    /// Every joint, in the order of [`Pins`].
    pub const ALL: [Self; 6] = [
        Self::Trunnion,
        Self::BracePivot,
        Self::Knee,
        Self::LegAttach,
        Self::ActuatorMount,
        Self::ActuatorAttach,
    ];
}

impl Pins {
    /// The same pin at every joint.
    #[must_use]
    pub const fn alike(pin: Pin) -> Self {
        Self {
            trunnion: pin,
            brace_pivot: pin,
            knee: pin,
            leg_attach: pin,
            actuator_mount: pin,
            actuator_attach: pin,
        }
    }

    /// The pins in the order of [`Joint::ALL`].
    #[must_use]
    pub fn all(&self) -> [Pin; 6] {
        [
            self.trunnion,
            self.brace_pivot,
            self.knee,
            self.leg_attach,
            self.actuator_mount,
            self.actuator_attach,
        ]
    }

    /// The pins in the order of [`Joint::ALL`], to be changed.
    pub fn all_mut(&mut self) -> [&mut Pin; 6] {
        [
            &mut self.trunnion,
            &mut self.brace_pivot,
            &mut self.knee,
            &mut self.leg_attach,
            &mut self.actuator_mount,
            &mut self.actuator_attach,
        ]
    }

    /// Whether any pin has friction.
    #[must_use]
    pub fn rub(&self) -> bool {
        self.all().iter().any(Pin::rubs)
    }

    /// Whether the friction of any pin hangs on what it carries.
    #[must_use]
    pub fn rub_by_load(&self) -> bool {
        self.all().iter().any(|pin| pin.friction_radius() > 0.0)
    }

    pub(crate) fn are_default(&self) -> bool {
        *self == Self::default()
    }
}
