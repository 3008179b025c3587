//! The form as a document of its own, which any browser shows and prints.
use gearswing_app::paper::{Block, Figure, escaped};

/// The document; `style` is the sheet that the page has for paper.
pub(crate) fn html(blocks: &[Block], title: &str, style: &str) -> String {
    let mut body = String::new();
    let mut columns = false;
    for block in blocks {
        let is_column = matches!(block, Block::Measured(_));
        if is_column != columns {
            body += if is_column {
                "<div class=\"columns\">\n"
            } else {
                "</div>\n"
            };
            columns = is_column;
        }
        body += &set(block);
        body.push('\n');
    }
    if columns {
        body += "</div>\n";
    }
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n\
         <title>{}</title>\n<style>\n{style}</style>\n</head>\n<body>\n<main id=\"paper\">\n{body}</main>\n</body>\n</html>\n",
        escaped(title)
    )
}

fn set(block: &Block) -> String {
    match block {
        Block::Title { text, new_page } => {
            let class = if *new_page { "new-page" } else { "" };
            said("h1", class, text)
        }
        Block::Heading(text) => said("h2", "", text),
        Block::Text(text) => said("p", "", text),
        Block::Item(text) => said("p", "item", text),
        Block::Rows(rows) => table(rows.iter().map(Vec::as_slice)),
        Block::Measured((title, rows)) => {
            let rows = table(rows.iter().map(<[_; 2]>::as_slice));
            around("section", "", &(said("h2", "", title) + &rows))
        }
        Block::Figure(figure) => picture(figure, ""),
        Block::Code(figure) => picture(figure, "code"),
        Block::Details(figures) => {
            let all: String = figures.iter().map(|figure| picture(figure, "")).collect();
            around("div", "details", &all)
        }
        Block::Whole(blocks) => {
            let all: String = blocks.iter().map(set).collect();
            around("div", "whole", &all)
        }
        Block::Lines(names) => {
            let names: String = names.iter().map(|name| said("span", "", name)).collect();
            around("div", "lines", &names)
        }
    }
}

fn around(tag: &str, class: &str, inside: &str) -> String {
    let class = match class {
        "" => String::new(),
        class => format!(" class=\"{class}\""),
    };
    format!("<{tag}{class}>{inside}</{tag}>")
}

fn said(tag: &str, class: &str, text: &str) -> String {
    around(tag, class, &escaped(text))
}

fn table<'r>(rows: impl Iterator<Item = &'r [String]>) -> String {
    let row = |cells: &[String]| {
        let cells: String = cells.iter().map(|cell| said("td", "", cell)).collect();
        around("tr", "", &cells)
    };
    around("table", "", &rows.map(row).collect::<String>())
}

fn picture(figure: &Figure, class: &str) -> String {
    let drawn = figure.picture.to_text();
    around(
        "figure",
        class,
        &(drawn + &said("figcaption", "", &figure.caption)),
    )
}
