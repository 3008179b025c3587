//! Reader of the size table: comma-separated text without quotes, inches in, meters out.
use thiserror::Error;

use super::sizes::{Confidence, SizeRow, Trust};

/// Meters in an inch (m/in): exactly 0.0254 (international inch, NIST SP 811 appendix B).
pub(super) const M_PER_INCH: f64 = 0.0254;

/// First line of the table.
const HEAD: &str = "size,ply,diameter_max_in,diameter_min_in,width_max_in,width_min_in,rim_in,trust,confidence,source";

/// A line of the table that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("line {line}: {what}")]
pub struct TableError {
    /// Line, counted from 1.
    pub line: usize,
    /// What is wrong with it.
    pub what: &'static str,
}

/// Reads the text of a size table.
///
/// # Errors
/// The first line that cannot be read.
pub fn parse_table(text: &'static str) -> Result<Vec<SizeRow>, TableError> {
    let mut lines = text.lines().enumerate();
    if lines.next().map(|(_, head)| head) != Some(HEAD) {
        return Err(TableError {
            line: 1,
            what: "unknown columns",
        });
    }
    lines
        .map(|(index, line)| {
            parse_row(line).map_err(|what| TableError {
                line: index + 1,
                what,
            })
        })
        .collect()
}

fn parse_row(line: &'static str) -> Result<SizeRow, &'static str> {
    let cells: Vec<&'static str> = line.split(',').map(str::trim).collect();
    let Ok(cells) = <[&'static str; 10]>::try_from(cells) else {
        return Err("not ten columns");
    };
    let [
        size,
        ply,
        d_max,
        d_min,
        w_max,
        w_min,
        rim,
        trust,
        confidence,
        source,
    ] = cells;
    if size.is_empty() || source.is_empty() {
        return Err("size or source is empty");
    }
    let ply = match ply {
        "" => None,
        ply => Some(ply.parse().map_err(|_| "ply is no small whole number")?),
    };
    let trust = match (trust, confidence) {
        ("second_hand", "") => Trust::SecondHand,
        ("memory", "high") => Trust::Memory(Confidence::High),
        ("memory", "medium") => Trust::Memory(Confidence::Medium),
        ("memory", "low") => Trust::Memory(Confidence::Low),
        _ => return Err("trust and confidence do not go together"),
    };
    Ok(SizeRow {
        size,
        ply,
        diameter_max: length(d_max)?,
        diameter_min: optional(d_min)?,
        width_max: length(w_max)?,
        width_min: optional(w_min)?,
        rim_diameter: length(rim)?,
        trust,
        source,
    })
}

fn optional(cell: &str) -> Result<Option<f64>, &'static str> {
    if cell.is_empty() {
        Ok(None)
    } else {
        length(cell).map(Some)
    }
}

fn length(cell: &str) -> Result<f64, &'static str> {
    match decimal(cell) {
        // of ten-thousandths, which are whole: then the quotient is the number that the typed size is
        Some(inches) if inches > 0.0 => Ok((1e4 * inches).round() * (1e4 * M_PER_INCH) / 1e8),
        _ => Err("a dimension is no positive number"),
    }
}

/// A decimal without an exponent and with few figures: whole number and power of ten are exact then, and their
/// quotient is the nearest number there is (W. D. Clinger, "How to read floating point numbers accurately", PLDI
/// 1990, section 3; from memory, held by a test). The library's own reading brings a table of 10 kB into the page.
fn decimal(cell: &str) -> Option<f64> {
    let (whole, part) = cell.split_once('.').unwrap_or((cell, ""));
    let figures = format!("{whole}{part}");
    let is_plain = figures.bytes().all(|figure| figure.is_ascii_digit());
    if !is_plain || whole.is_empty() || figures.len() > MOST_FIGURES {
        return None;
    }
    let power = u32::try_from(part.len()).ok()?;
    let whole: u32 = figures.parse().ok()?;
    Some(f64::from(whole) / f64::from(10_u32.pow(power)))
}

/// Most figures of a dimension.
const MOST_FIGURES: usize = 9;

#[cfg(test)]
mod tests {
    use super::*;

    const ROW: &str = "6.00-6,4,17.5,,6.3,5.9,6,memory,high,remembered";

    #[test]
    fn the_shipped_table_reads() {
        let rows = parse_table(include_str!("../../data/tires.csv")).unwrap();
        assert!(rows.len() > 60);
    }

    /// By the library's own reading.
    #[test]
    fn decimals_are_the_nearest_numbers() {
        for whole in (0..100_000_u32).step_by(7) {
            for text in [
                format!("{}.{:02}", whole / 100, whole % 100),
                format!("{}.{:04}", whole / 10_000, whole % 10_000),
                whole.to_string(),
            ] {
                let nearest: f64 = text.parse().unwrap();
                assert_eq!(
                    decimal(&text).unwrap().to_bits(),
                    nearest.to_bits(),
                    "{text}"
                );
            }
        }
        for text in [
            "",
            ".",
            ".5",
            "-1",
            "+1",
            "1e3",
            "1.2.3",
            "inf",
            "0.1234567890",
            "1 ",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }

    #[test]
    fn one_row() {
        let row = parse_row(ROW).unwrap();
        assert_eq!(row.ply, Some(4));
        assert!((row.diameter_max - 0.4445).abs() < 1e-15);
        assert_eq!(row.diameter_min, None);
        assert_eq!(row.trust, Trust::Memory(Confidence::High));
    }

    #[test]
    fn bad_rows_are_refused() {
        for (line, what) in [
            ("6.00-6,4,17.5", "not ten columns"),
            (",4,17.5,,6.3,,6,memory,high,s", "size or source is empty"),
            ("a,4,17.5,,6.3,,6,memory,high,", "size or source is empty"),
            (
                "a,x,17.5,,6.3,,6,memory,high,s",
                "ply is no small whole number",
            ),
            (
                "a,4,-17.5,,6.3,,6,memory,high,s",
                "a dimension is no positive number",
            ),
            (
                "a,4,17.5,nan,6.3,,6,memory,high,s",
                "a dimension is no positive number",
            ),
            (
                "a,4,17.5,,,,6,memory,high,s",
                "a dimension is no positive number",
            ),
            // a remembered row can never pass for a printed one, nor hide how sure it is
            (
                "a,4,17.5,,6.3,,6,second_hand,high,s",
                "trust and confidence do not go together",
            ),
            (
                "a,4,17.5,,6.3,,6,memory,,s",
                "trust and confidence do not go together",
            ),
        ] {
            assert_eq!(parse_row(line), Err(what), "{line}");
        }
        assert_eq!(parse_table("size\n").unwrap_err().line, 1);
    }
}
