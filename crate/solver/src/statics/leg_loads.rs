//! What every station of a leg is worked out from.
use super::drive::{Drive, OneWay};
use super::gathered::Amounts;
use super::pin_set::PinSet;
use crate::kinematics::Linkage;
use crate::model::{Leg, Supply, Vector};
use crate::result::{Motion, Place};

/// What every station of a leg is worked out from.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LegLoads<'a> {
    pub(super) leg: &'a Leg,
    pub(super) linkage: &'a Linkage,
    pub(super) pins: PinSet,
    /// Its actuator as it lengthens, and as it shortens.
    ways: [OneWay; 2],
    /// Masses and drag areas.
    pub(super) amounts: [Amounts; 2],
    /// Friction of what has stood, which counts at the first movement of each way.
    stood: Option<Stood>,
    /// Which components of gravity and wind the first case has, and which any has, in the order of
    /// [`components`].
    pub(super) wanted: [[bool; 4]; 2],
}

/// Friction of a leg that has stood.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stood {
    /// Of the seals (N).
    pub(super) seals: f64,
    /// That of the pins over what they run with (ratio).
    pub(super) pins: f64,
    /// Where the actuator first moves the leg on the way up, as progress; on the way down it is up.
    first: f64,
}

/// Gravity and wind of a case, by components.
pub(super) fn components([gravity, wind]: [Vector; 2]) -> [f64; 4] {
    [gravity.x, gravity.y, wind.x, wind.y]
}

impl<'a> LegLoads<'a> {
    /// For cases of these gravities and winds only, the first of which is worked out everywhere.
    pub(crate) fn new(
        leg: &'a Leg,
        linkage: &'a Linkage,
        supply: &Supply,
        cases: impl IntoIterator<Item = [Vector; 2]>,
    ) -> Self {
        let catches_wind = leg.air.wheel_drag_area + leg.air.leg_drag_area > 0.0;
        let mut wanted = [[false; 4]; 2];
        for (index, case) in cases.into_iter().enumerate() {
            let [first, any] = &mut wanted;
            for (i, size) in components(case).into_iter().enumerate() {
                any[i] |= size != 0.0 && (i < 2 || catches_wind);
                if index == 0 {
                    first[i] = any[i];
                }
            }
        }
        let drive = Drive::new(&leg.actuator, supply);
        Self {
            leg,
            linkage,
            pins: PinSet::of(leg),
            ways: [true, false].map(|lengthens| drive.going(lengthens)),
            amounts: [Amounts::masses(leg), Amounts::drag_areas(leg)],
            stood: None,
            wanted,
        }
    }

    /// The same with the friction of what has stood at the first movement of each way, from down and
    /// from up.
    pub(crate) fn standing(self) -> Self {
        let swings_from = if self.linkage.path().unlocks {
            -1.0
        } else {
            0.0
        };
        Self {
            stood: Some(Stood {
                seals: self.leg.actuator.seals_stood(),
                pins: self.leg.fall.pins_stood(),
                first: self.linkage.loaded_from().max(swings_from),
            }),
            ..self
        }
    }

    /// Friction of what has stood where a motion begins at this place.
    pub(super) fn stood(&self, motion: Motion, place: &Place) -> Option<&Stood> {
        let at = place.progress;
        self.stood.as_ref().filter(|stood| match motion {
            Motion::Retract => at <= stood.first,
            Motion::Extend => at >= 1.0,
        })
    }

    /// Whether a motion begins at this place with the friction of what has stood.
    pub(crate) fn begins(&self, place: &Place) -> bool {
        let motions = [Motion::Retract, Motion::Extend];
        motions.iter().any(|way| self.stood(*way, place).is_some())
    }

    /// Its actuator as it lengthens, or as it shortens.
    pub(super) fn going(&self, lengthens: bool) -> &OneWay {
        let [longer, shorter] = &self.ways;
        if lengthens { longer } else { shorter }
    }

    /// Whether any pin rubs.
    pub(crate) fn rub(&self) -> bool {
        self.pins.rub
    }
}
