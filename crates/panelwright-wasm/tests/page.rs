//! The boundary, in a real browser.
#![cfg(target_arch = "wasm32")]

use panelwright_wasm::{Workbench, Workshop};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// The view as the page reads it.
fn view(bench: &Workbench) -> serde_json::Value {
    let value = bench.view().unwrap_or(JsValue::NULL);
    serde_wasm_bindgen::from_value(value).unwrap_or_default()
}

fn message(refused: Result<(), wasm_bindgen::JsError>) -> String {
    format!("{:?}", refused.map_err(JsValue::from).unwrap_err())
}

#[wasm_bindgen_test]
fn a_change_is_kept_and_only_what_differs_is_told() {
    let mut bench = Workbench::new();
    assert_eq!(view(&bench)["values"], serde_json::json!({}));
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    let after = view(&bench);
    assert_eq!(after["values"], serde_json::json!({ "cooler.height": 123.5 }));
    assert!(bench.reset("cooler.height").is_ok());
    assert_eq!(view(&bench), view(&Workbench::new()));
}

#[wasm_bindgen_test]
fn a_wrong_value_says_what_is_allowed_and_loses_nothing() {
    let mut bench = Workbench::new();
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    let before = view(&bench);
    let text = message(bench.set("cooler.height", JsValue::from_f64(9_000.0)));
    assert!(text.contains("cooler.height") && text.contains("9000"), "{text}");
    assert!(message(bench.replace_with_link("1GCIDa0h3")).contains("link"));
    let misspelt = workshop(&bench).link_of_file("{ \"cooler.widht\": 1 }").map(|_| ());
    assert!(message(misspelt).contains("cooler.width"));
    assert_eq!(view(&bench), before);
}

#[wasm_bindgen_test]
fn a_design_survives_its_link_and_its_file() {
    let mut bench = Workbench::new();
    assert!(bench.set("board.form", JsValue::from_str("microatx")).is_ok());
    let before = view(&bench);
    let mut by_link = Workbench::new();
    assert!(by_link.replace_with_link(&bench.link()).is_ok());
    assert_eq!(view(&by_link), before);
    let mut by_file = Workbench::new();
    let link = workshop(&bench).link_of_file(&bench.design_file()).map_err(JsValue::from).unwrap();
    assert!(by_file.replace_with_link(&link).is_ok());
    assert_eq!(view(&by_file), before);
}

#[wasm_bindgen_test]
fn what_no_design_file_can_hold_is_refused_and_what_it_can_is_taken() {
    let mut bench = Workbench::new();
    let untold = view(&bench);
    for given in [JsValue::UNDEFINED, JsValue::from_f64(f64::NAN), js_sys::Object::new().into()] {
        assert!(message(bench.set("cooler.height", given)).contains("value"));
    }
    assert_eq!(view(&bench), untold);
    let points = serde_wasm_bindgen::to_value(&[[10.0, 12.5], [30.0, 12.5]]).unwrap();
    let deeper = serde_wasm_bindgen::to_value(&[[[1.0]]]).unwrap();
    let key = "supply.holes";
    assert!(message(bench.set(key, deeper)).contains("value"));
    assert!(bench.set(key, points).is_ok());
    assert_eq!(view(&bench)["values"][key], serde_json::json!([[10, 12.5], [30, 12.5]]));
}

/// A workshop for the design of a bench.
fn workshop(bench: &Workbench) -> Workshop {
    Workshop::new(&bench.link()).map_err(JsValue::from).unwrap()
}

fn plain(value: Result<JsValue, wasm_bindgen::JsError>) -> serde_json::Value {
    serde_wasm_bindgen::from_value(value.unwrap_or(JsValue::NULL)).unwrap_or_default()
}

#[wasm_bindgen_test]
fn every_panel_has_its_cutting_files() {
    let shop = workshop(&Workbench::new());
    for id in ["floor", "back", "left", "right", "front", "top"] {
        let dxf = cut_files(&shop, id, "dxf");
        assert_eq!(dxf.len(), 1, "{id}");
        assert!(dxf[0].1.starts_with("999\r\n") && dxf[0].1.ends_with("0\r\nEOF\r\n"), "{id}");
        assert!(dxf[0].1.contains("\r\nAC1015\r\n") && dxf[0].1.contains("\r\noutline\r\n"), "{id}");
        assert!(cut_files(&shop, id, "svg")[0].1.contains("<g id=\"outline\">"), "{id}");
        assert!(cut_files(&shop, id, "pdf").is_empty());
    }
    assert!(cut_files(&shop, "lid", "dxf").is_empty());
}

/// Names and texts of a panel's cutting files.
fn cut_files(shop: &Workshop, id: &str, kind: &str) -> Vec<(String, String)> {
    named(&plain(shop.cut_files(id, kind)))
}

fn named(files: &serde_json::Value) -> Vec<(String, String)> {
    let text = |file: &serde_json::Value, field: &str| file[field].as_str().unwrap_or_default().to_owned();
    files.as_array().into_iter().flatten().map(|file| (text(file, "name"), text(file, "text"))).collect()
}

#[wasm_bindgen_test]
fn a_panel_worked_on_both_faces_and_its_sheet_have_two_files() {
    let mut bench = Workbench::new();
    // The shield's rebate is cut from outside, the floor's from inside.
    assert!(bench.set("method", JsValue::from_str("router")).is_ok());
    for key in ["board.io_opening", "joint.floor_back"] {
        assert!(bench.set(key, JsValue::from_str("rebate")).is_ok());
    }
    let shop = workshop(&bench);
    let back = cut_files(&shop, "back", "dxf");
    let names: Vec<&str> = back.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names, ["back-first", "back"]);
    assert_ne!(back[0].1, back[1].1);
    let layout = shop.layout().map_err(JsValue::from).unwrap();
    let names: Vec<String> = named(&plain(layout.files(0, "svg"))).into_iter().map(|(name, _)| name).collect();
    assert_eq!(names, ["sheet-1-first", "sheet-1"]);
    let plan = plain(shop.templates_plan());
    let goes = |panel: &str| {
        let sheets = plan["sheets"].as_array().into_iter().flatten();
        sheets.filter(|sheet| sheet["panel"] == panel).map(|sheet| sheet["goes"].clone()).next()
    };
    assert_eq!(goes("back"), Some(serde_json::json!(2)));
}

#[wasm_bindgen_test]
fn what_a_maker_brings_is_told_apart() {
    let mut bench = Workbench::new();
    let other = workshop(&bench);
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    let shop = workshop(&bench);
    let is = |name: &str, bytes: &[u8]| plain(shop.look_at(name, bytes));
    let pack = is("quay.zip", &other.pack_zip());
    assert_eq!(pack["is"], serde_json::json!("pack"));
    let verdicts = |verdict: &str| {
        let files = pack["files"].as_array().into_iter().flatten();
        files.filter(|file| file["verdict"] == verdict).count()
    };
    assert!(verdicts("belongs") > 20 && verdicts("other") == 0 && verdicts("design") == 1, "{pack}");
    let design = is("quay.json", bench.design_file().as_bytes());
    assert_eq!((&design["is"], &design["link"]), (&serde_json::json!("design"), &serde_json::json!(bench.link())));
    assert_eq!(is("link", format!("#{}", bench.link()).as_bytes())["fingerprint"], design["fingerprint"]);
    for (from, verdict) in [(&shop, "belongs"), (&other, "other")] {
        let marked = is("templates.pdf", &from.templates_pdf());
        assert_eq!((&marked["is"], &marked["verdict"]), (&serde_json::json!("marked"), &serde_json::json!(verdict)));
    }
    for wrong in [&b"PK and no more"[..], b"{ \"cooler.widht\": 1 }", b"\x89PNG", b"", b"bought on Friday"] {
        assert!(shop.look_at("wrong", wrong).is_err());
    }
    let mark = design["fingerprint"].as_str().unwrap_or_default().to_lowercase();
    assert_eq!(plain(shop.check_print(&mark, Vec::new()))["is"], serde_json::json!("belongs"));
    let theirs = pack["fingerprint"].as_str().unwrap_or_default();
    assert_eq!(plain(shop.check_print(theirs, Vec::new()))["is"], serde_json::json!("other"));
    assert!(shop.check_print("7", Vec::new()).is_err());
}

#[wasm_bindgen_test]
fn kits_of_two_designs_are_counted_both_ways() {
    let mut bench = Workbench::new();
    let first = bench.link();
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    let shop = workshop(&bench);
    let request = |count: serde_json::Value, ask: &str| {
        serde_json::json!({
            "units": [
                { "design": bench.link(), "label": "", "count": 1, "part": "case" },
                { "design": first, "label": "Quay", "count": 2, "part": "sleeve" },
            ],
            "sheets": [{ "width_mm": 1220.0, "height_mm": 610.0, "count": count, "material": null }],
            "ask": ask,
        })
        .to_string()
    };
    let ask = |text: &str| shop.kits(text).map_err(JsValue::from);
    let mut counts = ask(&request(serde_json::Value::Null, "counts")).unwrap();
    counts.step(60_000);
    let found = plain(counts.found());
    let sheets = found["answer"]["stacks"][0]["layouts"]["sheets"].as_array().map_or(0, Vec::len);
    let pictures = found["pictures"][0].as_array().map_or(0, Vec::len);
    assert!(sheets >= 1 && sheets == pictures, "{sheets} sheets, {pictures} pictures");
    assert!(counts.zip().starts_with(b"PK"));
    let mut most = ask(&request(4.into(), "most")).unwrap();
    most.step(60_000);
    most.look();
    assert!(plain(most.found())["answer"]["rounds"].as_u64() >= Some(1));
    for wrong in [request(serde_json::Value::Null, "most"), request((-1).into(), "counts"), "{}".to_owned()] {
        assert!(ask(&wrong).is_err());
    }
}

#[wasm_bindgen_test]
fn lists_come_as_tables_as_csv_and_as_pages() {
    let mut bench = Workbench::new();
    assert!(bench.set("price.screw", JsValue::from_f64(2.5)).is_ok());
    let shop = workshop(&bench);
    let lists = plain(shop.lists());
    let table = &lists["tables"][0];
    assert_eq!(table["name"], serde_json::json!("shopping"));
    let rows = table["rows"].as_array().map_or(0, Vec::len);
    assert!(rows > 8 && lists["total"].as_f64().is_some_and(|total| total > 0.0), "{lists}");
    assert_eq!(shop.list_csv("shopping").matches("\r\n").count(), rows + 1);
    assert!(shop.list_csv("no such list").is_empty());
    assert!(shop.lists_pdf("letter").starts_with(b"%PDF"));
}

#[wasm_bindgen_test]
fn a_layout_is_there_at_once_and_never_gets_worse() {
    let mut bench = Workbench::new();
    assert!(bench.set("kit.count", JsValue::from_f64(5.0)).is_ok());
    let mut layout = workshop(&bench).layout().map_err(JsValue::from).unwrap();
    let sheets = |layout: &panelwright_wasm::Layout| plain(layout.found())["sheets"].as_array().map_or(0, Vec::len);
    let first = sheets(&layout);
    let start = layout.steps();
    assert!(first > 1, "{first}");
    for _ in 0..3 {
        layout.step(20_000);
    }
    assert!(layout.done() || layout.steps() >= start + 60_000.0);
    assert!(sheets(&layout) <= first && sheets(&layout) >= plain(layout.found())["bound"].as_u64().unwrap() as usize);
    assert!(named(&plain(layout.files(0, "dxf")))[0].1.contains("AC1015"));
    assert!(named(&plain(layout.files(first, "dxf"))).is_empty());
}

#[wasm_bindgen_test]
fn an_older_design_is_compared_by_file_and_by_link() {
    let mut bench = Workbench::new();
    let (file, link) = (bench.design_file(), bench.link());
    assert!(bench.set("board.standoff", JsValue::from_f64(30.0)).is_ok());
    let shop = workshop(&bench);
    let by_file = plain(shop.recut_from_file(&file));
    assert_eq!(by_file, plain(shop.recut_from_link(&link)));
    assert_eq!(by_file["panels"].as_array().map(Vec::len), Some(6));
    assert!(format!("{:?}", shop.recut_from_link("1x").map_err(JsValue::from).unwrap_err()).contains("link"));
    assert!(Workshop::new("1x").is_err());
}
