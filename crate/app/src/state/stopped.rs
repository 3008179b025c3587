//! What explains the legs that were seen to stop, worked out when nothing is being dragged.
use gearswing_report::StopAnswer;
use gearswing_solver::model::Gear;
use gearswing_solver::stop::explain_stop;

/// Explanations, and the revision of the document that they are of.
#[derive(Clone, Debug, Default)]
pub(crate) struct Stops {
    /// Revision; 0 = none yet.
    revision: u64,
    /// One for each leg that was seen to stop.
    found: Vec<StopAnswer>,
}

impl Stops {
    /// Works them out anew when the document has changed.
    pub(crate) fn settle(&mut self, gear: &Gear, revision: u64) {
        if self.revision == revision {
            return;
        }
        self.revision = revision;
        self.found = gear
            .legs
            .iter()
            .enumerate()
            .filter(|(_, leg)| leg.seen_stop.is_some())
            .map(|(index, _)| (index, explain_stop(gear, index)))
            .collect();
    }

    /// What explains the stop of a leg; `None` = none was seen.
    pub(crate) fn of(&self, leg: usize) -> Option<&StopAnswer> {
        self.found.iter().find(|(index, _)| *index == leg)
    }
}
