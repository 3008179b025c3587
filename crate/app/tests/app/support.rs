//! A page without a browser: keeps what the effects ask to keep.
use std::collections::BTreeMap;

use gearswing_app::msg::{self, Modifiers, Pointer, PointerKind};
use gearswing_app::scene::ScreenPoint;
use gearswing_app::{Effect, Msg, Page, Start, State, StoredFile, drawing, settle, update, view};
use gearswing_solver::model::Gear;

/// State and browser storage.
pub(crate) struct Desk {
    pub(crate) state: State,
    pub(crate) stored: BTreeMap<String, String>,
    pub(crate) index: Option<String>,
    pub(crate) effects: Vec<Effect>,
}

impl Desk {
    pub(crate) fn new(start: Start) -> Self {
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
            index,
            effects: Vec::new(),
        };
        desk.perform(effects);
        let effects = settle(&mut desk.state);
        desk.perform(effects);
        desk
    }

    pub(crate) fn demo() -> Self {
        Self::new(Start {
            address: "https://example.org/".to_owned(),
            ..Start::default()
        })
    }

    /// Sends a message, does its effects, settles.
    pub(crate) fn send(&mut self, msg: Msg) -> Vec<Effect> {
        let mut effects = update(&mut self.state, msg);
        self.perform(effects.clone());
        let settled = settle(&mut self.state);
        self.perform(settled.clone());
        effects.extend(settled);
        effects
    }

    fn perform(&mut self, effects: Vec<Effect>) {
        for effect in &effects {
            match effect {
                Effect::SaveFile { id, text } => {
                    self.stored.insert(id.clone(), text.clone());
                }
                Effect::DeleteFile { id } => {
                    self.stored.remove(id);
                }
                Effect::SaveIndex { text } => self.index = Some(text.clone()),
                _ => {}
            }
        }
        self.effects.extend(effects);
    }

    /// The page left and opened again, with what was stored.
    pub(crate) fn reloaded(&self) -> Self {
        Self::new(Start {
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
        })
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
        page.groups
            .into_iter()
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
