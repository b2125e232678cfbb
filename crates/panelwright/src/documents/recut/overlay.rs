//! Old and new panel laid over each other: old lines dashed and light, new ones strong, what is added marked.

use kurbo::Vec2;

use super::PanelChange;
use crate::Build;
use crate::drawing::{Colour, Dash, Drawing, Layer, Style, SvgOptions, THIN_LINE_MM, VISIBLE_LINE_MM, svg};
use crate::panels::Panel;

/// Air around both, mm: as around a panel's own file.
const AIR_MM: f64 = 5.0;

/// Opacity of what is filled in as added: lines below still show (common practice).
const MARKED: f64 = 0.3;

/// The picture of one panel, in mm, seen from outside.
#[must_use]
pub fn overlay(old: &Panel, new: &Panel, change: &PanelChange) -> Drawing {
    let by = Vec2::new(change.new_on_old_mm[0], change.new_on_old_mm[1]);
    let (first, second) = (old.outline.bbox(), new.outline.bbox() + by);
    let both = first.union(second);
    let place = Vec2::new(AIR_MM - both.x0, AIR_MM - both.y0);
    let mut drawing = Drawing::new(both.width() + 2.0 * AIR_MM, both.height() + 2.0 * AIR_MM);
    let mut added = Layer::new("added");
    let mut before = Layer::new("old");
    let mut after = Layer::new("new");
    let dashed = Style::line(Colour::Hidden, THIN_LINE_MM).with_dash(Dash::Hidden);
    before.draw(old.outline.translate(place), dashed);
    for feature in old.features.iter().filter(|feature| !feature.notch) {
        before.draw(feature.contour.translate(place), dashed);
    }
    let strong = Style::line(Colour::Ink, VISIBLE_LINE_MM);
    after.draw(new.outline.translate(place + by), strong);
    for feature in new.features.iter().filter(|feature| !feature.notch) {
        let contour = feature.contour.translate(place + by);
        if change.added.iter().any(|added| added.id == feature.id) {
            let marked = Style::filled(Colour::Accent).with_opacity(MARKED).with_line(Colour::Accent, VISIBLE_LINE_MM);
            added.draw(contour.clone(), marked);
        }
        after.draw(contour, strong);
    }
    drawing.layers.extend([added, before, after]);
    drawing
}

/// The picture of one panel as SVG; `None` when there is no such panel.
#[must_use]
pub fn overlay_svg(old: &Build, new: &Build, change: &PanelChange) -> Option<String> {
    let find = |build: &'_ Build| build.panels.iter().position(|panel| panel.id() == change.panel);
    let (before, after) = (&old.panels[find(old)?], &new.panels[find(new)?]);
    let title =
        format!("{}: {} from design {} to {}", change.label, change.verdict.name(), old.fingerprint, new.fingerprint);
    let options = SvgOptions { title: Some(title), ..SvgOptions::for_file() };
    Some(svg(&overlay(before, after, change), &options))
}
