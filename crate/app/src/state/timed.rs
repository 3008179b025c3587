//! The gear against time, worked out when nothing is being dragged.
use gearswing_gear::model::Direction;
use gearswing_gear::model::Gear;
use gearswing_solver::PreparedGear;
use gearswing_solver::result::{Cycle, LegSample, Run, Sample};
use gearswing_solver::supply::{Cycling, SupplyError, SupplyOptions, is_timed};

/// Steps of a run in one part of the work; those of many legs take longer each.
const STEPS: usize = 200;

/// Times, and the revision of the document that they are of.
#[derive(Clone, Debug, Default)]
pub(crate) struct Timed {
    /// Revision, and whether on jacks; 0 = none yet.
    of: (u64, bool),
    /// What they rest on.
    gear: Option<Box<Gear>>,
    /// `None` where nothing says how fast the gear moves, and while it is worked out.
    pub(crate) cycle: Option<Result<Cycle, SupplyError>>,
    /// It is being worked out.
    under_way: Option<Box<Cycling>>,
    /// It was given up.
    given_up: bool,
}

/// Whether two gears differ in no more than their words and in what they are compared with.
pub(super) fn is_same(known: &Gear, gear: &Gear) -> bool {
    let mut known = known.clone();
    known.name.clone_from(&gear.name);
    known.note.clone_from(&gear.note);
    known.kept.clone_from(&gear.kept);
    known.before = gear.before;
    known == *gear
}

/// How the times stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum TimesAre {
    /// As worked out.
    There,
    /// Being worked out.
    Coming,
    /// Given up.
    GivenUp,
}

impl Timed {
    /// Works a part of the times out anew when the document has changed, of which this is the revision,
    /// or whether they are wanted on jacks; false = there was nothing left.
    pub(crate) fn settle_part(
        &mut self,
        prepared: &PreparedGear<'static>,
        of: (u64, bool),
    ) -> bool {
        let gear = prepared.gear();
        if self.of != of {
            let known = self.gear.as_ref().filter(|_| self.of.1 == of.1);
            let same = known.is_some_and(|known| is_same(known, gear));
            self.of = of;
            if !same {
                self.begin(prepared);
            }
        }
        let Some(under_way) = &mut self.under_way else {
            return false;
        };
        let steps = (STEPS / gear.legs.len().max(1)).max(1);
        self.cycle = under_way.advance(steps);
        if self.cycle.is_some() {
            self.under_way = None;
        }
        true
    }

    /// Begins anew.
    fn begin(&mut self, prepared: &PreparedGear<'static>) {
        let gear = prepared.gear();
        self.gear = Some(gear.clone().into());
        self.cycle = None;
        self.given_up = false;
        let options = SupplyOptions {
            on_jacks: self.of.1,
            ..SupplyOptions::default()
        };
        self.under_way = is_timed(gear).then(|| Cycling::new(prepared.clone(), &options).into());
    }

    /// Gives up what is being worked out, as far as it is not there yet.
    pub(crate) fn give_up(&mut self, gear: &Gear, of: (u64, bool)) {
        if self.of != of || self.under_way.take().is_some() {
            self.of = of;
            self.gear = Some(gear.clone().into());
            self.under_way = None;
            self.cycle = None;
            self.given_up = true;
        }
    }

    /// How they stand.
    pub(crate) fn are(&self) -> TimesAre {
        match (self.given_up, &self.under_way) {
            (true, _) => TimesAre::GivenUp,
            (false, Some(_)) => TimesAre::Coming,
            (false, None) => TimesAre::There,
        }
    }

    /// The run in one direction.
    pub(crate) fn run(&self, down: bool) -> Option<&Run> {
        let cycle = self.cycle.as_ref()?.as_ref().ok()?;
        cycle.run(selected(down))
    }
}

/// The direction that is shown.
pub(crate) fn selected(down: bool) -> Direction {
    if down { Direction::Down } else { Direction::Up }
}

/// The samples on both sides of a time, and the share of the way between them (ratio).
fn beside(run: &Run, time_s: f64) -> Option<(&Sample, &Sample, f64)> {
    let after = run.samples.partition_point(|sample| sample.time <= time_s);
    let a = run.samples.get(after.saturating_sub(1))?;
    let b = run.samples.get(after).unwrap_or(a);
    let width = b.time - a.time;
    let share = if width > 0.0 {
        ((time_s - a.time) / width).clamp(0.0, 1.0)
    } else {
        0.0
    };
    Some((a, b, share))
}

/// Place of a leg on its path at a time (ratio).
pub(crate) fn progress_at(run: &Run, leg: usize, time_s: f64) -> Option<f64> {
    let (a, b, share) = beside(run, time_s)?;
    let (a, b) = (a.legs.get(leg)?.place, b.legs.get(leg)?.place);
    Some(a.progress + (b.progress - a.progress) * share)
}

/// What the switches of a leg say at a time: they hold until the next sample.
pub(crate) fn leg_at(run: &Run, leg: usize, time_s: f64) -> Option<&LegSample> {
    beside(run, time_s)?.0.legs.get(leg)
}

/// A number of the supply at a time, straight between samples.
pub(crate) fn value_at(
    run: &Run,
    time_s: f64,
    get: impl Fn(&Sample) -> Option<f64>,
) -> Option<f64> {
    let (a, b, share) = beside(run, time_s)?;
    let (a, b) = (get(a)?, get(b)?);
    Some(a + (b - a) * share)
}
