//! Names that a person typed, in every text of the page but the field they are typed in.
use gearswing_app::drawing;
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::Shape;

use crate::support::Desk;

/// A name too long for any line, that turns what follows it (U+202E, right-to-left override).
fn awkward(letter: char) -> String {
    format!("{}\u{202e}{letter}", letter.to_string().repeat(1_000))
}

#[test]
fn no_text_is_stretched_or_turned_by_a_name() {
    let mut desk = Desk::demo();
    let mut type_in = |path: &str, text: String| {
        let path = path.to_owned();
        desk.send(Msg::Field(msg::Field::Draft {
            path: path.clone(),
            text,
        }));
        desk.send(Msg::Field(msg::Field::Commit { path }));
    };
    type_in("legs[0].name", awkward('x'));
    type_in("legs[0].well[0].name", awkward('y'));
    type_in("legs[0].springs[0].name", awkward('z'));
    type_in("name", awkward('w'));
    desk.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    desk.send(Msg::File(msg::File::ImportFailed {
        name: awkward('v'),
        reason: awkward('v'),
    }));
    let page = desk.page();
    let titles: Vec<&String> = page.groups.iter().map(|group| &group.title).collect();
    let mut said = format!(
        "{:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {titles:?}",
        page.answers,
        page.readout,
        page.transport,
        page.drawing,
        page.curves,
        page.times,
        page.stopped,
        page.files,
    );
    for mark in drawing(&desk.state).marks {
        if let Shape::Text { text, .. } = mark.shape {
            said.push_str(&text);
        }
    }
    // each is named somewhere, or the check would see nothing
    for letter in ['w', 'x', 'y', 'z'] {
        let run = |count: usize| letter.to_string().repeat(count);
        assert!(said.contains(&run(20)), "{letter} is named nowhere");
        assert!(!said.contains(&run(60)), "{letter} stretches a text");
    }
    for turning in ["\u{202e}", "\\u{202e}"] {
        assert!(!said.contains(turning));
    }
    for notice in &page.notices {
        let length = notice.text.chars().count();
        assert!(length <= 1_300, "a notice of {length} characters");
    }
}
