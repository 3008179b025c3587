//! Friction of the pins, worked out together with the reactions it comes from.
use super::balance::{Balance, FreeBodies};
use super::eliminate::Eliminated;
use super::pin_set::{PinSet, unit_couple};
use super::warm::Warm;
use crate::kinematics::Linkage;
use crate::model::{Brace, Joint, Leg, Vector};
use crate::result::{Motion, Reactions};

/// Most Newton steps of one attempt.
const MOST_STEPS: usize = 40;
/// Most attempts at raising the friction from nothing to its full value.
const MOST_ATTEMPTS: usize = 60;
/// Smallest rise of friction tried, as a share of the whole (ratio): below it the pins bind.
const LEAST_RISE: f64 = 1e-4;
/// Couples that differ this little from those of the friction under them are within one step of them, against
/// all friction moments (ratio): a derivative of their own leaves the square of it, one that is used again a hundredth
/// where it has left no more of the step before. Without either they are taken once they differ by the second.
const TOLERANCE: f64 = 1e-8;
const SETTLED: f64 = 1e-11;
/// A derivative is used again while each step leaves no more than this share of the difference, and while
/// its determinant is above the other (ratio): closer to binding every step has its own.
const FAST: f64 = 0.01;
const SOUND: f64 = 0.5;
/// Most steps from the neighboring station's solution, and the least determinant there: closer to
/// binding the solution is sought from no friction upwards (ratio).
const MOST_WARM_STEPS: usize = 8;
const LEAST_WARM: f64 = 0.1;
/// Rates of turn below this are rest (rad); the largest rate of a pose is about 1.
const REST: f64 = 1e-12;

pub(super) type Six = [f64; 6];
/// Couples on leg, upper link or telescopic brace, lower link and actuator: all that the pins'
/// friction does to the balance.
pub(super) type Four = [f64; 4];

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
        add_loads(&mut self.loads, &other.loads, factor);
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

/// The pins of one pose, ready for any loads.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Pinned<'a> {
    set: &'a PinSet,
    pub(crate) rates: Six,
    /// Friction radius of each pin (m), and its couple (N·m), with the sign of its rate; 0 where it
    /// stands still.
    radii: Six,
    couples: Six,
    /// Which pins turn backwards, a bit for each.
    turns: u8,
    /// So many times the friction given (ratio).
    factor: f64,
    /// Pin loads for a couple of one on each body [1/m].
    influence: [PinLoads; 4],
    pub(crate) rubs: bool,
}

fn add_loads(loads: &mut [Vector; 6], more: &[Vector; 6], factor: f64) {
    for (load, more) in loads.iter_mut().zip(more) {
        *load += more * factor;
    }
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

/// What couples on the bodies come to.
#[derive(Default)]
struct Tried {
    loads: [Vector; 6],
    /// Sizes of the pins' loads (N).
    sizes: Six,
    /// Friction moments in the sense of retracting, each its own reverse (N·m).
    moments: Six,
    /// The couples less those of the friction (N·m).
    left: Four,
}

impl<'a> Pinned<'a> {
    pub(crate) fn new(set: &'a PinSet, leg: &Leg, linkage: &Linkage, balance: &Balance) -> Self {
        let mut pinned = Self {
            set,
            rates: [0.0; 6],
            radii: [0.0; 6],
            couples: [0.0; 6],
            turns: 0,
            factor: 1.0,
            influence: [PinLoads::default(); 4],
            rubs: false,
        };
        if !set.rub {
            return pinned;
        }
        pinned.rates = super::pin_rates(leg, linkage, balance.pose());
        for (pin, rate) in pinned.rates.iter().enumerate() {
            if rate.abs() > REST {
                pinned.radii[pin] = set.radii[pin] * rate.signum();
                pinned.couples[pin] = set.couples[pin] * rate.signum();
                pinned.rubs |= set.radii[pin] + set.couples[pin] > 0.0;
                pinned.turns |= u8::from(*rate < 0.0) << pin;
            }
        }
        if pinned.rubs {
            for (body, influence) in pinned.influence.iter_mut().enumerate() {
                *influence = balance.solve_on(&unit_couple(leg, body));
            }
        }
        pinned
    }

    /// The same pins with so many times the friction.
    pub(crate) fn scaled(mut self, factor: f64) -> Self {
        self.factor *= factor;
        self
    }

    /// Loads and friction while the leg moves; `still` are the loads without friction.
    ///
    /// # Errors
    /// As [`Self::couples`].
    pub(crate) fn rubbing(
        &self,
        still: &PinLoads,
        motion: Motion,
        warm: Option<&mut Warm>,
    ) -> Result<Rubbed, Joint> {
        let mut rubbed = Rubbed {
            loads: *still,
            power: 0.0,
        };
        if self.rubs {
            let couples = self.couples(1.0, still, motion, warm)?;
            for (influence, couple) in self.influence.iter().zip(&couples) {
                rubbed.loads.add(influence, *couple);
            }
            rubbed.power = self.power(&couples, motion);
        }
        Ok(rubbed)
    }

    /// Power of so many times the friction alone, as in [`Rubbed`].
    ///
    /// # Errors
    /// As [`Self::couples`].
    pub(crate) fn power_times(
        &self,
        factor: f64,
        still: &PinLoads,
        motion: Motion,
        warm: Option<&mut Warm>,
    ) -> Result<f64, Joint> {
        if !self.rubs {
            return Ok(0.0);
        }
        let couples = self.couples(factor, still, motion, warm)?;
        Ok(self.power(&couples, motion))
    }

    /// Power of these couples: each at the rate of its body.
    fn power(&self, couples: &Four, motion: Motion) -> f64 {
        let [leg, upper, knee, _, actuator, _] = self.rates;
        let mut power = 0.0;
        for (couple, rate) in couples.iter().zip([leg, upper, upper + knee, actuator]) {
            power += couple * rate;
        }
        (power * motion.sign()).min(0.0)
    }

    /// Couples on the bodies of so many times the friction.
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
    fn couples(
        &self,
        factor: f64,
        still: &PinLoads,
        motion: Motion,
        mut warm: Option<&mut Warm>,
    ) -> Result<Four, Joint> {
        let against = motion.sign() * self.factor * factor;
        if let Some(warm) = warm.as_deref_mut()
            && let Some(guess) = warm.guess(self.turns)
            && let Some(couples) =
                self.newton(still, against, guess, &mut warm.slope, MOST_WARM_STEPS)
            && warm.slope.determinant > LEAST_WARM
        {
            warm.note(self.turns, couples);
            return Ok(couples);
        }
        let mut slope = Eliminated::default();
        let (mut couples, mut done, mut rise) = ([0.0; 4], 0.0, 1.0_f64);
        for _ in 0..MOST_ATTEMPTS {
            let next = (done + rise).min(1.0);
            match self.newton(still, against * next, couples, &mut slope, MOST_STEPS) {
                Some(found) => {
                    couples = found;
                    done = next;
                    rise *= 2.0;
                }
                None => {
                    slope = Eliminated::default();
                    rise *= 0.5;
                }
            }
            if done >= 1.0 {
                if let Some(warm) = warm {
                    warm.note(self.turns, couples);
                    warm.slope = slope;
                }
                return Ok(couples);
            }
            if rise < LEAST_RISE {
                break;
            }
        }
        if let Some(warm) = warm {
            *warm = Warm::default();
        }
        let mut tried = Tried::default();
        self.put(still, against, &couples, &mut tried);
        Err(self.hardest(&tried))
    }

    /// Puts in the loads and the friction under these couples.
    fn put(&self, still: &PinLoads, against: f64, couples: &Four, tried: &mut Tried) {
        let mut loads = still.loads;
        for (influence, couple) in self.influence.iter().zip(couples) {
            add_loads(&mut loads, &influence.loads, *couple);
        }
        let sizes = loads.map(|load| load.norm());
        let moments: Six =
            std::array::from_fn(|pin| against * (self.radii[pin] * sizes[pin] + self.couples[pin]));
        let mut left = *couples;
        for (on, moment) in self.set.on.iter().zip(&moments) {
            for (left, on) in left.iter_mut().zip(on) {
                *left += on * moment;
            }
        }
        *tried = Tried {
            loads,
            sizes,
            moments,
            left,
        };
    }

    /// Derivative of what is left of the couples; `None` where it is singular.
    fn slope(&self, tried: &Tried, against: f64) -> Option<Eliminated> {
        let mut rows = [[0.0; 4]; 4];
        for (body, row) in rows.iter_mut().enumerate() {
            row[body] = 1.0;
        }
        for pin in 0..6 {
            let (radius, size) = (self.radii[pin], tried.sizes[pin]);
            if radius == 0.0 || size == 0.0 {
                continue;
            }
            let way = tried.loads[pin] * (against * radius / size);
            let change: Four =
                std::array::from_fn(|body| way.dot(&self.influence[body].loads[pin]));
            for (row, on) in rows.iter_mut().zip(&self.set.on[pin]) {
                for (at, change) in row.iter_mut().zip(&change) {
                    *at += on * change;
                }
            }
        }
        Eliminated::new(rows)
    }

    /// Couples of this friction, from a guess, with the derivative, where it must be worked out anew.
    fn newton(
        &self,
        still: &PinLoads,
        against: f64,
        mut couples: Four,
        slope: &mut Eliminated,
        most_steps: usize,
    ) -> Option<Four> {
        let sum = |parts: &[f64]| parts.iter().map(|part| part.abs()).sum::<f64>();
        let mut before = f64::INFINITY;
        let mut tried = Tried::default();
        for _ in 0..=most_steps {
            self.put(still, against, &couples, &mut tried);
            let left = sum(&tried.left);
            if !left.is_finite() {
                return None;
            }
            let slow = before.is_finite() && left > FAST * before;
            let renewed = slope.determinant <= SOUND || slow;
            if renewed {
                *slope = self.slope(&tried, against)?;
            }
            for (couple, step) in couples.iter_mut().zip(slope.solve(&tried.left)) {
                *couple -= step;
            }
            let within = match renewed || before.is_finite() {
                true => TOLERANCE,
                false => SETTLED,
            };
            if left <= within * sum(&tried.moments) {
                return (slope.determinant > 0.0).then_some(couples);
            }
            before = left;
        }
        None
    }

    /// The pin whose friction takes most power.
    fn hardest(&self, tried: &Tried) -> Joint {
        let power = |pin: &usize| (tried.moments[*pin] * self.rates[*pin]).abs();
        let worst = (0..6).max_by(|a, b| power(a).total_cmp(&power(b)));
        worst
            .and_then(|at| Joint::ALL.get(at).copied())
            .unwrap_or(Joint::Trunnion)
    }
}
