//! All loads of a pose gathered on its free bodies.
use super::{BodyLoads, Loads};
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{AttachTo, Brace, Leg, Point, Vector};

/// 1 for the part that the actuator drives, 0 for the others.
#[derive(Clone, Copy, Debug)]
pub(super) struct Carries {
    pub(super) leg: f64,
    pub(super) upper: f64,
    pub(super) lower: f64,
}

/// What of each part an even pull takes hold of: its mass (kg) under gravity, its drag area (m2) in the wind.
#[derive(Clone, Copy, Debug)]
pub(super) struct Amounts {
    pub(super) body: f64,
    pub(super) wheel: f64,
    /// Halfway between trunnion and axle.
    pub(super) halfway: f64,
    /// Of the upper link, or of a telescopic brace; half of a bar is at each of its pins.
    pub(super) upper: f64,
    pub(super) lower: f64,
    pub(super) actuator: f64,
}

impl Amounts {
    /// Masses (kg).
    pub(super) fn masses(leg: &Leg) -> Self {
        let (upper, lower) = match &leg.brace {
            Brace::None => (0.0, 0.0),
            Brace::Sliding(brace) => (brace.mass, 0.0),
            Brace::Folding(brace) => (brace.upper.mass, brace.lower.mass),
        };
        Self {
            body: leg.body.mass,
            wheel: leg.wheel.mass,
            halfway: 0.0,
            upper,
            lower,
            actuator: leg.actuator.mass,
        }
    }

    /// Drag areas (m2).
    pub(super) fn drag_areas(leg: &Leg) -> Self {
        Self {
            body: 0.0,
            wheel: leg.air.wheel_drag_area,
            halfway: leg.air.leg_drag_area,
            upper: 0.0,
            lower: 0.0,
            actuator: 0.0,
        }
    }
}

/// The bodies of a leg at one pose.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bodies<'a> {
    pub(super) leg: &'a Leg,
    pub(super) pose: &'a Pose,
    pub(super) carries: Carries,
    /// B0 to knee and B1 to knee of a folding brace.
    pub(super) links: Option<[Vector; 2]>,
    /// P to B1 of any brace.
    pub(super) attach: Vector,
    trunnion: Point,
    /// Direction A0 to A1.
    axis: Vector,
    /// A1 from the point about which the part that it drives has its moments, and which of these it is.
    driven: (Vector, usize),
    /// Direction in which the strut shortens, times dc/dφ (m).
    slide: Vector,
}

/// Loads on the bodies of a pose: linear in what makes them.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Gathered {
    /// Force of the actuator on the part that it drives.
    pub(super) push: Vector,
    /// Outside force on the actuator.
    pub(super) actuator: Vector,
    /// Outside force on the leg, the braces' end forces left out.
    pub(super) leg: Vector,
    /// Outside force on the upper link, or on a telescopic brace.
    pub(super) upper: Vector,
    /// Outside force on the lower link.
    pub(super) lower: Vector,
    /// Force of a telescopic brace on the leg: it carries nothing along itself while it slides.
    pub(super) brace_end: Vector,
    /// Moments on upper link about B0, lower link about B1, leg about P, the knee's force left out
    /// (N·m); without a folding brace all stand in the last.
    pub(super) moments: [f64; 3],
}

impl Gathered {
    /// Adds the forces of these loads times a factor.
    pub(super) fn add_forces(&mut self, other: &Self, factor: f64) {
        self.push += other.push * factor;
        self.actuator += other.actuator * factor;
        self.leg += other.leg * factor;
        self.upper += other.upper * factor;
        self.lower += other.lower * factor;
        self.brace_end += other.brace_end * factor;
    }
}

impl<'a> Bodies<'a> {
    pub(super) fn new(leg: &'a Leg, linkage: &Linkage, pose: &'a Pose) -> Self {
        let trunnion = linkage.trunnion();
        let attach_to = leg.actuator.attach_to;
        let at = pose.actuator_attach;
        let (links, driven) = match (&leg.brace, pose.knee, pose.brace_attach) {
            (Brace::Folding(brace), Some(knee), Some(attach)) => {
                let driven = match attach_to {
                    AttachTo::UpperLink => (at - brace.airframe_pivot, 0),
                    AttachTo::LowerLink => (at - attach, 1),
                    AttachTo::Leg => (at - trunnion, 2),
                };
                (Some([knee - brace.airframe_pivot, knee - attach]), driven)
            }
            // without links it drives the leg
            _ => (None, (at - trunnion, 2)),
        };
        let carries = |part: usize| f64::from(u8::from(driven.1 == part));
        let slides = pose.rates.swing != 0.0 && pose.rates.slide != 0.0;
        Self {
            leg,
            pose,
            carries: Carries {
                leg: carries(2),
                upper: carries(0),
                lower: carries(1),
            },
            links,
            attach: pose
                .brace_attach
                .map_or_else(Vector::zeros, |at| at - trunnion),
            trunnion,
            axis: (at - leg.actuator.mount) / pose.actuator_length,
            driven,
            slide: match slides {
                true => {
                    pose.turn(linkage.slide_direction()) * (pose.rates.slide / pose.rates.swing)
                }
                false => Vector::zeros(),
            },
        }
    }

    /// Gathers loads, further ones, and a thrust (N). A strut shortened by the swing hands the load
    /// along it to the leg's drive as a couple.
    pub(super) fn gather(&self, loads: &Loads, more: &BodyLoads, thrust: f64) -> Gathered {
        let of = |(at, force): (Point, Vector)| (at - self.trunnion).perp(&force);
        let (body, wheel, air) = (loads.body, loads.wheel, loads.leg_air);
        let mut on = Gathered {
            push: loads.actuator[1],
            actuator: loads.actuator[0] + loads.actuator[1],
            leg: body.1 + wheel.1 + air.1,
            upper: loads.upper[0] + loads.upper[1],
            lower: loads.lower[0] + loads.lower[1],
            brace_end: Vector::zeros(),
            moments: [
                0.0,
                0.0,
                of(body) + of(wheel) + of(air) + self.slide.dot(&wheel.1),
            ],
        };
        self.add_ends(&mut on, loads.upper[1], loads.lower[0]);
        self.add(&mut on, &loads.springs);
        self.add(&mut on, more);
        self.pass_on(&mut on, thrust);
        on
    }

    /// Gathers forces and couples on the bodies alone.
    pub(super) fn gather_on(&self, bodies: &BodyLoads) -> Gathered {
        let mut on = Gathered::default();
        self.add(&mut on, bodies);
        self.pass_on(&mut on, 0.0);
        on
    }

    /// Gathers an even pull: so much force on each of the amounts.
    pub(super) fn gather_even(&self, of: &Amounts, pull: Vector) -> Gathered {
        let body = self.pose.turn(self.leg.body.centre - self.trunnion);
        let wheel = self.pose.axle - self.trunnion;
        let arm = body * of.body + wheel * (of.wheel + 0.5 * of.halfway);
        let mut on = Gathered {
            push: pull * (0.5 * of.actuator),
            actuator: pull * of.actuator,
            leg: pull * (of.body + of.wheel + of.halfway),
            upper: pull * of.upper,
            lower: pull * of.lower,
            brace_end: Vector::zeros(),
            moments: [0.0, 0.0, arm.perp(&pull) + self.slide.dot(&pull) * of.wheel],
        };
        self.add_ends(&mut on, pull * (0.5 * of.upper), pull * (0.5 * of.lower));
        self.pass_on(&mut on, 0.0);
        on
    }

    /// Adds the moments of what is on the moving ends of both links, or hands on what is on that of a
    /// telescopic brace.
    fn add_ends(&self, on: &mut Gathered, upper: Vector, lower: Vector) {
        if let Some([of_upper, of_lower]) = self.links {
            on.moments[0] += of_upper.perp(&upper);
            on.moments[1] += of_lower.perp(&lower);
        } else if let Brace::Sliding(_) = self.leg.brace {
            on.brace_end += upper;
        }
    }

    /// Adds forces and couples on the bodies.
    fn add(&self, on: &mut Gathered, more: &BodyLoads) {
        on.leg += more.leg.force + more.sliding.force;
        on.upper += more.upper.force;
        on.lower += more.lower.force;
        on.moments[2] +=
            self.slide.dot(&more.sliding.force) + more.leg.moment + more.sliding.moment;
        if more.actuator != 0.0 {
            // a couple on the actuator is carried by forces across it at its pins
            on.push += quarter(self.axis) * (more.actuator / self.pose.actuator_length);
        }
        match (&self.leg.brace, self.pose.brace_attach) {
            (Brace::Folding(brace), Some(attach)) => {
                on.moments[0] += more.upper.about(self.trunnion, brace.airframe_pivot);
                on.moments[1] += more.lower.about(self.trunnion, attach);
            }
            (Brace::Sliding(brace), Some(attach)) if more.brace != 0.0 => {
                // and one on the brace by forces across that
                let span = attach - brace.airframe_pivot;
                on.brace_end += quarter(span) * (more.brace / span.norm_squared());
            }
            _ => {}
        }
    }

    /// Adds a thrust (N), and the moments of all that a part hands on to the next.
    pub(super) fn pass_on(&self, on: &mut Gathered, thrust: f64) {
        on.push += self.axis * thrust;
        let (arm, driven) = self.driven;
        on.moments[driven] += arm.perp(&on.push);
        let passed_on = on.lower + on.push * self.carries.lower + on.brace_end;
        on.moments[2] += self.attach.perp(&passed_on);
    }
}
