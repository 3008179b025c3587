//! Legs that touch their well on the way: contact as an event of the run.
use super::super::{SupplyOptions, cycle};
use crate::kinematics::Linkage;
use crate::model::*;
use crate::result::{
    Assumption, Cycle, Indication, Question, Run, RunEnd, RunEventKind as Kind, Stall, StallCause,
    TireState,
};
use crate::solve::{Options, solve_leg};
use gearswing_samples::pack::{gear, on_motors, skin_over_the_wheel};

fn solved(gear: &Gear) -> Cycle {
    cycle(gear, &SupplyOptions::default()).unwrap()
}

/// The gear with a skin over the wheel of its left main, so low that the tire comes against it.
fn under_a_skin() -> Gear {
    let mut gear = gear();
    gear.legs[1].well = vec![skin_over_the_wheel(1.2, 0.1)];
    gear
}

/// Travel at which the tire as fitted new first touches, by the certified clearance.
fn contact(gear: &Gear, leg: usize) -> f64 {
    let found = solve_leg(gear, leg, &Options::default()).unwrap();
    let mut pairs = found.clearance.pairs.iter();
    let pair = pairs
        .find(|pair| pair.tire == Some(TireState::New))
        .unwrap();
    pair.first_contact.unwrap().place.travel
}

fn event(run: &Run, leg: Option<usize>, kind: Kind) -> Option<f64> {
    let mut events = run.events.iter();
    Some(events.find(|e| e.leg == leg && e.kind == kind)?.time)
}

#[test]
fn a_leg_stops_at_its_first_contact_and_the_others_come_up() {
    let gear = under_a_skin();
    let travel = contact(&gear, 1);
    assert!(travel > 0.2 && travel < 0.99, "{travel}");
    let run = solved(&gear).up.unwrap();
    assert_eq!(run.end, RunEnd::Stalled);
    let [stall] = &run.stalls[..] else {
        panic!("{:?}", run.stalls);
    };
    assert_eq!(stall.leg, 1);
    let touches = StallCause::Touches {
        part: MovingPart::Wheel,
        obstacle: 0,
    };
    assert_eq!(stall.cause, touches);
    assert!((stall.place.travel - travel).abs() < 1e-6, "{stall:?}");
    for leg in [0, 2] {
        assert!(event(&run, Some(leg), Kind::UpMade).is_some());
    }
    assert!(event(&run, Some(1), Kind::UpMade).is_none());
    let last = run.samples.last().unwrap();
    assert_eq!(last.legs[1].indication, Indication::InTransit);
    // Until then it is the run of a leg with nothing in its way, whose up switch sits there; places are
    // straight between their 361 stations.
    let mut free = gear.clone();
    free.legs[1].well.clear();
    free.legs[1].drive.switches.up = travel;
    let passes = event(&solved(&free).up.unwrap(), Some(1), Kind::UpMade).unwrap();
    let stops = event(&run, Some(1), Kind::Touches).unwrap();
    assert!((stops / passes - 1.0).abs() < 5e-6, "{stops} {passes}");
}

/// A tire that swings into the arm of its own brace link stops there, as the certified clearance says; one
/// that stands through its strut from the start stops nowhere by that.
#[test]
fn a_tire_that_touches_its_own_leg_stops_it() {
    let mut gear = gearswing_samples::pack::gear();
    gear.legs[1].out_of_plane.own_leg = OwnLeg::All;
    let found = solve_leg(&gear, 1, &Options::default()).unwrap();
    let own = found.clearance.own.iter();
    let first = own
        .filter(|row| row.tire == TireState::New)
        .filter_map(|row| Some((row.part, row.first_contact?.place.travel)))
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let (part, travel) = first.unwrap();
    let run = solved(&gear).up.unwrap();
    let stall = run.stalls[0];
    assert_eq!((run.end, stall.leg), (RunEnd::Stalled, 1));
    assert_eq!(stall.cause, StallCause::TouchesItself { part });
    assert!((stall.place.travel - travel).abs() < 1e-6, "{stall:?}");
    let mut through = gearswing_samples::pack::gear();
    let axle = through.legs[1].strut.axle;
    through.legs[1].strut.sliding_outline = [(-0.01, 0.0), (0.01, 0.0), (0.01, 0.3), (-0.01, 0.3)]
        .map(|(x, y)| axle + Vector::new(x, y))
        .into();
    let found = solve_leg(&through, 1, &Options::default()).unwrap();
    assert!(found.clearance.touches());
    assert_eq!(solved(&through).up.unwrap().end, RunEnd::Complete);
}

/// What drives the leg and how it falls are counted as if nothing touched, and say so.
#[test]
fn answers_that_count_without_the_contact_say_so() {
    let gear = under_a_skin();
    for (leg, told) in [(0, false), (1, true)] {
        let found = solve_leg(&gear, leg, &Options::default()).unwrap();
        assert!(found.fall.is_some());
        for finding in &found.findings {
            let says = finding.assumptions.first() == Some(&Assumption::ContactCleared);
            assert_eq!(
                says,
                told && finding.question != Question::Clears,
                "{finding:?}"
            );
        }
    }
}

/// A leg that starts part of the way, in contact with a plate that it leaves, and comes to it again, as to
/// the lip of a slot: the plate stops it there.
#[test]
fn a_pair_that_touches_again_stops_the_leg() {
    let mut gear = under_a_skin();
    let leg = &mut gear.legs[1];
    leg.strut.shortening = Shortening::None;
    leg.drive.strut_jack = None;
    leg.well.clear();
    let linkage = Linkage::new(leg);
    let axle = |travel: f64| {
        let pose = linkage.pose(linkage.progress_at_travel(travel)).unwrap();
        (pose.axle, pose.place.progress)
    };
    // two posts, joined by a wall far out of the way, stand where the axle is at 30 % and at 70 %
    let (first, second) = (axle(0.3).0, axle(0.7).0);
    let trunnion = leg.trunnion;
    let out = |at: Point| trunnion + (at - trunnion) * 3.0;
    let wide = |at: Point| {
        let way = (at - trunnion).normalize();
        Vector::new(-way.y, way.x) * 0.01
    };
    let mut posts = skin_over_the_wheel(1.0, 0.0);
    posts.shape = Shape::Solid {
        points: vec![
            first - wide(first),
            first + wide(first),
            out(first) + wide(first),
            out(second) - wide(second),
            second - wide(second),
            second + wide(second),
            out(second) * 1.2 + wide(second),
            out(first) * 1.2 - wide(first),
        ],
    };
    leg.well = vec![posts];
    leg.drive.start_travel = Some(0.3);
    let begins = axle(0.3).1;
    let found = solved(&gear).up.unwrap();
    let stall = found.stalls.iter().find(|stall| stall.leg == 1).unwrap();
    assert!(
        matches!(stall.cause, StallCause::Touches { .. }),
        "{stall:?}"
    );
    let progress = stall.place.progress;
    assert!(
        progress > begins + 0.02 && progress < axle(0.7).1,
        "{stall:?}"
    );
    // of the second post alone the contact is certified by itself
    let mut alone = gear.clone();
    alone.legs[1].drive.start_travel = None;
    if let Shape::Solid { points } = &mut alone.legs[1].well[0].shape {
        *points = vec![
            out(second) - wide(second),
            second - wide(second),
            second + wide(second),
            out(second) + wide(second),
        ];
    }
    let exact = contact(&alone, 1);
    assert!(
        (stall.place.travel - exact).abs() < 1e-5,
        "{stall:?} {exact}"
    );
}

#[test]
fn pump_runs_on_against_it_to_its_relief_valve() {
    let run = solved(&under_a_skin()).up.unwrap();
    let relief = 5e6;
    let last = run.samples.last().unwrap();
    assert_eq!(last.pressure, Some(relief));
    assert!(event(&run, None, Kind::ReliefOpen).is_some());
    assert!(event(&run, None, Kind::RunsOn).is_some());
    // I = I0 + (Is − I0)·p/Ps: the motor line of the file.
    let current = 15.0 + (150.0 - 15.0) * relief / 7e6;
    assert!((run.largest_current.unwrap() / current - 1.0).abs() < 1e-12);
    assert!(event(&run, None, Kind::BreakerPassed).is_some());
}

#[test]
fn way_down_starts_where_it_touched() {
    let gear = under_a_skin();
    let travel = contact(&gear, 1);
    let down = solved(&gear).down.unwrap();
    assert_eq!(down.end, RunEnd::Complete);
    let first = &down.samples[0].legs[1];
    assert!((first.place.travel - travel).abs() < 1e-6);
    assert_eq!(first.indication, Indication::InTransit);
    assert!(event(&down, Some(1), Kind::UpOpen).is_none());
    assert!(event(&down, Some(1), Kind::DownMade).is_some());
    for run in [&solved(&gear).up.unwrap(), &down] {
        let f = run.fluid;
        let (gives, takes) = (f.pumped + f.drawn, f.swept + f.relieved);
        assert!((gives / takes - 1.0).abs() < 1e-6, "{f:?}");
    }
    let whole = solved(&gearswing_samples::pack::gear()).down.unwrap();
    assert!(down.fluid.swept < whole.fluid.swept);
}

/// An up switch that makes before the contact hides it from the pilot, not from the run.
#[test]
fn a_switch_that_makes_before_the_contact_does_not_hide_it() {
    let mut gear = under_a_skin();
    gear.legs[1].drive.switches.up = 0.8 * contact(&gear, 1);
    let run = solved(&gear).up.unwrap();
    assert_eq!(run.end, RunEnd::SwitchedOff);
    assert_eq!(
        run.samples.last().unwrap().legs[1].indication,
        Indication::Up
    );
    let touches = event(&run, Some(1), Kind::Touches).is_some();
    assert_eq!(touches, matches!(run.stalls[..], [Stall { leg: 1, .. }]));
    // with the pump stopped by a pressure switch it always comes to the contact
    gear.supply.pressure_switch = Some(4.5e6);
    let run = solved(&gear).up.unwrap();
    assert!(event(&run, Some(1), Kind::Touches).is_some());
    assert!(matches!(run.stalls[..], [Stall { leg: 1, .. }]));
}

#[test]
fn only_the_tire_now_fitted_stops_it() {
    let mut gear = under_a_skin();
    // what only the grown tire reaches, and what touches where the leg stands, stops nothing
    let pose = solve_leg(&gear, 1, &Options::default()).unwrap();
    let top = pose.clearance.pairs.iter();
    let least = |state| {
        let mut of = top.clone().filter(|pair| pair.tire == Some(state));
        of.next().unwrap().tightest.clearance
    };
    let (new, grown) = (least(TireState::New), least(TireState::Grown));
    assert!(grown < new && new < 0.0);
    let y = 0.1 - new + 0.3 * (new - grown);
    gear.legs[1].well = vec![skin_over_the_wheel(1.2, y)];
    assert_eq!(solved(&gear).up.as_ref().unwrap().end, RunEnd::Complete);
}

#[test]
fn electric_actuator_of_a_leg_that_touches_draws_its_locked_current() {
    let gear = on_motors(under_a_skin(), [9e3, 12.0], [0.0, 0.0]);
    let run = solved(&gear).up.unwrap();
    assert_eq!(run.end, RunEnd::Stalled);
    let last = run.samples.last().unwrap();
    assert!((last.current.unwrap() - 40.0).abs() < 1e-9, "{last:?}");
    assert!(run.energy.battery.is_finite() && run.energy.given.is_finite());
}

#[test]
fn a_strut_that_touches_as_it_shortens_stops_there() {
    // A plate just above the tire, which rises by the shortening alone.
    let mut gear = under_a_skin();
    let leg = &mut gear.legs[1];
    let top = leg.strut.axle.y + 0.5 * leg.wheel.tire.diameter;
    let y = top + 0.02;
    leg.well = vec![skin_over_the_wheel(0.5, y)];
    let cycle = solved(&gear);
    let run = cycle.up.as_ref().unwrap();
    let last = run.samples.last().unwrap().legs[1];
    assert!((last.shortened_share - 0.4).abs() < 1e-4, "{last:?}");
    assert!(!last.shortened && last.down, "{last:?}");
    assert!(event(run, Some(1), Kind::ShortenedMade).is_none());
    let down = cycle.down.as_ref().unwrap();
    let first = down.samples[0].legs[1];
    assert!((first.shortened_share - 0.4).abs() < 1e-4, "{first:?}");
    assert_eq!(first.indication, Indication::DownAndLocked);
    assert_eq!(down.end, RunEnd::Complete);
    assert_eq!(down.samples.last().unwrap().legs[1].shortened_share, 0.0);
}

/// A main whose actuator has no stroke left at a place of its swing can't stand beyond it: the number that
/// says so is named, with the travel to which the leg comes.
#[test]
fn a_leg_cannot_stand_beyond_where_it_comes_to() {
    let mut gear = gear();
    let linkage = Linkage::new(&gear.legs[1]);
    let at = |travel: f64| linkage.pose(linkage.progress_at_travel(travel)).unwrap();
    let (down, most) = (at(0.0).actuator_length, at(0.7).actuator_length);
    if most > down {
        gear.legs[1].actuator.longest = most;
    } else {
        gear.legs[1].actuator.shortest = most;
    }
    gear.legs[1].drive.start_travel = Some(0.69);
    let run = solved(&gear).up.unwrap();
    assert!(run.stalls.iter().any(|stall| stall.leg == 1));
    gear.legs[1].drive.start_travel = Some(0.71);
    let error = cycle(&gear, &SupplyOptions::default()).unwrap_err();
    let crate::supply::SupplyError::Faults(faults) = error else {
        panic!("{error:?}")
    };
    let [fault] = &faults.0[..] else {
        panic!("{faults:?}")
    };
    assert_eq!(fault.path, "legs[1].drive.start_travel");
    let crate::faults::FaultKind::NotReached { reaches } = fault.kind else {
        panic!("{fault:?}")
    };
    // an end length may be passed by a micrometer
    assert!((reaches - 0.7).abs() < 1e-4, "{reaches}");
}
