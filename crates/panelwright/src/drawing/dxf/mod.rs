//! Writes contours and lines as DXF: the version of the year 2000 (AC1015), which knows units and polylines with
//! bulges.
//!
//! ```text
//! HEADER    units (millimetres), extents, the next free handle
//! TABLES    layers of our own; the rest as the format wants it      (fixed text, see `frame`)
//! BLOCKS    the two empty spaces every file has                     (fixed text)
//! ENTITIES  CIRCLE, LWPOLYLINE with bulges, LINE, in the order given
//! OBJECTS   the dictionaries every file has                         (fixed text)
//! ```
//!
//! # Guarantees
//! y stays up; nothing is flattened. Numbers have a point, at most four decimals (bulges nine) and no exponent; lines
//! end in CR LF; the same input gives the same bytes.

mod frame;
mod frame_after;
#[cfg(test)]
mod tests;

use kurbo::{Point, Rect};

use super::contour::{Contour, Segment};
use super::number::{COORDINATE_DECIMALS, MOST_DECIMALS, push_number};

/// A layer of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DxfLayer {
    /// Its name. Letters, figures, `-`, `_` and `.`; anything else is written `_`, because older programs refuse it.
    pub name: String,
    /// Colour by the format's index: 7 is black or white, whichever shows.
    pub colour: u8,
    /// Whether it prints.
    pub printed: bool,
}

/// One thing drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DxfItem<'a> {
    /// Its layer, by place in [`Dxf::layers`].
    pub layer: usize,
    /// Its form.
    pub form: DxfForm<'a>,
}

/// A form, mm, y up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DxfForm<'a> {
    /// A closed contour: a circle when it is one, else a closed polyline with bulges.
    Contour(&'a Contour),
    /// An open line through these points; fewer than two are left out.
    Line(&'a [Point]),
}

/// What a file holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Dxf<'a> {
    /// Remarks at the top of the file; one line each, other letters than those of ASCII become `?`.
    pub remarks: Vec<String>,
    /// The layers, beside layer 0.
    pub layers: Vec<DxfLayer>,
    /// What is drawn, in order.
    pub items: Vec<DxfItem<'a>>,
}

/// First handle of a layer of our own, and of an entity; the fixed parts stay below.
const LAYER_HANDLES: usize = 0x40;

/// The file's text.
#[must_use]
pub fn dxf(file: &Dxf<'_>) -> String {
    // A polyline's corner takes about 30 letters, the frame of an entity 120, the fixed text 6000.
    let corners: usize = file.items.iter().map(|item| item.form.corners()).sum();
    let mut writer = Writer { text: String::with_capacity(8_000 + 120 * file.items.len() + 32 * corners) };
    let first = LAYER_HANDLES + file.layers.len();
    for remark in &file.remarks {
        writer.pair(999, &plain(remark));
    }
    writer.header(extents(&file.items), first + file.items.len());
    writer.fixed(frame::BEFORE_LAYERS);
    for (place, layer) in file.layers.iter().enumerate() {
        writer.layer(layer, LAYER_HANDLES + place);
    }
    writer.fixed(frame_after::AFTER_LAYERS);
    for (place, item) in file.items.iter().enumerate() {
        let name = file.layers.get(item.layer).map_or_else(|| "0".to_owned(), |layer| layer_name(&layer.name));
        writer.item(&item.form, &name, first + place);
    }
    writer.fixed(frame_after::OBJECTS);
    for layout in &frame_after::LAYOUTS {
        writer.layout(layout);
    }
    writer.fixed(frame_after::END);
    writer.text
}

impl DxfForm<'_> {
    fn corners(&self) -> usize {
        match self {
            Self::Contour(contour) => contour.vertices().len(),
            Self::Line(points) => points.len(),
        }
    }
}

/// The smallest rectangle around everything; a point at the origin for nothing.
fn extents(items: &[DxfItem<'_>]) -> Rect {
    let boxes = items.iter().filter_map(|item| match item.form {
        DxfForm::Contour(contour) => Some(contour.bbox()),
        DxfForm::Line(points) => {
            let first = Rect::from_points(*points.first()?, *points.first()?);
            Some(points.iter().fold(first, |bounds, point| bounds.union_pt(*point)))
        }
    });
    boxes.reduce(|bounds, next| bounds.union(next)).unwrap_or(Rect::ZERO)
}

/// Letters of ASCII that show.
fn plain(text: &str) -> String {
    text.chars().map(|letter| if letter == ' ' || letter.is_ascii_graphic() { letter } else { '?' }).collect()
}

fn layer_name(name: &str) -> String {
    let allowed = |letter: char| letter.is_ascii_alphanumeric() || "-_.".contains(letter);
    name.chars().map(|letter| if allowed(letter) { letter } else { '_' }).collect()
}

struct Writer {
    text: String,
}

impl Writer {
    fn code(&mut self, code: u16) {
        push_number(&mut self.text, f64::from(code), 0);
        self.text.push_str("\r\n");
    }

    fn pair(&mut self, code: u16, value: &str) {
        self.code(code);
        self.text.push_str(value);
        self.text.push_str("\r\n");
    }

    fn real(&mut self, code: u16, value: f64, decimals: u8) {
        self.code(code);
        let start = self.text.len();
        push_number(&mut self.text, value, decimals);
        if !self.text[start..].contains('.') {
            self.text.push_str(".0");
        }
        self.text.push_str("\r\n");
    }

    fn handle(&mut self, code: u16, handle: usize) {
        const DIGITS: &[u8; 16] = b"0123456789ABCDEF";
        self.code(code);
        let digits = (usize::BITS - handle.leading_zeros()).div_ceil(4).max(1);
        for place in (0..digits).rev() {
            self.text.push(char::from(DIGITS[(handle >> (4 * place)) & 15]));
        }
        self.text.push_str("\r\n");
    }

    /// A point under three codes; the third is its height, 0.
    fn point(&mut self, code: u16, at: Point) {
        self.real(code, at.x, COORDINATE_DECIMALS);
        self.real(code + 10, at.y, COORDINATE_DECIMALS);
        self.pair(code + 20, "0.0");
    }

    /// Fixed text: a code, a space and its value on each line.
    fn fixed(&mut self, lines: &str) {
        for line in lines.lines() {
            let (code, value) = line.split_once(' ').unwrap_or((line, ""));
            for piece in [code, "\r\n", value, "\r\n"] {
                self.text.push_str(piece);
            }
        }
    }

    fn header(&mut self, bounds: Rect, next_handle: usize) {
        self.fixed(frame::HEADER);
        self.pair(9, "$EXTMIN");
        self.point(10, Point::new(bounds.x0, bounds.y0));
        self.pair(9, "$EXTMAX");
        self.point(10, Point::new(bounds.x1, bounds.y1));
        self.pair(9, "$HANDSEED");
        self.handle(5, next_handle);
        self.pair(0, "ENDSEC");
    }

    fn layout(&mut self, layout: &frame_after::Layout) {
        self.pair(0, "LAYOUT");
        self.pair(5, layout.handle);
        self.fixed(frame_after::LAYOUT_PAPER);
        self.pair(70, layout.flags);
        self.fixed(frame_after::LAYOUT_PLOT);
        self.pair(1, layout.name);
        self.fixed(frame_after::LAYOUT_FLAGS);
        self.pair(71, layout.tab);
        self.fixed(frame_after::LAYOUT_SPACE);
        self.pair(330, layout.block);
    }

    fn layer(&mut self, layer: &DxfLayer, handle: usize) {
        self.pair(0, "LAYER");
        self.handle(5, handle);
        self.fixed("330 2\n100 AcDbSymbolTableRecord\n100 AcDbLayerTableRecord");
        self.pair(2, &layer_name(&layer.name));
        self.pair(70, "0");
        self.whole(62, layer.colour);
        self.pair(6, "Continuous");
        if !layer.printed {
            self.pair(290, "0");
        }
        self.fixed("370 -3\n390 F");
    }

    fn whole(&mut self, code: u16, value: u8) {
        self.code(code);
        self.code(u16::from(value));
    }

    fn item(&mut self, form: &DxfForm<'_>, layer: &str, handle: usize) {
        let start = |writer: &mut Self, kind: &str, class: &str| {
            writer.pair(0, kind);
            writer.handle(5, handle);
            writer.fixed("330 1F\n100 AcDbEntity");
            writer.pair(8, layer);
            writer.pair(100, class);
        };
        match form {
            DxfForm::Contour(contour) => {
                if let Some((centre, radius_mm)) = contour.as_circle() {
                    start(self, "CIRCLE", "AcDbCircle");
                    self.point(10, centre);
                    self.real(40, radius_mm, COORDINATE_DECIMALS);
                    return;
                }
                let corners: Vec<(Point, f64)> = contour
                    .segments()
                    .map(|segment| match segment {
                        Segment::Line { from, .. } => (from, 0.0),
                        Segment::Arc(arc) => (arc.from, arc.bulge()),
                    })
                    .collect();
                if !corners.is_empty() {
                    start(self, "LWPOLYLINE", "AcDbPolyline");
                    self.corners(&corners, true);
                }
            }
            DxfForm::Line([from, to]) => {
                start(self, "LINE", "AcDbLine");
                self.point(10, *from);
                self.point(11, *to);
            }
            DxfForm::Line(points) if points.len() > 2 => {
                start(self, "LWPOLYLINE", "AcDbPolyline");
                let corners: Vec<(Point, f64)> = points.iter().map(|point| (*point, 0.0)).collect();
                self.corners(&corners, false);
            }
            DxfForm::Line(_) => {}
        }
    }

    fn corners(&mut self, corners: &[(Point, f64)], closed: bool) {
        self.code(90);
        push_number(&mut self.text, corners.len() as f64, 0);
        self.text.push_str("\r\n");
        self.pair(70, if closed { "1" } else { "0" });
        for (at, bulge) in corners {
            self.real(10, at.x, COORDINATE_DECIMALS);
            self.real(20, at.y, COORDINATE_DECIMALS);
            if *bulge != 0.0 {
                self.real(42, *bulge, MOST_DECIMALS);
            }
        }
    }
}
