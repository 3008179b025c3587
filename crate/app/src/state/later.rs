//! What comes after the answers, worked out elsewhere: the gear against time, and what explains the stops that were
//! seen. It is asked for when nothing is being dragged, and comes one result at a time.
use gearswing_gear::model::Gear;
use gearswing_report::page::working::Work;
use gearswing_solver::result::{Cycle, Run, SupplyError};
use gearswing_solver::stop::StopAnswer;
use gearswing_work::{Found, cases, is_wanted};

use super::timed::selected;

/// A result, and the question that it answers.
#[derive(Clone, Debug)]
struct Answer<T> {
    of: u64,
    found: T,
}

/// The gear against time in one case: whether on jacks, and up and down again.
type Times = (bool, Result<Cycle, SupplyError>);

/// What comes after the answers.
#[derive(Clone, Debug, Default)]
pub(crate) struct Later {
    /// Revision of the document that it was last held against; 0 = none yet.
    revision: u64,
    /// The question that was asked last: the revision of then.
    asked: u64,
    /// What it is of.
    gear: Option<Box<Gear>>,
    /// Its last result has not come yet.
    under_way: bool,
    /// It was given up.
    given_up: bool,
    /// By case; those of an earlier question stay until they are answered anew.
    times: Vec<Answer<Times>>,
    /// By leg.
    stops: Vec<Answer<StopAnswer>>,
}

/// How a result stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stand {
    /// As worked out, or there is nothing to work out.
    There,
    /// Being worked out.
    Coming,
    /// Given up.
    GivenUp,
}

/// Whether two gears differ in no more than their words and in what they are compared with.
fn is_same(known: &Gear, gear: &Gear) -> bool {
    let mut known = known.clone();
    known.id = gear.id;
    known.points_from = gear.points_from;
    known.name.clone_from(&gear.name);
    known.note.clone_from(&gear.note);
    known.notes.clone_from(&gear.notes);
    known.kept.clone_from(&gear.kept);
    known.before = gear.before;
    known == *gear
}

impl Later {
    /// Holds it against the document; true = this revision is to be asked for.
    pub(crate) fn is_to_ask(&mut self, gear: &Gear, revision: u64) -> bool {
        if self.revision == revision {
            return false;
        }
        self.revision = revision;
        // what was given up, or did not come, is asked for again with any change
        let same = || self.gear.as_ref().is_some_and(|known| is_same(known, gear));
        if !self.given_up && same() {
            return false;
        }
        self.begin(gear, revision);
        self.under_way = is_wanted(gear);
        if !self.under_way {
            self.over(revision);
        }
        self.under_way
    }

    fn begin(&mut self, gear: &Gear, revision: u64) {
        self.revision = revision;
        self.asked = revision;
        self.gear = Some(gear.clone().into());
        self.given_up = false;
    }

    /// A result has come; one that answers an earlier question is dropped.
    pub(crate) fn take(&mut self, of: u64, found: Found) {
        if of != self.asked || !self.under_way {
            return;
        }
        match found {
            Found::Times { on_jacks, cycle } => {
                self.times.retain(|one| one.found.0 != on_jacks);
                let found = (on_jacks, cycle);
                self.times.push(Answer { of, found });
            }
            Found::Stop(found) => {
                self.stops.retain(|one| one.found.0 != found.0);
                self.stops.push(Answer { of, found });
            }
        }
    }

    /// All results of a question have come.
    pub(crate) fn over(&mut self, of: u64) {
        if of == self.asked {
            self.under_way = false;
            self.times.retain(|one| one.of == of);
            self.stops.retain(|one| one.of == of);
        }
    }

    /// Gives up what is not there yet, of this document.
    pub(crate) fn give_up(&mut self, gear: &Gear, revision: u64) {
        self.begin(gear, revision);
        self.over(revision);
        self.given_up = true;
    }

    /// The rest of what was asked last does not come; it is asked for again with the next change.
    pub(crate) fn fail(&mut self) {
        self.over(self.asked);
        self.given_up = true;
    }

    /// Whether the document has changed since it was last held against it.
    pub(crate) fn is_behind(&self, revision: u64) -> bool {
        self.revision != revision
    }

    /// Whether something did not come, or was given up.
    pub(crate) fn is_given_up(&self) -> bool {
        self.given_up
    }

    /// Whether the results of this question are still to come.
    pub(crate) fn awaits(&self, of: u64) -> bool {
        self.under_way && of == self.asked
    }

    /// What is being worked out, if anything is.
    pub(crate) fn work(&self) -> Option<Work> {
        let gear = self.gear.as_ref().filter(|_| self.under_way)?;
        let all = cases(gear).iter().all(|&case| self.cycle(case).is_some());
        Some(if all { Work::Stops } else { Work::Times })
    }

    fn stand(&self, is_there: bool) -> Stand {
        match (is_there, self.under_way, self.given_up) {
            (false, true, _) => Stand::Coming,
            (false, false, true) => Stand::GivenUp,
            _ => Stand::There,
        }
    }

    /// How the times in a case stand.
    pub(crate) fn times_stand(&self, on_jacks: bool) -> Stand {
        self.stand(self.cycle(on_jacks).is_some())
    }

    /// How what explains the stop of a leg stands.
    pub(crate) fn stop_stands(&self, leg: usize) -> Stand {
        let mut stops = self.stops.iter();
        self.stand(stops.any(|one| one.of == self.asked && one.found.0 == leg))
    }

    fn times(&self, on_jacks: bool) -> Option<&Answer<Times>> {
        // where one case is both there is but one answer
        let only = self
            .gear
            .as_ref()
            .is_some_and(|gear| cases(gear).len() == 1);
        let mut times = self.times.iter();
        times.find(|one| one.found.0 == on_jacks || only)
    }

    /// The gear against time; `None` where nothing says how fast it moves, and while it is worked out.
    pub(crate) fn cycle(&self, on_jacks: bool) -> Option<&Result<Cycle, SupplyError>> {
        let found = self.times(on_jacks).filter(|one| one.of == self.asked)?;
        Some(&found.found.1)
    }

    /// The run in one direction, of an earlier state while it is worked out anew.
    pub(crate) fn run(&self, on_jacks: bool, down: bool) -> Option<&Run> {
        let cycle = self.times(on_jacks)?.found.1.as_ref().ok()?;
        cycle.run(selected(down))
    }

    /// What explains the stop of a leg, of an earlier state while it is worked out anew; `None` = none was seen.
    pub(crate) fn stop(&self, leg: usize) -> Option<&StopAnswer> {
        let mut stops = self.stops.iter();
        let found = stops.find(|one| one.found.0 == leg)?;
        Some(&found.found)
    }
}
