//! Faults of what was seen on the jacks.
use super::ranges;
use super::visit::Visit;
use crate::model::{HowFar, SeenStop};

pub(super) fn visit(v: &mut Visit, stop: &SeenStop) {
    let mut number = |path: &str, value, range| {
        v.number(format_args!("seen_stop.{path}"), value, range);
    };
    match &stop.how_far {
        HowFar::Travel { travel, within } => {
            number("how_far.travel.travel", *travel, ranges::TRAVEL);
            number(
                "how_far.travel.travel_within",
                *within,
                ranges::SHARE_WITHIN,
            );
        }
        HowFar::Angle { angle, within } => {
            number("how_far.angle.angle_rad", *angle, ranges::ANGLE);
            number(
                "how_far.angle.angle_within_rad",
                *within,
                ranges::ANGLE_WITHIN,
            );
        }
        HowFar::ActuatorPins { distance, within } => {
            let at = "how_far.actuator_pins";
            number(&format!("{at}.pins_apart_m"), *distance, ranges::SIZE);
            number(
                &format!("{at}.pins_within_m"),
                *within,
                ranges::LENGTH_WITHIN,
            );
        }
        HowFar::AxleFrom {
            distance, within, ..
        } => {
            let at = "how_far.axle_from";
            number(&format!("{at}.axle_apart_m"), *distance, ranges::SIZE);
            number(
                &format!("{at}.axle_within_m"),
                *within,
                ranges::LENGTH_WITHIN,
            );
        }
    }
    for (key, value, range) in [
        (
            "gauge_within_pa",
            stop.pressure_within,
            ranges::PRESSURE_WITHIN,
        ),
        (
            "posts_within_v",
            stop.voltage_within,
            ranges::VOLTAGE_WITHIN,
        ),
        (
            "drawing_within_m",
            stop.drawing_within,
            ranges::LENGTH_WITHIN,
        ),
        ("forces_within", stop.forces_within, ranges::SHARE_WITHIN),
    ] {
        number(key, value, range);
    }
    if let Some(pressure) = stop.pressure {
        number("gauge_pa", pressure, ranges::BACK_PRESSURE);
    }
    if let Some(voltage) = stop.voltage {
        number("posts_v", voltage, ranges::VOLTAGE);
    }
    if let HowFar::AxleFrom { from, .. } = &stop.how_far {
        v.point(format_args!("seen_stop.how_far.axle_from.from_m"), *from);
    }
}
