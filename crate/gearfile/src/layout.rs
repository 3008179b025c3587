//! How JSON is laid out: lines for a reader, or as few characters as possible.
use std::io::{self, Write};

use serde::Serialize;
use serde_json::Serializer;
use serde_json::ser::Formatter;

/// JSON for a reader: two blanks an indent, one line for each field, points on one line.
pub(crate) fn readable<T: Serialize>(value: &T) -> Result<String, serde_json::Error> {
    let mut text = with(value, Layout::default())?;
    text.push('\n');
    Ok(text)
}

/// JSON with as few characters as possible.
pub(crate) fn compact<T: Serialize>(value: &T) -> Result<String, serde_json::Error> {
    with(
        value,
        Layout {
            compact: true,
            ..Layout::default()
        },
    )
}

fn with<T: Serialize>(value: &T, layout: Layout) -> Result<String, serde_json::Error> {
    let mut bytes = Vec::new();
    value.serialize(&mut Serializer::with_formatter(&mut bytes, layout))?;
    String::from_utf8(bytes).map_err(serde::ser::Error::custom)
}

/// Largest whole number that is written without a point: beyond it f64 skips whole numbers.
const WHOLE: f64 = 9_007_199_254_740_992.0;

/// Shortest text that reads back to the same bits: whole numbers lose their ".0", -0 stays -0.
fn number<W: Write + ?Sized>(writer: &mut W, value: f64) -> io::Result<()> {
    if value.fract() == 0.0 && value.abs() < WHOLE {
        write!(writer, "{value:.0}")
    } else {
        writer.write_all(&serde_json::to_vec(&value)?)
    }
}

/// What separates the next value from what stands before it; decided when its kind is known.
#[derive(Default)]
enum Pending {
    #[default]
    Nothing,
    First,
    Next,
}

/// Both layouts are one type: the code that writes a gear is made once for each.
#[derive(Default)]
struct Layout {
    compact: bool,
    pending: Pending,
    /// One entry for each open bracket: whether what it holds stands on lines of its own.
    open: Vec<bool>,
}

impl Layout {
    fn line<W: Write + ?Sized>(&self, writer: &mut W) -> io::Result<()> {
        if self.compact {
            return Ok(());
        }
        writer.write_all(b"\n")?;
        for _ in &self.open {
            writer.write_all(b"  ")?;
        }
        Ok(())
    }

    /// Separator before a number, a word or an array: stays on the line.
    fn inline<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        match std::mem::take(&mut self.pending) {
            Pending::Next => writer.write_all(b", "),
            Pending::Nothing | Pending::First => Ok(()),
        }
    }

    /// Separator before an object in an array: on a line of its own.
    fn own_line<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        match std::mem::take(&mut self.pending) {
            Pending::Nothing => return Ok(()),
            Pending::Next => writer.write_all(b",")?,
            Pending::First => {}
        }
        self.spread();
        self.line(writer)
    }

    fn spread(&mut self) {
        if let Some(spread) = self.open.last_mut() {
            *spread = true;
        }
    }

    fn close<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        if self.open.pop() == Some(true) {
            self.line(writer)?;
        }
        Ok(())
    }
}

impl Formatter for Layout {
    /// JSON writes null for a number that is not finite, and nothing else of a model is null: a field that
    /// is absent is left out.
    fn write_null<W: Write + ?Sized>(&mut self, _writer: &mut W) -> io::Result<()> {
        Err(io::Error::other("a number that is not finite"))
    }

    fn write_f64<W: Write + ?Sized>(&mut self, writer: &mut W, value: f64) -> io::Result<()> {
        self.inline(writer)?;
        number(writer, value)
    }

    fn write_u64<W: Write + ?Sized>(&mut self, writer: &mut W, value: u64) -> io::Result<()> {
        self.inline(writer)?;
        write!(writer, "{value}")
    }

    fn begin_string<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        self.inline(writer)?;
        writer.write_all(b"\"")
    }

    fn begin_array<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        self.inline(writer)?;
        self.open.push(false);
        writer.write_all(b"[")
    }

    fn end_array<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        self.close(writer)?;
        writer.write_all(b"]")
    }

    fn begin_array_value<W: Write + ?Sized>(
        &mut self,
        writer: &mut W,
        first: bool,
    ) -> io::Result<()> {
        if self.compact {
            return writer.write_all(if first { b"" } else { b"," });
        }
        self.pending = if first { Pending::First } else { Pending::Next };
        Ok(())
    }

    fn begin_object<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        self.own_line(writer)?;
        self.open.push(false);
        writer.write_all(b"{")
    }

    fn end_object<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        self.close(writer)?;
        writer.write_all(b"}")
    }

    fn begin_object_key<W: Write + ?Sized>(
        &mut self,
        writer: &mut W,
        first: bool,
    ) -> io::Result<()> {
        if !first {
            writer.write_all(b",")?;
        }
        self.spread();
        self.line(writer)
    }

    fn begin_object_value<W: Write + ?Sized>(&mut self, writer: &mut W) -> io::Result<()> {
        writer.write_all(if self.compact { b":" } else { b": " })
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn readable_keeps_points_on_a_line() {
        let value = json!({
            "a": {"points": [[0.5, -1.0], [2.0, 3.25]], "words": ["x", "y"]},
            "list": [{"n": 1.0}, {"n": -0.0}],
            "none": [],
            "void": {}
        });
        let wanted = r#"{
  "a": {
    "points": [[0.5, -1], [2, 3.25]],
    "words": ["x", "y"]
  },
  "list": [
    {
      "n": 1
    },
    {
      "n": -0
    }
  ],
  "none": [],
  "void": {}
}
"#;
        assert_eq!(readable(&value).unwrap(), wanted);
    }

    #[test]
    fn compact_is_what_the_library_writes() {
        let value = json!({
            "a": {"points": [[0.5, -1.5], [2.5, -2.5]], "words": ["x", "y"], "yes": [true, false]},
            "list": [{"n": 1}, {"n": -2}, []],
            "none": [],
            "void": {}
        });
        assert_eq!(
            compact(&value).unwrap(),
            serde_json::to_string(&value).unwrap()
        );
    }

    #[test]
    fn a_number_that_is_not_finite_is_never_written() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(compact(&[0.5, bad]).is_err());
            assert!(readable(&[0.5, bad]).is_err());
        }
    }

    #[test]
    fn numbers_are_short_and_exact() {
        for (value, wanted) in [
            (0.0_f64, "0"),
            (-0.0, "-0"),
            (1.0, "1"),
            (-250.0, "-250"),
            (0.1, "0.1"),
            (0.0254, "0.0254"),
            (6_894_757.293_168_361, "6894757.293168361"),
            (9_007_199_254_740_992.0, "9007199254740992.0"),
            (1e300, "1e+300"),
            (5e-324, "5e-324"),
        ] {
            let text = compact(&value).unwrap();
            assert_eq!(text, wanted);
            let back: f64 = serde_json::from_str(&text).unwrap();
            assert_eq!(back.to_bits(), value.to_bits());
        }
    }
}
