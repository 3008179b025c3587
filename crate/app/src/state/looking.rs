//! What is looked at, kept by the browser beside the address so that a reload comes back to it.
use gearswing_gearfile::read_number;
use gearswing_report::page::sheets::Sheet;

use super::whole::State;

impl State {
    /// What is looked at, as one line for [`super::Start::looking`]: the sheet in hand, the leg, the place of its
    /// travel, the group of fields that stands open.
    #[must_use]
    pub fn looking(&self) -> String {
        let session = &self.session;
        let group = session.open_group.as_deref().unwrap_or_default();
        format!(
            "{} {} {} {group}",
            session.sheet.key(),
            session.leg,
            session.progress
        )
    }

    /// Looks at it again, as far as it is there.
    pub(super) fn look_at(&mut self, line: &str) {
        let mut parts = line.splitn(4, ' ');
        if let Some(sheet) = parts.next().and_then(Sheet::of_key) {
            self.session.sheet = sheet;
        }
        let mut number = || parts.next().and_then(read_number);
        if let (Some(leg), Some(progress)) = (number(), number())
            && leg < self.gear().legs.len() as f64
        {
            self.session.leg = leg as usize;
            self.session.progress = progress;
            self.session.seek_worst = false;
        }
        let group = parts.next().filter(|group| !group.is_empty());
        self.session.open_group = group.map(str::to_owned);
    }
}
