//! Stops that are not a matter of load: ends of actuator and linkage, pins that bind, switches.
use super::explain::{Case, ROUNDING};
use super::fit::{Crossing, Draft, crossing};
use super::place::COVERAGE;
use crate::model::{Brace, Direction};
use crate::result::{JamCause, StopCause};
use crate::supply::Blocked;

impl Case<'_> {
    /// Ends of the actuator, of the linkage, and pins that bind.
    pub(super) fn ends(&self) -> Vec<Draft> {
        let mut drafts = Vec::new();
        let dead = || self.head.dead();
        let strokes = self.strokes_left();
        if let Some(at) = crossing(strokes, &self.stood, self.drawing()) {
            let squares = self.passed(at.travel, None, true);
            drafts.push(self.draft(
                StopCause::ActuatorEnds { left: at.left },
                at,
                squares,
                dead(),
            ));
        }
        if self.is_up()
            && let Some(jam) = self.sweep.jams.first()
            && !matches!(
                jam.cause,
                JamCause::ActuatorEndsLong { .. } | JamCause::ActuatorEndsShort { .. }
            )
        {
            // The brace's own way on its pin stands for what is left.
            let radius = match &self.leg.brace {
                Brace::Folding(brace) => (brace.leg_attach - self.leg.trunnion).norm(),
                Brace::Sliding(brace) => (brace.leg_attach - self.leg.trunnion).norm(),
                Brace::None => (self.leg.strut.axle - self.leg.trunnion).norm(),
            };
            let left = |travel: f64| (jam.place.travel - travel) * self.leg.swing_up.abs() * radius;
            let curve = self
                .way
                .rows
                .iter()
                .map(|row| (row.travel, left(row.travel)));
            if let Some(at) = crossing(curve, &self.stood, self.drawing()) {
                let squares = self.passed(at.travel, None, true);
                drafts.push(self.draft(StopCause::Jams { cause: jam.cause }, at, squares, dead()));
            }
        }
        if let (Some(Blocked::Binds(joint)), Some(last)) =
            (self.track.blocked, self.way.rows.last())
        {
            let off = (last.travel - self.stood.place.travel) / self.stood.uncertainty;
            let at = Crossing {
                travel: last.travel,
                left: 0.0,
                squares: off * off,
            };
            let squares = self.passed(last.travel, None, true);
            drafts.push(self.draft(StopCause::Binds { joint }, at, squares, dead()));
        }
        drafts
    }

    /// Stroke left over the travel, in the order of the way [m].
    pub(super) fn strokes_left(&self) -> Vec<(f64, f64)> {
        let lengths: Vec<(f64, f64)> = self
            .way
            .rows
            .iter()
            .filter_map(|row| {
                let pose = self.linkage.pose(row.progress).ok()?;
                Some((row.travel, pose.actuator_length))
            })
            .collect();
        let lengthens = match (lengths.first(), lengths.last()) {
            (Some(first), Some(last)) => last.1 > first.1,
            _ => true,
        };
        let actuator = &self.leg.actuator;
        let left = |length: f64| {
            if lengthens {
                actuator.longest - length
            } else {
                length - actuator.shortest
            }
        };
        lengths.into_iter().map(|(s, l)| (s, left(l))).collect()
    }

    pub(super) fn switch_early(&self) -> Option<Draft> {
        if !self.head.stops_by_position() {
            return None;
        }
        let travel = self.stood.place.travel;
        let file = match self.seen.selected {
            Direction::Up => self.leg.drive.switches.up,
            Direction::Down => self.leg.drive.switches.down,
        };
        let off = (file - travel) / self.stood.uncertainty;
        let passed = self.passed(travel, None, true);
        // Where the file has the switch, nothing needs to be chosen.
        let as_set = off.abs() <= COVERAGE;
        let squares = passed + if as_set { off * off } else { 0.0 };
        let squares = if squares < ROUNDING { 0.0 } else { squares };
        Some(Draft {
            cause: StopCause::SwitchEarly { travel, file },
            asked: (as_set || squares > 0.0).then_some(if as_set { file } else { travel }),
            squares,
            held: self.head.stopped(),
            fitted: usize::from(!as_set),
        })
    }
}
