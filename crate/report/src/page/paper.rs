//! What stands on paper.
use gearswing_gear::field::{Axis, Field, Group, Kind, Path, Value, value_paths};
use gearswing_gear::model::{Brace, Gear, KneeGiven};
use gearswing_units::{Quantity, UnitChoice, format};

use super::link::Reach;
use super::worked::{Worked, worked_words};
use crate::compared::value_words;
use crate::fields::{group_title, label};
use crate::name::name_words;
use crate::subject::{obstacle_words, spring_words};

/// Over everything.
pub const TITLE: &str = "Landing gear by Gearswing";

/// Heads of the lines at the top.
pub const AIRPLANE: &str = "Airplane";
/// Its note.
pub const NOTE: &str = "Note";
/// When it was printed.
pub const DATE: &str = "Printed";
/// What tells the file from any other.
pub const CHECKSUM: &str = "Checksum of the gear file (CRC-32)";
/// Which build.
pub const PROGRAM: &str = "Worked out by";

/// Head of the line that says why there is no link on the paper.
pub const LINK: &str = "Link";
/// There is none since the page is open where nobody else reaches it.
pub const NO_CODE_HERE: &str = "none: this page is open at an address that only this computer reaches. Under Link you can put in one that others have";
/// There is none since the gear is too long for one.
pub const NO_CODE: &str =
    "none: this gear is too long for a link. Send the file, or the page as one HTML file";

/// Under the QR code: where it leads, and whom it reaches.
#[must_use]
pub fn code_caption(address: &str, reach: Reach) -> String {
    match reach {
        Reach::Network => format!("Opens this gear at {address}, in the same network only"),
        Reach::Machine | Reach::Everywhere => format!("Opens this gear at {address}"),
    }
}

/// At the top of the paper of one leg of several.
#[must_use]
pub fn one_leg(leg: &str) -> String {
    format!("These sheets cover one leg only: {leg}.")
}

/// Heading of what somebody says about the gear.
pub const NOTES: &str = "Notes";

/// Heading of the verdicts.
pub const VERDICTS: &str = "Verdicts";
/// Heading of the answers of a leg.
pub const ANSWERS: &str = "Answers";
/// In the place of answers that there are not.
pub const NOT_WORKED_OUT: &str =
    "As it is put in, this leg cannot be worked out: there is no answer.";

/// There is no drawing to save.
pub const NO_PICTURE: &str =
    "There is no drawing to save: this leg cannot be worked out as it is put in.";

/// Before what an answer rests on.
pub const RESTS_ON: &str = "It rests on:";
/// Before what to try.
pub const TO_TRY: &str = "What to try:";
/// Heading of the curves.
pub const CURVES: &str = "Curves over travel";
/// Heading of the measurements of a leg.
pub const MEASUREMENTS: &str = "Measurements";
/// Heading of those of the whole gear.
pub const WHOLE_GEAR: &str = "The whole gear";
/// Heading of the run against time.
pub const AGAINST_TIME: &str = "Against time";
/// Heading of the cautions.
pub const CAUTIONS: &str = "Before you rely on it";
/// Heading of what is left out.
pub const LEFT_OUT: &str = "What the model leaves out";
/// Heading of the lines to sign on.
pub const SIGNED: &str = "Seen by";

/// What a signature here is not.
pub const NO_APPROVAL: &str = "This sheet is a record of figures and no approval. The maker's data, the regulations of your country, and the inspection and signature of a certificated mechanic, repairman or licensed engineer decide.";

/// What is written on the lines below.
pub const SIGN: [&str; 3] = ["Name and certificate", "Signature", "Date"];

/// Under a drawing: its leg, the place, and its scale on paper.
#[must_use]
pub fn drawing_caption(leg: &str, scale: f64) -> String {
    format!("{leg}. Scale 1:{scale:.0} when printed at 100 %: measure the scale bar to check it.")
}

/// Under a detail: its letter, its scale on paper, the travel and what is measured there.
#[must_use]
pub fn detail_caption(letter: &str, ratio: f64, travel: &str, value: &str) -> String {
    let ratio = if ratio >= 1.0 {
        format!("{ratio:.1}:1")
    } else {
        format!("1:{:.1}", 1.0 / ratio)
    };
    format!("Detail {letter} ({ratio}), {travel}: {value}")
}

/// A group of measurements: its title, and a name and a value in each row.
pub type Measured = (String, Vec<[String; 2]>);

/// Every measurement of the gear itself or of a leg of it, group by group; what is left empty is left out.
#[must_use]
pub fn measurements(gear: &Gear, leg: Option<usize>, units: UnitChoice) -> Vec<Measured> {
    let own = |path: &Path| {
        path.field.is_of_leg() == leg.is_some() && leg.is_none_or(|leg| path.leg == leg)
    };
    let mut groups: Vec<Measured> = Vec::new();
    let asked = |path: &Path| path.is_asked(gear);
    for path in value_paths(gear).into_iter().filter(own).filter(asked) {
        let Some(value) = path.value(gear) else {
            continue;
        };
        let is_text = matches!(path.field.info().kind, Kind::Text);
        let nothing = value == Value::Empty || value == Value::Text(String::new()) && is_text;
        // the note stands at the top
        if nothing || path.field == Field::GearNote || path.field == Field::GearName {
            continue;
        }
        let title = title_of(gear, path);
        if let Some(links) = links_instead(gear, path, units) {
            // once, in the place of both coordinates
            if path.axis != Some(Axis::Y)
                && let Some((_, rows)) = groups.iter_mut().find(|(known, _)| *known == title)
            {
                rows.extend(links);
            }
            continue;
        }
        let row = [label(path, gear), value_words(path, &value, gear, units)];
        match groups.iter_mut().find(|(known, _)| *known == title) {
            Some((_, rows)) => rows.push(row),
            None => groups.push((title, vec![row])),
        }
    }
    groups
}

/// What stands on paper in the place of a knee that is put in by its links.
fn links_instead(gear: &Gear, path: Path, units: UnitChoice) -> Option<[[String; 2]; 3]> {
    let Brace::Folding(brace) = &gear.legs.get(path.leg)?.brace else {
        return None;
    };
    if path.field != Field::Knee || brace.knee_given != KneeGiven::Measured {
        return None;
    }
    let [upper, lower, offset] = brace.measured();
    let row = |worked, si| {
        let (label, _) = worked_words(worked);
        [label.to_owned(), format(Quantity::Length, units, si)]
    };
    Some([
        row(Worked::UpperLink, upper),
        row(Worked::LowerLink, lower),
        row(Worked::OverCenter, offset),
    ])
}

/// Title of the group of a field, with the name of its spring or piece.
fn title_of(gear: &Gear, path: Path) -> String {
    let group = path.field.info().group;
    let title = group_title(group);
    let leg = gear.legs.get(path.leg);
    let part = match group {
        Group::Springs => leg
            .and_then(|leg| leg.springs.get(path.entry))
            .map(|spring| spring_words(&spring.name, path.entry)),
        Group::Well => leg
            .and_then(|leg| leg.well.get(path.entry))
            .map(|piece| obstacle_words(&piece.name, path.entry)),
        _ => None,
    };
    match part {
        Some(part) => format!("{title}: {}", name_words(&part)),
        None => title.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gearswing_samples::full::full_gears;

    /// Every number of a gear stands on paper once, and no title twice in a row.
    #[test]
    fn every_measurement_is_there() {
        for gear in full_gears() {
            let of_legs = (0..gear.legs.len()).map(Some);
            let all: Vec<Measured> = std::iter::once(None)
                .chain(of_legs)
                .flat_map(|leg| measurements(&gear, leg, UnitChoice::METRIC))
                .collect();
            let rows: usize = all.iter().map(|(_, rows)| rows.len()).sum();
            let numbers = value_paths(&gear).into_iter().filter(|path| {
                matches!(path.value(&gear), Some(Value::Number(_) | Value::Points(_)))
            });
            assert!(rows >= numbers.count() && rows > 60);
            assert!(
                all.iter()
                    .all(|(title, rows)| !title.is_empty() && !rows.is_empty())
            );
        }
    }
}
