//! The cheapest check that tells the best two explanations apart.
use super::explain::Case;
use super::place::COVERAGE;
use super::source::Held;
use crate::model::{PumpSeen, Shortening};
use crate::result::{Check, Explanation, Finds, Fit, NextCheck, StopCause};

/// The cheapest first (common practice).
const CHECKS: [Check; 14] = [
    Check::PumpRuns,
    Check::Breaker,
    Check::Contact,
    Check::StrutLength,
    Check::RestVolts,
    Check::Gauge,
    Check::CutOut,
    Check::Posts,
    Check::MotorVolts,
    Check::EndSwitch,
    Check::FullBattery,
    Check::StrokeLeft,
    Check::ByHand,
    Check::DragsAll,
];

/// Numbers differ when they do by so many standard uncertainties (ratio).
const CLEARLY: f64 = 3.0;

/// The next check, by the explanations in order of their scores.
pub(super) fn next_check(case: &Case, weighed: &[(Explanation, Held)]) -> Option<NextCheck> {
    let mut left = weighed
        .iter()
        .enumerate()
        .filter(|(_, (one, _))| one.fit != Fit::RuledOut);
    let (_, first) = left.next()?;
    let (second, other) = left.next()?;
    CHECKS.into_iter().find_map(|check| {
        let if_first = case.finds(check, first)?;
        let if_second = case.finds(check, other)?;
        case.differ(if_first, if_second).then_some(NextCheck {
            check,
            if_first,
            second,
            if_second,
        })
    })
}

fn yes(is: bool) -> Finds {
    if is { Finds::Yes } else { Finds::No }
}

impl Case<'_> {
    /// What a check finds if an explanation holds; `None` = it says nothing, or was made already.
    fn finds(&self, check: Check, (one, held): &(Explanation, Held)) -> Option<Finds> {
        use StopCause as C;
        let cause = &one.cause;
        match check {
            Check::PumpRuns => {
                let is_new = self.seen.pump == PumpSeen::NotNoticed;
                held.runs.filter(|_| is_new).map(yes)
            }
            // what passes its rating and stands with the pump stopped has tripped it
            Check::Breaker => (self.seen.pump == PumpSeen::Stopped).then(|| yes(held.may_trip)),
            Check::Contact => match cause {
                C::Touches { .. } | C::StrutLong { .. } => Some(Finds::Yes),
                C::HeldThere { .. } => None,
                _ => Some(Finds::No),
            },
            Check::StrutLength => match (cause, &self.leg.strut.shortening) {
                (C::StrutLong { missing, .. }, _) => Some(Finds::Length(*missing)),
                // any length up to all of it
                (C::StrutStays { .. }, Shortening::BeforeSwing { amount }) => {
                    Some(Finds::Length(*amount))
                }
                (_, Shortening::BeforeSwing { .. }) => Some(Finds::Length(0.0)),
                _ => None,
            },
            Check::RestVolts => {
                let rest = self.head.rest_voltage()?;
                Some(Finds::Voltage(match cause {
                    C::BatteryLow { open_circuit, .. } => *open_circuit,
                    _ => rest,
                }))
            }
            Check::Gauge => {
                let is_new = self.seen.pressure.is_none();
                held.pressure.filter(|_| is_new).map(Finds::Pressure)
            }
            Check::CutOut => match cause {
                C::PressureSwitchLow { opens, .. } => Some(Finds::Pressure(*opens)),
                _ => self.head.cuts_out(held).map(Finds::Pressure),
            },
            Check::Posts => {
                let is_new = self.seen.voltage.is_none();
                held.voltage.filter(|_| is_new).map(Finds::Voltage)
            }
            Check::MotorVolts => held.at_motor.map(Finds::Voltage),
            Check::EndSwitch => self
                .head
                .stops_by_position()
                .then(|| yes(matches!(cause, C::SwitchEarly { .. }))),
            Check::FullBattery => match cause {
                C::BatteryLow { .. } | C::BatteryResists { .. } => Some(Finds::Yes),
                C::ForceShort { .. } | C::BadContact { .. } | C::SourceWeak { .. } => None,
                C::Friction { .. } | C::PressureSwitchLow { .. } => None,
                _ => held.voltage.map(|_| Finds::No),
            },
            Check::StrokeLeft => match cause {
                C::ActuatorEnds { .. } => Some(Finds::Length(0.0)),
                _ => {
                    let row = self.way.nearest(self.stood.place.travel);
                    row.map(|row| Finds::Length(row.stroke_left))
                }
            },
            Check::DragsAll => match cause {
                C::Friction { .. } => Some(Finds::Yes),
                C::HeldThere { .. } => Some(Finds::No),
                _ => None,
            },
            Check::ByHand => match cause {
                C::Friction { .. } | C::HeldThere { .. } | C::Binds { .. } => Some(Finds::Yes),
                C::Touches { .. } | C::StrutLong { .. } | C::Jams { .. } => None,
                _ => Some(Finds::No),
            },
        }
    }

    fn differ(&self, a: Finds, b: Finds) -> bool {
        let clearly = |a: f64, b: f64, one: f64| (a - b).abs() > CLEARLY * one;
        match (a, b) {
            (Finds::Pressure(a), Finds::Pressure(b)) => clearly(a, b, self.gauge()),
            (Finds::Voltage(a), Finds::Voltage(b)) => {
                clearly(a, b, self.seen.voltage_within / COVERAGE)
            }
            (Finds::Length(a), Finds::Length(b)) => clearly(a, b, self.drawing()),
            (a, b) => a != b,
        }
    }
}
