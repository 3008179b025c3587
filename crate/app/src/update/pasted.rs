//! Points typed or pasted in one: a pair in the field of a coordinate, a list in that of a corner.
use gearswing_gear::field::stored_point;
use gearswing_gear::model::Point;
use gearswing_report::page::fields as sayings;
use gearswing_report::page::history::{Step, step_words};
use gearswing_units::{Quantity, UnitChoice, parse};

use crate::effect::Effect;
use crate::fields;
use crate::state::{Act, State};

/// The pair of lengths in a text: parted by a tab, a semicolon, a comma, or blanks where they can part it in one way
/// only.
pub(super) fn pair(text: &str, units: UnitChoice) -> Option<Point> {
    let length = |text: &str| Some(parse(Quantity::Length, units, text).ok()?.si);
    let point = |(x, y): (&str, &str)| Some(Point::new(length(x)?, length(y)?));
    let text = text.trim();
    // with a blank behind it a comma is none of a number
    for sign in ["\t", ";", ", ", ","] {
        if let Some(parts) = text.split_once(sign)
            // several commas may be those of decimals: none is known to part two numbers
            && (sign != "," || !parts.1.contains(sign) && !is_one_number(parts))
        {
            return point(parts);
        }
    }
    let blanks = text.match_indices(' ').map(|(at, _)| text.split_at(at));
    let mut found = blanks.filter_map(point);
    let first = found.next()?;
    // the same one again is of another of several blanks
    found.all(|other| other == first).then_some(first)
}

/// Whether the parts beside a bare comma may be one number: "15,125" is fifteen and an eighth to one reader and fifteen
/// thousand to another, and no pair to either.
fn is_one_number((before, after): (&str, &str)) -> bool {
    let digits = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
    digits(before.trim_start_matches(['-', '+'])) && digits(after) && after.len() >= 3
}

/// Puts what was pasted in the field of a coordinate into its place: a line a point.
pub(super) fn paste(state: &mut State, path: &str, text: &str) -> Vec<Effect> {
    let units = state.session.units;
    let lines = text.lines().filter(|line| !line.trim().is_empty());
    let mut points = Vec::new();
    for (at, line) in lines.enumerate() {
        match pair(line, units) {
            Some(point) => points.push(point),
            None => {
                let text = sayings::not_a_point(at + 1, line.trim());
                state.session.notices.problem(text.clone());
                return vec![Effect::Announce { text }];
            }
        }
    }
    let Some(point) = fields::point_of(path) else {
        return Vec::new();
    };
    let words = gearswing_report::fields::path_words(path, state.gear());
    let act = Act::single(step_words(Step::Change { of: &words }));
    if let Some(at) = fields::path(point) {
        for point in &mut points {
            *point = stored_point(state.gear(), at, *point);
        }
    }
    let first = points.first().copied();
    let count = points.len();
    let list = fields::entry(point).map(|(list, at)| (list.to_owned(), at));
    state.edit_place(act, path, |gear| match list {
        // at the first corner a list is the whole outline, elsewhere it goes on from there
        Some((list, at)) if fields::points(gear, &list).is_some() => {
            let old = gear.without_kept();
            let outline = fields::points_mut(gear, &list)?;
            if at == 0 && count > 1 {
                outline.clear();
            } else {
                let end = (at + count).min(outline.len());
                outline.drain(at.min(end)..end);
            }
            let at = at.min(outline.len());
            outline.splice(at..at, points);
            fields::keep_notes(&old, gear);
            Some(())
        }
        _ => fields::set_point(gear, point, first?).ok(),
    });
    // texts of corners that have got another number or place
    let stem = fields::entry(point).map_or(point, |(list, _)| list);
    state.session.drafts.retain(|of, _| !of.starts_with(stem));
    vec![Effect::Announce {
        text: sayings::points_taken(count),
    }]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pair_is_parted_in_one_way() {
        let inch = UnitChoice::default();
        let at = |x: f64, y: f64| Some((x, y));
        for (text, found) in [
            ("12, 4", at(12.0, 4.0)),
            ("12 3/8, -4 1/2", at(12.375, -4.5)),
            ("12 3/8\t-4 1/2", at(12.375, -4.5)),
            ("1.5;2", at(1.5, 2.0)),
            ("1.5,2", at(1.5, 2.0)),
            ("12 3/8 4 1/2", at(12.375, 4.5)),
            ("12   4", at(12.0, 4.0)),
            ("10 mm, 1 in", at(10.0 / 25.4, 1.0)),
            ("15,125", None),
            ("1,250", None),
            ("12", None),
            ("12, four", None),
            ("1, 2, 3", None),
            ("4.5,-28,7", None),
            ("4,5 -28,7", at(4.5, -28.7)),
            ("", None),
        ] {
            let read = pair(text, inch).map(|p| (p.x / 0.0254, p.y / 0.0254));
            let alike = match (read, found) {
                (Some(a), Some(b)) => (a.0 - b.0).abs() + (a.1 - b.1).abs() < 1e-12,
                (None, None) => true,
                _ => false,
            };
            assert!(alike, "{text}: {read:?}");
        }
    }
}
