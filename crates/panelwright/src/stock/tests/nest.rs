//! Pieces in the openings of others.

use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use super::{piece, sheet};
use crate::stock::check::faults;
use crate::stock::{Grain, Job, Kit, KitSearch, Method, Piece, Plan, Rect, Rules, Sheet, solve};

const LASER: Rules = Rules { trim: 0.0, gap: 5.0, method: Method::Free };

/// A frame of 400 x 300 with a room of 200 x 100 in it.
fn frame(count: usize) -> Piece {
    let room = Rect { x: 50.0, y: 60.0, width: 200.0, height: 100.0 };
    Piece { openings: vec![room], ..piece(400.0, 300.0, count, true) }
}

fn planned(pieces: &[Piece], sheets: &[Sheet], rules: Rules) -> (Job, Plan) {
    let job = Job { pieces: pieces.to_vec(), sheets: sheets.to_vec(), rules };
    let plan = solve(&job, 20_000, &mut |_| true).expect("a job that makes sense");
    assert_eq!(faults(&job, &plan), [""; 0]);
    (job, plan)
}

#[test]
fn small_pieces_go_into_openings_and_take_no_sheet() {
    // The frame fills its sheet: what has no room in it needs another. 95 + 5 + 100 is 200.
    let small = [frame(1), piece(100.0, 95.0, 2, true)];
    let (job, plan) = planned(&small, &[sheet(400.0, 300.0)], LASER);
    assert_eq!((plan.sheets.len(), plan.bounds.sheets(), plan.fewest), (1, 1, true));
    let placed = &plan.sheets[0].placed;
    assert_eq!(placed.iter().filter(|placed| placed.inside == Some(0)).count(), 2);
    assert!((plan.yield_share - 1.0).abs() < 1e-9);
    // A third finds none, the sheet is not counted as the fewest that could be: another choice might do.
    let three = [frame(1), piece(100.0, 95.0, 3, true)];
    let (_, plan) = planned(&three, &[sheet(400.0, 300.0)], LASER);
    assert_eq!((plan.sheets.len(), plan.bounds.sheets(), plan.fewest), (2, 1, false));
    // Sawn, no piece lies in another.
    let rules = Rules { method: Method::Guillotine, ..LASER };
    let (_, plan) = planned(&small, &[sheet(400.0, 300.0)], rules);
    assert_eq!(plan.sheets.len(), 2);
    assert!(plan.sheets.iter().flat_map(|sheet| &sheet.placed).all(|placed| placed.inside.is_none()));
    // The check tells a piece that lies beside the opening.
    let (_, mut plan) = planned(&small, &[sheet(400.0, 300.0)], LASER);
    let at = plan.sheets[0].placed.iter().position(|placed| placed.inside.is_some()).expect("one lies inside");
    plan.sheets[0].placed[at].rect.x -= 0.01;
    assert!(!faults(&job, &plan).is_empty());
}

#[test]
fn a_turned_host_takes_its_opening_along() {
    let (_, plan) = planned(&[frame(1), piece(200.0, 100.0, 1, true)], &[sheet(300.0, 400.0)], LASER);
    let [host, inside] = plan.sheets[0].placed[..] else { panic!("two pieces") };
    assert!(host.turned && inside.turned && inside.inside == Some(0));
    // A quarter turn to the left of (50, 60) 200 x 100 in 400 x 300: from the right edge 60 + 100 to 60, 50 up.
    assert_eq!(inside.rect, Rect { x: 140.0, y: 50.0, width: 100.0, height: 200.0 });
}

#[test]
fn what_lies_in_an_opening_holds_nothing_and_directions_are_kept() {
    let middle =
        Piece { openings: vec![Rect { x: 40.0, y: 20.0, width: 60.0, height: 50.0 }], ..piece(190.0, 95.0, 2, true) };
    let (_, plan) = planned(&[frame(1), middle, piece(55.0, 45.0, 2, true)], &[sheet(700.0, 300.0)], LASER);
    for sheet in &plan.sheets {
        for placed in &sheet.placed {
            assert!(placed.inside.is_none_or(|host| sheet.placed[host].inside.is_none()));
        }
    }
    // Only alike pieces lie in each other when the sheet has a grain.
    let grained = Sheet { grain: Grain::AlongHeight, ..sheet(400.0, 300.0) };
    let along = |piece: Piece, grain| Piece { grain, ..piece };
    for (host, small, inside) in [
        (Grain::AlongHeight, Grain::AlongHeight, 1),
        (Grain::AlongHeight, Grain::AlongWidth, 0),
        (Grain::None, Grain::AlongHeight, 0),
        (Grain::AlongHeight, Grain::None, 1),
    ] {
        let pieces = [along(frame(1), host), along(piece(190.0, 95.0, 1, true), small)];
        let (_, plan) = planned(&pieces, std::slice::from_ref(&grained), LASER);
        let found = plan.sheets.iter().flat_map(|sheet| &sheet.placed).filter(|placed| placed.inside.is_some()).count();
        assert_eq!(found, inside, "{host:?} {small:?}");
    }
}

#[test]
fn a_host_without_a_sheet_leaves_what_lies_in_it_without_one() {
    let one = Sheet { count: Some(1), ..sheet(400.0, 300.0) };
    let (_, plan) = planned(&[frame(2), piece(190.0, 95.0, 2, true)], &[one], LASER);
    let placed: usize = plan.sheets.iter().map(|sheet| sheet.placed.len()).sum();
    assert_eq!((placed, plan.missing()), (2, 2));
}

#[test]
fn kits_count_what_lies_in_openings() {
    let kit = Kit { label: "k".to_owned(), share: 1, pieces: vec![frame(1), piece(190.0, 95.0, 1, true)] };
    let sheets = [Sheet { count: Some(3), ..sheet(400.0, 300.0) }];
    let mut search = KitSearch::new(&[kit], &sheets, LASER).expect("a job that makes sense");
    search.step(200_000);
    assert_eq!((search.rounds(), search.bound()), (3, 3));
    assert_eq!(faults(&search.plan().job, &search.plan().plan), [""; 0]);
}

#[test]
fn an_opening_beyond_its_piece_is_refused() {
    let mut wrong = frame(1);
    wrong.openings[0].width = 351.0;
    let job = Job { pieces: vec![wrong], sheets: vec![sheet(500.0, 500.0)], rules: LASER };
    assert!(solve(&job, 1, &mut |_| true).is_err());
}

fn pieces() -> impl Strategy<Value = Vec<Piece>> {
    let rooms = prop::collection::vec((0_u32..50, 0_u32..50, 20_u32..50, 20_u32..50), 0..3);
    let one = (20_u32..500, 20_u32..500, 1_usize..4, any::<bool>(), 0_u32..3, rooms);
    let made = one.prop_map(|(width, height, count, may_turn, grain, rooms)| {
        let grain = [Grain::None, Grain::AlongWidth, Grain::AlongHeight][grain as usize];
        let share = |part: u32, whole: u32| f64::from(part * whole / 101);
        // Rooms in the two halves of a piece do not meet.
        let rooms = rooms.iter().zip([0.0, f64::from(width) / 2.0]).map(|(&(x, y, w, h), left)| Rect {
            x: left + share(x, width / 2),
            y: share(y, height),
            width: share(w, width / 2).max(1.0),
            height: share(h, height).max(1.0),
        });
        Piece { openings: rooms.collect(), grain, ..piece(f64::from(width), f64::from(height), count, may_turn) }
    });
    prop::collection::vec(made, 1..8)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, rng_seed: RngSeed::Fixed(7), ..ProptestConfig::default() })]

    #[test]
    fn every_plan_with_openings_keeps_the_rules(pieces in pieces(), grain in 0_u32..3, gap in 0_u32..9) {
        let grain = [Grain::None, Grain::AlongWidth, Grain::AlongHeight][grain as usize];
        let sheets = vec![Sheet { grain, ..sheet(700.0, 520.0) }, Sheet { count: Some(2), ..sheet(510.0, 510.0) }];
        let job = Job { pieces, sheets, rules: Rules { trim: 3.0, gap: f64::from(gap), method: Method::Free } };
        let plan = solve(&job, 5_000, &mut |_| true).expect("sizes that make sense");
        prop_assert_eq!(faults(&job, &plan), [""; 0]);
    }
}
