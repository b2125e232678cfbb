//! Digests of everything a design gives, so that two programs built from this code can be compared: the same design
//! gives the same bytes natively and in the page.

use std::fmt::Write as _;

use crate::Build;
use crate::cutting::{CutPanel, FileMarks, SvgLines, cut_panel_to_dxf, cut_panel_to_svg};
use crate::design::{Design, write_link};
use crate::documents::build_json::{build_json, findings_json};
use crate::documents::panel_files::file_svg;
use crate::documents::templates;
use crate::drawing::{SvgOptions, svg};
use crate::fnv::fnv1a;
use crate::pictures::{CaseView, case_picture};
use crate::sample;

/// Random designs that are compared, besides the default one in each method.
const SEEDS: u64 = 24;

/// One line for each file of each design: its name and digest.
#[must_use]
pub fn digests() -> String {
    let mut out = String::new();
    for method in ["hand", "router", "laser"] {
        let mut design = Design::default();
        // A method that is not in the list would leave the default: the names of the lines would then not differ.
        if design.set_json("method", &method.into()).is_ok() {
            add(&mut out, method, &design);
        }
    }
    for seed in 0..SEEDS {
        add(&mut out, &format!("{seed}"), &sample::design(seed, seed % 4 == 3));
    }
    out
}

fn add(out: &mut String, name: &str, design: &Design) {
    let build = Build::of(design);
    let mut line = |file: &str, bytes: &[u8]| {
        let _ = writeln!(out, "{name} {file} {:016x}", fnv1a(bytes));
    };
    line("link", write_link(design).as_bytes());
    line("build.json", build_json(&build).as_bytes());
    line("findings.json", findings_json(&build).as_bytes());
    line("case.svg", svg(&case_picture(&build, &CaseView::default()).drawing, &SvgOptions::for_file()).as_bytes());
    for panel in &build.panels {
        line(panel.id(), file_svg(&build, panel.wall).unwrap_or_default().as_bytes());
        for cut in CutPanel::for_files(&build.spec, panel) {
            line("dxf", cut_panel_to_dxf(&cut, FileMarks::of(&build.fingerprint)).as_bytes());
            line("cut.svg", cut_panel_to_svg(&cut, FileMarks::of(&build.fingerprint), SvgLines::Shown).as_bytes());
        }
    }
    let setup = templates::setup(&build.spec.template, None);
    line("templates.pdf", &templates::pdf(&build, &setup));
}
