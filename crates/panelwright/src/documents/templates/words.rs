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
                row.what = both(&row.what, &short_why(feature));
            }
            None => rows.push(KeyRow { letter, drill: drill_words(feature), count: 1, what: short_why(feature) }),
        }
    }
    for feature in features.iter().filter(|feature| feature.key.is_none() && feature.blind.is_some()) {
        let (drill, what) = (drill_words(feature), short_why(feature));
        let like = |row: &&mut KeyRow| row.letter.is_empty() && row.drill == drill && row.what == what;
        match rows.iter_mut().find(like) {
            Some(row) => row.count += 1,
            None => rows.push(KeyRow { letter: String::new(), drill, count: 1, what }),
        }
    }
    rows
}

/// Most things told apart in one row.
const MOST_TOLD: usize = 9;

/// The reasons of several holes in one: `Screw 1, 2, 3 of fan 1`. Reasons that differ in more than a word are told by the
/// first of them.
fn both(told: &str, next: &str) -> String {
    if told == next || told.ends_with('…') {
        return told.to_owned();
    }
    let next: Vec<&str> = next.split(' ').collect();
    // Words of what is told; those that stand in one place belong together.
    let mut places: Vec<Vec<&str>> = Vec::new();
    let mut goes_on = false;
    for word in told.split(' ') {
        match places.last_mut() {
            Some(place) if goes_on => place.push(word.trim_end_matches(',')),
            _ => places.push(vec![word.trim_end_matches(',')]),
        }
        goes_on = word.ends_with(',');
    }
    let plain = places.len() == next.len() && !next.iter().any(|word| word.ends_with(','));
    let other: Vec<usize> = places
        .iter()
        .zip(&next)
        .enumerate()
        .filter(|(_, (place, word))| !place.contains(word))
        .map(|(at, _)| at)
        .collect();
    let several = places.iter().position(|place| place.len() > 1);
    match other[..] {
        [] if plain => told.to_owned(),
        [at] if plain && several.is_none_or(|several| several == at) && places[at].len() < MOST_TOLD => {
            places[at].push(next[at]);
            places.iter().map(|place| place.join(", ")).collect::<Vec<_>>().join(" ")
        }
        _ => format!("{told}…"),
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn recesses_that_are_alike_share_a_row() {
        let build = crate::Build::of(&crate::design::Design::default());
        let back = build.panel(crate::design::Wall::Back).unwrap();
        let hollows: Vec<&Feature> =
            back.features.iter().filter(|feature| feature.key.is_none() && feature.blind.is_some()).collect();
        assert!(hollows.len() > 1 && hollows.iter().all(|hollow| hollow.why == hollows[0].why));
        let rows = key_rows(&hollows);
        assert_eq!(rows.iter().map(|row| row.count).collect::<Vec<_>>(), [hollows.len()]);
    }

    #[test]
    fn reasons_that_differ_in_a_word_are_told_together() {
        let all = |reasons: &[&str]| reasons[1..].iter().fold(reasons[0].to_owned(), |told, next| both(&told, next));
        assert_eq!(all(&["Screw 1 of fan 1", "Screw 2 of fan 1", "Screw 3 of fan 1"]), "Screw 1, 2, 3 of fan 1");
        assert_eq!(all(&["Foot 1", "Foot 2", "Foot 2"]), "Foot 1, 2");
        assert_eq!(
            all(&["Standoff C of the board", "Standoff F of the board", "Standoff H of the board"]),
            "Standoff C, F, H of the board"
        );
        // Two words differ: which belongs to which would be lost.
        assert_eq!(all(&["Screw 1 of fan 1", "Screw 2 of fan 1", "Screw 1 of fan 2"]), "Screw 1, 2 of fan 1…");
        assert_eq!(all(&["Screw 1 of fan 1", "Screw 2 of fan 2"]), "Screw 1 of fan 1…");
        assert_eq!(all(&["Bracket, on the left", "Bracket, on the top"]), "Bracket, on the left…");
        let many: Vec<String> = (1..=11).map(|number| format!("Foot {number}")).collect();
        let many: Vec<&str> = many.iter().map(String::as_str).collect();
        assert_eq!(all(&many), "Foot 1, 2, 3, 4, 5, 6, 7, 8, 9…");
    }
}
