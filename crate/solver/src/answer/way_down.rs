//! The way down without the normal power: does it bring the leg to its lock, with how much to spare?
use crate::model::{EmergencyWay, Gear, Leg, Source};
use crate::result::{
    CaseOutcome, DrivenBy, Fall, FallOutcome, FallShort, Force, ForcePeak, HandPumpDown, LoadCase,
    LockKind, Motion, Phase, Unpowered, Verdict, WayDown,
};

/// A moment that is missing is about nothing below this share of the largest moment of the weights (ratio).
/// Our own figure.
const LITTLE_MISSING: f64 = 0.01;

/// A leg so near to its stop, at the axle (m), is about there. Our own figure.
const NEAR_STOP: f64 = 1e-3;

/// What the answer is made from.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WayDownCase<'a> {
    pub(crate) gear: &'a Gear,
    pub(crate) leg: &'a Leg,
    pub(crate) lock: LockKind,
    pub(crate) force: &'a Force,
    pub(crate) fall: Option<&'a Fall>,
    /// The actuator has no arm somewhere on its way.
    pub(crate) dead_point: bool,
}

/// Answers it; `None` for a leg that does not come up, whose fall is not worked out.
pub(crate) fn way_down(case: &WayDownCase) -> Option<WayDown> {
    let fall = case.fall?;
    let way = case.gear.way_down();
    let hand_pump = case
        .pump_pressure()
        .and_then(|available| case.hand_pump(available));
    let typed = case.leg.friction_typed(&case.gear.supply.source).any();
    let falls = by_fall(case.lock, typed, fall);
    let verdict = match way {
        EmergencyWay::FreeFall => falls,
        EmergencyWay::HandPump => hand_pump.map_or(Verdict::NotShown, |pump| {
            // a knee that a separate device unlocks goes over its center by itself
            let pushed = fall.least_knee_push.is_none_or(|least| least.push > 0.0);
            let verdict = by_pump(case, &pump);
            match (verdict, pushed || case.lock != LockKind::OverCentre) {
                (Verdict::Good, false) => Verdict::Marginal,
                (verdict, _) => verdict,
            }
        }),
        EmergencyWay::StoredGas | EmergencyWay::HandCrank => Verdict::NotShown,
        EmergencyWay::NoneGiven => Verdict::Marginal.or_worse(falls),
    };
    Some(WayDown {
        way,
        verdict,
        hand_pump,
    })
}

impl WayDownCase<'_> {
    /// Most that the hand pump of the way down makes (Pa): that of a source has no more than is given as
    /// available. `None` where there is no such pump, or it drives nothing.
    fn pump_pressure(&self) -> Option<f64> {
        let most = self.gear.hand_pump_pressure();
        let most = most.filter(|_| self.force.driven_by == DrivenBy::Fluid)?;
        Some(match self.gear.supply.source {
            Source::HandPump(_) => most.min(self.force.available_extend_pressure),
            Source::ConstantPressure | Source::MotorPump(_) | Source::ElectricActuators => most,
        })
    }

    /// The hardest that such a pump has to work against while it extends the leg: the worst verdict of all
    /// load cases, and of those alike the most pressure; `None` where nothing is worked out.
    fn hand_pump(&self, available: f64) -> Option<HandPumpDown> {
        let force = self.force;
        let mut binds = force.binds.iter().any(|bind| bind.motion == Motion::Extend);
        let mut peaks: Vec<(LoadCase, ForcePeak)> = force
            .extend_peak
            .into_iter()
            .map(|peak| (LoadCase::AsSet, peak))
            .collect();
        for case in &force.cases {
            if let CaseOutcome::Worked {
                extend, binds_at, ..
            } = &case.outcome
            {
                peaks.extend(extend.map(|peak| (case.case, peak)));
                binds |= binds_at.is_some_and(|bind| bind.motion == Motion::Extend);
            }
        }
        let stands = force
            .partner_stands
            .is_some_and(|stands| stands.motion == Motion::Extend);
        let stopped = binds || stands || self.dead_point;
        let of = |(case, peak): (LoadCase, ForcePeak)| HandPumpDown {
            case,
            needed: peak.pressure,
            available,
            margin: (available - peak.pressure) / available,
            stopped,
            place: peak.place,
        };
        peaks.into_iter().map(of).reduce(|a, b| {
            let (bad, worse) = (by_pump(self, &a), by_pump(self, &b));
            if worse.gravity() > bad.gravity() || (bad == worse && b.needed > a.needed) {
                b
            } else {
                a
            }
        })
    }
}

/// How a hand pump stands by its hardest place.
fn by_pump(case: &WayDownCase, pump: &HandPumpDown) -> Verdict {
    if pump.stopped {
        return Verdict::Bad;
    }
    pump.case.verdict(pump.margin, case.force.required_margin)
}

/// How a leg that falls by itself stands, any of whose friction is `typed` or none.
fn by_fall(lock: LockKind, typed: bool, fall: &Fall) -> Verdict {
    if fall.fails() {
        return if is_about_there(lock, fall) {
            Verdict::Marginal
        } else {
            Verdict::Bad
        };
    }
    let weak = fall.required.is_some_and(|required| !required.reaches);
    let stays = fall.start.is_some_and(|start| start.ratio < 1.0);
    let doubtful = !fall.reaches_lock()
        || !typed
        || weak
        || stays
        || fall.by_speed_alone()
        || fall.at_gear_speed == Some(false)
        || fall.actuator == Unpowered::Released;
    if doubtful {
        Verdict::Marginal
    } else {
        Verdict::Good
    }
}

/// Whether what is missing of a fall that stops short, or does not start, is about nothing: a small
/// moment, or a small way to the stop. A knee short of its center is not about there, however little
/// the axle still moves.
fn is_about_there(lock: LockKind, fall: &Fall) -> bool {
    let (Some(short), FallOutcome::StopsShort { place, .. }) = (fall.short, fall.outcome) else {
        return fall.short.is_some_and(|short| is_little(&short));
    };
    let past_center = lock != LockKind::OverCentre || place.phase == Phase::Unlock;
    is_little(&short) || (past_center && short.from_stop < NEAR_STOP)
}

fn is_little(short: &FallShort) -> bool {
    short
        .missing_share
        .is_some_and(|share| share < LITTLE_MISSING)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::tests::support::{fall, place};
    use crate::result::{FallRequired, FallShort, LeastKneePush, LeastMoment};

    fn of(change: impl Fn(&mut Fall)) -> Verdict {
        let mut fall = fall();
        change(&mut fall);
        by_fall(LockKind::OverCentre, true, &fall)
    }

    /// Each of what makes a fall less than sure takes the plain Yes away by itself.
    #[test]
    fn what_is_not_sure_is_marginal() {
        assert_eq!(of(|_| {}), Verdict::Good);
        let place = place(Phase::Swing);
        for moment in [-0.1, 0.0] {
            let least = LeastMoment { moment, place };
            assert_eq!(of(|f| f.least_moment = Some(least)), Verdict::Marginal);
        }
        let least = LeastKneePush { push: -0.1, place };
        assert_eq!(of(|f| f.least_knee_push = Some(least)), Verdict::Marginal);
        let outcome = FallOutcome::NotFollowed { place, time: 1.0 };
        assert_eq!(of(|f| f.outcome = outcome), Verdict::Marginal);
        assert_eq!(of(|f| f.at_gear_speed = Some(true)), Verdict::Good);
        assert_eq!(of(|f| f.at_gear_speed = Some(false)), Verdict::Marginal);
        assert_eq!(of(|f| f.actuator = Unpowered::DrivenBack), Verdict::Good);
        assert_eq!(of(|f| f.actuator = Unpowered::Released), Verdict::Marginal);
        let weak = FallRequired {
            times: 1.5,
            reaches: false,
        };
        assert_eq!(of(|f| f.required = Some(weak)), Verdict::Marginal);
        assert_eq!(of(|f| f.required = None), Verdict::Good);
        let stays = |f: &mut Fall| {
            if let Some(start) = &mut f.start {
                start.ratio = 0.99;
            }
        };
        assert_eq!(of(stays), Verdict::Marginal);
        let just_starts = |f: &mut Fall| {
            if let Some(start) = &mut f.start {
                start.ratio = 1.0;
            }
        };
        assert_eq!(of(just_starts), Verdict::Good);
        assert_eq!(
            by_fall(LockKind::OverCentre, false, &fall()),
            Verdict::Marginal
        );
    }

    /// What stops short is No, but for a moment or a way to the stop that is about nothing; a knee that
    /// has not come over its center is not about there.
    #[test]
    fn what_stops_short_is_no() {
        let short = |phase, missing_share, from_stop| {
            of(|f| {
                f.outcome = FallOutcome::StopsShort {
                    place: place(phase),
                    time: 1.0,
                };
                f.short = Some(FallShort {
                    missing_share: Some(missing_share),
                    from_stop,
                });
            })
        };
        assert_eq!(short(Phase::Swing, 0.02, 0.1), Verdict::Bad);
        assert_eq!(short(Phase::Swing, 0.01, 0.1), Verdict::Bad);
        assert_eq!(short(Phase::Swing, 0.0099, 0.1), Verdict::Marginal);
        assert_eq!(short(Phase::Swing, 0.02, 0.0009), Verdict::Bad);
        assert_eq!(short(Phase::Unlock, 0.02, 0.0009), Verdict::Marginal);
        assert_eq!(short(Phase::Unlock, 0.02, 0.0011), Verdict::Bad);
        let stays = |missing_share| {
            of(|f| {
                f.outcome = FallOutcome::StaysUp;
                f.short = Some(FallShort {
                    missing_share: Some(missing_share),
                    from_stop: 0.5,
                });
            })
        };
        assert_eq!(stays(0.0099), Verdict::Marginal);
        assert_eq!(stays(0.02), Verdict::Bad);
        let outcome = FallOutcome::Creeps {
            place: place(Phase::Swing),
            time: 60.0,
        };
        assert_eq!(of(|f| f.outcome = outcome), Verdict::Bad);
    }

    #[test]
    fn no_is_worse_than_marginal_and_that_worse_than_not_shown() {
        let order = [
            Verdict::Bad,
            Verdict::Marginal,
            Verdict::NotShown,
            Verdict::Good,
        ];
        for (i, a) in order.into_iter().enumerate() {
            for b in order.into_iter().skip(i) {
                assert_eq!((a.or_worse(b), b.or_worse(a)), (a, a));
            }
        }
    }
}
