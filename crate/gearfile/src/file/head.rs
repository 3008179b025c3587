//! What stands for the mark and the version at the head of a file, whatever its kind.
use serde::de::{Deserialize, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Visitor};
use std::fmt::{Formatter, Result as Written};

/// A text or a whole number; everything else is neither.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) enum Word {
    /// Absent, or of another kind.
    #[default]
    Other,
    /// A text.
    Text(String),
    /// A whole number, not negative.
    Whole(u64),
}

impl<'de> Deserialize<'de> for Word {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_any(AnyWord)
    }
}

struct AnyWord;

/// What is neither a text nor a whole number.
macro_rules! others {
    ($($name:ident($($value:ident: $type:ty)?))*) => {$(
        fn $name<E: Error>(self, $($value: $type)?) -> Result<Word, E> {
            Ok(Word::Other)
        }
    )*};
}

impl<'de> Visitor<'de> for AnyWord {
    type Value = Word;

    fn expecting(&self, formatter: &mut Formatter<'_>) -> Written {
        formatter.write_str("any value")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Word, E> {
        Ok(Word::Text(text.to_owned()))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Word, E> {
        Ok(Word::Whole(number))
    }

    others! {
        visit_bool(_b: bool) visit_i64(_n: i64) visit_f64(_n: f64) visit_unit()
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Word, A::Error> {
        while items.next_element::<IgnoredAny>()?.is_some() {}
        Ok(Word::Other)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Word, A::Error> {
        while fields.next_entry::<IgnoredAny, IgnoredAny>()?.is_some() {}
        Ok(Word::Other)
    }
}

#[cfg(test)]
mod tests {
    use super::Word;

    #[test]
    fn takes_any_value() {
        for (text, word) in [
            ("1", Word::Whole(1)),
            ("\"1\"", Word::Text("1".to_owned())),
            ("-1", Word::Other),
            ("1.5", Word::Other),
            ("1.0", Word::Other),
            ("null", Word::Other),
            ("true", Word::Other),
            ("[1, [2, {}]]", Word::Other),
            ("{\"a\": [1]}", Word::Other),
        ] {
            assert_eq!(serde_json::from_str::<Word>(text).unwrap(), word, "{text}");
        }
    }
}
