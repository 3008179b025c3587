//! One number without sign and unit: a decimal, a fraction, or a whole number and a fraction.

use super::decimal::{Reading, read_figures};
use super::tokens::{Cursor, GROUP_SPACE, is_space, vulgar_fraction};
use crate::error::{ParseError, quote};
use crate::exact::Rational;

/// Largest power of ten taken; f64 ends near 308 and units shift it by less than 20.
const MAX_EXPONENT: i32 = 400;

/// A number as read.
pub(super) struct Number {
    pub(super) value: Rational,
    /// As typed, spaces tidied.
    pub(super) text: String,
    /// Written as a plain decimal with a point.
    pub(super) plain: bool,
    /// A whole number.
    pub(super) whole: bool,
}

/// Reads one number at the cursor, which stands on no space.
pub(super) fn read_number(
    cursor: &mut Cursor<'_>,
    example: &'static str,
) -> Result<Number, ParseError> {
    let start = *cursor;
    let not_a_number = |at: String| ParseError::NotANumber {
        at: quote(&at),
        example,
    };
    if let Some(fraction) = read_vulgar(cursor) {
        return Ok(fraction);
    }
    let raw = read_raw(cursor);
    if raw.is_empty() {
        return Err(not_a_number(start.rest()));
    }
    let only_digits = raw.bytes().all(|b| b.is_ascii_digit());
    if only_digits {
        if let Some(fraction) = read_after_whole(&raw, cursor, &start, example)? {
            return Ok(fraction);
        }
    } else if second_number_follows(cursor) {
        return Err(not_a_number(start.rest()));
    }
    let figures = match read_figures(&raw) {
        Reading::Clear(figures) => figures,
        Reading::None => return Err(not_a_number(raw)),
        Reading::TwoWays { decimal, thousands } => {
            return Err(ParseError::Ambiguous {
                text: quote(&raw),
                how: format!("write {thousands} for thousands, or {decimal} for a decimal"),
            });
        }
    };
    let power = read_exponent(cursor).ok_or_else(|| ParseError::OutOfRange {
        text: quote(&start.rest()),
    })?;
    Ok(Number {
        value: Rational::decimal(&figures.digits, figures.exponent + power.unwrap_or(0)),
        text: cursor.since(&start).replace(GROUP_SPACE, " "),
        plain: power.is_none() && !raw.contains([',', GROUP_SPACE]) && raw.matches('.').count() < 2,
        whole: power.is_none() && figures.exponent == 0,
    })
}

/// Digits, points and commas; a group space only before exactly three digits that start no fraction.
fn read_raw(cursor: &mut Cursor<'_>) -> String {
    let figure = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
    let mut raw = cursor.take_while(figure);
    // Bounded: each round takes four signs.
    while !raw.is_empty() && cursor.peek() == Some(GROUP_SPACE) {
        let mut ahead = *cursor;
        ahead.skip(1);
        let group = ahead.digits();
        let part = if ahead.peek().is_some_and(figure) {
            ahead.take_while(figure)
        } else {
            String::new()
        };
        let mut after = ahead;
        after.skip_spaces();
        if group.len() != 3 || after.peek() == Some('/') {
            break;
        }
        raw.push(GROUP_SPACE);
        raw.push_str(&group);
        raw.push_str(&part);
        *cursor = ahead;
    }
    raw
}

fn read_vulgar(cursor: &mut Cursor<'_>) -> Option<Number> {
    let (num, den) = cursor.peek().and_then(vulgar_fraction)?;
    cursor.skip(1);
    let value = Rational::fraction(num, den)?;
    Some(Number {
        value,
        text: format!("{num}/{den}"),
        plain: false,
        whole: false,
    })
}

/// What may follow a whole number: `/8`, ` 3/8`, `-3/8`, `⅜`. None: it stands alone.
fn read_after_whole(
    whole: &str,
    cursor: &mut Cursor<'_>,
    start: &Cursor<'_>,
    example: &'static str,
) -> Result<Option<Number>, ParseError> {
    let mut ahead = *cursor;
    if let Some(den) = read_denominator(&mut ahead) {
        *cursor = ahead;
        return fraction(whole, &den, cursor.since(start), example).map(Some);
    }
    ahead = *cursor;
    let spaced = ahead.skip_spaces();
    let hyphen = ahead.eat('-');
    let spaced_after = hyphen && ahead.skip_spaces();
    let part = if let Some(part) = read_vulgar(&mut ahead) {
        part
    } else {
        let num = ahead.digits();
        if num.is_empty() {
            return Ok(None);
        }
        match read_denominator(&mut ahead) {
            Some(den) => fraction(&num, &den, ahead.since(start), example)?,
            None => return Err(two_numbers(start)),
        }
    };
    if hyphen && (spaced || spaced_after) {
        return Err(ParseError::Ambiguous {
            text: quote(&ahead.since(start)),
            how: format!(
                "write {whole} {} for the mixed number; sums are not worked out",
                part.text
            ),
        });
    }
    if !part.value.is_below_one() {
        return Err(ParseError::Ambiguous {
            text: quote(&ahead.since(start)),
            how: format!(
                "the fraction after a whole number must be less than 1, for example {example}"
            ),
        });
    }
    *cursor = ahead;
    let value = Rational::decimal(whole, 0).plus(&part.value);
    Ok(Some(Number {
        value,
        text: format!("{whole} {}", part.text),
        plain: false,
        whole: false,
    }))
}

/// `/` and digits, spaces allowed around; a `/` before anything else belongs to a unit.
fn read_denominator(cursor: &mut Cursor<'_>) -> Option<String> {
    cursor.skip_spaces();
    if !cursor.eat('/') {
        return None;
    }
    cursor.skip_spaces();
    let den = cursor.digits();
    (!den.is_empty()).then_some(den)
}

fn fraction(
    num: &str,
    den: &str,
    typed: String,
    example: &'static str,
) -> Result<Number, ParseError> {
    let value = Rational::fraction(num, den).ok_or_else(|| ParseError::DivideByZero {
        text: quote(&typed),
        example,
    })?;
    Ok(Number {
        value,
        text: format!("{num}/{den}"),
        plain: false,
        whole: false,
    })
}

/// Whether, after spaces or a hyphen, another number starts where none may.
fn second_number_follows(cursor: &Cursor<'_>) -> bool {
    let mut ahead = *cursor;
    ahead.take_while(|c| is_space(c) || c == '-' || c == '/');
    ahead
        .peek()
        .is_some_and(|c| c.is_ascii_digit() || vulgar_fraction(c).is_some())
}

fn two_numbers(start: &Cursor<'_>) -> ParseError {
    ParseError::Ambiguous {
        text: quote(&start.rest()),
        how: "write one number, without spaces or hyphens inside, or a whole number and a fraction such as 1 3/8".into(),
    }
}

/// `e`, sign, digits. Some(None): no exponent here. None: out of range.
fn read_exponent(cursor: &mut Cursor<'_>) -> Option<Option<i32>> {
    let sign_at = usize::from(matches!(cursor.peek_at(1), Some('+' | '-')));
    let starts = matches!(cursor.peek(), Some('e' | 'E'));
    if !starts
        || !cursor
            .peek_at(1 + sign_at)
            .is_some_and(|c| c.is_ascii_digit())
    {
        return Some(None);
    }
    let negative = cursor.peek_at(1) == Some('-');
    cursor.skip(1 + sign_at);
    let size: i32 = cursor
        .digits()
        .parse()
        .ok()
        .filter(|&size| size <= MAX_EXPONENT)?;
    Some(Some(if negative { -size } else { size }))
}
