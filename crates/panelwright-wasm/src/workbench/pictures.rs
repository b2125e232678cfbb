//! The pictures of the page: the case as one sees it, the panels flat.

use panelwright::Build;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::panels::Panel;
use panelwright::pictures::{CaseView, case_picture, panel};
use serde::Serialize;

/// The case as one sees it; points in mm of the picture, y down as on a screen.
#[derive(Debug, Serialize)]
pub struct CasePicture {
    svg: String,
    width_mm: f64,
    height_mm: f64,
    points: Vec<Option<[f64; 2]>>,
}

impl CasePicture {
    /// Draws the case.
    pub fn of(build: &Build, view: &CaseView) -> Self {
        let picture = case_picture(build, view);
        let height_mm = picture.drawing.height_mm;
        let points =
            build.findings.iter().map(|finding| picture.place_of(finding).map(|at| [at.x, height_mm - at.y])).collect();
        Self {
            svg: svg(&picture.drawing, &SvgOptions::for_page("case-")),
            width_mm: picture.drawing.width_mm,
            height_mm,
            points,
        }
    }
}

/// A panel flat, seen from outside; its outline has the id `flat-PANEL`, a feature `flat-PANEL-FEATURE`.
pub fn flat(panel: &Panel) -> String {
    svg(&panel::page_picture(panel), &SvgOptions::for_page("flat-"))
}
