//! All explanations of a stop, weighed and put in order.
use super::StopError;
use super::check::next_check;
use super::fit::{Bound, Crossing, Draft, crossing, weigh};
use super::place::{COVERAGE, Stood, stood};
use super::source::{Held, SourceAtStop};
use super::strut::{strut_long, strut_stays};
use super::way::{Gaps, Row, Way};
use crate::faults::{Fault, Faults, check_stop};
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::{Direction, Gear, Leg, SeenStop};
use crate::numeric::{bracketed_root, sort_by};
use crate::prepared::PreparedGear;
use crate::result::{Explanation, Fit, Motion, StopCause, StopExplained};
use crate::statics::{force_at, weight_and_wind};
use crate::supply::LegStages;

/// Two explanations whose scores differ by this much are told apart (ratio): the worse one has
/// "considerably less" support (K. P. Burnham, D. R. Anderson, Model Selection and Multimodel
/// Inference, 2nd ed. 2002, 2.6, from memory).
const APART: f64 = 4.0;

/// Travel from which the moment of a thrust about the trunnion is told (ratio).
const ARM_FROM: f64 = 0.02;

/// Largest factor on the friction of the pins that is looked for (ratio).
const MOST_PIN_FACTOR: f64 = 10.0;

/// Everything an explanation is made from.
pub(super) struct Case<'a> {
    /// The gear, level on jacks.
    pub gear: &'a Gear,
    pub leg: &'a Leg,
    pub seen: &'a SeenStop,
    pub linkage: &'a Linkage,
    pub stood: Stood,
    pub way: Way,
    pub gaps: Gaps,
    pub head: SourceAtStop,
    pub track: LegStages,
    pub sweep: &'a Sweep,
}

/// What explains the stop of one leg, by its index.
pub type StopAnswer = (usize, Result<StopExplained, StopError>);

/// Weighs everything that may have stopped a leg where the file says it stood.
///
/// # Errors
/// [`StopError`].
pub fn explain_stop(gear: &Gear, leg: usize) -> Result<StopExplained, StopError> {
    explain_prepared(&PreparedGear::of(gear), leg)
}

/// The same for a gear whose legs are made ready once.
///
/// # Errors
/// [`StopError`].
pub fn explain_prepared(
    prepared: &PreparedGear<'_>,
    leg: usize,
) -> Result<StopExplained, StopError> {
    let gear = prepared.gear();
    let checks = [prepared.leg(leg).map(|_| ()), check_stop(gear, leg)];
    let faults: Vec<Fault> = checks
        .into_iter()
        .filter_map(Result::err)
        .flat_map(|faults| faults.0)
        .collect();
    if !faults.is_empty() {
        return Err(StopError::Faults(Faults(faults)));
    }
    let model = gear.legs.get(leg).ok_or(StopError::NothingSeen)?;
    let seen = model.seen_stop.as_ref().ok_or(StopError::NothingSeen)?;
    if !gear.drives_alone(leg) {
        return Err(StopError::SharedDrive);
    }
    let mut on_jacks = gear.on_jacks();
    on_jacks.supply = on_jacks.supply.going(seen.selected);
    let swept = prepared.leg(leg).map_err(StopError::Faults)?;
    let (linkage, sweep) = (swept.linkage(), swept.sweep());
    let stood = stood(model, linkage, sweep, seen)?;
    let track = LegStages::new(&on_jacks, swept, seen.selected, None);
    let way = Way::new(model, linkage, &track, &stood)?;
    let gaps = Gaps::new(model, linkage, &way, &stood)?;
    let case = Case {
        gear: &on_jacks,
        leg: model,
        seen,
        linkage,
        stood,
        head: SourceAtStop::new(&on_jacks, model, &track, seen.pump)?,
        way,
        gaps,
        track,
        sweep,
    };
    let mut weighed: Vec<_> = case
        .drafts()?
        .into_iter()
        .map(|draft| {
            let held = draft.held;
            (weigh(&case, draft), held)
        })
        .collect();
    let is_out = |one: &Explanation| one.fit == Fit::RuledOut;
    sort_by(&mut weighed, |(a, _), (b, _)| {
        a.fit.cmp(&b.fit).then(a.score.total_cmp(&b.score))
    });
    let told_apart = match weighed.as_slice() {
        [(first, _), (second, _), ..] => {
            is_out(second) != is_out(first) || second.score - first.score >= APART
        }
        _ => true,
    };
    let next_check = next_check(&case, &weighed);
    Ok(StopExplained {
        place: case.stood.place,
        travel_within: COVERAGE * case.stood.uncertainty,
        explanations: weighed.into_iter().map(|(one, _)| one).collect(),
        told_apart,
        next_check,
        makes: case.head.demand(case.head.makes),
        rest_voltage: case.head.rest_voltage(),
    })
}

impl Case<'_> {
    pub(super) fn is_up(&self) -> bool {
        self.seen.selected == Direction::Up
    }

    /// Standard uncertainty of distances in the drawing (m).
    pub(super) fn drawing(&self) -> f64 {
        self.seen.drawing_within / COVERAGE
    }

    /// Standard uncertainty of loads (Pa; N with electric actuators).
    pub(super) fn loads(&self) -> f64 {
        (self.seen.forces_within * self.head.most / COVERAGE).hypot(self.head.unsure)
    }

    /// Standard uncertainty of a gauge pressure, reading and model together (Pa).
    pub(super) fn gauge(&self) -> f64 {
        self.loads().hypot(self.seen.pressure_within / COVERAGE)
    }

    /// What should have stopped the leg before it came to a place: contact of any pair but `except`,
    /// and loads beyond the source. Sum of squares.
    pub(super) fn passed(&self, travel: f64, except: Option<usize>) -> f64 {
        self.through(&self.gaps, travel, except) + self.over(travel)
    }

    /// Contact on the way to a place, of any pair but `except`. Square.
    pub(super) fn through(&self, gaps: &Gaps, travel: f64, except: Option<usize>) -> f64 {
        let clear = gaps.least_before(travel, self.is_up(), except);
        ((-clear).max(0.0) / self.drawing()).powi(2)
    }

    /// Loads up to a place that are beyond the source. Square. A leg that swings nowhere comes no further than
    /// its strut brings it: nothing is known of loads beyond, and the way there counts.
    pub(super) fn over(&self, travel: f64) -> f64 {
        if let Some(row) = self.way.nearest(travel) {
            return ((row.hardest - self.head.most).max(0.0) / self.loads()).powi(2);
        }
        let end = self.way.rows.last().map_or(f64::INFINITY, |row| row.travel);
        ((travel - end) / self.stood.uncertainty).powi(2)
    }

    fn drafts(&self) -> Result<Vec<Draft>, StopError> {
        let mut drafts: Vec<Draft> = Vec::new();
        drafts.extend(self.at_its_end());
        drafts.extend(self.touches());
        drafts.extend(strut_long(self)?);
        drafts.extend(strut_stays(self));
        drafts.extend(self.force_short());
        drafts.extend(self.by_load());
        drafts.extend(self.held_there());
        drafts.extend(self.ends());
        drafts.extend(self.switch_early());
        Ok(drafts)
    }

    pub(super) fn draft(&self, cause: StopCause, at: Crossing, squares: f64, held: Held) -> Draft {
        Draft {
            cause,
            asked: at.travel,
            squares: at.squares + squares,
            held,
            fitted: 0,
            bound: None,
        }
    }

    fn force_short(&self) -> Option<Draft> {
        let most = self.head.most;
        let left = self.way.swing().map(|row| (row.travel, most - row.needed));
        let at = crossing(left, &self.stood, self.loads())?;
        if most - at.left <= 0.0 {
            return None;
        }
        let cause = StopCause::ForceShort {
            needed: self.head.demand(most - at.left),
            available: self.head.demand(most),
        };
        let squares = self.through(&self.gaps, at.travel, None);
        Some(self.draft(cause, at, squares, self.head.dead()))
    }

    /// Where one number that lowers what there is to spare all along the way stops the leg: only a
    /// load larger than all before does, and one that the source of the file can carry.
    fn by_record(&self) -> Option<(&Row, f64)> {
        let (loads, most) = (self.loads(), self.head.most);
        let squares = |row: &Row| {
            let off = (row.travel - self.stood.place.travel) / self.stood.uncertainty;
            let below = (row.hardest - row.needed) / loads;
            let over = (row.needed - most).max(0.0) / loads;
            off * off + below * below + over * over
        };
        let row = self
            .way
            .swing()
            .min_by(|a, b| squares(a).total_cmp(&squares(b)))?;
        Some((
            row,
            squares(row) + self.through(&self.gaps, row.travel, None),
        ))
    }

    /// The first place of the swing, where the leg stood there, with the most that it takes to come
    /// beyond it, its strut included. Sum of squares.
    fn never_left(&self) -> Option<(Row, f64)> {
        let first = self.way.swing().next()?;
        let off = (first.travel - self.stood.place.travel) / self.stood.uncertainty;
        let row = Row {
            needed: first.hardest,
            ..first.clone()
        };
        (off.abs() <= COVERAGE).then_some((row, off * off))
    }

    /// Explanations that choose one number of the supply or of friction.
    fn by_load(&self) -> Vec<Draft> {
        // any supply that is weaker still, and any friction that is larger, holds a leg that never left
        let held = self.never_left();
        let never_left = held.is_some();
        let found = held.or_else(|| {
            self.by_record()
                .map(|(row, squares)| (row.clone(), squares))
        });
        let Some((row, squares)) = &found else {
            return Vec::new();
        };
        let (row, squares, head) = (row, *squares, &self.head);
        let draft = |(cause, held)| Draft {
            bound: match &cause {
                _ if !never_left => None,
                StopCause::BatteryLow { .. } | StopCause::BatteryResists { .. } => {
                    Some(Bound::LessVolts)
                }
                StopCause::SourceWeak { .. } | StopCause::BadContact { .. } => {
                    Some(Bound::LessLoad)
                }
                _ => None,
            },
            cause,
            asked: row.travel,
            squares,
            held,
            fitted: 1,
        };
        let mut causes = self.by_supply(row, never_left);
        if row.needed < head.most {
            causes.push((self.friction(row, never_left), head.dead()));
        }
        causes.into_iter().map(draft).collect()
    }

    /// What a weaker supply would have to be that stalls the leg at a row, and what is read then;
    /// nothing where the leg's own weight moves it.
    fn by_supply(&self, row: &Row, or_less: bool) -> Vec<(StopCause, Held)> {
        let (head, needed) = (&self.head, row.needed);
        let mut causes = Vec::new();
        if needed <= 0.0 {
            return causes;
        }
        if let Some(sagged) = head.sagged(needed) {
            if sagged.open_circuit < sagged.file {
                let cause = StopCause::BatteryLow {
                    open_circuit: sagged.open_circuit,
                    or_less,
                    file: sagged.file,
                };
                causes.push((cause, sagged.held));
            }
            if sagged.extra_resistance > 0.0 {
                // within the battery the posts read what they would of a low one
                let cause = StopCause::BatteryResists {
                    extra: sagged.extra_resistance,
                };
                causes.push((cause, sagged.held_within));
                let cause = StopCause::BadContact {
                    extra: sagged.extra_resistance,
                };
                causes.push((cause, sagged.held_behind));
            }
        }
        if needed < head.most {
            let cause = StopCause::SourceWeak {
                gives: head.demand(needed),
                or_less,
                file: head.demand(head.makes),
            };
            causes.push((cause, head.at(needed)));
        }
        if let Some((opens, file)) = head.switch_low(needed) {
            let cause = StopCause::PressureSwitchLow { opens, file };
            causes.push((cause, head.stopped()));
        }
        causes
    }

    fn friction(&self, row: &Row, or_more: bool) -> StopCause {
        let extra_thrust = row.face.thrust(self.head.most - row.needed);
        let pose = self.linkage.pose(row.progress).ok();
        let arm = pose.as_ref().and_then(Pose::moment_arm);
        StopCause::Friction {
            extra_thrust,
            or_more,
            // near the straight knee the leg hardly turns, and an arm says nothing
            extra_moment: arm
                .filter(|_| row.travel > ARM_FROM)
                .map(|arm| extra_thrust * arm.abs()),
            pin_factor: pose.and_then(|pose| self.pin_factor(&pose, row)),
        }
    }

    /// Factor on the friction of all pins at which the load is the most that the source makes.
    fn pin_factor(&self, pose: &Pose, row: &Row) -> Option<f64> {
        if !self.leg.pins.rub() {
            return None;
        }
        let case = weight_and_wind(self.leg.view, &self.gear.conditions);
        let motion = Motion::from(self.seen.selected);
        let thrust = |factor: f64| {
            let mut leg = self.leg.clone();
            for pin in leg.pins.all_mut() {
                *pin = pin.times(factor);
            }
            let force = force_at(&leg, &self.gear.supply, self.linkage, pose, case).ok();
            force.and_then(|force| Some(force.needed(motion)?.1))
        };
        let here = thrust(1.0)?;
        let lacks = row.face.thrust(self.head.most - row.needed);
        // Pins that bind take more than any source makes.
        let over = |factor: f64| thrust(factor).map_or(f64::MAX, |effort| effort - here - lacks);
        bracketed_root(over, 1.0, MOST_PIN_FACTOR, 1e-4)
            .ok()
            .map(|root| root.x)
    }

    fn held_there(&self) -> Option<Draft> {
        let travel = self.stood.place.travel;
        let row = self.way.nearest(travel)?;
        let spare = (self.head.most - row.needed).max(0.0);
        let off = (row.travel - travel) / self.stood.uncertainty;
        Some(Draft {
            cause: StopCause::HeldThere {
                thrust: row.face.thrust(spare),
            },
            asked: row.travel,
            squares: off * off + self.passed(row.travel, None),
            held: self.head.dead(),
            fitted: 2,
            bound: None,
        })
    }
}
