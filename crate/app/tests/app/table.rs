//! Rows of the shortening table.
use gearswing_app::msg::{self, Msg};
use gearswing_gear::model::{Shortening, ShorteningRow};
use gearswing_gearfile::to_text;
use gearswing_solver::faults::check_gear;

use crate::support::Desk;

/// A row added to the shortening table stays within the way, wherever it is asked for.
#[test]
fn a_row_added_to_the_shortening_table_is_valid() {
    let list = "legs[0].strut.shortening.with_travel.table";
    let tables: [&[(f64, f64)]; 5] = [
        &[],
        &[(1.0, 0.02)],
        &[(0.0, 0.0), (1.0, 0.03)],
        &[(0.0, 0.0), (0.4, 0.01), (1.0, 0.03)],
        &[(0.2, 0.01)],
    ];
    for rows in tables {
        for behind in 0..=rows.len() {
            let mut desk = Desk::demo();
            let mut gear = desk.gear();
            let row = |&(travel, amount): &(f64, f64)| ShorteningRow { travel, amount };
            gear.legs[0].strut.shortening = Shortening::WithTravel {
                table: rows.iter().map(row).collect(),
            };
            desk.send(Msg::File(msg::File::ImportText {
                name: "table.json".to_owned(),
                text: to_text(&gear).unwrap(),
            }));
            let path = if behind == rows.len() {
                list.to_owned()
            } else {
                format!("{list}[{behind}]")
            };
            // typed and not read: the text goes with its row
            let last = format!("{list}[{}].amount_m", rows.len().saturating_sub(1));
            if !rows.is_empty() {
                desk.enter(&last, "one finger");
            }
            desk.send(Msg::Field(msg::Field::Add { path }));
            let gear = desk.gear();
            assert_eq!(check_gear(&gear), Ok(()), "{rows:?} {behind}");
            let Shortening::WithTravel { table } = &gear.legs[0].strut.shortening else {
                panic!("a table");
            };
            assert_eq!(table.len(), rows.len() + 1);
            for &(travel, amount) in rows {
                let at = table.iter().position(|row| row.travel == travel).unwrap();
                assert_eq!(table[at].amount, amount);
                if rows.last() == Some(&(travel, amount)) {
                    let value = desk.row(&format!("{list}[{at}].amount_m")).value;
                    assert_eq!(value, "one finger");
                }
            }
        }
    }
}
