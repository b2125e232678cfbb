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
    assert_eq!(view(&bench)["changed"], serde_json::json!([]));
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    let after = view(&bench);
    assert_eq!(after["changed"], serde_json::json!(["cooler.height"]));
    assert_eq!(after["values"]["cooler.height"], serde_json::json!(123.5));
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
    assert!(message(bench.replace_with_file("{ \"cooler.widht\": 1 }")).contains("cooler.width"));
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
    assert!(by_file.replace_with_file(&bench.design_file()).is_ok());
    assert_eq!(view(&by_file), before);
}

#[wasm_bindgen_test]
fn a_look_that_is_none_is_refused_in_words() {
    let bench = Workbench::new();
    let look = serde_wasm_bindgen::to_value("from the left").unwrap_or(JsValue::NULL);
    assert!(format!("{:?}", bench.case_picture(look).map_err(JsValue::from).unwrap_err()).contains("look at a case"));
    assert!(message(Workbench::new().set("cooler.height", JsValue::UNDEFINED)).contains("value"));
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
        let dxf = shop.cut_file(id, "dxf");
        assert!(dxf.starts_with("999\r\n") && dxf.ends_with("0\r\nEOF\r\n"), "{id}");
        assert!(dxf.contains("\r\nAC1015\r\n") && dxf.contains("\r\noutline\r\n"), "{id}");
        assert!(shop.cut_file(id, "svg").contains("<g id=\"outline\">"), "{id}");
        assert!(shop.cut_file(id, "pdf").is_empty());
    }
    assert!(shop.cut_file("lid", "dxf").is_empty());
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
    assert!(layout.file(0, "dxf").contains("AC1015"));
    assert!(layout.file(first, "dxf").is_empty());
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
