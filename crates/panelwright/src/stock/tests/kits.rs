//! Kits from a stack of sheets.

use super::{piece, sheet};
use crate::stock::check::faults;
use crate::stock::{Kit, KitSearch, Method, Rules, Sheet};

const RULES: Rules = Rules { trim: 0.0, gap: 0.0, method: Method::Free };

fn kit(label: &str, share: usize, sizes: &[(f64, f64, usize)]) -> Kit {
    let pieces = sizes.iter().map(|&(width, height, count)| piece(width, height, count, true)).collect();
    Kit { label: label.to_owned(), share, pieces }
}

fn stack(count: usize, width: f64, height: f64) -> [Sheet; 1] {
    [Sheet { count: Some(count), ..sheet(width, height) }]
}

#[test]
fn as_many_cases_as_the_area_allows() {
    // A pinwheel fills its sheet: two sheets, two kits, nothing left.
    let pinwheel = kit("pinwheel", 1, &[(300.0, 200.0, 4), (100.0, 100.0, 1)]);
    let mut search = KitSearch::new(&[pinwheel], &stack(2, 500.0, 500.0), RULES).expect("a job that makes sense");
    assert_eq!(search.bound(), 2);
    search.step(500_000);
    let found = search.plan();
    assert_eq!((found.rounds, found.bound), (2, 2));
    assert_eq!(faults(&found.job, &found.plan), [""; 0]);
    assert_eq!(found.plan.missing(), 0);
}

#[test]
fn designs_mixed_by_their_shares() {
    let small = kit("small", 2, &[(250.0, 200.0, 2), (250.0, 90.0, 2), (194.0, 90.0, 2)]);
    let large = kit("large", 1, &[(380.0, 300.0, 2), (380.0, 120.0, 2), (294.0, 120.0, 2)]);
    let rules = Rules { trim: 5.0, gap: 3.0, method: Method::Guillotine };
    let mut search = KitSearch::new(&[small, large], &stack(2, 2440.0, 1220.0), rules).expect("a job that makes sense");
    search.step(1_000_000);
    let found = search.plan();
    assert_eq!(faults(&found.job, &found.plan), [""; 0]);
    assert_eq!(found.plan.missing(), 0);
    // Area alone allows this many; one less than that was packed at least.
    assert!(found.rounds <= found.bound && found.rounds + 1 >= found.bound, "{} of {}", found.rounds, found.bound);
    let counts: Vec<usize> = found.job.pieces.iter().map(|piece| piece.count).collect();
    let rounds = found.rounds;
    assert_eq!(counts, [4 * rounds, 4 * rounds, 4 * rounds, 2 * rounds, 2 * rounds, 2 * rounds]);
}

#[test]
fn none_where_a_piece_does_not_fit() {
    let kits = [kit("too wide", 1, &[(600.0, 510.0, 1), (10.0, 10.0, 1)])];
    let mut search = KitSearch::new(&kits, &stack(3, 500.0, 700.0), RULES).expect("a job that makes sense");
    assert_eq!(search.bound(), 0);
    assert!(search.step(1000));
    assert_eq!(search.plan().rounds, 0);
}
