//! The numbers at the place of the path that is shown.
use gearswing_gear::model::Vector;
use gearswing_solver::clearance::{PoseClearance, clearance_at};
use gearswing_solver::kinematics::Pose;
use gearswing_solver::numeric::sort_by;
use gearswing_solver::result::{
    ForcePeak, Motion, PairClearance, Reactions, Requirement, Station, StationForce,
    governing_order,
};
use gearswing_solver::tires::TireSizes;

use crate::state::Good;

/// A place this near to a station, as a share of the way to the next one, is on it.
const ON_STATION: f64 = 1e-6;

/// A clearance at the place shown, with what is asked for there.
#[derive(Clone, Copy, Debug)]
pub(crate) struct NowClearance {
    pub(crate) at: PoseClearance,
    pub(crate) requirement: Requirement,
}

impl NowClearance {
    /// Clearance less requirement (m).
    pub(crate) fn spare(&self) -> f64 {
        self.at.tightest.clearance - self.requirement.clearance
    }
}

/// Everything at one place of the path.
#[derive(Clone, Debug)]
pub(crate) struct Now {
    pub(crate) pose: Pose,
    /// Clearances: contacts first, the deepest before all, then the one with the least to spare;
    /// the order in which the solver finds the governing one.
    pub(crate) clearances: Vec<NowClearance>,
    /// The clearances of this place could not be worked out: there are none, and it is not clear.
    pub(crate) unresolved: bool,
    /// Actuator force and pressure to retract; absent where there is none.
    pub(crate) retract: Option<NowForce>,
    /// The same to extend.
    pub(crate) extend: Option<NowForce>,
    /// Forces while the leg is held here; absent where a station beside has none.
    pub(crate) loads: Option<StationForce>,
    /// Moment arm of the actuator (m).
    pub(crate) moment_arm: Option<f64>,
    /// Angle at the knee away from the straight line (rad).
    pub(crate) fold: Option<f64>,
    /// Transmission angle (rad).
    pub(crate) transmission: Option<f64>,
}

/// Force and pressure at one place in one motion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct NowForce {
    /// Thrust of the fluid in the direction of the motion (N); negative = the leg is held back.
    pub(crate) effort: f64,
    /// Pressure needed (Pa).
    pub(crate) pressure: f64,
}

/// Everything of a leg at `progress`; `None` when it cannot stand there.
pub(crate) fn now(good: &Good, progress: f64) -> Option<Now> {
    let pose = good.pose(progress)?;
    let progress = pose.place.progress;
    let sizes = TireSizes::of(&good.leg.wheel.tire);
    let at_pose = clearance_at(&good.leg, &sizes, &pose);
    let unresolved = at_pose.is_err();
    let mut clearances: Vec<NowClearance> = at_pose
        .into_iter()
        .flatten()
        .filter_map(|at| {
            let pair = pair_of(&good.result.clearance.pairs, &at)?;
            Some(NowClearance {
                at: governed(pair, at),
                requirement: pair.requirement,
            })
        })
        .collect();
    let of = |one: &NowClearance| (one.at.tightest.clearance, one.spare());
    sort_by(&mut clearances, |a, b| governing_order(of(a), of(b)));
    let (a, b, share) = neighbours(&good.result.stations, progress)?;
    let between = |f: &dyn Fn(&Station) -> Option<f64>| match (f(a), f(b)) {
        (Some(a), Some(b)) => Some(a + (b - a) * share),
        _ => None,
    };
    let loads = match (&a.force, &b.force) {
        (Some(a), Some(b)) => Some(between_forces(a, b, share)),
        // on a station next to one without force
        (Some(a), None) if share < ON_STATION => Some(*a),
        (None, Some(b)) if share > 1.0 - ON_STATION => Some(*b),
        _ => None,
    };
    let force = |motion, peak: Option<ForcePeak>| {
        // at the very place of the worst force its own number stands, not one worked out anew
        let peak = peak.filter(|peak| peak.place.progress == progress);
        let worst = peak.map(|peak| (peak.pressure, peak.effort));
        let (pressure, effort) = worst.or_else(|| loads?.needed(motion))?;
        Some(NowForce { effort, pressure })
    };
    let worst = &good.result.force;
    Some(Now {
        clearances,
        unresolved,
        retract: force(Motion::Retract, worst.peak),
        extend: force(Motion::Extend, worst.extend_peak),
        loads,
        moment_arm: pose.moment_arm(),
        fold: between(&|s| s.fold),
        transmission: between(&|s| s.transmission),
        pose,
    })
}

/// Forces between two stations, each part by part in proportion.
fn between_forces(a: &StationForce, b: &StationForce, share: f64) -> StationForce {
    let number = |f: fn(&StationForce) -> f64| f(a) + (f(b) - f(a)) * share;
    let maybe = |f: fn(&StationForce) -> Option<f64>| Some(f(a)? + (f(b)? - f(a)?) * share);
    let vector = |a: Vector, b: Vector| a + (b - a) * share;
    let both = |a: &Reactions, b: &Reactions| {
        let any = |f: fn(&Reactions) -> Option<Vector>| Some(vector(f(a)?, f(b)?));
        Reactions {
            trunnion: vector(a.trunnion, b.trunnion),
            brace_pivot: any(|r| r.brace_pivot),
            knee: any(|r| r.knee),
            brace_attach: any(|r| r.brace_attach),
            mount: vector(a.mount, b.mount),
            actuator_attach: vector(a.actuator_attach, b.actuator_attach),
        }
    };
    let moving = |motion| Some(both(a.reactions_in(motion)?, b.reactions_in(motion)?));
    StationForce {
        holding: number(|f| f.holding),
        retract_effort: maybe(|f| f.retract_effort),
        extend_effort: maybe(|f| f.extend_effort),
        retract_pressure: maybe(|f| f.retract_pressure),
        extend_pressure: maybe(|f| f.extend_pressure),
        reactions: both(&a.reactions, &b.reactions),
        retract_reactions: moving(Motion::Retract),
        extend_reactions: moving(Motion::Extend),
        retract_binds: a.retract_binds.or(b.retract_binds),
        extend_binds: a.extend_binds.or(b.extend_binds),
    }
}

fn pair_of<'p>(pairs: &'p [PairClearance], at: &PoseClearance) -> Option<&'p PairClearance> {
    pairs
        .iter()
        .find(|pair| pair.obstacle == at.obstacle && pair.part == at.part && pair.tire == at.tire)
}

/// At the very place of a finding its own number stands, not one worked out anew.
fn governed(pair: &PairClearance, mut at: PoseClearance) -> PoseClearance {
    if pair.tightest.place.progress == at.tightest.place.progress {
        at.tightest = pair.tightest;
    }
    at
}

/// Stations on both sides of a place, and the share of the way between them (ratio).
pub(crate) fn neighbours(stations: &[Station], progress: f64) -> Option<(&Station, &Station, f64)> {
    let above = stations.partition_point(|s| s.progress < progress);
    let b = stations.get(above).or(stations.last())?;
    let a = stations.get(above.saturating_sub(1))?;
    let width = b.progress - a.progress;
    let share = if width > 0.0 {
        ((progress - a.progress) / width).clamp(0.0, 1.0)
    } else {
        0.0
    };
    Some((a, b, share))
}
