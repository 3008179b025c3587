//! The way of one leg as the source sees it: stages, each with its load over the fluid or stroke.
use super::curve::Curve;
use super::orifice::{Line, OPEN_LINE, conductance};
use crate::kinematics::{Linkage, Sweep};
use crate::model::{Gear, Joint, Leg, LineOrifice, Shortening, Source, StrutJack};
use crate::result::{Direction, Motion, Phase, Place};
use crate::statics::{self, Ready, Stance, Warm};

/// Stations of the swing between which the load is a smooth curve.
const STATIONS: usize = 361;

/// Strokes within this of each other are the same [m].
const SAME_STROKE: f64 = 1e-12;

/// The way of one leg in one direction.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Track {
    /// Stages in the order in which they are driven.
    pub stages: Vec<Stage>,
    /// Place before the first stage.
    pub from: Place,
    /// Place behind the last one, where a lock of its own may have moved the leg on.
    pub to: Place,
    /// Why the way ends before its end, if it does.
    pub blocked: Option<Blocked>,
}

/// Why a leg cannot be driven to the end of its way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Blocked {
    /// A part runs out of its length or cannot be assembled.
    Jam,
    /// The actuator has no arm.
    DeadPoint,
    /// The pins bind; the one that takes most.
    Binds(Joint),
}

/// One stage: a stroke against a load.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Stage {
    /// Whether the strut slides; otherwise the leg swings.
    pub is_strut: bool,
    /// Fluid for the whole stage [m3]; its stroke with an electric actuator [m].
    pub extent: f64,
    /// Area the fluid works on [m2]; 1 with an electric actuator.
    pub area: f64,
    /// Pressure at the manifold from which it moves, over the fluid [Pa]; force with an electric
    /// actuator [N].
    pub load: Curve,
    /// Pressure at which the valve before it opens [Pa]; 0 without one.
    pub opens_at: f64,
    /// What the fluid comes through.
    pub line: Line,
    /// Place of the path at rising fluid: `(fluid, progress, travel, swing)`.
    pub places: Vec<[f64; 4]>,
}

impl Stage {
    /// Place after so much fluid.
    pub(crate) fn place(&self, fluid: f64) -> Place {
        let after = self.places.partition_point(|row| row[0] <= fluid);
        let before = after.checked_sub(1).and_then(|at| self.places.get(at));
        let [_, progress, travel, swing] = match (before, self.places.get(after)) {
            (Some(a), Some(b)) => {
                let share = (fluid - a[0]) / (b[0] - a[0]);
                std::array::from_fn(|at| a[at] + share * (b[at] - a[at]))
            }
            (Some(row), None) | (None, Some(row)) => *row,
            (None, None) => [0.0; 4],
        };
        let phase = match progress {
            _ if self.is_strut => Phase::Shorten,
            p if p < 0.0 => Phase::Unlock,
            _ => Phase::Swing,
        };
        Place {
            phase,
            progress,
            travel,
            swing,
        }
    }

    /// Fluid at which the way first comes to a travel; `None` when it does not.
    pub(crate) fn fluid_at_travel(&self, travel: f64) -> Option<f64> {
        self.places.windows(2).find_map(|pair| match pair {
            [a, b] if (a[2] - travel) * (b[2] - travel) <= 0.0 && a[2] != b[2] => {
                Some(a[0] + (travel - a[2]) / (b[2] - a[2]) * (b[0] - a[0]))
            }
            _ => None,
        })
    }
}

/// What stands at one station.
struct Point {
    place: Place,
    length: f64,
    /// Thrust of the fluid in the direction of the track [N]; `None` where none moves the leg.
    effort: Option<f64>,
    /// Why there is none.
    none: Option<NoEffort>,
}

/// Why a point has no thrust.
#[derive(Clone, Copy, Debug, PartialEq)]
enum NoEffort {
    /// No arm, or a device of its own carries the leg there.
    NotDriven,
    /// The pins bind.
    Binds(Joint),
}

impl Track {
    /// The way of a leg of a checked gear.
    pub(crate) fn new(gear: &Gear, leg: &Leg, direction: Direction) -> Self {
        let linkage = Linkage::new(leg);
        let sweep = Sweep::new(leg, &linkage, STATIONS);
        let case = statics::weight_and_wind(leg.view, &gear.conditions);
        let ready = Ready::new(leg, &linkage, &gear.supply, [case]);
        let mut warm = [Warm::default(); 2];
        let motion = Motion::from(direction);
        let loaded_from = linkage.loaded_from();
        let points: Vec<Point> = sweep
            .poses
            .iter()
            .filter(|pose| pose.place.phase != Phase::Shorten)
            .map(|pose| {
                let driven = pose.place.progress >= loaded_from;
                let stance = driven.then(|| Stance::new(&ready, pose, false)).flatten();
                let moved = stance.map(|stance| {
                    let at = stance.at(case, Some(&mut warm));
                    at.motion(motion).as_ref().map(|m| m.effort).map_err(|j| *j)
                });
                Point {
                    place: pose.place,
                    length: pose.actuator_length,
                    effort: moved.and_then(Result::ok),
                    none: match moved {
                        Some(Ok(_)) => None,
                        Some(Err(joint)) => Some(NoEffort::Binds(joint)),
                        None => Some(NoEffort::NotDriven),
                    },
                }
            })
            .collect();
        let first = sweep.poses.first().map(|pose| pose.place);
        let last = sweep.poses.last().map(|pose| pose.place);
        let start = Place {
            phase: Phase::Swing,
            progress: 0.0,
            travel: 0.0,
            swing: 0.0,
        };
        let (used, mut blocked) = driven(&points, linkage.hand_over.is_some(), direction);
        if !sweep.jams.is_empty() && blocked.is_none() {
            blocked = Some(Blocked::Jam);
        }
        let swing = swing_stage(gear, leg, used, direction);
        let strut = strut_stage(gear, leg, direction);
        let mut stages: Vec<Stage> = match direction {
            Direction::Up => strut.into_iter().chain(swing).collect(),
            Direction::Down => swing.into_iter().chain(strut).collect(),
        };
        stages.retain(|stage| stage.extent > 0.0);
        if let Some(opens_at) = leg.drive.stage_valve
            && !matches!(gear.supply.source, Source::ElectricActuators)
        {
            for stage in stages.iter_mut().skip(1) {
                stage.opens_at = opens_at;
                stage.load = stage.load.at_least(opens_at);
            }
        }
        let ends = [first.unwrap_or(start), last.unwrap_or(start)];
        let [from, to] = match direction {
            Direction::Up => ends,
            Direction::Down => [ends[1], ends[0]],
        };
        Self {
            stages,
            from,
            to,
            blocked,
        }
    }
}

/// The points, from down to up, that the actuator can drive through, and what stops it. Where no device
/// of its own has the knee before, the first may be without force.
fn driven(
    points: &[Point],
    handed_over: bool,
    direction: Direction,
) -> (&[Point], Option<Blocked>) {
    let first = points
        .iter()
        .position(|point| point.none != Some(NoEffort::NotDriven))
        .unwrap_or(points.len());
    let start = first.saturating_sub(usize::from(!handed_over));
    let points = points.get(start..).unwrap_or(&[]);
    let binding = |point: &Point| match point.none {
        Some(NoEffort::Binds(joint)) => Some(Blocked::Binds(joint)),
        _ => None,
    };
    let stop = match direction {
        Direction::Up => points.iter().position(|point| binding(point).is_some()),
        Direction::Down => points.iter().rposition(|point| binding(point).is_some()),
    };
    let bound = stop.and_then(|at| points.get(at)).and_then(binding);
    let points = match (direction, stop) {
        (Direction::Up, Some(at)) => points.get(..at).unwrap_or(&[]),
        (Direction::Down, Some(at)) => points.get(at + 1..).unwrap_or(&[]),
        (_, None) => points,
    };
    let mut sign = 0.0;
    for (at, pair) in points.windows(2).enumerate() {
        let [a, b] = pair else { continue };
        let change = b.length - a.length;
        let without_arm = b.none == Some(NoEffort::NotDriven) && at + 2 < points.len();
        let turns_back = change.abs() > SAME_STROKE && sign != 0.0 && change.signum() != sign;
        if turns_back || without_arm {
            return (points.get(..=at).unwrap_or(&[]), Some(Blocked::DeadPoint));
        }
        // The step out of the straight knee may go a little against the stroke: not driven.
        if change.abs() > SAME_STROKE && (a.effort.is_some() || at > 0) {
            sign = change.signum();
        }
    }
    (points, bound)
}

/// Area that works and area that empties in a direction [m2]; both 1 with an electric actuator.
fn areas(gear: &Gear, leg: &Leg, lengthens: bool) -> [f64; 2] {
    if matches!(gear.supply.source, Source::ElectricActuators) {
        return [1.0, 1.0];
    }
    let (bore, annulus) = statics::areas(&leg.actuator);
    if lengthens {
        [bore, annulus]
    } else {
        [annulus, bore]
    }
}

fn swing_stage(gear: &Gear, leg: &Leg, points: &[Point], direction: Direction) -> Option<Stage> {
    let (first, last) = (points.first()?, points.last()?);
    let lengthens_up = last.length > first.length;
    let is_down = direction == Direction::Down;
    let [working, emptied] = areas(gear, leg, lengthens_up != is_down);
    let is_fluid = !matches!(gear.supply.source, Source::ElectricActuators);
    let back = if is_fluid {
        gear.supply.return_pressure
    } else {
        0.0
    };
    let mut rows: Vec<(&Point, f64)> = Vec::with_capacity(points.len());
    let mut effort = points.iter().find_map(|point| point.effort)?;
    for point in points {
        if let Some(known) = point.effort {
            effort = known;
        }
        rows.push((point, (effort + back * emptied) / working));
    }
    if is_down {
        rows.reverse();
    }
    let mut fluid = 0.0;
    let mut before: Option<f64> = None;
    let mut places = Vec::with_capacity(rows.len());
    let mut load = Vec::with_capacity(rows.len());
    for (point, needed) in rows {
        fluid += before.map_or(0.0, |length| (point.length - length).abs() * working);
        before = Some(point.length);
        if places.last().is_none_or(|row: &[f64; 4]| fluid > row[0]) {
            places.push([
                fluid,
                point.place.progress,
                point.place.travel,
                point.place.swing,
            ]);
            load.push((fluid, needed));
        }
    }
    let ratio = match direction {
        Direction::Up => 1.0,
        Direction::Down => working / emptied,
    };
    Some(Stage {
        is_strut: false,
        extent: fluid,
        area: working,
        load: Curve::new(load),
        opens_at: 0.0,
        line: line(gear, leg, direction, ratio),
        places,
    })
}

/// The line of a leg; down, the orifice of its fall stands in where none is given for the pump.
///
/// Up, the orifice meters what enters. Down, it meters what leaves the same side (a one-way
/// restrictor sits in the up line, common practice): a piston hands the pressure to spare on by
/// `ratio`, working over emptied area, and the flow likewise.
fn line(gear: &Gear, leg: &Leg, direction: Direction, ratio: f64) -> Line {
    let orifice = match direction {
        Direction::Up => leg.drive.orifice_up,
        Direction::Down => leg.drive.orifice_down.or_else(|| {
            Some(LineOrifice {
                hole: leg.fall.return_orifice?,
                discharge: leg.fall.discharge(),
            })
        }),
    };
    Line {
        conductance: conductance(&orifice.unwrap_or(OPEN_LINE), gear.fluid.density),
        ratio,
    }
}

/// The stage of the strut: only where it shortens before the swing, by a hydraulic jack.
fn strut_stage(gear: &Gear, leg: &Leg, direction: Direction) -> Option<Stage> {
    let Shortening::BeforeSwing { amount } = leg.strut.shortening else {
        return None;
    };
    let StrutJack {
        area,
        shorten_pressure,
        lengthen_pressure,
    } = leg.drive.strut_jack?;
    if matches!(gear.supply.source, Source::ElectricActuators) {
        return None;
    }
    let start = Linkage::new(leg).path().start();
    let (pressure, ends) = match direction {
        Direction::Up => (shorten_pressure, [start, start + 1.0]),
        Direction::Down => (lengthen_pressure, [start + 1.0, start]),
    };
    let needed = pressure + gear.supply.return_pressure;
    let extent = area * amount;
    Some(Stage {
        is_strut: true,
        extent,
        area,
        load: Curve::new([(0.0, needed), (extent, needed)]),
        opens_at: 0.0,
        line: line(gear, leg, direction, 1.0),
        places: vec![[0.0, ends[0], 0.0, 0.0], [extent, ends[1], 0.0, 0.0]],
    })
}
