//! What makes an answer: the least margin of all motions and cases, and a way down that there is.
use super::super::{SupplyOptions, cycle};
use crate::model::*;
use crate::result::*;
use crate::stop::{StopError, explain_stop};
use crate::{LEAST_OVER_CENTRE, Options, solve_leg};
use gearswing_samples::leg::kinds;
use gearswing_samples::pack::{gear, holds_it_up, skin_over_the_wheel};

fn solved(gear: &Gear, leg: usize) -> LegResult {
    solve_leg(gear, leg, &Options::default()).unwrap()
}

fn verdict(result: &LegResult, question: Question) -> Verdict {
    let mut all = result.findings.iter();
    all.find(|finding| finding.question == question)
        .unwrap()
        .verdict
}

/// The peaks of a case, up and down.
fn peaks(result: &LegResult, wanted: LoadCase) -> (ForcePeak, ForcePeak) {
    let case = result.force.cases.iter().find(|case| case.case == wanted);
    match case.unwrap().outcome {
        CaseOutcome::Worked {
            retract, extend, ..
        } => (retract.unwrap(), extend.unwrap()),
        CaseOutcome::Missing { .. } => panic!("not worked out"),
    }
}

/// A spring that holds the leg up, so that the pump has to push it down; no margin is required.
fn sprung_up() -> Gear {
    let mut gear = gear();
    gear.supply.margin_wanted = Some(0.0);
    gear.legs[0].springs.push(holds_it_up());
    gear
}

/// In a case that is not the one as set, down needs less pressure than up but has less to count on: the
/// answer is that of the way down.
#[test]
fn the_lesser_margin_of_a_case_decides() {
    let mut gear = sprung_up();
    gear.supply = Supply::constant(9e6);
    // lightened as set, so that the jacks are the harder case both ways
    gear.conditions.load_factor = 0.9;
    let (up, down) = peaks(&solved(&gear, 0), LoadCase::OnJacks);
    let (less, more) = (
        up.pressure.min(down.pressure),
        up.pressure.max(down.pressure),
    );
    assert!(less > 0.0 && more > 1.05 * less, "{less} {more}");
    let lacks_down = down.pressure < up.pressure;
    gear.supply.available_pressure = if lacks_down { 2.0 * more } else { 0.98 * less };
    gear.supply.available_down = Some(if lacks_down { 0.98 * less } else { 2.0 * more });
    let result = solved(&gear, 0);
    let mut cases = result.force.cases.iter();
    let case = cases.find(|case| case.case == LoadCase::OnJacks).unwrap();
    let (motion, peak) = case.hardest().unwrap();
    assert_eq!(motion == Motion::Extend, lacks_down);
    assert!(peak.margin < 0.0 && peak.pressure < more);
    assert_eq!(verdict(&result, Question::Driven), Verdict::Bad);
}

/// Of places with different pressures to count on, that with the least share left is the hardest: 90 of 1200
/// before 80 of 600.
#[test]
fn shares_are_compared_and_no_differences() {
    let base = solved(&gear(), 0).force.peak.unwrap();
    let peak = |available: f64, pressure: f64| ForcePeak {
        available,
        pressure,
        margin: (available - pressure) / available,
        ..base
    };
    let (much, little) = (peak(1200.0, 1110.0), peak(600.0, 520.0));
    assert!(much.is_harder_than(&little) && !little.is_harder_than(&much));
}

/// A hand pump that is the source has no more than is given as available; one that the leg binds against,
/// or whose leg it does not come by, is a No, however strong.
#[test]
fn a_hand_pump_brings_down_what_it_can() {
    let mut gear = sprung_up();
    gear.supply.source = Source::HandPump(HandPump {
        stroke_volume: 1e-5,
        stroke_time: 1.0,
        largest_pressure: 9e6,
    });
    let down = solved(&gear, 0).force.extend_peak.unwrap().pressure;
    let pump = |gear: &Gear| solved(gear, 0).way_down.unwrap();
    assert_eq!(pump(&gear).hand_pump.unwrap().available, 7e6);
    gear.supply.available_down = Some(0.9 * down);
    let weak = solved(&gear, 0);
    assert_eq!(weak.way_down.unwrap().verdict, Verdict::Bad);
    assert_eq!(verdict(&weak, Question::Locks), Verdict::Bad);
    gear.supply.available_down = None;
    for pin in gear.legs[0].pins.all_mut() {
        *pin = Pin::rubbing(0.05, 1.2);
    }
    let bound = solved(&gear, 0);
    if let Some(way) = bound.way_down {
        assert!(way.hand_pump.unwrap().stopped, "{way:?}");
        assert_eq!(way.verdict, Verdict::Bad);
    }
    assert_eq!(verdict(&bound, Question::Driven), Verdict::Bad);
}

/// A leg that jams has no way down worked out: its lock is no plain Yes, however far over center it is.
#[test]
fn a_leg_that_jams_is_not_shown_to_lock() {
    let mut gear = gear();
    let comes_up = solved(&gear, 0);
    assert!(comes_up.way_down.is_some() && comes_up.lock.over_centre.unwrap() > LEAST_OVER_CENTRE);
    gear.legs[0].actuator.longest = 0.5;
    let jammed = solved(&gear, 0);
    assert!(!jammed.jams.is_empty() && jammed.way_down.is_none());
    assert_eq!(verdict(&jammed, Question::Locks), Verdict::NotShown);
}

/// A partner that has a knee to unlock needs its pressure while the other leg, which has none, stands where
/// it begins: the drive that is too weak for that is too weak for both.
#[test]
fn a_partner_that_unlocks_counts_for_both() {
    let mut gear = gear();
    gear.supply = Supply::constant(9e6);
    gear.supply.margin_wanted = Some(0.0);
    gear.legs.remove(0);
    for leg in &mut gear.legs {
        leg.shared_drive = "Shaft".into();
    }
    // what starts it out of its lock is far more than anything else
    gear.legs[0].actuator.seal_break_out = Some(2e3);
    let mut swings_at_once = kinds()
        .into_iter()
        .filter(|leg| matches!(leg.brace, Brace::Sliding(_)) && leg.drive.electric.is_none());
    gear.legs[1] = Leg {
        shared_drive: "Shaft".into(),
        drive_ratio: 0.05,
        ..swings_at_once.next().unwrap()
    };
    let (unlocks, swings) = (solved(&gear, 0), solved(&gear, 1));
    let at = unlocks.force.peak.unwrap();
    assert!(at.place.progress <= -1.0 + 1e-9, "{at:?}");
    let other = swings.force.peak.unwrap();
    assert!(
        other.pressure >= at.pressure * (1.0 - 1e-3),
        "{other:?} {at:?}"
    );
    gear.supply.available_pressure = 0.99 * at.pressure;
    for leg in 0..2 {
        assert_eq!(verdict(&solved(&gear, leg), Question::Driven), Verdict::Bad);
    }
    gear.legs[0].seen_stop = Some(SeenStop::at(HowFar::Travel {
        travel: Some(0.5),
        within: 0.02,
    }));
    assert_eq!(explain_stop(&gear, 0), Err(StopError::SharedDrive));
}

/// What a skew may take off is a bound for the answer; the run stops where the drawing says.
#[test]
fn a_skew_stops_no_run() {
    let mut gear = gear();
    let mut at = |y: f64| {
        gear.legs[1].well = vec![skin_over_the_wheel(1.2, y)];
        least(&gear)
    };
    // so low that 20 mm are left
    let room = at(0.6);
    let drawn = at(0.62 - room);
    assert!((drawn - 0.02).abs() < 0.01, "{drawn}");
    gear.legs[1].out_of_plane.trunnion_skew = Some(8_f64.to_radians());
    assert!(least(&gear) < 0.0);
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Complete);
}

/// Least clearance of leg 1 to its well.
fn least(gear: &Gear) -> f64 {
    let found = solved(gear, 1).clearance;
    let pairs = found.pairs.iter().map(|pair| pair.tightest.clearance);
    pairs.fold(f64::INFINITY, f64::min)
}
