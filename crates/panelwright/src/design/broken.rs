//! A design file that is not JSON: what stands where, and what would be right there, in the maker's words.
//!
//! Asked only once a file was refused, so it looks at every character again, with a small table of what may come next.

use std::fmt;

/// How much of a wrong word a message repeats, in characters.
const QUOTED_CHARS: usize = 20;

/// What may stand at the next place that is no blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Next {
    /// The `{` that everything begins with.
    Start,
    /// A key, or the closing bracket of an object without any.
    FirstKey,
    /// A key, after a comma.
    Key,
    Colon,
    Value,
    /// A value, or the closing bracket of a list without any.
    FirstValue,
    /// A comma, or the closing bracket.
    Comma,
    /// Nothing.
    End,
}

/// A place in the file, both counted from 1, the column in characters as editors count it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Place {
    line: usize,
    column: usize,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

/// The characters of a file with where they stand.
struct Text<'a> {
    left: std::iter::Peekable<std::str::Chars<'a>>,
    at: Place,
}

impl Text<'_> {
    fn peek(&mut self) -> Option<char> {
        self.left.peek().copied()
    }

    fn take(&mut self) -> Option<char> {
        let next = self.left.next()?;
        self.at = if next == '\n' {
            Place { line: self.at.line + 1, column: 1 }
        } else {
            Place { column: self.at.column + 1, ..self.at }
        };
        Some(next)
    }

    fn skip_blanks(&mut self) {
        while self.peek().is_some_and(|next| matches!(next, ' ' | '\t' | '\r' | '\n')) {
            self.take();
        }
    }

    /// Everything up to a blank or a mark of JSON's own.
    fn word(&mut self) -> String {
        let mut word = String::new();
        while let Some(next) = self.peek().filter(|next| !next.is_whitespace() && !"{}[]:,\"".contains(*next)) {
            word.push(next);
            self.take();
        }
        word
    }
}

/// What is wrong with a text that is no JSON object, with its place and what would be right. `None` when nothing of this
/// kind is.
pub(super) fn fault(text: &str) -> Option<String> {
    let mut text = Text { left: text.chars().peekable(), at: Place { line: 1, column: 1 } };
    let mut open: Vec<(char, Place)> = Vec::new();
    let mut next = Next::Start;
    let mut comma = text.at;
    loop {
        text.skip_blanks();
        let at = text.at;
        let Some(found) = text.peek() else {
            return (next != Next::End).then(|| ends_early(at, &open));
        };
        let wrong = |what: String| Some(format!("it is not JSON: {at}: {what}"));
        let closes = open.last().map(|(bracket, _)| if *bracket == '{' { '}' } else { ']' });
        let in_list = closes == Some(']');
        match (next, found) {
            (Next::Start, '{') | (Next::Value | Next::FirstValue, '{' | '[') => {
                open.push((found, at));
                text.take();
                next = if found == '{' { Next::FirstKey } else { Next::FirstValue };
            }
            (Next::Start, _) => return Some(no_object(&mut text)),
            (Next::FirstKey | Next::FirstValue | Next::Comma, '}' | ']') if closes == Some(found) => {
                text.take();
                open.pop();
                next = if open.is_empty() { Next::End } else { Next::Comma };
            }
            (Next::Key, '}') | (Next::Value, ']') if closes == Some(found) => {
                return Some(format!(
                    "it is not JSON: {comma}: no comma may stand before the closing {found}; leave it out"
                ));
            }
            (_, '}' | ']') if next == Next::Comma || next == Next::FirstKey || next == Next::FirstValue => {
                let (bracket, from) = open.last()?;
                return wrong(format!("{found} closes nothing; the {bracket} of {from} must be closed first"));
            }
            (_, '/' | '#') => return wrong(format!("{found} stands here; JSON has no remarks, leave them out")),
            (Next::Colon, ':') => {
                text.take();
                next = Next::Value;
            }
            (Next::Comma, ',') => {
                comma = at;
                text.take();
                next = if in_list { Next::Value } else { Next::Key };
            }
            (Next::FirstKey | Next::Key | Next::Value | Next::FirstValue, '"') => {
                if let Some(fault) = string(&mut text) {
                    return Some(fault);
                }
                next = if matches!(next, Next::FirstKey | Next::Key) { Next::Colon } else { Next::Comma };
            }
            (_, '\'' | '‘' | '’' | '“' | '”' | '„') if next != Next::End => {
                return wrong(format!("{found} is no quotation mark of JSON; write \" instead"));
            }
            (Next::Key, '0'..='9') => {
                return wrong(
                    "a number stands where a key belongs; decimals are written with a point, such as 5.8".to_owned(),
                );
            }
            (Next::FirstKey | Next::Key, _) => {
                return wrong(format!(
                    "{} stands where a key in quotation marks belongs, such as \"cooler.height\"",
                    quoted(&mut text)
                ));
            }
            (Next::Colon, _) => return wrong("a colon belongs between a key and its value".to_owned()),
            (Next::Comma, '"') => return wrong("a comma is missing before this".to_owned()),
            (Next::Comma, _) => {
                let word = quoted(&mut text);
                return wrong(format!("{word} stands where a comma or the closing {} belongs", closes?));
            }
            (Next::End, _) => return wrong("something stands after the closing }; leave it out".to_owned()),
            (Next::Value | Next::FirstValue, _) => {
                let word = text.word();
                if !is_value(&word) {
                    let word = if word.is_empty() { found.to_string() } else { shortened(&word) };
                    return wrong(format!(
                        "{word} is no value; a value is a number such as 5.8, a text in quotation marks, true, false or null"
                    ));
                }
                next = Next::Comma;
            }
        }
    }
}

/// Goes past a text in quotation marks, or says what is wrong in it.
fn string(text: &mut Text) -> Option<String> {
    let start = text.at;
    text.take();
    loop {
        let at = text.at;
        match text.take() {
            Some('"') => return None,
            None | Some('\n' | '\r') => {
                return Some(format!("it is not JSON: {start}: this quotation mark has no second one on its line"));
            }
            Some('\\') => match text.take() {
                Some('"' | '\\' | '/' | 'b' | 'f' | 'n' | 'r' | 't') => {}
                Some('u') if (0..4).all(|_| text.take().is_some_and(|digit| digit.is_ascii_hexdigit())) => {}
                _ => return Some(format!("it is not JSON: {at}: a single \\ may not stand here; write \\\\ for it")),
            },
            Some(other) if other < ' ' => {
                return Some(format!(
                    "it is not JSON: {at}: a tab or another control character stands in a text; leave it out"
                ));
            }
            Some(_) => {}
        }
    }
}

/// That the file ends before everything is closed.
fn ends_early(at: Place, open: &[(char, Place)]) -> String {
    let closed =
        open.last().map_or_else(String::new, |(bracket, from)| format!(", but the {bracket} of {from} is not closed"));
    format!("it is not JSON: it ends at {at}{closed}; part of it may be missing")
}

/// That the file holds something else than one object.
fn no_object(text: &mut Text) -> String {
    let is = match text.peek() {
        Some('[') => "a list [ … ]".to_owned(),
        Some('"') => "a text in quotation marks".to_owned(),
        _ => match text.word() {
            word if word.is_empty() => "something else".to_owned(),
            word if is_value(&word) && word.starts_with(|first: char| first == '-' || first.is_ascii_digit()) => {
                "a number".to_owned()
            }
            word => shortened(&word),
        },
    };
    format!("it begins with {is}; a design is written {{ \"key\": value, … }}")
}

/// Whether a word is a number, `true`, `false` or `null`.
fn is_value(word: &str) -> bool {
    matches!(word, "true" | "false" | "null") || is_number(word)
}

/// Whether a word is a number as JSON writes it: `-0.5e3`, neither `.5` nor `05` nor `+5`.
fn is_number(word: &str) -> bool {
    let word = word.strip_prefix('-').unwrap_or(word);
    let (mantissa, exponent) =
        word.split_once(['e', 'E']).map_or((word, None), |(before, after)| (before, Some(after)));
    let (whole, decimals) = mantissa.split_once('.').map_or((mantissa, None), |(before, after)| (before, Some(after)));
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|digit| digit.is_ascii_digit());
    let exponent = exponent.map(|exponent| exponent.strip_prefix(['+', '-']).unwrap_or(exponent));
    digits(whole)
        && (whole == "0" || !whole.starts_with('0'))
        && decimals.is_none_or(digits)
        && exponent.is_none_or(digits)
}

/// The word that stands here, or the single character.
fn quoted(text: &mut Text) -> String {
    let first = text.peek().map(String::from).unwrap_or_default();
    let word = text.word();
    if word.is_empty() { first } else { shortened(&word) }
}

fn shortened(word: &str) -> String {
    match word.char_indices().nth(QUOTED_CHARS) {
        Some((end, _)) => format!("{}…", &word[..end]),
        None => word.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::fault;

    fn said(text: &str) -> String {
        fault(text).unwrap_or_default()
    }

    #[test]
    fn what_is_wrong_is_said_with_its_place_and_what_would_be_right() {
        for (text, wanted) in [
            ("{ cooler: 5 }", "line 1, column 3: cooler stands where a key in quotation marks belongs"),
            ("{ 'cooler.height': 5 }", "line 1, column 3: ' is no quotation mark of JSON; write \" instead"),
            ("{ “cooler.height”: 5 }", "line 1, column 3: “ is no quotation mark of JSON"),
            ("{\n  \"a\": 1,\n}", "line 2, column 9: no comma may stand before the closing }; leave it out"),
            ("{ \"a\": [[1, 2],] }", "line 1, column 15: no comma may stand before the closing ]"),
            ("{ \"ü\": 1 \"b\": 2 }", "line 1, column 10: a comma is missing before this"),
            ("{ \"a\" 1 }", "line 1, column 7: a colon belongs between a key and its value"),
            (
                "{ \"a\": 5,8 }",
                "line 1, column 10: a number stands where a key belongs; decimals are written with a point",
            ),
            ("{ \"a\": True }", "line 1, column 8: True is no value"),
            ("{ \"a\": .5 }", "line 1, column 8: .5 is no value"),
            ("{ \"a\": , }", "line 1, column 8: , is no value"),
            ("{ \"a\": 05 }", "line 1, column 8: 05 is no value"),
            ("{ \"a\": } ", "line 1, column 8: } is no value"),
            ("{ \"a\": 5 mm }", "line 1, column 10: mm stands where a comma or the closing } belongs"),
            ("{ \"a\": [1, 2} ", "line 1, column 13: } closes nothing; the [ of line 1, column 8 must be closed first"),
            ("{ // mine\n}", "line 1, column 3: / stands here; JSON has no remarks"),
            ("{ \"a\": \"C:\\data\" }", "line 1, column 11: a single \\ may not stand here; write \\\\ for it"),
            ("{ \"a\": \"half\n }", "line 1, column 8: this quotation mark has no second one on its line"),
            ("{ \"a\": \"one\ttwo\" }", "line 1, column 12: a tab or another control character"),
            ("{} {}", "line 1, column 4: something stands after the closing }"),
            ("{\n  \"a\": 1", "it ends at line 2, column 9, but the { of line 1, column 1 is not closed"),
            ("{ \"a\": [1", "it ends at line 1, column 10, but the [ of line 1, column 8 is not closed"),
            ("[1]", "it begins with a list [ … ]; a design is written { \"key\": value, … }"),
            ("12.5", "it begins with a number;"),
            ("\"a\"", "it begins with a text in quotation marks;"),
            ("Dear reader", "it begins with Dear;"),
        ] {
            assert!(said(text).contains(wanted), "{text}: {}", said(text));
        }
        assert!(said(&format!("{{ {} }}", "x".repeat(500))).len() < 200);
    }

    /// What the reader takes has no fault, and what it refuses has one.
    #[test]
    fn it_finds_a_fault_just_where_the_reader_does() {
        let file = "{ \"a.b\": [[1, -2.5e-3], []], \"c\": {\"d\": null}, \"e\\u00fc\\n\": true, \"f\": \"\" }\n";
        assert_eq!(fault(file), None);
        for (end, _) in file.char_indices() {
            let start = &file[..end];
            assert!(fault(start).is_some() != serde_json::from_str::<serde_json::Value>(start).is_ok(), "{start}");
            for put in ['"', '{', '}', '[', ']', ',', ':', '1', 'x', '\'', '.', '-', '\\', '\n'] {
                let changed = format!("{start}{put}{}", &file[end..]);
                let reads = serde_json::from_str::<serde_json::Map<String, serde_json::Value>>(&changed).is_ok();
                assert_eq!(fault(&changed).is_none(), reads, "{changed}: {:?}", fault(&changed));
            }
        }
    }
}
