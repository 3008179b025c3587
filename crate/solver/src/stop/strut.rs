//! A strut that did not shorten all the way, so that something touches.
use super::StopError;
use super::explain::Case;
use super::fit::{Draft, crossing};
use super::way::{Gaps, Pair, clearances};
use crate::kinematics::Linkage;
use crate::model::{Leg, Shortening};
use crate::numeric::bracketed_root;
use crate::result::{StopCause, TireState};
use crate::tires::TireSizes;

/// Steps in which the missing shortening is looked through for the first contact.
const STEPS: u32 = 24;

/// The missing shortening is found to this (m).
const TOLERANCE: f64 = 1e-6;

/// Whether too long a strut explains the stop; `None` where the strut does not shorten before the
/// swing, or where the leg touches with a strut as short as it should be.
pub(super) fn strut_long(case: &Case) -> Result<Option<Draft>, StopError> {
    let Shortening::BeforeSwing { amount } = case.leg.strut.shortening else {
        return Ok(None);
    };
    let progress = case.stood.place.progress;
    let sizes = TireSizes::of(&case.leg.wheel.tire);
    let tightest = |missing: f64| -> Result<Option<(Pair, f64)>, StopError> {
        let leg = longer(case.leg, amount - missing);
        let Ok(pose) = Linkage::new(&leg).pose(progress) else {
            return Ok(None);
        };
        // With the tire as new: whether it has grown yet is not known.
        let all = clearances(&leg, &sizes, &pose)?.into_iter();
        let new = all.filter(|(pair, _)| pair.tire != Some(TireState::Grown));
        Ok(new.min_by(|a, b| a.1.total_cmp(&b.1)))
    };
    if tightest(0.0)?.is_none_or(|(_, clear)| clear <= 0.0) {
        return Ok(None);
    }
    let mut missing = amount;
    let mut below = 0.0;
    for step in 1..=STEPS {
        let at = amount * f64::from(step) / f64::from(STEPS);
        if tightest(at)?.is_some_and(|(_, clear)| clear <= 0.0) {
            let clear = |x: f64| match tightest(x) {
                Ok(Some((_, clear))) => clear,
                _ => f64::NAN,
            };
            missing = bracketed_root(clear, below, at, TOLERANCE).map_or(at, |root| root.last);
            break;
        }
        below = at;
    }
    let Some((pair, _)) = tightest(missing)? else {
        return Ok(None);
    };
    let leg = longer(case.leg, amount - missing);
    let linkage = Linkage::new(&leg);
    let gaps = Gaps::new(&leg, &linkage, &case.way, &case.stood)?;
    let Some(index) = gaps.pairs.iter().position(|known| *known == pair) else {
        return Ok(None);
    };
    let curve = gaps.clear.get(index).into_iter().flatten().copied();
    let curve = gaps.travels.iter().copied().zip(curve);
    let Some(at) = crossing(curve, &case.stood, case.drawing()) else {
        return Ok(None);
    };
    // The clearances with a short strut do not count here.
    let passed = case.through(&gaps, at.travel, Some(index)) + case.over(at.travel);
    Ok(Some(Draft {
        cause: StopCause::StrutLong {
            missing,
            amount,
            obstacle: pair.obstacle,
            part: pair.part,
            tire: pair.tire,
        },
        asked: at.travel,
        squares: at.squares + passed,
        held: case.head.dead(),
        fitted: 1,
        bound: None,
    }))
}

/// Whether the leg waits for its strut: it has not left its lock, and its strut moves first.
pub(super) fn strut_stays(case: &Case) -> Option<Draft> {
    let stage = case.track.stages.first().filter(|stage| stage.is_strut)?;
    let begins = case.way.swing().next()?.travel;
    let off = (case.stood.place.travel - begins) / case.stood.uncertainty;
    Some(Draft {
        cause: StopCause::StrutStays {
            needed: case.head.demand(stage.load.value(0.0)),
        },
        asked: begins,
        squares: off * off,
        held: case.head.dead(),
        fitted: 1,
        bound: None,
    })
}

/// The leg with another shortening before the swing.
fn longer(leg: &Leg, amount: f64) -> Leg {
    let mut leg = leg.clone();
    leg.strut.shortening = Shortening::BeforeSwing { amount };
    leg
}
