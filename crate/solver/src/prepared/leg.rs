//! One leg, swept once.
use std::borrow::Cow;
use std::sync::Arc;

use super::kept::Kept;
use super::rests_on::{clear_alike, fall_alike, move_alike, push_alike};
use crate::clearance::{ClearanceCase, ClearanceError, ClearanceOptions, clearances, own_curve};
use crate::faults::Faults;
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::{ClearanceRule, Conditions, Fluid, Leg, Supply};
use crate::result::{Clearance, CurvePoint, Fall, Force, OwnClearance, Station};
use crate::tires::TireSizes;

/// Stations of the swing over which a leg is swept.
pub(crate) const STATIONS: usize = 721;

/// A checked leg, swept once. What it shares with another is not worked out again.
#[derive(Clone, Debug)]
pub struct PreparedLeg {
    leg: Leg,
    way: Arc<Way>,
    cleared: Arc<Kept<ClearedOf, Result<Clearance, ClearanceError>>>,
    forces: Arc<Kept<ForcesOf, Result<Arc<Forces>, Faults>>>,
    fall: Arc<Kept<FallOf, Option<Fall>>>,
}

/// How a leg moves.
#[derive(Debug)]
struct Way {
    linkage: Linkage,
    sweep: Sweep,
}

/// What clearances are of besides the leg.
type ClearedOf = (ClearanceRule, ClearanceOptions);

/// What forces are of besides the leg.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ForcesOf {
    pub supply: Supply,
    pub conditions: Conditions,
    /// Which leg it is, and all legs, where it is not alone on its source.
    pub beside: Option<(usize, Vec<Leg>)>,
    /// Stations that are shown.
    pub stations: usize,
}

/// Forces over the swing.
#[derive(Debug)]
pub(crate) struct Forces {
    /// At all stations.
    pub whole: Arc<Vec<Station>>,
    /// At those that are shown, where they are others.
    pub shown: Option<Arc<Vec<Station>>>,
    /// What they come to.
    pub result: Force,
}

/// What a fall is of besides the leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct FallOf {
    pub fluid: Fluid,
    pub conditions: Conditions,
    /// Friction with which it must fall yet, over the usual (ratio).
    pub times: f64,
    /// Whether it is driven electrically.
    pub electric: bool,
}

impl PreparedLeg {
    /// Sweeps a checked leg, as it is driven; what it shares with the leg `before` is taken over.
    pub(super) fn new(leg: Leg, before: Option<&Self>) -> Self {
        let Some(known) = before.filter(|before| move_alike(&before.leg, &leg)) else {
            return Self::on(Arc::new(Way::new(&leg, STATIONS)), leg);
        };
        let mut made = Self::on(Arc::clone(&known.way), leg);
        if clear_alike(&known.leg, &made.leg) {
            made.cleared = Arc::clone(&known.cleared);
        }
        if push_alike(&known.leg, &made.leg) {
            made.forces = Arc::clone(&known.forces);
        }
        if fall_alike(&known.leg, &made.leg) {
            made.fall = Arc::clone(&known.fall);
        }
        made
    }

    /// Of which only the way is known.
    fn on(way: Arc<Way>, leg: Leg) -> Self {
        Self {
            leg,
            way,
            cleared: Arc::default(),
            forces: Arc::default(),
            fall: Arc::default(),
        }
    }

    /// The leg, as it is driven: one on the drive of another has that one's bore and rod.
    #[must_use]
    pub fn leg(&self) -> &Leg {
        &self.leg
    }

    /// Its linkage.
    #[must_use]
    pub fn linkage(&self) -> &Linkage {
        &self.way.linkage
    }

    /// Its path, over no fewer than 721 stations of the swing.
    #[must_use]
    pub fn sweep(&self) -> &Sweep {
        &self.way.sweep
    }

    /// The same swept over so many stations, where they are more.
    pub(crate) fn over(&self, stations: usize) -> Cow<'_, Self> {
        match stations > STATIONS {
            true => {
                let way = Arc::new(Way::new(&self.leg, stations));
                Cow::Owned(Self::on(way, self.leg.clone()))
            }
            false => Cow::Borrowed(self),
        }
    }

    /// Poses over fewer stations.
    pub(crate) fn poses(&self, stations: usize) -> Vec<Pose> {
        self.sweep().at_stations(self.linkage(), stations)
    }

    /// Certified clearances.
    ///
    /// # Errors
    /// See [`clearances`].
    pub(crate) fn clearances(
        &self,
        rule: &ClearanceRule,
        options: &ClearanceOptions,
    ) -> Result<Clearance, ClearanceError> {
        let found = self.cleared.of((*rule, *options), || {
            let case = ClearanceCase {
                leg: &self.leg,
                sizes: &TireSizes::of(&self.leg.wheel.tire),
                rule,
                linkage: self.linkage(),
                poses: &self.sweep().poses,
            };
            clearances(&case, options)
        });
        (*found).clone()
    }

    /// Clearance of the tire to a part of its own leg over the path, for a row of [`Clearance::own`].
    ///
    /// # Errors
    /// A pose at which the tire's depth in the part is not found.
    pub fn own_curve(&self, row: &OwnClearance) -> Result<Vec<CurvePoint>, ClearanceError> {
        let case = ClearanceCase {
            leg: &self.leg,
            sizes: &TireSizes::of(&self.leg.wheel.tire),
            rule: &ClearanceRule::default(),
            linkage: self.linkage(),
            poses: &self.sweep().poses,
        };
        own_curve(&case, row, ClearanceOptions::default().curve_stride)
    }

    /// Its forces, as they are known or as `find` works them out.
    ///
    /// # Errors
    /// Those of `find`.
    pub(crate) fn forces(
        &self,
        of: ForcesOf,
        find: impl FnOnce() -> Result<Forces, Faults>,
    ) -> Result<Arc<Forces>, Faults> {
        (*self.forces.of(of, || find().map(Arc::new))).clone()
    }

    /// Its fall, as it is known or as `find` works it out; `None` = it has none.
    pub(crate) fn fall(
        &self,
        of: FallOf,
        find: impl FnOnce() -> Option<Fall>,
    ) -> Arc<Option<Fall>> {
        self.fall.of(of, find)
    }
}

impl Way {
    fn new(leg: &Leg, stations: usize) -> Self {
        let linkage = Linkage::new(leg);
        let sweep = Sweep::new(leg, &linkage, stations);
        Self { linkage, sweep }
    }
}
