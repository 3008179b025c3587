//! How the numbers that decide stand, and whether a change has made them better.
use gearswing_solver::result::{FindingDetail, LegResult};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

/// The numbers of a leg that decide; more is better.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stand {
    /// Least clearance, negative = interference (m).
    clearance: Option<f64>,
    /// Pressure or force to spare, as a share of what is there (ratio).
    margin: Option<f64>,
    /// How many times its friction the leg falls against (ratio).
    factor: Option<f64>,
}

impl Stand {
    /// Those of a result.
    #[must_use]
    pub fn of(result: &LegResult) -> Self {
        let mut stand = Self {
            factor: result.fall.as_ref().and_then(|fall| fall.friction_factor),
            ..Self::default()
        };
        for finding in &result.findings {
            match &finding.detail {
                FindingDetail::Tightest { clearance, .. }
                | FindingDetail::OwnTightest { clearance, .. }
                | FindingDetail::RoomTightest { clearance, .. } => {
                    stand.clearance = Some(*clearance);
                }
                FindingDetail::Pressure { margin, .. } if margin.is_finite() => {
                    stand.margin = Some(*margin);
                }
                _ => {}
            }
        }
        stand
    }
}

/// Change of a share and of a factor that is told (ratio).
const TOLD_SHARE: f64 = 5e-3;
const TOLD_FACTOR: f64 = 5e-3;

/// How they stand, one line each, and by how much better or worse than before; what neither has is left out.
#[must_use]
pub fn stand_lines(now: &Stand, before: &Stand, units: UnitChoice) -> Vec<String> {
    let length = |si: f64| format(Quantity::Length, units, si);
    let clearance = now.clearance.map(|value| {
        let by = before.clearance.map(|old| value - old);
        let by = by.map(|by| (by, length(by.abs()), length(by) == length(0.0)));
        part(
            "clearance",
            &format_signed(Quantity::Length, units, value),
            by,
        )
    });
    let percent = |share: f64| format!("{:.0} %", 100.0 * share);
    let margin = now.margin.map(|value| {
        let by = before.margin.map(|old| value - old);
        let by = by.map(|by| (by, percent(by.abs()), by.abs() < TOLD_SHARE));
        part("to spare", &percent(value), by)
    });
    let times = |factor: f64| format!("{factor:.2} times");
    let factor = now.factor.map(|value| {
        let by = before.factor.map(|old| value - old);
        let by = by.map(|by| (by, format!("{:.2}", by.abs()), by.abs() < TOLD_FACTOR));
        part("fall", &times(value), by)
    });
    [clearance, margin, factor].into_iter().flatten().collect()
}

/// One number and its change.
fn part(name: &str, value: &str, by: Option<(f64, String, bool)>) -> String {
    match by {
        Some((_, _, true)) | None => format!("{name} {value}"),
        Some((by, text, false)) if by > 0.0 => format!("{name} {value}, {text} better"),
        Some((_, text, false)) => format!("{name} {value}, {text} worse"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_which_way_is_better() {
        let stand = |clearance: f64, margin: f64, factor: f64| Stand {
            clearance: Some(clearance),
            margin: Some(margin),
            factor: Some(factor),
        };
        let words = |now, before| stand_lines(&now, &before, UnitChoice::METRIC).join("; ");
        assert_eq!(
            words(stand(-0.002, 0.5, 2.0), stand(-0.005, 0.53, 2.0)),
            "clearance −2.0 mm, 3.0 mm better; to spare 50 %, 3 % worse; fall 2.00 times"
        );
        assert_eq!(
            words(stand(0.01, 0.2, 1.5), Stand::default()),
            "clearance +10.0 mm; to spare 20 %; fall 1.50 times"
        );
        assert_eq!(words(Stand::default(), stand(0.01, 0.2, 1.5)), "");
    }
}
