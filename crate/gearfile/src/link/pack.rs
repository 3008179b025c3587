//! Deflate (RFC 1951) against a fixed text: the keys that every gear repeats cost next to nothing.
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress_to_output, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress};
use std::borrow::Cow;

/// The fixed text of version 1; links refer to it, so it never changes.
pub(super) const FIXED_TEXT_1: &[u8] = include_bytes!("../../data/link-1.txt");

/// What stands before it from version 4 on: the paths of all fields, their keys, kept states. Never changes.
pub(super) const FIXED_TEXT_2: &[u8] = include_bytes!("../../data/link-2.txt");

/// The version from which on both stand.
const SINCE_BOTH: u64 = 4;

/// The fixed text of a version.
pub(super) fn fixed_text(version: u64) -> Cow<'static, [u8]> {
    if version < SINCE_BOTH {
        Cow::Borrowed(FIXED_TEXT_1)
    } else {
        Cow::Owned([FIXED_TEXT_2, FIXED_TEXT_1].concat())
    }
}

/// Buffer that unpacking starts with (bytes); doubled up to the limit.
const FIRST_BUFFER: usize = 32 << 10;

/// Deflates `data` as what follows `fixed`; `None` when the compressor refuses.
pub(super) fn pack(fixed: &[u8], data: &[u8]) -> Option<Vec<u8>> {
    const BEST: i32 = 10;
    const RAW: i32 = -15;
    let mut compressor = CompressorOxide::new(create_comp_flags_from_zip_params(BEST, RAW, 0));
    // flushed to a byte border; what comes out is not kept
    let flushed = compress_to_output(&mut compressor, fixed, TDEFLFlush::Sync, |_| true);
    if flushed != (TDEFLStatus::Okay, fixed.len()) {
        return None;
    }
    let mut packed = Vec::new();
    let done = compress_to_output(&mut compressor, data, TDEFLFlush::Finish, |bytes| {
        packed.extend_from_slice(bytes);
        true
    });
    (done == (TDEFLStatus::Done, data.len())).then_some(packed)
}

/// Undoes [`pack`]; `None` when `packed` is no such stream, has more after it, or would unpack to
/// more than `limit` bytes.
pub(super) fn unpack(fixed: &[u8], packed: &[u8], limit: usize) -> Option<Vec<u8>> {
    let most = fixed.len() + limit;
    let mut out = fixed.to_vec();
    let mut at = fixed.len();
    let mut rest = packed;
    let mut inflater = DecompressorOxide::new();
    // ends: each round doubles the buffer up to `most`, at which it gives up
    loop {
        let room = (2 * out.len()).max(FIRST_BUFFER).min(most);
        if room <= at {
            return None;
        }
        out.resize(room, 0);
        let flags = TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
        let (status, used, written) = decompress(&mut inflater, rest, &mut out, at, flags);
        rest = rest.get(used..)?;
        at += written;
        match status {
            TINFLStatus::Done if rest.is_empty() => {
                out.truncate(at);
                return Some(out.split_off(fixed.len()));
            }
            TINFLStatus::HasMoreOutput => {}
            _ => return None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn round_trip_and_gain() {
        let data = br#"{"gear":{"name":"a","legs":[]},"leg":0}"#;
        let packed = pack(FIXED_TEXT_1, data).unwrap();
        assert!(packed.len() < data.len());
        assert_eq!(unpack(FIXED_TEXT_1, &packed, 1 << 10).unwrap(), data);
        assert_eq!(unpack(FIXED_TEXT_1, &[], 1 << 10), None);
        let packed = pack(FIXED_TEXT_1, &[]).unwrap();
        assert_eq!(unpack(FIXED_TEXT_1, &packed, 1 << 10), Some(Vec::new()));
    }

    #[test]
    fn bounded() {
        // 8 MB of nothing packs into some kilobytes: a small link must not fill the memory
        let data = vec![b'0'; 8 << 20];
        let packed = pack(FIXED_TEXT_1, &data).unwrap();
        assert!(packed.len() < 20_000);
        assert_eq!(unpack(FIXED_TEXT_1, &packed, 4 << 20), None);
        assert_eq!(unpack(FIXED_TEXT_1, &packed, 8 << 20), Some(data));
    }

    #[test]
    fn longer_or_shorter_streams_are_refused() {
        let packed = pack(FIXED_TEXT_1, b"legs and links").unwrap();
        let mut longer = packed.clone();
        longer.push(0);
        assert_eq!(unpack(FIXED_TEXT_1, &longer, 1 << 10), None);
        for cut in 0..packed.len() {
            let got = unpack(FIXED_TEXT_1, &packed[..cut], 1 << 10);
            assert_eq!(got, None, "{cut}");
        }
    }

    #[test]
    fn another_inflater_reads_it() {
        // RFC 1951: behind the fixed text in a stored block the stream is plain deflate
        let data = b"\"trunnion_m\":[1.5,0]".repeat(40);
        let packed = pack(FIXED_TEXT_1, &data).unwrap();
        let length = u16::try_from(FIXED_TEXT_1.len()).unwrap();
        let mut stream = vec![0];
        stream.extend(length.to_le_bytes());
        stream.extend((!length).to_le_bytes());
        stream.extend(FIXED_TEXT_1);
        stream.extend(packed);
        let whole = miniz_oxide::inflate::decompress_to_vec(&stream).unwrap();
        assert_eq!(&whole[FIXED_TEXT_1.len()..], data);
    }
}
