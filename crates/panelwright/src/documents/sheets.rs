//! The sheets of stock with the panels on them: what is cut from which, in files and in words.

use serde::Serialize;

use super::lists::{SHEET_STEPS, job};
use crate::Build;
use crate::cutting::{SvgLines, cut_sheet_to_dxf, cut_sheet_to_svg, go_name};
use crate::drawing::{SvgOptions, svg};
use crate::pictures::sheet::{self, Find, saw_cut};
use crate::stock::{Job, Method, Plan, Reason, SheetPlan, solve};

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
    pub fn view(&self) -> SheetsView {
        let sheets = self.plan.sheets.iter().enumerate().filter_map(|(index, sheet)| self.sheet_view(index, sheet));
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

    fn sheet_view(&self, index: usize, sheet: &SheetPlan) -> Option<SheetView> {
        let stock = self.job.sheets.get(sheet.sheet)?;
        let label = |piece: usize| self.job.pieces.get(piece).map_or("", |piece| piece.label.as_str());
        let panels = sheet.placed.iter().map(|placed| {
            let host = placed.inside.and_then(|host| sheet.placed.get(host));
            match host {
                None => label(placed.piece).to_owned(),
                Some(host) => format!("{}, in an opening of {}", label(placed.piece), label(host.piece)),
            }
        });
        Some(SheetView {
            label: stock.label.clone(),
            size_mm: [stock.width, stock.height],
            panels: panels.collect(),
            yield_share: sheet.yield_share,
            cuts: sheet.cuts.iter().map(|cut| saw_cut(&self.job, &self.plan, index, cut)).collect(),
        })
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

    /// The files of all sheets, their names beginning with `name`: a picture of every sheet; for machines its cutting
    /// files, for the saw its cuts in words. `designs` are the fingerprints they bear.
    #[must_use]
    pub fn files(&self, find: &Find, name: &str, designs: &str, lines: SvgLines) -> Vec<(String, Vec<u8>)> {
        let mut out = Vec::new();
        let mut saw = format!("Saw cuts, design {designs}\n");
        let of = self.plan.sheets.len();
        for (index, view) in self.view().sheets.iter().enumerate() {
            let name = format!("{name}sheet-{}", index + 1);
            let title = format!("{}, {} × {} mm, design {designs}", view.label, view.size_mm[0], view.size_mm[1]);
            if let Some(picture) = sheet::picture(find, &self.job, &self.plan, index) {
                let options = SvgOptions { title: Some(title), ..SvgOptions::for_file() };
                out.push((format!("{name}.svg"), svg(&picture, &options).into_bytes()));
            }
            let free = self.job.rules.method == Method::Free;
            let goes = if free { sheet::cut(find, &self.job, &self.plan, index) } else { Vec::new() };
            for (number, cut) in goes.iter().enumerate() {
                let name = go_name(&format!("{name}-cut"), number, goes.len());
                out.push((format!("{name}.dxf"), cut_sheet_to_dxf(cut, designs).into_bytes()));
                out.push((format!("{name}.svg"), cut_sheet_to_svg(cut, designs, lines).into_bytes()));
            }
            saw.push_str(&format!("\n{} ({} of {of})\n", view.label, index + 1));
            for (number, cut) in view.cuts.iter().enumerate() {
                saw.push_str(&format!("{}. {cut}\n", number + 1));
            }
        }
        if self.job.rules.method == Method::Guillotine && !out.is_empty() {
            out.push((format!("{name}saw-cuts.txt"), saw.into_bytes()));
        }
        out
    }
}

/// How wide the lines of a case's cutting files are.
#[must_use]
pub fn lines(build: &Build) -> SvgLines {
    if build.spec.making.hairline { SvgLines::Hairline } else { SvgLines::Shown }
}

/// The sheets of a case for its pack.
#[must_use]
pub fn files(build: &Build) -> Vec<(String, Vec<u8>)> {
    let find = |piece: usize| build.panels.get(piece).map(|panel| (build, panel));
    lay(build, SHEET_STEPS)
        .map(|laid| laid.files(&find, "sheets/", &build.fingerprint, lines(build)))
        .unwrap_or_default()
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
        let view = lay(&build, SHEET_STEPS).unwrap().view();
        assert_eq!((view.sheets.len(), view.bound, view.fewest), (1, 1, true));
        assert_eq!(view.sheets[0].panels.len(), 6);
        assert!(view.unplaced.is_empty());
    }
}
