//! One stage of a leg's way as the source sees it: its load over the fluid or stroke.
use super::curve::Curve;
use super::leg_stages::Point;
use crate::hydraulics::{Line, NO_PRESSURE, OPEN_LINE, conductance};
use crate::model::{Gear, Leg, Shortening, Source, StrutJack};
use crate::prepared::PreparedLeg;
use crate::result::{Direction, Phase, Place};
use crate::statics::{Drive, Face};

/// One stage: a stroke against a load.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Stage {
    /// Whether the strut slides; otherwise the leg swings.
    pub is_strut: bool,
    /// Fluid for the whole stage (m3); its stroke with an electric actuator (m).
    pub extent: f64,
    /// Part of the whole stage that it is (ratio): less than 1 where a strut is stopped on its way.
    pub part: f64,
    /// What its thrust is made with.
    pub face: Face,
    /// Pressure at the manifold from which it moves, over the fluid (Pa); force with an electric
    /// actuator (N).
    pub load: Curve,
    /// Pressure at which the valve before it opens (Pa); 0 without one.
    pub opens_at: f64,
    /// Pressure at the manifold, or force, that starts it where it has stood (Pa, N); −∞ where it starts
    /// as it runs.
    pub starts_against: f64,
    /// What the fluid comes through.
    pub line: Line,
    /// Least gauge pressure that can stand behind the line (Pa); −∞ where nothing that moves the leg on
    /// draws through it.
    pub least: f64,
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
            // without rows it is nowhere: 0 would be gear down
            (None, None) => [f64::NAN; 4],
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

    /// Leaves the stage where it is if the most of the source does not start it: what does starts it with
    /// a jerk, and then it runs against its running friction.
    pub(super) fn stays_under(&mut self, most: f64) {
        if self.starts_against >= most {
            self.load = self.load.at_least(self.starts_against);
        }
    }

    /// Pressure at the manifold from which it moves, or force (Pa, N): what a load that pulls draws
    /// through the line is no less than the least that can stand there.
    pub(super) fn draws(&self, fluid: f64) -> f64 {
        self.load.value(fluid).max(self.least)
    }

    /// Fluid from which on its load pulls the leg ahead of what follows; `None` where it never does.
    pub(super) fn lags_from(&self) -> Option<f64> {
        self.load.first_below(self.least)
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

/// The swing over its points, from down to up; `stood` is the thrust that starts it where it has stood (N).
pub(super) fn swing_stage(
    gear: &Gear,
    leg: &Leg,
    points: &[Point],
    stood: Option<f64>,
    direction: Direction,
) -> Option<Stage> {
    let (first, last) = (points.first()?, points.last()?);
    let lengthens_up = last.length > first.length;
    let is_down = direction == Direction::Down;
    let way = Drive::new(&leg.actuator, &gear.supply).going(lengthens_up != is_down);
    let is_fluid = way.face != Face::Electric;
    let mut rows: Vec<(&Point, f64)> = Vec::with_capacity(points.len());
    let mut effort = points.iter().find_map(|point| point.effort)?;
    for point in points {
        if let Some(known) = point.effort {
            effort = known;
        }
        rows.push((point, way.balances(effort)));
    }
    if is_down {
        rows.reverse();
    }
    let mut fluid = 0.0;
    let mut before: Option<f64> = None;
    let mut places = Vec::with_capacity(rows.len());
    let mut load = Vec::with_capacity(rows.len());
    for (point, needed) in rows {
        // up to the first point nothing has moved
        fluid += before.map_or(0.0, |length| way.face.takes((point.length - length).abs()));
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
        Direction::Down => way.ratio,
    };
    Some(Stage {
        is_strut: false,
        part: 1.0,
        extent: fluid,
        face: way.face,
        load: Curve::new(load),
        opens_at: 0.0,
        starts_against: stood.map_or(f64::NEG_INFINITY, |effort| way.balances(effort)),
        line: line(gear, leg, direction, ratio),
        least: if is_fluid && !is_down {
            NO_PRESSURE
        } else {
            f64::NEG_INFINITY
        },
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
        Direction::Down => leg.orifice_down(),
    };
    Line {
        conductance: conductance(&orifice.unwrap_or(OPEN_LINE), gear.fluid.density),
        ratio,
        both_ways: false,
    }
}

/// The stage of the strut: only where it shortens before the swing, by a hydraulic jack; no further than
/// `until`.
pub(super) fn strut_stage(
    gear: &Gear,
    swept: &PreparedLeg,
    direction: Direction,
    until: f64,
) -> Option<Stage> {
    let leg = swept.leg();
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
    let start = swept.linkage().path().start();
    let part = (until - start).clamp(0.0, 1.0);
    let (pressure, ends) = match direction {
        Direction::Up => (shorten_pressure, [start, start + part]),
        Direction::Down => (lengthen_pressure, [start + part, start]),
    };
    let needed = pressure + gear.supply.return_pressure;
    let face = Face::Fluid { area };
    let extent = area * amount * part;
    Some(Stage {
        is_strut: true,
        part,
        extent,
        face,
        load: Curve::new([(0.0, needed), (extent, needed)]),
        opens_at: 0.0,
        starts_against: f64::NEG_INFINITY,
        line: line(gear, leg, direction, 1.0),
        least: NO_PRESSURE,
        places: vec![[0.0, ends[0], 0.0, 0.0], [extent, ends[1], 0.0, 0.0]],
    })
}
