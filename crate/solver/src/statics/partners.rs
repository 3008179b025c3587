//! What the other legs on the same drive, and all that run on the same battery, need at the same place
//! of the way.
//!
//! Legs on one drive move together, and so do electric actuators on one battery, near enough: at each
//! place of the way the drive carries the sum of what its legs need there, each times the ratio of its
//! movement to that of the drive (virtual work: the power of the drive is the sum of theirs).
use super::drive::{Drive, OneWay};
use super::leg_loads::LegLoads;
use super::pressure::{CaseAt, PoseLoads};
use super::warm::Warm;
use super::{case_conditions, weight_and_wind};
use crate::faults::Faults;
use crate::kinematics::{Linkage, Pose};
use crate::model::{ElectricActuator, Gear, Source};
use crate::prepared::PreparedGear;
use crate::result::{LoadCase, MissingInput, Motion, PartnerStands, Phase, Place};

/// Stations of the swing at which the need of another leg is worked out; between two it goes over evenly,
/// which is off by less than 1e-4 of the largest (held by a test).
const STATIONS: usize = 361;

/// The legs beside one leg, and what they share with it.
#[derive(Clone, Debug)]
pub(crate) struct Partners {
    /// On the drive of the leg itself.
    on_drive: Vec<Partner>,
    /// Other electric drives on the battery, with their legs; without them where one has faults.
    on_battery: Vec<(ElectricActuator, Option<Vec<Partner>>)>,
    ratio: f64,
    /// Whether the leg itself has a knee to unlock before it swings.
    unlocks: bool,
    /// The drive as it works to retract, and to extend.
    ways: [OneWay; 2],
}

/// One other leg.
#[derive(Clone, Debug)]
struct Partner {
    leg: usize,
    ratio: f64,
    linkage: Linkage,
    /// Under way.
    rows: Vec<Row>,
    /// Where a motion begins, with the friction of what has stood.
    begins: Vec<Row>,
}

/// Places that are one, but for rounding (ratio).
const SAME_PLACE: f64 = 1e-9;

/// What it needs at a place, by case and motion (N); none where nothing moves it.
#[derive(Clone, Debug)]
struct Row {
    progress: f64,
    needs: [[Option<f64>; 2]; LoadCase::ALL.len()],
}

impl Partners {
    /// Those of a leg; `None` where it shares nothing.
    ///
    /// # Errors
    /// Faults of a leg beside it.
    pub(crate) fn of(prepared: &PreparedGear<'_>, leg: usize) -> Result<Option<Self>, Faults> {
        let gear = prepared.gear();
        let drive = gear.driving_leg(leg);
        let Some(driver) = gear.legs.get(drive) else {
            return Ok(None);
        };
        let electric = matches!(gear.supply.source, Source::ElectricActuators);
        if gear.drives_alone(leg) && !(electric && gear.legs.len() > 1) {
            return Ok(None);
        }
        let beside = |drive: usize| {
            let others = gear.on_its_drive(drive).filter(|other| *other != leg);
            others
                .map(|other| Partner::new(prepared, other))
                .collect::<Result<Vec<_>, _>>()
        };
        let mut on_battery = Vec::new();
        if electric {
            for other in (0..gear.legs.len()).filter(|at| gear.driving_leg(*at) == *at) {
                let motor = gear.legs.get(other).and_then(|leg| leg.drive.electric);
                if other != drive
                    && let Some(motor) = motor
                {
                    on_battery.push((motor, beside(other).ok()));
                }
            }
        }
        let pushes = prepared.leg(drive)?.linkage().lengthens_up();
        let on_drive = beside(drive)?;
        let own = prepared.leg(leg)?;
        Ok(Some(Self {
            on_drive,
            on_battery,
            ratio: if gear.drives_alone(leg) {
                1.0
            } else {
                own.leg().drive_ratio
            },
            unlocks: own.linkage().path().unlocks,
            ways: [pushes, !pushes]
                .map(|lengthens| Drive::new(&driver.actuator, &gear.supply).going(lengthens)),
        }))
    }

    /// The other legs on the drive, by index.
    pub(crate) fn on_drive(&self) -> Vec<usize> {
        self.on_drive.iter().map(|partner| partner.leg).collect()
    }

    /// What a case needs for the legs on the drive.
    pub(crate) fn missing(&self, gear: &Gear, case: LoadCase) -> Option<MissingInput> {
        let legs = self.on_drive.iter().filter_map(|p| gear.legs.get(p.leg));
        legs.filter_map(|leg| case_conditions(case, &gear.conditions, &leg.air).err())
            .find(|needs| *needs != MissingInput::DragArea)
    }

    /// Turns what a leg needs by itself into what its drive needs; gives the leg that nothing moves there.
    pub(crate) fn join(
        &self,
        at: &mut CaseAt,
        case: LoadCase,
        place: Place,
    ) -> Option<PartnerStands> {
        if self.on_drive.is_empty() {
            return None;
        }
        let mut stands = None;
        for (motion, way) in [Motion::Retract, Motion::Extend]
            .into_iter()
            .zip(&self.ways)
        {
            let Ok(moved) = at.motion_mut(motion) else {
                continue;
            };
            let mut effort = self.ratio * moved.effort;
            for partner in &self.on_drive {
                match partner.need(case, motion, (place, self.unlocks)) {
                    Some(need) => effort += partner.ratio * need,
                    None => {
                        stands.get_or_insert(PartnerStands {
                            leg: partner.leg,
                            motion,
                            place,
                        });
                    }
                }
            }
            moved.pressure = way.needs(effort);
        }
        stands
    }

    /// Current of the other drives on the battery at a place (A): each by what its legs need there, at the
    /// most its locked current, which one draws that nothing moves or whose need is not known.
    pub(crate) fn current(&self, case: LoadCase, motion: Motion, place: Place) -> f64 {
        let drives = self.on_battery.iter();
        drives
            .map(|(motor, legs)| {
                let need = |leg: &Partner| {
                    Some(leg.ratio * leg.need(case, motion, (place, self.unlocks))?)
                };
                let needs = legs.as_ref().and_then(|legs| legs.iter().map(need).sum());
                let share = needs.map_or(1.0, |needs: f64| needs / motor.stall_force);
                let rise = motor.locked_current - motor.idle_current;
                motor.idle_current + rise * share.clamp(0.0, 1.0)
            })
            .sum()
    }
}

impl Partner {
    fn new(prepared: &PreparedGear<'_>, leg: usize) -> Result<Self, Faults> {
        let gear = prepared.gear();
        let swept = prepared.leg(leg)?;
        let (model, linkage) = (swept.leg(), swept.linkage());
        let alone = gear.drives_alone(leg);
        let conditions = LoadCase::ALL.map(|case| {
            let own = case_conditions(case, &gear.conditions, &model.air);
            let still = || case_conditions(LoadCase::Turn, &gear.conditions, &model.air);
            let loaded = match own {
                // what has no drag area is loaded by weight alone
                Err(MissingInput::DragArea) => still().ok(),
                own => own.ok(),
            };
            loaded.map(|conditions| weight_and_wind(model.view, &conditions))
        });
        let ready = LegLoads::new(
            model,
            linkage,
            &gear.supply,
            conditions.iter().flatten().copied(),
        );
        let loaded_from = linkage.loaded_from();
        let mut warm = [[Warm::default(); 2]; LoadCase::ALL.len()];
        let mut row = |ready: &LegLoads, pose: &Pose| {
            let carried = pose.place.progress < loaded_from;
            let mut needs = [[carried.then_some(0.0); 2]; LoadCase::ALL.len()];
            let stance = PoseLoads::new(ready, pose, true).filter(|_| !carried);
            if let Some(stance) = stance {
                for ((needs, loads), warm) in needs.iter_mut().zip(conditions).zip(&mut warm) {
                    if let Some(loads) = loads {
                        let at = stance.at(loads, Some(warm));
                        let effort = |motion| at.motion(motion).as_ref().ok().map(|m| m.effort);
                        *needs = [effort(Motion::Retract), effort(Motion::Extend)];
                    }
                }
            }
            Row {
                progress: pose.place.progress,
                needs,
            }
        };
        let moving = |pose: &&Pose| pose.place.phase != Phase::Shorten;
        let poses = swept.poses(STATIONS);
        let poses = || poses.iter().filter(moving);
        let rows = poses().map(|pose| row(&ready, pose)).collect();
        let standing = ready.standing();
        let begins = poses()
            .filter(|pose| standing.begins(&pose.place))
            .map(|pose| row(&standing, pose))
            .collect();
        Ok(Self {
            leg,
            ratio: if alone { 1.0 } else { model.drive_ratio },
            rows,
            begins,
            linkage: linkage.clone(),
        })
    }

    /// What it needs in a case and motion where another leg, which `unlocks` a knee first or not, is at a
    /// place (N); `None` where nothing moves it.
    fn need(&self, case: LoadCase, motion: Motion, (place, unlocks): (Place, bool)) -> Option<f64> {
        let first = self.rows.first()?;
        let of = |row: &Row| {
            let needs = row.needs.get(case as usize)?;
            needs[usize::from(motion == Motion::Extend)]
        };
        if !unlocks && place.progress <= 0.0 && first.progress < 0.0 {
            // it unlocks while the other leg, which has nothing to unlock, stands where it begins
            let unlocking = self.begins.iter().chain(&self.rows);
            return unlocking
                .filter(|row| row.progress <= 0.0)
                .map(of)
                .reduce(|a, b| Some(a?.max(b?)))
                .flatten();
        }
        let progress = match place.phase {
            Phase::Swing => self.linkage.progress_at_travel(place.travel),
            Phase::Unlock | Phase::Shorten => place.progress.max(first.progress).min(0.0),
        };
        let same = |row: &&Row| (row.progress - progress).abs() < SAME_PLACE;
        if let Some(begins) = self.begins.iter().find(same) {
            return of(begins);
        }
        let after = self.rows.partition_point(|row| row.progress < progress);
        let Some(b) = self.rows.get(after) else {
            // the last row is up, but for rounding; a leg that stops short has none there
            let last = self.rows.last()?;
            return (last.progress >= 1.0 - SAME_PLACE)
                .then(|| of(last))
                .flatten();
        };
        let Some(a) = after.checked_sub(1).and_then(|at| self.rows.get(at)) else {
            return of(b);
        };
        let share = (progress - a.progress) / (b.progress - a.progress);
        let (from, to) = (of(a)?, of(b)?);
        Some(from + share * (to - from))
    }
}
