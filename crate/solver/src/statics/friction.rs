//! Friction of the pins, worked out together with the reactions it comes from.
use super::balance::{Balance, FreeBodies};
use super::{BodyLoads, Loads};
use crate::kinematics::Linkage;
use crate::model::{Joint, Leg, Vector};
use crate::result::{Motion, Reactions};

/// Most Newton steps of one attempt.
const MOST_STEPS: usize = 40;
/// Most attempts at raising the friction from nothing to its full value.
const MOST_ATTEMPTS: usize = 60;
/// Smallest rise of friction tried, as a share of the whole [1]: below it the pins bind.
const LEAST_RISE: f64 = 1e-4;
/// A step this small against the friction moments ends the iteration [1].
const TOLERANCE: f64 = 1e-11;
/// Rates of turn below this are rest [rad]; the largest rate of a pose is about 1.
const REST: f64 = 1e-12;

type Six = [f64; 6];

/// Free bodies with the friction of their pins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rubbing {
    /// Thrust and joint forces in this motion.
    pub bodies: FreeBodies,
    /// Friction moment of each pin [N·m], in the order of [`Joint::ALL`] and with the signs of
    /// [`BodyLoads::of_pins`]; against the motion.
    pub moments: [f64; 6],
}

impl Rubbing {
    /// Power of the pin friction at rates of turn `rates` towards up, in `motion` [N·m per unit of
    /// the common parameter]: never above 0.
    #[must_use]
    pub fn power(&self, rates: &[f64; 6], motion: Motion) -> f64 {
        let sum: f64 = self.moments.iter().zip(rates).map(|(m, w)| m * w).sum();
        motion.sign() * sum
    }
}

/// The pins of one pose, ready for any loads.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Pinned<'a> {
    leg: &'a Leg,
    pub(crate) balance: Balance<'a>,
    pub(crate) rates: Six,
    /// Friction radius of each pin [m]; 0 where it stands still.
    radii: Six,
    /// Load of pin i for a couple of one at pin j, at `[j][i]` [1/m].
    influence: [[Vector; 6]; 6],
    rubs: bool,
}

pub(crate) fn pin_loads(reactions: &Reactions) -> [Vector; 6] {
    [
        reactions.trunnion,
        reactions.brace_pivot.unwrap_or_default(),
        reactions.knee.unwrap_or_default(),
        reactions.brace_attach.unwrap_or_default(),
        reactions.mount,
        reactions.actuator_attach,
    ]
}

impl<'a> Pinned<'a> {
    pub(crate) fn new(leg: &'a Leg, linkage: &Linkage, balance: Balance<'a>) -> Self {
        let rates = super::pin_rates(leg, linkage, balance.pose);
        let mut radii = leg.pins.all().map(|pin| pin.friction_radius());
        for (radius, rate) in radii.iter_mut().zip(&rates) {
            if rate.abs() <= REST {
                *radius = 0.0;
            }
        }
        let rubs = radii.iter().any(|radius| *radius > 0.0);
        let mut influence = [[Vector::zeros(); 6]; 6];
        if rubs {
            let nothing = Loads::default();
            for (j, row) in influence.iter_mut().enumerate() {
                let unit: Six = std::array::from_fn(|i| f64::from(u8::from(i == j)));
                let couples = BodyLoads::of_pins(leg, &unit);
                *row = pin_loads(&balance.solve(&nothing, &couples, 0.0).reactions);
            }
        }
        Self {
            leg,
            balance,
            rates,
            radii,
            influence,
            rubs,
        }
    }

    /// Reactions and friction while the leg moves; `still` is the balance of the same loads without
    /// friction.
    ///
    /// Unknown are the six friction moments m = −sign(ω)·μ·r·|R(m)|, the reactions R being linear in
    /// them: Newton's method on that equation, at most [`MOST_STEPS`] steps to [`TOLERANCE`]. Of its
    /// solutions the one counts that grows out of no friction: the determinant of its derivative,
    /// 1 without friction, is still positive. Where none is found at once, the friction is raised in
    /// steps.
    ///
    /// # Errors
    /// The pin that takes most where the friction cannot be raised to its full value: the larger the
    /// thrust, the larger the friction, without end. The leg is self-locking there.
    pub(crate) fn rubbing(
        &self,
        loads: &Loads,
        still: &FreeBodies,
        motion: Motion,
    ) -> Result<Rubbing, Joint> {
        if !self.rubs {
            return Ok(Rubbing {
                bodies: *still,
                moments: [0.0; 6],
            });
        }
        let free = pin_loads(&still.reactions);
        // friction radius, signed so that moment = −(this)·|R|
        let against: Six =
            std::array::from_fn(|i| self.radii[i] * (self.rates[i] * motion.sign()).signum());
        let (mut moments, mut done, mut rise) = ([0.0; 6], 0.0, 1.0_f64);
        for _ in 0..MOST_ATTEMPTS {
            let next = (done + rise).min(1.0);
            match self.newton(&free, &against, moments, next) {
                Some(found) => {
                    moments = found;
                    done = next;
                    rise *= 2.0;
                }
                None => rise *= 0.5,
            }
            if done >= 1.0 {
                let couples = BodyLoads::of_pins(self.leg, &moments);
                return Ok(Rubbing {
                    bodies: self.balance.solve(loads, &couples, still.thrust),
                    moments,
                });
            }
            if rise < LEAST_RISE {
                break;
            }
        }
        Err(self.hardest(&free, &against, &moments))
    }

    /// Loads of the pins under these friction moments.
    fn loads_under(&self, free: &[Vector; 6], moments: &Six) -> [Vector; 6] {
        let mut loads = *free;
        for (row, moment) in self.influence.iter().zip(moments) {
            if *moment != 0.0 {
                for (load, share) in loads.iter_mut().zip(row) {
                    *load += share * *moment;
                }
            }
        }
        loads
    }

    /// Friction moments at `share` of the full friction, from a guess.
    fn newton(
        &self,
        free: &[Vector; 6],
        against: &Six,
        mut moments: Six,
        share: f64,
    ) -> Option<Six> {
        let radii = against.map(|radius| radius * share);
        for _ in 0..MOST_STEPS {
            let loads = self.loads_under(free, &moments);
            let sizes = loads.map(|load| load.norm());
            let mut rows = [[0.0; 7]; 6];
            for (i, row) in rows.iter_mut().enumerate() {
                row[i] = 1.0;
                if radii[i] != 0.0 && sizes[i] > 0.0 {
                    let along = loads[i] * (radii[i] / sizes[i]);
                    for (j, from) in self.influence.iter().enumerate() {
                        row[j] += along.dot(&from[i]);
                    }
                }
                row[6] = moments[i] + radii[i] * sizes[i];
            }
            let determinant = eliminate(&mut rows)?;
            let scale: f64 = radii.iter().zip(sizes).map(|(r, s)| (r * s).abs()).sum();
            let mut largest = 0.0_f64;
            for (moment, row) in moments.iter_mut().zip(&rows) {
                *moment -= row[6];
                largest = largest.max(row[6].abs());
            }
            if !largest.is_finite() {
                return None;
            }
            if largest <= TOLERANCE * scale {
                return (determinant > 0.0).then_some(moments);
            }
        }
        None
    }

    /// The pin whose friction takes most power.
    fn hardest(&self, free: &[Vector; 6], against: &Six, moments: &Six) -> Joint {
        let loads = self.loads_under(free, moments);
        let power = |i: usize| (against[i] * loads[i].norm() * self.rates[i]).abs();
        let worst = (0..6).max_by(|a, b| power(*a).total_cmp(&power(*b)));
        worst
            .and_then(|at| Joint::ALL.get(at).copied())
            .unwrap_or(Joint::Trunnion)
    }
}

/// Gauss elimination with row pivots of six equations, the right side in the last column, which
/// then holds the solution. The determinant, `None` where it vanishes.
fn eliminate(rows: &mut [[f64; 7]; 6]) -> Option<f64> {
    let mut determinant = 1.0;
    for k in 0..6 {
        let pivot = (k..6).max_by(|a, b| rows[*a][k].abs().total_cmp(&rows[*b][k].abs()))?;
        if pivot != k {
            rows.swap(pivot, k);
            determinant = -determinant;
        }
        let top = rows[k];
        if top[k] == 0.0 || !top[k].is_finite() {
            return None;
        }
        determinant *= top[k];
        for row in rows.iter_mut().skip(k + 1) {
            let factor = row[k] / top[k];
            if factor != 0.0 {
                for (value, above) in row.iter_mut().zip(&top).skip(k) {
                    *value -= factor * above;
                }
            }
        }
    }
    for k in (0..6).rev() {
        let row = rows[k];
        let below = rows.iter().zip(row).skip(k + 1);
        let known: f64 = below.map(|(solved, factor)| factor * solved[6]).sum();
        rows[k][6] = (row[6] - known) / row[k];
    }
    Some(determinant)
}
