//! A flat panel for the page: seen from outside, with its size, what its edges meet, and every hole with its reason.
//!
//! Lines follow ISO 128-2: visible edges thick, hidden ones dashed, centre lines chain thin; dimensions as in ISO
//! 129-1: thin, arrows at both ends, the figure above the line and read from below or from the right.

use kurbo::{BezPath, Point, Rect, Vec2};

use crate::drawing::number::mm;
use crate::drawing::{
    Anchor, Colour, Contour, Dash, Drawing, Form, Layer, Shade, Shape, Style, THIN_LINE_MM, Text, VISIBLE_LINE_MM,
    Weight, cap_height_mm, text_width_mm,
};
use crate::panels::words::edge_words;
use crate::panels::{Edge, Face, Feature, FeatureKind, Panel};
use crate::sorting::sort_by;

/// Letters for a panel of this longest side, mm: one thirty-sixth of it, so that panels of all sizes read alike when
/// the page shows them equally large, and on a small screen, too, where the page makes letters larger than they are here.
fn letters(longest_mm: f64) -> f64 {
    (longest_mm / 36.0).clamp(3.5, 12.0)
}

/// The picture of a panel. Each feature is a shape with the id `PANEL/FEATURE` and a title that says why it is there.
#[must_use]
pub fn page_picture(panel: &Panel) -> Drawing {
    let [w, h] = panel.size_mm;
    let letter = letters(w.max(h));
    // Left and below: words of the edge, then the dimension; right and above: words only.
    let (wide, narrow) = (letter * 5.2, letter * 2.4);
    let mut sheet = Sheet::new(panel, Vec2::new(wide, wide));
    sheet.keys();
    for edge in [Edge::Upper, Edge::Lower, Edge::Left, Edge::Right] {
        sheet.edge_words(edge);
    }
    sheet.dimensions();
    let mut drawing = Drawing::new(wide + w + narrow, wide + h + narrow);
    drawing.layers = vec![sheet.face, sheet.features, sheet.marks, sheet.words];
    drawing
}

/// The same without dimensions and words, for a panel among others: this much larger than the panel on every side, mm, so
/// that its outline keeps its weight.
#[must_use]
pub fn small_picture(panel: &Panel, air_mm: f64) -> Drawing {
    let [w, h] = panel.size_mm;
    let sheet = Sheet::new(panel, Vec2::splat(air_mm));
    let mut drawing = Drawing::new(w + 2.0 * air_mm, h + 2.0 * air_mm);
    drawing.layers = vec![sheet.face, sheet.features];
    drawing
}

/// Large things first, so that a hole inside a recess can be pointed at.
fn drawing_order(panel: &Panel) -> Vec<&Feature> {
    let mut features: Vec<(f64, &Feature)> = panel
        .features
        .iter()
        .map(|feature| {
            let bounds = feature.contour.bbox();
            (bounds.width() * bounds.height(), feature)
        })
        .collect();
    sort_by(&mut features, |a, b| b.0.total_cmp(&a.0));
    features.into_iter().map(|(_, feature)| feature).collect()
}

struct Sheet<'a> {
    panel: &'a Panel,
    /// From the panel's frame to the drawing's.
    by: Vec2,
    /// Size of the letters, mm.
    letter: f64,
    face: Layer,
    features: Layer,
    marks: Layer,
    words: Layer,
    /// Where something stands that a letter should not cover.
    taken: Vec<Rect>,
}

const INK: Style = Style::line(Colour::Ink, VISIBLE_LINE_MM);
const THIN: Style = Style::line(Colour::Thin, THIN_LINE_MM);

impl<'a> Sheet<'a> {
    /// The panel with its features, its lower left corner there.
    fn new(panel: &'a Panel, by: Vec2) -> Self {
        let [w, h] = panel.size_mm;
        let mut sheet = Self {
            panel,
            by,
            letter: letters(w.max(h)),
            face: Layer::new("face"),
            features: Layer::new("features"),
            marks: Layer::new("marks"),
            words: Layer::new("words"),
            taken: Vec::new(),
        };
        sheet.face();
        for feature in drawing_order(panel) {
            sheet.feature(feature);
        }
        sheet
    }

    fn face(&mut self) {
        let outline = Form::Contours(vec![self.panel.outline.translate(self.by)]);
        let style = INK.with_fill(Colour::Sheet).with_shade(Shade::Lit);
        self.face.push(Shape::new(outline, style).with_id(self.panel.id()).with_title(self.panel.label));
    }

    fn feature(&mut self, feature: &Feature) {
        let contour = feature.contour.translate(self.by);
        let style = match feature.blind {
            // Drawn as part of the outline; here only to be pointed at.
            _ if feature.notch => Style::default(),
            None => INK.with_fill(Colour::Paper),
            Some((_, Face::Outside)) => THIN.with_fill(Colour::Sheet),
            Some((_, Face::Inside)) => Style::line(Colour::Hidden, THIN_LINE_MM)
                .with_dash(Dash::Hidden)
                .with_fill(Colour::Sheet)
                .with_opacity(0.0),
        };
        let bounds = contour.bbox();
        self.features.push(
            Shape::new(Form::Contours(vec![contour]), style)
                .with_id(format!("{}/{}", self.panel.id(), feature.id))
                .with_title(title(feature)),
        );
        if feature.notch {
            return;
        }
        self.taken.push(bounds);
        if feature.kind == FeatureKind::Hole || feature.diameter_mm.is_some() && feature.kind != FeatureKind::Vent {
            self.centre_mark(feature.centre + self.by, bounds);
        }
    }

    /// A cross of chain lines that reaches a little past the edge.
    fn centre_mark(&mut self, centre: Point, bounds: Rect) {
        let past = self.letter * 0.4;
        let (x, y) = (bounds.width() / 2.0 + past, bounds.height() / 2.0 + past);
        // The chain only shows on long lines; short ones are plain, as the standard has it.
        let style = if x.max(y) > 20.0 { THIN.with_dash(Dash::ChainThin) } else { THIN };
        let mut path = BezPath::new();
        for arm in [Vec2::new(x, 0.0), Vec2::new(0.0, y)] {
            path.move_to(centre - arm);
            path.line_to(centre + arm);
        }
        self.marks.draw(path, style);
    }

    /// The letters of the hole key, each beside its hole where nothing stands.
    fn keys(&mut self) {
        let size = self.letter;
        let [w, h] = self.panel.size_mm;
        let inside = Rect::new(0.0, 0.0, w, h) + self.by;
        for feature in &self.panel.features {
            let Some(key) = &feature.key else { continue };
            let bounds = feature.contour.bbox() + self.by;
            let (width, height) = (text_width_mm(key, size, Weight::SemiBold), cap_height_mm(size));
            let air = size * 0.25;
            let spots = [
                (bounds.x1 + air, bounds.y1 + air * 0.4),
                (bounds.x0 - air - width, bounds.y1 + air * 0.4),
                (bounds.x1 + air, bounds.y0 - air * 0.4 - height),
                (bounds.x0 - air - width, bounds.y0 - air * 0.4 - height),
                (bounds.x1 + 2.0 * air, bounds.center().y - height / 2.0),
                (bounds.x0 - 2.0 * air - width, bounds.center().y - height / 2.0),
            ];
            let covered = |(x, y): (f64, f64)| Rect::new(x, y, x + width, y + height);
            let free = |rect: Rect| inside.contains_rect(rect) && !self.taken.iter().any(|taken| taken.overlaps(rect));
            let spot = spots.into_iter().find(|spot| free(covered(*spot))).unwrap_or(spots[0]);
            self.taken.push(covered(spot));
            let text = Text::new(Point::new(spot.0, spot.1), size, key.as_str()).weighing(Weight::SemiBold);
            self.words.push(text);
        }
    }

    /// What an edge meets, written along it outside the panel.
    fn edge_words(&mut self, edge: Edge) {
        let words = edge_words(self.panel, edge);
        if words.is_empty() {
            return;
        }
        let [w, h] = self.panel.size_mm;
        let (size, air) = (self.letter * 0.85, self.letter * 0.6);
        let drop = cap_height_mm(size) + air;
        let (at, turns) = match edge {
            Edge::Upper => (Point::new(w / 2.0, h + air), 0),
            Edge::Lower => (Point::new(w / 2.0, -drop), 0),
            // Read from the right, as in ISO 129-1.
            Edge::Left => (Point::new(-air, h / 2.0), 1),
            Edge::Right => (Point::new(w + drop, h / 2.0), 1),
        };
        self.words
            .push(Text::new(at + self.by, size, words).anchored(Anchor::Middle).coloured(Colour::Thin).turned(turns));
    }

    /// Width below and height on the left.
    fn dimensions(&mut self) {
        let [w, h] = self.panel.size_mm;
        let away = self.letter * 3.1;
        self.dimension(Point::new(0.0, 0.0), Point::new(w, 0.0), Vec2::new(0.0, -away), 0, w);
        self.dimension(Point::new(0.0, 0.0), Point::new(0.0, h), Vec2::new(-away, 0.0), 1, h);
    }

    fn dimension(&mut self, from: Point, to: Point, away: Vec2, turns: i32, value: f64) {
        let unit = away / (away.x.abs() + away.y.abs());
        let (gap, past) = (self.letter * 0.25, self.letter * 0.4);
        let (a, b) = (from + away + self.by, to + away + self.by);
        let mut path = BezPath::new();
        for (corner, end) in [(from, a), (to, b)] {
            path.move_to(corner + self.by + unit * gap);
            path.line_to(end + unit * past);
        }
        path.move_to(a);
        path.line_to(b);
        self.marks.draw(path, THIN);
        // Arrows: closed and filled, 30 degrees wide at most.
        let along = (b - a) / ((b - a).x.abs() + (b - a).y.abs());
        let (long, half) = (self.letter * 0.7, self.letter * 0.12);
        for (tip, inward) in [(a, along), (b, -along)] {
            let (back, side) = (tip + inward * long, Vec2::new(-inward.y, inward.x) * half);
            let arrow = Contour::polygon([tip, back + side, back - side]);
            self.marks.draw(Form::Contours(vec![arrow]), Style::filled(Colour::Thin));
        }
        let above = self.letter * 0.35;
        let lift = if turns == 0 { Vec2::new(0.0, above) } else { Vec2::new(-above, 0.0) };
        let text = Text::new(a.midpoint(b) + lift, self.letter, mm(value));
        self.words.push(text.anchored(Anchor::Middle).turned(turns));
    }
}

/// What a feature says when pointed at: reason, size, source.
fn title(feature: &Feature) -> String {
    let bounds = feature.contour.bbox();
    let size = match feature.diameter_mm {
        Some(diameter) => format!("⌀{} mm", mm(diameter)),
        None => format!("{} × {} mm", mm(bounds.width()), mm(bounds.height())),
    };
    let key = feature.key.as_ref().map_or_else(String::new, |key| format!("{key}: "));
    let depth = match feature.blind {
        None => String::new(),
        Some((depth, Face::Outside)) => format!(", {} mm deep from outside", mm(depth)),
        Some((depth, Face::Inside)) => format!(", {} mm deep from inside", mm(depth)),
    };
    format!("{key}{}. {size}{depth}. {}", feature.why.trim_end_matches('.'), feature.source.cite())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::design::Design;
    use crate::drawing::Item;

    fn shapes(layer: &Layer) -> impl Iterator<Item = &Shape> {
        layer.items.iter().filter_map(|item| match item {
            Item::Shape(shape) => Some(shape),
            _ => None,
        })
    }

    #[test]
    fn every_feature_can_be_pointed_at_and_says_why_and_from_where() {
        let build = Build::of(&Design::default());
        for panel in &build.panels {
            let drawing = page_picture(panel);
            for feature in &panel.features {
                let id = format!("{}/{}", panel.id(), feature.id);
                let found: Vec<&Shape> = drawing
                    .layers
                    .iter()
                    .flat_map(shapes)
                    .filter(|shape| shape.id.as_deref() == Some(id.as_str()))
                    .collect();
                assert_eq!(found.len(), 1, "{id}");
                let title = found[0].title.as_deref().unwrap_or("");
                assert!(title.contains(feature.source.document), "{title}");
            }
        }
    }

    #[test]
    fn everything_lies_on_the_paper_and_the_size_is_stated() {
        let build = Build::of(&Design::default());
        for panel in &build.panels {
            let drawing = page_picture(panel);
            let texts: Vec<&Text> = drawing
                .layers
                .iter()
                .flat_map(|layer| &layer.items)
                .filter_map(|item| if let Item::Text(text) = item { Some(text) } else { None })
                .collect();
            for size in panel.size_mm {
                assert!(texts.iter().any(|text| text.text == mm(size)), "{size}");
            }
            for text in texts {
                let inside = Rect::new(0.0, 0.0, drawing.width_mm, drawing.height_mm);
                assert!(inside.contains(text.at), "{text:?}");
                let up = text.at + Vec2::new(0.0, if text.quarter_turns == 0 { text.size_mm * 0.75 } else { 0.0 });
                assert!(inside.contains(up), "{text:?}");
            }
        }
    }
}
