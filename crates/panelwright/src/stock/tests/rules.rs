//! The rules of a job, one by one, and whole jobs as a maker has them.

use super::{piece, sheet};
use crate::stock::check::faults;
use crate::stock::{Cut, Grain, Job, JobError, Method, Part, Piece, Plan, Reason, Rules, Sheet, solve};

const SAW: Rules = Rules { trim: 5.0, gap: 3.0, method: Method::Guillotine };
const LASER: Rules = Rules { trim: 5.0, gap: 6.0, method: Method::Free };

fn job(pieces: &[Piece], sheets: &[Sheet], rules: Rules) -> Job {
    Job { pieces: pieces.to_vec(), sheets: sheets.to_vec(), rules }
}

/// A plan that keeps every rule.
fn planned(job: &Job, steps: u64) -> Plan {
    let plan = solve(job, steps, &mut |_| true).expect("a job that makes sense");
    assert_eq!(faults(job, &plan), [""; 0]);
    plan
}

#[test]
fn trim_and_gap_as_worked_out_by_hand() {
    // 1220 x 610, trim 5, gap 6: floor(1216/356) x floor(606/306) = 3 pieces 350 x 300 either way up; a fourth of
    // them needs a second sheet as long as all lie alike.
    let of = |count, width, height| job(&[piece(width, height, count, false)], &[sheet(1220.0, 610.0)], LASER);
    for (width, height) in [(350.0, 300.0), (300.0, 350.0)] {
        assert_eq!(planned(&of(3, width, height), 10_000).sheets.len(), 1);
        assert_eq!(planned(&of(4, width, height), 10_000).sheets.len(), 2);
    }
    // Four of 100 with a kerf of 3 need 409.
    for (width, sheets) in [(400.0, 2), (408.9, 2), (409.0, 1)] {
        let rules = Rules { trim: 0.0, ..SAW };
        let plan = planned(&job(&[piece(100.0, 100.0, 4, true)], &[sheet(width, 100.0)], rules), 10_000);
        assert_eq!(plan.sheets.len(), sheets, "{width}");
    }
}

#[test]
fn what_is_too_big_is_said_by_how_much() {
    let pieces = [piece(700.0, 300.0, 2, false), piece(595.0, 100.0, 1, false)];
    let plan = planned(&job(&pieces, &[sheet(600.0, 900.0)], SAW), 10_000);
    assert_eq!(plan.unplaced.len(), 2);
    assert_eq!(plan.unplaced[0].count, 2);
    let by = |width| Reason::TooBig { sheet: Some(0), width, height: 0.0, turned: false };
    assert_eq!(plan.unplaced[0].reason, by(110.0));
    assert_eq!(plan.unplaced[1].reason, by(5.0));
    // Turned, both fit.
    let turning = pieces.map(|piece| Piece { may_turn: true, ..piece });
    assert_eq!(planned(&job(&turning, &[sheet(600.0, 900.0)], SAW), 10_000).unplaced, []);
    // Without any sheet there is nothing to compare with.
    let plan = planned(&job(&turning, &[], SAW), 10_000);
    let none = Reason::TooBig { sheet: None, width: 0.0, height: 0.0, turned: false };
    assert!(plan.unplaced.iter().all(|unplaced| unplaced.reason == none));
}

#[test]
fn when_the_sheets_run_out_the_largest_area_is_placed() {
    let two = Sheet { count: Some(2), ..sheet(310.0, 310.0) };
    let pieces = [piece(290.0, 290.0, 3, false), piece(100.0, 100.0, 1, false)];
    let plan = planned(&job(&pieces, &[two], SAW), 50_000);
    assert_eq!((plan.sheets.len(), plan.missing()), (2, 2));
    assert!(plan.unplaced.iter().all(|unplaced| unplaced.reason == Reason::NoSheetLeft));
    assert!(!plan.fewest);
}

#[test]
fn grain_decides_which_way_a_piece_lies() {
    for (of_piece, of_sheet, may_turn, turned) in [
        (Grain::AlongWidth, Grain::AlongWidth, true, false),
        (Grain::AlongWidth, Grain::AlongHeight, false, true),
        (Grain::AlongHeight, Grain::AlongHeight, true, false),
        (Grain::AlongHeight, Grain::AlongWidth, false, true),
    ] {
        for method in [Method::Guillotine, Method::Free] {
            for height in [100.0, 200.0] {
                let piece = Piece { grain: of_piece, ..piece(200.0, height, 3, may_turn) };
                let sheet = Sheet { grain: of_sheet, ..sheet(700.0, 700.0) };
                let plan = planned(&job(&[piece], &[sheet], Rules { method, ..SAW }), 10_000);
                assert_eq!(plan.missing(), 0);
                assert!(plan.sheets.iter().flat_map(|sheet| &sheet.placed).all(|placed| placed.turned == turned));
            }
        }
    }
}

#[test]
fn of_layouts_on_equally_many_sheets_the_lightest_is_taken() {
    let panels = [piece(300.0, 200.0, 2, true)];
    let large = sheet(2440.0, 1220.0);
    let small = sheet(620.0, 300.0);
    let offcut = Sheet { offcut: true, count: Some(1), ..sheet(460.0, 403.0) };
    let used = |sheets: &[Sheet]| {
        let plan = planned(&job(&panels, sheets, SAW), 50_000);
        assert_eq!((plan.sheets.len(), plan.fewest), (1, true));
        plan.sheets[0].sheet
    };
    assert_eq!(used(&[large.clone(), small.clone()]), 1);
    // 300 x 200 twice goes on 450 x 403, one above the other. That is 185 380 mm2; the small sheet has 186 000.
    let tight = Rules { trim: 0.0, ..SAW };
    assert_eq!(planned(&job(&panels, &[large.clone(), small.clone(), offcut], tight), 50_000).sheets[0].sheet, 2);
    // Of two equal sheets the one at hand; of a smaller one to buy and a larger one at hand the smaller.
    let at_hand = |sheet: &Sheet| Sheet { offcut: true, count: Some(1), ..sheet.clone() };
    assert_eq!(used(&[small.clone(), at_hand(&small)]), 1);
    assert_eq!(used(&[small.clone(), at_hand(&large)]), 0);
    // A price turns it round.
    let priced = |sheet: &Sheet, price| Sheet { price: Some(price), ..sheet.clone() };
    assert_eq!(used(&[priced(&large, 10.0), priced(&small, 12.0)]), 0);
    assert_eq!(used(&[priced(&small, 12.0), at_hand(&large)]), 1);
}

#[test]
fn one_large_sheet_is_better_than_many_small_ones() {
    // Thirty panels of five small cases; before fewest sheets went first, more small sheets at hand took more sheets.
    let kit = [(284.0, 208.0, 2), (284.0, 297.0, 2), (208.0, 291.0, 1), (196.0, 291.0, 1)];
    let pieces = kit.map(|(width, height, count)| piece(width, height, count * 5, true));
    let large = Sheet { count: Some(3), ..sheet(1200.0, 600.0) };
    for method in [Method::Guillotine, Method::Free] {
        let of = |sheets: &[Sheet]| planned(&job(&pieces, sheets, Rules { method, ..SAW }), 200_000);
        let area = |plan: &Plan, sheets: &[Sheet]| -> f64 {
            plan.sheets.iter().map(|used| sheets[used.sheet].width * sheets[used.sheet].height).sum()
        };
        let alone = [large.clone()];
        let least = of(&alone);
        for (count, offcut) in [(4, true), (5, true), (10, false), (20, true), (999, false)] {
            let small = Sheet { count: Some(count), offcut, ..sheet(600.0, 400.0) };
            let sheets = [large.clone(), small];
            let plan = of(&sheets);
            if plan.missing() == least.missing() {
                assert!(plan.sheets.len() <= least.sheets.len(), "{count}: {}", plan.sheets.len());
                assert!(area(&plan, &sheets) <= area(&least, &alone));
            } else {
                assert!(plan.missing() < least.missing());
            }
        }
    }
}

#[test]
fn the_saw_gets_cuts_that_free_every_piece() {
    // Six panels of a small case, four times, on half sheets: checked cut by cut by `faults`.
    let kit = [(262.0, 232.0, 2), (262.0, 100.0, 2), (220.0, 100.0, 1), (214.0, 94.0, 1)];
    let pieces = kit.map(|(width, height, count)| piece(width, height, count * 4, true));
    let plan = planned(&job(&pieces, &[sheet(1220.0, 610.0)], SAW), 400_000);
    assert_eq!(plan.missing(), 0);
    assert_eq!(plan.sheets.len(), plan.bounds.sheets());
    let cuts = plan.sheets.iter().flat_map(|sheet| &sheet.cuts);
    let freed = cuts.flat_map(|cut| [cut.off, cut.rest]).filter(|part| matches!(part, Part::Piece(_))).count();
    assert_eq!(freed, 24);
    assert!(plan.sheets.iter().any(|sheet| !sheet.offcuts.is_empty()));
    // After the four trims nothing is measured over waste that leaves a piece: a sheet 2 mm too wide would make it so.
    let kept = |part: Part| matches!(part, Part::Piece(_) | Part::Plate(_));
    let over_waste = |cut: &&Cut| !kept(cut.off) && kept(cut.rest);
    assert!(plan.sheets.iter().all(|sheet| !sheet.cuts[4..].iter().any(|cut| over_waste(&cut))));
    let measured_over_kept = |cut: &&Cut| kept(cut.off) && matches!(cut.rest, Part::Waste | Part::Offcut(_));
    assert!(plan.sheets.iter().flat_map(|sheet| &sheet.cuts).any(|cut| measured_over_kept(&cut)));
    // Without trim, and one piece as large as its sheet: nothing to saw.
    let rules = Rules { trim: 0.0, ..SAW };
    let plan = planned(&job(&[piece(600.0, 300.0, 1, false)], &[sheet(600.0, 300.0)], rules), 10_000);
    assert_eq!(plan.sheets[0].cuts, []);
    // A rest thinner than the kerf is dust.
    let plan = planned(&job(&[piece(598.0, 300.0, 1, false)], &[sheet(600.0, 300.0)], rules), 10_000);
    assert_eq!((plan.sheets[0].cuts[0].off, plan.sheets[0].cuts[0].rest), (Part::Piece(0), Part::Dust));
    assert_eq!(plan.sheets[0].cuts[0].distance, 598.0);
}

#[test]
fn the_largest_part_stays_supported_to_the_last() {
    let plan = planned(&job(&[piece(100.0, 590.0, 3, false)], &[sheet(1220.0, 600.0)], SAW), 50_000);
    let cuts = &plan.sheets[0].cuts;
    // Four for the trim, then three strips off the whole; what stays is the offcut.
    assert_eq!(cuts.len(), 7);
    assert!(cuts[4..].iter().all(|cut| cut.distance == 100.0 && matches!(cut.off, Part::Piece(_))));
    assert_eq!(cuts[6].rest, Part::Offcut(0));
    assert_eq!(plan.sheets[0].offcuts[0].width, 1210.0 - 3.0 * 103.0);
}

#[test]
fn nonsense_is_refused() {
    let good = job(&[piece(10.0, 10.0, 1, true)], &[sheet(100.0, 100.0)], SAW);
    let refused = |change: &dyn Fn(&mut Job)| {
        let mut job = good.clone();
        change(&mut job);
        solve(&job, 100, &mut |_| true).expect_err("nonsense")
    };
    for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e9] {
        assert!(matches!(refused(&|job| job.pieces[0].width = wrong), JobError::Size { name: "width", .. }));
        assert!(matches!(refused(&|job| job.sheets[0].height = wrong), JobError::Size { name: "height", .. }));
    }
    assert_eq!(refused(&|job| job.rules.trim = -1.0), JobError::Rule("trim"));
    assert_eq!(refused(&|job| job.rules.gap = f64::NAN), JobError::Rule("gap"));
    assert_eq!(refused(&|job| job.pieces[0].count = usize::MAX), JobError::TooMany);
    assert!(matches!(refused(&|job| job.sheets[0].price = Some(-1.0)), JobError::Price(_)));
    // Nothing wanted is nothing wrong.
    let plan = planned(&Job { pieces: Vec::new(), ..good.clone() }, 1000);
    assert_eq!((plan.sheets.len(), plan.unplaced.len()), (0, 0));
    // A trim that eats the sheet leaves nothing to lay on.
    assert_eq!(planned(&Job { rules: Rules { trim: 60.0, ..SAW }, ..good }, 1000).missing(), 1);
}

#[test]
fn stopped_early_there_is_a_plan_and_the_same_steps_give_the_same_one() {
    let pieces = [piece(123.0, 77.0, 17, true), piece(310.0, 45.0, 9, true), piece(200.0, 199.0, 5, true)];
    let job = job(&pieces, &[sheet(610.0, 600.0)], SAW);
    let mut calls = 0;
    let stopped = solve(&job, u64::MAX, &mut |_| {
        calls += 1;
        calls < 2
    });
    let stopped = stopped.expect("a job that makes sense");
    assert_eq!(faults(&job, &stopped), [""; 0]);
    assert_eq!(stopped.missing(), 0);
    assert_eq!(planned(&job, 200_000), planned(&job, 200_000));
}
