//! What a leg has out of the plane in which it is drawn.
use serde::{Deserialize, Serialize};

/// Skew of trunnion and wheel to the drawn plane, room along the trunnion, and which parts of the
/// leg stand in the wheel's way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct OutOfPlane {
    /// Angle between the trunnion axis and the normal of the drawn plane, the largest in any
    /// direction (rad); absent = not measured.
    #[serde(rename = "trunnion_skew_rad", skip_serializing_if = "Option::is_none")]
    pub trunnion_skew: Option<f64>,
    /// Angle by which the wheel's spin axis at gear down leaves the drawn plane (front view) or its
    /// normal (side view) (rad); absent = not measured.
    #[serde(rename = "wheel_skew_rad", skip_serializing_if = "Option::is_none")]
    pub wheel_skew: Option<f64>,
    /// Least room along the trunnion axis from the middle of the tire to the nearest thing on the
    /// viewer's side, anywhere on the wheel's way: ahead in a front view, to the left in a side view
    /// (m); absent = not measured.
    #[serde(rename = "room_near_m", skip_serializing_if = "Option::is_none")]
    pub room_near: Option<f64>,
    /// The same on the other side: behind in a front view, to the right in a side view (m).
    #[serde(rename = "room_far_m", skip_serializing_if = "Option::is_none")]
    pub room_far: Option<f64>,
    /// Parts of its own leg against which the tire is checked.
    #[serde(skip_serializing_if = "OwnLeg::is_by_view")]
    pub own_leg: OwnLeg,
}

impl OutOfPlane {
    /// Whether a skew is given that takes something off the clearances of the wheel.
    #[must_use]
    pub fn is_skewed(&self) -> bool {
        let given = [self.trunnion_skew, self.wheel_skew];
        given.into_iter().flatten().any(|skew| skew != 0.0)
    }

    pub(crate) fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// Parts of its own leg against which a tire is checked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum OwnLeg {
    /// Front view: all of them. Side view: none, for there they stand beside the wheel.
    #[default]
    ByView,
    /// Leg, brace and actuator; in a side view not the sliding part, which holds the axle beside the
    /// wheel.
    All,
    /// The leg only: brace and actuator pass beside the tire.
    Leg,
    /// Brace and actuator only: the leg stands beside the tire.
    Brace,
    /// None of them.
    None,
}

impl OwnLeg {
    fn is_by_view(&self) -> bool {
        matches!(self, Self::ByView)
    }
}
