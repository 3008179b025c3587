//! Fields: what is typed, understood, refused and kept.
use gearswing_app::fields;
use gearswing_app::msg::{self, Msg};
use gearswing_app::view::FieldKind;
use gearswing_units::{MetricPressure, UnitChoice};

use crate::support::Desk;

const BORE: &str = "legs[2].actuator.bore_m";

/// Paths of every row that the page shows for the demo, all groups opened one by one.
pub(crate) fn all_rows(desk: &mut Desk) -> Vec<gearswing_app::view::FieldRow> {
    let mut rows = Vec::new();
    for leg in 0..desk.state.gear().legs.len() {
        desk.send(Msg::View(msg::View::SelectLeg { leg }));
        let ids: Vec<String> = desk
            .page()
            .groups
            .into_iter()
            .map(|group| group.id)
            .collect();
        for id in ids {
            if desk.state.session.open_group.as_deref() != Some(&id) {
                desk.send(Msg::View(msg::View::ToggleGroup { id: id.clone() }));
            }
            let page = desk.page();
            rows.extend(
                page.groups
                    .into_iter()
                    .find(|group| group.id == id)
                    .unwrap()
                    .rows,
            );
        }
    }
    rows
}

#[test]
fn typed_text_stays_as_typed() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1 3/8");
    let row = desk.row(BORE);
    assert_eq!(row.value, "1 3/8");
    assert!(row.echo.contains("34.9 mm"), "{}", row.echo);
    assert!((fields::number(desk.state.gear(), BORE).unwrap().unwrap() - 0.034925).abs() < 1e-15);
    // in other units the number is shown, back in the first the text stands again
    desk.send(Msg::View(msg::View::Units(UnitChoice::METRIC)));
    assert_eq!(desk.row(BORE).value, "34.9");
    desk.send(Msg::View(msg::View::Units(UnitChoice::INCH)));
    assert_eq!(desk.row(BORE).value, "1 3/8");
    // a step away and back by undo
    desk.send(Msg::History(msg::History::Undo));
    assert_ne!(desk.row(BORE).value, "1 3/8");
    desk.send(Msg::History(msg::History::Redo));
    assert_eq!(desk.row(BORE).value, "1 3/8");
    // and after a reload
    let mut again = desk.reloaded();
    assert_eq!(again.row(BORE).value, "1 3/8");
}

#[test]
fn a_faulty_number_keeps_the_last_good_result_faded() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    let good = desk.page().answers[2].answers.clone();
    desk.enter("legs[2].actuator.rod_m", "9 in");
    let page = desk.page();
    let leg = &page.answers[2];
    assert!(leg.faded && !leg.faults.is_empty());
    assert_eq!(leg.answers.len(), good.len());
    assert!(page.drawing.faded);
    assert!(desk.row("legs[2].actuator.rod_m").error.is_some());
    // the other legs are as they were
    assert!(!page.answers[0].faded && !page.answers[1].faded);
    let show = page.answers[2].faults[0].show.clone().unwrap();
    let effects = desk.send(show.msg);
    assert!(
        effects
            .iter()
            .any(|e| matches!(e, gearswing_app::Effect::FocusField { .. }))
    );
    // stored all the same, and brought back by a reload
    assert_eq!(desk.reloaded().gear(), desk.gear());
    desk.send(Msg::History(msg::History::Undo));
    assert!(!desk.page().answers[2].faded);
}

#[test]
fn units_change_no_stored_value() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.37 in");
    let before = desk.gear();
    let mpa = UnitChoice {
        metric_pressure: MetricPressure::Megapascal,
        ..UnitChoice::METRIC
    };
    for units in [UnitChoice::METRIC, mpa, UnitChoice::INCH] {
        desk.send(Msg::View(msg::View::Units(units)));
        for row in all_rows(&mut desk) {
            desk.send(Msg::Field(msg::Field::Focus {
                path: row.path.clone(),
            }));
            desk.send(Msg::Field(msg::Field::Commit { path: row.path }));
        }
        assert_eq!(desk.gear(), before);
    }
}

#[test]
fn what_a_field_shows_enters_unchanged() {
    let mut desk = Desk::demo();
    let before = desk.gear();
    for units in [UnitChoice::INCH, UnitChoice::METRIC] {
        desk.send(Msg::View(msg::View::Units(units)));
        for row in all_rows(&mut desk) {
            if row.kind == FieldKind::Number && !row.value.is_empty() {
                let circumference = row.path.ends_with("circumference_m");
                desk.enter(&row.path, &row.value);
                if circumference {
                    // π there and back costs a last digit
                    desk.send(Msg::History(msg::History::Undo));
                }
                assert_eq!(desk.gear(), before, "{} {}", row.path, row.value);
            }
        }
    }
}

#[test]
fn every_number_can_be_set_and_read_back() {
    let mut desk = Desk::demo();
    let rows = all_rows(&mut desk);
    let numbers: Vec<_> = rows
        .iter()
        .filter(|row| row.kind == FieldKind::Number)
        .collect();
    assert!(numbers.len() > 150, "{}", numbers.len());
    for row in numbers {
        let mut gear = desk.gear();
        fields::set_shown(&mut gear, &row.path, Some(0.1234)).unwrap();
        let back = fields::shown(&gear, &row.path).unwrap().unwrap();
        assert!((back - 0.1234).abs() < 1e-15, "{}", row.path);
        assert!(fields::quantity(&row.path).is_some(), "{}", row.path);
        assert!(fields::set_shown(&mut gear, &row.path, Some(f64::NAN)).is_err());
        assert!(fields::set_shown(&mut gear, &row.path, Some(f64::INFINITY)).is_err());
        assert!(
            !row.range.is_empty()
                || row.path.contains("circumference")
                || row.path.ends_with("er_length_m")
                || row.path.ends_with("knee_offset_m"),
            "{}",
            row.path
        );
        assert!(!row.help.is_empty(), "{}", row.path);
    }
}

#[test]
fn nonsense_in_every_field_changes_nothing() {
    let nonsense = [
        "abc",
        "1/0",
        "--",
        "1e999",
        "-1e999",
        "NaN",
        "inf",
        "1,2,3.4.5",
        "3 psi of 4",
        "½½",
        "<script>alert(1)</script>",
        "1 2 3",
        "∞",
        "\u{202e}12",
        "0x10",
        "💥",
    ];
    let mut desk = Desk::demo();
    let before = desk.gear();
    let long = "9".repeat(5_000);
    for row in all_rows(&mut desk) {
        if row.kind != FieldKind::Number {
            continue;
        }
        for text in nonsense.iter().copied().chain([long.as_str()]) {
            desk.send(Msg::Field(msg::Field::Draft {
                path: row.path.clone(),
                text: text.to_owned(),
            }));
            gearswing_app::update(
                &mut desk.state,
                Msg::Field(msg::Field::Commit {
                    path: row.path.clone(),
                }),
            );
            assert_eq!(*desk.state.gear(), before, "{} {text}", row.path);
        }
        desk.send(Msg::Field(msg::Field::Revert {
            path: row.path.clone(),
        }));
    }
}

#[test]
fn an_empty_optional_field_takes_the_default() {
    let mut desk = Desk::demo();
    let path = "clearance_rule.tire_grown_m";
    desk.enter(path, "3/4");
    assert_eq!(fields::number(desk.state.gear(), path), Some(Some(0.01905)));
    desk.enter(path, "");
    assert_eq!(fields::number(desk.state.gear(), path), Some(None));
    assert!(desk.row(path).error.is_none());
    let before = desk.gear();
    desk.enter(BORE, "  ");
    assert_eq!(desk.gear(), before);
    assert!(desk.row(BORE).error.is_some());
}

#[test]
fn choices_change_the_kind_of_part() {
    let mut desk = Desk::demo();
    let before = desk.gear();
    let mut count = 0;
    for row in all_rows(&mut desk) {
        let FieldKind::Choice { options, chosen } = row.kind else {
            continue;
        };
        for option in options.iter().filter(|option| option.key != chosen) {
            desk.send(Msg::Field(msg::Field::Choose {
                path: row.path.clone(),
                option: option.key.clone(),
            }));
            assert_ne!(desk.gear(), before, "{} {}", row.path, option.key);
            desk.send(Msg::History(msg::History::Undo));
            assert_eq!(desk.gear(), before);
            count += 1;
        }
    }
    assert!(count > 60);
}

#[test]
fn typed_text_goes_with_its_piece_of_structure() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    let well = desk.state.gear().legs[2].well.len();
    assert!(well >= 2);
    let path = |at: usize| format!("legs[2].well[{at}].required_clearance_m");
    desk.enter(&path(1), "quite a bit");
    desk.send(Msg::Field(msg::Field::Remove {
        path: "legs[2].well[0]".to_owned(),
    }));
    assert_eq!(desk.row(&path(0)).value, "quite a bit");
    if well > 2 {
        assert_ne!(desk.row(&path(1)).value, "quite a bit");
    }
}

#[test]
fn a_table_size_is_marked_by_its_trust() {
    let mut desk = Desk::demo();
    let row = desk.row("legs[2].wheel.tire.diameter_m");
    assert_eq!(row.kind, FieldKind::Number);
    let page = desk.page();
    let wheel = page
        .groups
        .iter()
        .find(|group| group.id == "wheel")
        .unwrap();
    let table = wheel
        .rows
        .iter()
        .find(|row| row.path.ends_with("size_table"))
        .unwrap();
    let FieldKind::Choice { options, .. } = &table.kind else {
        panic!("a choice");
    };
    // every row of the table is one choice, with its plies, and rows of the same tire are the same choice
    let all = gearswing_solver::tires::sizes();
    for row in all {
        let puts_in = |key: &str| {
            let chosen = &all[key.parse::<usize>().unwrap()];
            chosen.size == row.size && row.gives(&chosen.to_tire())
        };
        let offered: Vec<_> = options.iter().filter(|o| puts_in(&o.key)).collect();
        assert_eq!(offered.len(), 1, "{}", row.size);
        let ply = row.ply.map(|ply| ply.to_string()).unwrap_or_default();
        assert!(offered[0].label.contains(&ply), "{}", offered[0].label);
    }
    assert!(options.iter().all(|o| {
        o.label.ends_with("(data book, second hand)") || o.label.ends_with("(from memory)")
    }));
    desk.send(Msg::Field(msg::Field::Choose {
        path: table.path.clone(),
        option: options[3].key.clone(),
    }));
    let size = &all[options[3].key.parse::<usize>().unwrap()];
    assert!(size.gives(&desk.state.gear().legs[2].wheel.tire));
    let FieldKind::Choice { chosen, .. } = desk.row(&table.path).kind else {
        panic!("a choice");
    };
    assert_eq!(chosen, options[3].key);
}

#[test]
fn springs_and_pins_are_added_filled_and_taken_out() {
    let mut desk = Desk::demo();
    // after those that the leg has
    let at = desk.gear().legs[0].springs.len();
    let before = desk.gear();
    let answer = |desk: &mut Desk| desk.page().answers[0].answers[1].sentence.clone();
    let first = answer(&mut desk);
    desk.send(Msg::Field(msg::Field::Add {
        path: "legs[0].springs".to_owned(),
    }));
    // a new spring is sound and does nothing
    assert!(desk.page().answers[0].faults.is_empty());
    assert_eq!(answer(&mut desk), first);
    let kind = format!("legs[0].springs[{at}].kind");
    let kind = kind.as_str();
    let choose = |desk: &mut Desk, path: String, option: &str| {
        desk.send(Msg::Field(msg::Field::Choose {
            path: path.clone(),
            option: option.to_owned(),
        }));
        assert_eq!(fields::chosen(desk.state.gear(), &path), Some(option));
    };
    desk.enter(&format!("{kind}.linear.rate_n_m"), "20 lb/in");
    desk.enter(&format!("{kind}.linear.set.free_length.length_m"), "2 in");
    assert_ne!(answer(&mut desk), first);
    // said the other way it is the same spring
    let sprung = answer(&mut desk);
    choose(&mut desk, format!("{kind}.linear.set"), "force_at_down");
    assert_eq!(answer(&mut desk), sprung);
    choose(&mut desk, format!("{kind}.linear.acts"), "pulls");
    assert_eq!(answer(&mut desk), sprung);
    choose(
        &mut desk,
        format!("{kind}.linear.second.body"),
        "sliding_strut",
    );
    choose(&mut desk, kind.to_owned(), "gas");
    choose(&mut desk, format!("{kind}.gas.law"), "polytropic");
    choose(&mut desk, format!("{kind}.gas.first.body"), "airframe");
    choose(&mut desk, kind.to_owned(), "torsion");
    choose(&mut desk, format!("{kind}.torsion.joint"), "trunnion");
    assert!(desk.page().answers[0].faults.is_empty());
    desk.enter(&format!("{kind}.torsion.rate_n_m_rad"), "2 in-lb/deg");
    // 2 in-lb by the definitions of inch and pound, for each degree
    let rate = 2.0 * 0.0254 * 4.448_221_615_260_5 * 180.0 / std::f64::consts::PI;
    let stored = fields::number(desk.state.gear(), &format!("{kind}.torsion.rate_n_m_rad"));
    assert!((stored.flatten().unwrap() - rate).abs() < 1e-9 * rate);
    desk.send(Msg::Field(msg::Field::Remove {
        path: format!("legs[0].springs[{at}]"),
    }));
    assert_eq!(desk.gear(), before);
    let pin = "legs[0].pins.trunnion";
    desk.enter(&format!("{pin}.radius_m"), "1 in");
    desk.enter(&format!("{pin}.friction"), "0.2");
    assert_ne!(answer(&mut desk), first);
    desk.enter(&format!("{pin}.friction"), "1.6");
    assert!(desk.row(&format!("{pin}.friction")).error.is_some());
    desk.enter(&format!("{pin}.friction"), "");
    desk.enter(&format!("{pin}.radius_m"), "");
    assert_eq!(desk.gear(), before);
}
