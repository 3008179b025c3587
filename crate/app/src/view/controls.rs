//! Toolbar, transport, notices, files.
use gearswing_gear::field::previous_tire;
use gearswing_gearfile::link::LINK_LIMIT;
use gearswing_gearfile::{DEMO, ExampleKind, STARTERS};
use gearswing_report::fields::path_words;
use gearswing_report::name_words;
use gearswing_report::page::header::{Keeping, compare_words, keeping_words};
use gearswing_report::page::keys::KEYS;
use gearswing_report::page::link::{self, Link, link_line};
use gearswing_report::page::names::{place_words, travel_short, travel_words};
use gearswing_report::page::notes::last_words;
use gearswing_report::page::nudge::step_words;
use gearswing_report::page::transport as transport_words;
use gearswing_report::page::working::working_line;
use gearswing_report::page::{changes, files as file_words, history};

use super::notes;
use super::page::{Action, KeyHelp, ListRow, Notice, SharedBanner, Transport, TransportMark};
use super::readout::shown_leg;
use super::toolbar::{StepsText, Toolbar};
use crate::msg::{Compare, File, Msg};
use crate::scene;
use crate::state::{Gesture, LinkState, Origin, State, reach};

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
    let mut actions = vec![
        action(
            "shared.keep".to_owned(),
            link::KEEP,
            Msg::File(File::KeepShared),
        ),
        action(
            "shared.leave".to_owned(),
            link::LEAVE,
            Msg::File(File::LeaveShared),
        ),
    ];
    let own = state.files.own.as_ref();
    if own.is_some() {
        actions.push(action(
            "shared.compare".to_owned(),
            changes::WITH_OWN,
            Msg::Compare(Compare::WithOwn),
        ));
    }
    Some(SharedBanner {
        text: link::banner(
            &state.gear().name,
            last_words(state.gear()).as_deref(),
            own.map(|own| (own.how, own.name.as_str())),
        ),
        actions,
    })
}

/// What is being worked out.
pub(crate) fn working(state: &State) -> String {
    let work = state.working.or_else(|| state.later.work());
    work.map_or_else(String::new, working_line)
}

/// Top row of controls.
pub(crate) fn toolbar(state: &State) -> Toolbar {
    let document = &state.document;
    let session = &state.session;
    let previous = state.gear().previous();
    let comparing = previous.is_some() && state.gear().before == previous;
    let of_leg = previous_tire(state.gear(), session.leg);
    let link = match &state.files.link {
        LinkState::Ready(length) => Link::Ready(*length),
        LinkState::TooLong(length) => Link::TooLong(*length, LINK_LIMIT),
        LinkState::Refused(reason) => Link::Refused(reason),
    };
    let reach = reach(state.files.link_address());
    let keeping = match (&state.files.refused, state.origin()) {
        (Some(_), _) => Keeping::Refused,
        (None, Origin::Stored(_)) if state.is_being_kept() => Keeping::UnderWay,
        (None, Origin::Stored(_)) => Keeping::Kept,
        (None, Origin::Demo) => Keeping::Demo,
        (None, Origin::Link) => Keeping::Link,
    };
    let entry = state.entry_to_undo().map(|path| {
        let of = path_words(path, state.gear());
        history::step_words(history::Step::Entry { of: &of })
    });
    let undo = entry.or_else(|| document.undo_text().map(str::to_owned));
    Toolbar {
        can_undo: undo.is_some(),
        undo_text: undo.map_or_else(String::new, |step| history::undo_hint(&step)),
        can_redo: document.redo_text().is_some(),
        redo_text: document
            .redo_text()
            .map_or_else(String::new, history::redo_hint),
        units: session.units,
        theme: session.theme,
        snap: !session.snap_off,
        slide: scene::stroke(state).map(|_| session.slide),
        note_here: notes::add_here(state),
        note_selected: notes::add_selected(state),
        loads: session.loads,
        is_demo: *state.origin() == Origin::Demo,
        file_name: name_words(&state.gear().name),
        stored_text: keeping_words(keeping).to_owned(),
        link_text: link_line(link),
        link_too_long: !matches!(link, Link::Ready(_)),
        link_reach: link::reach_line(reach, state.files.link_address()),
        copy_text: link::copy_words(reach),
        home: state.files.home.clone(),
        previous,
        comparing,
        compare_text: compare_words(comparing, of_leg.map(|tire| tire.size.as_str())),
    }
}

/// A point that is moved by steps; none while it is dragged.
pub(crate) fn steps(state: &State) -> Option<StepsText> {
    let session = &state.session;
    let idle = !matches!(session.gesture, Gesture::Drag { .. });
    let path = state.stepped().filter(|_| idle)?;
    let fine = session.fine_steps;
    Some(StepsText {
        name: scene::point_name(state.gear(), path),
        step_text: step_words(fine, session.units).to_owned(),
        fine,
    })
}

/// Play and scrub.
pub(crate) fn transport(state: &State) -> Transport {
    let session = &state.session;
    let motion_text = if session.reduced_motion {
        transport_words::LESS_MOTION.to_owned()
    } else {
        String::new()
    };
    let mut transport = Transport {
        min: 0.0,
        max: 1.0,
        value: session.progress.clamp(0.0, 1.0),
        step: crate::update::SCRUB_STEP,
        text: shown_leg(state),
        place: String::new(),
        travel: String::new(),
        travel_short: String::new(),
        marks: Vec::new(),
        mark_before: false,
        mark_after: false,
        playing: session.playing.is_some(),
        speed: session.speed,
        way_down: session.way_down,
        motion_text,
    };
    let Some(good) = state.derived.good(session.leg) else {
        return transport;
    };
    (transport.min, transport.max) = good.range();
    transport.value = session.progress.clamp(transport.min, transport.max);
    if let Some(now) = scene::now(good, session.progress) {
        transport.place = place_words(&now.pose.place, session.units);
        transport.travel = travel_words(&now.pose.place, session.units);
        transport.travel_short = travel_short(&now.pose.place, session.units);
        transport.text = transport_words::leg_at(&shown_leg(state), &transport.place);
    }
    transport.mark_before = scene::next_mark(state, false).is_some();
    transport.mark_after = scene::next_mark(state, true).is_some();
    transport.marks = scene::strip_marks(state, good)
        .into_iter()
        .map(|mark| TransportMark {
            progress: mark.progress,
            text: transport_words::mark_words(mark.what, session.units),
            bad: mark.is_bad(),
        })
        .collect();
    transport
}

/// Stored files, in their order.
pub(crate) fn files(state: &State) -> Vec<ListRow> {
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
                    file_words::SAVE_TEXT,
                    Msg::File(File::ExportStored { id: id() }),
                ));
            } else {
                let mut open = action(
                    format!("file.open.{}", entry.id),
                    file_words::OPEN,
                    Msg::File(File::Open { id: id() }),
                );
                open.enabled = !is_open;
                actions.push(open);
                actions.push(action(
                    format!("file.delete.{}", entry.id),
                    file_words::DELETE,
                    Msg::File(File::Delete { id: id() }),
                ));
            }
            for action in &mut actions {
                action.hint = file_words::act_on(&action.label, &entry.name);
            }
            ListRow {
                id: entry.id.clone(),
                name: name_words(&entry.name),
                text: entry.broken.clone().unwrap_or_default(),
                problem: entry.broken.is_some(),
                current: is_open,
                actions,
            }
        })
        .collect()
}

/// What a new file can start from.
pub(crate) fn starters() -> Vec<Action> {
    std::iter::once(&DEMO)
        .chain(&STARTERS)
        .map(|example| {
            let msg = match example.kind {
                ExampleKind::Demo => File::OpenDemo,
                _ => File::New {
                    starter: example.key.to_owned(),
                },
            };
            let title = file_words::example_title(example.kind);
            action(format!("new.{}", example.key), title, Msg::File(msg))
        })
        .collect()
}

/// Keys, for the help.
pub(crate) fn keys() -> Vec<KeyHelp> {
    KEYS.into_iter()
        .map(|(keys, text)| KeyHelp {
            keys: keys.to_owned(),
            text: text.to_owned(),
        })
        .collect()
}
