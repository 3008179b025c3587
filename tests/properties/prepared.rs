//! What is taken over from before a change is what would be worked out anew: every number, coordinate and
//! choice of a gear is changed by itself.
use gearswing_gear::field::{Field, Kind, Path};
use gearswing_gear::model::{Gear, Point};
use gearswing_solver::supply::{SupplyOptions, cycle, cycle_prepared};
use gearswing_solver::{Options, PreparedGear, solve_leg, solve_prepared};
use gearswing_tests::supplied_gear;

/// Random gears of the short check, and of the long one.
const SHORT: u64 = 2;
const LONG: u64 = 60;

/// Every so manieth change is followed against time, too.
const TIMED: usize = 25;

/// A number becomes so many times as large (ratio).
const FACTORS: [f64; 2] = [1.003, 0.85];

/// Entries of lists that are changed.
const ENTRIES: usize = 2;

/// The gear with end lengths of the actuator that stop a leg halfway.
fn halfway(before: &PreparedGear<'_>, leg: usize) -> Vec<(Path, Gear)> {
    let gear = before.gear();
    let Ok(prepared) = before.leg(leg) else {
        return Vec::new();
    };
    let [first, .., last] = &prepared.sweep().poses[..] else {
        panic!("{leg} does not move")
    };
    let [down, up] = [first, last].map(|pose| pose.actuator_length);
    let field = match up > down {
        true => Field::ExtendedLength,
        false => Field::RetractedLength,
    };
    let path = field.of_leg(leg);
    let mut changed = gear.clone();
    path.set_number(&mut changed, Some(0.5 * (down + up)))
        .unwrap();
    vec![(path, changed)]
}

fn changes(before: &PreparedGear<'_>) -> Vec<(Path, Gear)> {
    let gear = before.gear();
    let mut changes: Vec<_> = (0..gear.legs.len())
        .flat_map(|leg| halfway(before, leg))
        .collect();
    let mut try_one = |path: Path, change: &mut dyn FnMut(&mut Gear) -> Option<()>| {
        let mut changed = gear.clone();
        if change(&mut changed).is_some() && changed != *gear {
            changes.push((path, changed));
        }
    };
    for &field in Field::ALL {
        for path in field.places(gear.legs.len(), ENTRIES) {
            match field.info().kind {
                Kind::Number { .. } => {
                    for factor in FACTORS {
                        try_one(path, &mut |gear| {
                            let value = path.number(gear)?.unwrap_or(0.1);
                            path.set_number(gear, Some(factor * value + 1e-4)).ok()
                        });
                    }
                }
                Kind::Point => try_one(path, &mut |gear| {
                    let point = path.at(gear)?;
                    path.set_point(gear, point + Point::new(1e-3, 2e-3).coords)
                        .ok()
                }),
                Kind::Outline => try_one(path, &mut |gear| {
                    path.outline_mut(gear)?.first_mut()?.y += 1e-3;
                    Some(())
                }),
                Kind::Text => try_one(path, &mut |gear| path.set_text(gear, "other").ok()),
                Kind::Choice(keys) => {
                    for key in keys {
                        try_one(path, &mut |gear| path.choose(gear, key));
                    }
                }
                Kind::Set(keys) => {
                    for key in keys {
                        try_one(path, &mut |gear| path.switch(gear, key, true));
                    }
                }
            }
        }
    }
    changes
}

/// Everything of a gear is worked out before the change, so that there is something to take over.
/// Few stations are shown: a table of its own, beside that of all stations on which the answers rest.
fn options() -> Options {
    Options {
        stations: 61,
        ..Options::default()
    }
}

fn worked_out(gear: &Gear) -> PreparedGear<'static> {
    let prepared = PreparedGear::from(gear.clone());
    for leg in 0..gear.legs.len() {
        // a gear with faults has nothing to take over
        let _ = solve_prepared(&prepared, leg, &options());
    }
    prepared
}

#[test]
fn what_is_taken_over_is_what_is_worked_out_anew() {
    let count = match std::env::var_os("GEARSWING_LONG") {
        Some(_) => LONG,
        None => SHORT,
    };
    let mut solved = 0;
    // one of them at least whose legs share their source
    let shares = |start: &u64| supplied_gear(*start).rests_on_others(0);
    for start in (0..count).chain((count..).find(shares)) {
        let gear = supplied_gear(start);
        let before = worked_out(&gear);
        for (index, (path, changed)) in changes(&before).into_iter().enumerate() {
            let after = PreparedGear::after(changed.clone(), &before);
            // the legs beside it, where they share something with it
            let legs = (0..changed.legs.len()).filter(|leg| {
                *leg == path.leg || changed.rests_on_others(*leg) || gear.rests_on_others(*leg)
            });
            for leg in legs {
                let options = options();
                let known = solve_prepared(&after, leg, &options);
                solved += usize::from(known.is_ok());
                assert!(
                    known == solve_leg(&changed, leg, &options),
                    "gear {start}, {path}, leg {leg}"
                );
            }
            if index % TIMED == 0 {
                let options = SupplyOptions::default();
                let known = cycle_prepared(after, &options);
                assert!(known == cycle(&changed, &options), "gear {start}, {path}");
            }
        }
    }
    // most changes leave a gear that can be worked out
    assert!(solved > 100 * usize::try_from(count).unwrap(), "{solved}");
}

/// Whether the sweep of a leg before a change is that after it, and not one like it.
fn is_taken_over(before: &PreparedGear<'_>, change: impl Fn(&mut Gear)) -> bool {
    let mut changed = before.gear().clone();
    change(&mut changed);
    assert!(changed != *before.gear());
    let after = PreparedGear::after(changed, before);
    let sweep = |prepared: &PreparedGear<'_>| std::ptr::from_ref(prepared.leg(0).unwrap().sweep());
    sweep(before) == sweep(&after)
}

#[test]
fn a_leg_is_swept_anew_only_where_it_moves_otherwise() {
    let before = worked_out(&supplied_gear(0));
    let loads: [fn(&mut Gear); 4] = [
        |gear| gear.legs[0].wheel.mass += 1.0,
        |gear| gear.legs[0].name.push('x'),
        |gear| gear.supply.return_pressure += 1e3,
        |gear| gear.clearance_rule.tire_new = Some(0.03),
    ];
    for (at, change) in loads.into_iter().enumerate() {
        assert!(is_taken_over(&before, change), "{at}");
    }
    assert!(!is_taken_over(&before, |gear| gear.legs[0].swing_up *= 0.99));
}

/// A change after a change, among them of the rule for clearances, and of what the legs share.
#[test]
fn changes_one_after_the_other_leave_nothing_behind() {
    let gear = supplied_gear(1);
    let chain: [fn(&mut Gear); 5] = [
        |gear| gear.clearance_rule.tire_new = Some(0.03),
        |gear| gear.legs[0].wheel.mass += 1.0,
        |gear| gear.clearance_rule.tire_new = None,
        |gear| gear.legs.rotate_left(1),
        |gear| {
            gear.legs.remove(0);
        },
    ];
    let mut known = worked_out(&gear);
    let mut changed = gear;
    for (at, change) in chain.into_iter().enumerate() {
        if changed.legs.len() < 2 && at > 2 {
            break;
        }
        change(&mut changed);
        known = PreparedGear::after(changed.clone(), &known);
        for leg in 0..changed.legs.len() {
            let options = Options::default();
            let found = solve_prepared(&known, leg, &options);
            assert!(found == solve_leg(&changed, leg, &options), "{at} {leg}");
        }
    }
}
