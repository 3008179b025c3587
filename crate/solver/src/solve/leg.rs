//! One call for a whole leg: check, swing, clear, push, lock, answer.
use std::sync::Arc;

use super::fall::without_power;
use super::forces::{forces, ready};
use super::options::Options;
use crate::answer::{LockCase, WayDownCase};
use crate::clearance::ClearanceOptions;
use crate::faults::Faults;
use crate::model::{Gear, Leg, Vector};
use crate::prepared::PreparedGear;
use crate::result::{Assumption, LegResult, LoadCase, Question};
use crate::{answer, lock, statics};

/// Solves one leg.
///
/// ```
/// use gearswing_solver::{Options, solve_leg};
///
/// let mut gear = gearswing_gearfile::DEMO.gear()?;
/// gear.legs[0].wheel.mass = -6.0;
/// gear.legs[0].wheel.tire.width = 0.0;
/// // every fault at once, by the path of its field in the gear file
/// let faults = solve_leg(&gear, 0, &Options::default()).unwrap_err();
/// let paths: Vec<&str> = faults.0.iter().map(|fault| fault.path.as_str()).collect();
/// assert!(paths.contains(&"legs[0].wheel.mass_kg"));
/// assert!(paths.contains(&"legs[0].wheel.tire.width_m"));
/// # Ok::<(), gearswing_gearfile::OpenError>(())
/// ```
///
/// # Errors
/// All faults of the leg and of the gear's own fields, when there are any; a clearance that cannot
/// be certified is one of them. A leg that is sound at
/// gear down but cannot come up is not an error: its result says where and why it stops.
pub fn solve_leg(gear: &Gear, leg: usize, options: &Options) -> Result<LegResult, Faults> {
    solve_prepared(&PreparedGear::of(gear), leg, options)
}

/// Solves one leg of a gear whose legs are made ready once.
///
/// # Errors
/// See [`solve_leg`].
pub fn solve_prepared(
    prepared: &PreparedGear<'_>,
    leg: usize,
    options: &Options,
) -> Result<LegResult, Faults> {
    let gear = prepared.gear();
    let swept = prepared.leg(leg)?.over(options.stations);
    let (model, linkage, sweep) = (swept.leg(), swept.linkage(), swept.sweep());
    let fineness = ClearanceOptions {
        curve_stride: options.curve_stride,
        accuracy: options.accuracy,
        ..ClearanceOptions::default()
    };
    let forces = forces(prepared, leg, &swept, options.stations)?;
    let force = &forces.result;
    let clearance = swept
        .clearances(&gear.clearance_rule, &fineness)
        .map_err(|error| Faults::unresolved(leg, error))?;
    // neither the lock nor the fall has more than 1 g to count on
    let held = gear.conditions.at_most_1_g();
    let [weight, _] = statics::weight_and_wind(model.view, &held);
    let lock = lock::lock_of(model, linkage, weight, wind_at_gear_speed(gear, model));
    let fall = match sweep.jams.is_empty() {
        true => *without_power(gear, &swept, held),
        false => None,
    };
    let way_down = answer::way_down(&WayDownCase {
        gear,
        leg: model,
        lock: lock.kind(),
        force,
        fall: fall.as_ref(),
        dead_point: answer::dead_point(&sweep.events).is_some(),
    });
    let down = sweep.poses.first().map(|pose| pose.place);
    let mut findings = vec![
        answer::clears(&clearance, &sweep.jams, &model.wheel.tire),
        answer::driven(
            model,
            &gear.supply,
            force,
            &sweep.jams,
            &sweep.events,
            &forces.whole,
            |place| ready(gear, &swept).begins(place),
        ),
        answer::locks(&LockCase {
            lock: &lock,
            springs: !model.springs.is_empty(),
            fall: fall.as_ref(),
            way_down: way_down.as_ref(),
            excursion: sweep.excursion.as_ref(),
            down,
            break_out_from_memory: model.breaks_out_from_memory(),
            own_times: gear.friction_times_required.is_none(),
            down_switch: model.drive.switches.down,
            shares_drive: !force.shares_drive_with.is_empty(),
        }),
    ];
    let names_drive = !model.shared_drive.trim().is_empty();
    for finding in &mut findings {
        if finding.question == Question::Driven && names_drive && gear.drives_alone(leg) {
            finding.assumptions.insert(0, Assumption::AloneOnDrive);
        }
    }
    // what stops the leg on its way is no part of what drives it or lets it fall
    if clearance.touches() {
        let falls = fall.is_some();
        for finding in &mut findings {
            let counts = match finding.question {
                Question::Clears => false,
                Question::Driven => true,
                Question::Locks => falls,
            };
            if counts {
                finding.assumptions.insert(0, Assumption::ContactCleared);
            }
        }
    }
    Ok(LegResult {
        name: model.name.clone(),
        view: model.view,
        swing_up: model.swing_up,
        findings,
        jams: sweep.jams.clone(),
        excursion: sweep.excursion,
        events: sweep.events.clone(),
        clearance,
        force: force.clone(),
        lock: lock.told(),
        fall,
        way_down,
        stations: Arc::clone(forces.shown.as_ref().unwrap_or(&forces.whole)),
    })
}

/// Air load of one square meter of drag area at the airspeed at which the gear is moved (N/m2).
fn wind_at_gear_speed(gear: &Gear, leg: &Leg) -> Option<Vector> {
    let level = statics::case_conditions(LoadCase::LevelFlight, &gear.conditions, &leg.air).ok()?;
    let [_, wind] = statics::weight_and_wind(leg.view, &level);
    (wind != Vector::zeros()).then_some(wind)
}

/// Solves every leg, each on its own: a faulty one does not hide the others.
#[must_use]
pub fn solve_gear(gear: &Gear, options: &Options) -> Vec<Result<LegResult, Faults>> {
    let prepared = PreparedGear::of(gear);
    (0..gear.legs.len())
        .map(|leg| solve_prepared(&prepared, leg, options))
        .collect()
}
