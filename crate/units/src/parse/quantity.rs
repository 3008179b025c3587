//! Sign, number and unit of one quantity, or a series such as feet and inches.

use super::echo::echo;
use super::number::{Number, read_number};
use super::tokens::{Cursor, clean, is_space, vulgar_fraction};
use super::units::{look_up, unit_error};
use crate::choice::UnitChoice;
use crate::error::{ParseError, quote};
use crate::exact::Rational;
use crate::quantity::Quantity;
use crate::unit::{Unit, comes_after, has_series};

/// The longest text taken, in characters.
pub const MAX_TEXT_LENGTH: usize = 200;

/// What a text was understood to say.
#[derive(Clone, Debug, PartialEq)]
pub struct Parsed {
    /// The value in SI: the exact value of the text, rounded once to the nearest f64. Finite, never −0.
    pub si: f64,
    /// The text as understood, in the typed, the shown and the other unit: `3/8 in = 0.375 in = 9.5 mm`.
    pub echo: String,
}

/// One number with its unit.
pub(super) struct Part {
    pub(super) number: Number,
    pub(super) unit: &'static Unit,
}

/// Most parts of a series: degrees, minutes, seconds.
const MAX_PARTS: usize = 3;

/// Reads a typed text as a `quantity`; a number without unit takes the one that `choice` shows.
///
/// # Errors
/// One plain sentence for whoever typed it; see [`ParseError`]. Any text gives an answer or an error.
pub fn parse(quantity: Quantity, choice: UnitChoice, text: &str) -> Result<Parsed, ParseError> {
    let example = quantity.example(choice);
    if text.chars().nth(MAX_TEXT_LENGTH).is_some() {
        return Err(ParseError::TooLong {
            max: MAX_TEXT_LENGTH,
            example,
        });
    }
    let chars = clean(text);
    let mut cursor = Cursor::new(&chars);
    cursor.skip_spaces();
    if cursor.peek().is_none() {
        return Err(ParseError::Empty {
            quantity: quantity.as_str(),
            example,
        });
    }
    let start = cursor;
    let negative = cursor.eat('-');
    if !negative {
        cursor.eat('+');
    }
    cursor.skip_spaces();
    if !cursor.peek().is_some_and(starts_number) {
        return Err(ParseError::NotANumber {
            at: quote(&start.rest()),
            example,
        });
    }
    let parts = read_parts(quantity, choice, &mut cursor)?;
    let mut sum = Rational::decimal("0", 0);
    for part in &parts {
        sum = sum.plus(&part.number.value.times(part.unit.factor));
    }
    sum.negative = negative;
    let si = sum.to_f64();
    if !si.is_finite() || (si == 0.0 && !sum.is_zero()) {
        return Err(ParseError::OutOfRange { text: quote(text) });
    }
    if quantity == Quantity::Count && si.fract() != 0.0 {
        return Err(ParseError::NotWhole { text: quote(text) });
    }
    Ok(Parsed {
        si,
        echo: echo(quantity, choice, negative, &parts, si),
    })
}

fn starts_number(c: char) -> bool {
    c.is_ascii_digit() || c == '.' || c == ',' || vulgar_fraction(c).is_some()
}

fn read_parts(
    quantity: Quantity,
    choice: UnitChoice,
    cursor: &mut Cursor<'_>,
) -> Result<Vec<Part>, ParseError> {
    let example = quantity.example(choice);
    let start = *cursor;
    let (mut parts, mut first_rest): (Vec<Part>, _) = (Vec::new(), String::new());
    for _ in 0..MAX_PARTS {
        let number = read_number(cursor, example)?;
        cursor.skip_spaces();
        let rest = cursor.rest();
        let rest = rest.trim_end_matches(is_space);
        if parts.is_empty() {
            first_rest = rest.to_owned();
        }
        if rest.is_empty() && parts.is_empty() {
            parts.push(Part {
                number,
                unit: quantity.unit(choice),
            });
            return Ok(parts);
        }
        if rest.is_empty() {
            return Err(last_unit_missing(quantity, &first_rest, &start));
        }
        if let Some(unit) = look_up(quantity, rest)? {
            push_part(quantity, &mut parts, Part { number, unit }, &start)?;
            return Ok(parts);
        }
        let unit = read_leading_unit(quantity, cursor, &start, example)?;
        push_part(quantity, &mut parts, Part { number, unit }, &start)?;
    }
    Err(ParseError::NotANumber {
        at: quote(&cursor.rest()),
        example,
    })
}

/// The last number of a series has no unit; but 2 ft3 is a volume, not feet and something.
fn last_unit_missing(quantity: Quantity, first_rest: &str, start: &Cursor<'_>) -> ParseError {
    match unit_error(quantity, first_rest) {
        error @ ParseError::WrongQuantity { .. } => error,
        _ => ParseError::BadSeries {
            text: quote(&start.rest()),
            how: "write the unit after each number".into(),
        },
    }
}

/// Text up to the next number; a point or comma of "2 ft. 3 in" or "2 ft, 3 in" is left out, one that may
/// belong to the unit or to the number ("2ft.3in") is refused.
fn read_unit_text(cursor: &mut Cursor<'_>, start: &Cursor<'_>) -> Result<String, ParseError> {
    let mut text = cursor.take_while(|c| !starts_number(c));
    let stop = matches!(cursor.peek(), Some('.' | ','));
    let digit_next = cursor.peek_at(1).is_some_and(|c| c.is_ascii_digit());
    if stop && digit_next && !text.ends_with(is_space) {
        return Err(ParseError::Ambiguous {
            text: quote(&start.rest()),
            how: "put a space before the second number".into(),
        });
    }
    if stop && !digit_next {
        cursor.skip(1);
        text.push_str(&cursor.take_while(|c| !starts_number(c)));
    }
    Ok(text)
}

/// The unit before a further number; the cursor then stands on that number.
fn read_leading_unit(
    quantity: Quantity,
    cursor: &mut Cursor<'_>,
    start: &Cursor<'_>,
    example: &'static str,
) -> Result<&'static Unit, ParseError> {
    let rest = cursor.rest();
    let rest = rest.trim_end_matches(is_space);
    if !rest.chars().next().is_some_and(starts_unit) {
        return Err(ParseError::NotANumber {
            at: quote(&start.rest()),
            example,
        });
    }
    let word = read_unit_text(cursor, start)?;
    let further = cursor.peek().is_some();
    if !further || !has_series(quantity) {
        return Err(unit_error(quantity, rest));
    }
    // 2'-3" is the drawing office's way; 2 ft - 3 in may be a difference.
    let tidy = word.trim_end_matches(is_space);
    let unit_text = tidy.strip_suffix('-').unwrap_or(tidy);
    if unit_text != tidy && (tidy != word || unit_text.ends_with(is_space)) {
        return Err(ParseError::Ambiguous {
            text: quote(&start.rest()),
            how: "leave the hyphen out; sums are not worked out".into(),
        });
    }
    look_up(quantity, unit_text)?.ok_or_else(|| unit_error(quantity, unit_text))
}

fn starts_unit(c: char) -> bool {
    // tables of all letters would be more to load than all units
    c.is_ascii_alphabetic()
        || matches!(
            c,
            'Ω' | '\u{2126}' | 'µ' | 'μ' | '°' | '%' | '\'' | '"' | '$' | '#' | '€' | '£'
        )
}

/// Adds a part, if it may follow the one before it.
fn push_part(
    quantity: Quantity,
    parts: &mut Vec<Part>,
    part: Part,
    start: &Cursor<'_>,
) -> Result<(), ParseError> {
    if let Some(previous) = parts.last() {
        let how = if !comes_after(quantity, previous.unit, part.unit) {
            format!(
                "{} can't follow {}",
                part.unit.symbol(),
                previous.unit.symbol()
            )
        } else if !previous.number.whole {
            format!(
                "the number of {} must be whole when {} follow",
                previous.unit.symbol(),
                part.unit.symbol()
            )
        } else {
            parts.push(part);
            return Ok(());
        };
        return Err(ParseError::BadSeries {
            text: quote(&start.rest()),
            how,
        });
    }
    parts.push(part);
    Ok(())
}
