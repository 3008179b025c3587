//! What can be wrong with a typed text, said so that a mechanic can put it right.

use thiserror::Error;

/// Why a text is no number of the quantity asked for. Quoted texts are cut to a readable length.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ParseError {
    /// Nothing was typed.
    #[error("nothing typed; write {}, for example {example}", with_article(.quantity))]
    Empty {
        /// The quantity in words.
        quantity: &'static str,
        /// A text that would do.
        example: &'static str,
    },
    /// The text is longer than any sensible number.
    #[error(
        "the text is longer than {max} characters; write just the number, for example {example}"
    )]
    TooLong {
        /// The longest text taken, in characters.
        max: usize,
        /// A text that would do.
        example: &'static str,
    },
    /// Here a number should be.
    #[error("“{at}” is not a number; write for example {example}")]
    NotANumber {
        /// The text from the place that can't be read.
        at: String,
        /// A text that would do.
        example: &'static str,
    },
    /// No unit of any quantity is written so.
    #[error("“{unit}” is no known unit; use {known}")]
    UnknownUnit {
        /// The unit as typed.
        unit: String,
        /// The units that may be typed here.
        known: String,
    },
    /// A unit of something else.
    #[error("“{unit}” is a unit of {found}, but {} is needed here; use {known}", with_article(.expected))]
    WrongQuantity {
        /// The unit as typed.
        unit: String,
        /// What that unit measures.
        found: String,
        /// What is asked for.
        expected: &'static str,
        /// The units that may be typed here.
        known: String,
    },
    /// A fraction over nothing.
    #[error("“{text}” divides by zero; write for example {example}")]
    DivideByZero {
        /// The fraction as typed.
        text: String,
        /// A text that would do.
        example: &'static str,
    },
    /// Can be read in more than one way, each giving another number.
    #[error("“{text}” can be read in two ways; {how}")]
    Ambiguous {
        /// The part as typed.
        text: String,
        /// How to write what is meant.
        how: String,
    },
    /// Parts of a series, such as feet and inches, that don't fit together.
    #[error("“{text}” can't be put together; {how}")]
    BadSeries {
        /// The text as typed.
        text: String,
        /// What to change.
        how: String,
    },
    /// A count with a fraction.
    #[error("“{text}” is not a whole number; write for example 2")]
    NotWhole {
        /// The number as typed.
        text: String,
    },
    /// Beyond the range of numbers, large or small.
    #[error("“{text}” is beyond any number that can be worked with; check its size and exponent")]
    OutOfRange {
        /// The number as typed.
        text: String,
    },
}

/// `a length`, `an angle`.
fn with_article(noun: &str) -> String {
    let article = if noun.starts_with(['a', 'e', 'i', 'o', 'u']) {
        "an"
    } else {
        "a"
    };
    format!("{article} {noun}")
}

/// Longest quotation in a message.
const QUOTE_LENGTH: usize = 24;

/// The text as quoted in a message: trimmed, cut when long.
pub(crate) fn quote(text: &str) -> String {
    let trimmed = text.trim();
    let mut quoted: String = trimmed.chars().take(QUOTE_LENGTH).collect();
    if trimmed.chars().count() > QUOTE_LENGTH {
        quoted.push('…');
    }
    quoted
}
