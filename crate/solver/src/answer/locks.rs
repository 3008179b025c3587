//! Will it lock?
use crate::result::{
    Assumption, Caution, Excursion, Fall, Finding, FindingDetail, InertiaBasis, Lock, LockKind,
    Place, Question, Verdict, WayDown,
};

/// Least over-center offset [m]: 0.06 in, our own, just below every range printed in the maintenance
/// manuals of light airplanes that were read: 0.062–0.125 in main side brace of light singles,
/// 0.145–0.170 in main side brace of a light twin, 0.125–0.250 in nose drag brace of a light single,
/// 0.063–0.156 in nose drag brace and 0.220–0.280 in nose idler link of a light twin, 0.219–0.281 in
/// main drag brace of a turboprop twin.
pub const LEAST_OVER_CENTRE: f64 = 0.06 * 0.0254;

/// Least and most over-center offset that those manuals print [m]: 0.062 and 0.281 in.
pub const PRINTED_OVER_CENTER: (f64, f64) = (0.062 * 0.0254, 0.281 * 0.0254);

/// Least push at the knee, against the dead weight, that counts as holding it [N]: about 1 lb, what
/// a hand's touch or a shake gives. Our own figure, no source.
pub const LEAST_KNEE_PUSH: f64 = 5.0;

/// Least offset left after the play of the knee [m]: half of what is asked for. Our own figure, no
/// source.
pub const LEAST_AFTER_PLAY: f64 = 0.5 * LEAST_OVER_CENTRE;

/// A telescopic brace this far from its end length at down does not stand at its latch [m]
/// (rounding of typed figures; common practice).
pub const LATCH_GAP: f64 = 1e-3;

/// What the answer "will it lock?" is made from.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LockCase<'a> {
    pub(crate) lock: &'a Lock,
    /// The leg has springs, counted in the push at the knee.
    pub(crate) springs: bool,
    pub(crate) fall: Option<&'a Fall>,
    pub(crate) way_down: Option<&'a WayDown>,
    pub(crate) excursion: Option<&'a Excursion>,
    /// Place of the locked pose.
    pub(crate) down: Option<Place>,
    /// Any friction of what has stood, which is not given, counts.
    pub(crate) break_out_from_memory: bool,
    /// How many times its friction it must fall against is the built-in figure.
    pub(crate) own_times: bool,
    /// Travel at which the down and locked switch makes [1].
    pub(crate) down_switch: f64,
    /// It is on one drive with others.
    pub(crate) shares_drive: bool,
}

/// Answers "will it lock?".
pub(crate) fn locks(case: &LockCase) -> Finding {
    let LockCase {
        lock,
        springs,
        fall,
        way_down,
        excursion,
        down,
        break_out_from_memory,
        own_times,
        down_switch,
        shares_drive,
    } = *case;
    let mut finding = Finding {
        question: Question::Locks,
        verdict: Verdict::NotShown,
        detail: FindingDetail::NoBrace,
        place: down,
        assumptions: Vec::new(),
        cautions: vec![Caution::Unlocked],
    };
    let offset = lock.over_centre.unwrap_or(0.0);
    match lock.kind {
        LockKind::NoBrace => finding.assumptions.push(Assumption::LatchNotModelled),
        LockKind::SlidingBrace => {
            let end_gap = lock.end_gap.unwrap_or(0.0);
            finding.detail = FindingDetail::SlidingBrace { end_gap };
            if end_gap > LATCH_GAP {
                finding.verdict = Verdict::Bad;
            }
            finding.assumptions.push(Assumption::LatchNotModelled);
        }
        LockKind::FoldsOn => {
            finding.detail = FindingDetail::NotOverCentre { offset };
            finding.assumptions.push(Assumption::LatchNotModelled);
        }
        LockKind::OverCentre => {
            let ground_into_lock = lock.ground_load.map_or(0.0, |effect| effect.into_lock);
            let knee_push = lock.knee_push.unwrap_or(0.0);
            finding.detail = FindingDetail::OverCentre {
                offset,
                ground_into_lock,
                knee_push,
            };
            finding.verdict = if knee_push <= 0.0 && springs {
                Verdict::Bad
            } else if knee_push <= 0.0 {
                // the weight takes the knee off its stop: only a spring, none given, can hold it
                Verdict::NotShown
            } else if offset < LEAST_OVER_CENTRE
                || ground_into_lock < 0.0
                || knee_push < LEAST_KNEE_PUSH
                || lock
                    .over_centre_less_play
                    .is_some_and(|left| left < LEAST_AFTER_PLAY)
                || lock
                    .knee_push_at_gear_speed
                    .is_some_and(|push| push < LEAST_KNEE_PUSH)
                || down_switch > 0.0
            {
                Verdict::Marginal
            } else {
                Verdict::Good
            };
            finding.assumptions.extend([
                Assumption::OverCentreCommonPractice,
                if springs {
                    Assumption::WeightAndSprings
                } else {
                    Assumption::DeadWeightOnly
                },
            ]);
            if let Some(Excursion {
                at_axle,
                allowed: Some(allowed),
                ..
            }) = excursion
                && at_axle > allowed
            {
                finding.verdict = Verdict::Bad;
                finding.detail = FindingDetail::ExcursionStopped {
                    at_axle: *at_axle,
                    allowed: *allowed,
                };
            }
        }
    }
    // what is asked is whether it locks when the normal power fails
    let comes_down = way_down.map_or(Verdict::NotShown, |way_down| way_down.verdict);
    finding.verdict = finding.verdict.or_worse(comes_down);
    finding
        .assumptions
        .extend(fall.into_iter().flat_map(of_fall));
    if fall.is_some_and(|fall| fall.required.is_some()) && own_times {
        finding.assumptions.push(Assumption::FrictionTimesOwn);
    }
    if fall.is_some() && break_out_from_memory {
        finding.assumptions.push(Assumption::BreakOutFromMemory);
    }
    if fall.is_some() && shares_drive {
        finding.assumptions.push(Assumption::FallsAlone);
    }
    if fall.is_some() {
        finding.cautions.push(Caution::MovingLeg);
    }
    finding
}

/// What a fall rests on.
fn of_fall(fall: &Fall) -> impl Iterator<Item = Assumption> {
    let inertia = match fall.inertia {
        InertiaBasis::Given => None,
        InertiaBasis::UniformPlate | InertiaBasis::UniformRod => Some(Assumption::InertiaEstimated),
    };
    [Some(Assumption::FallWithoutPressure), inertia]
        .into_iter()
        .flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::EmergencyWay;

    /// A way down that is as good as can be.
    const COMES_DOWN: WayDown = WayDown {
        way: EmergencyWay::FreeFall,
        verdict: Verdict::Good,
        hand_pump: None,
    };
    use crate::result::AxleLoadEffect;

    fn verdict(offset: f64, into_lock: f64, knee_push: f64) -> Verdict {
        locks(&case(&lock(offset, into_lock, knee_push), None)).verdict
    }

    fn case<'a>(lock: &'a Lock, fall: Option<&'a Fall>) -> LockCase<'a> {
        LockCase {
            lock,
            springs: false,
            fall,
            way_down: Some(&COMES_DOWN),
            excursion: None,
            down: None,
            break_out_from_memory: false,
            own_times: false,
            down_switch: 0.0,
            shares_drive: false,
        }
    }

    fn lock(offset: f64, into_lock: f64, knee_push: f64) -> Lock {
        Lock {
            kind: LockKind::OverCentre,
            over_centre: Some(offset),
            past_centre: Some(0.02),
            over_centre_less_play: None,
            axle_loads: Vec::new(),
            ground_load: Some(AxleLoadEffect { into_lock }),
            knee_push: Some(knee_push),
            knee_push_at_gear_speed: None,
            end_gap: None,
        }
    }

    /// 0.06 in: just below the printed ranges; 5 N: our own figure. The smallest printed offset,
    /// 0.062 in (main side brace of light singles), is not held to be too small.
    #[test]
    fn offset_ground_and_dead_weight_must_all_hold() {
        assert_eq!(verdict(0.0016, 0.01, 5.0), Verdict::Good);
        assert_eq!(verdict(0.062 * 0.0254, 0.01, 5.0), Verdict::Good);
        assert_eq!(verdict(0.059 * 0.0254, 0.01, 5.0), Verdict::Marginal);
        assert_eq!(verdict(0.0015, 0.01, 50.0), Verdict::Marginal);
        assert_eq!(verdict(0.0030, -0.01, 50.0), Verdict::Marginal);
        assert_eq!(verdict(0.0030, 0.01, 4.9), Verdict::Marginal);
        assert_eq!(verdict(0.0030, 0.01, 0.0), Verdict::NotShown);
        assert_eq!(verdict(0.0030, 0.01, -3.0), Verdict::NotShown);
    }

    /// Play that leaves next to nothing, air that takes the knee off its stop, and a switch that tells
    /// of a lock before it is there, each take the plain yes away.
    #[test]
    fn play_air_and_an_early_switch_are_not_sure() {
        let held = lock(0.003, 0.01, 50.0);
        assert_eq!(locks(&case(&held, None)).verdict, Verdict::Good);
        for (left, verdict) in [
            (0.0, Verdict::Marginal),
            (0.0007, Verdict::Marginal),
            (0.0009, Verdict::Good),
        ] {
            let mut slack = held.clone();
            slack.over_centre_less_play = Some(left);
            assert_eq!(locks(&case(&slack, None)).verdict, verdict, "{left}");
        }
        for (push, verdict) in [
            (-20.0, Verdict::Marginal),
            (4.0, Verdict::Marginal),
            (30.0, Verdict::Good),
        ] {
            let mut blown = held.clone();
            blown.knee_push_at_gear_speed = Some(push);
            assert_eq!(locks(&case(&blown, None)).verdict, verdict, "{push}");
        }
        let early = LockCase {
            down_switch: 0.03,
            ..case(&held, None)
        };
        assert_eq!(locks(&early).verdict, Verdict::Marginal);
    }
}
