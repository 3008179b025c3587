//! Thrust by virtual work, pressures, and the worst places of the stroke.
use super::available::{Available, margin};
use super::balance::{Balance, Unknown};
use super::drive::areas;
use super::friction::{PinLoads, Pinned};
use super::leg_loads::{LegLoads, components};
use super::warm::Warm;
use super::{BodyLoads, Loads, spring_loads};
use crate::kinematics::{Linkage, Pose, Rates};
use crate::model::{Joint, Leg, Supply, Vector};
use crate::result::{
    Bind, Force, ForcePeak, LoadCase, Motion, Place, Station, StationForce, Stroke,
};

/// Why no finite force moves the leg at a pose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoForce {
    /// The actuator has no arm.
    DeadPoint,
    /// The pins bind in both motions: friction grows with the actuator force faster than the force itself.
    /// The pin that takes most; a leg that binds in one motion only has a force for the other.
    Binds {
        /// Retracting.
        retract: Joint,
        /// Extending.
        extend: Joint,
    },
}

/// Power and pin loads of one kind of load, without friction.
#[derive(Clone, Copy, Debug, Default)]
struct Unit {
    power: f64,
    pins: PinLoads,
}

/// A pose ready for the loads of any case: without friction everything is linear in gravity, wind
/// and the springs' forces, so that a case is a sum of what one of each does.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PoseLoads<'a> {
    ready: &'a LegLoads<'a>,
    pose: &'a Pose,
    pinned: Pinned<'a>,
    springs: Unit,
    /// For one of each of [`components`].
    units: [Unit; 4],
}

/// One motion in one case.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Moved {
    pub(crate) effort: f64,
    /// What its drive must give: pressure (Pa), or force of an electric one (N).
    pub(crate) pressure: f64,
    pub(crate) pins: PinLoads,
}

/// Both motions in one case, or the pin that binds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CaseAt {
    pub(crate) holding: f64,
    pub(crate) still: PinLoads,
    pub(crate) retract: Result<Moved, Joint>,
    pub(crate) extend: Result<Moved, Joint>,
}

impl CaseAt {
    pub(crate) fn motion(&self, motion: Motion) -> &Result<Moved, Joint> {
        match motion {
            Motion::Retract => &self.retract,
            Motion::Extend => &self.extend,
        }
    }
}

impl<'a> PoseLoads<'a> {
    /// For all cases, or for the first only; `None` at a dead point.
    pub(crate) fn new(ready: &'a LegLoads<'a>, pose: &'a Pose, all: bool) -> Option<Self> {
        let LegLoads { leg, linkage, .. } = *ready;
        if pose.rates.actuator.abs() <= Rates::STILL * pose.actuator_length {
            return None;
        }
        let balance = Balance::new(leg, linkage, pose, Unknown::Thrust)?;
        let unit = |gravity, wind, springs| {
            let loads = Loads::with_springs(leg, linkage, pose, [gravity, wind], springs);
            let bodies = balance.solve(&loads, &BodyLoads::default(), 0.0);
            Unit {
                power: loads.power(leg, linkage, pose),
                pins: PinLoads::of(&bodies),
            }
        };
        let (none, still) = (Vector::zeros(), BodyLoads::default());
        let springs = if leg.springs.is_empty() {
            Unit::default()
        } else {
            unit(none, none, spring_loads(leg, linkage, pose))
        };
        let mut stance = Self {
            ready,
            pose,
            pinned: Pinned::new(&ready.pins, leg, linkage, &balance),
            springs,
            units: [Unit::default(); 4],
        };
        let (x, y) = (Vector::x(), Vector::y());
        let loads = [(x, none), (y, none), (none, x), (none, y)];
        let wanted = ready.wanted[usize::from(all)];
        for ((of, wanted), (gravity, wind)) in stance.units.iter_mut().zip(wanted).zip(loads) {
            if wanted {
                *of = unit(gravity, wind, still);
            }
        }
        Some(stance)
    }

    pub(crate) fn pose(&self) -> &'a Pose {
        self.pose
    }

    /// Both motions under the gravity and wind of a case; `warm` are the solutions with friction at
    /// the neighboring station.
    ///
    /// Thrust by virtual work: thrust · dℓ + power of loads, springs and friction = 0. Positive
    /// thrust pushes the pins apart.
    pub(crate) fn at(&self, case: [Vector; 2], warm: Option<&mut [Warm; 2]>) -> CaseAt {
        let (mut power, mut still) = (self.springs.power, self.springs.pins);
        for (unit, size) in self.units.iter().zip(components(case)) {
            if size != 0.0 {
                power += unit.power * size;
                still.add(&unit.pins, size);
            }
        }
        let rate = self.pose.rates.actuator;
        let holding = -power / rate;
        let direction = rate.signum();
        let seals = self.ready.leg.actuator.seals();
        let drive = &self.ready.drive;
        let moved = |motion: Motion, warm: Option<&mut Warm>| {
            let (rubbed, seals) = match self.ready.stood(motion, &self.pose.place) {
                Some(stood) => {
                    let pinned = self.pinned.scaled(stood.pins);
                    (pinned.rubbing(&still, motion, None)?, stood.seals)
                }
                None => (self.pinned.rubbing(&still, motion, warm)?, seals),
            };
            let effort = motion.sign() * direction * holding - rubbed.power / rate.abs() + seals;
            let lengthens = (direction > 0.0) == (motion == Motion::Retract);
            Ok(Moved {
                effort,
                pressure: drive.going(lengthens).needs(effort),
                pins: rubbed.loads,
            })
        };
        let [up, down] = match warm {
            Some([up, down]) => [Some(up), Some(down)],
            None => [None, None],
        };
        CaseAt {
            holding,
            still,
            retract: moved(Motion::Retract, up),
            extend: moved(Motion::Extend, down),
        }
    }

    /// Force, pressures and reactions of a case.
    pub(crate) fn force(&self, at: &CaseAt) -> StationForce {
        let reactions = |moved: &Result<Moved, Joint>| {
            moved
                .as_ref()
                .ok()
                .map(|m| m.pins.reactions(&self.ready.leg.brace))
        };
        let effort = |moved: &Result<Moved, Joint>| moved.as_ref().ok().map(|m| m.effort);
        let pressure = |moved: &Result<Moved, Joint>| moved.as_ref().ok().map(|m| m.pressure);
        StationForce {
            holding: at.holding,
            retract_effort: effort(&at.retract),
            extend_effort: effort(&at.extend),
            retract_pressure: pressure(&at.retract),
            extend_pressure: pressure(&at.extend),
            reactions: at.still.reactions(&self.ready.leg.brace),
            retract_reactions: reactions(&at.retract),
            extend_reactions: reactions(&at.extend),
            retract_binds: at.retract.as_ref().err().copied(),
            extend_binds: at.extend.as_ref().err().copied(),
        }
    }
}

/// Force and pressures at one pose; `None` where no finite thrust moves the leg either way.
#[must_use]
pub fn station_force(
    leg: &Leg,
    supply: &Supply,
    linkage: &Linkage,
    pose: &Pose,
    gravity: Vector,
    wind: Vector,
) -> Option<StationForce> {
    force_at(leg, supply, linkage, pose, [gravity, wind]).ok()
}

/// As [`station_force`], with the reason where there is none; `case` is gravity (N/kg) and wind
/// (N/m2).
///
/// # Errors
/// [`NoForce`].
pub fn force_at(
    leg: &Leg,
    supply: &Supply,
    linkage: &Linkage,
    pose: &Pose,
    case: [Vector; 2],
) -> Result<StationForce, NoForce> {
    let ready = LegLoads::new(leg, linkage, supply, [case]);
    let stance = PoseLoads::new(&ready, pose, true).ok_or(NoForce::DeadPoint)?;
    let force = stance.force(&stance.at(case, None));
    match (force.retract_binds, force.extend_binds) {
        (Some(retract), Some(extend)) => Err(NoForce::Binds { retract, extend }),
        _ => Ok(force),
    }
}

/// Sums the stations up: direction, worst places, stall. Load cases and joint loads are added by
/// [`Comparison`](super::cases::Comparison).
#[must_use]
pub(crate) fn force_result(
    leg: &Leg,
    available: &Available,
    stations: &[Station],
    binds: Vec<Bind>,
    required_margin: f64,
) -> Force {
    let (bore_area, annulus_area) = areas(&leg.actuator);
    let lengths = || stations.iter().map(|s| s.actuator_length);
    let stroke = match lengths().next().zip(lengths().next_back()) {
        Some((first, last)) if last < first => Stroke::Pull,
        _ => Stroke::Push,
    };
    let longest = lengths().fold(f64::NEG_INFINITY, f64::max);
    let shortest = lengths().fold(f64::INFINITY, f64::min);
    let loaded = || {
        stations
            .iter()
            .filter_map(|s| Some((place_of(s), s.force.as_ref()?)))
    };
    Force {
        stroke,
        bore_area,
        annulus_area,
        stroke_used: if stations.is_empty() {
            0.0
        } else {
            longest - shortest
        },
        driven_by: available.driven_by,
        available_pressure: available.most(Motion::Retract),
        available_among_all: available.among_all,
        available_set_by: available.set_by(Motion::Retract),
        available_extend_pressure: available.most(Motion::Extend),
        available_extend_set_by: available.set_by(Motion::Extend),
        required_margin,
        shares_drive_with: Vec::new(),
        partner_stands: None,
        peak: peak(loaded(), Motion::Retract, available),
        stalls_at: loaded()
            .find(|(place, force)| {
                let most = available.at(Motion::Retract, LoadCase::AsSet, *place);
                force.retract_pressure.is_some_and(|p| p > most)
            })
            .map(|(place, _)| place),
        extend_peak: peak(loaded(), Motion::Extend, available),
        largest_mount_load: loaded()
            .flat_map(|(_, f)| [f.retract_reactions, f.extend_reactions])
            .flatten()
            .map(|reactions| reactions.mount.norm())
            .max_by(f64::total_cmp),
        binds,
        cases: Vec::new(),
        hardest_case: None,
        joint_loads: Vec::new(),
    }
}

/// The place with the least margin in one motion.
pub(crate) fn peak<'s>(
    stations: impl Iterator<Item = (Place, &'s StationForce)>,
    motion: Motion,
    available: &Available,
) -> Option<ForcePeak> {
    stations
        .filter_map(|(place, force)| {
            let (pressure, effort) = force.needed(motion)?;
            let mount_load = force.reactions_in(motion)?.mount.norm();
            let most = available.at(motion, LoadCase::AsSet, place);
            Some(ForcePeak {
                place,
                effort,
                pressure,
                available: most,
                margin: margin(most, pressure),
                mount_load,
            })
        })
        .max_by(ForcePeak::hardness)
}

pub(crate) fn place_of(station: &Station) -> Place {
    Place {
        phase: station.phase,
        progress: station.progress,
        travel: station.travel,
        swing: station.swing,
    }
}
