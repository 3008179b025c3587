//! The printed file measured: its lines as poppler's pdftocairo gives them, the places of its words as pdftotext does.

use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Device, journey_on};
use roxmltree::{Document, Node};
use std::path::Path;
use std::process::Command;

/// Letter and A4 (in).
const PAPERS: [(f64, f64); 2] = [(8.5, 11.0), (8.27, 11.69)];

/// Points of an inch.
const PT_PER_IN: f64 = 72.0;

/// Margins of the form above and below (pt): 15 and 20 mm.
const MARGINS_PT: (f64, f64) = (15.0 / 25.4 * PT_PER_IN, 20.0 / 25.4 * PT_PER_IN);

/// How far the bar may be off (ratio).
const BAR_OFF: f64 = 0.005;

/// A line from place to place of a page (pt, from its upper left corner).
type Line = Vec<[f64; 2]>;

/// A word and its box: left, top, right, bottom (pt).
struct Word {
    text: String,
    box_pt: [f64; 4],
}

fn tool(name: &str, arguments: &[&str], file: &Path, page: usize) -> Result<String> {
    let page = page.to_string();
    let done = Command::new(name)
        .args(arguments)
        .args(["-f", &page, "-l", &page])
        .arg(file)
        .arg("-")
        .output()
        .with_context(|| format!("{name} is needed; on Debian: apt-get install poppler-utils"))?;
    ensure!(
        done.status.success(),
        "{name}: {}",
        String::from_utf8_lossy(&done.stderr)
    );
    Ok(String::from_utf8(done.stdout)?)
}

/// The words of a page.
fn words(file: &Path, page: usize) -> Result<Vec<Word>> {
    let read = tool("pdftotext", &["-bbox"], file, page)?;
    let mut all = Vec::new();
    for part in read.split("<word ").skip(1) {
        let (head, rest) = part.split_once('>').context("a word without an end")?;
        let text = rest.split("</word>").next().unwrap_or_default().to_owned();
        let numbers: Vec<f64> = head
            .split('"')
            .skip(1)
            .step_by(2)
            .map(str::parse)
            .collect::<Result<_, _>>()?;
        let box_pt = numbers.try_into().ok().context("a word has four sides")?;
        all.push(Word { text, box_pt });
    }
    Ok(all)
}

/// Lines of a page: every path that is stroked, its curves by the points that they are drawn with. What a detail's own
/// frame cuts is left out.
fn lines(file: &Path, page: usize) -> Result<Vec<Line>> {
    let read = tool("pdftocairo", &["-svg"], file, page)?;
    let picture = Document::parse(&read)?;
    let mut all = Vec::new();
    let is_drawn = |node: &Node| {
        let style = node.attribute("style").unwrap_or_default();
        node.has_tag_name("path")
            && !node.ancestors().any(|over| over.has_tag_name("defs"))
            && style.contains("stroke-width")
            && !is_framed(&picture, node)
    };
    for node in picture.descendants().filter(is_drawn) {
        let place = node.attribute("transform").map(numbers);
        let [a, b, c, d, e, f] = match place.as_deref() {
            None => [1.0, 0.0, 0.0, 1.0, 0.0, 0.0],
            Some(&[a, b, c, d, e, f]) => [a, b, c, d, e, f],
            Some(other) => anyhow::bail!("a placement of {} numbers", other.len()),
        };
        let path = numbers(node.attribute("d").context("a path without places")?);
        let points = path.chunks_exact(2).map(|at| {
            let (x, y) = (at[0], at[1]);
            [a * x + c * y + e, b * x + d * y + f]
        });
        all.push(points.collect());
    }
    Ok(all)
}

/// Whether a line is cut by a frame that is lower than what a page holds.
fn is_framed(picture: &Document, node: &Node) -> bool {
    let frame = node
        .ancestors()
        .find_map(|over| over.attribute("clip-path"));
    let name = frame.map(|text| text.trim_start_matches("url(#").trim_end_matches(')'));
    let frame = picture
        .descendants()
        .find(|node| node.has_tag_name("clipPath") && node.attribute("id") == name)
        .and_then(|frame| frame.first_element_child()?.attribute("d"));
    let heights: Vec<f64> = frame.map(numbers).unwrap_or_default();
    let heights = heights.chunks_exact(2).map(|at| at[1]);
    let (low, high) = heights.fold((f64::INFINITY, 0.0_f64), |(low, high), y| {
        (low.min(y), high.max(y))
    });
    high > low && high - low < 0.5 * PAPERS[0].1 * PT_PER_IN
}

/// The numbers in a text.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | 'e')))
        .filter_map(|part| part.parse().ok())
        .collect()
}

/// Length of the scale bar on paper over what it should be (ratio): the last level line over the words under the
/// drawing that begins where a length does and lies right below it.
fn bar(words: &[Word], lines: &[Line], (scale, under): (f64, f64)) -> Result<f64> {
    let foot = |word: &Word| word.box_pt[3];
    let lengths = words.windows(2).filter_map(|pair| {
        let [number, unit] = pair else { return None };
        let per_in = match unit.text.as_str() {
            "in" => 1.0,
            "mm" => 25.4,
            _ => return None,
        };
        let value: f64 = number.text.parse().ok()?;
        (foot(number) < under).then_some((number, value / per_in))
    });
    let line_below = |word: &Word| {
        lines.iter().find_map(|line| match line.as_slice() {
            &[[x0, y0], [x1, y1]]
                if (y1 - y0).abs() < 0.01
                    && (x0 - word.box_pt[0]).abs() < 1.5
                    && (-2.0..16.0).contains(&(y0 - foot(word))) =>
            {
                Some(x1 - x0)
            }
            _ => None,
        })
    };
    let (length, meant_in) = lengths
        .filter_map(|(word, meant_in)| Some((line_below(word)?, meant_in)))
        .next_back()
        .context("no words of a scale bar with a line below them")?;
    Ok(length * scale / (meant_in * PT_PER_IN))
}

/// The scale that the words under a drawing tell, and where they begin (pt from above).
fn scale_told(words: &[Word]) -> Option<(f64, f64)> {
    words.windows(2).find_map(|pair| match pair {
        [word, scale] if word.text == "Scale" => {
            let scale = scale.text.strip_prefix("1:")?.parse().ok()?;
            Some((scale, word.box_pt[1]))
        }
        _ => None,
    })
}

#[test]
fn bars_measure_right_and_no_page_cuts_a_drawing() {
    journey_on(Device::DESK, "measured paper", async |browser| {
        browser.open("").await?;
        let folder = tempfile::tempdir()?;
        let file = folder.path().join("gear.pdf");
        for units in ["in", "mm-bar"] {
            browser.choose("#units", units).await?;
            for (width, height) in PAPERS {
                std::fs::write(&file, browser.printed(width, height).await?)?;
                let mut drawings = 0;
                for page in 1.. {
                    let Ok(words) = words(&file, page) else { break };
                    if words.is_empty() {
                        break;
                    }
                    let lines = lines(&file, page)?;
                    let (top, foot) = (MARGINS_PT.0, height * PT_PER_IN - MARGINS_PT.1);
                    let beyond = lines
                        .iter()
                        .flatten()
                        .find(|[_, y]| *y < top - 1.0 || *y > foot + 1.0);
                    ensure!(
                        beyond.is_none(),
                        "page {page} of {width} by {height} in: a line is cut at {beyond:?}"
                    );
                    if let Some(scale) = scale_told(&words) {
                        drawings += 1;
                        let off = bar(&words, &lines, scale)
                            .with_context(|| format!("page {page}, {units}"))?;
                        ensure!(
                            (off - 1.0).abs() <= BAR_OFF,
                            "page {page}, {units}: the scale bar is {off} of what it says"
                        );
                    }
                }
                ensure!(drawings == 3, "{drawings} drawings");
            }
        }
        Ok(())
    });
}
