//! Can it be driven?
use crate::model::{
    AttachTo, Brace, Folds, Leg, Shortening, Source, StrutJack, Supply, UnlockedBy, View,
};
use crate::result::{
    Assumption, Bind, CaseOutcome, Caution, DrivenBy, Finding, FindingDetail, Force, ForcePeak,
    Jam, LoadCase, MechanismEvent, MechanismEventKind, Motion, Phase, Place, Question, Station,
    Verdict,
};

/// Answers "can it be driven?"; `begins` tells whether a motion begins at a place with the friction of what has
/// stood.
pub(crate) fn driven(
    leg: &Leg,
    supply: &Supply,
    force: &Force,
    jams: &[Jam],
    events: &[MechanismEvent],
    stations: &[Station],
    begins: impl Fn(&Place) -> bool,
) -> Finding {
    let mut finding = Finding {
        question: Question::Driven,
        verdict: Verdict::NotShown,
        detail: FindingDetail::DeadPoint,
        place: None,
        assumptions: Vec::new(),
        cautions: match force.driven_by {
            DrivenBy::Fluid => vec![Caution::Pressure, Caution::MountStrength],
            DrivenBy::Electricity => vec![Caution::MovingLeg, Caution::MountStrength],
        },
    };
    let dead = dead_point(events);
    if let Some(jam) = jams.first() {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::Jammed { cause: jam.cause };
        finding.place = Some(jam.place);
    } else if let Some(station) = locked_in(leg, stations) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::CannotUnlock;
        finding.place = Some(crate::statics::place_of(station));
    } else if let Some((needed, available)) = weak_jack(leg, supply, force) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::StrutJack { needed, available };
    } else if let Some(opens) = shut_valve(leg, force) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::StageValve {
            opens,
            available: force.least_available(),
        };
    } else if let Some(stands) = force.partner_stands {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::PartnerStands { leg: stands.leg };
        finding.place = Some(stands.place);
    } else if let Some((case, bind)) = first_bind(force) {
        finding.verdict = Verdict::Bad;
        finding.detail = FindingDetail::Binds {
            joint: bind.joint,
            motion: bind.motion,
            case,
        };
        finding.place = Some(bind.place);
    } else if let Some(event) = dead {
        finding.verdict = Verdict::Bad;
        finding.place = Some(event.place);
    } else if let Some(hardest) = hardest(force) {
        let Hardest { case, motion, peak } = hardest;
        finding.detail = FindingDetail::Pressure {
            case,
            motion,
            needed: peak.pressure,
            available: peak.available,
            margin: peak.margin,
            required: force.required_margin,
            mount_load: peak.mount_load,
        };
        let stalls_at = hardest.stalls_at(force).filter(|_| peak.available > 0.0);
        finding.place = Some(stalls_at.unwrap_or(peak.place));
        finding.verdict = hardest.verdict(force.required_margin);
        let switched = supply.accumulator.is_some() && supply.pump_switch().is_some();
        if switched && force.driven_by == DrivenBy::Fluid {
            finding.assumptions.push(Assumption::PumpUpToItsSwitch);
        }
        let friction = leg.friction_typed(&supply.source).any();
        finding
            .assumptions
            .push(match (supply.margin_wanted, friction) {
                (Some(_), _) => Assumption::MarginUser,
                (None, true) => Assumption::MarginCommonPractice,
                (None, false) => Assumption::MarginWithoutFriction,
            });
    }
    if finding.place.as_ref().is_some_and(begins) && leg.breaks_out_from_memory() {
        finding.assumptions.push(Assumption::BreakOutFromMemory);
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

/// Where the actuator has no arm in the swing.
pub(crate) fn dead_point(events: &[MechanismEvent]) -> Option<&MechanismEvent> {
    events.iter().find(|event| {
        event.kind == MechanismEventKind::ActuatorDeadPoint && event.place.progress > 0.0
    })
}

/// A motion in a load case, and its worst place.
struct Hardest {
    case: LoadCase,
    motion: Motion,
    peak: ForcePeak,
}

/// More than this as a share is harder (ratio).
const HARDER: f64 = 1e-3;

/// What is hardest: what gives the worse verdict and, where verdicts are alike, what needs a larger share
/// of what is available; retracting in the case as set before the others.
fn hardest(force: &Force) -> Option<Hardest> {
    let wanted = force.required_margin;
    let set = |motion, peak: Option<ForcePeak>| {
        let case = LoadCase::AsSet;
        peak.map(|peak| Hardest { case, motion, peak })
    };
    let as_set = [
        set(Motion::Retract, force.peak),
        set(Motion::Extend, force.extend_peak),
    ];
    let in_cases = force.cases.iter().filter_map(|case| {
        let (motion, peak) = case.hardest()?;
        let case = case.case;
        Some(Hardest { case, motion, peak })
    });
    as_set.into_iter().flatten().chain(in_cases).reduce(|a, b| {
        let (bad, worse) = (a.verdict(wanted), b.verdict(wanted));
        let share = |peak: &ForcePeak| 1.0 - peak.margin;
        let is_harder = share(&b.peak) > share(&a.peak) * (1.0 + HARDER);
        if worse.gravity() > bad.gravity() || (worse == bad && is_harder) {
            b
        } else {
            a
        }
    })
}

impl Hardest {
    /// How the answer stands by it alone.
    fn verdict(&self, wanted: f64) -> Verdict {
        self.case.verdict(self.peak.margin, wanted)
    }

    /// First place on the way up where the pressure does not suffice.
    fn stalls_at(&self, force: &Force) -> Option<Place> {
        if self.motion == Motion::Extend {
            return None;
        }
        force.stalls_in(self.case)
    }
}

/// The first place at which the pins bind: in the case as set, else in another.
fn first_bind(force: &Force) -> Option<(LoadCase, Bind)> {
    let as_set = force.binds.iter().min_by(|a, b| {
        let order = |bind: &Bind| bind.place.progress;
        order(a).total_cmp(&order(b))
    });
    let others = force.cases.iter().find_map(|case| match case.outcome {
        CaseOutcome::Worked { binds_at, .. } => Some((case.case, binds_at?)),
        CaseOutcome::Missing { .. } => None,
    });
    as_set.map(|bind| (LoadCase::AsSet, *bind)).or(others)
}

/// The jack that moves the strut before the swing, on fluid.
fn strut_jack<'a>(leg: &'a Leg, force: &Force) -> Option<&'a StrutJack> {
    let before = matches!(leg.strut.shortening, Shortening::BeforeSwing { .. });
    let jack = leg.drive.strut_jack.as_ref();
    jack.filter(|_| before && force.driven_by == DrivenBy::Fluid)
}

/// Pressure that the jack of the strut needs the way in which most is missing, and that available then,
/// where that is no more.
fn weak_jack(leg: &Leg, supply: &Supply, force: &Force) -> Option<(f64, f64)> {
    let jack = strut_jack(leg, force)?;
    let lack = |needed: f64, available: f64| (needed + supply.return_pressure, available);
    let (needed, available) = [
        lack(jack.shorten_pressure, force.available_pressure),
        lack(jack.lengthen_pressure, force.available_extend_pressure),
    ]
    .into_iter()
    .max_by(|a, b| (a.0 - a.1).total_cmp(&(b.0 - b.1)))?;
    // an accumulator has left what is available only when all legs are up, and the struts move first
    let alone = matches!(supply.source, Source::ConstantPressure) && supply.accumulator.is_some();
    (needed >= available && !alone).then_some((needed, available))
}

/// Pressure at which the stage valve between strut and swing opens, where none such is available.
fn shut_valve(leg: &Leg, force: &Force) -> Option<f64> {
    strut_jack(leg, force)?;
    let valve = leg.drive.stage_valve;
    valve.filter(|&opens| opens >= force.least_available())
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
