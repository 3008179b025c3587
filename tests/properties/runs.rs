//! Random gears of one to three legs on random sources, followed through time: the light against the
//! place, contact on the way against the run, and no run that is not followed to its end.
//!
//! What is held is what the words mean: down and locked is at down with the knee in its lock; a part that
//! touches by the drawing goes no further. Distances are the solver's own at single poses, which
//! `clearance.rs` holds against a general-purpose library.
use gearswing_gear::model::{Direction, Gear, Leg, MovingPart};
use gearswing_solver::clearance::drawn_clearance_at;
use gearswing_solver::kinematics::{Linkage, Path};
use gearswing_solver::result::{Cycle, LegSample, Phase, Run, RunEventKind, TireState};
use gearswing_solver::supply::{SupplyError, SupplyOptions, cycle};
use gearswing_solver::tires::TireSizes;
use gearswing_tests::supplied_gear;
use gearswing_tests::supplies::runs;

/// Gears of the short check, and of the long one.
const SHORT: u64 = 300;
const LONG: u64 = 10_000;

/// Gears of the long check that the short one looks at too.
#[rustfmt::skip]
const NAMED: [u64; 19] = [
    // legs that creep for minutes as the pump fills an accumulator, or against a load that all but jumps
    464, 588, 1010, 1224, 1399, 1439, 1474, 1479, 1542, 2668, 3301,
    // an event beside the start of another leg
    6625,
    // a brace that does not close between two stations
    1818, 4112,
    // pins that bind on the way down, before the strut lengthens
    6202, 6862,
    // a wheel that comes free as the strut shortens, and touches again
    8721,
    // a brace that goes no further, short of which a step does not end by its speed alone
    4410, 8592,
];

/// Depth that counts as contact (m): places on the way are straight lines between its stations.
const DEEP: f64 = 2e-5;

/// Skew of the trunnions of every third gear (rad).
const SKEW: f64 = 0.14;

fn count() -> u64 {
    match std::env::var_os("GEARSWING_LONG") {
        Some(_) => LONG,
        None => SHORT,
    }
}

#[test]
fn light_contact_and_end_of_random_runs() {
    let (mut ways, mut stops, mut gave_up, mut wrong) = (0, 0, Vec::new(), Vec::new());
    let named = NAMED.into_iter().filter(|start| *start >= count());
    for start in (0..count()).chain(named) {
        let mut gear = supplied_gear(start);
        if start % 3 == 0 {
            // what a skew may take off an answer stops no run
            for leg in &mut gear.legs {
                leg.out_of_plane.trunnion_skew = Some(SKEW);
            }
        }
        let found = match cycle(&gear, &SupplyOptions::default()) {
            Ok(found) => found,
            Err(SupplyError::NoFlow { .. } | SupplyError::NoStroke) => continue,
            Err(error) => panic!("{start}: {error}"),
        };
        followed(&found, start, &mut gave_up);
        ways += runs(&found).count();
        // every gear is looked at, and those that fail are named together
        match std::panic::catch_unwind(|| held(&gear, &found)) {
            Ok(stopped) => stops += stopped,
            Err(_) => wrong.push(start),
        }
    }
    assert!(
        gave_up.is_empty() && wrong.is_empty(),
        "supplied gears given up: {gave_up:?}, wrong: {wrong:?}"
    );
    let count = usize::try_from(count()).unwrap();
    assert!(
        ways > count && stops > count / 30,
        "{ways} ways, {stops} stops"
    );
}

/// Everything that is held of one gear; how many of its legs touch on their way up.
fn held(gear: &Gear, found: &Cycle) -> usize {
    for (way, run) in runs(found) {
        for (at, leg) in gear.legs.iter().enumerate() {
            lights(leg, at, way, run);
        }
        only_locked_legs_stop_the_pump(gear, way, run);
        balances(gear, run);
    }
    let legs = gear.legs.iter().enumerate();
    found.up.as_ref().map_or(0, |up| {
        legs.filter(|(at, leg)| touches_nothing(leg, *at, up))
            .count()
    })
}

/// Every way ends, or nothing moves on it.
fn followed(found: &Cycle, start: u64, gave_up: &mut Vec<u64>) {
    let up = found.up_error.iter().map(|error| (error, false));
    let down = found.down_error.iter().map(|error| (error, true));
    for (error, is_down) in up.chain(down) {
        let ends = match error {
            SupplyError::NothingMoves { .. } => true,
            // no leg comes down from where it has come
            SupplyError::NoStroke => is_down,
            _ => false,
        };
        if !ends {
            eprintln!("supplied gear {start}: {error}");
            gave_up.push(start);
        }
    }
}

/// Progress up to which a leg is down with its knee in the lock.
fn locked_until(path: &Path) -> f64 {
    path.phases()
        .find(|(phase, _)| *phase != Phase::Shorten)
        .map_or(0.0, |(_, begins)| begins)
}

/// Whether a down switch that is set to close before the lock may be closed there.
fn is_set_early(leg: &Leg, sample: &LegSample) -> bool {
    let down = leg.drive.switches.down;
    down > 0.0 && sample.place.travel <= down + 1e-6
}

fn lights(leg: &Leg, at: usize, way: Direction, run: &Run) {
    let locked = locked_until(&Linkage::new(leg).path());
    for sample in &run.samples {
        let one = &sample.legs[at];
        let in_lock = one.place.progress <= locked;
        if one.down {
            assert!(
                in_lock || is_set_early(leg, one),
                "leg {at} shown down and locked selected {way:?} after {} s: {:?}",
                sample.time,
                one.place
            );
        } else {
            assert!(
                !in_lock || leg.drive.switches.down > 0.0 || way == Direction::Down,
                "leg {at} in its lock and not shown: {one:?}"
            );
        }
        if one.up {
            let up = leg.drive.switches.up;
            assert!(one.place.travel >= up - 1e-6, "leg {at} shown up: {one:?}");
        }
    }
    let done = |kind| {
        run.events
            .iter()
            .any(|e| e.leg == Some(at) && e.kind == kind)
    };
    let last = &run.samples.last().unwrap().legs[at];
    if way == Direction::Down && done(RunEventKind::SwingDone) {
        assert!(last.down, "leg {at} is home and dark: {last:?}");
    }
}

fn only_locked_legs_stop_the_pump(gear: &Gear, way: Direction, run: &Run) {
    let stopped = |e: &&gearswing_solver::result::RunEvent| e.kind == RunEventKind::SwitchesStop;
    let Some(event) = run.events.iter().find(stopped) else {
        return;
    };
    let sample = run.samples.iter().rfind(|s| s.time <= event.time).unwrap();
    for (leg, one) in gear.legs.iter().zip(&sample.legs) {
        let locked = locked_until(&Linkage::new(leg).path());
        assert!(
            way == Direction::Up || one.place.progress <= locked || is_set_early(leg, one),
            "the down switches stop it at {:?}",
            one.place
        );
    }
}

/// Fluid that comes is fluid that goes (conservation of an incompressible fluid).
fn balances(gear: &Gear, run: &Run) {
    let f = run.fluid;
    let (gives, takes) = (f.pumped + f.drawn + f.accumulator, f.swept + f.relieved);
    let whole = gear.legs.len() as f64 * 1e-4;
    assert!(
        (gives - takes).abs() <= 1e-6 * takes + 1e-9 * whole,
        "{f:?}"
    );
}

/// Whether something stops a leg on its way up; no part goes into its well before.
fn touches_nothing(leg: &Leg, at: usize, up: &Run) -> bool {
    if leg.well.is_empty() {
        return false;
    }
    let (linkage, sizes) = (Linkage::new(leg), TireSizes::of(&leg.wheel.tire));
    // what stands in contact where the leg starts stops nothing until it has come free
    let mut stood: Option<Vec<(MovingPart, usize)>> = None;
    let mut before = f64::NEG_INFINITY;
    for sample in &up.samples {
        let place = sample.legs[at].place;
        if place.progress <= before {
            continue;
        }
        before = place.progress;
        let pose = linkage.pose(place.progress).unwrap();
        let all = drawn_clearance_at(leg, &sizes, &pose).unwrap();
        let fitted = all.iter().filter(|one| one.tire != Some(TireState::Grown));
        let deep: Vec<(MovingPart, usize)> = fitted
            .filter(|one| one.tightest.clearance <= -DEEP)
            .map(|one| (one.part, one.obstacle))
            .collect();
        let stood = stood.get_or_insert_with(|| {
            let touching = all.iter().filter(|one| one.tightest.clearance <= 0.0);
            touching.map(|one| (one.part, one.obstacle)).collect()
        });
        for pair in &deep {
            assert!(
                stood.contains(pair),
                "leg {at} is in its well after {} s: {pair:?} at {place:?}",
                sample.time
            );
        }
        stood.retain(|pair| {
            let same = |one: &&gearswing_solver::clearance::PoseClearance| {
                (one.part, one.obstacle) == *pair && one.tire != Some(TireState::Grown)
            };
            all.iter()
                .find(same)
                .is_some_and(|one| one.tightest.clearance <= 0.0)
        });
    }
    up.events
        .iter()
        .any(|e| e.leg == Some(at) && e.kind == RunEventKind::Touches)
}
