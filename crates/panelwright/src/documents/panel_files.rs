//! A panel as a file at true scale: its geometry in named layers, arcs as arcs, millimetres, and nothing else.
//!
//! Seen from outside, x to the right, y up in the drawing; the SVG turns y over, so that the file looks like the panel.

use kurbo::Vec2;

use super::warnings::warnings;
use crate::Build;
use crate::design::Wall;
use crate::drawing::number::mm;
use crate::drawing::{Colour, Drawing, Form, Item, Layer, Shape, Style, SvgOptions, svg};
use crate::panels::{FeatureKind, Panel, words};
use crate::sorting::sort_by_key;

/// Names of the layers of a file, the lowest first. A layer without content is left out.
const LAYERS: [&str; 6] = ["outline", "openings", "holes", "vents", "rebates", "marks"];

/// Width of every line, mm: fine enough to see where its middle is, wide enough to be printed.
const LINE_MM: f64 = 0.1;
/// Free paper around a panel, mm, so that no line is cut off.
const MARGIN_MM: f64 = 5.0;
/// Half a centre mark, mm.
const MARK_MM: f64 = 1.5;

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
fn file_drawing(panel: &Panel) -> Drawing {
    let [w, h] = panel.size_mm;
    let mut drawing = Drawing::new(w + 2.0 * MARGIN_MM, h + 2.0 * MARGIN_MM);
    draw(&mut drawing, panel, Vec2::new(MARGIN_MM, MARGIN_MM));
    finish(drawing)
}

fn title(panel: &Panel) -> String {
    let [w, h] = panel.size_mm.map(mm);
    let thick = mm(panel.thickness_mm);
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

/// Layers in the order of [`LAYERS`].
fn finish(mut drawing: Drawing) -> Drawing {
    sort_by_key(&mut drawing.layers, |layer| LAYERS.iter().position(|name| *name == layer.name));
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
}
