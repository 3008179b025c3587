//! The tire against its own leg, brace and actuator.
//!
//! # What is checked
//! - *Front view.* The wheel is seen edge on. Against the leg and what slides with the axle the tire
//!   is two pieces, above and below the wheel's rim: between them are hub, axle and brake, into which
//!   a strut or fork may reach. A strut that stands through the tire on its way to the axle is
//!   contact. Against brace and actuator it is the whole section, hub included.
//! - *Side view.* Leg, fork and brace stand beside the disc of the wheel; whether they touch cannot
//!   be seen in it. Nothing is checked unless the file asks for it, and then not the sliding part,
//!   which holds the axle.
//! - What passes beside the tire in a front view too (a trailing arm, a brace ahead of it) is left out
//!   by the file.
//!
//! What is not checked is told, with the reason.
//!
//! # How
//! All is seen from the wheel, which then stands still; the tire's outline is a solid, and the parts
//! move (`relative.rs`). The same certificate as for the well holds, to the greater of the accuracy
//! asked for and a hundredth of the clearance.
use crate::kinematics::Pose;
use crate::model::{ClearanceRule, Leg, MovingPart, OwnLeg, Point, Shortening, Vector, View};
use crate::numeric::sort_by;
use crate::result::{
    CurvePoint, NotChecked, OwnClearance, OwnNotChecked, Place, SkewLosses, Tightest, TireState,
};
use crate::tires::{TireSize, own_requirement};

use super::barrier::Barrier;
use super::clearances::ClearanceCase;
use super::pair::{Found, Runner};
use super::part::{Part, other_parts};
use super::path_nodes::PathNodes;
use super::relative::back_from_wheel;
use super::rig::Rig;
use super::signed::signed_clearance;
use super::subdivide::near_nodes;
use super::turning::RadialBarrier;
use super::worst::DEPTH_TOLERANCE;
use crate::result::ClearanceError;

/// The rows of the tire's own leg, and what has none.
#[derive(Default)]
pub(crate) struct Own {
    pub(crate) rows: Vec<OwnClearance>,
    pub(crate) not_checked: Vec<OwnNotChecked>,
}

/// Share of a clearance to which it is certified (ratio).
const SHARE: f64 = 0.01;

/// Searches that are made anew with a share of the gap found, at most.
const MOST_SEARCHES: usize = 4;

/// Gaps closer than this are the same (m): rounding of f64.
const SAME_GAP: f64 = 1e-9;

/// Least half extent of a tire's core (m): with one it is a polygon, and encloses what it stands
/// for.
const LEAST: f64 = 1e-6;

/// Clearances of the tire to the parts of its own leg.
pub(crate) fn own_clearances(
    case: &ClearanceCase,
    rig: &Rig,
    losses: &SkewLosses,
    accuracy: f64,
) -> Result<Own, ClearanceError> {
    let leg = case.leg;
    let mut not_checked = Vec::new();
    let mut parts = Vec::new();
    for outline in [
        (MovingPart::LegBody, leg.body.outline.is_empty()),
        (
            MovingPart::SlidingStrut,
            leg.strut.sliding_outline.is_empty(),
        ),
    ] {
        if let (part, true) = outline {
            let why = skipped(leg, part).unwrap_or(NotChecked::NoOutline);
            not_checked.push(OwnNotChecked { part, why });
        }
    }
    for part in other_parts(leg, rig) {
        match skipped(leg, part.part) {
            Some(why) => not_checked.push(OwnNotChecked {
                part: part.part,
                why,
            }),
            None => parts.push(part.seen_from_wheel()),
        }
    }
    sort_by(&mut not_checked, |a, b| a.part.cmp(&b.part));
    let mut rows = Vec::with_capacity(2 * parts.len());
    if !parts.is_empty() {
        let shortening = &leg.strut.shortening;
        let track = PathNodes::seen_from_leg(case.linkage, *rig, shortening, case.poses)?;
        for part in &parts {
            for (size, tire) in [
                (&case.sizes.new, TireState::New),
                (&case.sizes.grown, TireState::Grown),
            ] {
                let loss = losses.of(tire).to_own_leg;
                let tire_outline = Tire::new(leg, size, part.part, loss);
                match tire_outline.row(&track, part, shortening, case.rule, tire, accuracy) {
                    Ok(row) => rows.push(row),
                    // what is not resolved is told and is no Yes; the well's answers stand without it
                    Err(ClearanceError::OwnUnresolved { part, .. }) => {
                        not_checked.push(OwnNotChecked {
                            part,
                            why: NotChecked::Unresolved,
                        });
                        break;
                    }
                    Err(error) => return Err(error),
                }
            }
        }
    }
    Ok(Own { rows, not_checked })
}

/// Clearance of the tire to the part of its own leg that a row is of, over the path: a point every so many poses, and
/// the row's own among them. Seen at those poses, not certified between them; the row is.
///
/// # Errors
/// A pose at which the tire's depth in the part is not found.
pub(crate) fn own_curve(
    case: &ClearanceCase,
    row: &OwnClearance,
    stride: usize,
) -> Result<Vec<CurvePoint>, ClearanceError> {
    let leg = case.leg;
    let missing = ClearanceError::NothingToCheck { part: row.part };
    let rig = Rig::new(leg);
    let mut parts = other_parts(leg, &rig).into_iter();
    let part = parts.find(|part| part.part == row.part).ok_or(missing)?;
    let part = part.seen_from_wheel();
    let size = match row.tire {
        TireState::New => &case.sizes.new,
        TireState::Grown => &case.sizes.grown,
    };
    let tire = Tire::new(leg, size, row.part, row.less_for_skew);
    let grown = part.grown(tire.radius + tire.loss);
    let shortening = &leg.strut.shortening;
    let track = PathNodes::seen_from_leg(case.linkage, rig, shortening, case.poses)?;
    let runner = Runner::new(&grown, &track, shortening)?;
    let point = |place: Place, clearance| CurvePoint {
        progress: place.progress,
        travel: place.travel,
        clearance,
        beyond: false,
    };
    let at_row = row.tightest.place;
    let mut points = vec![point(at_row, row.tightest.clearance)];
    let last = case.poses.last().filter(|_| stride > 1);
    for pose in case.poses.iter().step_by(stride.max(1)).chain(last) {
        if pose.place.progress == at_row.progress {
            continue;
        }
        let core = runner.core(&track, pose)?;
        let mut least = f64::INFINITY;
        for piece in &tire.pieces {
            let found = signed_clearance(&core, grown.radius, piece);
            let found = found.map_err(|_| unresolved(&grown, pose))?;
            least = least.min(found.ok_or(missing)?.clearance);
        }
        points.push(point(pose.place, least));
    }
    sort_by(&mut points, |a, b| a.progress.total_cmp(&b.progress));
    points.dedup_by(|a, b| a.progress == b.progress);
    Ok(points)
}

/// Why the tire is not checked against a part; `None` where it is.
fn skipped(leg: &Leg, part: MovingPart) -> Option<NotChecked> {
    let of_leg = matches!(part, MovingPart::LegBody | MovingPart::SlidingStrut);
    let side = leg.view == View::Side;
    let wanted = match leg.out_of_plane.own_leg {
        OwnLeg::ByView if side => return Some(NotChecked::BesideWheel),
        OwnLeg::ByView | OwnLeg::All => true,
        OwnLeg::Leg => of_leg,
        OwnLeg::Brace => !of_leg,
        OwnLeg::None => false,
    };
    match (wanted, part) {
        (false, _) => Some(NotChecked::LeftOut),
        (true, MovingPart::SlidingStrut) if side => Some(NotChecked::BesideWheel),
        (true, _) => None,
    }
}

/// A tire as seen from its wheel: solid pieces, grown by a radius.
struct Tire {
    pieces: Vec<Barrier>,
    radius: f64,
    loss: f64,
}

impl Tire {
    fn new(leg: &Leg, size: &TireSize, part: MovingPart, loss: f64) -> Self {
        let axle = leg.strut.axle;
        let piece = |centre: Point, up: Vector, across: Vector| {
            let corners = vec![
                centre - up - across,
                centre - up + across,
                centre + up + across,
                centre + up - across,
            ];
            Barrier::of_points(corners, true)
        };
        if leg.view == View::Side {
            return Self {
                pieces: vec![piece(axle, Vector::y() * LEAST, Vector::x() * LEAST)],
                radius: 0.5 * size.diameter,
                loss,
            };
        }
        let (sin, cos) = leg.wheel.lean.sin_cos();
        let (up, across) = (Vector::new(-sin, cos), Vector::new(cos, sin));
        let of_leg = matches!(part, MovingPart::LegBody | MovingPart::SlidingStrut);
        let rim = leg
            .wheel
            .tire
            .rim_diameter
            .min(size.diameter - 4.0 * LEAST)
            .max(0.0);
        // half height of a piece, and how far its middle is from the axle
        let (half, off) = if of_leg {
            (0.25 * (size.diameter - rim), 0.25 * (size.diameter + rim))
        } else {
            (0.5 * size.diameter, 0.0)
        };
        let most = half.min(0.5 * size.width) - LEAST;
        let radius = size.shoulder_radius.min(most).max(0.0);
        let across = across * (0.5 * size.width - radius);
        let mut centres = vec![axle + up * off];
        if of_leg {
            centres.push(axle - up * off);
        }
        Self {
            pieces: centres
                .into_iter()
                .map(|centre| piece(centre, up * (half - radius), across))
                .collect(),
            radius,
            loss,
        }
    }

    fn row(
        &self,
        track: &PathNodes,
        part: &Part,
        shortening: &Shortening,
        rule: &ClearanceRule,
        tire: TireState,
        accuracy: f64,
    ) -> Result<OwnClearance, ClearanceError> {
        let by_tire = self.radius + self.loss;
        let grown = part.grown(by_tire);
        let runner = Runner::new(&grown, track, shortening)?;
        let nowhere = |error| match error {
            ClearanceError::Unresolved { part, from, to, .. } => {
                ClearanceError::OwnUnresolved { part, from, to }
            }
            other => other,
        };
        let missing = ClearanceError::NothingToCheck { part: part.part };
        let mut worst: Option<(Found, &Barrier)> = None;
        let mut first = None;
        for piece in &self.pieces {
            let near = near_nodes(track, &runner.sweep, piece)?.ok_or(missing)?;
            let to_share = |gap: f64| accuracy.max(SHARE * gap);
            let search = |wanted| {
                runner
                    .clearance(
                        track,
                        piece,
                        &RadialBarrier::default(),
                        Some(&near),
                        (0, wanted),
                    )
                    .map_err(nowhere)?
                    .ok_or(missing)
            };
            let mut wanted = to_share(near.distance - grown.radius);
            let mut found = search(wanted)?;
            // a gap far below the nearest node's is certified to the share of itself; each search comes
            // to within a hundredth of the gap before it, so that a few reach the accuracy
            for _ in 0..MOST_SEARCHES {
                let gap = found.tightest.clearance;
                let share = to_share(gap);
                if gap <= 0.0 || share >= wanted || found.certified_to <= share {
                    break;
                }
                wanted = share;
                found = search(wanted)?;
            }
            if let Some(contact) = found.first_contact {
                let earlier = first.is_none_or(|(known, _): (crate::result::Contact, _)| {
                    contact.place.progress < known.place.progress
                });
                if earlier {
                    first = Some((contact, piece));
                }
            }
            let found = at_start(&runner, track, piece, found)?;
            let clearance = found.tightest.clearance;
            if worst.is_none_or(|(known, _)| clearance < known.tightest.clearance) {
                worst = Some((found, piece));
            }
        }
        let (found, _) = worst.ok_or(missing)?;
        let pose = track.pose(found.tightest.place.progress)?;
        let back = |point: Point| back_from_wheel(&track.rig, &pose, point);
        // both points were found with all of the radius on the part: the tire's share goes back
        let gap = found.tightest.on_obstacle - found.tightest.on_part;
        let way = if gap.norm() > 0.0 {
            gap / found.tightest.clearance
        } else {
            Vector::zeros()
        };
        let shift = way * by_tire;
        let first_contact = match first {
            None => None,
            Some((mut contact, piece)) => {
                let pose = track.pose(contact.place.progress)?;
                let core = runner.core(track, &pose)?;
                let touch = signed_clearance(&core, part.radius, piece)
                    .map_err(|_| unresolved(part, &pose))?;
                let at = touch.ok_or(missing)?.on_part;
                contact.point = back_from_wheel(&track.rig, &pose, at);
                Some(contact)
            }
        };
        Ok(OwnClearance {
            part: part.part,
            tire,
            tightest: Tightest {
                clearance: found.tightest.clearance,
                place: found.tightest.place,
                on_part: back(found.tightest.on_obstacle - shift),
                on_obstacle: back(found.tightest.on_part - shift),
            },
            certified_to: found.certified_to,
            less_for_skew: self.loss,
            requirement: own_requirement(rule, tire),
            first_contact,
        })
    }
}

/// A gap that is as small where the way begins is told there: that of a part that does not move
/// against the wheel is the same everywhere but for rounding.
fn at_start(
    runner: &Runner,
    track: &PathNodes,
    piece: &Barrier,
    found: Found,
) -> Result<Found, ClearanceError> {
    let part = runner.sweep.part;
    let start = track.first()?.pose;
    let signed = signed_clearance(runner.sweep.core(0)?, part.radius, piece)
        .map_err(|_| unresolved(part, &start))?
        .ok_or(ClearanceError::NothingToCheck { part: part.part })?;
    let same = if found.tightest.clearance > 0.0 {
        SAME_GAP
    } else {
        DEPTH_TOLERANCE
    };
    if signed.clearance > found.tightest.clearance + same {
        return Ok(found);
    }
    Ok(Found {
        tightest: Tightest {
            clearance: found.tightest.clearance,
            place: start.place,
            on_part: signed.on_part,
            on_obstacle: signed.on_obstacle,
        },
        ..found
    })
}

/// The depth at one pose was not found.
fn unresolved(part: &Part, pose: &Pose) -> ClearanceError {
    ClearanceError::OwnUnresolved {
        part: part.part,
        from: pose.place.progress,
        to: pose.place.progress,
    }
}
