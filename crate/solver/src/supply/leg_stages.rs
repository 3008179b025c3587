//! The way of one leg as the source sees it: stages, each with its load over the fluid or stroke.
use super::refine::{refined, scale};
use super::stage::{Stage, strut_stage, swing_stage};
use super::touch::Touch;
use crate::kinematics::{Linkage, Pose};
use crate::model::{Gear, Joint, Source};
use crate::prepared::PreparedLeg;
use crate::result::{Direction, Motion, Phase, Place};
use crate::statics::{self, LegLoads, PoseLoads, Warm};

/// Stations of the swing between which the load is a smooth curve.
const STATIONS: usize = 361;

/// Strokes within this of each other are the same (m).
const SAME_STROKE: f64 = 1e-12;

/// The way of one leg in one direction.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LegStages {
    /// Stages in the order in which they are driven.
    pub stages: Vec<Stage>,
    /// Place before the first stage.
    pub from: Place,
    /// Place behind the last one, where a lock of its own may have moved the leg on.
    pub to: Place,
    /// Progress up to which its lock is home (ratio).
    pub locked_until: f64,
    /// Whether the leg is not up at the end of the way that lies up.
    pub short_of_up: bool,
    /// Why the way ends before its end, if it does.
    pub blocked: Option<Blocked>,
}

/// Why a leg cannot be driven to the end of its way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Blocked {
    /// A part touches the well, by the drawing.
    Touches(Touch),
    /// A part runs out of its length or cannot be assembled.
    Jam,
    /// The actuator has no arm.
    DeadPoint,
    /// The pins bind; the one that takes most.
    Binds(Joint),
}

/// What stands at one station.
pub(super) struct Point {
    /// Where.
    pub place: Place,
    /// Length of the actuator (m).
    pub length: f64,
    /// Thrust of the fluid in the direction of the way (N); `None` where none moves the leg.
    pub effort: Option<f64>,
    /// Why there is none.
    none: Option<NoEffort>,
}

/// Why a point has no thrust.
#[derive(Clone, Copy, Debug, PartialEq)]
enum NoEffort {
    /// No arm, or a device of its own carries the leg there.
    NotDriven,
    /// The pins bind.
    Binds(Joint),
}

#[cfg(test)]
impl LegStages {
    /// The whole way of a leg of a gear, by index.
    pub(crate) fn of(gear: &Gear, leg: usize, direction: Direction) -> Self {
        let prepared = crate::prepared::PreparedGear::of(gear);
        Self::new(gear, prepared.leg(leg).unwrap(), direction, None)
    }
}

#[cfg(test)]
impl Point {
    /// One of the swing that this thrust (N) moves on, with the actuator at this length (m).
    pub(super) fn driven(progress: f64, length: f64, effort: f64) -> Self {
        Self {
            place: Place {
                phase: Phase::Swing,
                progress,
                travel: progress,
                swing: progress,
            },
            length,
            effort: Some(effort),
            none: None,
        }
    }
}

impl LegStages {
    /// The way of a leg of a checked gear; `until` is the progress beyond which it does not come up
    /// (ratio), where something is in its way.
    pub(crate) fn new(
        gear: &Gear,
        swept: &PreparedLeg,
        direction: Direction,
        until: Option<f64>,
    ) -> Self {
        let (leg, linkage) = (swept.leg(), swept.linkage());
        let case = statics::weight_and_wind(leg.view, &gear.conditions);
        let ready = LegLoads::new(leg, linkage, &gear.supply, [case]);
        let standing = ready.standing();
        let mut warm = [Warm::default(); 2];
        let motion = Motion::from(direction);
        let loaded_from = linkage.loaded_from();
        let poses = up_to(linkage, swept.poses(STATIONS), until);
        let point = |pose: &Pose, warm: &mut [Warm; 2]| {
            let driven = pose.place.progress >= loaded_from;
            let stance = driven
                .then(|| PoseLoads::new(&ready, pose, false))
                .flatten();
            let moved = stance.map(|stance| {
                let at = stance.at(case, Some(warm));
                at.motion(motion).as_ref().map(|m| m.effort).map_err(|j| *j)
            });
            Point {
                place: pose.place,
                length: pose.actuator_length,
                effort: moved.and_then(Result::ok),
                none: match moved {
                    Some(Ok(_)) => None,
                    Some(Err(joint)) => Some(NoEffort::Binds(joint)),
                    None => Some(NoEffort::NotDriven),
                },
            }
        };
        let points: Vec<Point> = poses
            .iter()
            .filter(|pose| pose.place.phase != Phase::Shorten)
            .map(|pose| point(pose, &mut warm))
            .collect();
        let points = refined(points, scale(gear, leg), |progress| {
            let pose = linkage.pose(progress).ok()?;
            Some(point(&pose, &mut [Warm::default(); 2]))
        });
        let first = poses.first().map(|pose| pose.place);
        let last = poses.last().map(|pose| pose.place);
        let start = Place {
            phase: Phase::Swing,
            progress: 0.0,
            travel: 0.0,
            swing: 0.0,
        };
        let (used, mut blocked) = driven(&points, linkage.hand_over.is_some(), direction);
        if !swept.sweep().jams.is_empty() && until.is_none() && blocked.is_none() {
            blocked = Some(Blocked::Jam);
        }
        let starts_at = match direction {
            Direction::Up => used.iter().find(|point| point.effort.is_some()),
            Direction::Down => used.last(),
        };
        // more than it runs against only where it has stood, at down or at up
        let stood = starts_at.and_then(|at| {
            let pose = linkage.pose(at.place.progress).ok()?;
            let at = PoseLoads::new(&standing, &pose, true)?.at(case, None);
            Some(at.motion(motion).as_ref().map(|m| m.effort).map_err(|j| *j))
        });
        let swing = match stood {
            Some(Err(joint)) => {
                blocked = Some(Blocked::Binds(joint));
                None
            }
            stood => swing_stage(gear, leg, used, stood.and_then(Result::ok), direction),
        };
        let strut = strut_stage(gear, swept, direction, until.unwrap_or(f64::INFINITY));
        let mut stages: Vec<Stage> = match direction {
            Direction::Up => strut.into_iter().chain(swing).collect(),
            // a leg that does not come down does not lengthen
            Direction::Down if blocked.is_some() => swing.into_iter().collect(),
            Direction::Down => swing.into_iter().chain(strut).collect(),
        };
        stages.retain(|stage| stage.extent > 0.0);
        if let Some(opens_at) = leg.drive.stage_valve
            && !matches!(gear.supply.source, Source::ElectricActuators)
        {
            for stage in stages.iter_mut().skip(1) {
                stage.opens_at = opens_at;
                stage.load = stage.load.at_least(opens_at);
            }
        }
        let ends = [first.unwrap_or(start), last.unwrap_or(start)];
        let [from, to] = match direction {
            Direction::Up => ends,
            Direction::Down => [ends[1], ends[0]],
        };
        Self {
            stages,
            from,
            to,
            locked_until: -f64::from(u8::from(linkage.path().unlocks)),
            short_of_up: until.is_some(),
            blocked,
        }
    }

    /// Whether a device of its own has the leg out of its lock where a stage begins.
    pub(super) fn is_carried_to(&self, stage: &Stage) -> bool {
        !stage.is_strut && stage.place(0.0).progress > self.locked_until
    }

    /// Share of the shortening of a strut that a jack makes on this way (ratio).
    pub(super) fn strut_part(&self) -> f64 {
        let strut = self.stages.iter().find(|stage| stage.is_strut);
        strut.map_or(1.0, |stage| stage.part)
    }

    /// Progress at the end of a way up (ratio); `None` where nothing is driven.
    pub(super) fn reach(&self) -> Option<f64> {
        let row = self.stages.last()?.places.last()?;
        Some(row[1])
    }
}

/// The poses as far as the leg comes up, with one where it stops.
fn up_to(linkage: &Linkage, poses: Vec<Pose>, until: Option<f64>) -> Vec<Pose> {
    let end = until.unwrap_or(f64::INFINITY);
    let stop = until.and_then(|progress| linkage.pose(progress).ok());
    poses
        .into_iter()
        .take_while(|pose| pose.place.progress < end)
        .chain(stop)
        .collect()
}

/// The points, from down to up, that the actuator can drive through, and what stops it. Where no device
/// of its own has the knee before, the first may be without force.
fn driven(
    points: &[Point],
    handed_over: bool,
    direction: Direction,
) -> (&[Point], Option<Blocked>) {
    let first = points
        .iter()
        .position(|point| point.none != Some(NoEffort::NotDriven))
        .unwrap_or(points.len());
    let start = first.saturating_sub(usize::from(!handed_over));
    let points = points.get(start..).unwrap_or(&[]);
    let binding = |point: &Point| match point.none {
        Some(NoEffort::Binds(joint)) => Some(Blocked::Binds(joint)),
        _ => None,
    };
    let stop = match direction {
        Direction::Up => points.iter().position(|point| binding(point).is_some()),
        Direction::Down => points.iter().rposition(|point| binding(point).is_some()),
    };
    let bound = stop.and_then(|at| points.get(at)).and_then(binding);
    let points = match (direction, stop) {
        (Direction::Up, Some(at)) => points.get(..at).unwrap_or(&[]),
        (Direction::Down, Some(at)) => points.get(at + 1..).unwrap_or(&[]),
        (_, None) => points,
    };
    let mut sign = 0.0;
    for (at, pair) in points.windows(2).enumerate() {
        let [a, b] = pair else { continue };
        let change = b.length - a.length;
        let without_arm = b.none == Some(NoEffort::NotDriven) && at + 2 < points.len();
        let turns_back = change.abs() > SAME_STROKE && sign != 0.0 && change.signum() != sign;
        if turns_back || without_arm {
            return (points.get(..=at).unwrap_or(&[]), Some(Blocked::DeadPoint));
        }
        // The step out of the straight knee may go a little against the stroke: not driven.
        if change.abs() > SAME_STROKE && (a.effort.is_some() || at > 0) {
            sign = change.signum();
        }
    }
    (points, bound)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn still(progress: f64, length: f64) -> Point {
        Point {
            effort: None,
            none: Some(NoEffort::NotDriven),
            ..Point::driven(progress, length, 0.0)
        }
    }

    /// Lengths 0.40, 0.45, 0.47, 0.46, 0.44 m: behind the third the actuator has no way on.
    #[test]
    fn an_actuator_that_turns_back_stops_there() {
        let points = [
            (0.0, 0.40),
            (0.3, 0.45),
            (0.6, 0.47),
            (0.8, 0.46),
            (1.0, 0.44),
        ]
        .map(|(at, length)| Point::driven(at, length, 1.0));
        let (used, blocked) = driven(&points, false, Direction::Up);
        assert_eq!((used.len(), blocked), (3, Some(Blocked::DeadPoint)));
    }

    /// Up to its last point it is driven.
    #[test]
    fn a_last_point_without_arm_ends_the_way() {
        let points = [
            Point::driven(0.0, 0.40, 1.0),
            Point::driven(0.5, 0.45, 1.0),
            still(1.0, 0.46),
        ];
        let (used, blocked) = driven(&points, false, Direction::Up);
        assert_eq!((used.len(), blocked), (3, None));
    }

    /// A tenth of a millimeter back out of the straight knee is no dead point.
    #[test]
    fn the_step_out_of_the_straight_knee_may_go_back() {
        let points = [
            still(0.0, 0.400),
            Point::driven(0.01, 0.3999, 1.0),
            Point::driven(0.5, 0.45, 1.0),
            Point::driven(1.0, 0.47, 1.0),
        ];
        let (used, blocked) = driven(&points, false, Direction::Up);
        assert_eq!((used.len(), blocked), (4, None));
    }
}
