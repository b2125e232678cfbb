//! What the templates will be, said before they are taken.

use panelwright::Build;
use panelwright::cutting::CutPanel;
use panelwright::documents::templates::{self, Way};
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
    /// Cutting files of a kind: one for each go.
    goes: usize,
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
                goes: CutPanel::for_files(&build.spec, panel).len(),
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
        let pages = templates::page_count(build, &setup);
        Self { pages, sheets }
    }
}
