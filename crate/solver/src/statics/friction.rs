//! Friction of the pins, worked out together with the reactions it comes from.
use super::balance::{Balance, FreeBodies};
use super::eliminate::Eliminated;
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
/// Couples that differ this little from those of the friction under them end the iteration, against all
/// friction moments (ratio): the loads are off by as little of the friction's share in them, the couples,
/// which make the next guess, are mended once more.
const TOLERANCE: f64 = 1e-9;
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

/// Loads of all pins in the order of [`Joint::ALL`] (N).
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PinLoads {
    pub(crate) loads: [Vector; 6],
}

impl PinLoads {
    pub(crate) fn of(bodies: &FreeBodies) -> Self {
        Self {
            loads: pin_loads(&bodies.reactions),
        }
    }

    /// Adds these loads times a factor.
    pub(crate) fn add(&mut self, other: &Self, factor: f64) {
        for (load, more) in self.loads.iter_mut().zip(&other.loads) {
            *load += more * factor;
        }
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
    /// Couples on the bodies of a moment of one at each pin (ratio).
    on: [Four; 6],
    pub(crate) rub: bool,
}

impl PinSet {
    pub(crate) fn of(leg: &Leg) -> Self {
        Self {
            radii: leg.pins.all().map(|pin| pin.friction_radius()),
            couples: leg.pins.all().map(|pin| pin.tightness()),
            on: std::array::from_fn(|pin| {
                let unit: Six = std::array::from_fn(|i| f64::from(u8::from(i == pin)));
                let moved = BodyLoads::of_pins(leg, &unit);
                [
                    moved.leg.moment,
                    moved.upper.moment + moved.brace,
                    moved.lower.moment,
                    moved.actuator,
                ]
            }),
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
struct Tried {
    loads: PinLoads,
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
            let nothing = Loads::default();
            for (body, influence) in pinned.influence.iter_mut().enumerate() {
                *influence = PinLoads::of(&balance.solve(&nothing, &unit_couple(leg, body), 0.0));
            }
        }
        pinned
    }

    /// The same pins with so many times the friction.
    pub(crate) fn scaled(mut self, factor: f64) -> Self {
        self.factor *= factor;
        self
    }

    /// As [`Self::rubbing_times`], with the friction given.
    pub(crate) fn rubbing(
        &self,
        still: &PinLoads,
        motion: Motion,
        warm: Option<&mut Warm>,
    ) -> Result<Rubbed, Joint> {
        self.rubbing_times(1.0, still, motion, warm)
    }

    /// Loads and so many times the friction while the leg moves; `still` are the loads without friction.
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
    pub(crate) fn rubbing_times(
        &self,
        factor: f64,
        still: &PinLoads,
        motion: Motion,
        mut warm: Option<&mut Warm>,
    ) -> Result<Rubbed, Joint> {
        if !self.rubs {
            return Ok(Rubbed {
                loads: *still,
                power: 0.0,
            });
        }
        let against = motion.sign() * self.factor * factor;
        if let Some(warm) = warm.as_deref_mut()
            && let Some(mut couples) = warm.guess(self.turns)
            && let Some(rubbed) = self.newton(
                still,
                against,
                &mut couples,
                &mut warm.slope,
                MOST_WARM_STEPS,
            )
            && warm.slope.determinant > LEAST_WARM
        {
            warm.note(self.turns, couples);
            return Ok(rubbed);
        }
        let mut slope = Eliminated::default();
        let (mut couples, mut done, mut rise) = ([0.0; 4], 0.0, 1.0_f64);
        for _ in 0..MOST_ATTEMPTS {
            let next = (done + rise).min(1.0);
            let mut found = couples;
            match self.newton(still, against * next, &mut found, &mut slope, MOST_STEPS) {
                Some(rubbed) => {
                    if next >= 1.0 {
                        if let Some(warm) = warm {
                            warm.note(self.turns, found);
                            warm.slope = slope;
                        }
                        return Ok(rubbed);
                    }
                    couples = found;
                    done = next;
                    rise *= 2.0;
                }
                None => {
                    slope = Eliminated::default();
                    rise *= 0.5;
                }
            }
            if rise < LEAST_RISE {
                break;
            }
        }
        if let Some(warm) = warm {
            *warm = Warm::default();
        }
        Err(self.hardest(&self.tried(still, against, &couples)))
    }

    fn rubbed(&self, tried: &Tried) -> Rubbed {
        let mut power = 0.0;
        for pin in 0..6 {
            // against the motion, whichever it is
            power -= self.power(tried, pin);
        }
        Rubbed {
            loads: tried.loads,
            power,
        }
    }

    /// Power that the friction of a pin takes [N·m per unit of the common parameter].
    fn power(&self, tried: &Tried, pin: usize) -> f64 {
        (tried.moments[pin] * self.rates[pin]).abs()
    }

    /// Loads and friction under these couples.
    #[inline(always)]
    fn tried(&self, still: &PinLoads, against: f64, couples: &Four) -> Tried {
        let mut tried = Tried {
            loads: *still,
            sizes: [0.0; 6],
            moments: [0.0; 6],
            left: *couples,
        };
        for (influence, couple) in self.influence.iter().zip(couples) {
            tried.loads.add(influence, *couple);
        }
        for pin in 0..6 {
            let size = tried.loads.loads[pin].norm();
            let moment = against * (self.radii[pin] * size + self.couples[pin]);
            tried.sizes[pin] = size;
            tried.moments[pin] = moment;
            for (left, on) in tried.left.iter_mut().zip(&self.set.on[pin]) {
                *left += on * moment;
            }
        }
        tried
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
            let way = tried.loads.loads[pin] * (against * radius / size);
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

    /// Puts couples, given as a guess, and the derivative, where it must be worked out anew, to those of this
    /// friction.
    fn newton(
        &self,
        still: &PinLoads,
        against: f64,
        couples: &mut Four,
        slope: &mut Eliminated,
        most_steps: usize,
    ) -> Option<Rubbed> {
        let sum = |parts: &[f64]| parts.iter().map(|part| part.abs()).sum::<f64>();
        let mut before = f64::INFINITY;
        for _ in 0..=most_steps {
            let tried = self.tried(still, against, couples);
            let left = sum(&tried.left);
            if !left.is_finite() {
                return None;
            }
            if slope.determinant <= SOUND || left > FAST * before {
                *slope = self.slope(&tried, against)?;
            }
            for (couple, step) in couples.iter_mut().zip(slope.solve(&tried.left)) {
                *couple -= step;
            }
            if left <= TOLERANCE * sum(&tried.moments) {
                return (slope.determinant > 0.0).then(|| self.rubbed(&tried));
            }
            before = left;
        }
        None
    }

    /// The pin whose friction takes most power.
    fn hardest(&self, tried: &Tried) -> Joint {
        let power = |pin: &usize| self.power(tried, *pin);
        let worst = (0..6).max_by(|a, b| power(a).total_cmp(&power(b)));
        worst
            .and_then(|at| Joint::ALL.get(at).copied())
            .unwrap_or(Joint::Trunnion)
    }
}
