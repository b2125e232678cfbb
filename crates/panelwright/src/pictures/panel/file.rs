//! A panel as a file at true scale: its geometry in named layers, arcs as arcs, millimetres, and nothing else.
//!
//! Seen from outside, x to the right, y up in the drawing; the SVG turns y over, so that the file looks like the panel.

use kurbo::{Point, Rect, Vec2};

use crate::Build;
use crate::design::Wall;
use crate::documents::templates::words;
use crate::documents::warnings::warnings;
use crate::drawing::{Colour, Drawing, Form, Item, Layer, Shape, Style, SvgOptions, Text, svg};
use crate::panels::{FeatureKind, Panel};
use crate::sorting::sort_by_key;

/// Names of the layers of a file, the lowest first. A layer without content is left out.
pub const FILE_LAYERS: [&str; 7] = ["outline", "openings", "holes", "vents", "rebates", "marks", "names"];

/// Width of every line, mm: fine enough to see where its middle is, wide enough to be printed.
const LINE_MM: f64 = 0.1;
/// Free paper around a panel, mm, so that no line is cut off.
const MARGIN_MM: f64 = 5.0;
/// Half a centre mark, mm.
const MARK_MM: f64 = 1.5;
/// Between panels in one file, mm.
const BETWEEN_MM: f64 = 15.0;
/// Height of a panel's name in the file of all panels, mm.
const NAME_MM: f64 = 5.0;

/// The panel of a wall as an SVG file. Its title begins with what warns of the design.
#[must_use]
pub fn file_svg(build: &Build, wall: Wall) -> Option<String> {
    let panel = build.panel(wall)?;
    let mut lines = warnings(&build.findings);
    lines.push(format!("{}, design {}", title(panel), build.fingerprint));
    let options = SvgOptions { title: Some(lines.join("; ")), ..SvgOptions::for_file() };
    Some(svg(&file_drawing(panel), &options))
}

/// One panel at true scale.
#[must_use]
pub fn file_drawing(panel: &Panel) -> Drawing {
    let [w, h] = panel.size_mm;
    let mut drawing = Drawing::new(w + 2.0 * MARGIN_MM, h + 2.0 * MARGIN_MM);
    draw(&mut drawing, panel, Vec2::new(MARGIN_MM, MARGIN_MM));
    finish(drawing)
}

/// All panels side by side as one SVG file.
#[must_use]
pub fn all_panels_svg(build: &Build) -> String {
    let sheet = words::mm(build.size().thickness_mm);
    let title = format!("All panels, seen from outside, {sheet} mm sheet, design {}", build.fingerprint);
    svg(&all_panels(build), &SvgOptions { title: Some(title), ..SvgOptions::for_file() })
}

/// All panels side by side at true scale, each under its name.
#[must_use]
pub fn all_panels(build: &Build) -> Drawing {
    let places = places(&build.panels);
    let all = places.iter().fold(Rect::ZERO, |all, place| all.union(*place));
    let mut drawing = Drawing::new(all.x1 + MARGIN_MM, all.y1 + MARGIN_MM);
    for (panel, place) in build.panels.iter().zip(&places) {
        draw(&mut drawing, panel, place.origin().to_vec2());
        let at = Point::new(place.x0, place.y1 - NAME_MM);
        let name = format!("{}, {} × {} mm", panel.label, words::mm(panel.size_mm[0]), words::mm(panel.size_mm[1]));
        put(&mut drawing, "names", Text::new(at, NAME_MM, name).into());
    }
    finish(drawing)
}

/// Where each panel goes, with room for its name above it: rows about as long together as they are high.
fn places(panels: &[Panel]) -> Vec<Rect> {
    let room = NAME_MM + 2.0;
    let area: f64 = panels.iter().map(|panel| panel.size_mm[0] * (panel.size_mm[1] + room)).sum();
    let longest = panels.iter().map(|panel| panel.size_mm[0]).fold(0.0, f64::max);
    let row_mm = (f64::sqrt(area) * 1.5).max(longest);
    let (mut x, mut y, mut high) = (MARGIN_MM, MARGIN_MM, 0.0_f64);
    let mut out = Vec::with_capacity(panels.len());
    for panel in panels {
        let [w, h] = panel.size_mm;
        if x > MARGIN_MM && x + w > row_mm + MARGIN_MM {
            (x, y, high) = (MARGIN_MM, y + high + BETWEEN_MM, 0.0);
        }
        out.push(Rect::new(x, y, x + w, y + h + room));
        x += w + BETWEEN_MM;
        high = high.max(h + room);
    }
    // Read from the top: rows were stacked downwards.
    let all = y + high + MARGIN_MM;
    out.into_iter().map(|place| Rect::new(place.x0, all - place.y1, place.x1, all - place.y0)).collect()
}

fn title(panel: &Panel) -> String {
    let [w, h] = panel.size_mm.map(words::mm);
    let thick = words::mm(panel.thickness_mm);
    format!("{}, {w} × {h} × {thick} mm, {}", panel.label, words::seen_from(panel.wall))
}

fn draw(drawing: &mut Drawing, panel: &Panel, by: Vec2) {
    let style = Style::line(Colour::Ink, LINE_MM);
    let shape =
        |contour: &crate::drawing::Contour| Item::from(Shape::new(Form::Contours(vec![contour.translate(by)]), style));
    put(drawing, "outline", shape(&panel.outline));
    // A notch is part of the outline.
    for feature in panel.features.iter().filter(|feature| !feature.notch) {
        let layer = match feature.kind {
            FeatureKind::Opening => "openings",
            FeatureKind::Hole => "holes",
            FeatureKind::Vent => "vents",
            FeatureKind::Groove | FeatureKind::Rebate | FeatureKind::Counterbore => "rebates",
        };
        put(drawing, layer, shape(&feature.contour));
        if feature.kind == FeatureKind::Hole {
            let centre = feature.centre + by;
            let mut path = kurbo::BezPath::new();
            for arm in [Vec2::new(MARK_MM, 0.0), Vec2::new(0.0, MARK_MM)] {
                path.move_to(centre - arm);
                path.line_to(centre + arm);
            }
            put(drawing, "marks", Shape::new(path.into(), style).into());
        }
    }
}

fn put(drawing: &mut Drawing, name: &str, item: Item) {
    match drawing.layers.iter_mut().find(|layer| layer.name == name) {
        Some(layer) => layer.push(item),
        None => {
            let mut layer = Layer::new(name);
            layer.push(item);
            drawing.layers.push(layer);
        }
    }
}

/// Layers in the order of [`FILE_LAYERS`].
fn finish(mut drawing: Drawing) -> Drawing {
    sort_by_key(&mut drawing.layers, |layer| FILE_LAYERS.iter().position(|name| *name == layer.name));
    drawing
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    #[test]
    fn every_cut_of_a_panel_is_in_its_file_once_at_true_size() {
        let build = Build::of(&Design::default());
        for panel in &build.panels {
            let drawing = file_drawing(panel);
            assert_eq!([drawing.width_mm, drawing.height_mm], panel.size_mm.map(|size| size + 2.0 * MARGIN_MM));
            let contours = |name: &str| -> Vec<crate::drawing::Contour> {
                let layer = drawing.layers.iter().find(|layer| layer.name == name);
                let items = layer.map_or(&[][..], |layer| &layer.items);
                let forms = items.iter().filter_map(|item| match item {
                    Item::Shape(Shape { form: Form::Contours(contours), .. }) => Some(contours.clone()),
                    _ => None,
                });
                forms.flatten().collect()
            };
            let cuts = ["openings", "holes", "vents", "rebates"].map(|name| contours(name).len()).iter().sum::<usize>();
            assert_eq!(cuts, panel.features.iter().filter(|feature| !feature.notch).count(), "{}", panel.id());
            let outline = &contours("outline")[0];
            assert!((outline.area() - panel.outline.area()).abs() < 1e-6);
            let bounds = outline.bbox();
            assert!((bounds.width() - panel.size_mm[0]).abs() < 1e-9 && (bounds.x0 - MARGIN_MM).abs() < 1e-9);
        }
    }

    #[test]
    fn panels_side_by_side_do_not_touch() {
        let build = Build::of(&Design::default());
        let places = places(&build.panels);
        for (index, a) in places.iter().enumerate() {
            for b in &places[index + 1..] {
                assert!(
                    !a.inflate(BETWEEN_MM / 2.1, BETWEEN_MM / 2.1)
                        .overlaps(b.inflate(BETWEEN_MM / 2.1, BETWEEN_MM / 2.1))
                );
            }
        }
        let svg = all_panels_svg(&build);
        for name in FILE_LAYERS.iter().filter(|name| !matches!(**name, "vents" | "rebates")) {
            assert!(svg.contains(&format!("id=\"{name}\"")), "{name}");
        }
    }
}
