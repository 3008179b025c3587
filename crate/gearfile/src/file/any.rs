//! A JSON value of any kind, looked through and not kept.
use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

/// Every part of a value is visited, so that whoever follows the reader knows where it breaks off; serde's own
/// `IgnoredAny` lets the reader skip them.
pub(super) struct Any;

impl<'de> Deserialize<'de> for Any {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_any(Self)
    }
}

impl<'de> Visitor<'de> for Any {
    type Value = Self;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_bool<E>(self, _: bool) -> Result<Self, E> {
        Ok(Self)
    }

    fn visit_i64<E>(self, _: i64) -> Result<Self, E> {
        Ok(Self)
    }

    fn visit_u64<E>(self, _: u64) -> Result<Self, E> {
        Ok(Self)
    }

    fn visit_f64<E>(self, _: f64) -> Result<Self, E> {
        Ok(Self)
    }

    fn visit_str<E>(self, _: &str) -> Result<Self, E> {
        Ok(Self)
    }

    fn visit_unit<E>(self) -> Result<Self, E> {
        Ok(Self)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Self, A::Error> {
        while entries.next_element::<Self>()?.is_some() {}
        Ok(Self)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Self, A::Error> {
        while entries.next_entry::<Self, Self>()?.is_some() {}
        Ok(Self)
    }
}
