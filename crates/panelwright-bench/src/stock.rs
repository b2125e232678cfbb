//! Times the search for layouts without waste: the published sets, pieces not turned and turned.

use std::time::Instant;

use panelwright::stock::{Grain, Job, Method, Piece, Rules, Search, Sheet};

#[allow(dead_code, reason = "the witnesses serve the tests")]
#[path = "../../panelwright/src/stock/tests/perfect.rs"]
mod perfect;

use perfect::{PERFECT, Perfect};

/// A set of up to thirty pieces is laid out within a second, a larger one within five.
const BUDGETS_MS: [f64; 2] = [1000.0, 5000.0];

/// Steps between two looks at the clock.
const SLICE: u64 = 5000;

/// Prints one line for each set.
pub fn bench() {
    for perfect in &PERFECT {
        let pieces: usize = perfect.sizes().iter().map(|size| size.2).sum();
        let budget = BUDGETS_MS[usize::from(pieces > 30)];
        // The search does the same every time; only the machine differs.
        for (may_turn, how) in [(false, "as they are"), (true, "turning")] {
            let times = (0..3).map(|_| milliseconds(&job(perfect, may_turn), budget)).collect();
            crate::report(&format!("no waste: {}, {pieces} pieces {how}", perfect.name), times, budget);
        }
    }
}

/// Time to a layout on one sheet; beyond all bounds when there is none within ten times the budget.
fn milliseconds(job: &Job, budget: f64) -> f64 {
    let start = Instant::now();
    let Ok(mut search) = Search::new(job) else { return f64::MAX };
    while search.progress().sheets > 1 {
        search.step(SLICE);
        if start.elapsed().as_secs_f64() * 1e3 > 10.0 * budget {
            return f64::MAX;
        }
    }
    start.elapsed().as_secs_f64() * 1e3
}

fn job(perfect: &Perfect, may_turn: bool) -> Job {
    let (grain, label) = (Grain::None, String::new());
    let piece = |&(w, h, count): &(i64, i64, usize)| Piece {
        label: label.clone(),
        width: w as f64 * 10.0,
        height: h as f64 * 10.0,
        count,
        may_turn,
        grain,
        openings: Vec::new(),
    };
    let sheet = Sheet {
        label: label.clone(),
        width: perfect.width as f64 * 10.0,
        height: perfect.height as f64 * 10.0,
        count: None,
        grain,
        offcut: false,
        price: None,
    };
    Job {
        pieces: perfect.sizes().iter().map(piece).collect(),
        sheets: vec![sheet],
        rules: Rules { trim: 0.0, gap: 0.0, method: Method::Free },
    }
}
