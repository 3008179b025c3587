//! The history as the browser stores it: each step once, when it is made.
//!
//! A step is two lines of its own, which side it is on and what was done, and behind them the gear.
use super::document::{Document, Kept};
use super::past::Past;
use super::start::StoredStep;
use super::storage::{escaped, unescaped};

/// Most that the steps of one file take (bytes); the oldest go first.
const MOST_BYTES: usize = 4 << 20;

/// What is stored of the history of a file.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct KeptSteps {
    /// What was stored before this page is known: read, or there is nothing.
    read: bool,
    /// Nothing of this file's history has been asked to be stored yet.
    fresh: bool,
    /// The document's steps when they were last compared.
    seen: Vec<u64>,
    /// Number and length of each stored step.
    stored: Vec<(u64, usize)>,
    /// Older steps were stored once, and are not again.
    from: u64,
}

/// What is to be stored and forgotten.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct StepChange {
    /// Whatever is stored already is of another file.
    pub(crate) fresh: bool,
    pub(crate) put: Vec<StoredStep>,
    pub(crate) gone: Vec<u64>,
}

impl KeptSteps {
    /// Of a file that is made here.
    pub(crate) fn none() -> Self {
        Self {
            read: true,
            fresh: true,
            seen: Vec::new(),
            stored: Vec::new(),
            from: 0,
        }
    }

    /// Of a file that was stored before.
    pub(crate) fn unread() -> Self {
        Self {
            read: false,
            fresh: false,
            ..Self::none()
        }
    }

    /// The stored steps are to be read.
    pub(crate) fn is_unread(&self) -> bool {
        !self.read
    }

    /// What differs between the history of a document and what is stored of it; taken as stored
    /// from then on.
    pub(crate) fn update(&mut self, document: &Document) -> Option<StepChange> {
        let numbers = document.numbers();
        if numbers == self.seen {
            return None;
        }
        let kept = numbers.iter().filter(|number| **number >= self.from);
        let wanted: Vec<u64> = kept.copied().collect();
        self.seen = numbers;
        let mut change = StepChange {
            fresh: self.fresh,
            ..StepChange::default()
        };
        let gone = &mut change.gone;
        self.stored.retain(|(number, _)| {
            let stays = wanted.contains(number);
            if !stays {
                gone.push(*number);
            }
            stays
        });
        for number in wanted {
            if self.stored.iter().any(|(stored, _)| *stored == number) {
                continue;
            }
            // a gear that no file can hold is in no file either
            if let Some(text) = document.kept(number).and_then(step_text) {
                self.stored.push((number, text.len()));
                change.put.push(StoredStep { number, text });
            }
        }
        self.shorten(&mut change);
        self.fresh = false;
        Some(change)
    }

    /// Takes off the oldest steps while all together are too long.
    fn shorten(&mut self, change: &mut StepChange) {
        let mut together: usize = self.stored.iter().map(|(_, length)| length).sum();
        while together > MOST_BYTES
            && self.stored.len() > 1
            && let Some(at) = (0..self.stored.len()).min_by_key(|at| self.stored[*at].0)
        {
            let (number, length) = self.stored.remove(at);
            together -= length;
            self.from = number + 1;
            change.put.retain(|step| step.number != number);
            change.gone.push(number);
        }
    }

    /// Notes what was found stored.
    pub(crate) fn found(&mut self, steps: &[StoredStep]) {
        self.read = true;
        self.seen.clear();
        for step in steps {
            if !self.stored.iter().any(|(number, _)| *number == step.number) {
                self.stored.push((step.number, step.text.len()));
            }
        }
    }
}

fn step_text(kept: Kept) -> Option<String> {
    let side = if kept.is_redo { "redo" } else { "undo" };
    let act = escaped(&kept.text);
    Some(format!("{side}\n{act}\n{}", kept.gear.packed()?))
}

/// A stored step, taken apart; the gear itself is read when it is wanted.
pub(crate) fn read_step(step: StoredStep) -> Option<Kept> {
    let mut parts = step.text.splitn(3, '\n');
    let (side, act, gear) = (parts.next()?, parts.next()?, parts.next()?);
    Some(Kept {
        number: step.number,
        is_redo: match side {
            "redo" => true,
            "undo" => false,
            _ => return None,
        },
        text: unescaped(act),
        gear: Past::Text(gear.to_owned()),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::document::Act;
    use gearswing_gear::model::Gear;
    use gearswing_gearfile::DEMO;
    use gearswing_samples::Draw;

    /// The demo without its note.
    fn plain() -> Gear {
        let mut gear = DEMO.gear().unwrap();
        gear.note.clear();
        gear
    }

    fn edited(document: &mut Document, note: &str) {
        document.edit(Act::single("note\nof two lines"), |gear| {
            note.clone_into(&mut gear.note);
            Some(())
        });
    }

    /// Stores what has changed, as the browser does.
    fn store(kept: &mut KeptSteps, document: &Document, to: &mut Vec<StoredStep>) {
        if let Some(change) = kept.update(document) {
            if change.fresh {
                to.clear();
            }
            to.retain(|step| !change.gone.contains(&step.number));
            to.extend(change.put);
            to.sort_by_key(|step| step.number);
        }
    }

    fn restored(document: &Document, steps: &[StoredStep]) -> Document {
        let mut again =
            Document::new(document.gear().clone(), 0).numbered_from(document.next_number());
        again.take_up(steps.iter().cloned().filter_map(read_step).collect());
        again
    }

    #[test]
    fn a_history_with_undone_steps_comes_back_and_goes_on() {
        let mut document = Document::new(plain(), 0);
        let (mut kept, mut steps) = (KeptSteps::none(), Vec::new());
        for note in ["a", "b", "c", "d"] {
            edited(&mut document, note);
            store(&mut kept, &document, &mut steps);
        }
        document.undo();
        document.undo();
        store(&mut kept, &document, &mut steps);
        assert_eq!(kept.update(&document), None, "all is stored");
        let mut again = restored(&document, &steps);
        assert_eq!(again.redo_text(), Some("note\nof two lines"));
        for note in ["c", "d"] {
            assert!(again.redo().unwrap().is_ok());
            assert_eq!(again.gear().note, note);
        }
        for note in ["c", "b", "a", ""] {
            assert!(again.undo().unwrap().is_ok());
            assert_eq!(again.gear().note, note);
        }
        assert_eq!(again.undo(), None);
    }

    #[test]
    fn steps_read_late_go_before_those_made_since() {
        let mut document = Document::new(plain(), 0);
        let (mut kept, mut steps) = (KeptSteps::none(), Vec::new());
        for note in ["a", "b"] {
            edited(&mut document, note);
        }
        document.undo();
        store(&mut kept, &document, &mut steps);
        let mut again =
            Document::new(document.gear().clone(), 0).numbered_from(document.next_number());
        let mut kept = KeptSteps::unread();
        edited(&mut again, "new");
        let mut later = steps.clone();
        store(&mut kept, &again, &mut later);
        kept.found(&steps);
        again.take_up(steps.into_iter().filter_map(read_step).collect());
        store(&mut kept, &again, &mut later);
        assert_eq!(again.redo(), None, "what was undone before is off the line");
        for note in ["a", ""] {
            assert!(again.undo().unwrap().is_ok());
            assert_eq!(again.gear().note, note);
        }
        assert_eq!(later.len(), 2, "the step that was redone is forgotten");
    }

    #[test]
    fn the_oldest_steps_go_when_all_are_too_long() {
        let mut document = Document::new(DEMO.gear().unwrap(), 0);
        let (mut kept, mut steps) = (KeptSteps::none(), Vec::new());
        // signs without rhyme, which pack to nothing much shorter
        let mut draw = Draw::new(1);
        for _ in 0..40 {
            let note: String = (0..200_000)
                .map(|_| char::from(b' ' + draw.below(90) as u8))
                .collect();
            edited(&mut document, &note);
            store(&mut kept, &document, &mut steps);
            let together: usize = steps.iter().map(|step| step.text.len()).sum();
            assert!(together <= MOST_BYTES);
        }
        assert!(steps.len() > 10 && steps.len() < 40, "{}", steps.len());
        assert_eq!(steps.last().unwrap().number, 40);
        assert_eq!(kept.update(&document), None, "those are not stored again");
    }

    #[test]
    fn a_damaged_step_ends_the_history_and_says_so() {
        let mut document = Document::new(DEMO.gear().unwrap(), 0);
        let (mut kept, mut steps) = (KeptSteps::none(), Vec::new());
        for note in ["a", "b", "c"] {
            edited(&mut document, note);
        }
        store(&mut kept, &document, &mut steps);
        steps[1].text.truncate(60);
        let mut again = restored(&document, &steps);
        assert!(again.undo().unwrap().is_ok());
        assert!(again.undo().unwrap().is_err());
        assert_eq!(again.undo(), None);
        assert_eq!(again.gear().note, "b");
        assert_eq!(
            read_step(StoredStep {
                number: 1,
                text: "x".to_owned()
            }),
            None
        );
    }
}
