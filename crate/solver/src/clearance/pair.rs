//! One moving part against one obstacle over the whole path.
use crate::kinematics::Pose;
use crate::model::{BodyEnd, MovingPart, Point, Shortening, Vector};
use crate::result::{Contact, Phase, Tightest};

use super::barrier::Barrier;
use super::behind::first_behind;
use super::contact::first_contact;
use super::part::{Carrier, Part};
use super::path_nodes::{PathNodes, Turning};
use super::signed::{Signed, is_past, outline_pair, signed_clearance};
use super::subdivide::{Least, NearNodes, least_distance, near_nodes};
use super::sweep::{Sweep, lines_cross, nearest_lines};
use super::turning::{RadialBarrier, TurningCore, sliding_nearest};
use super::worst::greatest_depth;
use crate::result::ClearanceError;

/// Rounding of f64 that a closed form is charged with (m).
const ROUNDING: f64 = 1e-11;

/// A part made ready for its path.
pub(crate) struct Runner<'a> {
    pub(crate) sweep: Sweep<'a>,
    motion: Motion,
}

/// How a part's least distance is found.
enum Motion {
    /// Slides straight by a vector, if at all, then turns about a fixed center, if at all.
    Plain {
        slide: Option<Slide>,
        turning: Option<(Turning, TurningCore)>,
    },
    /// Anything else: by subdivision.
    General,
}

/// A part that slides straight.
struct Slide {
    /// Where it starts on this path, with the leg at down (m).
    core: Vec<Point>,
    /// As far as it comes (m).
    way: Vector,
    /// Progress there (ratio).
    end: f64,
}

/// What a pair comes to.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Found {
    pub(crate) tightest: Tightest,
    pub(crate) certified_to: f64,
    /// The core itself goes past the obstacle: depth is not a matter of line distance.
    pub(crate) core_past: bool,
    pub(crate) first_contact: Option<Contact>,
}

impl<'a> Runner<'a> {
    /// Makes `part` ready.
    pub(crate) fn new(
        part: &'a Part,
        track: &PathNodes,
        shortening: &Shortening,
    ) -> Result<Self, ClearanceError> {
        Ok(Self {
            sweep: Sweep::new(part, track)?,
            motion: motion(part, track, shortening)?,
        })
    }

    /// Clearance to `barrier` over the path. `trunnion` is the barrier seen from the trunnion, `near` the nodes
    /// where they are known.
    ///
    /// `None` for an obstacle without points.
    pub(crate) fn clearance(
        &self,
        track: &PathNodes,
        barrier: &Barrier,
        trunnion: &RadialBarrier,
        near: Option<&NearNodes>,
        (obstacle, accuracy): (usize, f64),
    ) -> Result<Option<Found>, ClearanceError> {
        let least = match &self.motion {
            Motion::General => {
                let sweep = &self.sweep;
                let search =
                    |near: &_| least_distance(track, sweep, barrier, near, obstacle, accuracy);
                match near {
                    Some(near) => Some(search(near)?),
                    None => near_nodes(track, sweep, barrier)?
                        .as_ref()
                        .map(search)
                        .transpose()?,
                }
            }
            Motion::Plain { slide, turning } => {
                self.plain(track, barrier, trunnion, slide.as_ref(), turning.as_ref())?
            }
        };
        let Some(least) = least else { return Ok(None) };
        let unresolved = |at: &Pose| ClearanceError::Unresolved {
            part: self.part(),
            obstacle,
            from: at.place.progress,
            to: at.place.progress,
        };
        let start = self.sweep.core(0)?;
        // lines that cross all the way have no corner that touches
        let crossed = lines_cross(start, barrier);
        // a least distance that may be none: the search for depth tells
        let distance = if crossed { 0.0 } else { least.at_least };
        let past = if is_past(start, barrier, distance) {
            Some(least.pose)
        } else {
            first_behind(track, &self.sweep, barrier, obstacle)?
        };
        let (pose, signed, certified_to) = match past {
            None => {
                let core = self.core(track, &least.pose)?;
                let Some(pair) = nearest_lines(&core, barrier, f64::INFINITY) else {
                    return Ok(None);
                };
                let radius = self.sweep.part.radius;
                let signed = outline_pair(pair.first, pair.second, pair.distance, radius);
                let spread = (pair.distance - least.at_least).max(0.0);
                (least.pose, signed, spread + ROUNDING)
            }
            Some(touch) => self.deep(track, barrier, touch).map_err(|e| match e {
                Some(error) => error,
                None => unresolved(&touch),
            })?,
        };
        let first_contact = if signed.clearance <= 0.0 {
            // a graze that the search steps over touches where it is tightest
            first_contact(track, &self.sweep, barrier, obstacle)?.or(Some(Contact {
                place: pose.place,
                bracket: 0.0,
                point: signed.on_obstacle,
            }))
        } else {
            None
        };
        Ok(Some(Found {
            tightest: Tightest {
                clearance: signed.clearance,
                place: pose.place,
                on_part: signed.on_part,
                on_obstacle: signed.on_obstacle,
            },
            certified_to,
            core_past: past.is_some(),
            first_contact,
        }))
    }

    /// The moving part.
    pub(crate) fn part(&self) -> MovingPart {
        self.sweep.part.part
    }

    /// The core in `pose`.
    pub(crate) fn core(
        &self,
        track: &PathNodes,
        pose: &Pose,
    ) -> Result<Vec<Point>, ClearanceError> {
        let mut core = Vec::with_capacity(self.sweep.part.core.len());
        if self.sweep.part.place(&track.rig, pose, &mut core) {
            Ok(core)
        } else {
            Err(ClearanceError::NotAssembled {
                progress: pose.place.progress,
                miss: 0.0,
            })
        }
    }

    /// Deepest contact of a core that goes past the barrier; `touch` is a pose where it does, for a
    /// core that only touches. The error is empty where the search did not end.
    fn deep(
        &self,
        track: &PathNodes,
        barrier: &Barrier,
        touch: Pose,
    ) -> Result<(Pose, Signed, f64), Option<ClearanceError>> {
        let depth = greatest_depth(track, &self.sweep, barrier).map_err(|_| None)?;
        let pose = if depth.points.is_some() {
            track.pose(depth.progress).map_err(Some)?
        } else {
            touch
        };
        let core = self.core(track, &pose).map_err(Some)?;
        let radius = self.sweep.part.radius;
        let signed = signed_clearance(&core, radius, barrier)
            .map_err(|_| None)?
            .ok_or(None)?;
        // a core that no more than touches at `touch`, by the bound of the search
        let clearance = signed.clearance.min(-depth.depth - radius);
        let certified = (clearance + radius + depth.at_most).max(0.0) + ROUNDING;
        Ok((
            pose,
            Signed {
                clearance,
                ..signed
            },
            certified,
        ))
    }

    fn plain(
        &self,
        track: &PathNodes,
        barrier: &Barrier,
        trunnion: &RadialBarrier,
        slide: Option<&Slide>,
        turning: Option<&(Turning, TurningCore)>,
    ) -> Result<Option<Least>, ClearanceError> {
        let slid = slide.and_then(|slide| sliding_nearest(&slide.core, slide.way, barrier));
        let turned = turning.and_then(|(_, core)| {
            if trunnion.is_from(core.centre) {
                core.nearest(trunnion)
            } else {
                core.nearest(&RadialBarrier::new(barrier, core.centre))
            }
        });
        let sliding_is_less = match (&slid, &turned) {
            (Some(a), Some(b)) => a.0 < b.0,
            (a, _) => a.is_some(),
        };
        if sliding_is_less {
            return match (slid, slide) {
                (Some((distance, fraction)), Some(slide)) => {
                    let start = track.first()?.pose.place.progress;
                    Ok(Some(Least {
                        distance,
                        at_least: distance,
                        pose: track.pose(start + fraction * (slide.end - start))?,
                    }))
                }
                _ => Ok(None),
            };
        }
        match (turned, turning) {
            (Some((distance, angle)), Some((turning, _))) => Ok(Some(Least {
                distance,
                at_least: distance,
                pose: track.pose_at(*turning, angle)?,
            })),
            _ => Ok(None),
        }
    }
}

/// How a part moves on this path.
fn motion(
    part: &Part,
    track: &PathNodes,
    shortening: &Shortening,
) -> Result<Motion, ClearanceError> {
    let rig = &track.rig;
    if part.from_wheel {
        return Ok(Motion::General);
    }
    let about = |turning, centre, core: &[Point], low, high| Motion::Plain {
        slide: None,
        turning: Some((turning, TurningCore::new(core, centre, low, high))),
    };
    let whole = |turning| track.range(turning, |_| true).ok_or(ClearanceError::NoPath);
    Ok(match part.carrier {
        Carrier::Leg => {
            let (low, high) = whole(Turning::Swing)?;
            about(Turning::Swing, rig.trunnion, &part.core, low, high)
        }
        Carrier::UpperLink | Carrier::UpperArm => {
            let (low, high) = whole(Turning::Upper)?;
            about(Turning::Upper, rig.pivot, &part.core, low, high)
        }
        Carrier::Body if rig.body_at == BodyEnd::Airframe => {
            let (low, high) = whole(Turning::Mount)?;
            about(Turning::Mount, rig.mount, &part.core, low, high)
        }
        Carrier::Axle if !matches!(shortening, Shortening::WithTravel { .. }) => {
            axle_motion(part, track)?
        }
        _ => Motion::General,
    })
}

/// A part that slides first and then turns.
fn axle_motion(part: &Part, track: &PathNodes) -> Result<Motion, ClearanceError> {
    let rig = &track.rig;
    let swings = |phase| phase != Phase::Shorten;
    // a path may start with the strut shortened in part
    let first = track.first()?.pose;
    let end = track.nodes.iter().find(|n| swings(n.pose.place.phase));
    let end = end.or(track.nodes.last()).map(|node| node.pose);
    let slide = end.filter(|_| !swings(first.place.phase)).map(|end| Slide {
        core: moved(&part.core, rig.slide * first.shortening),
        way: rig.slide * (end.shortening - first.shortening),
        end: end.place.progress,
    });
    let shift = rig.slide * track.last()?.pose.shortening;
    let shifted = moved(&part.core, shift);
    let turning = track
        .range(Turning::Swing, |node| swings(node.pose.place.phase))
        .map(|(low, high)| {
            let core = TurningCore::new(&shifted, rig.trunnion, low, high);
            (Turning::Swing, core)
        });
    Ok(Motion::Plain { slide, turning })
}

fn moved(core: &[Point], by: Vector) -> Vec<Point> {
    core.iter().map(|point| point + by).collect()
}
