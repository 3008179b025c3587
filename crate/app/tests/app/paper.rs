//! The form on paper: everything stands on it, and the drawing has the scale that it tells.
use gearswing_app::msg::{Msg, Times};
use gearswing_app::paper::{Block, Figure, Node, drawing_svg, form};
use gearswing_app::words::paper as words;
use gearswing_units::UnitChoice;

use crate::support::Desk;

pub(crate) fn all_text(blocks: &[Block]) -> String {
    let mut all = String::new();
    for block in blocks {
        match block {
            Block::Title { text, .. }
            | Block::Heading(text)
            | Block::Text(text)
            | Block::Item(text) => all += text,
            Block::Rows(rows) => all += &rows.concat().join("\n"),
            Block::Measured((title, rows)) => {
                all += title;
                all += &rows.concat().join("\n");
            }
            Block::Figure(figure) | Block::Code(figure) => all += &figure.caption,
            Block::Details(figures) => {
                all.extend(figures.iter().map(|figure| figure.caption.as_str()));
            }
            Block::Whole(blocks) => all += &all_text(blocks),
            Block::Lines(lines) => all += &lines.join("\n"),
        }
        all.push('\n');
    }
    all
}

fn figures(blocks: &[Block]) -> Vec<&Figure> {
    let all = blocks.iter();
    all.flat_map(|block| match block {
        Block::Figure(figure) => vec![figure],
        Block::Whole(blocks) => figures(blocks),
        _ => Vec::new(),
    })
    .collect()
}

/// The number behind the first of an attribute from a place in a text on.
fn number(text: &str, attribute: &str) -> f64 {
    let from = text.find(attribute).unwrap() + attribute.len();
    let end = text[from..]
        .find(|c: char| !c.is_ascii_digit() && c != '.' && c != '-')
        .unwrap();
    text[from..from + end].parse().unwrap()
}

#[test]
fn every_answer_measurement_and_caution_stands_on_it() {
    let desk = Desk::demo();
    let page = desk.page();
    let blocks = form(&desk.state, "2031-02-03", true);
    let text = all_text(&blocks);
    for leg in &page.answers {
        for answer in &leg.answers {
            assert!(text.contains(&answer.sentence), "{}", answer.sentence);
            for on in &answer.rests_on {
                assert!(text.contains(&on.text), "{}", on.text);
            }
            assert!(answer.cautions.iter().all(|caution| text.contains(caution)));
            assert!(answer.try_next.iter().all(|step| text.contains(step)));
        }
    }
    for caution in page
        .cautions
        .iter()
        .chain(&page.not_modelled)
        .chain(&page.times.cautions)
    {
        assert!(text.contains(caution), "{caution}");
    }
    let legs = (0..desk.state.gear().legs.len()).map(Some);
    for leg in std::iter::once(None).chain(legs) {
        for (title, rows) in words::measurements(desk.state.gear(), leg, UnitChoice::INCH) {
            assert!(text.contains(&title) && rows.iter().flatten().all(|cell| text.contains(cell)));
        }
    }
    for said in [
        "Larkfield tourer",
        "2031-02-03",
        words::NO_APPROVAL,
        page.program.as_str(),
    ] {
        assert!(text.contains(said), "{said}");
    }
    // drawing and curves of each leg
    assert_eq!(figures(&blocks).len(), 6);
    for letter in ["A", "B", "C"] {
        let of_legs = text.matches(&format!("Detail {letter} (")).count();
        assert_eq!(of_legs, 3, "{letter}");
    }
}

/// The bar of so many inches is so long at the scale told, at 96 CSS pixels an inch (CSS Values and Units 3, 5.2).
#[test]
fn the_scale_bar_is_as_long_as_the_scale_says() {
    let mut desk = Desk::demo();
    for leg in 0..3 {
        let blocks = form(&desk.state, "", true);
        let drawing = figures(&blocks)[2 * leg];
        let scale = number(&drawing.caption, "Scale 1:");
        let nodes = &drawing.picture.nodes;
        let at = |name: &str, node: &Node| -> f64 {
            let found = node.attributes.iter().find(|(other, _)| *other == name);
            found.map_or(0.0, |(_, value)| value.parse().unwrap())
        };
        // the text over the bar stands at the left edge, at the foot
        let text = nodes
            .iter()
            .rev()
            .find(|node| at("x", node) == 14.0 && node.text.ends_with(" in"));
        let inches: f64 = text
            .unwrap()
            .text
            .strip_suffix(" in")
            .unwrap()
            .parse()
            .unwrap();
        let ends = nodes.iter().filter_map(|node| {
            let (_, way) = node.attributes.iter().find(|(name, _)| *name == "d")?;
            let numbers: Vec<f64> = way
                .split(['M', 'L', ','])
                .filter_map(|part| part.parse().ok())
                .collect();
            let [x0, y0, x1, y1] = numbers[..] else {
                return None;
            };
            (y0 == y1 && x0 == 14.0 && y0 > 540.0).then_some(x1 - x0)
        });
        let longest = ends.fold(0.0, f64::max);
        let wanted = inches * 96.0 / scale;
        assert!(
            (longest - wanted).abs() < 0.005 * wanted,
            "{longest} {wanted}"
        );
        desk.enter("legs[0].name", &format!("Nose {leg}"));
    }
}

#[test]
fn a_picture_is_markup_of_its_own_whatever_the_names() {
    let mut desk = Desk::demo();
    desk.enter(
        "legs[2].well[0].name",
        "</text><script>x</script> & \"rib\"",
    );
    desk.state.session.leg = 2;
    let svg = drawing_svg(&desk.state).unwrap();
    assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>"));
    assert!(!svg.contains("<script"));
    assert!(svg.contains("&lt;script&gt;") || svg.contains("&lt;/text&gt;"));
    // every tag is one that a drawing needs
    for (at, _) in svg.match_indices('<') {
        let tag = &svg[at..];
        let tags = ["svg", "path", "circle", "text"];
        let known = tags.iter().any(|known| {
            tag.starts_with(&format!("<{known} ")) || tag.starts_with(&format!("</{known}>"))
        });
        assert!(known, "{}", &tag[..20]);
    }
}

/// The times of both cases stand on it: a breaker may trip on the jacks that does not in flight.
#[test]
fn times_are_told_in_flight_and_on_the_jacks() {
    let mut desk = Desk::demo();
    let both = |desk: &Desk| {
        let text = all_text(&form(&desk.state, "today", true));
        [
            "With attitude and air as set",
            "For the airplane level on jacks",
        ]
        .map(|case| text.matches(case).count())
    };
    // on the way up and on the way down
    assert_eq!(both(&desk), [2, 2]);
    let text = all_text(&form(&desk.state, "today", true));
    assert!(text.contains("it may trip") && text.contains("the breaker is rated"));
    // whichever of them is looked at
    desk.send(Msg::Times(Times::OnJacks { on: true }));
    desk.send(Msg::Times(Times::Select { down: true }));
    assert_eq!(all_text(&form(&desk.state, "today", true)), text);
}

/// Figures of an earlier state are no record of this one.
#[test]
fn a_leg_that_cannot_be_worked_out_says_why_and_nothing_else() {
    let mut desk = Desk::demo();
    let sound = desk.page().answers[0].answers[0].sentence.clone();
    desk.enter("legs[0].actuator.bore_m", "0.1 in");
    let blocks = form(&desk.state, "", true);
    let page = desk.page();
    let fault = &page.answers[0].faults[0].text;
    let text = all_text(&blocks);
    assert!(
        text.contains(fault) && text.contains(words::NOT_WORKED_OUT),
        "{fault}"
    );
    assert!(!text.contains(&sound));
    assert_eq!(figures(&blocks).len(), 4);
    desk.state.session.leg = 0;
    assert_eq!(drawing_svg(&desk.state), None);
}

#[test]
fn what_has_changed_from_a_kept_state_stands_on_it() {
    use gearswing_app::Msg;
    use gearswing_app::msg::Compare;
    let mut desk = Desk::demo();
    desk.send(Msg::Compare(Compare::Keep));
    desk.enter("legs[1].actuator.bore_m", "7/8");
    let text = all_text(&form(&desk.state, "", true));
    for said in [
        "1 change from Before 1.",
        "Left main, actuator bore",
        "1 in → 7/8 in",
        "; was 50 % spare",
    ] {
        assert!(text.contains(said), "{said}");
    }
}

/// Squares of a picture, dark ones as true, row by row.
fn squares(picture: &Node) -> Vec<Vec<bool>> {
    let of = |node: &Node, name| {
        let found = node.attributes.iter().find(|(other, _)| *other == name);
        found.unwrap().1.clone()
    };
    let side = of(picture, "viewBox");
    let side: usize = side.split(' ').next_back().unwrap().parse().unwrap();
    let mut rows = vec![vec![false; side]; side];
    let way = of(&picture.nodes[0], "d");
    for run in way.split('M').skip(1) {
        let numbers: Vec<usize> = run
            .split([' ', 'h', 'v', 'z', '-'])
            .filter_map(|part| part.parse().ok())
            .collect();
        let [x, y, wide, _, back] = numbers[..] else {
            panic!("{run}");
        };
        assert_eq!(wide, back);
        rows[y][x..x + wide].fill(true);
    }
    rows
}

/// What the squares say, read by a library that knows nothing of the one that made them.
fn read_back(picture: &Node) -> String {
    const TIMES: usize = 4;
    let rows = squares(picture);
    let side = rows.len() * TIMES;
    let mut image =
        rqrr::PreparedImage::prepare_from_bitmap(side, side, |x, y| rows[y / TIMES][x / TIMES]);
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1);
    grids[0].decode().unwrap().1
}

/// The code on the paper is the link, as a reader of ISO/IEC 18004 finds it; it opens the gear as it is.
#[test]
fn the_code_on_the_paper_opens_the_gear() {
    use gearswing_app::msg::Share;
    let mut desk = Desk::demo();
    let code = |desk: &Desk| {
        let blocks = form(&desk.state, "", true);
        blocks.into_iter().find_map(|block| match block {
            Block::Code(figure) => Some(figure),
            _ => None,
        })
    };
    // where only this machine reaches the page there is none, and it is said
    let own = Desk::on("http://127.0.0.1:8080/");
    assert_eq!(code(&own), None);
    assert!(all_text(&form(&own.state, "", true)).contains(words::NO_CODE_HERE));
    let home = "https://gear.example/swing/";
    let text = home.to_owned();
    desk.send(Msg::Share(Share::Home { text }));
    // without its beginning, as it is read off an address bar, it is the same
    let text = "gear.example/swing/".to_owned();
    desk.send(Msg::Share(Share::Home { text }));
    desk.enter("legs[1].actuator.bore_m", "7/8");
    let figure = code(&desk).unwrap();
    assert!(figure.caption.contains(home));
    let link = read_back(&figure.picture);
    let (address, code) = link.split_once('#').unwrap();
    assert_eq!(address, home);
    let shared = gearswing_gearfile::link::decode(code).unwrap();
    assert_eq!(&shared.gear, desk.state.gear());
}

/// Of one leg stands what is of it and of the whole gear, and that it is one.
#[test]
fn one_leg_alone_says_so() {
    let mut desk = Desk::demo();
    desk.state.session.leg = 1;
    let text = all_text(&form(&desk.state, "", false));
    let page = desk.page();
    for (leg, answers) in page.answers.iter().enumerate() {
        let stands = text.contains(&answers.answers[0].sentence);
        assert_eq!(stands, leg == 1, "{leg}");
    }
    assert!(text.contains("These sheets cover one leg only: Left main."));
    assert!(page.cautions.iter().all(|caution| text.contains(caution)));
}
