//! Order of lists.
use std::cmp::Ordering;

/// Sorts a list by the standard library's stable sort; what is equal keeps its order.
///
/// It is the places of the list that are sorted, so that all lists, of whatever they are, go through the sort of
/// one type: each further type of it takes the page a kilobyte.
pub fn sort_by<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let order = order(list.len(), &|a, b| match (list.get(a), list.get(b)) {
        (Some(a), Some(b)) => compare(a, b),
        _ => Ordering::Equal,
    });
    for (to, &from) in order.iter().enumerate() {
        // what stood there may have gone to a place further on
        let mut from = from;
        while from < to {
            from = order.get(from).copied().unwrap_or(to);
        }
        list.swap(to, from);
    }
}

/// The places of a list in their order.
fn order(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|a, b| compare(*a, *b));
    order
}

#[cfg(test)]
mod tests {
    use gearswing_samples::Draw;

    use super::sort_by;

    /// Against the standard library's own.
    #[test]
    fn lists_are_sorted_and_equals_keep_their_order() {
        let mut draw = Draw::new(7);
        for length in 0..60 {
            let list: Vec<(usize, usize)> = (0..length).map(|at| (draw.below(9), at)).collect();
            let (mut ours, mut wanted) = (list.clone(), list);
            sort_by(&mut ours, |a, b| a.0.cmp(&b.0));
            wanted.sort_by_key(|entry| entry.0);
            assert_eq!(ours, wanted);
        }
    }
}
