//! The backtracking tries everything: it finds as many layouts as complete enumeration by another program did.

use super::*;
use crate::stock::cuts::tree;
use crate::stock::problem::Block;
use crate::stock::tests::Perfect;

/// All layouts of a published set, and how many of them can be sawn.
fn count(name: &str, turned: bool) -> (usize, usize) {
    let perfect = Perfect::named(name);
    let mut kinds: Vec<Kind> = Vec::new();
    for (w, h, count) in perfect.sizes() {
        match kinds.iter_mut().find(|kind| turned && (kind.w, kind.h) == (h, w)) {
            Some(kind) => kind.count += count,
            None => kinds.push(Kind { w, h, count, upright: true, turned }),
        }
    }
    let plate = Block { x: 0, y: 0, w: perfect.width, h: perfect.height };
    let (mut all, mut sawn) = (0, 0);
    let mut steps = u64::MAX;
    let mut search = Exact::new(plate.w, plate.h, &kinds);
    let end = search.run(1, 0, &mut steps, &mut |spots| {
        let block = |spot: &Spot| {
            let Kind { w, h, .. } = kinds[spot.kind];
            let (w, h) = if spot.turned { (h, w) } else { (w, h) };
            Block { x: spot.x, y: spot.y, w, h }
        };
        let blocks: Vec<Block> = spots.iter().map(block).collect();
        all += 1;
        sawn += usize::from(tree(plate, &blocks).is_some());
        true
    });
    assert_eq!(end, End::Exhausted);
    assert!(search.complete());
    (all, sawn)
}

#[test]
fn finds_every_layout_without_waste() {
    // Counts by complete enumeration in a Python program of its own, equal pieces not told apart.
    assert_eq!(count("SQ9", false), (4, 0));
    assert_eq!(count("PIN", true), (2, 0));
    assert_eq!(count("N1", true), (7776, 7776));
    assert_eq!(count("C1P2", false), (1008, 0));
}

#[test]
#[ignore = "twenty million layouts take minutes; run it after a change of the backtracking"]
fn finds_the_millions_of_layouts_of_two_more_sets() {
    assert_eq!(count("C1P3", false), (4_383_648, 3_973_632));
    assert_eq!(count("C1P1", false), (15_312_448, 12_869_632));
}

#[test]
fn stops_when_told_and_when_steps_are_used_up() {
    let kinds = [Kind { w: 1, h: 1, count: 9, upright: true, turned: false }];
    let mut search = Exact::new(3, 3, &kinds);
    let mut steps = 8;
    assert_eq!(search.run(1, 0, &mut steps, &mut |_| false), End::OutOfSteps);
    assert_eq!(steps, 0);
    steps = 9;
    assert_eq!(search.run(1, 0, &mut steps, &mut |_| false), End::Stopped);
    let mut too_small = Exact::new(3, 2, &kinds);
    assert_eq!(too_small.run(1, 0, &mut steps, &mut |_| false), End::Exhausted);
}

#[test]
fn leaves_gaps_where_there_is_room_for_waste() {
    // Two upright pieces of different height and a lid that must bridge the step between them.
    let one = |w, h| Kind { w, h, count: 1, upright: true, turned: false };
    let mut search = Exact::new(10, 10, &[one(5, 6), one(5, 7), one(10, 3)]);
    let mut found = Vec::new();
    let mut steps = 1000;
    search.run(1, 0, &mut steps, &mut |spots| {
        found = spots.to_vec();
        false
    });
    let lid = found.iter().find(|spot| spot.kind == 2).expect("the lid is laid");
    assert!(lid.y == 7 || lid.y == 0, "{found:?}");
    assert_eq!(found.len(), 3);
}
