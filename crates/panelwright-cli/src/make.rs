//! `make`: every file of a design, worked out before the first one is written.

use std::fs;
use std::path::Path;

use panelwright::Build;
use panelwright::design::{Design, DesignError, Spec};
use panelwright::documents::recut::{Recut, Verdict, overlay_svg};
use panelwright::documents::{sheets, templates};

use crate::failure::Failure;

/// One file of a pack: its name within the pack, and its bytes.
pub type File = (String, Vec<u8>);

/// The key that `--paper` sets, so that the design in the pack is the one its templates were made from.
const PAPER_KEY: &str = "template.paper";

/// A design worked out, with what its sheets lack among the findings.
pub fn checked(design: &Design) -> Build {
    sheets::stocked(Build::of(design)).0
}

/// What is to be said beside the result, a line each: sheets that do not suffice, files that went.
pub fn aside(build: &Build, gone: &[String]) -> String {
    let short = build.findings.iter().filter(|finding| finding.rule == sheets::STOCK_RULE);
    let mut text: String = short.map(|finding| format!("{} {}\n", finding.text, finding.remedy)).collect();
    if !gone.is_empty() {
        text.push_str(&format!("removed of the earlier pack: {}\n", gone.join(", ")));
    }
    text
}

/// The design printed on another paper.
pub fn on_paper(mut design: Design, paper: &str) -> Result<Design, DesignError> {
    design.set_json(PAPER_KEY, &paper.to_lowercase().into())?;
    Ok(design)
}

/// Writes one file, in one go: never over another without `force`.
pub fn single(out: &Path, bytes: &[u8], force: bool) -> Result<(), Failure> {
    if !force && out.symlink_metadata().is_ok() {
        return Err(Failure::Exists { place: out.to_owned() });
    }
    fs::write(out, bytes).map_err(|error| Failure::Write { place: out.to_owned(), error })
}

/// Writes the test page for a paper.
pub fn test_page(paper: &str, out: &Path, force: bool) -> Result<(), Failure> {
    // The choice knows which papers there are, and says so when this is none of them.
    let design = on_paper(Design::default(), paper).map_err(|error| Failure::Option { option: "--paper", error })?;
    single(out, &templates::test_page_pdf(Spec::of(&design).template.paper), force)
}

/// A picture of each panel that changes.
pub fn overlays(old: &Build, new: &Build, recut: &Recut) -> Vec<File> {
    let changed = recut.panels.iter().filter(|change| change.verdict != Verdict::Unchanged);
    changed
        .filter_map(|change| Some((format!("{}.svg", change.panel), overlay_svg(old, new, change)?.into_bytes())))
        .collect()
}
