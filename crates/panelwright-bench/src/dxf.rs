//! Times writing a stock sheet with the panels of many designs as DXF.

use std::io;
use std::path::Path;

use kurbo::Vec2;
use panelwright::cutting::{CutPanel, CutRule, CutSheet, FileMarks, cut_sheet_to_dxf};
use panelwright::{Build, sample};

/// Designs whose panels lie on the sheet.
const DESIGNS: u64 = 30;

/// Times it is written.
const RUNS: usize = 100;

/// Writes the sheet, prints how long it took as one JSON object, and keeps the file.
pub fn time(file: &Path) -> io::Result<()> {
    let mut left = 0.0;
    let mut panels = Vec::new();
    for seed in 0..DESIGNS {
        for panel in &Build::of(&sample::design(seed, false)).panels {
            panels.push(CutPanel::of(panel, CutRule::Nominal).placed(0, Vec2::new(left, 0.0)));
            left += panel.size_mm[0] + 10.0;
        }
    }
    let sheet = CutSheet { label: "Bench".to_owned(), size_mm: [left, 1000.0], panels };
    let mut times: Vec<f64> =
        (0..RUNS).map(|_| super::timed(|| cut_sheet_to_dxf(&sheet, FileMarks::of("23456789")))).collect();
    times.sort_by(f64::total_cmp);
    println!("{}", serde_json::json!({ "p50_ms": times[RUNS / 2], "p95_ms": times[RUNS * 95 / 100] }));
    std::fs::write(file, cut_sheet_to_dxf(&sheet, FileMarks::of("23456789")))
}
