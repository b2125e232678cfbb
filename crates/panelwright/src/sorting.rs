//! Putting lists in order, in one piece of code for all of them.
//!
//! The standard library's sorts are made anew for every list and every comparison, some 8 kB of the page's module
//! each. Our lists are short: here the order is worked out once for all on indices, and only the moving of the
//! elements knows their type.

use std::cmp::Ordering;

/// Puts a list in order; elements that compare equal keep their order.
pub(crate) fn sort_by<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let mut order = ordered(list.len(), &|a, b| compare(&list[a], &list[b]).is_gt());
    for start in 0..list.len() {
        // One round of exchanges: each place gets its element, the element that lay in `start` travels to the last.
        let mut place = start;
        loop {
            let from = std::mem::replace(&mut order[place], place);
            if from == start || from == place {
                break;
            }
            list.swap(place, from);
            place = from;
        }
    }
}

/// Puts a list in the order of a key; elements with equal keys keep their order.
pub(crate) fn sort_by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(list, |a, b| key(a).cmp(&key(b)));
}

/// The indices below `count` in the order of what they stand for, by merging ever longer runs; `after` says whether
/// its first must come after its second.
fn ordered(count: usize, after: &dyn Fn(usize, usize) -> bool) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    let mut merged = Vec::with_capacity(count);
    let mut run = 1;
    while run < count {
        merged.clear();
        for pair in order.chunks(2 * run) {
            let (mut left, mut right) = pair.split_at(run.min(pair.len()));
            while let ([first, left_rest @ ..], [second, right_rest @ ..]) = (left, right) {
                if after(*first, *second) {
                    merged.push(*second);
                    right = right_rest;
                } else {
                    merged.push(*first);
                    left = left_rest;
                }
            }
            merged.extend_from_slice(left);
            merged.extend_from_slice(right);
        }
        std::mem::swap(&mut order, &mut merged);
        run *= 2;
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn lists_come_out_as_from_the_standard_library(list in prop::collection::vec(0_u8..20, 0..70)) {
            // The place beside each number shows whether equal ones kept their order.
            let mut ours: Vec<(u8, usize)> = list.into_iter().zip(0..).collect();
            let mut theirs = ours.clone();
            sort_by_key(&mut ours, |pair| pair.0);
            theirs.sort_by_key(|pair| pair.0);
            prop_assert_eq!(ours, theirs);
        }
    }
}
