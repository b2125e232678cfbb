//! What the page hands out.

use panelwright::Build;
use panelwright::cutting::{CutPanel, SvgLines, cut_panel_to_dxf, cut_panel_to_svg};
use panelwright::design::PaperName;
use panelwright::documents::lists::{self, Lists};
use panelwright::documents::marking;
use panelwright::documents::templates::{self, Way};
use panelwright::panels::Panel;
use serde::Serialize;

/// How many pages the templates take, before they are taken.
#[derive(Debug, Serialize)]
pub struct TemplatesPlan {
    pages: usize,
    sheets: Vec<Sheet>,
}

#[derive(Debug, Serialize)]
struct Sheet {
    panel: &'static str,
    pages: usize,
    how: String,
}

impl TemplatesPlan {
    /// The plan on the design's own paper.
    pub fn of(build: &Build) -> Self {
        let setup = templates::setup(&build.spec.template, None);
        let plans = templates::plans(&build.panels, &setup);
        let sheets: Vec<Sheet> = build
            .panels
            .iter()
            .zip(&plans)
            .map(|(panel, plan)| Sheet {
                panel: panel.id(),
                pages: plan.pages(),
                how: match plan.way {
                    Way::Tiles { across, up } if plan.why.is_some() => {
                        format!("on {across} × {up} pages: {}", plan.why.unwrap_or_default())
                    }
                    Way::Whole => "on one page".to_owned(),
                    Way::Ticks => "on one page, with ticks".to_owned(),
                    Way::Tiles { across, up } => format!("on {across} × {up} pages"),
                },
            })
            .collect();
        // Tables and the order of work count too.
        let pages = templates::page_count(&build.spec, &build.panels, &setup);
        Self { pages, sheets }
    }
}

/// The templates on the design's own paper.
pub fn templates_pdf(build: &Build) -> Vec<u8> {
    let setup = templates::setup(&build.spec.template, None);
    templates::pdf(&build.spec, &build.panels, &build.fingerprint, &setup)
}

/// A panel's cutting file; empty for a kind of file that is none.
pub fn cut_file(build: &Build, panel: &Panel, kind: &str) -> String {
    // What is cut from the inside before the sheet is turned over is in the pack.
    let Some(cut) = CutPanel::for_files(&build.spec, panel).pop() else { return String::new() };
    let lines = if build.spec.making.hairline { SvgLines::Hairline } else { SvgLines::Shown };
    match kind {
        "dxf" => cut_panel_to_dxf(&cut, &build.fingerprint),
        "svg" => cut_panel_to_svg(&cut, &build.fingerprint, lines),
        _ => String::new(),
    }
}

/// What to buy, bag, cut and drill.
pub fn lists(build: &Build) -> Lists {
    Lists::of(build, lists::sheets(build, lists::SHEET_STEPS).as_ref())
}

/// A list as CSV; empty when there is no such list.
pub fn list_csv(build: &Build, name: &str) -> String {
    lists(build).table(name).map(|table| lists::csv(table, &build.fingerprint)).unwrap_or_default()
}

/// All lists as PDF; on the design's own paper unless another is named.
pub fn lists_pdf(build: &Build, paper: &str) -> Vec<u8> {
    let other = PaperName::of(paper);
    let setup = templates::writing(&templates::setup(&build.spec.template, other));
    lists::pdf(build, &lists(build), setup.paper_mm, setup.margin_mm)
}

/// A panel's table for marking out, as CSV.
pub fn marking_file(build: &Build, panel: &Panel) -> String {
    marking::csv(panel, &build.fingerprint)
}
