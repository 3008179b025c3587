//! Load cases side by side.
use super::friction::pin_loads;
use super::pressure::Stance;
use super::{NoForce, gravity, wind};
use crate::model::{
    Brace, Conditions, DEFAULT_CLIMB_PITCH, DEFAULT_TURN_LOAD_FACTOR, Gear, Joint, Leg, LegAir,
    Supply, Vector,
};
use crate::result::{
    Bind, CaseForce, CaseOutcome, Force, ForcePeak, JointLoad, LoadCase, MissingInput, Motion,
    Place, StationForce,
};

/// Airspeed of the air-load case over the stall speed with flaps up [1]: 14 CFR 23.729(a)(1) before
/// amendment 23-64, "any airspeed up to 1.6 VS1".
pub const AIR_LOAD_SPEED: f64 = 1.6;

/// The conditions of a case, or what it still needs. Speeds in flight are calibrated: they go with
/// the air density of sea level.
///
/// In a steady turn without sideslip the load factor acts straight down in the aeroplane; in a steady
/// climb the weight is turned by the pitch (any flight mechanics text).
///
/// # Errors
/// The missing input.
pub fn case_conditions(
    case: LoadCase,
    set: &Conditions,
    air: &LegAir,
) -> Result<Conditions, MissingInput> {
    let still = Conditions::default();
    let no_area = air.wheel_drag_area + air.leg_drag_area <= 0.0;
    // without a drag area no speed loads the leg
    let gear_speed = match set.gear_speed {
        Some(speed) => Ok(speed),
        None if no_area => Ok(0.0),
        None => Err(MissingInput::GearSpeed),
    };
    let flying = |airspeed: f64| Conditions {
        airspeed,
        sideslip: set.sideslip,
        ..still
    };
    let turn = set.turn_load_factor.unwrap_or(DEFAULT_TURN_LOAD_FACTOR);
    Ok(match case {
        LoadCase::AsSet => *set,
        LoadCase::OnJacks => still,
        LoadCase::LevelFlight => flying(gear_speed?),
        LoadCase::Climb => Conditions {
            pitch: set.climb_pitch.unwrap_or(DEFAULT_CLIMB_PITCH),
            ..flying(gear_speed?)
        },
        LoadCase::Turn => Conditions {
            load_factor: turn,
            ..flying(gear_speed?)
        },
        LoadCase::AirLoad if no_area => return Err(MissingInput::DragArea),
        LoadCase::AirLoad => {
            let stall = set.stall_speed.ok_or(MissingInput::StallSpeed)?;
            Conditions {
                load_factor: turn,
                ..flying(AIR_LOAD_SPEED * stall)
            }
        }
    })
}

/// One case while the leg goes through its stations.
#[derive(Clone, Debug)]
struct Tally {
    case: LoadCase,
    conditions: Conditions,
    /// Gravity and wind.
    loads: [Vector; 2],
    peaks: [Option<ForcePeak>; 2],
    stalls_at: Option<Place>,
    binds_at: Option<Place>,
}

/// Cases, joint loads and binding places, gathered station by station.
#[derive(Clone, Debug)]
pub(crate) struct Comparison<'a> {
    leg: &'a Leg,
    supply: &'a Supply,
    cases: Vec<Result<Tally, (LoadCase, MissingInput)>>,
    joints: [Option<JointLoad>; 6],
    binds: Vec<Bind>,
}

const CASES: [LoadCase; 6] = [
    LoadCase::AsSet,
    LoadCase::OnJacks,
    LoadCase::LevelFlight,
    LoadCase::Climb,
    LoadCase::Turn,
    LoadCase::AirLoad,
];

impl<'a> Comparison<'a> {
    pub(crate) fn new(gear: &'a Gear, leg: &'a Leg) -> Self {
        let cases = CASES
            .into_iter()
            .map(|case| {
                let conditions = case_conditions(case, &gear.conditions, &leg.air)
                    .map_err(|needs| (case, needs))?;
                Ok(Tally {
                    case,
                    conditions,
                    loads: [gravity(leg.view, &conditions), wind(leg.view, &conditions)],
                    peaks: [None, None],
                    stalls_at: None,
                    binds_at: None,
                })
            })
            .collect();
        Self {
            leg,
            supply: &gear.supply,
            cases,
            joints: [None; 6],
            binds: Vec::new(),
        }
    }

    /// Adds a station to every case; gives its force in the case as set.
    pub(crate) fn add(&mut self, stance: &Stance) -> Option<StationForce> {
        let place = stance.pose().place;
        let mut as_set: Option<([Vector; 2], Result<StationForce, NoForce>)> = None;
        for tally in self.cases.iter_mut().flatten() {
            let force = match &as_set {
                Some((loads, force)) if *loads == tally.loads => *force,
                _ => stance.force(self.supply, tally.loads),
            };
            if as_set.is_none() {
                as_set = Some((tally.loads, force));
                if let Err(NoForce::Binds { retract, extend }) = force {
                    note_binds(&mut self.binds, place, retract, extend);
                }
            }
            match &force {
                Ok(force) => {
                    tally.add(place, force, self.supply.available_pressure);
                    note_loads(&mut self.joints, self.leg, tally.case, place, force);
                }
                Err(NoForce::DeadPoint) => {}
                Err(NoForce::Binds { .. }) => {
                    tally.binds_at.get_or_insert(place);
                }
            }
        }
        as_set.and_then(|(_, force)| force.ok())
    }

    /// Binding places of the case as set.
    pub(crate) fn binds(&self) -> Vec<Bind> {
        self.binds.clone()
    }

    /// Writes cases and joint loads into the result.
    pub(crate) fn finish(self, force: &mut Force) {
        force.cases = self
            .cases
            .into_iter()
            .map(|case| match case {
                Ok(tally) => tally.finish(),
                Err((case, needs)) => CaseForce {
                    case,
                    outcome: CaseOutcome::Missing { needs },
                },
            })
            .collect();
        // the first of equals, so that the case as set names itself
        let mut hardest: Option<(usize, f64)> = None;
        for (at, case) in force.cases.iter().enumerate() {
            if let Some(pressure) = case.pressure()
                && hardest.is_none_or(|(_, most)| pressure > most)
            {
                hardest = Some((at, pressure));
            }
        }
        force.hardest_case = hardest.map(|(at, _)| at);
        force.joint_loads = self.joints.into_iter().flatten().collect();
    }
}

impl Tally {
    fn add(&mut self, place: Place, force: &StationForce, available: f64) {
        for (peak, motion) in self.peaks.iter_mut().zip([Motion::Retract, Motion::Extend]) {
            let (pressure, effort) = force.needed(motion);
            let is_more = peak.is_none_or(|most: ForcePeak| {
                pressure > most.pressure || (pressure == most.pressure && effort >= most.effort)
            });
            if is_more {
                *peak = Some(ForcePeak {
                    place,
                    effort,
                    pressure,
                    margin: (available - pressure) / available,
                    mount_load: force.reactions_in(motion).mount.norm(),
                });
            }
        }
        if force.retract_pressure > available {
            self.stalls_at.get_or_insert(place);
        }
    }

    fn finish(self) -> CaseForce {
        let [retract, extend] = self.peaks;
        CaseForce {
            case: self.case,
            outcome: CaseOutcome::Worked {
                load_factor: self.conditions.load_factor,
                dynamic_pressure: super::dynamic_pressure(&self.conditions),
                retract,
                extend,
                stalls_at: self.stalls_at,
                binds_at: self.binds_at,
            },
        }
    }
}

/// Keeps the first place of each motion.
fn note_binds(binds: &mut Vec<Bind>, place: Place, retract: Option<Joint>, extend: Option<Joint>) {
    for (joint, motion) in [(retract, Motion::Retract), (extend, Motion::Extend)] {
        if let Some(joint) = joint
            && !binds.iter().any(|bind| bind.motion == motion)
        {
            binds.push(Bind {
                place,
                motion,
                joint,
            });
        }
    }
}

fn note_loads(
    joints: &mut [Option<JointLoad>; 6],
    leg: &Leg,
    case: LoadCase,
    place: Place,
    force: &StationForce,
) {
    for motion in [Motion::Retract, Motion::Extend] {
        let loads = pin_loads(force.reactions_in(motion));
        for ((most, joint), load) in joints.iter_mut().zip(Joint::ALL).zip(loads) {
            let exists = match (joint, &leg.brace) {
                (Joint::Knee, Brace::Folding(_)) => true,
                (Joint::Knee, _) | (Joint::BracePivot | Joint::LegAttach, Brace::None) => false,
                _ => true,
            };
            let load = load.norm();
            if exists && most.is_none_or(|most| load > most.load) {
                *most = Some(JointLoad {
                    joint,
                    load,
                    place,
                    motion,
                    case,
                });
            }
        }
    }
}
