//! Fall of a leg without pressure, from up to its down lock.
use serde::Serialize;

use super::Place;

/// Fall of one leg from rest at up, the actuator without pressure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fall {
    /// How it ends.
    pub outcome: FallOutcome,
    /// Net moment about the trunnion at up after the leg has stood there (N·m): positive toward down.
    /// Friction is taken as holding the leg back, that of what has stood. Absent where the pins bind,
    /// so that no moment starts it.
    #[serde(rename = "moment_at_up_n_m")]
    pub moment_at_up: Option<f64>,
    /// Least net moment on the way, damping left out: where it is negative, only speed carries the
    /// leg on. The last way of a straightening knee is in `least_knee_push` instead.
    pub least_moment: Option<LeastMoment>,
    /// Least net push at the knee into the lock, while the knee is nearly straight.
    pub least_knee_push: Option<LeastKneePush>,
    /// Up to which airspeed it reaches the lock.
    pub airspeed: FallAirspeed,
    /// Whether it does so at the airspeed at which the gear is moved; absent where none is given, no air
    /// load works, or it does not in still air.
    pub at_gear_speed: Option<bool>,
    /// The friction given, of seals and pins, times this just stops it short (ratio); absent when none is
    /// given, when the leg falls short as it is, or beyond `friction_factor_tried`.
    pub friction_factor: Option<f64>,
    /// So many times the friction given, and less, does not stop it short (ratio); absent when that is not
    /// so or none is given.
    pub friction_factor_tried: Option<f64>,
    /// Seal friction that just stops it short, all else as given (N); absent when it falls short as
    /// it is or nothing up to 1,000,000 N does.
    #[serde(rename = "seal_friction_limit_n")]
    pub seal_friction_limit: Option<f64>,
    /// The fall against so many times the friction given as is required; absent when none is given or it
    /// falls short as it is.
    pub required: Option<FallRequired>,
    /// Where it is hardest to start, let go anywhere on the way after it has stood there; absent when
    /// no friction holds it anywhere.
    pub start: Option<FallStart>,
    /// What is missing where it comes to rest short of its lock, or does not start.
    pub short: Option<FallShort>,
    /// What the actuator does without power.
    pub actuator: Unpowered,
    /// Work and energy up to the end of the fall.
    pub energy: FallEnergy,
    /// Where the moment of inertia of the upper leg comes from.
    pub inertia: InertiaBasis,
}

impl Fall {
    /// Whether it reaches the lock.
    #[must_use]
    pub fn reaches_lock(&self) -> bool {
        matches!(self.outcome, FallOutcome::ReachesLock(_))
    }

    /// Whether it is known not to come down.
    #[must_use]
    pub fn fails(&self) -> bool {
        !self.reaches_lock() && !matches!(self.outcome, FallOutcome::NotFollowed { .. })
    }

    /// Whether it reaches the lock by its speed alone: somewhere on the way nothing pushes it on, and a
    /// leg slowed or stopped there stays there.
    #[must_use]
    pub fn by_speed_alone(&self) -> bool {
        let moment = self.least_moment.is_some_and(|least| least.moment <= 0.0);
        let push = self.least_knee_push.is_some_and(|least| least.push <= 0.0);
        self.reaches_lock() && (moment || push)
    }
}

/// A fall against more friction than is given.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FallRequired {
    /// So many times the running friction given (ratio).
    pub times: f64,
    /// Whether it reaches the lock.
    pub reaches: bool,
}

/// The place of the way where a leg that is let go has least to start it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FallStart {
    /// What closes the leg over what the friction of seals and pins that have stood holds against it
    /// (ratio): below 1 it stays where it is let go.
    pub ratio: f64,
    /// Where.
    pub place: Place,
    /// From where around that place it stays; absent when it stays nowhere.
    pub stays_from: Option<Place>,
    /// Up to where.
    pub stays_to: Option<Place>,
}

/// What is missing to the lock.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FallShort {
    /// The moment that is missing at most from there to the lock, as a share of the largest moment of
    /// the weights (ratio); absent where pins bind on that way, so that no moment is enough.
    pub missing_share: Option<f64>,
    /// Distance of the axle from where it is at the stop (m).
    #[serde(rename = "from_stop_m")]
    pub from_stop: f64,
}

/// What an actuator does without power.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Unpowered {
    /// It pushes its fluid out, without pressure.
    Fluid,
    /// The leg drives the electric actuator back.
    DrivenBack,
    /// The electric actuator is taken as released: what drives it back is not known.
    Released,
}

/// How a fall ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum FallOutcome {
    /// It comes onto its stop at gear down, an over-center knee past the straight line.
    ReachesLock(Arrival),
    /// It comes to rest on the way.
    StopsShort {
        /// Where.
        place: Place,
        /// When, after it is let go (s).
        #[serde(rename = "time_s")]
        time: f64,
    },
    /// It does not leave up by itself.
    StaysUp,
    /// It still moves after the longest time that is followed.
    Creeps {
        /// Where it is then.
        place: Place,
        /// That time (s).
        #[serde(rename = "time_s")]
        time: f64,
    },
    /// Its motion could not be worked out further: nothing is known of how it ends.
    NotFollowed {
        /// Where the calculation stopped.
        place: Place,
        /// When, after the leg is let go (s).
        #[serde(rename = "time_s")]
        time: f64,
    },
}

/// Arrival on the stop.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Arrival {
    /// When, after the leg is let go (s).
    #[serde(rename = "time_s")]
    pub time: f64,
    /// Rate of the swing there, toward down positive (rad/s); an over-center leg comes onto its
    /// stop from past down: negative.
    #[serde(rename = "swing_rate_rad_s")]
    pub swing_rate: f64,
    /// Speed of the axle there (m/s).
    #[serde(rename = "axle_speed_m_s")]
    pub axle_speed: f64,
    /// Speed of the knee there (m/s).
    #[serde(rename = "knee_speed_m_s")]
    pub knee_speed: Option<f64>,
    /// Largest speed of the axle on the way (m/s).
    #[serde(rename = "largest_axle_speed_m_s")]
    pub largest_axle_speed: f64,
}

/// The least net moment on the way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LeastMoment {
    /// Net moment about the trunnion (N·m): positive toward down.
    #[serde(rename = "moment_n_m")]
    pub moment: f64,
    /// Where.
    pub place: Place,
}

/// The least net push at a nearly straight knee.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LeastKneePush {
    /// Net push at the knee along its way (N): positive into the lock.
    #[serde(rename = "push_n")]
    pub push: f64,
    /// Where.
    pub place: Place,
}

/// Airspeed and the fall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum FallAirspeed {
    /// No air load works on the leg in its plane.
    NoAirLoad,
    /// It does not reach the lock in still air.
    NotInStillAir,
    /// It reaches the lock at every true airspeed from still air up to this one, the first at which it
    /// fails, to 0.1 %.
    UpTo {
        /// True airspeed (m/s).
        #[serde(rename = "airspeed_m_s")]
        airspeed: f64,
    },
    /// It does so at every airspeed that was tried.
    AtEvery {
        /// The highest one tried (m/s).
        #[serde(rename = "tried_m_s")]
        tried: f64,
    },
}

/// Work done on a leg up to the end of its fall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FallEnergy {
    /// Work of the weights (J).
    #[serde(rename = "weights_j")]
    pub weights: f64,
    /// Work of the springs (J).
    #[serde(rename = "springs_j")]
    pub springs: f64,
    /// Work of the air (J).
    #[serde(rename = "air_j")]
    pub air: f64,
    /// Taken by friction (J).
    #[serde(rename = "friction_j")]
    pub friction: f64,
    /// Taken by the return orifice (J).
    #[serde(rename = "orifice_j")]
    pub orifice: f64,
    /// Energy of motion at the end (J).
    #[serde(rename = "motion_j")]
    pub motion: f64,
    /// What is missing from the balance, as a share of the work of weights, springs and air (ratio).
    pub residual: f64,
}

/// Where a moment of inertia comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum InertiaBasis {
    /// Given.
    Given,
    /// Uniform plate of the outline.
    UniformPlate,
    /// Uniform rod from the trunnion through the center of mass to as far beyond it.
    UniformRod,
}
