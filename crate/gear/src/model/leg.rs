//! One leg with all its parts.
use serde::{Deserialize, Serialize};

use super::{
    Actuator, Brace, Drive, FallData, LineOrifice, Obstacle, OutOfPlane, Pins, Point, SeenStop,
    Spring, Strut, Wheel,
};

/// The plane in which a leg moves and is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum View {
    /// Seen from the airplane's left, x points aft: the wheel is a disc.
    Side,
    /// Seen from ahead, x points to the left wing: the wheel is a rounded rectangle.
    Front,
}

/// One leg, given at gear down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Leg {
    /// Name of the leg, as "Right main".
    pub name: String,
    /// Plane of the swing.
    pub view: View,
    /// Trunnion P, the pivot of the leg (m).
    #[serde(rename = "trunnion_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub trunnion: Point,
    /// Skew of trunnion and wheel to that plane, and room beside it.
    #[serde(default, skip_serializing_if = "OutOfPlane::is_default")]
    pub out_of_plane: OutOfPlane,
    /// Swing from down and locked to up, counter-clockwise positive (rad).
    #[serde(rename = "swing_up_rad")]
    pub swing_up: f64,
    /// The part of the leg that only turns.
    pub body: LegBody,
    /// Shock strut: axle and shortening.
    pub strut: Strut,
    /// Wheel and tire.
    pub wheel: Wheel,
    /// Drag or side brace.
    pub brace: Brace,
    /// Retract actuator.
    pub actuator: Actuator,
    /// Lines, switches and what else drives the leg.
    #[serde(default, skip_serializing_if = "Drive::is_plain")]
    pub drive: Drive,
    /// Name of the one drive (cylinder, shaft, central bellcrank) that moves this leg together with
    /// the others that give the same name; empty = an actuator of its own. The drive is the actuator
    /// of the first leg that names it; bore, rod and lengths of the others' actuators do not count,
    /// their two pins say where the rod of each pushes.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub shared_drive: String,
    /// On a shared drive: movement of this leg's attach point along its rod for each movement of the
    /// drive; 1 where both move alike (ratio).
    #[serde(default = "one", skip_serializing_if = "is_one")]
    pub drive_ratio: f64,
    /// Drag areas of the leg in the wind.
    #[serde(default, skip_serializing_if = "LegAir::is_still")]
    pub air: LegAir,
    /// What only free fall and lock need.
    #[serde(default, skip_serializing_if = "FallData::is_empty")]
    pub fall: FallData,
    /// Springs on the leg and its brace.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub springs: Vec<Spring>,
    /// Pins and their friction.
    #[serde(default, skip_serializing_if = "Pins::are_default")]
    pub pins: Pins,
    /// Structure around the leg.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub well: Vec<Obstacle>,
    /// How the leg stopped short on the jacks, to be explained.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seen_stop: Option<SeenStop>,
}

fn one() -> f64 {
    1.0
}

fn is_one(value: &f64) -> bool {
    *value == 1.0
}

impl Leg {
    /// The restrictor through which the pump's way down empties the actuator: that of the line, or that
    /// of the fall, which stands in for it.
    #[must_use]
    pub fn orifice_down(&self) -> Option<LineOrifice> {
        self.drive.orifice_down.or_else(|| self.return_restrictor())
    }

    /// The restrictor through which a fall empties it: its own, or that of the line, which the fluid
    /// passes without pressure as well.
    #[must_use]
    pub fn orifice_of_fall(&self) -> Option<LineOrifice> {
        self.return_restrictor().or(self.drive.orifice_down)
    }

    /// The leg as it falls on an electric actuator without power, which has no fluid and holds with what
    /// drives it back; one of which that is not known is taken as released.
    #[must_use]
    pub fn without_power(&self) -> Self {
        let mut leg = self.clone();
        let back_drive = self.back_drive().unwrap_or(0.0);
        leg.actuator.seal_friction = Some(back_drive);
        // what drives it back from standing still is what is given
        leg.actuator.seal_break_out = Some(back_drive);
        leg.drive.orifice_down = None;
        leg.fall.return_orifice = None;
        leg
    }

    /// Force that drives its electric actuator back without power (N).
    #[must_use]
    pub fn back_drive(&self) -> Option<f64> {
        self.drive.electric.and_then(|motor| motor.back_drive)
    }

    fn return_restrictor(&self) -> Option<LineOrifice> {
        let hole = self.fall.return_orifice?;
        let discharge = self.fall.discharge();
        Some(LineOrifice { hole, discharge })
    }
}

/// The upper leg: everything that turns about the trunnion and does not slide.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LegBody {
    /// Outline, a closed polygon at gear down (m); empty = not checked and not drawn.
    #[serde(rename = "outline_m", default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", schemars(with = "Vec<[f64; 2]>"))]
    pub outline: Vec<Point>,
    /// Mass without wheel and sliding parts (kg).
    #[serde(rename = "mass_kg")]
    pub mass: f64,
    /// Center of that mass at gear down (m).
    #[serde(rename = "centre_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub centre: Point,
}

/// Drag areas (drag coefficient × reference area), kept the same through the swing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct LegAir {
    /// Drag area of wheel and tire, acting at the axle (m2).
    #[serde(rename = "wheel_drag_area_m2")]
    pub wheel_drag_area: f64,
    /// Drag area of the leg, acting halfway between trunnion and axle (m2).
    #[serde(rename = "leg_drag_area_m2")]
    pub leg_drag_area: f64,
}

impl LegAir {
    fn is_still(&self) -> bool {
        *self == Self::default()
    }
}
