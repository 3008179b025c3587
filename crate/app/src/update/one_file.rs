//! The page given out as one file, and where its links lead.
use gearswing_gear::model::Gear;
use gearswing_gearfile::{link, read};
use gearswing_report::page::link as words;

use super::file::file_stem;
use crate::effect::Effect;
use crate::state::{State, read_file};

/// Gives out the page with the gear in it.
pub(super) fn save(state: &mut State) -> Vec<Effect> {
    let code = state.code_to_send();
    let name = format!("{}.html", file_stem(&state.gear().name));
    let save = |code| Effect::SaveOneFile { name, code };
    code.map(save).into_iter().collect()
}

/// Takes over the address at which others have the page; what no link can be made from is refused.
pub(super) fn home(state: &mut State, text: &str) {
    let text = text.trim();
    let host = text.split('/').next().unwrap_or_default();
    // as it is read off an address bar that hides its beginning
    let whole = match host.contains('.') && !text.contains("://") {
        true => ["https://", text].concat(),
        false => text.to_owned(),
    };
    let text = whole.as_str();
    let is_of_web = ["http://", "https://"]
        .iter()
        .any(|scheme| text.len() > scheme.len() && text.starts_with(scheme));
    if !text.is_empty() && (!is_of_web || text.contains(char::is_whitespace)) {
        state.session.notices.problem(words::NO_ADDRESS);
        return;
    }
    let plain = text.split(['#', '?']).next().unwrap_or_default();
    plain.clone_into(&mut state.files.home);
    state.files.typed_home = Some(plain.to_owned());
    state.measure_link();
}

impl State {
    /// The stored file that was made here from what a page as one file brings: the one that was open last, else the
    /// newest.
    pub(crate) fn file_made_from(&self, code: &str, open: Option<&str>) -> Option<String> {
        let given = link::decode(code).ok()?.gear;
        let said = given.notes.clone();
        let given = given.without_kept();
        let is_given = |gear: &Gear| {
            // a name that was taken has got a number
            let named = Gear {
                name: given.name.clone(),
                ..gear.without_kept()
            };
            named == given
        };
        let made = self.files.entries.iter().filter(|entry| {
            let gear = read_file(&entry.text)
                .ok()
                .and_then(|stored| read(&stored.gear_text).ok());
            gear.is_some_and(|gear| {
                let made = is_given(&gear) || gear.kept.iter().any(|kept| is_given(&kept.gear));
                // what is said in it is read there too
                made && said.iter().all(|note| gear.notes.contains(note))
            })
        });
        let mut newest = None;
        for entry in made {
            newest = Some(entry.id.clone());
            if Some(entry.id.as_str()) == open {
                break;
            }
        }
        newest
    }
}
