//! The design file: one flat JSON object, choice key to value.
//!
//! ```json
//! {
//!   "format": 1,
//!   "design.title": "Quay bench",
//!   "cooler.height": 125,
//!   "supply.holes": [[6, 16], [144, 16]]
//! }
//! ```
//!
//! A key that is missing has its default, so `{}` is the default design and only what differs need be written.
//! `"format"` may be left out. Defaults, keys and option names of format 1 are therefore permanent.

use std::fmt;

use serde::de::{Deserializer, MapAccess, Visitor};
use serde_json::Value as Json;

use super::broken::fault;
use super::design::{Design, DesignError};
use super::list::choices;
use crate::json::to_text;

/// Longest design file that is read, in bytes; one that names every choice is about 8 000 long.
pub const MOST_BYTES: usize = 65_536;

/// The format that is written, and the only one read.
const FORMAT: u64 = 1;

/// Said of a text that is written in two bytes a letter, as some editors call "Unicode".
const OTHER_TEXT: &str = "it is text, but not UTF-8; save it again as UTF-8";

/// How much of a wrong key or value a message repeats, in characters.
const QUOTED_CHARS: usize = 80;

/// Everything that is wrong with a design file; never empty. Displayed with one problem per line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DesignErrors(Vec<DesignError>);

impl DesignErrors {
    /// The problems in the order of the file.
    pub fn iter(&self) -> impl Iterator<Item = &DesignError> {
        self.0.iter()
    }
}

impl From<DesignError> for DesignErrors {
    fn from(error: DesignError) -> Self {
        Self(vec![error])
    }
}

impl fmt::Display for DesignErrors {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, error) in self.0.iter().enumerate() {
            let line_break = if index == 0 { "" } else { "\n" };
            write!(f, "{line_break}{error}")?;
        }
        Ok(())
    }
}

impl std::error::Error for DesignErrors {}

/// Reads a design file.
///
/// ```
/// use panelwright::design::{Design, read_file};
/// assert_eq!(read_file("{}").unwrap(), Design::default());
///
/// let problems = read_file(r#"{ "cooler.height": 900, "cooler.widht": 120 }"#).unwrap_err();
/// assert_eq!(
///     problems.to_string(),
///     "cooler.height: 900 is not allowed; it must be 20 to 200 mm\n\
///      there is no choice \"cooler.widht\"; did you mean \"cooler.width\"?"
/// );
/// ```
///
/// # Errors
/// Every problem of the file, not only the first: unknown and repeated keys, values of the wrong kind or outside
/// their range. Text that is not one JSON object gives a single problem with its line and column.
pub fn read_file(text: &str) -> Result<Design, DesignErrors> {
    if text.len() > MOST_BYTES {
        return Err(not_a_design(format!("it is {} bytes long, more than the {MOST_BYTES} allowed", text.len())).into());
    }
    // Some editors put an invisible byte order mark in front.
    let text = text.trim_start_matches('\u{feff}');
    if text.contains('\0') || text.starts_with(char::REPLACEMENT_CHARACTER) {
        return Err(not_a_design(OTHER_TEXT.to_owned()).into());
    }
    if text.trim().is_empty() {
        return Err(not_a_design("it is empty; the default design is written {}".to_owned()).into());
    }
    let entries = entries(text)?;
    let mut design = Design::default();
    let mut problems = Vec::new();
    for (index, (key, value)) in entries.iter().enumerate() {
        if entries[..index].iter().any(|(other, _)| other == key) {
            problems.push(DesignError::DuplicateKey { key: shortened(key) });
        }
        let taken = if key == "format" { known_format(value) } else { design.set_json(key, value) };
        problems.extend(taken.err().map(quoted));
    }
    if problems.is_empty() { Ok(design) } else { Err(DesignErrors(problems)) }
}

/// Reads a design file that may not even be text.
///
/// # Errors
/// As [`read_file`]; bytes that are not UTF-8 give a single problem with their place.
pub fn read_file_bytes(bytes: &[u8]) -> Result<Design, DesignErrors> {
    if bytes.len() <= 2 * MOST_BYTES
        && let Some(text) = utf_16(bytes)
    {
        return read_file(&text);
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => read_file(text),
        Err(error) => {
            let place = error.valid_up_to().saturating_add(1);
            Err(not_a_design(format!("byte {place} is not UTF-8 text; save it again as UTF-8")).into())
        }
    }
}

/// Text in two bytes a letter, as some editors save it, told by the mark it begins with (RFC 2781).
fn utf_16(bytes: &[u8]) -> Option<String> {
    let unit = match bytes {
        [0xff, 0xfe, ..] => u16::from_le_bytes,
        [0xfe, 0xff, ..] => u16::from_be_bytes,
        _ => return None,
    };
    let units = bytes.chunks_exact(2).filter_map(|pair| Some(unit(pair.try_into().ok()?)));
    let text: Result<String, _> = char::decode_utf16(units).collect();
    text.ok().filter(|_| bytes.len().is_multiple_of(2))
}

/// Writes a design file: only what differs from the defaults, in the order of the list, one choice per line.
///
/// The same design gives the same bytes, and [`read_file`] gives back the same design.
#[must_use]
pub fn write_file(design: &Design) -> String {
    let mut text = format!("{{\n  \"format\": {FORMAT}");
    for index in design.changed() {
        let [key, value] = [to_text(&choices()[index].key), to_text(&design.json(index))];
        text.push_str(&format!(",\n  {key}: {value}"));
    }
    text.push_str("\n}\n");
    text
}

fn known_format(value: &Json) -> Result<(), DesignError> {
    if value.as_u64() == Some(FORMAT) {
        return Ok(());
    }
    Err(DesignError::BadValue { key: "format".to_owned(), given: to_text(value), allowed: FORMAT.to_string() })
}

fn not_a_design(reason: String) -> DesignError {
    DesignError::NotADesign { reason }
}

fn shortened(text: &str) -> String {
    match text.char_indices().nth(QUOTED_CHARS) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

/// The problem with what it repeats of the file kept short.
fn quoted(error: DesignError) -> DesignError {
    match error {
        DesignError::UnknownKey { key, near } => DesignError::UnknownKey { key: shortened(&key), near },
        DesignError::BadValue { key, given, allowed } => {
            DesignError::BadValue { key, given: shortened(&given), allowed }
        }
        other => other,
    }
}

/// The keys and values of one JSON object in their order, repeated keys and all: an ordinary map would keep only one
/// of two equal keys and hide the mistake.
fn entries(text: &str) -> Result<Vec<(String, Json)>, DesignError> {
    struct Entries;
    impl<'de> Visitor<'de> for Entries {
        type Value = Vec<(String, Json)>;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("an object { key: value, … }")
        }

        fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
            let mut entries = Vec::new();
            while let Some(entry) = map.next_entry()? {
                entries.push(entry);
            }
            Ok(entries)
        }
    }
    let mut reader = serde_json::Deserializer::from_str(text);
    reader.deserialize_map(Entries).and_then(|entries| reader.end().map(|()| entries)).map_err(|error| {
        // What JSON allows can still be more than is read: numbers without end, lists a hundred deep.
        let other = || format!("line {}, column {}: this is no value a design has", error.line(), error.column());
        not_a_design(fault(text).unwrap_or_else(other))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn problems(text: &str) -> Vec<String> {
        read_file(text).unwrap_err().iter().map(ToString::to_string).collect()
    }

    #[test]
    fn an_empty_object_is_the_default_design_and_writes_as_its_format_alone() {
        assert_eq!(read_file("{}").unwrap(), Design::default());
        assert_eq!(read_file("\u{feff}{ \"format\": 1 }\n").unwrap(), Design::default());
        assert_eq!(write_file(&Design::default()), "{\n  \"format\": 1\n}\n");
    }

    #[test]
    fn only_what_differs_is_written_in_the_order_of_the_list() {
        let text = r#"{"feet.kind":"pads","supply.holes":[[6,16.25],[144,16]],"cooler.height":158,
            "board.depth":null,"design.title":"Quay \"bench\"","card.plug_at":"end","board.m2_below":true,
            "sheet.measured":5.87}"#;
        let written = write_file(&read_file(text).unwrap());
        let expected = "{\n  \"format\": 1,\n  \"design.title\": \"Quay \\\"bench\\\"\",\n  \"board.m2_below\": true,\n  \
                        \"card.plug_at\": \"end\",\n  \"supply.holes\": [[6,16.25],[144,16]],\n  \
                        \"feet.kind\": \"pads\",\n  \"sheet.measured\": 5.87\n}\n";
        // The list, not the alphabet, decides the order: sheet comes before feet.
        let expected = expected.replace(
            "  \"feet.kind\": \"pads\",\n  \"sheet.measured\": 5.87\n",
            "  \"sheet.measured\": 5.87,\n  \"feet.kind\": \"pads\"\n",
        );
        assert_eq!(written, expected);
        assert_eq!(read_file(&written), read_file(text));
    }

    #[test]
    fn every_problem_is_reported_and_named() {
        let found = problems(
            r#"{ "cooler.height": 900, "colour": "red", "board.m2_below": 1, "card.kind": null,
                "cooler.height": 100, "card.slots": 1.5, "supply.holes": [[1, 2, 3]], "format": 2 }"#,
        );
        assert_eq!(
            found,
            [
                "cooler.height: 900 is not allowed; it must be 20 to 200 mm",
                "there is no choice \"colour\"",
                "board.m2_below: 1 is not allowed; it must be true or false",
                "card.kind: null is not allowed; it must be one of none, low-profile, standard",
                "cooler.height is given more than once; keep one of its values",
                "card.slots: 1.5 is not allowed; it must be 1 to 4, whole",
                "supply.holes: [[1,2,3]] is not allowed; it must be at most 8 points [x, y], each 0 to 200 mm",
                "format: 2 is not allowed; it must be 1",
            ]
        );
    }

    #[test]
    fn a_syntax_error_names_its_line_and_column() {
        let found = problems("{\n  \"cooler.height\": 100,\n  \"card.slots\" 2\n}");
        assert_eq!(found.len(), 1);
        assert_eq!(
            found[0],
            "this is not a design file: it is not JSON: line 3, column 16: a colon belongs between a key and its value"
        );
        assert!(problems("\n{")[0].contains("ends at line 2, column 2"), "{:?}", problems("\n{"));
        assert!(problems(" \n")[0].contains("it is empty"));
        // JSON, but more than is read.
        let deep = format!("{{\n\"supply.holes\": {}1{}}}", "[".repeat(200), "]".repeat(200));
        for text in [deep.as_str(), "{\n\"cooler.height\": 1e999}", "{\n\"design.title\": \"\\ud800\"}"] {
            let said = problems(text);
            assert!(said[0].starts_with("this is not a design file: line 2, column "), "{said:?}");
            assert!(said[0].ends_with(": this is no value a design has"), "{said:?}");
        }
    }

    #[test]
    fn long_input_is_refused_and_long_values_are_quoted_short() {
        let padded = format!("{{}}{}", " ".repeat(MOST_BYTES));
        assert!(problems(&padded)[0].contains("65538 bytes long"));
        assert!(read_file(&padded[..MOST_BYTES]).is_ok());
        let text = format!("{{ \"card.kind\": \"{}\" }}", "ü".repeat(5000));
        assert!(problems(&text)[0].len() < 400);
    }

    #[test]
    fn bytes_that_are_no_text_say_where() {
        let error = read_file_bytes(b"{ \"design.title\": \"\xff\" }").unwrap_err();
        assert_eq!(error.to_string(), "this is not a design file: byte 20 is not UTF-8 text; save it again as UTF-8");
    }

    /// Saved as "Unicode" by an editor, with the mark in front or without, or already read as if it were UTF-8.
    #[test]
    fn a_byte_order_mark_is_taken_and_utf_16_by_its_own() {
        let other = "this is not a design file: it is text, but not UTF-8; save it again as UTF-8";
        for bytes in [&b"\xef\xbb\xbf{ \"format\": 1 }"[..], b"\xff\xfe{\0}\0", b"\xfe\xff\0{\0}"] {
            assert_eq!(read_file_bytes(bytes), Ok(Design::default()));
        }
        assert_eq!(read_file_bytes(b"{\0}\0").unwrap_err().to_string(), other);
        // Cut short in the middle of a letter.
        assert!(read_file_bytes(b"\xff\xfe{\0}").is_err());
        assert_eq!(problems("\u{fffd}\u{fffd}{\0}\0"), [other]);
    }
}
