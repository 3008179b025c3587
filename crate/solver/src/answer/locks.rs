//! Will it lock?
use crate::lock::DownLock;
use crate::result::{
    Assumption, Caution, Excursion, Fall, Finding, FindingDetail, InertiaBasis, Place, Question,
    Verdict, WayDown,
};

/// Least over-center offset (m): 0.06 in, our own, just below every range printed in the maintenance
/// manuals of light airplanes that were read: 0.062–0.125 in main side brace of light singles,
/// 0.145–0.170 in main side brace of a light twin, 0.125–0.250 in nose drag brace of a light single,
/// 0.063–0.156 in nose drag brace and 0.220–0.280 in nose idler link of a light twin, 0.219–0.281 in
/// main drag brace of a turboprop twin.
pub const LEAST_OVER_CENTRE: f64 = 0.06 * 0.0254;

/// Least and most over-center offset that those manuals print (m): 0.062 and 0.281 in.
pub const PRINTED_OVER_CENTER: (f64, f64) = (0.062 * 0.0254, 0.281 * 0.0254);

/// Least push at the knee, against the dead weight, that counts as holding it (N): about 1 lb, what
/// a hand's touch or a shake gives. Our own figure, no source.
pub const LEAST_KNEE_PUSH: f64 = 5.0;

/// Least offset left after the play of the knee (m): half of what is asked for. Our own figure, no
/// source.
pub const LEAST_AFTER_PLAY: f64 = 0.5 * LEAST_OVER_CENTRE;

/// A telescopic brace this far from its end length at down does not stand at its latch (m)
/// (rounding of typed figures; common practice).
pub const LATCH_GAP: f64 = 1e-3;

/// What the answer "will it lock?" is made from.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LockCase<'a> {
    pub(crate) lock: &'a DownLock,
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
    /// Travel at which the down and locked switch makes (ratio).
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
    match lock {
        DownLock::NoBrace => finding.assumptions.push(Assumption::LatchNotModelled),
        &DownLock::SlidingBrace { end_gap } => {
            finding.detail = FindingDetail::SlidingBrace { end_gap };
            if end_gap.is_nan() || end_gap > LATCH_GAP {
                finding.verdict = Verdict::Bad;
            }
            finding.assumptions.push(Assumption::LatchNotModelled);
        }
        DownLock::FoldsOn(centre) => {
            let offset = centre.offset;
            finding.detail = FindingDetail::NotOverCentre { offset };
            finding.assumptions.push(Assumption::LatchNotModelled);
        }
        DownLock::OverCentre {
            centre,
            less_play,
            knee,
        } => {
            let offset = centre.offset;
            // what nothing presses against its stop comes off it at no push
            let (ground_into_lock, knee_push) = match knee {
                Some(knee) => (knee.ground_load.into_lock, knee.push),
                None => (0.0, 0.0),
            };
            let in_the_air = knee.as_ref().and_then(|knee| knee.push_at_gear_speed);
            finding.detail = FindingDetail::OverCentre {
                offset,
                ground_into_lock,
                knee_push,
            };
            let figures = [offset, ground_into_lock, knee_push].map(Some);
            let figures = figures.into_iter().chain([*less_play, in_the_air]);
            // what is not a number holds nothing
            let is_known = !figures.flatten().any(f64::is_nan);
            finding.verdict = if is_known && knee_push <= 0.0 && springs {
                Verdict::Bad
            } else if !is_known || knee_push <= 0.0 {
                // the weight takes the knee off its stop: only a spring, none given, can hold it
                Verdict::NotShown
            } else if offset < LEAST_OVER_CENTRE
                || ground_into_lock < 0.0
                || knee_push < LEAST_KNEE_PUSH
                || less_play.is_some_and(|left| left < LEAST_AFTER_PLAY)
                || in_the_air.is_some_and(|push| push < LEAST_KNEE_PUSH)
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
