//! The knee put in as it is measured: both links and how far it stands off the line. The solver's own offset is what
//! was typed.
use gearswing_app::msg::{Field, History, Msg};
use gearswing_gear::model::{Brace, FoldingBrace, Gear, KneeGiven};
use gearswing_solver::{Options, solve_leg};

use crate::support::Desk;

fn brace(gear: &Gear, leg: usize) -> FoldingBrace {
    match &gear.legs[leg].brace {
        Brace::Folding(brace) => brace.clone(),
        other => panic!("{other:?}"),
    }
}

fn path(leg: usize, key: &str) -> String {
    format!("legs[{leg}].brace.folding.{key}")
}

const TYPED: [(&str, &str, f64); 3] = [
    ("upper_length_m", "10 3/8", 10.375),
    ("lower_length_m", "8", 8.0),
    ("knee_offset_m", "0.094", 0.094),
];

/// Chooses how the knee of a leg is put in.
fn given(desk: &mut Desk, leg: usize, option: &str) {
    desk.send(Msg::Field(Field::Choose {
        path: path(leg, "knee_given"),
        option: option.to_owned(),
    }));
}

/// What is chosen has its rows, and no number changes by it; the file keeps it.
#[test]
fn the_knee_is_put_in_one_way_at_a_time() {
    let mut desk = Desk::demo();
    let before = desk.gear();
    let rows = |desk: &mut Desk| {
        desk.row(&path(1, "leg_attach_m[0]"));
        let groups = desk.page().groups;
        let rows = groups.iter().flat_map(|group| &group.rows);
        let has = |key: &str| rows.clone().any(|row| row.path == path(1, key));
        [
            has("knee_m[0]"),
            has("knee_m[1]"),
            has("upper_length_m"),
            has("knee_offset_m"),
        ]
    };
    assert_eq!(rows(&mut desk), [true, true, false, false]);
    given(&mut desk, 1, "measured");
    assert_eq!(rows(&mut desk), [false, false, true, true]);
    assert_eq!(brace(&desk.gear(), 1).knee, brace(&before, 1).knee);
    let again = desk.reloaded();
    assert_eq!(brace(&again.gear(), 1).knee_given, KneeGiven::Measured);
    given(&mut desk, 1, "points");
    assert_eq!(desk.gear().legs, before.legs);
}

#[test]
fn what_is_typed_is_read_back_in_any_order() {
    for leg in 0..3 {
        for order in [[0, 1, 2], [2, 1, 0], [1, 2, 0]] {
            let mut desk = Desk::demo();
            let before = brace(&desk.gear(), leg);
            given(&mut desk, leg, "measured");
            for at in order {
                let (key, text, _) = TYPED[at];
                desk.enter(&path(leg, key), text);
            }
            let now = brace(&desk.gear(), leg);
            let lengths = [
                (now.knee - now.airframe_pivot).norm(),
                (now.leg_attach - now.knee).norm(),
            ];
            for (length, (key, text, inches)) in lengths.into_iter().zip(TYPED) {
                assert!(
                    (length - inches * 0.0254).abs() < 1e-14,
                    "leg {leg} {key}: {length}"
                );
                assert_eq!(desk.row(&path(leg, key)).value, text);
            }
            // as the solver sees it
            let result = solve_leg(desk.state.gear(), leg, &Options::default()).unwrap();
            let offset = result.lock.over_centre.unwrap();
            assert!(
                (offset - 0.094 * 0.0254).abs() < 1e-14,
                "leg {leg}: {offset}"
            );
            // the pivot stays, the attach point goes along the line, the knee stays on its side
            assert_eq!(now.airframe_pivot, before.airframe_pivot);
            let (was, is) = (
                before.leg_attach - before.airframe_pivot,
                now.leg_attach - now.airframe_pivot,
            );
            assert!(was.normalize().perp(&is.normalize()).abs() < 1e-14);
            let side = |brace: &FoldingBrace| {
                (brace.leg_attach - brace.airframe_pivot).perp(&(brace.knee - brace.airframe_pivot))
            };
            assert_eq!(side(&before).signum(), side(&now).signum());
        }
    }
}

#[test]
fn a_measure_that_cannot_be_is_not_taken_and_said() {
    let mut desk = Desk::demo();
    given(&mut desk, 1, "measured");
    let before = desk.gear();
    let offset = path(1, "knee_offset_m");
    desk.enter(&offset, "30");
    assert_eq!(desk.gear(), before);
    assert!(
        desk.page()
            .notices
            .iter()
            .any(|notice| notice.text.contains("could not close"))
    );
    assert_ne!(desk.row(&offset).value, "30");
    desk.enter(&path(1, "upper_length_m"), "-3");
    desk.enter(&path(1, "lower_length_m"), "0");
    assert_eq!(desk.gear(), before);
    // one step back
    desk.enter(&offset, "0.1");
    assert_ne!(desk.gear(), before);
    desk.send(Msg::History(History::Undo));
    assert_eq!(desk.gear(), before);
}

/// With the knee put in by its links, an end of the brace that is moved leaves the links as long as they are; the knee
/// goes to where they close (law of cosines), and stays where they don't reach.
#[test]
fn measured_links_stay_as_long_when_an_end_is_moved() {
    let mut desk = Desk::demo();
    given(&mut desk, 1, "measured");
    let [upper, lower, _] = brace(&desk.gear(), 1).measured();
    let y = desk.row(&path(1, "leg_attach_m[1]")).value;
    for to in ["-9 3/4", "-9.9"] {
        desk.enter(&path(1, "leg_attach_m[1]"), to);
        let now = brace(&desk.gear(), 1);
        let [is_upper, is_lower, _] = now.measured();
        assert!(
            (is_upper - upper).abs() < 1e-12 && (is_lower - lower).abs() < 1e-12,
            "{to}"
        );
    }
    desk.enter(&path(1, "leg_attach_m[1]"), &y);
    let knee = brace(&desk.gear(), 1).knee;
    desk.enter(&path(1, "leg_attach_m[1]"), "-80");
    assert_eq!(brace(&desk.gear(), 1).knee, knee);
}
