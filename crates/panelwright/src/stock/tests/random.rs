//! Random jobs: whatever comes in, the plan keeps every rule.

use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use super::{piece, sheet};
use crate::stock::check::faults;
use crate::stock::{Grain, Job, Kit, KitSearch, Method, Piece, Plan, Reason, Rules, Sheet, solve};

fn grain() -> impl Strategy<Value = Grain> {
    prop_oneof![2 => Just(Grain::None), 1 => Just(Grain::AlongWidth), 1 => Just(Grain::AlongHeight)]
}

fn pieces() -> impl Strategy<Value = Vec<Piece>> {
    let one = (2_u32..900, 2_u32..900, 1_usize..5, any::<bool>(), grain(), 0_u32..1000);
    let piece = one.prop_map(|(width, height, count, may_turn, grain, fine)| Piece {
        grain,
        ..piece(f64::from(width) + f64::from(fine) / 1000.0, f64::from(height), count, may_turn)
    });
    prop::collection::vec(piece, 0..9)
}

fn sheets() -> impl Strategy<Value = Vec<Sheet>> {
    let count = prop::option::of(0_usize..4);
    let price = prop::option::of(0_u32..50);
    let one = (100_u32..1300, 100_u32..1300, count, grain(), any::<bool>(), price);
    let sheet = one.prop_map(|(width, height, count, grain, offcut, price)| Sheet {
        count,
        grain,
        offcut,
        price: price.map(f64::from),
        ..sheet(f64::from(width), f64::from(height))
    });
    prop::collection::vec(sheet, 0..4)
}

fn jobs() -> impl Strategy<Value = Job> {
    let method = prop_oneof![Just(Method::Free), Just(Method::Guillotine)];
    (pieces(), sheets(), 0_u32..12, 0_u32..8, method).prop_map(|(pieces, sheets, trim, gap, method)| Job {
        pieces,
        sheets,
        rules: Rules { trim: f64::from(trim), gap: f64::from(gap), method },
    })
}

/// How many of the last kind of sheet are at hand.
fn with_last(job: &Job, count: usize) -> Job {
    let mut job = job.clone();
    if let Some(last) = job.sheets.last_mut() {
        last.count = Some(count);
    }
    job
}

/// What is to be small: pieces without a place, sheets, their area.
fn badness(job: &Job, plan: &Plan) -> (usize, usize, f64) {
    let area = plan.sheets.iter().map(|used| job.sheets[used.sheet].width * job.sheets[used.sheet].height).sum();
    (plan.missing(), plan.sheets.len(), area)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, rng_seed: RngSeed::Fixed(11), ..ProptestConfig::default() })]

    #[test]
    fn a_sheet_more_at_hand_never_makes_a_plan_worse(job in jobs(), count in 1_usize..20) {
        // By area alone, and with every piece on some sheet: else more is placed, which may take more sheets.
        let mut job = job;
        for sheet in &mut job.sheets {
            sheet.price = None;
            sheet.grain = Grain::None;
        }
        let steps = 20_000;
        let without = with_last(&job, 0);
        let before = solve(&without, steps, &mut |_| true).expect("sizes that make sense");
        if before.missing() == 0 {
            for count in [1, count] {
                let with = with_last(&job, count);
                let plan = solve(&with, steps, &mut |_| true).expect("sizes that make sense");
                prop_assert_eq!(faults(&with, &plan), [""; 0]);
                prop_assert!(badness(&with, &plan) <= badness(&without, &before));
                // As if that kind of sheet were not in the list at all.
                let mut gone = job.clone();
                gone.sheets.pop();
                let bare = solve(&gone, steps, &mut |_| true).expect("sizes that make sense");
                prop_assert_eq!(badness(&gone, &bare), badness(&without, &before));
            }
        }
    }

    #[test]
    fn kits_never_become_fewer_by_a_sheet_more_at_hand(job in jobs(), count in 1_usize..6) {
        let mut job = job;
        job.sheets.truncate(2);
        for sheet in &mut job.sheets {
            sheet.count = Some(sheet.count.unwrap_or(3));
            sheet.price = None;
        }
        let kit = Kit { label: String::new(), share: 1, pieces: job.pieces.clone() };
        let rounds = |job: &Job| {
            let mut search = KitSearch::new(std::slice::from_ref(&kit), &job.sheets, job.rules).expect("sizes that make sense");
            search.step(60_000);
            let found = search.plan();
            (found.rounds, faults(&found.job, &found.plan).len())
        };
        if kit.pieces.iter().any(|piece| piece.count > 0) {
            let (fewer, wrong) = rounds(&with_last(&job, 0));
            prop_assert_eq!(wrong, 0);
            let (more, wrong) = rounds(&with_last(&job, count));
            prop_assert_eq!(wrong, 0);
            prop_assert!(more >= fewer, "{} of {}", more, fewer);
        }
    }
}

proptest! {
    // The same jobs every time: what is found is also a matter of how good the search is, not only of being right.
    #![proptest_config(ProptestConfig { cases: 200, rng_seed: RngSeed::Fixed(5), ..ProptestConfig::default() })]

    #[test]
    fn every_plan_keeps_the_rules(job in jobs()) {
        let plan = solve(&job, 20_000, &mut |_| true).expect("sizes that make sense");
        prop_assert_eq!(faults(&job, &plan), [""; 0]);
        // Nobody lacks a sheet where there are as many as wanted, unless it fits only another kind.
        if job.sheets.iter().all(|sheet| sheet.count.is_none()) {
            prop_assert!(plan.unplaced.iter().all(|unplaced| unplaced.reason != Reason::NoSheetLeft));
        }
    }

    #[test]
    fn a_sheet_cut_into_pieces_is_put_together_again(cuts in prop::collection::vec((0_usize..64, 5_i64..95), 1..14)) {
        // Any sheet sawn at random, kerf and all, is one sheet again: the bounds must not say two.
        let gap = 3;
        let mut plates = vec![(900_i64, 600_i64)];
        for (at, share) in cuts {
            let index = at % plates.len();
            let (w, h) = plates[index];
            let (long, short) = (w.max(h), w.min(h));
            let first = (long - gap) * share / 100;
            if first < 20 || long - gap - first < 20 {
                continue;
            }
            let part = |long| if w >= h { (long, short) } else { (short, long) };
            plates[index] = part(first);
            plates.push(part(long - gap - first));
        }
        let pieces = plates.iter().map(|&(w, h)| piece(w as f64, h as f64, 1, false)).collect();
        let rules = Rules { trim: 0.0, gap: gap as f64, method: Method::Guillotine };
        let job = Job { pieces, sheets: vec![sheet(900.0, 600.0)], rules };
        let plan = solve(&job, 1_000_000, &mut |progress| progress.sheets > 1).expect("a job that makes sense");
        prop_assert_eq!(faults(&job, &plan), [""; 0]);
        prop_assert_eq!(plan.bounds.sheets(), 1);
        prop_assert_eq!(plan.sheets.len(), 1);
    }
}
