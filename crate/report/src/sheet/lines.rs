//! Lines of at most 78 characters.

/// Width of a line (characters): fits a terminal and a printed page.
const WIDTH: usize = 78;

/// A text being written line by line.
pub(super) struct Lines {
    text: String,
}

impl Lines {
    pub(super) fn new() -> Self {
        Self {
            text: String::new(),
        }
    }

    pub(super) fn into_text(self) -> String {
        self.text
    }

    pub(super) fn blank(&mut self) {
        self.text.push('\n');
    }

    /// A heading with a rule under it and space above.
    pub(super) fn heading(&mut self, title: &str) {
        self.blank();
        self.text(0, title);
        self.text(0, &"=".repeat(title.chars().count().min(WIDTH)));
    }

    /// A block that already has its lines.
    pub(super) fn block(&mut self, block: &str) {
        self.text.push_str(block);
    }

    /// A paragraph, broken at spaces.
    pub(super) fn text(&mut self, indent: usize, text: &str) {
        self.item(indent, "", text);
    }

    /// A paragraph with a mark before its first line; the others stand under its text.
    pub(super) fn item(&mut self, indent: usize, mark: &str, text: &str) {
        let hang = " ".repeat(indent + mark.chars().count());
        let mut line = format!("{}{mark}", " ".repeat(indent));
        let mut is_empty = true;
        for word in pieces(text) {
            if !is_empty && line.chars().count() + 1 + word.chars().count() > WIDTH {
                self.push_line(&line);
                line.clone_from(&hang);
                is_empty = true;
            }
            if !is_empty {
                line.push(' ');
            }
            line.push_str(&word);
            is_empty = false;
        }
        self.push_line(&line);
    }

    fn push_line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }
}

/// The words of a text; a number stays with its unit.
fn pieces(text: &str) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    let mut after_number = false;
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        match pieces.last_mut().filter(|_| after_number) {
            Some(number) => {
                number.push(' ');
                number.push_str(word);
                after_number = false;
            }
            None => {
                pieces.push(word.to_owned());
                after_number = is_number(word);
            }
        }
    }
    pieces
}

fn is_number(word: &str) -> bool {
    let bare = word.trim_start_matches(['+', '−', '(']);
    bare.starts_with(|c: char| c.is_ascii_digit())
        && bare
            .chars()
            .all(|c| c.is_ascii_digit() || ".,/".contains(c))
        && bare.ends_with(|c: char| c.is_ascii_digit())
}
