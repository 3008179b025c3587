//! Cut, altered, foreign and wrapped links.
use gearswing_gear::model::{Pin, Pins, Spring, SpringJoint, SpringKind, TorsionSpring};
use gearswing_samples::Draw;
use proptest::prelude::*;

use super::*;
use crate::arbitrary::{gear, number};
use crate::file::OpenError;
use crate::{DEMO, STARTERS, SaveError};

fn shared() -> Shared {
    Shared {
        // of the first version
        gear: gearswing_gear::model::Gear {
            points_from: gearswing_gear::model::PointsFrom::Airplane,
            ..STARTERS[0].gear().unwrap()
        },
        leg: 0,
        progress: 0.625,
        view: Some(ViewState {
            centre: [0.3, -0.125],
            width: 1.8,
        }),
        units: "inch".to_owned(),
        sheet: String::new(),
        curve: String::new(),
        down: false,
    }
}

fn link() -> String {
    encode(&shared()).unwrap()
}

const ALPHABET: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

fn replaced(link: &str, at: usize, by: char) -> String {
    link.chars()
        .enumerate()
        .map(|(i, c)| if i == at { by } else { c })
        .collect()
}

#[test]
fn comes_back() {
    assert_eq!(decode(&link()), Ok(shared()));
}

#[test]
fn is_made_of_safe_characters() {
    let link = link();
    assert!(link.chars().all(|c| ALPHABET.contains(c)));
    assert!(link.ends_with(|c: char| c.is_ascii_alphanumeric()));
}

#[test]
fn demo_fits() {
    let shared = Shared {
        gear: DEMO.gear().unwrap(),
        leg: 2,
        ..shared()
    };
    let link = encode(&shared).unwrap();
    // no shorter than the address of a page on a common host, below a folder of its own
    let page = "https://some-builders-workshop.example.org/landing-gear/simulator/index.html";
    let address = format!("{page}#{link}");
    assert!(fits(&address), "{}", address.len());
    assert_eq!(decode(&address), Ok(shared.clone()));
    // room for what a person adds: a second tire, springs and rubbing pins on every leg
    let mut more = shared;
    for leg in &mut more.gear.legs {
        leg.springs.push(Spring {
            name: "Emergency".to_owned(),
            kind: SpringKind::Torsion(TorsionSpring {
                joint: SpringJoint::Trunnion,
                rate: 12.5,
                moment_at_down: 36.2,
            }),
        });
        let pin = Pin::rubbing(0.0063, 0.12);
        leg.pins = Pins::alike(pin);
    }
    let address = format!("{page}#{}", encode(&more).unwrap());
    assert!(fits(&address), "{}", address.len());
}

#[test]
fn fits_is_below_the_limit() {
    assert!(fits(&"a".repeat(LINK_LIMIT - 1)));
    assert!(!fits(&"a".repeat(LINK_LIMIT)));
}

#[test]
fn every_cut_says_cut() {
    let link = link();
    let of = link.len();
    assert_eq!(decode(""), Err(LinkError::Empty));
    for have in 1..of {
        let got = decode(&link[..have]).unwrap_err();
        let wanted = match have {
            1 => LinkError::Foreign,
            2..7 => LinkError::Cut { have, of: None },
            _ => LinkError::Cut { have, of: Some(of) },
        };
        assert_eq!(got, wanted, "{have}");
        // so it does at the end of an address, and with a full stop after it
        let address = format!("see https://gear.example.org/#{}.", &link[..have]);
        assert_eq!(decode(&address), Err(wanted), "{have}");
    }
}

#[test]
fn every_missing_piece_says_cut() {
    let link = link();
    for at in 13..link.len() {
        for gap in [1, 4, 57] {
            let end = (at + gap).min(link.len());
            let got = decode(&format!("{}{}", &link[..at], &link[end..])).unwrap_err();
            assert!(
                matches!(got, LinkError::Cut { of: Some(_), .. }),
                "{at} {gap}: {got}"
            );
        }
    }
}

#[test]
fn every_flip_says_altered() {
    let link = link();
    for (at, was) in link.chars().enumerate() {
        for by in ALPHABET.chars().filter(|&by| by != was) {
            let got = decode(&replaced(&link, at, by)).unwrap_err();
            match at {
                0 | 1 => assert_eq!(got, LinkError::Foreign),
                2 => match by {
                    // a version that is known, whose check character does not fit
                    '2'..='5' => assert_eq!(got, LinkError::Altered),
                    _ => assert!(matches!(got, LinkError::Foreign | LinkError::TooNew { .. })),
                },
                _ => assert_eq!(got, LinkError::Altered, "{at} {was} {by}"),
            }
        }
    }
}

#[test]
fn signs_of_no_link_say_altered() {
    let link = link();
    for at in 3..link.len() - 1 {
        for by in ['=', '.', '!', '&', '%', 'é', '…', '\u{0}', '😀'] {
            assert_eq!(
                decode(&replaced(&link, at, by)),
                Err(LinkError::Altered),
                "{at} {by}"
            );
        }
    }
}

#[test]
fn swapped_and_shortened_links_are_told() {
    let link = link();
    for at in 3..link.len() - 1 {
        let mut bytes = link.clone().into_bytes();
        bytes.swap(at, at + 1);
        let swapped = String::from_utf8(bytes).unwrap();
        if swapped != link {
            assert_eq!(decode(&swapped), Err(LinkError::Altered), "{at}");
        }
    }
    // a messenger's short form, copied
    let short = format!("{}[…]{}", &link[..40], &link[link.len() - 10..]);
    assert!(matches!(
        decode(&short),
        Err(LinkError::Cut { of: Some(_), .. })
    ));
    assert_eq!(decode(&link.to_uppercase()), Err(LinkError::Foreign));
    let lower = link.to_lowercase();
    assert!(matches!(
        decode(&lower),
        Err(LinkError::Altered | LinkError::Cut { .. })
    ));
}

#[test]
fn newer_links_say_so() {
    let newer = replaced(&link(), 2, '6');
    let wanted = LinkError::TooNew {
        version: 6,
        known: 5,
    };
    assert_eq!(decode(&newer), Err(wanted));
}

#[test]
fn others_are_foreign() {
    for text in [
        "section-2",
        "https://gear.example.org/",
        "https://gear.example.org/#",
        "https://gear.example.org/#top",
        "hello there",
        "g",
        "GS1",
        "gs0abc",
        "{\"format\":\"gearswing-gear\"}",
    ] {
        let got = decode(text).unwrap_err();
        assert!(
            matches!(got, LinkError::Foreign | LinkError::Empty),
            "{text}: {got}"
        );
    }
    assert_eq!(decode("#"), Err(LinkError::Empty));
    assert_eq!(decode(" \n "), Err(LinkError::Empty));
    let long = "a".repeat(400_000);
    assert!(matches!(decode(&long), Err(LinkError::TooLong { .. })));
}

#[test]
fn wrapped_links_open() {
    let link = link();
    let lines = |every: usize, put: &str| {
        let pieces: Vec<&str> = (0..link.len())
            .step_by(every)
            .map(|at| &link[at..(at + every).min(link.len())])
            .collect();
        pieces.join(put)
    };
    for pasted in [
        format!("#{link}"),
        format!("%23{link}"),
        format!("  {link}\r\n"),
        format!("<{link}>"),
        format!("\"{link}\"."),
        format!("`{link}`"),
        format!("https://gear.example.org/#{link}"),
        format!("https://gear.example.org/%23{link}"),
        format!("https://gear.example.org/%2523{link}"),
        format!(
            "https://filter.example.org/?url=https%3A%2F%2Fgear.example.org%2F%23{link}&data=05%7C"
        ),
        format!("<https://gear.example.org/a#b/#{link}>,"),
        format!("(https://gear.example.org/#{link})."),
        format!("_https://gear.example.org/#{link}_"),
        format!("Have a look: https://gear.example.org/#{link} what do you say? #gear"),
        lines(76, "\n"),
        lines(70, "\r\n> "),
        lines(60, "\u{ad}\n  "),
        lines(1, "\u{200b}"),
    ] {
        assert_eq!(decode(&pasted), Ok(shared()), "{pasted}");
    }
}

#[test]
fn what_is_not_finite_is_not_sent() {
    let mut bad = shared();
    bad.progress = f64::NAN;
    let path = "link.progress".to_owned();
    assert_eq!(encode(&bad), Err(SaveError::NotFinite { path }));
    let mut bad = shared();
    bad.gear.legs[0].swing_up = f64::INFINITY;
    let path = "link.gear.legs[0].swing_up_rad".to_owned();
    assert_eq!(encode(&bad), Err(SaveError::NotFinite { path }));
}

#[test]
fn a_gear_too_large_is_told() {
    let mut draw = Draw::new(1);
    let mut big = shared();
    // noise does not pack
    big.gear.note = (0..300_000)
        .map(|_| char::from(b' ' + draw.below(64) as u8))
        .collect();
    assert!(matches!(encode(&big), Err(SaveError::TooLarge { .. })));
}

#[test]
fn whole_links_with_unusable_content_say_so() {
    let wrapped = |json: &[u8]| {
        use base64::Engine;
        let packed = pack::pack(pack::FIXED_TEXT_1, json).unwrap();
        let body = base64::engine::general_purpose::URL_SAFE_NO_PAD.encode(packed);
        code::wrap(&body, 1).unwrap()
    };
    let path = |link: &str| match decode(link) {
        Err(LinkError::Content(
            OpenError::Field { path, .. } | OpenError::UnknownField { path, .. },
        )) => path,
        other => panic!("{other:?}"),
    };
    let json = super::content(&shared()).unwrap();
    let with = |from: &str, to: &str| {
        assert!(json.contains(from), "{from}");
        wrapped(json.replacen(from, to, 1).as_bytes())
    };
    assert_eq!(decode(&wrapped(json.as_bytes())), Ok(shared()));
    assert_eq!(path(&with("\"leg\":0", "\"leg\":1")), "leg");
    assert_eq!(path(&with("\"leg\":0", "\"leg\":-1")), "leg");
    assert_eq!(
        path(&with("\"width_m\":1.8", "\"width_m\":0")),
        "view.width_m"
    );
    assert_eq!(
        path(&with("\"rod_m\":", "\"rode_m\":")),
        "gear.legs[0].actuator.rode_m"
    );
    assert_eq!(path(&with("\"units\":", "\"unit\":")), "unit");
    assert_eq!(path(&code::wrap("AAAA", 1).unwrap()), "link");
    assert_eq!(path(&code::wrap("A", 1).unwrap()), "link");
    assert_eq!(path(&wrapped(&vec![b' '; 5 << 20])), "link");
    assert!(matches!(
        decode(&wrapped(b"{\"gear\":")),
        Err(LinkError::Content(OpenError::NotJson { .. }))
    ));
    assert!(matches!(
        decode(&wrapped(b"\xff\xfe")),
        Err(LinkError::Content(OpenError::NotJson { .. }))
    ));
}

/// The fixed texts are part of every link: the first from version 1 on, both from version 4 on.
#[test]
fn fixed_text_never_changes() {
    assert_eq!(pack::FIXED_TEXT_1.len(), 2668);
    assert_eq!(code::CHECKSUM.checksum(pack::FIXED_TEXT_1), FIXED_TEXT_CRC);
    assert_eq!(pack::FIXED_TEXT_2.len(), 17_470);
    assert_eq!(
        code::CHECKSUM.checksum(pack::FIXED_TEXT_2),
        FIXED_TEXT_2_CRC
    );
}

const FIXED_TEXT_CRC: u32 = 1_871_985_152;
const FIXED_TEXT_2_CRC: u32 = 0x6023_3ac1;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn round_trip_keeps_every_bit(gear in gear(), progress in number(), units in "[a-z]{0,6}") {
        let legs = gear.legs.len();
        let shared = Shared { gear, leg: 0, progress, view: None, units, sheet: String::new(), curve: String::new(), down: false };
        let link = encode(&shared).unwrap();
        if legs == 0 {
            prop_assert!(decode(&link).is_err());
        } else {
            let back = decode(&link).unwrap();
            prop_assert_eq!(encode(&back).unwrap(), link);
            prop_assert_eq!(back, shared);
        }
    }

    #[test]
    fn any_text_is_answered(text in any::<String>()) {
        prop_assert!(decode(&text).is_err());
        let text = format!("gs1{text}");
        prop_assert!(decode(&text).is_err());
    }

    #[test]
    fn any_code_is_answered(text in "[A-Za-z0-9_-]{0,300}") {
        let text = format!("gs1{text}");
        prop_assert!(decode(&text).is_err());
    }

    #[test]
    fn two_changes_never_open(
        a in 3_usize..600, b in 3_usize..600, by in "[A-Za-z0-9_-]{2}"
    ) {
        let link = link();
        let mut by = by.chars();
        let once = replaced(&link, a % link.len(), by.next().unwrap());
        let twice = replaced(&once, b % link.len(), by.next().unwrap());
        if twice != link {
            prop_assert!(decode(&twice).is_err());
        }
    }
}
