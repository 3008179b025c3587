//! Choices and sets by path; what a new option starts with is worked out where the geometry says it.
use gearswing_gear::field::Field;
use gearswing_gear::model::{Gear, Grown, Tire};
use gearswing_solver::tires::grown_size;

use super::access::path;
use super::seen;

/// Key of the option taken at a path; `None` when there is no choice at that path.
#[must_use]
pub fn chosen(gear: &Gear, at: &str) -> Option<&'static str> {
    path(at)?.chosen(gear)
}

/// Takes an option; `None` = no such choice or option, nothing changed.
pub fn choose(gear: &mut Gear, at: &str, option: &str) -> Option<()> {
    let path = path(at)?;
    if path.chosen(gear)? == option {
        return Some(());
    }
    let leg = gear.legs.get(path.leg);
    let travel = leg.and_then(|leg| leg.seen_stop.as_ref()?.travel(leg.swing_up));
    path.choose(gear, option)?;
    let leg = gear.legs.get_mut(path.leg);
    match (path.field, leg) {
        (Field::TireGrown, Some(leg)) => put_grown(&mut leg.wheel.tire),
        (Field::SeenStop, Some(leg)) => {
            if let Some(travel) = travel {
                seen::store_distance(leg, travel);
            }
        }
        _ => {}
    }
    Some(())
}

/// A grown size that is given starts from that of the rule.
fn put_grown(tire: &mut Tire) {
    let by_rule = grown_size(&Tire {
        grown: Grown::ByRule,
        ..tire.clone()
    });
    if let Grown::Given {
        diameter, width, ..
    } = &mut tire.grown
    {
        (*diameter, *width) = (by_rule.diameter, by_rule.width);
    }
}

/// Moving parts that an obstacle is not checked against.
#[must_use]
pub fn ignored(gear: &Gear, at: &str) -> Option<Vec<&'static str>> {
    path(at)?.switched_on(gear)
}

/// Switches one of a set; `None` = no such set or option, nothing changed.
pub fn switch(gear: &mut Gear, at: &str, option: &str, on: bool) -> Option<()> {
    path(at)?.switch(gear, option, on)
}
