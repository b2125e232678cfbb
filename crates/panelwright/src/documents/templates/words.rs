//! The words on a template: the hole key, the sheet, the printer and the cautions.

use crate::design::{PrinterSpec, SheetSpec};
use crate::drawing::number::{format_number, mm};
use crate::panels::{Face, Feature, FeatureKind};
use crate::sorting::sort_by;

/// A row of the hole key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyRow {
    /// The letter; empty for what has none.
    pub letter: String,
    /// Drill or depth in words.
    pub drill: String,
    /// How many.
    pub count: usize,
    /// What for.
    pub what: String,
}

/// The hole key of a panel: one row for each letter, then what is not drilled through.
#[must_use]
pub fn key_rows(features: &[&Feature]) -> Vec<KeyRow> {
    let mut rows: Vec<KeyRow> = Vec::new();
    let mut lettered: Vec<&&Feature> = features.iter().filter(|feature| feature.key.is_some()).collect();
    sort_by(&mut lettered, |a, b| (key_order(a), &a.why).cmp(&(key_order(b), &b.why)));
    for feature in lettered {
        let letter = feature.key.clone().unwrap_or_default();
        match rows.iter_mut().find(|row| row.letter == letter) {
            Some(row) => {
                row.count += 1;
                if row.what != short_why(feature) && !row.what.ends_with('…') {
                    row.what.push('…');
                }
            }
            None => rows.push(KeyRow { letter, drill: drill_words(feature), count: 1, what: short_why(feature) }),
        }
    }
    for feature in features.iter().filter(|feature| feature.key.is_none() && feature.blind.is_some()) {
        rows.push(KeyRow { letter: String::new(), drill: drill_words(feature), count: 1, what: short_why(feature) });
    }
    rows
}

fn key_order(feature: &Feature) -> (usize, String) {
    let key = feature.key.clone().unwrap_or_default();
    (key.len(), key)
}

/// The reason up to the end of its first clause or sentence: a table is narrow. The point in 6.35 ends nothing.
#[must_use]
pub fn short_why(feature: &Feature) -> String {
    let clause = feature.why.split(": ").next().unwrap_or_default();
    clause.split(". ").next().unwrap_or_default().trim_end_matches('.').trim().to_owned()
}

fn drill_words(feature: &Feature) -> String {
    let size = match (feature.diameter_mm, feature.kind) {
        (Some(diameter), _) => format!("⌀{}", mm(diameter)),
        (None, FeatureKind::Hole) => {
            let bounds = feature.contour.bbox();
            format!("{} × {}", mm(bounds.width()), mm(bounds.height()))
        }
        (None, kind) => kind.name().to_owned(),
    };
    match feature.blind {
        None => size,
        Some((depth, Face::Inside)) => format!("{size}, {} deep, from inside", mm(depth)),
        Some((depth, Face::Outside)) => format!("{size}, {} deep", mm(depth)),
    }
}

/// Sheet, films and paint in a line or two.
#[must_use]
pub fn sheet_words(sheet: &SheetSpec) -> Vec<String> {
    let mut out = vec![match sheet.measured_mm {
        Some(measured) => {
            format!("{} mm {}, measured {} mm", mm(sheet.nominal_mm), sheet.material.name(), format_number(measured, 2))
        }
        None => format!("{} mm {} (measure yours)", mm(sheet.nominal_mm), sheet.material.name()),
    }];
    let films = [(sheet.finish_out_mm, "outside"), (sheet.finish_in_mm, "inside"), (sheet.paint_edges_mm, "cut edges")];
    let layers: Vec<String> = films
        .iter()
        .filter(|(thickness, _)| *thickness > 0.0)
        .map(|(thickness, place)| format!("{} {}", format_number(*thickness, 2), place))
        .collect();
    if !layers.is_empty() {
        out.push(format!("film and paint: {} mm", layers.join(", ")));
    }
    out
}

/// What every page says of the printer: by how much it is corrected, or why it is not; nothing when nothing was measured.
#[must_use]
pub fn printer_words(printer: &PrinterSpec) -> Vec<String> {
    if let Some(reading) = printer.fitted_mm() {
        return vec![
            format!("Not corrected: a bar of 100 mm read {} mm,", format_number(reading, 2)),
            "so \"fit to page\" was on. Print at 100 % and measure anew.".to_owned(),
        ];
    }
    let [across, down] = printer.factors();
    if printer.across_mm.is_none() && printer.down_mm.is_none() {
        return Vec::new();
    }
    let four = |factor: f64| format_number(factor, 4);
    vec![format!("Corrected for this printer: across (short side) × {}, down × {}", four(across), four(down))]
}

/// What is printed on every page for the maker's safety and for true scale. General; local rules come first.
pub const PAGE_CAUTIONS: [&str; 4] = [
    "Print at 100 %, no scaling. Measure both bars: 100 mm each.",
    "If a bar is wrong, print again. Never measure from the paper's edge.",
    "Wear eye protection; keep sawdust out of your lungs: mask, extraction.",
    "Unplug machines before changing tools. Local rules come first.",
];
