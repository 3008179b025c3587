//! Parts of a leg as the wheel sees them, and how far they stray in between.
//!
//! Seen from the wheel B1 stands still, A0 and B0 run on circles about the trunnion and the knee on
//! one about B1, each between two nodes one way only; a strut that shortens adds a straight slide.
//! A part with one moving end runs at that end's own parameter and strays by no more than the height
//! of its arc. For the others the middle between both places is the common parameter, and an arc
//! below half a turn stays within half its chord of the chord's middle.
use crate::kinematics::Pose;
use crate::model::{AttachTo, Point, Vector};

use super::part::{Carrier, Part};
use super::rig::{Rig, sagitta};

/// Shortening below which the strut stands still (m).
const STILL: f64 = 1e-12;

/// A point of a pose as the wheel sees it, in the axes of gear down.
pub(crate) fn seen_from_wheel(rig: &Rig, pose: &Pose, point: Point) -> Point {
    rig.trunnion + pose.turn_back(point - rig.trunnion) - rig.slide * pose.shortening
}

/// A point of the wheel's axes of gear down, in a pose: the way back.
pub(crate) fn back_from_wheel(rig: &Rig, pose: &Pose, point: Point) -> Point {
    rig.trunnion + pose.turn(point - rig.trunnion + rig.slide * pose.shortening)
}

/// The way of a point that runs on a circle of the leg's axes from one pose to another.
#[derive(Clone, Copy)]
struct Way {
    radius: f64,
    chord: Vector,
}

impl Way {
    /// How far it strays at its own parameter, the angle (m).
    fn sagitta(&self) -> f64 {
        sagitta(self.radius, self.chord.norm())
    }

    /// How far it is at most from the middle of its chord (m).
    fn half(&self) -> f64 {
        let half = 0.5 * self.chord.norm();
        if half > 0.9 * self.radius {
            return f64::INFINITY;
        }
        half
    }
}

/// How far any point of a part's core strays, seen from the wheel, at most (m): see
/// [`Part::stray`](super::part::Part::stray).
pub(crate) fn stray(part: &Part, rig: &Rig, a: &Pose, b: &Pose) -> f64 {
    let ways = Ways { rig, a, b };
    let slide = 0.5 * (b.shortening - a.shortening).abs();
    let slides = slide > STILL;
    match part.carrier {
        // straight slides
        Carrier::Leg | Carrier::Axle => 0.0,
        Carrier::LowerLink => match ways.knee() {
            Some(knee) if slides => knee.half() + slide,
            Some(knee) => knee.sagitta(),
            None => f64::INFINITY,
        },
        Carrier::LowerArm => match (ways.knee(), ways.attach()) {
            (Some(knee), Some(attach)) if slides => knee.half().max(attach.half()) + slide,
            (Some(knee), Some(attach)) => knee.sagitta().max(attach.sagitta()),
            _ => f64::INFINITY,
        },
        Carrier::UpperLink => ways.upper(slides) + slide,
        Carrier::UpperArm => rig.carried() * ways.upper(slides) + slide,
        Carrier::SlidingBrace => match ways.about_trunnion(rig.pivot) {
            pivot if slides => pivot.half() + slide,
            pivot => pivot.sagitta(),
        },
        Carrier::Body | Carrier::Rod => ways.actuator(slides) + slide,
    }
}

/// The ways of the joints between two poses, in the leg's axes.
struct Ways<'a> {
    rig: &'a Rig,
    a: &'a Pose,
    b: &'a Pose,
}

impl Ways<'_> {
    /// A point of the airframe: it runs about the trunnion.
    fn about_trunnion(&self, point: Point) -> Way {
        let arm = point - self.rig.trunnion;
        Way {
            radius: arm.norm(),
            chord: self.b.turn_back(arm) - self.a.turn_back(arm),
        }
    }

    /// A point that runs about B1.
    fn about_attach(&self, of: impl Fn(&Pose) -> Option<Point>) -> Option<Way> {
        let arm = |pose: &Pose| Some(pose.turn_back(of(pose)? - pose.brace_attach?));
        let (from, to) = (arm(self.a)?, arm(self.b)?);
        Some(Way {
            radius: from.norm(),
            chord: to - from,
        })
    }

    fn knee(&self) -> Option<Way> {
        self.about_attach(|pose| pose.knee)
    }

    /// A1 on the lower link.
    fn attach(&self) -> Option<Way> {
        self.about_attach(|pose| Some(pose.actuator_attach))
    }

    /// Both ends of the upper link, B0 about the trunnion and the knee about B1.
    fn upper(&self, slides: bool) -> f64 {
        let (Some(knee), Some(from)) = (self.knee(), self.a.knee) else {
            return f64::INFINITY;
        };
        let pivot = self.about_trunnion(self.rig.pivot);
        let apart = knee.half().max(pivot.half());
        if slides {
            return apart;
        }
        let link = self.a.turn_back(self.rig.pivot - from);
        let sagittas = knee.sagitta() + pivot.sagitta();
        let length = self.rig.upper_length;
        apart.min(Rig::stray_link(
            link,
            length,
            (knee.chord, pivot.chord),
            sagittas,
        ))
    }

    /// Both ends of the actuator's body and of its rod.
    ///
    /// The vector from A0 to A1 stays within s of the middle v of its two places, its direction
    /// within asin(s/|v|) of that of v, and so do both of its ends: the gland leaves the middle of
    /// its places by no more than its own pin does and twice that angle of the body's length.
    fn actuator(&self, slides: bool) -> f64 {
        let mount = self.about_trunnion(self.rig.mount);
        let line = |pose: &Pose| pose.turn_back(pose.actuator_attach - self.rig.mount);
        let (from, to) = (line(self.a), line(self.b));
        let chord = (to - from).norm();
        let body = self.rig.body_length;
        if self.rig.attach_to == AttachTo::Leg && !slides {
            // A1 stands still: see `Rig::stray_actuator`
            let own = mount.sagitta();
            let least = self.a.actuator_length.min(self.b.actuator_length) - chord - own;
            if least <= 0.0 {
                return f64::INFINITY;
            }
            let turn = chord / least;
            return own + body * (0.25 * turn * turn + own / least);
        }
        let attach = match self.rig.attach_to {
            AttachTo::Leg => 0.0,
            AttachTo::UpperLink => self.rig.carried() * self.upper(true),
            AttachTo::LowerLink => self.attach().map_or(f64::INFINITY, |way| way.half()),
        };
        let (ends, middle) = (mount.half() + attach, (0.5 * (from + to)).norm());
        if ends >= 0.9 * middle {
            return f64::INFINITY;
        }
        mount.half().max(attach) + 2.0 * body * (ends / middle).asin()
    }
}
