//! Tightest places, force and lock of a leg.
use gearswing_gear::model::MovingPart;
use gearswing_solver::result::{
    DrivenBy, ForcePeak, LockKind, PairClearance, RequirementBasis, Stroke, TireState,
};
use gearswing_units::{Quantity, format_bare};

use super::lines::Lines;
use crate::cases::{joint_words, motion_words};
use crate::subject::{Subject, obstacle_words, part_name};
use crate::table::{Align, Column, aligned};

pub(super) fn title(lines: &mut Lines, title: &str) {
    lines.blank();
    lines.text(2, &format!("{title}:"));
}

/// The tightest place of each obstacle: tire new, tire grown, and the nearest other part.
pub(super) fn clearances(lines: &mut Lines, subject: &Subject) {
    let rows = rows(&subject.result.clearance.pairs);
    if rows.is_empty() {
        return;
    }
    title(lines, "Tightest places");
    let texts = |text: &dyn Fn(&PairClearance) -> String| -> Vec<String> {
        rows.iter().map(|pair| text(pair)).collect()
    };
    let length = |si: f64| format_bare(Quantity::Length, subject.units, si).replace('-', "−");
    let unit = Quantity::Length.unit_label(subject.units);
    let number = |name: &str, si: &dyn Fn(&PairClearance) -> f64| {
        Column::new(
            format!("{name} {unit}"),
            Align::Right,
            texts(&|pair| length(si(pair))),
        )
    };
    let columns = [
        Column::new(
            "structure",
            Align::Left,
            texts(&|pair| obstacle_words(&pair.obstacle_name, pair.obstacle)),
        ),
        Column::new("part", Align::Left, texts(&|pair| part_words(pair))),
        number("clearance", &|pair| pair.tightest.clearance),
        number("required", &|pair| pair.requirement.clearance),
        Column::new(
            "whose figure",
            Align::Left,
            texts(&|pair| basis_words(pair).to_owned()),
        ),
        Column::new(
            "travel",
            Align::Right,
            texts(&|pair| subject.say(Quantity::Travel, pair.tightest.place.travel)),
        ),
        number("at x", &|pair| pair.tightest.on_obstacle.x),
        number("y", &|pair| pair.tightest.on_obstacle.y),
    ];
    lines.block(&aligned("  ", &columns));
    lines.text(
        2,
        "A negative clearance is interference. x and y: that place on the structure, in the axes of the data.",
    );
}

fn rows(pairs: &[PairClearance]) -> Vec<&PairClearance> {
    let mut rows: Vec<&PairClearance> = Vec::new();
    for pair in pairs {
        let is_other = |p: &PairClearance| p.part != MovingPart::Wheel;
        let same = rows
            .iter_mut()
            .find(|row| is_other(row) && is_other(pair) && row.obstacle == pair.obstacle);
        match same {
            Some(row) if pair.spare() < row.spare() => *row = pair,
            Some(_) => {}
            None => rows.push(pair),
        }
    }
    rows
}

fn part_words(pair: &PairClearance) -> String {
    let part = part_name(pair.part);
    match pair.tire {
        Some(TireState::New) => format!("{part}, new"),
        Some(TireState::Grown) => format!("{part}, grown"),
        None => part.to_owned(),
    }
}

fn basis_words(pair: &PairClearance) -> &'static str {
    match pair.requirement.basis {
        RequirementBasis::Obstacle => "yours, this piece",
        RequirementBasis::Gear => "yours, whole gear",
        RequirementBasis::CommonPractice => "default",
    }
}

pub(super) fn force(lines: &mut Lines, subject: &Subject) {
    let force = &subject.result.force;
    title(lines, "Actuator");
    let area = |si| subject.say(Quantity::Area, si);
    let stroke = match force.stroke {
        Stroke::Push => format!(
            "Pushes to retract, on the full bore ({})",
            area(force.bore_area)
        ),
        Stroke::Pull => format!(
            "Pulls to retract, on the bore less the rod ({})",
            area(force.annulus_area)
        ),
    };
    lines.item(
        2,
        "- ",
        &format!(
            "{stroke}; {} of stroke used.",
            subject.length(force.stroke_used)
        ),
    );
    let fluid = force.driven_by == DrivenBy::Fluid;
    let available = if fluid { "pressure" } else { "force" };
    let pressure = |peak: &ForcePeak| match fluid {
        true => format!(" and {}", subject.say(Quantity::Pressure, peak.pressure)),
        false => String::new(),
    };
    let peak = |what: &str, peak: &ForcePeak| {
        let left = if peak.margin < 0.0 { "missing" } else { "left" };
        format!(
            "{what}: {}{} {}; {} of the available {available} is {left}; mount load {}.",
            subject.say(Quantity::Force, peak.effort),
            pressure(peak),
            subject.at(&peak.place),
            subject.say(Quantity::Travel, peak.margin.abs()),
            subject.say(Quantity::Force, peak.mount_load),
        )
    };
    match &force.peak {
        Some(retract) => lines.item(2, "- ", &peak("Most to retract", retract)),
        None => lines.item(
            2,
            "- ",
            "The force to retract is worked out nowhere on the way.",
        ),
    }
    if let Some(extend) = &force.extend_peak {
        lines.item(2, "- ", &peak("Most to extend", extend));
    }
    let seals = subject.model().map_or(0.0, |leg| leg.actuator.seals());
    if fluid && seals > 0.0 {
        let text = format!(
            "The actuator force is that of the fluid on the piston; {} of it stays in the seals and does not reach the mount.",
            subject.say(Quantity::Force, seals)
        );
        lines.item(2, "- ", &text);
    }
    if let Some(stall) = &force.stalls_at {
        lines.item(2, "- ", &format!("Stalls {}.", subject.at(stall)));
    }
    for bind in &force.binds {
        let text = format!(
            "The pins bind {} while {}, most of it at the {}.",
            subject.at(&bind.place),
            motion_words(bind.motion),
            joint_words(bind.joint)
        );
        lines.item(2, "- ", &text);
    }
    if let Some(load) = force.largest_mount_load {
        let load = subject.say(Quantity::Force, load);
        lines.item(
            2,
            "- ",
            &match force.shares_drive_with.is_empty() {
                true => format!("Largest load on the actuator mount: {load}."),
                false => format!(
                    "Largest share of this leg in the load of its drive: {load}; the mount of the drive carries what all need."
                ),
            },
        );
    }
}

pub(super) fn lock(lines: &mut Lines, subject: &Subject) {
    let lock = &subject.result.lock;
    title(lines, "Down lock");
    let kind = match lock.kind {
        LockKind::OverCentre => "Knee (center hinge of the brace) over center, on its stop.",
        LockKind::FoldsOn => {
            "Not over center: the knee (center hinge of the brace) keeps folding the same way, another lock holds it."
        }
        LockKind::SlidingBrace => "Telescoping brace: its latch holds it.",
        LockKind::NoBrace => "No brace: the actuator or another lock holds it.",
    };
    lines.item(2, "- ", kind);
    if let Some(offset) = lock.over_centre {
        let angle = lock.past_centre.map_or_else(String::new, |angle| {
            format!(", {}", subject.signed(Quantity::Angle, angle))
        });
        let offset = subject.signed(Quantity::Length, offset);
        lines.item(2, "- ", &format!("Over center: {offset}{angle}."));
    }
    if let Some(excursion) = &subject.result.excursion {
        let allowed = excursion.allowed.map_or_else(
            || "no stop is given".to_owned(),
            |allowed| format!("its stop allows {}", subject.length(allowed)),
        );
        let text = format!(
            "To unlock, the leg needs {} of overtravel past down, {} at the axle; {allowed}.",
            subject.say(Quantity::Angle, excursion.swing.abs()),
            subject.size(excursion.at_axle),
        );
        lines.item(2, "- ", &text);
    }
}
