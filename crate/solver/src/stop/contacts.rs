//! Contact as the explanation of a stop, as drawn or by an error of the drawing.
use super::explain::Case;
use super::fit::{Draft, crossing};
use crate::result::StopCause;

/// Sum of squares up to which a contact fits as drawn (ratio), and the most by which a drawing is thought
/// to be off (m).
const FITS: f64 = 4.0;
pub(super) const MOST_OFF: f64 = 0.025;

impl Case<'_> {
    /// The pair whose contact fits best, and where none does the one that is nearest there, if the
    /// drawing is off by so much.
    pub(super) fn touches(&self) -> Vec<Draft> {
        let first = self.touches_as_drawn();
        let near = match &first {
            Some(draft) if draft.squares <= FITS => None,
            _ => self.touches_nearest(),
        };
        first.into_iter().chain(near).collect()
    }

    fn touches_nearest(&self) -> Option<Draft> {
        let travel = self.stood.place.travel;
        let off = |at: &usize| (self.gaps.travels[*at] - travel).abs();
        let at = (0..self.gaps.travels.len()).min_by(|a, b| off(a).total_cmp(&off(b)))?;
        let closing = |curve: &[f64]| at == 0 || curve[at] <= curve[at - 1];
        let (index, clearance) = self
            .gaps
            .clear
            .iter()
            .enumerate()
            .filter(|(_, curve)| closing(curve))
            .map(|(index, curve)| (index, curve[at]))
            .min_by(|a, b| a.1.total_cmp(&b.1))?;
        let pair = self.gaps.pairs.get(index)?;
        (0.0..MOST_OFF).contains(&clearance).then(|| Draft {
            cause: StopCause::Touches {
                obstacle: pair.obstacle,
                part: pair.part,
                tire: pair.tire,
                clearance,
            },
            asked: travel,
            squares: self.passed(travel, Some(index)),
            held: self.head.dead(),
            fitted: 1,
            bound: None,
        })
    }

    fn touches_as_drawn(&self) -> Option<Draft> {
        let opens = |curve: &[f64]| matches!(curve, [first, second, ..] if second > first);
        let best = self
            .gaps
            .clear
            .iter()
            .enumerate()
            .filter_map(|(index, curve)| {
                let opens = opens(curve);
                let curve = self.gaps.travels.iter().copied().zip(curve.iter().copied());
                let at = crossing(curve, &self.stood, self.drawing())?;
                // what only opens from the start stops nothing
                if opens && self.gaps.travels.first() == Some(&at.travel) {
                    return None;
                }
                Some((index, at, self.passed(at.travel, Some(index))))
            })
            .min_by(|a, b| (a.1.squares + a.2).total_cmp(&(b.1.squares + b.2)));
        let (index, at, squares) = best?;
        let pair = self.gaps.pairs.get(index)?;
        let cause = StopCause::Touches {
            obstacle: pair.obstacle,
            part: pair.part,
            tire: pair.tire,
            clearance: at.left,
        };
        Some(self.draft(cause, at, squares, self.head.dead()))
    }
}
