//! The whole path: poses at the stations, where it ends, dead points on the way.
use crate::model::Leg;
use crate::numeric::{bisected, bracketed_root, sort_by};
use crate::result::{Excursion, Jam, JamCause, MechanismEvent, MechanismEventKind, Phase};

use super::grid::progress_grid;
use super::linkage::BraceLinkage;
use super::{Linkage, Pose, Rates};

/// An end length may be passed by this much without being a stop (m): rounding of typed figures.
pub const END_TOLERANCE: f64 = 1e-6;
/// Width to which places are bracketed, in progress (ratio).
const PLACE_TOLERANCE: f64 = 1e-13;

/// The poses of a leg from down and locked to up, or to the first stop.
#[derive(Clone, Debug)]
pub struct Sweep {
    /// Poses in path order; the last one is up, or the first stop.
    pub poses: Vec<Pose>,
    /// Everything that stops the leg, the first to bite first.
    pub jams: Vec<Jam>,
    /// Singular poses up to the end of `poses`, in path order.
    pub events: Vec<MechanismEvent>,
    /// Passing the straight line out of an over-center lock.
    pub excursion: Option<Excursion>,
}

/// A limit on a length: how much is left before it bites (m), and the length itself.
struct Limit {
    spare: fn(&Linkage, &Bounds, &Pose) -> f64,
    cause: fn(&Bounds, f64) -> JamCause,
}

/// End lengths of the parts of a leg (m).
struct Bounds {
    brace_shortest: f64,
    brace_longest: f64,
    actuator_shortest: f64,
    actuator_longest: f64,
}

impl Sweep {
    /// Sweeps a checked leg over `stations` places of its swing (at least 2), and over two more at
    /// each row of a table of shortening.
    #[must_use]
    pub fn new(leg: &Leg, linkage: &Linkage, stations: usize) -> Self {
        let bounds = Bounds::new(leg, linkage);
        let grid = progress_grid(linkage, stations.max(2));
        let mut poses = Vec::with_capacity(grid.len());
        let mut jams = Vec::new();
        let turns = linkage.spans_turn();
        for progress in grid {
            // a brace that closes at two stations need not close between them, where its span turns back
            let last = poses
                .last()
                .map_or(progress, |pose: &Pose| pose.place.progress);
            let between = |turn: &&f64| last < **turn && **turn < progress;
            let broken = |turn: &&f64| linkage.pose(**turn).is_err();
            let ahead = turns.iter().filter(between).find(broken);
            let progress = ahead.copied().unwrap_or(progress);
            match linkage.pose(progress) {
                Ok(pose) => poses.push(pose),
                Err(_) => {
                    jams.extend(last_assembled(linkage, &mut poses, progress));
                    break;
                }
            }
        }
        jams.extend(
            LIMITS
                .iter()
                .filter_map(|limit| first_stop(linkage, &bounds, &poses, limit)),
        );
        sort_by(&mut jams, |a, b| {
            a.place.progress.total_cmp(&b.place.progress)
        });
        if let Some(jam) = jams.first() {
            let end = jam.place.progress;
            poses.retain(|pose| pose.place.progress < end - PLACE_TOLERANCE);
            poses.extend(linkage.pose(end));
        }
        let events = events(linkage, &poses);
        let excursion = linkage.swing_straight().map(|swing| Excursion {
            swing,
            at_axle: swing.abs() * axle_radius(linkage),
            allowed: match &leg.brace {
                crate::model::Brace::Folding(brace) => brace.excursion_allowed,
                _ => None,
            },
        });
        Self {
            poses,
            jams,
            events,
            excursion,
        }
    }

    /// Poses at other, perhaps fewer, places of the same way: it ends where this one ends.
    #[must_use]
    pub fn at_stations(&self, linkage: &Linkage, stations: usize) -> Vec<Pose> {
        let Some(last) = self.poses.last() else {
            return Vec::new();
        };
        let grid = progress_grid(linkage, stations.max(2)).into_iter();
        let before = grid.take_while(|progress| *progress < last.place.progress);
        let mut known = self.poses.iter().peekable();
        let poses = before.map_while(|progress| {
            while known
                .next_if(|pose| pose.place.progress < progress)
                .is_some()
            {}
            let same = known.peek().filter(|pose| pose.place.progress == progress);
            same.map_or_else(|| linkage.pose(progress).ok(), |pose| Some(**pose))
        });
        poses.chain([*last]).collect()
    }

    /// Every pose on the path at which the actuator has `length` (m), in path order: driving by
    /// the actuator instead of by the leg. Empty when it never has.
    #[must_use]
    pub fn at_actuator_length(&self, linkage: &Linkage, length: f64) -> Vec<Pose> {
        let mut nodes: Vec<Pose> = self.poses.clone();
        // dead points are nodes, so that both solutions beside one are found
        for event in &self.events {
            if event.kind == MechanismEventKind::ActuatorDeadPoint
                && let Ok(pose) = linkage.pose(event.place.progress)
            {
                nodes.push(pose);
            }
        }
        sort_by(&mut nodes, |a, b| {
            a.place.progress.total_cmp(&b.place.progress)
        });
        let mut found: Vec<Pose> = Vec::new();
        for pair in nodes.windows(2) {
            let [a, b] = pair else { continue };
            let root = bracketed_root(
                |s| {
                    linkage
                        .pose(s)
                        .map_or(f64::NAN, |p| p.actuator_length - length)
                },
                a.place.progress,
                b.place.progress,
                PLACE_TOLERANCE,
            );
            if let Ok(root) = root
                && found
                    .last()
                    .is_none_or(|p| root.x - p.place.progress > 10.0 * PLACE_TOLERANCE)
            {
                found.extend(linkage.pose(root.x));
            }
        }
        found
    }
}

impl Bounds {
    fn new(leg: &Leg, linkage: &Linkage) -> Self {
        let (brace_shortest, brace_longest) = match &linkage.brace {
            BraceLinkage::Sliding(b) => (b.shortest, b.longest),
            _ => (0.0, f64::INFINITY),
        };
        Self {
            brace_shortest,
            brace_longest,
            actuator_shortest: leg.actuator.shortest,
            actuator_longest: leg.actuator.longest,
        }
    }
}

const LIMITS: [Limit; 4] = [
    Limit {
        spare: |linkage, bounds, pose| bounds.brace_longest - brace_span(linkage, pose),
        cause: |bounds, worst| JamCause::SlidingBraceEndsLong {
            longest: bounds.brace_longest,
            asked: bounds.brace_longest - worst,
        },
    },
    Limit {
        spare: |linkage, bounds, pose| brace_span(linkage, pose) - bounds.brace_shortest,
        cause: |bounds, worst| JamCause::SlidingBraceEndsShort {
            shortest: bounds.brace_shortest,
            asked: bounds.brace_shortest + worst,
        },
    },
    Limit {
        spare: |_, bounds, pose| bounds.actuator_longest - pose.actuator_length,
        cause: |bounds, worst| JamCause::ActuatorEndsLong {
            longest: bounds.actuator_longest,
            asked: bounds.actuator_longest - worst,
        },
    },
    Limit {
        spare: |_, bounds, pose| pose.actuator_length - bounds.actuator_shortest,
        cause: |bounds, worst| JamCause::ActuatorEndsShort {
            shortest: bounds.actuator_shortest,
            asked: bounds.actuator_shortest + worst,
        },
    },
];

/// Length B0–B1 of a telescopic brace; NaN (never a stop) for the other kinds.
fn brace_span(linkage: &Linkage, pose: &Pose) -> f64 {
    match (&linkage.brace, pose.brace_attach) {
        (BraceLinkage::Sliding(brace), Some(attach)) => (attach - brace.pivot).norm(),
        _ => f64::NAN,
    }
}

/// Distance of the axle from the trunnion while the knee passes the straight line, after the strut
/// has shortened where it does so before the swing (m).
fn axle_radius(linkage: &Linkage) -> f64 {
    linkage.pose(0.0).map_or_else(
        |_| linkage.axle.norm(),
        |pose| (pose.axle - linkage.trunnion()).norm(),
    )
}

/// The place where a folding brace ceases to close, and its pose, added to `poses`.
fn last_assembled(linkage: &Linkage, poses: &mut Vec<Pose>, broken: f64) -> Option<Jam> {
    let good = poses.last()?.place.progress;
    let (lo, _) = bisected((good, broken), 0.0, |progress| {
        linkage.pose(progress).is_ok()
    });
    let pose = linkage.pose(lo).ok()?;
    poses.push(pose);
    let cause = brace_cause(linkage, lo)?;
    Some(Jam {
        place: pose.place,
        cause,
    })
}

/// Which way the brace misses on the rest of the swing after `from`, and by how much at most.
fn brace_cause(linkage: &Linkage, from: f64) -> Option<JamCause> {
    let BraceLinkage::Folding(brace) = &linkage.brace else {
        return None;
    };
    let reach = brace.upper_length + brace.lower_length;
    let least = (brace.upper_length - brace.lower_length).abs();
    // without a knee to straighten the swing starts at gear down
    let start = linkage.swing_straight().unwrap_or(0.0);
    let (mut longest, mut shortest) = (0.0_f64, f64::INFINITY);
    const STEPS: usize = 720;
    let even =
        (0..=STEPS).map(|step| from.max(0.0) + (1.0 - from.max(0.0)) * step as f64 / STEPS as f64);
    let turns = linkage.spans_turn().into_iter().filter(|s| *s > from);
    for s in even.chain(turns) {
        let share = match linkage.swing_straight() {
            Some(_) => super::path::swing_fraction(s),
            None => s,
        };
        let swing = start + (linkage.swing_up - start) * share;
        let attach = linkage.trunnion + nalgebra::Rotation2::new(swing) * brace.attach;
        let span = (attach - brace.pivot).norm();
        longest = longest.max(span);
        shortest = shortest.min(span);
    }
    if longest - reach >= least - shortest {
        Some(JamCause::BraceTooShort {
            reach,
            span: longest,
        })
    } else {
        Some(JamCause::BraceTooLong {
            least,
            span: shortest,
        })
    }
}

/// First place where a limit bites, with the worst value on the rest of the way.
fn first_stop(linkage: &Linkage, bounds: &Bounds, poses: &[Pose], limit: &Limit) -> Option<Jam> {
    let spare = |pose: &Pose| (limit.spare)(linkage, bounds, pose);
    if spare(poses.first()?).is_nan() {
        return None;
    }
    let at = |s: f64| linkage.pose(s).map_or(f64::NAN, |pose| spare(&pose)) + END_TOLERANCE;
    let (mut worst, mut place) = (f64::INFINITY, None);
    let mut ahead = poses.iter().map(|pose| (pose.place.progress, spare(pose)));
    // a station and those on both of its sides
    let (mut before, mut this) = (None, ahead.next());
    while let Some(here @ (progress, value)) = this {
        let after = ahead.next();
        worst = worst.min(value);
        if place.is_none() {
            let between = |from: f64, to: f64| {
                bracketed_root(at, from, to, PLACE_TOLERANCE).map_or(from, |root| root.first)
            };
            if value < -END_TOLERANCE {
                place = Some(before.map_or(progress, |(from, _)| between(from, progress)));
            } else if let (Some(before), Some(after)) = (before, after)
                && let Some((s, low)) = dip([before, here, after], &at)
                && low < 0.0
            {
                worst = worst.min(low - END_TOLERANCE);
                place = Some(between(before.0, s));
            }
        }
        (before, this) = (this, after);
    }
    let pose = linkage.pose(place?).ok()?;
    Some(Jam {
        place: pose.place,
        cause: (limit.cause)(bounds, worst),
    })
}

/// The lowest point between the neighbors of a station when it is a local minimum near the limit, of their
/// places and values: a limit must not be passed between two stations unseen.
fn dip(
    [(a, fa), (_, fm), (b, fb)]: [(f64, f64); 3],
    at: &impl Fn(f64) -> f64,
) -> Option<(f64, f64)> {
    // beyond reach: the curve cannot drop between stations by more than it varies across them
    if !(fm <= fa && fm <= fb) || fm > (fa - fm).max(fb - fm) {
        return None;
    }
    // golden section; 60 steps shrink the bracket by 3e12
    let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
    let (mut lo, mut hi) = (a, b);
    for _ in 0..60 {
        let (x, y) = (hi - golden * (hi - lo), lo + golden * (hi - lo));
        if at(x) < at(y) {
            hi = y;
        } else {
            lo = x;
        }
    }
    let s = 0.5 * (lo + hi);
    Some((s, at(s)))
}

/// Straight knee and dead points of the actuator.
fn events(linkage: &Linkage, poses: &[Pose]) -> Vec<MechanismEvent> {
    let mut found = Vec::new();
    if linkage.path().unlocks
        && poses.last().is_some_and(|p| p.place.progress >= 0.0)
        && let Ok(pose) = linkage.pose(0.0)
        && let Some(knee) = pose.knee
    {
        found.push(MechanismEvent {
            place: pose.place,
            kind: MechanismEventKind::KneeStraight,
            point: knee,
        });
    }
    for pair in poses.windows(2) {
        let [a, b] = pair else { continue };
        // where a brace ends its reach the leg stands still, and the sign of its rates is rounding
        let reach_ends = b.rates.swing.abs() <= Rates::STILL && poses.last() == Some(b);
        if a.place.phase == Phase::Shorten
            || (a.rates.actuator > 0.0) == (b.rates.actuator > 0.0)
            || linkage.brace_pivot() == Some(a.actuator_attach)
            || reach_ends
        {
            continue;
        }
        let root = bracketed_root(
            |s| linkage.pose(s).map_or(f64::NAN, |pose| pose.rates.actuator),
            a.place.progress,
            b.place.progress,
            PLACE_TOLERANCE,
        );
        if let Ok(root) = root
            && let Ok(pose) = linkage.pose(root.x)
        {
            found.push(MechanismEvent {
                place: pose.place,
                kind: MechanismEventKind::ActuatorDeadPoint,
                point: pose.actuator_attach,
            });
        }
    }
    sort_by(&mut found, |a, b| {
        a.place.progress.total_cmp(&b.place.progress)
    });
    found
}
