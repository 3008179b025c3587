//! One fall: equation of motion and the events that end it.
use super::course::Course;
use super::way::{AIR, COLUMNS, FallWay, INERTIA, PINS, PINS_BY_MOTION, SPRINGS, STROKE, WEIGHTS};
use crate::hydraulics::pressure;
use crate::numeric::{Bounds, Method, Moment, Step, event_between, first_end, follow};

/// Place and speed along the way, energy taken by the orifice and by what the motion adds to the
/// friction of the pins (J); or the slopes of these over time.
pub(super) type State = [f64; 4];

/// Longest fall that is followed (s): legs come down in seconds; our own figure.
pub(super) const LONGEST: f64 = 60.0;
/// Longest step of the integration (s), well below the time a leg takes to swing back: no event can
/// hide in one.
const LONGEST_STEP: f64 = 0.05;
/// Error allowed in a step: relative, and in the units of the state.
pub(super) const TOLERANCE: f64 = 1e-9;
/// The same where an orifice damps the fall, which lets errors die down: times then stay the same to 1e-7
/// when it is tightened.
const DAMPED_TOLERANCE: f64 = 1e-7;
/// Slower than this and slowing down further, the leg is at rest (1/s along the way, about rad/s):
/// through an orifice it would creep for ever toward the place where nothing pushes it on.
const AT_REST: f64 = 1e-4;
/// One that would stand within this time as it slows down is followed until it does (s), or until it is so
/// much slower yet (ratio).
const STANDS_WITHIN: f64 = 1e-2;
const STANDS: f64 = 1e-3;
/// Looks at the speed in a step: often enough for a polynomial of degree 4.
const LOOKS: usize = 16;
/// Shares of a step at which the speed of the axle is looked at.
const SHARES: [f64; 2] = [0.5, 1.0];

/// What a fall meets besides its own weight.
#[derive(Clone, Copy, Debug)]
pub(super) struct Case {
    /// Dynamic pressure (Pa).
    pub(super) dynamic_pressure: f64,
    /// Seal friction (N).
    pub(super) seal_friction: f64,
    /// Pin friction over that of the table (ratio).
    pub(super) pin_factor: f64,
    /// Friction that holds the leg at up after it has stood there, along the way.
    pub(super) held: f64,
    pub(super) damper: Option<Damper>,
}

/// The actuator pushing its fluid out through the return orifice.
#[derive(Clone, Copy, Debug)]
pub(super) struct Damper {
    /// Of the orifice (m3/s/√Pa).
    pub(super) conductance: f64,
    /// Area that pushes as the actuator lengthens, and as it shortens (m2); the other side fills
    /// freely.
    pub(super) areas: (f64, f64),
}

impl Damper {
    /// Area that pushes its fluid out at a rate of the actuator's length.
    fn side(&self, stroke: f64) -> f64 {
        let (lengthening, shortening) = self.areas;
        if stroke > 0.0 {
            lengthening
        } else {
            shortening
        }
    }

    /// Damping over the square of the speed along the way, its laminar part left out.
    pub(super) fn turbulent(&self, stroke: f64) -> f64 {
        self.side(stroke) * stroke.abs() * self.turbulent_pressure(stroke)
    }

    /// Pressure of it, over the same.
    pub(super) fn turbulent_pressure(&self, stroke: f64) -> f64 {
        (self.side(stroke) * stroke / self.conductance).powi(2)
    }

    /// Damping along the way at a rate of the actuator's length and a speed.
    pub(super) fn push(&self, stroke: f64, speed: f64) -> f64 {
        stroke.abs() * self.force(stroke, speed)
    }

    /// Force along the actuator that damps the fall (N), at the same.
    pub(super) fn force(&self, stroke: f64, speed: f64) -> f64 {
        let side = self.side(stroke);
        side * pressure(self.conductance, side * stroke.abs() * speed)
    }
}

impl Case {
    /// Error allowed in a step of its fall.
    pub(super) fn tolerance(&self) -> f64 {
        match self.damper {
            Some(_) => DAMPED_TOLERANCE,
            None => TOLERANCE,
        }
    }

    /// Push of weights, springs and air along the way.
    pub(super) fn push(&self, row: &[f64; COLUMNS]) -> f64 {
        row[WEIGHTS] + row[SPRINGS] + row[AIR] * self.dynamic_pressure
    }

    /// The same with so many times the running friction; what holds it at up stays as it is.
    pub(super) fn times(&self, factor: f64) -> Self {
        Self {
            seal_friction: factor * self.seal_friction,
            pin_factor: factor * self.pin_factor,
            ..*self
        }
    }

    /// Whether a fall is driven and held as in another case.
    pub(super) fn is_driven_as(&self, other: &Self) -> bool {
        self.dynamic_pressure == other.dynamic_pressure
            && self.seal_friction == other.seal_friction
            && self.pin_factor == other.pin_factor
    }

    /// Whether the leg starts from a row at which it has stood.
    pub(super) fn starts(&self, row: &[f64; COLUMNS]) -> bool {
        self.push(row) > self.held.max(self.friction(row))
    }

    /// Net push along the way, without damping, the pins rubbing as at rest.
    pub(super) fn net(&self, row: &[f64; COLUMNS]) -> f64 {
        self.push(row) - self.friction(row)
    }

    /// Friction along the way at rest, against the fall.
    pub(super) fn friction(&self, row: &[f64; COLUMNS]) -> f64 {
        self.seal_friction * row[STROKE].abs() + self.pin_factor * row[PINS]
    }

    /// What goes with the square of the speed along the way: turbulent damping where there is an orifice, and
    /// what the motion adds to the friction of the pins; against the fall.
    pub(super) fn drag(&self, row: &[f64; COLUMNS]) -> f64 {
        let turbulent = self.damper.map_or(0.0, |d| d.turbulent(row[STROKE]));
        turbulent + self.pin_factor * row[PINS_BY_MOTION] * (turbulent + row[INERTIA])
    }

    /// Damping at a speed along the way, against the fall; none without an orifice.
    pub(super) fn damping(&self, row: &[f64; COLUMNS], speed: f64) -> f64 {
        self.damper
            .map_or(0.0, |damper| damper.push(row[STROKE], speed))
    }

    /// What the motion loads the pins with: damping and inertia.
    pub(super) fn motion(&self, row: &[f64; COLUMNS], square: f64) -> f64 {
        self.damping(row, square.sqrt()) + row[INERTIA] * square
    }
}

/// How a fall ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ending {
    /// At the end of the way.
    Lock,
    /// At rest on the way.
    Rest,
    /// Did not start.
    Held,
    /// Not at its end after [`LONGEST`].
    Followed,
    /// The integration could not be carried on.
    Lost,
}

/// End of a fall.
#[derive(Clone, Copy, Debug)]
pub(super) struct Drop {
    pub(super) ending: Ending,
    /// When (s).
    pub(super) time: f64,
    /// Where along the way.
    pub(super) x: f64,
    /// Speed along the way.
    pub(super) speed: f64,
    /// Energy taken by the orifice (J).
    pub(super) orifice: f64,
    /// Energy taken by what the motion adds to the friction of the pins (J).
    pub(super) pins: f64,
    /// Largest speed of the axle, looked at twice in each step (m/s).
    pub(super) largest_axle_speed: f64,
}

/// Lets the leg go at up.
pub(super) fn drop(track: &FallWay, case: &Case, tolerance: f64) -> Drop {
    let mut found = Drop {
        ending: Ending::Held,
        time: 0.0,
        x: 0.0,
        speed: 0.0,
        orifice: 0.0,
        pins: 0.0,
        largest_axle_speed: 0.0,
    };
    if !case.starts(&track.at(0.0)) {
        return found;
    }
    let bounds = Bounds {
        tolerance,
        longest_step: LONGEST_STEP,
        end: LONGEST,
    };
    let mut ends: Option<Ending> = None;
    let mut largest = 0.0_f64;
    let course = Course::new(track, case);
    let mut look = |x: f64, speed: f64| {
        if let Some((share, from, to)) = track.around(x, course.piece(x)) {
            let rate = from.axle + share * (to.axle - from.axle);
            largest = largest.max(rate * speed);
        }
    };
    let slope = |state: &State| course.slope(state);
    let watch = |_, step: &Step<State>| {
        let (ending, share) = event(step, track.end()).unzip();
        ends = ending;
        // behind the end there is no way
        let reach = share.unwrap_or(1.0);
        for share in SHARES.map(|share| share * reach) {
            look(step.part_at(0, share), step.part_at(1, share));
        }
        share
    };
    let method = match case.damper {
        Some(_) => Method::Stiff,
        None => Method::Explicit,
    };
    let (ending, last) = match follow(method, slope, [0.0; 4], bounds, watch) {
        Ok(last) => (ends.unwrap_or(Ending::Followed), last),
        Err(last) => (Ending::Lost, last),
    };
    let (time, state) = ended(ending, &last, track.end());
    let [x, speed, orifice, pins] = state;
    found = Drop {
        ending,
        time,
        x,
        speed,
        orifice,
        pins,
        largest_axle_speed: largest,
    };
    found
}

/// The first event within a step, and at which share of it: rest, or the end of the way. A rest between two
/// ends that both move forward is found too.
pub(super) fn event(step: &Step<State>, end: f64) -> Option<(Ending, f64)> {
    let (place, speed) = (|t| step.part_at(0, t), |t| step.part_at(1, t));
    // how far into the step the leg moves forward
    let stands = step.least(1) <= 0.0;
    let rest = stands.then(|| first_end(speed, LOOKS)).flatten();
    let rest = rest.or_else(|| crept_out(step));
    let reach = rest.unwrap_or(1.0);
    if place(reach) >= end {
        let root = event_between(|t| place(t) - end, 0.0, reach);
        Some((Ending::Lock, root.map_or(reach, |root| root.x)))
    } else {
        Some((Ending::Rest, rest?))
    }
}

/// Time and state at an ending, from a moment that is as near to it as the continuous output of a step.
pub(super) fn ended(ending: Ending, last: &Moment<State>, end: f64) -> (f64, State) {
    let [place, speed, ..] = last.state;
    let later = match ending {
        Ending::Lock if speed > 0.0 => (end - place) / speed,
        // one that creeps rests where it is
        Ending::Rest if speed < STANDS_WITHIN * last.slope[1].abs() => -speed / last.slope[1],
        _ => 0.0,
    };
    let state = std::array::from_fn(|i| last.state[i] + later * last.slope[i]);
    (last.time + later, state)
}

/// Where in the step the leg hardly moves any more, and slows down yet.
fn crept_out(step: &Step<State>) -> Option<f64> {
    let (speed, change) = step.end(1);
    let creeps = speed > -change * STANDS_WITHIN || speed < STANDS * AT_REST;
    let slow = |share: f64| step.part_at(1, share) - AT_REST;
    (change < 0.0 && speed < AT_REST && creeps)
        .then(|| event_between(slow, 0.0, 1.0).map_or(1.0, |root| root.x))
}
