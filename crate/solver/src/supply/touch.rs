//! Where a leg first touches its well, or its tire its own leg, on the way up, by the drawing.
use crate::clearance::{
    ClearanceCase, ClearanceError, ClearanceOptions, clearances, drawn_clearance_at,
};
use crate::faults::{Fault, FaultKind, Faults};
use crate::field::Field;
use crate::kinematics::{Linkage, Pose};
use crate::model::{Gear, Leg, MovingPart};
use crate::prepared::PreparedLeg;
use crate::result::SupplyError;
use crate::result::{Clearance, OwnClearance, PairClearance, TireState};
use crate::tires::TireSizes;

/// Stations of the swing between which contact is looked for; each stretch is certified.
const STATIONS: usize = 181;

/// Of one pair so many contacts are looked through for the first that lies ahead.
const MOST_CONTACTS: usize = 20;

/// A first contact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Touch {
    /// Last place known to be free (ratio).
    pub progress: f64,
    /// What touches.
    pub part: MovingPart,
    /// What is touched.
    pub touched: Touched,
}

/// What is in the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Touched {
    /// A piece of the well, by index.
    Well(usize),
    /// A part of the leg itself, by the tire.
    Itself(MovingPart),
}

/// First contact of a leg with its tire as fitted new; `None` when it clears. What touches already
/// where the leg starts stops nothing until it has come free: it stood there before. A tire that
/// touches its own leg where it starts stops nothing at all.
///
/// # Errors
/// [`SupplyError::Faults`] when the clearance of a stretch of the way cannot be certified, or the leg cannot
/// stand where it is said to stand.
pub(super) fn first_touch(
    gear: &Gear,
    index: usize,
    swept: &PreparedLeg,
) -> Result<Option<Touch>, SupplyError> {
    let (leg, linkage, sweep) = (swept.leg(), swept.linkage(), swept.sweep());
    let begins = begins(leg, linkage);
    if let Some(last) = sweep.poses.last().filter(|l| l.place.progress < begins) {
        return Err(SupplyError::Faults(not_reached(index, last.place.travel)));
    }
    let poses = from(&swept.poses(STATIONS), linkage, begins);
    let way = Way {
        gear,
        linkage,
        sizes: &TireSizes::of(&leg.wheel.tire),
    };
    let found = match begins <= linkage.path().start() && !leg.out_of_plane.is_skewed() {
        // the certificate of the whole way, as the answer has it
        true => swept
            .clearances(&gear.clearance_rule, &ClearanceOptions::default())
            .map(touching),
        false => way.contacts(leg, &poses, true),
    };
    let touches = found
        .and_then(|found| {
            let mut first = itself(&found.own, begins);
            for pair in found.pairs {
                let touch = way.ahead(leg, &poses, begins, &pair)?;
                let sooner = |touch: &Touch| first.is_none_or(|f| touch.progress < f.progress);
                first = touch.filter(sooner).or(first);
            }
            Ok(first)
        })
        .map_err(|error| SupplyError::Faults(Faults::unresolved(index, error)))?;
    Ok(touches)
}

/// Where the new tire first touches its own leg ahead of where the leg stands.
fn itself(own: &[OwnClearance], begins: f64) -> Option<Touch> {
    let touches = own.iter().filter(|row| row.tire == TireState::New);
    touches
        .filter_map(|row| {
            let progress = row.first_contact?.place.progress;
            (progress > begins).then_some(Touch {
                progress,
                part: MovingPart::Wheel,
                touched: Touched::Itself(row.part),
            })
        })
        .min_by(|a, b| a.progress.total_cmp(&b.progress))
}

/// A leg cannot stand where it is said to stand.
fn not_reached(index: usize, reaches: f64) -> Faults {
    Faults(vec![Fault {
        leg: Some(index),
        path: Field::StartTravel.of_leg(index).to_string(),
        kind: FaultKind::NotReached { reaches },
    }])
}

/// Progress at which a leg stands when the gear is selected up.
fn begins(leg: &Leg, linkage: &Linkage) -> f64 {
    let part_of_the_way = leg.drive.start_travel.filter(|travel| *travel > 0.0);
    part_of_the_way.map_or(linkage.path().start(), |travel| {
        linkage.progress_at_travel(travel)
    })
}

/// The poses from a place on, with one there.
fn from(poses: &[Pose], linkage: &Linkage, begins: f64) -> Vec<Pose> {
    let ahead = poses.iter().filter(|pose| pose.place.progress > begins);
    linkage
        .pose(begins)
        .into_iter()
        .chain(ahead.copied())
        .collect()
}

/// Of the pairs those that touch, the tire as fitted new.
fn touching(mut found: Clearance) -> Clearance {
    found
        .pairs
        .retain(|pair| pair.first_contact.is_some() && pair.tire != Some(TireState::Grown));
    found
}

/// What contacts are looked for with.
struct Way<'a> {
    gear: &'a Gear,
    linkage: &'a Linkage,
    sizes: &'a TireSizes,
}

impl Way<'_> {
    /// Clearances on a way; of the pairs those that touch, the tire as fitted new.
    fn contacts(
        &self,
        leg: &Leg,
        poses: &[Pose],
        own_leg: bool,
    ) -> Result<Clearance, ClearanceError> {
        let case = ClearanceCase {
            leg,
            sizes: self.sizes,
            rule: &self.gear.clearance_rule,
            linkage: self.linkage,
            poses,
        };
        let options = ClearanceOptions {
            curve_stride: STATIONS,
            own_leg,
            // a skew only bounds what may be missing: a leg is not stopped by that
            less_skew: false,
            ..ClearanceOptions::default()
        };
        clearances(&case, &options).map(touching)
    }

    /// The first contact of a pair that lies ahead of where the leg stands.
    fn ahead(
        &self,
        leg: &Leg,
        poses: &[Pose],
        begins: f64,
        pair: &PairClearance,
    ) -> Result<Option<Touch>, ClearanceError> {
        let mut contact = pair.first_contact;
        let mut poses = poses.to_vec();
        // what is not found must not count as come free
        let missing = ClearanceError::NothingToCheck { part: pair.part };
        let mut only = leg.clone();
        only.well = vec![leg.well.get(pair.obstacle).cloned().ok_or(missing)?];
        for _ in 0..MOST_CONTACTS {
            let Some(found) = contact else {
                return Ok(None);
            };
            let starts = poses.first().map_or(begins, |pose| pose.place.progress);
            if found.place.progress > starts {
                return Ok(Some(Touch {
                    progress: found.place.progress,
                    part: pair.part,
                    touched: Touched::Well(pair.obstacle),
                }));
            }
            // it stands in contact: on to where it comes free
            let mut free = None;
            for (at, pose) in poses.iter().enumerate() {
                let there = drawn_clearance_at(&only, self.sizes, pose)?;
                let is_it = |one: &&crate::clearance::PoseClearance| {
                    (one.part, one.tire) == (pair.part, pair.tire)
                };
                let pair = there.iter().find(is_it).ok_or(missing)?;
                if pair.tightest.clearance > 0.0 {
                    free = Some(at);
                    break;
                }
            }
            let Some(free) = free else { return Ok(None) };
            poses.drain(..free);
            let again = self.contacts(&only, &poses, false)?;
            let same = again
                .pairs
                .iter()
                .find(|one| (one.part, one.tire) == (pair.part, pair.tire));
            contact = same.and_then(|one| one.first_contact);
        }
        let at = |pose: Option<&Pose>| pose.map_or(begins, |pose| pose.place.progress);
        Err(ClearanceError::NotFollowed {
            from: at(poses.first()),
            to: at(poses.last()),
        })
    }
}
