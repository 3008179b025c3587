//! Results put together by hand: their numbers need not fit together.
use std::sync::Arc;

use gearswing_gear::model::{EmergencyWay, Gear, Joint, MovingPart, Point, Vector, View};
use gearswing_solver::result::{
    Arrival, Assumption, AxleLoad, AxleLoadEffect, AxlePush, CaseForce, CaseOutcome, Caution,
    Clearance, Contact, DrivenBy, Excursion, Fall, FallAirspeed, FallEnergy, FallOutcome,
    FallRequired, FallStart, Finding, FindingDetail, Force, ForcePeak, InertiaBasis, JointLoad,
    LeastKneePush, LeastMoment, LegResult, LoadCase, Lock, LockKind, MissingInput, Motion,
    NotChecked, OwnClearance, OwnNotChecked, PairClearance, Phase, Place, Question, Reactions,
    Requirement, RequirementBasis, Room, SetBy, SkewLoss, SkewLosses, Station, StationForce,
    Stroke, Tightest, TireState, Unpowered, Verdict, WayDown,
};
use gearswing_units::UnitChoice;

use crate::Subject;

/// A place of the swing.
pub(crate) fn place(travel: f64) -> Place {
    Place {
        phase: Phase::Swing,
        progress: travel,
        travel,
        swing: 1.4 * travel,
    }
}

/// A row of the clearance table of "Bay rib", tightest at 78 % of travel.
pub(crate) fn pair(
    part: MovingPart,
    tire: Option<TireState>,
    clearance: f64,
    required: f64,
) -> PairClearance {
    PairClearance {
        obstacle: 0,
        obstacle_name: "Bay rib".to_owned(),
        part,
        tire,
        tightest: Tightest {
            clearance,
            place: place(0.78),
            on_part: Point::new(0.1, 0.2),
            on_obstacle: Point::new(0.1, 0.2 + clearance),
        },
        certified_to: 1e-5,
        less_for_skew: 0.0,
        requirement: Requirement {
            clearance: required,
            basis: RequirementBasis::CommonPractice,
        },
        first_contact: (clearance <= 0.0).then(|| Contact {
            place: place(0.712),
            bracket: 1e-6,
            point: Point::new(0.1, 0.2),
        }),
    }
}

/// A row of the tire against its own lower strut.
pub(crate) fn own(tire: TireState, clearance: f64) -> OwnClearance {
    let pair = pair(MovingPart::Wheel, Some(tire), clearance, 0.001_587_5);
    OwnClearance {
        part: MovingPart::SlidingStrut,
        tire,
        tightest: pair.tightest,
        certified_to: 1e-5,
        less_for_skew: 0.0,
        requirement: pair.requirement,
        first_contact: pair.first_contact,
    }
}

/// An answer without assumptions and cautions.
pub(crate) fn finding(question: Question, verdict: Verdict, detail: FindingDetail) -> Finding {
    Finding {
        question,
        verdict,
        detail,
        place: Some(place(0.78)),
        assumptions: Vec::new(),
        cautions: Vec::new(),
    }
}

fn station(travel: f64) -> Station {
    let reactions = Reactions {
        trunnion: Vector::new(10.0, 20.0),
        brace_pivot: Some(Vector::new(1.0, 2.0)),
        knee: None,
        brace_attach: Some(Vector::new(-1.0, -2.0)),
        mount: Vector::new(300.0, -400.0),
        actuator_attach: Vector::new(300.0, -390.0),
    };
    let force = StationForce {
        holding: -900.0 * (1.0 - travel),
        retract_effort: Some(940.0 * (1.0 - travel)),
        extend_effort: Some(-860.0),
        retract_pressure: Some(2.4e6 * (1.0 - travel)),
        extend_pressure: Some(0.0),
        reactions,
        retract_reactions: Some(reactions),
        extend_reactions: Some(reactions),
        retract_binds: None,
        extend_binds: None,
    };
    Station {
        phase: Phase::Swing,
        progress: travel,
        swing: 1.4 * travel,
        travel,
        shortening: 0.05 * travel,
        axle: Point::new(0.8 * (1.4 * travel).sin(), -0.8 * (1.4 * travel).cos()),
        knee: Some(Point::new(0.25, -0.25)),
        brace_attach: Some(Point::new(0.0, -0.5)),
        actuator_attach: Point::new(0.05, -0.1),
        actuator_length: 0.38 - 0.1 * travel,
        moment_arm: Some(-0.09),
        fold: Some(1.2 * travel),
        transmission: Some(1.2 * travel),
        force: (travel > 0.1).then_some(force),
    }
}

/// A right main whose grown tire touches, with force to spare and an over-center knee.
pub(crate) fn result() -> LegResult {
    let peak = ForcePeak {
        place: place(0.12),
        effort: 1500.0,
        pressure: 4.2e6,
        available: 6.894_757e6,
        margin: 0.39,
        mount_load: 1510.0,
    };
    let tightest = Finding {
        assumptions: vec![
            Assumption::GrowthRuleFromMemory,
            Assumption::TireMeasured,
            Assumption::ClearanceCommonPractice,
        ],
        cautions: vec![Caution::MovingLeg, Caution::Trimming, Caution::TireApproval],
        ..finding(
            Question::Clears,
            Verdict::Bad,
            FindingDetail::Tightest {
                pair: 1,
                clearance: -0.0063,
                spare: -0.0093,
            },
        )
    };
    let pressure = Finding {
        place: Some(place(0.12)),
        assumptions: vec![Assumption::MarginCommonPractice, Assumption::NoPinFriction],
        cautions: vec![Caution::Pressure, Caution::MountStrength],
        ..finding(
            Question::Driven,
            Verdict::Good,
            FindingDetail::Pressure {
                case: LoadCase::AsSet,
                motion: Motion::Retract,
                needed: 4.2e6,
                available: 6.894_757e6,
                margin: 0.39,
                required: 0.1,
                mount_load: 1510.0,
            },
        )
    };
    let over_centre = Finding {
        place: Some(place(0.0)),
        assumptions: vec![Assumption::DeadWeightOnly, Assumption::LatchNotModelled],
        cautions: vec![Caution::Unlocked],
        ..finding(
            Question::Locks,
            Verdict::Good,
            FindingDetail::OverCentre {
                offset: 0.0024,
                ground_into_lock: 0.032,
                knee_push: 62.0,
            },
        )
    };
    LegResult {
        name: "Right main".to_owned(),
        view: View::Front,
        swing_up: 1.4,
        findings: vec![tightest, pressure, over_centre],
        jams: Vec::new(),
        excursion: Some(Excursion {
            swing: -0.004,
            at_axle: 0.0032,
            allowed: Some(0.005),
        }),
        events: Vec::new(),
        clearance: Clearance {
            pairs: vec![
                pair(MovingPart::Wheel, Some(TireState::New), 0.0012, 0.0127),
                pair(MovingPart::Wheel, Some(TireState::Grown), -0.0063, 0.003),
                pair(MovingPart::LowerLink, None, 0.031, 0.003),
            ],
            governing: Some(1),
            own: vec![own(TireState::New, 0.0061), own(TireState::Grown, 0.0025)],
            own_not_checked: vec![OwnNotChecked {
                part: MovingPart::LegBody,
                why: NotChecked::NoOutline,
            }],
            room: Room {
                reach_new: 0.22,
                reach_grown: 0.23,
                rows: Vec::new(),
            },
            skew: SkewLosses {
                trunnion: None,
                wheel: None,
                new: SkewLoss::default(),
                grown: SkewLoss::default(),
                told: Some(SkewLoss {
                    to_well: 0.0164,
                    along_trunnion: 0.05,
                    to_own_leg: 0.0,
                }),
            },
            curves: Vec::new(),
            wheel_envelope: Vec::new(),
            leg_envelope: Vec::new(),
        },
        force: Force {
            stroke: Stroke::Pull,
            bore_area: 7.07e-4,
            annulus_area: 5.94e-4,
            stroke_used: 0.1,
            driven_by: DrivenBy::Fluid,
            available_pressure: 6.894_757e6,
            available_among_all: None,
            available_set_by: SetBy::File,
            available_extend_pressure: 6.894_757e6,
            available_extend_set_by: SetBy::File,
            required_margin: 0.1,
            shares_drive_with: Vec::new(),
            partner_stands: None,
            peak: Some(peak),
            stalls_at: None,
            extend_peak: None,
            largest_mount_load: Some(1510.0),
            binds: Vec::new(),
            cases: cases(peak),
            hardest_case: Some(1),
            joint_loads: vec![JointLoad {
                joint: Joint::Trunnion,
                load: 3200.0,
                place: place(0.12),
                motion: Motion::Retract,
                case: LoadCase::Turn,
            }],
        },
        lock: Lock {
            kind: LockKind::OverCentre,
            over_centre: Some(0.0024),
            past_centre: Some(0.015),
            ground_load: None,
            over_centre_less_play: Some(0.0021),
            axle_loads: vec![
                AxleLoad {
                    direction: AxlePush::SideLeft,
                    effect: AxleLoadEffect { into_lock: 0.021 },
                },
                AxleLoad {
                    direction: AxlePush::SideRight,
                    effect: AxleLoadEffect { into_lock: -0.021 },
                },
            ],
            knee_push: Some(62.0),
            knee_push_at_gear_speed: None,
            end_gap: None,
        },
        fall: Some(Fall {
            outcome: FallOutcome::ReachesLock(Arrival {
                time: 0.92,
                swing_rate: -0.011,
                axle_speed: 0.009,
                knee_speed: Some(1.4),
                largest_axle_speed: 2.6,
            }),
            moment_at_up: Some(61.0),
            least_moment: Some(LeastMoment {
                moment: 8.4,
                place: place(0.06),
            }),
            least_knee_push: Some(LeastKneePush {
                push: 5.2,
                place: Place {
                    phase: Phase::Unlock,
                    progress: -0.4,
                    ..place(0.0)
                },
            }),
            airspeed: FallAirspeed::UpTo { airspeed: 61.0 },
            at_gear_speed: None,
            friction_factor: Some(3.4),
            friction_factor_tried: None,
            seal_friction_limit: Some(136.0),
            required: Some(FallRequired {
                times: 2.0,
                reaches: true,
            }),
            start: Some(FallStart {
                ratio: 1.3,
                place: place(0.06),
                stays_from: None,
                stays_to: None,
            }),
            short: None,
            actuator: Unpowered::Fluid,
            energy: FallEnergy {
                weights: 92.0,
                springs: 0.0,
                air: -4.0,
                friction: 6.1,
                orifice: 31.0,
                motion: 50.9,
                residual: 2.0e-8,
            },
            inertia: InertiaBasis::UniformPlate,
        }),
        way_down: Some(WayDown {
            way: EmergencyWay::FreeFall,
            verdict: Verdict::Good,
            hand_pump: None,
        }),
        stations: Arc::new((0..=8).map(|i| station(f64::from(i) / 8.0)).collect()),
    }
}

fn cases(peak: ForcePeak) -> Vec<CaseForce> {
    let worked = |case, factor: f64| CaseForce {
        case,
        outcome: CaseOutcome::Worked {
            load_factor: factor,
            dynamic_pressure: 0.0,
            retract: Some(ForcePeak {
                pressure: factor * peak.pressure,
                margin: 1.0 - factor * (1.0 - peak.margin),
                ..peak
            }),
            extend: None,
            stalls_at: None,
            binds_at: None,
        },
    };
    vec![
        worked(LoadCase::AsSet, 1.0),
        worked(LoadCase::Turn, 2.0),
        CaseForce {
            case: LoadCase::AirLoad,
            outcome: CaseOutcome::Missing {
                needs: MissingInput::StallSpeed,
            },
        },
    ]
}

/// The first leg of a gear with a result.
pub(crate) fn subject<'a>(gear: &'a Gear, result: &'a LegResult, units: UnitChoice) -> Subject<'a> {
    Subject {
        gear,
        leg: 0,
        result,
        units,
    }
}
