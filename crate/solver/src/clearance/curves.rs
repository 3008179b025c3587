//! Clearance curves over the path, for the screen.
use crate::kinematics::Pose;
use crate::model::{MovingPart, Point};
use crate::numeric::sort_by;
use crate::result::{ClearanceCurve, CurvePoint, PairClearance, TireState};

use super::barrier::Barrier;
use super::clearances::ClearanceOptions;
use super::pair::Runner;
use super::part::Part;
use super::path_nodes::PathNodes;
use super::segment::Bounds;
use super::signed::signed_clearance;
use super::sweep::nearest_lines;
use crate::result::ClearanceError;

/// What curves are worked out from.
pub(crate) struct CurveCase<'a> {
    pub(crate) track: &'a PathNodes<'a>,
    pub(crate) runners: &'a [Runner<'a>],
    pub(crate) barriers: &'a [Barrier],
    pub(crate) pairs: &'a [PairClearance],
    /// For each pair, whether the core itself goes past the obstacle somewhere.
    pub(crate) past: &'a [bool],
    pub(crate) poses: &'a [Pose],
    pub(crate) options: &'a ClearanceOptions,
}

/// The part of a pair that a curve needs.
struct Follower<'a> {
    part: &'a Part,
    /// Its place in the cores of a pose.
    core: usize,
    past: bool,
    /// It never comes nearer than this (m).
    least: f64,
    obstacle: usize,
}

/// The cores of all parts in one pose.
struct Placed {
    points: Vec<Point>,
    starts: Vec<usize>,
    bounds: Vec<Bounds>,
}

/// One curve of the wheel for each obstacle and tire size, and one of the nearest other part.
pub(crate) fn curves(case: &CurveCase) -> Result<Vec<ClearanceCurve>, ClearanceError> {
    let mut all = Vec::with_capacity(3 * case.barriers.len());
    // pairs come in the order of the obstacles, then of the runners
    let groups = groups(case);
    for group in &groups {
        all.push(ClearanceCurve {
            obstacle: group.obstacle,
            tire: group.tire,
            points: Vec::with_capacity(case.poses.len() / case.options.curve_stride + 3),
        });
    }
    let mut placed = Placed {
        points: Vec::new(),
        starts: Vec::new(),
        bounds: Vec::new(),
    };
    let mut leaders = vec![0; groups.len()];
    let last = case.poses.len().saturating_sub(1);
    for (i, pose) in case.poses.iter().enumerate() {
        if i % case.options.curve_stride != 0 && i != last {
            continue;
        }
        placed.fill(case, pose)?;
        for ((group, curve), leader) in groups.iter().zip(&mut all).zip(&mut leaders) {
            let point = group.at(case, &placed, pose, leader)?;
            curve.points.push(point);
        }
    }
    for (group, curve) in groups.iter().zip(&mut all) {
        group.add_tightest(case, &mut curve.points);
    }
    Ok(all)
}

/// The followers of one curve.
struct Group<'a> {
    obstacle: usize,
    tire: Option<TireState>,
    /// Those that come nearest first.
    followers: Vec<Follower<'a>>,
    pairs: Vec<usize>,
}

fn groups<'a>(case: &CurveCase<'a>) -> Vec<Group<'a>> {
    let mut groups: Vec<Group> = Vec::with_capacity(3 * case.barriers.len());
    for (i, (pair, &past)) in case.pairs.iter().zip(case.past).enumerate() {
        let found = case
            .runners
            .iter()
            .position(|r| r.part() == pair.part && r.sweep.part.tire == pair.tire);
        let Some((core, runner)) = found.and_then(|i| Some((i, case.runners.get(i)?))) else {
            continue;
        };
        let tire = pair.tire.filter(|_| pair.part == MovingPart::Wheel);
        let follower = Follower {
            part: runner.sweep.part,
            core,
            past,
            least: pair.tightest.clearance - pair.certified_to,
            obstacle: pair.obstacle,
        };
        match groups
            .iter_mut()
            .rev()
            .find(|g| g.obstacle == pair.obstacle && g.tire == tire)
        {
            Some(group) => {
                group.followers.push(follower);
                group.pairs.push(i);
            }
            None => groups.push(Group {
                obstacle: pair.obstacle,
                tire,
                followers: vec![follower],
                pairs: vec![i],
            }),
        }
    }
    for group in &mut groups {
        sort_by(&mut group.followers, |a, b| a.least.total_cmp(&b.least));
    }
    groups
}

impl Group<'_> {
    /// The curve's point at one pose; `leader` is the follower that was nearest last time.
    fn at(
        &self,
        case: &CurveCase,
        placed: &Placed,
        pose: &Pose,
        leader: &mut usize,
    ) -> Result<CurvePoint, ClearanceError> {
        let reach = case.options.curve_reach;
        let mut least = reach;
        let never_below = self.followers.first().map_or(f64::INFINITY, |f| f.least);
        let before = *leader;
        for (turn, i) in std::iter::once(before)
            .chain(0..self.followers.len())
            .enumerate()
        {
            let Some(follower) = self.followers.get(i) else {
                continue;
            };
            if follower.least >= least {
                // they come in their order but for the leader
                if turn == 0 {
                    continue;
                }
                break;
            }
            if turn > 0 && i == before {
                continue;
            }
            let barrier = case.barriers.get(follower.obstacle);
            let barrier = barrier.ok_or(ClearanceError::NothingToCheck {
                part: follower.part.part,
            })?;
            if let Some(value) = follower.clearance(placed, barrier, pose, least)? {
                least = value;
                *leader = i;
            }
        }
        Ok(CurvePoint {
            progress: pose.place.progress,
            travel: pose.place.travel,
            clearance: if least < reach {
                least
            } else {
                reach.max(never_below)
            },
            beyond: least >= reach,
        })
    }

    /// Puts the tightest place of the group where it belongs.
    fn add_tightest(&self, case: &CurveCase, points: &mut Vec<CurvePoint>) {
        let tightest = self
            .pairs
            .iter()
            .filter_map(|&i| case.pairs.get(i))
            .min_by(|a, b| a.tightest.clearance.total_cmp(&b.tightest.clearance));
        let Some(pair) = tightest else { return };
        let place = pair.tightest.place;
        let point = CurvePoint {
            progress: place.progress,
            travel: place.travel,
            clearance: pair.tightest.clearance,
            beyond: false,
        };
        let at = points.partition_point(|p| p.progress < place.progress);
        match points.get_mut(at) {
            Some(same) if same.progress == place.progress => *same = point,
            _ => points.insert(at, point),
        }
    }
}

impl Follower<'_> {
    /// Clearance when it is below `cutoff` (m).
    fn clearance(
        &self,
        placed: &Placed,
        barrier: &Barrier,
        pose: &Pose,
        cutoff: f64,
    ) -> Result<Option<f64>, ClearanceError> {
        let core = placed.core(self.core);
        if core.is_empty() {
            return Err(ClearanceError::NothingToCheck {
                part: self.part.part,
            });
        }
        let radius = self.part.radius;
        if self.past {
            let signed = signed_clearance(core, radius, barrier).map_err(|_| {
                ClearanceError::Unresolved {
                    part: self.part.part,
                    obstacle: self.obstacle,
                    from: pose.place.progress,
                    to: pose.place.progress,
                }
            })?;
            return Ok(signed.map(|s| s.clearance).filter(|&c| c < cutoff));
        }
        let far = cutoff + radius;
        let apart = placed
            .bounds
            .get(self.core)
            .is_some_and(|b| b.distance_squared(&barrier.bounds) >= far * far);
        if apart {
            return Ok(None);
        }
        Ok(nearest_lines(core, barrier, far).map(|pair| pair.distance - radius))
    }
}

impl Placed {
    fn fill(&mut self, case: &CurveCase, pose: &Pose) -> Result<(), ClearanceError> {
        self.points.clear();
        self.starts.clear();
        self.bounds.clear();
        for runner in case.runners {
            let start = self.points.len();
            self.starts.push(start);
            let part = runner.sweep.part;
            if !part.place_onto(&case.track.rig, pose, &mut self.points) {
                return Err(ClearanceError::NotAssembled {
                    progress: pose.place.progress,
                    miss: 0.0,
                });
            }
            let core = self.points.get(start..);
            self.bounds
                .push(core.map_or(Bounds::EVERYWHERE, Bounds::of));
        }
        self.starts.push(self.points.len());
        Ok(())
    }

    /// The core of a part; without points, which is refused, where there is none.
    fn core(&self, index: usize) -> &[Point] {
        match (self.starts.get(index), self.starts.get(index + 1)) {
            (Some(&from), Some(&to)) => self.points.get(from..to).unwrap_or_default(),
            _ => &[],
        }
    }
}
