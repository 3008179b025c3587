//! Two legs that are each other's image in a mirror: what is changed on one is changed on the other, if the person says so.
use gearswing_gear::field::{follow_image, image_of};
use gearswing_gear::model::{Gear, Leg};
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::pairs as words;

use crate::msg::{Field, Msg};
use crate::state::{Act, State};
use crate::view::NoticeKind;

/// Legs and their images before a change.
pub(super) struct Pairs {
    legs: Vec<Leg>,
    /// Each once.
    images: Vec<(usize, usize)>,
}

/// The pairs of a gear.
pub(super) fn pairs(gear: &Gear) -> Pairs {
    let images = (0..gear.legs.len()).filter_map(|leg| {
        let image = image_of(gear, leg)?;
        (leg < image).then_some((leg, image))
    });
    let images: Vec<_> = images.collect();
    Pairs {
        legs: if images.is_empty() {
            Vec::new()
        } else {
            gear.legs.clone()
        },
        images,
    }
}

impl Pairs {
    /// The leg that was changed, and the one that is its image no more; `alike` lets that one follow.
    pub(super) fn parted(&self, gear: &mut Gear, alike: bool) -> Option<(usize, usize)> {
        // another number of legs: they were added or removed, and stand elsewhere
        if self.images.is_empty() || gear.legs.len() != self.legs.len() {
            return None;
        }
        let mut parted = None;
        for &(a, b) in &self.images {
            let changed = |leg: usize| gear.legs.get(leg) != self.legs.get(leg);
            let (of, to) = match (changed(a), changed(b)) {
                (true, false) => (a, b),
                (false, true) => (b, a),
                _ => continue,
            };
            if image_of(gear, of) == Some(to) {
                continue;
            }
            parted = Some((of, to));
            if alike {
                follow_image(gear, of, to)?;
            }
        }
        parted
    }
}

impl State {
    /// Asks once whether both are to change.
    pub(super) fn ask_alike(&mut self, parted: Option<(usize, usize)>) {
        let (Some((of, to)), None) = (parted, self.session.alike) else {
            return;
        };
        let text = words::parted(&self.leg_title(of), &self.leg_title(to));
        let answer = |label: &str, on, follow| {
            let msg = Field::Alike { on, follow };
            (label.to_owned(), Msg::Field(msg))
        };
        let answers = vec![
            answer(words::BOTH, true, Some((of, to))),
            answer(words::ONE, false, None),
        ];
        // a drag makes many changes: it stays until it is answered
        self.session.notices.add(NoticeKind::Info, text, answers);
    }

    /// They change alike from now on, or not.
    pub(super) fn change_alike(&mut self, on: bool, follow: Option<(usize, usize)>) {
        self.session.alike = Some(on);
        let notices = &mut self.session.notices;
        notices.drop_offering(|msg| matches!(msg, Msg::Field(Field::Alike { .. })));
        if let Some((of, to)) = follow.filter(|_| on) {
            let title = self.leg_title(to);
            self.edit(
                Act::single(step_words(Step::Change { of: &title })),
                |gear| follow_image(gear, of, to),
            );
        }
    }
}
