//! Pages of writing: headings, lines and tables one below the other, as many pages as they take.

use kurbo::{Point, Rect};

use super::pen::{Line, Pen};
use super::plan::PageSetup;
use crate::documents::wrap::wrapped;
use crate::drawing::{Anchor, Page, Weight, text_width_mm};

/// Sizes of writing, mm: titles, headings, text; near the heights 1.8, 2.5, 3.5 and 5 of ISO 3098-1 (from memory;
/// common practice).
const TITLE_MM: f64 = 5.0;
const HEADING_MM: f64 = 3.4;
const TEXT_MM: f64 = 2.6;
/// From one line to the next, mm: one and a half times the writing (common practice).
const LINE_MM: f64 = 3.9;
/// Between columns, mm: a line (common practice).
const GAP_MM: f64 = 4.0;

/// Pages being written.
pub struct Flow<'a> {
    setup: &'a PageSetup,
    title: String,
    foot: String,
    pen: Pen,
    area: Rect,
    y: f64,
    pages: Vec<Page>,
}

impl<'a> Flow<'a> {
    /// Starts with an empty upright page; title and foot stand on each.
    pub fn new(setup: &'a PageSetup, title: &str, foot: &str) -> Self {
        let [width, height] = setup.paper_mm;
        let area = Rect::new(0.0, 0.0, width, height).inset(-setup.margin_mm.max(10.0));
        let pen = Pen::new(width, height);
        let mut flow =
            Self { setup, title: title.to_owned(), foot: foot.to_owned(), pen, area, y: 0.0, pages: Vec::new() };
        flow.start();
        flow
    }

    fn start(&mut self) {
        let at = Point::new(self.area.x0, self.area.y1 - TITLE_MM);
        self.pen.text("words", at, TITLE_MM, Anchor::Start, Weight::SemiBold, &self.title);
        let foot = format!("{}, page {}", self.foot, self.pages.len() + 1);
        self.pen.text(
            "words",
            Point::new(self.area.x0, self.area.y0 + 1.0),
            TEXT_MM,
            Anchor::Start,
            Weight::Regular,
            &foot,
        );
        self.y = self.area.y1 - TITLE_MM - 4.0;
    }

    fn turn_over(&mut self) {
        let [width, height] = self.setup.paper_mm;
        let pen = std::mem::replace(&mut self.pen, Pen::new(width, height));
        self.pages.push(Page::from(pen.finish()));
        self.start();
    }

    /// Makes sure that so much room is left on the page.
    fn room(&mut self, height: f64) {
        if self.y - height < self.area.y0 + 2.0 * LINE_MM {
            self.turn_over();
        }
    }

    /// A heading, kept together with what follows.
    pub fn heading(&mut self, words: &str) {
        self.room(6.0 * LINE_MM);
        self.y -= LINE_MM * 2.0;
        self.pen.text("words", Point::new(self.area.x0, self.y), HEADING_MM, Anchor::Start, Weight::SemiBold, words);
    }

    /// Lines of writing, broken between words.
    pub fn words(&mut self, words: &str) {
        let mut lines = wrapped(words, self.area.width(), TEXT_MM, Weight::Regular);
        // No words leave a line empty.
        if lines.is_empty() {
            lines.push(String::new());
        }
        for line in lines {
            self.room(LINE_MM);
            self.y -= LINE_MM;
            self.pen.text("words", Point::new(self.area.x0, self.y), TEXT_MM, Anchor::Start, Weight::Regular, &line);
        }
    }

    /// A table with a head that is repeated on every page; the last column takes what is left of the width.
    pub fn table(&mut self, head: &[&str], rows: &[Vec<String>]) {
        let widths: Vec<f64> = (0..head.len())
            .map(|column| {
                let cell = |row: &Vec<String>| {
                    row.get(column).map_or(0.0, |words| text_width_mm(words, TEXT_MM, Weight::Regular))
                };
                rows.iter().map(cell).fold(text_width_mm(head[column], TEXT_MM, Weight::SemiBold), f64::max)
            })
            .collect();
        // What is too wide for the page is written smaller, all alike.
        let gaps = GAP_MM * head.len().saturating_sub(1) as f64;
        let scale = ((self.area.width() - gaps) / widths.iter().sum::<f64>().max(1.0)).min(1.0);
        let mut head_is_due = true;
        for row in rows {
            let page = self.pages.len();
            self.room(if head_is_due { 2.0 * LINE_MM } else { LINE_MM });
            if head_is_due || page != self.pages.len() {
                let cells: Vec<String> = head.iter().map(|words| (*words).to_owned()).collect();
                self.row(&cells, &widths, scale, Weight::SemiBold);
                let y = self.y - 1.0;
                self.pen.line("words", Point::new(self.area.x0, y), Point::new(self.area.x1, y), Line::Thin);
                self.y -= 0.8;
                head_is_due = false;
            }
            self.row(row, &widths, scale, Weight::Regular);
        }
    }

    fn row(&mut self, cells: &[String], widths: &[f64], scale: f64, weight: Weight) {
        self.y -= LINE_MM;
        let mut x = self.area.x0;
        for (words, width) in cells.iter().zip(widths) {
            if !words.is_empty() {
                self.pen.text("words", Point::new(x, self.y), TEXT_MM * scale, Anchor::Start, weight, words);
            }
            x += width * scale + GAP_MM;
        }
    }

    /// The pages.
    pub fn finish(mut self) -> Vec<Page> {
        self.pages.push(Page::from(self.pen.finish()));
        self.pages
    }
}
