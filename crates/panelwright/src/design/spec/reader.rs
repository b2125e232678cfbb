//! Reading a design's values by key, once.

use crate::design::choice::{Kind, Value};
use crate::design::design::Design;
use crate::design::list::{choice, choices};

/// Reads values of one design by key; keys are those of the list, checked by `every_value_has_a_meaning`.
pub(super) struct Reader<'a>(pub(super) &'a Design);

/// The place of a choice. A key that is misspelt would be read as left open, so tests stop at it.
fn place(key: &str) -> Option<usize> {
    let place = choice(key);
    debug_assert!(place.is_some(), "no choice {key}");
    place
}

impl Reader<'_> {
    pub(super) fn value(&self, key: &str) -> &Value {
        place(key).map_or(&Value::Open, |index| self.0.value(index))
    }

    pub(super) fn mm(&self, key: &str) -> f64 {
        self.open(key).unwrap_or(0.0)
    }

    pub(super) fn open(&self, key: &str) -> Option<f64> {
        match self.value(key) {
            Value::Number(number) => Some(*number),
            _ => None,
        }
    }

    pub(super) fn count(&self, key: &str) -> u8 {
        // Ranges of counts lie within 0..=12, so the cast keeps the value.
        self.mm(key) as u8
    }

    /// Whether a value is another than the default.
    pub(super) fn is_changed(&self, key: &str) -> bool {
        place(key).is_some_and(|index| *self.0.value(index) != choices()[index].default)
    }

    pub(super) fn on(&self, key: &str) -> bool {
        matches!(self.value(key), Value::Switch(true))
    }

    pub(super) fn text(&self, key: &str) -> String {
        match self.value(key) {
            Value::Text(text) => text.trim().to_owned(),
            _ => String::new(),
        }
    }

    pub(super) fn points(&self, key: &str) -> Vec<[f64; 2]> {
        match self.value(key) {
            Value::Points(points) => points.clone(),
            _ => Vec::new(),
        }
    }

    pub(super) fn name(&self, key: &str) -> &'static str {
        let Some(index) = place(key) else { return "" };
        match (&choices()[index].kind, self.0.value(index)) {
            (Kind::Pick(options), Value::Pick(picked)) => options.get(*picked).map_or("", |option| option.name),
            _ => "",
        }
    }
}
