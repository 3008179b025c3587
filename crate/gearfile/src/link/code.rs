//! Mark, version, length, checksum: wrapping a body and taking it out.
use crc::{CRC_32_ISO_HDLC, Crc, NoTable};

use super::LinkError;

/// What every link text starts with.
pub(super) const MARK: &str = "gs";
/// The newest version that is read: that of the gear file, since a link holds the same keys.
pub(super) const VERSION: u64 = crate::file::VERSION;
/// What every link text ends with.
const END: u8 = b'Z';
/// The alphabet of base64url (RFC 4648 table 2), also the digits of length and checksum.
const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Where the parts of the text start (characters).
const LENGTH_AT: usize = 3;
const CHECK_AT: usize = LENGTH_AT + LENGTH_DIGITS;
const CRC_AT: usize = CHECK_AT + 1;
const BODY_AT: usize = CRC_AT + CRC_DIGITS;
const LENGTH_DIGITS: usize = 3;
const CRC_DIGITS: usize = 6;

/// Most characters of a link text: what the length can say.
pub(super) const LONGEST: usize = (1 << (6 * LENGTH_DIGITS)) - 1;

/// Wraps a body of base64url characters that holds a gear of this version; `None` when it is too long.
pub(super) fn wrap(body: &str, version: u64) -> Option<String> {
    let length = BODY_AT + body.len() + 1;
    if length > LONGEST {
        return None;
    }
    let mut code = String::from_utf8(head(length, version)).ok()?;
    let crc = crc(code.as_bytes(), body.as_bytes());
    push_digits(&mut code, u64::from(crc), CRC_DIGITS);
    code.push_str(body);
    code.push(char::from(END));
    Some(code)
}

/// What stands before the checksum in a link of this many characters and this version, 1 to 9.
fn head(length: usize, version: u64) -> Vec<u8> {
    let mut head = format!("{MARK}{version}");
    push_digits(&mut head, length as u64, LENGTH_DIGITS);
    let check = check_digit(head.as_bytes().get(MARK.len()..).unwrap_or_default());
    head.push(char::from(check));
    head.into_bytes()
}

/// Takes the version and the body out of a link text; what follows the text is left aside.
pub(super) fn unwrap(text: &str) -> Result<(u64, String), LinkError> {
    // characters, not bytes: a mail program may have put in anything
    let characters: Vec<char> = text.chars().collect();
    if characters.is_empty() {
        return Err(LinkError::Empty);
    }
    if !text.starts_with(MARK) {
        return Err(LinkError::Foreign);
    }
    let have = characters.len();
    let cut = |of| LinkError::Cut { have, of };
    let said = characters.get(MARK.len()).map(|c| c.to_digit(36));
    let version = match said.map(|digit| digit.map(u64::from)) {
        None => return Err(cut(None)),
        Some(Some(version @ 1..=VERSION)) => version,
        Some(Some(version)) if version > VERSION => {
            return Err(LinkError::TooNew {
                version,
                known: VERSION,
            });
        }
        Some(_) => return Err(LinkError::Foreign),
    };
    let Some(head) = characters.get(..CRC_AT) else {
        return Err(cut(None));
    };
    let head = ascii(head)?;
    if Some(&check_digit(
        head.get(MARK.len()..CHECK_AT).unwrap_or_default(),
    )) != head.get(CHECK_AT)
    {
        return Err(LinkError::Altered);
    }
    let length = digits(head.get(LENGTH_AT..CHECK_AT).unwrap_or_default())? as usize;
    if length <= BODY_AT {
        return Err(LinkError::Altered);
    }
    let Some(whole) = characters.get(..length) else {
        return Err(if is_whole_but_for_its_length(&characters, version) {
            LinkError::Altered
        } else {
            cut(Some(length))
        });
    };
    let whole = ascii(whole)?;
    let said = digits(whole.get(CRC_AT..BODY_AT).unwrap_or_default())?;
    let body = whole.get(BODY_AT..length - 1).unwrap_or_default();
    if whole.last() != Some(&END) || said != u64::from(crc(&head, body)) {
        return Err(LinkError::Altered);
    }
    let body = String::from_utf8(body.to_vec()).map_err(|_| LinkError::Altered)?;
    Ok((version, body))
}

/// Whether the text is a whole link whose digits of length were altered: with the length that it has,
/// its checksum holds.
fn is_whole_but_for_its_length(characters: &[char], version: u64) -> bool {
    let have = characters.len();
    let Ok(text) = ascii(characters) else {
        return false;
    };
    let said = digits(text.get(CRC_AT..BODY_AT).unwrap_or_default());
    let body = text.get(BODY_AT..have.saturating_sub(1));
    body.is_some_and(|body| {
        text.last() == Some(&END) && said == Ok(crc(&head(have, version), body).into())
    })
}

fn ascii(characters: &[char]) -> Result<Vec<u8>, LinkError> {
    characters
        .iter()
        .map(|&c| u8::try_from(c).ok().filter(u8::is_ascii))
        .collect::<Option<Vec<u8>>>()
        .ok_or(LinkError::Altered)
}

/// CRC-32 of IEEE 802.3, bit by bit: a link is too short for a table to pay.
pub(crate) const CHECKSUM: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_32_ISO_HDLC);

/// CRC-32 of everything but the checksum and the end mark.
fn crc(head: &[u8], body: &[u8]) -> u32 {
    let mut digest = CHECKSUM.digest();
    digest.update(head);
    digest.update(body);
    digest.finalize()
}

/// Check character: odd weights, so that no single changed character keeps it.
fn check_digit(characters: &[u8]) -> u8 {
    let sum: usize = characters
        .iter()
        .enumerate()
        .map(|(at, &c)| (2 * at + 1) * value_of(c).unwrap_or(0))
        .sum();
    digit(sum)
}

fn digit(value: usize) -> u8 {
    // the mask keeps the index inside the table
    DIGITS.get(value & 63).copied().unwrap_or(END)
}

fn value_of(character: u8) -> Option<usize> {
    DIGITS.iter().position(|&d| d == character)
}

fn push_digits(text: &mut String, value: u64, count: usize) {
    for place in (0..count).rev() {
        text.push(char::from(digit((value >> (6 * place)) as usize)));
    }
}

fn digits(characters: &[u8]) -> Result<u64, LinkError> {
    characters.iter().try_fold(0, |sum, &c| {
        value_of(c)
            .map(|value| sum << 6 | value as u64)
            .ok_or(LinkError::Altered)
    })
}
