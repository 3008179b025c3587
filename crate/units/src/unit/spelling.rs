//! One unit, and the matching of a typed spelling to it.

use super::units_of;
use crate::factors::Factor;
use crate::quantity::Quantity;

/// A unit of one quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unit {
    pub(crate) symbol: &'static str,
    /// Other spellings, in canonical form; the symbol's own counts too.
    pub(crate) names: &'static [&'static str],
    pub(crate) factor: Factor,
    /// The first letter's case carries the size (M against m).
    pub(crate) cased: bool,
}

impl Unit {
    pub(crate) const fn new(
        symbol: &'static str,
        names: &'static [&'static str],
        factor: Factor,
    ) -> Self {
        Self {
            symbol,
            names,
            factor,
            cased: false,
        }
    }

    pub(crate) const fn cased(
        symbol: &'static str,
        names: &'static [&'static str],
        factor: Factor,
    ) -> Self {
        Self {
            symbol,
            names,
            factor,
            cased: true,
        }
    }

    /// The symbol, such as `in`; empty for plain numbers.
    #[must_use]
    pub const fn symbol(&self) -> &'static str {
        self.symbol
    }

    /// An SI value in this unit, in plain f64 arithmetic.
    #[must_use]
    pub fn from_si(&self, si: f64) -> f64 {
        let Factor { num, den, pi } = self.factor;
        si * den as f64 / num as f64 * std::f64::consts::PI.powi(-i32::from(pi))
    }

    /// A number with this unit behind it: no space before °, ′ and ″.
    #[must_use]
    pub fn with_number(&self, number: &str) -> String {
        match self.symbol {
            "" => number.into(),
            "°" | "′" | "″" => format!("{number}{}", self.symbol),
            symbol => format!("{number} {symbol}"),
        }
    }

    /// Whether this is a spelling of the unit, letter for letter.
    pub(crate) fn is_spelt(&self, spelling: &str) -> bool {
        self.names.contains(&spelling) || canonical(self.symbol) == spelling
    }

    fn spellings(&self) -> impl Iterator<Item = String> {
        self.names
            .iter()
            .map(|name| (*name).to_owned())
            .chain([canonical(self.symbol)])
    }
}

/// How a typed unit matches.
pub(crate) enum Match {
    /// The unit is this one.
    Unit(&'static Unit),
    /// Like this one but for a capital letter that changes the size.
    WrongCase(&'static Unit),
    /// Nothing of this quantity.
    None,
}

/// A typed unit in the form the table has: powers as plain digits, one `·` for any sign of a product,
/// no dots of abbreviation, no spaces.
pub(crate) fn canonical(text: &str) -> String {
    let mut out = String::new();
    for c in text.trim().chars() {
        match c {
            '²' => out.push('2'),
            '³' => out.push('3'),
            '^' | '.' => {}
            '·' | '⋅' | '•' | '*' | '×' | '-' | ' ' | '\u{a0}' => {
                // " / ", "· " and the like are one sign
                if !out.ends_with(['·', '/']) {
                    out.push('·');
                }
            }
            '/' => {
                if out.ends_with('·') {
                    out.pop();
                }
                out.push('/');
            }
            '\u{2126}' => out.push('Ω'),
            '′' => out.push('\''),
            '″' => out.push('"'),
            other => out.push(other),
        }
    }
    out
}

/// The unit of `quantity` that a canonical spelling names: letter for letter, else in any case of letters
/// unless a first M or m makes another size.
pub(crate) fn find(quantity: Quantity, spelling: &str) -> Match {
    let units = units_of(quantity);
    if spelling.is_empty() {
        return Match::None;
    }
    if let Some(unit) = units.iter().find(|unit| unit.is_spelt(spelling)) {
        return Match::Unit(unit);
    }
    let like = |unit: &&Unit| {
        unit.spellings()
            .find(|name| name.eq_ignore_ascii_case(spelling))
    };
    let Some((unit, name)) = units.iter().find_map(|unit| Some((unit, like(&unit)?))) else {
        return Match::None;
    };
    let first_differs = name.chars().next() != spelling.chars().next();
    if unit.cased && first_differs && spelling.starts_with(['m', 'M']) {
        Match::WrongCase(unit)
    } else {
        Match::Unit(unit)
    }
}
