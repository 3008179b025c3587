//! A leg made ready for solving.
use std::sync::OnceLock;

use crate::model::{AttachTo, Brace, Folds, Leg, Point, Shortening, ShorteningRow, Vector};
use crate::numeric::{direction, sort_by, wrap};

use super::hand_over::hand_over;
use super::path::progress_of_share;
use super::turns::Turns;
use super::{Path, Side, circle_circle};

/// A leg made ready for solving: lengths, leg-fixed vectors and path.
#[derive(Clone, Debug)]
pub struct Linkage {
    pub(crate) path: Path,
    pub(crate) trunnion: Point,
    pub(crate) swing_up: f64,
    /// Axle from the trunnion, in leg axes at gear down (m).
    pub(crate) axle: Vector,
    /// Direction in which shortening moves the axle, in leg axes at gear down (ratio).
    pub(crate) slide_direction: Vector,
    pub(crate) shortening: Shortening,
    pub(crate) brace: BraceLinkage,
    pub(crate) actuator_mount: Point,
    pub(crate) actuator_attach: AttachLinkage,
    /// Turns of the brace at places spread evenly over the path, followed when first asked for.
    pub(super) marks: OnceLock<Vec<Turns>>,
    /// Progress from which the actuator carries the leg, where a device of its own unlocks the knee.
    pub(crate) hand_over: Option<f64>,
}

/// The brace made ready.
#[derive(Clone, Debug)]
pub(crate) enum BraceLinkage {
    None,
    Sliding(SlidingLinkage),
    Folding(FoldingLinkage),
}

/// Telescopic brace made ready.
#[derive(Clone, Debug)]
pub(crate) struct SlidingLinkage {
    pub(crate) pivot: Point,
    /// B1 from the trunnion (m).
    pub(crate) attach: Vector,
    pub(crate) shortest: f64,
    pub(crate) longest: f64,
}

/// Folding brace made ready.
#[derive(Clone, Debug)]
pub(crate) struct FoldingLinkage {
    pub(crate) pivot: Point,
    /// B1 from the trunnion (m).
    pub(crate) attach: Vector,
    pub(crate) knee_down: Point,
    /// Turn from the upper to the lower link at gear down, counter-clockwise (rad).
    pub(super) bent_down: f64,
    pub(crate) upper_length: f64,
    pub(crate) lower_length: f64,
    /// Side of the knee, seen B0 to B1, during the swing.
    pub(crate) fold_side: Side,
    pub(crate) unlock: Option<Unlock>,
    /// Scale of the rates and their sign, by which they rise toward up (1/m2).
    pub(super) sense: f64,
}

/// The way of an over-center knee back to the straight line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Unlock {
    /// Direction of the upper link at down (rad).
    pub(crate) upper_down: f64,
    /// Turn of the upper link from down to straight (rad).
    pub(crate) upper_turn: f64,
    /// Swing at the straight pose (rad).
    pub(crate) swing_straight: f64,
    /// Side of B1, seen trunnion to knee, at down.
    pub(crate) attach_side: Side,
}

/// The actuator's attach point in the axes of the part that carries it.
#[derive(Clone, Copy, Debug)]
pub(crate) enum AttachLinkage {
    /// From the trunnion, in leg axes at gear down (m).
    Leg(Vector),
    /// Along and left of B0→K (m).
    UpperLink(Vector),
    /// Along and left of K→B1 (m).
    LowerLink(Vector),
}

/// A pose that cannot be assembled: by how much B0–B1 misses what the links allow (m).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Miss(pub f64);

/// Places at which it is looked for how far a leg can be assembled.
const LOOKS: u32 = 180;

impl Linkage {
    /// Whether the actuator is longer at the end of the way up than at its start; where the leg can't be
    /// assembled at the end, at the last place where it can.
    pub(crate) fn lengthens_up(&self) -> bool {
        let path = self.path();
        let length = |progress: f64| self.pose(progress).map(|pose| pose.actuator_length).ok();
        let end = (0..=LOOKS).rev().find_map(|at| {
            let share = f64::from(at) / f64::from(LOOKS);
            length(path.start() + share * (path.end() - path.start()))
        });
        let start = length(path.start());
        start.zip(end).is_none_or(|(start, end)| end >= start)
    }

    /// Prepares a leg that has passed [`crate::faults::check_leg`].
    #[must_use]
    pub fn new(leg: &Leg) -> Self {
        let trunnion = leg.trunnion;
        let brace = match &leg.brace {
            Brace::None => BraceLinkage::None,
            Brace::Sliding(b) => BraceLinkage::Sliding(SlidingLinkage {
                pivot: b.airframe_pivot,
                attach: b.leg_attach - trunnion,
                shortest: b.shortest,
                longest: b.longest,
            }),
            Brace::Folding(b) => {
                let down_side = Side::of(b.knee, b.airframe_pivot, b.leg_attach);
                let attach = b.leg_attach - trunnion;
                let (upper, lower) = (b.knee - b.airframe_pivot, trunnion + attach - b.knee);
                let mut folding = FoldingLinkage {
                    pivot: b.airframe_pivot,
                    attach,
                    knee_down: b.knee,
                    bent_down: direction(upper.dot(&lower), upper.perp(&lower)),
                    upper_length: (b.knee - b.airframe_pivot).norm(),
                    lower_length: (b.leg_attach - b.knee).norm(),
                    fold_side: match b.folds {
                        Folds::ThroughCentre => down_side.other(),
                        Folds::SameSide => down_side,
                    },
                    unlock: None,
                    sense: 0.0,
                };
                let scale = folding.upper_length * folding.lower_length;
                folding.sense = -leg.swing_up.signum() * folding.fold_side.sign() / scale;
                if b.folds == Folds::ThroughCentre {
                    folding.unlock = unlock(trunnion, leg.swing_up, &folding);
                }
                BraceLinkage::Folding(folding)
            }
        };
        let attach = leg.actuator.attach;
        let actuator_attach = match (leg.actuator.attach_to, &leg.brace) {
            (AttachTo::UpperLink, Brace::Folding(b)) => {
                AttachLinkage::UpperLink(in_axes(attach, b.airframe_pivot, b.knee))
            }
            (AttachTo::LowerLink, Brace::Folding(b)) => {
                AttachLinkage::LowerLink(in_axes(attach, b.knee, b.leg_attach))
            }
            _ => AttachLinkage::Leg(attach - trunnion),
        };
        let slide = leg.strut.axis_top - leg.strut.axis_bottom;
        let mut linkage = Self {
            path: Path {
                shortens: matches!(leg.strut.shortening, Shortening::BeforeSwing { .. }),
                unlocks: matches!(&brace, BraceLinkage::Folding(f) if f.unlock.is_some()),
            },
            trunnion,
            swing_up: leg.swing_up,
            axle: leg.strut.axle - trunnion,
            slide_direction: slide.try_normalize(0.0).unwrap_or_else(Vector::y),
            shortening: leg.strut.shortening.clone(),
            brace,
            actuator_mount: leg.actuator.mount,
            actuator_attach,
            marks: OnceLock::new(),
            hand_over: None,
        };
        linkage.hand_over = hand_over(leg, &linkage);
        linkage
    }

    /// The path.
    #[must_use]
    pub fn path(&self) -> Path {
        self.path
    }

    /// Trunnion P (m).
    #[must_use]
    pub fn trunnion(&self) -> Point {
        self.trunnion
    }

    /// Swing at up, signed (rad).
    #[must_use]
    pub fn swing_up(&self) -> f64 {
        self.swing_up
    }

    /// Direction in which shortening moves the axle, in leg axes at gear down (ratio).
    #[must_use]
    pub fn slide_direction(&self) -> Vector {
        self.slide_direction
    }

    /// Swing at the straight pose of an over-center knee, signed (rad).
    #[must_use]
    pub fn swing_straight(&self) -> Option<f64> {
        match &self.brace {
            BraceLinkage::Folding(f) => f.unlock.map(|u| u.swing_straight),
            _ => None,
        }
    }

    /// Whether trunnion, B1 and knee come into one line while an over-center knee goes to the
    /// straight line: the leg could turn either way there, and the path would break.
    pub(crate) fn passes_dead_point(&self) -> bool {
        let BraceLinkage::Folding(brace) = &self.brace else {
            return false;
        };
        brace.unlock.is_some_and(|unlock| {
            let (sin, cos) = unlock.swing_straight.sin_cos();
            let arm = brace.attach;
            let attach = Vector::new(cos * arm.x - sin * arm.y, sin * arm.x + cos * arm.y);
            let b1 = self.trunnion + attach;
            let line = b1 - brace.pivot;
            let knee = brace.pivot + line * (brace.upper_length / line.norm());
            Side::of(b1, self.trunnion, knee) != unlock.attach_side
        })
    }

    /// +1 when the knee folds to the left of B0→B1, −1 to the right; `None` without a knee (ratio).
    #[must_use]
    pub fn fold_sign(&self) -> Option<f64> {
        match &self.brace {
            BraceLinkage::Folding(f) => Some(f.fold_side.sign()),
            _ => None,
        }
    }

    /// Progress of the swing phase at a travel between the straight pose and 1 (ratio).
    #[must_use]
    pub fn progress_at_travel(&self, travel: f64) -> f64 {
        match self.swing_straight() {
            Some(straight) => {
                let share = (travel * self.swing_up - straight) / (self.swing_up - straight);
                progress_of_share(share).clamp(0.0, 1.0)
            }
            None => travel.clamp(0.0, 1.0),
        }
    }

    /// Progress of the swing at which trunnion, B0 and B1 come into one line, so that a folding brace spans
    /// least or most, in order (ratio).
    pub(crate) fn spans_turn(&self) -> Vec<f64> {
        let BraceLinkage::Folding(brace) = &self.brace else {
            return Vec::new();
        };
        // without a knee to straighten the swing starts at gear down
        let start = self.swing_straight().unwrap_or(0.0);
        let near = wrap(brace.attach.angle_to(brace.pivot - self.trunnion));
        // a leg swings by less than a turn
        let half_turns = (-3..=3).map(|half| near + f64::from(half) * std::f64::consts::PI);
        let mut turns: Vec<f64> = half_turns
            .filter(|swing| (swing - start) * (swing - self.swing_up) < 0.0)
            .map(|swing| self.progress_at_travel(swing / self.swing_up))
            .collect();
        sort_by(&mut turns, f64::total_cmp);
        turns
    }

    /// Shortening at a travel of the swing phase (m), and its slope over travel (m).
    pub(crate) fn shortening_at(&self, travel: f64) -> (f64, f64) {
        match &self.shortening {
            Shortening::None => (0.0, 0.0),
            Shortening::BeforeSwing { amount } => (*amount, 0.0),
            Shortening::WithTravel { table } => interpolate(table, travel),
        }
    }
}

/// Straight lines between rows of rising travel; the ends are held.
fn interpolate(table: &[ShorteningRow], travel: f64) -> (f64, f64) {
    let (Some(first), Some(last)) = (table.first(), table.last()) else {
        return (0.0, 0.0);
    };
    if travel < first.travel {
        return (first.amount, 0.0);
    }
    if travel >= last.travel {
        return (last.amount, 0.0);
    }
    for pair in table.windows(2) {
        if let [a, b] = pair
            && travel < b.travel
        {
            let slope = (b.amount - a.amount) / (b.travel - a.travel);
            return (a.amount + slope * (travel - a.travel), slope);
        }
    }
    (last.amount, 0.0)
}

/// `point` along and left of the direction from→to (m).
fn in_axes(point: Point, from: Point, to: Point) -> Vector {
    let along = (to - from).try_normalize(0.0).unwrap_or_else(Vector::x);
    let arm = point - from;
    Vector::new(along.dot(&arm), along.perp(&arm))
}

/// The straight pose next to down: B1 where the leg's circle meets the circle of both links
/// stretched, in the direction in which B0–B1 grows. `None` when it never reaches so far.
fn unlock(trunnion: Point, swing_up: f64, brace: &FoldingLinkage) -> Option<Unlock> {
    let radius = brace.attach.norm();
    let reach = brace.upper_length + brace.lower_length;
    let attach_down = trunnion + brace.attach;
    // d|B0–B1|²/dφ ∝ (B1−B0)·(B1−P)⊥
    let growth = brace.attach.perp(&(attach_down - brace.pivot));
    let direction = if growth == 0.0 {
        -swing_up.signum()
    } else {
        growth.signum()
    };
    let straight = [Side::Left, Side::Right]
        .into_iter()
        .filter_map(|side| circle_circle(trunnion, radius, brace.pivot, reach, side))
        .map(|attach| {
            let turn = wrap(brace.attach.angle_to(attach - trunnion));
            // the first one met in that direction
            let ahead = (turn * direction).rem_euclid(std::f64::consts::TAU);
            (ahead, attach)
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let upper_down = brace.knee_down - brace.pivot;
    let upper_straight = straight.1 - brace.pivot;
    Some(Unlock {
        upper_down: upper_down.y.atan2(upper_down.x),
        upper_turn: upper_down.angle_to(upper_straight),
        swing_straight: straight.0 * direction,
        attach_side: Side::of(attach_down, trunnion, brace.knee_down),
    })
}

/// Signed angle between two vectors.
trait AngleTo {
    /// Angle from `self` to `other`, counter-clockwise, in (−π, π] (rad).
    fn angle_to(&self, other: Self) -> f64;
}

impl AngleTo for Vector {
    fn angle_to(&self, other: Self) -> f64 {
        self.perp(&other).atan2(self.dot(&other))
    }
}
