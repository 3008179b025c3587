//! Gear file and link bring back every bit of a gear, and so of its results.
use gearswing_gearfile::link::{Shared, decode, encode};
use gearswing_gearfile::{read, to_text};
use gearswing_tests::{cases, solve};

#[test]
fn file_and_link_keep_every_bit() {
    for case in cases(2, 2, 60) {
        let result = solve(&case.gear, 61);
        let file = read(&to_text(&case.gear).unwrap()).unwrap();
        assert_eq!(file, case.gear);
        let shared = Shared {
            progress: 1.0 / 3.0,
            ..Shared::of(case.gear.clone())
        };
        let link = decode(&encode(&shared).unwrap()).unwrap();
        assert_eq!(link, shared);
        for again in [&file, &link.gear] {
            // equal numbers could still be 0 and −0: their text tells them apart
            assert_eq!(format!("{again:?}"), format!("{:?}", case.gear));
            let again = solve(again, 61);
            assert_eq!(format!("{again:?}"), format!("{result:?}"));
        }
    }
}
