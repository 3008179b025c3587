//! Order of lists.
use std::cmp::Ordering;

/// Sorts a list that is short or nearly in order; what is equal keeps its order. By insertion: the
/// general sort costs the page kilobytes for each type of element.
pub fn sort_short<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    for end in 1..list.len() {
        for at in (1..=end).rev() {
            let Some([before, after]) = list.get_mut(at - 1..=at) else {
                break;
            };
            if compare(before, after) != Ordering::Greater {
                break;
            }
            std::mem::swap(before, after);
        }
    }
}

/// The value that stands at `rank` (from 0) when finite numbers from 0 up are in order; `None` beyond
/// their count. By halving: the bits of such numbers are in the order of the numbers.
#[must_use]
pub fn ranked(values: &[f64], rank: usize) -> Option<f64> {
    if rank >= values.len() {
        return None;
    }
    let (mut low, mut high) = (0, f64::INFINITY.to_bits());
    while low < high {
        let middle = low + (high - low) / 2;
        let below = values
            .iter()
            .filter(|value| value.abs().to_bits() <= middle);
        if below.count() > rank {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    Some(f64::from_bits(low))
}

#[cfg(test)]
mod tests {
    use super::{ranked, sort_short};

    /// Against the standard library's sort.
    #[test]
    fn ranks_are_those_of_the_sorted_list() {
        let mut values: Vec<f64> = (0..97).map(|i| f64::from(i * 31 % 60) / 7.0).collect();
        values.extend([0.0, -0.0, 1e-300, 3e200]);
        let mut sorted = values.clone();
        sorted.sort_by(f64::total_cmp);
        for (rank, wanted) in sorted.iter().enumerate() {
            assert_eq!(ranked(&values, rank), Some(*wanted), "{rank}");
        }
        assert_eq!(ranked(&values, values.len()), None);
        assert_eq!(ranked(&[], 0), None);
    }

    /// Against the standard library's stable sort.
    #[test]
    fn short_lists_are_sorted_and_stable() {
        let mut state = 1_u32;
        for length in 0..40_usize {
            let list: Vec<(u32, usize)> = (0..length)
                .map(|at| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    (state >> 28, at)
                })
                .collect();
            let (mut ours, mut wanted) = (list.clone(), list);
            sort_short(&mut ours, |a, b| a.0.cmp(&b.0));
            wanted.sort_by_key(|entry| entry.0);
            assert_eq!(ours, wanted);
        }
    }
}
