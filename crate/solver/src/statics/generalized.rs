//! What drives and what holds a leg along its path, for an equation of motion.
use super::balance::{Balance, Unknown};
use super::friction::{PinLoads, PinSet, Pinned, Warm};
use super::{BodyLoads, Loads};
use crate::kinematics::{Linkage, Pose};
use crate::model::{Brace, Joint, Leg, Vector};
use crate::result::Motion;

/// Generalized force of weights, air loads and springs at a pose [N·m per unit of the common
/// parameter of [`crate::kinematics::Rates`], which rises towards up]: positive drives the leg up.
///
/// Divide by `pose.rates.swing` for the moment about the trunnion, or multiply by the rate of the
/// parameter for the power. Without friction and actuator. `gravity` [N/kg] and `wind` [N/m2] are
/// those of [`super::gravity`] and [`super::wind`].
#[must_use]
pub fn load_force(leg: &Leg, linkage: &Linkage, pose: &Pose, gravity: Vector, wind: Vector) -> f64 {
    Loads::new(leg, linkage, pose, gravity, wind).power(leg, linkage, pose)
}

/// Generalized force of the friction of all pins while the leg moves [N·m per unit of the common
/// parameter], as [`load_force`]: negative while retracting, positive while extending.
///
/// `thrust` [N] is the pin-to-pin thrust of the actuator, positive pushing. What loads and thrust
/// leave over accelerates the leg; it is balanced by couples of the bodies' inertia about their
/// pivots, so that the pins carry what they carry in the motion but for forces of the inertia along
/// the bars. Friction with a thrust that is itself the unknown is in
/// [`super::station_force`].
///
/// # Errors
/// The pin that binds: see [`super::NoForce`].
pub fn pin_friction_force(
    leg: &Leg,
    linkage: &Linkage,
    pose: &Pose,
    loads: &Loads,
    motion: Motion,
    thrust: f64,
) -> Result<f64, Joint> {
    friction_force(
        leg,
        linkage,
        pose,
        loads,
        (motion, thrust),
        (&PinSet::of(leg), None),
    )
}

/// As [`pin_friction_force`], for the pins of a leg worked out before and from the solution at the
/// neighbouring pose.
pub(crate) fn friction_force(
    leg: &Leg,
    linkage: &Linkage,
    pose: &Pose,
    loads: &Loads,
    (motion, thrust): (Motion, f64),
    (set, warm): (&PinSet, Option<&mut Warm>),
) -> Result<f64, Joint> {
    if !set.rub {
        return Ok(0.0);
    }
    let unknown = Unknown::Acceleration(inertia_shares(leg, pose));
    let Some(balance) = Balance::new(leg, linkage, pose, unknown) else {
        // only a leg without any mass has nothing that accelerates
        return Err(Joint::Trunnion);
    };
    let still = balance.solve(loads, &BodyLoads::default(), thrust);
    let pinned = Pinned::new(set, leg, linkage, &balance);
    let rubbed = pinned.rubbing(&PinLoads::of(&still), motion, warm)?;
    Ok(rubbed.power * motion.sign())
}

/// Couples of inertia of leg, upper and lower link at unit acceleration, scaled to 1 together.
fn inertia_shares(leg: &Leg, pose: &Pose) -> [f64; 3] {
    let arm = (leg.body.centre - leg.trunnion).norm_squared();
    let on_leg = leg.body.mass * arm + leg.wheel.mass * (pose.axle - leg.trunnion).norm_squared();
    let (upper, lower) = match &leg.brace {
        Brace::Folding(b) => {
            let at_knee = 0.5 * (b.upper.mass + b.lower.mass);
            let long = (b.knee - b.airframe_pivot).norm_squared();
            let short = (b.leg_attach - b.knee).norm_squared();
            (at_knee * long, b.lower.mass / 12.0 * short)
        }
        Brace::Sliding(_) | Brace::None => (0.0, 0.0),
    };
    // a light floor keeps the balance solvable where heavy parts stand still
    let floor = 1e-6 * (on_leg + upper + lower) + f64::MIN_POSITIVE;
    let shares = [
        (on_leg + floor) * pose.rates.swing,
        (upper + floor) * pose.rates.upper,
        (lower + floor) * pose.rates.lower,
    ];
    let size = shares.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
    if size > 0.0 {
        shares.map(|share| share / size)
    } else {
        [1.0, 0.0, 0.0]
    }
}
