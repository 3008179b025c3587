//! One leg, swept once.
use std::borrow::Cow;
use std::sync::{Arc, OnceLock};

use super::rests_on::{clear_alike, move_alike};
use crate::clearance::{ClearanceCase, ClearanceError, ClearanceOptions, clearances};
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::{ClearanceRule, Leg, Tire};
use crate::result::Clearance;
use crate::tires::TireSizes;

/// Stations of the swing over which a leg is swept.
pub(crate) const STATIONS: usize = 721;

/// A checked leg, swept once. What it shares with another is not worked out again.
#[derive(Clone, Debug)]
pub struct PreparedLeg {
    leg: Leg,
    way: Arc<Way>,
    /// With the tire now fitted, and with the former one.
    cleared: Arc<[OnceLock<Cleared>; 2]>,
}

/// How a leg moves.
#[derive(Debug)]
struct Way {
    linkage: Linkage,
    sweep: Sweep,
}

/// Clearances that are known, and what they are of besides the leg.
#[derive(Debug)]
struct Cleared {
    tire: Tire,
    rule: ClearanceRule,
    options: ClearanceOptions,
    found: Result<Clearance, ClearanceError>,
}

impl PreparedLeg {
    /// Sweeps a checked leg, as it is driven; what it shares with the leg `before` is taken over, its
    /// clearances only under the same rule.
    pub(super) fn new(leg: Leg, before: Option<&Self>, same_rule: bool) -> Self {
        let alike = before.filter(|before| move_alike(&before.leg, &leg));
        let way = alike.map_or_else(
            || Arc::new(Way::new(&leg, STATIONS)),
            |known| Arc::clone(&known.way),
        );
        let cleared = alike.filter(|known| same_rule && clear_alike(&known.leg, &leg));
        let cleared = cleared.map_or_else(Arc::default, |known| Arc::clone(&known.cleared));
        Self { leg, way, cleared }
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
            true => Cow::Owned(Self {
                leg: self.leg.clone(),
                way: Arc::new(Way::new(&self.leg, stations)),
                cleared: Arc::default(),
            }),
            false => Cow::Borrowed(self),
        }
    }

    /// Poses over fewer stations.
    pub(crate) fn poses(&self, stations: usize) -> Vec<Pose> {
        self.sweep().at_stations(self.linkage(), stations)
    }

    /// Certified clearances with a tire. Those that are asked for first with each are kept.
    ///
    /// # Errors
    /// See [`clearances`].
    pub(crate) fn clearances(
        &self,
        tire: &Tire,
        rule: &ClearanceRule,
        options: &ClearanceOptions,
    ) -> Result<Clearance, ClearanceError> {
        let find = || Cleared {
            tire: tire.clone(),
            rule: *rule,
            options: *options,
            found: clearances(
                &ClearanceCase {
                    leg: &self.leg,
                    sizes: &TireSizes::of(tire),
                    rule,
                    linkage: self.linkage(),
                    poses: &self.sweep().poses,
                },
                options,
            ),
        };
        let [fitted, former] = &*self.cleared;
        let kept = match *tire == self.leg.wheel.tire {
            true => fitted,
            false => former,
        };
        let known = kept.get_or_init(find);
        if known.tire == *tire && known.rule == *rule && known.options == *options {
            return known.found.clone();
        }
        find().found
    }
}

impl Way {
    fn new(leg: &Leg, stations: usize) -> Self {
        let linkage = Linkage::new(leg);
        let sweep = Sweep::new(leg, &linkage, stations);
        Self { linkage, sweep }
    }
}
