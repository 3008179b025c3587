//! The knee of a folding brace as it is measured: both links from pin to pin, and how far it stands off the line of the
//! brace's ends. The numbers stand for the places of knee and attach point.
use gearswing_gear::field::{Field, NotStored, Path};
use gearswing_gear::model::{Brace, FoldingBrace, Gear, KneeGiven, Vector};

use super::path::{Seg::At, Seg::Key, steps};

/// One of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Measure {
    /// The upper link.
    Upper,
    /// The lower link.
    Lower,
    /// The knee off the line.
    Offset,
}

/// All of them, with the last key of their paths.
pub(crate) const MEASURES: [(Measure, &str); 3] = [
    (Measure::Upper, "upper_length_m"),
    (Measure::Lower, "lower_length_m"),
    (Measure::Offset, "knee_offset_m"),
];

/// Path of one.
pub(crate) fn measure_path(leg: usize, key: &str) -> String {
    format!("legs[{leg}].brace.folding.{key}")
}

/// The leg and the measure that a path names.
pub(super) fn measure_of(path: &str) -> Option<(usize, Measure)> {
    let (leg, key) = match steps(path)?.as_slice() {
        [Key("legs"), At(leg), Key("brace"), Key("folding"), Key(key)] => (*leg, *key),
        _ => return None,
    };
    let (measure, _) = MEASURES.into_iter().find(|(_, known)| *known == key)?;
    Some((leg, measure))
}

/// The knee of a leg is put in as it is measured, not by its place.
pub(crate) fn is_measured(gear: &Gear, leg: usize) -> bool {
    brace(gear, leg).is_some_and(|brace| brace.knee_given == KneeGiven::Measured)
}

fn brace(gear: &Gear, leg: usize) -> Option<&FoldingBrace> {
    match &gear.legs.get(leg)?.brace {
        Brace::Folding(brace) => Some(brace),
        Brace::None | Brace::Sliding(_) => None,
    }
}

/// Stores the value of a field. Where that moves an end of a brace whose knee is put in by its links, the knee goes to
/// where both links close again; where they don't reach, it stays.
///
/// # Errors
/// Those of the store; then nothing has moved.
pub(super) fn keep_links(
    gear: &mut Gear,
    at: Path,
    store: impl FnOnce(&mut Gear) -> Result<(), NotStored>,
) -> Result<(), NotStored> {
    let is_end = matches!(at.field, Field::BracePivot | Field::BraceAttach);
    let before = brace(gear, at.leg).filter(|_| is_end);
    let before = before.map(FoldingBrace::measured);
    store(gear)?;
    if let Some(links) = before {
        close_links(gear, at.leg, links);
    }
    Ok(())
}

fn close_links(gear: &mut Gear, leg: usize, [upper, lower, _]: [f64; 3]) {
    let Some(Brace::Folding(brace)) = gear.legs.get_mut(leg).map(|leg| &mut leg.brace) else {
        return;
    };
    let line = brace.leg_attach - brace.airframe_pivot;
    let length = line.norm();
    if brace.knee_given != KneeGiven::Measured || length <= 0.0 {
        return;
    }
    // law of cosines
    let along = (upper * upper - lower * lower + length * length) / (2.0 * length);
    let off = upper * upper - along * along;
    if off >= 0.0 {
        let direction = line / length;
        let side = line.perp(&(brace.knee - brace.airframe_pivot)).signum();
        let across = Vector::new(-direction.y, direction.x) * side;
        brace.knee = brace.airframe_pivot + direction * along + across * off.sqrt();
    }
}

/// The measure of a leg (m); `None` without a folding brace.
pub(super) fn measure(gear: &Gear, leg: usize, which: Measure) -> Option<f64> {
    let [upper, lower, offset] = brace(gear, leg)?.measured();
    Some(match which {
        Measure::Upper => upper,
        Measure::Lower => lower,
        Measure::Offset => offset,
    })
}

/// Stores a measure (m): the other two stay, the knee stays on its side, and the attach point goes along the line
/// of the brace to where the links close.
///
/// # Errors
/// No finite number, no folding brace, or a knee that would stand off farther than a link is long.
pub(super) fn set_measure(
    gear: &mut Gear,
    leg: usize,
    which: Measure,
    value: f64,
) -> Result<(), NotStored> {
    if !value.is_finite() {
        return Err(NotStored::NotFinite);
    }
    let old = brace(gear, leg).ok_or(NotStored::NoValue)?;
    let [mut upper, mut lower, mut offset] = old.measured();
    match which {
        Measure::Upper => upper = value,
        Measure::Lower => lower = value,
        Measure::Offset => offset = value,
    }
    let pivot = old.airframe_pivot;
    let along = (old.leg_attach - pivot).try_normalize(0.0);
    let along = along.ok_or(NotStored::NoValue)?;
    let side = along.perp(&(old.knee - pivot)).signum();
    let reach = |link: f64| {
        let closes = offset >= 0.0 && link > offset;
        closes.then(|| (link * link - offset * offset).sqrt())
    };
    let (Some(to_knee), Some(to_attach)) = (reach(upper), reach(lower)) else {
        return Err(NotStored::NoValue);
    };
    let across = Vector::new(-along.y, along.x) * side;
    let (knee, attach) = (
        pivot + along * to_knee + across * offset,
        pivot + along * (to_knee + to_attach),
    );
    if let Some(Brace::Folding(brace)) = gear.legs.get_mut(leg).map(|leg| &mut leg.brace) {
        brace.knee = knee;
        brace.leg_attach = attach;
    }
    Ok(())
}
