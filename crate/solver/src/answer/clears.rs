//! Does it clear?
use crate::model::Tire;
use crate::result::{
    Assumption, Caution, Clearance, Finding, FindingDetail, Jam, Question, TireState, Verdict,
};
use crate::tires::{clearance_assumption, size_assumptions};

/// Answers "does it clear?". A contact before a stop outranks the stop.
pub(crate) fn clears(clearance: &Clearance, jams: &[Jam], tire: &Tire) -> Finding {
    let mut finding = Finding {
        question: Question::Clears,
        verdict: Verdict::NotShown,
        detail: FindingDetail::NothingInWell,
        place: None,
        assumptions: Vec::new(),
        cautions: vec![Caution::MovingLeg],
    };
    let row = clearance.governing;
    let pair = row.and_then(|row| clearance.pairs.get(row));
    if let (Some(row), Some(pair)) = (row, pair) {
        finding.detail = FindingDetail::Tightest {
            pair: row,
            clearance: pair.tightest.clearance,
            spare: pair.spare(),
        };
        finding.place = Some(pair.tightest.place);
        finding.verdict = match (pair.tightest.clearance > 0.0, pair.spare() >= 0.0) {
            (false, _) => Verdict::Bad,
            (true, false) => Verdict::Marginal,
            (true, true) => Verdict::Good,
        };
        if finding.verdict != Verdict::Good {
            finding.cautions.push(Caution::Trimming);
        }
        if let Some(state) = pair.tire {
            finding.assumptions.extend(size_assumptions(tire, state));
            finding.cautions.push(Caution::TireApproval);
        }
        finding
            .assumptions
            .push(clearance_assumption(pair.requirement.basis));
    }
    if finding.verdict != Verdict::Bad
        && let Some(jam) = jams.first()
    {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::Jammed { cause: jam.cause };
        finding.place = Some(jam.place);
    }
    // a wheel that is safe at both sizes still rests on the rule for the grown one
    let grown = clearance
        .pairs
        .iter()
        .any(|pair| pair.tire == Some(TireState::Grown));
    if grown {
        for assumption in size_assumptions(tire, TireState::Grown) {
            if assumption == Assumption::GrowthRuleFromMemory
                && !finding.assumptions.contains(&assumption)
            {
                finding.assumptions.push(assumption);
            }
        }
    }
    finding
}
