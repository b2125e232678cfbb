//! The example designs behave as their stories say.

use std::collections::BTreeSet;
use std::path::PathBuf;

use serde_json::Value;

use super::run::{Done, folder, run};

fn example(name: &str) -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name);
    path.to_str().unwrap().to_owned()
}

fn check(name: &str) -> (Done, Vec<Value>) {
    let done = run(&["check", "--json", &example(name)]);
    let json: Value = serde_json::from_str(&done.out).unwrap();
    let findings = json["findings"].as_array().unwrap().clone();
    (done, findings)
}

#[track_caller]
fn nothing_blocks(name: &str) {
    let (done, findings) = check(name);
    let blocking: Vec<&Value> = findings.iter().filter(|finding| finding["severity"] == "blocks").collect();
    assert_eq!(done.code, 0, "{name}: {blocking:#?}");
}

fn build(name: &str) -> Value {
    let out = folder(&format!("example-{name}")).join("pack");
    assert_eq!(run(&["make", &example(name), "--out", out.to_str().unwrap()]).code, 0);
    serde_json::from_str(&std::fs::read_to_string(out.join("build.json")).unwrap()).unwrap()
}

fn length(part: &Value, axis: usize) -> f64 {
    let body = |at: usize| part["bodies_mm"][0][at].as_f64().unwrap();
    body(axis + 3) - body(axis)
}

fn part<'a>(build: &'a Value, id: &str) -> Option<&'a Value> {
    build["parts"].as_array().unwrap().iter().find(|part| part["id"] == id)
}

fn count(build: &Value, kind: &str) -> usize {
    build["parts"].as_array().unwrap().iter().filter(|part| part["kind"] == kind).count()
}

/// Common practice says that such a case can be built, with every panel cut from A4.
#[test]
fn the_harbour_office_fits_with_every_panel_within_a4() {
    let name = "a-harbour-office.json";
    nothing_blocks(name);
    let build = build(name);
    for panel in build["panels"].as_array().unwrap() {
        let size: Vec<f64> = panel["size_mm"].as_array().unwrap().iter().map(|side| side.as_f64().unwrap()).collect();
        let (short, long) = (size[0].min(size[1]), size[0].max(size[1]));
        // ISO 216: A4 is 210 x 297 mm.
        assert!(short <= 210.0 && long <= 297.0, "{}: {size:?}", panel["id"]);
    }
    // The supply stands on end on the floor: 160 mm of depth upright, its face of 150 x 86 mm down (ATX12V guides).
    let supply = part(&build, "supply").unwrap();
    assert_eq!(length(supply, 2), 160.0);
    assert_eq!(supply["bodies_mm"][0][2], 6);
    assert_eq!(length(part(&build, "card").unwrap(), 1), 267.0);
    // The drive lies below the board, and a fan is at the back.
    let top = |id: &str| part(&build, id).unwrap()["bodies_mm"][0][5].as_f64().unwrap();
    let board = part(&build, "board").unwrap()["bodies_mm"][0][2].as_f64().unwrap();
    assert!(top("drive-1") < board, "{} {board}", top("drive-1"));
    assert_eq!(count(&build, "fan"), 1);
}

#[test]
fn the_ticket_window_has_no_card_and_a_small_supply() {
    nothing_blocks("b-ticket-window.json");
    let build = build("b-ticket-window.json");
    assert_eq!((count(&build, "card"), count(&build, "supply")), (0, 1));
    let volume = build["case"]["volume_l"].as_f64().unwrap();
    assert!(volume < 10.0, "{volume}");
}

/// A full-length card is 312 mm long (PCI Express Card Electromechanical Specification 3.0, figure 9-2); a microATX
/// board 243.84 mm wide (microATX 1.2).
#[test]
fn the_chart_room_holds_a_full_length_card_beside_a_microatx_board() {
    nothing_blocks("c-chart-room.json");
    let build = build("c-chart-room.json");
    assert_eq!(length(part(&build, "card").unwrap(), 1), 312.0);
    assert!((length(part(&build, "board").unwrap(), 0) - 243.84).abs() < 0.001);
}

#[test]
fn the_logbook_store_holds_six_drives() {
    nothing_blocks("d-logbook-store.json");
    assert_eq!(count(&build("d-logbook-store.json"), "drive"), 6);
}

#[test]
fn the_dinghy_locker_cannot_work_and_says_why_and_what_would_help() {
    let (done, findings) = check("e-dinghy-locker.json");
    assert_eq!(done.code, 1);
    let mut rules: Vec<&str> = Vec::new();
    for finding in findings.iter().filter(|finding| finding["severity"] == "blocks") {
        assert!(!finding["remedy"].as_str().unwrap().is_empty(), "{finding:#?}");
        rules.push(finding["rule"].as_str().unwrap());
    }
    for rule in ["card-length", "cooler-under-top", "supply-inlet-feet", "size-too-small"] {
        assert!(rules.contains(&rule), "{rule} is not among {rules:?}");
    }
}

/// Set this variable to draw the pictures anew.
const REWRITE: &str = "PANELWRIGHT_REWRITE_EXAMPLES";

/// What a picture shows, by id, without the small hardware whose number follows from the rest.
fn shown(svg: &str) -> BTreeSet<&str> {
    let hardware = ["bracket-", "captive-", "washer-", "standoff-"];
    svg.split("data-about=\"")
        .skip(1)
        .filter_map(|rest| rest.split('"').next())
        .filter(|id| !hardware.iter().any(|kind| id.starts_with(kind)))
        .collect()
}

#[test]
fn every_example_has_a_picture_of_what_it_is() {
    let mut examples = 0;
    for entry in std::fs::read_dir(example("")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|ending| ending != "json") {
            continue;
        }
        examples += 1;
        let name = path.file_name().unwrap().to_str().unwrap();
        let out = folder(&format!("picture-{name}")).join("pack");
        assert_eq!(run(&["make", &example(name), "--out", out.to_str().unwrap()]).code, 0);
        let now = std::fs::read_to_string(out.join("case.svg")).unwrap();
        let kept = path.with_extension("svg");
        if std::env::var_os(REWRITE).is_some() {
            std::fs::write(&kept, &now).unwrap();
        }
        let kept = std::fs::read_to_string(&kept).unwrap_or_default();
        assert_eq!(shown(&kept), shown(&now), "{name}: draw it anew with {REWRITE}=1");
        let titled = |svg: &str| svg.split("<title>").nth(1).and_then(|rest| rest.split('<').next()).map(str::to_owned);
        // The name, without the fingerprint: another version has another one.
        let title = |svg: &str| titled(svg).map(|title| title.split(", design ").next().unwrap_or_default().to_owned());
        assert!(shown(&now).contains("board") && title(&now).is_some());
        assert_eq!(title(&kept), title(&now), "{name}");
    }
    assert_eq!(examples, 5);
}
