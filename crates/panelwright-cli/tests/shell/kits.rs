//! `kits`: several designs on one stack of sheets.

use super::run::{file, folder, run, run_with};

const QUAY: &str = "{ \"design.title\": \"Quay\", \"method\": \"laser\" }";
const OAK: &str = "{ \"sheet.material\": \"plywood\", \"sheet.measured\": 5.8 }";

#[test]
fn counts_and_parts_are_read_and_laid() {
    let here = folder("kits");
    let (quay, oak) = (file(&here, "quay.json", QUAY), file(&here, "oak.json", OAK));
    let out = here.join("out");
    let kits = [format!("{quay}:2"), format!("{quay}:sleeve"), format!("{oak}:sleeve:3")];
    let mut arguments = vec!["kits", "--steps", "100000", "--out", out.to_str().unwrap()];
    arguments.extend(kits.iter().map(String::as_str));
    let said = run(&arguments).printed();
    for words in ["Quay: 2 wanted", "Quay, sleeve only: 1 wanted", "oak, sleeve only: 3 wanted", "Plywood, 5.8 mm: "] {
        assert!(said.contains(words), "{words} {said}");
    }
    for name in [
        "kits.txt",
        "kits.json",
        "sheets.pdf",
        "fibreboard-6/sheet-1-cut.dxf",
        "plywood-5.8/saw-cuts.txt",
        "designs/3.json",
    ] {
        assert!(out.join(name).is_file(), "{name}");
    }
    // Nothing is overwritten unasked.
    assert!(run(&arguments).failed(2).contains("there already"));
    // The files bear the marks of their designs.
    let mark = run(&["open", out.join("fibreboard-6/sheet-1-cut.dxf").to_str().unwrap()]).printed();
    assert_eq!(run(&["check-prints", &quay, mark.split("design ").nth(1).unwrap().split(',').next().unwrap()]).code, 0);
}

#[test]
fn the_most_from_the_sheets_there_are() {
    let twice = format!("{}:2", file(&folder("kits-most"), "quay.json", QUAY));
    let done = run(&["kits", &twice, "--sheet", "1220x610:3", "--most", "--json", "--steps", "200000"]);
    let answer: serde_json::Value = serde_json::from_str(&done.printed()).unwrap();
    let rounds = answer["rounds"].as_u64().unwrap();
    assert!(rounds >= 1 && rounds <= answer["bound"].as_u64().unwrap(), "{answer:#}");
    assert_eq!(answer["units"][0]["total"].as_u64().unwrap(), 2 * rounds);
    let panels = |sheet: &serde_json::Value| sheet["panels"].as_array().unwrap().len() as u64;
    let sheets = answer["stacks"][0]["layouts"]["sheets"].as_array().unwrap();
    assert!(sheets.len() <= 3);
    assert_eq!(sheets.iter().map(panels).sum::<u64>(), 12 * rounds);
    // Not one case from a small sheet: exit code 1.
    let none = run_with(&["kits", "-", "--sheet", "300x300:1", "--most"], QUAY.as_bytes());
    assert!(none.code == 1 && none.out.contains("0 whole rounds"), "{}{}", none.out, none.err);
}

#[test]
fn wrong_kits_are_said_to_be() {
    let quay = file(&folder("kits-wrong"), "quay.json", QUAY);
    let said = |arguments: &[&str]| run_with(arguments, QUAY.as_bytes()).failed(2);
    assert!(said(&["kits", "-", "--sheet", "1220"]).contains("must be WIDTHxHEIGHT"));
    assert!(said(&["kits", "-", "--sheet", "1220x610@tin"]).contains("no material \"tin\""));
    assert!(said(&["kits", "-", "--sheet", "0x610"]).contains("must be above 0"));
    assert!(said(&["kits", "-", "--most"]).contains("how many sheets there are"));
    assert!(said(&["kits", &format!("{quay}:0")]).contains("at least 1"));
    assert!(said(&["kits", &format!("{quay}:501")]).contains("more than 2000 pieces"));
    assert!(said(&["kits", "-", "-"]).contains("one design"));
    assert!(said(&["kits", "nowhere.json:2"]).contains("nowhere.json: there is no such file"));
}
