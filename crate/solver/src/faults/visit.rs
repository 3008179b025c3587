//! Goes through a gear and reports every fault.
//!
//! The numbers are held against their ranges in one loop over the list of fields. A number that cannot
//! be used can hide relations that it takes part in: those are checked only between sound numbers.
use super::{Fault, FaultKind, Faults, leg, springs, supply};
use crate::field::{Field, Group, Path, number_faults};
use crate::model::{Gear, Point};
use crate::numeric::sort_by;
use std::fmt::Arguments;

/// Most legs, points of an outline, obstacles and table rows that a model may have.
pub const MOST_ITEMS: usize = 200;
/// Least distance between joints that may not coincide (m).
pub const LEAST_JOINT_DISTANCE: f64 = 1e-3;

/// Asked only of the leg that has the actuator, where several are on one drive.
const OF_THE_DRIVER: [Field; 4] = [
    Field::Bore,
    Field::Rod,
    Field::RetractedLength,
    Field::ExtendedLength,
];

/// Collects the faults of the gear itself or of one leg.
pub(super) struct Visit<'g> {
    /// The gear.
    pub(super) gear: &'g Gear,
    /// The leg, as index; `None` for the gear itself.
    leg: Option<usize>,
    /// With the field in whose order they are told.
    faults: Vec<(Path, Fault)>,
    /// Numbers and points that cannot be used.
    unsound: Vec<Path>,
}

impl<'g> Visit<'g> {
    /// Begins with the numbers of the fields that are wanted.
    fn of(gear: &'g Gear, leg: Option<usize>, wanted: impl Fn(Field) -> bool) -> Self {
        let mut visit = Self {
            gear,
            leg,
            faults: Vec::new(),
            unsound: Vec::new(),
        };
        for number in number_faults(gear, leg, MOST_ITEMS, wanted) {
            visit.unsound.push(number.path.point());
            let kind = if number.value.is_finite() {
                FaultKind::OutOfRange {
                    value: number.value,
                    min: number.range.min,
                    max: number.range.max,
                }
            } else {
                FaultKind::NotFinite
            };
            visit.fault(number.path, kind);
        }
        visit
    }

    /// The faults found, in the order of the list of fields.
    fn end(mut self) -> Vec<Fault> {
        sort_by(&mut self.faults, |(a, _), (b, _)| a.cmp(b));
        self.faults.into_iter().map(|(_, fault)| fault).collect()
    }

    /// A field of the present leg, or of the gear.
    pub(super) fn path(&self, field: Field) -> Path {
        field.of_leg(self.leg.unwrap_or(0))
    }

    /// A field of an entry of a list of the present leg.
    pub(super) fn entry(&self, field: Field, entry: usize) -> Path {
        field.of_entry(self.leg.unwrap_or(0), entry)
    }

    /// A fault of a field.
    pub(super) fn fault(&mut self, path: Path, kind: FaultKind) {
        self.faults.push((
            path,
            Fault {
                leg: self.leg,
                path: path.to_string(),
                kind,
            },
        ));
    }

    /// A fault of a part or list that is no field itself, told beside the first of its fields.
    pub(super) fn part_fault(&mut self, first: Field, part: Arguments<'_>, kind: FaultKind) {
        let path = match self.leg {
            Some(leg) => format!("legs[{leg}].{part}"),
            None => part.to_string(),
        };
        self.faults.push((
            self.path(first),
            Fault {
                leg: self.leg,
                path,
                kind,
            },
        ));
    }

    /// Whether the number or point at a path may be used.
    pub(super) fn sound(&self, path: Path) -> bool {
        let asked = !OF_THE_DRIVER.contains(&path.field) || self.drives(path.leg);
        asked && !self.unsound.contains(&path) && self.is_in_range(path)
    }

    /// Whether the number at a path, be it of another leg, is in its range; true where there is none.
    fn is_in_range(&self, path: Path) -> bool {
        match (path.number(self.gear), path.field.info().range()) {
            (Some(Some(value)), Some(range)) => range.holds(value),
            _ => true,
        }
    }

    /// Whether the leg's own actuator moves it, and not that of another leg.
    fn drives(&self, leg: usize) -> bool {
        self.gear.driving_leg(leg) == leg
    }

    /// The number at a path, where it is given and sound.
    pub(super) fn number(&self, path: Path) -> Option<f64> {
        path.number(self.gear)?.filter(|_| self.sound(path))
    }

    /// The point at a path, where there is one and it is sound.
    pub(super) fn point(&self, path: Path) -> Option<Point> {
        path.at(self.gear).filter(|_| self.sound(path))
    }

    /// Two joints are apart.
    pub(super) fn apart(&mut self, path: Path, other: Path) {
        let (Some(point), Some(other_point)) = (self.point(path), self.point(other)) else {
            return;
        };
        let distance = (point - other_point).norm();
        if distance < LEAST_JOINT_DISTANCE {
            self.fault(
                path,
                FaultKind::Coincident {
                    other: other.to_string(),
                    distance,
                    least: LEAST_JOINT_DISTANCE,
                },
            );
        }
    }

    /// A number is below another field's.
    pub(super) fn below(&mut self, path: Path, other: Path) {
        if let Some(limit) = self.number(other) {
            self.below_limit(path, other, limit);
        }
    }

    /// A number is below what another field leaves room for.
    pub(super) fn below_limit(&mut self, path: Path, other: Path, limit: f64) {
        if let Some(value) = self.number(path)
            && value >= limit
        {
            self.not_below(path, value, other, limit);
        }
    }

    /// A number is not above another field's.
    pub(super) fn not_above(&mut self, path: Path, other: Path) {
        if let (Some(value), Some(limit)) = (self.number(path), self.number(other))
            && value > limit
        {
            self.not_below(path, value, other, limit);
        }
    }

    fn not_below(&mut self, path: Path, value: f64, other: Path, limit: f64) {
        let other = other.to_string();
        self.fault(
            path,
            FaultKind::NotBelow {
                value,
                other,
                limit,
            },
        );
    }

    /// Checks a count; true when it may be gone through.
    pub(super) fn count(&mut self, first: Field, part: Arguments<'_>, count: usize) -> bool {
        let fits = count <= MOST_ITEMS;
        if !fits {
            self.part_fault(
                first,
                part,
                FaultKind::TooMany {
                    count,
                    allowed: MOST_ITEMS,
                },
            );
        }
        fits
    }

    fn gear(&mut self) {
        let below = [(Field::StallSpeed, Field::GearSpeed)];
        for (path, other) in below {
            self.below(path.path(), other.path());
        }
        supply::visit(self);
        let count = self.gear.legs.len();
        if count == 0 {
            self.part_fault(
                Field::ClearanceParts,
                format_args!("legs"),
                FaultKind::NoLegs,
            );
        }
        self.count(Field::ClearanceParts, format_args!("legs"), count);
    }
}

/// Checks the gear's own fields and every leg. What was seen on the jacks is for [`check_stop`]: it
/// takes no part in any other answer.
///
/// # Errors
/// All faults.
pub fn check_gear(gear: &Gear) -> Result<(), Faults> {
    check(gear, 0..gear.legs.len().min(MOST_ITEMS))
}

/// Checks one leg and the gear's own fields, without what was seen on the jacks.
///
/// # Errors
/// All faults.
pub fn check_leg(gear: &Gear, leg: usize) -> Result<(), Faults> {
    check(gear, leg..leg.saturating_add(1))
}

/// Checks what was seen of one leg on the jacks.
///
/// # Errors
/// All faults.
pub fn check_stop(gear: &Gear, leg: usize) -> Result<(), Faults> {
    let of_stop = |field: Field| field.info().group == Group::Seen;
    ended(Visit::of(gear, Some(leg), of_stop).end())
}

fn ended(faults: Vec<Fault>) -> Result<(), Faults> {
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Faults(faults))
    }
}

fn check(gear: &Gear, legs: std::ops::Range<usize>) -> Result<(), Faults> {
    let mut visit = Visit::of(gear, None, |_| true);
    visit.gear();
    let mut faults = visit.end();
    for index in legs {
        let Some(one) = gear.legs.get(index) else {
            continue;
        };
        let drives = gear.driving_leg(index) == index;
        let mut visit = Visit::of(gear, Some(index), |field| {
            field.info().group != Group::Seen && (drives || !OF_THE_DRIVER.contains(&field))
        });
        leg::visit(&mut visit, one);
        // switches and lines have no part in the way of a spring
        let drive = [Group::Lines, Group::Motor, Group::Switches];
        let mut faults_so_far = visit.faults.iter();
        if faults_so_far.all(|(path, _)| drive.contains(&path.field.info().group)) {
            springs::on_the_way(&mut visit, one);
        }
        supply::drive(&mut visit, one);
        faults.extend(visit.end());
    }
    ended(faults)
}
