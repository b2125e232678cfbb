//! The pictures of the page: the case as one sees it, the panels flat.

use panelwright::Build;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::json::to_text;
use panelwright::panels::Panel;
use panelwright::pictures::{CaseView, case_picture, panel};
use serde::Serialize;

/// Free paper around a panel that stands among others, mm.
const AIR_MM: f64 = 1.0;

/// What the page knows of a picture of the case; points in mm of the picture, y down as on a screen.
#[derive(Debug, Serialize)]
struct CasePlaces {
    width_mm: f64,
    height_mm: f64,
    points: Vec<Option<[f64; 2]>>,
}

/// The case as one sees it: a line of JSON with its size and places, then the drawing, which is long and would only be
/// wrapped to be unwrapped again.
pub fn case(build: &Build, view: &CaseView) -> String {
    let picture = case_picture(build, view);
    let (width_mm, height_mm) = (picture.drawing.width_mm, picture.drawing.height_mm);
    let place = |finding| picture.place_of(finding).map(|at| [at.x, height_mm - at.y]);
    let points = build.findings.iter().map(place).collect();
    let mut text = to_text(&CasePlaces { width_mm, height_mm, points });
    text.push('\n');
    text.push_str(&svg(&picture.drawing, &SvgOptions::for_page("case-")));
    text
}

/// A panel flat, seen from outside; its outline has the id `flat-PANEL`, a feature `flat-PANEL-FEATURE`.
pub fn flat(panel: &Panel) -> String {
    svg(&panel::page_picture(panel), &SvgOptions::for_page("flat-"))
}

/// The same among others: without dimensions and words.
pub fn small(panel: &Panel) -> String {
    svg(&panel::small_picture(panel, AIR_MM), &SvgOptions::for_page("small-"))
}
