//! Thrust by virtual work, pressures, and the worst places of the stroke.
use std::f64::consts::FRAC_PI_4;

use super::balance::{Balance, Unknown};
use super::friction::Pinned;
use super::{BodyLoads, Loads, spring_loads};
use crate::kinematics::{Linkage, Pose, Rates};
use crate::model::{Actuator, Joint, Leg, Supply, Vector};
use crate::result::{Bind, Force, ForcePeak, Motion, Place, Station, StationForce, Stroke};

/// Bore area and bore less rod area [m2]: πD²/4 and π(D² − d²)/4, textbook.
pub(crate) fn areas(actuator: &Actuator) -> (f64, f64) {
    let bore = FRAC_PI_4 * actuator.bore * actuator.bore;
    (bore, bore - FRAC_PI_4 * actuator.rod * actuator.rod)
}

/// Gauge pressure that makes `effort` [N] on `working` [m2] against the back pressure on `other`
/// [m2]; never below 0 [Pa].
fn pressure_for(effort: f64, working: f64, other: f64, back: f64) -> f64 {
    ((effort + back * other) / working).max(0.0)
}

/// Why no finite force moves the leg at a pose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoForce {
    /// The actuator has no arm.
    DeadPoint,
    /// The pins bind: friction grows with the thrust faster than the thrust itself. The pin that
    /// takes most, for each motion that binds.
    Binds {
        /// Retracting.
        retract: Option<Joint>,
        /// Extending.
        extend: Option<Joint>,
    },
}

/// A pose ready for the loads of any case.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stance<'a> {
    leg: &'a Leg,
    linkage: &'a Linkage,
    pinned: Pinned<'a>,
    springs: BodyLoads,
}

impl<'a> Stance<'a> {
    /// `None` at a dead point.
    pub(crate) fn new(leg: &'a Leg, linkage: &'a Linkage, pose: &'a Pose) -> Option<Self> {
        if pose.rates.actuator.abs() <= Rates::STILL * pose.actuator_length {
            return None;
        }
        let balance = Balance::new(leg, linkage, pose, Unknown::Thrust)?;
        Some(Self {
            leg,
            linkage,
            pinned: Pinned::new(leg, linkage, balance),
            springs: spring_loads(leg, linkage, pose),
        })
    }

    pub(crate) fn pose(&self) -> &'a Pose {
        self.pinned.balance.pose
    }

    /// Force and pressures under the weight and wind of a case.
    ///
    /// Thrust by virtual work: thrust · dℓ + power of loads, springs and friction = 0. Positive
    /// thrust pushes the pins apart.
    pub(crate) fn force(
        &self,
        supply: &Supply,
        [gravity, wind]: [Vector; 2],
    ) -> Result<StationForce, NoForce> {
        let pose = self.pose();
        let rate = pose.rates.actuator;
        let loads =
            Loads::with_springs(self.leg, self.linkage, pose, [gravity, wind], self.springs);
        let power = loads.power(self.leg, self.linkage, pose);
        let still = self
            .pinned
            .balance
            .solve(&loads, &BodyLoads::default(), 0.0);
        let (retract, extend) = match (
            self.pinned.rubbing(&loads, &still, Motion::Retract),
            self.pinned.rubbing(&loads, &still, Motion::Extend),
        ) {
            (Ok(retract), Ok(extend)) => (retract, extend),
            (retract, extend) => {
                return Err(NoForce::Binds {
                    retract: retract.err(),
                    extend: extend.err(),
                });
            }
        };
        let rates = &self.pinned.rates;
        let direction = rate.signum();
        let seals = self.leg.actuator.seal_friction;
        let effort = |friction: f64, motion: Motion| {
            motion.sign() * direction * (-power / rate) - friction / rate.abs() + seals
        };
        let retract_effort = effort(retract.power(rates, Motion::Retract), Motion::Retract);
        let extend_effort = effort(extend.power(rates, Motion::Extend), Motion::Extend);
        let (bore, annulus) = areas(&self.leg.actuator);
        let (up, down) = if direction > 0.0 {
            (bore, annulus)
        } else {
            (annulus, bore)
        };
        let back = supply.return_pressure;
        Ok(StationForce {
            holding: -power / rate,
            retract_effort,
            extend_effort,
            retract_pressure: pressure_for(retract_effort, up, down, back),
            extend_pressure: pressure_for(extend_effort, down, up, back),
            reactions: still.reactions,
            retract_reactions: retract.bodies.reactions,
            extend_reactions: extend.bodies.reactions,
        })
    }
}

/// Force and pressures at one pose; `None` where no finite thrust moves the leg.
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

/// As [`station_force`], with the reason where there is none; `case` is gravity [N/kg] and wind
/// [N/m2].
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
    Stance::new(leg, linkage, pose)
        .ok_or(NoForce::DeadPoint)?
        .force(supply, case)
}

/// Sums the stations up: direction, worst places, stall. Load cases and joint loads are added by
/// [`Comparison`](super::cases::Comparison).
#[must_use]
pub fn force_result(leg: &Leg, supply: &Supply, stations: &[Station], binds: Vec<Bind>) -> Force {
    let (bore_area, annulus_area) = areas(&leg.actuator);
    let lengths = || stations.iter().map(|s| s.actuator_length);
    let first = lengths().next().unwrap_or(0.0);
    let last = lengths().next_back().unwrap_or(first);
    let stroke = if last >= first {
        Stroke::Push
    } else {
        Stroke::Pull
    };
    let longest = lengths().fold(f64::NEG_INFINITY, f64::max);
    let shortest = lengths().fold(f64::INFINITY, f64::min);
    let available = supply.available_pressure;
    let loaded = || {
        stations
            .iter()
            .filter_map(|s| s.force.map(|force| (place_of(s), force)))
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
        available_pressure: available,
        peak: peak(loaded(), Motion::Retract, available),
        stalls_at: loaded()
            .find(|(_, force)| force.retract_pressure > available)
            .map(|(place, _)| place),
        extend_peak: peak(loaded(), Motion::Extend, available),
        largest_mount_load: loaded()
            .map(|(_, f)| {
                let loads = [f.retract_reactions.mount, f.extend_reactions.mount];
                loads[0].norm().max(loads[1].norm())
            })
            .max_by(f64::total_cmp),
        binds,
        cases: Vec::new(),
        hardest_case: None,
        joint_loads: Vec::new(),
    }
}

/// The place that needs most pressure in one motion.
pub(crate) fn peak(
    stations: impl Iterator<Item = (Place, StationForce)>,
    motion: Motion,
    available: f64,
) -> Option<ForcePeak> {
    let value = |force: &StationForce| force.needed(motion);
    stations
        .max_by(|a, b| {
            let (pa, ea) = value(&a.1);
            let (pb, eb) = value(&b.1);
            pa.total_cmp(&pb).then(ea.total_cmp(&eb))
        })
        .map(|(place, force)| {
            let (pressure, effort) = value(&force);
            ForcePeak {
                place,
                effort,
                pressure,
                margin: (available - pressure) / available,
                mount_load: force.reactions_in(motion).mount.norm(),
            }
        })
}

pub(crate) fn place_of(station: &Station) -> Place {
    Place {
        phase: station.phase,
        progress: station.progress,
        travel: station.travel,
        swing: station.swing,
    }
}
