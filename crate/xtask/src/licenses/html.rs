//! The page that shows the notices: plain text in order, readable without a script.

use std::fmt::Write as _;

/// What one library is, and where its texts are.
pub(crate) struct Row {
    /// Name and version.
    pub library: String,
    /// License expression of its manifest.
    pub license: String,
    /// "page", "command" or both.
    pub linked_in: String,
    /// Numbers of its texts, from 0.
    pub texts: Vec<usize>,
}

/// Name of the file with the notices of Rust's standard library.
pub(crate) const STANDARD: &str = "licenses-rust.html";

/// The page. `texts` are the distinct texts; `own` is the license of the project.
pub(crate) fn page(own: &str, rows: &[Row], texts: &[String], has_standard: bool) -> String {
    let mut html = String::from(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'self'\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta name=\"color-scheme\" content=\"light dark\">\n\
         <meta name=\"referrer\" content=\"no-referrer\">\n\
         <title>Licenses of the libraries used in Gearswing</title>\n\
         <link rel=\"stylesheet\" href=\"licenses.css\">\n</head>\n<body>\n<main>\n\
         <h1>Licenses of the libraries used in Gearswing</h1>\n\
         <p><a href=\"./\">To the page</a></p>\n<h2>Gearswing itself</h2>\n",
    );
    pre(&mut html, own);
    html.push_str(
        "<h2>Libraries</h2>\n<table>\n<thead><tr><th>Library</th><th>License</th>\
         <th>Used in</th><th>Texts</th></tr></thead>\n<tbody>\n",
    );
    for row in rows {
        let links: Vec<String> = row
            .texts
            .iter()
            .map(|&text| format!("<a href=\"#text-{0}\">{0}</a>", text + 1))
            .collect();
        // writing to a text can't fail
        let _ = writeln!(
            html,
            "<tr><td>{}</td><td>{}</td><td>{}</td><td>{}</td></tr>",
            escaped(&row.library),
            escaped(&row.license),
            escaped(&row.linked_in),
            links.join(" ")
        );
    }
    html.push_str("</tbody>\n</table>\n<h2>Rust's standard library</h2>\n");
    html.push_str(&if has_standard {
        format!("<p><a href=\"{STANDARD}\">Notices of Rust's standard library</a></p>\n")
    } else {
        "<p>MIT or Apache-2.0; its notices come with the compiler.</p>\n".to_owned()
    });
    for (number, text) in texts.iter().enumerate() {
        let of: Vec<&str> = rows
            .iter()
            .filter(|row| row.texts.contains(&number))
            .map(|row| row.library.as_str())
            .collect();
        let _ = writeln!(
            html,
            "<h2 id=\"text-{0}\">Text {0}</h2>\n<p>{1}</p>",
            number + 1,
            escaped(&of.join(", "))
        );
        pre(&mut html, text);
    }
    html.push_str("</main>\n</body>\n</html>\n");
    html
}

fn pre(html: &mut String, text: &str) {
    html.push_str("<pre>");
    html.push_str(&escaped(text));
    html.push_str("</pre>\n");
}

/// A text as it stands in markup.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_linked_and_escaped() {
        let row = |library: &str, texts: &[usize]| Row {
            library: library.into(),
            license: "MIT".into(),
            linked_in: "page".into(),
            texts: texts.into(),
        };
        let rows = [row("a 1.0.0", &[1]), row("b 2.0.0", &[0, 1])];
        let texts = [
            "First <x@example.org>".to_owned(),
            "Second & last".to_owned(),
        ];
        let html = page("Own", &rows, &texts, true);
        for part in [
            "<pre>Own</pre>",
            "<a href=\"#text-1\">1</a> <a href=\"#text-2\">2</a>",
            "<h2 id=\"text-1\">Text 1</h2>\n<p>b 2.0.0</p>\n<pre>First &lt;x@example.org&gt;</pre>",
            "<h2 id=\"text-2\">Text 2</h2>\n<p>a 1.0.0, b 2.0.0</p>\n<pre>Second &amp; last</pre>",
            STANDARD,
        ] {
            assert!(html.contains(part), "{part}\n{html}");
        }
        assert!(!html.contains("<x@"));
    }
}
