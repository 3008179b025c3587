//! Forces over the swing, and what they come to.
use std::sync::Arc;

use crate::faults::Faults;
use crate::kinematics::{Linkage, Pose};
use crate::model::Gear;
use crate::prepared::{Forces, ForcesOf, PreparedGear, PreparedLeg, STATIONS};
use crate::result::{LoadCase, Phase, Station, StationForce};
use crate::statics::{self, Comparison, LegLoads, Partners, PoseLoads};

/// The forces of a leg, shown over so many stations.
///
/// # Errors
/// Faults of a leg beside it.
pub(super) fn forces(
    prepared: &PreparedGear<'_>,
    leg: usize,
    swept: &PreparedLeg,
    stations: usize,
) -> Result<Arc<Forces>, Faults> {
    let gear = prepared.gear();
    let of = ForcesOf {
        supply: gear.supply,
        conditions: gear.conditions,
        beside: gear.rests_on_others(leg).then(|| (leg, gear.legs.clone())),
        stations,
    };
    swept.forces(of, || {
        let partners = Partners::of(prepared, leg)?;
        Ok(find(prepared, leg, swept, (partners.as_ref(), stations)))
    })
}

/// What every station is worked out from, with the friction of what has stood.
pub(super) fn ready<'a>(gear: &Gear, swept: &'a PreparedLeg) -> LegLoads<'a> {
    let cases = Comparison::loads(gear, swept.leg());
    LegLoads::new(swept.leg(), swept.linkage(), &gear.supply, cases).standing()
}

fn find(
    prepared: &PreparedGear<'_>,
    leg: usize,
    swept: &PreparedLeg,
    (partners, stations): (Option<&Partners>, usize),
) -> Forces {
    let gear = prepared.gear();
    let (model, linkage, sweep) = (swept.leg(), swept.linkage(), swept.sweep());
    let loaded_from = linkage.loaded_from();
    let ready = ready(gear, swept);
    // `all`: of every load case, else of the one as set
    let table =
        |poses: &[Pose],
         all: bool,
         force: &mut dyn FnMut(usize, &PoseLoads, &mut Option<StationForce>)| {
            let mut stations = Vec::with_capacity(poses.len());
            let Some(first) = poses.first() else {
                return stations;
            };
            let mut stance = PoseLoads::nowhere(&ready, first);
            for (index, pose) in poses.iter().enumerate() {
                let bent = linkage.turn_at_knee(pose);
                stations.push(station(linkage, pose, bent));
                if pose.place.progress >= loaded_from
                    && stance.stand(pose, all, bent)
                    && let Some(row) = stations.last_mut()
                {
                    force(index, &stance, &mut row.force);
                }
            }
            stations
        };
    let available = statics::available(prepared, leg, partners);
    let mut comparison = Comparison::new(gear, model, &ready, &available, partners);
    let whole = table(&sweep.poses, true, &mut |index, stance, force| {
        comparison.add(index, stance, force);
    });
    let required = gear.supply.required_margin(model);
    let mut result = statics::force_result(model, &available, &whole, required);
    result.shares_drive_with = partners.map(Partners::on_drive).unwrap_or_default();
    comparison.find_stalls(linkage, &sweep.poses);
    comparison.finish(&mut result, &sweep.poses);
    // a short table is a second one: what is left out of it must not be left out of the answers
    let shown = (stations < STATIONS).then(|| {
        let [gravity, wind] = statics::weight_and_wind(model.view, &gear.conditions);
        let short = sweep.at_stations(linkage, stations);
        table(&short, false, &mut |_, stance, force| {
            let mut at = stance.at([gravity, wind], None);
            partners.map(|p| p.join(&mut at, LoadCase::AsSet, stance.pose().place));
            stance.force(&at, force);
        })
    });
    Forces {
        whole: Arc::new(whole),
        shown: shown.map(Arc::new),
        result,
    }
}

/// One row of the stations table, without its force; `turn` is that from the upper to the lower link (rad).
fn station(linkage: &Linkage, pose: &Pose, turn: Option<f64>) -> Station {
    let angles = turn.and_then(|turn| {
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
        force: None,
    }
}
