//! How far a fall can be driven before it stops short: airspeed and friction, by bounded searches.
use std::cell::RefCell;

use super::drop::Case;
use super::energies::{Outlook, Piece, Row, outlook, pieces};
use super::margin::Stood;
use super::rub::{Rubbing, Thinned};
use super::way::{AIR, FallWay, PINS, STROKE};
use crate::model::MOST_PIN_FRICTION;
use crate::result::FallAirspeed;
use crate::statics::Warm;

/// Highest airspeed tried (m/s).
const MOST_AIRSPEED: f64 = 340.0;
/// Largest factor of friction that is tried, the same where pins rub, and largest seal friction (N).
/// Pins rub with a coefficient of some tenths (common practice): five times that is none of this world.
const MOST_FACTOR: f64 = 1e3;
const MOST_FACTOR_WITH_PINS: f64 = 5.0;
const MOST_SEAL_FRICTION: f64 = 1e6;
/// How near to a limit, as a share of it, a value must be from which the limit is told, where a return
/// orifice damps the fall (ratio). Without an orifice the first failure is in closed form. Both agree with
/// single falls to 0.1 %.
const RESOLUTION: f64 = 2e-4;
/// The same where pins rub, whose loads are worked out again at each value (ratio): a limit is told to 2 %, and
/// the loads themselves are worked out to a hundredth.
const BESIDE_LIMIT: f64 = 4e-3;
/// How much further the next value is where what is known tells of none (ratio), and at least, as a share of
/// the range (ratio).
const FURTHER: f64 = 1.25;
const LEAST_FURTHER: f64 = 1e-4;
/// Most values that are looked at.
const MOST_TRIED: usize = 60;

/// What a limit is sought for: what each unit of it adds to a push, and to what starts the leg at up, and the
/// case at a value of it, from that of the fall or from nothing on.
struct Quantity<'a> {
    each: &'a dyn Fn(&Row) -> f64,
    starts: &'a dyn Fn(&Row) -> f64,
    with: &'a dyn Fn(f64) -> Case,
    from: f64,
    most: f64,
    /// How near to it a value must be where pins rub, as a share of it (ratio).
    near: f64,
}

/// Up to where the fall reaches the lock.
enum Limit {
    /// Not at the first value.
    None,
    At(f64),
    /// At every value that is tried.
    Beyond,
}

/// How far the fall over a way in a case can be driven.
pub(super) struct Limits<'a> {
    track: &'a FallWay,
    case: &'a Case,
    /// Whether it reaches the lock in the case.
    reaches: bool,
    /// Drag in the case over the way.
    pieces: Vec<Piece>,
    stood: Stood,
    /// With a thinned way, for the falls of other cases.
    rubbing: Option<(&'a Rubbing<'a>, RefCell<Thinned>)>,
}

impl<'a> Limits<'a> {
    /// The way `track` with the friction of `rubbing` pins in it, and whether the fall in the case reaches the
    /// lock. `None` where it has too few knots.
    pub(super) fn new(
        track: &'a FallWay,
        (case, reaches): (&'a Case, bool),
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
            reaches,
            pieces: pieces(&track.halves, case),
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
        let air = |row: &Row| row[AIR];
        let found = self.limit(&Quantity {
            each: &air,
            starts: &air,
            with: &with,
            from: 0.0,
            most: 0.5 * air_density * MOST_AIRSPEED * MOST_AIRSPEED,
            // the airspeed goes with its root
            near: 2.0 * BESIDE_LIMIT,
        });
        match found {
            Limit::None => FallAirspeed::NotInStillAir,
            Limit::Beyond => FallAirspeed::AtEvery {
                tried: MOST_AIRSPEED,
            },
            Limit::At(pressure) => FallAirspeed::UpTo {
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
        let found = self.friction(&Quantity {
            each: &|row: &Row| -self.case.friction(row),
            starts: &|_: &Row| 0.0,
            with: &with,
            from: 1.0,
            most,
            near: BESIDE_LIMIT,
        });
        (found, found.is_none().then_some(most))
    }

    /// Seal friction that just stops it short (N).
    pub(super) fn seal_friction(&self) -> Option<f64> {
        let with = |seal_friction: f64| Case {
            seal_friction,
            ..*self.case
        };
        self.friction(&Quantity {
            each: &|row: &Row| -row[STROKE].abs(),
            starts: &|_: &Row| 0.0,
            with: &with,
            from: self.case.seal_friction,
            most: MOST_SEAL_FRICTION,
            near: BESIDE_LIMIT,
        })
    }

    /// The friction at which a fall that reaches the lock stops short; `None` beyond the most that is tried.
    fn friction(&self, quantity: &Quantity) -> Option<f64> {
        match self.limit(quantity) {
            Limit::None => Some(quantity.from),
            Limit::At(value) => Some(value),
            Limit::Beyond => None,
        }
    }

    /// Friction that holds the leg at up after it has stood there, at a dynamic pressure.
    fn held_at_up(&self, dynamic_pressure: f64) -> f64 {
        match (&self.rubbing, self.track.table.values().first()) {
            (Some((rubbing, _)), Some(row)) => {
                rubbing.stood(0, row, dynamic_pressure, &self.stood, &mut Warm::default())
            }
            _ => self.case.held,
        }
    }

    /// What the fall at a value of a quantity tells of it; `None` where the pins have no friction that agrees
    /// with it, as where they bind.
    fn outlook(&self, quantity: &Quantity, value: f64) -> Option<Outlook> {
        let case = &(quantity.with)(value);
        let look = |way: &FallWay, pieces: &[Piece]| {
            let Quantity { each, starts, .. } = quantity;
            outlook(&way.halves, pieces, case, value, *each, *starts)
        };
        if case.is_driven_as(self.case) {
            let found = look(self.track, &self.pieces);
            // next to none the energy of motion is lost in what it is worked out from
            let reaches = found.reaches || self.reaches;
            return Some(Outlook { reaches, ..found });
        }
        let Some((rubbing, thinned)) = &self.rubbing else {
            return Some(look(self.track, &self.pieces));
        };
        // each case is near the one before
        let mut thinned = thinned.borrow_mut();
        let found = rubbing.in_case(&mut thinned, case);
        let found = found.map(|way| look(way, &pieces(&way.halves, case)));
        if found.is_none() {
            // what went astray is nothing to go on from
            *thinned = rubbing.thinned(self.track)?;
        }
        found
    }

    /// The value at which the fall first stops short: where the one that each fall tells is that of the fall
    /// itself, by the secant method, held inside the bracket of what reaches the lock and what does not.
    fn limit(&self, quantity: &Quantity) -> Limit {
        let Quantity { from, most, .. } = *quantity;
        let closed = self.rubbing.is_none() && self.case.damper.is_none();
        let near = match self.rubbing {
            Some(_) => quantity.near,
            None => RESOLUTION,
        };
        let (mut good, mut bad) = (from, f64::INFINITY);
        let mut value = from;
        let mut before: Option<[f64; 2]> = None;
        for _ in 0..MOST_TRIED {
            let found = self.outlook(quantity, value);
            let reaches = found.as_ref().is_some_and(|found| found.reaches);
            let stops = found.map_or(f64::NAN, |found| found.stops);
            if closed && reaches {
                good = good.max(stops);
                break;
            }
            match reaches {
                true if value >= most => return Limit::Beyond,
                true => good = value,
                false if value <= from => return Limit::None,
                false => bad = value,
            }
            let off = stops - value;
            if off.abs() <= near * value {
                // what reaches the lock is none that stops it
                good = good.max(stops);
                break;
            }
            if bad - good <= near * most.min(bad) {
                good = 0.5 * (good + bad);
                break;
            }
            let slope = before.map_or(0.0, |[then, was_off]| (off - was_off) / (value - then));
            let secant = value - off / slope;
            before = off.is_finite().then_some([value, off]);
            let between = |next: &f64| good < *next && *next < bad;
            let next = Some(secant).filter(between).or(Some(stops).filter(between));
            value = next.unwrap_or(if bad.is_finite() {
                0.5 * (good + bad)
            } else {
                (FURTHER * value).max(value + LEAST_FURTHER * (most - from))
            });
            value = value.min(most);
        }
        if good <= most {
            Limit::At(good)
        } else {
            Limit::Beyond
        }
    }
}
