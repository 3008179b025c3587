//! Switches, samples and lights of a run at its start, on its way and at its end.
use super::super::finish::thin;
use super::gears::{solved, time};
use crate::model::*;
use crate::result::{Indication, RunEventKind as Kind};
use gearswing_samples::pack::gear;

/// Thinned samples keep the first and the last.
#[test]
fn the_last_sample_stays() {
    let one = solved(&gear()).up.unwrap().samples[0].clone();
    let mut samples = Vec::new();
    for at in 0..2002 {
        let mut sample = one.clone();
        sample.time = f64::from(at);
        samples.push(sample);
    }
    thin(&mut samples);
    assert_eq!(samples.first().unwrap().time, 0.0);
    assert_eq!(samples.last().unwrap().time, 2001.0);
}

/// A leg that starts half-way up opens no switch of its down position.
#[test]
fn a_leg_on_its_way_opens_nothing() {
    let mut gear = gear();
    gear.legs[0].drive.start_travel = Some(0.5);
    let up = solved(&gear).up.unwrap();
    assert!(
        !up.events
            .iter()
            .any(|e| e.leg == Some(0) && e.kind == Kind::DownOpen)
    );
}

/// When its swing down is done, a leg stands at down.
#[test]
fn after_its_swing_a_leg_is_down() {
    let down = solved(&gear()).down.unwrap();
    for leg in 0..3 {
        let done = time(&down, leg, Kind::SwingDone);
        let last = down.samples.iter().rfind(|s| s.time == done).unwrap();
        assert!(last.legs[leg].place.travel <= 1e-9, "{:?}", last.legs[leg]);
    }
}

/// A strut that does not shorten has no switch to open.
#[test]
fn a_strut_that_does_not_shorten_has_no_switch() {
    let mut gear = gear();
    for leg in &mut gear.legs {
        leg.drive.strut_jack = None;
        leg.strut.shortening = Shortening::None;
    }
    let down = solved(&gear).down.unwrap();
    assert!(
        !down.events.iter().any(|e| e.kind == Kind::ShortenedOpen),
        "{:?}",
        down.events
    );
}

/// Before anything moves, a gear that is up shows so.
#[test]
fn a_gear_that_has_not_moved_shows_up() {
    let down = solved(&gear()).down.unwrap();
    for leg in &down.samples[0].legs {
        assert_eq!(leg.indication, Indication::Up);
    }
}

/// A leg moves before its switch opens: places between are among the samples.
#[test]
fn a_leg_moves_before_its_switch_opens() {
    let mut gear = gear();
    for leg in &mut gear.legs {
        leg.drive.switches.up = 0.8;
    }
    let down = solved(&gear).down.unwrap();
    let between = |s: &&crate::result::Sample| (0.85..0.98).contains(&s.legs[1].place.travel);
    assert!(down.samples.iter().any(|s| between(&s)));
}

/// The switch of the strut-shortening cylinder closes at its end and opens as soon as it is left.
#[test]
fn switch_of_a_jack() {
    let found = solved(&gear());
    let (up, down) = (found.up.unwrap(), found.down.unwrap());
    for leg in 0..3 {
        let made = time(&up, leg, Kind::ShortenedMade);
        assert!((made - time(&up, leg, Kind::StrutDone)).abs() < 1e-6);
        assert!(time(&down, leg, Kind::ShortenedOpen) < time(&down, leg, Kind::StrutDone) - 1e-3);
    }
}

/// Something in the file has to say how fast the gear moves.
#[test]
fn what_has_times() {
    let mut gear = gear();
    assert!(crate::supply::is_timed(&gear), "a pump");
    gear.supply.source = Source::ConstantPressure;
    gear.supply.accumulator = None;
    for leg in &mut gear.legs {
        leg.drive.orifice_up = None;
    }
    assert!(!crate::supply::is_timed(&gear), "a pressure alone");
    let orifice = LineOrifice {
        hole: 1e-3,
        discharge: 0.7,
    };
    gear.legs[0].drive.orifice_up = Some(orifice);
    assert!(!crate::supply::is_timed(&gear), "one leg's orifice");
    for leg in &mut gear.legs {
        leg.drive.orifice_up = Some(orifice);
    }
    assert!(crate::supply::is_timed(&gear), "orifices");
    gear.legs.clear();
    assert!(!crate::supply::is_timed(&gear), "nothing to move");
}
