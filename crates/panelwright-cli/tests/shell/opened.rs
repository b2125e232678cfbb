//! `open` and `check-prints` on packs and on what lies in them.

use std::fs;

use super::run::{file, folder, run, run_with};

const DESIGN: &str = "{\n  \"format\": 1,\n  \"design.title\": \"Quay\",\n  \"hand.marking\": true\n}\n";
const OTHER: &str = "{\n  \"format\": 1,\n  \"cooler.height\": 100\n}\n";

/// The fingerprint of a pack in a folder, by its build.json.
fn mark(pack: &std::path::Path) -> String {
    let text = fs::read_to_string(pack.join("build.json")).unwrap();
    text.split("\"fingerprint\": \"").nth(1).unwrap()[..8].to_owned()
}

#[test]
fn a_pack_gives_its_design_back_and_tells_strangers() {
    let here = folder("opened");
    let path = |name: &str| here.join(name).to_str().unwrap().to_owned();
    let (mine, other) = (file(&here, "quay.json", DESIGN), file(&here, "other.json", OTHER));
    let made = run(&["make", &mine, "--out", &path("quay"), "--zip", &path("quay.zip")]);
    assert_eq!(made.code, 0, "{}", made.err);
    assert_eq!(run(&["make", &other, "--out", &path("other")]).code, 0);
    let (fingerprint, others) = (mark(&here.join("quay")), mark(&here.join("other")));
    for pack in [path("quay"), path("quay.zip")] {
        let done = run(&["open", &pack]);
        assert_eq!((done.code, done.out.as_str()), (0, DESIGN), "{}", done.err);
        assert!(
            done.err.contains(&format!("Design {fingerprint} (Quay)")) && done.err.contains("none another"),
            "{}",
            done.err
        );
        assert!(!done.err.contains("Without a fingerprint"), "{}", done.err);
        // A pack is a design wherever one is wanted.
        assert!(run(&["link", &pack]).printed().starts_with("#1"));
    }
    let zip = fs::read(path("quay.zip")).unwrap();
    assert_eq!(run_with(&["open", "-"], &zip).out, DESIGN);
    assert!(run_with(&["open", "-"], &zip[..zip.len() - 9]).failed(2).contains("its end is missing"));

    // What bears a mark tells it, whatever it is called.
    for name in [
        "templates.pdf",
        "cut/left.dxf",
        "cut/left.svg",
        "panels/left.svg",
        "build.json",
        "lists/shopping.csv",
        "marking/left.csv",
    ] {
        let said = run(&["open", &path(&format!("quay/{name}"))]).printed();
        assert!(said.contains(&format!(": design {fingerprint}")), "{said}");
    }
    assert!(run(&["check", &path("quay/cut/left.dxf")]).failed(2).contains("give its design.json"));

    fs::copy(path("other/cut/left.dxf"), path("quay/cut/left.dxf")).unwrap();
    let done = run(&["open", &path("quay")]);
    assert_eq!((done.code, done.out.as_str()), (1, DESIGN));
    assert!(done.err.contains(&format!("cut/left.dxf: design {others}")), "{}", done.err);
    let json = run(&["open", &path("quay"), "--json"]);
    assert!(json.code == 1 && json.out.contains("\"verdict\": \"other\""), "{}", json.out);

    let prints = ["check-prints", &mine, &fingerprint.to_lowercase(), &path("quay/templates.pdf")];
    let said = run(&prints).printed();
    assert_eq!(said.matches("belongs to this design").count(), 2, "{said}");
    let done = run(&["check-prints", &path("quay.zip"), &others, &path("quay/cut/left.dxf"), "--json"]);
    assert!(done.code == 1 && done.out.matches("\"is\": \"other\"").count() == 2, "{}", done.out);
    assert!(run(&["check-prints", &mine, "ABC"]).failed(2).contains("a fingerprint has 8"));
}

#[test]
fn a_folder_without_a_design_is_no_pack() {
    let here = folder("no-pack");
    assert!(run(&["open", here.to_str().unwrap()]).failed(2).contains("this is no pack"));
}
