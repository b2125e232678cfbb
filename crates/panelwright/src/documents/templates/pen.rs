//! Draws with the few kinds of line a template has; layers in the order in which they are first used.

use kurbo::{BezPath, Point};

use crate::drawing::{Anchor, Colour, Contour, Dash, Drawing, Layer, Style, Text, Weight};

/// Kinds of line on a template. Cut lines are thin: the saw follows their middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Not drawn.
    None,
    /// To be cut or drilled.
    Cut,
    /// Help lines and crosses.
    Thin,
    /// Cut from the other face, or drilled as a help.
    Hidden,
    /// Centre lines.
    Centre,
    /// The check bars.
    Bar,
    /// A filled field of a little map.
    Filled,
}

/// Widths, mm (line width of 0.1 to 0.2 on templates: common practice).
const CUT_MM: f64 = 0.2;
const FINE_MM: f64 = 0.1;

impl Line {
    fn style(self) -> Style {
        match self {
            Self::None => Style::default(),
            Self::Cut | Self::Bar => Style::line(Colour::Ink, CUT_MM),
            Self::Thin => Style::line(Colour::Thin, FINE_MM),
            Self::Hidden => Style::line(Colour::Hidden, FINE_MM).with_dash(Dash::Hidden),
            Self::Centre => Style::line(Colour::Thin, FINE_MM).with_dash(Dash::ChainThin),
            Self::Filled => Style::filled(Colour::SheetEdge).with_line(Colour::Ink, FINE_MM),
        }
    }
}

/// A drawing being made.
#[derive(Debug)]
pub struct Pen {
    drawing: Drawing,
}

impl Pen {
    /// On an empty page of this size, mm.
    #[must_use]
    pub fn new(width_mm: f64, height_mm: f64) -> Self {
        Self { drawing: Drawing::new(width_mm, height_mm) }
    }

    fn layer(&mut self, name: &str) -> &mut Layer {
        let index = match self.drawing.layers.iter().position(|layer| layer.name == name) {
            Some(index) => index,
            None => {
                self.drawing.layers.push(Layer::new(name));
                self.drawing.layers.len() - 1
            }
        };
        &mut self.drawing.layers[index]
    }

    /// A closed contour.
    pub fn contour(&mut self, layer: &str, contour: &Contour, line: Line) {
        self.layer(layer).draw(contour.clone(), line.style());
    }

    /// A straight line.
    pub fn line(&mut self, layer: &str, from: Point, to: Point, line: Line) {
        self.layer(layer).line(from, to, line.style());
    }

    /// A path of straight and curved pieces.
    pub fn path(&mut self, layer: &str, path: BezPath, line: Line) {
        self.layer(layer).draw(path, line.style());
    }

    /// A circle.
    pub fn circle(&mut self, layer: &str, centre: Point, radius_mm: f64, line: Line) {
        self.layer(layer).circle(centre, radius_mm, line.style());
    }

    /// A line of writing.
    pub fn text(&mut self, layer: &str, at: Point, size_mm: f64, anchor: Anchor, weight: Weight, words: &str) {
        self.layer(layer).push(Text::new(at, size_mm, words).anchored(anchor).weighing(weight));
    }

    /// A line of writing that runs upward.
    pub fn upright_text(&mut self, layer: &str, at: Point, size_mm: f64, words: &str) {
        self.layer(layer).push(Text::new(at, size_mm, words).turned(1));
    }

    /// The drawing.
    #[must_use]
    pub fn finish(self) -> Drawing {
        self.drawing
    }
}
