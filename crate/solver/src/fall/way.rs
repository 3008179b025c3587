//! The way from up to the lock, tabled over one coordinate.
use super::inertia::{Inertias, Velocities};
use super::table::Table;
use crate::kinematics::{Linkage, Pose};
use crate::model::{Brace, Conditions, Leg, Vector};
use crate::numeric::wrap;
use crate::result::{InertiaBasis, Place};
use crate::statics::{
    Loads, dynamic_pressure, gravity, pin_rates, spring_energy, spring_loads, wind,
};

/// Pieces of the swing and of the way from the straight knee to the lock.
const SWING_PIECES: usize = 240;
const LOCK_PIECES: usize = 24;
/// The last pieces of a swing to a straight knee, and into how many each is cut: the leg hands its
/// speed over to the links there.
const LAST_PIECES: usize = 10;
const CUT: usize = 4;

/// Pieces into which each is cut where an orifice damps the fall: the energy lost to it is of second
/// order in their length.
const DAMPED_SPLIT: usize = 2;

/// Columns of the table, all at the rates of the pose, toward down.
pub(super) const COLUMNS: usize = 7;
/// Twice the kinetic energy; first, for its slope is wanted.
pub(super) const INERTIA: usize = 0;
/// Push of the weights.
pub(super) const WEIGHTS: usize = 1;
/// Push of the air for each pascal of dynamic pressure.
pub(super) const AIR: usize = 2;
/// Rate of the actuator's length.
pub(super) const STROKE: usize = 3;
/// Push of the springs.
pub(super) const SPRINGS: usize = 4;
/// Friction of the pins at rest, against the fall: that of their couples until what hangs on their loads
/// is put in.
pub(super) const PINS: usize = 5;
/// What the motion adds to it, for each unit of what the motion loads the pins with: the damping and
/// the inertia times the square of the speed.
pub(super) const PINS_BY_MOTION: usize = 6;

/// Least inertia, so that a table that all but vanishes somewhere stays above nothing between its knots
/// (kg·m2).
pub(super) const LEAST_INERTIA: f64 = 1e-9;

/// Way of a leg from up to the lock.
#[derive(Clone, Debug)]
pub(super) struct FallWay {
    pub(super) table: Table<COLUMNS>,
    pub(super) nodes: Vec<Node>,
    /// Ends and middles of all pieces in turn: their places along the way and rows of the table.
    pub(super) halves: Vec<(f64, [f64; COLUMNS])>,
    /// Into how many pieces each stretch between two knots is cut there.
    pub(super) split: usize,
    /// Work of the weights over the whole way, from the heights at both ends (J).
    pub(super) weights_work: f64,
    /// Work of the springs over the whole way, from what they store at both ends (J).
    pub(super) springs_work: f64,
    pub(super) inertia_basis: InertiaBasis,
}

/// What is known at one knot of the table besides its columns; rates as there.
#[derive(Clone, Copy, Debug)]
pub(super) struct Node {
    pub(super) place: Place,
    /// Rate of the swing toward down (rad).
    pub(super) swing: f64,
    /// Speed of the axle (m).
    pub(super) axle: f64,
    /// Speed of the knee (m).
    pub(super) knee: Option<f64>,
}

impl FallWay {
    /// Tables the way of a leg that comes up; `None` where it cannot be assembled all the way or some
    /// place of it has no rates.
    pub(super) fn new(leg: &Leg, linkage: &Linkage, conditions: &Conditions) -> Option<Self> {
        let inertias = Inertias::of(leg);
        let gravity = gravity(leg.view, conditions);
        let mut knot = 0.0;
        let mut knots = vec![knot];
        let first = linkage.pose(1.0).ok()?;
        let rows = Rows {
            leg,
            linkage,
            inertias: &inertias,
            gravity,
            unit_wind: unit_wind(leg, conditions),
        };
        let (mut values, mut nodes) = (Vec::new(), Vec::new());
        let mut add = |pose: &Pose| {
            let at = Velocities::at(leg, linkage, pose);
            values.push(rows.row(pose, &at));
            nodes.push(node(leg, pose, &at));
        };
        add(&first);
        // what rubs in a pin that turns the other way beyond the straight knee has a corner there
        let (pieces, corner) = pieces(linkage);
        let (mut last, mut turned) = (first, turns(leg, &first));
        for (from, to) in pieces {
            let middle = linkage.pose(0.5 * (from + to)).ok()?;
            last = linkage.pose(to).ok()?;
            let turning = turns(leg, &last);
            knot += way([&turned, &turns(leg, &middle), &turning])?;
            knots.push(knot);
            add(&last);
            turned = turning;
        }
        let potential = |pose: &Pose| weights_potential(leg, linkage, pose, gravity);
        let table = Table::new(knots, values, corner)?;
        let split = if leg.orifice_of_fall().is_some() {
            DAMPED_SPLIT
        } else {
            1
        };
        Some(Self {
            nodes,
            halves: halves(&table, split),
            split,
            table,
            weights_work: potential(&last) - potential(&first),
            springs_work: spring_energy(leg, linkage, &first) - spring_energy(leg, linkage, &last),
            inertia_basis: inertias.basis,
        })
    }

    /// Sets the friction of the pins at the knots: at rest, and what the motion adds. `None` where it is
    /// not finite.
    pub(super) fn set_pins(&mut self, at_rest: &[f64], by_motion: &[f64]) -> Option<()> {
        let pins = |of: &[f64], knot: usize| of.get(knot).copied().unwrap_or(f64::NAN);
        self.table.set(|knot, row| {
            row[PINS] = pins(at_rest, knot);
            row[PINS_BY_MOTION] = pins(by_motion, knot);
        })?;
        for (at, (x, row)) in self.halves.iter_mut().enumerate() {
            let now = self.table.within(at / (2 * self.split), *x);
            row[PINS] = now[PINS];
            row[PINS_BY_MOTION] = now[PINS_BY_MOTION];
        }
        Some(())
    }

    /// The same way with these of its knots only.
    pub(super) fn at_knots(&self, at: &[usize]) -> Option<Self> {
        let (mut knots, mut rows, mut nodes) = (Vec::new(), Vec::new(), Vec::new());
        for &i in at {
            knots.push(*self.table.knots().get(i)?);
            rows.push(*self.table.values().get(i)?);
            nodes.push(*self.nodes.get(i)?);
        }
        let corner = at.iter().position(|i| self.table.corner() == Some(*i));
        let table = Table::new(knots, rows, corner)?;
        Some(Self {
            nodes,
            halves: halves(&table, self.split),
            table,
            ..*self
        })
    }

    /// Length of the way.
    pub(super) fn end(&self) -> f64 {
        self.table.knots().last().copied().unwrap_or(0.0)
    }

    /// Row at a place.
    pub(super) fn at(&self, x: f64) -> [f64; COLUMNS] {
        self.within(self.table.piece(x, 0), x)
    }

    /// The same in the piece that holds `x`.
    #[inline]
    pub(super) fn within(&self, piece: usize, x: f64) -> [f64; COLUMNS] {
        let mut row = self.table.within(piece, x);
        row[INERTIA] = row[INERTIA].max(LEAST_INERTIA);
        row
    }

    /// Integrals of functions of the row from up to `x`, by Simpson's rule in every piece.
    pub(super) fn sums<const N: usize>(
        &self,
        x: f64,
        f: impl Fn(&[f64; COLUMNS]) -> [f64; N],
    ) -> [f64; N] {
        let mut sums = [0.0; N];
        for piece in self.halves.windows(3).step_by(2) {
            let [(x0, a), (_, b), (x2, c)] = piece else {
                continue;
            };
            if *x0 >= x {
                break;
            }
            let rows = if *x2 <= x {
                [*a, *b, *c]
            } else {
                [x0, &(0.5 * (x0 + x)), &x].map(|x| self.at(*x))
            };
            let h = (x2.min(x) - x0) / 6.0;
            let [a, b, c] = rows.map(|row| f(&row));
            for (i, sum) in sums.iter_mut().enumerate() {
                *sum += h * (a[i] + 4.0 * b[i] + c[i]);
            }
        }
        sums
    }

    /// Share of the piece that holds `x`, looked for from the piece `near`, and the nodes at its ends.
    pub(super) fn around(&self, x: f64, near: usize) -> Option<(f64, &Node, &Node)> {
        let i = self
            .table
            .piece(x, near)
            .min(self.nodes.len().saturating_sub(2));
        let (x0, x1) = (self.table.knots().get(i)?, self.table.knots().get(i + 1)?);
        let share = ((x - x0) / (x1 - x0)).clamp(0.0, 1.0);
        Some((share, self.nodes.get(i)?, self.nodes.get(i + 1)?))
    }

    /// Place on the path, straight between the knots.
    pub(super) fn place(&self, linkage: &Linkage, x: f64) -> Option<Place> {
        let (share, a, b) = self.around(x, 0)?;
        let progress = a.place.progress + share * (b.place.progress - a.place.progress);
        linkage.pose(progress).ok().map(|pose| pose.place)
    }
}

/// Rows at the ends and in the middle of every piece, in turn, each stretch between two knots being
/// cut into `split` pieces.
pub(super) fn halves(table: &Table<COLUMNS>, split: usize) -> Vec<(f64, [f64; COLUMNS])> {
    let parts = 2 * split;
    let mut halves = Vec::with_capacity(parts * table.knots().len());
    for (piece, ends) in table.knots().windows(2).enumerate() {
        let [x0, x1] = *ends else { continue };
        halves.extend((0..parts).map(|part| {
            let x = x0 + (x1 - x0) * part as f64 / parts as f64;
            let mut row = table.within(piece, x);
            row[INERTIA] = row[INERTIA].max(LEAST_INERTIA);
            (x, row)
        }));
    }
    halves.extend(
        table
            .knots()
            .last()
            .copied()
            .zip(table.values().last().copied()),
    );
    halves
}

/// Progress at the ends of every piece, from up down, and the piece that ends with a straight knee.
fn pieces(linkage: &Linkage) -> (Vec<(f64, f64)>, Option<usize>) {
    let mut pieces = Vec::with_capacity(SWING_PIECES + LAST_PIECES * CUT + LOCK_PIECES);
    let mut add = |from: f64, to: f64, count: usize| {
        let at = |i: usize| from + (to - from) * (i as f64 / count as f64);
        pieces.extend((0..count).map(|i| (at(i), at(i + 1))));
        pieces.len()
    };
    let near = LAST_PIECES as f64 / SWING_PIECES as f64;
    add(1.0, near, SWING_PIECES - LAST_PIECES);
    let straight = add(near, 0.0, LAST_PIECES * CUT);
    if linkage.path().unlocks {
        add(0.0, -1.0, LOCK_PIECES);
        (pieces, Some(straight))
    } else {
        (pieces, None)
    }
}

/// An angle and its rate.
type Turn = (f64, f64);

/// Angle at the knee and the swing, one of which moves well at every pose.
fn turns(leg: &Leg, pose: &Pose) -> [Turn; 2] {
    let swing = (pose.place.swing, pose.rates.swing);
    let (Brace::Folding(brace), Some(knee), Some(attach)) =
        (&leg.brace, pose.knee, pose.brace_attach)
    else {
        return [(0.0, 0.0), swing];
    };
    let (upper, lower) = (knee - brace.airframe_pivot, attach - knee);
    let angle = upper.perp(&lower).atan2(upper.dot(&lower));
    [(angle, pose.rates.lower - pose.rates.upper), swing]
}

/// Length of the way between the outer two of three poses, by a parabola through 1/rate over the angle that
/// moves more at the middle one.
fn way(turns: [&[Turn; 2]; 3]) -> Option<f64> {
    let [(_, knee), (_, swing)] = turns[1];
    let more = usize::from(knee.abs() <= swing.abs());
    let [(u0, r0), (u1, r1), (u2, r2)] = turns.map(|turns| turns[more]);
    let (a, b) = (wrap(u1 - u0), wrap(u2 - u1));
    let both = a + b;
    // unequal Simpson: the integral of the parabola through three points, any numerical text
    let sum = (2.0 - b / a) / r0 + both * both / (a * b) / r1 + (2.0 - a / b) / r2;
    // rates are toward up, the way goes down
    let length = -both / 6.0 * sum;
    (length.is_finite() && length > 0.0).then_some(length)
}

/// Air load on a square meter at one pascal of dynamic pressure, in the leg's plane (N/m2).
pub(super) fn unit_wind(leg: &Leg, conditions: &Conditions) -> Vector {
    let one_pascal = Conditions {
        airspeed: 1.0,
        air_density: 2.0,
        ..*conditions
    };
    wind(leg.view, &one_pascal) / dynamic_pressure(&one_pascal)
}

/// What the rows of a leg are worked out from.
struct Rows<'a> {
    leg: &'a Leg,
    linkage: &'a Linkage,
    inertias: &'a Inertias,
    gravity: Vector,
    /// Air load on a square meter at one pascal of dynamic pressure (N/m2).
    unit_wind: Vector,
}

impl Rows<'_> {
    fn row(&self, pose: &Pose, at: &Velocities) -> [f64; COLUMNS] {
        let Self { leg, linkage, .. } = *self;
        let (upper, lower) = match &leg.brace {
            Brace::None => (Vector::zeros(), 0.0),
            Brace::Sliding(brace) => (at.brace_attach * brace.mass, 0.0),
            Brace::Folding(brace) => (at.knee * brace.upper.mass, brace.lower.mass),
        };
        // half the weight of a bar at each of its pins
        let halves =
            upper + (at.knee + at.brace_attach) * lower + at.actuator_attach * leg.actuator.mass;
        let weights = at.centre * leg.body.mass + at.axle * leg.wheel.mass + halves * 0.5;
        let air = at.axle * leg.air.wheel_drag_area + at.leg_air * leg.air.leg_drag_area;
        let mut row = [0.0; COLUMNS];
        row[INERTIA] = self.inertias.twice_energy(leg, pose, at).max(LEAST_INERTIA);
        if !leg.springs.is_empty() {
            row[SPRINGS] = -spring_loads(leg, linkage, pose).power(leg, linkage, pose);
        }
        row[WEIGHTS] = -self.gravity.dot(&weights);
        row[AIR] = -self.unit_wind.dot(&air);
        row[STROKE] = -pose.rates.actuator;
        if leg.pins.rub() {
            let couples = leg.pins.all().map(|pin| pin.tightness());
            let rates = pin_rates(leg, linkage, pose);
            let powers = couples.iter().zip(rates);
            row[PINS] = powers.map(|(couple, rate)| couple * rate.abs()).sum();
        }
        row
    }
}

fn node(leg: &Leg, pose: &Pose, at: &Velocities) -> Node {
    Node {
        place: pose.place,
        swing: pose.rates.swing * leg.swing_up.signum(),
        axle: at.axle.norm(),
        knee: pose.knee.map(|_| at.knee.norm()),
    }
}

/// Work that the weights have done when the parts have come from the origin to this pose (J).
fn weights_potential(leg: &Leg, linkage: &Linkage, pose: &Pose, gravity: Vector) -> f64 {
    let loads = Loads::new(leg, linkage, pose, gravity, Vector::zeros());
    let work = |(at, force): (crate::model::Point, Vector)| at.coords.dot(&force);
    let mut sum = work(loads.body) + work(loads.wheel);
    if let Some(knee) = pose.knee {
        sum += work((knee, loads.upper[1] + loads.lower[0]));
    }
    if let Some(attach) = pose.brace_attach {
        let half = match leg.brace {
            Brace::Folding(_) => loads.lower[1],
            _ => loads.upper[1],
        };
        sum += work((attach, half));
    }
    sum + work((pose.actuator_attach, loads.actuator[1]))
}
