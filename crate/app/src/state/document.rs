//! The gear being worked on, with its history of whole states.
use gearswing_solver::model::Gear;

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
    gear: Gear,
    text: String,
}

/// The gear with its history.
#[derive(Clone, Debug)]
pub(crate) struct Document {
    gear: Gear,
    revision: u64,
    undo: Vec<Step>,
    redo: Vec<Step>,
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
            open: None,
        }
    }

    pub(crate) fn gear(&self) -> &Gear {
        &self.gear
    }

    /// What `found` makes of the latest of the states up to this one of which it makes anything.
    pub(crate) fn latest<T>(&self, found: impl Fn(&Gear) -> Option<T>) -> Option<T> {
        let before = self.undo.iter().rev().map(|step| &step.gear);
        std::iter::once(&self.gear).chain(before).find_map(found)
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
            self.undo.push(Step {
                gear: before,
                text: act.text,
            });
        }
        Some(done)
    }

    /// Gives the gear another name in the present and in all of its history.
    pub(crate) fn rename(&mut self, name: &str) {
        let steps = self.undo.iter_mut().chain(&mut self.redo);
        let old = std::mem::replace(&mut self.gear.name, name.to_owned());
        for step in steps {
            if step.gear.name == old {
                name.clone_into(&mut step.gear.name);
            }
        }
        self.revision += 1;
    }

    /// Ends the act that goes on; one that came back to where it began leaves no step.
    pub(crate) fn close(&mut self) {
        if let Some((_, redo)) = self.open.take()
            && self.undo.last().is_some_and(|step| step.gear == self.gear)
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
        if let Some(step) = self.undo.pop() {
            self.gear = step.gear;
            self.revision += 1;
            self.redo = redo;
        }
        true
    }

    /// Takes back the last act; gives its text.
    pub(crate) fn undo(&mut self) -> Option<String> {
        self.close();
        let step = self.undo.pop()?;
        let after = std::mem::replace(&mut self.gear, step.gear);
        self.redo.push(Step {
            gear: after,
            text: step.text.clone(),
        });
        self.revision += 1;
        Some(step.text)
    }

    /// Does the act again that was taken back last; gives its text.
    pub(crate) fn redo(&mut self) -> Option<String> {
        self.close();
        let step = self.redo.pop()?;
        let before = std::mem::replace(&mut self.gear, step.gear);
        self.undo.push(Step {
            gear: before,
            text: step.text.clone(),
        });
        self.revision += 1;
        Some(step.text)
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
