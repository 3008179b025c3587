//! What a link holds, and the whole way there and back.
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use gearswing_gear::model::Gear;
use serde::{Deserialize, Serialize};

use std::borrow::Cow;

use super::pack::{fixed_text, pack, unpack};
use super::strip::strip;
use super::{LinkError, code};
use crate::file::{ContentFault, OpenError, READ_LIMIT, SaveError, lowest_version, parse, upgrade};
use crate::kept::{KeptText, keep, told};
use crate::layout::compact;
use crate::not_finite::refuse_not_finite;

/// The version whose links have the sheet in hand, the curve and the way first.
const SINCE_SHEET: u64 = 5;

/// Most characters of a pasted text that is looked through: a link and an address around it.
const PASTE_LIMIT: usize = code::LONGEST + (64 << 10);

/// A gear, and how it is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Shared {
    /// The gear.
    pub gear: Gear,
    /// Leg that is looked at, as index.
    pub leg: usize,
    /// Place on the path (ratio); see `solver::result::Station::progress`.
    pub progress: f64,
    /// Part of the drawing that is seen; absent = all of it.
    pub view: Option<ViewState>,
    /// Key of the units shown; what a program does not know it leaves aside.
    pub units: String,
    /// Key of the sheet in hand; empty = the first one. What a program does not know it leaves aside.
    pub sheet: String,
    /// Key of the answer whose curve is on the strip; empty = the worst one's.
    pub curve: String,
    /// The way down is in hand.
    pub down: bool,
}

/// The same as it stands in a link.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SharedText<'g> {
    gear: Cow<'g, Gear>,
    leg: usize,
    progress: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    view: Option<ViewState>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    units: Cow<'g, str>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    sheet: Cow<'g, str>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    curve: Cow<'g, str>,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    down: bool,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    kept: Vec<KeptText<'g>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    before: Option<usize>,
}

impl<'g> SharedText<'g> {
    fn of(shared: &'g Shared) -> Self {
        let (gear, kept) = told(&shared.gear);
        Self {
            gear,
            leg: shared.leg,
            progress: shared.progress,
            view: shared.view,
            units: Cow::Borrowed(&shared.units),
            sheet: Cow::Borrowed(&shared.sheet),
            curve: Cow::Borrowed(&shared.curve),
            down: shared.down,
            kept,
            before: shared.gear.state_before().and(shared.gear.before),
        }
    }
}

impl Shared {
    /// A gear with nothing said of how it is looked at.
    #[must_use]
    pub fn of(gear: Gear) -> Self {
        Self {
            gear,
            leg: 0,
            progress: 0.0,
            view: None,
            units: String::new(),
            sheet: String::new(),
            curve: String::new(),
            down: false,
        }
    }

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
    let json = content(shared)?;
    // an older program opens the gear, which counts for more than how it is looked at
    let version = lowest_version(&told(&shared.gear).0, &json);
    let is_looked_at = !shared.sheet.is_empty() || !shared.curve.is_empty() || shared.down;
    if version < SINCE_SHEET && is_looked_at {
        return encode(&Shared {
            sheet: String::new(),
            curve: String::new(),
            down: false,
            ..shared.clone()
        });
    }
    let too_large = |bytes, limit| SaveError::TooLarge { bytes, limit };
    if json.len() > READ_LIMIT {
        return Err(too_large(json.len(), READ_LIMIT));
    }
    let packed = pack(&fixed_text(version), json.as_bytes()).ok_or(SaveError::NotPacked)?;
    let body = URL_SAFE_NO_PAD.encode(packed);
    code::wrap(&body, version).ok_or_else(|| too_large(body.len(), code::LONGEST))
}

/// The JSON that a link carries.
///
/// # Errors
/// As the writer of JSON says.
pub fn content(shared: &Shared) -> Result<String, SaveError> {
    Ok(compact(&SharedText::of(shared))?)
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
    let packed = URL_SAFE_NO_PAD
        .decode(body)
        .map_err(|_| fault("link", ContentFault::NotBase64))?;
    let json = unpack(&fixed_text(version), &packed, READ_LIMIT)
        .ok_or_else(|| fault("link", ContentFault::NotUnpacked))?;
    let json = std::str::from_utf8(&json).map_err(|_| {
        LinkError::Content(OpenError::NotJson {
            line: 1,
            column: 1,
            what: ContentFault::NotUnicode,
        })
    })?;
    open_content(json, version)
}

fn fault(path: &str, what: ContentFault) -> LinkError {
    LinkError::Content(OpenError::Field {
        path: path.to_owned(),
        what,
        line: 1,
        column: 1,
    })
}

/// Opens the JSON that a link of a version carries.
///
/// # Errors
/// [`LinkError::Content`].
pub fn open_content(json: &str, version: u64) -> Result<Shared, LinkError> {
    let text: SharedText<'static> = parse(json, "").map_err(LinkError::Content)?;
    let mut gear = text.gear.into_owned();
    upgrade(&mut gear, version);
    keep(&mut gear, text.kept, text.before).map_err(LinkError::Content)?;
    let shared = Shared {
        gear,
        leg: text.leg,
        progress: text.progress,
        view: text.view,
        units: text.units.into_owned(),
        sheet: text.sheet.into_owned(),
        curve: text.curve.into_owned(),
        down: text.down,
    };
    if shared.leg >= shared.gear.legs.len() {
        return Err(fault("leg", ContentFault::NoSuchLeg));
    }
    if shared.view.is_some_and(|view| view.width <= 0.0) {
        return Err(fault("view.width_m", ContentFault::NotAboveZero));
    }
    Ok(shared)
}
