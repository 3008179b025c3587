//! Place and readings of an explanation against what was seen.
use super::explain::Case;
use super::place::{COVERAGE, Stood};
use super::source::Held;
use crate::model::PumpSeen;
use crate::result::{Explanation, Fit, ReadingFit, StopCause};

/// What one wrong look in fifty weighs, in standard uncertainties, √(−2·ln 0.02): doubtful, and not
/// ruled out by it alone.
pub(super) const WRONG_LOOK: f64 = 2.797_149_622_536_537;

/// Sum of squares that is nothing but rounding (ratio).
const ROUNDING: f64 = 1e-12;

/// Largest difference that still fits, and that is not yet ruled out (ratio).
const LIMITS: [f64; 2] = [2.0, 3.0];

/// The first place where a quantity that keeps the leg going may come to nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Crossing {
    pub travel: f64,
    /// The quantity there.
    pub left: f64,
    /// Sum of squares of both differences (ratio).
    pub squares: f64,
}

/// Best place for a stop where `left` (by travel, in the order of the way) comes to nothing to
/// within `uncertainty`: the least sum of squares over the places that are lower than all before.
pub(super) fn crossing(
    curve: impl IntoIterator<Item = (f64, f64)>,
    stood: &Stood,
    uncertainty: f64,
) -> Option<Crossing> {
    let seen = stood.place.travel;
    let at = |travel: f64, left: f64| Crossing {
        travel,
        left,
        squares: ((travel - seen) / stood.uncertainty).powi(2) + (left / uncertainty).powi(2),
    };
    let mut best: Option<Crossing> = None;
    let mut take = |one: Crossing| {
        if best.is_none_or(|best| one.squares < best.squares) {
            best = Some(one);
        }
    };
    let mut before: Option<(f64, f64)> = None;
    let mut least = f64::INFINITY;
    for (s1, h1) in curve {
        if !h1.is_finite() {
            before = None;
            continue;
        }
        let Some((s0, h0)) = before.replace((s1, h1)) else {
            if h1 < least {
                take(at(s1, h1));
                least = h1;
            }
            continue;
        };
        if h1 < least {
            let (ds, dh) = (s1 - s0, h1 - h0);
            // On the straight line between them, from where it is below all before.
            let from = if dh < 0.0 {
                ((least - h0) / dh).clamp(0.0, 1.0)
            } else {
                1.0
            };
            let (u2, w2) = (stood.uncertainty.powi(2), uncertainty.powi(2));
            let slope = ds * (s0 - seen) / u2 + dh * h0 / w2;
            let bend = ds * ds / u2 + dh * dh / w2;
            let share = if bend > 0.0 { -slope / bend } else { 1.0 };
            let share = share.clamp(from, 1.0);
            take(at(s0 + share * ds, h0 + share * dh));
            least = h1;
        }
    }
    best
}

/// An explanation before it is held against the readings.
pub(super) struct Draft {
    pub cause: StopCause,
    /// Travel at which it stops the leg.
    pub asked: f64,
    /// Sum of squares of the place.
    pub squares: f64,
    pub held: Held,
    /// How many numbers were chosen so that it fits.
    pub fitted: usize,
    /// Whether what is read is a bound, the leg not having left where it began.
    pub bound: Option<Bound>,
}

/// On which side of what a bound asks for a reading agrees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bound {
    /// Gauge and posts read no more.
    LessVolts,
    /// The gauge reads no more, the posts no less.
    LessLoad,
}

impl Bound {
    /// What is asked of the posts that is nearest to what was read (V).
    fn posts(self, asked: f64, read: f64) -> f64 {
        match self {
            Self::LessVolts => asked.min(read),
            Self::LessLoad => asked.max(read),
        }
    }
}

/// Holds an explanation against everything seen.
pub(super) fn weigh(case: &Case, draft: Draft) -> Explanation {
    let seen = case.seen;
    let squares = Some(draft.squares).filter(|&squares| squares >= ROUNDING);
    // Where a number was chosen so that the leg stops there, the place says nothing.
    let is_chosen = draft.fitted > 0 && squares.is_none();
    let mut readings = vec![ReadingFit::HowFar {
        asked: (!is_chosen).then_some(draft.asked),
        seen: case.stood.place.travel,
        // squares that are rounding are none
        off: squares.unwrap_or(0.0).sqrt(),
    }];
    if let Some((asked, read)) = draft.held.pressure.zip(seen.pressure) {
        let asked = draft.bound.map_or(asked, |_| asked.min(read));
        readings.push(ReadingFit::Pressure {
            asked,
            seen: read,
            off: (asked - read).abs() / case.gauge(),
        });
    }
    let at_rest = case.head.rest_voltage();
    if let Some(((asked, read), rest)) = draft.held.voltage.zip(seen.voltage).zip(at_rest) {
        let asked = draft.bound.map_or(asked, |bound| bound.posts(asked, read));
        // The current is known as well as the load: so is what the voltage sags by.
        let model = seen.forces_within * (rest - asked) / COVERAGE;
        let reading = seen.voltage_within / COVERAGE;
        readings.push(ReadingFit::Voltage {
            asked,
            seen: read,
            off: (asked - read).abs() / model.hypot(reading),
        });
    }
    let ran = match seen.pump {
        PumpSeen::NotNoticed => None,
        PumpSeen::Running => Some(true),
        PumpSeen::Stopped => Some(false),
    };
    if let Some((asked, seen)) = draft.held.runs.zip(ran) {
        readings.push(ReadingFit::Pump {
            asked,
            seen,
            off: if asked == seen { 0.0 } else { WRONG_LOOK },
        });
    }
    let worst = readings.iter().map(ReadingFit::off).fold(0.0, f64::max);
    let chi_squared: f64 = readings.iter().map(|reading| reading.off().powi(2)).sum();
    let doubled = 2.0 * f64::from(u32::try_from(draft.fitted).unwrap_or(u32::MAX));
    Explanation {
        cause: draft.cause,
        fit: if worst <= LIMITS[0] {
            Fit::Fits
        } else if worst <= LIMITS[1] {
            Fit::Doubtful
        } else {
            Fit::RuledOut
        },
        readings,
        chi_squared,
        may_trip: draft.held.may_trip,
        fitted: draft.fitted,
        score: chi_squared + doubled,
    }
}
