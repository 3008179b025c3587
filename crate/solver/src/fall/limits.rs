//! How far a fall can be driven before it stops short: airspeed and friction, by bounded searches.
use super::drop::{Case, Damper};
use super::track::{AIR, COLUMNS, INERTIA, PINS, STROKE, Track};
use crate::result::FallAirspeed;

/// Highest airspeed tried, and the grid on which the first failure is looked for [m/s].
const MOST_AIRSPEED: f64 = 340.0;
const AIRSPEED_STEP: f64 = 5.0;
/// Largest factor of friction, and largest seal friction [N], that are tried.
const MOST_FACTOR: f64 = 1e3;
const MOST_SEAL_FRICTION: f64 = 1e6;
/// Halvings of a bracket.
const HALVINGS: usize = 14;

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
    let mut energy = 0.0;
    rows.windows(3).step_by(2).all(|piece| {
        let [(x0, a), (_, b), (x1, c)] = piece else {
            return false;
        };
        let work = (x1 - x0) / 6.0 * (case.net(a) + 4.0 * case.net(b) + case.net(c));
        energy = match case.damper {
            None => energy + work,
            Some(damper) => damped(energy, work, x1 - x0, b, &damper),
        };
        energy > 0.0
    })
}

/// Energy of motion at the end of a piece of length `h`, on which the net push does `work`; negative
/// where it runs out. `row` is that of the middle.
///
/// Turbulent damping goes with the energy, D = c·K, and then the piece is solved exactly; c is taken
/// at the mean energy for the laminar part's sake.
fn damped(energy: f64, work: f64, h: f64, row: &[f64; COLUMNS], damper: &Damper) -> f64 {
    let mut end = energy + work;
    for _ in 0..4 {
        let mean = 0.5 * (energy + end.max(0.0));
        if mean <= 0.0 {
            break;
        }
        let speed = (2.0 * mean / row[INERTIA]).sqrt();
        let decay = h * damper.push(row[STROKE], speed) / mean;
        // (1 − e^−decay)/decay, at no damping 1
        let share = if decay > 1e-9 {
            -(-decay).exp_m1() / decay
        } else {
            1.0
        };
        end = energy * (-decay).exp() + work * share;
    }
    end
}

/// Up to which airspeed it reaches the lock.
pub(super) fn airspeed(track: &Track, case: &Case, air_density: f64) -> FallAirspeed {
    let still = track.table.values().iter().all(|row| row[AIR] == 0.0);
    if still || air_density == 0.0 {
        return FallAirspeed::NoAirLoad;
    }
    let at = |airspeed: f64| {
        let dynamic_pressure = 0.5 * air_density * airspeed * airspeed;
        reaches(
            track,
            &Case {
                dynamic_pressure,
                ..*case
            },
        )
    };
    if !at(0.0) {
        return FallAirspeed::NotInStillAir;
    }
    let steps = (MOST_AIRSPEED / AIRSPEED_STEP) as usize;
    let fails = (1..=steps)
        .map(|i| i as f64 * AIRSPEED_STEP)
        .find(|&airspeed| !at(airspeed));
    match fails {
        None => FallAirspeed::AtEvery {
            tried: MOST_AIRSPEED,
        },
        Some(fails) => FallAirspeed::UpTo {
            airspeed: halved(fails - AIRSPEED_STEP, fails, at),
        },
    }
}

/// The friction given times this just stops it short.
pub(super) fn friction_factor(track: &Track, case: &Case) -> Option<f64> {
    let pins_turn_freely = track.table.values().iter().all(|row| row[PINS] == 0.0);
    if case.seal_friction == 0.0 && pins_turn_freely {
        return None;
    }
    last_good(1.0, 1.0, MOST_FACTOR, |factor| {
        let seal_friction = factor * case.seal_friction;
        reaches(
            track,
            &Case {
                seal_friction,
                pin_factor: factor,
                ..*case
            },
        )
    })
}

/// Seal friction that just stops it short [N].
pub(super) fn seal_friction(track: &Track, case: &Case) -> Option<f64> {
    let from = case.seal_friction;
    last_good(from, from.max(1.0), MOST_SEAL_FRICTION, |seal_friction| {
        reaches(
            track,
            &Case {
                seal_friction,
                ..*case
            },
        )
    })
}

/// The largest value at which `good` still holds, above `from`, by doubling a step and then halving
/// the bracket; `None` when it does not hold at `from` or still does at `most`.
fn last_good(from: f64, step: f64, most: f64, good: impl Fn(f64) -> bool) -> Option<f64> {
    if !good(from) {
        return None;
    }
    let (mut low, mut step) = (from, step);
    // doubling: 60 steps pass any bound
    for _ in 0..60 {
        let high = (low + step).min(most);
        if !good(high) {
            return Some(halved(low, high, good));
        }
        if high >= most {
            return None;
        }
        low = high;
        step *= 2.0;
    }
    None
}

/// The last good value between a good and a bad one.
fn halved(good_end: f64, bad_end: f64, good: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (good_end, bad_end);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if good(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}
