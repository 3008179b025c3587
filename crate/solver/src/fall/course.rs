//! The way of a fall in one case, ready to be asked for the acceleration again and again.
use std::cell::Cell;

use super::drop::{Case, State};
use super::way::{FallWay, INERTIA, LEAST_INERTIA, PINS, PINS_BY_MOTION, STROKE};

/// Factors of the powers of the distance from the start of a piece, from none on.
type Cubic = [f64; 4];

/// A piece of the way.
struct Piece {
    from: f64,
    inertia: Cubic,
    stroke: Cubic,
    /// Push of weights, springs and air less what the pins rub with at rest.
    push: Cubic,
    /// That friction, and what the motion adds to it, as in the table of the way.
    pins: [Cubic; 2],
}

/// The way in a case.
pub(super) struct Course<'a> {
    track: &'a FallWay,
    case: &'a Case,
    pieces: Vec<Piece>,
    /// Whether what the pins rub with hangs on the motion.
    rubs: bool,
    /// Piece of the place that was asked for last: each place is next to the one before.
    near: Cell<usize>,
}

impl<'a> Course<'a> {
    pub(super) fn new(track: &'a FallWay, case: &'a Case) -> Self {
        let pieces = track.table.pieces().map(|(from, powers)| {
            let column = |at: usize| powers.map(|row| row[at]);
            let pushed = |row| case.push(row) - case.pin_factor * row[PINS];
            Piece {
                from,
                inertia: column(INERTIA),
                stroke: column(STROKE),
                push: powers.each_ref().map(pushed),
                pins: [column(PINS), column(PINS_BY_MOTION)],
            }
        });
        let mut rows = track.table.values().iter();
        Self {
            track,
            case,
            pieces: pieces.collect(),
            rubs: rows.any(|row| row[PINS_BY_MOTION] != 0.0),
            near: Cell::new(0),
        }
    }

    /// Index of the piece that holds a place.
    #[inline]
    pub(super) fn piece(&self, x: f64) -> usize {
        let piece = self.track.table.piece(x, self.near.get());
        self.near.set(piece);
        piece
    }

    /// Slope over time of the state.
    #[inline]
    pub(super) fn slope(&self, [x, speed, ..]: &State) -> State {
        let Some(piece) = self.pieces.get(self.piece(*x)) else {
            return [f64::NAN; 4];
        };
        let beyond = x - piece.from;
        let inside = beyond.max(0.0);
        let at = |[a, b, c, d]: &Cubic| a + beyond * (b + inside * (c + inside * d));
        let [_, b, c, d] = piece.inertia;
        let half_slope = 0.5 * b + inside * (c + inside * 1.5 * d);
        let (inertia, stroke) = (at(&piece.inertia).max(LEAST_INERTIA), at(&piece.stroke));
        let damper = self.case.damper;
        let damping = damper.map_or(0.0, |damper| damper.push(stroke, *speed));
        let square = speed * speed;
        // pins that the motion unloads push nothing on
        let pins = if self.rubs {
            let [at_rest, by_motion] = piece.pins.each_ref().map(at);
            self.case.pin_factor * (by_motion * (damping + inertia * square)).max(-at_rest)
        } else {
            0.0
        };
        let seals = self.case.seal_friction * stroke.abs();
        let push = at(&piece.push) - seals - pins - damping - half_slope * square;
        [*speed, push / inertia, damping * speed, pins * speed]
    }
}
