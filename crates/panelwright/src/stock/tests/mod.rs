//! The search as a whole against published layouts, and what tests of this module share.

mod kits;
mod nest;
mod perfect;
mod random;
mod rules;

pub use perfect::{PERFECT, Perfect};

use super::check::{faults, sawable};
use super::{Grain, Job, Method, Piece, Placed, Plan, Rect, Rules, Sheet, SheetPlan, solve};

/// A piece that may be turned or not.
pub fn piece(width: f64, height: f64, count: usize, may_turn: bool) -> Piece {
    Piece {
        label: format!("{width} x {height}"),
        width,
        height,
        count,
        may_turn,
        grain: Grain::None,
        openings: Vec::new(),
    }
}

/// As many sheets as needed.
pub fn sheet(width: f64, height: f64) -> Sheet {
    let label = format!("sheet {width} x {height}");
    Sheet { label, width, height, count: None, grain: Grain::None, offcut: false, price: None }
}

/// A published set as a job, in the given unit (mm).
pub fn perfect_job(perfect: &Perfect, unit: f64, may_turn: bool, method: Method) -> Job {
    let size = |&(w, h, count): &(i64, i64, usize)| piece(w as f64 * unit, h as f64 * unit, count, may_turn);
    Job {
        pieces: perfect.sizes().iter().map(size).collect(),
        sheets: vec![sheet(perfect.width as f64 * unit, perfect.height as f64 * unit)],
        rules: Rules { trim: 0.0, gap: 0.0, method },
    }
}

/// Steps that every published set of up to 30 pieces is found within, free cuts.
const ENOUGH: u64 = 4_000_000;

#[test]
fn published_layouts_without_waste_are_found() {
    for perfect in &PERFECT {
        for may_turn in [false, true] {
            let job = perfect_job(perfect, 25.0, may_turn, Method::Free);
            let plan = solve(&job, ENOUGH, &mut |progress| progress.sheets > 1).expect("a job that makes sense");
            assert_eq!(faults(&job, &plan), [""; 0], "{}", perfect.name);
            assert_eq!(plan.sheets.len(), 1, "{} turned {may_turn}", perfect.name);
            assert!(plan.fewest && plan.yield_share > 1.0 - 1e-12, "{}", perfect.name);
        }
    }
}

/// Areas of the largest sheets, in millionths of a square millimetre, times a weight, need more than 63 bits.
#[test]
fn the_largest_sheets_are_laid_as_small_ones_are() {
    for unit in [100.0, 4000.0] {
        let job = perfect_job(Perfect::named("PIN"), unit, true, Method::Free);
        let plan = solve(&job, ENOUGH, &mut |progress| progress.sheets > 1).expect("a job that makes sense");
        assert_eq!(faults(&job, &plan), [""; 0], "{unit}");
        assert_eq!(plan.sheets.len(), 1, "{unit}");
    }
}

#[test]
fn published_layouts_are_found_for_the_saw_where_they_exist() {
    // Shown by complete enumeration (C1P1, C1P3, N1) or by a layout (J1, D2).
    for name in ["C1P1", "C1P3", "N1", "J1", "D2"] {
        let job = perfect_job(Perfect::named(name), 10.0, false, Method::Guillotine);
        let plan = solve(&job, ENOUGH, &mut |progress| progress.sheets > 1).expect("a job that makes sense");
        assert_eq!(faults(&job, &plan), [""; 0], "{name}");
        assert_eq!(plan.sheets.len(), 1, "{name}");
    }
    // And not where complete enumeration found none; the pinwheel has a proof by hand.
    for (name, may_turn) in [("SQ9", false), ("C1P2", false), ("PIN", true)] {
        let job = perfect_job(Perfect::named(name), 100.0, may_turn, Method::Guillotine);
        let plan = solve(&job, 200_000, &mut |_| true).expect("a job that makes sense");
        assert_eq!(faults(&job, &plan), [""; 0], "{name}");
        assert_eq!(plan.sheets.len(), 2, "{name}");
        assert_eq!((plan.bounds.area, plan.bounds.tried), (1, if name == "C1P2" { 0 } else { 2 }), "{name}");
    }
}

#[test]
fn the_check_takes_witnesses_and_refuses_what_is_wrong() {
    for perfect in &PERFECT {
        let job = perfect_job(perfect, 10.0, false, Method::Free);
        let plan = witness(perfect, &job);
        assert_eq!(faults(&job, &plan), [""; 0], "{}", perfect.name);
        let rects = perfect.places().iter().map(|&[x, y, w, h]| [x, y, x + w, y + h]).collect::<Vec<_>>();
        let sawn = !["C1P2", "SQ9", "SQ21", "PIN"].contains(&perfect.name);
        if !sawn || ["J1", "D2", "N1"].contains(&perfect.name) {
            assert_eq!(sawable(&rects, 0), sawn, "{}", perfect.name);
        }
        // Every piece moved by a hundredth of a millimetre meets a neighbour or leaves the sheet.
        for index in 0..plan.sheets[0].placed.len() {
            let mut wrong = plan.clone();
            wrong.sheets[0].placed[index].rect.x += 0.01;
            assert!(!faults(&job, &wrong).is_empty());
        }
        let mut wrong = plan.clone();
        wrong.sheets[0].placed.pop();
        assert!(!faults(&job, &wrong).is_empty());
        let mut wide = job.clone();
        wide.rules.gap = 0.001;
        assert!(!faults(&wide, &plan).is_empty());
        wide.rules = Rules { trim: 0.001, ..job.rules };
        assert!(!faults(&wide, &plan).is_empty());
    }
}

/// The witness as a plan.
fn witness(perfect: &Perfect, job: &Job) -> Plan {
    let mut left: Vec<usize> = job.pieces.iter().map(|piece| piece.count).collect();
    let mut placed = Vec::new();
    for place in perfect.places() {
        let [x, y, width, height] = place.map(|number| number as f64 * 10.0);
        let fits = |index: &usize| {
            left[*index] > 0 && job.pieces[*index].width == width && job.pieces[*index].height == height
        };
        let piece = (0..left.len()).find(fits).unwrap_or_else(|| panic!("{}: {place:?}", perfect.name));
        left[piece] -= 1;
        placed.push(Placed { piece, rect: Rect { x, y, width, height }, turned: false, inside: None });
    }
    let sheet = SheetPlan { sheet: 0, placed, offcuts: Vec::new(), yield_share: 1.0, cuts: Vec::new() };
    Plan { sheets: vec![sheet], ..Plan::default() }
}
