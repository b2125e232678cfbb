//! The files of the kits: the answer, the designs, and every sheet as picture, cutting files or saw cuts.

use super::work::Kits;
use crate::Build;
use crate::cutting::{FileMarks, SvgLines};
use crate::design::write_file;
use crate::documents::layout::to_json;
use crate::documents::sheets::{lines, too_few};
use crate::documents::warnings::blocked;
use crate::drawing::number::mm;
use crate::drawing::{Drawing, Layer, Page, PdfInfo, Text, Weight, pdf};
use crate::panels::Panel;
use crate::pictures::sheet;

/// Size of the pages with the layouts, mm: A4 across.
const PAGE_MM: [f64; 2] = [297.0, 210.0];

/// Free paper around a layout, mm, more than printers leave white (common practice), and the room for the words above it:
/// margin, title and a line.
const MARGIN_MM: f64 = 8.0;
const HEAD_MM: f64 = 22.0;

/// Height of the words, mm, near ISO 3098-1 (from memory; common practice).
const TITLE_MM: f64 = 5.0;
const TEXT_MM: f64 = 3.0;

/// From one line of words to the next, mm (1.5: common practice).
const LINE_MM: f64 = 1.5 * TEXT_MM;

impl Kits {
    /// Every file: `kits.txt`, `kits.json`, `sheets.pdf`, `designs/…` and for each stack its sheets.
    #[must_use]
    pub fn files(&self) -> Vec<(String, Vec<u8>)> {
        let mut out = vec![
            ("kits.txt".to_owned(), self.report().into_bytes()),
            ("kits.json".to_owned(), to_json(&self.answer()).unwrap_or_default().into_bytes()),
            ("sheets.pdf".to_owned(), self.sheets_pdf()),
        ];
        for (index, unit) in self.units.iter().enumerate() {
            out.push((format!("designs/{}.json", index + 1), write_file(&unit.build.design).into_bytes()));
        }
        for (index, (stack, found)) in self.stacks.iter().enumerate() {
            let (designs, warnings) = (self.designs(index), self.warnings(index));
            let marks = FileMarks { design: &designs, warnings: &warnings };
            out.extend(found.laid.files(&self.find(index), &format!("{}/", stack.id), marks, self.lines(index)));
        }
        out
    }

    /// The picture of a stack's sheet, for a page; `None` when there is no such sheet.
    #[must_use]
    pub fn picture(&self, stack: usize, index: usize) -> Option<Drawing> {
        let laid = &self.stacks.get(stack)?.1.laid;
        sheet::picture(&self.find(stack), &laid.job, &laid.plan, index)
    }

    /// The fingerprints of the designs of a stack as files bear them: `ABCD2345, design 6789EFGH`.
    fn designs(&self, stack: usize) -> String {
        let of = self.stacks.get(stack).map_or(&[][..], |(stack, _)| &stack.pieces);
        let mut marks: Vec<&str> = Vec::new();
        for unit in of.iter().filter_map(|(unit, _)| self.units.get(*unit)) {
            if !marks.contains(&unit.build.fingerprint.as_str()) {
                marks.push(&unit.build.fingerprint);
            }
        }
        marks.join(", design ")
    }

    /// Which designs of a stack something blocks, and how many panels find no place on its sheets.
    fn warnings(&self, stack: usize) -> Vec<String> {
        let of = self.stacks.get(stack).map_or(&[][..], |(stack, _)| &stack.pieces);
        let mut out: Vec<String> = Vec::new();
        for build in of.iter().filter_map(|(unit, _)| self.units.get(*unit)).map(|unit| &unit.build) {
            if let Some(words) = blocked(&build.findings) {
                let words = format!("Design {}: {words}", build.fingerprint);
                if !out.contains(&words) {
                    out.push(words);
                }
            }
        }
        let laid = self.stacks.get(stack).map(|(_, found)| &found.laid);
        if let Some(laid) = laid
            && laid.plan.missing() > 0
        {
            let wanted = laid.job.pieces.iter().map(|piece| piece.count).sum();
            out.push(too_few(laid.plan.missing(), wanted));
        }
        out
    }

    /// The panel that a piece of a stack is.
    fn find<'a>(&'a self, stack: usize) -> impl Fn(usize) -> Option<(&'a Build, &'a Panel)> {
        move |piece| {
            let (unit, panel) = *self.stacks.get(stack)?.0.pieces.get(piece)?;
            let build = &self.units.get(unit)?.build;
            Some((build, build.panels.get(panel)?))
        }
    }

    /// Hairlines when a design of the stack asks for them.
    fn lines(&self, stack: usize) -> SvgLines {
        let of = self.stacks.get(stack).map_or(&[][..], |(stack, _)| &stack.pieces);
        let mut units = of.iter().filter_map(|(unit, _)| self.units.get(*unit));
        let hairline = units.any(|unit| lines(&unit.build) == SvgLines::Hairline);
        if hairline { SvgLines::Hairline } else { SvgLines::Shown }
    }

    fn sheets_pdf(&self) -> Vec<u8> {
        let marks: Vec<String> = (0..self.stacks.len()).map(|stack| self.designs(stack)).collect();
        let subject = format!("design {}", marks.join(", design "));
        pdf(&self.pages(), &PdfInfo { title: "Sheets of the kits".to_owned(), subject })
    }

    /// Every layout on a page of its own.
    pub(super) fn pages(&self) -> Vec<Page> {
        let mut pages = Vec::new();
        for (index, (stack, found)) in self.stacks.iter().enumerate() {
            let views = found.laid.view().sheets;
            let warnings = self.warnings(index);
            for (number, view) in views.iter().enumerate() {
                let Some(mut drawing) = self.picture(index, number) else { continue };
                let head = HEAD_MM + LINE_MM * warnings.len() as f64;
                let room = [PAGE_MM[0], PAGE_MM[1] - head];
                let scale = (room[0] / drawing.width_mm).min(room[1] / drawing.height_mm).min(1.0);
                let mut words = Layer::new("words");
                let top = PAGE_MM[1] - MARGIN_MM;
                let [width, height] = view.size_mm.map(mm);
                let title = format!("{}: sheet {} of {}, {width} × {height} mm", stack.label, number + 1, views.len());
                let share = mm(libm::round(view.yield_share * 100.0));
                let about =
                    format!("{} panels, {share} % of the sheet; design {}", view.panels.len(), self.designs(index));
                let mut lines = vec![
                    (top - TITLE_MM, TITLE_MM, title, Weight::SemiBold),
                    (top - TITLE_MM - 2.0 * TEXT_MM, TEXT_MM, about, Weight::Regular),
                ];
                for warning in &warnings {
                    let above = lines.last().map_or(top, |line| line.0);
                    lines.push((above - LINE_MM, TEXT_MM, warning.clone(), Weight::SemiBold));
                }
                for (y, size, text, weight) in lines {
                    let at = kurbo::Point::new(MARGIN_MM / scale, y / scale);
                    words.push(Text::new(at, size / scale, text).weighing(weight));
                }
                drawing.layers.push(words);
                (drawing.width_mm, drawing.height_mm) = (PAGE_MM[0] / scale, PAGE_MM[1] / scale);
                pages.push(Page { drawing, width_mm: PAGE_MM[0], height_mm: PAGE_MM[1], scale: [scale; 2] });
            }
        }
        pages
    }
}
