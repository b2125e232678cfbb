//! How answers cross to the page, and what becomes of a fault in the program.

use std::sync::Once;

use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// A plain object of the page's language, as JSON would give it.
///
/// # Errors
/// What such an object cannot hold, which nothing of ours is.
pub fn plain(value: &impl Serialize) -> Result<JsValue, JsError> {
    value.serialize(&Serializer::json_compatible()).map_err(|error| JsError::new(&error.to_string()))
}

/// From now on a fault in the program is told on the browser's console, where whoever reports it can copy it from; the
/// page itself learns only that the request came to nothing.
pub fn tell_faults() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        std::panic::set_hook(Box::new(|fault| web_sys::console::error_1(&fault.to_string().into())));
    });
}
