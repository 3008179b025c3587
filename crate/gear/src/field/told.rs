//! How points are told to people: from the leg's trunnion where the gear says so, else from the airplane's center
//! line and the file's zero.
use super::{Axis, Field, Kind, Path};
use crate::model::{Gear, Point, PointsFrom, View};

/// Which way a coordinate grows that is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Toward {
    /// From the trunnion toward the airplane's center line, in a front view.
    Inboard,
    /// Out from the center line, in a front view.
    Outboard,
    /// Toward the left wing, in a front view of a leg on the center line.
    LeftWing,
    /// Aft, in a side view.
    Aft,
    /// Up.
    Up,
}

/// A coordinate as it is told, and as it is stored in the airplane's axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Told {
    /// From where it is told (m).
    origin: f64,
    /// 1 or −1.
    sign: f64,
    /// Which way it grows.
    pub toward: Toward,
    /// Told from the trunnion; otherwise in the airplane's axes.
    pub from_trunnion: bool,
}

impl Told {
    /// How a coordinate is told, the trunnion's own in the airplane's axes; `None` for what is no coordinate.
    #[must_use]
    pub fn of(gear: &Gear, path: Path) -> Option<Self> {
        let is_point = matches!(path.field.info().kind, Kind::Point | Kind::Outline);
        if !is_point {
            return None;
        }
        let leg = gear.legs.get(path.leg)?;
        let from_trunnion =
            gear.points_from == PointsFrom::Trunnion && path.field != Field::Trunnion;
        let out = leg.trunnion.x.signum();
        let (origin, sign, toward) = match (path.axis?, leg.view) {
            (Axis::Y, _) => (leg.trunnion.y, 1.0, Toward::Up),
            (Axis::X, View::Side) => (leg.trunnion.x, 1.0, Toward::Aft),
            // x points to the left wing; neither side where it is no number
            (Axis::X, View::Front) if leg.trunnion.x == 0.0 || leg.trunnion.x.is_nan() => {
                (0.0, 1.0, Toward::LeftWing)
            }
            (Axis::X, View::Front) if from_trunnion => (leg.trunnion.x, -out, Toward::Inboard),
            (Axis::X, View::Front) => (0.0, out, Toward::Outboard),
        };
        Some(Self {
            origin: if from_trunnion { origin } else { 0.0 },
            sign,
            toward,
            from_trunnion,
        })
    }

    /// The coordinate as it is told (m).
    #[must_use]
    pub fn told(self, stored: f64) -> f64 {
        even(self.sign * (stored - self.origin))
    }

    /// The coordinate as it is stored (m).
    #[must_use]
    pub fn stored(self, told: f64) -> f64 {
        self.origin + self.sign * told
    }
}

/// Rounding of a difference (m): far below what anybody measures.
const ROUNDING: f64 = 1e-12;

/// Parts of a meter that people measure in, as a numerator and a denominator of whole numbers: 1/64 in, 0.001 in,
/// 0.01 mm.
const MEASURED_IN: [(f64, f64); 3] = [(254.0, 640_000.0), (254.0, 1e7), (1.0, 1e5)];

/// A difference as it was measured: where it is one of those parts but for its rounding, that part, so that 6 5/8 in
/// is told as such.
fn even(value: f64) -> f64 {
    let parts = MEASURED_IN.map(|(above, below)| (value * below / above).round() * above / below);
    let mut near = parts
        .into_iter()
        .filter(|part| (part - value).abs() < ROUNDING);
    near.next().unwrap_or(value)
}

/// One number as it is told: a coordinate (m), or the size of a swing whichever way it goes (rad).
#[must_use]
pub fn told(gear: &Gear, path: Path, stored: f64) -> f64 {
    if path.field == Field::SwingUp {
        return stored.abs();
    }
    Told::of(gear, path).map_or(stored, |told| told.told(stored))
}

/// The number that is stored for one that is told: a swing goes the way that it went before.
#[must_use]
pub fn stored(gear: &Gear, path: Path, told: f64) -> f64 {
    if path.field == Field::SwingUp {
        let now = gear.legs.get(path.leg).map_or(told, |leg| leg.swing_up);
        return told.abs().copysign(now);
    }
    Told::of(gear, path).map_or(told, |frame| frame.stored(told))
}

/// A point at a path as it is told (m).
#[must_use]
pub fn told_point(gear: &Gear, path: Path, stored: Point) -> Point {
    both(path, stored, |axis, stored| told(gear, axis, stored))
}

/// The point that is stored for one that is told (m).
#[must_use]
pub fn stored_point(gear: &Gear, path: Path, told: Point) -> Point {
    both(path, told, |axis, told| stored(gear, axis, told))
}

/// Both coordinates of a point.
fn both(path: Path, point: Point, of: impl Fn(Path, f64) -> f64) -> Point {
    let at = |axis| path.point().axis(axis);
    Point::new(of(at(Axis::X), point.x), of(at(Axis::Y), point.y))
}
