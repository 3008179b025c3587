//! The label at a point that is moved: where it is, and how the numbers that decide stand.
use super::labels::corners;
use super::pen::{TEXT_PX, text_width_px};
use super::{Anchor, Handle, Pen, Role, ScreenPoint, Shape};
use crate::state::State;
use crate::view::drag_lines;

/// From line to line (CSS px).
const LINE_PX: f64 = 16.0;
/// Between text and frame, and between frame and edge (CSS px).
const AIR_PX: f64 = 7.0;
/// Between point and label: under a finger, and beside a mouse (CSS px).
const FINGER_PX: f64 = 64.0;
const MOUSE_PX: f64 = 26.0;
/// What is kept free around the point (CSS px).
const FREE_PX: f64 = 22.0;
/// The words under the detail (CSS px).
const CAPTION_PX: f64 = 44.0;
/// A joint or corner under the label counts as so much of what is kept free (px²).
const POINT_PX2: f64 = 300.0;
/// Width of a letter as a share of the text size (ratio), as wide as they are on the whole.
const LETTER: f64 = 0.51;

/// Left, top, right, bottom (CSS px).
type Frame = [f64; 4];

/// Draws the label of the point that is moved, if one is, in the place of the texts behind it. `has_detail`: the
/// detail stands in its corner. `still`: the marks before this one stay.
pub(super) fn label(
    pen: &mut Pen,
    state: &State,
    handles: &[Handle],
    has_detail: bool,
    still: usize,
) {
    let (across, _) = pen.view.size_px();
    let most = ((across - 6.0 * AIR_PX) / (LETTER * TEXT_PX)) as usize;
    let lines: Vec<String> = drag_lines(state)
        .iter()
        .flat_map(|line| wrapped(line, most))
        .collect();
    let held = handles.iter().find(|handle| handle.selected);
    let (Some(held), false) = (held, lines.is_empty()) else {
        return;
    };
    let letters = lines.iter().map(|line| line.chars().count()).max();
    let width = letters.unwrap_or(0) as f64 * LETTER * TEXT_PX + 2.0 * AIR_PX;
    let height = lines.len() as f64 * LINE_PX + 2.0 * AIR_PX;
    let mut kept_free = corners(pen.view.size_px()).to_vec();
    let point = around(held.at, FREE_PX);
    if has_detail {
        kept_free.push(detail(pen.view.size_px(), state.session.detail_px));
    }
    let gap = if state.session.by_touch {
        FINGER_PX
    } else {
        MOUSE_PX
    };
    let hidden = |place: &Frame| {
        let under = handles
            .iter()
            .filter(|handle| overlap(place, &around(handle.at, 1.0)) > 0.0);
        let free = kept_free.iter().map(|free| overlap(place, free));
        // the point itself before all else
        100.0 * overlap(place, &point) + free.sum::<f64>() + POINT_PX2 * under.count() as f64
    };
    let frame = place(held.at, (width, height), gap, pen.view.size_px(), hidden);
    let behind = pen.marks.split_off(still.min(pen.marks.len()));
    let seen = behind
        .into_iter()
        .filter(|mark| !is_text_in(&frame, &mark.shape));
    pen.marks.extend(seen);
    let [left, top, right, bottom] = frame;
    let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
    pen.put(
        Role::Note,
        Shape::Path {
            points: corners
                .map(|(x_px, y_px)| ScreenPoint { x_px, y_px })
                .to_vec(),
            closed: true,
            filled: true,
        },
    );
    for (at, line) in lines.into_iter().enumerate() {
        let role = if at == 0 { Role::NoteHead } else { Role::Label };
        let at = ScreenPoint {
            x_px: left + AIR_PX,
            y_px: top + AIR_PX + (at as f64 + 0.5) * LINE_PX,
        };
        pen.text(role, at, line, Anchor::Start);
    }
}

/// A text in lines of so many letters at the most, where its words allow it.
fn wrapped(text: &str, most: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split(' ') {
        let room = lines.last().map_or(0, |line| line.chars().count());
        match lines.last_mut() {
            Some(line) if line.is_empty() => line.push_str(word),
            Some(line) if room + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

fn around(at: ScreenPoint, by: f64) -> Frame {
    [at.x_px - by, at.y_px - by, at.x_px + by, at.y_px + by]
}

/// A drawing narrower than this has its tools in the lower right corner, which are so high (CSS px).
const NARROW_PX: f64 = 560.0;
const TOOLS_PX: f64 = 50.0;

/// Where the page puts the detail: in the lower right corner, its words below it.
fn detail((width, height): (f64, f64), side: f64) -> Frame {
    let left = width - side - 3.0 * AIR_PX;
    // on a narrow one it stands over the tools
    let tools = if width < NARROW_PX { TOOLS_PX } else { 0.0 };
    [left, height - side - CAPTION_PX - tools, width, height]
}

/// Area that two have in common (px²).
fn overlap(a: &Frame, b: &Frame) -> f64 {
    let along = |low: usize, high: usize| (a[high].min(b[high]) - a[low].max(b[low])).max(0.0);
    along(0, 2) * along(1, 3)
}

/// Whether a text stands in a frame.
fn is_text_in(frame: &Frame, shape: &Shape) -> bool {
    let Shape::Text {
        at,
        text,
        anchor,
        size_px,
    } = shape
    else {
        return false;
    };
    let width = text_width_px(text, *size_px);
    let left = match anchor {
        Anchor::Start => at.x_px,
        Anchor::Middle => at.x_px - width / 2.0,
        Anchor::End => at.x_px - width,
    };
    let half = size_px / 2.0;
    overlap(frame, &[left, at.y_px - half, left + width, at.y_px + half]) > 0.0
}

/// Above the point, else beside or below it, where it hides least of what is to be seen.
fn place(
    at: ScreenPoint,
    (width, height): (f64, f64),
    gap: f64,
    (across, down): (f64, f64),
    hidden: impl Fn(&Frame) -> f64,
) -> Frame {
    let within = |left: f64, top: f64| {
        let left = left.min(across - width - AIR_PX).max(AIR_PX);
        let top = top.min(down - height - AIR_PX).max(AIR_PX);
        [left, top, left + width, top + height]
    };
    let lefts = [-width / 2.0, gap, -gap - width];
    let tops = [-gap - height, -height / 2.0, gap];
    let all = tops
        .into_iter()
        .flat_map(|top| lefts.map(|left| (left, top)));
    let mut best: Option<(f64, Frame)> = None;
    for (left, top) in all {
        let frame = within(at.x_px + left, at.y_px + top);
        let hides = hidden(&frame);
        if best.is_none_or(|(least, _)| hides < least) {
            best = Some((hides, frame));
        }
    }
    best.map_or_else(|| within(at.x_px, at.y_px), |(_, frame)| frame)
}
