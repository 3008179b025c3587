//! Thrust by virtual work, pressures, and the worst places of the stroke.
use std::f64::consts::FRAC_PI_4;

use super::{Loads, free_bodies};
use crate::kinematics::{Linkage, Pose, Rates};
use crate::model::{Actuator, Leg, Supply, Vector};
use crate::result::{Force, ForcePeak, Place, Station, StationForce, Stroke};

/// Bore area and bore less rod area [m2]: πD²/4 and π(D² − d²)/4, textbook.
pub(crate) fn areas(actuator: &Actuator) -> (f64, f64) {
    let bore = FRAC_PI_4 * actuator.bore * actuator.bore;
    (bore, bore - FRAC_PI_4 * actuator.rod * actuator.rod)
}

/// Gauge pressure that makes `effort` [N] on `working` [m2] against the back pressure on `other`
/// [m2]; never below 0 [Pa].
fn pressure_for(effort: f64, working: f64, other: f64, back: f64) -> f64 {
    ((effort + back * other) / working).max(0.0)
}

/// Force and pressures at one pose; `None` where no finite thrust holds the leg.
///
/// Thrust by virtual work: thrust · dℓ + power of the loads = 0. Positive thrust pushes the pins
/// apart.
#[must_use]
pub fn station_force(
    leg: &Leg,
    supply: &Supply,
    linkage: &Linkage,
    pose: &Pose,
    gravity: Vector,
    wind: Vector,
) -> Option<StationForce> {
    let rate = pose.rates.actuator;
    if rate.abs() <= Rates::STILL * pose.actuator_length {
        return None;
    }
    let loads = Loads::new(leg, linkage, pose, gravity, wind);
    let holding = -loads.power(leg, linkage, pose) / rate;
    let reactions = free_bodies(leg, linkage, pose, &loads)?.reactions;
    let direction = rate.signum();
    let seals = leg.actuator.seal_friction;
    let retract_effort = direction * holding + seals;
    let extend_effort = -direction * holding + seals;
    let (bore, annulus) = areas(&leg.actuator);
    let (up, down) = if direction > 0.0 {
        (bore, annulus)
    } else {
        (annulus, bore)
    };
    let back = supply.return_pressure;
    Some(StationForce {
        holding,
        retract_effort,
        extend_effort,
        retract_pressure: pressure_for(retract_effort, up, down, back),
        extend_pressure: pressure_for(extend_effort, down, up, back),
        reactions,
    })
}

/// Sums the stations up: direction, worst places, stall.
#[must_use]
pub fn force_result(leg: &Leg, supply: &Supply, stations: &[Station]) -> Force {
    let (bore_area, annulus_area) = areas(&leg.actuator);
    let lengths = || stations.iter().map(|s| s.actuator_length);
    let first = lengths().next().unwrap_or(0.0);
    let last = lengths().next_back().unwrap_or(first);
    let stroke = if last >= first {
        Stroke::Push
    } else {
        Stroke::Pull
    };
    let longest = lengths().fold(f64::NEG_INFINITY, f64::max);
    let shortest = lengths().fold(f64::INFINITY, f64::min);
    let available = supply.available_pressure;
    let loaded = || {
        stations
            .iter()
            .filter_map(|s| s.force.map(|force| (s, force)))
    };
    let peak = |value: fn(&StationForce) -> (f64, f64)| {
        loaded()
            .max_by(|a, b| {
                let (pa, ea) = value(&a.1);
                let (pb, eb) = value(&b.1);
                pa.total_cmp(&pb).then(ea.total_cmp(&eb))
            })
            .map(|(station, force)| {
                let (pressure, effort) = value(&force);
                ForcePeak {
                    place: place_of(station),
                    effort,
                    pressure,
                    margin: (available - pressure) / available,
                    mount_load: force.reactions.mount.norm(),
                }
            })
    };
    Force {
        stroke,
        bore_area,
        annulus_area,
        stroke_used: if stations.is_empty() {
            0.0
        } else {
            longest - shortest
        },
        available_pressure: available,
        peak: peak(|f| (f.retract_pressure, f.retract_effort)),
        stalls_at: loaded()
            .find(|(_, force)| force.retract_pressure > available)
            .map(|(station, _)| place_of(station)),
        extend_peak: peak(|f| (f.extend_pressure, f.extend_effort)),
        largest_mount_load: loaded()
            .map(|(_, force)| force.reactions.mount.norm())
            .max_by(f64::total_cmp),
    }
}

pub(crate) fn place_of(station: &Station) -> Place {
    Place {
        phase: station.phase,
        progress: station.progress,
        travel: station.travel,
        swing: station.swing,
    }
}
