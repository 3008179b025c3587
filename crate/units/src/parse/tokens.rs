//! Typing variants made one, and a place in the text.

/// A space that may part thousands: typed on purpose, never by accident.
pub(super) const GROUP_SPACE: char = '\u{a0}';

/// Maps the many signs for one thing to one sign, drops invisible marks.
pub(super) fn clean(text: &str) -> Vec<char> {
    let one = text.chars().filter_map(|c| match c {
        // Zero width space, direction marks, word joiner, byte order mark.
        '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2060}' | '\u{feff}' => None,
        // Figure, thin, narrow and plain no-break space.
        '\u{2007}' | '\u{2009}' | '\u{200a}' | '\u{202f}' | '\u{a0}' => Some(GROUP_SPACE),
        c if c.is_whitespace() => Some(' '),
        // Hyphens, dashes, minus.
        '\u{2010}'..='\u{2013}' | '\u{2212}' => Some('-'),
        // Fraction and division slash.
        '\u{2044}' | '\u{2215}' => Some('/'),
        // Prime, apostrophes.
        '′' | '’' | '‘' | '´' | '`' => Some('\''),
        '″' | '”' | '“' | '„' => Some('"'),
        'º' | '˚' => Some('°'),
        c => Some(c),
    });
    one.collect()
}

/// Whether the sign is a space after cleaning.
pub(super) fn is_space(c: char) -> bool {
    c == ' ' || c == GROUP_SPACE
}

/// Numerator and denominator of a one-sign fraction such as ⅜.
pub(super) fn vulgar_fraction(c: char) -> Option<(&'static str, &'static str)> {
    Some(match c {
        '½' => ("1", "2"),
        '⅓' => ("1", "3"),
        '⅔' => ("2", "3"),
        '¼' => ("1", "4"),
        '¾' => ("3", "4"),
        '⅕' => ("1", "5"),
        '⅖' => ("2", "5"),
        '⅗' => ("3", "5"),
        '⅘' => ("4", "5"),
        '⅙' => ("1", "6"),
        '⅚' => ("5", "6"),
        '⅐' => ("1", "7"),
        '⅛' => ("1", "8"),
        '⅜' => ("3", "8"),
        '⅝' => ("5", "8"),
        '⅞' => ("7", "8"),
        '⅑' => ("1", "9"),
        '⅒' => ("1", "10"),
        _ => return None,
    })
}

/// A place in the cleaned text.
#[derive(Clone, Copy)]
pub(super) struct Cursor<'a> {
    chars: &'a [char],
}

impl<'a> Cursor<'a> {
    pub(super) fn new(chars: &'a [char]) -> Self {
        Self { chars }
    }

    pub(super) fn peek(&self) -> Option<char> {
        self.chars.first().copied()
    }

    pub(super) fn peek_at(&self, ahead: usize) -> Option<char> {
        self.chars.get(ahead).copied()
    }

    pub(super) fn skip(&mut self, count: usize) {
        self.chars = self.chars.get(count..).unwrap_or(&[]);
    }

    pub(super) fn eat(&mut self, wanted: char) -> bool {
        let found = self.peek() == Some(wanted);
        if found {
            self.skip(1);
        }
        found
    }

    /// Takes signs as long as they fit; the text taken.
    pub(super) fn take_while(&mut self, fits: impl Fn(char) -> bool) -> String {
        let count = self.chars.iter().take_while(|&&c| fits(c)).count();
        let taken = self.chars.iter().take(count).collect();
        self.skip(count);
        taken
    }

    pub(super) fn skip_spaces(&mut self) -> bool {
        !self.take_while(is_space).is_empty()
    }

    pub(super) fn digits(&mut self) -> String {
        self.take_while(|c| c.is_ascii_digit())
    }

    pub(super) fn rest(&self) -> String {
        self.chars.iter().collect()
    }

    /// The text from `start` up to here.
    pub(super) fn since(&self, start: &Self) -> String {
        start
            .chars
            .iter()
            .take(start.chars.len() - self.chars.len())
            .collect()
    }
}
