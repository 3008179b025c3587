//! What an answer rests on, and how to put something better in its place.
use gearswing_gear::model::{Joint, Leg, MovingPart};
use gearswing_solver::LEAST_OVER_CENTRE;
use gearswing_solver::result::{
    Assumption, DrivenBy, Finding, FindingDetail, PairClearance, TireState, Unpowered,
};
use gearswing_solver::tires::{DEFAULT_OWN_GROWN, DEFAULT_OWN_NEW};
use gearswing_units::Quantity;
use serde::Serialize;

use super::driven;
use crate::cases::joint_words;
use crate::published::OVER_CENTER_PRINTED;
use crate::subject::{Subject, obstacle_words};

/// How far to trust what an answer rests on; shown as a mark beside the figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// Quoted from memory, not confirmed by a source.
    FromMemory,
    /// Printed, and read in a copy or quotation of the print.
    SecondHand,
    /// Common practice of the trade, no published source.
    CommonPractice,
    /// Nobody has said where it comes from.
    OriginNotStated,
}

impl Mark {
    /// The mark in words.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::FromMemory => "from memory",
            Self::SecondHand => "second hand",
            Self::CommonPractice => "common practice",
            Self::OriginNotStated => "origin not stated",
        }
    }
}

/// One thing that an answer rests on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Governing {
    /// What it is and how to replace it.
    pub text: String,
    /// How far to trust it; absent when it is the person's own, published, or a limit of the model.
    pub mark: Option<Mark>,
}

impl Governing {
    pub(super) fn plain(text: String) -> Self {
        Self { text, mark: None }
    }

    fn marked(text: String, mark: Mark) -> Self {
        Self {
            text,
            mark: Some(mark),
        }
    }
}

/// One assumption in words; numbers are those of the answer that rests on it.
#[must_use]
pub fn governing(subject: &Subject, finding: &Finding, assumption: Assumption) -> Governing {
    let plain = |text: &str| Governing::plain(text.to_owned());
    match assumption {
        Assumption::GrowthRuleFromMemory => Governing::marked(
            "The grown tire is worked out by a growth rule: the formula is from memory, and it reproduces 9 of 10 grown sizes printed in a data book to 0.03 in (0.8 mm). Replace it with the tire maker's largest size in service, or measure a tire that has grown.".to_owned(),
            Mark::FromMemory,
        ),
        Assumption::TireSizeFromMemory => Governing::marked(
            "The tire's size is a row of the size table quoted from memory. Replace it with the tire maker's figures, or measure the fitted tire at full pressure.".to_owned(),
            Mark::FromMemory,
        ),
        Assumption::TireSizePublished => Governing::marked(
            "The tire's size is the largest that a tire maker's data book prints, read in a copy of it. Tires of one size differ between makes: measure yours at full pressure.".to_owned(),
            Mark::SecondHand,
        ),
        Assumption::TireMeasured => plain("The tire's size was measured."),
        Assumption::TireMaker => plain("The tire's size is the tire maker's."),
        Assumption::TireUnstated => Governing::marked(
            "Where the tire's size comes from is not stated. Measure it at full pressure or take the tire maker's figures, and say so.".to_owned(),
            Mark::OriginNotStated,
        ),
        Assumption::ClearanceCommonPractice => common_clearance(subject, finding),
        Assumption::ClearanceUser => user_clearance(subject, finding),
        Assumption::MarginCommonPractice => Governing::marked(
            format!(
                "The required margin, {} of the {}, is common practice. Replace it with the maker's figure.",
                subject.say(Quantity::Travel, subject.result.force.required_margin),
                effort_word(subject)
            ),
            Mark::CommonPractice,
        ),
        Assumption::MarginWithoutFriction => Governing::plain(format!(
            "No friction of this leg is given, so {} of the {} must be left over: this program's own figure. Type the friction of seals or pins, or the maker's margin.",
            subject.say(Quantity::Travel, subject.result.force.required_margin),
            effort_word(subject)
        )),
        Assumption::PumpUpToItsSwitch => plain(
            "Pump and accumulator count with the pressure at which the switch stops the pump. A switch that starts it again only at a lower pressure can leave no more than that: watch the gauge, and put the lower figure in as the pressure available.",
        ),
        Assumption::MarginUser => Governing::plain(format!(
            "The required margin, {} of the {}, is your own figure.",
            subject.say(Quantity::Travel, subject.result.force.required_margin),
            effort_word(subject)
        )),
        Assumption::NoPinFriction => Governing::plain(format!(
            "Friction in the pins and springs are not counted: the real {} is higher by what dry or tight pins take.",
            effort_word(subject)
        )),
        Assumption::FrictionAndSprings => Governing::plain(friction_and_springs(subject)),
        Assumption::FrontViewAir => plain(
            "This leg is seen from ahead: the wind of straight flight blows across the plane of its swing and is not counted; only sideslip is.",
        ),
        Assumption::SeparateUnlock => plain(
            "A separate unlock device (actuator, hook, cable) unlocks the knee and takes it as far beyond the straight line as it locks before it, by 1° at least; there the actuator takes over. If it lets go sooner, the actuator needs more. Its force is not worked out: check it by itself.",
        ),
        Assumption::DeadWeightOnly => plain(
            "The hanging leg is held by its dead weight only: lock springs and pressure, which add to it, are not counted. That a push below about 1 lb (5 N) is too little is this program's own figure.",
        ),
        Assumption::FallWithoutPressure => without_pressure(subject),
        Assumption::FrictionTimesOwn => plain(
            "That a leg must free-fall against 1.5 times its friction is this program's own figure: friction rises in the cold and with age. Type your own at the supply.",
        ),
        Assumption::BreakOutFromMemory => Governing::marked(
            "What has stood needs more to start than to run: twice for seals, 1.5 times for pins. A printed limit for cylinders is three times. Measure what starts the leg and the rod, by spring scale.".to_owned(),
            Mark::FromMemory,
        ),
        Assumption::FallsAlone => Governing::plain(format!(
            "The fall is of this leg alone. On the airplane it moves with {}, on one drive: each must fall by itself with as much to spare, and the friction of shaft or linkage between them, which is not counted, holds all. Try it with all of them connected.",
            driven::others(subject, &subject.result.force.shares_drive_with)
        )),
        Assumption::AloneOnDrive => plain(
            "No other leg names the drive that this one names as shared, so it counts as driving this leg alone.",
        ),
        Assumption::InertiaEstimated => plain(
            "The moment of inertia of the upper leg is an estimate from its mass and outline; it changes the time of the fall, hardly whether it reaches the lock.",
        ),
        Assumption::WeightAndSprings => plain(
            "The hanging leg is held by its dead weight and the springs given; pressure, which adds to it, is not counted. That a push below about 1 lb (5 N) is too little is this program's own figure.",
        ),
        Assumption::ContactCleared => plain(
            "Something touches on the way, see “Does it clear?”. This answer counts as if that were cleared.",
        ),
        Assumption::OverCentreCommonPractice => Governing::plain(format!(
            "Less than {} over center is held to be little: this program's own figure{}, just below what manuals print. {OVER_CENTER_PRINTED}",
            subject.length(LEAST_OVER_CENTRE),
            match subject.result.lock.over_centre_less_play {
                Some(_) => ", as is that half of it is to be left by play",
                None => "",
            }
        )),
        Assumption::LatchNotModelled => plain(
            "The latch or lock itself is not modeled: only the airplane can show that it engages.",
        ),
    }
}

/// What an actuator works with.
fn effort_word(subject: &Subject) -> &'static str {
    match subject.result.force.driven_by {
        DrivenBy::Fluid => "pressure",
        DrivenBy::Electricity => "force",
    }
}

fn without_pressure(subject: &Subject) -> Governing {
    let actuator = subject.result.fall.map(|fall| fall.actuator);
    if let Some(actuator @ (Unpowered::DrivenBack | Unpowered::Released)) = actuator {
        let held = match subject.model().and_then(Leg::back_drive) {
            Some(force) if actuator == Unpowered::DrivenBack => format!(
                "The fall has no power: {} drives the actuator back all the way.",
                subject.say(Quantity::Force, force)
            ),
            _ => "The fall has the actuator released, holding nothing.".to_owned(),
        };
        return Governing::plain(format!("{held}{}", at_1_g(subject)));
    }
    let line = match subject.model().and_then(|leg| leg.orifice_of_fall()) {
        Some(orifice) => format!(
            "through a restrictor of {}; what else is in the line slows it more",
            subject.say(Quantity::Hole, orifice.hole)
        ),
        None => "freely: a restrictor or a long line slows it, and a leg that needs its speed to get over may then stop short".to_owned(),
    };
    let given = subject
        .model()
        .map(|leg| (leg.springs.is_empty(), leg.pins.rub()));
    let friction = match given {
        Some((false, true)) => "the springs given, and friction in its seals and the pins given",
        Some((false, false)) => "the springs given, and no friction but that of its seals",
        Some((true, true)) => "no springs, and friction in its seals and the pins given",
        _ => "no springs and no friction but that of its seals",
    };
    Governing::plain(format!(
        "The fall has no pressure on either side of the actuator, {friction}. The fluid returns {line}.{}",
        at_1_g(subject)
    ))
}

/// What load factor lock and fall count on, where another is set.
fn at_1_g(subject: &Subject) -> &'static str {
    let set = subject.gear.conditions.load_factor;
    if set > 1.0 {
        " Lock and fall count on no more than 1 g: the load factor set is for the forces only."
    } else if set < 1.0 {
        " Lock and fall are worked out at the load factor set, below 1."
    } else {
        ""
    }
}

/// What of friction and springs is counted.
fn friction_and_springs(subject: &Subject) -> String {
    let Some(leg) = subject.model() else {
        return String::new();
    };
    let springs = match leg.springs.len() {
        0 => "No spring is given.".to_owned(),
        1 => "The spring given is counted.".to_owned(),
        count => format!("The {count} springs given are counted."),
    };
    let rubbing: Vec<&str> = Joint::ALL
        .into_iter()
        .zip(leg.pins.all())
        .filter(|(_, pin)| pin.rubs())
        .map(|(joint, _)| joint_words(joint))
        .collect();
    let pins = match rubbing.as_slice() {
        [] => format!(
            "Friction in the pins is not: the real {} is higher by what dry or tight pins take.",
            effort_word(subject)
        ),
        [one] => format!("Friction is counted at this pin only: {one}."),
        [most @ .., last] => {
            format!(
                "Friction is counted at these pins: {} and {last}.",
                most.join(", ")
            )
        }
    };
    format!("{springs} {pins}")
}

fn pair_of<'a>(subject: &'a Subject, finding: &Finding) -> Option<&'a PairClearance> {
    match finding.detail {
        FindingDetail::Tightest { pair, .. } => subject.result.clearance.pairs.get(pair),
        _ => None,
    }
}

fn common_clearance(subject: &Subject, finding: &Finding) -> Governing {
    let replace = "No regulation read for this program gives a number, and amateur-built and older types are not under those read: for them they are guidance. Replace it with the maker's figure or your own.";
    let text = match pair_of(subject, finding) {
        None if matches!(finding.detail, FindingDetail::OwnTightest { .. }) => format!(
            "The clearance required between the tire and its own leg, {} as fitted new and {} when it has grown, is a default of this program; the smaller one is the least between a brace and structure that was found in a shop manual of a light twin. Replace it with the maker's figure or your own.",
            subject.length(DEFAULT_OWN_NEW),
            subject.length(DEFAULT_OWN_GROWN)
        ),
        None => format!("The required clearances are common practice. {replace}"),
        Some(pair) => {
            let asked = subject.length(pair.requirement.clearance);
            match (pair.part, pair.tire) {
                (MovingPart::Wheel, Some(TireState::New)) => {
                    format!("The {asked} required at a new tire is common practice. {replace}")
                }
                _ => format!(
                    "The {asked} required here is a default of this program; common practice is only that nothing touches. {replace}"
                ),
            }
        }
    };
    Governing::marked(text, Mark::CommonPractice)
}

fn user_clearance(subject: &Subject, finding: &Finding) -> Governing {
    use gearswing_solver::result::RequirementBasis as Basis;
    Governing::plain(match pair_of(subject, finding) {
        None => "The required clearances are your own figures.".to_owned(),
        Some(pair) => {
            let asked = subject.length(pair.requirement.clearance);
            match pair.requirement.basis {
                Basis::Obstacle => format!(
                    "The {asked} required at {} is your own figure.",
                    obstacle_words(&pair.obstacle_name, pair.obstacle)
                ),
                Basis::Gear | Basis::CommonPractice => {
                    format!("The {asked} required is your own figure for the whole gear.")
                }
            }
        }
    })
}
