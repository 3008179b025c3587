//! What a tire's figures and a clearance asked for rest on.
use super::sizes::{Trust, rows_of_size};
use crate::model::{Basis, Grown, Tire};
use crate::result::{Assumption, RequirementBasis, TireState};

/// What the outer size of `tire` rests on, the governing assumption first.
///
/// A tire that says "from the table" while its size is in no row, or while its figures are no
/// longer the row's, counts as unstated. The table holds new sizes only, so a given grown size
/// cannot rest on it.
#[must_use]
pub fn size_assumptions(tire: &Tire, state: TireState) -> Vec<Assumption> {
    match (state, tire.grown) {
        (TireState::New, _) => vec![of_new(tire)],
        (TireState::Grown, Grown::ByRule) => {
            vec![Assumption::GrowthRuleFromMemory, of_new(tire)]
        }
        (TireState::Grown, Grown::Given { basis, .. }) => vec![match basis {
            Basis::Measured => Assumption::TireMeasured,
            Basis::Maker => Assumption::TireMaker,
            Basis::Table | Basis::Unstated => Assumption::TireUnstated,
        }],
    }
}

/// The assumption that belongs to a clearance asked for.
#[must_use]
pub fn clearance_assumption(basis: RequirementBasis) -> Assumption {
    match basis {
        RequirementBasis::Obstacle | RequirementBasis::Gear => Assumption::ClearanceUser,
        RequirementBasis::CommonPractice => Assumption::ClearanceCommonPractice,
    }
}

fn of_new(tire: &Tire) -> Assumption {
    match tire.basis {
        Basis::Measured => Assumption::TireMeasured,
        Basis::Maker => Assumption::TireMaker,
        Basis::Unstated => Assumption::TireUnstated,
        Basis::Table => of_table(tire),
    }
}

fn of_table(tire: &Tire) -> Assumption {
    let mut trusts = rows_of_size(&tire.size)
        .filter(|row| row.gives(tire))
        .map(|row| row.trust)
        .peekable();
    if trusts.peek().is_none() {
        Assumption::TireUnstated
    } else if trusts.all(|trust| trust == Trust::SecondHand) {
        Assumption::TireSizePublished
    } else {
        Assumption::TireSizeFromMemory
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tires::{find_size, sizes};

    #[test]
    fn every_row_says_what_it_is() {
        for row in sizes() {
            let wanted = match row.trust {
                Trust::SecondHand => Assumption::TireSizePublished,
                Trust::Memory(_) => Assumption::TireSizeFromMemory,
            };
            let tire = row.to_tire();
            assert_eq!(size_assumptions(&tire, TireState::New), [wanted]);
            assert_eq!(
                size_assumptions(&tire, TireState::Grown),
                [Assumption::GrowthRuleFromMemory, wanted]
            );
        }
    }

    #[test]
    fn edited_or_unknown_sizes_are_unstated() {
        let mut tire = find_size("21x7.25-10").unwrap().to_tire();
        tire.width += 0.001;
        assert_eq!(
            size_assumptions(&tire, TireState::New),
            [Assumption::TireUnstated]
        );
        tire = find_size("6.00-6").unwrap().to_tire();
        tire.size = "6.00-7".to_owned();
        assert_eq!(
            size_assumptions(&tire, TireState::New),
            [Assumption::TireUnstated]
        );
    }

    #[test]
    fn own_figures_win() {
        let mut tire = find_size("6.00-6").unwrap().to_tire();
        tire.basis = Basis::Measured;
        assert_eq!(
            size_assumptions(&tire, TireState::New),
            [Assumption::TireMeasured]
        );
        for (basis, wanted) in [
            (Basis::Measured, Assumption::TireMeasured),
            (Basis::Maker, Assumption::TireMaker),
            (Basis::Table, Assumption::TireUnstated),
            (Basis::Unstated, Assumption::TireUnstated),
        ] {
            tire.grown = Grown::Given {
                diameter: 0.45,
                width: 0.16,
                basis,
            };
            assert_eq!(size_assumptions(&tire, TireState::Grown), [wanted]);
        }
        assert_eq!(
            clearance_assumption(RequirementBasis::Gear),
            Assumption::ClearanceUser
        );
    }
}
