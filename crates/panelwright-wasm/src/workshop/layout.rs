//! Panels on the stock: a search that is given time slice by slice, and the best layout so far.

use panelwright::Build;
use panelwright::cutting::{FileMarks, cut_sheet_to_dxf, cut_sheet_to_svg};
use panelwright::documents::lists;
use panelwright::documents::sheets::{Laid, lines, warnings_of};
use panelwright::drawing::{SvgOptions, svg};
use panelwright::pictures::sheet;
use panelwright::stock::{JobError, Reason, Search};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::answer::plain;
use super::cutting_files;

/// A search under way and the best layout it has found.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Layout {
    build: Build,
    laid: Laid,
    search: Search,
}

/// The best layout so far; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
struct StockTwin {
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
    picture: String,
}

#[wasm_bindgen]
impl Layout {
    /// Looks for a better layout, for about so many steps; whether one was found.
    pub fn step(&mut self, steps: u32) -> bool {
        self.search.step(u64::from(steps));
        let plan = self.search.plan();
        let better = plan != self.laid.plan;
        self.laid.plan = plan;
        better
    }

    /// Steps taken so far.
    pub fn steps(&self) -> f64 {
        self.search.progress().steps as f64
    }

    /// Whether looking on would change nothing.
    pub fn done(&self) -> bool {
        self.search.progress().done
    }

    /// The best layout so far, with a picture of each sheet.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "StockLayout")]
    pub fn found(&self) -> Result<JsValue, JsError> {
        plain(&self.twin())
    }

    /// A sheet of that layout to cut, `dxf` or `svg`, one file for each go in their order; none when there is no such
    /// sheet or kind of file.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "CuttingFile[]")]
    pub fn files(&self, index: usize, kind: &str) -> Result<JsValue, JsError> {
        let Self { build, laid, .. } = self;
        let Laid { job, plan } = laid;
        let marks = FileMarks { design: &build.fingerprint, warnings: &warnings_of(build, laid) };
        let goes = sheet::cut_sheet(build, job, plan, index);
        plain(&cutting_files(&format!("sheet-{}", index + 1), &goes, |cut| match kind {
            "dxf" => Some(cut_sheet_to_dxf(cut, marks)),
            "svg" => Some(cut_sheet_to_svg(cut, marks, lines(build))),
            _ => None,
        }))
    }
}

impl Layout {
    /// A first quick layout of every panel of every case.
    pub(super) fn of(build: Build) -> Result<Self, JobError> {
        let job = lists::job(&build);
        let search = Search::new(&job)?;
        let plan = search.plan();
        Ok(Self { build, laid: Laid { job, plan }, search })
    }

    fn twin(&self) -> StockTwin {
        let Self { build, laid: Laid { job, plan }, search } = self;
        let sheets = plan.sheets.iter().enumerate().map(|(index, laid)| {
            let stock = job.sheets.get(laid.sheet);
            let picture = sheet::sheet_picture(build, job, plan, index);
            SheetTwin {
                label: stock.map(|one| one.label.clone()).unwrap_or_default(),
                size_mm: stock.map(|one| [one.width, one.height]).unwrap_or_default(),
                panels: laid.placed.len(),
                yield_share: laid.yield_share,
                offcut_mm: laid.offcuts.first().map(|rect| [rect.width, rect.height]),
                cuts: laid.cuts.iter().map(|cut| sheet::saw_cut(job, plan, index, cut)).collect(),
                picture: picture
                    .map(|drawing| svg(&drawing, &SvgOptions::for_page(format!("sheet-{index}-"))))
                    .unwrap_or_default(),
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
        StockTwin {
            bound: search.progress().bound,
            yield_share: plan.yield_share,
            sheets: sheets.collect(),
            missing: missing.collect(),
        }
    }
}
