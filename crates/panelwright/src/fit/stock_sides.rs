//! A sheet at hand is used only when both its sides are stated: one that lacks a side is not left out in silence.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use crate::dimensions::source::Source;

pub(super) const STOCK_SIDE_MISSING: Rule = Rule {
    name: "stock-side-missing",
    what: "Of every sheet at hand both sides are stated.",
    source: Source::common_practice("The maker's own statement", "sheets at hand"),
    look: stock_side_missing,
};

fn stock_side_missing(scene: &Scene, found: &mut Vec<Finding>) {
    for sheet in &scene.case.spec.stock.half_sheets {
        let (has, enter, clear) = match (sheet.width, sheet.height) {
            (true, _) => ("a width but no height", "height", "width"),
            (_, true) => ("a height but no width", "width", "height"),
            _ => ("a number but no size", "width and height", "number"),
        };
        found.push(
            STOCK_SIDE_MISSING
                .note(format!("Sheet {} of your stock has {has}. Nothing is laid on it.", sheet.number))
                .with_remedy(format!("Enter its {enter}, or clear its {clear}.")),
        );
    }
}
