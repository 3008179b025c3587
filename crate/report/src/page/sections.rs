//! Groups of fields: heading, help, what can be done to them.
use gearswing_gear::field::Group;

use super::names::{piece_title, spring_title};
use crate::fields::group_title;

/// A group of fields as the page shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section<'a> {
    /// A group of the list of fields.
    Group(Group),
    /// Outline of the upper leg.
    Outline,
    /// Outline of the sliding part.
    Sliding,
    /// List of the structure in the well.
    Well,
    /// One piece of structure: its name and index.
    Piece(&'a str, usize),
    /// List of the springs.
    Springs,
    /// One spring: its name and index.
    Spring(&'a str, usize),
}

/// Heading of a group.
#[must_use]
pub fn section_title(section: Section) -> String {
    match section {
        Section::Group(group) => group_title(group).to_owned(),
        Section::Outline => "Outline of the leg".to_owned(),
        Section::Sliding => "Outline of the sliding part".to_owned(),
        Section::Well => group_title(Group::Well).to_owned(),
        Section::Springs => group_title(Group::Springs).to_owned(),
        Section::Spring(name, index) => spring_title(name, index),
        Section::Piece(name, index) => piece_title(name, index),
    }
}

/// The sentence on top of an open group, or nothing.
#[must_use]
pub fn section_help(section: Section) -> &'static str {
    match section {
        Section::Well => {
            "Each piece of structure near the arc, cut by the plane of the swing: ribs, spars, skin, hoses. Drag its corners in the drawing or type them here."
        }
        Section::Outline => {
            "What turns with the leg above the sliding part, as drawn in the plane of the swing."
        }
        Section::Sliding => "What slides with the axle: lower tube, fork.",
        Section::Springs => {
            "Down-lock springs, assist springs, gas struts, cords. A new one has no force until you put it in."
        }
        Section::Group(Group::Pins) => {
            "Friction of each joint: radius times coefficient times its load, against the motion. Empty pins turn freely."
        }
        Section::Group(_) | Section::Piece(..) | Section::Spring(..) => "",
    }
}

/// What is wrong within a group, for its head: entries that cannot be read before faults.
#[must_use]
pub fn section_alert(unread: usize, faulty: bool) -> String {
    match unread {
        1 => "1 entry can't be read".to_owned(),
        2.. => format!("{unread} entries can't be read"),
        0 if faulty => "a fault in here".to_owned(),
        0 => String::new(),
    }
}

/// Something that can be done to a group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deed {
    /// A leg like this one is added.
    AddLeg,
    /// It swings up to the other side.
    TurnSwing,
    /// The image of this leg in a mirror is added.
    AddMirrorImage,
    /// Whether a moved trunnion takes the whole leg along is switched; whether it does now.
    TakeAlong(bool),
    /// Changes go to the leg that is its image in a mirror too, or not.
    Alike(bool),
    /// This leg goes.
    RemoveLeg,
    /// The tire is kept as the previous one.
    KeepTire,
    /// A piece of structure is added.
    AddPiece,
    /// This piece goes.
    RemovePiece,
    /// A spring is added.
    AddSpring,
    /// This spring goes.
    RemoveSpring,
    /// A point is added to an outline.
    AddPoint,
}

/// On the press for it.
#[must_use]
pub fn deed_label(deed: Deed) -> &'static str {
    match deed {
        Deed::AddLeg => "Add a leg like this one",
        Deed::AddMirrorImage => "Add its mirror image",
        Deed::TurnSwing => "Swing it the other way",
        Deed::TakeAlong(true) => "A moved trunnion takes leg and well along: yes",
        Deed::TakeAlong(false) => "A moved trunnion takes leg and well along: no",
        Deed::Alike(true) => "Changes go to its mirror image too: yes",
        Deed::Alike(false) => "Changes go to its mirror image too: no",
        Deed::RemoveLeg => "Remove this leg",
        Deed::KeepTire => "Keep this tire as the previous one",
        Deed::AddPiece => "Add a piece of structure",
        Deed::RemovePiece => "Remove this piece",
        Deed::AddSpring => "Add a spring",
        Deed::RemoveSpring => "Remove this spring",
        Deed::AddPoint => "Add a point",
    }
}
