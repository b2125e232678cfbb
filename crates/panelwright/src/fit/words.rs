//! Words of findings: lengths with their unit, names of parts and panels.
//!
//! Lengths are shown to a tenth of a millimetre; a length that would round to nothing is shown to a hundredth. Numbers
//! in a remedy are rounded to the safe side, so that doing what it says is enough.

use crate::drawing::number::format_number;
use crate::fastening::Screw;
pub(super) use crate::panels::words::the_panel;
use crate::parts::{Part, PartKind};

/// Guards sums of tenths against being rounded a whole step too far.
const HAIR_MM: f64 = 1e-6;

/// A length, `3.4 mm`.
pub(super) fn mm(length: f64) -> String {
    format!("{} mm", bare(length))
}

/// A length without its unit, `3.4`; published limits such as 6.35 keep their second decimal.
pub(super) fn bare(length: f64) -> String {
    let decimals = if length.abs() < 0.1 { 2 } else { 1 };
    format_number(length, decimals)
}

/// A published or chosen limit, with up to two decimals: `6.35 mm`.
pub(super) fn limit(length: f64) -> String {
    format!("{} mm", format_number(length, 2))
}

/// What is missing, rounded up: it is never stated smaller than it is.
pub(super) fn short(length: f64) -> String {
    let step = if length < 0.1 { 100.0 } else { 10.0 };
    format!("{} mm", format_number(f64::ceil(length * step - HAIR_MM) / step, 2))
}

/// The least length that would do, rounded up to a tenth.
pub(super) fn at_least(length: f64) -> String {
    format!("{} mm", bare_at_least(length))
}

/// The same without its unit.
pub(super) fn bare_at_least(length: f64) -> String {
    format_number(f64::ceil(length * 10.0 - HAIR_MM) / 10.0, 1)
}

/// The greatest length that would do, rounded down to a tenth.
pub(super) fn at_most(length: f64) -> String {
    format!("{} mm", format_number(f64::floor(length * 10.0 + HAIR_MM) / 10.0, 1))
}

/// The number at the end of an id: `drive-2` gives 2.
fn number(id: &str) -> Option<&str> {
    id.rsplit('-').next().filter(|end| !end.is_empty())
}

/// What people call a part within a sentence: `the cooler`, `drive 2`.
pub(super) fn part(part: &Part) -> String {
    let numbered = |name: &str| number(&part.id).map_or_else(|| name.to_owned(), |end| format!("{name} {end}"));
    match part.kind {
        PartKind::Board => "the board".to_owned(),
        PartKind::Memory => "the memory".to_owned(),
        PartKind::Cooler => "the cooler".to_owned(),
        PartKind::Card => "the card".to_owned(),
        PartKind::CardBracket => "the card's bracket".to_owned(),
        PartKind::Shelf => "the screw shelf".to_owned(),
        PartKind::Supply => "the supply".to_owned(),
        PartKind::Drive => numbered("drive"),
        PartKind::Fan => numbered("fan"),
        PartKind::Button => "the power button".to_owned(),
        PartKind::Jack => "the jack".to_owned(),
        PartKind::Standoff => numbered("standoff"),
        PartKind::Foot => numbered("foot"),
        PartKind::Port | PartKind::Washer | PartKind::Bracket | PartKind::CaptiveNut | PartKind::Block => {
            format!("the {}", lower_first(&part.label))
        }
    }
}

/// What people call a screw within a sentence: `the M3 screw of the bracket`.
pub(super) fn screw(screw: &Screw) -> String {
    format!("the {}", lower_first(&screw.what))
}

/// The same at the start of a sentence. Our words start with plain letters, and the tables of all others are large.
pub(super) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| std::iter::once(first.to_ascii_uppercase()).chain(chars).collect())
}

/// Lower-cases a first letter unless the word is an abbreviation such as `USB`.
fn lower_first(text: &str) -> String {
    let mut chars = text.chars();
    match (chars.next(), chars.next()) {
        (Some(first), Some(second)) if !second.is_ascii_uppercase() && !second.is_ascii_digit() => {
            std::iter::once(first.to_ascii_lowercase()).chain(text.chars().skip(1)).collect()
        }
        _ => text.to_owned(),
    }
}

/// `one`, `one and two`, `one, two and three`.
pub(super) fn list(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [start @ .., last] => format!("{} and {last}", start.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn remedies_are_rounded_to_the_safe_side() {
        assert_eq!(at_least(213.41), "213.5 mm");
        assert_eq!(at_least(213.4), "213.4 mm");
        assert_eq!(at_most(154.59), "154.5 mm");
        assert_eq!(at_most(0.1 + 0.2), "0.3 mm");
        assert_eq!(short(0.004), "0.01 mm");
        assert_eq!(short(3.41), "3.5 mm");
        assert_eq!(mm(0.04), "0.04 mm");
    }

    #[test]
    fn abbreviations_keep_their_capitals() {
        assert_eq!(lower_first("USB-A socket"), "USB-A socket");
        assert_eq!(lower_first("Corner bracket"), "corner bracket");
        assert_eq!(list(&["a".into(), "b".into(), "c".into()]), "a, b and c");
    }
}
