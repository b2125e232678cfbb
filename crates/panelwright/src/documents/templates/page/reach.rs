//! What the printer does not reach of a panel as large as the paper: given as measures from the centre lines.

use super::super::plan::Way;
use super::super::words::{KeyRow, short_why};
use super::Page;
use crate::drawing::number::mm;
use crate::panels::{Feature, FeatureKind};

/// A line that ends so little outside what is printed is printed, mm.
const HAIR_MM: f64 = 1e-6;

impl Page<'_> {
    /// Holes whose centres, and openings and rebates whose edges, lie in the margin that the printer leaves.
    pub(super) fn out_of_reach(&mut self) {
        if self.plan.way != Way::Ticks {
            return;
        }
        let mut rows: Vec<KeyRow> = Vec::new();
        for feature in &self.panel.features {
            let Some(what) = self.hole_out_of_reach(feature).or_else(|| self.edges_out_of_reach(feature)) else {
                continue;
            };
            match rows.iter_mut().find(|row| row.what == what && feature.key.is_none()) {
                Some(row) => row.count += 1,
                None => rows.push(KeyRow {
                    letter: feature.key.clone().unwrap_or_default(),
                    drill: "measure".to_owned(),
                    count: 1,
                    what,
                }),
            }
        }
        self.rows(&rows, rows.len());
    }

    /// Where a hole's centre is that no cross can mark.
    fn hole_out_of_reach(&self, feature: &Feature) -> Option<String> {
        let reach = self.printable - self.origin;
        if feature.kind != FeatureKind::Hole || reach.contains(feature.centre) {
            return None;
        }
        let [w, h] = self.panel.size_mm;
        let (x, y) = (feature.centre.x - w / 2.0, feature.centre.y - h / 2.0);
        Some(format!("{}, {} the centre lines", side(x, "left of", "right of"), side(y, "below", "above")))
    }

    /// How far the sides of an opening or a rebate go that are not printed. Sides on the panel's own edge are told by
    /// its ticks; what has a diameter is told by that and its centre.
    fn edges_out_of_reach(&self, feature: &Feature) -> Option<String> {
        if matches!(feature.kind, FeatureKind::Hole | FeatureKind::Counterbore) {
            return None;
        }
        let reach = self.printable - self.origin;
        let [w, h] = self.panel.size_mm;
        let bounds = feature.contour.bbox();
        let hidden = |at: f64, [low, high]: [f64; 2], most: f64| {
            (at < low - HAIR_MM || at > high + HAIR_MM) && at > HAIR_MM && at < most - HAIR_MM
        };
        let mut sides = Vec::new();
        for at in [bounds.x0, bounds.x1] {
            if hidden(at, [reach.x0, reach.x1], w) {
                sides.push(side(at - w / 2.0, "left", "right"));
            }
        }
        for at in [bounds.y0, bounds.y1] {
            if hidden(at, [reach.y0, reach.y1], h) {
                sides.push(side(at - h / 2.0, "below", "above"));
            }
        }
        if sides.is_empty() || (feature.diameter_mm.is_some() && reach.contains(feature.centre)) {
            return None;
        }
        // The measure comes first: where room is short the words are cut off behind it.
        Some(format!("goes to {} of centre: {}", sides.join(", "), short_why(feature)))
    }
}

/// A distance from a centre line, in words.
fn side(value: f64, low: &str, high: &str) -> String {
    format!("{} {}", mm(value.abs()), if value < 0.0 { low } else { high })
}
