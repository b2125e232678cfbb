//! Lists on paper: plain tables, as many pages as they take, the fingerprint on each.

use kurbo::Point;

use super::Lists;
use super::table::Table;
use crate::Build;
use crate::documents::warnings::warnings;
use crate::documents::wrap::wrapped;
use crate::drawing::{
    Anchor, Colour, Drawing, Layer, Page, PdfInfo, Style, Text, Weight, pdf as write_pdf, text_width_mm,
};

/// Sizes of writing, mm: ISO 3098-1 (from memory; common practice).
const TITLE_MM: f64 = 5.0;
const TEXT_MM: f64 = 2.5;
/// Height of a line as a multiple of its writing (1.2 to 1.5 are common practice).
const LEADING: f64 = 1.45;
/// Air between columns, mm: the height of the writing (common practice).
const GAP_MM: f64 = 2.5;
/// A column of words is never made narrower than this, mm: a word of eight to ten letters.
const LEAST_MM: f64 = 14.0;

/// A page being filled from above.
struct Sheets<'a> {
    size_mm: [f64; 2],
    margin_mm: f64,
    footer: &'a str,
    done: Vec<Layer>,
    layer: Layer,
    /// Where the next line's top is, from the lower edge of the paper.
    y: f64,
}

impl Sheets<'_> {
    fn room(&self) -> f64 {
        // The footer and a line of air stay free.
        self.y - self.margin_mm - 2.0 * TEXT_MM * LEADING
    }

    fn turn(&mut self) {
        self.done.push(std::mem::replace(&mut self.layer, Layer::new("lists")));
        self.y = self.size_mm[1] - self.margin_mm;
    }

    fn write(&mut self, x: f64, size_mm: f64, weight: Weight, anchor: Anchor, words: &str) {
        self.layer.push(Text::new(Point::new(x, self.y - size_mm), size_mm, words).weighing(weight).anchored(anchor));
    }
}

/// The pages on paper of this size with this margin.
#[must_use]
pub(super) fn pages(build: &Build, lists: &Lists, paper_mm: [f64; 2], margin_mm: f64) -> Vec<Drawing> {
    let title = &build.spec.title;
    // The fingerprint first: a long title may be cut off, it never is.
    let named = if title.is_empty() { String::new() } else { format!(", {title}") };
    let footer = format!("design {}, panelwright {}{named}", lists.fingerprint, env!("CARGO_PKG_VERSION"));
    let mut sheets = Sheets {
        size_mm: paper_mm,
        margin_mm,
        footer: &footer,
        done: Vec::new(),
        layer: Layer::new("lists"),
        y: paper_mm[1] - margin_mm,
    };
    // Before anything is bought or cut.
    for warning in warnings(&build.findings) {
        for line in wrapped(&warning, paper_mm[0] - 2.0 * margin_mm, TEXT_MM, Weight::SemiBold) {
            sheets.write(margin_mm, TEXT_MM, Weight::SemiBold, Anchor::Start, &line);
            sheets.y -= TEXT_MM * LEADING;
        }
        sheets.y -= TEXT_MM;
    }
    for table in &lists.tables {
        draw(&mut sheets, table);
    }
    sheets.turn();
    let count = sheets.done.len();
    let mut out = Vec::new();
    for (index, mut layer) in sheets.done.into_iter().enumerate() {
        let at = |x: f64| Point::new(x, margin_mm);
        let fitted = fitted(sheets.footer, paper_mm[0] - 2.0 * margin_mm - 30.0);
        layer.push(Text::new(at(margin_mm), TEXT_MM, fitted));
        let number = format!("page {} of {count}", index + 1);
        layer.push(Text::new(at(paper_mm[0] - margin_mm), TEXT_MM, number).anchored(Anchor::End));
        let mut drawing = Drawing::new(paper_mm[0], paper_mm[1]);
        drawing.layers.push(layer);
        out.push(drawing);
    }
    out
}

/// All lists as a PDF.
#[must_use]
pub fn pdf(build: &Build, lists: &Lists, paper_mm: [f64; 2], margin_mm: f64) -> Vec<u8> {
    let sheets: Vec<Page> = pages(build, lists, paper_mm, margin_mm).into_iter().map(Page::from).collect();
    let title = &build.spec.title;
    let title = if title.is_empty() { "Lists".to_owned() } else { format!("Lists: {title}") };
    write_pdf(&sheets, &PdfInfo { title, subject: format!("design {}", lists.fingerprint) })
}

fn draw(sheets: &mut Sheets, table: &Table) {
    let line_mm = TEXT_MM * LEADING;
    let left = sheets.margin_mm;
    let width = sheets.size_mm[0] - 2.0 * left;
    let widths = widths(table, width);
    let heads: Vec<&str> = table.columns.iter().map(|column| column.title.as_str()).collect();
    let head = row(&widths, &heads, Weight::SemiBold);
    // A heading with fewer than three rows below it goes to the next page.
    if sheets.room() < TITLE_MM * 2.0 + line_mm * (head.height as f64 + 3.0) {
        sheets.turn();
    }
    sheets.write(left, TITLE_MM, Weight::SemiBold, Anchor::Start, table.title);
    sheets.y -= TITLE_MM * LEADING + 1.0;
    for note in &table.notes {
        for line in wrapped(note, width, TEXT_MM, Weight::Regular) {
            sheets.write(left, TEXT_MM, Weight::Regular, Anchor::Start, &line);
            sheets.y -= line_mm;
        }
    }
    sheets.y -= 1.0;
    lay(sheets, table, &widths, &head, Weight::SemiBold);
    for cells in &table.rows {
        let shown: Vec<String> = cells.iter().map(super::Cell::shown).collect();
        let shown: Vec<&str> = shown.iter().map(String::as_str).collect();
        let row = row(&widths, &shown, Weight::Regular);
        if sheets.room() < row.height as f64 * line_mm {
            sheets.turn();
            lay(sheets, table, &widths, &head, Weight::SemiBold);
        }
        lay(sheets, table, &widths, &row, Weight::Regular);
    }
    sheets.y -= 2.0 * line_mm;
}

/// A row with its words wrapped to its columns.
struct Row {
    cells: Vec<Vec<String>>,
    height: usize,
}

fn row(widths: &[f64], words: &[&str], weight: Weight) -> Row {
    let cells: Vec<Vec<String>> =
        words.iter().zip(widths).map(|(words, width)| wrapped(words, *width, TEXT_MM, weight)).collect();
    let height = cells.iter().map(Vec::len).max().unwrap_or(1).max(1);
    Row { cells, height }
}

fn lay(sheets: &mut Sheets, table: &Table, widths: &[f64], row: &Row, weight: Weight) {
    let line_mm = TEXT_MM * LEADING;
    let top = sheets.y;
    let mut x = sheets.margin_mm;
    for ((lines, width), column) in row.cells.iter().zip(widths).zip(&table.columns) {
        for line in lines {
            let (at, anchor) = if column.numbers { (x + width, Anchor::End) } else { (x, Anchor::Start) };
            sheets.write(at, TEXT_MM, weight, anchor, line);
            sheets.y -= line_mm;
        }
        sheets.y = top;
        x += width + GAP_MM;
    }
    sheets.y = top - row.height as f64 * line_mm;
    let rule = sheets.y + line_mm * 0.12;
    let (from, to) = (sheets.margin_mm, sheets.size_mm[0] - sheets.margin_mm);
    sheets.layer.line(Point::new(from, rule), Point::new(to, rule), Style::line(Colour::Thin, 0.1));
}

/// How wide each column is: numbers as wide as they are, words share what is left by what they would like.
fn widths(table: &Table, room: f64) -> Vec<f64> {
    let wide = |words: &str, weight| text_width_mm(words, TEXT_MM, weight);
    let longest = |title: &str| title.split(' ').map(|word| wide(word, Weight::SemiBold)).fold(0.0, f64::max);
    let mut widths: Vec<f64> = table.columns.iter().map(|column| longest(&column.title)).collect();
    for cells in &table.rows {
        for (width, cell) in widths.iter_mut().zip(cells) {
            *width = width.max(wide(&cell.shown(), Weight::Regular));
        }
    }
    let left = room - GAP_MM * (widths.len().saturating_sub(1)) as f64;
    let share = |numbers: bool| {
        let of = table.columns.iter().zip(&widths).filter(move |(column, _)| column.numbers == numbers);
        of.map(|(_, width)| *width).sum::<f64>()
    };
    let (fixed, wanted) = (share(true), share(false));
    if fixed + wanted <= left {
        return widths;
    }
    // Short columns of words keep their width, the long ones give way.
    let words: Vec<usize> = (0..widths.len()).filter(|index| !table.columns[*index].numbers).collect();
    let mut over = fixed + wanted - left;
    while over > 1e-6 {
        let Some(widest) = words.iter().copied().max_by(|a, b| widths[*a].total_cmp(&widths[*b])) else { break };
        let next =
            words.iter().map(|index| widths[*index]).filter(|width| *width < widths[widest]).fold(LEAST_MM, f64::max);
        if widths[widest] <= LEAST_MM {
            break;
        }
        let step = (widths[widest] - next).max(0.1).min(over);
        widths[widest] -= step;
        over -= step;
    }
    widths
}

/// Words cut to a width.
fn fitted(words: &str, width: f64) -> String {
    let mut out = words.to_owned();
    while text_width_mm(&out, TEXT_MM, Weight::Regular) > width && out.pop().is_some() {}
    out
}
