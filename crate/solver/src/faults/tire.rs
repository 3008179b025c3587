//! Faults of a tire.
use super::visit::Visit;
use super::{FaultKind, ranges};
use crate::model::{Grown, Tire};

pub(super) fn visit(v: &mut Visit, path: &str, tire: &Tire) {
    let diameter = v.number(
        format_args!("{path}.diameter_m"),
        tire.diameter,
        ranges::SIZE,
    );
    let width = v.number(format_args!("{path}.width_m"), tire.width, ranges::SIZE);
    let rim = v.number(
        format_args!("{path}.rim_diameter_m"),
        tire.rim_diameter,
        ranges::SIZE,
    );
    let shoulder = v.number(
        format_args!("{path}.shoulder_radius_m"),
        tire.shoulder_radius,
        ranges::SIZE_OR_NONE,
    );
    if diameter && rim && tire.rim_diameter >= tire.diameter {
        v.below(
            &format!("{path}.rim_diameter_m"),
            tire.rim_diameter,
            &format!("{path}.diameter_m"),
            tire.diameter,
        );
    }
    if width && diameter && shoulder {
        let most = 0.5 * tire.width.min(tire.diameter);
        if tire.shoulder_radius > most {
            v.fault(
                format_args!("{path}.shoulder_radius_m"),
                FaultKind::OutOfRange {
                    value: tire.shoulder_radius,
                    min: 0.0,
                    max: most,
                },
            );
        }
    }
    if let Grown::Given {
        diameter: grown,
        width: grown_width,
        ..
    } = tire.grown
    {
        let at = format_args!("{path}.grown.given.diameter_m");
        let grown_sound = v.number(at, grown, ranges::SIZE);
        let at = format_args!("{path}.grown.given.width_m");
        let width_sound = v.number(at, grown_width, ranges::SIZE);
        // in service a tire is never smaller than new
        let mut not_smaller = |key: &str, value: f64, new: f64| {
            if value < new {
                v.fault(
                    format_args!("{path}.grown.given.{key}"),
                    FaultKind::OutOfRange {
                        value,
                        min: new,
                        max: ranges::SIZE.max,
                    },
                );
            }
        };
        if grown_sound && diameter {
            not_smaller("diameter_m", grown, tire.diameter);
        }
        if width_sound && width {
            not_smaller("width_m", grown_width, tire.width);
        }
    }
}
