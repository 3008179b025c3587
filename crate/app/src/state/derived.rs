//! Results for the document, worked out leg by leg when something that they rest on has changed: a
//! part is one leg, so that a large gear does not hold up the page.
use gearswing_gear::model::{Gear, Leg, MovingPart};
use gearswing_solver::faults::{Fault, Faults, check_stop};
use gearswing_solver::kinematics::{Linkage, Pose};
use gearswing_solver::result::{CurvePoint, LegResult, OwnClearance, TireState};
use gearswing_solver::{Options, PreparedGear, PreparedLeg, solve_prepared};
use std::cell::OnceCell;
use std::sync::Arc;

/// Everything that the result of a leg rests on.
#[derive(Clone, Debug)]
struct Input {
    leg: Leg,
    /// All legs, where it rests on others too.
    beside: Vec<Leg>,
    /// The gear without legs and texts.
    rest: Gear,
    /// Its number, which stands in the paths of faults.
    index: usize,
}

impl Input {
    fn new(gear: &Gear, index: usize, leg: &Leg) -> Self {
        Self {
            leg: leg.clone(),
            beside: Self::beside(gear, index).to_vec(),
            rest: gear.without_legs(),
            index,
        }
    }

    fn beside(gear: &Gear, index: usize) -> &[Leg] {
        if gear.rests_on_others(index) {
            &gear.legs
        } else {
            &[]
        }
    }

    /// Whether this is what the leg rests on now; `rest` is the gear without legs and texts.
    fn is_of(&self, gear: &Gear, rest: &Gear, index: usize, leg: &Leg) -> bool {
        self.index == index
            && self.leg == *leg
            && self.rest == *rest
            && self.beside == Self::beside(gear, index)
    }
}

/// A result and the leg that has it.
#[derive(Clone, Debug)]
pub(crate) struct Good {
    pub(crate) leg: Leg,
    swept: Arc<PreparedLeg>,
    pub(crate) result: LegResult,
    /// The clearance to a part of the own leg over the path, once it was asked for: it is shown in every frame.
    own_curve: OnceCell<OwnCurve>,
}

/// A row of a leg's own clearances, by part and tire, and its curve.
type OwnCurve = ((MovingPart, TireState), Option<Arc<[CurvePoint]>>);

impl Good {
    /// The leg made ready.
    pub(crate) fn linkage(&self) -> &Linkage {
        self.swept.linkage()
    }

    /// The pose at a place of the path, held within where the leg can go.
    pub(crate) fn pose(&self, progress: f64) -> Option<Pose> {
        let (first, last) = self.range();
        self.linkage().pose(progress.clamp(first, last)).ok()
    }

    /// Clearance of the tire to a part of its own leg over the path; `None` where it is not found at every place.
    pub(crate) fn own_curve(&self, row: &OwnClearance) -> Option<Arc<[CurvePoint]>> {
        let of = (row.part, row.tire);
        let find = || self.swept.own_curve(row).ok().map(Arc::from);
        let (known, curve) = self.own_curve.get_or_init(|| (of, find()));
        match *known == of {
            true => curve.clone(),
            false => find(),
        }
    }

    /// Progress of the first and the last place that the leg can reach.
    pub(crate) fn range(&self) -> (f64, f64) {
        let first = self.linkage().path().start();
        let last = self.result.stations.last().map_or(first, |s| s.progress);
        (first, last.max(first))
    }
}

/// Results of one leg.
#[derive(Clone, Debug)]
pub(crate) struct LegDerived {
    input: Input,
    /// What is wrong with the leg as it is now.
    pub(crate) faults: Vec<Fault>,
    /// What is wrong with what was seen of it on the jacks; no other answer rests on that.
    pub(crate) stop_faults: Vec<Fault>,
    /// The result, of an earlier state while there are faults.
    pub(crate) good: Option<Good>,
    /// Something that the result rests on has changed since.
    outdated: bool,
}

impl LegDerived {
    /// The result is of an earlier state.
    pub(crate) fn faded(&self) -> bool {
        self.outdated || !self.faults.is_empty()
    }

    /// The result, where it is not of an earlier state.
    pub(crate) fn current(&self) -> Option<&Good> {
        self.good.as_ref().filter(|_| !self.faded())
    }
}

/// Results of all legs.
#[derive(Clone, Debug, Default)]
pub(crate) struct Derived {
    /// Revision of the document that they are of; 0 = none yet.
    pub(crate) revision: u64,
    pub(crate) legs: Vec<LegDerived>,
    /// Revision that the results were held against.
    against: u64,
    /// The legs of that revision made ready.
    prepared: Option<PreparedGear<'static>>,
}

impl Derived {
    /// Works out one leg that has changed; false = there was none left.
    pub(crate) fn settle_part(&mut self, gear: &Gear, revision: u64) -> bool {
        if self.against != revision {
            self.prepared = Some(match &self.prepared {
                Some(before) => PreparedGear::after(gear.clone(), before),
                None => gear.clone().into(),
            });
            self.against = revision;
            self.legs.truncate(gear.legs.len());
            let rest = gear.without_legs();
            for (index, (known, leg)) in self.legs.iter_mut().zip(&gear.legs).enumerate() {
                known.outdated = !known.input.is_of(gear, &rest, index, leg);
            }
        }
        let next = gear.legs.iter().enumerate().find(|(index, _)| {
            let known = self.legs.get(*index);
            known.is_none_or(|known| known.outdated)
        });
        let Some((index, leg)) = next else {
            self.revision = revision;
            return false;
        };
        let Some(prepared) = &self.prepared else {
            return false;
        };
        match self.legs.get_mut(index) {
            Some(known) => {
                let good = known.good.take();
                *known = solve(prepared, Input::new(gear, index, leg), good);
            }
            None => {
                let input = Input::new(gear, index, leg);
                self.legs.push(solve(prepared, input, None));
            }
        }
        true
    }

    /// How many legs are still to be worked out.
    pub(crate) fn left(&self, gear: &Gear) -> usize {
        let known = self.legs.iter().filter(|leg| !leg.outdated).count();
        gear.legs.len().saturating_sub(known)
    }

    /// Everything that is wrong, of the legs and of what was seen of them.
    pub(crate) fn all_faults(&self) -> impl Iterator<Item = &Fault> {
        let legs = self.legs.iter();
        legs.flat_map(|leg| leg.faults.iter().chain(&leg.stop_faults))
    }

    /// Results of a leg.
    pub(crate) fn leg(&self, index: usize) -> Option<&LegDerived> {
        self.legs.get(index)
    }

    /// The last good result of a leg.
    pub(crate) fn good(&self, index: usize) -> Option<&Good> {
        self.legs.get(index)?.good.as_ref()
    }
}

fn solve(prepared: &PreparedGear<'_>, input: Input, good_before: Option<Good>) -> LegDerived {
    let Input { index, ref leg, .. } = input;
    let (faults, good) = match solved(prepared, index) {
        Ok((swept, result)) => (
            Vec::new(),
            Some(Good {
                leg: leg.clone(),
                swept,
                result,
                own_curve: OnceCell::new(),
            }),
        ),
        Err(faults) => (faults.0, good_before),
    };
    LegDerived {
        input,
        faults,
        stop_faults: check_stop(prepared.gear(), index)
            .err()
            .map_or_else(Vec::new, |faults| faults.0),
        good,
        outdated: false,
    }
}

fn solved(
    prepared: &PreparedGear<'_>,
    index: usize,
) -> Result<(Arc<PreparedLeg>, LegResult), Faults> {
    let swept = prepared.leg(index)?;
    let result = solve_prepared(prepared, index, &Options::default())?;
    Ok((Arc::clone(swept), result))
}
