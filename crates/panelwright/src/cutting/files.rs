//! Cutting files: a panel, or a sheet with many panels on it, as DXF and as SVG.
//!
//! Every file says what warns of its design, whether its contours are compensated, and the fingerprint of the design it
//! belongs to: DXF in remarks at its top and in letters of single strokes under the part (layer `notes`), SVG in its
//! title.

use kurbo::{BezPath, Point, Vec2};

use super::panel::{CutLayer, CutPanel, LayerUse, TABS};
use super::strokes::strokes;
use crate::drawing::number::format_number;
use crate::drawing::{
    Colour, Contour, Drawing, Dxf, DxfForm, DxfItem, DxfLayer, Form, Item, Layer, Shape, Style, SvgOptions,
    THIN_LINE_MM, dxf, svg,
};
use crate::sorting::sort_by_key;

/// Layer of the words that no tool follows.
const NOTES: &str = "notes";

/// Layer of the edge of a stock sheet.
const SHEET: &str = "sheet";

/// Height of the notes' letters, mm: the size of the numbers on the kerf test piece (common practice).
const NOTE_MM: f64 = 4.0;

/// Line width that laser programs take for a cut, mm (0.01 to 0.1 are common practice).
const HAIRLINE_MM: f64 = 0.01;

/// Page around a panel in its SVG, mm: room for the marks of tabs and the outer half of the lines.
pub const MARGIN_MM: f64 = 5.0;

/// Colour in an SVG of what no tool follows: laser programs tell cuts apart by their colour, and cut what is black.
const ASIDE: Colour = Colour::Own(128, 128, 128);

/// How wide the lines of an SVG are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SvgLines {
    /// As wide as a thin line of a drawing: they show.
    #[default]
    Shown,
    /// So thin that laser programs take them for cuts.
    Hairline,
}

/// What every file of a design bears beside its contours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FileMarks<'a> {
    /// Fingerprint of the design; of several `ABCD2345, design 6789EFGH`.
    pub design: &'a str,
    /// What is said before anything else: that something blocks the design, that its sheets do not suffice.
    pub warnings: &'a [String],
}

impl<'a> FileMarks<'a> {
    /// The marks of a design that nothing warns of.
    #[must_use]
    pub const fn of(design: &'a str) -> Self {
        Self { design, warnings: &[] }
    }
}

/// A stock sheet with panels on it, its lower left corner at the origin.
#[derive(Clone, Debug, PartialEq)]
pub struct CutSheet {
    /// What it is called: `Sheet 1 of 2`.
    pub label: String,
    /// Width and height, mm.
    pub size_mm: [f64; 2],
    /// What is cut from it, each in its place (see [`CutPanel::placed`]).
    pub panels: Vec<CutPanel>,
}

/// A panel's cutting file as DXF, mm, y up, as seen from the face that is up ([`CutPanel::seen_from`]).
#[must_use]
pub fn cut_panel_to_dxf(panel: &CutPanel, marks: FileMarks<'_>) -> String {
    to_dxf(core::slice::from_ref(panel), None, &about(panel, marks))
}

/// A panel's cutting file as SVG: mm, one group a layer, [`MARGIN_MM`] of page around what is cut.
#[must_use]
pub fn cut_panel_to_svg(panel: &CutPanel, marks: FileMarks<'_>, lines: SvgLines) -> String {
    let [x0, y0, x1, y1] = reach(core::slice::from_ref(panel));
    let page = [x0 - MARGIN_MM, y0 - MARGIN_MM, x1 - x0 + 2.0 * MARGIN_MM, y1 - y0 + 2.0 * MARGIN_MM];
    to_svg(core::slice::from_ref(panel), None, page, about(panel, marks), lines)
}

/// A stock sheet's cutting file as DXF: every panel on the layers of its kind, each panel's outline after what is in it.
#[must_use]
pub fn cut_sheet_to_dxf(sheet: &CutSheet, marks: FileMarks<'_>) -> String {
    to_dxf(&sheet.panels, Some(&edge(sheet)), &about_sheet(sheet, marks))
}

/// A stock sheet's cutting file as SVG, as large as the sheet.
#[must_use]
pub fn cut_sheet_to_svg(sheet: &CutSheet, marks: FileMarks<'_>, lines: SvgLines) -> String {
    let [width, height] = sheet.size_mm;
    let about = about_sheet(sheet, marks);
    to_svg(&sheet.panels, Some(&edge(sheet)), [0.0, 0.0, width, height], about, lines)
}

/// The lines that every file begins with: what warns of the design, what the file shows, which design and program.
fn first_lines(label: &str, marks: FileMarks<'_>) -> Vec<String> {
    let mut lines = marks.warnings.to_vec();
    lines.push(format!("{label}, design {}, panelwright {}", marks.design, env!("CARGO_PKG_VERSION")));
    lines
}

/// The lines that say what a file is and how it was made.
fn about(panel: &CutPanel, marks: FileMarks<'_>) -> Vec<String> {
    let mut lines = first_lines(&panel.label, marks);
    lines.push(panel.rule.says());
    lines.push(panel.face_note().to_owned());
    lines.extend(panel.notes.iter().cloned());
    lines
}

fn about_sheet(sheet: &CutSheet, marks: FileMarks<'_>) -> Vec<String> {
    let mut lines = first_lines(&sheet.label, marks);
    // Said once when it holds for all, else of each panel.
    let alike = sheet.panels.windows(2).all(|pair| pair[0].rule.says() == pair[1].rule.says());
    lines.extend(sheet.panels.first().filter(|_| alike).map(|panel| panel.rule.says()));
    for panel in &sheet.panels {
        let rule = (!alike).then(|| panel.rule.says());
        let notes = rule.iter().map(String::as_str).chain([panel.face_note()]);
        let notes = notes.chain(panel.notes.iter().map(String::as_str));
        lines.extend(notes.map(|note| format!("{}: {note}", panel.label)));
    }
    lines
}

/// Each holding tab in figures, for programs that place tabs by number.
fn tab_figures(panels: &[CutPanel]) -> Vec<String> {
    let number = |value: f64| format_number(value, 2);
    let layers = panels.iter().flat_map(|panel| &panel.layers).filter(|layer| layer.name.starts_with(TABS));
    layers
        .flat_map(|layer| layer.lines.iter().map(move |line| (layer, line)))
        .filter_map(|(layer, line)| {
            let (first, last) = (*line.first()?, *line.last()?);
            let middle = first.midpoint(last);
            let length = number(libm::hypot(last.x - first.x, last.y - first.y));
            Some(format!("{}: x {} y {}, {length} long", layer.name, number(middle.x), number(middle.y)))
        })
        .collect()
}

fn edge(sheet: &CutSheet) -> Contour {
    Contour::rect(0.0, 0.0, sheet.size_mm[0], sheet.size_mm[1])
}

/// The rectangle around everything that is cut: left, lower, right, upper. Nothing cut gives the panel's own size.
fn reach(panels: &[CutPanel]) -> [f64; 4] {
    let cut = panels.iter().flat_map(CutPanel::cuts).map(|(_, cut)| cut.contour.bbox());
    let size = panels.first().map_or([0.0; 2], |panel| panel.size_mm);
    cut.reduce(|a, b| a.union(b)).map_or([0.0, 0.0, size[0], size[1]], |all| [all.x0, all.y0, all.x1, all.y1])
}

/// Colour by the format's index: through cuts black or white, whichever shows; blind ones blue; drilling green;
/// engraving red; what no tool follows grey.
const fn colour_index(layer: &CutLayer) -> u8 {
    match layer.usage {
        LayerUse::Cut if layer.through => 7,
        LayerUse::Cut => 5,
        LayerUse::Drill => 3,
        LayerUse::Engrave => 1,
        LayerUse::Mark => 8,
    }
}

fn to_dxf(panels: &[CutPanel], sheet: Option<&Contour>, about: &[String]) -> String {
    let [left, lower, ..] = sheet.map_or_else(|| reach(panels), |_| [0.0; 4]);
    let note_lines: Vec<Vec<Point>> = about
        .iter()
        .zip(1..)
        .flat_map(|(line, row)| {
            let below = 4.0 + 2.0 * NOTE_MM * f64::from(row);
            strokes(line, Point::new(left, lower - below), NOTE_MM)
        })
        .collect();
    let mark = |name: &str| DxfLayer { name: name.to_owned(), colour: 8, printed: false };
    let mut layers = vec![mark(NOTES)];
    let mut items: Vec<DxfItem<'_>> =
        note_lines.iter().map(|line| DxfItem { layer: 0, form: DxfForm::Line(line) }).collect();
    if let Some(sheet) = sheet {
        items.push(DxfItem { layer: layers.len(), form: DxfForm::Contour(sheet) });
        layers.push(mark(SHEET));
    }
    for layer in panels.iter().flat_map(|panel| &panel.layers) {
        let place = layers.iter().position(|known| known.name == layer.name).unwrap_or_else(|| {
            let printed = layer.usage != LayerUse::Mark;
            layers.push(DxfLayer { name: layer.name.clone(), colour: colour_index(layer), printed });
            layers.len() - 1
        });
        items.extend(layer.lines.iter().map(|line| DxfItem { layer: place, form: DxfForm::Line(line) }));
        items.extend(layer.cuts.iter().map(|cut| DxfItem { layer: place, form: DxfForm::Contour(&cut.contour) }));
    }
    let remarks = about.iter().cloned().chain(tab_figures(panels)).collect();
    dxf(&Dxf { remarks, layers, items })
}

fn to_svg(
    panels: &[CutPanel],
    sheet: Option<&Contour>,
    [left, lower, width_mm, height_mm]: [f64; 4],
    about: Vec<String>,
    lines: SvgLines,
) -> String {
    let by = Vec2::new(-left, -lower);
    let width = match lines {
        SvgLines::Shown => THIN_LINE_MM,
        SvgLines::Hairline => HAIRLINE_MM,
    };
    let mut layers: Vec<Layer> = Vec::new();
    if let Some(sheet) = sheet {
        let mut layer = Layer::new(SHEET);
        layer.push(Shape::new(Form::from(sheet.clone()), Style::line(ASIDE, width)));
        layers.push(layer);
    }
    for layer in panels.iter().flat_map(|panel| &panel.layers) {
        let colour = match layer.usage {
            LayerUse::Cut | LayerUse::Drill => Colour::Ink,
            LayerUse::Engrave => Colour::Accent,
            LayerUse::Mark => ASIDE,
        };
        let style = Style::line(colour, width);
        let mut shapes: Vec<Item> = Vec::new();
        for line in &layer.lines {
            let mut path = BezPath::new();
            for (index, at) in line.iter().enumerate() {
                if index == 0 { path.move_to(*at + by) } else { path.line_to(*at + by) }
            }
            shapes.push(Shape::new(Form::Path(path), style).into());
        }
        for cut in &layer.cuts {
            shapes.push(Shape::new(Form::from(cut.contour.translate(by)), style).into());
        }
        match layers.iter_mut().find(|known| known.name == layer.name) {
            Some(known) => known.items.append(&mut shapes),
            None => layers.push(Layer { name: layer.name.clone(), items: shapes }),
        }
    }
    // Outlines last, whichever panel brought a layer first.
    sort_by_key(&mut layers, |layer| layer.name == super::panel::OUTLINE);
    let title = Some(about.join("; "));
    svg(&Drawing { width_mm, height_mm, layers }, &SvgOptions { title, ..SvgOptions::for_file() })
}
