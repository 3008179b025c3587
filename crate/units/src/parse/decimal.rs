//! Points and commas: which of them parts decimals, which thousands, and when nobody can tell.

use super::tokens::GROUP_SPACE;

/// Figures without point, and the power of ten they are to be multiplied with.
pub(super) struct Figures {
    pub(super) digits: String,
    pub(super) exponent: i32,
}

/// How figures with points, commas and group spaces may be taken.
pub(super) enum Reading {
    /// In one way.
    Clear(Figures),
    /// As a decimal or as thousands: the two ways to write it.
    TwoWays { decimal: String, thousands: String },
    /// In no way.
    None,
}

/// Reads figures made of digits, `.`, `,` and group spaces. See the crate's front page for the rule.
pub(super) fn read_figures(raw: &str) -> Reading {
    let count = |sign| raw.matches(sign).count();
    let (points, commas, spaces) = (count('.'), count(','), count(GROUP_SPACE));
    let group = match (points, commas, spaces) {
        (0 | 1, 0, 0) => return split('.', None, raw),
        (0, 1, 0) => return one_comma(raw),
        (0 | 1, 2.., 0) => ',',
        (2.., 0 | 1, 0) => '.',
        // The one that comes last is the decimal sign.
        (1, 1, 0) if raw.find(',') < raw.find('.') => ',',
        (1, 1, 0) => '.',
        (0, 0 | 1, 1..) | (1, 0, 1..) => GROUP_SPACE,
        _ => return Reading::None,
    };
    let decimal = match group {
        ',' => '.',
        '.' => ',',
        _ if commas > 0 => ',',
        _ => '.',
    };
    split(decimal, Some(group), raw)
}

/// One comma and nothing else: thousands only if it looks exactly so, and then it may be a decimal too.
fn one_comma(raw: &str) -> Reading {
    let (whole, part) = raw.split_once(',').unwrap_or((raw, ""));
    if part.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0') {
        return Reading::TwoWays {
            decimal: format!("{whole}.{part}"),
            thousands: format!("{whole}{part}"),
        };
    }
    split(',', None, raw)
}

fn split(decimal: char, group: Option<char>, raw: &str) -> Reading {
    let (whole, part) = raw.split_once(decimal).unwrap_or((raw, ""));
    let grouped = group.is_none_or(|sign| is_grouped(whole, sign));
    let whole: String = whole.chars().filter(|&c| Some(c) != group).collect();
    let digits = format!("{whole}{part}");
    if !grouped || digits.is_empty() || !digits.bytes().all(|b| b.is_ascii_digit()) {
        return Reading::None;
    }
    let Ok(decimals) = i32::try_from(part.len()) else {
        return Reading::None;
    };
    Reading::Clear(Figures {
        digits,
        exponent: -decimals,
    })
}

/// One to three figures, not starting with zero, then groups of three.
fn is_grouped(whole: &str, sign: char) -> bool {
    let mut groups = whole.split(sign);
    let first = groups.next().unwrap_or("");
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.all(|group| group.len() == 3)
}
