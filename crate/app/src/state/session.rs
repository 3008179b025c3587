//! What is looked at, typed and selected: nothing of it is undone.

use gearswing_gear::model::Point;
use gearswing_report::Stand;
use gearswing_report::page::sheets::{Height, Sheet};
use gearswing_solver::result::{Motion, Question};
use gearswing_units::UnitChoice;
use litemap::LiteMap;

use super::notice::Notices;
use crate::scene::{ScreenPoint, Viewport};

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

impl Theme {
    /// Key to store it under.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    /// The theme of a key.
    #[must_use]
    pub fn of_key(key: &str) -> Option<Self> {
        [Self::System, Self::Light, Self::Dark]
            .into_iter()
            .find(|theme| theme.as_str() == key)
    }
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
    /// Time from down to up (s).
    #[must_use]
    pub fn swing_time_s(self) -> f64 {
        match self {
            Self::Slow => 16.0,
            Self::Normal => 8.0,
            Self::Fast => 4.0,
        }
    }
}

/// Text typed into a field.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Draft {
    /// As typed.
    pub(crate) text: String,
    /// Units that were shown then.
    pub(crate) units: UnitChoice,
    /// The number that it was typed over; another one since has made the text void.
    pub(crate) over: Option<f64>,
    /// Entered, not only being typed.
    pub(crate) committed: bool,
}

/// The played swing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Playing {
    /// Toward up.
    pub(crate) up: bool,
    /// Time of the last frame (s).
    pub(crate) last_s: Option<f64>,
    /// Still to wait at an end or at a step (s).
    pub(crate) wait_s: f64,
}

/// Where the run against time is looked at.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Clock {
    /// The run down is shown, not the one up.
    pub(crate) down: bool,
    /// It is for the airplane level on jacks.
    pub(crate) on_jacks: bool,
    /// Time that the drawing follows (s); `None` = it goes its own way.
    pub(crate) at_s: Option<f64>,
    /// Leg and place that the drawing was put to; when it stands elsewhere, the person has moved it.
    pub(crate) put: Option<(usize, f64)>,
    /// The run goes on by itself.
    pub(crate) running: bool,
    /// Time of the last frame (s).
    pub(crate) last_s: Option<f64>,
}

/// A finger or button that is down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pressed {
    pub(crate) id: i32,
    pub(crate) at: ScreenPoint,
}

/// Which details have their circles in the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Circles {
    /// That of the answer in hand.
    #[default]
    InHand,
    /// All, as on a sheet where they stand below.
    All,
    /// None, as in a drawing that stands alone.
    None,
}

/// Over what a pointer is that nothing is held with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Hover {
    /// Nothing of the drawing.
    #[default]
    Off,
    /// The drawing.
    Drawing,
    /// A point that can be moved.
    Point,
}

/// What the pointers on the drawing are doing.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) enum Gesture {
    /// Nothing.
    #[default]
    Idle,
    /// Moving the paper.
    Pan(Pressed),
    /// Two fingers: moving and zooming the paper.
    Pinch(Pressed, Pressed),
    /// Moving a point.
    Drag {
        /// Pointer.
        pressed: Pressed,
        /// Path of the point.
        path: String,
        /// From the pointer to the point when it was taken (m).
        offset: (f64, f64),
        /// The pointer has gone far enough to mean it.
        moved: bool,
    },
}

/// A pointer that holds the cursor on the strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct StripHeld {
    /// Where it was last, across the strip (CSS px).
    pub(crate) x_px: f64,
    /// Where along the strip that counts as; away from it the cursor goes slower (CSS px).
    pub(crate) counts_as_px: f64,
}

/// What a dragged point has snapped to.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Snapped {
    /// The point, at gear down (m).
    pub(crate) point: Point,
    /// The points it lies level with, above or on, at gear down (m).
    pub(crate) to: Vec<Point>,
    /// In words, as "level with the trunnion P".
    pub(crate) text: String,
}

/// Paper of one leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Paper {
    pub(crate) viewport: Viewport,
    /// Fitted, not moved by the person: a new canvas size fits it again.
    pub(crate) fitted: bool,
}

/// What is looked at, typed and selected.
#[derive(Clone, Debug, Default)]
pub struct Session {
    /// Units shown and taken.
    pub units: UnitChoice,
    /// Theme.
    pub theme: Theme,
    /// The person's system asks for less motion.
    pub reduced_motion: bool,
    /// Size of the drawing's canvas (CSS px).
    pub drawing_size_px: (f64, f64),
    /// Width of the curves' canvas (CSS px).
    pub curves_width_px: f64,
    /// Size of the strip's canvas (CSS px).
    pub strip_size_px: (f64, f64),
    /// Width and height of the detail's canvas (CSS px).
    pub detail_px: f64,
    /// Sheet in hand.
    pub sheet: Sheet,
    /// How high it stands where it lies under the drawing.
    pub sheet_height: Height,
    /// Answer that the strip's curve follows; `None` = the worst.
    pub strip: Option<Question>,
    /// Leg shown.
    pub leg: usize,
    /// Place on its path (ratio).
    pub progress: f64,
    /// Path of the selected point or field.
    pub selection: Option<String>,
    pub(crate) circles: Circles,
    /// Load arrows are drawn.
    pub loads: bool,
    /// Speed of the played swing.
    pub speed: Speed,
    /// The way in hand is that down: what its motion needs stands thick on the strip, and Play starts on it.
    pub way_down: bool,
    /// A moved trunnion takes the whole leg and its well along.
    pub(crate) takes_along: bool,
    /// A changed leg's image in a mirror changes too; `None` = it has not been asked.
    pub(crate) alike: Option<bool>,
    /// Group of fields that stands open.
    pub open_group: Option<String>,
    pub(crate) clock: Clock,
    pub(crate) snap_off: bool,
    /// An end of the actuator that is moved slides along: the actuator stays as long with the leg down.
    pub(crate) slide: bool,
    pub(crate) papers: LiteMap<usize, Paper>,
    pub(crate) drafts: LiteMap<String, Draft>,
    /// Entries that were not taken, the last one last: path, and the step of the history made last then.
    pub(crate) not_taken: Vec<(String, Option<u64>)>,
    pub(crate) playing: Option<Playing>,
    pub(crate) gesture: Gesture,
    /// A pointer that holds the cursor on the strip.
    pub(crate) strip_held: Option<StripHeld>,
    pub(crate) hover: Hover,
    pub(crate) snapped: Option<Snapped>,
    pub(crate) drag_text: String,
    /// A point that a finger has let go and that is moved by steps now, and whether by fine ones.
    pub(crate) stepped: Option<String>,
    pub(crate) fine_steps: bool,
    /// A finger has the point, which hides what is under it.
    pub(crate) by_touch: bool,
    /// How the leg stood when the point was taken.
    pub(crate) stood: Option<Stand>,
    pub(crate) notices: Notices,
    /// The worst answer is to be looked up as soon as there are answers.
    pub(crate) seek_worst: bool,
}

impl Session {
    /// The motion of the way in hand.
    pub(crate) fn way(&self) -> Motion {
        match self.way_down {
            false => Motion::Retract,
            true => Motion::Extend,
        }
    }
}
