//! Where the pressure ceases to suffice is the place itself, not the station behind it.
use crate::solve::{Options, solve_leg};
use gearswing_samples::pack::gear;

#[test]
fn a_stall_is_told_where_it_begins_on_any_table() {
    let mut gear = gear();
    gear.supply.available_pressure = 2.6e6;
    let found = |stations: usize| {
        let options = Options {
            stations,
            ..Options::default()
        };
        solve_leg(&gear, 2, &options).unwrap()
    };
    let (some, many) = (found(721), found(3_001));
    let (a, b) = (some.force.stalls_at.unwrap(), many.force.stalls_at.unwrap());
    assert!((a.progress - b.progress).abs() < 1e-8, "{a:?} {b:?}");
    // the stations beside it need less and more
    let needed = |beyond: bool| {
        let mut stations = many.stations.iter();
        let beside = |progress: f64| (progress >= b.progress) == beyond;
        let found = if beyond {
            stations.find(|s| beside(s.progress))
        } else {
            stations.rfind(|s| beside(s.progress))
        };
        found.and_then(|s| s.force?.retract_pressure).unwrap()
    };
    assert!(needed(false) <= 2.6e6 && needed(true) >= 2.6e6);
    assert!((needed(true) / needed(false) - 1.0).abs() < 1e-2);
    for case in &some.force.cases {
        let other = many.force.stalls_in(case.case);
        let off = some.force.stalls_in(case.case).zip(other);
        assert!(off.is_none_or(|(a, b)| (a.progress - b.progress).abs() < 1e-8));
    }
}
