//! The down and locked light against the place, and contact, while the knee comes out of its lock.
use super::super::{SupplyOptions, cycle};
use crate::kinematics::Linkage;
use crate::model::*;
use crate::result::{Cycle, Indication, Phase, RunEnd, RunEventKind as Kind, StallCause};
use gearswing_samples::pack::{gear, on_motors, skin_over_the_wheel};

fn solved(gear: &Gear) -> Cycle {
    cycle(gear, &SupplyOptions::default()).unwrap()
}

/// One leg whose actuator drives the knee through its lock; no jack shortens its strut.
fn through_center() -> Gear {
    let mut gear = gear();
    gear.legs.truncate(1);
    let leg = &mut gear.legs[0];
    leg.strut.shortening = Shortening::None;
    leg.drive.strut_jack = None;
    gear
}

/// The same with an actuator that is out of stroke half-way out of the lock.
fn stuck_half_way() -> Gear {
    let mut gear = through_center();
    let leg = &mut gear.legs[0];
    let linkage = Linkage::new(leg);
    let length = |progress: f64| linkage.pose(progress).unwrap().actuator_length;
    let (down, half, up) = (length(-1.0), length(-0.5), length(1.0));
    if up > down {
        leg.actuator.longest = half;
    } else {
        leg.actuator.shortest = half;
    }
    gear
}

#[test]
fn a_leg_half_out_of_its_lock_is_not_shown_down_and_locked() {
    let cycle = solved(&stuck_half_way());
    let up = cycle.up.unwrap();
    assert_eq!(up.end, RunEnd::Stalled);
    let last = up.samples.last().unwrap().legs[0];
    assert!(
        last.place.phase == Phase::Unlock && last.place.travel < 0.0,
        "{last:?}"
    );
    assert_eq!(last.indication, Indication::InTransit);
    let down = cycle.down.unwrap();
    let first = down.samples[0].legs[0];
    // an end length may be passed by a micrometer
    assert!((first.place.progress + 0.5).abs() < 1e-2, "{first:?}");
    assert_eq!(first.indication, Indication::InTransit);
    assert_eq!(down.end, RunEnd::Complete);
    let home = down.samples.last().unwrap().legs[0];
    assert!(home.down && home.place.progress == -1.0, "{home:?}");
    let kinds: Vec<Kind> = down.events.iter().map(|e| e.kind).collect();
    assert!(kinds.contains(&Kind::DownMade) && kinds.contains(&Kind::SwitchesStop));
    assert!(down.fluid.swept > 0.0);
}

#[test]
fn contact_while_unlocking_stops_the_leg() {
    let mut gear = through_center();
    let free = solved(&gear).up.unwrap();
    assert_eq!(free.end, RunEnd::Complete);
    // past down the tire comes against a wall that it does not touch at down
    let linkage = Linkage::new(&gear.legs[0]);
    let (down, straight) = (linkage.pose(-1.0).unwrap(), linkage.pose(0.0).unwrap());
    let past = straight.axle - down.axle;
    assert!(straight.place.travel < 0.0);
    let leg = &mut gear.legs[0];
    let mut wall = skin_over_the_wheel(0.5, 0.0);
    assert_eq!(leg.view, View::Front);
    let half = 0.5 * leg.wheel.tire.width;
    let toward = past.x.signum();
    let x = down.axle.x + toward * half + 0.5 * past.x;
    let y = down.axle.y;
    wall.shape = Shape::Surface {
        points: vec![
            Point::new(x, y - 0.3 * toward),
            Point::new(x, y + 0.3 * toward),
        ],
    };
    leg.well = vec![wall];
    let found = solved(&gear).up.unwrap();
    assert_eq!(found.end, RunEnd::Stalled, "{:?}", found.events);
    let stall = found.stalls[0];
    assert!(
        matches!(stall.cause, StallCause::Touches { .. }),
        "{stall:?}"
    );
    assert_eq!(stall.place.phase, Phase::Unlock);
    let last = found.samples.last().unwrap().legs[0];
    assert_eq!(last.indication, Indication::InTransit);
}

/// A device of its own has the knee out of its lock as soon as the swing is selected, also where the
/// actuator then moves nothing.
#[test]
fn a_leg_that_its_device_has_unlocked_is_in_transit() {
    let mut gear = through_center();
    let mut other = gear.legs[0].clone();
    let leg = &mut gear.legs[0];
    leg.actuator.attach = Point::new(-0.02, -0.2);
    leg.actuator.mount = Point::new(-0.4, 0.1);
    leg.actuator.attach_to = AttachTo::Leg;
    (leg.actuator.shortest, leg.actuator.longest) = (0.05, 3.0);
    leg.actuator.body_length = 0.04;
    if let Brace::Folding(brace) = &mut leg.brace {
        brace.unlocked_by = UnlockedBy::Separate;
    }
    leg.wheel.mass = 4_000.0;
    other.name = "Other".into();
    gear.legs.push(other);
    let up = solved(&gear).up.unwrap();
    let last = up.samples.last().unwrap().legs[0];
    assert_eq!(last.indication, Indication::InTransit);
    assert!(
        last.place.progress > 0.0 && last.place.travel < 0.1,
        "{last:?}"
    );
}

/// Nobody's hand is stopped by a switch, nor is a rig; a motor is.
#[test]
fn position_switches_stop_motors_only() {
    let mut gear = gear();
    for leg in &mut gear.legs {
        leg.drive.switches.up = 0.9;
    }
    let stopped = |gear: &Gear| {
        let up = solved(gear).up.unwrap();
        let stop = up.events.iter().any(|e| e.kind == Kind::SwitchesStop);
        (up.end, stop, up.strokes)
    };
    let (end, stop, strokes) = stopped(&gear);
    assert_eq!((end, stop, strokes), (RunEnd::SwitchedOff, true, None));
    let (end, stop, _) = stopped(&on_motors(
        {
            let mut gear = gear.clone();
            for leg in &mut gear.legs {
                leg.strut.shortening = Shortening::None;
                leg.drive.strut_jack = None;
            }
            gear
        },
        [2e4, 12.0],
        [0.0, 0.0],
    ));
    assert_eq!((end, stop), (RunEnd::SwitchedOff, true));
    gear.supply.source = Source::HandPump(HandPump {
        stroke_volume: 1e-5,
        stroke_time: 1.0,
        largest_pressure: 9e6,
    });
    let up = solved(&gear).up.unwrap();
    assert_eq!(up.end, RunEnd::Complete);
    assert!(up.events.iter().all(|e| e.kind != Kind::SwitchesStop));
    let strokes = up.fluid.pumped / 1e-5;
    assert!((up.strokes.unwrap() / strokes - 1.0).abs() < 1e-12 && strokes > 10.0);
    gear.supply.source = Source::ConstantPressure;
    let (end, stop, strokes) = stopped(&gear);
    assert_eq!((end, stop, strokes), (RunEnd::Complete, false, None));
}
