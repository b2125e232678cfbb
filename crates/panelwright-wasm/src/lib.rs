//! The boundary between the page and the core, as two modules. The [`Workbench`] holds the design on screen, takes a
//! change and gives back what the page shows; the [`Workshop`] takes a finished design and makes files, lists and
//! layouts of it, in a worker beside the page. Nothing is worked out here.

#[cfg(feature = "workbench")]
mod workbench;
#[cfg(feature = "workshop")]
mod workshop;

#[cfg(feature = "workbench")]
pub use workbench::Workbench;
#[cfg(feature = "workshop")]
pub use workshop::{KitLayout, Layout, Workshop};

use wasm_bindgen::prelude::*;

/// The version of Panelwright this module was built from, for example `0.1.0`.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
