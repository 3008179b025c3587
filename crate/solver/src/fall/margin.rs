//! What a fall has to spare: friction of what has stood, and what is missing where it stops short.
use super::drop::{Case, Drop, Ending};
use super::fall_of::NEARLY_STRAIGHT;
use super::rub::Rubbing;
use super::way::{COLUMNS, FallWay, Node, PINS, STROKE, WEIGHTS};
use crate::kinematics::Linkage;
use crate::model::Leg;
use crate::result::{FallRequired, FallShort, FallStart};
use crate::statics::Warm;

/// Friction of a leg that has stood.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stood {
    /// Of the seals (N).
    pub(super) seals: f64,
    /// That of the pins over what they run with (ratio).
    pub(super) pins: f64,
}

impl Stood {
    pub(super) fn of(leg: &Leg) -> Self {
        Self {
            seals: leg.actuator.seals_stood(),
            pins: leg.fall.pins_stood(),
        }
    }
}

/// A leg that is let go anywhere on its way after it has stood there.
pub(super) struct Standing<'a> {
    track: &'a FallWay,
    case: &'a Case,
    stood: &'a Stood,
    rubbing: Option<&'a Rubbing<'a>>,
}

impl<'a> Standing<'a> {
    /// Of a way that has the couples of the pins alone.
    pub(super) fn new(
        track: &'a FallWay,
        case: &'a Case,
        stood: &'a Stood,
        rubbing: Option<&'a Rubbing<'a>>,
    ) -> Self {
        Self {
            track,
            case,
            stood,
            rubbing,
        }
    }

    /// Friction that holds the leg at a knot, along the way; `warm` is what is known of the knots before.
    pub(super) fn held(&self, at: usize, warm: &mut Warm) -> Option<f64> {
        let row = self.track.table.values().get(at)?;
        Some(match self.rubbing {
            Some(rubbing) => rubbing.stood(at, row, self.case.dynamic_pressure, self.stood, warm),
            None => self.stood.seals * row[STROKE].abs() + self.stood.pins * row[PINS],
        })
    }

    /// Where on its way the leg is let go with the least to start it, over what holds it; `None` where
    /// nothing holds it and all pushes it on.
    pub(super) fn start(&self) -> Option<FallStart> {
        let mut warm = Warm::default();
        let ratios: Vec<f64> = (0..self.track.nodes.len())
            .map_while(|at| {
                Some(ratio(
                    self.case,
                    self.track.table.values().get(at)?,
                    self.held(at, &mut warm)?,
                ))
            })
            .collect();
        let least = (0..ratios.len()).min_by(|a, b| ratios[*a].total_cmp(&ratios[*b]))?;
        let ratio = ratios[least];
        let place = |at: usize| self.track.nodes.get(at).map(|node| node.place);
        let from = (0..=least).rev().take_while(|at| ratios[*at] < 1.0).last();
        let to = (least..ratios.len())
            .take_while(|at| ratios[*at] < 1.0)
            .last();
        ratio.is_finite().then_some(FallStart {
            ratio,
            place: place(least)?,
            stays_from: from.and_then(place),
            stays_to: to.and_then(place),
        })
    }
}

/// What closes the leg over what holds it.
fn ratio(case: &Case, row: &[f64; COLUMNS], held: f64) -> f64 {
    let push = case.push(row);
    match (push > 0.0, held > 0.0) {
        (_, true) => push / held,
        (true, false) => f64::INFINITY,
        (false, false) => 0.0,
    }
}

/// Whether it reaches the lock at a required factor on its friction, by the factor that stops it or the largest
/// tried; `None` where these are too near to tell, and the whole fall must.
pub(super) fn decided((factor, tried): (Option<f64>, Option<f64>), times: f64) -> Option<bool> {
    match (factor, tried) {
        (Some(factor), _) if (factor / times - 1.0).abs() > CLEAR => Some(factor > times),
        (None, Some(tried)) if tried > (1.0 + CLEAR) * times => Some(true),
        _ => None,
    }
}

/// How far a limit must be from the required factor to decide it without a whole fall (ratio): limits agree with
/// single falls to 0.1 %, and to 2 % where pins rub.
const CLEAR: f64 = 0.1;

/// The factor on the friction and the largest tried, as the whole fall at the required factor has them:
/// both are searched more roughly than that.
pub(super) fn agreed(
    (factor, tried): (Option<f64>, Option<f64>),
    required: Option<FallRequired>,
) -> (Option<f64>, Option<f64>) {
    match required {
        Some(FallRequired {
            times,
            reaches: true,
        }) => (
            factor.map(|factor| factor.max(times)),
            tried.map(|tried| tried.max(times)),
        ),
        Some(FallRequired {
            times,
            reaches: false,
        }) => {
            let below = (1.0 - JUST) * times;
            (Some(factor.map_or(below, |factor| factor.min(below))), None)
        }
        None => (factor, tried),
    }
}

/// How little below the required factor is told as below it (ratio).
const JUST: f64 = 1e-3;

/// What is missing where a leg comes to rest or stays; `None` where it does neither.
pub(super) fn short(
    track: &FallWay,
    linkage: &Linkage,
    case: &Case,
    dropped: &Drop,
) -> Option<FallShort> {
    if !matches!(dropped.ending, Ending::Rest | Ending::Held) {
        return None;
    }
    let knots = track.table.knots().iter().zip(track.table.values());
    let all = knots.zip(&track.nodes);
    let mut weight = 0.0_f64;
    let mut missing = f64::NEG_INFINITY;
    for (at, ((x, row), node)) in all.enumerate() {
        let arm = arm(node);
        weight = weight.max((row[WEIGHTS] / arm).abs());
        let held = match at {
            0 => case.held.max(case.friction(row)),
            _ => case.friction(row),
        };
        if *x >= dropped.x {
            missing = missing.max((held - case.push(row)) / arm);
        }
    }
    let rests = track.place(linkage, dropped.x)?;
    let axle = |progress: f64| linkage.pose(progress).ok().map(|pose| pose.axle);
    let stop = axle(track.nodes.last()?.place.progress)?;
    (weight > 0.0).then_some(FallShort {
        missing_share: finite(missing / weight),
        from_stop: (axle(rests.progress)? - stop).norm(),
    })
}

/// What is finite: friction is not where pins bind.
pub(super) fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

/// Over this a push along the way is a moment about the trunnion; while the leg nearly stands still it is
/// about that of the knee.
fn arm(node: &Node) -> f64 {
    if node.swing >= NEARLY_STRAIGHT {
        node.swing
    } else {
        1.0
    }
}
