//! Table of standard tire sizes, `data/tires.csv`: each row with its source and how sure it is.
use std::sync::OnceLock;

use super::table::parse_table;
use crate::model::{Basis, Grown, Tire};

/// Shoulder radius of a tire from the table as a share of its section width (ratio).
///
/// Our own assumption: size tables give a shoulder point, no radius. It errs on the square side, so
/// that the outline encloses the tire: the shoulder points printed for twenty bias tires of the
/// table would be met by shares of 0.31 to 0.40. Tires of newer make can be squarer: grown shoulders
/// printed for three large radial sizes would need 0.22 to 0.24 and stand out by 0.06 in at most.
pub const SHOULDER_PER_WIDTH: f64 = 0.25;

/// How far a row may be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// Printed in a tire maker's data book and read in a copy or quotation of it, which the row names.
    SecondHand,
    /// From memory: to be replaced by the maker's figure or a measurement.
    Memory(Confidence),
}

/// How sure a row from memory is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Confidence {
    /// Little.
    Low,
    /// Fairly.
    Medium,
    /// Well remembered, still unproven.
    High,
}

/// One size and ply rating.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SizeRow {
    /// Size as molded on the tire, as "6.00-6".
    pub size: &'static str,
    /// Ply rating (ratio); absent where the source gives none.
    pub ply: Option<u8>,
    /// Largest overall diameter as new (m).
    pub diameter_max: f64,
    /// Smallest overall diameter as new (m).
    pub diameter_min: Option<f64>,
    /// Largest section width as new (m).
    pub width_max: f64,
    /// Smallest section width as new (m).
    pub width_min: Option<f64>,
    /// Rim (bead seat) diameter (m).
    pub rim_diameter: f64,
    /// How far the row may be trusted.
    pub trust: Trust,
    /// Where the numbers come from, to be shown with them.
    pub source: &'static str,
}

impl SizeRow {
    /// A tire of this size: the *largest* new diameter and width of the table, a shoulder radius by
    /// [`SHOULDER_PER_WIDTH`] (our assumption), grown by the rule.
    #[must_use]
    pub fn to_tire(&self) -> Tire {
        Tire {
            size: self.size.to_owned(),
            diameter: self.diameter_max,
            width: self.width_max,
            shoulder_radius: shoulder_radius(self.width_max),
            rim_diameter: self.rim_diameter,
            basis: Basis::Table,
            grown: Grown::ByRule,
        }
    }

    /// Whether `tire` still has this row's figures: an edited one no longer rests on the table.
    #[must_use]
    pub fn gives(&self, tire: &Tire) -> bool {
        // far below what a tape shows, far above what rounding in a file does
        const SAME: f64 = 1e-6;
        (self.diameter_max - tire.diameter).abs() <= SAME
            && (self.width_max - tire.width).abs() <= SAME
    }
}

/// Shoulder radius (m) for a section width (m), by [`SHOULDER_PER_WIDTH`].
#[must_use]
pub fn shoulder_radius(width: f64) -> f64 {
    SHOULDER_PER_WIDTH * width
}

/// Every row of the table.
#[must_use]
pub fn sizes() -> &'static [SizeRow] {
    static ROWS: OnceLock<Vec<SizeRow>> = OnceLock::new();
    ROWS.get_or_init(|| match parse_table(include_str!("../../data/tires.csv")) {
        Ok(rows) => rows,
        // compiled in, and a test reads it: no user's data gets here
        Err(error) => unreachable!("tires.csv: {error}"),
    })
}

/// All rows of a size, one for each ply rating; case, blanks and "×" for "x" make no difference.
pub fn rows_of_size(size: &str) -> impl Iterator<Item = &'static SizeRow> + use<> {
    let wanted = normal(size);
    sizes().iter().filter(move |row| normal(row.size) == wanted)
}

/// First row of a size.
#[must_use]
pub fn find_size(size: &str) -> Option<&'static SizeRow> {
    rows_of_size(size).next()
}

fn normal(size: &str) -> String {
    size.chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| {
            if c == '×' {
                'x'
            } else {
                c.to_ascii_lowercase()
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_sound() {
        for row in sizes() {
            assert!(
                row.diameter_min.is_none_or(|d| d < row.diameter_max),
                "{}",
                row.size
            );
            assert!(
                row.width_min.is_none_or(|w| w < row.width_max),
                "{}",
                row.size
            );
            assert!(row.rim_diameter > 0.0 && row.rim_diameter < row.diameter_max);
            assert!(!row.source.is_empty());
            let tire = row.to_tire();
            assert!(row.gives(&tire));
            assert!(tire.shoulder_radius < 0.5 * tire.width);
        }
    }

    #[test]
    fn an_edited_tire_leaves_the_row() {
        let row = find_size("6.00-6").unwrap();
        let mut tire = row.to_tire();
        tire.diameter += 1e-4;
        assert!(!row.gives(&tire));
        assert!(find_size("no such size").is_none());
        assert_eq!(rows_of_size("6.00-6").count(), 3);
    }
}
