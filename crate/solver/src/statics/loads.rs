//! Weights and air loads in the plane of the leg.
use super::gathered::Amounts;
use super::{BodyLoads, spring_loads};
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{AttachTo, Brace, Conditions, Leg, Point, Vector, View};

/// Standard acceleration of free fall (m/s2) (3rd General Conference on Weights and Measures, 1901).
pub const STANDARD_GRAVITY: f64 = 9.80665;

/// Weight of one kilogram times the load factor, in the plane of the view (N/kg).
///
/// Body axes turned by pitch and bank: aft g·sin θ, left wing −g·cos θ·sin φ, up −g·cos θ·cos φ.
/// Source: weight components in body axes, any flight mechanics text.
#[must_use]
pub fn gravity(view: View, conditions: &Conditions) -> Vector {
    let weight = conditions.load_factor * STANDARD_GRAVITY;
    let (sin_pitch, cos_pitch) = conditions.pitch.sin_cos();
    let (sin_bank, cos_bank) = conditions.bank.sin_cos();
    let x = match view {
        View::Side => sin_pitch,
        View::Front => -cos_pitch * sin_bank,
    };
    Vector::new(x, -cos_pitch * cos_bank) * weight
}

/// Dynamic pressure ½ρV² (Pa) (NACA symbol table).
#[must_use]
pub fn dynamic_pressure(conditions: &Conditions) -> f64 {
    0.5 * conditions.air_density * conditions.airspeed * conditions.airspeed
}

/// Air load on one square meter of drag area, in the plane of the view (N/m2).
///
/// Side view: the wind blows aft. Front view: only its sideslip component lies in the plane.
#[must_use]
pub fn wind(view: View, conditions: &Conditions) -> Vector {
    let share = match view {
        View::Side => conditions.sideslip.cos(),
        View::Front => conditions.sideslip.sin(),
    };
    Vector::new(dynamic_pressure(conditions) * share, 0.0)
}

/// Both of these: weight (N/kg) and air load (N/m2) in the plane of the view.
#[must_use]
pub fn weight_and_wind(view: View, conditions: &Conditions) -> [Vector; 2] {
    [gravity(view, conditions), wind(view, conditions)]
}

/// Outside loads at one pose (N), each on the part that carries it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Loads {
    /// Weight of the leg body at its center.
    pub body: (Point, Vector),
    /// Weight and air load of the wheel at the axle.
    pub wheel: (Point, Vector),
    /// Air load of the leg, halfway between trunnion and axle.
    pub leg_air: (Point, Vector),
    /// Loads of the upper link at B0 and at the knee, or of a telescopic brace at B0 and at B1.
    pub upper: [Vector; 2],
    /// Loads of the lower link at the knee and at B1.
    pub lower: [Vector; 2],
    /// Loads of the actuator at its mount and at its attach point.
    pub actuator: [Vector; 2],
    /// Springs.
    pub springs: BodyLoads,
}

impl Loads {
    /// Loads at a pose: weights under `gravity` (N/kg), air loads under `wind` (N/m2), springs.
    #[must_use]
    pub fn new(leg: &Leg, linkage: &Linkage, pose: &Pose, gravity: Vector, wind: Vector) -> Self {
        let springs = spring_loads(leg, linkage, pose);
        Self::with_springs(leg, linkage, pose, [gravity, wind], springs)
    }

    /// As [`Self::new`], for springs worked out before.
    pub(crate) fn with_springs(
        leg: &Leg,
        linkage: &Linkage,
        pose: &Pose,
        [gravity, wind]: [Vector; 2],
        springs: BodyLoads,
    ) -> Self {
        let trunnion = linkage.trunnion();
        let centre = trunnion + pose.turn(leg.body.centre - trunnion);
        let masses = Amounts::masses(leg);
        // half the weight of a bar at each of its pins
        let halves = |mass: f64| [gravity * (0.5 * mass); 2];
        Self {
            body: (centre, gravity * masses.body),
            wheel: (
                pose.axle,
                gravity * masses.wheel + wind * leg.air.wheel_drag_area,
            ),
            leg_air: (
                nalgebra::center(&trunnion, &pose.axle),
                wind * leg.air.leg_drag_area,
            ),
            upper: halves(masses.upper),
            lower: halves(masses.lower),
            actuator: halves(masses.actuator),
            springs,
        }
    }

    /// Power of all loads at the rates of the pose [N·m per unit of the common parameter].
    #[must_use]
    pub fn power(&self, leg: &Leg, linkage: &Linkage, pose: &Pose) -> f64 {
        let rates = &pose.rates;
        let trunnion = linkage.trunnion();
        let turning =
            |(point, force): (Point, Vector)| rates.swing * (point - trunnion).perp(&force);
        let slide = pose.turn(linkage.slide_direction()).dot(&self.wheel.1) * rates.slide;
        let mut power = turning(self.body) + turning(self.wheel) + slide + turning(self.leg_air);
        match &leg.brace {
            Brace::None => {}
            Brace::Sliding(_) => {
                if let Some(attach) = pose.brace_attach {
                    power += turning((attach, self.upper[1]));
                }
            }
            Brace::Folding(brace) => {
                if let (Some(knee), Some(attach)) = (pose.knee, pose.brace_attach) {
                    let knee_velocity = quarter(knee - brace.airframe_pivot) * rates.upper;
                    power += knee_velocity.dot(&(self.upper[1] + self.lower[0]));
                    power += turning((attach, self.lower[1]));
                }
            }
        }
        power
            + self.actuator[1].dot(&attach_velocity(leg, linkage, pose))
            + self.springs.power(leg, linkage, pose)
    }
}

/// Velocity of the actuator's attach point A1 at the rates of the pose.
pub(crate) fn attach_velocity(leg: &Leg, linkage: &Linkage, pose: &Pose) -> Vector {
    let rates = &pose.rates;
    match (leg.actuator.attach_to, &leg.brace, pose.knee) {
        (AttachTo::UpperLink, Brace::Folding(brace), _) => {
            quarter(pose.actuator_attach - brace.airframe_pivot) * rates.upper
        }
        (AttachTo::LowerLink, Brace::Folding(brace), Some(knee)) => {
            quarter(knee - brace.airframe_pivot) * rates.upper
                + quarter(pose.actuator_attach - knee) * rates.lower
        }
        _ => quarter(pose.actuator_attach - linkage.trunnion()) * rates.swing,
    }
}

/// Rate of turn of a bar from a fixed pin when its other end moves so (rad).
pub(super) fn cross_rate(bar: Vector, velocity: Vector) -> f64 {
    bar.perp(&velocity) / bar.norm_squared()
}
