//! The whole gear up and down again.
use super::leg::Moving;
use super::leg_stages::{Blocked, LegStages};
use super::run::Going;
use super::state::Power;
use super::touch::first_touch;
use crate::faults::check_gear;
use crate::hydraulics::{Circuit, Pump};
use crate::model::{Gear, Leg, Supply};
use crate::prepared::PreparedGear;
use crate::result::SupplyError;
use crate::result::{Cycle, Direction, LoadCase, Run};

/// How finely to follow the legs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupplyOptions {
    /// Error allowed in a time step, as a share of a leg's stage (ratio).
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
/// turn, or no leg with any stroke up.
pub fn cycle(gear: &Gear, options: &SupplyOptions) -> Result<Cycle, SupplyError> {
    cycle_prepared(gear.clone().into(), options)
}

/// The same for a gear whose legs are made ready once.
///
/// # Errors
/// See [`cycle`].
pub fn cycle_prepared(
    prepared: PreparedGear<'static>,
    options: &SupplyOptions,
) -> Result<Cycle, SupplyError> {
    let mut cycling = Cycling::new(prepared, options);
    loop {
        if let Some(done) = cycling.advance(usize::MAX) {
            return done;
        }
    }
}

/// A gear that is being followed up and down again, in parts: for a caller that has other things to do
/// between them.
#[derive(Clone, Debug)]
pub struct Cycling {
    prepared: PreparedGear<'static>,
    options: SupplyOptions,
    stage: Stage,
}

/// What comes next.
#[derive(Clone, Debug)]
enum Stage {
    /// The model is checked.
    Begin,
    /// The way up of the legs, of which these are there.
    Ways(Vec<LegStages>),
    /// The run up, and the ways down.
    Up(Box<Going>, Option<Vec<LegStages>>),
    /// The run down, after the one up.
    Down(Box<Followed>, Box<Going>),
    /// It has been told.
    Done,
}

/// A run, or what is wrong with this way alone.
type Followed = (Option<Run>, Option<SupplyError>);

impl Cycling {
    /// Nothing is followed yet.
    #[must_use]
    pub fn new(prepared: PreparedGear<'static>, options: &SupplyOptions) -> Self {
        Self {
            prepared,
            options: *options,
            stage: Stage::Begin,
        }
    }

    /// Follows one part: the way of a leg, or so many time steps. `None` = there is more. What comes out
    /// does not depend on the parts. See [`cycle`] for the errors.
    pub fn advance(&mut self, steps: usize) -> Option<Result<Cycle, SupplyError>> {
        match self.part(steps) {
            Ok(None) => None,
            Ok(Some((up, down))) => {
                let ((up, up_error), (down, down_error)) = (up, down);
                Some(Ok(Cycle {
                    case: if self.options.on_jacks {
                        LoadCase::OnJacks
                    } else {
                        LoadCase::AsSet
                    },
                    up,
                    up_error,
                    down,
                    down_error,
                }))
            }
            Err(error) => Some(Err(error)),
        }
    }

    fn part(&mut self, steps: usize) -> Result<Option<(Followed, Followed)>, SupplyError> {
        let gear = self.prepared.gear();
        match std::mem::replace(&mut self.stage, Stage::Done) {
            Stage::Begin => {
                check_gear(gear).map_err(SupplyError::Faults)?;
                // legs on one drive are one degree of freedom, which this does not follow
                if let Some(leg) = (0..gear.legs.len()).find(|leg| !gear.drives_alone(*leg)) {
                    return Err(SupplyError::SharedDrive { leg });
                }
                if self.options.on_jacks {
                    self.prepared = self.prepared.on_jacks();
                }
                self.stage = Stage::Ways(Vec::new());
            }
            Stage::Ways(mut ways) => match ways.len() < gear.legs.len() {
                true => {
                    ways.push(way_up(&self.prepared, ways.len())?);
                    self.stage = Stage::Ways(ways);
                }
                false => {
                    let down = ways_down(&self.prepared, &ways)?;
                    match going(gear, ways, Direction::Up, &self.options) {
                        Ok(going) => self.stage = Stage::Up(going.into(), down),
                        Err(error) => return self.then_down(one_way(error)?, down),
                    }
                }
            },
            Stage::Up(mut going, down) => match followed(going.advance(steps))? {
                Some(up) => return self.then_down(up, down),
                None => self.stage = Stage::Up(going, down),
            },
            Stage::Down(up, mut going) => match followed(going.advance(steps))? {
                Some(down) => return Ok(Some((*up, down))),
                None => self.stage = Stage::Down(up, going),
            },
            Stage::Done => return Ok(Some(Default::default())),
        }
        Ok(None)
    }

    /// The way up is there; the one down begins.
    fn then_down(
        &mut self,
        up: Followed,
        ways: Option<Vec<LegStages>>,
    ) -> Result<Option<(Followed, Followed)>, SupplyError> {
        let Some(ways) = ways else {
            return Ok(Some((up, Followed::default())));
        };
        match going(self.prepared.gear(), ways, Direction::Down, &self.options) {
            Ok(going) => self.stage = Stage::Down(up.into(), going.into()),
            // no leg comes down from where it has come
            Err(SupplyError::NoStroke) => {
                return Ok(Some((up, (None, Some(SupplyError::NoStroke)))));
            }
            Err(error) => return Ok(Some((up, one_way(error)?))),
        }
        Ok(None)
    }
}

/// The ways down of all legs; `None` where one has none.
///
/// # Errors
/// Faults of a leg.
fn ways_down(
    prepared: &PreparedGear<'_>,
    ways_up: &[LegStages],
) -> Result<Option<Vec<LegStages>>, SupplyError> {
    let mut ways = Vec::with_capacity(ways_up.len());
    for (at, up) in ways_up.iter().enumerate() {
        let Some(reach) = up.reach() else {
            return Ok(None);
        };
        let until = up.blocked.map(|_| reach);
        let swept = prepared.leg(at).map_err(SupplyError::Faults)?;
        ways.push(LegStages::new(
            prepared.gear(),
            swept,
            Direction::Down,
            until,
        ));
    }
    Ok(Some(ways))
}

/// A run that has ended, or what is wrong with this way alone; `None` = it has not ended yet.
fn followed(run: Result<Option<Run>, SupplyError>) -> Result<Option<Followed>, SupplyError> {
    match run {
        Ok(run) => Ok(run.map(|run| (Some(run), None))),
        Err(error) => one_way(error).map(Some),
    }
}

/// An error that leaves the other way as it is.
fn one_way(error: SupplyError) -> Result<Followed, SupplyError> {
    use SupplyError::{NothingMoves, TooManySteps, Unbalanced};
    match error {
        NothingMoves { .. } | Unbalanced { .. } | TooManySteps { .. } => Ok((None, Some(error))),
        error => Err(error),
    }
}

/// The way up of a leg, as far as its first contact.
fn way_up(prepared: &PreparedGear<'_>, index: usize) -> Result<LegStages, SupplyError> {
    let gear = prepared.gear();
    let leg = prepared.leg(index).map_err(SupplyError::Faults)?;
    let touch = first_touch(gear, index, leg)?;
    let until = touch.map(|touch| touch.progress);
    let mut track = LegStages::new(gear, leg, Direction::Up, until);
    track.blocked = track.blocked.or(touch.map(Blocked::Touches));
    Ok(track)
}

fn going(
    gear: &Gear,
    ways: Vec<LegStages>,
    direction: Direction,
    options: &SupplyOptions,
) -> Result<Going, SupplyError> {
    let mut legs: Vec<Moving> = ways
        .into_iter()
        .zip(&gear.legs)
        .map(|(way, leg)| Moving::new(leg, way, direction, leg.drive.start_travel))
        .collect();
    let supply = gear.supply.going(direction);
    let power = power(gear, &supply)?;
    for (at, leg) in legs.iter_mut().enumerate() {
        leg.stays_under(power.most_at_first(at));
    }
    moves_at_all(&power, &legs, direction)?;
    Ok(Going::new(&supply, power, legs, direction, options))
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
    let (lack, needed, available) = legs
        .iter()
        .enumerate()
        .filter_map(|(at, leg)| lacking(leg, power.most_at_first(at)))
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
