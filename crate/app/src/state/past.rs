//! A gear of the history: as it was left, or packed as the browser's storage keeps it.
use gearswing_gear::model::Gear;
use gearswing_gearfile::link::{self, Shared};
use gearswing_gearfile::{read, to_text};
use std::borrow::Cow;

/// Most legs of a gear that is packed; packing a large one would take longer than an edit may.
const MOST_LEGS: usize = 16;

/// A gear of the history.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Past {
    /// As it was left.
    Gear(Box<Gear>),
    /// As it is stored; read when it is wanted.
    Text(String),
}

impl Past {
    /// The gear; `None` where the stored text cannot be read.
    pub(crate) fn read(&self) -> Option<Cow<'_, Gear>> {
        match self {
            Self::Gear(gear) => Some(Cow::Borrowed(gear)),
            Self::Text(text) => unpack(text).map(Cow::Owned),
        }
    }

    /// The gear, taken out.
    pub(crate) fn into_gear(self) -> Option<Gear> {
        match self {
            Self::Gear(gear) => Some(*gear),
            Self::Text(text) => unpack(&text),
        }
    }

    /// Whether it is this gear.
    pub(crate) fn is(&self, gear: &Gear) -> bool {
        self.read().is_some_and(|own| *own == *gear)
    }

    /// Changes it; one that cannot be read stays as it is, and is told when it is wanted.
    pub(crate) fn amend(&mut self, change: impl Fn(&mut Gear)) {
        if let Some(mut gear) = self.read().map(Cow::into_owned) {
            change(&mut gear);
            *self = Self::Gear(gear.into());
        }
    }

    /// Gives it another name, where it has the old one.
    pub(crate) fn rename(&mut self, old: &str, new: &str) {
        let Some(mut gear) = self
            .read()
            .filter(|gear| gear.name == old)
            .map(Cow::into_owned)
        else {
            return;
        };
        new.clone_into(&mut gear.name);
        *self = Self::Gear(gear.into());
    }

    /// The text to store; `None` for a gear that no file can hold.
    pub(crate) fn packed(self) -> Option<String> {
        let gear = match self {
            Self::Text(text) => return Some(text),
            Self::Gear(gear) => *gear,
        };
        if (1..=MOST_LEGS).contains(&gear.legs.len()) {
            let shared = Shared::of(gear.clone());
            if let Ok(code) = link::encode(&shared) {
                return Some(code);
            }
        }
        to_text(&gear).ok()
    }
}

fn unpack(text: &str) -> Option<Gear> {
    if text.starts_with('{') {
        return read(text).ok();
    }
    link::decode(text).ok().map(|shared| shared.gear)
}

#[cfg(test)]
mod tests {
    use super::Past;
    use gearswing_gearfile::{DEMO, STARTERS};

    #[test]
    fn packed_gears_come_back() {
        for example in std::iter::once(&DEMO).chain(&STARTERS) {
            let gear = example.gear().unwrap();
            let packed = Past::Gear(gear.clone().into()).packed().unwrap();
            assert!(!packed.starts_with('{') && packed.len() < 4_000);
            assert_eq!(Past::Text(packed).into_gear(), Some(gear));
        }
    }

    #[test]
    fn a_large_gear_and_one_without_legs_come_back() {
        let mut gear = DEMO.gear().unwrap();
        for n in 0..200 {
            let mut leg = gear.legs[n % 3].clone();
            leg.trunnion.x += n as f64 * 0.017;
            leg.name = format!("leg {n}");
            gear.legs.push(leg);
        }
        for _ in 0..2 {
            let packed = Past::Gear(gear.clone().into()).packed().unwrap();
            assert_eq!(Past::Text(packed).into_gear(), Some(gear.clone()));
            gear.legs.clear();
        }
    }

    #[test]
    fn a_damaged_text_is_no_gear_and_keeps_its_name() {
        let mut past = Past::Text("GS1nothing".to_owned());
        assert!(past.read().is_none());
        past.rename("", "x");
        assert_eq!(past, Past::Text("GS1nothing".to_owned()));
    }
}
