//! What a link holds, and the whole way there and back.
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use gearswing_gear::model::Gear;
use serde::{Deserialize, Serialize};

use super::pack::{FIXED_TEXT_1, pack, unpack};
use super::strip::strip;
use super::{LinkError, code};
use crate::file::{ContentFault, OpenError, READ_LIMIT, SaveError, lowest_version, parse, upgrade};
use crate::layout::compact;
use crate::not_finite::refuse_not_finite;

/// Most characters of a pasted text that is looked through: a link and an address around it.
const PASTE_LIMIT: usize = code::LONGEST + (64 << 10);

/// A gear, and how it is looked at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shared {
    /// The gear.
    pub gear: Gear,
    /// Leg that is looked at, as index.
    pub leg: usize,
    /// Place on the path (ratio); see `solver::result::Station::progress`.
    pub progress: f64,
    /// Part of the drawing that is seen; absent = all of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub view: Option<ViewState>,
    /// Key of the units shown; what a program does not know it leaves aside.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub units: String,
}

impl Shared {
    /// Its numbers beside those of the gear, by their paths.
    fn own_numbers(&self) -> impl Iterator<Item = (&'static str, f64)> {
        let of_view = |view: ViewState| {
            let [x, y] = view.centre;
            [
                ("view.centre_m[0]", x),
                ("view.centre_m[1]", y),
                ("view.width_m", view.width),
            ]
        };
        std::iter::once(("progress", self.progress)).chain(self.view.into_iter().flat_map(of_view))
    }
}

/// Part of the drawing that is seen, whatever the screen.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ViewState {
    /// What is in the middle, x and y (m).
    #[serde(rename = "centre_m")]
    pub centre: [f64; 2],
    /// Width that is seen (m).
    #[serde(rename = "width_m")]
    pub width: f64,
}

/// The link text of `shared`, without address and `#`. Ask [`super::fits`] about the whole address
/// before offering it.
///
/// # Errors
/// A number that is not finite, or a gear too large for any link.
pub fn encode(shared: &Shared) -> Result<String, SaveError> {
    for (path, value) in shared.own_numbers() {
        if !value.is_finite() {
            let path = format!("link.{path}");
            return Err(SaveError::NotFinite { path });
        }
    }
    refuse_not_finite(&shared.gear, "link.gear")?;
    let json = compact(shared)?;
    let too_large = |bytes, limit| SaveError::TooLarge { bytes, limit };
    if json.len() > READ_LIMIT {
        return Err(too_large(json.len(), READ_LIMIT));
    }
    let packed = pack(FIXED_TEXT_1, json.as_bytes()).ok_or(SaveError::NotPacked)?;
    let body = URL_SAFE_NO_PAD.encode(packed);
    code::wrap(&body, lowest_version(&shared.gear, &json))
        .ok_or_else(|| too_large(body.len(), code::LONGEST))
}

/// Opens a link text as it was pasted or found in the address: with or without address, `#` or
/// `%23`, with line breaks and signs that mail programs add.
///
/// # Errors
/// [`LinkError`]: nothing, foreign, cut, altered, too new, or a content that cannot be used.
pub fn decode(pasted: &str) -> Result<Shared, LinkError> {
    let characters = pasted.len();
    if characters > PASTE_LIMIT {
        return Err(LinkError::TooLong {
            characters,
            limit: PASTE_LIMIT,
        });
    }
    let (version, body) = code::unwrap(&strip(pasted))?;
    // the checksum held, so what fails from here on was so when the link was made
    let fault = |path: &str, what: ContentFault| {
        LinkError::Content(OpenError::Field {
            path: path.to_owned(),
            what,
            line: 1,
            column: 1,
        })
    };
    let packed = URL_SAFE_NO_PAD
        .decode(body)
        .map_err(|_| fault("link", ContentFault::NotBase64))?;
    let json = unpack(FIXED_TEXT_1, &packed, READ_LIMIT)
        .ok_or_else(|| fault("link", ContentFault::NotUnpacked))?;
    let json = std::str::from_utf8(&json).map_err(|_| {
        LinkError::Content(OpenError::NotJson {
            line: 1,
            column: 1,
            what: ContentFault::NotUnicode,
        })
    })?;
    let mut shared: Shared = parse(json, "").map_err(LinkError::Content)?;
    upgrade(&mut shared.gear, version);
    if shared.leg >= shared.gear.legs.len() {
        return Err(fault("leg", ContentFault::NoSuchLeg));
    }
    if shared.view.is_some_and(|view| view.width <= 0.0) {
        return Err(fault("view.width_m", ContentFault::NotAboveZero));
    }
    Ok(shared)
}
