//! Friction of the pins, worked out together with the reactions it comes from.
use super::against::Against;
use super::balance::{Balance, FreeBodies};
use super::eliminate::eliminate;
use super::warm::Warm;
use super::{BodyLoads, Loads};
use crate::kinematics::Linkage;
use crate::model::{Brace, Joint, Leg, Vector};
use crate::result::{Motion, Reactions};

/// Most Newton steps of one attempt.
const MOST_STEPS: usize = 40;
/// Most attempts at raising the friction from nothing to its full value.
const MOST_ATTEMPTS: usize = 60;
/// Smallest rise of friction tried, as a share of the whole (ratio): below it the pins bind.
const LEAST_RISE: f64 = 1e-4;
/// A step this small against the friction moments ends the iteration (ratio).
const TOLERANCE: f64 = 1e-11;
/// So does one this small where no pin is nearly free of load (ratio): the error left goes with its square
/// and with that of the friction's share in the loads, and stays below 1e-10.
const LAST_STEP: f64 = 1e-5;
/// A pin with less than this share of the largest load is nearly free of load (ratio).
const NEARLY_FREE: f64 = 1e-2;
/// Most steps from the neighboring station's solution, and the least determinant there: closer to
/// binding the solution is sought from no friction upwards (ratio).
const MOST_WARM_STEPS: usize = 5;
const LEAST_WARM: f64 = 0.1;
/// Rates of turn below this are rest (rad); the largest rate of a pose is about 1.
const REST: f64 = 1e-12;

pub(super) type Six = [f64; 6];
/// Couples on leg, upper link or telescopic brace, lower link and actuator: all that the pins'
/// friction does to the balance.
pub(super) type Four = [f64; 4];
/// The place behind those of [`Four`], for what is fixed: no couple moves it.
const AIRFRAME: usize = 4;

/// Loads of all pins in the order of [`Joint::ALL`] (N), and the thrust with them (N).
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PinLoads {
    pub(crate) loads: [Vector; 6],
    pub(crate) thrust: f64,
}

impl PinLoads {
    pub(crate) fn of(bodies: &FreeBodies) -> Self {
        Self {
            loads: pin_loads(&bodies.reactions),
            thrust: bodies.thrust,
        }
    }

    /// Adds these loads times a factor.
    pub(crate) fn add(&mut self, other: &Self, factor: f64) {
        for (load, more) in self.loads.iter_mut().zip(&other.loads) {
            *load += more * factor;
        }
        self.thrust += other.thrust * factor;
    }

    /// As reactions of a leg with this brace.
    pub(crate) fn reactions(&self, brace: &Brace) -> Reactions {
        let [trunnion, pivot, knee, attach, mount, driven] = self.loads;
        let folds = matches!(brace, Brace::Folding(_));
        let braced = !matches!(brace, Brace::None);
        Reactions {
            trunnion,
            brace_pivot: braced.then_some(pivot),
            knee: folds.then_some(knee),
            brace_attach: braced.then_some(attach),
            mount,
            actuator_attach: driven,
        }
    }
}

/// What the pins of a leg are at every pose.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PinSet {
    /// Radius of each friction circle (m).
    radii: Six,
    /// Couple of each pin that does not hang on its load (N·m).
    couples: Six,
    /// On which body the moment of each pin is, and on which its reverse; [`AIRFRAME`] stands for both
    /// nothing and what is fixed.
    on: [[usize; 2]; 6],
    pub(crate) rub: bool,
}

impl PinSet {
    pub(crate) fn of(leg: &Leg) -> Self {
        let mut on = [[AIRFRAME; 2]; 6];
        for (pin, bodies) in on.iter_mut().enumerate() {
            let unit: Six = std::array::from_fn(|i| f64::from(u8::from(i == pin)));
            let moved = BodyLoads::of_pins(leg, &unit);
            let couples: Four = [
                moved.leg.moment,
                moved.upper.moment + moved.brace,
                moved.lower.moment,
                moved.actuator,
            ];
            for (side, sign) in bodies.iter_mut().zip([1.0, -1.0]) {
                let at = couples.iter().position(|couple| *couple == sign);
                *side = at.unwrap_or(AIRFRAME);
            }
        }
        Self {
            radii: leg.pins.all().map(|pin| pin.friction_radius()),
            couples: leg.pins.all().map(|pin| pin.tightness()),
            on,
            rub: leg.pins.rub(),
        }
    }
}

/// A couple of one on the body at this place of [`Four`].
fn unit_couple(leg: &Leg, body: usize) -> BodyLoads {
    let mut on = BodyLoads::default();
    match (body, &leg.brace) {
        (0, _) => on.leg.moment = 1.0,
        (1, Brace::Sliding(_)) => on.brace = 1.0,
        (1, _) => on.upper.moment = 1.0,
        (2, _) => on.lower.moment = 1.0,
        _ => on.actuator = 1.0,
    }
    on
}

/// The pins of one pose, ready for any loads.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Pinned<'a> {
    set: &'a PinSet,
    pub(crate) rates: Six,
    /// Friction radius of each pin (m), and its couple (N·m); 0 where it stands still.
    radii: Six,
    couples: Six,
    /// Pin loads for a couple of one on each body [1/m].
    influence: [PinLoads; 4],
    /// The same by pins: along x and along y.
    by_pin: [[Four; 2]; 6],
    pub(crate) rubs: bool,
}

/// Loads of all pins (N); a pin that the brace does not have carries none.
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

/// Pin loads and friction while the leg moves.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rubbed {
    pub(crate) loads: PinLoads,
    /// Power of the pin friction in this motion [N·m per unit of the common parameter]: never above
    /// 0.
    pub(crate) power: f64,
}

impl<'a> Pinned<'a> {
    pub(crate) fn new(set: &'a PinSet, leg: &Leg, linkage: &Linkage, balance: &Balance) -> Self {
        let mut pinned = Self {
            set,
            rates: [0.0; 6],
            radii: [0.0; 6],
            couples: [0.0; 6],
            influence: [PinLoads::default(); 4],
            by_pin: [[[0.0; 4]; 2]; 6],
            rubs: false,
        };
        if !set.rub {
            return pinned;
        }
        pinned.rates = super::pin_rates(leg, linkage, balance.pose());
        let turning = |full: Six| -> Six {
            std::array::from_fn(|i| match pinned.rates[i].abs() <= REST {
                true => 0.0,
                false => full[i],
            })
        };
        (pinned.radii, pinned.couples) = (turning(set.radii), turning(set.couples));
        let mut frictions = pinned.radii.iter().chain(&pinned.couples);
        pinned.rubs = frictions.any(|friction| *friction > 0.0);
        if pinned.rubs {
            let nothing = Loads::default();
            for (body, influence) in pinned.influence.iter_mut().enumerate() {
                *influence = PinLoads::of(&balance.solve(&nothing, &unit_couple(leg, body), 0.0));
                for ([x, y], load) in pinned.by_pin.iter_mut().zip(&influence.loads) {
                    (x[body], y[body]) = (load.x, load.y);
                }
            }
        }
        pinned
    }

    /// The same pins with so many times the friction.
    pub(crate) fn scaled(mut self, factor: f64) -> Self {
        self.radii = self.radii.map(|radius| radius * factor);
        self.couples = self.couples.map(|couple| couple * factor);
        self
    }

    /// Loads and friction while the leg moves; `still` are the loads without friction.
    ///
    /// Unknown are the friction moments m = −sign(ω)·(μ·r·|R(m)| + C), C the couple, the loads R being linear in the
    /// couples that they make on the bodies: Newton's method on those four couples, at most
    /// [`MOST_STEPS`] steps to [`TOLERANCE`]. Of its solutions the one counts that grows out of no
    /// friction: the determinant of its derivative, 1 without friction, is still positive (it is
    /// that of the six moments too: det(1 + UV) = det(1 + VU)). Where none is found at once, the
    /// friction is raised in steps.
    ///
    /// # Errors
    /// The pin that takes most where the friction cannot be raised to its full value: the larger the
    /// thrust, the larger the friction, without end. The leg is self-locking there.
    pub(crate) fn rubbing(
        &self,
        still: &PinLoads,
        motion: Motion,
        warm: Option<&mut Warm>,
    ) -> Result<Rubbed, Joint> {
        if !self.rubs {
            return Ok(Rubbed {
                loads: *still,
                power: 0.0,
            });
        }
        let way = |i: usize| (self.rates[i] * motion.sign()).signum();
        let against = Against {
            radii: std::array::from_fn(|i| self.radii[i] * way(i)),
            couples: std::array::from_fn(|i| self.couples[i] * way(i)),
        };
        if let Some(guess) = warm.as_deref().and_then(|warm| warm.guess(&against))
            && let Some((couples, determinant)) =
                self.newton(still, &against, guess, MOST_WARM_STEPS)
            && determinant > LEAST_WARM
        {
            if let Some(warm) = warm {
                warm.note(&against, couples);
            }
            return Ok(self.rubbed(still, &against, &couples));
        }
        let (mut couples, mut done, mut rise) = ([0.0; 4], 0.0, 1.0_f64);
        for _ in 0..MOST_ATTEMPTS {
            let next = (done + rise).min(1.0);
            match self.newton(still, &against.times(next), couples, MOST_STEPS) {
                Some((found, _)) => {
                    couples = found;
                    done = next;
                    rise *= 2.0;
                }
                None => rise *= 0.5,
            }
            if done >= 1.0 {
                if let Some(warm) = warm {
                    warm.note(&against, couples);
                }
                return Ok(self.rubbed(still, &against, &couples));
            }
            if rise < LEAST_RISE {
                break;
            }
        }
        if let Some(warm) = warm {
            *warm = Warm::default();
        }
        Err(self.hardest(still, &against, &couples))
    }

    fn rubbed(&self, still: &PinLoads, against: &Against, couples: &Four) -> Rubbed {
        let loads = self.loads_under(still, couples);
        let mut power = 0.0;
        for (pin, (rate, load)) in self.rates.iter().zip(&loads.loads).enumerate() {
            // against the motion, whichever it is
            power -= (against.moment(pin, load.norm()) * rate).abs();
        }
        Rubbed { loads, power }
    }

    /// Loads of the pins under these couples.
    fn loads_under(&self, still: &PinLoads, couples: &Four) -> PinLoads {
        let mut loads = *still;
        for (influence, couple) in self.influence.iter().zip(couples) {
            loads.add(influence, *couple);
        }
        loads
    }

    /// Couples of this friction on the bodies, from a guess, and the determinant there.
    #[inline]
    fn newton(
        &self,
        still: &PinLoads,
        against: &Against,
        mut couples: Four,
        most_steps: usize,
    ) -> Option<(Four, f64)> {
        for _ in 0..most_steps {
            // the row behind the four is that of what is fixed
            let mut rows = [[0.0; 5]; 5];
            for (body, couple) in couples.iter().enumerate() {
                rows[body][body] = 1.0;
                rows[body][4] = *couple;
            }
            let (mut scale, mut most, mut least) = (0.0, 0.0_f64, f64::INFINITY);
            for pin in 0..6 {
                let (radius, couple) = (against.radii[pin], against.couples[pin]);
                if radius == 0.0 && couple == 0.0 {
                    continue;
                }
                let [by_x, by_y] = &self.by_pin[pin];
                let (mut x, mut y) = (still.loads[pin].x, still.loads[pin].y);
                for body in 0..4 {
                    x += by_x[body] * couples[body];
                    y += by_y[body] * couples[body];
                }
                let size = (x * x + y * y).sqrt();
                let moment = radius * size + couple;
                scale += moment.abs();
                let mut change = [0.0, 0.0, 0.0, 0.0, moment];
                if radius != 0.0 {
                    most = if size > most { size } else { most };
                    least = if size < least { size } else { least };
                    if size > 0.0 {
                        let share = radius / size;
                        let (x, y) = (x * share, y * share);
                        for body in 0..4 {
                            change[body] = x * by_x[body] + y * by_y[body];
                        }
                    }
                }
                let [on, reverse] = self.set.on[pin];
                for at in 0..5 {
                    rows[on][at] += change[at];
                    rows[reverse][at] -= change[at];
                }
            }
            let [bodies @ .., _] = &mut rows;
            let determinant = eliminate(bodies)?;
            let mut largest = 0.0_f64;
            for (couple, row) in couples.iter_mut().zip(bodies) {
                *couple -= row[4];
                largest = largest.max(row[4].abs());
            }
            if !largest.is_finite() {
                return None;
            }
            let settled = largest <= TOLERANCE * scale
                || (largest <= LAST_STEP * scale && least >= NEARLY_FREE * most);
            if settled {
                return (determinant > 0.0).then_some((couples, determinant));
            }
        }
        None
    }

    /// The pin whose friction takes most power.
    fn hardest(&self, still: &PinLoads, against: &Against, couples: &Four) -> Joint {
        let loads = self.loads_under(still, couples).loads;
        let power = |i: usize| (against.moment(i, loads[i].norm()) * self.rates[i]).abs();
        let worst = (0..6).max_by(|a, b| power(*a).total_cmp(&power(*b)));
        worst
            .and_then(|at| Joint::ALL.get(at).copied())
            .unwrap_or(Joint::Trunnion)
    }
}
