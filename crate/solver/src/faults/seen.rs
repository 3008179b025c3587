//! Faults of what was seen on the jacks.
use super::ranges;
use super::visit::Visit;
use crate::model::{HowFar, SeenStop};

pub(super) fn visit(v: &mut Visit, stop: &SeenStop) {
    let mut option = |path: &str, value, range| {
        v.option(format_args!("seen_stop.{path}"), value, range);
    };
    match &stop.how_far {
        HowFar::Travel { travel, within } => {
            option("how_far.travel.travel", *travel, ranges::TRAVEL);
            option(
                "how_far.travel.travel_within",
                Some(*within),
                ranges::SHARE_WITHIN,
            );
        }
        HowFar::Angle { angle, within } => {
            option("how_far.angle.angle_rad", *angle, ranges::ANGLE);
            option(
                "how_far.angle.angle_within_rad",
                Some(*within),
                ranges::ANGLE_WITHIN,
            );
        }
        HowFar::ActuatorPins { distance, within } => {
            let at = "how_far.actuator_pins";
            option(&format!("{at}.pins_apart_m"), *distance, ranges::SIZE);
            option(
                &format!("{at}.pins_within_m"),
                Some(*within),
                ranges::LENGTH_WITHIN,
            );
        }
        HowFar::AxleFrom {
            distance, within, ..
        } => {
            let at = "how_far.axle_from";
            option(&format!("{at}.axle_apart_m"), *distance, ranges::SIZE);
            option(
                &format!("{at}.axle_within_m"),
                Some(*within),
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
        option(key, Some(value), range);
    }
    option("gauge_pa", stop.pressure, ranges::BACK_PRESSURE);
    option("posts_v", stop.voltage, ranges::VOLTAGE);
    if let HowFar::AxleFrom { from, .. } = &stop.how_far {
        v.point(format_args!("seen_stop.how_far.axle_from.from_m"), *from);
    }
}
