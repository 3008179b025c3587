//! Can it be driven: which motion and load case answers for the pressure.
use super::support::{Asked, at, case, peak};
use crate::result::{CaseForce, CaseOutcome, FindingDetail, ForcePeak, LoadCase, Motion, Verdict};
use LoadCase::{AsSet, LevelFlight, Turn};
use Motion::{Extend, Retract};

/// The case and motion that answer, with the verdict; `cases` are those besides the case as set.
fn told(
    retract: Option<ForcePeak>,
    extend: Option<ForcePeak>,
    cases: Vec<CaseForce>,
) -> (LoadCase, Motion, Verdict) {
    let mut asked = Asked::new();
    asked.force.peak = retract;
    asked.force.extend_peak = extend;
    asked.force.cases = cases;
    let finding = asked.answer();
    match finding.detail {
        FindingDetail::Pressure { case, motion, .. } => (case, motion, finding.verdict),
        other => panic!("{other:?}"),
    }
}

/// Of verdicts alike, what needs the larger share of what is available answers: by more than a thousandth of
/// it, else retracting in the case as set does.
#[test]
fn the_larger_share_answers() {
    for (retract, extend, motion, verdict) in [
        (0.5, 0.6, Extend, Verdict::Good),
        (0.6, 0.5, Retract, Verdict::Good),
        (0.5, 0.5, Retract, Verdict::Good),
        (0.5, 0.5004, Retract, Verdict::Good),
        (0.5, 0.5006, Extend, Verdict::Good),
        (0.1, 0.1005, Extend, Verdict::Good),
        // the weight alone brings it both ways
        (0.0, 0.0, Retract, Verdict::Good),
        (0.92, 0.95, Extend, Verdict::Marginal),
        (1.2, 1.2, Retract, Verdict::Bad),
        (1.2, 1.3, Extend, Verdict::Bad),
        (1.3, 1.2, Retract, Verdict::Bad),
    ] {
        let peaks = [retract, extend].map(|share| Some(peak(share, 0.4)));
        let is = told(peaks[0], peaks[1], Vec::new());
        assert_eq!(is, (AsSet, motion, verdict), "{retract} {extend}");
    }
}

/// The worse verdict answers before the larger share: what only lags at the load factor of a turn is no No.
#[test]
fn the_worse_verdict_answers_first() {
    for (as_set, others, wanted) in [
        (0.5, vec![(Turn, 1.2)], (Turn, Verdict::Marginal)),
        (0.95, vec![(Turn, 1.2)], (Turn, Verdict::Marginal)),
        (1.05, vec![(Turn, 1.2)], (AsSet, Verdict::Bad)),
        (
            0.5,
            vec![(Turn, 1.2), (LevelFlight, 1.01)],
            (LevelFlight, Verdict::Bad),
        ),
        (
            0.5,
            vec![(LevelFlight, 1.01), (Turn, 1.2)],
            (LevelFlight, Verdict::Bad),
        ),
        (
            0.5,
            vec![(LevelFlight, 0.6), (Turn, 0.55)],
            (LevelFlight, Verdict::Good),
        ),
    ] {
        let cases = others.iter().map(|&(of, share)| {
            let peak = peak(share, 0.4);
            case(of, Some(peak), None)
        });
        let (case, motion, verdict) = told(Some(peak(as_set, 0.4)), None, cases.collect());
        assert_eq!((case, verdict), wanted, "{as_set} {others:?}");
        assert_eq!(motion, Retract);
    }
}

/// On the way up the answer points to where the leg first stalls, on the way down to where most is needed, and
/// so too where nothing at all is available: then it stalls everywhere.
#[test]
fn a_leg_that_stalls_is_looked_for_where_it_first_does() {
    let short = peak(1.2, 0.7);
    let nothing = ForcePeak {
        available: 0.0,
        ..short
    };
    for (retract, extend, stalls, looks_at) in [
        (Some(peak(0.5, 0.7)), None, None, 0.7),
        (Some(short), None, Some(0.3), 0.3),
        (Some(nothing), None, Some(0.3), 0.7),
        (Some(peak(0.5, 0.7)), Some(peak(1.2, 0.8)), Some(0.3), 0.8),
    ] {
        let mut asked = Asked::new();
        asked.force.peak = retract;
        asked.force.extend_peak = extend;
        let mut as_set = case(AsSet, retract, extend);
        if let CaseOutcome::Worked { stalls_at, .. } = &mut as_set.outcome {
            *stalls_at = stalls.map(at);
        }
        asked.force.cases = vec![as_set];
        let place = asked.answer().place;
        assert_eq!(place, Some(at(looks_at)), "{retract:?} {extend:?}");
    }
}
