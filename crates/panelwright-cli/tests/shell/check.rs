//! `check`: exit codes by what the checks find, for people and as JSON.

use super::run::run_with;

/// A cooler that stands through the top of a given small case.
const BLOCKED: &[u8] = br#"{"size.rule": "given", "size.height": 120, "cooler.height": 200}"#;

#[test]
fn a_design_that_blocks_is_exit_code_1_and_says_why() {
    let done = run_with(&["check", "-"], BLOCKED);
    assert_eq!((done.code, done.err.as_str()), (1, ""));
    let first = done.out.lines().next().unwrap();
    assert!(first.starts_with("blocks: ") && first.ends_with(']'), "{first}");
    assert!(done.out.lines().last().unwrap().contains("block"), "{}", done.out);
}

#[test]
fn the_json_counts_what_it_lists_and_both_forms_agree() {
    for design in [BLOCKED, b"{}"] {
        let done = run_with(&["check", "-", "--json"], design);
        let json: serde_json::Value = serde_json::from_str(&done.out).unwrap();
        let findings = json["findings"].as_array().unwrap();
        let count = |severity: &str| findings.iter().filter(|finding| finding["severity"] == severity).count();
        for severity in ["blocks", "caution", "note"] {
            assert_eq!(json["counts"][severity], count(severity));
        }
        assert_eq!(done.code, i32::from(count("blocks") > 0));
        let text = run_with(&["check", "-"], design);
        assert_eq!(text.code, done.code);
        for finding in findings {
            let line = format!(
                "{}: {} [{}]",
                finding["severity"].as_str().unwrap(),
                finding["text"].as_str().unwrap(),
                finding["rule"].as_str().unwrap()
            );
            assert!(text.out.lines().any(|found| found == line), "{line}");
        }
    }
}

#[test]
fn wrong_input_is_exit_code_2_and_prints_nothing() {
    run_with(&["check", "-"], b"{").failed(2);
    run_with(&["check", "-", "--json"], br#"{"cooler.height": 0}"#).failed(2);
    run_with(&["check", "#1AI3vAtJ"], b"").failed(2);
}
