//! Columns that line up.

/// Side on which a column's texts line up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Words.
    Left,
    /// Numbers.
    Right,
}

/// One column of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// What stands over it; may be empty.
    pub head: String,
    /// Words or numbers.
    pub align: Align,
    /// Texts from the top.
    pub cells: Vec<String>,
}

impl Column {
    pub(crate) fn new(head: impl Into<String>, align: Align, cells: Vec<String>) -> Self {
        Self {
            head: head.into(),
            align,
            cells,
        }
    }

    fn width(&self) -> usize {
        self.cells
            .iter()
            .chain([&self.head])
            .map(|text| text.chars().count())
            .max()
            .unwrap_or(0)
    }

    fn padded(&self, text: &str, width: usize) -> String {
        let fill = " ".repeat(width.saturating_sub(text.chars().count()));
        match self.align {
            Align::Left => format!("{text}{fill}"),
            Align::Right => format!("{fill}{text}"),
        }
    }
}

/// Columns side by side under their heads, each line indented.
pub(crate) fn aligned(indent: &str, columns: &[Column]) -> String {
    let rows = columns
        .iter()
        .map(|column| column.cells.len())
        .max()
        .unwrap_or(0);
    let widths: Vec<usize> = columns.iter().map(Column::width).collect();
    let line = |text_of: &dyn Fn(&Column) -> String| {
        let cells: Vec<String> = columns
            .iter()
            .zip(&widths)
            .map(|(column, &width)| column.padded(&text_of(column), width))
            .collect();
        format!("{indent}{}", cells.join("  "))
            .trim_end()
            .to_owned()
            + "\n"
    };
    let mut table = line(&|column| column.head.clone());
    for row in 0..rows {
        table.push_str(&line(&|column| {
            column.cells.get(row).cloned().unwrap_or_default()
        }));
    }
    table
}
