//! Pins that rub while the leg falls.
//!
//! What a pin carries in a fall hangs on the speed, and the speed on what all pins carry. The friction
//! over the way is therefore written as that at rest and a part that goes with what the motion loads the
//! pins with (damping, and inertia times the square of the speed), which is exact at rest and at the
//! speed that the fall has at each knot; fall and friction are worked out in turn until they agree.
use super::drop::{Case, Drop, Ending, drop};
use super::energies::{energies, pieces};
use super::inertia::Inertias;
use super::margin::Stood;
use super::way::{COLUMNS, FallWay, INERTIA, PINS_BY_MOTION, STROKE, unit_wind};
use crate::kinematics::{Linkage, Pose};
use crate::model::{Conditions, Leg, Vector};
use crate::result::Motion;
use crate::statics::{BodyLoads, InMotion, Loads, MovingPins, PinSet, Warm, gravity, spring_loads};

/// Most passes, for the fall itself and for limits; each leaves a small share of the error of the one
/// before, but where pins are about to bind.
const MOST_PASSES: usize = 40;
const MOST_ROUGH_PASSES: usize = 32;
/// Least square of the speed at which the friction is looked at, as a share of that at the next knots
/// (ratio): slower, the difference from rest is lost in rounding.
const SLOWEST: f64 = 1e-4;
/// Error left in the friction anywhere, as a share of the largest net push, with which fall and
/// friction agree (ratio): for the fall itself, and for limits, which are sought to a hundredth.
const AGREED: f64 = 1e-8;
const AGREED_ROUGHLY: f64 = 1e-3;
/// What is taken where the passes run out (ratio): where friction has a kink, the last of it goes to and fro.
const ACCEPTED: f64 = 1e-3;
const ACCEPTED_ROUGHLY: f64 = 3e-2;
/// Overshoot of a pass that is taken back at most (ratio).
const MOST_OVERSHOOT: f64 = -10.0;
/// From so many passes on, this share of a correction is made (ratio).
const SMALLER_FROM: usize = 8;
const SMALLER: f64 = 0.4;
/// Limits are sought on every so many knots, and on more of them in this part of the way before the
/// lock, where a knee straightens (ratio).
const STRIDE: usize = 8;
const STRIDE_CLOSE: usize = 2;
const CLOSE: usize = 5;

/// The rubbing pins of a leg at the knots of its way.
pub(super) struct Rubbing<'a> {
    knots: Vec<Knot<'a>>,
    /// Which of them are looked at for limits.
    thin: Vec<usize>,
}

/// A way of fewer knots, with what is known of the pins there from the case before.
pub(super) struct Thinned {
    way: FallWay,
    known: Known,
}

/// The last solutions at each knot: at rest, and in motion.
#[derive(Default)]
struct Known([Vec<Warm>; 2]);

impl Known {
    fn over(knots: usize) -> Self {
        Self([vec![Warm::default(); knots], vec![Warm::default(); knots]])
    }
}

struct Knot<'a> {
    /// `None` where nothing resists the acceleration.
    pins: Option<MovingPins<'a>>,
    /// Sign of the rate of the actuator's length toward up.
    lengthens: f64,
}

impl<'a> Rubbing<'a> {
    /// `None` where a knot of the way has no pose.
    pub(super) fn new(
        track: &FallWay,
        set: &'a PinSet,
        (leg, linkage, conditions): (&Leg, &Linkage, &Conditions),
    ) -> Option<Self> {
        let inertias = Inertias::of(leg);
        let pull = gravity(leg.view, conditions);
        let wind = unit_wind(leg, conditions);
        let knot = |pose: &Pose| {
            let with = |case, springs| Loads::with_springs(leg, linkage, pose, case, springs);
            let (none, still) = (Vector::zeros(), BodyLoads::default());
            let loads = with([pull, none], spring_loads(leg, linkage, pose));
            let air = with([none, wind], still);
            let against = [
                &inertias.against_acceleration(leg, linkage, pose),
                &inertias.against_speed(leg, linkage, pose),
            ];
            Knot {
                pins: MovingPins::new(set, leg, linkage, pose, [&loads, &air], against),
                lengthens: pose.rates.actuator.signum(),
            }
        };
        let mut knots = Vec::with_capacity(track.nodes.len());
        for node in &track.nodes {
            knots.push(knot(&linkage.pose(node.place.progress).ok()?));
        }
        let last = knots.len().checked_sub(1)?;
        let close = last - last / CLOSE;
        // the last knot is one of them
        let close = close + (last - close) % STRIDE_CLOSE;
        let behind = (close..=last).step_by(STRIDE_CLOSE);
        let thin = (0..close).step_by(STRIDE).chain(behind).collect();
        Some(Self { knots, thin })
    }

    /// Lets the leg go at up; the way then has the friction of its pins in that fall. `None` where
    /// that is not finite.
    pub(super) fn drop(&self, track: &mut FallWay, case: &Case) -> Option<Drop> {
        let knots: Vec<_> = self.knots.iter().collect();
        let enough = (AGREED, ACCEPTED, MOST_PASSES);
        let agreed = agree(&knots, (track, &mut Known::over(knots.len())), case, enough)?;
        let dropped = drop(track, case, case.tolerance());
        Some(if agreed {
            dropped
        } else {
            Drop {
                ending: Ending::Lost,
                ..dropped
            }
        })
    }

    /// Friction of seals and pins that have stood at a knot, along the way, against the fall; without end
    /// where the pins bind.
    pub(super) fn stood(
        &self,
        at: usize,
        row: &[f64; COLUMNS],
        dynamic_pressure: f64,
        stood: &Stood,
        warm: &mut Warm,
    ) -> f64 {
        let pins = self.knots.get(at).and_then(|knot| {
            let at = InMotion {
                speed_squared: 0.0,
                thrust: stood.seals * knot.lengthens,
                dynamic_pressure,
                factor: stood.pins,
            };
            let pins = knot.pins.as_ref()?;
            pins.friction(Motion::Extend, &at, Some(warm)).ok()
        });
        stood.seals * row[STROKE].abs() + pins.unwrap_or(f64::INFINITY)
    }

    /// A way of fewer knots, for [`Self::in_case`].
    pub(super) fn thinned(&self, track: &FallWay) -> Option<Thinned> {
        Some(Thinned {
            way: track.at_knots(&self.thin)?,
            known: Known::over(self.thin.len()),
        })
    }

    /// The thinned way with the friction of the pins in the fall of another case; `None` where none is found.
    pub(super) fn in_case<'w>(&self, thinned: &'w mut Thinned, case: &Case) -> Option<&'w FallWay> {
        let knots: Vec<_> = self.thin.iter().map(|&at| &self.knots[at]).collect();
        let enough = (AGREED_ROUGHLY, ACCEPTED_ROUGHLY, MOST_ROUGH_PASSES);
        let Thinned { way, known } = thinned;
        (agree(&knots, (way, known), case, enough) == Some(true)).then_some(way)
    }
}

/// Squares of the speed at which the friction of a knot was worked out in a case, and what it was, the latest
/// first.
#[derive(Clone, Copy, Default)]
struct Seen([Option<(f64, f64)>; 2]);

impl Seen {
    /// Friction at a square of the speed so near to these that a straight line is off by no more than a share
    /// of it (ratio).
    fn between(&self, square: f64, share: f64) -> Option<f64> {
        let (at, friction) = self.0[0]?;
        if square == at {
            return Some(friction);
        }
        let (before, other) = self.0[1]?;
        let (off, from) = (square - at, square - before);
        let near = (off * from).abs() <= share * square * square;
        near.then(|| friction + off * (friction - other) / (at - before))
    }
}

/// Works out fall and friction in turn and puts the friction into the way; whether they agree, with
/// no pins that bind by the motion alone. `None` where it is not finite.
fn agree(
    knots: &[&Knot],
    (track, Known([known_at_rest, known_in_motion])): (&mut FallWay, &mut Known),
    case: &Case,
    (wanted, accepted, passes): (f64, f64, usize),
) -> Option<bool> {
    let mut seen = vec![Seen::default(); knots.len()];
    // `None`: the pins bind
    let mut found = |track: &FallWay, squares: &[f64], known: &mut [Warm]| -> Vec<Option<f64>> {
        let mut beside = Warm::default();
        let knots = knots.iter().zip(track.table.values());
        let knots = knots.zip(squares).zip(known).zip(&mut seen);
        knots
            .map(|((((knot, row), square), known), seen)| {
                if let Some(found) = seen.between(*square, wanted) {
                    return Some(found);
                }
                let was_known = known.is_known();
                let mut from = if was_known { *known } else { beside };
                let found = knot.friction(case, row, *square, &mut from);
                *known = from.latest();
                beside = if was_known { *known } else { from };
                if let Some(found) = found {
                    *seen = Seen([Some((*square, found)), seen.0[0]]);
                }
                found
            })
            .collect()
    };
    let friction = |track: &FallWay, found: &[Option<f64>]| -> Vec<f64> {
        let rows = track.table.values().iter().zip(found);
        // pins that bind let nothing through
        rows.map(|(row, found)| {
            found.unwrap_or((2.0 * case.push(row).abs() + 1.0) / case.pin_factor)
        })
        .collect()
    };
    let resting = found(track, &vec![0.0; knots.len()], known_at_rest);
    let at_rest = friction(track, &resting);
    // from the friction of another case, or from none
    let rows = track.table.values().iter();
    let mut by_motion: Vec<f64> = rows.map(|row| row[PINS_BY_MOTION]).collect();
    track.set_pins(&at_rest, &by_motion)?;
    let mut before = f64::INFINITY;
    let mut last = vec![(f64::NAN, f64::NAN); knots.len()];
    for pass in 0..passes {
        let squares = squares(track, case);
        let looked = looked_at(&squares);
        let in_motion = found(track, &looked, known_in_motion);
        let moving = friction(track, &in_motion);
        let mut change = 0.0_f64;
        for (knot, value) in by_motion.iter_mut().enumerate() {
            let row = &track.table.values()[knot];
            let loads = case.motion(row, looked[knot]);
            let now = if loads > 0.0 {
                (moving[knot] - at_rest[knot]) / loads
            } else {
                0.0
            };
            change = change.max((now - *value).abs() * case.motion(row, squares[knot]));
            // what overshoots is taken back by the slope that the last two passes show
            let (then, found) = last[knot];
            let slope = ((now - found) / (*value - then)).clamp(MOST_OVERSHOOT, 0.0);
            last[knot] = (*value, now);
            let whole = (now - *value) / (1.0 - if slope.is_nan() { 0.0 } else { slope });
            // what goes to and fro over a kink comes to rest in smaller steps
            *value += if pass < SMALLER_FROM {
                whole
            } else {
                SMALLER * whole
            };
        }
        // it starts at rest
        if let [first, second, ..] = by_motion.as_mut_slice() {
            *first = *second;
        }
        track.set_pins(&at_rest, &by_motion)?;
        // each pass shrinks the change as the one before did, or better; the first tells nothing
        let left = if change < before && before.is_finite() {
            change * (change / before)
        } else {
            change
        };
        let pushes = track.table.values().iter().map(|row| case.net(row).abs());
        let most = pushes.fold(0.0, f64::max);
        let is_last = pass + 1 == passes;
        if change == 0.0 || left <= wanted * most || is_last && change <= accepted * most {
            // pins that bind by the motion alone are no matter of a friction that holds against it
            let binds = (0..knots.len()).any(|knot| {
                squares[knot] > 0.0 && in_motion[knot].is_none() && resting[knot].is_some()
            });
            return Some(!binds);
        }
        before = change;
    }
    Some(false)
}

/// Squares of the speed at the knots, from the energy of motion; 0 where the fall does not come by.
fn squares(track: &FallWay, case: &Case) -> Vec<f64> {
    let mut squares = vec![0.0; track.nodes.len()];
    let rows = &track.halves;
    if rows.first().is_some_and(|(_, row)| case.starts(row)) {
        let pieces = pieces(rows, case);
        let ends = energies(rows, &pieces, case, &|_| 0.0)
            .skip(track.split - 1)
            .step_by(track.split);
        let knots = squares
            .iter_mut()
            .zip(track.table.values())
            .skip(1)
            .zip(ends);
        for ((square, row), [energy, _]) in knots {
            if energy <= 0.0 {
                break;
            }
            *square = 2.0 * energy / row[INERTIA];
        }
    }
    squares
}

/// Squares of the speed at which the friction is looked at: those of the fall, or where it is all but
/// at rest a share of those next to it, none beyond an end; where it does not come by, as where it came by
/// last.
fn looked_at(squares: &[f64]) -> Vec<f64> {
    let at = |knot: Option<usize>| knot.and_then(|i| squares.get(i)).copied().unwrap_or(0.0);
    let mut last = 0.0;
    (0..squares.len())
        .map(|i| {
            let next = at(i.checked_sub(1)).max(at(i.checked_add(1)));
            let here = at(Some(i)).max(SLOWEST * next);
            if here > 0.0 {
                last = here;
            }
            last
        })
        .collect()
}

impl Knot<'_> {
    /// Friction of the pins, against the fall, at the square of the speed, for one unit of the case's
    /// factor; `None` where they bind.
    fn friction(
        &self,
        case: &Case,
        row: &[f64; COLUMNS],
        square: f64,
        warm: &mut Warm,
    ) -> Option<f64> {
        // seals and orifice hold against the motion; without an orifice the seals alone
        let damping = case
            .damper
            .map_or(0.0, |damper| damper.force(row[STROKE], square.sqrt()));
        let at = InMotion {
            speed_squared: square,
            thrust: (case.seal_friction + damping) * self.lengthens,
            dynamic_pressure: case.dynamic_pressure,
            factor: case.pin_factor,
        };
        let pins = self.pins.as_ref()?;
        let all = pins.friction(Motion::Extend, &at, Some(warm)).ok()?;
        Some(all / case.pin_factor)
    }
}
