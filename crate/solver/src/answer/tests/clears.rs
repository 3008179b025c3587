//! Does it clear: where one verdict ends and the next begins, and what each rests on.
use crate::answer::clears;
use crate::model::{Gear, Grown, MovingPart, Obstacle, Point, Shape, Tire};
use crate::result::{
    Assumption, Caution, Clearance, Finding, FindingDetail, Jam, JamCause, LegResult, NotChecked,
    OwnClearance, OwnNotChecked, Requirement, RoomClearance, RoomSide, Tightest, TireState,
    Verdict,
};
use crate::tires::find_size;
use crate::{Options, solve_leg};
use gearswing_samples::leg as sample;

/// A leg with one piece of structure far off, worked out.
fn worked() -> LegResult {
    let mut leg = sample::leg();
    leg.well = vec![Obstacle {
        name: "Rib".to_owned(),
        shape: Shape::Surface {
            points: vec![Point::new(3.0, -3.0), Point::new(3.0, 3.0)],
        },
        required_clearance: Some(0.01),
        ignores: Vec::new(),
    }];
    let gear = Gear {
        legs: vec![leg],
        ..gearswing_samples::pack::gear()
    };
    solve_leg(&gear, 0, &Options::default()).unwrap()
}

/// The clearances of a worked leg with the row of this part made the governing one and set to this
/// clearance (m); 0.01 m is required.
fn governed(of: &LegResult, part: MovingPart, tire: Option<TireState>, is: f64) -> Clearance {
    let mut clearance = of.clearance.clone();
    let row = clearance
        .pairs
        .iter()
        .position(|pair| pair.part == part && pair.tire == tire);
    clearance.pairs[row.unwrap()].tightest.clearance = is;
    clearance.governing = row;
    clearance
}

fn tire() -> Tire {
    find_size("6.00-6").unwrap().to_tire()
}

fn wheel(is: f64, tire: &Tire) -> Finding {
    let of = worked();
    let clearance = governed(&of, MovingPart::Wheel, Some(TireState::New), is);
    clears(&clearance, &[], tire)
}

#[test]
fn contact_begins_at_nothing_and_enough_is_enough() {
    for (is, verdict) in [
        (-1e-9, Verdict::Bad),
        (0.0, Verdict::Bad),
        (1e-9, Verdict::Marginal),
        (0.01 - 1e-9, Verdict::Marginal),
        (0.01, Verdict::Good),
        (0.02, Verdict::Good),
    ] {
        let finding = wheel(is, &tire());
        assert_eq!(finding.verdict, verdict, "{is}");
        let FindingDetail::Tightest {
            clearance, spare, ..
        } = finding.detail
        else {
            panic!("{:?}", finding.detail);
        };
        assert_eq!((clearance, spare), (is, is - 0.01));
        let trims = finding.cautions.contains(&Caution::Trimming);
        assert_eq!(trims, verdict != Verdict::Good, "{is}");
        assert!(finding.cautions.contains(&Caution::MovingLeg));
        assert!(finding.place.is_some());
    }
}

#[test]
fn a_tire_rests_on_its_size_and_any_wheel_on_the_rule() {
    let of = |part, state, tire: &Tire| {
        let clearance = governed(&worked(), part, state, 0.02);
        clears(&clearance, &[], tire)
    };
    let count = |finding: &Finding, one| {
        let found = finding.assumptions.iter().filter(|&&has| has == one);
        found.count()
    };
    for (part, state, sized) in [
        (MovingPart::Wheel, Some(TireState::New), 1),
        (MovingPart::Wheel, Some(TireState::Grown), 1),
        (MovingPart::LowerLink, None, 0),
    ] {
        let finding = of(part, state, &tire());
        // once, whichever row governs: the grown tire is checked in any case
        assert_eq!(count(&finding, Assumption::GrowthRuleFromMemory), 1);
        assert_eq!(count(&finding, Assumption::TireSizePublished), sized);
        assert_eq!(count(&finding, Assumption::ClearanceUser), 1);
        let approval = finding.cautions.contains(&Caution::TireApproval);
        assert_eq!(approval, sized == 1);
    }
    let mut grown = tire();
    grown.grown = Grown::Given {
        diameter: 0.46,
        width: 0.17,
        basis: crate::model::Basis::Measured,
    };
    let finding = of(MovingPart::LowerLink, None, &grown);
    assert_eq!(count(&finding, Assumption::GrowthRuleFromMemory), 0);
    // no wheel in the list: nothing rests on its growth
    let mut no_wheel = governed(&worked(), MovingPart::LowerLink, None, 0.02);
    let link = no_wheel.pairs[no_wheel.governing.unwrap()].clone();
    no_wheel.pairs = vec![link];
    no_wheel.governing = Some(0);
    let finding = clears(&no_wheel, &[], &tire());
    assert_eq!(count(&finding, Assumption::GrowthRuleFromMemory), 0);
}

#[test]
fn a_stop_on_the_way_is_a_no_but_contact_comes_first() {
    let of = worked();
    let jam = Jam {
        place: of.clearance.pairs[0].tightest.place,
        cause: JamCause::BraceTooShort {
            reach: 0.5,
            span: 0.6,
        },
    };
    for (is, jammed) in [(0.02, true), (0.005, true), (-0.001, false)] {
        let clearance = governed(&of, MovingPart::Wheel, Some(TireState::New), is);
        let finding = clears(&clearance, &[jam], &tire());
        assert_eq!(finding.verdict, Verdict::Bad, "{is}");
        let is_jam = matches!(finding.detail, FindingDetail::Jammed { .. });
        assert_eq!(is_jam, jammed, "{is}");
        assert!(!is_jam || finding.place == Some(jam.place));
    }
}

/// Room on the near side of the new tire.
fn near_room(clearance: f64, requirement: Requirement) -> RoomClearance {
    RoomClearance {
        side: RoomSide::Near,
        tire: TireState::New,
        room: 1.0,
        clearance,
        less_for_skew: 0.0,
        requirement,
    }
}

/// Of well, own leg and room the deepest contact governs; without contact what has the least to spare, be
/// its clearance the larger.
#[test]
fn contact_comes_before_spare_and_the_deepest_first() {
    let worked = worked();
    let of = |[well, own, room]: [f64; 3]| {
        let mut clearance = governed(&worked, MovingPart::Wheel, Some(TireState::New), well);
        let pair = clearance.pairs[clearance.governing.unwrap()].clone();
        // 0.01 m is required of the well, 0.02 m of the others
        let requirement = Requirement {
            clearance: 0.02,
            ..pair.requirement
        };
        clearance.own = vec![OwnClearance {
            part: MovingPart::LegBody,
            tire: TireState::New,
            tightest: Tightest {
                clearance: own,
                ..pair.tightest
            },
            certified_to: pair.certified_to,
            less_for_skew: 0.0,
            requirement,
            first_contact: None,
        }];
        clearance.room.rows = vec![near_room(room, requirement)];
        let finding = clears(&clearance, &[], &tire());
        let which = match finding.detail {
            FindingDetail::Tightest { .. } => 0,
            FindingDetail::OwnTightest { .. } => 1,
            FindingDetail::RoomTightest { .. } => 2,
            other => panic!("{other:?}"),
        };
        let trims = finding.cautions.contains(&Caution::Trimming);
        (which, finding.verdict, trims)
    };
    for (clearances, wanted) in [
        ([0.001, -0.002, 0.5], (1, Verdict::Bad, false)),
        ([-0.003, -0.002, 0.5], (0, Verdict::Bad, true)),
        ([-0.003, -0.002, -0.004], (2, Verdict::Bad, true)),
        // 0.005 to spare of the well, 0.004 of its own leg
        ([0.015, 0.024, 0.5], (1, Verdict::Good, false)),
        ([0.013, 0.024, 0.5], (0, Verdict::Good, false)),
        ([0.5, 0.5, 0.019], (2, Verdict::Marginal, true)),
    ] {
        assert_eq!(of(clearances), wanted, "{clearances:?}");
    }
}

#[test]
fn nothing_in_the_well_is_no_yes() {
    let mut empty = worked().clearance;
    empty.pairs.clear();
    empty.governing = None;
    let finding = clears(&empty, &[], &tire());
    assert_eq!(finding.verdict, Verdict::NotShown);
    assert_eq!(finding.detail, FindingDetail::NothingInWell);
    assert!(finding.place.is_none() && finding.assumptions.is_empty());
    assert_eq!(finding.cautions, [Caution::MovingLeg]);
}

/// What of the leg itself could not be followed takes a Yes away, and nothing worse; what is left out for
/// want of an outline does not.
#[test]
fn what_is_not_resolved_is_no_yes() {
    let worked = worked();
    for (why, is, verdict) in [
        (NotChecked::Unresolved, 0.02, Verdict::NotShown),
        (NotChecked::Unresolved, 0.005, Verdict::Marginal),
        (NotChecked::Unresolved, -0.001, Verdict::Bad),
        (NotChecked::NoOutline, 0.02, Verdict::Good),
    ] {
        let mut clearance = governed(&worked, MovingPart::Wheel, Some(TireState::New), is);
        let part = MovingPart::LegBody;
        clearance.own_not_checked = vec![OwnNotChecked { part, why }];
        let finding = clears(&clearance, &[], &tire());
        assert_eq!(finding.verdict, verdict, "{why:?} {is}");
    }
}

/// Without anything in the well, only what is too near or in contact of the leg itself governs.
#[test]
fn without_a_well_only_its_own_trouble_governs() {
    let worked = worked();
    let pair = worked.clearance.pairs[0].clone();
    for (room, verdict) in [
        (-0.001, Verdict::Bad),
        (0.009, Verdict::Marginal),
        (0.011, Verdict::NotShown),
    ] {
        let mut clearance = worked.clearance.clone();
        clearance.pairs.clear();
        clearance.governing = None;
        clearance.own.clear();
        clearance.own_not_checked.clear();
        clearance.room.rows = vec![near_room(
            room,
            Requirement {
                clearance: 0.01,
                ..pair.requirement
            },
        )];
        let finding = clears(&clearance, &[], &tire());
        assert_eq!(finding.verdict, verdict, "{room}");
        let nothing = finding.detail == FindingDetail::NothingInWell;
        assert_eq!(nothing, verdict == Verdict::NotShown, "{room}");
    }
}
