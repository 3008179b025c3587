//! The tire's own clearance, its own leg, and what lies out of the drawn plane, in words.
use gearswing_gear::model::{MovingPart, View};
use gearswing_solver::numeric::sort_by;
use gearswing_solver::result::{
    NotChecked, OwnClearance, PairClearance, RoomClearance, RoomSide, TireState, governing_order,
};

use super::answer::AnswerText;
use super::assumption::Governing;
use super::skew;
use crate::subject::{Subject, obstacle_words, part_name};

/// A clearance, or a contact as interference.
fn gap(subject: &Subject, clearance: f64) -> String {
    if clearance > 0.0 {
        subject.size(clearance)
    } else {
        format!("{} of interference", subject.size(-clearance))
    }
}

/// Interference, and how much more is wanted to keep the required clearance.
pub(super) fn interference(subject: &Subject, clearance: f64, spare: f64) -> String {
    let depth = subject.size(clearance.abs());
    // with nothing required both would be the same
    if spare >= clearance {
        return format!("{depth} of interference");
    }
    let keep = subject.size(-spare);
    format!("{depth} of interference; to keep all that is required there, {keep}")
}

/// The tire's own least clearance to the well, new and grown.
pub(super) fn tire_itself(subject: &Subject) -> String {
    let least = |state| {
        subject
            .result
            .clearance
            .pairs
            .iter()
            .filter(|pair| pair.part == MovingPart::Wheel && pair.tire == Some(state))
            .min_by(|a, b| a.tightest.clearance.total_cmp(&b.tightest.clearance))
    };
    let where_is = |pair: &PairClearance| {
        let what = obstacle_words(&pair.obstacle_name, pair.obstacle);
        format!("{what} {}", subject.at(&pair.tightest.place))
    };
    let value = |pair: &PairClearance| {
        let gap = gap(subject, pair.tightest.clearance);
        match pair.tightest.clearance > 0.0 && pair.spare() < 0.0 {
            true => format!(
                "{gap} ({} required)",
                subject.length(pair.requirement.clearance)
            ),
            false => gap,
        }
    };
    let mut text = match (least(TireState::New), least(TireState::Grown)) {
        (Some(new), Some(grown)) if where_is(new) == where_is(grown) => format!(
            " The tire itself, to {}: {} as fitted new, {} when it has grown.",
            where_is(new),
            value(new),
            value(grown)
        ),
        (Some(new), Some(grown)) => format!(
            " The tire itself: {} to {} as fitted new, {} to {} when it has grown.",
            value(new),
            where_is(new),
            value(grown),
            where_is(grown)
        ),
        _ => return " The tire is not checked against the well.".to_owned(),
    };
    if let Some(less) = skew::less(subject, |loss| loss.to_well) {
        text.push_str(&format!(" The tire's figures are {less}."));
    }
    text
}

/// The tire against its own leg, where that governs.
pub(super) fn own_leg(subject: &Subject, row: usize, clearance: f64, spare: f64) -> AnswerText {
    let Some(own) = subject.result.clearance.own.get(row) else {
        let text = format!(
            "{} and its own leg: {}.",
            subject.own("tire"),
            gap(subject, clearance)
        );
        return AnswerText::new(text, []);
    };
    let part = part_name(own.part);
    let (who, at) = (subject.own("tire"), subject.at(&own.tightest.place));
    let when = when(own.tire);
    let mut sentence = if clearance <= 0.0 {
        let first = own.first_contact.map(|contact| subject.at(&contact.place));
        let first = first
            .filter(|first| *first != at)
            .map_or_else(String::new, |first| format!(", first {first}"));
        format!(
            "{who} touches its own {part}{when}{first}; deepest {at}: {}.",
            interference(subject, clearance, spare)
        )
    } else if spare < 0.0 {
        format!(
            "{who} comes within {} of its own {part} {at}{when}; {} is required, so {} is missing.",
            subject.size(clearance),
            subject.length(own.requirement.clearance),
            subject.size(-spare)
        )
    } else {
        format!(
            "on {} nothing touches. Tightest is the tire at its own {part} {at}{when}: {}.",
            subject.the_leg(),
            subject.size(clearance)
        )
    };
    if let Some(less) = skew::less(subject, |loss| loss.to_own_leg) {
        sentence.push_str(&format!(" That is {less}."));
    }
    let try_next = if spare < 0.0 {
        vec![
            format!(
                "Measure with the wheel in its fork: is the {part} drawn where it stands, and the tire as wide and as high as it is?"
            ),
            format!(
                "If the {part} passes ahead of or behind the tire, beside the drawn plane, say so in the field on the tire and its own leg."
            ),
            "Try a narrower tire, or a wheel set farther out on its axle, by the maker's data."
                .to_owned(),
        ]
    } else {
        vec!["Turn the wheel by hand on jacks and look at this gap all around.".to_owned()]
    };
    AnswerText { sentence, try_next }
}

/// Room along the trunnion, where that governs.
pub(super) fn room(subject: &Subject, row: usize, clearance: f64, spare: f64) -> AnswerText {
    let Some(room) = subject.result.clearance.room.rows.get(row) else {
        let text = format!(
            "{} has {} along its trunnion.",
            subject.own("tire"),
            gap(subject, clearance)
        );
        return AnswerText::new(text, []);
    };
    let (who, side, when) = (
        subject.own("tire"),
        side_words(subject, room.side),
        when(room.tire),
    );
    let mut sentence = if clearance <= 0.0 {
        format!(
            "{who} has no room {side}, along its trunnion{when}: {}.",
            interference(subject, clearance, spare)
        )
    } else if spare < 0.0 {
        format!(
            "{who} has {} {side}, along its trunnion{when}; {} is required, so {} is missing.",
            subject.size(clearance),
            subject.length(room.requirement.clearance),
            subject.size(-spare)
        )
    } else {
        format!(
            "on {} nothing touches. Tightest is the tire along its trunnion, {side}{when}: {}.",
            subject.the_leg(),
            subject.size(clearance)
        )
    };
    if let Some(less) = skew::less(subject, |loss| loss.along_trunnion) {
        sentence.push_str(&format!(" That is {less}."));
    }
    let look = "Measure it again: straightedge across the well, from the middle of the tire to the nearest thing, at several places of its way.";
    AnswerText::new(sentence, [look])
}

/// Parts of its own leg, and sides along the trunnion, that the tire touches or comes too near to, each
/// once and with whether it touches; where the well does not govern, one of them is told already.
pub(super) fn own_too_near(subject: &Subject, well_governs: bool) -> Vec<(bool, String)> {
    let clearance = &subject.result.clearance;
    let mut found: Vec<(f64, f64, String)> = Vec::new();
    let own = clearance.own.iter().map(|own| {
        let name = format!("tire at its own {}", part_name(own.part));
        (own.tightest.clearance, own.spare(), name)
    });
    let room = clearance.room.rows.iter().map(|room| {
        let name = format!(
            "tire along the trunnion, {}",
            side_words(subject, room.side)
        );
        (room.clearance, room.spare(), name)
    });
    for row in own.chain(room).filter(|(_, spare, _)| *spare < 0.0) {
        match found.iter_mut().find(|(.., name)| *name == row.2) {
            Some(known) if row.0 < known.0 => *known = row,
            Some(_) => {}
            None => found.push(row),
        }
    }
    // contact before spare, as the governing row was found
    sort_by(&mut found, |a, b| governing_order((a.0, a.1), (b.0, b.1)));
    found
        .into_iter()
        .skip(usize::from(!well_governs))
        .map(|(clearance, _, name)| (clearance <= 0.0, name))
        .collect()
}

fn when(tire: TireState) -> &'static str {
    match tire {
        TireState::Grown => " when it has grown",
        TireState::New => " as fitted new",
    }
}

/// A side of the drawn plane.
pub(crate) fn side_words(subject: &Subject, side: RoomSide) -> &'static str {
    match (subject.result.view, side) {
        (View::Front, RoomSide::Near) => "ahead of it",
        (View::Front, RoomSide::Far) => "behind it",
        (View::Side, RoomSide::Near) => "to its left",
        (View::Side, RoomSide::Far) => "to its right",
    }
}

/// What an answer on clearance rests on besides its figures: skews, room, and the wheel's own leg.
pub(super) fn lines(subject: &Subject) -> Vec<Governing> {
    let mut lines = Vec::new();
    lines.extend(own_line(subject));
    lines.extend(not_checked_line(subject));
    lines.extend(skew::line(subject));
    lines.push(room_line(subject));
    lines.into_iter().map(Governing::plain).collect()
}

fn own_line(subject: &Subject) -> Option<String> {
    let least = |state| {
        let rows = subject.result.clearance.own.iter();
        rows.filter(|row| row.tire == state)
            .min_by(|a, b| a.tightest.clearance.total_cmp(&b.tightest.clearance))
    };
    let (new, grown) = (least(TireState::New)?, least(TireState::Grown)?);
    let to = |row: &OwnClearance| {
        format!(
            "{} to the {}",
            gap(subject, row.tightest.clearance),
            part_name(row.part)
        )
    };
    let less = skew::less(subject, |loss| loss.to_own_leg)
        .map_or_else(String::new, |less| format!("; {less}"));
    let said = if new.part == grown.part {
        format!(
            "{} as fitted new, {} when it has grown",
            to(new),
            gap(subject, grown.tightest.clearance)
        )
    } else {
        format!("{} as fitted new, {} when it has grown", to(new), to(grown))
    };
    Some(format!(
        "The tire and its own leg, brace and actuator: {said}{less}."
    ))
}

fn not_checked_line(subject: &Subject) -> Option<String> {
    let skipped = &subject.result.clearance.own_not_checked;
    let names = |why| {
        let names: Vec<&str> = skipped
            .iter()
            .filter(|skipped| skipped.why == why)
            .map(|skipped| part_name(skipped.part))
            .collect();
        (!names.is_empty()).then(|| names.join(", "))
    };
    let said: Vec<String> = [
        (
            NotChecked::BesideWheel,
            "in a side view they stand beside the wheel",
        ),
        (NotChecked::LeftOut, "left out, as set for this leg"),
        (NotChecked::NoOutline, "no outline is drawn"),
        (
            NotChecked::Unresolved,
            "this program could not tell: it gave up there",
        ),
    ]
    .into_iter()
    .filter_map(|(why, words)| Some(format!("{} ({words})", names(why)?)))
    .collect();
    (!said.is_empty()).then(|| {
        format!(
            "Not checked against its own leg: the tire to its {}. Turn the wheel on jacks and look.",
            said.join("; ")
        )
    })
}

fn room_line(subject: &Subject) -> String {
    let room = &subject.result.clearance.room;
    let row = |side, tire| {
        room.rows
            .iter()
            .find(|row| row.side == side && row.tire == tire)
    };
    let both = |row: &RoomClearance| gap(subject, row.clearance);
    let mut given = Vec::new();
    let mut missing = Vec::new();
    for side in [RoomSide::Near, RoomSide::Far] {
        match (row(side, TireState::New), row(side, TireState::Grown)) {
            (Some(new), Some(grown)) => given.push(format!(
                "{} as fitted new and {} when it has grown {}",
                both(new),
                both(grown),
                side_words(subject, side)
            )),
            _ => missing.push(side),
        }
    }
    let mut said = Vec::new();
    if !given.is_empty() {
        let less = skew::less(subject, |loss| loss.along_trunnion)
            .map_or_else(String::new, |less| format!(", {less}"));
        said.push(format!(
            "Along its trunnion the tire has {}{less}.",
            given.join(", ")
        ));
    }
    let reach = subject.length(room.reach_grown);
    let beside = match (subject.result.view, missing.as_slice()) {
        (_, []) => None,
        (View::Front, [_, _]) => Some("ahead of and behind its middle"),
        (View::Side, [_, _]) => Some("to the left and right of its middle"),
        (View::Front, [RoomSide::Near]) => Some("ahead of its middle"),
        (View::Front, _) => Some("behind its middle"),
        (View::Side, [RoomSide::Near]) => Some("to the left of its middle"),
        (View::Side, _) => Some("to the right of its middle"),
    };
    if let Some(beside) = beside {
        said.push(format!(
            "The tire reaches {reach} {beside}: look there. Walls, doors, caliper, hub cap and valve out of the drawn plane are not checked."
        ));
    }
    said.join(" ")
}
