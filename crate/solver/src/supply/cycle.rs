//! The whole gear up and down again.
use super::error::SupplyError;
use super::leg::Moving;
use super::run::Going;
use super::source::{Circuit, Pump};
use super::state::Power;
use super::touch::first_touch;
use super::track::{Blocked, Track};
use crate::faults::check_gear;
use crate::model::{ElectricActuator, Gear, Leg, Supply};
use crate::result::{Cycle, Direction, LoadCase, Run};

/// How finely to follow the legs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupplyOptions {
    /// Error allowed in a time step, as a share of a leg's stage [1].
    pub tolerance: f64,
    /// The airplane level on jacks, whatever attitude and air the file sets.
    pub on_jacks: bool,
}

impl Default for SupplyOptions {
    fn default() -> Self {
        Self {
            tolerance: 1e-9,
            on_jacks: false,
        }
    }
}

/// Whether anything in the file says how fast the gear moves: a pump, electric actuators, an
/// accumulator, or an orifice under a constant pressure.
#[must_use]
pub fn is_timed(gear: &Gear) -> bool {
    let has_orifice = |leg: &Leg| leg.drive.orifice_up.is_some();
    !gear.supply.source.is_constant()
        || gear.supply.accumulator.is_some()
        || (!gear.legs.is_empty() && gear.legs.iter().all(has_orifice))
}

/// Follows the gear up and down again.
///
/// A way on which nothing moves or whose balance is not found leaves the other way as it is. A leg
/// that stalls is no error: the run says which, where and why.
///
/// # Errors
/// [`SupplyError`]: what leaves neither way to follow: faults of the model, a pump that does not
/// turn, or no leg with any stroke.
pub fn cycle(gear: &Gear, options: &SupplyOptions) -> Result<Cycle, SupplyError> {
    check_gear(gear).map_err(SupplyError::Faults)?;
    // legs on one drive are one degree of freedom, which this does not follow
    if let Some(leg) = (0..gear.legs.len()).find(|leg| !gear.drives_alone(*leg)) {
        return Err(SupplyError::SharedDrive { leg });
    }
    let jacked = options.on_jacks.then(|| gear.on_jacks());
    let gear = jacked.as_ref().unwrap_or(gear);
    let ways_up = gear
        .legs
        .iter()
        .enumerate()
        .map(|(index, leg)| way_up(gear, index, leg))
        .collect::<Result<Vec<_>, _>>()?;
    let ways_down: Option<Vec<Track>> = ways_up
        .iter()
        .zip(&gear.legs)
        .map(|(up, leg)| {
            let reach = up.reach()?;
            let until = up.blocked.map(|_| reach);
            Some(Track::new(gear, leg, Direction::Down, until))
        })
        .collect();
    let (up, up_error) = followed(run(gear, ways_up, Direction::Up, options))?;
    let down = ways_down.map(|ways| followed(run(gear, ways, Direction::Down, options)));
    let (down, down_error) = down.transpose()?.unwrap_or_default();
    Ok(Cycle {
        case: if options.on_jacks {
            LoadCase::OnJacks
        } else {
            LoadCase::AsSet
        },
        up,
        up_error,
        down,
        down_error,
    })
}

/// A run, or what is wrong with this way alone.
fn followed(
    run: Result<Run, SupplyError>,
) -> Result<(Option<Run>, Option<SupplyError>), SupplyError> {
    use SupplyError::{NothingMoves, TooManySteps, Unbalanced};
    match run {
        Ok(run) => Ok((Some(run), None)),
        Err(error @ (NothingMoves { .. } | Unbalanced { .. } | TooManySteps { .. })) => {
            Ok((None, Some(error)))
        }
        Err(error) => Err(error),
    }
}

/// The way up of a leg, as far as its first contact.
fn way_up(gear: &Gear, index: usize, leg: &Leg) -> Result<Track, SupplyError> {
    let touch = first_touch(gear, index, leg)?;
    let until = touch.map(|touch| touch.progress);
    let mut track = Track::new(gear, leg, Direction::Up, until);
    track.blocked = track.blocked.or(touch.map(Blocked::Touches));
    Ok(track)
}

fn run(
    gear: &Gear,
    ways: Vec<Track>,
    direction: Direction,
    options: &SupplyOptions,
) -> Result<Run, SupplyError> {
    let legs: Vec<Moving> = ways
        .into_iter()
        .zip(&gear.legs)
        .map(|(way, leg)| Moving::new(leg, way, direction, leg.drive.start_travel))
        .collect();
    let supply = gear.supply.going(direction);
    let power = power(gear, &supply)?;
    moves_at_all(&power, &legs, direction)?;
    Going::new(&supply, power, legs, direction, options).run()
}

fn power(gear: &Gear, supply: &Supply) -> Result<Power, SupplyError> {
    Ok(match Pump::new(supply)? {
        Some(pump) => Power::Fluid(pump),
        None => Power::Electric {
            circuit: Circuit::new(&gear.supply.battery),
            motors: gear
                .legs
                .iter()
                .filter_map(|leg| leg.drive.electric)
                .collect(),
        },
    })
}

/// A source that cannot start even the least loaded leg is an error of the supply, not a stall.
fn moves_at_all(power: &Power, legs: &[Moving], selected: Direction) -> Result<(), SupplyError> {
    let first = |leg: &Moving| leg.now().map(|stage| stage.load.value(leg.begins_at));
    let lacking = |leg: &Moving, most: f64| first(leg).map(|needed| (needed - most, needed, most));
    let (lack, needed, available) = match power {
        Power::Fluid(pump) => legs
            .iter()
            .filter_map(|leg| lacking(leg, pump.most_at_first()))
            .collect(),
        Power::Electric { motors, circuit } => legs
            .iter()
            .zip(motors)
            .filter_map(|(leg, motor)| lacking(leg, most_force(motor, circuit)))
            .collect::<Vec<_>>(),
    }
    .into_iter()
    .min_by(|a, b| a.0.total_cmp(&b.0))
    .ok_or(SupplyError::NoStroke)?;
    if lack >= 0.0 {
        return Err(SupplyError::NothingMoves {
            selected,
            needed,
            available,
        });
    }
    Ok(())
}

/// Most force of an actuator whose bus gives its open-circuit voltage [N].
fn most_force(motor: &ElectricActuator, circuit: &Circuit) -> f64 {
    motor.stall_force * circuit.open / motor.rated_voltage
}
