//! Which airplane's gear it is.
use serde::{Deserialize, Serialize};

/// Eight random bytes by which states of one gear find each other; in a file as 16 hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct GearId(pub [u8; 8]);

impl TryFrom<String> for GearId {
    type Error = &'static str;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        const WHAT: &str = "16 hexadecimal digits";
        let is_digits = text.len() == 16 && text.bytes().all(|b| b.is_ascii_hexdigit());
        let number = u64::from_str_radix(&text, 16).ok().filter(|_| is_digits);
        Ok(Self(number.ok_or(WHAT)?.to_be_bytes()))
    }
}

impl From<GearId> for String {
    fn from(id: GearId) -> Self {
        format!("{:016x}", u64::from_be_bytes(id.0))
    }
}
