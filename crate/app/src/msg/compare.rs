//! States kept to compare with.
use gearswing_gear::field::Place;

/// Something done to what is compared with.
#[derive(Clone, Debug, PartialEq)]
pub enum Compare {
    /// Keeps the present state and compares with it.
    Keep,
    /// Compares with a kept state, or with none.
    With {
        /// Of the kept states, as index.
        state: Option<usize>,
    },
    /// Gives the state compared with another name.
    Rename {
        /// The name.
        name: String,
    },
    /// Removes a kept state.
    Remove {
        /// As index.
        state: usize,
    },
    /// Leaves what a link brought for the own file, and compares that with it.
    WithOwn,
    /// Lets one place be as it was in the state compared with.
    TakeBack {
        /// Where.
        place: Place,
    },
    /// Lets all be as it was there.
    TakeAllBack,
}
