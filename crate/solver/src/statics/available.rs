//! The most that the source makes against a stopped leg.
use super::{Partners, areas};
use crate::hydraulics::{Circuit, Gas, Pump};
use crate::model::{Direction, ElectricActuator, Shortening, Source, Supply};
use crate::prepared::{PreparedGear, PreparedLeg};
use crate::result::{DrivenBy, LoadCase, Motion, Phase, Place, SetBy};

/// What the actuator of a leg can count on.
#[derive(Clone, Debug)]
pub(crate) struct Available<'a> {
    /// Retracting, and extending.
    ways: [Way; 2],
    /// The electric drive and its battery; absent with fluid.
    electric: Option<(ElectricActuator, Circuit)>,
    partners: Option<&'a Partners>,
    /// The force while the actuators of all legs stand stalled on the battery (N); absent with fluid.
    pub(crate) among_all: Option<f64>,
    /// What drives it.
    pub(crate) driven_by: DrivenBy,
}

/// One way.
#[derive(Clone, Debug)]
struct Way {
    /// Gauge pressure (Pa), or the force of an electric actuator with the battery to itself (N).
    most: f64,
    /// The figure in the file (Pa).
    given: f64,
    /// What an accumulator by itself has left while the fluid goes into the legs.
    gas: Option<(Gas, Taken)>,
    /// Whether it changes on the way.
    changes: bool,
    set_by: SetBy,
}

/// Fluid that all legs take, over the way (m3).
#[derive(Clone, Debug)]
struct Taken {
    /// By the struts that shorten before the swing.
    struts: f64,
    /// By the actuators, at even steps of the swing from where they start to its end.
    swing: Vec<f64>,
}

/// Even steps of the swing at which the fluid in the legs is worked out; it is smooth between them.
const STEPS: usize = 180;

/// Each way: the pressure given, or less where the pump on its battery, its relief valve, the switch that
/// stops it, a hand, or what an accumulator alone still has makes less; with electric actuators what that
/// of the leg makes while all others run on the battery too. A pump that does not turn makes none.
pub(crate) fn available<'a>(
    prepared: &PreparedGear<'_>,
    leg: usize,
    partners: Option<&'a Partners>,
) -> Available<'a> {
    let gear = prepared.gear();
    let motor_of = |leg: usize| gear.legs.get(leg).and_then(|leg| leg.drive.electric);
    if matches!(gear.supply.source, Source::ElectricActuators) {
        let circuit = Circuit::new(&gear.supply.battery);
        let drives = (0..gear.legs.len()).filter(|leg| gear.driving_leg(*leg) == *leg);
        let all: Vec<_> = drives.filter_map(motor_of).collect();
        let own = motor_of(gear.driving_leg(leg));
        let way = Way {
            // without a motor there is nothing to count on
            most: own.map_or(0.0, |motor| circuit.stall_force(&motor)),
            given: f64::INFINITY,
            gas: None,
            changes: partners.is_some(),
            set_by: SetBy::Source,
        };
        return Available {
            ways: [way.clone(), way],
            electric: own.map(|motor| (motor, circuit)),
            partners,
            among_all: own.map(|motor| circuit.stall_force_among(&motor, &all)),
            driven_by: DrivenBy::Electricity,
        };
    }
    Available {
        ways: [Direction::Up, Direction::Down].map(|way| by_fluid(prepared, way)),
        electric: None,
        partners,
        among_all: None,
        driven_by: DrivenBy::Fluid,
    }
}

fn by_fluid(prepared: &PreparedGear<'_>, direction: Direction) -> Way {
    let gear = prepared.gear();
    let supply: Supply = gear.supply.going(direction);
    let given = supply.available_pressure;
    let (most, gas) = match Pump::new(&supply) {
        Ok(Some(Pump {
            gas: Some(gas),
            free: None,
            ..
        })) => {
            let taken = Taken::by_all(prepared, direction);
            (left(&gas, taken.at(Phase::Swing, 1.0)), Some((gas, taken)))
        }
        Ok(pump) => (pump.map_or(given, |pump| pump.most), None),
        Err(_) => (0.0, None),
    };
    let most = supply.pump_switch().map_or(most, |set| set.min(most));
    let set_by = if most < given {
        SetBy::Source
    } else {
        SetBy::File
    };
    Way {
        most: given.min(most),
        given,
        changes: gas.is_some(),
        gas,
        set_by,
    }
}

/// Gauge pressure of a gas out of which so much fluid was taken (Pa); 0 when it has none left.
fn left(gas: &Gas, taken: f64) -> f64 {
    let held = gas.first - taken;
    if held > 0.0 { gas.pressure(held) } else { 0.0 }
}

impl Taken {
    /// By all sound drives, at equal travel. The struts shorten before the swing up and come out after
    /// the swing down.
    fn by_all(prepared: &PreparedGear<'_>, direction: Direction) -> Self {
        let gear = prepared.gear();
        let mut taken = Self {
            struts: 0.0,
            swing: vec![0.0; STEPS + 1],
        };
        let drives = |at: &usize| gear.driving_leg(*at) == *at;
        let sound = |at| prepared.leg(at).ok();
        for leg in (0..gear.legs.len()).filter(drives).filter_map(sound) {
            taken.add(leg, direction);
        }
        taken
    }

    fn add(&mut self, swept: &PreparedLeg, direction: Direction) {
        let (leg, linkage) = (swept.leg(), swept.linkage());
        let length = |progress| linkage.pose(progress).map(|pose| pose.actuator_length).ok();
        let (bore, annulus) = areas(&leg.actuator);
        let is_up = direction == Direction::Up;
        let area = if linkage.lengthens_up() == is_up {
            bore
        } else {
            annulus
        };
        // from down to up; a leg that stops short has there what it had where it stops
        let mut lengths = Vec::with_capacity(self.swing.len());
        let locked = length(linkage.path().start());
        let mut last = locked;
        for step in 0..self.swing.len() {
            let travel = step as f64 / STEPS as f64;
            last = length(linkage.progress_at_travel(travel)).or(last);
            lengths.push(last);
        }
        let from = if is_up {
            locked
        } else {
            lengths.reverse();
            last
        };
        for (taken, length) in self.swing.iter_mut().zip(&lengths) {
            // a leg whose length is not known leaves nothing to count on
            *taken += match length.zip(from) {
                Some((length, from)) => area * (length - from).abs(),
                None => f64::INFINITY,
            };
        }
        if let (Some(jack), Shortening::BeforeSwing { amount }) =
            (leg.drive.strut_jack, &leg.strut.shortening)
        {
            self.struts += jack.area * amount;
        }
    }

    /// Up to a share of the swing as it goes (m3).
    fn at(&self, phase: Phase, share: f64) -> f64 {
        if phase == Phase::Shorten {
            return 0.0;
        }
        let place = share.clamp(0.0, 1.0) * STEPS as f64;
        let before = (place.floor() as usize).min(STEPS - 1);
        let values = (self.swing.get(before), self.swing.get(before + 1));
        let (a, b) = match values {
            (Some(a), Some(b)) => (*a, *b),
            _ => return f64::INFINITY,
        };
        self.struts + a + (place - before as f64) * (b - a)
    }
}

impl Available<'_> {
    fn way(&self, motion: Motion) -> &Way {
        &self.ways[motion as usize]
    }

    /// The most one way, as at the end of the way (Pa; N with an electric actuator).
    pub(crate) fn most(&self, motion: Motion) -> f64 {
        self.way(motion).most
    }

    /// What sets it.
    pub(crate) fn set_by(&self, motion: Motion) -> SetBy {
        self.way(motion).set_by
    }

    /// The most one way in a load case at a place (Pa; N with an electric actuator).
    #[inline]
    pub(crate) fn at(&self, motion: Motion, case: LoadCase, place: Place) -> f64 {
        let way = self.way(motion);
        match way.changes {
            true => self.changing(way, motion, case, &place),
            false => way.most,
        }
    }

    /// The same where it changes on the way.
    fn changing(&self, way: &Way, motion: Motion, case: LoadCase, place: &Place) -> f64 {
        if let Some((gas, taken)) = &way.gas {
            let share = match motion {
                Motion::Retract => place.travel,
                // the struts come out behind the swing
                Motion::Extend => 1.0 - place.travel,
            };
            let struts = match motion {
                Motion::Retract => 0.0,
                Motion::Extend => taken.struts,
            };
            return left(gas, taken.at(place.phase, share) - struts).min(way.given);
        }
        match (&self.electric, self.partners) {
            (Some((motor, circuit)), Some(partners)) => {
                circuit.stall_force_beside(motor, partners.current(case, motion, *place))
            }
            _ => way.most,
        }
    }
}

/// What is left of `available` above what is needed, as a share of it (ratio); −1 where there is none at all.
pub(crate) fn margin(available: f64, needed: f64) -> f64 {
    if available > 0.0 {
        (available - needed) / available
    } else if needed > 0.0 {
        -1.0
    } else {
        0.0
    }
}
