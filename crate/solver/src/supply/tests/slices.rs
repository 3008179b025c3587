//! A gear that is followed in parts comes out as one that is followed at once.
use super::super::{Cycling, SupplyError, SupplyOptions, cycle};
use super::tired::tired;
use crate::model::Gear;
use crate::result::Cycle;
use gearswing_samples::pack::gear;

/// In parts of so many steps, and how many parts they were.
fn in_parts(
    gear: &Gear,
    options: &SupplyOptions,
    steps: usize,
) -> (Result<Cycle, SupplyError>, usize) {
    let mut cycling = Cycling::new(gear.clone().into(), options);
    for parts in 1..1_000_000 {
        if let Some(done) = cycling.advance(steps) {
            return (done, parts);
        }
    }
    panic!("it never ends");
}

#[test]
fn the_parts_change_nothing() {
    let mut none = gear();
    none.legs.clear();
    for gear in [gear(), tired(), none] {
        for on_jacks in [false, true] {
            let options = SupplyOptions {
                on_jacks,
                ..SupplyOptions::default()
            };
            let whole = cycle(&gear, &options);
            for steps in [1, 7, 100_000] {
                assert_eq!(in_parts(&gear, &options, steps).0, whole);
            }
        }
    }
}

/// A part is short: the way of one leg, or its steps.
#[test]
fn there_are_many_parts() {
    let gear = gear();
    let options = SupplyOptions::default();
    let (found, parts) = in_parts(&gear, &options, 1);
    let found = found.unwrap();
    let samples = [found.up, found.down].map(|run| run.unwrap().samples.len());
    assert!(
        parts > samples.iter().sum::<usize>() / 2,
        "{parts} parts, {samples:?}"
    );
    assert!(parts > in_parts(&gear, &options, 50).1);
}
