//! Changes of a gear that change its answers in a known way.
use gearswing_gear::field::{mirror_leg, move_leg};
use gearswing_gear::model::*;
use gearswing_solver::result::{LegResult, Question, Verdict};
use gearswing_tests::changes::{enlarged, heavier, mirrored, moved, turn, turned};
use gearswing_tests::same::Change;
use gearswing_tests::{Case, cases, solve};

pub(crate) const STATIONS: usize = 61;

/// A side view has no wind from behind: mirror it in still air.
fn still_in_side_view(case: &mut Case) {
    if case.kind.view == View::Side {
        case.gear.conditions.airspeed = 0.0;
    }
}

/// The mirror image has the mirrored answers.
pub(crate) fn compare_mirrored(case: &mut Case, rounding: f64) {
    still_in_side_view(case);
    Change {
        point: &|p| Point::new(-p.x, p.y),
        vector: &|v| Vector::new(-v.x, v.y),
        sign: -1.0,
        rounding,
        ..Change::NONE
    }
    .compare(
        &solve(&case.gear, STATIONS),
        &solve(&mirrored(&case.gear), STATIONS),
    );
}

/// The airplane drawn elsewhere has the same answers there.
pub(crate) fn compare_moved(case: &mut Case) {
    let by = Vector::new(case.draw.between(-9.0, 9.0), case.draw.between(-9.0, 9.0));
    Change {
        point: &|p| p + by,
        rounding: 1e-8,
        ..Change::NONE
    }
    .compare(
        &solve(&case.gear, STATIONS),
        &solve(&moved(&case.gear, by), STATIONS),
    );
}

#[test]
fn mirror_image() {
    for mut case in cases(4, 2, 10) {
        compare_mirrored(&mut case, Change::NONE.rounding);
    }
}

/// What the page does to a leg is the same change as here, made from a list of its own.
#[test]
fn a_leg_mirrored_or_moved_by_the_list_of_fields() {
    for mut case in cases(4, 2, 14) {
        let by = Vector::new(case.draw.between(-9.0, 9.0), case.draw.between(-9.0, 9.0));
        let (mut image, mut there) = (case.gear.clone(), case.gear.clone());
        for leg in 0..case.gear.legs.len() {
            mirror_leg(&mut image, leg);
            move_leg(&mut there, leg, by);
        }
        assert_eq!(image.legs, mirrored(&case.gear).legs);
        assert_eq!(there.legs, moved(&case.gear, by).legs);
        let legs = 0..case.gear.legs.len();
        legs.for_each(|leg| mirror_leg(&mut image, leg));
        assert_eq!(image, case.gear);
    }
}

#[test]
fn aeroplane_moved() {
    for mut case in cases(4, 2, 11) {
        compare_moved(&mut case);
    }
}

/// Drawing and weight turned together: the same leg on a hillside.
#[test]
fn aeroplane_turned() {
    for mut case in cases(4, 2, 12) {
        let c = &mut case.gear.conditions;
        c.airspeed = 0.0;
        match case.kind.view {
            View::Side => c.bank = 0.0,
            View::Front => c.pitch = 0.0,
        }
        let angle = case.draw.between(-1.0, 1.0);
        let mut first = solve(&case.gear, STATIONS);
        let mut second = solve(&turned(&case.gear, angle), STATIONS);
        // the ground's push stays upright
        first.lock.ground_load = None;
        second.lock.ground_load = None;
        leave_out_lock([&mut first, &mut second]);
        // on jacks, in climb and in turn the airplane is not turned along
        for result in [&mut first, &mut second] {
            let as_set = result.force.peak.map(|peak| peak.margin);
            for finding in &mut result.findings {
                if (finding.question, finding.verdict) == (Question::Driven, Verdict::Marginal)
                    && as_set.is_some_and(|margin| margin >= result.force.required_margin)
                {
                    finding.verdict = Verdict::Good;
                }
            }
        }
        Change {
            point: &|p| turn(p, angle),
            vector: &|v| turn(Point::from(v), angle).coords,
            rounding: 1e-8,
            ..Change::NONE
        }
        .compare(&first, &second);
    }
}

/// Twice the size with the same weights: the same forces, a quarter of the pressure.
#[test]
fn larger() {
    for mut case in cases(4, 2, 13) {
        let by = if case.draw.either() {
            2.0
        } else {
            case.draw.between(0.6, 3.0)
        };
        // default figures for clearances would not grow along
        case.gear.clearance_rule = ClearanceRule {
            tire_new: Some(0.0127),
            tire_grown: Some(0.003),
            parts: Some(0.003),
        };
        let mut first = solve(&case.gear, STATIONS);
        let mut second = solve(&enlarged(&case.gear, by), STATIONS);
        // so would the least offset over center
        leave_out_lock([&mut first, &mut second]);
        Change {
            point: &|p| Point::from(p.coords * by),
            length: by,
            rounding: 1e-8,
            ..Change::NONE
        }
        .compare(&first, &second);
    }
}

/// Drops the answer whose least knee push is a figure of its own, whatever the loads.
pub(crate) fn leave_out_lock(results: [&mut LegResult; 2]) {
    for result in results {
        result.findings.retain(|f| f.question != Question::Locks);
    }
}

#[test]
fn heavier_by_a_factor() {
    for mut case in cases(3, 1, 14) {
        let by = case.draw.between(0.2, 5.0);
        let mut first = solve(&case.gear, STATIONS);
        let mut second = solve(&heavier(&case.gear, by), STATIONS);
        leave_out_lock([&mut first, &mut second]);
        Change {
            force: by,
            ..Change::NONE
        }
        .compare(&first, &second);
    }
}

/// In still air every force as set goes with the load factor, seal friction aside; but that of the lock, which
/// counts on 1 g and has a property of its own, and the answer on the drive, which counts the other load cases.
#[test]
fn load_factor() {
    for mut case in cases(3, 0, 15) {
        case.gear.conditions.airspeed = 0.0;
        case.gear.supply.return_pressure = 0.0;
        case.gear.legs[0].actuator.seal_friction = Some(0.0);
        let mut more = case.gear.clone();
        more.conditions.load_factor *= 3.0;
        more.supply.available_pressure *= 3.0;
        let mut first = solve(&case.gear, STATIONS);
        let mut second = solve(&more, STATIONS);
        leave_out_lock([&mut first, &mut second]);
        for result in [&mut first, &mut second] {
            result.findings.retain(|f| f.question != Question::Driven);
        }
        (first.lock.knee_push, second.lock.knee_push) = (None, None);
        Change {
            force: 3.0,
            ..Change::NONE
        }
        .compare(&first, &second);
    }
}
