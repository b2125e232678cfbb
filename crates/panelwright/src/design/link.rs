//! The link: a whole design in the fragment of an address, which a browser never sends to a server.
//!
//! ```text
//! https://…/#1GCIDa0h3…      1        format version
//!            └ base64url of  length   of the packed changes, one varint
//!                            changes  what differs from the defaults (see `link/packed.rs`)
//!                            check    CRC-32 of length and changes, four bytes, lowest first
//! ```
//!
//! Old links must open for ever. The codes of choices, the order of the options of a pick, and the defaults are
//! therefore permanent; `tests/links/` keeps links of every version together with the design they hold.
//!
//! Reading is forgiving about what mail and chat programs do to a link (line breaks, a full stop or bracket behind
//! it, quote marks in front of its lines) and strict about everything else: the length catches every lost or added
//! character, the check number every change within 32 bits and all but one in 4 000 000 000 of the others.

mod base64url;
pub(crate) mod crc32;
pub(crate) mod packed;

use super::design::{Design, DesignError};
use packed::PackedError;

/// The version that is written, and the only one read.
const VERSION: char = '1';

/// Longest text that is looked at; a link that changes every choice is about 900 characters long.
const MOST_CHARS: usize = 16_384;

/// Bytes of the check number.
const CHECK_BYTES: usize = 4;

/// Text that is not a link to a design: what is wrong with it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum LinkError {
    /// An address without a fragment, or nothing at all.
    #[error("there is no design in this link: nothing follows a # sign")]
    Empty,
    /// Far too long.
    #[error("this is not a link to a design: it is more than {MOST_CHARS} characters long")]
    TooLong,
    /// A fragment that starts with no version.
    #[error("this is not a link to a design: it starts with {start:?}, not with {VERSION}")]
    NotALink {
        /// What it starts with.
        start: char,
    },
    /// A version this program does not know.
    #[error("this link has format {version}; this program knows format {VERSION} only, a newer one is needed")]
    UnknownVersion {
        /// The version.
        version: char,
    },
    /// A character no link holds.
    #[error("the link is damaged: it cannot hold {character:?}, its character number {place}")]
    BadCharacter {
        /// The character.
        character: char,
        /// Its place, counted from 1 at the version.
        place: usize,
    },
    /// Fewer characters than it says it has.
    #[error("the link is cut short: {there} of its {needed} characters are there; copy the whole link")]
    CutShort {
        /// Characters there.
        there: usize,
        /// Characters needed.
        needed: usize,
    },
    /// The check number does not match.
    #[error("the link is damaged: its check number does not match; copy it again from where it came from")]
    Damaged,
    /// A whole link that names a choice this program does not have.
    #[error("this link changes choice number {code}, which this program does not have; a newer one is needed")]
    UnknownChoice {
        /// The choice's number.
        code: u64,
    },
    /// A whole link with a value this program does not take.
    #[error("this link holds a value that is not allowed: {0}")]
    Value(#[from] DesignError),
}

/// Writes a design as the fragment of a link, without the `#`: letters, digits, `-` and `_` only.
///
/// The same design gives the same text, and [`read_link`] gives back the same design.
///
/// ```
/// use panelwright::design::{Design, read_link, write_link};
/// let mut design = Design::default();
/// design.set_json("cooler.height", &125.into()).unwrap();
/// let link = write_link(&design);
/// assert_eq!(read_link(&link).unwrap(), design);
///
/// let error = read_link(&link[..link.len() - 2]).unwrap_err();
/// assert_eq!(error.to_string(), "the link is cut short: 11 of its 13 characters are there; copy the whole link");
/// ```
#[must_use]
pub fn write_link(design: &Design) -> String {
    let changes = packed::pack(design);
    let mut bytes = Vec::with_capacity(changes.len() + CHECK_BYTES + 2);
    packed::push_varint(&mut bytes, changes.len() as u64);
    bytes.extend(changes);
    let check = crc32::crc32(&bytes);
    bytes.extend(check.to_le_bytes());
    format!("{VERSION}{}", base64url::encode(&bytes))
}

/// Reads a link: the whole address or its fragment alone, with or without the `#`.
///
/// White space, line breaks, `<`, `>` and `=` inside are passed over, and so is whatever cannot belong to a link at
/// its end (full stop, comma, bracket, quote).
///
/// # Errors
/// What is wrong with the text; see [`LinkError`].
pub fn read_link(text: &str) -> Result<Design, LinkError> {
    if text.chars().nth(MOST_CHARS).is_some() {
        return Err(LinkError::TooLong);
    }
    let fragment = fragment(text);
    let mut characters = fragment.chars();
    match characters.next() {
        None => return Err(LinkError::Empty),
        Some(VERSION) => {}
        Some(version @ '0'..='9') => return Err(LinkError::UnknownVersion { version }),
        Some(start) => return Err(LinkError::NotALink { start }),
    }
    let body = characters.as_str();
    if let Some((place, character)) = body.chars().enumerate().find(|(_, c)| !base64url::is_digit(*c)) {
        // One for the version, one because people count from 1.
        return Err(LinkError::BadCharacter { character, place: place + 2 });
    }
    let bytes = base64url::decode(body);
    let mut rest = bytes.as_slice();
    let Ok(length) = packed::take_varint(&mut rest) else { return Err(cut_short(body, 1)) };
    let length_bytes = bytes.len() - rest.len();
    let length = usize::try_from(length).ok().filter(|length| *length <= MOST_CHARS).ok_or(LinkError::Damaged)?;
    let whole = length_bytes + length + CHECK_BYTES;
    if base64url::digits_for(whole) > body.len() {
        return Err(cut_short(body, whole));
    }
    // A link has one spelling: anything else, such as set bits behind the last byte, was not written by us.
    if bytes.len() != whole || base64url::encode(&bytes) != body {
        return Err(LinkError::Damaged);
    }
    let (checked, check) = bytes.split_at(whole - CHECK_BYTES);
    if crc32::crc32(checked).to_le_bytes() != check {
        return Err(LinkError::Damaged);
    }
    packed::unpack(&checked[length_bytes..]).map_err(|error| match error {
        PackedError::Malformed => LinkError::Damaged,
        PackedError::UnknownChoice(code) => LinkError::UnknownChoice { code },
        PackedError::Value(error) => LinkError::Value(error),
    })
}

/// Whether text is meant as a link rather than as the name of a file or as a design file.
///
/// True for an address, for anything holding a `#`, and for the digit of a version followed by nothing but the
/// characters of a link.
#[must_use]
pub fn looks_like_link(text: &str) -> bool {
    let text = text.trim();
    if text.starts_with(['{', '[']) {
        return false;
    }
    let mut characters = text.chars();
    let bare = characters.next().is_some_and(|first| first.is_ascii_digit())
        && characters.as_str().len() >= CHECK_BYTES
        && characters.all(base64url::is_digit);
    bare || text.contains('#') || text.contains("://")
}

fn cut_short(body: &str, whole_bytes: usize) -> LinkError {
    LinkError::CutShort { there: 1 + body.len(), needed: 1 + base64url::digits_for(whole_bytes) }
}

/// The part of the text that is the fragment, cleaned of what happens to links on their way.
fn fragment(text: &str) -> String {
    let (start, found) = match (text.rfind('#'), text.rfind("%23")) {
        (Some(at), _) => (at + 1, true),
        (None, Some(at)) => (at + 3, true),
        (None, None) => (0, false),
    };
    // An address without a fragment holds no design, whatever its letters are.
    if !found && text.contains("://") {
        return String::new();
    }
    let passed_over = |c: char| {
        // Zero-width marks, soft hyphen; mail's quote marks and its soft line ends.
        c.is_whitespace() || matches!(c, '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}' | '\u{ad}' | '<' | '>' | '=')
    };
    let kept: String = text[start..].chars().filter(|c| !passed_over(*c)).collect();
    let kept = if found { kept.as_str() } else { kept.trim_start_matches(|c| !base64url::is_digit(c)) };
    kept.trim_end_matches(|c| !base64url::is_digit(c)).to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example() -> Design {
        let mut design = Design::default();
        for (key, json) in [
            ("design.title", r#""Möwe 2""#),
            ("board.depth", "170.25"),
            ("card.kind", r#""none""#),
            ("supply.holes", "[[6, 16.25], [144, 16]]"),
            ("drive1.kind", r#""none""#),
            ("fan1.wall", r#""top""#),
            ("sleeve.side_screws", "true"),
        ] {
            design.set_json(key, &serde_json::from_str(json).unwrap()).unwrap();
        }
        design
    }

    #[test]
    fn a_link_opens_however_it_was_pasted() {
        let design = example();
        let link = write_link(&design);
        let (a, b) = link.split_at(20);
        for text in [
            link.clone(),
            format!("#{link}"),
            format!("https://example.org/case/#{link}"),
            format!("https://example.org/case/?page=2%23{link}"),
            format!("<https://example.org/#{link}>."),
            format!("(see https://example.org/#{link}),"),
            format!("\"{link}\""),
            format!("„#{link}”…"),
            format!("  #{link}\r\n"),
            format!("> https://example.org/#{a}\r\n> {b}\n"),
            format!("https://example.org/#{a}=\r\n{b}"),
            format!("#{a}\u{200b}{b};"),
        ] {
            assert_eq!(read_link(&text), Ok(design.clone()), "{text}");
        }
    }

    #[test]
    fn what_is_wrong_is_said() {
        let link = write_link(&example());
        let said = |text: &str| read_link(text).unwrap_err().to_string();
        assert!(said("").starts_with("there is no design"));
        assert!(said("https://example.org/case/").starts_with("there is no design"));
        assert!(said("https://example.org/case/#").starts_with("there is no design"));
        assert!(said("#about").contains("it starts with 'a'"));
        assert!(said(&format!("2{}", &link[1..])).contains("format 2"));
        assert!(said(&format!("{}%{}", &link[..9], &link[10..])).contains("'%', its character number 10"));
        assert!(said(&link[..link.len() - 9]).contains(&format!("{} of its {}", link.len() - 9, link.len())));
        assert!(said("1").contains("cut short"));
        assert!(said(&format!("{link}A")).contains("check number"));
        assert!(said(&"1".repeat(MOST_CHARS + 1)).contains("more than 16384"));
    }

    /// CRC-32 finds every burst of up to 32 bits, so no changed, swapped, lost or added character goes unnoticed.
    #[test]
    fn every_damage_of_one_character_or_two_neighbours_is_noticed() {
        let link = write_link(&example());
        for place in 0..link.len() {
            assert!(read_link(&format!("{}{}", &link[..place], &link[place + 1..])).is_err(), "lost {place}");
            for other in base64url::DIGITS.iter().map(|digit| *digit as char) {
                let added = format!("{}{other}{}", &link[..place], &link[place..]);
                assert!(read_link(&added).is_err() || added == link, "added {other} at {place}");
                let changed = format!("{}{other}{}", &link[..place], &link[place + 1..]);
                assert!(changed == link || read_link(&changed).is_err(), "{other} at {place}");
            }
            if place + 1 < link.len() {
                let mut swapped: Vec<char> = link.chars().collect();
                swapped.swap(place, place + 1);
                let swapped: String = swapped.into_iter().collect();
                assert!(swapped == link || read_link(&swapped).is_err(), "swapped {place}");
            }
        }
        assert!((0..link.len()).all(|length| read_link(&link[..length]).is_err()));
    }

    #[test]
    fn links_files_and_names_are_told_apart() {
        assert!(looks_like_link(&write_link(&Design::default())));
        assert!(looks_like_link(" https://example.org/ "));
        assert!(looks_like_link("#1abc"));
        assert!(!looks_like_link("{ \"design.title\": \"#1\" }"));
        assert!(!looks_like_link("a-quay.json"));
        assert!(!looks_like_link("1.json"));
    }
}
