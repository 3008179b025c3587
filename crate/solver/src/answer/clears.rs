//! Does it clear?
use crate::model::Tire;
use crate::result::{
    Assumption, Caution, Clearance, Finding, FindingDetail, Jam, NotChecked, OwnNotChecked, Place,
    Question, Requirement, TireState, Verdict, governing_order,
};
use crate::tires::{clearance_assumption, size_assumptions};

/// A row that may govern: of the well, of the leg itself, or along the trunnion.
struct Row {
    detail: FindingDetail,
    clearance: f64,
    spare: f64,
    place: Option<Place>,
    tire: Option<TireState>,
    requirement: Requirement,
}

impl Row {
    fn verdict(&self) -> Verdict {
        match (self.clearance > 0.0, self.spare >= 0.0) {
            (false, _) => Verdict::Bad,
            (true, false) => Verdict::Marginal,
            (true, true) => Verdict::Good,
        }
    }
}

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
    if let Some(row) = governing(clearance) {
        finding.verdict = row.verdict();
        finding.detail = row.detail;
        finding.place = row.place;
        let trims = !matches!(finding.detail, FindingDetail::OwnTightest { .. });
        if finding.verdict != Verdict::Good && trims {
            finding.cautions.push(Caution::Trimming);
        }
        if let Some(state) = row.tire {
            finding.assumptions.extend(size_assumptions(tire, state));
            finding.cautions.push(Caution::TireApproval);
        }
        finding
            .assumptions
            .push(clearance_assumption(row.requirement.basis));
    }
    if finding.verdict != Verdict::Bad
        && let Some(jam) = jams.first()
    {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::Jammed { cause: jam.cause };
        finding.place = Some(jam.place);
    }
    let unresolved = |skipped: &OwnNotChecked| skipped.why == NotChecked::Unresolved;
    if finding.verdict == Verdict::Good && clearance.own_not_checked.iter().any(unresolved) {
        finding.verdict = Verdict::NotShown;
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

/// The row that governs: the deepest contact, else the least spare. A leg without a well that
/// touches nothing of its own is not shown to clear: none of its own rows then governs.
fn governing(clearance: &Clearance) -> Option<Row> {
    let well = clearance.governing.and_then(|at| {
        let pair = clearance.pairs.get(at)?;
        Some(Row {
            detail: FindingDetail::Tightest {
                pair: at,
                clearance: pair.tightest.clearance,
                spare: pair.spare(),
            },
            clearance: pair.tightest.clearance,
            spare: pair.spare(),
            place: Some(pair.tightest.place),
            tire: pair.tire,
            requirement: pair.requirement,
        })
    });
    let own = clearance.own.iter().enumerate().map(|(row, own)| Row {
        detail: FindingDetail::OwnTightest {
            row,
            clearance: own.tightest.clearance,
            spare: own.spare(),
        },
        clearance: own.tightest.clearance,
        spare: own.spare(),
        place: Some(own.tightest.place),
        tire: Some(own.tire),
        requirement: own.requirement,
    });
    let room = clearance.room.rows.iter().enumerate();
    let room = room.map(|(row, room)| Row {
        detail: FindingDetail::RoomTightest {
            row,
            clearance: room.clearance,
            spare: room.spare(),
        },
        clearance: room.clearance,
        spare: room.spare(),
        place: None,
        tire: Some(room.tire),
        requirement: room.requirement,
    });
    let no_well = well.is_none();
    well.into_iter()
        .chain(own)
        .chain(room)
        .filter(|row| !no_well || row.verdict() != Verdict::Good)
        .min_by(|a, b| governing_order((a.clearance, a.spare), (b.clearance, b.spare)))
}
