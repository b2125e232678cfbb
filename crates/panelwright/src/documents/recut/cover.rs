//! What the panels are of and what is on them: another material is another panel, another film is a new cover.

use super::words::mm;
use crate::design::SheetSpec;

/// Layers that differ by more than this are others, mm: thinner ones nobody sells.
const SAME_LAYER_MM: f64 = 0.0005;

/// Why panels of another sheet are made again; `None` for the same sheet. Its thickness is each panel's own matter.
pub(super) fn material(old: &SheetSpec, new: &SheetSpec) -> Option<String> {
    (old.material != new.material)
        .then(|| format!("It is cut from {} instead of {}.", new.material.name(), old.material.name()))
}

/// Film and paint that change.
pub(super) fn changes(old: &SheetSpec, new: &SheetSpec) -> Vec<String> {
    let layers = |sheet: &SheetSpec| {
        [
            ("Film outside", sheet.film_out_mm),
            ("Film inside", sheet.film_in_mm),
            ("Paint outside", sheet.finish_out_mm - sheet.film_out_mm),
            ("Paint inside", sheet.finish_in_mm - sheet.film_in_mm),
            ("Paint on cut edges", sheet.paint_edges_mm),
        ]
    };
    let thick = |layer: f64| if layer > SAME_LAYER_MM { format!("{} mm", mm(layer)) } else { "none".to_owned() };
    layers(old)
        .into_iter()
        .zip(layers(new))
        .filter(|((_, before), (_, after))| (before - after).abs() > SAME_LAYER_MM)
        .map(|((what, before), (_, after))| format!("{what}: {} instead of {}.", thick(after), thick(before)))
        .collect()
}
