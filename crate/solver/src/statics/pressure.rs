//! Thrust, pressures and reactions of a pose in any load case.
use super::available::Available;
use super::balance::{Balance, Unknown};
use super::drive::areas;
use super::friction::{PinLoads, Pinned};
use super::leg_loads::{LegLoads, components};
use super::spring_loads;
use super::warm::Warm;
use crate::kinematics::{Linkage, Pose, Rates};
use crate::model::{Joint, Leg, Supply, Vector};
use crate::result::{Force, Motion, Place, Station, StationForce, Stroke};

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

/// A pose ready for the loads of any case: without friction everything is linear in gravity, wind
/// and the springs' forces, so that a case is a sum of what one of each does.
#[derive(Clone, Debug)]
pub(crate) struct PoseLoads<'a> {
    ready: &'a LegLoads<'a>,
    pose: &'a Pose,
    /// Where any pin rubs; apart, for it is large.
    pinned: Option<Box<Pinned<'a>>>,
    springs: PinLoads,
    /// For one of each of [`components`].
    units: [PinLoads; 4],
}

/// One motion in one case.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Moved {
    pub(crate) effort: f64,
    /// What its drive must give: pressure (Pa), or force of an electric one (N).
    pub(crate) pressure: f64,
}

/// Both motions in one case, or the pin that binds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CaseAt {
    /// Loads of the pins at rest, without friction.
    still: PinLoads,
    /// Those while it retracts and while it extends, where any pin rubs; else they are those at rest.
    rubbed: Option<[PinLoads; 2]>,
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

    /// Loads of the pins in a motion that none of them binds.
    pub(crate) fn pins(&self, motion: Motion) -> &PinLoads {
        match (&self.rubbed, motion) {
            (None, _) => &self.still,
            (Some([up, _]), Motion::Retract) => up,
            (Some([_, down]), Motion::Extend) => down,
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
        let mut springs = PinLoads::default();
        if !leg.springs.is_empty() {
            springs = PinLoads::of(&balance.solve_on(&spring_loads(leg, linkage, pose)));
        }
        let [masses, areas] = &ready.amounts;
        let (x, y) = (Vector::x(), Vector::y());
        let pulls = [(masses, x), (masses, y), (areas, x), (areas, y)];
        let wanted = ready.wanted[usize::from(all)];
        let mut units = [PinLoads::default(); 4];
        for ((of, wanted), (amounts, pull)) in units.iter_mut().zip(wanted).zip(pulls) {
            if wanted {
                *of = PinLoads::of(&balance.solve_even(amounts, pull));
            }
        }
        let pinned = || Box::new(Pinned::new(&ready.pins, leg, linkage, &balance));
        Some(Self {
            ready,
            pose,
            pinned: ready.rub().then(pinned),
            springs,
            units,
        })
    }

    pub(crate) fn pose(&self) -> &'a Pose {
        self.pose
    }

    /// Both motions under the gravity and wind of a case; `warm` are the solutions with friction at
    /// the neighboring station.
    ///
    /// The thrust without friction is that of the balance of all parts, friction adds what its power takes.
    /// Positive thrust pushes the pins apart.
    pub(crate) fn at(&self, case: [Vector; 2], warm: Option<&mut [Warm; 2]>) -> CaseAt {
        let mut still = self.springs;
        for (unit, size) in self.units.iter().zip(components(case)) {
            if size != 0.0 {
                still.add(unit, size);
            }
        }
        let rate = self.pose.rates.actuator;
        let direction = rate.signum();
        let moved = |motion: Motion, warm: Option<&mut Warm>, loads: Option<&mut PinLoads>| {
            let stood = self.ready.stood(motion, &self.pose.place);
            let mut effort = motion.sign() * direction * still.thrust
                + stood.map_or(self.ready.leg.actuator.seals(), |stood| stood.seals);
            if let (Some(pinned), Some(loads)) = (&self.pinned, loads) {
                let rubbed = match stood {
                    Some(stood) => pinned.scaled(stood.pins).rubbing(&still, motion, None)?,
                    None => pinned.rubbing(&still, motion, warm)?,
                };
                *loads = rubbed.loads;
                effort -= rubbed.power / rate.abs();
            }
            let lengthens = (direction > 0.0) == (motion == Motion::Retract);
            let pressure = self.ready.going(lengthens).needs(effort);
            Ok(Moved { effort, pressure })
        };
        let [warm_up, warm_down] = match warm {
            Some([up, down]) => [Some(up), Some(down)],
            None => [None, None],
        };
        let mut rubbed = self.pinned.as_ref().map(|_| [still; 2]);
        let [up, down] = match &mut rubbed {
            Some([up, down]) => [Some(up), Some(down)],
            None => [None, None],
        };
        let retract = moved(Motion::Retract, warm_up, up);
        let extend = moved(Motion::Extend, warm_down, down);
        CaseAt {
            still,
            rubbed,
            retract,
            extend,
        }
    }

    /// Force, pressures and reactions of a case.
    pub(crate) fn force(&self, at: &CaseAt) -> StationForce {
        let reactions = |motion: Motion| {
            let moves = at.motion(motion).is_ok();
            moves.then(|| at.pins(motion).reactions(&self.ready.leg.brace))
        };
        let effort = |moved: &Result<Moved, Joint>| moved.as_ref().ok().map(|m| m.effort);
        let pressure = |moved: &Result<Moved, Joint>| moved.as_ref().ok().map(|m| m.pressure);
        StationForce {
            holding: at.still.thrust,
            retract_effort: effort(&at.retract),
            extend_effort: effort(&at.extend),
            retract_pressure: pressure(&at.retract),
            extend_pressure: pressure(&at.extend),
            reactions: at.still.reactions(&self.ready.leg.brace),
            retract_reactions: reactions(Motion::Retract),
            extend_reactions: reactions(Motion::Extend),
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

/// What drives the leg, which way and how far. Worst places, load cases and joint loads are added by
/// [`Comparison`](super::cases::Comparison).
#[must_use]
pub(crate) fn force_result(
    leg: &Leg,
    available: &Available,
    stations: &[Station],
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
        peak: None,
        stalls_at: None,
        extend_peak: None,
        largest_mount_load: None,
        binds: Vec::new(),
        cases: Vec::new(),
        hardest_case: None,
        joint_loads: Vec::new(),
    }
}

pub(crate) fn place_of(station: &Station) -> Place {
    Place {
        phase: station.phase,
        progress: station.progress,
        travel: station.travel,
        swing: station.swing,
    }
}
