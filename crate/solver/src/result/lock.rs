//! Down lock, as far as geometry and dead weight show it.
use serde::Serialize;

/// What kind of lock the geometry shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum LockKind {
    /// Knee over center, on its stop.
    OverCentre,
    /// The knee folds on from where it stands: another lock must hold it.
    FoldsOn,
    /// Telescoping brace: its latch must hold.
    SlidingBrace,
    /// No brace: actuator or another lock must hold.
    NoBrace,
}

/// Down lock of one leg.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Lock {
    /// Kind of lock.
    pub kind: LockKind,
    /// Offset of the knee from the line B0–B1 at down (m): positive over center.
    #[serde(rename = "over_centre_m")]
    pub over_centre: Option<f64>,
    /// Angle of the knee past the straight line at down (rad): positive over center.
    #[serde(rename = "past_centre_rad")]
    pub past_centre: Option<f64>,
    /// What a load straight up at the axle (the ground's) does to the knee.
    pub ground_load: Option<AxleLoadEffect>,
    /// Offset of the knee less the play given, the play taken wholly against the lock (m).
    #[serde(rename = "over_centre_less_play_m")]
    pub over_centre_less_play: Option<f64>,
    /// What loads at the axle in the directions of this view do to the knee; empty without an
    /// over-center knee.
    pub axle_loads: Vec<AxleLoad>,
    /// Push at the knee, square to the line B0–B1 in the unlocking direction, that takes the knee
    /// off its stop against the dead weight and the springs that the leg has, without pressure (N);
    /// negative: they unlock it.
    #[serde(rename = "knee_push_n")]
    pub knee_push: Option<f64>,
    /// The same with the air load at the airspeed at which the gear is moved (N); absent where none is
    /// given or no air load works.
    #[serde(rename = "knee_push_at_gear_speed_n")]
    pub knee_push_at_gear_speed: Option<f64>,
    /// Length of the telescoping brace at down less its nearer end length (m).
    #[serde(rename = "end_gap_m")]
    pub end_gap: Option<f64>,
}

/// What a load at the axle does to an over-center knee.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AxleLoadEffect {
    /// Push into the stop at the knee for each newton at the axle (ratio); negative: out of the lock.
    pub into_lock: f64,
}

/// Direction of a load at the axle; names are common practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AxlePush {
    /// Aft, from rolling drag, brakes and spin-up at touchdown.
    DragAft,
    /// Forward, as the leg springs back after spin-up.
    SpringBackForward,
    /// Sideways, toward the right wing.
    SideRight,
    /// Sideways, toward the left wing.
    SideLeft,
}

/// What a load at the axle in one direction does to an over-center knee.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AxleLoad {
    /// Direction.
    pub direction: AxlePush,
    /// Its effect.
    pub effect: AxleLoadEffect,
}
