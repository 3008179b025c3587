//! What all parts resist a motion with, and their kinetic energy.
use crate::kinematics::{Linkage, Pose, Spins, quarter};
use crate::model::{AttachTo, Brace, Leg, Point, Vector, View};
use crate::result::InertiaBasis;
use crate::statics::{Loads, attach_velocity};

/// Least mass of a link of a folding brace (kg): as the knee passes the straight line the leg stands
/// still, and links without mass would leave nothing that moves. Our own figure, lighter than any.
const LEAST_LINK: f64 = 0.01;

/// Moments of inertia about the parts' own centers (kg·m2).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Inertias {
    /// Upper leg about its center of mass.
    pub(crate) body: f64,
    pub(crate) basis: InertiaBasis,
    /// Wheel about a diameter; nothing in side view, where it does not turn with the leg.
    pub(crate) wheel: f64,
}

impl Inertias {
    pub(crate) fn of(leg: &Leg) -> Self {
        let radius2 = plate_radius_squared(&leg.body.outline);
        let (body, basis) = match (leg.fall.body_inertia, radius2) {
            (Some(given), _) => (given, InertiaBasis::Given),
            (None, Some(radius2)) => (leg.body.mass * radius2, InertiaBasis::UniformPlate),
            (None, None) => {
                let half = (leg.body.centre - leg.trunnion).norm();
                (leg.body.mass * half * half / 3.0, InertiaBasis::UniformRod)
            }
        };
        // a uniform cylinder about its diameter, m·(3r² + w²)/12: any table of moments of inertia
        let wheel = match leg.view {
            View::Front => {
                let (radius, width) = (0.5 * leg.wheel.tire.diameter, leg.wheel.tire.width);
                leg.wheel.mass * (3.0 * radius * radius + width * width) / 12.0
            }
            View::Side => 0.0,
        };
        Self { body, basis, wheel }
    }

    /// Twice the kinetic energy at the rates of the pose, at which these points move [kg·m2 per unit of
    /// their parameter squared].
    pub(super) fn twice_energy(&self, leg: &Leg, pose: &Pose, at: &Velocities) -> f64 {
        let turn = pose.rates.swing * pose.rates.swing;
        let links = match &leg.brace {
            Brace::Folding(brace) => {
                bar_energy(brace.upper.mass.max(LEAST_LINK), Vector::zeros(), at.knee)
                    + bar_energy(brace.lower.mass.max(LEAST_LINK), at.knee, at.brace_attach)
            }
            Brace::Sliding(brace) => bar_energy(brace.mass, Vector::zeros(), at.brace_attach),
            Brace::None => 0.0,
        };
        leg.body.mass * at.centre.norm_squared()
            + leg.wheel.mass * at.axle.norm_squared()
            + (self.body + self.wheel) * turn
            + links
            + bar_energy(leg.actuator.mass, Vector::zeros(), at.actuator_attach)
    }

    /// Forces with which all parts resist one unit of acceleration of the common parameter, its
    /// speed being none (N).
    pub(crate) fn against_acceleration(&self, leg: &Leg, linkage: &Linkage, pose: &Pose) -> Loads {
        let changes = Spins::from(&pose.rates);
        self.resistance(leg, linkage, pose, [Spins::default(), changes])
    }

    /// Forces with which all parts resist at one unit of speed of the common parameter, its
    /// acceleration being none; they go with the square of the speed (N).
    pub(crate) fn against_speed(&self, leg: &Leg, linkage: &Linkage, pose: &Pose) -> Loads {
        let spins = Spins::from(&pose.rates);
        self.resistance(leg, linkage, pose, [spins, linkage.bends(pose)])
    }

    /// Forces of inertia at these spins and their changes. Links, telescopic brace and actuator are
    /// uniform bars from pin to pin; what such a bar resists is handed to its pins as by [`bar`].
    fn resistance(
        &self,
        leg: &Leg,
        linkage: &Linkage,
        pose: &Pose,
        [spins, changes]: [Spins; 2],
    ) -> Loads {
        let trunnion = linkage.trunnion();
        // acceleration of the tip of an arm that turns
        let turning =
            |arm: Vector, spin: f64, change: f64| quarter(arm) * change - arm * spin * spin;
        let with_leg = |at: Point| turning(at - trunnion, spins.swing, changes.swing);
        let along = pose.turn(linkage.slide_direction());
        let centre = trunnion + pose.turn(leg.body.centre - trunnion);
        let axle = with_leg(pose.axle)
            + along * changes.slide
            + quarter(along) * (2.0 * spins.swing * spins.slide);
        let still = Vector::zeros();
        let mut loads = Loads {
            body: (centre, with_leg(centre) * -leg.body.mass),
            wheel: (pose.axle, axle * -leg.wheel.mass),
            ..Loads::default()
        };
        loads.springs.leg.moment = -(self.body + self.wheel) * changes.swing;
        let mut driven = with_leg(pose.actuator_attach);
        match (&leg.brace, pose.knee, pose.brace_attach) {
            (Brace::Folding(brace), Some(knee), Some(attach)) => {
                let pivot = brace.airframe_pivot;
                let with_upper = |at: Point| turning(at - pivot, spins.upper, changes.upper);
                let at_knee = with_upper(knee);
                loads.upper = bar(brace.upper.mass.max(LEAST_LINK), still, at_knee);
                loads.lower = bar(brace.lower.mass.max(LEAST_LINK), at_knee, with_leg(attach));
                let attach = pose.actuator_attach;
                driven = match leg.actuator.attach_to {
                    AttachTo::Leg => driven,
                    AttachTo::UpperLink => with_upper(attach),
                    AttachTo::LowerLink => {
                        at_knee + turning(attach - knee, spins.lower, changes.lower)
                    }
                };
            }
            (Brace::Sliding(brace), _, Some(attach)) => {
                loads.upper = bar(brace.mass, still, with_leg(attach));
            }
            _ => {}
        }
        loads.actuator = bar(leg.actuator.mass, still, driven);
        loads
    }
}

/// What a uniform bar resists with, at its two ends, from their accelerations: −m/6·(2a + b) and
/// −m/6·(a + 2b), the same force and moment as all its mass with the acceleration going in a straight
/// line from end to end (consistent mass of a bar, any text on finite elements).
fn bar(mass: f64, a: Vector, b: Vector) -> [Vector; 2] {
    let share = -mass / 6.0;
    [(a * 2.0 + b) * share, (a + b * 2.0) * share]
}

/// Twice the kinetic energy of such a bar by the velocities of its two ends.
fn bar_energy(mass: f64, a: Vector, b: Vector) -> f64 {
    mass / 3.0 * (a.norm_squared() + a.dot(&b) + b.norm_squared())
}

/// Velocities of the points of a leg that carry mass or air loads, at the rates of a pose (m); none at
/// points that it does not have.
#[derive(Clone, Copy, Debug)]
pub(super) struct Velocities {
    pub(super) centre: Vector,
    pub(super) axle: Vector,
    /// Halfway between trunnion and axle, what shortens the strut left out.
    pub(super) leg_air: Vector,
    pub(super) knee: Vector,
    pub(super) brace_attach: Vector,
    pub(super) actuator_attach: Vector,
}

impl Velocities {
    pub(super) fn at(leg: &Leg, linkage: &Linkage, pose: &Pose) -> Self {
        let (rates, trunnion) = (&pose.rates, linkage.trunnion());
        let turning = |arm: Vector| quarter(arm) * rates.swing;
        let axle = turning(pose.axle - trunnion);
        let along = pose.turn(linkage.slide_direction());
        let knee = match (&leg.brace, pose.knee) {
            (Brace::Folding(brace), Some(at)) => quarter(at - brace.airframe_pivot) * rates.upper,
            _ => Vector::zeros(),
        };
        let attach = pose.brace_attach.map(|attach| turning(attach - trunnion));
        Self {
            centre: turning(pose.turn(leg.body.centre - trunnion)),
            axle: axle + along * rates.slide,
            leg_air: axle * 0.5,
            knee,
            brace_attach: attach.unwrap_or_default(),
            actuator_attach: attach_velocity(leg, linkage, pose),
        }
    }
}

/// Radius of gyration squared of a uniform plate about its centroid (m2); `None` without an area.
///
/// Sums over the edges' triangles from the origin, any text on section properties.
fn plate_radius_squared(outline: &[Point]) -> Option<f64> {
    let origin = *outline.first()?;
    let (mut area2, mut first, mut second) = (0.0, Vector::zeros(), 0.0);
    for (a, b) in outline.iter().zip(outline.iter().cycle().skip(1)) {
        let (a, b) = (a - origin, b - origin);
        let cross = a.perp(&b);
        area2 += cross;
        first += (a + b) * cross;
        second += cross * (a.norm_squared() + a.dot(&b) + b.norm_squared());
    }
    if area2 == 0.0 {
        return None;
    }
    // area = area2/2, centroid = first/(3·area2), polar second moment about the origin = second/12
    let centroid = first / (3.0 * area2);
    let radius2 = second / (6.0 * area2) - centroid.norm_squared();
    (radius2 > 0.0).then_some(radius2)
}
