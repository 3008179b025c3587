//! Where the points of a leg are at the place of the path that is shown, and back.
use gearswing_gear::model::{AttachTo, Brace, Leg, Point, Vector};
use gearswing_solver::kinematics::Pose;
use gearswing_solver::result::Phase;

/// The part that carries a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Carrier {
    /// It stands still.
    Airframe,
    /// It turns with the leg.
    Leg,
    /// It turns with the leg and slides with the axle.
    Axle,
    /// The knee of a folding brace.
    Knee,
    /// The actuator's end on a brace link.
    OnLink,
    /// It turns with the upper link of the brace.
    UpperLink,
    /// It goes with the lower link of the brace.
    LowerLink,
}

impl Carrier {
    /// Its points are set with the gear down: the brace folds by itself.
    pub(crate) fn is_of_brace(self) -> bool {
        matches!(
            self,
            Self::Knee | Self::OnLink | Self::UpperLink | Self::LowerLink
        )
    }
}

/// A bar at gear down and now: a point of it, and the bar as an arrow from there.
#[derive(Clone, Copy, Debug)]
struct Bar {
    at: (Point, Point),
    along: (Vector, Vector),
}

impl Bar {
    fn new(down: [Point; 2], now: [Point; 2]) -> Self {
        let ([a, b], [c, d]) = (down, now);
        Self {
            at: (a, c),
            along: (b - a, d - c),
        }
    }

    /// From now to gear down.
    fn back(&self) -> Self {
        Self {
            at: (self.at.1, self.at.0),
            along: (self.along.1, self.along.0),
        }
    }

    /// Where a point that goes with the bar is now (m).
    fn place(&self, p: Point) -> Point {
        let (down, now) = self.along;
        let square = down.norm_squared();
        if square == 0.0 {
            return p;
        }
        let (cos, sin) = (down.dot(&now) / square, down.perp(&now) / square);
        let arm = p - self.at.0;
        self.at.1 + arm * cos + Vector::new(-arm.y, arm.x) * sin
    }
}

/// A leg at one place of its path.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PosedLeg {
    trunnion: Point,
    slide: Vector,
    pose: Option<Pose>,
    links: Option<[Bar; 2]>,
    start: f64,
}

impl PosedLeg {
    /// `pose` is of `leg`, whose path begins at `start` (ratio); without one the leg stands at down.
    pub(crate) fn new(leg: &Leg, pose: Option<Pose>, start: f64) -> Self {
        let axis = leg.strut.axis_top - leg.strut.axis_bottom;
        let length = axis.norm();
        Self {
            trunnion: leg.trunnion,
            slide: if length > 0.0 {
                axis / length
            } else {
                Vector::new(0.0, 1.0)
            },
            pose,
            links: pose.and_then(|pose| links(leg, &pose)),
            start,
        }
    }

    /// No leg at all.
    pub(crate) fn still() -> Self {
        Self {
            trunnion: Point::new(0.0, 0.0),
            slide: Vector::new(0.0, 1.0),
            pose: None,
            links: None,
            start: 0.0,
        }
    }

    /// The brace stands as it is given.
    pub(crate) fn is_down(&self) -> bool {
        self.pose.is_none_or(|pose| {
            pose.place.phase == Phase::Shorten || pose.place.progress <= self.start
        })
    }

    /// Turned and slid parts are where they are given.
    pub(crate) fn is_unturned(&self) -> bool {
        self.is_down() && self.pose.is_none_or(|pose| pose.shortening == 0.0)
    }

    /// Place of a point that is given at gear down (m).
    pub(crate) fn place(&self, carrier: Carrier, p: Point) -> Point {
        let Some(pose) = &self.pose else { return p };
        match carrier {
            Carrier::Airframe => p,
            Carrier::Leg => self.trunnion + pose.turn(p - self.trunnion),
            Carrier::Axle => {
                self.trunnion + pose.turn(p - self.trunnion + self.slide * pose.shortening)
            }
            Carrier::Knee => pose.knee.unwrap_or(p),
            Carrier::OnLink => pose.actuator_attach,
            // without links the solver takes such a point as one of the leg
            Carrier::UpperLink | Carrier::LowerLink => match self.links {
                Some([upper, _]) if carrier == Carrier::UpperLink => upper.place(p),
                Some([_, lower]) => lower.place(p),
                None => self.trunnion + pose.turn(p - self.trunnion),
            },
        }
    }

    /// Where a point that stands still is on a part that turns, given at gear down (m).
    pub(crate) fn carried(&self, carrier: Carrier, at: Point) -> Point {
        let link = match (carrier, self.links) {
            (Carrier::UpperLink, Some([upper, _])) => upper,
            (Carrier::LowerLink, Some([_, lower])) => lower,
            _ => return self.unplace(Carrier::Leg, at).unwrap_or(at),
        };
        link.back().place(at)
    }

    /// The point at gear down of a place (m); for a point of the brace only at gear down.
    pub(crate) fn unplace(&self, carrier: Carrier, at: Point) -> Option<Point> {
        let Some(pose) = &self.pose else {
            return Some(at);
        };
        match carrier {
            Carrier::Airframe => Some(at),
            Carrier::Leg => Some(self.trunnion + pose.turn_back(at - self.trunnion)),
            Carrier::Axle => Some(
                self.trunnion + pose.turn_back(at - self.trunnion) - self.slide * pose.shortening,
            ),
            Carrier::Knee | Carrier::OnLink | Carrier::UpperLink | Carrier::LowerLink => {
                self.is_down().then_some(at)
            }
        }
    }

    /// An arrow on the screen in the axes in which the point is given.
    pub(crate) fn turn_back(&self, carrier: Carrier, arrow: Vector) -> Vector {
        match (carrier, &self.pose) {
            (Carrier::Leg | Carrier::Axle, Some(pose)) => pose.turn_back(arrow),
            _ => arrow,
        }
    }
}

/// The links of a folding brace, upper and lower.
fn links(leg: &Leg, pose: &Pose) -> Option<[Bar; 2]> {
    let Brace::Folding(brace) = &leg.brace else {
        return None;
    };
    let (pivot, knee, attach) = (brace.airframe_pivot, pose.knee?, pose.brace_attach?);
    Some([
        Bar::new([pivot, brace.knee], [pivot, knee]),
        Bar::new([brace.knee, brace.leg_attach], [knee, attach]),
    ])
}

/// What carries the actuator's moving end.
pub(crate) fn attach_carrier(leg: &Leg) -> Carrier {
    match leg.actuator.attach_to {
        AttachTo::Leg => Carrier::Leg,
        AttachTo::UpperLink | AttachTo::LowerLink => Carrier::OnLink,
    }
}
