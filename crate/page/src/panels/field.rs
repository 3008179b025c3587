//! One field: label, control, unit, what was understood, what is wrong, how to measure it.

use super::action::ActionButton;
use super::head::fill;
use crate::dom::{
    Row, Rows, document, element, element_of, set_attribute, set_flag, set_hidden, set_text,
};
use crate::error::Result;
use gearswing_app::Axis;
use gearswing_app::view::{ChoiceOption, FieldKind, FieldRow};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement};

/// Id of the control of a field.
pub(super) fn node_id(path: &str) -> String {
    format!("field-{path}")
}

/// Puts the focus on a field, if it is on the page.
pub(super) fn focus(path: &str) -> Result<()> {
    let Some(node) = document()?.get_element_by_id(&node_id(path)) else {
        return Ok(());
    };
    let target = if node.has_attribute("data-path") {
        Some(node)
    } else {
        node.query_selector("[data-path]")?
    };
    if let Some(target) = target.and_then(|node| node.dyn_into::<HtmlElement>().ok()) {
        target.focus()?;
        if let Some(input) = target.dyn_ref::<HtmlInputElement>()
            && input.type_() == "text"
        {
            input.select();
        }
    }
    Ok(())
}

/// The control itself.
enum Control {
    Line(HtmlInputElement),
    Area(HtmlTextAreaElement),
    Fixed(HtmlElement),
    Choice(HtmlSelectElement),
    Switches(HtmlElement),
}

impl Control {
    fn make(row: &FieldRow) -> Result<Self> {
        let id = node_id(&row.path);
        Ok(match row.kind {
            FieldKind::Number | FieldKind::Text => {
                let input: HtmlInputElement = element_of("input", "")?;
                input.set_type("text");
                input.set_id(&id);
                input.set_attribute("data-path", &row.path)?;
                input.set_attribute("autocomplete", "off")?;
                input.set_attribute("spellcheck", "false")?;
                if row.kind == FieldKind::Number {
                    input.set_attribute("data-number", "")?;
                    input.set_attribute("autocapitalize", "off")?;
                }
                Self::Line(input)
            }
            FieldKind::LongText => {
                let area: HtmlTextAreaElement = element_of("textarea", "")?;
                area.set_rows(3);
                area.set_id(&id);
                area.set_attribute("data-path", &row.path)?;
                Self::Area(area)
            }
            FieldKind::ReadOnly => {
                let output = element("output", "")?;
                output.set_id(&id);
                Self::Fixed(output)
            }
            FieldKind::Choice { .. } => {
                let select: HtmlSelectElement = element_of("select", "")?;
                select.set_id(&id);
                select.set_attribute("data-path", &row.path)?;
                Self::Choice(select)
            }
            FieldKind::Switches { .. } => {
                let set = element("span", "switches")?;
                set.set_id(&id);
                set.set_attribute("role", "group")?;
                Self::Switches(set)
            }
        })
    }

    fn node(&self) -> &HtmlElement {
        match self {
            Self::Line(node) => node,
            Self::Area(node) => node,
            Self::Choice(node) => node,
            Self::Fixed(node) | Self::Switches(node) => node,
        }
    }

    fn patch(&self, old: Option<&FieldRow>, new: &FieldRow) -> Result<()> {
        match self {
            // A text that is being typed is left alone.
            Self::Line(input) => {
                set_attribute(input, "placeholder", &new.if_empty)?;
                if input.value() != new.value && !input.has_attribute("data-typing") {
                    input.set_value(&new.value);
                }
            }
            Self::Area(area) => {
                if area.value() != new.value && !area.has_attribute("data-typing") {
                    area.set_value(&new.value);
                }
            }
            Self::Fixed(node) => set_text(node, &new.value),
            Self::Choice(select) => {
                if let FieldKind::Choice { options, chosen } = &new.kind {
                    if old.is_none_or(|old| old.kind != new.kind) {
                        let pairs = options.iter().map(|o| (o.key.as_str(), o.label.as_str()));
                        fill(select, pairs)?;
                    }
                    select.set_value(chosen);
                }
            }
            Self::Switches(set) => {
                if let FieldKind::Switches { options } = &new.kind {
                    switches(set, &new.path, options)?;
                }
            }
        }
        Ok(())
    }
}

/// Check boxes of a set; made anew only when the options differ.
fn switches(set: &Element, path: &str, options: &[(ChoiceOption, bool)]) -> Result<()> {
    let boxes = set.query_selector_all("input")?;
    let same = boxes.length() as usize == options.len()
        && (0u32..).zip(options).all(|(at, (option, _))| {
            boxes
                .item(at)
                .and_then(|node| node.dyn_into::<HtmlInputElement>().ok())
                .is_some_and(|input| input.value() == option.key)
        });
    if !same {
        set.set_text_content(None);
        for (option, _) in options {
            let label = element("label", "")?;
            let input: HtmlInputElement = element_of("input", "")?;
            input.set_type("checkbox");
            input.set_value(&option.key);
            input.set_attribute("data-path", path)?;
            label.append_child(&input)?;
            label.append_with_str_1(&format!(" {}", option.label))?;
            set.append_child(&label)?;
        }
    }
    let boxes = set.query_selector_all("input")?;
    for (at, (_, on)) in (0u32..).zip(options) {
        if let Some(input) = boxes.item(at)
            && let Ok(input) = input.dyn_into::<HtmlInputElement>()
        {
            input.set_checked(*on);
        }
    }
    Ok(())
}

impl FieldNode {
    /// Writes the label; of a coordinate the name of its point and that of its axis apart.
    fn label(&self, old: Option<&FieldRow>, new: &FieldRow) -> Result<()> {
        let axis = match new.axis {
            None => "",
            Some(Axis::X) => "x",
            Some(Axis::Y) => "y",
        };
        set_attribute(&self.node, "data-axis", axis)?;
        let parts = new.label.rsplit_once(',').filter(|_| !axis.is_empty());
        let Some((point, coordinate)) = parts else {
            set_text(&self.label, &new.label);
            return Ok(());
        };
        if old.is_none_or(|old| old.label != new.label) {
            self.label.set_text_content(None);
            for (class, text) in [
                ("point", point),
                ("comma", ", "),
                ("axis", coordinate.trim_start()),
            ] {
                let part = element("span", class)?;
                part.set_text_content(Some(text));
                self.label.append_child(&part)?;
            }
        }
        Ok(())
    }
}

/// Letters of an option that a list beside its label shows.
const BESIDE_LABEL: usize = 15;

/// Whether a field needs the whole width of its group.
fn is_wide(kind: &FieldKind) -> bool {
    let FieldKind::Choice { options, .. } = kind else {
        return false;
    };
    let mut lengths = options.iter().map(|option| option.label.chars().count());
    lengths.any(|length| length > BESIDE_LABEL)
}

/// A field with everything around it.
pub(super) struct FieldNode {
    node: HtmlElement,
    label: HtmlElement,
    control: Control,
    unit: HtmlElement,
    echo: HtmlElement,
    error: HtmlElement,
    help: HtmlElement,
    actions: Rows<ActionButton>,
}

impl Row for FieldNode {
    type Item = FieldRow;

    fn key(item: &FieldRow) -> String {
        let kind = match item.kind {
            FieldKind::Number => "number",
            FieldKind::ReadOnly => "fixed",
            FieldKind::Text => "text",
            FieldKind::LongText => "long",
            FieldKind::Choice { .. } => "choice",
            FieldKind::Switches { .. } => "switches",
        };
        format!("{kind} {}", item.path)
    }

    fn make(item: &FieldRow) -> Result<Self> {
        let id = node_id(&item.path);
        let node = element("div", "field")?;
        let control = Control::make(item)?;
        let label = match control {
            Control::Fixed(_) | Control::Switches(_) => element("span", "label")?,
            _ => {
                let label = element("label", "label")?;
                label.set_attribute("for", &id)?;
                label
            }
        };
        label.set_id(&format!("{id}-label"));
        if matches!(control, Control::Switches(_) | Control::Fixed(_)) {
            control
                .node()
                .set_attribute("aria-labelledby", &format!("{id}-label"))?;
        }
        let entry = element("span", "entry")?;
        let unit = element("span", "unit quiet")?;
        entry.append_child(control.node())?;
        entry.append_child(&unit)?;
        let actions = element("span", "acts row-acts")?;
        let echo = element("p", "echo")?;
        let error = element("p", "error")?;
        let help = element("p", "help quiet")?;
        for (part, name) in [(&echo, "echo"), (&error, "error"), (&help, "help")] {
            part.set_id(&format!("{id}-{name}"));
        }
        control.node().set_attribute(
            "aria-describedby",
            &format!("{id}-error {id}-echo {id}-help"),
        )?;
        for part in [&label, &entry, &error, &echo, &help, &actions] {
            node.append_child(part)?;
        }
        Ok(Self {
            node,
            label,
            control,
            unit,
            echo,
            error,
            help,
            actions: Rows::new(actions.into()),
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, old: Option<&FieldRow>, new: &FieldRow) -> Result<()> {
        self.label(old, new)?;
        self.control.patch(old, new)?;
        set_text(&self.unit, &new.unit);
        set_hidden(&self.unit, new.unit.is_empty())?;
        set_text(&self.echo, &new.echo);
        set_hidden(&self.echo, new.echo.is_empty())?;
        let error = new.error.as_deref().unwrap_or_default();
        set_text(&self.error, error);
        set_hidden(&self.error, error.is_empty())?;
        let invalid = if error.is_empty() { "false" } else { "true" };
        set_attribute(self.control.node(), "aria-invalid", invalid)?;
        let help = [new.help.as_str(), new.range.as_str()]
            .into_iter()
            .filter(|text| !text.is_empty())
            .collect::<Vec<_>>()
            .join(" ");
        set_text(&self.help, &help);
        set_hidden(&self.help, help.is_empty())?;
        set_flag(&self.node, "data-marked", new.marked)?;
        set_flag(&self.node, "data-wide", is_wide(&new.kind))?;
        self.actions.patch(&new.actions)
    }
}
