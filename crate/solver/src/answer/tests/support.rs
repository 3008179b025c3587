//! Numbers of which the answers are made, set by hand.
use crate::answer::driven;
use crate::model::{Brace, FoldingBrace, Joint, Leg, Point, Supply};
use crate::result::{
    Arrival, Bind, CaseForce, CaseOutcome, DrivenBy, Fall, FallAirspeed, FallEnergy, FallOutcome,
    FallRequired, FallStart, Finding, Force, ForcePeak, InertiaBasis, LeastKneePush, LeastMoment,
    LoadCase, MechanismEvent, Motion, Phase, Place, SetBy, Station, Stroke, Unpowered,
};
use gearswing_samples::leg as sample;

/// Pressure available in all of them (Pa).
pub(super) const AVAILABLE: f64 = 8e6;

/// A place of the swing.
pub(super) fn at(progress: f64) -> Place {
    Place {
        phase: Phase::Swing,
        progress,
        travel: progress,
        swing: 1.5 * progress,
    }
}

/// What needs this share of what is available (ratio), at a place of the swing.
pub(super) fn peak(share: f64, progress: f64) -> ForcePeak {
    ForcePeak {
        place: at(progress),
        effort: 1000.0,
        pressure: share * AVAILABLE,
        available: AVAILABLE,
        margin: 1.0 - share,
        mount_load: 1000.0,
    }
}

pub(super) fn bind(motion: Motion, progress: f64) -> Bind {
    Bind {
        place: at(progress),
        motion,
        joint: Joint::Knee,
    }
}

/// Nothing worked out yet; a tenth must be left over.
pub(super) fn force() -> Force {
    Force {
        stroke: Stroke::Push,
        bore_area: 1e-3,
        annulus_area: 8e-4,
        stroke_used: 0.2,
        driven_by: DrivenBy::Fluid,
        available_pressure: AVAILABLE,
        available_among_all: None,
        available_set_by: SetBy::File,
        available_extend_pressure: AVAILABLE,
        available_extend_set_by: SetBy::File,
        required_margin: 0.1,
        shares_drive_with: Vec::new(),
        partner_stands: None,
        peak: None,
        stalls_at: None,
        extend_peak: None,
        largest_mount_load: None,
        binds: Vec::new(),
        cases: Vec::new(),
        hardest_case: None,
        joint_loads: Vec::new(),
    }
}

/// A load case with its peaks.
pub(super) fn case(
    case: LoadCase,
    retract: Option<ForcePeak>,
    extend: Option<ForcePeak>,
) -> CaseForce {
    CaseForce {
        case,
        outcome: CaseOutcome::Worked {
            load_factor: 1.0,
            dynamic_pressure: 0.0,
            retract,
            extend,
            stalls_at: None,
            binds_at: None,
        },
    }
}

/// A load case in which pins bind.
pub(super) fn binding(of: LoadCase, bind: Bind) -> CaseForce {
    let mut binding = case(of, None, None);
    if let CaseOutcome::Worked { binds_at, .. } = &mut binding.outcome {
        *binds_at = Some(bind);
    }
    binding
}

/// A station with this actuator length (m).
pub(super) fn station(phase: Phase, progress: f64, actuator_length: f64) -> Station {
    Station {
        phase,
        progress,
        swing: 1.5 * progress,
        travel: progress,
        shortening: 0.0,
        axle: Point::new(0.0, -0.7),
        knee: None,
        brace_attach: None,
        actuator_attach: Point::new(0.3, -0.1),
        actuator_length,
        moment_arm: Some(0.1),
        fold: None,
        transmission: None,
        force: None,
    }
}

/// Early in a part of the path.
pub(crate) fn place(phase: Phase) -> Place {
    Place {
        phase,
        progress: 0.1,
        travel: 0.1,
        swing: 0.1,
    }
}

/// A fall that reaches the lock with much to spare.
pub(crate) fn fall() -> Fall {
    let place = place(Phase::Swing);
    Fall {
        outcome: FallOutcome::ReachesLock(Arrival {
            time: 1.0,
            swing_rate: -1.0,
            axle_speed: 0.7,
            knee_speed: Some(2.0),
            largest_axle_speed: 1.5,
        }),
        moment_at_up: Some(40.0),
        least_moment: Some(LeastMoment { moment: 2.0, place }),
        least_knee_push: Some(LeastKneePush { push: 3.0, place }),
        airspeed: FallAirspeed::NoAirLoad,
        at_gear_speed: None,
        friction_factor: Some(2.0),
        friction_factor_tried: None,
        seal_friction_limit: None,
        required: Some(FallRequired {
            times: 1.5,
            reaches: true,
        }),
        start: Some(FallStart {
            ratio: 1.2,
            place,
            stays_from: None,
            stays_to: None,
        }),
        short: None,
        actuator: Unpowered::Fluid,
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
    }
}

/// What "can it be driven?" is asked of: a leg whose brace goes through center.
pub(super) struct Asked {
    pub(super) leg: Leg,
    pub(super) supply: Supply,
    pub(super) force: Force,
    pub(super) events: Vec<MechanismEvent>,
    pub(super) stations: Vec<Station>,
}

impl Asked {
    pub(super) fn new() -> Self {
        Self {
            leg: sample::leg(),
            supply: Supply::constant(AVAILABLE),
            force: force(),
            events: Vec::new(),
            stations: Vec::new(),
        }
    }

    /// The answer; a motion begins at down and at up.
    pub(super) fn answer(&self) -> Finding {
        let begins = |place: &Place| [0.0, 1.0].contains(&place.progress);
        driven(
            &self.leg,
            &self.supply,
            &self.force,
            &[],
            &self.events,
            &self.stations,
            begins,
        )
    }

    pub(super) fn brace(&mut self) -> &mut FoldingBrace {
        match &mut self.leg.brace {
            Brace::Folding(brace) => brace,
            other => panic!("{other:?}"),
        }
    }
}
