//! The boundary, in a real browser.
#![cfg(target_arch = "wasm32")]

use panelwright_wasm::Workbench;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// The design as the page reads it.
fn design(bench: &Workbench) -> serde_json::Value {
    let value = bench.design().unwrap_or(JsValue::NULL);
    serde_wasm_bindgen::from_value(value).unwrap_or_default()
}

#[wasm_bindgen_test]
fn a_change_is_kept_and_only_what_differs_is_told() {
    let mut bench = Workbench::new();
    assert_eq!(design(&bench), serde_json::json!({}));
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    assert_eq!(design(&bench), serde_json::json!({ "cooler.height": 123.5 }));
}

#[wasm_bindgen_test]
fn a_wrong_value_says_what_is_allowed_and_loses_nothing() {
    let mut bench = Workbench::new();
    assert!(bench.set("cooler.height", JsValue::from_f64(123.5)).is_ok());
    let refused = bench.set("cooler.height", JsValue::from_f64(9_000.0));
    let message = format!("{:?}", JsValue::from(refused.unwrap_err()));
    assert!(message.contains("cooler.height") && message.contains("9000"), "{message}");
    assert_eq!(design(&bench), serde_json::json!({ "cooler.height": 123.5 }));
}
