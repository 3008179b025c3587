//! Will it lock?
use crate::result::{
    Assumption, Caution, Excursion, Fall, FallOutcome, Finding, FindingDetail, InertiaBasis, Lock,
    LockKind, Place, Question, Verdict,
};

/// Least over-centre offset for light aeroplanes [m]: 1/16 in (1/16–1/8 in is common practice, no
/// published source).
pub const LEAST_OVER_CENTRE: f64 = 0.0254 / 16.0;

/// Least push at the knee, against the dead weight, that counts as holding it [N]: about 1 lb, what
/// a hand's touch or a shake gives. Our own figure, no source.
pub const LEAST_KNEE_PUSH: f64 = 5.0;

/// A telescopic brace this far from its end length at down does not stand at its latch [m]
/// (rounding of typed figures; common practice).
const LATCH_GAP: f64 = 1e-3;

/// Answers "will it lock?". `springs`: the leg has springs, counted in the push at the knee; `down` is
/// the place of the locked pose.
pub(crate) fn locks(
    lock: &Lock,
    springs: bool,
    fall: Option<&Fall>,
    excursion: Option<&Excursion>,
    down: Option<Place>,
) -> Finding {
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
                || lock.over_centre_less_play.is_some_and(|left| left <= 0.0)
                || fall.is_some_and(|fall| !reaches_lock(fall) || fall.by_speed_alone())
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
    finding
        .assumptions
        .extend(fall.into_iter().flat_map(of_fall));
    if fall.is_some() {
        finding.cautions.push(Caution::MovingLeg);
    }
    finding
}

fn reaches_lock(fall: &Fall) -> bool {
    matches!(fall.outcome, FallOutcome::ReachesLock(_))
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
    use crate::result::{
        Arrival, AxleLoadEffect, FallAirspeed, FallEnergy, LeastKneePush, LeastMoment, Phase,
    };

    fn verdict(offset: f64, into_lock: f64, knee_push: f64) -> Verdict {
        locks(&lock(offset, into_lock, knee_push), false, None, None, None).verdict
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
            end_gap: None,
        }
    }

    /// A leg that its lock would hold, but that comes there over a place where nothing pushes it on.
    #[test]
    fn lock_reached_by_speed_alone_is_not_sure() {
        let place = Place {
            phase: Phase::Swing,
            progress: 0.1,
            travel: 0.1,
            swing: 0.1,
        };
        let fall = |moment: f64, push: f64| Fall {
            outcome: FallOutcome::ReachesLock(Arrival {
                time: 1.0,
                swing_rate: -1.0,
                axle_speed: 0.7,
                knee_speed: Some(2.0),
                largest_axle_speed: 1.5,
            }),
            moment_at_up: 40.0,
            least_moment: Some(LeastMoment { moment, place }),
            least_knee_push: Some(LeastKneePush { push, place }),
            airspeed: FallAirspeed::NoAirLoad,
            friction_factor: None,
            friction_factor_tried: None,
            seal_friction_limit: None,
            energy: FallEnergy {
                weights: 30.0,
                springs: 0.0,
                air: 0.0,
                friction: 0.0,
                orifice: 0.0,
                motion: 30.0,
                residual: 0.0,
            },
            inertia: InertiaBasis::Given,
        };
        let with = |fall: &Fall| locks(&lock(0.003, 0.01, 50.0), false, Some(fall), None, None);
        assert_eq!(with(&fall(2.0, 3.0)).verdict, Verdict::Good);
        assert_eq!(with(&fall(-0.1, 3.0)).verdict, Verdict::Marginal);
        assert_eq!(with(&fall(2.0, -0.1)).verdict, Verdict::Marginal);
        let mut short = fall(2.0, 3.0);
        short.outcome = FallOutcome::StopsShort { place, time: 1.0 };
        assert_eq!(with(&short).verdict, Verdict::Marginal);
    }

    /// Source of 1/16 in: common practice on light aeroplanes; of 5 N: our own figure.
    #[test]
    fn offset_ground_and_dead_weight_must_all_hold() {
        assert_eq!(verdict(0.0016, 0.01, 5.0), Verdict::Good);
        assert_eq!(verdict(0.0015, 0.01, 50.0), Verdict::Marginal);
        assert_eq!(verdict(0.0030, -0.01, 50.0), Verdict::Marginal);
        assert_eq!(verdict(0.0030, 0.01, 4.9), Verdict::Marginal);
        assert_eq!(verdict(0.0030, 0.01, 0.0), Verdict::NotShown);
        assert_eq!(verdict(0.0030, 0.01, -3.0), Verdict::NotShown);
    }
}
