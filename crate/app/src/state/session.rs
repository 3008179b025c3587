//! What is looked at, typed and selected: nothing of it is undone.
use gearswing_units::UnitChoice;

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// As the person's system has it.
    #[default]
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

/// Speed of the played swing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Speed {
    /// 16 s from down to up.
    Slow,
    /// 8 s.
    #[default]
    Normal,
    /// 4 s.
    Fast,
}

impl Speed {
    /// Time from down to up [s].
    #[must_use]
    pub fn swing_time_s(self) -> f64 {
        match self {
            Self::Slow => 16.0,
            Self::Normal => 8.0,
            Self::Fast => 4.0,
        }
    }
}

/// What is looked at, typed and selected.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Session {
    /// Units shown and taken.
    pub units: UnitChoice,
    /// Theme.
    pub theme: Theme,
    /// The person's system asks for less motion.
    pub reduced_motion: bool,
    /// Size of the drawing's canvas [CSS px].
    pub drawing_size_px: (f64, f64),
    /// Width of the curves' canvas [CSS px].
    pub curves_width_px: f64,
}
