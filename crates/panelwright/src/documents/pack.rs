//! The pack: every file of a design, as a list of names and bytes, or as one zip; and opening one again.

mod open;
mod stamp;
mod unzip;
mod zip;

use super::kerf_test::{self, KERF_TEST};
use super::templates::words::PAGE_CAUTIONS;
use super::warnings::{blocking, warnings};
use super::{build_json, lists, marking, panel_files, sheets, templates};
use crate::Build;
use crate::cutting::{CutPanel, FileMarks, cut_panel_to_dxf, cut_panel_to_svg, go_name};
use crate::design::{Wall, write_file};
use crate::drawing::{SvgOptions, svg};
use crate::pictures::{CaseView, case_picture};

pub use open::{DESIGN_FILE, OpenedFile, OpenedPack, PackError, Print, Verdict, check_print, open_files, read_pack};
pub use stamp::{Stamp, stamp};
pub use unzip::{MOST_ENTRIES, MOST_UNPACKED, ZipError, read_zip};
pub use zip::zip;

/// Every file of the pack: its name within the pack, and its bytes.
#[must_use]
pub fn files(build: &Build) -> Vec<(String, Vec<u8>)> {
    let (build, laid) = &sheets::stocked(build.clone());
    let warnings = warnings(&build.findings);
    let marks = FileMarks { design: &build.fingerprint, warnings: &warnings };
    let mut files = vec![
        ("README.txt".to_owned(), readme(build).into_bytes()),
        (DESIGN_FILE.to_owned(), write_file(&build.design).into_bytes()),
        ("build.json".to_owned(), build_json::build_json(build).into_bytes()),
        ("findings.json".to_owned(), build_json::findings_json(build).into_bytes()),
        ("case.svg".to_owned(), case_svg(build).into_bytes()),
    ];
    for panel in &build.panels {
        if let Some(svg) = panel_files::file_svg(build, panel.wall) {
            files.push((format!("panels/{}.svg", panel.id()), svg.into_bytes()));
        }
    }
    let lines = sheets::lines(build);
    for panel in &build.panels {
        let goes = CutPanel::for_files(&build.spec, panel);
        for (number, cut) in goes.iter().enumerate() {
            let name = go_name(&format!("cut/{}", panel.id()), number, goes.len());
            files.push((format!("{name}.dxf"), cut_panel_to_dxf(cut, marks).into_bytes()));
            files.push((format!("{name}.svg"), cut_panel_to_svg(cut, marks, lines).into_bytes()));
        }
    }
    let test = kerf_test::files(build);
    files.extend(test.into_iter().map(|(kind, text)| (format!("cut/{KERF_TEST}.{kind}"), text.into_bytes())));
    if build.spec.making.hand.marking {
        for panel in &build.panels {
            let hand = marking::hand_of(&build.spec, panel);
            let text = marking::csv(panel, hand, &build.fingerprint, &warnings);
            files.push((format!("marking/{}.csv", panel.id()), text.into_bytes()));
        }
    }
    let setup = templates::setup(&build.spec.template, None);
    files.push(("templates.pdf".to_owned(), templates::pdf(build, &setup)));
    let need = laid.as_ref().map(|laid| lists::SheetNeed::of(&laid.plan));
    files.extend(lists::files(build, need.as_ref()));
    files.extend(laid.iter().flat_map(|laid| sheets::files(build, laid)));
    files
}

/// Whether a pack may have a file of this name, whatever its design: who replaces an earlier pack can tell what that
/// left.
#[must_use]
pub fn is_pack_name(name: &str) -> bool {
    let panel = |stem: &str| Wall::of(stem).is_some();
    let drawn = |file: &str| file.strip_suffix(".dxf").or_else(|| file.strip_suffix(".svg")).map(str::to_owned);
    let plain = |stem: &str| stem.strip_suffix("-first").unwrap_or(stem).to_owned();
    match name.split_once('/') {
        None => FIXED.contains(&name),
        Some(("panels", file)) => file.strip_suffix(".svg").is_some_and(panel),
        Some(("marking", file)) => file.strip_suffix(".csv").is_some_and(panel),
        Some(("cut", file)) => drawn(file).is_some_and(|stem| stem == KERF_TEST || panel(&plain(&stem))),
        Some(("lists", file)) => file.strip_suffix(".csv").is_some_and(|stem| lists::NAMES.contains(&stem)),
        Some(("sheets", "saw-cuts.txt")) => true,
        Some(("sheets", file)) => drawn(file).is_some_and(|stem| {
            let stem = plain(&stem);
            let number = stem.strip_suffix("-cut").unwrap_or(&stem).strip_prefix("sheet-").unwrap_or_default();
            !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit())
        }),
        Some(_) => false,
    }
}

/// The files of every pack that lie in no folder of it.
const FIXED: [&str; 7] =
    ["README.txt", DESIGN_FILE, "build.json", "findings.json", "case.svg", "templates.pdf", "lists.pdf"];

/// The folders of a pack.
pub const FOLDERS: [&str; 5] = ["panels", "cut", "marking", "lists", "sheets"];

/// The case as one sees it, through the sleeve.
fn case_svg(build: &Build) -> String {
    let view = CaseView { see_through: true, ..CaseView::default() };
    let name = if build.spec.title.is_empty() { "The case" } else { &build.spec.title };
    let title = format!("{name}, design {}", build.fingerprint);
    let options = SvgOptions { title: Some(title), ..SvgOptions::for_file() };
    svg(&case_picture(build, &view).drawing, &options)
}

/// What each file is, for whoever gets the pack.
fn readme(build: &Build) -> String {
    let named = if build.spec.title.is_empty() { String::new() } else { format!("{}\n", build.spec.title) };
    let fingerprint = &build.fingerprint;
    let version = env!("CARGO_PKG_VERSION");
    let mut first: String = warnings(&build.findings).iter().map(|line| format!("{line}\n")).collect();
    for finding in blocking(&build.findings) {
        first.push_str(&format!("  {}\n", finding.text));
    }
    if !first.is_empty() {
        first.push('\n');
    }
    format!(
        "{named}Design {fingerprint}, panelwright {version}\n\n{first}\
         Every file and every printed page bears {fingerprint}. Prints with another mark belong to another design.\n\n\
         templates.pdf   the panels at true scale, to print, glue on and cut by\n\
         lists.pdf       what to buy, bag, cut and drill; lists/*.csv hold the same for a spreadsheet\n\
         sheets/         the panels on the sheets they are cut from: pictures, saw cuts, files for machines\n\
         cut/            the panels for router or laser, DXF and SVG, mm; each file says which face is up.\n\
         \x20               NAME-first is cut from the inside face, before the sheet is turned over for NAME;\n\
         \x20               layer tabs-…mm marks where holding tabs of that height stay;\n\
         \x20               kerf-test is there for a laser: cut it first, it says how to measure the beam\n\
         marking/        tables for marking out by hand, where the design asks for them\n\
         panels/         the panels as drawings at true scale\n\
         case.svg        a picture of the case\n\
         findings.json   what the checks say; read it before you cut\n\
         build.json      everything that was worked out, for other programs\n\
         design.json     the design: open it again with Panelwright\n\n\
         {}\n",
        PAGE_CAUTIONS.join("\n")
    )
}
