//! The drawing of a leg, and the sheets that the page prints.
use gearswing_app::paper::{Block, form, leg_svg, worked_out};
use gearswing_app::words::paper::{NO_PICTURE, TITLE};
use gearswing_gear::model::Gear;
use gearswing_report::{WITH_PREVIOUS_TIRE, name_words};

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
    (gear, previous): (&Gear, bool),
    legs: &[usize],
) -> Result<(String, u8), String> {
    let mut state = worked_out(gear.clone(), PROGRAM, request.units);
    let one_leg = request.leg.is_some();
    if let (true, Some(&leg)) = (one_leg, legs.first()) {
        state.session.leg = leg;
    }
    match request.format {
        Format::Svg => {
            // without one asked for, another leg where that with the worst answer cannot be drawn
            let all = 0..gear.legs.len();
            let others = all.filter(|_| !one_leg);
            let mut legs = std::iter::once(state.session.leg).chain(others);
            let text = legs.find_map(|leg| leg_svg(&state, leg));
            Ok((text.ok_or(NO_PICTURE)? + "\n", 0))
        }
        _ => {
            let title = format!("{TITLE}: {}", name_words(&gear.name));
            let mut blocks = form(&state, "", !one_leg);
            if previous {
                blocks.insert(0, Block::Text(WITH_PREVIOUS_TIRE.to_owned()));
            }
            let text = html(&blocks, &title, STYLE);
            let code = if gear.legs.is_empty() { UNUSABLE } else { 0 };
            Ok((text, code))
        }
    }
}
