//! The mark that every file and every printed page bears: which design it belongs to, and which version of the program
//! made it. Read back from the bytes of a file, whatever became of its name.
//!
//! JSON says `"fingerprint": "…"`; a CSV has it in the last field of every row; everything else has the words
//! `design …` in its title, remark or text. The dictionary that a PDF keeps them in is not packed.

use serde::Serialize;

use crate::design::fingerprint::{CHARS, is_fingerprint};

/// What a file says of itself.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Stamp {
    /// Fingerprints it bears, each once; several when a list was put together from several designs.
    pub fingerprints: Vec<String>,
    /// The version of the program that made it: `0.1.0`.
    pub version: Option<String>,
    /// Whether every row bears its own.
    #[serde(skip)]
    rows: bool,
}

/// What a CSV calls its last column.
const CSV_COLUMN: &[u8] = b"design";

/// Fingerprints kept of one file: more than any list of kits has. A file that was made to hold millions would be read for
/// hours.
const MOST: usize = 100;

/// The longest version that is read, in characters: three numbers and a word.
const VERSION_CHARS: usize = 24;

/// The stamp of a file; the name's ending tells a CSV.
///
/// ```
/// use panelwright::documents::pack::stamp;
/// let found = stamp("left.svg", b"<title>Left panel, design ABCD2345, panelwright 0.1.0</title>");
/// assert_eq!((found.fingerprints, found.version.as_deref()), (vec!["ABCD2345".to_owned()], Some("0.1.0")));
/// ```
#[must_use]
pub fn stamp(name: &str, bytes: &[u8]) -> Stamp {
    let rows = name.rsplit_once('.').is_some_and(|(_, ending)| ending.eq_ignore_ascii_case("csv"));
    let mut stamp = Stamp { fingerprints: Vec::new(), version: version(bytes), rows };
    if rows {
        csv_rows(bytes, &mut |last| stamp.add(last));
    } else {
        let json = bytes.iter().find(|byte| !byte.is_ascii_whitespace()) == Some(&b'{');
        // A design's own name may hold any words; in JSON only the field counts.
        let before: &[&[u8]] = if json { &[b"\"fingerprint\": \""] } else { &[b"design ", b"Design "] };
        for words in before {
            after_each(bytes, words, &mut |rest| {
                let end = rest.get(CHARS).copied().unwrap_or(b' ');
                if !end.is_ascii_alphanumeric() {
                    stamp.add(&rest[..CHARS.min(rest.len())]);
                }
            });
        }
    }
    stamp
}

impl Stamp {
    /// Whether it is that of a design that knows its own. In a file with rows all must be; elsewhere a design's name
    /// may hold words that look like a stamp, which then stand beside the true one.
    pub(super) fn whose(&self, own: &dyn Fn(&str) -> bool) -> bool {
        let mut marks = self.fingerprints.iter().map(String::as_str);
        if self.rows { !self.fingerprints.is_empty() && marks.all(own) } else { marks.any(own) }
    }

    fn add(&mut self, text: &[u8]) {
        if self.fingerprints.len() == MOST || !is_fingerprint(text) {
            return;
        }
        let text = String::from_utf8_lossy(text).into_owned();
        if !self.fingerprints.contains(&text) {
            self.fingerprints.push(text);
        }
    }
}

/// What follows each place of some words.
fn after_each(bytes: &[u8], words: &[u8], found: &mut dyn FnMut(&[u8])) {
    let mut at = 0;
    while let Some(rest) = bytes.get(at..) {
        // The first letter alone is found quickly; most bytes of a pack are none.
        let Some(step) = rest.iter().position(|byte| *byte == words[0]) else { return };
        if rest[step..].starts_with(words) {
            found(&rest[step + words.len()..]);
        }
        at += step + 1;
    }
}

/// `panelwright 0.1.0`: numbers with points between them, and what may follow a version.
fn version(bytes: &[u8]) -> Option<String> {
    let mut version = None;
    after_each(bytes, b"panelwright ", &mut |rest| {
        let length = rest
            .iter()
            .take(VERSION_CHARS)
            .take_while(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'.' | b'-' | b'+'))
            .count();
        let text = String::from_utf8_lossy(&rest[..length]);
        let text = text.trim_end_matches(['.', '-', '+']);
        let numbers = text.split('.').take(3).filter(|part| part.starts_with(|first: char| first.is_ascii_digit()));
        if version.is_none() && numbers.count() == 3 {
            version = Some(text.to_owned());
        }
    });
    version
}

/// The last field of every row below the head of a CSV (RFC 4180) whose last column is the design.
fn csv_rows(bytes: &[u8], row: &mut dyn FnMut(&[u8])) {
    let (mut quoted, mut field, mut head) = (false, 0, true);
    for at in 0..=bytes.len() {
        match bytes.get(at) {
            Some(b'"') => quoted = !quoted,
            Some(b',') if !quoted => field = at + 1,
            Some(b'\n') | None if !quoted => {
                let last = bytes.get(field..at).unwrap_or_default().trim_ascii();
                if head && last != CSV_COLUMN {
                    return;
                }
                if !head && !last.is_empty() {
                    row(last);
                }
                head = false;
                field = at + 1;
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(name: &str, text: &str) -> Vec<String> {
        stamp(name, text.as_bytes()).fingerprints
    }

    #[test]
    fn each_kind_of_file_is_read_in_its_own_way() {
        assert_eq!(found("a.pdf", "/Title(Templates)/Subject (design ABCD2345)>>"), ["ABCD2345"]);
        assert_eq!(found("README.txt", "Design ABCD2345, panelwright 0.1.0\n"), ["ABCD2345"]);
        let json = "{\n  \"program\": \"panelwright 0.2.1\",\n  \"fingerprint\": \"ABCD2345\",\n  \"title\": \"design 22222222\"";
        assert_eq!(found("b.json", json), ["ABCD2345"]);
        assert_eq!(stamp("b.json", json.as_bytes()).version.as_deref(), Some("0.2.1"));
        let csv = "what,design\r\n\"a, \"\"b\"\"\r\n\",ABCD2345\r\nc,ABCD2346\r\n";
        assert_eq!(found("c.csv", csv), ["ABCD2345", "ABCD2346"]);
        assert_eq!(found("c.csv", "what,mass\r\nc,ABCD2345\r\n"), [""; 0]);
    }

    #[test]
    fn a_file_of_very_many_stamps_is_read_as_quickly_as_any() {
        let letters = b"23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
        let mark = |number: usize| {
            let letter = |place: u32| letters[number / 32_usize.pow(place) % 32] as char;
            (0..8).map(letter).collect::<String>()
        };
        let text: String = (0..200_000).map(|number| format!("design {}\n", mark(number))).collect();
        assert_eq!(found("x.txt", &text), (0..MOST).map(mark).collect::<Vec<_>>());
    }

    #[test]
    fn words_that_only_look_like_a_stamp_are_none() {
        for text in ["design ABCD234", "design ABCD2345X", "design ABCD23I5", "redesign: ABCD2345", "panelwright soon"]
        {
            assert_eq!(stamp("x.txt", text.as_bytes()), Stamp::default(), "{text}");
        }
        assert!(stamp("x.csv", b"").fingerprints.is_empty());
    }
}
