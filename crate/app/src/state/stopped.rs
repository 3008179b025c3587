//! What explains the legs that were seen to stop, worked out when nothing is being dragged.
use gearswing_gear::model::Gear;
use gearswing_report::StopAnswer;
use gearswing_solver::PreparedGear;
use gearswing_solver::stop::explain_prepared;

use super::timed::is_same;

/// Explanations, and the revision of the document that they are of.
#[derive(Clone, Debug, Default)]
pub(crate) struct Stops {
    /// Revision; 0 = none yet.
    revision: u64,
    /// What they rest on.
    gear: Option<Box<Gear>>,
    /// The leg to go on with.
    next: usize,
    /// One for each leg that was seen to stop.
    found: Vec<StopAnswer>,
}

impl Stops {
    /// Works one out anew when the document has changed; false = there was nothing left.
    pub(crate) fn settle_part(&mut self, prepared: &PreparedGear<'_>, revision: u64) -> bool {
        let gear = prepared.gear();
        if self.revision != revision {
            self.revision = revision;
            if !self.gear.as_ref().is_some_and(|known| is_same(known, gear)) {
                self.gear = Some(gear.clone().into());
                self.next = 0;
                self.found.clear();
            }
        }
        let mut left = gear.legs.iter().enumerate().skip(self.next);
        let Some((index, _)) = left.find(|(_, leg)| leg.seen_stop.is_some()) else {
            return false;
        };
        self.next = index + 1;
        self.found.push((index, explain_prepared(prepared, index)));
        true
    }

    /// Gives up those that are not there yet.
    pub(crate) fn give_up(&mut self, gear: &Gear, revision: u64) {
        if self.revision != revision {
            self.found.clear();
        }
        self.revision = revision;
        self.gear = Some(gear.clone().into());
        self.next = gear.legs.len();
    }

    /// What explains the stop of a leg; `None` = none was seen.
    pub(crate) fn of(&self, leg: usize) -> Option<&StopAnswer> {
        self.found.iter().find(|(index, _)| *index == leg)
    }
}
