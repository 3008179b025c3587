//! A page without a browser: keeps what the effects ask to keep.
use std::collections::BTreeMap;

use gearswing_app::msg::{self, Modifiers, Pointer, PointerKind};
use gearswing_app::scene::ScreenPoint;
use gearswing_app::{
    Effect, Msg, Page, Start, State, StoredFile, StoredStep, drawing, settle, update, view,
};
use gearswing_gear::model::Gear;
use gearswing_work::{Part, Working, from_bytes, to_bytes};

/// State and browser storage.
pub(crate) struct Desk {
    pub(crate) state: State,
    pub(crate) stored: BTreeMap<String, String>,
    /// Steps of each file by their number.
    pub(crate) steps: BTreeMap<String, BTreeMap<u64, String>>,
    pub(crate) index: Option<String>,
    /// Tickets are answered at once; otherwise they gather here.
    pub(crate) keeps: bool,
    pub(crate) tickets: Vec<u64>,
    pub(crate) effects: Vec<Effect>,
    /// What comes after the answers is worked out at once; otherwise the last question waits here.
    pub(crate) works: bool,
    pub(crate) question: Option<(u64, String)>,
}

impl Desk {
    pub(crate) fn new(start: Start) -> Self {
        Self::with_steps(start, BTreeMap::new())
    }

    fn with_steps(start: Start, steps: BTreeMap<String, BTreeMap<u64, String>>) -> Self {
        let stored = start
            .files
            .iter()
            .map(|f| (f.id.clone(), f.text.clone()))
            .collect();
        let index = start.index.clone();
        let (state, effects) = State::new(start);
        let mut desk = Self {
            state,
            stored,
            steps,
            index,
            keeps: true,
            tickets: Vec::new(),
            effects: Vec::new(),
            works: true,
            question: None,
        };
        desk.perform(effects);
        desk.settle();
        desk
    }

    pub(crate) fn demo() -> Self {
        Self::on("https://example.org/")
    }

    /// The demo on a page whose browser draws such bytes.
    pub(crate) fn drawing(byte: u8) -> Self {
        Self::new(Start {
            address: "https://example.org/".to_owned(),
            chance: Some([byte; 8]),
            ..Start::default()
        })
    }

    /// The demo on a page at an address.
    pub(crate) fn on(address: &str) -> Self {
        Self::new(Start {
            address: address.to_owned(),
            ..Start::default()
        })
    }

    /// Sends a message, does its effects, settles.
    pub(crate) fn send(&mut self, msg: Msg) -> Vec<Effect> {
        let mut effects = self.update(msg);
        effects.extend(self.settle());
        effects
    }

    /// Works everything out.
    pub(crate) fn settle(&mut self) -> Vec<Effect> {
        let mut all = Vec::new();
        loop {
            let settled = settle(&mut self.state);
            if settled.is_empty() {
                return all;
            }
            self.perform(settled.clone());
            all.extend(settled);
        }
    }

    /// Answers the question that waits, if there is one.
    pub(crate) fn work(&mut self) {
        let Some((of, text)) = self.question.take() else {
            return;
        };
        let mut working = Working::of_text(&text, None).unwrap();
        loop {
            match working.part() {
                Part::GoesOn => {}
                Part::Found(found) => {
                    // as it comes from the other thread
                    let bytes = to_bytes(&found).unwrap();
                    let found = from_bytes(&bytes).unwrap().into();
                    self.update(Msg::Late(msg::Late::Found { of, found }));
                }
                Part::Over => {
                    self.update(Msg::Late(msg::Late::Over { of }));
                    return;
                }
            }
        }
    }

    /// Sends a message and does its effects; what the storage answers is sent as well.
    pub(crate) fn update(&mut self, msg: Msg) -> Vec<Effect> {
        let effects = update(&mut self.state, msg);
        self.perform(effects.clone());
        effects
    }

    pub(crate) fn perform(&mut self, effects: Vec<Effect>) {
        let mut answers = Vec::new();
        for effect in &effects {
            match effect {
                Effect::SaveSteps {
                    id,
                    fresh,
                    put,
                    gone,
                } => {
                    let steps = self.steps.entry(id.clone()).or_default();
                    if *fresh {
                        steps.clear();
                    }
                    steps.retain(|number, _| !gone.contains(number));
                    steps.extend(put.iter().map(|step| (step.number, step.text.clone())));
                }
                Effect::LoadSteps { id } => {
                    let steps = self.steps.get(id).into_iter().flatten();
                    let steps = steps.map(|(number, text)| StoredStep {
                        number: *number,
                        text: text.clone(),
                    });
                    answers.push(msg::File::Steps {
                        id: id.clone(),
                        steps: steps.collect(),
                    });
                }
                Effect::TellKept { ticket } if self.keeps => {
                    answers.push(msg::File::Kept { ticket: *ticket });
                }
                Effect::TellKept { ticket } => self.tickets.push(*ticket),
                Effect::SaveFile { id, text } => {
                    self.stored.insert(id.clone(), text.clone());
                }
                Effect::DeleteFile { id } => {
                    self.stored.remove(id);
                }
                Effect::WorkOut { of, text } => self.question = Some((*of, text.clone())),
                Effect::LeaveWork => self.question = None,
                Effect::SaveIndex { text } => self.index = Some(text.clone()),
                _ => {}
            }
        }
        self.effects.extend(effects);
        for answer in answers {
            self.update(Msg::File(answer));
        }
        if self.works {
            self.work();
        }
    }

    /// The page left and opened again, with what was stored.
    pub(crate) fn reloaded(&self) -> Self {
        let start = Start {
            index: self.index.clone(),
            files: self
                .stored
                .iter()
                .map(|(id, text)| StoredFile {
                    id: id.clone(),
                    text: text.clone(),
                })
                .collect(),
            address: "https://example.org/".to_owned(),
            ..Start::default()
        };
        Self::with_steps(start, self.steps.clone())
    }

    pub(crate) fn gear(&self) -> Gear {
        self.state.gear().clone()
    }

    pub(crate) fn page(&self) -> Page {
        view(&self.state)
    }

    /// Types into a field and enters it.
    pub(crate) fn enter(&mut self, path: &str, text: &str) {
        self.send(Msg::Field(msg::Field::Focus {
            path: path.to_owned(),
        }));
        self.send(Msg::Field(msg::Field::Draft {
            path: path.to_owned(),
            text: text.to_owned(),
        }));
        self.send(Msg::Field(msg::Field::Commit {
            path: path.to_owned(),
        }));
    }

    /// The row of a field, its group opened.
    pub(crate) fn row(&mut self, path: &str) -> gearswing_app::view::FieldRow {
        self.send(Msg::Field(msg::Field::Focus {
            path: path.to_owned(),
        }));
        let page = self.page();
        let groups = page.groups.into_iter().chain(page.stopped.group);
        groups
            .flat_map(|group| group.rows)
            .find(|row| row.path == path)
            .unwrap()
    }

    /// Place of a handle.
    pub(crate) fn handle(&self, id: &str) -> ScreenPoint {
        let scene = drawing(&self.state);
        scene.handles.iter().find(|h| h.id == id).unwrap().at
    }

    pub(crate) fn press(&mut self, at: ScreenPoint) {
        self.send(Msg::Pointer(Pointer::Down {
            id: 1,
            kind: PointerKind::Mouse,
            at,
            modifiers: Modifiers::default(),
        }));
    }

    pub(crate) fn drag_to(&mut self, at: ScreenPoint, ctrl: bool) {
        self.send(Msg::Pointer(Pointer::Move {
            id: 1,
            kind: PointerKind::Mouse,
            at,
            modifiers: Modifiers {
                ctrl,
                ..Modifiers::default()
            },
        }));
    }

    pub(crate) fn release(&mut self, at: ScreenPoint) {
        self.send(Msg::Pointer(Pointer::Up { id: 1, at }));
    }
}

/// `at` moved by some pixels.
pub(crate) fn by(at: ScreenPoint, x_px: f64, y_px: f64) -> ScreenPoint {
    ScreenPoint {
        x_px: at.x_px + x_px,
        y_px: at.y_px + y_px,
    }
}
