//! The way of one leg, in the order in which it goes: loads, clearances, lengths.
use super::StopError;
use crate::clearance::drawn_clearance_at;
use crate::kinematics::{Linkage, Pose};
use crate::model::{Leg, MovingPart};
use crate::numeric::sort_by;
use crate::result::{Place, TireState};
use crate::statics::Face;
use crate::supply::LegStages;
use crate::tires::TireSizes;

use super::place::Stood;

/// Every so manieth station has its clearances worked out; all do near the place seen (ratio).
const STRIDE: usize = 4;

/// Near: so many standard uncertainties to both sides (ratio).
const NEAR: f64 = 4.0;

/// Places put in between near the place seen, to each side.
const BETWEEN: i32 = 16;

/// One place of the way.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    pub travel: f64,
    pub progress: f64,
    /// Load (Pa; N with electric actuators).
    pub needed: f64,
    /// Largest load so far, this place included.
    pub hardest: f64,
    /// What the source works on.
    pub face: Face,
    /// Stroke that the actuator has left (m).
    pub stroke_left: f64,
    /// Whether it is the strut that moves there.
    pub is_strut: bool,
}

/// The way with its loads.
pub(super) struct Way {
    pub rows: Vec<Row>,
}

impl Way {
    pub(super) fn new(
        leg: &Leg,
        linkage: &Linkage,
        track: &LegStages,
        stood: &Stood,
    ) -> Result<Self, StopError> {
        let mut rows: Vec<Row> = Vec::new();
        let length = |progress: f64| linkage.pose(progress).map(|pose| pose.actuator_length);
        let first = track.stages.first().map(|stage| stage.place(0.0));
        let last = track.stages.last().map(|stage| stage.place(stage.extent));
        let at = |place: Option<Place>| length(place?.progress).ok();
        let lengthens = at(first).zip(at(last)).is_none_or(|(from, to)| to > from);
        let left = |length: f64| match lengthens {
            true => leg.actuator.longest - length,
            false => length - leg.actuator.shortest,
        };
        let mut hardest = f64::NEG_INFINITY;
        for stage in &track.stages {
            let mut fluids: Vec<f64> = stage.places.iter().map(|row| row[0]).collect();
            if !stage.is_strut {
                let step = NEAR * stood.uncertainty / f64::from(BETWEEN);
                let near = (-BETWEEN..=BETWEEN)
                    .map(|k| stood.place.travel + f64::from(k) * step)
                    .filter_map(|travel| stage.fluid_at_travel(travel));
                fluids.extend(near);
            }
            sort_by(&mut fluids, f64::total_cmp);
            fluids.dedup();
            for fluid in fluids {
                let place = stage.place(fluid);
                let Ok(length) = length(place.progress) else {
                    continue;
                };
                let needed = stage.load.value(fluid);
                hardest = hardest.max(needed);
                rows.push(Row {
                    travel: place.travel,
                    progress: place.progress,
                    needed,
                    hardest,
                    face: stage.face,
                    stroke_left: left(length),
                    is_strut: stage.is_strut,
                });
            }
        }
        if rows.is_empty() {
            return Err(StopError::NotDriven);
        }
        Ok(Self { rows })
    }

    /// Rows of the swing.
    pub(super) fn swing(&self) -> impl Iterator<Item = &Row> {
        self.rows.iter().filter(|row| !row.is_strut)
    }

    /// The row next to a travel.
    pub(super) fn nearest(&self, travel: f64) -> Option<&Row> {
        let off = |row: &&Row| (row.travel - travel).abs();
        self.swing().min_by(|a, b| off(a).total_cmp(&off(b)))
    }
}

/// A moving part against an obstacle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pair {
    pub obstacle: usize,
    pub part: MovingPart,
    pub tire: Option<TireState>,
}

/// Clearances along the way.
pub(super) struct Gaps {
    pub pairs: Vec<Pair>,
    pub travels: Vec<f64>,
    /// Clearance of each pair at each of the travels (m).
    pub clear: Vec<Vec<f64>>,
}

impl Gaps {
    pub(super) fn new(
        leg: &Leg,
        linkage: &Linkage,
        way: &Way,
        stood: &Stood,
    ) -> Result<Self, StopError> {
        let sizes = TireSizes::of(&leg.wheel.tire);
        let near = NEAR * stood.uncertainty;
        let last = way.rows.len().saturating_sub(1);
        let mut gaps = Self {
            pairs: Vec::new(),
            travels: Vec::new(),
            clear: Vec::new(),
        };
        for (at, row) in way.rows.iter().enumerate() {
            let is_near = (row.travel - stood.place.travel).abs() <= near;
            if at % STRIDE != 0 && at != last && !is_near {
                continue;
            }
            let Ok(pose) = linkage.pose(row.progress) else {
                continue;
            };
            gaps.add(leg, &sizes, &pose)?;
        }
        Ok(gaps)
    }

    fn add(&mut self, leg: &Leg, sizes: &TireSizes, pose: &Pose) -> Result<(), StopError> {
        let all = clearances(leg, sizes, pose)?;
        let at = self.travels.len();
        for (pair, clearance) in all {
            let known = self.pairs.iter().position(|known| *known == pair);
            let index = known.unwrap_or_else(|| {
                self.pairs.push(pair);
                // A pair that is far off all along the way before counts as free there.
                self.clear.push(vec![f64::INFINITY; at]);
                self.pairs.len() - 1
            });
            if let Some(curve) = self.clear.get_mut(index) {
                curve.push(clearance);
            }
        }
        self.travels.push(pose.place.travel);
        for curve in &mut self.clear {
            curve.resize(at + 1, f64::INFINITY);
        }
        Ok(())
    }

    /// Least clearance of all pairs but `except`, from the start up to a travel (m). The tire counts
    /// as new: whether it has grown yet is not known, and the smaller one passes.
    pub(super) fn least_before(&self, travel: f64, up: bool, except: Option<usize>) -> f64 {
        let is_before = |s: f64| if up { s < travel } else { s > travel };
        let mut least = f64::INFINITY;
        for (index, curve) in self.clear.iter().enumerate() {
            let has_grown =
                self.pairs.get(index).and_then(|pair| pair.tire) == Some(TireState::Grown);
            if Some(index) == except || has_grown {
                continue;
            }
            let before = self.travels.iter().zip(curve);
            least = before
                .filter(|(s, _)| is_before(**s))
                .fold(least, |least, (_, clear)| least.min(*clear));
        }
        least
    }
}

/// Clearance of every pair at one pose.
pub(super) fn clearances(
    leg: &Leg,
    sizes: &TireSizes,
    pose: &Pose,
) -> Result<Vec<(Pair, f64)>, StopError> {
    let all =
        drawn_clearance_at(leg, sizes, pose).map_err(|error| StopError::Clearance { error })?;
    Ok(all
        .into_iter()
        .map(|one| {
            let pair = Pair {
                obstacle: one.obstacle,
                part: one.part,
                tire: one.tire,
            };
            (pair, one.tightest.clearance)
        })
        .collect())
}
