//! A value that the page gives: a text, a number, yes or no, nothing, or a list of these. It is looked at as it is, for a
//! reader of JSON would weigh more than all that is done with it.

use js_sys::Array;
use serde_json::{Number, Value};
use wasm_bindgen::prelude::*;

/// Lists in lists that a value can be: measured points are a list of pairs.
const DEPTH: usize = 2;

/// The value as a design file writes it.
///
/// # Errors
/// What no design file can hold: an object, a number that is none, lists in lists in lists.
pub fn given(value: &JsValue) -> Result<Value, JsError> {
    at_depth(value, DEPTH).ok_or_else(|| JsError::new("this is no value a design file can hold"))
}

fn at_depth(value: &JsValue, depth: usize) -> Option<Value> {
    if value.is_null() {
        return Some(Value::Null);
    }
    if let Some(on) = value.as_bool() {
        return Some(Value::Bool(on));
    }
    if let Some(number) = value.as_f64() {
        return Number::from_f64(number).map(Value::Number);
    }
    if let Some(text) = value.as_string() {
        return Some(Value::String(text));
    }
    if depth == 0 || !Array::is_array(value) {
        return None;
    }
    Array::from(value).iter().map(|item| at_depth(&item, depth - 1)).collect::<Option<Vec<_>>>().map(Value::Array)
}
