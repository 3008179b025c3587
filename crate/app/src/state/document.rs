//! The gear being worked on, with its history of whole states.
use gearswing_gear::model::Gear;
use gearswing_solver::numeric::sort_by;

use super::past::Past;

/// Steps of history kept; a gear of three legs takes some ten kB.
const LONGEST: usize = 1000;

/// What a person does, as one step of history.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Act {
    /// In words, as "move of the trunnion".
    pub(crate) text: String,
    /// Edits that follow each other with the same key are one step (a drag, arrow presses).
    pub(crate) key: Option<String>,
}

impl Act {
    /// An act of its own.
    pub(crate) fn single(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            key: None,
        }
    }

    /// An act that goes on while edits with the same key follow.
    pub(crate) fn going_on(key: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            key: Some(key.into()),
        }
    }
}

/// A state to go back or forward to, and the act between.
#[derive(Clone, Debug, PartialEq)]
struct Step {
    /// Rises with every step made; no two steps of a file have the same.
    number: u64,
    gear: Past,
    text: String,
}

/// A step as it is stored: its number, its text, on which side it lies, and the gear.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Kept {
    pub(crate) number: u64,
    pub(crate) is_redo: bool,
    pub(crate) gear: Past,
    pub(crate) text: String,
}

/// A stored step of the history is damaged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Unreadable;

/// The gear with its history.
#[derive(Clone, Debug)]
pub(crate) struct Document {
    gear: Gear,
    revision: u64,
    undo: Vec<Step>,
    redo: Vec<Step>,
    /// Number of the next step.
    next: u64,
    /// Key of the act that still goes on, and the redo steps it put aside.
    open: Option<(String, Vec<Step>)>,
}

impl Document {
    pub(crate) fn new(gear: Gear, revision: u64) -> Self {
        Self {
            gear,
            revision,
            undo: Vec::new(),
            redo: Vec::new(),
            next: 1,
            open: None,
        }
    }

    /// The same, its steps numbered from `next` on.
    pub(crate) fn numbered_from(mut self, next: u64) -> Self {
        self.next = self.next.max(next);
        self
    }

    pub(crate) fn gear(&self) -> &Gear {
        &self.gear
    }

    /// What `found` makes of the latest of the states up to this one of which it makes anything.
    pub(crate) fn latest<T>(&self, found: impl Fn(&Gear) -> Option<T>) -> Option<T> {
        let mut before = self.undo.iter().rev();
        found(&self.gear).or_else(|| before.find_map(|step| found(&*step.gear.read()?)))
    }

    /// Rises with every change.
    pub(crate) fn revision(&self) -> u64 {
        self.revision
    }

    /// Marks the document as another one than any before.
    pub(crate) fn set_revision(&mut self, revision: u64) {
        self.revision = revision;
    }

    /// Changes the gear by `change`; a change that fails or changes nothing leaves no trace.
    pub(crate) fn edit<T>(
        &mut self,
        act: Act,
        change: impl FnOnce(&mut Gear) -> Option<T>,
    ) -> Option<T> {
        let mut gear = self.gear.clone();
        let done = change(&mut gear)?;
        if gear == self.gear {
            return Some(done);
        }
        let goes_on = match (&self.open, &act.key) {
            (Some((open, _)), Some(key)) => open == key,
            _ => false,
        };
        let before = std::mem::replace(&mut self.gear, gear);
        self.revision += 1;
        if !goes_on {
            self.close();
            let redo = std::mem::take(&mut self.redo);
            self.open = act.key.map(|key| (key, redo));
            if self.undo.len() >= LONGEST {
                self.undo.remove(0);
            }
            let number = self.take_number();
            self.undo.push(Step {
                number,
                gear: Past::Gear(before.into()),
                text: act.text,
            });
        }
        Some(done)
    }

    fn take_number(&mut self) -> u64 {
        let number = self.next;
        self.next += 1;
        number
    }

    /// Gives the gear another name in the present and in all of its history.
    pub(crate) fn rename(&mut self, name: &str) {
        let steps = self.undo.iter_mut().chain(&mut self.redo);
        let old = std::mem::replace(&mut self.gear.name, name.to_owned());
        for step in steps {
            step.gear.rename(&old, name);
        }
        self.revision += 1;
    }

    /// Changes the gear in the present, without a step.
    pub(crate) fn amend_present(&mut self, change: impl FnOnce(&mut Gear)) {
        change(&mut self.gear);
        self.revision += 1;
    }

    /// Changes the gear in the present and in all of its history, without a step of its own.
    pub(crate) fn amend(&mut self, change: impl Fn(&mut Gear)) {
        change(&mut self.gear);
        for step in self.undo.iter_mut().chain(&mut self.redo) {
            step.gear.amend(&change);
        }
        self.revision += 1;
    }

    /// Ends the act that goes on; one that came back to where it began leaves no step.
    pub(crate) fn close(&mut self) {
        if let Some((_, redo)) = self.open.take()
            && self
                .undo
                .last()
                .is_some_and(|step| step.gear.is(&self.gear))
        {
            self.undo.pop();
            self.redo = redo;
        }
    }

    /// Key of the act that goes on.
    pub(crate) fn open_act(&self) -> Option<&str> {
        self.open.as_ref().map(|(key, _)| key.as_str())
    }

    /// Gives up the act that goes on: everything is as before it.
    pub(crate) fn give_up(&mut self) -> bool {
        let Some((_, redo)) = self.open.take() else {
            return false;
        };
        if let Some(gear) = self.undo.pop().and_then(|step| step.gear.into_gear()) {
            self.gear = gear;
            self.revision += 1;
            self.redo = redo;
        }
        true
    }

    /// Number of the step that would be undone next.
    pub(crate) fn last_step(&self) -> Option<u64> {
        self.undo.last().map(|step| step.number)
    }

    /// Undoes the last act; gives its text. `None` = there is none.
    pub(crate) fn undo(&mut self) -> Option<Result<String, Unreadable>> {
        self.close();
        Some(pop(&mut self.undo)?.map(|(gear, text)| {
            let step = self.swap(gear, &text);
            self.redo.push(step);
            text
        }))
    }

    /// Redoes the act that was undone last; gives its text. `None` = there is none.
    pub(crate) fn redo(&mut self) -> Option<Result<String, Unreadable>> {
        self.close();
        Some(pop(&mut self.redo)?.map(|(gear, text)| {
            let step = self.swap(gear, &text);
            self.undo.push(step);
            text
        }))
    }

    /// Goes to another state; the one before as a step.
    fn swap(&mut self, mut gear: Gear, text: &str) -> Step {
        // it is the same airplane's, whenever it got its mark
        gear.id = self.gear.id;
        let before = std::mem::replace(&mut self.gear, gear);
        self.revision += 1;
        Step {
            number: self.take_number(),
            gear: Past::Gear(before.into()),
            text: text.to_owned(),
        }
    }

    /// Number of the next step.
    pub(crate) fn next_number(&self) -> u64 {
        self.next
    }

    /// Numbers of all steps, from the oldest to the newest of each side.
    pub(crate) fn numbers(&self) -> Vec<u64> {
        let all = self.undo.iter().chain(&self.redo);
        all.map(|step| step.number).collect()
    }

    /// The step of a number, to be stored.
    pub(crate) fn kept(&self, number: u64) -> Option<Kept> {
        let find = |steps: &[Step], is_redo| {
            let step = steps.iter().find(|step| step.number == number)?;
            Some(Kept {
                number,
                is_redo,
                gear: step.gear.clone(),
                text: step.text.clone(),
            })
        };
        find(&self.undo, false).or_else(|| find(&self.redo, true))
    }

    /// Takes up steps that were stored before this document was opened: older ones than its own.
    /// What was undone then cannot be redone once something was changed since.
    pub(crate) fn take_up(&mut self, mut steps: Vec<Kept>) {
        sort_by(&mut steps, |a, b| a.number.cmp(&b.number));
        let unchanged = self.undo.is_empty() && self.redo.is_empty();
        let own: Vec<u64> = self.numbers();
        let mut older = Vec::new();
        for step in steps {
            self.next = self.next.max(step.number.saturating_add(1));
            if own.contains(&step.number) || (step.is_redo && !unchanged) {
                continue;
            }
            let to = if step.is_redo {
                &mut self.redo
            } else {
                &mut older
            };
            to.push(Step {
                number: step.number,
                gear: step.gear,
                text: step.text,
            });
        }
        older.append(&mut self.undo);
        let over = older.len().saturating_sub(LONGEST);
        older.drain(..over);
        self.undo = older;
    }

    /// Text of the act that undo takes back.
    pub(crate) fn undo_text(&self) -> Option<&str> {
        self.undo.last().map(|step| step.text.as_str())
    }

    /// Text of the act that redo does again.
    pub(crate) fn redo_text(&self) -> Option<&str> {
        self.redo.last().map(|step| step.text.as_str())
    }
}

/// The newest step. One that cannot be read ends its side of the history: what is older is taken off.
fn pop(steps: &mut Vec<Step>) -> Option<Result<(Gear, String), Unreadable>> {
    let step = steps.pop()?;
    let gear = step.gear.into_gear();
    if gear.is_none() {
        steps.clear();
    }
    Some(gear.map(|gear| (gear, step.text)).ok_or(Unreadable))
}
