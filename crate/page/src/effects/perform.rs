//! What the page does outside of itself when the state asks for it.
use super::chance::chance;
use super::storage::{Change, Store};
use super::{announce, clipboard, download, late, one_file, stay, theme};
use crate::dom::window;
use crate::error::Result;
use crate::runtime::{Port, panic};
use gearswing_app::msg::File;
use gearswing_app::state::Theme;
use gearswing_app::words::sheets::Sheet;
use gearswing_app::{Effect, Msg};
use wasm_bindgen::JsValue;

/// Performs effects, and keeps what they need between turns.
pub(crate) struct Effects {
    store: Store,
    announcer: announce::Announcer,
    late: late::Late,
    /// Fragment that the page itself has set, so that its own change is not taken for a new link.
    own_fragment: String,
    /// Sheet in hand, as the browser's history has it.
    sheet: Option<Sheet>,
}

impl Effects {
    /// Looks up the nodes.
    pub(crate) fn new(store: Store) -> Result<Self> {
        Ok(Self {
            store,
            announcer: announce::Announcer::mount()?,
            late: late::Late::default(),
            own_fragment: String::new(),
            sheet: None,
        })
    }

    /// Performs one effect; those that need the panels or the painter never come here.
    pub(crate) fn perform(&mut self, port: &Port, effect: Effect) -> Result<()> {
        match effect {
            Effect::SaveFile { id, text } => self.store.change(port, Change::File { id, text }),
            Effect::SaveSteps {
                id,
                fresh,
                put,
                gone,
            } => self.store.change(
                port,
                Change::Steps {
                    id,
                    fresh,
                    put,
                    gone,
                },
            ),
            Effect::DeleteFile { id } => self.store.change(port, Change::Delete { id }),
            Effect::SaveIndex { text } => self.store.change(port, Change::Index { text }),
            Effect::TellKept { ticket } => self.store.change(port, Change::Ticket(ticket)),
            Effect::LoadSteps { id } => self.store.load_steps(port, id)?,
            Effect::AskToStay => stay::ask(port)?,
            Effect::DrawChance => {
                if let Some(bytes) = chance() {
                    port.send(Msg::File(File::Chance { bytes }));
                }
            }
            Effect::CopyText { text } => clipboard::copy(port, &text)?,
            Effect::SaveOneFile { name, code } => one_file::save(port, name, &code)?,
            Effect::WorkOut { of, text } => self.late.ask(port, of, &text),
            Effect::LeaveWork => self.late.leave(),
            Effect::TakeNewer => one_file::start_script("newer")?,
            Effect::LookForNewer => one_file::start_script("look")?,
            Effect::Download { name, mime, text } => download::offer(&name, &mime, &text)?,
            Effect::SetFragment { text } => self.set_fragment(text)?,
            Effect::ClearFragment => self.set_fragment(String::new())?,
            Effect::Announce { text } => self.announcer.say(&text),
            Effect::RecoveryText { text } => panic::keep_recovery(&text)?,
            Effect::AskFrame
            | Effect::FocusField { .. }
            | Effect::SetTheme(_)
            | Effect::SetTitle { .. } => {}
        }
        Ok(())
    }

    /// Shows the page in a theme.
    pub(crate) fn theme(&mut self, theme: Theme) -> Result<()> {
        theme::set(theme)
    }

    /// The stored files.
    pub(crate) fn store(&mut self) -> &mut Store {
        &mut self.store
    }

    /// Whether this fragment is the one that the page has set itself.
    pub(crate) fn is_own_fragment(&self, fragment: &str) -> bool {
        fragment == self.own_fragment
    }

    /// Notes the sheet in hand in the browser's history, so that its back key goes back a sheet.
    pub(crate) fn note_sheet(&mut self, sheet: Sheet) -> Result<()> {
        let before = self.sheet.replace(sheet);
        if before == Some(sheet) {
            return Ok(());
        }
        let history = window()?.history()?;
        // the browser has come back to it already
        if sheet_of(&history.state()?) == Some(sheet) {
            return Ok(());
        }
        let key = JsValue::from_str(sheet.key());
        match before {
            None => history.replace_state(&key, "")?,
            Some(_) => history.push_state(&key, "")?,
        }
        Ok(())
    }

    /// Notes what is looked at, so that a reload comes back to it.
    pub(crate) fn note_looking(&self, line: &str) -> Result<()> {
        Ok(window()?.history()?.replace_state(&line.into(), "")?)
    }

    /// The address of what is open: it stands beside every sheet of the browser's history.
    pub(crate) fn keep_fragment(&mut self) -> Result<()> {
        self.set_fragment(self.own_fragment.clone())
    }

    /// Replaces the fragment; the history gets no entry, and no event comes of it.
    fn set_fragment(&mut self, text: String) -> Result<()> {
        let window = window()?;
        let address = window.location().href()?;
        let base = address.split('#').next().unwrap_or_default();
        let address = if text.is_empty() {
            base.to_owned()
        } else {
            format!("{base}#{text}")
        };
        let history = window.history()?;
        history.replace_state_with_url(&history.state()?, "", Some(&address))?;
        self.own_fragment = text;
        Ok(())
    }
}

/// The sheet of an entry of the browser's history; an address that was typed or pasted has none.
pub(crate) fn sheet_of(state: &JsValue) -> Option<Sheet> {
    Sheet::of_key(state.as_string()?.split(' ').next()?)
}
