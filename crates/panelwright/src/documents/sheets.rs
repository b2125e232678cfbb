//! The sheets of stock with the panels on them: what is cut from which, in files and in words.

use serde::Serialize;

use super::lists::{SHEET_STEPS, job};
use crate::Build;
use crate::cutting::{CutSheet, SvgLines, cut_sheet_to_dxf, cut_sheet_to_svg};
use crate::drawing::{Drawing, SvgOptions, svg};
use crate::pictures::sheet::{cut_sheet, saw_cut, sheet_picture};
use crate::stock::{Job, Method, Plan, Reason, solve};

/// A job, and the plan found for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// Panels of every case, and the sheets there are.
    pub job: Job,
    /// Where each panel goes.
    pub plan: Plan,
}

/// Lays the panels of every case on the design's stock with this many steps of the packer ([`SHEET_STEPS`] for what is
/// shown at once). `None` for more panels than it takes at once.
pub fn lay(build: &Build, steps: u64) -> Option<Laid> {
    let job = job(build);
    let plan = solve(&job, steps, &mut |_| true).ok()?;
    Some(Laid { job, plan })
}

/// The plan as a page shows it.
#[derive(Debug, Serialize)]
pub struct SheetsView {
    /// Sheets in use.
    pub sheets: Vec<SheetView>,
    /// Fewer than this nobody can do with; it is proved.
    pub bound: usize,
    /// How the bound was found.
    pub bound_by: &'static str,
    /// Whether the plan is proved to take the fewest sheets.
    pub fewest: bool,
    /// Panels without a place, each with the reason.
    pub unplaced: Vec<String>,
}

/// One sheet.
#[derive(Debug, Serialize)]
pub struct SheetView {
    /// `Sheet`, `Sheet 2`.
    pub label: String,
    /// Width and height, mm.
    pub size_mm: [f64; 2],
    /// Labels of the panels on it.
    pub panels: Vec<String>,
    /// Share of the sheet that becomes panels.
    pub yield_share: f64,
    /// Saw cuts in words, in order; none for free cuts.
    pub cuts: Vec<String>,
}

impl Laid {
    /// What a page shows.
    #[must_use]
    pub fn view(&self, build: &Build) -> SheetsView {
        let sheets = self.plan.sheets.iter().enumerate().filter_map(|(index, sheet)| {
            let stock = self.job.sheets.get(sheet.sheet)?;
            let panels = sheet.placed.iter().filter_map(|placed| self.job.pieces.get(placed.piece));
            Some(SheetView {
                label: stock.label.clone(),
                size_mm: [stock.width, stock.height],
                panels: panels.map(|piece| piece.label.clone()).collect(),
                yield_share: sheet.yield_share,
                cuts: sheet.cuts.iter().map(|cut| saw_cut(build, &self.job, &self.plan, index, cut)).collect(),
            })
        });
        let bounds = &self.plan.bounds;
        let bound = bounds.sheets();
        SheetsView {
            sheets: sheets.collect(),
            bound,
            bound_by: if bounds.tried == bound && bounds.tried > bounds.martello_vigo.max(bounds.area) {
                "every layout on one sheet was tried"
            } else if bounds.martello_vigo > bounds.area {
                "large panels that cannot share a sheet (Martello and Vigo)"
            } else {
                "area of the panels"
            },
            fewest: self.plan.fewest,
            unplaced: self.unplaced(),
        }
    }

    fn unplaced(&self) -> Vec<String> {
        let words = crate::documents::templates::words::mm;
        self.plan
            .unplaced
            .iter()
            .filter_map(|left| {
                let piece = self.job.pieces.get(left.piece)?;
                let why = match left.reason {
                    Reason::TooBig { width, height, .. } => format!(
                        "too big for every sheet: {} mm too wide, {} mm too high for the nearest",
                        words(width.max(0.0)),
                        words(height.max(0.0))
                    ),
                    Reason::NoSheetLeft => "no sheet is left".to_owned(),
                };
                Some(format!("{} × {}: {why}", left.count, piece.label))
            })
            .collect()
    }

    /// The picture of one sheet.
    #[must_use]
    pub fn picture(&self, build: &Build, index: usize) -> Option<Drawing> {
        sheet_picture(build, &self.job, &self.plan, index)
    }

    /// What a machine cuts from one sheet, go by go.
    #[must_use]
    pub fn cut(&self, build: &Build, index: usize) -> Vec<CutSheet> {
        cut_sheet(build, &self.job, &self.plan, index)
    }
}

/// The files of the pack: a picture of every sheet; for machines its cutting files, for the saw its cuts in words.
#[must_use]
pub fn files(build: &Build) -> Vec<(String, Vec<u8>)> {
    let Some(laid) = lay(build, SHEET_STEPS) else { return Vec::new() };
    let lines = if build.spec.making.hairline { SvgLines::Hairline } else { SvgLines::Shown };
    let mut out = Vec::new();
    let mut saw = format!("Saw cuts, design {}\n", build.fingerprint);
    for (index, sheet) in laid.view(build).sheets.iter().enumerate() {
        let name = format!("sheets/sheet-{}", index + 1);
        let title =
            format!("{}, {} × {} mm, design {}", sheet.label, sheet.size_mm[0], sheet.size_mm[1], build.fingerprint);
        if let Some(picture) = laid.picture(build, index) {
            let options = SvgOptions { title: Some(title), ..SvgOptions::for_file() };
            out.push((format!("{name}.svg"), svg(&picture, &options).into_bytes()));
        }
        let goes = if laid.job.rules.method == Method::Free { laid.cut(build, index) } else { Vec::new() };
        for (number, cut) in goes.iter().enumerate() {
            let name = format!("{name}-cut{}", if number + 1 < goes.len() { "-first" } else { "" });
            out.push((format!("{name}.dxf"), cut_sheet_to_dxf(cut, &build.fingerprint).into_bytes()));
            out.push((format!("{name}.svg"), cut_sheet_to_svg(cut, &build.fingerprint, lines).into_bytes()));
        }
        saw.push_str(&format!("\n{} ({} of {})\n", sheet.label, index + 1, laid.plan.sheets.len()));
        for (number, cut) in sheet.cuts.iter().enumerate() {
            saw.push_str(&format!("{}. {cut}\n", number + 1));
        }
    }
    if laid.job.rules.method == Method::Guillotine && !out.is_empty() {
        out.push(("sheets/saw-cuts.txt".to_owned(), saw.into_bytes()));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    fn files_of(method: &str) -> Vec<String> {
        let mut design = Design::default();
        design.set_json("method", &method.into()).unwrap();
        files(&Build::of(&design)).into_iter().map(|(name, _)| name).collect()
    }

    #[test]
    fn a_saw_gets_words_and_a_machine_gets_files() {
        assert_eq!(files_of("hand"), ["sheets/sheet-1.svg", "sheets/saw-cuts.txt"]);
        assert_eq!(files_of("laser"), ["sheets/sheet-1.svg", "sheets/sheet-1-cut.dxf", "sheets/sheet-1-cut.svg"]);
    }

    #[test]
    fn the_default_case_takes_one_sheet_and_that_is_proved() {
        let build = Build::of(&Design::default());
        let view = lay(&build, SHEET_STEPS).unwrap().view(&build);
        assert_eq!((view.sheets.len(), view.bound, view.fewest), (1, 1, true));
        assert_eq!(view.sheets[0].panels.len(), 6);
        assert!(view.unplaced.is_empty());
    }
}
