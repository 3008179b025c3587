//! The curve of the strip: that of the answer which was pressed, or of the worst one.
use gearswing_gear::model::MovingPart;
use gearswing_report::page::curves as words;
use gearswing_report::page::names::part_words;
use gearswing_solver::result::{
    ClearanceCurve, Finding, FindingDetail, Motion, PairClearance, Question, Station, StationForce,
    TireState,
};

use crate::scene::Role;
use crate::scene::curves::{clearance_series, series};
use crate::scene::drawing::own_leg;
use crate::state::{Good, State};

/// A curve with what it is held against.
pub(super) struct StripCurve {
    /// What it is, in a word or two.
    pub(super) name: String,
    /// Of what it is.
    pub(super) of: String,
    pub(super) role: Role,
    /// Pieces of (progress, SI value).
    pub(super) pieces: Vec<Vec<(f64, f64)>>,
    /// The same on the other way, where that differs.
    pub(super) other_way: Vec<Vec<(f64, f64)>>,
    /// What is required or available [SI].
    pub(super) level: Option<(Role, f64)>,
    /// Highest value shown [SI]; what is above runs along the top.
    pub(super) ceiling: f64,
    /// Below zero is contact.
    pub(super) contact_below_zero: bool,
    /// Between what.
    between: Between,
}

/// Between what a curve is.
#[derive(Clone, Copy, PartialEq)]
enum Between {
    /// An obstacle, and the tire or the other parts.
    Well(usize, Option<TireState>),
    /// The tire and a part of its own leg.
    OwnLeg(MovingPart, TireState),
    /// It is no clearance.
    Nothing,
}

/// Times the requirement, and times the interference, that the strip shows of a clearance (ratio).
const REQUIREMENTS: f64 = 5.0;
const INTERFERENCES: f64 = 4.0;
/// Least clearance that it shows (m).
const LEAST: f64 = 0.01;

/// The answer that the strip follows.
pub(crate) fn followed(state: &State) -> Option<Question> {
    let good = state.derived.good(state.session.leg)?;
    state
        .session
        .strip
        .or_else(|| Some(worst(&good.result.findings)?.question))
}

/// The worst answer of a leg, the first of equals.
pub(crate) fn worst(findings: &[Finding]) -> Option<&Finding> {
    // of equals the last one counts as the largest
    findings
        .iter()
        .rev()
        .max_by_key(|finding| finding.verdict.gravity())
}

/// The curve of an answer; where it has none, that of what drives the leg.
pub(super) fn curve(good: &Good, question: Question, way: Motion) -> StripCurve {
    let own = match question {
        Question::Clears => clearance(good),
        Question::Driven => None,
        Question::Locks => knee(good),
    };
    own.unwrap_or_else(|| pressure(good, way))
}

fn clearance(good: &Good) -> Option<StripCurve> {
    if let Some(own) = own_leg(good).and_then(|own| own_clearance(good, (own.part, own.tire))) {
        return Some(own);
    }
    let clearance = &good.result.clearance;
    let said = good
        .result
        .findings
        .iter()
        .find_map(|finding| match finding.detail {
            FindingDetail::Tightest { pair, .. } => Some(pair),
            _ => None,
        });
    let pair = clearance.pairs.get(said.or(clearance.governing)?)?;
    let found = curve_of(&clearance.curves, pair)?;
    let role = match pair.tire {
        Some(TireState::New) => Role::CurveNew,
        Some(TireState::Grown) => Role::CurveGrown,
        None => Role::CurveParts,
    };
    Some(of_clearance(
        Between::Well(pair.obstacle, pair.tire),
        part_words(pair.part, pair.tire).to_owned(),
        clearance_series(found, role, String::new()).pieces,
        (pair.requirement.clearance, -pair.tightest.clearance),
    ))
}

fn of_clearance(
    between: Between,
    of: String,
    pieces: Vec<Vec<(f64, f64)>>,
    (asked, into): (f64, f64),
) -> StripCurve {
    StripCurve {
        between,
        name: words::CLEARANCE.to_owned(),
        of,
        role: Role::Curve,
        pieces,
        other_way: Vec::new(),
        level: Some((Role::Requirement, asked)),
        ceiling: (REQUIREMENTS * asked).max(INTERFERENCES * into).max(LEAST),
        contact_below_zero: true,
    }
}

/// The tire's clearance to a part of its own leg; `None` where it was not found at every place.
fn own_clearance(good: &Good, (part, tire): (MovingPart, TireState)) -> Option<StripCurve> {
    let mut rows = good.result.clearance.own.iter();
    let row = rows.find(|row| (row.part, row.tire) == (part, tire))?;
    let points = good.own_curve(row)?;
    let points = points.iter().map(|point| (point.progress, point.clearance));
    Some(of_clearance(
        Between::OwnLeg(part, tire),
        words::own_leg(part),
        vec![points.collect()],
        (row.requirement.clearance, -row.tightest.clearance),
    ))
}

/// The curve on which a pair stands.
pub(super) fn curve_of<'a>(
    curves: &'a [ClearanceCurve],
    pair: &PairClearance,
) -> Option<&'a ClearanceCurve> {
    curves
        .iter()
        .find(|curve| curve.obstacle == pair.obstacle && curve.tire == pair.tire)
}

/// The same curve in another state of the leg; `None` where that has none.
pub(super) fn same_curve(
    good: &Good,
    (question, way): (Question, Motion),
    of: &StripCurve,
) -> Option<Vec<Vec<(f64, f64)>>> {
    let (obstacle, tire) = match of.between {
        Between::Well(obstacle, tire) => (obstacle, tire),
        Between::OwnLeg(part, tire) => return Some(own_clearance(good, (part, tire))?.pieces),
        Between::Nothing => {
            let other = curve(good, question, way);
            return (other.name == of.name).then_some(other.pieces);
        }
    };
    let mut curves = good.result.clearance.curves.iter();
    let found = curves.find(|curve| curve.obstacle == obstacle && curve.tire == tire)?;
    Some(clearance_series(found, of.role, String::new()).pieces)
}

/// What the motion of a way needs, and what the other one does.
fn pressure(good: &Good, way: Motion) -> StripCurve {
    let force = &good.result.force;
    let pieces = |get: fn(&StationForce) -> Option<f64>| {
        let value = |station: &Station| get(station.force.as_ref()?);
        series(Role::CurveNeeded, &good.result.stations, value).pieces
    };
    let (up, down) = (
        pieces(|f| f.retract_pressure),
        pieces(|f| f.extend_pressure),
    );
    let (pieces, other_way, available) = match way {
        Motion::Retract => (up, down, force.available_pressure),
        Motion::Extend => (down, up, force.available_extend_pressure),
    };
    StripCurve {
        name: words::needed_short(force.driven_by).to_owned(),
        of: words::motion_line(way).to_owned(),
        role: Role::CurveNeeded,
        pieces,
        other_way,
        level: Some((Role::CurveAvailable, available)),
        ceiling: 1.5 * available,
        contact_below_zero: false,
        between: Between::Nothing,
    }
}

fn knee(good: &Good) -> Option<StripCurve> {
    let line = series(Role::Curve, &good.result.stations, |s| s.fold);
    (!line.pieces.is_empty()).then(|| StripCurve {
        name: words::KNEE.to_owned(),
        of: words::FROM_STRAIGHT.to_owned(),
        role: Role::Curve,
        pieces: line.pieces,
        other_way: Vec::new(),
        level: None,
        ceiling: f64::INFINITY,
        contact_below_zero: false,
        between: Between::Nothing,
    })
}
