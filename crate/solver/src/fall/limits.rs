//! How far a fall can be driven before it stops short: airspeed and friction, by bounded searches.
use super::drop::Case;
use super::track::{AIR, COLUMNS, INERTIA, PINS, PINS_BY_SPEED, STROKE, Track};
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
/// Most halvings of a bracket.
const HALVINGS: usize = 40;

/// Whether the leg reaches the lock: its energy of motion K over the way, dK/dx = N − D, must stay
/// above zero.
pub(super) fn reaches(track: &Track, case: &Case) -> bool {
    let rows = &track.halves;
    if rows.first().is_none_or(|(_, row)| case.net(row) <= 0.0) {
        return false;
    }
    // damping only takes energy: a leg with a push all the way comes down whatever the damping
    if rows.iter().all(|(_, row)| case.net(row) > 0.0) {
        return true;
    }
    let dragged = case.damper.is_some() || rubs(track);
    let mut energy = 0.0;
    rows.windows(3).step_by(2).all(|piece| {
        let [(x0, a), (_, b), (x1, c)] = piece else {
            return false;
        };
        let work = (x1 - x0) / 6.0 * (case.net(a) + 4.0 * case.net(b) + case.net(c));
        energy = if dragged {
            damped(energy, work, x1 - x0, case, [a, b, c])
        } else {
            energy + work
        };
        energy > 0.0
    })
}

/// Whether the motion adds to the friction of pins.
fn rubs(track: &Track) -> bool {
    let mut rows = track.table.values().iter();
    rows.any(|row| row[PINS_BY_SPEED] != 0.0)
}

/// Energy of motion at the end of a piece of length `h`, on which the net push does `work`; negative
/// where it runs out. `rows` are those of its ends and middle.
///
/// What goes with the square of the speed goes with the energy, D = c·K: K·e^−∫c and the push under
/// the same factor, each by the parabola through the three rows; the laminar part of an orifice raises
/// c by its share at the mean energy. Where the damping takes all within the piece, the push is taken
/// as even.
fn damped(energy: f64, work: f64, h: f64, case: &Case, rows: [&[f64; COLUMNS]; 3]) -> f64 {
    let [a, b, c] = rows.map(|row| case.drag(row) * 2.0 / row[INERTIA]);
    let whole = h / 6.0 * (a + 4.0 * b + c);
    // over the second half
    let half = h / 24.0 * (8.0 * b + 5.0 * c - a);
    let later = half.clamp(whole.min(0.0), whole.max(0.0));
    let middle = rows[1];
    let mut end = energy + work;
    for _ in 0..4 {
        let mean = 0.5 * (energy + end.max(0.0));
        if mean <= 0.0 {
            break;
        }
        let laminar = laminar_share(case, middle, mean);
        let (left, share) = decayed(whole * laminar);
        let work = if whole * laminar < STRONG {
            let [a, b, c] = rows.map(|row| case.net(row));
            h / 6.0 * (a * left + 4.0 * b * (-later * laminar).exp() + c)
        } else {
            work * share
        };
        let before = std::mem::replace(&mut end, energy * left + work);
        if (end - before).abs() <= SETTLED * mean {
            break;
        }
    }
    end
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

/// e^−decay and (1 − e^−decay)/decay, at no damping 1.
fn decayed(decay: f64) -> (f64, f64) {
    if decay.abs() > 1e-9 {
        (f64::exp(-decay), -(-decay).exp_m1() / decay)
    } else {
        (1.0 - decay, 1.0)
    }
}

/// What of a net push does not hang on a quantity, and what each unit of the quantity adds.
type Line = (f64, f64);

/// Between which values of a quantity the fall first stops short, from `line` that splits the net
/// push of a row: up to the first value something pushes all the way, and from the second value
/// on the leg is sure to stop. `None` where nothing stops it.
///
/// The energy of motion is linear in the quantity, so that every place has one value at which it runs
/// out; with an orifice too while its laminar part, which only takes more, is left out.
fn first_stop(
    track: &Track,
    case: &Case,
    line: impl Fn(&[f64; COLUMNS]) -> Line,
) -> Option<(f64, f64)> {
    let stop = |(constant, each): Line| {
        if each < 0.0 {
            constant / -each
        } else {
            f64::INFINITY
        }
    };
    let rows = &track.halves;
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
        let (a, middle, c) = (line(a), line(b), line(c));
        let work = (
            h / 6.0 * (a.0 + 4.0 * middle.0 + c.0),
            h / 6.0 * (a.1 + 4.0 * middle.1 + c.1),
        );
        let (left, share) = decayed(h * case.drag(b) * 2.0 / b[INERTIA]);
        energy = (
            energy.0 * left + work.0 * share,
            energy.1 * left + work.1 * share,
        );
        stopped = stopped.min(stop(energy));
    }
    stopped.is_finite().then_some((pushed, stopped))
}

/// The value of a quantity at which the fall first stops short, from `from`, at which it does not;
/// `None` beyond `most`.
fn limit(
    track: &Track,
    case: &Case,
    (from, most): (f64, f64),
    line: impl Fn(&[f64; COLUMNS]) -> Line,
    good: impl Fn(f64) -> bool,
) -> Option<f64> {
    let found = first_stop(track, case, line);
    if case.damper.is_none() && !rubs(track) {
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

/// Up to which airspeed it reaches the lock.
pub(super) fn airspeed(track: &Track, case: &Case, air_density: f64) -> FallAirspeed {
    let still = track.table.values().iter().all(|row| row[AIR] == 0.0);
    if still || air_density == 0.0 {
        return FallAirspeed::NoAirLoad;
    }
    let at = |dynamic_pressure: f64| {
        let case = Case {
            dynamic_pressure,
            ..*case
        };
        reaches(track, &case)
    };
    if !at(0.0) {
        return FallAirspeed::NotInStillAir;
    }
    let still_air = Case {
        dynamic_pressure: 0.0,
        ..*case
    };
    let most = 0.5 * air_density * MOST_AIRSPEED * MOST_AIRSPEED;
    let line = |row: &[f64; COLUMNS]| (still_air.net(row), row[AIR]);
    match limit(track, case, (0.0, most), line, at) {
        None => FallAirspeed::AtEvery {
            tried: MOST_AIRSPEED,
        },
        Some(pressure) => FallAirspeed::UpTo {
            airspeed: (2.0 * pressure / air_density).sqrt(),
        },
    }
}

/// The friction given times this just stops it short.
pub(super) fn friction_factor(track: &Track, case: &Case) -> Option<f64> {
    let pins_turn_freely = track.table.values().iter().all(|row| row[PINS] == 0.0);
    if case.seal_friction == 0.0 && pins_turn_freely {
        return None;
    }
    let with = |factor: f64| Case {
        seal_friction: factor * case.seal_friction,
        pin_factor: factor,
        ..*case
    };
    let (none, given) = (with(0.0), with(1.0));
    let line = |row: &[f64; COLUMNS]| (none.net(row), -given.friction(row));
    limit(track, case, (1.0, MOST_FACTOR), line, |factor| {
        reaches(track, &with(factor))
    })
}

/// Seal friction that just stops it short [N].
pub(super) fn seal_friction(track: &Track, case: &Case) -> Option<f64> {
    let with = |seal_friction: f64| Case {
        seal_friction,
        ..*case
    };
    let none = with(0.0);
    let line = |row: &[f64; COLUMNS]| (none.net(row), -row[STROKE].abs());
    let range = (case.seal_friction, MOST_SEAL_FRICTION);
    limit(track, case, range, line, |friction| {
        reaches(track, &with(friction))
    })
}
