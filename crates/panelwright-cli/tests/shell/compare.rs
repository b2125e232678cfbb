//! `compare`: what a new design means for a case built already.

use super::run::{file, folder, run, run_with};

#[test]
fn a_design_against_itself_changes_nothing() {
    let here = folder("compare-same");
    let design = file(&here, "quay.json", r#"{"cooler.height": 150}"#);
    let done = run(&["compare", &design, &design]);
    assert_eq!((done.code, done.err.as_str()), (0, ""));
    assert_eq!(done.out.matches(": unchanged").count(), 7, "{}", done.out);
}

#[test]
fn a_change_is_told_by_words_code_json_and_pictures() {
    let here = folder("compare-other");
    let old = file(&here, "old.json", "{}");
    let new = file(&here, "new.json", r#"{"sheet.measured": 5.7}"#);
    let out = here.join("changes");
    let done = run(&["compare", &old, &new, "--out", out.to_str().unwrap()]);
    assert_eq!(done.code, 1, "{}", done.err);
    assert!(done.out.contains("Its sheet is 5.7 mm thick instead of 6."), "{}", done.out);
    assert!(std::fs::read_to_string(out.join("floor.svg")).unwrap().contains("recut"));
    let json = run_with(&["compare", &old, "-", "--json"], br#"{"sheet.measured": 5.7}"#);
    assert_eq!(json.code, 1);
    let data: serde_json::Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(data["panels"].as_array().unwrap().len(), 6);
    assert_eq!(data["panels"][0]["verdict"], "recut");
}

#[test]
fn wrong_input_is_no_change() {
    let here = folder("compare-wrong");
    let design = file(&here, "old.json", "{}");
    run(&["compare", &design, "nowhere.json"]).failed(2);
    assert!(run(&["compare", "-", "-"]).failed(2).contains("one design"));
}
