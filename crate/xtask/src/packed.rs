//! Packed forms beside each file of the page, for hosts that send them as they are.

use anyhow::{Context, Result};
use flate2::{Compression, write::GzEncoder};
use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};

/// Endings of the packed forms: by gzip at its best, by brotli at quality 11 with a window of 22 bits.
pub(crate) const ENDINGS: [&str; 2] = ["gz", "br"];

/// Files of an earlier build with their packed forms.
pub(crate) struct Kept(BTreeMap<PathBuf, (Vec<u8>, [Vec<u8>; 2])>);

/// The path of a packed form.
pub(crate) fn beside(file: &Path, ending: &str) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    name.push(".");
    name.push(ending);
    name.into()
}

/// Whether a file is a packed form of another.
pub(crate) fn is_packed(file: &Path) -> bool {
    ENDINGS
        .iter()
        .any(|ending| file.extension().is_some_and(|e| e == *ending))
}

/// All files below a directory that are no packed forms.
pub(crate) fn files(dir: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    let mut left = vec![dir.to_path_buf()];
    while let Some(at) = left.pop() {
        for entry in
            fs::read_dir(&at).with_context(|| format!("could not read {}", at.display()))?
        {
            let path = entry?.path();
            if path.is_dir() {
                left.push(path);
            } else if !is_packed(&path) {
                found.push(path);
            }
        }
    }
    found.sort();
    Ok(found)
}

/// What an earlier build in a directory has packed.
pub(crate) fn kept(dir: &Path) -> Result<Kept> {
    let mut kept = BTreeMap::new();
    if dir.is_dir() {
        for file in files(dir)? {
            let [gzip, brotli] = ENDINGS.map(|ending| fs::read(beside(&file, ending)));
            // what was not packed is packed anew
            if let (Ok(gzip), Ok(brotli)) = (gzip, brotli) {
                let bytes = fs::read(&file)?;
                kept.insert(file, (bytes, [gzip, brotli]));
            }
        }
    }
    Ok(Kept(kept))
}

/// Writes the packed forms beside each file; those of a file that has not changed are taken over.
pub(crate) fn pack(dir: &Path, kept: &Kept) -> Result<()> {
    for file in files(dir)? {
        let bytes = fs::read(&file)?;
        let before = kept.0.get(&file).filter(|(before, _)| *before == bytes);
        let forms = match before {
            Some((_, forms)) => forms.clone(),
            None => [gzip(&bytes)?, brotli(&bytes)?],
        };
        for (ending, form) in ENDINGS.iter().zip(forms) {
            fs::write(beside(&file, ending), form)?;
        }
    }
    Ok(())
}

/// Packs by gzip at its best.
pub(crate) fn gzip(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?)
}

fn brotli(bytes: &[u8]) -> Result<Vec<u8>> {
    let parameters = brotli::enc::BrotliEncoderParams {
        quality: 11,
        lgwin: 22,
        ..Default::default()
    };
    let mut packed = Vec::new();
    brotli::BrotliCompress(&mut &bytes[..], &mut packed, &parameters)?;
    Ok(packed)
}

#[cfg(test)]
mod tests {
    use std::fs;

    #[test]
    fn what_is_packed_is_taken_over_while_it_fits() {
        let dir = std::env::temp_dir().join(format!("gearswing-packed-{}", std::process::id()));
        fs::create_dir_all(&dir).unwrap();
        let file = dir.join("a.js");
        let packed = || fs::read(super::beside(&file, "br")).unwrap();
        fs::write(&file, vec![0; 100_000]).unwrap();
        super::pack(&dir, &super::kept(&dir).unwrap()).unwrap();
        let first = packed();
        assert!(first.len() < 100);
        // a mark shows which was taken over
        fs::write(super::beside(&file, "br"), b"kept").unwrap();
        super::pack(&dir, &super::kept(&dir).unwrap()).unwrap();
        assert_eq!(packed(), b"kept");
        let kept = super::kept(&dir).unwrap();
        fs::write(&file, vec![0; 100_001]).unwrap();
        super::pack(&dir, &kept).unwrap();
        let mut whole = Vec::new();
        brotli::BrotliDecompress(&mut &packed()[..], &mut whole).unwrap();
        let listed = super::files(&dir).unwrap();
        fs::remove_dir_all(&dir).unwrap();
        assert_eq!(whole.len(), 100_001);
        assert_eq!(listed, [file]);
    }
}
