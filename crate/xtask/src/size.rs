//! What the page costs to load.

use crate::{build, licenses, offline, one_file, packed};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::Path;

/// Most that all files that the page loads may take together, by brotli at quality 11 with a window of 22 bits
/// (bytes).
const MOST: usize = 600_000;

/// The same of the second module, which is fetched when it is first used, and never before the first answer (bytes).
const MOST_OF_WORKER: usize = 300_000;

/// One file: name, and bytes as it is, by gzip -9, by brotli.
struct Row {
    name: String,
    raw: usize,
    gzip: usize,
    brotli: usize,
}

impl Row {
    fn print(&self) {
        println!(
            "{:<28} {:>9} {:>9} {:>9}",
            self.name, self.raw, self.gzip, self.brotli
        );
    }
}

/// Builds the page and prints its sizes; too large is an error.
pub(crate) fn size() -> Result<()> {
    let dir = build::site();
    build::page(&dir)?;
    measure(&dir)
}

/// Prints the sizes of a built page; too large is an error.
pub(crate) fn measure(dir: &Path) -> Result<()> {
    let (asked, rows): (Vec<Row>, Vec<Row>) = rows(dir)?
        .into_iter()
        .partition(|row| is_asked_for(&row.name));
    let (worker, rows): (Vec<Row>, Vec<Row>) = rows
        .into_iter()
        .partition(|row| build::WORKER.contains(&row.name.as_str()));
    if !rows.iter().any(|row| row.name.ends_with(".wasm")) {
        bail!("{} holds no built page", dir.display());
    }
    println!(
        "{:<28} {:>9} {:>9} {:>9}",
        "bytes of", "raw", "gzip", "brotli"
    );
    together("the page", rows, MOST)?;
    println!("the second module:");
    together("the second module", worker, MOST_OF_WORKER)?;
    println!("not needed for the first answer:");
    for row in &asked {
        row.print();
    }
    Ok(())
}

/// Prints files and what they take together; too much is an error.
fn together(what: &str, mut rows: Vec<Row>, most: usize) -> Result<()> {
    let all = Row {
        name: "together".into(),
        raw: rows.iter().map(|row| row.raw).sum(),
        gzip: rows.iter().map(|row| row.gzip).sum(),
        brotli: rows.iter().map(|row| row.brotli).sum(),
    };
    let total = all.brotli;
    rows.push(all);
    for row in &rows {
        row.print();
    }
    if total > most {
        bail!("{what} takes {total} bytes by brotli; {most} is the most");
    }
    println!("{} of {most} bytes by brotli are left.", most - total);
    Ok(())
}

/// Whether a file is fetched only when somebody asks for it, or by the browser behind the first answer.
fn is_asked_for(name: &str) -> bool {
    let later = [
        offline::WORKER,
        one_file::WHOLE,
        "gearswing.webmanifest",
        "icon-192.png",
        "icon-512.png",
        // taken last by a browser, and waited for by nothing on the screen
        "paper.css",
    ];
    later.contains(&name) || licenses::FILES.contains(&name)
}

/// Every file below a directory with the sizes of its packed forms.
fn rows(dir: &Path) -> Result<Vec<Row>> {
    let size = |file: &Path| -> Result<usize> {
        let bytes =
            fs::metadata(file).with_context(|| format!("there is no {}", file.display()))?;
        Ok(usize::try_from(bytes.len())?)
    };
    packed::files(dir)?
        .iter()
        .map(|file| {
            Ok(Row {
                name: file.strip_prefix(dir)?.display().to_string(),
                raw: size(file)?,
                gzip: size(&packed::beside(file, "gz"))?,
                brotli: size(&packed::beside(file, "br"))?,
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #[test]
    fn no_page_and_too_large_a_page_fail() {
        let dir = std::env::temp_dir().join(format!("gearswing-size-{}", std::process::id()));
        std::fs::create_dir_all(&dir).unwrap();
        assert!(super::measure(&dir).is_err());
        // Bytes that no method packs: a linear congruential generator's high byte.
        let mut state = 1_u64;
        let noise: Vec<u8> = (0..super::MOST + 1)
            .map(|_| {
                state = state
                    .wrapping_mul(6_364_136_223_846_793_005)
                    .wrapping_add(1);
                state.to_be_bytes()[0]
            })
            .collect();
        std::fs::write(dir.join("a.wasm"), &noise[..noise.len() / 2]).unwrap();
        // what nobody loads who does not ask for it does not count
        std::fs::write(dir.join(crate::licenses::FILES[0]), &noise).unwrap();
        let kept = crate::packed::kept(&dir).unwrap();
        crate::packed::pack(&dir, &kept).unwrap();
        assert!(super::measure(&dir).is_ok());
        std::fs::remove_file(crate::packed::beside(&dir.join("a.wasm"), "br")).unwrap();
        std::fs::write(dir.join("a.wasm"), noise).unwrap();
        assert!(super::measure(&dir).is_err(), "nothing is packed");
        let kept = crate::packed::kept(&dir).unwrap();
        crate::packed::pack(&dir, &kept).unwrap();
        let large = super::measure(&dir).unwrap_err().to_string();
        std::fs::remove_dir_all(&dir).unwrap();
        assert!(large.contains("is the most"), "{large}");
    }
}
