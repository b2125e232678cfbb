//! `choices`, `sources`, help, and readers that have had enough.

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

use super::run::run;

#[test]
fn every_choice_is_listed_for_people_and_as_json() {
    let json: serde_json::Value = serde_json::from_str(&run(&["choices", "--json"]).printed()).unwrap();
    let text = run(&["choices"]).printed();
    let entries = json.as_array().unwrap();
    assert!(entries.len() > 150);
    for entry in entries {
        let key = entry["key"].as_str().unwrap();
        assert!(text.lines().any(|line| line.trim_start().starts_with(&format!("{key} "))), "{key}");
        for field in ["label", "group", "group_label", "allowed", "help", "source", "confidence"] {
            assert!(entry[field].as_str().is_some_and(|text| !text.is_empty()), "{key}: {field}");
        }
    }
}

#[test]
fn every_source_is_listed_with_document_and_place() {
    let json: serde_json::Value = serde_json::from_str(&run(&["sources", "--json"]).printed()).unwrap();
    let text = run(&["sources"]).printed();
    for entry in json.as_array().unwrap() {
        assert!(text.contains(&format!("{}: {}", entry["name"].as_str().unwrap(), entry["value"].as_str().unwrap())));
        assert!(text.contains(&format!("[{}]", entry["source"].as_str().unwrap())));
    }
    assert!(text.contains("ATX Specification 2.2, figure 3"));
}

#[test]
fn help_and_version_are_results_and_every_task_shows_examples() {
    assert!(run(&["--version"]).printed().starts_with("panelwright "));
    let help = run(&["--help"]).printed();
    let tasks: Vec<&str> = help
        .lines()
        .skip_while(|line| *line != "Commands:")
        .skip(1)
        .take_while(|line| !line.is_empty())
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    assert!(tasks.len() >= 5, "{help}");
    assert!(help.contains("Exit codes: 0 done; "));
    for task in tasks.into_iter().filter(|task| *task != "help") {
        let help = run(&[task, "--help"]).printed();
        assert!(help.contains(&format!("Examples:\n  panelwright {task}")), "{help}");
    }
}

#[test]
fn a_reader_that_closes_the_pipe_is_no_failure() {
    // The list of sources is far longer than what a pipe holds.
    let mut child = Command::new(env!("CARGO_BIN_EXE_panelwright"))
        .args(["sources", "--json"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut first = String::new();
    BufReader::with_capacity(16, child.stdout.take().unwrap()).read_line(&mut first).unwrap();
    assert_eq!(first, "[\n");
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), output.stderr.as_slice()), (Some(0), &b""[..]));
}
