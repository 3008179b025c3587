//! What happens next within a time step.
use super::leg::Moving;
use super::run::Going;
use super::state::Step;
use crate::numeric::event_between;
use crate::result::RunEventKind;
use crate::result::SupplyError;

/// Shares of a step at which pressures and currents are looked at, so that a short rise and fall
/// within one step is not stepped over.
const LOOKS: [f64; 4] = [0.25, 0.5, 0.75, 1.0];

/// The next thing that happens within a step.
pub(super) struct Next {
    pub share: f64,
    /// Leg that comes to a place, and the fluid there.
    pub leg: Option<(usize, f64)>,
    /// What the watch has seen.
    pub seen: Option<RunEventKind>,
}

impl Going {
    /// The first event within a step that has been tried, and the largest current before it.
    pub(super) fn next_in(&self, trial: &Step) -> Result<(Option<Next>, Option<f64>), SupplyError> {
        let mut first: Option<Next> = None;
        let sooner =
            |share: f64, first: &Option<Next>| first.as_ref().is_none_or(|next| share < next.share);
        for at in self.moving() {
            let next = self.legs.get(at).and_then(Moving::next_fluid);
            // what is not a number has come nowhere
            let Some(fluid) = next.filter(|fluid| trial.to.get(at).is_some_and(|to| to >= fluid))
            else {
                continue;
            };
            let left = |share: f64| trial.part_at(at, share) - fluid;
            // Already there but for rounding: at once.
            let share = match event_between(left, 0.0, 1.0) {
                Ok(root) => root.x,
                Err(_) if left(0.0) >= 0.0 => 0.0,
                Err(_) => 1.0,
            };
            if sooner(share, &first) {
                first = Some(Next {
                    share,
                    leg: Some((at, fluid)),
                    seen: None,
                });
            }
        }
        let (mut before, mut largest) = (0.0, None);
        for share in LOOKS {
            let there = self.look(&trial.at(share), self.time + share * self.step)?;
            for kind in self.watch.seen(&there) {
                let of = |share: f64| -> f64 {
                    self.look(&trial.at(share), self.time)
                        .map_or(f64::NAN, |look| self.watch.measure(kind, &look))
                };
                let share = event_between(of, before, share).map_or(share, |root| root.last);
                if sooner(share, &first) {
                    first = Some(Next {
                        share,
                        leg: None,
                        seen: Some(kind),
                    });
                }
            }
            if first.as_ref().is_some_and(|next| next.share <= share) {
                break;
            }
            largest = larger(largest, there.current);
            before = share;
        }
        Ok((first, largest))
    }
}

/// The larger of two that may be there.
pub(super) fn larger(most: Option<f64>, value: Option<f64>) -> Option<f64> {
    let both = most.zip(value).map(|(most, value)| most.max(value));
    both.or(most).or(value)
}
