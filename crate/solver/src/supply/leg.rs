//! One leg on its way: stage, switches, what it shows.
use super::leg_stages::{Blocked, LegStages};
use super::stage::Stage;
use crate::model::{Leg, Shortening};
use crate::numeric::sort_by;
use crate::result::{Direction, Indication, LegSample, Place, RunEventKind};

/// Share of a stage within which a place is reached: rounding of the time step that ends there, and
/// of legs that are mirror images and come to it together.
const REACHED: f64 = 1e-8;

/// Share of a stage after which a switch that opens at its very start is told to be open; it shows open
/// as soon as anything has moved.
const OPENS: f64 = 1e-6;

/// A switch that makes or opens on the way.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Trigger {
    stage: usize,
    fluid: f64,
    kind: RunEventKind,
    /// Whether any movement opens it.
    at_once: bool,
}

/// What the switches of a leg say.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Made {
    shortened: bool,
    up: bool,
    down: bool,
}

impl Made {
    fn apply(&mut self, kind: RunEventKind) {
        match kind {
            RunEventKind::ShortenedMade => self.shortened = true,
            RunEventKind::ShortenedOpen => self.shortened = false,
            RunEventKind::UpMade => self.up = true,
            RunEventKind::UpOpen => self.up = false,
            RunEventKind::DownMade => self.down = true,
            RunEventKind::DownOpen => self.down = false,
            _ => {}
        }
    }
}

/// A leg on its way.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Moving {
    pub track: LegStages,
    direction: Direction,
    /// Index of the stage it is in; past the last one when it is done.
    pub stage: usize,
    began_in: usize,
    /// Fluid into the stage at the start of the run.
    pub begins_at: f64,
    triggers: Vec<Trigger>,
    shortens: bool,
    made: Made,
    has_left: bool,
}

impl Moving {
    /// A leg at the start of its way; `travel` where it does not stand at its end.
    pub(super) fn new(
        leg: &Leg,
        track: LegStages,
        direction: Direction,
        travel: Option<f64>,
    ) -> Self {
        let is_up = direction == Direction::Up;
        let shortens = matches!(leg.strut.shortening, Shortening::BeforeSwing { .. });
        let set = &leg.drive.switches;
        let from = track.from;
        // By progress: out of its lock a leg swings back past down before it goes up.
        let in_lock = from.progress <= track.locked_until;
        let never_left = in_lock || (set.down > 0.0 && from.travel < set.down);
        let triggers = triggers(leg, &track, direction);
        let mut moving = Self {
            stage: 0,
            began_in: 0,
            begins_at: 0.0,
            triggers,
            shortens,
            made: Made {
                shortened: shortens && !is_up && track.strut_part() >= set.shortened,
                up: !is_up && (!track.short_of_up || (set.up < 1.0 && from.travel >= set.up)),
                down: is_up || (track.short_of_up && never_left),
            },
            has_left: false,
            direction,
            track,
        };
        if let Some(travel) = travel.filter(|travel| is_up && *travel > 0.0) {
            moving.start_at(travel);
        }
        // A strut without a jack shortens as soon as the gear is selected up.
        if is_up && shortens && !moving.track.stages.iter().any(|stage| stage.is_strut) {
            moving.made.shortened = true;
        }
        moving
    }

    fn start_at(&mut self, travel: f64) {
        let swing = self.track.stages.iter().position(|stage| !stage.is_strut);
        let Some(at) = swing else { return };
        let Some(stage) = self.track.stages.get(at) else {
            return;
        };
        self.begins_at = stage
            .fluid_at_travel(travel)
            .unwrap_or(stage.extent)
            .clamp(0.0, stage.extent);
        self.stage = at;
        self.began_in = at;
        self.has_left = true;
        self.made.shortened = self.shortens;
        let (fluid, stage) = (self.begins_at, self.stage);
        let is_ahead = |t: &Trigger| t.stage > stage || (t.stage == stage && t.fluid > fluid);
        let all = std::mem::take(&mut self.triggers);
        for trigger in all {
            if is_ahead(&trigger) {
                self.triggers.push(trigger);
            } else {
                self.made.apply(trigger.kind);
            }
        }
    }

    /// Leaves the leg where it has stood if the most of its source does not start it there.
    pub(super) fn stays_under(&mut self, most: f64) {
        let begins = (self.began_in, self.begins_at);
        for (at, stage) in self.track.stages.iter_mut().enumerate() {
            // what starts on its way has been let go there
            if begins.1 == 0.0 || at != begins.0 {
                stage.stays_under(most);
            }
        }
    }

    /// The stage it is in; `None` when it is done.
    pub(super) fn now(&self) -> Option<&Stage> {
        self.track.stages.get(self.stage)
    }

    pub(super) fn is_done(&self) -> bool {
        self.stage >= self.track.stages.len()
    }

    /// Whether it is at the end of its whole way.
    pub(super) fn is_home(&self) -> bool {
        self.is_done() && self.track.blocked.is_none()
    }

    /// Whether the switch at the end of the way is made; no switch tells that a jack has let its strut
    /// all the way out, so down such a way itself must be done.
    pub(super) fn end_switch(&self) -> bool {
        match self.direction {
            Direction::Up => self.made.up,
            Direction::Down => {
                let has_jack = self.track.stages.iter().any(|stage| stage.is_strut);
                self.made.down && (self.is_done() || !has_jack)
            }
        }
    }

    /// Whether something stops it at the end of the way it has gone.
    pub(super) fn is_blocked(&self) -> bool {
        self.is_done() && self.track.blocked.is_some()
    }

    /// Fluid into the present stage at which the next thing happens.
    pub(super) fn next_fluid(&self) -> Option<f64> {
        let stage = self.now()?;
        let next = self.triggers.iter().find(|t| t.stage == self.stage);
        Some(next.map_or(stage.extent, |t| t.fluid.min(stage.extent)))
    }

    /// Fluid swept in stages that are behind it (m3).
    pub(super) fn swept(&self) -> f64 {
        let behind = self.track.stages.iter().take(self.stage);
        behind.map(|stage| stage.extent).sum()
    }

    /// Fluid that was in the cylinder before the run, of the stage it began in (m3).
    pub(super) fn skipped(&self) -> f64 {
        let before = self.track.stages.iter().take(self.began_in);
        before.map(|stage| stage.extent).sum::<f64>() + self.begins_at
    }

    /// Everything that has happened with so much fluid in the present stage; the stage is left
    /// behind when it is done, and `fluid` starts anew.
    pub(super) fn settle(&mut self, fluid: &mut f64) -> Vec<(RunEventKind, Place)> {
        let mut happened = Vec::new();
        let Some(stage) = self.now() else {
            return happened;
        };
        let (extent, is_strut) = (stage.extent, stage.is_strut);
        let reached = |at: f64| *fluid >= at - REACHED * extent;
        let place = stage.place(*fluid);
        self.has_left |= *fluid > 0.5 * OPENS * extent || self.is_carried();
        while let Some(trigger) = self.triggers.first().copied()
            && trigger.stage == self.stage
            && reached(trigger.fluid)
        {
            self.triggers.remove(0);
            self.made.apply(trigger.kind);
            happened.push((trigger.kind, place));
        }
        if !reached(extent) {
            return happened;
        }
        self.stage += 1;
        *fluid = 0.0;
        let blocked = self.track.blocked.filter(|_| self.is_done());
        let kind = match (blocked, is_strut) {
            (Some(Blocked::Touches(_)), _) => RunEventKind::Touches,
            (Some(_), _) => RunEventKind::Blocked,
            (None, true) => RunEventKind::StrutDone,
            (None, false) => RunEventKind::SwingDone,
        };
        happened.push((kind, place));
        let lets_out_by_itself = self.direction == Direction::Down && self.is_done();
        if lets_out_by_itself && self.made.shortened && self.track.blocked.is_none() {
            self.made.shortened = false;
            happened.push((RunEventKind::ShortenedOpen, place));
        }
        happened
    }

    /// Switches that any movement opens, of a leg that has moved and now stands: they open there.
    pub(super) fn leaves(&mut self, fluid: f64) -> Vec<(RunEventKind, Place)> {
        let mut happened = Vec::new();
        while let Some(at) = self
            .triggers
            .iter()
            .position(|trigger| self.has_moved_past(trigger, fluid))
        {
            let kind = self.triggers.remove(at).kind;
            self.made.apply(kind);
            happened.push((kind, self.place(fluid)));
        }
        happened
    }

    fn has_moved_past(&self, trigger: &Trigger, fluid: f64) -> bool {
        trigger.at_once && trigger.stage == self.stage && (fluid > 0.0 || trigger.fluid <= 0.0)
    }

    /// Whether a device of its own has the leg out of its lock before the stage that it is in.
    fn is_carried(&self) -> bool {
        let stage = self.now().filter(|_| self.direction == Direction::Up);
        stage.is_some_and(|stage| self.track.is_carried_to(stage))
    }

    /// Where it is.
    pub(super) fn place(&self, fluid: f64) -> Place {
        match self.now() {
            Some(stage) if self.has_left || fluid > 0.0 || self.is_carried() => stage.place(fluid),
            Some(_) => self.track.from,
            None if self.track.blocked.is_some() => self
                .track
                .stages
                .last()
                .map_or(self.track.from, |stage| stage.place(stage.extent)),
            None => self.track.to,
        }
    }

    /// Everything about it at one instant.
    pub(super) fn sample(&self, fluid: f64) -> LegSample {
        let mut made = self.made;
        let moved = |trigger: &&Trigger| self.has_moved_past(trigger, fluid);
        for trigger in self.triggers.iter().filter(moved) {
            made.apply(trigger.kind);
        }
        LegSample {
            place: self.place(fluid),
            shortened_share: self.shortened_share(fluid),
            shortened: made.shortened,
            up: made.up,
            down: made.down,
            indication: indication(made.up, made.down),
        }
    }

    fn shortened_share(&self, fluid: f64) -> f64 {
        let strut = self.track.stages.iter().position(|stage| stage.is_strut);
        let of = match (strut, self.now()) {
            (Some(at), Some(stage)) if at == self.stage => fluid / stage.extent,
            (Some(at), _) => f64::from(u8::from(self.stage > at)),
            // Without a jack the switch alone tells.
            (None, _) => return f64::from(u8::from(self.made.shortened)),
        };
        let of_it = match self.direction {
            Direction::Up => of,
            Direction::Down => 1.0 - of,
        };
        of_it * self.track.strut_part()
    }
}

/// The usual rule (common practice).
fn indication(up: bool, down: bool) -> Indication {
    match (up, down) {
        (true, false) => Indication::Up,
        (false, true) => Indication::DownAndLocked,
        _ => Indication::InTransit,
    }
}

/// The switches of a leg along its way, in order.
fn triggers(leg: &Leg, track: &LegStages, direction: Direction) -> Vec<Trigger> {
    let set = &leg.drive.switches;
    let mut found = Vec::new();
    for (at, stage) in track.stages.iter().enumerate() {
        let opens = OPENS * stage.extent;
        let mut add = |fluid: Option<f64>, kind| {
            use RunEventKind::{DownOpen, ShortenedOpen, UpOpen};
            found.extend(fluid.map(|fluid| Trigger {
                stage: at,
                fluid,
                kind,
                at_once: fluid <= opens && matches!(kind, DownOpen | ShortenedOpen | UpOpen),
            }));
        };
        let whole = stage.extent / stage.part;
        let at_travel = |travel: f64| stage.fluid_at_travel(travel);
        let end = (track.blocked.is_none()).then_some(stage.extent);
        add(stage.lags_from(), RunEventKind::FluidLags);
        match (direction, stage.is_strut) {
            (Direction::Up, true) => {
                let makes = set.shortened * whole;
                let comes_there = makes <= stage.extent;
                add(comes_there.then_some(makes), RunEventKind::ShortenedMade);
            }
            (Direction::Down, true) => {
                let leaves = stage.extent - set.shortened * whole;
                add(
                    (leaves >= 0.0).then_some(leaves.max(opens)),
                    RunEventKind::ShortenedOpen,
                );
            }
            (Direction::Up, false) => {
                let leaves = if stage.place(0.0).travel < set.down {
                    at_travel(set.down).map(|fluid| fluid.max(opens))
                } else if track.is_carried_to(stage) {
                    // before the actuator has moved anything
                    Some(0.0)
                } else {
                    Some(opens)
                };
                add(leaves, RunEventKind::DownOpen);
                let makes = if set.up < 1.0 { at_travel(set.up) } else { end };
                add(makes, RunEventKind::UpMade);
            }
            (Direction::Down, false) => {
                let leaves = if set.up < 1.0 {
                    at_travel(set.up)
                } else {
                    (!track.short_of_up).then_some(opens)
                };
                add(leaves.map(|fluid| fluid.max(opens)), RunEventKind::UpOpen);
                let makes = if set.down > 0.0 {
                    at_travel(set.down)
                } else {
                    end
                };
                add(makes, RunEventKind::DownMade);
            }
        }
    }
    sort_by(&mut found, |a, b| {
        a.stage.cmp(&b.stage).then(a.fluid.total_cmp(&b.fluid))
    });
    found
}
