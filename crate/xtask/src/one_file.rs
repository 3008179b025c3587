//! The page as one HTML file, which opens from a disk without a server: scripts and styles stand in it, the module
//! and the notices of the libraries are in it as packed text.
//!
//! It has no gear in it ([`WHOLE`], the tool for people who have no server); the page makes one with a gear of it.

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;

use crate::packed::gzip;

/// The whole file.
pub(crate) const WHOLE: &str = "gearswing.html";

/// Most that the whole file may take (bytes): mail programs carry that much.
const MOST: usize = 1_200_000;

/// First line of the file, for who sees it in a viewer that runs no scripts.
const PLAIN: &str = "This file is a page that computes: open it in a browser on a computer (a double click; Chromium, Firefox or another one of 2024 or later). A phone, or the preview of a mail program, shows only this line.";

/// Takes the page as it was read, before a script has changed it: from it the next file is made.
const AS_READ: &str =
    "const gearswingRead = `<!doctype html>\\n${document.documentElement.outerHTML}\\n`;\n";

/// Hands the module to the start script.
const HAND_OVER: &str =
    "window.gearswingFile = { page: gearswingRead, module: { default: __wbg_init, begin } };\n";

/// Writes it beside the other files of a built page. `aside`: where the module lies that needs no second one, and its
/// glue, under the file stem `module`.
pub(crate) fn write(dir: &Path, aside: &Path, module: &str, notices: &[&str]) -> Result<()> {
    let read = |file: &Path| {
        fs::read_to_string(file).with_context(|| format!("could not read {}", file.display()))
    };
    let text = |name: &str| read(&dir.join(name));
    let glue = read(&aside.join(format!("{module}.js")))?;
    let paper = ["@media print {\n", &text("paper.css")?, "}\n"].concat();
    let styles = text("colors.css")? + &text("style.css")? + &paper;
    let script = [AS_READ, &glue, HAND_OVER, &text("start.js")?].concat();
    let mut plain = String::new();
    for name in notices {
        let file = dir.join(name);
        if file.is_file() {
            plain += &words_of(&text(name)?);
        }
    }
    let page = Page {
        index: &text("index.html")?,
        icon: &format!(
            "data:image/svg+xml;base64,{}",
            STANDARD.encode(text("icon.svg")?)
        ),
        styles: &styles,
        script: &script,
        notices: &STANDARD.encode(gzip(plain.as_bytes())?),
    };
    let module = fs::read(aside.join(format!("{module}_bg.wasm")))?;
    let module = STANDARD.encode(gzip(&module)?);
    let whole = page.with(&module)?;
    ensure!(
        whole.len() <= MOST,
        "{WHOLE} takes {} bytes; {MOST} is the most",
        whole.len()
    );
    fs::write(dir.join(WHOLE), whole)?;
    Ok(())
}

/// What the one file is made of.
struct Page<'a> {
    index: &'a str,
    icon: &'a str,
    styles: &'a str,
    script: &'a str,
    notices: &'a str,
}

impl Page<'_> {
    /// The file with a packed module. Whatever `www/index.html` takes from beside it is put in its place.
    fn with(&self, module: &str) -> Result<String> {
        let Self {
            index,
            icon,
            styles,
            script,
            notices,
        } = self;
        for (what, text) in [("style", styles), ("script", script)] {
            ensure!(
                !text.contains(&format!("</{what}")),
                "a {what} that holds its own end can't stand in a page"
            );
        }
        let policy = format!(
            "default-src 'none'; script-src 'sha256-{}' 'wasm-unsafe-eval'; style-src 'sha256-{}'; img-src data: blob:; base-uri 'none'; form-action 'none'",
            hash(script),
            hash(styles)
        );
        let mut page = String::new();
        for line in index.lines() {
            if line.starts_with("<link rel=\"icon\"") {
                page += &format!("<link rel=\"icon\" href=\"{icon}\">\n<style>{styles}</style>\n");
            } else if line.starts_with("<meta http-equiv=\"Content-Security-Policy\"") {
                page += &format!(
                    "<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n"
                );
            } else if line == "<body>" {
                page += &format!("<body>\n<p id=\"plain\" class=\"plain\">{PLAIN}</p>\n");
            } else if line == "</body>" {
                let held =
                    |id, text| format!("<script type=\"text/plain\" id=\"{id}\">{text}</script>\n");
                page += &held("given", "");
                page += &held("notices-text", notices);
                page += &held("module-text", module);
                page += &format!("<script type=\"module\">{script}</script>\n</body>\n");
            } else if !line.starts_with("<link ") && !line.starts_with("<script ") {
                page += line;
                page += "\n";
            }
        }
        for part in [
            "<style>",
            "id=\"plain\"",
            "id=\"given\"",
            "script-src 'sha256-",
        ] {
            ensure!(
                page.contains(part),
                "www/index.html gave no place for {part}"
            );
        }
        Ok(page)
    }
}

/// SHA-256 as a content policy writes it.
fn hash(text: &str) -> String {
    STANDARD.encode(Sha256::digest(text))
}

/// The words of a page of notices, line by line as they stand.
fn words_of(html: &str) -> String {
    let mut words = String::with_capacity(html.len());
    let body = html.split_once("<body>").map_or(html, |(_, body)| body);
    let mut parts = body.split('<');
    words += parts.next().unwrap_or_default();
    for part in parts {
        words += part.split_once('>').map_or(part, |(_, text)| text);
    }
    // the sign that the others are written with comes last
    for (written, sign) in [
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&amp;", "&"),
    ] {
        words = words.replace(written, sign);
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    const INDEX: &str = "<!doctype html>\n<html>\n<head>\n<meta http-equiv=\"Content-Security-Policy\" content=\"x\">\n\
        <link rel=\"icon\" href=\"icon.svg\">\n<link rel=\"stylesheet\" href=\"style.css\">\n\
        <script src=\"start.js\" defer></script>\n</head>\n<body>\n<p>Text</p>\n</body>\n</html>\n";

    fn page(script: &str) -> Result<String> {
        let page = Page {
            index: INDEX,
            icon: "data:image/svg+xml;base64,",
            styles: "p { color: red; }",
            script,
            notices: "bm90aWNlcw==",
        };
        page.with("bW9kdWxl")
    }

    #[test]
    fn all_stands_in_it_and_nothing_is_taken_from_beside_it() {
        let page = page("start();").unwrap();
        assert!(
            !page.contains("href=\"style.css\"") && !page.contains("src=\""),
            "{page}"
        );
        assert!(page.contains("<script type=\"text/plain\" id=\"module-text\">bW9kdWxl</script>"));
        // by sha256sum of coreutils, base64: printf 'start();' | sha256sum | xxd -r -p | base64
        assert!(
            page.contains("script-src 'sha256-E6jQvrT2ZivWG9GJ4AAEZf4MhI7l3QkLroW4hgvUT4c='"),
            "{page}"
        );
        assert!(page.find(PLAIN).unwrap() < page.find("<p>Text").unwrap());
    }

    #[test]
    fn a_script_that_would_end_early_is_refused() {
        assert!(page("const a = '</script>';").is_err());
    }

    #[test]
    fn notices_lose_their_markup_only() {
        assert_eq!(
            words_of(
                "<head>x</head><body><h1>A &amp; B</h1>\n<pre>&lt;c@d&gt;\n  1 &quot;e&quot;</pre>"
            ),
            "A & B\n<c@d>\n  1 \"e\""
        );
    }
}
