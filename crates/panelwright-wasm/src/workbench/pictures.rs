//! The pictures of the page: the case as one sees it, the panels flat.

use panelwright::Build;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::panels::Panel;
use panelwright::pictures::{CaseView, case_picture, panel};
use serde::Serialize;
use serde_json::Value as Json;

/// How the page wants the case looked at.
#[derive(Debug)]
pub struct Look {
    azimuth_deg: f64,
    elevation_deg: f64,
    off: Vec<String>,
    see_through: bool,
    apart: f64,
}

impl Look {
    /// Reads it; none when a part of it is missing or of another kind.
    pub fn of(look: &Json) -> Option<Self> {
        let number = |name: &str| look[name].as_f64();
        Some(Self {
            azimuth_deg: number("azimuth_deg")?,
            elevation_deg: number("elevation_deg")?,
            off: look["off"].as_array()?.iter().filter_map(Json::as_str).map(str::to_owned).collect(),
            see_through: look["see_through"].as_bool()?,
            apart: number("apart")?,
        })
    }
}

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
    pub fn of(build: &Build, look: &Look) -> Self {
        let view = CaseView {
            azimuth_deg: look.azimuth_deg,
            elevation_deg: look.elevation_deg,
            off: build
                .panels
                .iter()
                .filter(|panel| look.off.iter().any(|id| id == panel.id()))
                .map(|panel| panel.wall)
                .collect(),
            see_through: look.see_through,
            apart: look.apart,
        };
        let picture = case_picture(build, &view);
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
