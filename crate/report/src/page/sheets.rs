//! Sheets beside the drawing, one of which is in hand.

/// A sheet beside the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sheet {
    /// The three answers of the leg in hand, with what they rest on.
    #[default]
    Answers,
    /// Numbers over travel.
    Curves,
    /// All legs against time.
    Times,
    /// A leg that stopped short on the jacks: what was seen, and what explains it.
    Stopped,
    /// Everything that is put in.
    Measurements,
    /// What differs from a state that was kept.
    Changes,
}

impl Sheet {
    /// All of them: what the gear does, then what one changes.
    pub const ALL: [Self; 6] = [
        Self::Answers,
        Self::Curves,
        Self::Times,
        Self::Stopped,
        Self::Measurements,
        Self::Changes,
    ];

    /// Lasting key.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Answers => "answers",
            Self::Curves => "curves",
            Self::Times => "times",
            Self::Stopped => "stopped",
            Self::Measurements => "measurements",
            Self::Changes => "changes",
        }
    }

    /// The sheet of a key.
    #[must_use]
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.key() == key)
    }

    /// What one changes stands there, not what the gear does.
    #[must_use]
    pub fn is_put_in(self) -> bool {
        matches!(self, Self::Measurements | Self::Changes)
    }
}

/// How high the sheet in hand stands where it lies under the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Height {
    /// Its first line.
    Low,
    /// Beside a drawing of some height.
    #[default]
    Middle,
    /// All but a band of the drawing.
    High,
}

impl Height {
    /// Lasting key.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Low => "low",
            Self::Middle => "middle",
            Self::High => "high",
        }
    }

    /// The next one up, or down; the last one stays.
    #[must_use]
    pub fn pulled(self, up: bool) -> Self {
        match (self, up) {
            (Self::Low, true) | (Self::High, false) => Self::Middle,
            (Self::Middle | Self::High, true) => Self::High,
            (Self::Low | Self::Middle, false) => Self::Low,
        }
    }

    /// The next one, round and round.
    #[must_use]
    pub fn next(self) -> Self {
        match self {
            Self::Low => Self::Middle,
            Self::Middle => Self::High,
            Self::High => Self::Low,
        }
    }
}

/// Name of a sheet.
#[must_use]
pub fn sheet_name(sheet: Sheet) -> &'static str {
    match sheet {
        Sheet::Answers => "Answers",
        Sheet::Curves => "Curves",
        Sheet::Times => "Against time",
        Sheet::Stopped => "Stopped short",
        Sheet::Measurements => "Measurements",
        Sheet::Changes => "Changes",
    }
}

/// Over a sheet on which no stop is put in yet.
pub const NO_STOP: &str = "A leg that stopped short on the jacks: put in where it stood and what was seen there. What may explain it then stands below.";

/// The press that changes how high the sheet stands, and how it does now.
#[must_use]
pub fn height_words(height: Height) -> &'static str {
    match height {
        Height::Low => "Height of the sheet: low",
        Height::Middle => "Height of the sheet: middle",
        Height::High => "Height of the sheet: high",
    }
}
