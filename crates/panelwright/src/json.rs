//! JSON text, with numbers written by our own number formatter.
//!
//! The reader's way of writing numbers carries 20 kB of tables into the page's module to keep all 17 digits; nothing
//! of ours means more than nine decimals.

use std::io::{self, Write};

use serde::Serialize;
use serde_json::ser::{Formatter, Serializer};

use crate::drawing::number::{MOST_DECIMALS, with_number};

/// A value as JSON text without any blanks. Empty only for what JSON cannot say (a map whose keys are no text), which
/// nothing of ours holds.
///
/// ```
/// assert_eq!(panelwright::json::to_text(&[1.0, 0.1 + 0.2]), "[1,0.3]");
/// ```
#[must_use]
pub fn to_text(value: &impl Serialize) -> String {
    let mut bytes = Vec::new();
    match value.serialize(&mut Serializer::with_formatter(&mut bytes, Compact)) {
        Ok(()) => String::from_utf8(bytes).unwrap_or_default(),
        Err(_) => String::new(),
    }
}

/// Writes a number as JSON: nine decimals at most, whole ones without a point.
pub(crate) fn write_number<W: ?Sized + Write>(to: &mut W, value: f64) -> io::Result<()> {
    with_number(value, MOST_DECIMALS, |number| to.write_all(number.as_bytes()))
}

struct Compact;

impl Formatter for Compact {
    fn write_f32<W: ?Sized + Write>(&mut self, to: &mut W, value: f32) -> io::Result<()> {
        write_number(to, f64::from(value))
    }

    fn write_f64<W: ?Sized + Write>(&mut self, to: &mut W, value: f64) -> io::Result<()> {
        write_number(to, value)
    }
}
