//! How a value crosses between the page and the core: as one text. A call across the boundary for each field and number
//! would take several times as long, and would bring a reader and a writer of its own into the module.

use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// The browser's own reader of JSON.
    #[wasm_bindgen(js_namespace = JSON, catch)]
    fn parse(text: &str) -> Result<JsValue, JsValue>;

    /// The browser's own writer of JSON; none for what JSON cannot say.
    #[cfg(feature = "workbench")]
    #[wasm_bindgen(js_namespace = JSON, catch)]
    fn stringify(value: &JsValue) -> Result<Option<String>, JsValue>;
}

/// A plain object of the page's language.
pub(crate) fn plain(value: &impl serde::Serialize) -> Result<JsValue, JsError> {
    parsed(&panelwright::json::to_text(value))
}

/// The same of what is JSON already.
pub(crate) fn parsed(text: &str) -> Result<JsValue, JsError> {
    parse(text).map_err(|_| JsError::new("the page cannot read what the core says"))
}

/// What the page says, as JSON.
#[cfg(feature = "workbench")]
pub(crate) fn read(value: &JsValue) -> Result<serde_json::Value, JsError> {
    let text =
        stringify(value).ok().flatten().ok_or_else(|| JsError::new("this is no value a design file can hold"))?;
    Ok(serde_json::from_str(&text)?)
}
