//! A scene as a picture of its own in SVG 1.1: black on white, every width as on the screen.
use std::fmt::Write as _;

use crate::scene::{Anchor, Mark, Role, Scene, ScreenPoint, Shape, style};

/// The picture of a scene at a share of its size; points that can be moved and cursors are for the screen.
pub(super) fn svg(scene: &Scene, share: f64) -> String {
    let (width, height) = (scene.width_px, scene.height_px);
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{}\" height=\"{}\" viewBox=\"0 0 {width} {height}\" font-family=\"sans-serif\" stroke-linejoin=\"round\">",
        width * share,
        height * share
    );
    let marks = || scene.marks.iter().filter(|mark| is_printed(mark.role));
    // texts come last, as on the screen
    for of_texts in [false, true] {
        let these = marks().filter(|mark| matches!(mark.shape, Shape::Text { .. }) == of_texts);
        for mark in these {
            put(&mut text, mark);
        }
    }
    text.push_str("</svg>");
    text
}

fn is_printed(role: Role) -> bool {
    !matches!(
        role,
        Role::Handle | Role::HandleSelected | Role::Snap | Role::Cursor
    )
}

/// Gray that is told from black on any printer.
const GRAY: &str = "#777";

fn ink(role: Role) -> &'static str {
    match role {
        Role::StructureHatch
        | Role::Ghost
        | Role::Envelope
        | Role::Leader
        | Role::Before
        | Role::Grid
        | Role::GridMajor => GRAY,
        _ => "#000",
    }
}

fn fill(role: Role) -> &'static str {
    match role {
        Role::MovingFill => "#e8e8e8",
        Role::Joint => "#fff",
        _ => ink(role),
    }
}

fn put(text: &mut String, mark: &Mark) {
    let style = style(mark.role);
    let filled = match &mark.shape {
        Shape::Path { filled, .. } | Shape::Circle { filled, .. } => *filled,
        Shape::Text { .. } => {
            words(text, mark, style.bold);
            return;
        }
    };
    match &mark.shape {
        Shape::Path { points, closed, .. } => {
            text.push_str("<path d=\"");
            for (at, point) in points.iter().enumerate() {
                text.push(if at == 0 { 'M' } else { 'L' });
                place(text, point);
            }
            text.push_str(if *closed { "Z\"" } else { "\"" });
        }
        Shape::Circle {
            centre, radius_px, ..
        } => {
            let ScreenPoint { x_px, y_px } = centre;
            // a text grows without an error
            let _ = write!(
                text,
                "<circle cx=\"{x_px:.2}\" cy=\"{y_px:.2}\" r=\"{radius_px:.2}\""
            );
        }
        Shape::Text { .. } => {}
    }
    let inside = if filled { fill(mark.role) } else { "none" };
    let _ = write!(text, " fill=\"{inside}\"");
    if !filled || style.outlined {
        let _ = write!(
            text,
            " stroke=\"{}\" stroke-width=\"{}\"",
            ink(mark.role),
            style.width
        );
        if !style.dash.is_empty() {
            let dashes: Vec<String> = style.dash.iter().map(f64::to_string).collect();
            let _ = write!(text, " stroke-dasharray=\"{}\"", dashes.join(" "));
        }
    }
    text.push_str("/>");
}

fn place(text: &mut String, point: &ScreenPoint) {
    let _ = write!(text, "{:.2} {:.2}", point.x_px, point.y_px);
}

fn words(text: &mut String, mark: &Mark, bold: bool) {
    let Shape::Text {
        at,
        text: words,
        anchor,
        size_px,
    } = &mark.shape
    else {
        return;
    };
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    let weight = if bold { " font-weight=\"700\"" } else { "" };
    let _ = write!(
        text,
        "<text x=\"{:.2}\" y=\"{:.2}\" font-size=\"{size_px}\" text-anchor=\"{anchor}\" dominant-baseline=\"central\" paint-order=\"stroke\" stroke=\"#fff\" stroke-width=\"3\"{weight}>",
        at.x_px, at.y_px
    );
    for letter in words.chars() {
        match letter {
            '&' => text.push_str("&amp;"),
            '<' => text.push_str("&lt;"),
            '>' => text.push_str("&gt;"),
            // XML has no word for these
            letter if letter.is_control() => text.push(' '),
            letter => text.push(letter),
        }
    }
    text.push_str("</text>");
}
