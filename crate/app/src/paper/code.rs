//! The link as a QR code (ISO/IEC 18004), which a phone reads off the paper.
use gearswing_gearfile::link;
use gearswing_report::page::link::Reach;
use gearswing_report::page::paper as words;
use qrcodegen::{QrCode, QrCodeEcc};

use super::figure::Figure;
use super::svg::squares;
use crate::state::{State, reach};

/// White on every side, in squares (ISO/IEC 18004: four).
const QUIET: i32 = 4;
/// Side of the picture on paper (CSS px): 55 mm, at which a square of the densest link is 0.3 mm.
const SIDE_PX: f64 = 208.0;

/// The link as a picture with its address under it; `Err` with the words why there is none.
pub(super) fn code(state: &State) -> Result<Figure, &'static str> {
    let address = state.files.link_address();
    let reach = reach(address);
    if reach == Reach::Machine {
        return Err(words::NO_CODE_HERE);
    }
    let code = state.link_text().map_err(|_| words::NO_CODE)?;
    let whole = [address, "#", &code].concat();
    if !link::fits(&whole) {
        return Err(words::NO_CODE);
    }
    // the strongest correction that the same size has room for is taken
    let made = QrCode::encode_text(&whole, QrCodeEcc::Low).map_err(|_| words::NO_CODE)?;
    let dark = |x: i32, y: i32| made.get_module(x - QUIET, y - QUIET);
    Ok(Figure {
        picture: squares(made.size() + 2 * QUIET, SIDE_PX, dark),
        caption: words::code_caption(address, reach),
    })
}
