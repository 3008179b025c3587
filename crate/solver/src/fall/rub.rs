//! Pins that rub while the leg falls.
//!
//! What a pin carries in a fall hangs on the speed, and the speed on what all pins carry. The friction
//! over the way is therefore written as that at rest and a part that goes with the square of the
//! speed, which is exact at rest and at the speed that the fall has at each knot; fall and friction
//! are worked out in turn until they agree.
use super::drop::{Case, Drop, Ending, TOLERANCE, drop, drop_with_speeds};
use super::inertia::Inertias;
use super::track::{COLUMNS, STROKE, Track};
use crate::kinematics::Linkage;
use crate::model::{Conditions, Leg};
use crate::result::Motion;
use crate::statics::{Loads, MovingPins, PinSet, Warm, gravity, wind};

/// Most passes; each leaves a small share of the error of the one before.
const MOST_PASSES: usize = 40;
/// Change of the friction anywhere, as a share of the largest net push, below which fall and friction
/// agree [1].
const AGREED: f64 = 1e-8;
/// Least square of the speed at which the friction is looked at, as a share of that at the next knots
/// [1]: slower, the difference from rest is lost in rounding.
const SLOWEST: f64 = 1e-4;

/// Pins at the knots of a way.
struct Knots<'a> {
    pins: Vec<Option<MovingPins<'a>>>,
    /// Sign of the rate of the actuator's length towards up, and what binding pins hold with.
    others: Vec<(f64, f64)>,
}

/// Lets a leg with rubbing pins go at up; its track then has the friction of the pins in that fall.
///
/// `None` where the track's knots have no poses.
pub(super) fn drop_rubbing(
    track: &mut Track,
    case: &Case,
    (leg, linkage, conditions): (&Leg, &Linkage, &Conditions),
) -> Option<Drop> {
    let set = PinSet::of(leg);
    if !set.rub {
        return Some(drop(track, case, TOLERANCE));
    }
    let knots = Knots::new(track, &set, (leg, linkage, conditions))?;
    let at_rest = knots.friction(case, track, |_| 0.0);
    let mut by_speed = vec![0.0; at_rest.len()];
    track.set_pins(&at_rest, &by_speed)?;
    let mut lost = None;
    for _ in 0..MOST_PASSES {
        let (dropped, squares) = drop_with_speeds(track, case, TOLERANCE);
        let looked = looked_at(&squares);
        let moving = knots.friction(case, track, |knot| looked[knot]);
        let mut change = 0.0_f64;
        let mut last = 0.0;
        for (knot, value) in by_speed.iter_mut().enumerate() {
            let square = looked[knot];
            // where the fall does not come by, as where it came by last
            if square > 0.0 {
                last = (moving[knot] - at_rest[knot]) / square;
            }
            if squares[knot] > 0.0 {
                change = change.max((last - *value).abs() * squares[knot]);
            }
            *value = last;
        }
        // it starts at rest
        if let [first, second, ..] = by_speed.as_mut_slice() {
            *first = *second;
        }
        let size = track.table.values().iter().map(|row| case.net(row).abs());
        let agreed = change <= AGREED * size.fold(0.0, f64::max);
        track.set_pins(&at_rest, &by_speed)?;
        if agreed {
            return Some(dropped);
        }
        lost = Some(dropped);
    }
    lost.map(|dropped| Drop {
        ending: Ending::Lost,
        ..dropped
    })
}

/// Squares of the speed at which the friction is looked at: those of the fall, or where it is all but
/// at rest a share of those next to it.
fn looked_at(squares: &[f64]) -> Vec<f64> {
    let at = |knot: Option<usize>| knot.and_then(|i| squares.get(i)).copied().unwrap_or(0.0);
    (0..squares.len())
        .map(|i| {
            let next = at(i.checked_sub(1)).max(at(i.checked_add(1)));
            at(Some(i)).max(SLOWEST * next)
        })
        .collect()
}

impl<'a> Knots<'a> {
    fn new(
        track: &Track,
        set: &'a PinSet,
        (leg, linkage, conditions): (&Leg, &Linkage, &Conditions),
    ) -> Option<Self> {
        let inertias = Inertias::of(leg);
        let (gravity, wind) = (gravity(leg.view, conditions), wind(leg.view, conditions));
        let mut knots = Self {
            pins: Vec::with_capacity(track.nodes.len()),
            others: Vec::with_capacity(track.nodes.len()),
        };
        for node in &track.nodes {
            let pose = linkage.pose(node.place.progress).ok()?;
            let loads = Loads::new(leg, linkage, &pose, gravity, wind);
            let against = [
                &inertias.against_acceleration(leg, linkage, &pose),
                &inertias.against_speed(leg, linkage, &pose),
            ];
            let pins = MovingPins::new(set, leg, linkage, &pose, &loads, against);
            knots.pins.push(pins);
            knots.others.push((
                pose.rates.actuator.signum(),
                2.0 * loads.power(leg, linkage, &pose).abs() + 1.0,
            ));
        }
        Some(knots)
    }

    /// Friction of the pins at every knot, at the square of the speed there.
    fn friction(&self, case: &Case, track: &Track, square: impl Fn(usize) -> f64) -> Vec<f64> {
        let mut warm = Warm::default();
        let knots = self.pins.iter().zip(&self.others).zip(track.table.values());
        knots
            .enumerate()
            .map(|(knot, ((pins, (lengthens, binding)), row))| {
                let square = square(knot);
                // seals and orifice hold against the motion
                let held = case.seal_friction + damping_force(case, row, square.sqrt());
                let at = (square, held * lengthens);
                let found = pins.map(|pins| pins.friction(Motion::Extend, at, Some(&mut warm)));
                found
                    .and_then(Result::ok)
                    // pins that bind let nothing through
                    .unwrap_or(*binding)
            })
            .collect()
    }
}

/// Force of the orifice along the actuator at a speed along the way [N].
fn damping_force(case: &Case, row: &[f64; COLUMNS], speed: f64) -> f64 {
    case.damper
        .map_or(0.0, |damper| damper.force(row[STROKE], speed))
}
