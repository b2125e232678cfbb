//! Writes a picture as SVG: user units are millimetres, layers are named groups, arcs are arcs.
//!
//! y is turned over here and nowhere else on this way: a point (x, y) is written (x, height - y).

mod style;
#[cfg(test)]
mod tests;

use ::svg::Document;
use ::svg::Node;
use ::svg::node::element::Element;
use ::svg::node::{Blob, Text as Words};
use kurbo::{BezPath, PathEl, Point};

use self::style::{attributes, hex};
use super::contour::Contour;
use super::font::{FAMILY, Weight, text_outlines};
use super::letters::printable;
use super::number::{COORDINATE_DECIMALS, format_number, push_number};
use super::picture::{Anchor, Drawing, Form, Group, Item, Layer, Shape, Style, Text};

/// Whether letters stay letters.
#[derive(Clone, Copy, Debug, Default)]
pub enum Letters {
    /// As `<text>` in the project's family; for the page, which has the font.
    #[default]
    Text,
    /// As outlines; for files, which are opened where the font is not. What draws them comes along here, so that a
    /// program that only writes for the page holds no font.
    Outlines(fn(&Text) -> BezPath),
}

/// How to write.
#[derive(Clone, Debug, Default)]
pub struct SvgOptions {
    /// Whether letters stay letters (default: they do).
    pub letters: Letters,
    /// Put before every id, so that several pictures can share a page (default: nothing).
    pub id_prefix: String,
    /// What the picture shows, for those who do not see it (default: nothing said).
    pub title: Option<String>,
    /// Whether the style sheet of a page says how things look (default: no). Shapes then have classes and neither
    /// colours nor widths: `fill-sheet`, `lit`, `line-hidden`, `thick`, `bare` (no line around it). What has no class is
    /// a thin line of ink, since most of a picture is: a page reads, matches and keeps the less. Own colours and widths
    /// that are neither of the two usual ones stay attributes.
    pub classes: bool,
}

impl SvgOptions {
    /// For a picture on the page: letters as text; classes for its style sheet.
    #[must_use]
    pub fn for_page(id_prefix: impl Into<String>) -> Self {
        Self { letters: Letters::Text, id_prefix: id_prefix.into(), title: None, classes: true }
    }

    /// For a file: letters as outlines, plain colours.
    #[must_use]
    pub fn for_file() -> Self {
        Self { letters: Letters::Outlines(text_outlines), ..Self::default() }
    }
}

/// The picture as an SVG document.
#[must_use]
pub fn svg(drawing: &Drawing, options: &SvgOptions) -> String {
    let writer = Writer { options, height_mm: drawing.height_mm };
    let (width, height) = (number(drawing.width_mm), number(drawing.height_mm));
    let mut document = Document::new()
        .set("width", format!("{width}mm"))
        .set("height", format!("{height}mm"))
        .set("viewBox", format!("0 0 {width} {height}"))
        .set("stroke-linejoin", "round");
    if options.classes {
        document = document.set("class", "picture");
    }
    if matches!(options.letters, Letters::Text) {
        document = document.set("font-family", format!("{FAMILY}, sans-serif"));
    }
    if let Some(title) = &options.title {
        document = document.set("role", "img");
        document.append(title_element(title));
    }
    for layer in &drawing.layers {
        document.append(writer.layer(layer));
    }
    document.to_string()
}

/// Path data of one or more outlines as SVG wants them, y down from `height_mm`.
#[must_use]
pub fn contour_path_data(contours: &[Contour], height_mm: f64) -> String {
    let mut data = String::new();
    push_contours(&mut data, contours, height_mm);
    data
}

fn push_contours(data: &mut String, contours: &[Contour], height_mm: f64) {
    for contour in contours {
        contour.push_path_data(data, |at| Point::new(at.x, height_mm - at.y), true);
    }
}

fn number(value: f64) -> String {
    format_number(value, COORDINATE_DECIMALS)
}

/// Characters that XML cannot hold are left out; the library escapes the rest.
fn xml_safe(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_control() && !matches!(letter, '\u{FFFE}' | '\u{FFFF}')).collect()
}

/// The same for an attribute: the library leaves the quotation mark as it is, which would end the attribute.
fn attribute_safe(text: &str) -> String {
    xml_safe(text).replace('"', "”")
}

/// A name fit for an id or class.
fn identifier(text: &str) -> String {
    text.chars()
        .map(|letter| if letter.is_ascii_alphanumeric() || matches!(letter, '-' | '_' | '.') { letter } else { '-' })
        .collect()
}

fn title_element(title: &str) -> Element {
    let mut element = Element::new("title");
    element.append(Words::new(xml_safe(title)));
    element
}

struct Writer<'a> {
    options: &'a SvgOptions,
    /// Height of the picture, from which y is measured downwards.
    height_mm: f64,
}

impl Writer<'_> {
    fn layer(&self, layer: &Layer) -> Element {
        let mut element = Element::new("g");
        let name = identifier(&layer.name);
        element.assign("id", format!("{}{name}", self.options.id_prefix));
        self.items(&mut element, &layer.items);
        element
    }

    /// Neighbours of one style share a group that states it once: a field of vents is mostly coordinates.
    fn items(&self, parent: &mut Element, items: &[Item]) {
        let mut rest = items;
        while let Some(first) = rest.first() {
            match first {
                Item::Shape(shape) => {
                    let alike = |item: &&Item| matches!(item, Item::Shape(other) if other.style == shape.style);
                    let (run, after) = rest.split_at(rest.iter().take_while(alike).count());
                    rest = after;
                    self.run(parent, &shape.style, run);
                    continue;
                }
                Item::Text(text) => parent.append(self.text(text)),
                Item::Group(group) => parent.append(self.group(group)),
            }
            rest = &rest[1..];
        }
    }

    /// Shapes of one style. They are most of every picture, so they are put together as one piece of text; an element
    /// each, with its own map of attributes, takes ten times as long.
    fn run(&self, parent: &mut Element, style: &Style, shapes: &[Item]) {
        let attributes = attributes(style, self.options.classes);
        let own = if shapes.len() == 1 { attributes.as_slice() } else { &[] };
        let mut text = String::new();
        for item in shapes {
            if let Item::Shape(shape) = item {
                if !text.is_empty() {
                    text.push('\n');
                }
                self.push_shape(&mut text, shape, own);
            }
        }
        if shapes.len() == 1 {
            parent.append(Blob::new(text));
            return;
        }
        let mut shared = Element::new("g");
        for (name, value) in attributes {
            shared.assign(name, value);
        }
        shared.append(Blob::new(text));
        parent.append(shared);
    }

    /// Appends one shape as an element.
    fn push_shape(&self, text: &mut String, shape: &Shape, attributes: &[(&str, String)]) {
        let name = match &shape.form {
            Form::Circle { centre, radius_mm } => {
                for (start, value) in
                    [("<circle cx=\"", centre.x), ("\" cy=\"", self.height_mm - centre.y), ("\" r=\"", *radius_mm)]
                {
                    text.push_str(start);
                    push_number(text, value, COORDINATE_DECIMALS);
                }
                "circle"
            }
            Form::Contours(contours) => {
                text.push_str("<path d=\"");
                push_contours(text, contours, self.height_mm);
                "path"
            }
            Form::Path(path) => {
                text.push_str("<path d=\"");
                self.push_path_data(text, path);
                "path"
            }
        };
        text.push('"');
        let mut say = |name: &str, value: &str| {
            for piece in [" ", name, "=\"", value, "\""] {
                text.push_str(piece);
            }
        };
        if let Some(id) = &shape.id {
            say("id", &format!("{}{}", self.options.id_prefix, identifier(id)));
        }
        for (name, value) in attributes {
            say(name, value);
        }
        match &shape.title {
            None => text.push_str("/>"),
            Some(title) => {
                for piece in [">", &title_element(title).to_string(), "</", name, ">"] {
                    text.push_str(piece);
                }
            }
        }
    }

    fn text(&self, text: &Text) -> Element {
        let mut element = match self.options.letters {
            Letters::Outlines(outlines) => {
                let mut element = Element::new("path");
                let mut data = String::new();
                self.push_path_data(&mut data, &outlines(text));
                element.assign("d", data);
                element.assign("aria-label", attribute_safe(&printable(&text.text).collect::<String>()));
                element
            }
            Letters::Text => {
                let mut element = Element::new("text");
                let (x, y) = (number(text.at.x), number(self.height_mm - text.at.y));
                element.assign("font-size", number(text.size_mm));
                if text.weight != Weight::Regular {
                    element.assign("font-weight", text.weight.css());
                }
                match text.anchor {
                    Anchor::Start => {}
                    Anchor::Middle => element.assign("text-anchor", "middle"),
                    Anchor::End => element.assign("text-anchor", "end"),
                }
                match text.quarter_turns.rem_euclid(4) {
                    0 => {}
                    // Counter-clockwise with y up is a negative angle with y down.
                    turns => element.assign("transform", format!("rotate({} {x} {y})", -90 * turns)),
                }
                element.assign("x", x);
                element.assign("y", y);
                element.append(Words::new(xml_safe(&printable(&text.text).collect::<String>())));
                element
            }
        };
        if !self.options.classes {
            element.assign("fill", hex(text.colour.rgb()));
        }
        element
    }

    fn group(&self, group: &Group) -> Element {
        let mut element = Element::new("g");
        element.assign("data-about", attribute_safe(&group.about));
        self.items(&mut element, &group.items);
        element
    }

    fn push_path_data(&self, data: &mut String, path: &BezPath) {
        let mut say = |letter: char, points: &[Point]| {
            data.push(letter);
            for (index, point) in points.iter().enumerate() {
                if index > 0 {
                    data.push(' ');
                }
                push_number(data, point.x, COORDINATE_DECIMALS);
                data.push(' ');
                push_number(data, self.height_mm - point.y, COORDINATE_DECIMALS);
            }
        };
        for element in path.elements() {
            match *element {
                PathEl::MoveTo(to) => say('M', &[to]),
                PathEl::LineTo(to) => say('L', &[to]),
                PathEl::QuadTo(handle, to) => say('Q', &[handle, to]),
                PathEl::CurveTo(first, second, to) => say('C', &[first, second, to]),
                PathEl::ClosePath => say('Z', &[]),
            }
        }
    }
}
