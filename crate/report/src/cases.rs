//! Load cases, joints and motions in words.
use gearswing_gear::model::Joint;
use gearswing_solver::result::{AxlePush, LoadCase, MissingInput, Motion};

/// A load case, as a row of a table: "turn".
#[must_use]
pub fn case_words(case: LoadCase) -> &'static str {
    match case {
        LoadCase::AsSet => "attitude and air as set",
        LoadCase::OnJacks => "level on jacks",
        LoadCase::LevelFlight => "level flight, 1 g",
        LoadCase::Climb => "climb",
        LoadCase::Turn => "turn",
        LoadCase::AirLoad => "air load at 1.6 VS1",
    }
}

/// A load case, within a sentence: "in a turn".
pub(crate) fn in_case(case: LoadCase) -> &'static str {
    match case {
        LoadCase::AsSet => "with attitude and air as set",
        LoadCase::OnJacks => "level on jacks",
        LoadCase::LevelFlight => "in level flight at 1 g",
        LoadCase::Climb => "in a climb",
        LoadCase::Turn => "in a turn",
        LoadCase::AirLoad => "under the air load at 1.6 VS1",
    }
}

/// What a case still needs.
#[must_use]
pub fn missing_words(needs: MissingInput) -> &'static str {
    match needs {
        MissingInput::GearSpeed => "needs the gear operating speed",
        MissingInput::StallSpeed => "needs the stall speed VS1",
        MissingInput::DragArea => "needs a drag area of this leg",
    }
}

/// A joint, within a sentence.
#[must_use]
pub fn joint_words(joint: Joint) -> &'static str {
    match joint {
        Joint::Trunnion => "trunnion",
        Joint::BracePivot => "brace pivot",
        Joint::Knee => "knee",
        Joint::LegAttach => "brace attach",
        Joint::ActuatorMount => "actuator mount",
        Joint::ActuatorAttach => "actuator attach",
    }
}

/// A motion, behind "to": "retract".
pub(crate) fn motion_verb(motion: Motion) -> &'static str {
    match motion {
        Motion::Retract => "retract",
        Motion::Extend => "extend",
    }
}

/// A motion: "retracting".
#[must_use]
pub fn motion_words(motion: Motion) -> &'static str {
    match motion {
        Motion::Retract => "retracting",
        Motion::Extend => "extending",
    }
}

/// Name of a load at the axle; common practice.
pub(crate) fn load_name(direction: AxlePush) -> &'static str {
    match direction {
        AxlePush::DragAft => "drag aft",
        AxlePush::SpringBackForward => "spring-back forward",
        AxlePush::SideRight => "side load to the right",
        AxlePush::SideLeft => "side load to the left",
    }
}
