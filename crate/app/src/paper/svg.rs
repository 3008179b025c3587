//! A scene as a picture in SVG 1.1, node by node: black on white, every width as on the screen. The page puts the
//! nodes where they belong; a file has them as text.
use crate::scene::{Anchor, Mark, Role, Scene, ScreenPoint, Shape, style};

/// The name space of SVG.
pub const NAMESPACE: &str = "http://www.w3.org/2000/svg";

/// A node of a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    /// Its tag.
    pub tag: &'static str,
    /// Its attributes.
    pub attributes: Vec<(&'static str, String)>,
    /// The text in it.
    pub text: String,
    /// The nodes in it.
    pub nodes: Vec<Node>,
}

impl Node {
    fn new(tag: &'static str) -> Self {
        Self {
            tag,
            attributes: Vec::new(),
            text: String::new(),
            nodes: Vec::new(),
        }
    }

    fn with(mut self, name: &'static str, value: impl ToString) -> Self {
        self.attributes.push((name, value.to_string()));
        self
    }

    /// A length or a place, to a hundredth of a pixel (CSS px).
    fn at(self, name: &'static str, value_px: f64) -> Self {
        self.with(name, format!("{value_px:.2}"))
    }

    /// The node as the text of a file.
    #[must_use]
    pub fn to_text(&self) -> String {
        let attributes = self.attributes.iter();
        let attributes =
            attributes.map(|(name, value)| [" ", name, "=\"", &escaped(value), "\""].concat());
        let inside: String = self.nodes.iter().map(Self::to_text).collect();
        let tag = self.tag;
        let attributes: String = attributes.collect();
        format!("<{tag}{attributes}>{}{inside}</{tag}>", escaped(&self.text))
    }
}

/// A text that is no markup, whatever stands in it.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut all = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => all.push_str("&amp;"),
            '<' => all.push_str("&lt;"),
            '>' => all.push_str("&gt;"),
            '"' => all.push_str("&quot;"),
            // not allowed in XML 1.0, section 2.2
            letter if letter.is_control() || matches!(letter, '\u{fffe}' | '\u{ffff}') => {
                all.push(' ');
            }
            letter => all.push(letter),
        }
    }
    all
}

/// The picture of a scene at a share of its size; points that can be moved and cursors are for the screen.
pub(super) fn picture(scene: &Scene, share: f64) -> Node {
    let (width, height) = (scene.width_px, scene.height_px);
    let mut picture = Node::new("svg")
        .with("xmlns", NAMESPACE)
        .with("width", width * share)
        .with("height", height * share)
        .with("viewBox", format!("0 0 {width} {height}"))
        .with("font-family", "sans-serif")
        .with("stroke-linejoin", "round");
    let marks = || scene.marks.iter().filter(|mark| is_printed(mark.role));
    // texts come last, as on the screen
    picture.nodes.extend(marks().filter_map(outline));
    picture.nodes.extend(marks().filter_map(words));
    picture
}

/// A square of so many squares a side, of which some are dark, row by row as one path.
pub(super) fn squares(side: i32, side_px: f64, dark: impl Fn(i32, i32) -> bool) -> Node {
    let mut way = String::new();
    for y in 0..side {
        let mut x = 0;
        while x < side {
            let from = x;
            while x < side && dark(x, y) {
                x += 1;
            }
            if x > from {
                for (letter, number) in [("M", from), (" ", y), ("h", x - from), ("v1h", from - x)]
                {
                    way += letter;
                    way += &number.to_string();
                }
                way.push('z');
            }
            x += 1;
        }
    }
    let mut picture = Node::new("svg")
        .with("xmlns", NAMESPACE)
        .with("width", side_px)
        .with("height", side_px)
        .with("viewBox", format!("0 0 {side} {side}"))
        // no gray between two dark ones
        .with("shape-rendering", "crispEdges");
    picture.nodes.push(Node::new("path").with("d", way));
    picture
}

fn is_printed(role: Role) -> bool {
    !matches!(
        role,
        Role::Handle
            | Role::HandleSelected
            | Role::Snap
            | Role::Reach
            | Role::Note
            | Role::NoteHead
            | Role::Cursor
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
        | Role::Faded
        | Role::FadedText
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

/// A line, an area or a circle.
fn outline(mark: &Mark) -> Option<Node> {
    let (node, is_filled) = match &mark.shape {
        Shape::Path {
            points,
            closed,
            filled,
        } => (path(points, *closed), *filled),
        Shape::Circle {
            centre,
            radius_px,
            filled,
        } => {
            let node = Node::new("circle").at("cx", centre.x_px);
            (node.at("cy", centre.y_px).at("r", *radius_px), *filled)
        }
        Shape::Text { .. } => return None,
    };
    let style = style(mark.role);
    let inside = if is_filled { fill(mark.role) } else { "none" };
    let mut node = node.with("fill", inside);
    if !is_filled || style.outlined {
        node = node
            .with("stroke", ink(mark.role))
            .with("stroke-width", style.width);
        if !style.dash.is_empty() {
            let dashes: Vec<String> = style.dash.iter().map(f64::to_string).collect();
            node = node.with("stroke-dasharray", dashes.join(","));
        }
    }
    Some(node)
}

fn path(points: &[ScreenPoint], closed: bool) -> Node {
    let to = |(at, point): (usize, &ScreenPoint)| {
        let step = if at == 0 { "M" } else { "L" };
        format!("{step}{:.2},{:.2}", point.x_px, point.y_px)
    };
    let mut way: String = points.iter().enumerate().map(to).collect();
    if closed {
        way.push('Z');
    }
    Node::new("path").with("d", way)
}

/// A text with a halo of the paper.
fn words(mark: &Mark) -> Option<Node> {
    let Shape::Text {
        at,
        text,
        anchor,
        size_px,
    } = &mark.shape
    else {
        return None;
    };
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    let weight = if style(mark.role).bold { "700" } else { "400" };
    let node = Node::new("text")
        .at("x", at.x_px)
        .at("y", at.y_px)
        .with("font-size", size_px)
        .with("font-weight", weight)
        .with("text-anchor", anchor)
        .with("dominant-baseline", "central")
        .with("paint-order", "stroke")
        .with("stroke", "#fff")
        .with("stroke-width", 3);
    Some(Node {
        text: text.clone(),
        ..node
    })
}
