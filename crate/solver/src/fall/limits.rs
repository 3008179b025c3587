//! How far a fall can be driven before it stops short: airspeed and friction, by bounded searches.
use std::cell::RefCell;

use super::drop::Case;
use super::energies::{Line, Place, first_stop, reaches};
use super::margin::Stood;
use super::rub::{Rubbing, Thinned};
use super::way::{AIR, COLUMNS, FallWay, PINS, STROKE};
use crate::model::MOST_PIN_FRICTION;
use crate::numeric::bisected;
use crate::result::FallAirspeed;

/// Highest airspeed tried (m/s).
const MOST_AIRSPEED: f64 = 340.0;
/// Largest factor of friction that is tried, the same where pins rub, and largest seal friction (N).
/// Pins rub with a coefficient of some tenths (common practice): five times that is none of this world.
const MOST_FACTOR: f64 = 1e3;
const MOST_FACTOR_WITH_PINS: f64 = 5.0;
const MOST_SEAL_FRICTION: f64 = 1e6;
/// Width of a bracket, as a share of its value, to which a limit is searched where a return orifice
/// damps the fall (ratio). Without an orifice the first failure is in closed form. Both agree with single
/// falls to 0.1 %.
const RESOLUTION: f64 = 2e-4;
/// The same where pins rub, whose loads are worked out again at each value (ratio): a limit is told to 2 %, and
/// the loads themselves are worked out to a hundredth.
const BESIDE_LIMIT: f64 = 8e-3;
/// How much further the next value is, until falls on both sides of a limit are known (ratio), the first one
/// tried at least, as a share of the range (ratio), and most that are.
const FURTHER: f64 = 1.25;
const FIRST_TRIED: f64 = 1e-4;
const MOST_TRIED: usize = 60;
/// What is left at up over what holds a leg there that starts, whatever its running friction.
const STARTS: Line = (1.0, 0.0);
/// Most steps toward a bracket.
const MOST_STEPS: usize = 40;

/// How a quantity splits the net push of a row, and what is left at up over what holds the leg there.
type Split<'a> = (
    &'a dyn Fn(&[f64; COLUMNS]) -> Line,
    &'a dyn Fn(&[f64; COLUMNS]) -> Line,
);

/// The value of a quantity at which the fall first stops short, from `from`, at which it does not;
/// `None` beyond `most`.
fn limit(
    rows: &[Place],
    case: &Case,
    (from, most): (f64, f64),
    (line, starts): Split,
    good: &dyn Fn(f64) -> bool,
) -> Option<f64> {
    let found = first_stop(rows, case, line, starts);
    if case.damper.is_none() {
        return found.map(|(_, stops)| stops).filter(|&stops| stops <= most);
    }
    let (pushed, stops) = found.unwrap_or((from, f64::INFINITY));
    let mut low = pushed.max(from).min(most);
    let mut high = stops.min(most);
    // the first guess at the far end is rougher than the search itself
    for _ in 0..MOST_STEPS {
        if !good(high) {
            break;
        }
        if high >= most {
            return None;
        }
        low = high;
        high = (high * 1.01).min(most);
    }
    // what is left out of the value at which it is sure to stop takes little: the limit is next to it
    let mut below = RESOLUTION * high;
    for _ in 0..MOST_STEPS {
        let value = high - below;
        if value <= low {
            break;
        }
        if good(value) {
            low = value;
            break;
        }
        high = value;
        below *= 2.0;
    }
    Some(bisected((low, high), RESOLUTION, good).0)
}

/// What a limit is sought for: how it splits the pushes of a row, and the case at a value of it.
struct Quantity<'a> {
    split: Split<'a>,
    with: &'a dyn Fn(f64) -> Case,
    from: f64,
    most: f64,
    /// Width to which it is searched where pins rub, as a share of it (ratio).
    width: f64,
}

/// How far the fall over a way in a case can be driven.
pub(super) struct Limits<'a> {
    track: &'a FallWay,
    case: &'a Case,
    stood: Stood,
    /// With a thinned way, for the falls of other cases.
    rubbing: Option<(&'a Rubbing<'a>, RefCell<Thinned>)>,
}

impl<'a> Limits<'a> {
    /// The way `track` with the friction of `rubbing` pins in it. `None` where it has too few knots.
    pub(super) fn new(
        track: &'a FallWay,
        case: &'a Case,
        stood: Stood,
        rubbing: Option<&'a Rubbing<'a>>,
    ) -> Option<Self> {
        let rubbing = match rubbing {
            Some(rubbing) => Some((rubbing, RefCell::new(rubbing.thinned(track)?))),
            None => None,
        };
        Some(Self {
            track,
            case,
            stood,
            rubbing,
        })
    }

    /// Up to which airspeed it reaches the lock.
    pub(super) fn airspeed(&self, air_density: f64) -> FallAirspeed {
        let mut rows = self.track.table.values().iter();
        if rows.all(|row| row[AIR] == 0.0) || air_density == 0.0 {
            return FallAirspeed::NoAirLoad;
        }
        let with = |dynamic_pressure: f64| Case {
            dynamic_pressure,
            held: self.held_at_up(dynamic_pressure),
            ..*self.case
        };
        let still_air = with(0.0);
        if !self.reaches(&still_air) {
            return FallAirspeed::NotInStillAir;
        }
        let found = self.value(&Quantity {
            split: (
                &|row: &[f64; COLUMNS]| (still_air.net(row), row[AIR]),
                &|row: &[f64; COLUMNS]| (still_air.push(row) - still_air.held, row[AIR]),
            ),
            with: &with,
            from: 0.0,
            most: 0.5 * air_density * MOST_AIRSPEED * MOST_AIRSPEED,
            // the airspeed goes with its root
            width: 2.0 * BESIDE_LIMIT,
        });
        match found {
            None => FallAirspeed::AtEvery {
                tried: MOST_AIRSPEED,
            },
            Some(pressure) => FallAirspeed::UpTo {
                airspeed: (2.0 * pressure / air_density).sqrt(),
            },
        }
    }

    /// The friction given times this just stops it short; where none is found, the largest tried.
    /// `seal_limit` is the seal friction that does, `most_given` the largest coefficient of friction of
    /// the pins.
    pub(super) fn friction_factor(
        &self,
        seal_limit: Option<f64>,
        most_given: f64,
    ) -> (Option<f64>, Option<f64>) {
        let mut rows = self.track.table.values().iter();
        if rows.all(|row| self.case.friction(row) == 0.0) {
            return (None, None);
        }
        let mut rows = self.track.table.values().iter();
        if rows.all(|row| row[PINS] == 0.0) {
            let found = seal_limit.map(|limit| limit / self.case.seal_friction);
            let found = found.filter(|&factor| factor <= MOST_FACTOR);
            return (found, found.is_none().then_some(MOST_FACTOR));
        }
        let with = |factor: f64| self.case.times(factor);
        let most = match self.rubbing {
            Some(_) => (MOST_PIN_FRICTION / most_given).clamp(1.0, MOST_FACTOR_WITH_PINS),
            None => MOST_FACTOR,
        };
        let found = self.value(&Quantity {
            split: (
                &|row: &[f64; COLUMNS]| (self.case.push(row), -self.case.friction(row)),
                &|_: &[f64; COLUMNS]| STARTS,
            ),
            with: &with,
            from: 1.0,
            most,
            width: BESIDE_LIMIT,
        });
        (found, found.is_none().then_some(most))
    }

    /// Seal friction that just stops it short (N).
    pub(super) fn seal_friction(&self) -> Option<f64> {
        let with = |seal_friction: f64| Case {
            seal_friction,
            ..*self.case
        };
        let none = with(0.0);
        self.value(&Quantity {
            split: (
                &|row: &[f64; COLUMNS]| (none.net(row), -row[STROKE].abs()),
                &|_: &[f64; COLUMNS]| STARTS,
            ),
            with: &with,
            from: self.case.seal_friction,
            most: MOST_SEAL_FRICTION,
            width: BESIDE_LIMIT,
        })
    }

    /// Friction that holds the leg at up after it has stood there, at a dynamic pressure.
    fn held_at_up(&self, dynamic_pressure: f64) -> f64 {
        match (&self.rubbing, self.track.table.values().first()) {
            (Some((rubbing, _)), Some(row)) => rubbing.stood(0, row, dynamic_pressure, &self.stood),
            _ => self.case.held,
        }
    }

    /// What `look` makes of the rows of the way with the pins as they are in the fall of a case;
    /// `None` where none are found, as where they bind.
    fn in_case<T>(&self, case: &Case, look: impl Fn(&[Place]) -> T) -> Option<T> {
        let Some((rubbing, thinned)) = &self.rubbing else {
            return Some(look(&self.track.halves));
        };
        // each case is near the one before
        let mut thinned = thinned.borrow_mut();
        let way = rubbing.in_case(&mut thinned, case)?;
        Some(look(&way.halves))
    }

    fn reaches(&self, case: &Case) -> bool {
        self.in_case(case, |rows| reaches(rows, case)) == Some(true)
    }

    /// The value at which the fall first stops short.
    fn value(&self, quantity: &Quantity) -> Option<f64> {
        let Quantity {
            split, with, most, ..
        } = quantity;
        // with the pins as they are at a value
        let stop = |rows: &[Place], value: f64| {
            let range = (quantity.from, *most);
            let good = |value| reaches(rows, &with(value));
            limit(rows, &with(value), range, *split, &good)
        };
        let first = stop(&self.track.halves, quantity.from);
        if self.rubbing.is_none() {
            return first;
        }
        self.between_falls(quantity, first.unwrap_or(*most))
    }

    /// The same by whole falls, whose pins rub as they do in each: from a first `guess` on until one reaches the
    /// lock and one does not, and then half-way between such falls. `None` where the most that is tried
    /// reaches the lock.
    fn between_falls(
        &self,
        Quantity {
            with,
            from,
            most,
            width,
            ..
        }: &Quantity,
        guess: f64,
    ) -> Option<f64> {
        let good = |value: f64| self.reaches(&with(value));
        let guess = guess.max(from + FIRST_TRIED * (most - from)).min(*most);
        let (mut low, mut high) = (*from, guess);
        if good(guess) {
            (low, high) = (guess, *most);
            for _ in 0..MOST_TRIED {
                if low >= *most {
                    return None;
                }
                let value = (FURTHER * low).min(*most);
                if !good(value) {
                    high = value;
                    break;
                }
                low = value;
            }
        } else {
            for _ in 0..MOST_TRIED {
                let value = high / FURTHER;
                if value <= *from {
                    break;
                }
                if good(value) {
                    low = value;
                    break;
                }
                high = value;
            }
        }
        let (low, high) = bisected((low, high), *width, good);
        Some(0.5 * (low + high))
    }
}
