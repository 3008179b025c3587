//! Toolbar, transport, notices, files.
use gearswing_gear::model::MovingPart;
use gearswing_gearfile::STARTERS;
use gearswing_gearfile::link::LINK_LIMIT;
use gearswing_report::{name_words, question_text};
use gearswing_solver::numeric::sort_short;
use gearswing_solver::result::{Question, Verdict};

use super::page::{
    Action, FileRow, KeyHelp, Notice, SharedBanner, Toolbar, Transport, TransportMark,
};
use super::readout::{leg_title, obstacle_text, part_text, place_text};
use crate::msg::{File, Msg};
use crate::scene;
use crate::state::{LinkState, Origin, State, Work};

fn action(id: String, label: impl Into<String>, msg: Msg) -> Action {
    Action {
        id,
        label: label.into(),
        hint: String::new(),
        enabled: true,
        msg,
    }
}

/// Notices, newest first.
pub(crate) fn notices(state: &State) -> Vec<Notice> {
    state
        .session
        .notices
        .all
        .iter()
        .map(|notice| Notice {
            id: notice.id,
            kind: notice.kind,
            text: notice.text.clone(),
            actions: notice
                .actions
                .iter()
                .enumerate()
                .map(|(at, (label, msg))| {
                    action(
                        format!("notice.{}.{at}", notice.id),
                        label.clone(),
                        msg.clone(),
                    )
                })
                .collect(),
        })
        .collect()
}

/// The banner while a link's content is open.
pub(crate) fn shared(state: &State) -> Option<SharedBanner> {
    if *state.origin() != Origin::Link {
        return None;
    }
    Some(SharedBanner {
        text: format!(
            "From a link: “{}”. It is not among your files; your own work is as it was. A change here keeps it as a file of its own.",
            name_words(&state.gear().name)
        ),
        actions: vec![
            action(
                "shared.keep".to_owned(),
                "Keep as a new file",
                Msg::File(File::KeepShared),
            ),
            action(
                "shared.leave".to_owned(),
                "Back to my own",
                Msg::File(File::LeaveShared),
            ),
        ],
    })
}

/// What is being worked out.
pub(crate) fn working(state: &State) -> String {
    match state.working {
        None => String::new(),
        Some(Work::Legs(0 | 1)) => "Working out the legs …".to_owned(),
        Some(Work::Legs(left)) => format!("Working out the legs, {left} left …"),
        Some(Work::Times) => "Working out the gear against time …".to_owned(),
        Some(Work::Stops) => "Working out what explains the stop …".to_owned(),
    }
}

/// Top row of controls.
pub(crate) fn toolbar(state: &State) -> Toolbar {
    let document = &state.document;
    let session = &state.session;
    let has_former = state
        .gear()
        .legs
        .iter()
        .any(|leg| leg.wheel.former.is_some());
    let of_leg = state
        .gear()
        .legs
        .get(session.leg)
        .and_then(|leg| leg.wheel.former.as_ref());
    let (link_text, link_too_long) = match &state.files.link {
        LinkState::Ready(length) => (format!("{length} characters"), false),
        LinkState::TooLong(length) => (
            format!(
                "{length} characters: more than the {LINK_LIMIT} that messages carry. Send the gear file."
            ),
            true,
        ),
        LinkState::Refused(reason) => (format!("no link: {reason}"), true),
    };
    Toolbar {
        can_undo: document.undo_text().is_some(),
        undo_text: document
            .undo_text()
            .map_or_else(String::new, |text| format!("Undo: {text}")),
        can_redo: document.redo_text().is_some(),
        redo_text: document
            .redo_text()
            .map_or_else(String::new, |text| format!("Redo: {text}")),
        units: session.units,
        theme: session.theme,
        snap: !session.snap_off,
        loads: session.loads,
        file_name: name_words(&state.gear().name),
        stored_text: match (&state.files.refused, state.origin()) {
            (Some(_), _) => "Not kept by this browser: export it".to_owned(),
            (None, Origin::Stored(_)) if state.is_being_kept() => "Being kept …".to_owned(),
            (None, Origin::Stored(_)) => "Kept in this browser".to_owned(),
            (None, Origin::Demo) => "The demo; kept as a file once you change it".to_owned(),
            (None, Origin::Link) => "From a link; not kept yet".to_owned(),
        },
        link_text,
        link_too_long,
        can_compare: has_former,
        comparing: session.comparing,
        compare_text: match (session.comparing, of_leg) {
            (false, Some(tire)) if !tire.size.trim().is_empty() => {
                format!("Compare with the previous tire, {}", name_words(&tire.size))
            }
            (false, _) => "Compare with the previous tire".to_owned(),
            (true, None) => "Comparing; this leg has no previous tire".to_owned(),
            (true, Some(_)) => "Comparing with the previous tire".to_owned(),
        },
    }
}

/// Play and scrub.
pub(crate) fn transport(state: &State) -> Transport {
    let session = &state.session;
    let motion_text = if session.reduced_motion {
        "Your system is set to less motion: the swing is shown in steps.".to_owned()
    } else {
        String::new()
    };
    let mut transport = Transport {
        min: 0.0,
        max: 1.0,
        value: session.progress.clamp(0.0, 1.0),
        step: crate::update::SCRUB_STEP,
        text: leg_title(state),
        marks: Vec::new(),
        playing: session.playing.is_some(),
        speed: session.speed,
        motion_text,
    };
    let Some(good) = state.derived.good(session.leg) else {
        return transport;
    };
    (transport.min, transport.max) = good.range();
    transport.value = session.progress.clamp(transport.min, transport.max);
    if let Some(now) = scene::now(good, session.progress) {
        transport.text = format!("{}: {}", leg_title(state), place_text(&now, session.units));
    }
    let mut mark = |progress: f64, text: String, bad: bool| {
        transport.marks.push(TransportMark {
            progress,
            text,
            bad,
        });
    };
    for finding in &good.result.findings {
        if let Some(place) = finding.place
            && finding.question != Question::Locks
        {
            mark(
                place.progress,
                format!("{}: the governing place", question_text(finding.question)),
                finding.verdict == Verdict::Bad,
            );
        }
    }
    let clearance = &good.result.clearance;
    let contacts = clearance.pairs.iter().filter_map(|pair| {
        let part = part_text(pair.part, pair.tire);
        let what = obstacle_text(good, pair.obstacle);
        let text = format!("First contact: {part} on {what}");
        Some((pair.first_contact?.place.progress, text))
    });
    let own = clearance.own.iter().filter_map(|own| {
        let tire = part_text(MovingPart::Wheel, Some(own.tire));
        let part = part_text(own.part, None);
        let text = format!("First contact: {tire} on its own {part}");
        Some((own.first_contact?.place.progress, text))
    });
    if let Some((progress, text)) = contacts.chain(own).min_by(|a, b| a.0.total_cmp(&b.0)) {
        mark(progress, text, true);
    }
    if let Some(place) = good.result.force.stalls_at {
        mark(
            place.progress,
            "From here the pressure is not enough".to_owned(),
            true,
        );
    }
    if let Some(jam) = good.result.jams.first() {
        mark(jam.place.progress, "The leg stops here".to_owned(), true);
    }
    sort_short(&mut transport.marks, |a, b| {
        a.progress.total_cmp(&b.progress)
    });
    transport
}

/// Stored files, in their order.
pub(crate) fn files(state: &State) -> Vec<FileRow> {
    let open = state.files.open_id();
    state
        .files
        .entries
        .iter()
        .map(|entry| {
            let is_open = open == Some(entry.id.as_str());
            let id = || entry.id.clone();
            let mut actions = Vec::new();
            if entry.broken.is_some() {
                actions.push(action(
                    format!("file.text.{}", entry.id),
                    "Save its text",
                    Msg::File(File::ExportStored { id: id() }),
                ));
            } else {
                let mut open = action(
                    format!("file.open.{}", entry.id),
                    "Open",
                    Msg::File(File::Open { id: id() }),
                );
                open.enabled = !is_open;
                actions.push(open);
                actions.push(action(
                    format!("file.delete.{}", entry.id),
                    "Delete",
                    Msg::File(File::Delete { id: id() }),
                ));
            }
            for action in &mut actions {
                action.hint = format!("{} “{}”", action.label, name_words(&entry.name));
            }
            FileRow {
                id: entry.id.clone(),
                name: name_words(&entry.name),
                open: is_open,
                broken: entry.broken.clone(),
                actions,
            }
        })
        .collect()
}

/// What a new file can start from.
pub(crate) fn starters() -> Vec<Action> {
    let demo = action("new.demo".to_owned(), "The demo", Msg::File(File::OpenDemo));
    std::iter::once(demo)
        .chain(STARTERS.iter().map(|example| {
            action(
                format!("new.{}", example.key),
                example.title,
                Msg::File(File::New {
                    starter: example.key.to_owned(),
                }),
            )
        }))
        .collect()
}

/// Keys, for the help.
pub(crate) fn keys() -> Vec<KeyHelp> {
    [
        (
            "Tab",
            "to the next joint or corner of the drawing, or the next field",
        ),
        (
            "Arrow keys on a joint",
            "move it by a step; with Shift a large one, with Alt a small one",
        ),
        ("Arrow keys on the drawing", "pan the drawing"),
        (
            "Arrow up and down in a field",
            "change the number by a step; with Shift a large one, with Alt a small one",
        ),
        (
            "Escape",
            "gives up a drag or what is typed, stops the played swing",
        ),
        ("Ctrl while dragging", "no snapping"),
        (
            "Insert, Delete on a corner",
            "add a corner behind it, remove it",
        ),
        ("Space", "plays the swing, stops it"),
        ("Ctrl+Z, Ctrl+Y or Ctrl+Shift+Z", "undo, redo"),
        ("+, −, 0 on the drawing", "larger, smaller, fit"),
    ]
    .into_iter()
    .map(|(keys, text)| KeyHelp {
        keys: keys.to_owned(),
        text: text.to_owned(),
    })
    .collect()
}
