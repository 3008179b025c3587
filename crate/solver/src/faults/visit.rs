//! Visits every field and reports every fault.
//!
//! A number that is not finite or out of its range can hide relations that it takes part in: those
//! are checked only between sound numbers.
use std::fmt::Arguments;

use super::ranges::{self, Range};
use super::{Fault, FaultKind, Faults, leg, outline, seen, springs, supply};
use crate::model::{Gear, Point};

/// Most legs, points of an outline, obstacles and table rows that a model may have.
pub const MOST_ITEMS: usize = 200;
/// Least distance between joints that may not coincide [m].
pub const LEAST_JOINT_DISTANCE: f64 = 1e-3;

/// Collects faults under a path.
pub(super) struct Visit {
    leg: Option<usize>,
    faults: Vec<Fault>,
}

impl Visit {
    #[inline(never)]
    pub(super) fn fault(&mut self, path: Arguments<'_>, kind: FaultKind) {
        let path = match self.leg {
            Some(leg) => format!("legs[{leg}].{path}"),
            None => path.to_string(),
        };
        self.faults.push(Fault {
            leg: self.leg,
            path,
            kind,
        });
    }

    fn end(self) -> Result<(), Faults> {
        if self.faults.is_empty() {
            Ok(())
        } else {
            Err(Faults(self.faults))
        }
    }

    /// Path of a field of the present leg, to name it in another field's fault.
    pub(super) fn path(&self, path: &str) -> String {
        match self.leg {
            Some(leg) => format!("legs[{leg}].{path}"),
            None => path.to_owned(),
        }
    }

    /// Checks a number; true when sound.
    #[inline(never)]
    pub(super) fn number(&mut self, path: Arguments<'_>, value: f64, range: Range) -> bool {
        let Range { min, max } = range;
        if !value.is_finite() {
            self.fault(path, FaultKind::NotFinite);
        } else if value < min || value > max {
            self.fault(path, FaultKind::OutOfRange { value, min, max });
        } else {
            return true;
        }
        false
    }

    /// Checks a number that may be absent.
    #[inline(never)]
    pub(super) fn option(&mut self, path: Arguments<'_>, value: Option<f64>, range: Range) {
        if let Some(value) = value {
            self.number(path, value, range);
        }
    }

    /// Checks a point; true when sound.
    #[inline(never)]
    pub(super) fn point(&mut self, path: Arguments<'_>, point: Point) -> bool {
        let Range { min, max } = ranges::COORDINATE;
        for (axis, value) in [point.x, point.y].into_iter().enumerate() {
            let kind = if !value.is_finite() {
                FaultKind::NotFinite
            } else if value < min || value > max {
                FaultKind::OutOfRange { value, min, max }
            } else {
                continue;
            };
            self.fault(format_args!("{path}[{axis}]"), kind);
            return false;
        }
        true
    }

    /// Checks that two joints are apart.
    #[inline(never)]
    pub(super) fn apart(&mut self, path: &str, point: Point, other: &str, other_point: Point) {
        let distance = (point - other_point).norm();
        if distance < LEAST_JOINT_DISTANCE {
            let other = self.path(other);
            self.fault(
                format_args!("{path}"),
                FaultKind::Coincident {
                    other,
                    distance,
                    least: LEAST_JOINT_DISTANCE,
                },
            );
        }
    }

    /// Checks that a number is below another field's.
    #[inline(never)]
    pub(super) fn below(&mut self, path: &str, value: f64, other: &str, limit: f64) {
        if value >= limit {
            let other = self.path(other);
            self.fault(
                format_args!("{path}"),
                FaultKind::NotBelow {
                    value,
                    other,
                    limit,
                },
            );
        }
    }

    /// Checks a count; true when it may be gone through.
    #[inline(never)]
    pub(super) fn count(&mut self, path: Arguments<'_>, count: usize) -> bool {
        if count > MOST_ITEMS {
            self.fault(
                path,
                FaultKind::TooMany {
                    count,
                    allowed: MOST_ITEMS,
                },
            );
            return false;
        }
        true
    }

    /// Checks a closed outline that may be left out.
    pub(super) fn optional_outline(&mut self, path: Arguments<'_>, points: &[Point]) {
        if !points.is_empty() {
            outline::closed(self, path, points);
        }
    }

    fn gear(&mut self, gear: &Gear) {
        let c = &gear.conditions;
        self.number(
            format_args!("conditions.load_factor"),
            c.load_factor,
            ranges::LOAD_FACTOR,
        );
        self.number(format_args!("conditions.pitch_rad"), c.pitch, ranges::TILT);
        self.number(format_args!("conditions.bank_rad"), c.bank, ranges::BANK);
        self.number(
            format_args!("conditions.airspeed_m_s"),
            c.airspeed,
            ranges::AIRSPEED,
        );
        self.number(
            format_args!("conditions.sideslip_rad"),
            c.sideslip,
            ranges::TILT,
        );
        self.number(
            format_args!("conditions.air_density_kg_m3"),
            c.air_density,
            ranges::DENSITY,
        );
        self.option(
            format_args!("conditions.gear_speed_m_s"),
            c.gear_speed,
            ranges::AIRSPEED,
        );
        self.option(
            format_args!("conditions.stall_speed_m_s"),
            c.stall_speed,
            ranges::STALL_SPEED,
        );
        if let (Some(gear_speed), Some(stall_speed)) = (c.gear_speed, c.stall_speed) {
            self.below(
                "conditions.stall_speed_m_s",
                stall_speed,
                "conditions.gear_speed_m_s",
                gear_speed,
            );
        }
        self.option(
            format_args!("conditions.climb_pitch_rad"),
            c.climb_pitch,
            ranges::TILT,
        );
        self.option(
            format_args!("conditions.turn_load_factor"),
            c.turn_load_factor,
            ranges::LOAD_FACTOR,
        );
        supply::visit(self, &gear.supply);
        self.number(
            format_args!("fluid.density_kg_m3"),
            gear.fluid.density,
            ranges::FLUID_DENSITY,
        );
        let rule = &gear.clearance_rule;
        self.option(
            format_args!("clearance_rule.tire_new_m"),
            rule.tire_new,
            ranges::CLEARANCE,
        );
        self.option(
            format_args!("clearance_rule.tire_grown_m"),
            rule.tire_grown,
            ranges::CLEARANCE,
        );
        self.option(
            format_args!("clearance_rule.parts_m"),
            rule.parts,
            ranges::CLEARANCE,
        );
        self.option(
            format_args!("emergency_pump_pa"),
            gear.emergency_pump,
            ranges::PRESSURE,
        );
        self.option(
            format_args!("friction_times_required"),
            gear.friction_times_required,
            ranges::FRICTION_TIMES,
        );
        if gear.legs.is_empty() {
            self.fault(format_args!("legs"), FaultKind::NoLegs);
        }
        self.count(format_args!("legs"), gear.legs.len());
    }
}

/// Checks the gear's own fields and every leg. What was seen on the jacks is for [`check_stop`]: it
/// takes no part in any other answer.
///
/// # Errors
/// All faults.
pub fn check_gear(gear: &Gear) -> Result<(), Faults> {
    check(gear, 0..gear.legs.len().min(MOST_ITEMS))
}

/// Checks one leg and the gear's own fields, without what was seen on the jacks.
///
/// # Errors
/// All faults.
pub fn check_leg(gear: &Gear, leg: usize) -> Result<(), Faults> {
    check(gear, leg..leg.saturating_add(1))
}

/// Checks what was seen of one leg on the jacks.
///
/// # Errors
/// All faults.
pub fn check_stop(gear: &Gear, leg: usize) -> Result<(), Faults> {
    let mut visit = Visit {
        leg: Some(leg),
        faults: Vec::new(),
    };
    let stop = gear.legs.get(leg).and_then(|leg| leg.seen_stop.as_ref());
    if let Some(stop) = stop {
        seen::visit(&mut visit, stop);
    }
    visit.end()
}

fn check(gear: &Gear, legs: std::ops::Range<usize>) -> Result<(), Faults> {
    let mut visit = Visit {
        leg: None,
        faults: Vec::new(),
    };
    visit.gear(gear);
    for index in legs {
        if let Some(one) = gear.legs.get(index) {
            visit.leg = Some(index);
            let before = visit.faults.len();
            leg::visit(&mut visit, one, gear.driving_leg(index) == index);
            if visit.faults.len() == before {
                springs::on_the_way(&mut visit, one);
            }
            supply::drive(&mut visit, one, gear);
        }
    }
    visit.end()
}
