//! How a value crosses from the core to the page: as one text. A call across the boundary for each field and number
//! would take several times as long, and would bring a reader and a writer of its own into the module.

use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// The browser's own reader of JSON.
    #[wasm_bindgen(js_namespace = JSON, catch)]
    fn parse(text: &str) -> Result<JsValue, JsValue>;
}

/// A plain object of the page's language.
pub fn plain(value: &impl serde::Serialize) -> Result<JsValue, JsError> {
    parsed(&panelwright::json::to_text(value))
}

/// The same of what is JSON already.
pub fn parsed(text: &str) -> Result<JsValue, JsError> {
    parse(text).map_err(|_| JsError::new("the page cannot read what the core says"))
}
