//! How far a fall can be driven before it stops short: airspeed and friction, by bounded searches.
use std::cell::RefCell;

use super::drop::Case;
use super::rub::Rubbing;
use super::track::{AIR, COLUMNS, INERTIA, PINS_BY_SPEED, STROKE, Track};
use crate::numeric::bracketed_root;
use crate::result::FallAirspeed;

/// Highest airspeed tried [m/s].
const MOST_AIRSPEED: f64 = 340.0;
/// Largest factor of friction, and largest seal friction [N], that are tried.
const MOST_FACTOR: f64 = 1e3;
const MOST_SEAL_FRICTION: f64 = 1e6;
/// Width of a bracket, as a share of its value, to which a limit is searched where a return orifice
/// damps the fall [1]. Without an orifice the first failure is in closed form. Both agree with single
/// falls to 0.1 %.
const RESOLUTION: f64 = 2e-4;
/// The same where pins rub, whose loads are worked out again at each value [1].
const SETTLED_LIMIT: f64 = 4e-3;
/// Most rounds in which the loads of rubbing pins at a limit are found.
const MOST_ROUNDS: usize = 20;
/// Most halvings of a bracket.
const HALVINGS: usize = 40;

/// Whether the leg reaches the lock: its energy of motion K over the way, dK/dx = N − D, must stay
/// above zero.
pub(super) fn reaches(rows: &[Place], case: &Case) -> bool {
    if rows.first().is_none_or(|(_, row)| case.net(row) <= 0.0) {
        return false;
    }
    // damping only takes energy: a leg with a push all the way comes down whatever the damping
    rows.iter().all(|(_, row)| case.net(row) > 0.0) || energies(rows, case).all(|end| end > 0.0)
}

/// Energy of motion at the end of each piece in turn; from where it runs out it is not above zero.
pub(super) fn energies<'a>(rows: &'a [Place], case: &'a Case) -> impl Iterator<Item = f64> + 'a {
    let dragged = case.damper.is_some() || rows.iter().any(|(_, row)| row[PINS_BY_SPEED] != 0.0);
    let mut energy = 0.0;
    rows.windows(3).step_by(2).map(move |piece| {
        if let [(x0, a), (_, b), (x1, c)] = piece
            && energy >= 0.0
        {
            let start = energy;
            let pushes = [a, b, c].map(|row| case.net(row));
            energy += (x1 - x0) / 6.0 * (pushes[0] + 4.0 * pushes[1] + pushes[2]);
            if dragged {
                let decay = Decay::over(x1 - x0, case, [a, b, c]);
                energy = decay.damped(start, energy, pushes, |mean| laminar_share(case, b, mean));
            }
        }
        energy
    })
}

/// What drag does over a piece of the way to the energy of motion K. It goes with the energy, c·K:
/// what is there at the start is left by e^−∫c, and the push under the same factor.
struct Decay {
    length: f64,
    /// ∫c over the whole piece, and over its second half [1].
    whole: f64,
    later: f64,
}

impl Decay {
    /// Each by the parabola through the rows of ends and middle.
    fn over(length: f64, case: &Case, rows: [&[f64; COLUMNS]; 3]) -> Self {
        let [a, b, c] = rows.map(|row| case.drag(row) * 2.0 / row[INERTIA]);
        let whole = length / 6.0 * (a + 4.0 * b + c);
        let half = length / 24.0 * (8.0 * b + 5.0 * c - a);
        Self {
            length,
            whole,
            later: half.clamp(whole.min(0.0), whole.max(0.0)),
        }
    }

    /// Energy at the end, from that at the start and what it would be there without drag; negative where
    /// it runs out. `laminar` raises the drag at the mean energy, as an orifice does.
    fn damped(&self, start: f64, free: f64, pushes: [f64; 3], laminar: impl Fn(f64) -> f64) -> f64 {
        let mut end = free;
        for _ in 0..4 {
            let mean = 0.5 * (start + end.max(0.0));
            if mean <= 0.0 {
                break;
            }
            let before = std::mem::replace(&mut end, self.end(start, pushes, laminar(mean)));
            if (end - before).abs() <= SETTLED * mean {
                break;
            }
        }
        end
    }

    /// Energy at the end, from that at the start, pushes at ends and middle, and a factor on the drag.
    /// Where the drag takes all within the piece, the push is taken as even.
    fn end(&self, start: f64, [a, b, c]: [f64; 3], factor: f64) -> f64 {
        let whole = self.whole * factor;
        if whole == 0.0 {
            return start + self.length / 6.0 * (a + 4.0 * b + c);
        }
        let left = (-whole).exp();
        if whole < STRONG {
            let middle = (-self.later * factor).exp();
            start * left + self.length / 6.0 * (a * left + 4.0 * b * middle + c)
        } else {
            let even = (a + 4.0 * b + c) / 6.0;
            start * left - even * self.length * (-whole).exp_m1() / whole
        }
    }
}

/// All drag at an energy of motion over that which goes with its square of speed [1].
fn laminar_share(case: &Case, row: &[f64; COLUMNS], energy: f64) -> f64 {
    let Some(damper) = case.damper else {
        return 1.0;
    };
    let square = 2.0 * energy / row[INERTIA];
    let turbulent = case.drag(row) * square;
    if turbulent > 0.0 {
        let laminar =
            damper.push(row[STROKE], square.sqrt()) - damper.turbulent(row[STROKE]) * square;
        1.0 + laminar / turbulent
    } else {
        1.0
    }
}

/// Change of the end energy, as a share of it, below which it is settled [1].
const SETTLED: f64 = 1e-5;

/// Damping over a piece, as the logarithm of what it leaves, from which it takes all [1].
const STRONG: f64 = 3.0;

/// A place along the way and its row.
type Place = (f64, [f64; COLUMNS]);

/// What of a net push does not hang on a quantity, and what each unit of the quantity adds.
type Line = (f64, f64);

/// Between which values of a quantity the fall first stops short, from `line` that splits the net
/// push of a row: up to the first value something pushes all the way, and from the second value
/// on the leg is sure to stop. `None` where nothing stops it.
///
/// The energy of motion is linear in the quantity, so that every place has one value at which it runs
/// out; with an orifice too while its laminar part, which only takes more, is left out.
fn first_stop(
    rows: &[Place],
    case: &Case,
    line: &dyn Fn(&[f64; COLUMNS]) -> Line,
) -> Option<(f64, f64)> {
    let stop = |(constant, each): Line| {
        if each < 0.0 {
            constant / -each
        } else {
            f64::INFINITY
        }
    };
    let pushed = rows
        .iter()
        .map(|(_, row)| stop(line(row)))
        .fold(f64::INFINITY, f64::min);
    let mut stopped = rows
        .first()
        .map_or(f64::INFINITY, |(_, row)| stop(line(row)));
    let mut energy: Line = (0.0, 0.0);
    for piece in rows.windows(3).step_by(2) {
        let [(x0, a), (_, b), (x1, c)] = piece else {
            continue;
        };
        let h = x1 - x0;
        let decay = Decay::over(h, case, [a, b, c]);
        let (a, b, c) = (line(a), line(b), line(c));
        energy = (
            decay.end(energy.0, [a.0, b.0, c.0], 1.0),
            decay.end(energy.1, [a.1, b.1, c.1], 1.0),
        );
        stopped = stopped.min(stop(energy));
    }
    stopped.is_finite().then_some((pushed, stopped))
}

/// The value of a quantity at which the fall first stops short, from `from`, at which it does not;
/// `None` beyond `most`.
fn limit(
    rows: &[Place],
    case: &Case,
    (from, most): (f64, f64),
    line: &dyn Fn(&[f64; COLUMNS]) -> Line,
    good: &dyn Fn(f64) -> bool,
) -> Option<f64> {
    let found = first_stop(rows, case, line);
    if case.damper.is_none() {
        return found.map(|(_, stops)| stops).filter(|&stops| stops <= most);
    }
    let (pushed, stops) = found.unwrap_or((from, f64::INFINITY));
    let mut low = pushed.max(from).min(most);
    let mut high = stops.min(most);
    // the first guess at the far end is rougher than the search itself
    for _ in 0..HALVINGS {
        if !good(high) {
            break;
        }
        if high >= most {
            return None;
        }
        low = high;
        high = (high * 1.01).min(most);
    }
    for _ in 0..HALVINGS {
        if high - low <= RESOLUTION * high {
            break;
        }
        let middle = 0.5 * (low + high);
        if good(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(low)
}

/// What a limit is sought for: how it splits the net push of a row, and the case at a value of it.
struct Quantity<'a> {
    line: &'a dyn Fn(&[f64; COLUMNS]) -> Line,
    with: &'a dyn Fn(f64) -> Case,
    from: f64,
    most: f64,
}

/// How far the fall of a track in a case can be driven.
pub(super) struct Limits<'a> {
    track: &'a Track,
    case: &'a Case,
    /// With a thinned track, for the falls of other cases.
    rubbing: Option<(&'a Rubbing<'a>, RefCell<Track>)>,
}

impl<'a> Limits<'a> {
    /// `track` with the friction of `rubbing` pins in it. `None` where it has too few knots.
    pub(super) fn new(
        track: &'a Track,
        case: &'a Case,
        rubbing: Option<&'a Rubbing<'a>>,
    ) -> Option<Self> {
        let rubbing = match rubbing {
            Some(rubbing) => Some((rubbing, RefCell::new(rubbing.thinned(track)?))),
            None => None,
        };
        Some(Self {
            track,
            case,
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
            ..*self.case
        };
        let still_air = with(0.0);
        if !self.reaches(&still_air) {
            return FallAirspeed::NotInStillAir;
        }
        let found = self.value(&Quantity {
            line: &|row: &[f64; COLUMNS]| (still_air.net(row), row[AIR]),
            with: &with,
            from: 0.0,
            most: 0.5 * air_density * MOST_AIRSPEED * MOST_AIRSPEED,
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

    /// The friction given times this just stops it short.
    pub(super) fn friction_factor(&self) -> Option<f64> {
        let with = |factor: f64| Case {
            seal_friction: factor * self.case.seal_friction,
            pin_factor: factor,
            ..*self.case
        };
        if self.rubbing.is_none() && self.case.seal_friction == 0.0 {
            return None;
        }
        self.value(&Quantity {
            line: &|row: &[f64; COLUMNS]| (self.case.push(row), -self.case.friction(row)),
            with: &with,
            from: 1.0,
            most: MOST_FACTOR,
        })
    }

    /// Seal friction that just stops it short [N].
    pub(super) fn seal_friction(&self) -> Option<f64> {
        let with = |seal_friction: f64| Case {
            seal_friction,
            ..*self.case
        };
        let none = with(0.0);
        self.value(&Quantity {
            line: &|row: &[f64; COLUMNS]| (none.net(row), -row[STROKE].abs()),
            with: &with,
            from: self.case.seal_friction,
            most: MOST_SEAL_FRICTION,
        })
    }

    /// What `look` makes of the rows of the track with the pins as they are in the fall of a case.
    fn in_case<T>(&self, case: &Case, look: impl Fn(&[Place]) -> T) -> Option<T> {
        let Some((rubbing, thinned)) = &self.rubbing else {
            return Some(look(&self.track.halves));
        };
        // each case is near the one before
        let mut track = thinned.borrow_mut();
        rubbing.in_case(&mut track, case)?;
        Some(look(&track.halves))
    }

    fn reaches(&self, case: &Case) -> bool {
        self.in_case(case, |rows| reaches(rows, case)) == Some(true)
    }

    /// The value at which the fall first stops short.
    fn value(&self, quantity: &Quantity) -> Option<f64> {
        let Quantity {
            line, with, most, ..
        } = quantity;
        // with the pins as they are at a value
        let stop = |rows: &[Place], value: f64| {
            let range = (quantity.from, *most);
            let good = |value| reaches(rows, &with(value));
            limit(rows, &with(value), range, line, &good)
        };
        let first = stop(&self.track.halves, quantity.from);
        if self.rubbing.is_none() {
            return first;
        }
        // where the limit with the pins of a value is that value itself
        let over = |value: f64| {
            let Some(stop) = self.in_case(&with(value), |rows| stop(rows, value)) else {
                return f64::NAN;
            };
            let over = stop.unwrap_or(2.0 * most) - value;
            if over.abs() <= SETTLED_LIMIT * value {
                0.0
            } else {
                over
            }
        };
        let mut before = (quantity.from, f64::NAN);
        let mut at = first.unwrap_or(*most);
        for _ in 0..MOST_ROUNDS {
            let found = over(at);
            if found == 0.0 {
                return Some(at);
            }
            if found >= *most - at {
                return None;
            }
            if before.1 * found < 0.0 {
                let known = [before, (at, found)];
                let over = |value: f64| {
                    let end = known.iter().find(|end| end.0 == value);
                    end.map_or_else(|| over(value), |end| end.1)
                };
                let root = bracketed_root(over, before.0, at, SETTLED_LIMIT * at).ok()?;
                return Some(root.x);
            }
            before = (at, found);
            at = (at + found).max(quantity.from);
        }
        Some(at)
    }
}
