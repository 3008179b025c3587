//! Thrust, pressures and reactions of a pose in any load case.
use super::available::Available;
use super::balance::{Balance, Unknown};
use super::drive::{OneWay, areas};
use super::friction::{PinLoads, Pinned};
use super::leg_loads::{LegLoads, Stood, components};
use super::springs::spring_loads_bent;
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
    /// Where any pin rubs.
    pinned: Option<Pinned<'a>>,
    springs: PinLoads,
    /// For one of each of [`components`].
    units: [PinLoads; 4],
    /// While it retracts and while it extends.
    ways: [Way<'a>; 2],
}

/// One motion at a pose, whatever the case.
#[derive(Clone, Copy, Debug)]
struct Way<'a> {
    /// +1 where the actuator pushes, −1 where it pulls (ratio).
    sign: f64,
    /// Friction of its seals (N).
    seals: f64,
    /// Where the motion begins with the friction of what has stood.
    stood: Option<&'a Stood>,
    drive: &'a OneWay,
}

/// One motion in one case.
#[derive(Clone, Copy, Debug, Default)]
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
    /// Whether any pin rubs, and their loads then, while it retracts and while it extends.
    rubs: bool,
    rubbed: [PinLoads; 2],
    /// While it retracts and while it extends.
    moved: [Result<Moved, Joint>; 2],
}

impl Default for CaseAt {
    fn default() -> Self {
        Self {
            still: PinLoads::default(),
            rubs: false,
            rubbed: [PinLoads::default(); 2],
            moved: [Ok(Moved::default()); 2],
        }
    }
}

impl CaseAt {
    pub(crate) fn motion(&self, motion: Motion) -> &Result<Moved, Joint> {
        &self.moved[motion as usize]
    }

    pub(crate) fn motion_mut(&mut self, motion: Motion) -> &mut Result<Moved, Joint> {
        &mut self.moved[motion as usize]
    }

    /// Whether anything moves it either way.
    pub(crate) fn moves(&self) -> bool {
        self.moved.iter().any(Result::is_ok)
    }

    /// Loads of the pins in a motion that none of them binds.
    pub(crate) fn pins(&self, motion: Motion) -> &PinLoads {
        match self.rubs {
            true => &self.rubbed[motion as usize],
            false => &self.still,
        }
    }
}

impl<'a> PoseLoads<'a> {
    /// At a pose, for all cases or for the first only; `None` at a dead point.
    pub(crate) fn new(ready: &'a LegLoads<'a>, pose: &'a Pose, all: bool) -> Option<Self> {
        let mut stance = Self::nowhere(ready, pose);
        stance.stand(pose, all, None).then_some(stance)
    }

    /// Of no loads yet.
    pub(crate) fn nowhere(ready: &'a LegLoads<'a>, pose: &'a Pose) -> Self {
        Self {
            ready,
            pose,
            pinned: None,
            springs: PinLoads::default(),
            units: [PinLoads::default(); 4],
            ways: Self::ways(ready, pose),
        }
    }

    /// Both motions at a pose.
    fn ways(ready: &'a LegLoads<'a>, pose: &Pose) -> [Way<'a>; 2] {
        let lengthens_up = pose.rates.actuator > 0.0;
        [Motion::Retract, Motion::Extend].map(|motion| {
            let lengthens = lengthens_up == (motion == Motion::Retract);
            let stood = ready.stood(motion, &pose.place);
            Way {
                sign: if lengthens { 1.0 } else { -1.0 },
                seals: stood.map_or_else(|| ready.leg.actuator.seals(), |stood| stood.seals),
                stood,
                drive: ready.going(lengthens),
            }
        })
    }

    /// Moves it to a pose, for all cases or for the first only; whether that is no dead point. `bent` is the
    /// turn from the upper to the lower link where it is known (rad).
    pub(crate) fn stand(&mut self, pose: &'a Pose, all: bool, bent: Option<f64>) -> bool {
        let ready = self.ready;
        let LegLoads { leg, linkage, .. } = *ready;
        self.pose = pose;
        if pose.rates.actuator.abs() <= Rates::STILL * pose.actuator_length {
            return false;
        }
        let balance = Balance::new(leg, linkage, pose, Unknown::Thrust);
        let Some(balance) = &balance else {
            return false;
        };
        self.ways = Self::ways(ready, pose);
        if !leg.springs.is_empty() {
            let springs = spring_loads_bent(leg, linkage, pose, bent);
            balance.put_on(&springs, &mut self.springs);
        }
        let wanted = &ready.wanted[usize::from(all)];
        for (at, unit) in self.units.iter_mut().enumerate() {
            if wanted[at] {
                let pull = [Vector::x(), Vector::y()][at % 2];
                balance.put_even(&ready.amounts[at / 2], pull, unit);
            }
        }
        if ready.rub() {
            self.pinned = Some(Pinned::new(&ready.pins, leg, linkage, balance));
        }
        true
    }

    pub(crate) fn pose(&self) -> &'a Pose {
        self.pose
    }

    /// Both motions under the gravity and wind of a case; `warm` are the solutions with friction at
    /// the neighboring station.
    pub(crate) fn at(&self, case: [Vector; 2], warm: Option<&mut [Warm; 2]>) -> CaseAt {
        let mut at = CaseAt::default();
        self.work(&mut at, components(case), warm);
        at
    }

    /// As [`Self::at`], of the components of a case, into one that was worked out before.
    ///
    /// The thrust without friction is that of the balance of all parts, friction adds what its power takes.
    /// Positive thrust pushes the pins apart.
    pub(super) fn work(&self, at: &mut CaseAt, case: [f64; 4], mut warm: Option<&mut [Warm; 2]>) {
        let still = &mut at.still;
        *still = self.springs;
        for (unit, size) in self.units.iter().zip(case) {
            if size != 0.0 {
                still.add(unit, size);
            }
        }
        at.rubs = self.pinned.is_some();
        for ((way, motion), index) in self
            .ways
            .iter()
            .zip([Motion::Retract, Motion::Extend])
            .zip(0..)
        {
            let mut effort = way.sign * still.thrust + way.seals;
            if let Some(pinned) = &self.pinned {
                let warm = warm.as_deref_mut().map(|warm| &mut warm[index]);
                let found = match way.stood {
                    Some(stood) => pinned.scaled(stood.pins).rubbing(still, motion, None),
                    None => pinned.rubbing(still, motion, warm),
                };
                match found {
                    Ok(found) => {
                        at.rubbed[index] = found.loads;
                        effort -= found.power / self.pose.rates.actuator.abs();
                    }
                    Err(joint) => {
                        at.moved[index] = Err(joint);
                        continue;
                    }
                }
            }
            let pressure = way.drive.needs(effort);
            at.moved[index] = Ok(Moved { effort, pressure });
        }
    }

    /// Puts force, pressures and reactions of a case where it has any.
    pub(crate) fn force(&self, at: &CaseAt, into: &mut Option<StationForce>) {
        if !at.moves() {
            return;
        }
        let reactions = |motion: Motion| {
            let moves = at.motion(motion).is_ok();
            moves.then(|| at.pins(motion).reactions(&self.ready.leg.brace))
        };
        let effort = |moved: &Result<Moved, Joint>| moved.as_ref().ok().map(|m| m.effort);
        let pressure = |moved: &Result<Moved, Joint>| moved.as_ref().ok().map(|m| m.pressure);
        let [retract, extend] = &at.moved;
        *into = Some(StationForce {
            holding: at.still.thrust,
            retract_effort: effort(retract),
            extend_effort: effort(extend),
            retract_pressure: pressure(retract),
            extend_pressure: pressure(extend),
            reactions: at.still.reactions(&self.ready.leg.brace),
            retract_reactions: reactions(Motion::Retract),
            extend_reactions: reactions(Motion::Extend),
            retract_binds: retract.as_ref().err().copied(),
            extend_binds: extend.as_ref().err().copied(),
        });
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
    let at = stance.at(case, None);
    let mut force = None;
    stance.force(&at, &mut force);
    match at.moved {
        [Err(retract), Err(extend)] => Err(NoForce::Binds { retract, extend }),
        _ => force.ok_or(NoForce::DeadPoint),
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
