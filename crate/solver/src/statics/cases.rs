//! Load cases side by side.
use super::Partners;
use super::available::{Available, margin};
use super::leg_loads::{LegLoads, components};
use super::pressure::{CaseAt, Moved, PoseLoads};
use super::warm::Warm;
use super::weight_and_wind;
use crate::kinematics::Pose;
use crate::model::{
    Brace, Conditions, DEFAULT_CLIMB_PITCH, DEFAULT_TURN_LOAD_FACTOR, Gear, Joint, Leg, LegAir,
    Vector,
};
use crate::result::{
    Bind, CaseForce, CaseOutcome, Force, ForcePeak, JointLoad, LoadCase, MissingInput, Motion,
    PartnerStands, Place, StationForce,
};

/// Airspeed of the air-load case over the stall speed with flaps up (ratio): 14 CFR 23.729(a)(1) before
/// amendment 23-64, "any airspeed up to 1.6 VS1".
pub const AIR_LOAD_SPEED: f64 = 1.6;

/// The conditions of a case, or what it still needs. Speeds in flight are calibrated: they go with
/// the air density of sea level.
///
/// In a steady turn without sideslip the load factor acts straight down in the airplane; in a steady
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
pub(super) struct Tally {
    pub(super) case: LoadCase,
    conditions: Conditions,
    /// Gravity and wind.
    pub(super) loads: [Vector; 2],
    components: [f64; 4],
    /// An earlier case with the same loads.
    same_as: Option<usize>,
    warm: [Warm; 2],
    worst: [Worst; 2],
    /// Square of the largest load on the actuator mount (N2), below 0 where there is none.
    mount: f64,
    /// With the station's index.
    pub(super) stalls_at: Option<(usize, Place)>,
    binds_at: Option<Bind>,
}

/// The place of a motion that has the least margin so far.
#[derive(Clone, Copy, Debug)]
struct Worst {
    margin: f64,
    moved: Moved,
    available: f64,
    /// Square of the load on the actuator mount (N2).
    mount: f64,
    /// The station's index.
    index: Option<usize>,
}

/// Cases, joint loads and binding places, gathered station by station.
#[derive(Clone, Debug)]
pub(crate) struct Comparison<'a> {
    pub(super) ready: &'a LegLoads<'a>,
    pub(super) available: &'a Available<'a>,
    pub(super) partners: Option<&'a Partners>,
    partner_stands: Option<PartnerStands>,
    pub(super) cases: Vec<Result<Tally, (LoadCase, MissingInput)>>,
    /// The case that was last worked out.
    at: CaseAt,
    joints: [Most; 6],
    binds: Vec<Bind>,
}

/// The largest load of a joint.
#[derive(Clone, Copy, Debug)]
struct Most {
    /// Its square (N2), which another one must beat.
    square: f64,
    /// Station, motion and case.
    found: Option<(usize, Motion, LoadCase)>,
}

const CASES: [LoadCase; 6] = LoadCase::ALL;

impl<'a> Comparison<'a> {
    /// Gravities and winds of all cases that can be worked out.
    pub(crate) fn loads(gear: &Gear, leg: &Leg) -> impl Iterator<Item = [Vector; 2]> {
        CASES.into_iter().filter_map(|case| {
            let conditions = case_conditions(case, &gear.conditions, &leg.air).ok()?;
            Some(weight_and_wind(leg.view, &conditions))
        })
    }

    pub(crate) fn new(
        gear: &'a Gear,
        leg: &'a Leg,
        ready: &'a LegLoads<'a>,
        available: &'a Available<'a>,
        partners: Option<&'a Partners>,
    ) -> Self {
        let mut cases: Vec<Result<Tally, (LoadCase, MissingInput)>> = Vec::new();
        for case in CASES {
            let missing = partners.and_then(|partners| partners.missing(gear, case));
            let tally = missing
                .map_or_else(|| case_conditions(case, &gear.conditions, &leg.air), Err)
                .map_err(|needs| (case, needs))
                .map(|conditions| {
                    let loads = weight_and_wind(leg.view, &conditions);
                    // what is alike for one leg need not be so for those that share with it
                    let is_same = |other: &Result<Tally, _>| {
                        partners.is_none()
                            && matches!(other, Ok(Tally { loads: l, same_as: None, .. }) if *l == loads)
                    };
                    Tally {
                        case,
                        conditions,
                        loads,
                        components: components(loads),
                        same_as: cases.iter().position(is_same),
                        warm: [Warm::default(); 2],
                        worst: [Worst::default(); 2],
                        mount: -1.0,
                        stalls_at: None,
                        binds_at: None,
                    }
                });
            cases.push(tally);
        }
        Self {
            ready,
            available,
            partners,
            partner_stands: None,
            cases,
            at: CaseAt::default(),
            joints: Joint::ALL.map(|joint| {
                let exists = match (joint, &leg.brace) {
                    (Joint::Knee, Brace::Folding(_)) => true,
                    (Joint::Knee, _) | (Joint::BracePivot | Joint::LegAttach, Brace::None) => false,
                    _ => true,
                };
                Most {
                    square: if exists { -1.0 } else { f64::INFINITY },
                    found: None,
                }
            }),
            binds: Vec::new(),
        }
    }

    /// Adds a station, the `index`th, to every case for which no earlier one with the same loads stands. Its force in
    /// the case as set stays `None` where neither motion has one.
    pub(crate) fn add(
        &mut self,
        index: usize,
        stance: &PoseLoads,
        force: &mut Option<StationForce>,
    ) {
        let place = &stance.pose().place;
        let rub = self.ready.rub();
        for tally in self.cases.iter_mut().flatten() {
            if tally.same_as.is_some() {
                continue;
            }
            let at = &mut self.at;
            stance.work(at, tally.components, Some(&mut tally.warm));
            if let Some(partners) = self.partners {
                let stands = partners.join(at, tally.case, *place);
                self.partner_stands = self.partner_stands.or(stands);
            }
            for motion in [Motion::Retract, Motion::Extend] {
                let moved = match at.motion(motion) {
                    Ok(moved) => moved,
                    Err(joint) => {
                        tally.binds_at.get_or_insert(Bind {
                            place: *place,
                            motion,
                            joint: *joint,
                        });
                        continue;
                    }
                };
                let loads = &at.pins(motion).loads;
                let available = self.available.at(motion, tally.case, *place);
                tally.add(motion, (index, place), (moved, loads), available);
                // without friction both motions load the pins alike
                if rub || motion == Motion::Retract {
                    tally.add_loads(motion, index, loads, &mut self.joints);
                }
            }
            if tally.case == LoadCase::AsSet {
                note_binds(&mut self.binds, *place, at);
                stance.force(at, force);
            }
        }
    }

    /// Writes worst places, cases and joint loads into the result; `poses` are those of the stations.
    pub(crate) fn finish(self, force: &mut Force, poses: &[Pose]) {
        force.cases = self
            .cases
            .iter()
            .map(|case| match case {
                Ok(tally) => {
                    let same = tally
                        .same_as
                        .and_then(|at| self.cases.get(at)?.as_ref().ok());
                    tally.finish(same.unwrap_or(tally), poses)
                }
                Err((case, needs)) => CaseForce {
                    case: *case,
                    outcome: CaseOutcome::Missing { needs: *needs },
                },
            })
            .collect();
        // the first of equals, so that the case as set names itself
        let mut hardest: Option<(usize, ForcePeak)> = None;
        for (at, case) in force.cases.iter().enumerate() {
            if let Some((_, peak)) = case.hardest()
                && hardest.is_none_or(|(_, most)| peak.is_harder_than(&most))
            {
                hardest = Some((at, peak));
            }
        }
        force.stalls_at = force.stalls_in(LoadCase::AsSet);
        force.hardest_case = hardest.map(|(at, _)| at);
        force.partner_stands = self.partner_stands;
        let joints = Joint::ALL.into_iter().zip(self.joints);
        let loads = joints.filter_map(|(joint, most)| {
            let (index, motion, case) = most.found?;
            Some(JointLoad {
                joint,
                load: most.square.sqrt(),
                place: poses.get(index)?.place,
                motion,
                case,
            })
        });
        force.joint_loads = loads.collect();
        force.binds = self.binds;
        let as_set = |case: &&Tally| case.case == LoadCase::AsSet;
        if let Some(tally) = self.cases.iter().flatten().find(as_set) {
            [force.peak, force.extend_peak] = tally.worst.map(|worst| worst.peak(poses));
            force.largest_mount_load = (tally.mount >= 0.0).then(|| tally.mount.sqrt());
        }
    }
}

impl Default for Worst {
    fn default() -> Self {
        Self {
            margin: f64::INFINITY,
            moved: Moved::default(),
            available: 0.0,
            mount: 0.0,
            index: None,
        }
    }
}

impl Worst {
    fn peak(&self, poses: &[Pose]) -> Option<ForcePeak> {
        Some(ForcePeak {
            place: poses.get(self.index?)?.place,
            effort: self.moved.effort,
            pressure: self.moved.pressure,
            available: self.available,
            margin: self.margin,
            mount_load: self.mount.sqrt(),
        })
    }
}

impl Tally {
    /// Adds what one motion needs at a station, and the loads of the pins in it.
    fn add(
        &mut self,
        motion: Motion,
        (index, place): (usize, &Place),
        (moved, loads): (&Moved, &[Vector; 6]),
        available: f64,
    ) {
        if motion == Motion::Retract && moved.pressure > available {
            self.stalls_at.get_or_insert((index, *place));
        }
        let worst = &mut self.worst[motion as usize];
        let margin = margin(available, moved.pressure);
        // as hard as those before, or harder: see `ForcePeak::hardness`
        let most = worst.moved;
        let harder = margin < worst.margin
            || margin == worst.margin
                && (moved.pressure > most.pressure
                    || moved.pressure == most.pressure && moved.effort >= most.effort);
        if harder {
            let [.., mount, _] = loads;
            *worst = Worst {
                margin,
                moved: *moved,
                available,
                mount: mount.norm_squared(),
                index: Some(index),
            };
        }
    }

    /// Adds the loads of the pins in one motion at a station.
    fn add_loads(
        &mut self,
        motion: Motion,
        index: usize,
        loads: &[Vector; 6],
        most: &mut [Most; 6],
    ) {
        for (load, most) in loads.iter().zip(most) {
            let square = load.norm_squared();
            if square > most.square {
                *most = Most {
                    square,
                    found: Some((index, motion, self.case)),
                };
            }
        }
        let [.., mount, _] = loads;
        self.mount = self.mount.max(mount.norm_squared());
    }

    /// The outcome of this case, by the figures of one with the same loads.
    fn finish(&self, figures: &Self, poses: &[Pose]) -> CaseForce {
        let [retract, extend] = figures.worst.map(|worst| worst.peak(poses));
        CaseForce {
            case: self.case,
            outcome: CaseOutcome::Worked {
                load_factor: self.conditions.load_factor,
                dynamic_pressure: super::dynamic_pressure(&self.conditions),
                retract,
                extend,
                stalls_at: figures.stalls_at.map(|(_, place)| place),
                binds_at: figures.binds_at,
            },
        }
    }
}

/// Keeps the first place of each motion.
fn note_binds(binds: &mut Vec<Bind>, place: Place, at: &CaseAt) {
    for motion in [Motion::Retract, Motion::Extend] {
        if let Err(joint) = *at.motion(motion)
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
