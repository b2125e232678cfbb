//! Bounds against values worked out by another program, and against layouts.

use super::*;

/// Width, height, count.
type List = &'static [(i64, i64, i64)];

fn sized(list: &[(i64, i64, i64)]) -> Vec<Sized> {
    list.iter().map(|&(w, h, count)| Sized { w, h, count }).collect()
}

#[test]
fn sheets_as_worked_out_elsewhere() {
    // Bin 10 x 10; optimum proved by constraint programming, pieces not turned.
    let sets: [(List, i64, i64); 6] = [
        (&[(6, 6, 3)], 2, 3),
        (&[(6, 6, 4), (4, 4, 4)], 3, 4),
        (&[(6, 6, 2), (5, 10, 3)], 3, 4),
        (&[(6, 10, 2), (4, 9, 2), (5, 4, 4)], 3, 3),
        (&[(7, 6, 2), (6, 5, 2), (3, 10, 1), (4, 3, 1), (4, 8, 1)], 3, 3),
        (&[(6, 4, 5), (4, 6, 3), (7, 7, 2)], 3, 5),
    ];
    for (list, by_area, l2) in sets {
        let items = sized(list);
        assert_eq!(area(10, 10, &items), by_area, "{list:?}");
        assert_eq!(martello_vigo(10, 10, &items), l2, "{list:?}");
        // The same in units a thousand times smaller: the bound must not depend on how finely p and q are stepped.
        let fine: Vec<Sized> = items.iter().map(|item| Sized { w: item.w * 1000, h: item.h * 1000, ..*item }).collect();
        assert_eq!(martello_vigo(10_000, 10_000, &fine), l2, "{list:?}");
    }
}

#[test]
fn every_p_and_q_is_covered_by_the_turning_points() {
    // The bound with all p and q tried, as it is published.
    let all = |width: i64, height: i64, items: &[Sized]| -> i64 {
        let one = |width: i64, height: i64, items: &[(i64, i64, i64)]| -> i64 {
            let broad: Vec<_> = items.iter().filter(|item| 2 * item.0 > width).collect();
            let alone: i64 = broad.iter().filter(|item| 2 * item.1 > height).map(|item| item.2).sum();
            let mut more = 0;
            for p in 1..=height / 2 {
                let large: Vec<_> = broad.iter().filter(|item| 2 * item.1 > height && item.1 <= height - p).collect();
                let small: Vec<_> = broad.iter().filter(|item| 2 * item.1 <= height && item.1 >= p).collect();
                let heights: i64 = small.iter().map(|item| item.1 * item.2).sum();
                let rests: i64 = large.iter().map(|item| (height - item.1) * item.2).sum();
                let slots: i64 = large.iter().map(|item| (height - item.1) / p * item.2).sum();
                let number: i64 = small.iter().map(|item| item.2).sum();
                more = more.max(up(heights - rests, height)).max(up(number - slots, height / p));
            }
            let l1 = alone + more;
            let mut best = l1;
            for q in 1..=width / 2 {
                let k1: i64 = items.iter().filter(|item| item.0 > width - q).map(|item| item.1 * item.2).sum();
                let k23: i64 = items
                    .iter()
                    .filter(|item| item.0 <= width - q && item.0 >= q)
                    .map(|item| item.0 * item.1 * item.2)
                    .sum();
                best = best.max(l1 + up(k23 - (height * l1 - k1) * width, width * height).max(0));
            }
            best
        };
        let plain: Vec<_> = items.iter().map(|item| (item.w, item.h, item.count)).collect();
        let turned: Vec<_> = items.iter().map(|item| (item.h, item.w, item.count)).collect();
        one(width, height, &plain).max(one(height, width, &turned))
    };
    let mut dice = crate::chance::Random::new(7);
    for _ in 0..500 {
        let (width, height) = (10 + dice.below(40) as i64, 10 + dice.below(40) as i64);
        let items: Vec<Sized> = (0..1 + dice.below(12))
            .map(|_| Sized {
                w: 1 + dice.below(width as usize) as i64,
                h: 1 + dice.below(height as usize) as i64,
                count: 1 + dice.below(4) as i64,
            })
            .collect();
        assert_eq!(martello_vigo(width, height, &items), all(width, height, &items), "{width} {height} {items:?}");
    }
}

#[test]
fn no_published_layout_lies_below_its_bounds() {
    for perfect in &crate::stock::tests::PERFECT {
        let items: Vec<Sized> =
            perfect.sizes().iter().map(|&(w, h, count)| Sized { w, h, count: count as i64 }).collect();
        assert_eq!(area(perfect.width, perfect.height, &items), 1, "{}", perfect.name);
        assert_eq!(martello_vigo(perfect.width, perfect.height, &items), 1, "{}", perfect.name);
    }
}
