//! Which unit a typed text names, or what is wrong with it.

use crate::error::{ParseError, quote};
use crate::quantity::Quantity;
use crate::unit::{Match, Unit, canonical, find};

/// The unit of `quantity` that `text` names; none when it names no unit of it in any case of letters.
pub(super) fn look_up(quantity: Quantity, text: &str) -> Result<Option<&'static Unit>, ParseError> {
    let spelling = canonical(text);
    match find(quantity, &spelling) {
        // Right but for the case, while another quantity has exactly this: kN is no knot.
        Match::Unit(_) if is_exactly_another(quantity, &spelling) => {
            Err(unit_error(quantity, text))
        }
        Match::Unit(unit) => Ok(Some(unit)),
        Match::WrongCase(unit) => Err(ParseError::Ambiguous {
            text: quote(text),
            how: format!(
                "a capital M is a million, a small m a thousandth; write {}",
                unit.symbol()
            ),
        }),
        Match::None => Ok(None),
    }
}

fn is_exactly_another(quantity: Quantity, spelling: &str) -> bool {
    let exact = |q: Quantity| {
        crate::unit::units_of(q)
            .iter()
            .any(|unit| unit.is_spelt(spelling))
    };
    !exact(quantity) && Quantity::ALL.iter().any(|&other| exact(other))
}

/// The error for a text that stands where a unit of `quantity` should.
pub(super) fn unit_error(quantity: Quantity, text: &str) -> ParseError {
    let spelling = canonical(text);
    let (unit, known) = (quote(text), quantity.known_units());
    let exact = |q: Quantity| {
        crate::unit::units_of(q)
            .iter()
            .any(|unit| unit.is_spelt(&spelling))
    };
    let similar = |q: Quantity| matches!(find(q, &spelling), Match::Unit(_));
    let names = |fits: &dyn Fn(Quantity) -> bool| -> Vec<_> {
        Quantity::ALL
            .iter()
            // a hole and a pitch are lengths like any other
            .filter(|&&q| {
                let is_length = matches!(q, Quantity::Hole | Quantity::Pitch);
                q != quantity && !is_length && fits(q)
            })
            .map(|q| q.as_str())
            .collect()
    };
    let found = Some(names(&exact))
        .filter(|found| !found.is_empty())
        .unwrap_or_else(|| names(&similar));
    match found.is_empty() {
        true => ParseError::UnknownUnit { unit, known },
        false => ParseError::WrongQuantity {
            unit,
            found: found.join(" or "),
            expected: quantity.as_str(),
            known,
        },
    }
}
