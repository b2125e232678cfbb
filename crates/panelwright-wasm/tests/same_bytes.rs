//! The same design gives the same bytes here, in a browser, as in the native program.
#![cfg(target_arch = "wasm32")]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// What the native program printed; `cargo xtask test wasm` says where that is.
const NATIVE: &str = include_str!(env!(
    "PANELWRIGHT_NATIVE_DIGESTS",
    "start this test by `cargo xtask test wasm`, which asks the native program first"
));

#[wasm_bindgen_test]
fn every_file_of_every_design_is_the_same_natively_and_here() {
    let here = panelwright::same_bytes::digests();
    assert!(NATIVE.lines().count() > 300, "{} lines", NATIVE.lines().count());
    let other: Vec<(&str, &str)> = NATIVE.lines().zip(here.lines()).filter(|(native, here)| native != here).collect();
    assert!(other.is_empty(), "{} of {} differ, first {:?}", other.len(), NATIVE.lines().count(), other.first());
    assert_eq!(NATIVE.lines().count(), here.lines().count());
}
