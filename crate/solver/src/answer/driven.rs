//! Can it be driven?
use crate::model::{
    AttachTo, Brace, DEFAULT_MARGIN_WANTED, Folds, Leg, Shortening, StrutJack, Supply, UnlockedBy,
    View,
};
use crate::result::{
    Assumption, Bind, CaseForce, CaseOutcome, Caution, DrivenBy, Finding, FindingDetail, Force,
    Jam, MechanismEvent, MechanismEventKind, Phase, Question, Station, Verdict,
};

/// Answers "can it be driven?".
pub(crate) fn driven(
    leg: &Leg,
    supply: &Supply,
    force: &Force,
    jams: &[Jam],
    events: &[MechanismEvent],
    stations: &[Station],
) -> Finding {
    let mut finding = Finding {
        question: Question::Driven,
        verdict: Verdict::NotShown,
        detail: FindingDetail::DeadPoint,
        place: None,
        assumptions: Vec::new(),
        cautions: vec![Caution::Pressure, Caution::MountStrength],
    };
    let dead = events.iter().find(|event| {
        event.kind == MechanismEventKind::ActuatorDeadPoint && event.place.progress > 0.0
    });
    if let Some(jam) = jams.first() {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::Jammed { cause: jam.cause };
        finding.place = Some(jam.place);
    } else if let Some(station) = locked_in(leg, stations) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::CannotUnlock;
        finding.place = Some(crate::statics::place_of(station));
    } else if let Some(needed) = weak_jack(leg, supply, force) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::StrutJack {
            needed,
            available: force.available_pressure,
        };
    } else if let Some(opens) = shut_valve(leg, force) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::StageValve {
            opens,
            available: force.available_pressure,
        };
    } else if let Some(bind) = force.binds.iter().min_by(|a, b| {
        let order = |bind: &Bind| bind.place.progress;
        order(a).total_cmp(&order(b))
    }) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::Binds {
            joint: bind.joint,
            motion: bind.motion,
        };
        finding.place = Some(bind.place);
    } else if let Some(event) = dead {
        finding.verdict = Verdict::Bad;
        finding.place = Some(event.place);
    } else if let Some(peak) = &force.peak {
        finding.detail = FindingDetail::Pressure {
            needed: peak.pressure,
            available: force.available_pressure,
            margin: peak.margin,
            mount_load: peak.mount_load,
        };
        finding.place = Some(force.stalls_at.unwrap_or(peak.place));
        let of = |margin: f64| Verdict::of_margin(margin, supply.margin_wanted);
        let holds = |case: &CaseForce| match case.outcome {
            CaseOutcome::Worked {
                binds_at: Some(_), ..
            } => false,
            _ => case
                .hardest()
                .is_none_or(|(_, peak)| of(peak.margin) == Verdict::Good),
        };
        let extend = force.extend_peak.map_or(f64::INFINITY, |peak| peak.margin);
        finding.verdict = match of(peak.margin.min(extend)) {
            // a leg that moves as set and not in every load case compared is no plain Yes
            Verdict::Good if !force.cases.iter().all(holds) => Verdict::Marginal,
            // nor one that may stand for want of the volts that the others take
            Verdict::Good if force.stalls_among_all() => Verdict::Marginal,
            verdict => verdict,
        };
        let own = supply.margin_wanted != DEFAULT_MARGIN_WANTED;
        finding.assumptions.push(if own {
            Assumption::MarginUser
        } else {
            Assumption::MarginCommonPractice
        });
    }
    finding
        .assumptions
        .push(if leg.pins.rub() || !leg.springs.is_empty() {
            Assumption::FrictionAndSprings
        } else {
            Assumption::NoPinFriction
        });
    if leg.view == View::Front {
        finding.assumptions.push(Assumption::FrontViewAir);
    }
    if let Brace::Folding(brace) = &leg.brace
        && brace.folds == Folds::ThroughCentre
        && brace.unlocked_by == UnlockedBy::Separate
    {
        finding.assumptions.push(Assumption::SeparateUnlock);
    }
    finding
}

/// The jack that moves the strut before the swing, on fluid.
fn strut_jack<'a>(leg: &'a Leg, force: &Force) -> Option<&'a StrutJack> {
    let before = matches!(leg.strut.shortening, Shortening::BeforeSwing { .. });
    let jack = leg.drive.strut_jack.as_ref();
    jack.filter(|_| before && force.driven_by == DrivenBy::Fluid)
}

/// Pressure that the jack of the strut needs one way or the other, where no more is available.
fn weak_jack(leg: &Leg, supply: &Supply, force: &Force) -> Option<f64> {
    let jack = strut_jack(leg, force)?;
    let needed = jack.shorten_pressure.max(jack.lengthen_pressure) + supply.return_pressure;
    (needed >= force.available_pressure).then_some(needed)
}

/// Pressure at which the stage valve between strut and swing opens, where none such is available.
fn shut_valve(leg: &Leg, force: &Force) -> Option<f64> {
    strut_jack(leg, force)?;
    let valve = leg.drive.stage_valve;
    valve.filter(|&opens| opens >= force.available_pressure)
}

/// First station of the unlocking when the actuator, pressed to retract, drives the knee further
/// into its lock: its length then changes the other way round than in the swing.
fn locked_in<'a>(leg: &Leg, stations: &'a [Station]) -> Option<&'a Station> {
    let Brace::Folding(brace) = &leg.brace else {
        return None;
    };
    if brace.folds != Folds::ThroughCentre || brace.unlocked_by != UnlockedBy::Actuator {
        return None;
    }
    let first = stations.iter().find(|s| s.phase == Phase::Unlock)?;
    let straight = stations.iter().find(|s| s.phase == Phase::Swing)?;
    let last = stations.last()?;
    let unlocking = straight.actuator_length - first.actuator_length;
    let swinging = last.actuator_length - straight.actuator_length;
    // on the leg it has no say over the knee at all, whatever the rounding of the lengths
    let no_say = leg.actuator.attach_to == AttachTo::Leg;
    (no_say || unlocking * swinging <= 0.0).then_some(first)
}
