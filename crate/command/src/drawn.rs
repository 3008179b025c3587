//! The drawing of a leg, and the sheets that the page prints.
use gearswing_app::paper::{form, leg_svg, worked_out};
use gearswing_app::words::paper::{NO_PICTURE, TITLE};
use gearswing_gear::model::Gear;
use gearswing_report::name_words;

use crate::arguments::{Format, Request};
use crate::help::PROGRAM;
use crate::html::html;
use crate::run::UNUSABLE;

/// The page's own style of what it prints.
const STYLE: &str = include_str!("../../../www/paper.css");

/// The text asked for, and the exit code that is due to it alone.
///
/// # Errors
/// Why there is none, in words.
pub(crate) fn drawn(
    request: &Request,
    gear: &Gear,
    legs: &[usize],
) -> Result<(String, u8), String> {
    let mut state = worked_out(gear.clone(), PROGRAM, request.units);
    let one_leg = request.leg.is_some();
    if let (true, Some(&leg)) = (one_leg, legs.first()) {
        state.session.leg = leg;
    }
    match request.format {
        Format::Svg => match leg_svg(&state, state.session.leg) {
            Some(text) => Ok((text + "\n", 0)),
            None => Err(NO_PICTURE.to_owned()),
        },
        _ => {
            let title = format!("{TITLE}: {}", name_words(&gear.name));
            let text = html(&form(&state, "", !one_leg), &title, STYLE);
            let code = if gear.legs.is_empty() { UNUSABLE } else { 0 };
            Ok((text, code))
        }
    }
}
