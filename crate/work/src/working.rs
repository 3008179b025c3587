//! The parts, one after the other.
use gearswing_gear::model::Gear;
use gearswing_gearfile::read;
use gearswing_solver::PreparedGear;
use gearswing_solver::stop::explain_prepared;
use gearswing_solver::supply::{Cycling, SupplyOptions, is_timed};
use std::collections::VecDeque;

use crate::{Found, Unreadable};

/// Time steps of a run in one part; with many legs each takes longer.
const STEPS: usize = 200;

/// Whether there is anything to work out.
#[must_use]
pub fn is_wanted(gear: &Gear) -> bool {
    is_timed(gear) || gear.legs.iter().any(|leg| leg.seen_stop.is_some())
}

/// The cases in which the gear is followed against time, whether on jacks: where attitude and air as set are those
/// on jacks, one answer is that of both.
#[must_use]
pub fn cases(gear: &Gear) -> &'static [bool] {
    match (is_timed(gear), gear.conditions.are_on_jacks()) {
        (false, _) => &[],
        (true, true) => &[false],
        (true, false) => &[false, true],
    }
}

/// What a part of the work came to.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// There is more to do before the next result.
    GoesOn,
    /// A result.
    Found(Box<Found>),
    /// There is nothing left.
    Over,
}

/// What is still to be followed.
#[derive(Clone, Debug)]
enum Piece {
    Times { on_jacks: bool },
    Stop { leg: usize },
}

/// Work that is under way.
#[derive(Clone, Debug)]
pub struct Working {
    prepared: PreparedGear<'static>,
    left: VecDeque<Piece>,
    /// The run that is being followed, and whether on jacks.
    going: Option<(bool, Box<Cycling>)>,
}

impl Working {
    /// Nothing is worked out yet.
    #[must_use]
    pub fn new(prepared: PreparedGear<'static>) -> Self {
        let gear = prepared.gear();
        let times = cases(gear).iter();
        let times = times.map(|&on_jacks| Piece::Times { on_jacks });
        let legs = gear.legs.iter().enumerate();
        let stops = legs.filter(|(_, leg)| leg.seen_stop.is_some());
        let left = times.chain(stops.map(|(leg, _)| Piece::Stop { leg }));
        Self {
            left: left.collect(),
            going: None,
            prepared,
        }
    }

    /// The same of a gear file's text; what a gear before it leaves as it was is not made ready again.
    ///
    /// # Errors
    /// The text is no gear file.
    pub fn of_text(text: &str, before: Option<&Self>) -> Result<Self, Unreadable> {
        let gear = read(text).map_err(|_| Unreadable)?;
        Ok(Self::new(match before {
            Some(before) => PreparedGear::after(gear, &before.prepared),
            None => gear.into(),
        }))
    }

    /// Works out one part: some steps of a run, or one explanation. What is found does not depend on how often it is
    /// interrupted.
    pub fn part(&mut self) -> Part {
        if let Some((on_jacks, mut run)) = self.going.take() {
            let legs = self.prepared.gear().legs.len().max(1);
            let Some(cycle) = run.advance((STEPS / legs).max(1)) else {
                self.going = Some((on_jacks, run));
                return Part::GoesOn;
            };
            return Part::Found(Found::Times { on_jacks, cycle }.into());
        }
        match self.left.pop_front() {
            None => Part::Over,
            Some(Piece::Times { on_jacks }) => {
                let options = SupplyOptions {
                    on_jacks,
                    ..SupplyOptions::default()
                };
                let run = Cycling::new(self.prepared.clone(), &options);
                self.going = Some((on_jacks, run.into()));
                Part::GoesOn
            }
            Some(Piece::Stop { leg }) => {
                let stop = (leg, explain_prepared(&self.prepared, leg));
                Part::Found(Found::Stop(stop).into())
            }
        }
    }
}
