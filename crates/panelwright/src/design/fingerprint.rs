//! The fingerprint of a design: eight characters on every file and page, so that mismatched prints are noticed.
//!
//! Two designs with the same fingerprint give the same case: it is made from everything that has an effect, and from
//! the version of the program, because another version may work out other panels from the same choices.

use super::link::packed;
use super::{Design, choices};
use crate::fnv::fnv1a;

/// Digits and capitals without 0, O, 1 and I, which are taken for each other on paper.
const LETTERS: &[u8; 32] = b"23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

/// Length of a fingerprint: 40 bits, so that two different designs of one maker practically never share one.
pub const CHARS: usize = 8;

/// The fingerprint of a design.
///
/// ```
/// use panelwright::{design::Design, design::fingerprint::fingerprint};
/// let mut design = Design::default();
/// let before = fingerprint(&design);
/// assert_eq!(before.len(), 8);
/// design.set_json("cooler.height", &157.5.into()).unwrap();
/// assert_ne!(fingerprint(&design), before);
/// ```
#[must_use]
pub fn fingerprint(design: &Design) -> String {
    of_version(design, VERSION)
}

/// The version of the program that goes into a fingerprint.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The design without what has no effect in it: choices that do not apply have their defaults again.
#[must_use]
pub fn normalised(design: &Design) -> Design {
    let mut normalised = design.clone();
    for index in design.changed() {
        if !design.applies(index) {
            let choice = &choices()[index];
            // A default is always a value of its own choice.
            let _ = normalised.set(&choice.key, choice.default.clone());
        }
    }
    normalised
}

/// The fingerprint that a version of the program gave, or gives, a design. Sound for older versions as long as the
/// codes of choices are permanent, which they are for the link's sake.
#[must_use]
pub fn of_version(design: &Design, version: &str) -> String {
    let mut bytes = version.as_bytes().to_vec();
    bytes.push(b'\n');
    bytes.extend(packed::pack(&normalised(design)));
    let mut left = mixed(fnv1a(&bytes));
    let mut text = String::with_capacity(CHARS);
    for _ in 0..CHARS {
        text.push(LETTERS[(left >> 59) as usize] as char);
        left <<= 5;
    }
    text
}

/// Whether a text can be a fingerprint.
#[must_use]
pub fn is_fingerprint(text: &[u8]) -> bool {
    text.len() == CHARS && text.iter().all(|letter| LETTERS.contains(letter))
}

/// Why what was read from paper is no fingerprint.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FingerprintError {
    /// Too short or too long.
    #[error("\"{0}\" has {1} characters; a fingerprint has {CHARS}, such as 7K3MWQ2H")]
    Length(String, usize),
    /// A character that is in no fingerprint.
    #[error("no fingerprint holds \"{0}\": look again; it has digits from 2 on, and no I or O")]
    Letter(char),
}

/// A fingerprint as people type it: lower case, spaces and hyphens do not matter.
///
/// ```
/// use panelwright::design::fingerprint::typed;
/// assert_eq!(typed(" 7k3m-wq2h ").unwrap(), "7K3MWQ2H");
/// assert!(typed("7K3MWQ2O").is_err());
/// ```
///
/// # Errors
/// Says which character cannot be, or how many are missing.
pub fn typed(text: &str) -> Result<String, FingerprintError> {
    let given: String = text.chars().filter(|letter| !letter.is_whitespace() && *letter != '-').collect();
    let plain = given.to_ascii_uppercase();
    let length = plain.chars().count();
    if length != CHARS {
        return Err(FingerprintError::Length(given.chars().take(40).collect(), length));
    }
    match plain.chars().find(|letter| !letter.is_ascii() || !LETTERS.contains(&(*letter as u8))) {
        Some(wrong) => Err(FingerprintError::Letter(wrong)),
        None => Ok(plain),
    }
}

/// Spreads every bit over the upper ones, which are the ones shown: the last step of SplitMix64.
const fn mixed(mut hash: u64) -> u64 {
    hash = (hash ^ hash >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    hash = (hash ^ hash >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
    hash ^ hash >> 31
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    #[test]
    fn a_fingerprint_follows_what_has_an_effect_and_the_version() {
        let mut design = Design::default();
        design.set_json("card.kind", &"none".into()).unwrap();
        let before = of_version(&design, "0.1.0");
        design.set_json("card.length", &200.into()).unwrap();
        assert_eq!(of_version(&design, "0.1.0"), before, "there is no card that could be longer");
        design.set_json("cooler.height", &100.into()).unwrap();
        assert_ne!(of_version(&design, "0.1.0"), before);
        assert_ne!(of_version(&design, "0.1.1"), of_version(&design, "0.1.0"));
    }

    #[test]
    fn what_is_typed_from_paper_is_read_or_refused_with_the_reason() {
        assert_eq!(typed("abcd 2345").unwrap(), "ABCD2345");
        assert_eq!(typed("ABCD234"), Err(FingerprintError::Length("ABCD234".to_owned(), 7)));
        assert_eq!(typed("ABCD234I"), Err(FingerprintError::Letter('I')));
        assert_eq!(typed("ABCD234é"), Err(FingerprintError::Letter('é')));
    }

    #[test]
    fn different_designs_have_different_fingerprints() {
        let mut seen = std::collections::BTreeMap::new();
        for seed in 0..4_000 {
            let design = normalised(&sample::design(seed, seed % 2 == 0));
            let text = fingerprint(&design);
            assert!(text.len() == CHARS && text.bytes().all(|letter| LETTERS.contains(&letter)), "{text}");
            if let Some(other) = seen.insert(text.clone(), design.clone()) {
                assert_eq!(other, design, "{text}");
            }
        }
        assert!(seen.len() > 3_000, "{}", seen.len());
    }
}
