//! `make`: every file of a design, worked out before the first one is written.

use std::fs;
use std::path::Path;

use panelwright::Build;
use panelwright::cutting::{CutPanel, SvgLines, cut_panel_to_dxf, cut_panel_to_svg};
use panelwright::design::{Design, DesignError, Spec, write_file};
use panelwright::documents::recut::{Recut, Verdict, overlay_svg};
use panelwright::documents::{build_json, lists, marking, templates};
use panelwright::drawing::{SvgOptions, svg};
use panelwright::pictures::{CaseView, case_picture, panel};

use crate::failure::Failure;

/// One file of a pack: its name within the pack, and its bytes.
pub type File = (String, Vec<u8>);

/// The key that `--paper` sets, so that the design in the pack is the one its templates were made from.
const PAPER_KEY: &str = "template.paper";

/// The design printed on another paper.
pub fn on_paper(mut design: Design, paper: &str) -> Result<Design, DesignError> {
    design.set_json(PAPER_KEY, &paper.to_lowercase().into())?;
    Ok(design)
}

/// Every file of the pack.
pub fn pack(design: &Design, build: &Build) -> Vec<File> {
    let mut files = vec![
        ("design.json".to_owned(), write_file(design).into_bytes()),
        ("build.json".to_owned(), build_json::build_json(build).into_bytes()),
        ("findings.json".to_owned(), build_json::findings_json(build).into_bytes()),
        ("case.svg".to_owned(), case_svg(build).into_bytes()),
    ];
    for panel in &build.panels {
        if let Some(svg) = panel::file_svg(build, panel.wall) {
            files.push((format!("panels/{}.svg", panel.id()), svg.into_bytes()));
        }
    }
    let lines = if build.spec.making.hairline { SvgLines::Hairline } else { SvgLines::Shown };
    for panel in &build.panels {
        let cut = CutPanel::by_method(&build.spec, panel);
        let dxf = cut_panel_to_dxf(&cut, &build.fingerprint);
        let svg = cut_panel_to_svg(&cut, &build.fingerprint, lines);
        files.push((format!("cut/{}.dxf", panel.id()), dxf.into_bytes()));
        files.push((format!("cut/{}.svg", panel.id()), svg.into_bytes()));
    }
    if build.spec.making.hand.marking {
        for panel in &build.panels {
            files.push((format!("marking/{}.csv", panel.id()), marking::csv(panel).into_bytes()));
        }
    }
    let setup = templates::setup(&build.spec.template, None);
    let pdf = templates::pdf(&build.spec, &build.panels, &build.fingerprint, &setup);
    files.push(("templates.pdf".to_owned(), pdf));
    files.extend(lists::files(build));
    files
}

/// Writes the test page for a paper.
pub fn test_page(paper: &str, out: &Path, force: bool) -> Result<(), Failure> {
    // The choice knows which papers there are, and says so when this is none of them.
    let design = on_paper(Design::default(), paper).map_err(|error| Failure::Option { option: "--paper", error })?;
    if !force && out.symlink_metadata().is_ok() {
        return Err(Failure::Exists { place: out.to_owned() });
    }
    let page = templates::test_page_pdf(Spec::of(&design).template.paper);
    fs::write(out, page).map_err(|error| Failure::Write { place: out.to_owned(), error })
}

/// The case as one sees it, through the sleeve.
fn case_svg(build: &Build) -> String {
    let view = CaseView { see_through: true, ..CaseView::default() };
    let title = if build.spec.title.is_empty() { "The case" } else { &build.spec.title };
    let options = SvgOptions { title: Some(title.to_owned()), ..SvgOptions::for_file() };
    svg(&case_picture(build, &view).drawing, &options)
}

/// A picture of each panel that changes.
pub fn overlays(old: &Build, new: &Build, recut: &Recut) -> Vec<File> {
    let changed = recut.panels.iter().filter(|change| change.verdict != Verdict::Unchanged);
    changed
        .filter_map(|change| Some((format!("{}.svg", change.panel), overlay_svg(old, new, change)?.into_bytes())))
        .collect()
}
