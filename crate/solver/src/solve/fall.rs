//! The fall of a leg whose actuator has no power.
use std::sync::Arc;

use crate::fall;
use crate::model::{Conditions, Gear, Leg, Source};
use crate::prepared::{FallOf, PreparedLeg};
use crate::result::{Fall, Unpowered};

/// The fall of a leg in some conditions; `None` = it has none.
pub(super) fn without_power(
    gear: &Gear,
    swept: &PreparedLeg,
    conditions: Conditions,
) -> Arc<Option<Fall>> {
    let of = FallOf {
        fluid: gear.fluid,
        conditions,
        times: gear.friction_times(),
        electric: matches!(gear.supply.source, Source::ElectricActuators),
    };
    swept.fall(of, || find(swept, &of))
}

fn find(swept: &PreparedLeg, of: &FallOf) -> Option<Fall> {
    let (leg, linkage) = (swept.leg(), swept.linkage());
    let fall_of = |leg: &Leg| fall::fall_of(leg, linkage, &of.fluid, &of.conditions, of.times);
    if !of.electric {
        return fall_of(leg);
    }
    let fall = fall_of(&leg.without_power())?;
    Some(Fall {
        actuator: match leg.back_drive() {
            Some(_) => Unpowered::DrivenBack,
            None => Unpowered::Released,
        },
        ..fall
    })
}
