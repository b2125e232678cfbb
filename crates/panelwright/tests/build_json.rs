//! `build.json`: choices without effect change nothing in it, and it says what the build says.

use panelwright::Build;
use panelwright::design::fingerprint::normalised;
use panelwright::design::{Design, choices};
use panelwright::documents::build_json::{build_json, findings_json};
use panelwright::sample;

/// A fingerprint leaves out choices that do not apply. It may do so only because they have no effect at all.
#[test]
fn choices_that_do_not_apply_change_nothing_that_is_worked_out() {
    let mut dropped = 0;
    for seed in 0..120 {
        let design = sample::design(seed, true);
        let plain = normalised(&design);
        dropped += design.changed().len() - plain.changed().len();
        let (found, expected) = (build_json(&Build::of(&design)), build_json(&Build::of(&plain)));
        if found != expected {
            let key = culprit(&design, &plain, &expected);
            panic!("seed {seed}: {key} has an effect although it does not apply");
        }
    }
    assert!(dropped > 1000, "{dropped}");
}

/// The first choice that, given its value of `design` within `plain`, changes the result.
fn culprit(design: &Design, plain: &Design, expected: &str) -> String {
    for (index, choice) in choices().iter().enumerate() {
        let mut one = plain.clone();
        one.set(&choice.key, design.value(index).clone()).unwrap();
        if build_json(&Build::of(&one)) != expected {
            return choice.key.clone();
        }
    }
    "a pair of choices".to_owned()
}

#[test]
fn the_files_hold_everything_the_build_holds() {
    for seed in 0..30 {
        let build = Build::of(&sample::design(seed, seed % 2 == 0));
        let json: serde_json::Value = serde_json::from_str(&build_json(&build)).unwrap();
        let count = |field: &str| json[field].as_array().unwrap().len();
        assert_eq!(count("parts"), build.parts.len());
        assert_eq!(count("panels"), build.panels.len());
        assert_eq!(count("screws"), build.screws.len());
        assert_eq!(count("fasteners"), build.fasteners.len());
        assert_eq!(count("findings"), build.findings.len());
        for (written, panel) in json["panels"].as_array().unwrap().iter().zip(&build.panels) {
            assert_eq!(written["features"].as_array().unwrap().len(), panel.features.len());
        }
        let findings: serde_json::Value = serde_json::from_str(&findings_json(&build)).unwrap();
        assert_eq!(findings["findings"], json["findings"]);
    }
}

/// Numbers of the worked example: a case of 210 x 297 x 200 mm outside holds 12.474 l.
#[test]
fn sizes_are_written_as_they_were_given() {
    let mut design = Design::default();
    for (key, value) in [("size.width", 210.0), ("size.depth", 297.0), ("size.height", 200.0)] {
        design.set_json(key, &value.into()).unwrap();
    }
    design.set_json("size.rule", &"given".into()).unwrap();
    let json: serde_json::Value = serde_json::from_str(&build_json(&Build::of(&design))).unwrap();
    assert_eq!(json["case"]["outside_mm"], serde_json::json!([210, 297, 200]));
    assert_eq!(json["case"]["inside_mm"], serde_json::json!([198, 285, 188]));
    assert_eq!(json["case"]["volume_l"], serde_json::json!(12.474));
    assert_eq!(json["case"]["gap_mm"], serde_json::json!(0.5));
    let left = &json["panels"][2];
    assert_eq!(left["id"], "left");
    assert_eq!(left["outline"], "M0 0L297 0L297 200L0 200Z");
    assert_eq!(left["frame"]["origin_mm"], serde_json::json!([0, 297, 0]));
    assert_eq!(left["frame"]["u"], serde_json::json!([0, -1, 0]));
}
