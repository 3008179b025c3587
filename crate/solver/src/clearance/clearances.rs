//! Every moving part against every obstacle.
use crate::kinematics::{Linkage, Pose};
use crate::model::{ClearanceRule, Leg, MovingPart, Point};
use crate::result::{Clearance, PairClearance, SkewLosses, Tightest, TireState, governing_order};
use crate::tires::{TireSizes, requirement};

use super::barrier::Barrier;
use super::curves::{CurveCase, curves};
use super::envelope::{leg_envelope, wheel_envelope};
use super::outline::all_parts;
use super::own::{Own, own_clearances};
use super::pair::Runner;
use super::path_nodes::PathNodes;
use super::rig::Rig;
use super::room::room;
use super::signed::signed_clearance;
use super::skew::{as_drawn, skew_losses};
use super::turning::RadialBarrier;
use crate::result::ClearanceError;

/// What clearances are worked out for.
#[derive(Clone, Copy, Debug)]
pub struct ClearanceCase<'a> {
    /// The leg, checked.
    pub leg: &'a Leg,
    /// Its tire, new and grown.
    pub sizes: &'a TireSizes,
    /// Clearances asked for where an obstacle has no figure of its own.
    pub rule: &'a ClearanceRule,
    /// The same leg made ready.
    pub linkage: &'a Linkage,
    /// Its poses in path order, from down and locked to up or to the first jam.
    pub poses: &'a [Pose],
}

/// How finely to work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceOptions {
    /// Every how many poses a curve has a point, at least 1.
    pub curve_stride: usize,
    /// Accuracy of certified clearances (m).
    pub accuracy: f64,
    /// Clearance from which a curve only says "beyond" (m).
    pub curve_reach: f64,
    /// Whether the tire is checked against its own leg, too.
    pub own_leg: bool,
    /// Whether what the skews given may take off the clearances of the wheel is taken off.
    pub less_skew: bool,
}

/// Default of [`ClearanceOptions::curve_reach`] (m).
pub const DEFAULT_CURVE_REACH: f64 = 0.25;

impl Default for ClearanceOptions {
    fn default() -> Self {
        Self {
            curve_stride: 6,
            accuracy: 1e-5,
            curve_reach: DEFAULT_CURVE_REACH,
            own_leg: true,
            less_skew: true,
        }
    }
}

/// Clearance of one pair at one pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PoseClearance {
    /// Obstacle, as index into the leg's well.
    pub obstacle: usize,
    /// Moving part.
    pub part: MovingPart,
    /// Tire size, for the wheel only.
    pub tire: Option<TireState>,
    /// Clearance and where it is measured; its place is that of the pose.
    pub tightest: Tightest,
}

/// Signed clearance of every moving outline to every obstacle over the whole path, certified.
///
/// # Errors
/// [`ClearanceError`] when some stretch of the path cannot be resolved; never a pass instead.
pub fn clearances(
    case: &ClearanceCase,
    options: &ClearanceOptions,
) -> Result<Clearance, ClearanceError> {
    if !(options.accuracy > 0.0 && options.accuracy.is_finite()) || options.curve_stride == 0 {
        return Err(ClearanceError::Options {
            accuracy: options.accuracy,
            curve_stride: options.curve_stride,
        });
    }
    let leg = case.leg;
    let shortening = &leg.strut.shortening;
    let rig = Rig::new(leg);
    let track = PathNodes::new(case.linkage, rig, shortening, case.poses)?;
    let losses = match options.less_skew {
        true => skew_losses(leg, case.sizes),
        false => as_drawn(leg, case.sizes),
    };
    let parts = all_parts(leg, &rig, case.sizes, Some(&losses));
    let runners = parts
        .iter()
        .map(|part| Runner::new(part, &track, shortening))
        .collect::<Result<Vec<_>, _>>()?;
    let barriers: Vec<Barrier> = leg.well.iter().map(Barrier::new).collect();
    let mut pairs = Vec::with_capacity(parts.len() * barriers.len());
    let mut past = Vec::with_capacity(parts.len() * barriers.len());
    for (obstacle, (given, barrier)) in leg.well.iter().zip(&barriers).enumerate() {
        let seen = RadialBarrier::new(barrier, rig.trunnion);
        for (part, runner) in parts.iter().zip(&runners) {
            if given.ignores.contains(&part.part) {
                continue;
            }
            let found =
                runner.clearance(&track, barrier, &seen, None, (obstacle, options.accuracy))?;
            let found = found.ok_or(ClearanceError::NothingToCheck { part: part.part })?;
            past.push(found.core_past);
            pairs.push(PairClearance {
                obstacle,
                obstacle_name: given.name.clone(),
                part: part.part,
                tire: part.tire,
                tightest: found.tightest,
                certified_to: found.certified_to,
                less_for_skew: part.tire.map_or(0.0, |tire| losses.of(tire).to_well),
                requirement: requirement(given, case.rule, part.part, part.tire),
                first_contact: found.first_contact,
            });
        }
    }
    let governing = governing(&pairs);
    let curves = curves(&CurveCase {
        track: &track,
        runners: &runners,
        barriers: &barriers,
        pairs: &pairs,
        past: &past,
        poses: case.poses,
        options,
    })?;
    let own = match options.own_leg {
        true => own_clearances(case, &rig, &losses, options.accuracy)?,
        false => Own::default(),
    };
    let drawn = all_parts(leg, &rig, case.sizes, None);
    Ok(Clearance {
        governing,
        own: own.rows,
        own_not_checked: own.not_checked,
        room: room(leg, case.sizes, case.rule, &losses),
        skew: losses,
        curves,
        wheel_envelope: wheel_envelope(&drawn, &track),
        leg_envelope: leg_envelope(&drawn, &track),
        pairs,
    })
}

/// The pair that governs: the deepest contact where there is one, else the least spare.
fn governing(pairs: &[PairClearance]) -> Option<usize> {
    let of = |pair: &PairClearance| (pair.tightest.clearance, pair.spare());
    let rows = pairs.iter().enumerate();
    rows.min_by(|a, b| governing_order(of(a.1), of(b.1)))
        .map(|(row, _)| row)
}

/// Exact clearance of every pair at one pose, in the order of [`Clearance::pairs`], less what skews
/// take off it.
///
/// # Errors
/// [`ClearanceError`] when the depth of a contact cannot be resolved.
pub fn clearance_at(
    leg: &Leg,
    sizes: &TireSizes,
    pose: &Pose,
) -> Result<Vec<PoseClearance>, ClearanceError> {
    let losses = skew_losses(leg, sizes);
    at_pose(leg, sizes, pose, Some(&losses))
}

/// As [`clearance_at`], as drawn: nothing is taken off for skews, which only bound what may be
/// missing.
///
/// # Errors
/// [`ClearanceError`] when the depth of a contact cannot be resolved.
pub fn drawn_clearance_at(
    leg: &Leg,
    sizes: &TireSizes,
    pose: &Pose,
) -> Result<Vec<PoseClearance>, ClearanceError> {
    at_pose(leg, sizes, pose, None)
}

fn at_pose(
    leg: &Leg,
    sizes: &TireSizes,
    pose: &Pose,
    losses: Option<&SkewLosses>,
) -> Result<Vec<PoseClearance>, ClearanceError> {
    let rig = Rig::new(leg);
    let parts = all_parts(leg, &rig, sizes, losses);
    let mut all = Vec::with_capacity(parts.len() * leg.well.len());
    let mut core: Vec<Point> = Vec::new();
    for (obstacle, given) in leg.well.iter().enumerate() {
        let barrier = Barrier::new(given);
        for part in parts.iter().filter(|p| !given.ignores.contains(&p.part)) {
            let progress = pose.place.progress;
            if !part.place(&rig, pose, &mut core) {
                return Err(ClearanceError::NotAssembled {
                    progress,
                    miss: 0.0,
                });
            }
            let signed = signed_clearance(&core, part.radius, &barrier).map_err(|_| {
                ClearanceError::Unresolved {
                    part: part.part,
                    obstacle,
                    from: progress,
                    to: progress,
                }
            })?;
            let signed = signed.ok_or(ClearanceError::NothingToCheck { part: part.part })?;
            all.push(PoseClearance {
                obstacle,
                part: part.part,
                tire: part.tire,
                tightest: Tightest {
                    clearance: signed.clearance,
                    place: pose.place,
                    on_part: signed.on_part,
                    on_obstacle: signed.on_obstacle,
                },
            });
        }
    }
    Ok(all)
}
