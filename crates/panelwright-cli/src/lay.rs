//! Rectangles on sheets straight from JSON, for tests and benches: one job a line in, one plan a line out.
//!
//! ```text
//! {"steps": 100000, "rules": {"trim": 0, "gap": 3, "method": "free"},
//!  "sheets": [{"width": 600, "height": 400, "count": null}],
//!  "pieces": [{"width": 100, "height": 50, "count": 2, "turn": true, "openings": [[x, y, width, height]]}]}
//! ```
//!
//! With `"seconds"` a job is worked on until its time is over or nothing can be gained; `"until"` stops as soon as so
//! many sheets do.

use std::io::{self, BufRead};
use std::time::Instant;

use panelwright::stock::{Grain, Job, Method, Piece, Plan, Rect, Rules, Search, Sheet};
use serde_json::{Value, json};

use crate::failure::Failure;
use crate::output;

/// Steps between two looks at the clock.
const SLICE: u64 = 20_000;

/// Reads jobs from standard input until it ends, and prints their plans.
pub fn lay() -> Result<(), Failure> {
    for line in io::stdin().lock().lines() {
        let wrong = |what: String| Failure::Job { what };
        let line = line.map_err(|error| wrong(error.to_string()))?;
        let given: Value = serde_json::from_str(&line).map_err(|error| wrong(error.to_string()))?;
        let start = Instant::now();
        let mut search = Search::new(&job(&given)).map_err(|error| wrong(error.to_string()))?;
        let steps = given["steps"].as_u64().unwrap_or(u64::MAX);
        let seconds = given["seconds"].as_f64().unwrap_or(f64::INFINITY);
        let until = given["until"].as_u64().unwrap_or(0);
        let mut progress = search.progress();
        while !progress.done
            && progress.steps < steps
            && (progress.sheets as u64 > until || progress.missing > 0)
            && start.elapsed().as_secs_f64() < seconds
        {
            progress = search.step(SLICE.min(steps - progress.steps));
        }
        let milliseconds = start.elapsed().as_secs_f64() * 1e3;
        output::print(&format!("{}\n", answer(&search.plan(), progress.steps, milliseconds)))?;
    }
    Ok(())
}

fn job(given: &Value) -> Job {
    let list = |name: &str| given[name].as_array().cloned().unwrap_or_default();
    let size = |of: &Value, name: &str| of[name].as_f64().unwrap_or(f64::NAN);
    let rect = |rect: &Value| {
        let at = |index: usize| rect[index].as_f64().unwrap_or(f64::NAN);
        Rect { x: at(0), y: at(1), width: at(2), height: at(3) }
    };
    let piece = |(index, piece): (usize, &Value)| Piece {
        label: index.to_string(),
        width: size(piece, "width"),
        height: size(piece, "height"),
        count: piece["count"].as_u64().map_or(1, |count| count as usize),
        may_turn: piece["turn"].as_bool().unwrap_or(false),
        grain: Grain::None,
        openings: piece["openings"].as_array().into_iter().flatten().map(rect).collect(),
    };
    let sheet = |(index, sheet): (usize, &Value)| Sheet {
        label: index.to_string(),
        width: size(sheet, "width"),
        height: size(sheet, "height"),
        count: sheet["count"].as_u64().map(|count| count as usize),
        grain: Grain::None,
        offcut: sheet["offcut"].as_bool().unwrap_or(false),
        price: sheet["price"].as_f64(),
    };
    let rules = &given["rules"];
    let sawn = rules["method"].as_str() == Some("guillotine");
    Job {
        pieces: list("pieces").iter().enumerate().map(piece).collect(),
        sheets: list("sheets").iter().enumerate().map(sheet).collect(),
        rules: Rules {
            trim: rules["trim"].as_f64().unwrap_or(0.0),
            gap: rules["gap"].as_f64().unwrap_or(0.0),
            method: if sawn { Method::Guillotine } else { Method::Free },
        },
    }
}

fn answer(plan: &Plan, steps: u64, milliseconds: f64) -> Value {
    let sheets: Vec<Value> = plan
        .sheets
        .iter()
        .map(|sheet| {
            let placed = sheet.placed.iter().map(|placed| {
                let rect = placed.rect;
                json!({
                    "piece": placed.piece,
                    "turned": placed.turned,
                    "rect": [rect.x, rect.y, rect.width, rect.height],
                    "inside": placed.inside,
                })
            });
            let offcuts = sheet.offcuts.iter().map(|rect| json!([rect.x, rect.y, rect.width, rect.height]));
            let cuts = sheet.cuts.iter().map(|cut| {
                let from = format!("{:?}", cut.from).to_lowercase();
                json!({"plate": cut.plate, "from": from, "distance": cut.distance, "start": cut.start, "end": cut.end})
            });
            json!({
                "sheet": sheet.sheet,
                "placed": placed.collect::<Vec<Value>>(),
                "offcuts": offcuts.collect::<Vec<Value>>(),
                "yield": sheet.yield_share,
                "cuts": cuts.collect::<Vec<Value>>(),
            })
        })
        .collect();
    let unplaced = plan.unplaced.iter().map(|unplaced| json!({"piece": unplaced.piece, "count": unplaced.count}));
    json!({
        "sheets": sheets,
        "unplaced": unplaced.collect::<Vec<Value>>(),
        "area_bound": plan.bounds.area,
        "l2_bound": plan.bounds.martello_vigo,
        "bound": plan.bounds.sheets(),
        "fewest": plan.fewest,
        "steps": steps,
        "milliseconds": milliseconds,
    })
}
