//! Panels on the stock: a search the page gives time to, slice by slice, and the best layout so far.

use panelwright::Build;
use panelwright::cutting::{SvgLines, cut_sheet_to_dxf, cut_sheet_to_svg};
use panelwright::documents::lists;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::pictures::sheet;
use panelwright::stock::{Job, Plan, Reason, Search};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Workbench;
use crate::workbench::plain;

/// A search under way and the best layout it has found.
#[derive(Debug)]
pub struct Layout {
    job: Job,
    search: Search,
    plan: Plan,
}

/// What the page shows of it; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
pub struct SheetsTwin {
    steps: u64,
    done: bool,
    bound: usize,
    yield_share: f64,
    sheets: Vec<SheetTwin>,
    missing: Vec<String>,
}

#[derive(Debug, Serialize)]
struct SheetTwin {
    label: String,
    size_mm: [f64; 2],
    panels: usize,
    yield_share: f64,
    /// Width and height of the largest piece that is left over.
    offcut_mm: Option<[f64; 2]>,
    cuts: Vec<String>,
}

#[wasm_bindgen]
impl Workbench {
    /// Begins to lay the panels on the stock, with a first quick layout.
    ///
    /// # Errors
    /// More panels than are laid at once.
    pub fn layout_begin(&mut self) -> Result<(), JsError> {
        self.layout = Some(Layout::of(self.build())?);
        Ok(())
    }

    /// Looks for a better layout, for about so many steps.
    pub fn layout_step(&mut self, steps: u32) {
        if let Some(layout) = &mut self.layout {
            layout.step(u64::from(steps));
        }
    }

    /// The best layout so far; null before `layout_begin` and after a change.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "StockLayout | null")]
    pub fn layout(&self) -> Result<JsValue, JsError> {
        plain(&self.layout.as_ref().map(|layout| layout.twin()))
    }

    /// A sheet of that layout with its panels; empty when there is no such sheet.
    pub fn layout_picture(&self, index: usize) -> String {
        self.layout.as_ref().map(|layout| layout.picture(self.build(), index)).unwrap_or_default()
    }

    /// A sheet of that layout to cut, `dxf` or `svg`; empty when there is no such sheet or kind of file.
    pub fn layout_file(&self, index: usize, kind: &str) -> String {
        self.layout.as_ref().map(|layout| layout.file(self.build(), index, kind)).unwrap_or_default()
    }
}

impl Layout {
    /// A first quick layout of every panel of every case.
    ///
    /// # Errors
    /// More panels than are laid at once.
    pub fn of(build: &Build) -> Result<Self, panelwright::stock::JobError> {
        let job = lists::job(build);
        let search = Search::new(&job)?;
        let plan = search.plan();
        Ok(Self { job, search, plan })
    }

    /// Looks on for about so many steps.
    pub fn step(&mut self, steps: u64) {
        self.search.step(steps);
        self.plan = self.search.plan();
    }

    /// The best layout so far.
    pub fn twin(&self) -> SheetsTwin {
        let progress = self.search.progress();
        let Self { job, plan, .. } = self;
        let sheets = plan.sheets.iter().enumerate().map(|(index, laid)| {
            let stock = job.sheets.get(laid.sheet);
            SheetTwin {
                label: stock.map(|one| one.label.clone()).unwrap_or_default(),
                size_mm: stock.map(|one| [one.width, one.height]).unwrap_or_default(),
                panels: laid.placed.len(),
                yield_share: laid.yield_share,
                offcut_mm: laid.offcuts.first().map(|rect| [rect.width, rect.height]),
                cuts: laid.cuts.iter().map(|cut| sheet::saw_cut(job, plan, index, cut)).collect(),
            }
        });
        let missing = plan.unplaced.iter().map(|left| {
            let label = job.pieces.get(left.piece).map_or("", |piece| &piece.label);
            let why = match left.reason {
                Reason::TooBig { .. } => "larger than every sheet",
                Reason::NoSheetLeft => "no sheet is left",
            };
            format!("{} × {label}: {why}", left.count)
        });
        SheetsTwin {
            steps: progress.steps,
            done: progress.done,
            bound: progress.bound,
            yield_share: plan.yield_share,
            sheets: sheets.collect(),
            missing: missing.collect(),
        }
    }

    /// A sheet with its panels, for the page; empty when there is no such sheet.
    pub fn picture(&self, build: &Build, index: usize) -> String {
        let picture = sheet::sheet_picture(build, &self.job, &self.plan, index);
        picture.map(|drawing| svg(&drawing, &SvgOptions::for_page(format!("sheet-{index}-")))).unwrap_or_default()
    }

    /// A sheet as `dxf` or `svg` to cut; empty for what there is not.
    pub fn file(&self, build: &Build, index: usize, kind: &str) -> String {
        let Some(cut) = sheet::cut_sheet(build, &self.job, &self.plan, index).pop() else { return String::new() };
        let lines = if build.spec.making.hairline { SvgLines::Hairline } else { SvgLines::Shown };
        match kind {
            "dxf" => cut_sheet_to_dxf(&cut, &build.fingerprint),
            "svg" => cut_sheet_to_svg(&cut, &build.fingerprint, lines),
            _ => String::new(),
        }
    }
}
