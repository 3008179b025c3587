//! Random sources, lines, switches and accumulators for gears of one to three legs.
use gearswing_gear::model::*;
use gearswing_solver::faults::check_gear;
use gearswing_solver::kinematics::{Linkage, Sweep};
use gearswing_solver::result::{Direction, Run};

use crate::{Draw, Kind, random_gear, with_springs_and_pins, with_well};

/// A sound gear of one to three random legs of any kind, wells around some of them, on a random source;
/// the same for the same `start`.
#[must_use]
pub fn supplied_gear(start: u64) -> Gear {
    (0..1000)
        .map(|retry| drawn(start * 1000 + retry))
        .find(|gear| check_gear(gear).is_ok())
        .expect("a sound gear among a thousand")
}

fn drawn(start: u64) -> Gear {
    let mut draw = Draw::new(start);
    let d = &mut draw;
    let kinds = Kind::all();
    let mut gear = sound_leg(kinds[d.below(kinds.len())], d);
    for _ in 0..d.below(3) {
        let more = sound_leg(kinds[d.below(kinds.len())], d);
        gear.legs.extend(more.legs);
    }
    for (at, leg) in gear.legs.iter_mut().enumerate() {
        leg.name = format!("Leg {}", at + 1);
    }
    if d.either() {
        gear.conditions = Conditions::default();
    }
    let electric = d.below(6) == 0;
    for leg in &mut gear.legs {
        lines(leg, electric, d);
        // no leg stands where it doesn't come to
        let linkage = Linkage::new(leg);
        let sweep = Sweep::new(leg, &linkage, 181);
        let last = sweep.poses.last().map(|pose| pose.place.progress);
        leg.drive.start_travel = leg.drive.start_travel.filter(|travel| {
            let progress = linkage.progress_at_travel(*travel);
            last.is_some_and(|last| progress <= last)
        });
    }
    let source = source(electric, d);
    gear.supply = Supply {
        source,
        battery: battery(d),
        return_pressure: if d.either() { d.between(0.0, 3e5) } else { 0.0 },
        ..gear.supply
    };
    if !electric && d.below(4) == 0 {
        gear.supply.accumulator = Some(accumulator(&gear.supply, d));
    }
    if d.below(3) == 0 {
        gear.supply.pressure_switch = Some(d.between(3e6, 1.2e7));
    }
    gear
}

/// A gear of one leg, which comes all the way up three times in four.
fn sound_leg(kind: Kind, d: &mut Draw) -> Gear {
    let any = d.below(4) == 0;
    (0..100)
        .map(|_| {
            let obstacles = if d.either() { 2 } else { 0 };
            let gear = with_well(random_gear(kind, d), obstacles, d);
            if d.below(4) == 0 {
                with_springs_and_pins(&gear, d)
            } else {
                gear
            }
        })
        .find(|gear| {
            let leg = &gear.legs[0];
            check_gear(gear).is_ok()
                && (any || Sweep::new(leg, &Linkage::new(leg), 61).jams.is_empty())
        })
        .expect("a sound leg among a hundred")
}

fn hole(d: &mut Draw) -> Option<LineOrifice> {
    (d.below(3) > 0).then(|| LineOrifice {
        hole: d.between(0.6e-3, 3e-3),
        discharge: d.between(0.55, 0.8),
    })
}

fn lines(leg: &mut Leg, electric: bool, d: &mut Draw) {
    let before = matches!(leg.strut.shortening, Shortening::BeforeSwing { .. });
    leg.drive = Drive {
        orifice_up: hole(d),
        orifice_down: hole(d),
        strut_jack: (before && d.below(3) > 0).then(|| StrutJack {
            area: d.between(1e-4, 8e-4),
            shorten_pressure: d.between(2e5, 4e6),
            lengthen_pressure: d.between(0.0, 1e6),
        }),
        stage_valve: (d.below(8) == 0).then(|| d.between(5e5, 4e6)),
        electric: electric.then(|| ElectricActuator {
            free_speed: d.between(0.01, 0.1),
            stall_force: d.between(2e3, 3e4),
            rated_voltage: 12.0,
            idle_current: d.between(0.5, 4.0),
            locked_current: d.between(10.0, 60.0),
            back_drive: None,
        }),
        switches: if d.below(4) == 0 {
            Switches {
                shortened: d.between(0.8, 1.0),
                up: d.between(0.9, 1.0),
                down: d.between(0.0, 0.1),
            }
        } else {
            Switches::default()
        },
        start_travel: (d.below(12) == 0).then(|| d.between(0.0, 1.0)),
    };
}

fn source(electric: bool, d: &mut Draw) -> Source {
    if electric {
        return Source::ElectricActuators;
    }
    match d.below(3) {
        0 => Source::ConstantPressure,
        1 => Source::HandPump(HandPump {
            stroke_volume: d.between(2e-6, 2e-5),
            stroke_time: d.between(0.5, 2.5),
            largest_pressure: d.between(4e6, 2e7),
        }),
        _ => {
            let stall_pressure = d.between(6e6, 2e7);
            Source::MotorPump(MotorPump {
                free_flow: d.between(1e-5, 1.2e-4),
                rated_voltage: 12.0,
                stall_pressure,
                no_load_current: d.between(5.0, 20.0),
                stall_current: d.between(60.0, 180.0),
                relief_pressure: d.between(0.3, 1.2) * stall_pressure,
            })
        }
    }
}

fn battery(d: &mut Draw) -> Battery {
    Battery {
        charge: d.between(0.2, 1.0),
        internal_resistance: d.between(0.005, 0.05),
        wire_resistance: d.between(0.0, 0.02),
        breaker_rating: d.either().then(|| d.between(20.0, 90.0)),
        ..Battery::FRESH
    }
}

fn accumulator(supply: &Supply, d: &mut Draw) -> Accumulator {
    let most = match &supply.source {
        Source::MotorPump(pump) => pump.relief_pressure,
        Source::HandPump(hand) => hand.largest_pressure,
        _ => 1.4e7,
    };
    let charged = d.between(0.4, 1.0) * most;
    Accumulator {
        gas_volume: d.between(1e-4, 1.5e-3),
        precharge: d.between(0.2, 0.8) * charged,
        charged,
        exponent: d.between(1.0, 1.6),
    }
}

/// Both runs of a cycle that are there.
pub fn runs(cycle: &gearswing_solver::result::Cycle) -> impl Iterator<Item = (Direction, &Run)> {
    [Direction::Up, Direction::Down]
        .into_iter()
        .filter_map(|way| Some((way, cycle.run(way)?)))
}
