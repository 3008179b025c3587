//! One fall: equation of motion and the events that end it.
use super::integrate::{Bounds, Moment, State, integrate};
use super::orifice::Orifice;
use super::stiff::integrate_stiff;
use super::track::{AIR, COLUMNS, INERTIA, PINS, PINS_BY_MOTION, SPRINGS, STROKE, Track, WEIGHTS};
use crate::numeric::bracketed_root;

/// Longest fall that is followed (s): legs come down in seconds; our own figure.
pub(super) const LONGEST: f64 = 60.0;
/// Longest step of the integration (s), well below the time a leg takes to swing back: no event can
/// hide in one.
const LONGEST_STEP: f64 = 0.05;
/// Error allowed in a step: relative, and in the units of the state.
pub(super) const TOLERANCE: f64 = 1e-9;
/// The same where an orifice damps the fall, which lets errors die down: times then stay the same to 1e-8
/// when it is tightened.
const DAMPED_TOLERANCE: f64 = 1e-7;
/// Slower than this and slowing down further, the leg is at rest [1/s along the way, about rad/s]:
/// through an orifice it would creep for ever towards the place where nothing pushes it on.
const AT_REST: f64 = 1e-4;
/// Width to which the time of an event is bracketed, as a share of the step (ratio).
const EVENT_TOLERANCE: f64 = 1e-13;

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
    pub(super) orifice: Orifice,
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
        let area = self.side(stroke) * stroke.abs();
        let per_speed = area / self.orifice.effective_area;
        0.5 * self.orifice.density * area * per_speed * per_speed
    }

    /// Damping along the way at a rate of the actuator's length and a speed.
    pub(super) fn push(&self, stroke: f64, speed: f64) -> f64 {
        stroke.abs() * self.force(stroke, speed)
    }

    /// Force along the actuator that damps the fall (N), at the same.
    pub(super) fn force(&self, stroke: f64, speed: f64) -> f64 {
        let side = self.side(stroke);
        side * self.orifice.pressure(side * stroke.abs() * speed)
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

    /// What goes with the square of the speed along the way: turbulent damping, and what the motion
    /// adds to the friction of the pins; against the fall.
    pub(super) fn drag(&self, row: &[f64; COLUMNS]) -> f64 {
        let turbulent = self.damper.map_or(0.0, |d| d.turbulent(row[STROKE]));
        turbulent + self.pin_factor * row[PINS_BY_MOTION] * (turbulent + row[INERTIA])
    }

    /// Damping at a speed along the way, against the fall.
    pub(super) fn damping(&self, row: &[f64; COLUMNS], speed: f64) -> f64 {
        self.damper
            .map_or(0.0, |damper| damper.push(row[STROKE], speed))
    }

    /// What the motion loads the pins with: damping and inertia.
    pub(super) fn motion(&self, row: &[f64; COLUMNS], square: f64) -> f64 {
        self.damping(row, square.sqrt()) + row[INERTIA] * square
    }

    /// Slope over time of the state.
    fn slope(&self, track: &Track, [x, speed, ..]: &State) -> State {
        let at = track.at(*x);
        let row = &at.value;
        let damping = self.damping(row, *speed);
        let loads = damping + row[INERTIA] * speed * speed;
        // pins that the motion unloads push nothing on
        let pins = self.pin_factor * (row[PINS_BY_MOTION] * loads).max(-row[PINS]);
        // the inertia is the first column
        let push = self.net(row) - pins - damping - 0.5 * at.slope * speed * speed;
        [*speed, push / row[INERTIA], damping * speed, pins * speed]
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
    /// Largest speed of the axle at the steps (m/s).
    pub(super) largest_axle_speed: f64,
}

/// Lets the leg go at up.
pub(super) fn drop(track: &Track, case: &Case, tolerance: f64) -> Drop {
    let mut found = Drop {
        ending: Ending::Held,
        time: 0.0,
        x: 0.0,
        speed: 0.0,
        orifice: 0.0,
        pins: 0.0,
        largest_axle_speed: 0.0,
    };
    if !case.starts(&track.at(0.0).value) {
        return found;
    }
    let bounds = Bounds {
        tolerance,
        longest_step: LONGEST_STEP,
        end: LONGEST,
    };
    let mut end: Option<(Ending, f64, State)> = None;
    let mut largest = 0.0_f64;
    let slope = |state: &State| case.slope(track, state);
    let watch = |a: &Moment, b: &Moment| {
        let step = Step::new(a, b);
        let event = step.event(track.end());
        end = event.map(|(ending, share)| step.ended(ending, share));
        // behind the end there is no way
        let [x, speed, ..] = end.as_ref().map_or(b.state, |(_, _, state)| *state);
        if let Some((share, from, to)) = track.around(x) {
            let rate = from.axle + share * (to.axle - from.axle);
            largest = largest.max(rate * speed);
        }
        end.is_some()
    };
    let last = match case.damper {
        Some(_) => integrate_stiff(slope, [0.0; 4], bounds, watch),
        None => integrate(slope, [0.0; 4], bounds, watch),
    };
    let (ending, last) = match last {
        Ok(last) => (Ending::Followed, last),
        Err(last) => (Ending::Lost, last),
    };
    let (ending, time, [x, speed, orifice, pins]) = end.unwrap_or((ending, last.time, last.state));
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

/// An accepted step as polynomials of its share t: the place of degree 5 from places, speeds and
/// accelerations at both ends (Hermite interpolation).
pub(super) struct Step {
    begins: f64,
    length: f64,
    place: [f64; 6],
    /// Energies taken.
    taken: [[f64; 4]; 2],
}

impl Step {
    pub(super) fn new(a: &Moment, b: &Moment) -> Self {
        let h = b.time - a.time;
        let ([x0, v0, ..], [x1, v1, ..]) = (a.state, b.state);
        let ([_, a0, ..], [_, a1, ..]) = (a.slope, b.slope);
        let (v0, v1, a0, a1) = (h * v0, h * v1, h * h * a0, h * h * a1);
        let d = x1 - x0 - v0 - 0.5 * a0;
        let e = v1 - v0 - a0;
        let f = a1 - a0;
        let taken = |i: usize| {
            let (p0, p1, de) = (h * a.slope[i], h * b.slope[i], b.state[i] - a.state[i]);
            let cubic = [3.0 * de - 2.0 * p0 - p1, p0 + p1 - 2.0 * de];
            [a.state[i], p0, cubic[0], cubic[1]]
        };
        Self {
            begins: a.time,
            length: h,
            place: [
                x0,
                v0,
                0.5 * a0,
                10.0 * d - 4.0 * e + 0.5 * f,
                -15.0 * d + 7.0 * e - f,
                6.0 * d - 3.0 * e + 0.5 * f,
            ],
            taken: [taken(2), taken(3)],
        }
    }

    /// The first event within the step, and at which share of it: rest, or the end of the way.
    pub(super) fn event(&self, end: f64) -> Option<(Ending, f64)> {
        // how far into the step the leg moves forward
        let rest = self.rest().or_else(|| self.crept_out());
        let reach = rest.unwrap_or(1.0);
        if self.place(reach) >= end {
            let root = bracketed_root(|t| self.place(t) - end, 0.0, reach, EVENT_TOLERANCE);
            Some((Ending::Lock, root.map_or(reach, |root| root.x)))
        } else {
            Some((Ending::Rest, rest?))
        }
    }

    /// Time and state at an ending at this share of the step.
    pub(super) fn ended(&self, ending: Ending, share: f64) -> (Ending, f64, State) {
        let [orifice, pins] = self
            .taken
            .map(|taken| taken.iter().rev().fold(0.0, |sum, c| sum * share + c));
        let state = [self.place(share), self.speed(share), orifice, pins];
        (ending, self.begins + share * self.length, state)
    }

    fn place(&self, t: f64) -> f64 {
        self.place.iter().rev().fold(0.0, |sum, c| sum * t + c)
    }

    /// Speed (per s).
    fn speed(&self, t: f64) -> f64 {
        let [_, c1, c2, c3, c4, c5] = self.place;
        (c1 + t * (2.0 * c2 + t * (3.0 * c3 + t * (4.0 * c4 + t * 5.0 * c5)))) / self.length
    }

    /// The end of the step, where the leg hardly moves any more and slows down.
    fn crept_out(&self) -> Option<f64> {
        let [_, _, c2, c3, c4, c5] = self.place;
        let slowing = 2.0 * c2 + 6.0 * c3 + 12.0 * c4 + 20.0 * c5 < 0.0;
        (slowing && self.speed(1.0) < AT_REST).then_some(1.0)
    }

    /// Share of the step at which the leg comes to rest from moving forward; a rest between two ends
    /// that both move forward is found too.
    fn rest(&self) -> Option<f64> {
        // the speed is looked at often enough for a polynomial of degree 4
        const LOOKS: usize = 16;
        let mut moving = None;
        for look in 0..=LOOKS {
            let t = look as f64 / LOOKS as f64;
            let speed = self.speed(t);
            if speed > 0.0 {
                moving = Some(t);
            } else if let Some(from) = moving {
                let root = bracketed_root(|t| self.speed(t), from, t, EVENT_TOLERANCE);
                return Some(root.map_or(t, |root| root.x));
            }
        }
        None
    }
}
