//! One call for a whole leg: check, swing, clear, push, lock, answer.
use crate::answer::{LockCase, WayDownCase};
use crate::clearance::ClearanceOptions;
use crate::faults::Faults;
use crate::kinematics::{Linkage, Pose};
use crate::model::{Conditions, Gear, Leg, Source, Vector};
use crate::prepared::{PreparedGear, STATIONS};
use crate::result::{
    Assumption, Fall, LegResult, LoadCase, Phase, Question, Station, StationForce, Unpowered,
};
use crate::statics::{Comparison, Partners, Ready, Stance};
use crate::{answer, fall, lock, statics};

/// How finely to solve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Stations of the swing phase in the table, at least 2; the answers rest on no fewer than 721.
    /// Each row of a table of shortening adds one on each of its sides, and one more stands where a
    /// device that unlocks the knee leaves the leg to the actuator.
    pub stations: usize,
    /// Every how many stations a clearance curve has a point, at least 1.
    pub curve_stride: usize,
    /// Accuracy of certified clearances (m).
    pub accuracy: f64,
    /// Which tire is on the wheel.
    pub tire: TireChoice,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            stations: STATIONS,
            curve_stride: 6,
            accuracy: 1e-5,
            tire: TireChoice::Fitted,
        }
    }
}

/// The tire to solve with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TireChoice {
    /// The one now fitted.
    Fitted,
    /// The former one; a leg without a former tire is solved with the fitted one.
    Former,
}

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
    let partners = Partners::of(prepared, leg)?;
    let partners = partners.as_ref();
    let tire = match (options.tire, &model.wheel.former) {
        (TireChoice::Former, Some(former)) => former,
        _ => &model.wheel.tire,
    };
    let [gravity, wind] = statics::weight_and_wind(model.view, &gear.conditions);
    let loaded_from = linkage.loaded_from();
    let cases = Comparison::loads(gear, model);
    let ready = Ready::new(model, linkage, &gear.supply, cases).standing();
    let loaded = |pose: &Pose| pose.place.progress >= loaded_from;
    let table = |poses: &[Pose], force: &mut dyn FnMut(usize, &Stance) -> Option<StationForce>| {
        let mut stations = Vec::with_capacity(poses.len());
        for (index, pose) in poses.iter().enumerate() {
            let all = Comparison::takes_all(index) || ready.begins(&pose.place);
            let force = match loaded(pose) {
                true => Stance::new(&ready, pose, all).and_then(|stance| force(index, &stance)),
                false => None,
            };
            stations.push(station(linkage, pose, force));
        }
        stations
    };
    let available = statics::available(prepared, leg, partners);
    let mut comparison = Comparison::new(gear, model, &ready, &available, partners);
    let stations = table(&sweep.poses, &mut |index, stance| {
        comparison.add(index, stance)
    });
    comparison.refine(|index, add| {
        let pose = sweep.poses.get(index).filter(|pose| loaded(pose));
        if let Some(stance) = pose.and_then(|pose| Stance::new(&ready, pose, true)) {
            add(&stance);
        }
    });
    let fineness = ClearanceOptions {
        curve_stride: options.curve_stride,
        accuracy: options.accuracy,
        ..ClearanceOptions::default()
    };
    let clearance = swept
        .clearances(tire, &gear.clearance_rule, &fineness)
        .map_err(|error| Faults::unresolved(leg, error))?;
    let required = gear.supply.required_margin(model);
    let mut force =
        statics::force_result(model, &available, &stations, comparison.binds(), required);
    force.shares_drive_with = partners.map(Partners::on_drive).unwrap_or_default();
    comparison.find_stalls(linkage, &sweep.poses);
    comparison.finish(&mut force);
    // neither the lock nor the fall has more than 1 g to count on
    let held = gear.conditions.at_most_1_g();
    let [weight, _] = statics::weight_and_wind(model.view, &held);
    let lock = lock::lock_of(model, linkage, weight, wind_at_gear_speed(gear, model));
    let fall = sweep
        .jams
        .is_empty()
        .then(|| fall_without_power(gear, model, linkage, &held))
        .flatten();
    let way_down = answer::way_down(&WayDownCase {
        gear,
        leg: model,
        lock: lock.kind(),
        force: &force,
        fall: fall.as_ref(),
        dead_point: answer::dead_point(&sweep.events).is_some(),
    });
    let down = sweep.poses.first().map(|pose| pose.place);
    let mut findings = vec![
        answer::clears(&clearance, &sweep.jams, tire),
        answer::driven(
            model,
            &gear.supply,
            &force,
            &sweep.jams,
            &sweep.events,
            &stations,
            |place| ready.begins(place),
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
    // A short table is a second one: what is left out of it must not be left out of the answers.
    let stations = if options.stations < STATIONS {
        let short = sweep.at_stations(linkage, options.stations);
        table(&short, &mut |_, stance| {
            let mut at = stance.at([gravity, wind], None);
            partners.map(|p| p.join(&mut at, LoadCase::AsSet, stance.pose().place));
            (at.retract.is_ok() || at.extend.is_ok()).then(|| stance.force(&at))
        })
    } else {
        stations
    };
    Ok(LegResult {
        name: model.name.clone(),
        view: model.view,
        swing_up: model.swing_up,
        findings,
        jams: sweep.jams.clone(),
        excursion: sweep.excursion,
        events: sweep.events.clone(),
        clearance,
        force,
        lock: lock.told(),
        fall,
        way_down,
        stations,
    })
}

/// Air load of one square metre of drag area at the airspeed at which the gear is moved (N/m2).
fn wind_at_gear_speed(gear: &Gear, leg: &Leg) -> Option<Vector> {
    let level = statics::case_conditions(LoadCase::LevelFlight, &gear.conditions, &leg.air).ok()?;
    let [_, wind] = statics::weight_and_wind(leg.view, &level);
    (wind != Vector::zeros()).then_some(wind)
}

/// One row of the stations table.
fn station(linkage: &Linkage, pose: &Pose, force: Option<StationForce>) -> Station {
    let angles = linkage.turn_at_knee(pose).and_then(|turn| {
        let bent = turn.abs();
        // positive on the side to which it folds, where the whole swing has it
        let fold = if pose.place.phase == Phase::Swing {
            bent
        } else {
            -turn * linkage.fold_sign()?
        };
        Some((fold, bent.min(std::f64::consts::PI - bent)))
    });
    Station {
        phase: pose.place.phase,
        progress: pose.place.progress,
        swing: pose.place.swing,
        travel: pose.place.travel,
        shortening: pose.shortening,
        axle: pose.axle,
        knee: pose.knee,
        brace_attach: pose.brace_attach,
        actuator_attach: pose.actuator_attach,
        actuator_length: pose.actuator_length,
        moment_arm: pose.moment_arm(),
        fold: angles.map(|a| a.0),
        transmission: angles.map(|a| a.1),
        force,
    }
}

/// Solves every leg, each on its own: a faulty one does not hide the others.
#[must_use]
pub fn solve_gear(gear: &Gear, options: &Options) -> Vec<Result<LegResult, Faults>> {
    let prepared = PreparedGear::of(gear);
    (0..gear.legs.len())
        .map(|leg| solve_prepared(&prepared, leg, options))
        .collect()
}

/// The fall of a leg whose actuator has no power.
fn fall_without_power(
    gear: &Gear,
    leg: &Leg,
    linkage: &Linkage,
    conditions: &Conditions,
) -> Option<Fall> {
    let fall_of =
        |leg: &Leg| fall::fall_of(leg, linkage, &gear.fluid, conditions, gear.friction_times());
    if !matches!(gear.supply.source, Source::ElectricActuators) {
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
