//! The sheets of stock with the panels on them: what is cut from which, in files and in words.

use kurbo::Point;
use serde::Serialize;

use super::lists::{SHEET_STEPS, job};
use super::warnings::{blocked, warnings};
use crate::Build;
use crate::cutting::{FileMarks, SvgLines, cut_sheet_to_dxf, cut_sheet_to_svg, go_name};
use crate::dimensions::source::Source;
use crate::drawing::number::mm;
use crate::drawing::{Colour, Drawing, Layer, SvgOptions, Text, svg};
use crate::fit::{Finding, Severity};
use crate::pictures::sheet::{self, Find, SAW_SIDE, saw_cut};
use crate::stock::{Job, MOST, Method, Plan, Reason, SheetPlan, solve};

/// A job, and the plan found for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// Panels of every case, and the sheets there are.
    pub job: Job,
    /// Where each panel goes.
    pub plan: Plan,
}

/// Lays the panels of every case on the design's stock with this many steps of the packer ([`super::lists::SHEET_STEPS`]
/// for what is shown at once). `None` for more panels than it takes at once.
pub fn lay(build: &Build, steps: u64) -> Option<Laid> {
    let job = job(build);
    let plan = solve(&job, steps, &mut |_| true).ok()?;
    Some(Laid { job, plan })
}

/// A case with what its sheets lack among the findings, and its panels laid on them: what every document is made from.
#[must_use]
pub fn stocked(build: Build) -> (Build, Option<Laid>) {
    let laid = lay(&build, SHEET_STEPS);
    (with_stock(build, laid.as_ref()), laid)
}

/// The rule of the finding that the sheets stated do not suffice.
pub const STOCK_RULE: &str = "stock-runs-out";

/// Where it comes from.
const STATED: Source = Source::common_practice("The maker's own statement", "sheets at hand");

/// Height of a warning above the picture of a sheet, as a share of the sheet's width: 24 mm on the usual sheet
/// of 1220 mm, 4 mm when that is printed on A4, upright (common practice).
const WARNING_SHARE: f64 = 0.02;

/// The case with one finding more when its panels find no place on the sheets stated. The checks of the case itself know
/// nothing of sheets, which come later in the flow.
#[must_use]
fn with_stock(mut build: Build, laid: Option<&Laid>) -> Build {
    if build.findings.iter().all(|finding| finding.rule != STOCK_RULE)
        && let Some(finding) = shortage(&build, laid)
    {
        let place = build.findings.partition_point(|other| other.severity <= Severity::Caution);
        build.findings.insert(place, finding);
    }
    build
}

fn shortage(build: &Build, laid: Option<&Laid>) -> Option<Finding> {
    let wanted = build.panels.len() * build.spec.prices.cases as usize;
    let finding = |text: String, remedy: &str| Finding {
        rule: STOCK_RULE,
        severity: Severity::Caution,
        text,
        remedy: remedy.to_owned(),
        mends: Vec::new(),
        measured: None,
        needed: None,
        unit: "",
        about: Vec::new(),
        at: None,
        source: STATED,
    };
    let Some(laid) = laid else {
        let text = format!("{wanted} panels are more than are laid on sheets at once ({MOST}): none is laid.");
        return Some(finding(text, "Make fewer cases at once."));
    };
    let missing = laid.plan.missing();
    (missing > 0).then(|| {
        let text = too_few(missing, wanted);
        let left = laid.plan.unplaced.iter().filter_map(|left| build.panels.get(left.piece));
        Finding {
            measured: Some(wanted.saturating_sub(missing) as f64),
            needed: Some(wanted as f64),
            about: left.map(|panel| panel.id().to_owned()).collect(),
            ..finding(text, "State more or larger sheets, or make fewer cases.")
        }
    })
}

/// That some panels find no place.
pub(super) fn too_few(missing: usize, wanted: usize) -> String {
    format!("Not enough sheet: {missing} of {wanted} panels find no place on the sheets stated.")
}

/// What stands first in a file of these sheets: that something blocks the design, or that panels find no place on them.
#[must_use]
pub fn warnings_of(build: &Build, laid: &Laid) -> Vec<String> {
    let short = shortage(build, Some(laid)).map(|finding| finding.text);
    blocked(&build.findings).into_iter().chain(short).collect()
}

/// Warnings above the picture of a sheet, which grows by a line for each.
fn warn(picture: &mut Drawing, warnings: &[String]) {
    let size = picture.width_mm * WARNING_SHARE;
    let mut said = Layer::new("warnings");
    for warning in warnings.iter().rev() {
        said.push(Text::new(Point::new(size, picture.height_mm), size, warning.as_str()).coloured(Colour::Accent));
        picture.height_mm += size * 1.5;
    }
    if !warnings.is_empty() {
        picture.layers.push(said);
    }
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
        self.plan
            .unplaced
            .iter()
            .filter_map(|left| {
                let piece = self.job.pieces.get(left.piece)?;
                let why = match left.reason {
                    Reason::TooBig { width, height, .. } => format!(
                        "too big for every sheet: {} mm too wide, {} mm too high for the nearest",
                        mm(width.max(0.0)),
                        mm(height.max(0.0))
                    ),
                    Reason::NoSheetLeft => "no sheet is left".to_owned(),
                };
                Some(format!("{} × {}: {why}", left.count, piece.label))
            })
            .collect()
    }

    /// The files of all sheets, their names beginning with `name`: a picture of every sheet; for machines its cutting
    /// files, for the saw its cuts in words.
    #[must_use]
    pub fn files(&self, find: &Find, name: &str, marks: FileMarks<'_>, lines: SvgLines) -> Vec<(String, Vec<u8>)> {
        let FileMarks { design: designs, warnings } = marks;
        let mut out = Vec::new();
        let mut saw = format!("Saw cuts, design {designs}\n");
        for warning in warnings {
            saw.push_str(&format!("\n{warning}\n"));
        }
        for left in self.unplaced() {
            saw.push_str(&format!("Without a place: {left}.\n"));
        }
        let of = self.plan.sheets.len();
        for (index, view) in self.view().sheets.iter().enumerate() {
            let name = format!("{name}sheet-{}", index + 1);
            let title = format!("{}, {} × {} mm, design {designs}", view.label, view.size_mm[0], view.size_mm[1]);
            if let Some(mut picture) = sheet::picture(find, &self.job, &self.plan, index) {
                warn(&mut picture, warnings);
                let options = SvgOptions { title: Some(title), ..SvgOptions::for_file() };
                out.push((format!("{name}.svg"), svg(&picture, &options).into_bytes()));
            }
            let free = self.job.rules.method == Method::Free;
            let goes = if free { sheet::cut(find, &self.job, &self.plan, index) } else { Vec::new() };
            for (number, cut) in goes.iter().enumerate() {
                let name = go_name(&format!("{name}-cut"), number, goes.len());
                out.push((format!("{name}.dxf"), cut_sheet_to_dxf(cut, marks).into_bytes()));
                out.push((format!("{name}.svg"), cut_sheet_to_svg(cut, marks, lines).into_bytes()));
            }
            if index == 0 && !view.cuts.is_empty() {
                saw.push_str(&format!("\n{SAW_SIDE}\n"));
            }
            saw.push_str(&format!("\n{} ({} of {of})\n", view.label, index + 1));
            for (number, cut) in view.cuts.iter().enumerate() {
                saw.push_str(&format!("{}. {cut}\n", number + 1));
            }
        }
        if self.job.rules.method == Method::Guillotine && !(out.is_empty() && self.plan.unplaced.is_empty()) {
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
pub fn files(build: &Build, laid: &Laid) -> Vec<(String, Vec<u8>)> {
    let find = |piece: usize| build.panels.get(piece).map(|panel| (build, panel));
    let marks = FileMarks { design: &build.fingerprint, warnings: &warnings(&build.findings) };
    laid.files(&find, "sheets/", marks, lines(build))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    fn built(choices: &[(&str, serde_json::Value)]) -> Build {
        let mut design = Design::default();
        for (key, value) in choices {
            design.set_json(key, value).unwrap();
        }
        Build::of(&design)
    }

    fn files_of(method: &str) -> Vec<String> {
        let build = built(&[("method", method.into())]);
        files(&build, &lay(&build, SHEET_STEPS).unwrap()).into_iter().map(|(name, _)| name).collect()
    }

    #[test]
    fn what_finds_no_place_is_a_caution_and_stands_above_every_sheet() {
        let short = built(&[("kit.count", 5.into()), ("stock.count", 1.into())]);
        let laid = lay(&short, SHEET_STEPS).unwrap();
        let missing = laid.plan.missing();
        assert!(missing > 0);
        let told = with_stock(short.clone(), Some(&laid));
        assert_eq!(told.findings.len(), short.findings.len() + 1);
        let finding = told.findings.iter().find(|finding| finding.rule == STOCK_RULE).unwrap();
        assert!(finding.text.contains(&format!("{missing} of 30 panels")), "{}", finding.text);
        assert!(told.findings.is_sorted_by_key(|finding| finding.severity));
        // Once is enough.
        assert_eq!(with_stock(told.clone(), Some(&laid)), told);
        let files = files(&told, &laid);
        assert_eq!(files.len(), 2);
        for (name, bytes) in files {
            assert!(String::from_utf8(bytes).unwrap().contains("Not enough sheet"), "{name}");
        }
        // Sheets enough, no word; no sheet at all, and the saw's list still says so.
        let enough = built(&[("kit.count", 5.into())]);
        assert_eq!(with_stock(enough.clone(), lay(&enough, SHEET_STEPS).as_ref()), enough);
        let none = built(&[("stock.count", 0.into())]);
        let laid = lay(&none, SHEET_STEPS).unwrap();
        assert_eq!(super::files(&with_stock(none, Some(&laid)), &laid).len(), 1);
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
