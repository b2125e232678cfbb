//! The picture itself: layers of shapes and texts, in millimetres.
//!
//! ```text
//!   height  +----------------+      origin lower left, x right, y UP, as on paper.
//!           |                |      Writers turn y over where their format wants it, each in one place.
//!           |                |      Later items lie over earlier ones.
//!      y ^  |                |
//!        0  +----------------+ width
//!           0  > x
//! ```
//!
//! Invariant: a picture is a value. Placing it somewhere else makes another ([`Group`]), and no writer changes it.

use kurbo::{BezPath, Point};

use super::colour::{Colour, Shade};
use super::contour::Contour;
use super::font::Weight;

/// A picture of stated size.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// Width of the paper, mm.
    pub width_mm: f64,
    /// Height of the paper, mm.
    pub height_mm: f64,
    /// Layers, the lowest first.
    pub layers: Vec<Layer>,
}

/// Items that belong together, under a name.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layer {
    /// Name of the layer: a group in files.
    pub name: String,
    /// What is drawn, the lowest first.
    pub items: Vec<Item>,
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A line or surface.
    Shape(Shape),
    /// A line of text.
    Text(Text),
    /// Items placed, turned, scaled or cut off together.
    Group(Group),
}

/// A line or surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Its form.
    pub form: Form,
    /// How it is drawn.
    pub style: Style,
    /// Name by which a picture on a page finds it.
    pub id: Option<String>,
    /// What it says when pointed at.
    pub title: Option<String>,
}

/// A form, in mm. What lies inside an even number of outlines is not filled.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// Lines and cubic curves, open or closed.
    Path(BezPath),
    /// Closed outlines whose arcs stay arcs: a panel and its openings, say.
    Contours(Vec<Contour>),
    /// A true circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius_mm: f64,
    },
}

/// How a shape is drawn. Neither line nor fill: it is not seen, but can be pointed at.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Style {
    /// Its line, centred on the form's edge.
    pub stroke: Option<Stroke>,
    /// Its surface.
    pub fill: Option<Colour>,
    /// How its surface is lit.
    pub shade: Shade,
    /// How much of what lies below the surface hides, 0..1; `None` is all of it.
    pub fill_opacity: Option<f64>,
}

/// A line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Width, mm.
    pub width_mm: f64,
    /// Colour.
    pub colour: Colour,
    /// Dashes.
    pub dash: Dash,
}

/// Dashes of a line, in multiples of its width.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Dash {
    /// Unbroken.
    #[default]
    Solid,
    /// Dashed: what is hidden.
    Hidden,
    /// Long dash, dot: centre lines.
    ChainThin,
}

/// A line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Where its baseline starts, is halved, or ends, by `anchor`.
    pub at: Point,
    /// Size of the font (its em), mm: capitals stand [`super::font::cap_height_mm`] high.
    pub size_mm: f64,
    /// Which of its points lies at `at`.
    pub anchor: Anchor,
    /// The words. One line; a line break counts as a space.
    pub text: String,
    /// Weight.
    pub weight: Weight,
    /// Colour.
    pub colour: Colour,
    /// Quarter turns counter-clockwise about `at`.
    pub quarter_turns: i32,
}

/// Which point of a text lies at its place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// The start.
    #[default]
    Start,
    /// The middle.
    Middle,
    /// The end.
    End,
}

/// Items that show one thing, left where they are.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// What it shows: a part or a panel, say. Several groups may show the same.
    pub about: String,
    /// The items.
    pub items: Vec<Item>,
}

/// Width of a visible outline, mm (ISO 128-2 line group 0.5, from memory).
pub const VISIBLE_LINE_MM: f64 = 0.5;

/// Width of thin lines, mm: half a visible outline's (ISO 128-2: wide to narrow 2 : 1, from memory).
pub const THIN_LINE_MM: f64 = 0.25;

impl Dash {
    /// Lengths of dash, gap, dash, … in line widths; empty when unbroken. ISO 128-2: dash 12, long dash 24, gap 3,
    /// dot 0.5 (from memory).
    #[must_use]
    pub const fn pattern(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Hidden => &[12.0, 3.0],
            Self::ChainThin => &[24.0, 3.0, 0.5, 3.0],
        }
    }
}

impl Style {
    /// An unbroken line.
    #[must_use]
    pub const fn line(colour: Colour, width_mm: f64) -> Self {
        Self {
            stroke: Some(Stroke { width_mm, colour, dash: Dash::Solid }),
            fill: None,
            shade: Shade::Plain,
            fill_opacity: None,
        }
    }

    /// A surface without a line.
    #[must_use]
    pub const fn filled(colour: Colour) -> Self {
        Self { stroke: None, fill: Some(colour), shade: Shade::Plain, fill_opacity: None }
    }

    /// The same with this surface.
    #[must_use]
    pub const fn with_fill(mut self, colour: Colour) -> Self {
        self.fill = Some(colour);
        self
    }

    /// The same with this line around.
    #[must_use]
    pub const fn with_line(mut self, colour: Colour, width_mm: f64) -> Self {
        self.stroke = Some(Stroke { width_mm, colour, dash: Dash::Solid });
        self
    }

    /// The same with its line dashed so.
    #[must_use]
    pub const fn with_dash(mut self, dash: Dash) -> Self {
        if let Some(stroke) = &mut self.stroke {
            stroke.dash = dash;
        }
        self
    }

    /// The same, lit so.
    #[must_use]
    pub const fn with_shade(mut self, shade: Shade) -> Self {
        self.shade = shade;
        self
    }

    /// The same with a surface that hides only this much (0..1).
    #[must_use]
    pub const fn with_opacity(mut self, opacity: f64) -> Self {
        self.fill_opacity = Some(opacity);
        self
    }
}

impl Shape {
    /// A shape without name or title.
    #[must_use]
    pub const fn new(form: Form, style: Style) -> Self {
        Self { form, style, id: None, title: None }
    }

    /// The same with a name.
    #[must_use]
    pub fn with_id(mut self, id: impl Into<String>) -> Self {
        self.id = Some(id.into());
        self
    }

    /// The same with a title.
    #[must_use]
    pub fn with_title(mut self, title: impl Into<String>) -> Self {
        self.title = Some(title.into());
        self
    }
}

impl From<BezPath> for Form {
    fn from(path: BezPath) -> Self {
        Self::Path(path)
    }
}

impl From<Contour> for Form {
    fn from(contour: Contour) -> Self {
        match contour.as_circle() {
            Some((centre, radius_mm)) => Self::Circle { centre, radius_mm },
            None => Self::Contours(vec![contour]),
        }
    }
}

impl From<Vec<Contour>> for Form {
    fn from(contours: Vec<Contour>) -> Self {
        Self::Contours(contours)
    }
}

impl From<Shape> for Item {
    fn from(shape: Shape) -> Self {
        Self::Shape(shape)
    }
}

impl From<Text> for Item {
    fn from(text: Text) -> Self {
        Self::Text(text)
    }
}

impl From<Group> for Item {
    fn from(group: Group) -> Self {
        Self::Group(group)
    }
}

impl Text {
    /// A text in regular ink from `at` onwards.
    #[must_use]
    pub fn new(at: Point, size_mm: f64, text: impl Into<String>) -> Self {
        Self {
            at,
            size_mm,
            anchor: Anchor::Start,
            text: text.into(),
            weight: Weight::Regular,
            colour: Colour::Ink,
            quarter_turns: 0,
        }
    }

    /// The same, anchored so.
    #[must_use]
    pub fn anchored(mut self, anchor: Anchor) -> Self {
        self.anchor = anchor;
        self
    }

    /// The same in this weight.
    #[must_use]
    pub fn weighing(mut self, weight: Weight) -> Self {
        self.weight = weight;
        self
    }

    /// The same in this colour.
    #[must_use]
    pub fn coloured(mut self, colour: Colour) -> Self {
        self.colour = colour;
        self
    }

    /// The same turned by quarter turns counter-clockwise.
    #[must_use]
    pub fn turned(mut self, quarter_turns: i32) -> Self {
        self.quarter_turns = quarter_turns;
        self
    }
}

impl Group {
    /// Items that show one thing.
    #[must_use]
    pub fn about(what: impl Into<String>, items: Vec<Item>) -> Self {
        Self { about: what.into(), items }
    }
}

impl Layer {
    /// An empty layer.
    #[must_use]
    pub fn new(name: impl Into<String>) -> Self {
        Self { name: name.into(), items: Vec::new() }
    }

    /// Adds an item on top.
    pub fn push(&mut self, item: impl Into<Item>) {
        self.items.push(item.into());
    }

    /// Adds a shape on top.
    pub fn draw(&mut self, form: impl Into<Form>, style: Style) {
        self.push(Shape::new(form.into(), style));
    }

    /// Adds a straight line on top.
    pub fn line(&mut self, from: Point, to: Point, style: Style) {
        let mut path = BezPath::new();
        path.move_to(from);
        path.line_to(to);
        self.draw(path, style);
    }

    /// Adds a circle on top.
    pub fn circle(&mut self, centre: Point, radius_mm: f64, style: Style) {
        self.draw(Form::Circle { centre, radius_mm }, style);
    }
}

impl Drawing {
    /// An empty picture of this size, mm.
    #[must_use]
    pub const fn new(width_mm: f64, height_mm: f64) -> Self {
        Self { width_mm, height_mm, layers: Vec::new() }
    }
}
