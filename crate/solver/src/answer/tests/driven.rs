//! Can it be driven: what answers before any pressure does, and what the answer rests on.
use super::support::{AVAILABLE, Asked, at, bind, binding, case, peak, station};
use crate::model::{
    Accumulator, AttachTo, Folds, HandPump, Pin, Pins, Point, Shortening, Source, Spring,
    SpringJoint, SpringKind, StrutJack, Supply, TorsionSpring, UnlockedBy, View,
};
use crate::result::{
    Assumption, DrivenBy, FindingDetail, LoadCase, MechanismEvent, MechanismEventKind, Motion,
    Phase, Verdict,
};

/// A gas that nothing but a pump fills again.
const ACCUMULATOR: Accumulator = Accumulator {
    gas_volume: 1e-3,
    precharge: 3e6,
    charged: AVAILABLE,
    exponent: 1.4,
};

const HAND_PUMP: Source = Source::HandPump(HandPump {
    stroke_volume: 1e-5,
    stroke_time: 1.0,
    largest_pressure: AVAILABLE,
});

/// A leg whose actuator has these lengths (m) at down, with the knee straight, and up.
fn with_lengths([down, straight, up]: [f64; 3]) -> Asked {
    let mut asked = Asked::new();
    asked.stations = vec![
        station(Phase::Shorten, -2.0, down),
        station(Phase::Unlock, -1.0, down),
        station(Phase::Swing, 0.0, straight),
        station(Phase::Swing, 1.0, up),
    ];
    asked.force.peak = Some(peak(0.5, 0.4));
    asked
}

/// The way the actuator must move to bring the knee back through the straight line is that in which it moves
/// in the swing, or pressing it to retract drives the knee further into its lock.
#[test]
fn the_actuator_moves_one_way_from_the_lock_to_up() {
    for (lengths, locked_in) in [
        ([0.50, 0.51, 0.60], false),
        ([0.50, 0.49, 0.40], false),
        ([0.50, 0.49, 0.60], true),
        ([0.50, 0.51, 0.40], true),
        // it does not move the knee at all
        ([0.50, 0.50, 0.60], true),
    ] {
        let finding = with_lengths(lengths).answer();
        let is = finding.detail == FindingDetail::CannotUnlock;
        assert_eq!(is, locked_in, "{lengths:?}");
        let verdict = if locked_in {
            Verdict::Bad
        } else {
            Verdict::Good
        };
        assert_eq!(finding.verdict, verdict, "{lengths:?}");
        let looks_at = finding.place.map(|place| place.progress);
        assert_eq!(looks_at, Some(if locked_in { -1.0 } else { 0.4 }));
    }
}

/// An actuator on the leg has no say over the knee; one that has nothing to unlock is not asked.
#[test]
fn who_unlocks_the_knee_is_asked() {
    let into_the_lock = [0.50, 0.49, 0.60];
    for (lengths, attach_to, folds, unlocked_by, locked_in) in [
        (
            [0.50, 0.51, 0.60],
            AttachTo::Leg,
            Folds::ThroughCentre,
            UnlockedBy::Actuator,
            true,
        ),
        (
            into_the_lock,
            AttachTo::LowerLink,
            Folds::ThroughCentre,
            UnlockedBy::Separate,
            false,
        ),
        (
            into_the_lock,
            AttachTo::LowerLink,
            Folds::SameSide,
            UnlockedBy::Actuator,
            false,
        ),
    ] {
        let mut asked = with_lengths(lengths);
        asked.leg.actuator.attach_to = attach_to;
        asked.brace().folds = folds;
        asked.brace().unlocked_by = unlocked_by;
        let is = asked.answer().detail == FindingDetail::CannotUnlock;
        assert_eq!(is, locked_in, "{attach_to:?} {folds:?} {unlocked_by:?}");
    }
}

/// Only where the actuator loses its arm within the swing does no force move the leg: a straight or folded
/// knee is none such, nor is the pose at which the swing begins.
#[test]
fn a_dead_point_within_the_swing_is_a_no() {
    use MechanismEventKind::{ActuatorDeadPoint, KneeFolded, KneeStraight};
    let event = |(kind, progress)| MechanismEvent {
        place: at(progress),
        kind,
        point: Point::new(0.2, 0.1),
    };
    for (events, dead) in [
        (vec![(KneeStraight, 0.0), (KneeFolded, 0.6)], None),
        (vec![(ActuatorDeadPoint, -0.5)], None),
        (vec![(ActuatorDeadPoint, 0.0)], None),
        (vec![(ActuatorDeadPoint, 0.3)], Some(0.3)),
        (vec![(KneeFolded, 0.2), (ActuatorDeadPoint, 0.7)], Some(0.7)),
    ] {
        let mut asked = Asked::new();
        asked.force.peak = Some(peak(0.5, 0.9));
        asked.events = events.iter().copied().map(event).collect();
        let finding = asked.answer();
        let is = finding.detail == FindingDetail::DeadPoint;
        assert_eq!(is, dead.is_some(), "{events:?}");
        let looks_at = finding.place.map(|place| place.progress);
        assert_eq!(looks_at, Some(dead.unwrap_or(0.9)), "{events:?}");
    }
}

/// A leg whose strut is moved before the swing by a jack that needs these pressures to shorten it and to let
/// it out (Pa).
fn with_jack(needs: [f64; 2]) -> Asked {
    let mut asked = Asked::new();
    asked.force.peak = Some(peak(0.5, 0.4));
    asked.leg.strut.shortening = Shortening::BeforeSwing { amount: 0.05 };
    asked.leg.drive.strut_jack = Some(StrutJack {
        area: 3e-4,
        shorten_pressure: needs[0],
        lengthen_pressure: needs[1],
    });
    asked
}

/// The jack needs its pressure and the back pressure, and has to have less than is available each way; told is
/// the way in which most is missing.
#[test]
fn the_jack_of_the_strut_needs_less_than_is_available() {
    for (needs, available, back, weak) in [
        ([7e6, 2e6], [8e6, 8e6], 0.5e6, None),
        ([7.6e6, 2e6], [8e6, 8e6], 0.5e6, Some([8.1e6, 8e6])),
        ([8e6, 2e6], [8e6, 8e6], 0.0, Some([8e6, 8e6])),
        // 0.1 MPa to spare up, 1 MPa missing down
        ([7.9e6, 3e6], [8e6, 2e6], 0.0, Some([3e6, 2e6])),
        // 1 MPa missing up, 0.5 MPa down
        ([9e6, 2.5e6], [8e6, 2e6], 0.0, Some([9e6, 8e6])),
        // 0.5 MPa missing up, 1 MPa down
        ([8.5e6, 3e6], [8e6, 2e6], 0.0, Some([3e6, 2e6])),
    ] {
        let mut asked = with_jack(needs);
        asked.supply.return_pressure = back;
        let force = &mut asked.force;
        [force.available_pressure, force.available_extend_pressure] = available;
        let finding = asked.answer();
        let told = match finding.detail {
            FindingDetail::StrutJack { needed, available } => Some([needed, available]),
            _ => None,
        };
        assert_eq!(told, weak, "{needs:?}");
        assert_eq!(finding.verdict == Verdict::Bad, weak.is_some(), "{needs:?}");
    }
}

/// An accumulator that nothing fills again has left what counts as available only when the legs are up; then
/// the struts have long moved. A pump, or a pressure that holds, has no more for them than for the legs.
#[test]
fn an_accumulator_alone_has_more_for_the_strut_than_for_the_swing() {
    let full = Supply::constant(AVAILABLE);
    for (source, accumulator, weak) in [
        (Source::ConstantPressure, None, true),
        (Source::ConstantPressure, Some(ACCUMULATOR), false),
        (HAND_PUMP, Some(ACCUMULATOR), true),
    ] {
        let mut asked = with_jack([9e6, 2e6]);
        asked.supply = Supply {
            source,
            accumulator,
            ..full
        };
        let is = matches!(asked.answer().detail, FindingDetail::StrutJack { .. });
        assert_eq!(is, weak, "{source:?} {accumulator:?}");
    }
    // no jack works before the swing
    let mut with_travel = with_jack([9e6, 2e6]);
    with_travel.leg.strut.shortening = Shortening::None;
    let mut electric = with_jack([9e6, 2e6]);
    electric.force.driven_by = DrivenBy::Electricity;
    for asked in [with_travel, electric] {
        assert_eq!(asked.answer().verdict, Verdict::Good);
    }
}

/// Pins that bind stop the leg whatever the pressure: told is the first place of the case as set, and another
/// case only where they do not bind in it.
#[test]
fn pins_that_bind_are_a_no() {
    let turn = binding(LoadCase::Turn, bind(Motion::Extend, 0.2));
    let free = case(LoadCase::OnJacks, Some(peak(0.5, 0.4)), None);
    let [late, early] = [0.7, 0.3].map(|progress| bind(Motion::Retract, progress));
    for (binds, cases, told) in [
        (vec![], vec![free], None),
        (vec![late, early], vec![turn], Some((LoadCase::AsSet, 0.3))),
        (vec![], vec![free, turn], Some((LoadCase::Turn, 0.2))),
    ] {
        let mut asked = Asked::new();
        asked.force.peak = Some(peak(0.5, 0.9));
        asked.force.binds = binds;
        asked.force.cases = cases;
        let finding = asked.answer();
        let is = match finding.detail {
            FindingDetail::Binds { case, .. } => finding.place.map(|place| (case, place.progress)),
            _ => None,
        };
        assert_eq!(is, told);
        assert_eq!(finding.verdict == Verdict::Bad, told.is_some());
    }
}

/// A pump with an accumulator counts up to its switch: each of these alone is no such thing.
#[test]
fn only_a_pump_that_a_switch_stops_and_gas_keeps_up_counts_to_its_switch() {
    for (accumulator, switch, driven_by, counts) in [
        (Some(ACCUMULATOR), Some(7e6), DrivenBy::Fluid, true),
        (None, Some(7e6), DrivenBy::Fluid, false),
        (Some(ACCUMULATOR), None, DrivenBy::Fluid, false),
        (Some(ACCUMULATOR), Some(7e6), DrivenBy::Electricity, false),
        (None, None, DrivenBy::Fluid, false),
    ] {
        let mut asked = Asked::new();
        asked.force.peak = Some(peak(0.5, 0.4));
        asked.force.driven_by = driven_by;
        asked.supply.source = HAND_PUMP;
        asked.supply.accumulator = accumulator;
        asked.supply.pressure_switch = switch;
        let assumptions = asked.answer().assumptions;
        let is = assumptions.contains(&Assumption::PumpUpToItsSwitch);
        assert_eq!(is, counts, "{accumulator:?} {switch:?} {driven_by:?}");
    }
}

/// The friction of what has stood counts where a motion begins, and is from memory where it is not given.
#[test]
fn break_out_is_named_where_a_motion_begins() {
    for (progress, typed, named) in [
        (0.0, None, true),
        (1.0, None, true),
        (0.4, None, false),
        (0.0, Some(60.0), false),
        (0.4, Some(60.0), false),
    ] {
        let mut asked = Asked::new();
        asked.leg.actuator.seal_break_out = typed;
        asked.force.peak = Some(peak(0.5, progress));
        let assumptions = asked.answer().assumptions;
        let is = assumptions.contains(&Assumption::BreakOutFromMemory);
        assert_eq!(is, named, "{progress} {typed:?}");
    }
}

#[test]
fn friction_springs_view_and_unlocking_are_named() {
    let spring = Spring {
        name: String::new(),
        kind: SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Trunnion,
            rate: 5.0,
            moment_at_down: 0.0,
        }),
    };
    for (pins, springs, counted) in [
        (Pins::default(), vec![], Assumption::NoPinFriction),
        (
            Pins::default(),
            vec![spring.clone()],
            Assumption::FrictionAndSprings,
        ),
        (
            Pins::alike(Pin::rubbing(0.006, 0.2)),
            vec![],
            Assumption::FrictionAndSprings,
        ),
        (
            Pins::alike(Pin::rubbing(0.006, 0.2)),
            vec![spring],
            Assumption::FrictionAndSprings,
        ),
    ] {
        let mut asked = Asked::new();
        (asked.leg.pins, asked.leg.springs) = (pins, springs);
        let found = asked.answer().assumptions;
        for one in [Assumption::NoPinFriction, Assumption::FrictionAndSprings] {
            assert_eq!(found.contains(&one), one == counted, "{found:?}");
        }
    }
    for (view, folds, unlocked_by) in [
        (View::Front, Folds::ThroughCentre, UnlockedBy::Actuator),
        (View::Side, Folds::ThroughCentre, UnlockedBy::Separate),
        (View::Side, Folds::SameSide, UnlockedBy::Separate),
        (View::Side, Folds::SameSide, UnlockedBy::Actuator),
    ] {
        let mut asked = Asked::new();
        asked.leg.view = view;
        asked.brace().folds = folds;
        asked.brace().unlocked_by = unlocked_by;
        let found = asked.answer().assumptions;
        let in_front = found.contains(&Assumption::FrontViewAir);
        assert_eq!(in_front, view == View::Front);
        // a knee that is not over center has nothing to unlock
        let separate = folds == Folds::ThroughCentre && unlocked_by == UnlockedBy::Separate;
        assert_eq!(found.contains(&Assumption::SeparateUnlock), separate);
    }
}
