//! How our JSON files are laid out: objects one field a line, numbers of a list side by side.
//!
//! ```json
//! {
//!   "size_mm": [210, 297],
//!   "bodies_mm": [
//!     [0, 0, 6, 10, 20, 30]
//!   ]
//! }
//! ```

use std::io::{self, Write};

use serde::Serialize;
use serde_json::ser::{CharEscape, CompactFormatter, Formatter, Serializer};

use crate::json::write_number;

/// A value as JSON text with a line break at its end. `None` only for what JSON cannot say (a map whose keys are no
/// text), which none of our documents holds.
pub(super) fn to_json(value: &impl Serialize) -> Option<String> {
    let mut bytes = Vec::new();
    value.serialize(&mut Serializer::with_formatter(&mut bytes, Layout::default())).ok()?;
    bytes.push(b'\n');
    String::from_utf8(bytes).ok()
}

/// Where the writer stands inside a list: the separator depends on what comes next.
#[derive(Clone, Copy, PartialEq)]
enum Pending {
    /// Nothing to separate.
    None,
    /// The first value of a list.
    First,
    /// A later value of a list.
    Later,
}

struct Layout {
    depth: usize,
    pending: Pending,
    /// Whether the values written last stand side by side, so that the list ends on the same line.
    beside: bool,
    /// Whether the object or list at hand has any value yet.
    filled: bool,
}

impl Default for Layout {
    fn default() -> Self {
        Self { depth: 0, pending: Pending::None, beside: false, filled: false }
    }
}

impl Layout {
    fn line<W: ?Sized + Write>(&self, to: &mut W) -> io::Result<()> {
        to.write_all(b"\n")?;
        (0..self.depth).try_for_each(|_| to.write_all(b"  "))
    }

    /// The separator before a number, a word or a text.
    fn before_small<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.beside = true;
        match std::mem::replace(&mut self.pending, Pending::None) {
            Pending::Later => to.write_all(b", "),
            Pending::First | Pending::None => Ok(()),
        }
    }

    /// The separator before a list or an object.
    fn before_large<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        match std::mem::replace(&mut self.pending, Pending::None) {
            Pending::None => Ok(()),
            Pending::First => self.line(to),
            Pending::Later => {
                to.write_all(b",")?;
                self.line(to)
            }
        }
    }
}

/// Writes every kind of small value with its separator before it.
macro_rules! small {
    ($($write:ident: $kind:ty),+ $(,)?) => {$(
        fn $write<W: ?Sized + Write>(&mut self, to: &mut W, value: $kind) -> io::Result<()> {
            self.before_small(to)?;
            CompactFormatter.$write(to, value)
        }
    )+};
}

impl Formatter for Layout {
    small! {
        write_bool: bool, write_i8: i8, write_i16: i16, write_i32: i32, write_i64: i64, write_u8: u8, write_u16: u16,
        write_u32: u32, write_u64: u64,
    }

    fn write_f32<W: ?Sized + Write>(&mut self, to: &mut W, value: f32) -> io::Result<()> {
        self.write_f64(to, f64::from(value))
    }

    fn write_f64<W: ?Sized + Write>(&mut self, to: &mut W, value: f64) -> io::Result<()> {
        self.before_small(to)?;
        write_number(to, value)
    }

    fn write_null<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.before_small(to)?;
        CompactFormatter.write_null(to)
    }

    fn begin_string<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.before_small(to)?;
        CompactFormatter.begin_string(to)
    }

    fn write_char_escape<W: ?Sized + Write>(&mut self, to: &mut W, escape: CharEscape) -> io::Result<()> {
        CompactFormatter.write_char_escape(to, escape)
    }

    fn begin_array<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.before_large(to)?;
        self.depth += 1;
        self.beside = true;
        to.write_all(b"[")
    }

    fn end_array<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.depth -= 1;
        if !self.beside {
            self.line(to)?;
        }
        self.beside = false;
        self.filled = true;
        to.write_all(b"]")
    }

    fn begin_array_value<W: ?Sized + Write>(&mut self, _: &mut W, first: bool) -> io::Result<()> {
        self.pending = if first { Pending::First } else { Pending::Later };
        Ok(())
    }

    fn begin_object<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.before_large(to)?;
        self.depth += 1;
        self.filled = false;
        to.write_all(b"{")
    }

    fn end_object<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        self.depth -= 1;
        if self.filled {
            self.line(to)?;
        }
        self.beside = false;
        self.filled = true;
        to.write_all(b"}")
    }

    fn begin_object_key<W: ?Sized + Write>(&mut self, to: &mut W, first: bool) -> io::Result<()> {
        if !first {
            to.write_all(b",")?;
        }
        self.filled = true;
        self.line(to)
    }

    fn begin_object_value<W: ?Sized + Write>(&mut self, to: &mut W) -> io::Result<()> {
        to.write_all(b": ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn fields_stand_below_and_numbers_beside_each_other() {
        let value = json!({"a": {}, "b": [], "c": [1, 2.5, -3], "d": [[1, 2], [3]], "e": [{"f": "x"}, {"g": null}],
            "h": ["p", "q"], "i": [[]], "j": {"k": true}});
        let expected = "{\n  \"a\": {},\n  \"b\": [],\n  \"c\": [1, 2.5, -3],\n  \"d\": [\n    [1, 2],\n    [3]\n  ],\n  \
                        \"e\": [\n    {\n      \"f\": \"x\"\n    },\n    {\n      \"g\": null\n    }\n  ],\n  \
                        \"h\": [\"p\", \"q\"],\n  \"i\": [\n    []\n  ],\n  \"j\": {\n    \"k\": true\n  }\n}\n";
        assert_eq!(to_json(&value).unwrap(), expected);
    }

    #[test]
    fn whatever_the_layout_the_value_reads_back() {
        for seed in 0..500 {
            let value = nested(&mut crate::sample::Random::new(seed), 5);
            assert_eq!(serde_json::from_str::<serde_json::Value>(&to_json(&value).unwrap()).unwrap(), value);
        }
    }

    fn nested(random: &mut crate::sample::Random, depth: usize) -> serde_json::Value {
        match random.below(if depth == 0 { 4 } else { 6 }) {
            0 => json!(random.below(100)),
            1 => json!("a \"b\" \\ \n"),
            2 => json!(null),
            3 => json!(-1.25),
            4 => (0..random.below(4)).map(|_| nested(random, depth - 1)).collect(),
            _ => (0..random.below(4)).map(|at| (format!("k{at}"), nested(random, depth - 1))).collect(),
        }
    }
}
