//! In parts and as bytes it comes to what the solver says in one piece.
use gearswing_gear::model::Gear;
use gearswing_gearfile::to_text;
use gearswing_samples::fixtures::files;
use gearswing_samples::full::full_gears;
use gearswing_solver::stop::explain_stop;
use gearswing_solver::supply::{SupplyOptions, cycle};
use gearswing_work::{Found, Part, Unreadable, Working, cases, from_bytes, is_wanted, to_bytes};

/// The demo, every gear of the stops and of the fixtures without times, and gears that have everything.
fn gears() -> Vec<(String, Gear)> {
    let mut gears: Vec<(String, Gear)> = ["", "starters", "no_cycle"]
        .iter()
        .flat_map(|folder| files(folder, "json"))
        .filter_map(|(name, text)| Some((name, gearswing_gearfile::read(&text).ok()?)))
        .collect();
    let full = full_gears().into_iter().enumerate();
    gears.extend(full.map(|(at, gear)| (format!("full {at}"), gear)));
    assert!(gears.len() > 6, "{}", gears.len());
    gears
}

fn all(mut working: Working) -> Vec<Found> {
    let mut all = Vec::new();
    loop {
        match working.part() {
            Part::GoesOn => {}
            Part::Found(found) => all.push(*found),
            Part::Over => return all,
        }
    }
}

#[test]
fn parts_come_to_what_the_solver_says() {
    let (mut times, mut stops) = (0, 0);
    for (name, gear) in gears() {
        let text = to_text(&gear).unwrap();
        let found = all(Working::of_text(&text, None).unwrap());
        assert_eq!(found.is_empty(), !is_wanted(&gear), "{name}");
        let mut expected = Vec::new();
        for &on_jacks in cases(&gear) {
            let options = SupplyOptions {
                on_jacks,
                ..SupplyOptions::default()
            };
            let cycle = cycle(&gear, &options);
            expected.push(Found::Times { on_jacks, cycle });
        }
        times += expected.len();
        for (leg, model) in gear.legs.iter().enumerate() {
            if model.seen_stop.is_some() {
                stops += 1;
                expected.push(Found::Stop((leg, explain_stop(&gear, leg))));
            }
        }
        assert!(found == expected, "{name}");
    }
    assert!(times > 4 && stops > 1, "{times} {stops}");
}

#[test]
fn bytes_give_the_same_result_and_damaged_ones_none() {
    for (name, gear) in gears() {
        let text = to_text(&gear).unwrap();
        for found in all(Working::of_text(&text, None).unwrap()) {
            let bytes = to_bytes(&found).unwrap();
            assert!(from_bytes(&bytes).as_ref() == Ok(&found), "{name}");
            for end in (0..bytes.len()).step_by(1 + bytes.len() / 100) {
                assert_eq!(from_bytes(&bytes[..end]), Err(Unreadable), "{name} {end}");
            }
            let longer = [bytes.as_slice(), &[0]].concat();
            assert_eq!(from_bytes(&longer), Err(Unreadable), "{name}");
        }
    }
}

/// What is left of the gear before is taken over, and nothing else.
#[test]
fn a_gear_after_another_comes_to_the_same() {
    let mut before = None;
    for (name, gear) in gears() {
        let text = to_text(&gear).unwrap();
        let after = Working::of_text(&text, before.as_ref()).unwrap();
        let alone = Working::of_text(&text, None).unwrap();
        assert!(all(after.clone()) == all(alone), "{name}");
        before = Some(after);
    }
    assert!(Working::of_text("{}", before.as_ref()).is_err());
}
