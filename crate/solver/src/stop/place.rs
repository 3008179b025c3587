//! From what was measured to travel.
use super::StopError;
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::{HowFar, Leg, SeenStop};
use crate::result::{Phase, Place};

/// Half-widths are two standard uncertainties (ratio) (JCGM 100:2008, 2.3.5).
pub(super) const COVERAGE: f64 = 2.0;

/// A length that is the same to within its reading over more than twice this share of the way says
/// nothing of the place (ratio).
const WIDEST: f64 = 0.25;

/// Where a leg stood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stood {
    /// Place.
    pub place: Place,
    /// Standard uncertainty of its travel (ratio).
    pub uncertainty: f64,
}

/// Turns what was measured into a place.
pub(super) fn stood(
    leg: &Leg,
    linkage: &Linkage,
    sweep: &Sweep,
    seen: &SeenStop,
) -> Result<Stood, StopError> {
    let by_length = |distance: f64, within: f64, of: &dyn Fn(&Pose) -> f64| {
        let points: Vec<(f64, f64)> = sweep
            .poses
            .iter()
            .filter(|pose| pose.place.phase == Phase::Swing)
            .map(|pose| (pose.place.travel, of(pose)))
            .collect();
        travel_at(&points, distance, within)
    };
    let (travel, within) = match &seen.how_far {
        HowFar::Travel { travel, within } => (entered(*travel)?, *within),
        HowFar::Angle { angle, within } => {
            let (angle, swing) = (entered(*angle)?, leg.swing_up.abs());
            if angle > swing + within {
                return Err(StopError::BeyondSwing { seen: angle, swing });
            }
            (angle / swing, within / swing)
        }
        HowFar::ActuatorPins { distance, within } => {
            by_length(entered(*distance)?, *within, &|pose| pose.actuator_length)?
        }
        HowFar::AxleFrom {
            from,
            distance,
            within,
        } => by_length(entered(*distance)?, *within, &|pose| {
            (pose.axle - from).norm()
        })?,
    };
    Ok(Stood {
        place: Place {
            phase: Phase::Swing,
            progress: linkage.progress_at_travel(travel),
            travel,
            swing: travel * leg.swing_up,
        },
        uncertainty: within / COVERAGE,
    })
}

fn entered(measured: Option<f64>) -> Result<f64, StopError> {
    measured.ok_or(StopError::HowFarNotEntered)
}

/// Travel at which a length, given at rising travel, is `seen`, and the half-width within which it
/// is so within `within`.
fn travel_at(points: &[(f64, f64)], seen: f64, within: f64) -> Result<(f64, f64), StopError> {
    let mut found: Vec<[f64; 2]> = Vec::new();
    let mut exact: Vec<f64> = Vec::new();
    for pair in points.windows(2) {
        let &[(s0, f0), (s1, f1)] = pair else {
            continue;
        };
        let share = |value: f64| (value - f0) / (f1 - f0);
        let flat_and_off = f1 == f0 && (f0 - seen).abs() > within;
        let (a, b) = if f1 == f0 {
            (0.0, 1.0)
        } else {
            (share(seen - within), share(seen + within))
        };
        let (low, high) = (a.min(b).max(0.0), a.max(b).min(1.0));
        if flat_and_off || low > high {
            continue;
        }
        let at = |share: f64| s0 + share * (s1 - s0);
        match found.last_mut() {
            Some(last) if at(low) <= last[1] + 1e-12 => last[1] = at(high),
            _ => found.push([at(low), at(high)]),
        }
        let middle = share(seen);
        if f1 != f0 && (0.0..=1.0).contains(&middle) {
            exact.push(at(middle));
        }
    }
    match found.as_slice() {
        [[low, high]] => {
            let own = exact.iter().copied();
            let (sum, count) = own.fold((0.0, 0.0), |(sum, count), x| (sum + x, count + 1.0));
            let middle = if count > 0.0 {
                sum / count
            } else {
                0.5 * (low + high)
            };
            let half = 0.5 * (high - low);
            if half > WIDEST {
                return Err(StopError::SaysNothing { seen });
            }
            Ok((middle, half))
        }
        [[_, first], [second, _], ..] => Err(StopError::Ambiguous {
            seen,
            first: *first,
            second: *second,
        }),
        [] => {
            let nearest = points
                .iter()
                .min_by(|a, b| (a.1 - seen).abs().total_cmp(&(b.1 - seen).abs()));
            let &(travel, nearest) = nearest.ok_or(StopError::NotDriven)?;
            Err(StopError::NotOnTheWay {
                seen,
                nearest,
                travel,
            })
        }
    }
}
