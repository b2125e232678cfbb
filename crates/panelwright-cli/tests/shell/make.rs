//! `make`: a whole pack or nothing.

use std::fs;
use std::path::Path;

use super::run::{file, folder, run, run_with};

const ENTRIES: [&str; 11] = [
    "README.txt",
    "build.json",
    "case.svg",
    "cut",
    "design.json",
    "findings.json",
    "lists",
    "lists.pdf",
    "panels",
    "sheets",
    "templates.pdf",
];
const SHEETS: [&str; 2] = ["saw-cuts.txt", "sheet-1.svg"];
const LISTS: [&str; 4] = ["bags.csv", "drilling.csv", "panels.csv", "shopping.csv"];
const PANELS: [&str; 6] = ["back.svg", "floor.svg", "front.svg", "left.svg", "right.svg", "top.svg"];

/// The cutting files: each panel as DXF and as SVG.
fn cuts() -> Vec<String> {
    PANELS.iter().flat_map(|name| [name.replace(".svg", ".dxf"), (*name).to_owned()]).collect()
}

fn listed(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

fn text(path: &Path) -> String {
    path.to_str().unwrap().to_owned()
}

#[test]
fn a_pack_holds_every_file_and_the_design_it_was_made_from() {
    let here = folder("make-whole");
    let design = file(&here, "quay.json", r#"{"cooler.height": 150, "design.title": "Quay"}"#);
    let out = here.join("a/b/pack");
    let done = run(&["make", &design, "--out", &text(&out)]);
    assert_eq!(done.code, 0, "{}", done.err);
    assert_eq!(listed(&out), ENTRIES);
    assert_eq!(listed(&out.join("panels")), PANELS);
    assert_eq!(listed(&out.join("cut")), cuts());
    assert_eq!(listed(&out.join("lists")), LISTS);
    assert_eq!(listed(&out.join("sheets")), SHEETS);
    let printed: Vec<&Path> = done.out.lines().map(Path::new).collect();
    assert_eq!(printed.len(), 7 + 3 * PANELS.len() + LISTS.len() + SHEETS.len());
    assert!(printed.iter().all(|path| path.is_file()));
    let kept = fs::read_to_string(out.join("design.json")).unwrap();
    assert_eq!(kept, "{\n  \"format\": 1,\n  \"design.title\": \"Quay\",\n  \"cooler.height\": 150\n}\n");
    let build: serde_json::Value = serde_json::from_str(&fs::read_to_string(out.join("build.json")).unwrap()).unwrap();
    assert_eq!(build["title"], "Quay");
    assert!(done.err.contains(build["fingerprint"].as_str().unwrap()), "{}", done.err);
    // Nothing but the design and the pack is left behind.
    assert_eq!(listed(&here), ["a", "quay.json"]);
    assert_eq!(listed(&here.join("a/b")), ["pack"]);
}

#[test]
fn the_same_design_gives_the_same_bytes_from_file_link_and_input() {
    let here = folder("make-same");
    let design = file(&here, "quay.json", r#"{"card.kind": "none"}"#);
    let link = run(&["link", &design]).printed();
    let outs = [here.join("file"), here.join("link"), here.join("input")];
    run(&["make", &design, "--out", &text(&outs[0])]);
    run(&["make", link.trim(), "--out", &text(&outs[1])]);
    run_with(&["make", "-", "--out", &text(&outs[2])], link.as_bytes());
    for name in ENTRIES
        .iter()
        .filter(|name| !["panels", "cut", "lists", "sheets"].contains(*name))
        .map(|name| (*name).to_owned())
        .chain(PANELS.iter().map(|name| format!("panels/{name}")))
        .chain(cuts().iter().map(|name| format!("cut/{name}")))
        .chain(LISTS.iter().map(|name| format!("lists/{name}")))
        .chain(SHEETS.iter().map(|name| format!("sheets/{name}")))
    {
        let bytes: Vec<Vec<u8>> = outs.iter().map(|out| fs::read(out.join(&name)).unwrap()).collect();
        assert!(!bytes[0].is_empty(), "{name}");
        assert!(bytes[0] == bytes[1] && bytes[1] == bytes[2], "{name}");
    }
}

#[test]
fn existing_files_are_replaced_with_force_only_and_others_stay() {
    let here = folder("make-force");
    let design = file(&here, "quay.json", "{}");
    let out = here.join("pack");
    fs::create_dir(&out).unwrap();
    fs::write(out.join("notes.txt"), "mine").unwrap();
    fs::write(out.join("templates.pdf"), "older").unwrap();
    let said = run(&["make", &design, "--out", &text(&out)]).failed(2);
    assert!(said.contains("templates.pdf: there already; give another folder, or --force"), "{said}");
    assert_eq!(listed(&out), ["notes.txt", "templates.pdf"]);
    assert_eq!(fs::read(out.join("templates.pdf")).unwrap(), b"older");

    assert_eq!(run(&["make", &design, "--out", &text(&out), "--force"]).code, 0);
    let mut all = ENTRIES.to_vec();
    all.push("notes.txt");
    all.sort_unstable();
    assert_eq!(listed(&out), all);
    assert_eq!(fs::read(out.join("notes.txt")).unwrap(), b"mine");
    assert!(fs::read(out.join("templates.pdf")).unwrap().starts_with(b"%PDF"));
    // Again, over a whole pack: refused, then replaced by another design.
    assert!(run(&["make", &design, "--out", &text(&out)]).failed(2).contains("there already"));
    let other = run_with(&["make", "-", "--out", &text(&out), "--force"], br#"{"cooler.height": 120}"#);
    assert_eq!(other.code, 0, "{}", other.err);
    assert!(fs::read_to_string(out.join("design.json")).unwrap().contains("120"));
    assert_eq!(listed(&out), all);
}

#[test]
fn nothing_of_an_earlier_pack_stays_beside_the_new_one() {
    let here = folder("make-over");
    let out = text(&here.join("pack"));
    let large = br#"{"kit.count": 5, "hand.marking": true}"#;
    assert_eq!(run_with(&["make", "-", "--out", &out], large).code, 0);
    let pack = here.join("pack");
    assert!(pack.join("marking/left.csv").is_file() && pack.join("sheets/sheet-2.svg").is_file());
    // Not ours: without a mark, with another name, elsewhere.
    let mine = ["sheets/sheet-9.svg", "sheets/notes.txt", "marking/all.csv", "sheet-2.svg"];
    let marked = fs::read(pack.join("sheets/sheet-2.svg")).unwrap();
    for name in mine {
        fs::write(pack.join(name), if name == "sheets/sheet-9.svg" { b"<svg/>" as &[u8] } else { &marked }).unwrap();
    }
    let done = run_with(&["make", "-", "--force", "--out", &out], b"{}");
    assert_eq!(done.code, 0, "{}", done.err);
    assert!(done.err.contains("removed of the earlier pack: marking/back.csv"), "{}", done.err);
    assert_eq!(listed(&pack.join("marking")), ["all.csv"]);
    assert_eq!(listed(&pack.join("sheets")), ["notes.txt", "saw-cuts.txt", "sheet-1.svg", "sheet-9.svg"]);
    assert!(mine.iter().all(|name| pack.join(name).is_file()));
    // Nothing to remove is nothing to say. A folder that holds nothing after what was removed goes, too.
    let again = run_with(&["make", "-", "--force", "--out", &out], b"{}");
    assert!(!again.err.contains("removed"), "{}", again.err);
    assert_eq!(run_with(&["make", "-", "--force", "--out", &out], large).code, 0);
    fs::remove_file(pack.join("marking/all.csv")).unwrap();
    assert_eq!(run_with(&["make", "-", "--force", "--out", &out], b"{}").code, 0);
    assert!(!pack.join("marking").exists());
}

#[test]
fn a_pack_that_must_not_be_cut_says_so_in_every_first_line() {
    let here = folder("make-blocked");
    let out = here.join("pack");
    let design =
        br#"{"size.rule": "given", "size.height": 120, "cooler.height": 200, "kit.count": 5, "stock.count": 1}"#;
    let done = run_with(&["make", "-", "--out", &text(&out)], design);
    assert_eq!(done.code, 0);
    assert!(done.err.contains("Not enough sheet: "), "{}", done.err);
    for name in ["README.txt", "sheets/saw-cuts.txt", "sheets/sheet-1.svg"] {
        let text = fs::read_to_string(out.join(name)).unwrap();
        assert!(text.contains("block") && text.contains("Do not cut yet: "), "{name}");
        assert!(text.contains("Not enough sheet: "), "{name}");
    }
    // What a machine gets says it, too: a remark at the top of DXF, letters under the part, the title of SVG.
    let laser = here.join("laser");
    let design = br#"{"method": "laser", "size.rule": "given", "size.height": 120, "cooler.height": 200, "kit.count": 5, "stock.count": 1}"#;
    assert_eq!(run_with(&["make", "-", "--out", &text(&laser)], design).code, 0);
    for folder in ["cut", "sheets"] {
        let names = listed(&laser.join(folder));
        assert!(names.iter().filter(|name| name.ends_with(".dxf")).count() >= 1);
        // The piece to measure the beam by is cut before anything else, whatever the checks say.
        for name in names.into_iter().filter(|name| !name.starts_with("kerf-test")) {
            let text = fs::read_to_string(laser.join(folder).join(&name)).unwrap();
            let head = text.split("SECTION").next().unwrap();
            assert!(head.contains("Do not cut yet: ") && head.contains("Not enough sheet: "), "{name}");
        }
    }
    let findings = fs::read_to_string(out.join("findings.json")).unwrap();
    assert!(findings.contains("stock-runs-out"));
    let checked = run_with(&["check", "-"], br#"{"kit.count": 5, "stock.count": 1}"#);
    assert_eq!(checked.code, 0, "a caution blocks nothing");
    assert!(checked.out.contains("caution: Not enough sheet: "), "{}", checked.out);
}

/// Ten pieces of 10 mm that measure 98.5 mm have lost 0.15 mm each (worked example K-1 of the kerf sums).
#[test]
fn a_laser_gets_a_piece_to_measure_its_beam_by_and_the_sum_that_it_solves() {
    let folder = folder("kerf");
    let design = file(&folder, "laser.json", r#"{"format": 1, "method.top": "laser"}"#);
    let out = folder.join("pack");
    assert_eq!(run(&["make", &design, "--out", &text(&out)]).code, 0);
    for name in ["cut/kerf-test.dxf", "cut/kerf-test.svg"] {
        assert!(fs::read_to_string(out.join(name)).unwrap().contains("(100 - S) / 10 mm"), "{name}");
    }
    // Without a laser it goes again.
    let design = file(&folder, "hand.json", r#"{"format": 1}"#);
    assert_eq!(run(&["make", &design, "--out", &text(&out), "--force"]).code, 0);
    assert_eq!(listed(&out.join("cut")), cuts());

    assert_eq!(run(&["kerf", "98.5"]).printed(), "0.15 mm: set laser.kerf to 0.15\n");
    for wrong in ["100.1", "89", "0", "nan", "inf"] {
        assert!(run(&["kerf", wrong]).failed(2).contains("kerf test piece"), "{wrong}");
    }
}

#[test]
fn files_go_into_a_folder_that_holds_other_things() {
    let here = folder("make-into");
    file(&here, "readme.txt", "mine");
    assert_eq!(run_with(&["make", "-", "--out", &text(&here)], b"{}").code, 0);
    let mut all = ENTRIES.to_vec();
    all.push("readme.txt");
    all.sort_unstable();
    assert_eq!(listed(&here), all);
}

#[test]
fn a_run_that_fails_leaves_everything_as_it_was() {
    let here = folder("make-fails");
    // Wrong design: not even the folder.
    run_with(&["make", "-", "--out", &text(&here.join("pack"))], b"{ 1 }").failed(2);
    run_with(&["make", "-", "--paper", "b5", "--out", &text(&here.join("pack"))], b"{}").failed(2);
    // A file where the folder should be, and where the folder above it should be.
    file(&here, "taken", "mine");
    assert!(run_with(&["make", "-", "--out", &text(&here.join("taken"))], b"{}").failed(2).contains("in the way"));
    run_with(&["make", "-", "--out", &text(&here.join("taken/below"))], b"{}").failed(3);
    assert_eq!(listed(&here), ["taken"]);
    // The folder is there; the last files of the pack cannot be moved in, so the first ones are moved out again.
    let out = here.join("pack");
    fs::create_dir(&out).unwrap();
    fs::write(out.join("design.json"), "older").unwrap();
    fs::write(out.join("panels"), "a file, not a folder").unwrap();
    run_with(&["make", "-", "--force", "--out", &text(&out)], b"{}").failed(3);
    assert_eq!(listed(&out), ["design.json", "panels"]);
    assert_eq!(fs::read(out.join("design.json")).unwrap(), b"older");
    fs::remove_file(out.join("panels")).unwrap();
    fs::create_dir(out.join("templates.pdf")).unwrap();
    assert!(run_with(&["make", "-", "--force", "--out", &text(&out)], b"{}").failed(2).contains("in the way"));
    assert_eq!(listed(&out), ["design.json", "templates.pdf"]);
    assert_eq!(fs::read(out.join("design.json")).unwrap(), b"older");
}

#[test]
fn another_paper_is_kept_in_the_design_of_the_pack() {
    let here = folder("make-paper");
    let out = here.join("pack");
    assert_eq!(run_with(&["make", "-", "--out", &text(&out), "--paper", "A3"], b"{}").code, 0);
    assert!(fs::read_to_string(out.join("design.json")).unwrap().contains("\"template.paper\": \"a3\""));
    let said = run_with(&["make", "-", "--out", &text(&here.join("no")), "--paper", "b5"], b"{}").failed(2);
    assert!(said.contains("--paper: template.paper: \"b5\" is not allowed; it must be one of a4, a3"), "{said}");
}
