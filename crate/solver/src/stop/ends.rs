//! Stops that are not a matter of load: ends of actuator and linkage, pins that bind, switches.
use super::contacts::MOST_OFF;
use super::explain::Case;
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
        let strokes = self
            .way
            .rows
            .iter()
            .map(|row| (row.travel, row.stroke_left));
        if let Some(at) = crossing(strokes, &self.stood, self.drawing()) {
            let squares = self.passed(at.travel, None);
            let drawn = self.draft(
                StopCause::ActuatorEnds { left: at.left },
                at,
                squares,
                dead(),
            );
            let fits = drawn.squares <= 4.0;
            // a stroke that is not the file's: the nearest end, if it is off by so much
            let travel = self.stood.place.travel;
            let left = self.way.nearest(travel).map(|row| row.stroke_left);
            let left = left.filter(|left| !fits && (0.0..MOST_OFF).contains(left));
            drafts.push(left.map_or(drawn, |left| Draft {
                cause: StopCause::ActuatorEnds { left },
                asked: travel,
                squares: self.passed(travel, None),
                held: dead(),
                fitted: 1,
                bound: None,
            }));
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
                let squares = self.passed(at.travel, None);
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
            let squares = self.passed(last.travel, None);
            drafts.push(self.draft(StopCause::Binds { joint }, at, squares, dead()));
        }
        drafts
    }

    /// At the end of its own way a leg stops by itself; then the switch there does not make.
    pub(super) fn at_its_end(&self) -> Option<Draft> {
        let end = if self.is_up() { 1.0 } else { 0.0 };
        let reaches = self.track.blocked.is_none() && self.sweep.jams.is_empty();
        let off = (end - self.stood.place.travel) / self.stood.uncertainty;
        (reaches && off.abs() <= COVERAGE).then(|| Draft {
            cause: StopCause::AtItsEnd,
            asked: end,
            squares: off * off + self.passed(end, None),
            held: self.head.dead(),
            fitted: 0,
            bound: None,
        })
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
        let passed = self.passed(travel, None);
        // Where the file has the switch, nothing needs to be chosen.
        let as_set = off.abs() <= COVERAGE;
        Some(Draft {
            cause: StopCause::SwitchEarly { travel, file },
            asked: if as_set { file } else { travel },
            squares: passed + if as_set { off * off } else { 0.0 },
            held: self.head.stopped(),
            fitted: usize::from(!as_set),
            bound: None,
        })
    }
}
