//! Whole and damaged links as they come out of mail and messengers.
#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]
use std::collections::BTreeSet;
use std::path::PathBuf;

use gearswing_gear::model::{Drive, Supply};
use gearswing_gearfile::link::{LinkError, Shared, ViewState, decode};
use gearswing_gearfile::read;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/links")
}

/// What `v1.txt` was made from; it opens for ever.
fn sent() -> Shared {
    Shared {
        leg: 3,
        progress: 0.625,
        view: Some(ViewState {
            centre: [1.125, -0.25],
            width: 1.8,
        }),
        units: "inch".to_owned(),
        ..Shared::of(read(include_str!("../../../fixtures/versions/v1.json")).unwrap())
    }
}

/// What `v4.txt` was made from: with kept states.
fn sent_with_kept() -> Shared {
    Shared {
        gear: read(include_str!("../../../fixtures/versions/v4.json")).unwrap(),
        leg: 0,
        ..sent()
    }
}

/// What `v5.txt` was made from: with points told from the trunnion.
fn sent_from_trunnion() -> Shared {
    Shared {
        gear: read(include_str!("../../../fixtures/versions/v5.json")).unwrap(),
        leg: 0,
        ..sent()
    }
}

/// What `before_supply.txt` was made from, by the program as it was before a file could say what
/// moves the gear: the demo with a pressure and nothing else.
fn before_supply() -> Shared {
    let gear = read(include_str!(
        "../../../fixtures/versions/before_supply.json"
    ))
    .unwrap();
    let supply = Supply {
        return_pressure: 1e5,
        ..Supply::constant(6_894_757.0)
    };
    assert_eq!(gear.supply, supply);
    assert!(gear.legs.iter().all(|leg| leg.drive == Drive::default()));
    Shared {
        units: "inch bar kt".to_owned(),
        ..Shared::of(gear)
    }
}

#[test]
fn each_says_what_it_is() {
    let whole = include_str!("../../../fixtures/links/v1.txt").trim();
    let of = whole.len();
    let cut = |have| Err(LinkError::Cut { have, of: Some(of) });
    let too_new = LinkError::TooNew {
        version: 35,
        known: gearswing_gearfile::VERSION,
    };
    let wanted = [
        ("before_supply", Ok(before_supply())),
        ("v1", Ok(sent())),
        ("v4", Ok(sent_with_kept())),
        ("v5", Ok(sent_from_trunnion())),
        ("whole_address", Ok(sent())),
        ("percent_23", Ok(sent())),
        ("mail_filter", Ok(sent())),
        ("mail_wrapped", Ok(sent())),
        ("cut_late", cut(of - 1)),
        ("cut_half", cut(of / 2)),
        ("cut_early", Err(LinkError::Cut { have: 5, of: None })),
        ("shortened", cut(43)),
        ("altered_body", Err(LinkError::Altered)),
        ("altered_length", Err(LinkError::Altered)),
        ("altered_case", Err(LinkError::Altered)),
        ("too_new", Err(too_new)),
        ("foreign", Err(LinkError::Foreign)),
        ("empty", Err(LinkError::Empty)),
    ];
    let listed: BTreeSet<String> = wanted
        .iter()
        .map(|(name, _)| format!("{name}.txt"))
        .collect();
    let found: BTreeSet<String> = std::fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_eq!(listed, found);
    for (name, result) in wanted {
        let text = std::fs::read_to_string(folder().join(name).with_extension("txt")).unwrap();
        assert_eq!(decode(&text), result, "{name}");
    }
}
