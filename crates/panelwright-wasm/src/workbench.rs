//! The design on screen, as the page sees it: change one choice, read the design back.

use panelwright::design::{Design, choices};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// The version of Panelwright the page runs, for example `0.1.0`.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

/// Holds one design and what follows from it.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct Workbench {
    design: Design,
}

#[wasm_bindgen]
impl Workbench {
    /// A workbench with the default design on it.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Takes one change: the choice's key and its new value as a design file writes it.
    ///
    /// # Errors
    /// A key nobody knows or a value out of range; the message names key, value and what is
    /// allowed, and the design stays as it was.
    pub fn set(&mut self, key: &str, value: JsValue) -> Result<(), JsError> {
        let value: serde_json::Value = serde_wasm_bindgen::from_value(value)?;
        Ok(self.design.set_json(key, &value)?)
    }

    /// The design as a design file holds it: choice key to value, only what differs from the
    /// default.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    pub fn design(&self) -> Result<JsValue, JsError> {
        let chosen: serde_json::Map<_, _> = self
            .design
            .changed()
            .into_iter()
            .map(|index| (choices()[index].key.clone(), self.design.json(index)))
            .collect();
        Ok(chosen.serialize(&Serializer::json_compatible())?)
    }
}
