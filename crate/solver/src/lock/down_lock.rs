//! What holds a leg down, each kind with the figures that belong to it.
use crate::result::{AxleLoad, AxleLoadEffect, Lock, LockKind};

/// What holds a leg down: no kind is without its figures, so that none of them can be read as nought.
#[derive(Clone, Debug, PartialEq)]
pub enum DownLock {
    /// No brace: actuator or another lock must hold.
    NoBrace,
    /// Telescopic brace: its latch must hold.
    SlidingBrace {
        /// Length at down less the nearer end length (m); 0 at its end.
        end_gap: f64,
    },
    /// The knee folds on from where it stands: another lock must hold it.
    FoldsOn(Centre),
    /// Knee over center, on its stop.
    OverCentre {
        /// Where the knee stands.
        centre: Centre,
        /// Offset less the play given, the play taken wholly against the lock (m); absent where none is
        /// given.
        less_play: Option<f64>,
        /// What acts on the knee; absent where the leg moves without it, so that nothing presses it
        /// against its stop.
        knee: Option<LoadedKnee>,
    },
}

/// Where a knee stands against the line B0–B1 at down, positive over center.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Centre {
    /// Offset from the line (m).
    pub offset: f64,
    /// Angle past the straight line (rad).
    pub past: f64,
}

/// What acts on an over-center knee at down.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadedKnee {
    /// What a load straight up at the axle (the ground's) does to it.
    pub ground_load: AxleLoadEffect,
    /// What level loads at the axle do to it.
    pub axle_loads: Vec<AxleLoad>,
    /// Push that takes it off its stop against the dead weight and the springs (N); negative: they
    /// unlock it.
    pub push: f64,
    /// The same with the air load at the airspeed at which the gear is moved (N); absent where none is
    /// given or no air load works.
    pub push_at_gear_speed: Option<f64>,
}

impl DownLock {
    /// Which kind it is.
    #[must_use]
    pub fn kind(&self) -> LockKind {
        match self {
            Self::NoBrace => LockKind::NoBrace,
            Self::SlidingBrace { .. } => LockKind::SlidingBrace,
            Self::FoldsOn(_) => LockKind::FoldsOn,
            Self::OverCentre { .. } => LockKind::OverCentre,
        }
    }

    /// As the result has it.
    #[must_use]
    pub fn told(&self) -> Lock {
        let mut lock = Lock {
            kind: self.kind(),
            over_centre: None,
            past_centre: None,
            over_centre_less_play: None,
            axle_loads: Vec::new(),
            ground_load: None,
            knee_push: None,
            knee_push_at_gear_speed: None,
            end_gap: None,
        };
        match self {
            Self::NoBrace => {}
            Self::SlidingBrace { end_gap } => lock.end_gap = Some(*end_gap),
            Self::FoldsOn(centre) => lock.stands(centre),
            Self::OverCentre {
                centre,
                less_play,
                knee,
            } => {
                lock.stands(centre);
                lock.over_centre_less_play = *less_play;
                if let Some(knee) = knee {
                    lock.axle_loads.clone_from(&knee.axle_loads);
                    lock.ground_load = Some(knee.ground_load);
                    lock.knee_push = Some(knee.push);
                    lock.knee_push_at_gear_speed = knee.push_at_gear_speed;
                }
            }
        }
        lock
    }
}

impl Lock {
    fn stands(&mut self, centre: &Centre) {
        self.over_centre = Some(centre.offset);
        self.past_centre = Some(centre.past);
    }
}
