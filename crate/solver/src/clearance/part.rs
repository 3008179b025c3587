//! Moving parts of a leg: core shapes and how they follow a pose.
use crate::kinematics::Pose;
use crate::model::{AttachTo, BodyEnd, Brace, Leg, MovingPart, Point, Shortening, Vector, View};
use crate::result::TireState;
use crate::tires::TireSize;

use super::relative::{self, seen_from_wheel};
use super::rig::Rig;

/// How a part's core follows a pose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Carrier {
    /// Turns with the leg.
    Leg,
    /// Turns with the leg and slides with the axle.
    Axle,
    /// B0–K.
    UpperLink,
    /// K–B1.
    LowerLink,
    /// From B0–K to A1.
    UpperArm,
    /// From K–B1 to A1.
    LowerArm,
    /// B0–B1.
    SlidingBrace,
    /// Actuator body.
    Body,
    /// Actuator rod.
    Rod,
}

/// A moving part: a core, grown all around by a radius.
#[derive(Clone, Debug)]
pub(crate) struct Part {
    pub(crate) part: MovingPart,
    pub(crate) tire: Option<TireState>,
    pub(crate) carrier: Carrier,
    /// Core at gear down: one point, two (a bar) or a closed polygon.
    pub(crate) core: Vec<Point>,
    /// Growth of the core (m).
    pub(crate) radius: f64,
    /// Seen from the wheel, which then stands still, and not from the airframe.
    pub(crate) from_wheel: bool,
    /// Largest distance of the core from the trunnion, extended or shortened (m).
    reach: f64,
}

impl Part {
    /// Whether the core is a closed polygon.
    pub(crate) fn closed(&self) -> bool {
        self.core.len() > 2
    }

    /// Puts the core's points in `pose` into `out` (emptied first). False when the pose lacks a
    /// joint that the part hangs on.
    pub(crate) fn place(&self, rig: &Rig, pose: &Pose, out: &mut Vec<Point>) -> bool {
        out.clear();
        self.place_onto(rig, pose, out)
    }

    /// The same part as its wheel sees it.
    pub(crate) fn seen_from_wheel(self) -> Self {
        Self {
            from_wheel: true,
            ..self
        }
    }

    /// The same part, larger all around (m).
    pub(crate) fn grown(&self, by: f64) -> Self {
        Self {
            radius: self.radius + by,
            ..self.clone()
        }
    }

    /// As [`Self::place`], added to what `out` holds.
    pub(crate) fn place_onto(&self, rig: &Rig, pose: &Pose, out: &mut Vec<Point>) -> bool {
        let start = out.len();
        let placed = self.place_seen_from_airframe(rig, pose, out);
        if self.from_wheel {
            for point in out.iter_mut().skip(start) {
                *point = seen_from_wheel(rig, pose, *point);
            }
        }
        placed
    }

    fn place_seen_from_airframe(&self, rig: &Rig, pose: &Pose, out: &mut Vec<Point>) -> bool {
        let bar = match self.carrier {
            Carrier::Leg | Carrier::Axle => {
                let slide = self.slide(rig, pose);
                out.extend(
                    self.core
                        .iter()
                        .map(|p| rig.trunnion + pose.turn(p - rig.trunnion + slide)),
                );
                return true;
            }
            Carrier::UpperLink => pose.knee.map(|k| [rig.pivot, k]),
            Carrier::LowerLink => pose.knee.zip(pose.brace_attach).map(<[Point; 2]>::from),
            Carrier::UpperArm => {
                let link = pose.knee.map(|k| (rig.pivot, k));
                arm(rig, link, pose)
            }
            Carrier::LowerArm => arm(rig, pose.knee.zip(pose.brace_attach), pose),
            Carrier::SlidingBrace => pose.brace_attach.map(|b| [rig.pivot, b]),
            Carrier::Body => Some([own_pin(rig, pose), rig.gland(pose)]),
            Carrier::Rod => Some([other_pin(rig, pose), rig.gland(pose)]),
        };
        out.extend(bar.into_iter().flatten());
        bar.is_some()
    }

    /// Shift of the core by the shortening, at gear down (m).
    pub(crate) fn slide(&self, rig: &Rig, pose: &Pose) -> Vector {
        if self.carrier == Carrier::Axle {
            rig.slide * pose.shortening
        } else {
            Vector::zeros()
        }
    }

    /// How far any point of the core strays from the straight line between its places in `a` and
    /// `b`, all run at one common parameter, at most (m). Between `a` and `b` no angle turns back.
    pub(crate) fn stray(&self, rig: &Rig, a: &Pose, b: &Pose) -> f64 {
        if self.from_wheel {
            return relative::stray(self, rig, a, b);
        }
        match self.carrier {
            Carrier::Leg => Rig::stray_leg(a, b, self.reach, false),
            Carrier::Axle => Rig::stray_leg(a, b, self.reach, true),
            Carrier::UpperLink => rig.stray_knee(a, b),
            Carrier::LowerLink => rig.stray_lower(a, b),
            Carrier::UpperArm | Carrier::LowerArm => rig.stray_arm(a, b),
            Carrier::SlidingBrace => rig.stray_brace_attach(a, b),
            Carrier::Body | Carrier::Rod => rig.stray_actuator(a, b),
        }
    }
}

/// Both ends of the arm of a link that lies between two points.
fn arm(rig: &Rig, link: Option<(Point, Point)>, pose: &Pose) -> Option<[Point; 2]> {
    let ((from, to), share) = link.zip(rig.arm_foot)?;
    Some([from + (to - from) * share, pose.actuator_attach])
}

fn own_pin(rig: &Rig, pose: &Pose) -> Point {
    match rig.body_at {
        BodyEnd::Airframe => rig.mount,
        BodyEnd::Moving => pose.actuator_attach,
    }
}

fn other_pin(rig: &Rig, pose: &Pose) -> Point {
    match rig.body_at {
        BodyEnd::Airframe => pose.actuator_attach,
        BodyEnd::Moving => rig.mount,
    }
}

/// Core and radius of a wheel of `size` at gear down.
///
/// Side view: a point and half the diameter. Front view: a rounded rectangle, as the rectangle
/// inside of its shoulder radius, or a bar or a point where the shoulders meet.
fn wheel_core(leg: &Leg, size: &TireSize) -> (Vec<Point>, f64) {
    let axle = leg.strut.axle;
    if leg.view == View::Side {
        return (vec![axle], 0.5 * size.diameter);
    }
    let least = size.diameter.min(size.width);
    let radius = size.shoulder_radius.clamp(0.0, 0.5 * least);
    let (sin, cos) = leg.wheel.lean.sin_cos();
    // half extents of the core along the wheel's plane and across it
    let up = Vector::new(-sin, cos) * (0.5 * size.diameter - radius);
    let across = Vector::new(cos, sin) * (0.5 * size.width - radius);
    // below a nanometre an extent is none
    const NONE: f64 = 1e-9;
    let core = match (up.norm() > NONE, across.norm() > NONE) {
        (true, true) => vec![
            axle - up - across,
            axle - up + across,
            axle + up + across,
            axle + up - across,
        ],
        (true, false) => vec![axle - up, axle + up],
        (false, true) => vec![axle - across, axle + across],
        (false, false) => vec![axle],
    };
    (core, radius)
}

/// The wheel of a leg as a moving part, all around larger by `loss`, what skews may take off its
/// clearances (m).
pub(crate) fn wheel_part(
    leg: &Leg,
    rig: &Rig,
    size: &TireSize,
    tire: TireState,
    loss: f64,
) -> Part {
    let (core, radius) = wheel_core(leg, size);
    let radius = radius + loss;
    part(
        leg,
        rig,
        MovingPart::Wheel,
        Some(tire),
        Carrier::Axle,
        core,
        radius,
    )
}

/// Every moving part but the wheel, in the order of [`MovingPart`].
pub(crate) fn other_parts(leg: &Leg, rig: &Rig) -> Vec<Part> {
    let mut parts = Vec::with_capacity(6);
    let mut add = |kind, carrier, core: Vec<Point>, radius| {
        if !core.is_empty() {
            parts.push(part(leg, rig, kind, None, carrier, core, radius));
        }
    };
    add(
        MovingPart::LegBody,
        Carrier::Leg,
        leg.body.outline.clone(),
        0.0,
    );
    add(
        MovingPart::SlidingStrut,
        Carrier::Axle,
        leg.strut.sliding_outline.clone(),
        0.0,
    );
    match &leg.brace {
        Brace::None => {}
        Brace::Folding(b) => {
            add(
                MovingPart::UpperLink,
                Carrier::UpperLink,
                vec![b.airframe_pivot, b.knee],
                0.5 * b.upper.thickness,
            );
            add(
                MovingPart::LowerLink,
                Carrier::LowerLink,
                vec![b.knee, b.leg_attach],
                0.5 * b.lower.thickness,
            );
            let (from, to, carrier, thickness) = match rig.attach_to {
                AttachTo::LowerLink => (b.knee, b.leg_attach, Carrier::LowerArm, b.lower.thickness),
                _ => (
                    b.airframe_pivot,
                    b.knee,
                    Carrier::UpperArm,
                    b.upper.thickness,
                ),
            };
            if let Some(share) = rig.arm_foot {
                let foot = from + (to - from) * share;
                let bar = vec![foot, leg.actuator.attach];
                add(MovingPart::LinkArm, carrier, bar, 0.5 * thickness);
            }
        }
        Brace::Sliding(b) => add(
            MovingPart::SlidingBrace,
            Carrier::SlidingBrace,
            vec![b.airframe_pivot, b.leg_attach],
            0.5 * b.thickness,
        ),
    }
    let actuator = &leg.actuator;
    let line = (actuator.attach - actuator.mount)
        .try_normalize(0.0)
        .unwrap_or_else(Vector::zeros)
        * actuator
            .body_length
            .min((actuator.attach - actuator.mount).norm());
    let (body, rod) = match actuator.body_at {
        BodyEnd::Airframe => (
            vec![actuator.mount, actuator.mount + line],
            vec![actuator.attach, actuator.mount + line],
        ),
        BodyEnd::Moving => (
            vec![actuator.attach, actuator.attach - line],
            vec![actuator.mount, actuator.attach - line],
        ),
    };
    let body_radius = 0.5 * actuator.body_diameter;
    add(MovingPart::ActuatorBody, Carrier::Body, body, body_radius);
    add(
        MovingPart::ActuatorRod,
        Carrier::Rod,
        rod,
        0.5 * actuator.rod,
    );
    parts
}

fn part(
    leg: &Leg,
    rig: &Rig,
    part: MovingPart,
    tire: Option<TireState>,
    carrier: Carrier,
    core: Vec<Point>,
    radius: f64,
) -> Part {
    let slide = match (&leg.strut.shortening, carrier) {
        (Shortening::BeforeSwing { amount }, Carrier::Axle) => amount.abs(),
        (Shortening::WithTravel { table }, Carrier::Axle) => table
            .iter()
            .fold(0.0, |most, row| row.amount.abs().max(most)),
        _ => 0.0,
    };
    let reach = core
        .iter()
        .map(|p| (p - rig.trunnion).norm())
        .fold(0.0, f64::max)
        + slide;
    Part {
        part,
        tire,
        carrier,
        core,
        radius,
        from_wheel: false,
        reach,
    }
}
