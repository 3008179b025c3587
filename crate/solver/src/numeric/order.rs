//! Order of short lists.
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

#[cfg(test)]
mod tests {
    use super::sort_short;

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
