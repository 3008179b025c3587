//! Lengths and fixed points that the outlines of a leg move by.
use crate::kinematics::Pose;
use crate::model::{AttachTo, BodyEnd, Brace, Leg, Point, Vector};

/// Lengths and fixed points of one leg.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rig {
    pub(crate) trunnion: Point,
    /// Direction in which shortening moves the axle at gear down (ratio).
    pub(crate) slide: Vector,
    /// Airframe pivot B0 of the brace; the trunnion when there is none, and then unused.
    pub(crate) pivot: Point,
    /// Knee at gear down.
    pub(crate) knee: Point,
    /// B1 at gear down; the trunnion when there is no brace, and then unused.
    pub(crate) brace_attach: Point,
    pub(crate) upper_length: f64,
    pub(crate) lower_length: f64,
    pub(crate) mount: Point,
    pub(crate) attach: Point,
    pub(crate) attach_to: AttachTo,
    /// A1 along and left of the link that carries it, in shares of the link's length (ratio).
    attach_share: Vector,
    /// Where the arm that carries A1 leaves its link, in shares of the link from its first end;
    /// absent where A1 stands on the link's line or on the leg (ratio).
    pub(crate) arm_foot: Option<f64>,
    pub(crate) body_length: f64,
    pub(crate) body_at: BodyEnd,
}

impl Rig {
    /// Takes the lengths of `leg`.
    pub(crate) fn new(leg: &Leg) -> Self {
        let (pivot, knee, leg_attach) = match &leg.brace {
            Brace::None => (leg.trunnion, leg.trunnion, leg.trunnion),
            Brace::Folding(b) => (b.airframe_pivot, b.knee, b.leg_attach),
            Brace::Sliding(b) => (b.airframe_pivot, b.airframe_pivot, b.leg_attach),
        };
        let attach_to = if matches!(leg.brace, Brace::Folding(_)) {
            leg.actuator.attach_to
        } else {
            AttachTo::Leg
        };
        let arm_foot = match attach_to {
            AttachTo::Leg => None,
            AttachTo::UpperLink => foot_of_arm(pivot, knee, leg.actuator.attach),
            AttachTo::LowerLink => foot_of_arm(knee, leg_attach, leg.actuator.attach),
        };
        let (from, to) = match attach_to {
            AttachTo::UpperLink => (pivot, knee),
            _ => (knee, leg_attach),
        };
        let (link, arm) = (to - from, leg.actuator.attach - from);
        let square = link.norm_squared();
        Self {
            trunnion: leg.trunnion,
            slide: (leg.strut.axis_top - leg.strut.axis_bottom)
                .try_normalize(0.0)
                .unwrap_or_else(Vector::y),
            pivot,
            knee,
            brace_attach: leg_attach,
            upper_length: (knee - pivot).norm(),
            lower_length: (leg_attach - knee).norm(),
            mount: leg.actuator.mount,
            attach: leg.actuator.attach,
            attach_to,
            arm_foot,
            attach_share: if square > 0.0 {
                Vector::new(link.dot(&arm) / square, link.perp(&arm) / square)
            } else {
                Vector::zeros()
            },
            body_length: leg.actuator.body_length,
            body_at: leg.actuator.body_at,
        }
    }

    /// End of the actuator body away from its own pin.
    pub(crate) fn gland(&self, pose: &Pose) -> Point {
        let line = pose.actuator_attach - self.mount;
        let along = line.try_normalize(0.0).unwrap_or_else(Vector::zeros);
        let body = self.body_length.min(line.norm());
        match self.body_at {
            BodyEnd::Airframe => self.mount + along * body,
            BodyEnd::Moving => pose.actuator_attach - along * body,
        }
    }

    /// How far a point that turns with the leg at `reach` from the trunnion strays from the
    /// straight line between its places in `a` and `b`, run at even swing, at most (m).
    ///
    /// |p″| ≤ reach + 2|dc/dφ| for a shortening c that goes straight with φ; a curve strays from
    /// its chord by at most |p″| Δφ²/8.
    pub(crate) fn stray_leg(a: &Pose, b: &Pose, reach: f64, slides: bool) -> f64 {
        let turn = (b.place.swing - a.place.swing).abs();
        let slide = if slides {
            (b.shortening - a.shortening).abs()
        } else {
            0.0
        };
        0.125 * turn * turn * reach + 0.25 * turn * slide
    }

    /// The same for both ends of the lower link, at one common parameter (m).
    ///
    /// Knee and B1 run on circles, each within its sagitta of its chord. Say the knee is λ of its
    /// chord and B1 is μ of its own. The link's length L is the same throughout, which holds μ − λ
    /// to second order: with u = B1 − K at `a`, ΔK, ΔB the chords, Δu = ΔB − ΔK and s the sum of
    /// the sagittas, |u + μΔB − λΔK|² is within 2Ls + s² of L², and |u + Δu|² = L², so that
    /// (μ−λ)·(2u·ΔK + 2μ Δu·ΔK + (μ−λ)|ΔK|²) = μ(1−μ)|Δu|² + rest, |rest| ≤ 2Ls + s².
    /// The same holds with the two ends exchanged. The end with the shorter chord is moved to the
    /// other's parameter.
    pub(crate) fn stray_lower(&self, a: &Pose, b: &Pose) -> f64 {
        let (Some(ka), Some(kb), Some(ba), Some(bb)) =
            (a.knee, b.knee, a.brace_attach, b.brace_attach)
        else {
            return f64::INFINITY;
        };
        let (dk, db) = (kb - ka, bb - ba);
        let sagittas =
            sagitta(self.upper_length, dk.norm()) + sagitta((ba - self.trunnion).norm(), db.norm());
        Self::stray_link(ba - ka, self.lower_length, (dk, db), sagittas)
    }

    /// The same for a link of `length` whose ends run on circles by two chords, from its vector at
    /// `a` and the sum of both heights of arc.
    pub(crate) fn stray_link(
        u: Vector,
        length: f64,
        (dk, db): (Vector, Vector),
        sagittas: f64,
    ) -> f64 {
        let du = db - dk;
        let (k, b1, du_len) = (dk.norm(), db.norm(), du.norm());
        let rest = 2.0 * length * sagittas + sagittas * sagittas + 0.25 * du_len * du_len;
        let lag = |chord: Vector, size: f64| {
            let hold = 2.0 * u.dot(&chord).abs() - 2.0 * du_len * size - size * size;
            if hold > rest { rest / hold } else { 1.0 }
        };
        sagittas + lag(dk, k).min(lag(db, b1)) * k.min(b1)
    }

    /// How much of its link's straying A1 takes over, at most (ratio).
    pub(crate) fn carried(&self) -> f64 {
        let share = self.attach_share;
        (1.0 - share.x).abs() + share.x.abs() + 2.0 * share.y.abs()
    }

    /// The same for A1 (m).
    fn stray_attach(&self, a: &Pose, b: &Pose) -> f64 {
        let chord = (b.actuator_attach - a.actuator_attach).norm();
        match self.attach_to {
            AttachTo::Leg => sagitta((self.attach - self.trunnion).norm(), chord),
            AttachTo::UpperLink => sagitta((self.attach - self.pivot).norm(), chord),
            AttachTo::LowerLink => self.carried() * self.stray_lower(a, b),
        }
    }

    /// The same for both ends of the arm that carries A1 (m): its foot lies on the link.
    pub(crate) fn stray_arm(&self, a: &Pose, b: &Pose) -> f64 {
        let attach = self.stray_attach(a, b);
        match self.attach_to {
            AttachTo::UpperLink => attach.max(self.stray_knee(a, b)),
            _ => attach,
        }
    }

    /// The same for both ends of the actuator's body and of its rod, at one common parameter (m).
    ///
    /// With A1 on a straight line at even speed, its direction from A0 turns at W or less per unit
    /// of the parameter, W = chord/least length, and the second derivative of the unit vector is
    /// below 2W²: the gland strays by body·W²/4, and by body/length of A1's own straying.
    pub(crate) fn stray_actuator(&self, a: &Pose, b: &Pose) -> f64 {
        let own = self.stray_attach(a, b);
        let chord = (b.actuator_attach - a.actuator_attach).norm();
        let least = a.actuator_length.min(b.actuator_length) - chord - own;
        if least <= 0.0 {
            return f64::INFINITY;
        }
        let turn = chord / least;
        own + self.body_length * (0.25 * turn * turn + own / least)
    }

    /// The same for B1 (m).
    pub(crate) fn stray_brace_attach(&self, a: &Pose, b: &Pose) -> f64 {
        let (Some(p), Some(q)) = (a.brace_attach, b.brace_attach) else {
            return f64::INFINITY;
        };
        sagitta((p - self.trunnion).norm(), (q - p).norm())
    }

    /// The same for the knee (m).
    pub(crate) fn stray_knee(&self, a: &Pose, b: &Pose) -> f64 {
        let (Some(p), Some(q)) = (a.knee, b.knee) else {
            return f64::INFINITY;
        };
        sagitta(self.upper_length, (q - p).norm())
    }
}

/// Distance from its link below which A1 stands on it (m): a micrometer is no arm.
const ON_LINK: f64 = 1e-6;

/// Where the arm of a link from `a` to `b` leaves it toward `attach`, at the nearest point of the
/// link, in shares of its length; `None` where `attach` stands on the link.
fn foot_of_arm(a: Point, b: Point, attach: Point) -> Option<f64> {
    let link = b - a;
    let square = link.norm_squared();
    let share = if square > 0.0 {
        (link.dot(&(attach - a)) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    ((attach - (a + link * share)).norm() > ON_LINK).then_some(share)
}

/// Height of an arc of up to half a turn over its chord (m); infinite where the chord says that
/// the arc may be more than about 130°.
pub(crate) fn sagitta(radius: f64, chord: f64) -> f64 {
    let half = 0.5 * chord;
    if half > 0.9 * radius {
        return if chord > 0.0 { f64::INFINITY } else { 0.0 };
    }
    radius - ((radius - half) * (radius + half)).sqrt()
}
