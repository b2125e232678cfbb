//! Times the core natively over seeded random changes, the same on every machine.
//!
//! Prints one JSON object a line, as `cargo xtask bench` reads them. The budgets are those of the browser (a change
//! redraws within a frame); natively the same work takes a fraction of it.
//!
//! `panelwright-bench dxf FILE` times writing one large cutting file instead, and leaves that file for others to write
//! again: `tests/outside/bench_dxf.py` compares. `panelwright-bench changes` times the changes alone, for a profiler.

mod dxf;
mod stock;

use std::hint::black_box;
use std::time::Instant;

use panelwright::Build;
use panelwright::cutting::{CutPanel, CutRule, Relief, RouterRule, TabRule};
use panelwright::design::Design;
use panelwright::documents::templates;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::pictures::{CaseView, case_picture};
use panelwright::sample;
use panelwright_wasm::Workbench;

/// Changes timed: enough that the 95th percentile rests on fifty of them.
const CHANGES: u64 = 1000;

/// Packs of templates timed.
const PACKS: u64 = 100;

/// A laser as its maker found it.
const LASER: CutRule = CutRule::Laser { kerf_mm: 0.2 };

/// A small cutter, with everything that can be worked out for it.
const ROUTER: CutRule = CutRule::Router(RouterRule {
    cutter_mm: 3.175,
    relief: Some(Relief::Diagonal),
    compensated: true,
    tabs: Some(TabRule { count: 4, width_mm: 5.0, height_mm: 1.5, from_corner_mm: 15.0 }),
});

fn main() -> std::io::Result<()> {
    let arguments: Vec<_> = std::env::args_os().skip(1).collect();
    match arguments.as_slice() {
        [what, file] if what == "dxf" => return dxf::time(std::path::Path::new(file)),
        [what] if what == "changes" => {
            changes();
            return Ok(());
        }
        _ => {}
    }
    changes();
    let mut times = Vec::new();
    for seed in 0..PACKS {
        let build = Build::of(&sample::design(seed, false));
        let setup = templates::setup(&build.spec.template, None);
        times.push(timed(|| templates::pdf(&build, &setup)));
    }
    report("all templates as a PDF", times, 50.0);
    for (name, rule) in [("laser", LASER), ("router", ROUTER)] {
        let mut times = Vec::new();
        for seed in 0..PACKS {
            let panels = Build::of(&sample::design(seed, false)).panels;
            times.push(timed(|| panels.iter().map(|panel| CutPanel::of(panel, rule)).collect::<Vec<_>>()));
        }
        report(&format!("{name} paths of all panels"), times, 50.0);
    }
    stock::bench();
    Ok(())
}

/// A change; with it what the page is told of the design, as the text it gets; and the picture it then asks for.
fn changes() {
    let mut random = sample::Random::new(1);
    let mut design = Design::default();
    let (mut builds, mut views, mut pictures) = (Vec::new(), Vec::new(), Vec::new());
    for index in 0..CHANGES {
        // Every twenty changes a fresh design, so that the walk does not end among oddities.
        if index % 20 == 0 {
            design = sample::design(index, false);
        }
        sample::change(&mut design, &mut random, false);
        let build = Build::of(&design);
        pictures
            .push(timed(|| svg(&case_picture(&build, &CaseView::default()).drawing, &SvgOptions::for_page("case-"))));
        builds.push(timed(|| Build::of(&design)));
        views.push(timed(|| Workbench::with_design(design.clone()).view_text()));
    }
    report("full recompute after a change", builds, 4.0);
    report("full recompute and view after a change", views, 4.0);
    report("picture of the case", pictures, 4.0);
}

/// Milliseconds a piece of work takes.
fn timed<T>(work: impl FnOnce() -> T) -> f64 {
    let start = Instant::now();
    black_box(work());
    start.elapsed().as_secs_f64() * 1e3
}

fn report(name: &str, mut times: Vec<f64>, budget_ms: f64) {
    times.sort_by(f64::total_cmp);
    let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize];
    let line = serde_json::json!({
        "bench": name,
        "p50_ms": at(0.5),
        "p95_ms": at(0.95),
        "budget_ms": budget_ms,
    });
    println!("{line}");
}
