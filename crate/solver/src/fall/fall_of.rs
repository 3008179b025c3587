//! Everything about the fall of one leg.
use super::drop::{Case, Damper, Drop, Ending, drop};
use super::limits::Limits;
use super::margin::{Standing, Stood, agreed, decided, finite, short};
use super::rub::Rubbing;
use super::way::{AIR, FallWay, Node, SPRINGS, WEIGHTS};
use crate::hydraulics::conductance;
use crate::kinematics::Linkage;
use crate::model::{Conditions, Fluid, Leg};
use crate::result::{
    Arrival, Fall, FallAirspeed, FallEnergy, FallOutcome, FallRequired, LeastKneePush, LeastMoment,
    Unpowered,
};
use crate::statics::{PinSet, Warm, areas, dynamic_pressure};

/// A leg that turns by less than this share of the knee's own turn stands nearly still (ratio): there the
/// push at the knee tells more than a moment about the trunnion. Our own figure, about 6° of fold.
pub(super) const NEARLY_STRAIGHT: f64 = 0.1;

/// The fall of a checked leg that comes up, actuator without pressure and open to its return, which must
/// come down against so many `times` its friction.
/// `None` where its way from up to the lock cannot be worked out.
#[must_use]
pub fn fall_of(
    leg: &Leg,
    linkage: &Linkage,
    fluid: &Fluid,
    conditions: &Conditions,
    times: f64,
) -> Option<Fall> {
    let mut track = FallWay::new(leg, linkage, conditions)?;
    let mut case = case(leg, fluid, conditions);
    let stood = Stood::of(leg);
    let pins = PinSet::of(leg);
    let rubbing = match leg.pins.rub_by_load() {
        true => Some(Rubbing::new(&track, &pins, (leg, linkage, conditions))?),
        false => None,
    };
    let at = Standing::new(&track, &case, &stood, rubbing.as_ref());
    let (held, start) = (at.held(0, &mut Warm::default())?, at.start());
    case.held = held;
    let dropped = match &rubbing {
        Some(rubbing) => rubbing.drop(&mut track, &case)?,
        None => drop(&track, &case, case.tolerance()),
    };
    let limits = Limits::new(&track, &case, stood, rubbing.as_ref())?;
    let place = track.place(linkage, dropped.x)?;
    let outcome = match dropped.ending {
        Ending::Lock => FallOutcome::ReachesLock(arrival(&track, &dropped)?),
        Ending::Rest => FallOutcome::StopsShort {
            place,
            time: dropped.time,
        },
        Ending::Held => FallOutcome::StaysUp,
        Ending::Followed => FallOutcome::Creeps {
            place,
            time: dropped.time,
        },
        Ending::Lost => FallOutcome::NotFollowed {
            place,
            time: dropped.time,
        },
    };
    let reaches = dropped.ending == Ending::Lock;
    let seal_friction_limit = reaches.then(|| limits.seal_friction()).flatten();
    let (friction_factor, friction_factor_tried) = if reaches {
        // a coefficient that is not given is none
        let coefficients = leg.pins.all().map(|pin| pin.friction.unwrap_or(0.0));
        let most_given = coefficients.into_iter().fold(0.0, f64::max);
        limits.friction_factor(seal_friction_limit, most_given)
    } else {
        (None, None)
    };
    let rubs = track
        .table
        .values()
        .iter()
        .any(|row| case.friction(row) > 0.0);
    let required = if reaches && rubs {
        let reaches = match decided((friction_factor, friction_factor_tried), times) {
            Some(reaches) => reaches,
            None => {
                let case = case.times(times);
                let ending = match &rubbing {
                    Some(rubbing) => rubbing.drop(&mut track.clone(), &case)?.ending,
                    None => drop(&track, &case, case.tolerance()).ending,
                };
                ending == Ending::Lock
            }
        };
        Some(FallRequired { times, reaches })
    } else {
        None
    };
    let (friction_factor, friction_factor_tried) =
        agreed((friction_factor, friction_factor_tried), required);
    let airspeed = limits.airspeed(conditions.air_density);
    let up = track.nodes.first()?;
    let at_up = track.table.values().first()?;
    let left_at_up = case.push(at_up) - case.held.max(case.friction(at_up));
    Some(Fall {
        outcome,
        moment_at_up: finite(left_at_up / up.swing),
        least_moment: least_moment(&track, &case),
        least_knee_push: least_knee_push(&track, &case),
        airspeed,
        at_gear_speed: at_gear_speed(conditions, &airspeed),
        friction_factor,
        friction_factor_tried,
        seal_friction_limit,
        required,
        start,
        short: (!reaches)
            .then(|| short(&track, linkage, &case, &dropped))
            .flatten(),
        actuator: Unpowered::Fluid,
        energy: energy(&track, &case, &dropped),
        inertia: track.inertia_basis,
    })
}

/// Whether a fall with such a limit reaches the lock at the airspeed at which the gear is moved.
fn at_gear_speed(conditions: &Conditions, limit: &FallAirspeed) -> Option<bool> {
    let speed = conditions.gear_speed?;
    match limit {
        FallAirspeed::UpTo { airspeed } => Some(speed < conditions.calibrated(*airspeed)),
        FallAirspeed::AtEvery { .. } => Some(true),
        FallAirspeed::NoAirLoad | FallAirspeed::NotInStillAir => None,
    }
}

pub(super) fn case(leg: &Leg, fluid: &Fluid, conditions: &Conditions) -> Case {
    let (bore, annulus) = areas(&leg.actuator);
    Case {
        dynamic_pressure: dynamic_pressure(conditions),
        seal_friction: leg.actuator.seals(),
        pin_factor: 1.0,
        held: 0.0,
        damper: leg.orifice_of_fall().map(|of| Damper {
            conductance: conductance(&of, fluid.density),
            areas: (annulus, bore),
        }),
    }
}

fn arrival(track: &FallWay, dropped: &Drop) -> Option<Arrival> {
    let end = track.nodes.last()?;
    let axle_speed = end.axle * dropped.speed;
    Some(Arrival {
        time: dropped.time,
        swing_rate: end.swing * dropped.speed,
        axle_speed,
        knee_speed: end.knee.map(|rate| rate * dropped.speed),
        largest_axle_speed: dropped.largest_axle_speed,
    })
}

fn rows<'a>(track: &'a FallWay, case: &'a Case) -> impl Iterator<Item = (&'a Node, f64)> {
    let nets = track.table.values().iter().map(|row| case.net(row));
    track.nodes.iter().zip(nets)
}

fn least_moment(track: &FallWay, case: &Case) -> Option<LeastMoment> {
    rows(track, case)
        .filter(|(node, _)| node.swing >= NEARLY_STRAIGHT)
        .map(|(node, net)| LeastMoment {
            moment: net / node.swing,
            place: node.place,
        })
        .min_by(|a, b| a.moment.total_cmp(&b.moment))
}

fn least_knee_push(track: &FallWay, case: &Case) -> Option<LeastKneePush> {
    rows(track, case)
        .filter(|(node, _)| node.swing < NEARLY_STRAIGHT)
        .filter_map(|(node, net)| {
            Some(LeastKneePush {
                push: net / node.knee.filter(|&rate| rate > 0.0)?,
                place: node.place,
            })
        })
        .min_by(|a, b| a.push.total_cmp(&b.push))
}

/// Work and energy up to where the fall ends; over the whole way the weights' work is that of their
/// heights, so that the balance checks tables and integration as well.
fn energy(track: &FallWay, case: &Case, dropped: &Drop) -> FallEnergy {
    let [mut weights, mut springs, air, at_rest] = track.sums(dropped.x, |row| {
        [
            row[WEIGHTS],
            row[SPRINGS],
            row[AIR] * case.dynamic_pressure,
            case.friction(row),
        ]
    });
    if dropped.ending == Ending::Lock {
        (weights, springs) = (track.weights_work, track.springs_work);
    }
    let friction = at_rest + dropped.pins;
    let inertia = track.at(dropped.x)[super::way::INERTIA];
    let motion = 0.5 * inertia * dropped.speed * dropped.speed;
    let missing = weights + springs + air - friction - dropped.orifice - motion;
    let scale = weights.abs() + springs.abs() + air.abs() + friction;
    FallEnergy {
        weights,
        springs,
        air,
        friction,
        orifice: dropped.orifice,
        motion,
        residual: if scale > 0.0 { missing / scale } else { 0.0 },
    }
}
