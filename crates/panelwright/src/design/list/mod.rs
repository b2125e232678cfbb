//! The one list of choices. Page controls, command line, link and validation all read it; a choice is added here.
//!
//! Codes are the choices' numbers in links. They are permanent: give a new choice a new code, and leave the code of
//! a choice that went away unused. Numbered choices (`drive1.kind` … `drive6.kind`) take blocks of 32 codes each.

mod case;
mod making;
mod parts;

use std::sync::OnceLock;

use super::choice::{Choice, Group, Kind, PickOption, Preset, Unit, Value, When};
use super::spec::Wall;
use crate::dimensions::source::{Confidence, Source};
use crate::sorting::sort_by;

/// How many drives a design can hold: `drive1` … `drive6`.
pub const DRIVES: usize = 6;
/// How many fans a design can hold: `fan1` … `fan6`.
pub const FANS: usize = 6;

/// Every choice, in the order of the page.
#[must_use]
pub fn choices() -> &'static [Choice] {
    static LIST: OnceLock<Vec<Choice>> = OnceLock::new();
    LIST.get_or_init(|| {
        let mut list = parts::list();
        list.extend(case::list());
        list.extend(making::list());
        list
    })
}

/// The place of a choice in [`choices`] by its key.
#[must_use]
pub fn choice(key: &str) -> Option<usize> {
    // Shorter keys first: most comparisons are then of two lengths. A design is read by some hundreds of keys.
    static ORDER: OnceLock<Vec<(&str, usize)>> = OnceLock::new();
    let by_length = |key: &str, other: &str| key.len().cmp(&other.len()).then_with(|| key.cmp(other));
    let order = ORDER.get_or_init(|| {
        let mut order: Vec<(&str, usize)> =
            choices().iter().enumerate().map(|(index, choice)| (choice.key.as_str(), index)).collect();
        sort_by(&mut order, |a, b| by_length(a.0, b.0));
        order
    });
    order.binary_search_by(|(candidate, _)| by_length(candidate, key)).ok().map(|place| order[place].1)
}

/// A value of our own invention for the first view; the maker sets it.
const MAKER: Source =
    Source { document: "the maker's choice", place: "no published size", confidence: Confidence::CommonPractice };
/// Workshop custom without a document behind it.
const PRACTICE: Source =
    Source { document: "workshop custom", place: "no published size", confidence: Confidence::CommonPractice };
/// Recalled, not read: the maker should measure.
const MEMORY: Source =
    Source { document: "trade parts as usually sold", place: "recalled", confidence: Confidence::FromMemory };

const fn published(document: &'static str, place: &'static str) -> Source {
    Source { document, place, confidence: Confidence::Published }
}

/// A choice in the making.
///
/// Its methods are called some six hundred times to make the list, once: kept out of line, or their copies would be a
/// tenth of the page's module.
struct Entry(Choice);

impl Entry {
    #[inline(never)]
    fn new(code: u16, key: &str, group: Group, label: &str, kind: Kind, default: Value) -> Self {
        Self(Choice {
            key: key.to_owned(),
            code,
            label: label.to_owned(),
            group,
            kind,
            default,
            help: String::new(),
            source: MAKER,
            when: When::Always,
        })
    }

    /// A pick; the first option is the default unless [`Entry::default_pick`] says otherwise.
    #[inline(never)]
    fn pick(code: u16, key: &str, group: Group, label: &str, options: &[(&'static str, &'static str)]) -> Self {
        let options = options.iter().map(|(name, label)| PickOption { name, label }).collect();
        Self::new(code, key, group, label, Kind::Pick(options), Value::Pick(0))
    }

    /// A length in mm.
    #[inline(never)]
    fn mm(code: u16, key: &str, group: Group, label: &str, range: [f64; 2], step: f64, default: f64) -> Self {
        let kind =
            Kind::Number { unit: Unit::Mm, min: range[0], max: range[1], step, presets: Vec::new(), optional: false };
        Self::new(code, key, group, label, kind, Value::Number(default))
    }

    /// A length that may be left open.
    #[inline(never)]
    fn open_mm(code: u16, key: &str, group: Group, label: &str, range: [f64; 2], step: f64) -> Self {
        let kind =
            Kind::Number { unit: Unit::Mm, min: range[0], max: range[1], step, presets: Vec::new(), optional: true };
        Self::new(code, key, group, label, kind, Value::Open)
    }

    /// A number of any unit that may be left open.
    #[inline(never)]
    fn open(code: u16, key: &str, group: Group, label: &str, unit: Unit, range: [f64; 2], step: f64) -> Self {
        let kind = Kind::Number { unit, min: range[0], max: range[1], step, presets: Vec::new(), optional: true };
        Self::new(code, key, group, label, kind, Value::Open)
    }

    /// A whole number.
    #[inline(never)]
    fn count(code: u16, key: &str, group: Group, label: &str, range: [f64; 2], default: f64) -> Self {
        let kind = Kind::Number {
            unit: Unit::Count,
            min: range[0],
            max: range[1],
            step: 1.0,
            presets: Vec::new(),
            optional: false,
        };
        Self::new(code, key, group, label, kind, Value::Number(default))
    }

    /// A short line of text, empty at first.
    #[inline(never)]
    fn text(code: u16, key: &str, group: Group, label: &str, max_chars: usize) -> Self {
        Self::new(code, key, group, label, Kind::Text { max_chars }, Value::Text(String::new()))
    }

    #[inline(never)]
    fn switch(code: u16, key: &str, group: Group, label: &str, default: bool) -> Self {
        Self::new(code, key, group, label, Kind::Switch, Value::Switch(default))
    }

    #[inline(never)]
    fn presets(mut self, values: &[(&str, f64)]) -> Self {
        if let Kind::Number { presets, .. } = &mut self.0.kind {
            *presets =
                values.iter().map(|(label, value)| Preset { label: (*label).to_owned(), value: *value }).collect();
        }
        self
    }

    #[inline(never)]
    fn default_pick(mut self, name: &str) -> Self {
        if let Kind::Pick(options) = &self.0.kind
            && let Some(index) = options.iter().position(|option| option.name == name)
        {
            self.0.default = Value::Pick(index);
        }
        self
    }

    #[inline(never)]
    fn help(mut self, help: &str, source: Source) -> Self {
        self.0.help = help.to_owned();
        self.0.source = source;
        self
    }

    #[inline(never)]
    fn when(mut self, key: &str, names: &[&'static str]) -> Self {
        self.0.when = When::Is { key: key.to_owned(), names: names.to_vec() };
        self
    }

    /// Has an effect when any panel is made by one of these methods.
    #[inline(never)]
    fn when_made(mut self, methods: &[&'static str]) -> Self {
        let keys = core::iter::once("method".to_owned())
            .chain(Wall::ALL.map(|wall| format!("method.{}", wall.name())))
            .collect();
        self.0.when = When::AnyIs { keys, names: methods.to_vec() };
        self
    }

    #[inline(never)]
    fn unless(mut self, key: &str, names: &[&'static str]) -> Self {
        self.0.when = When::IsNot { key: key.to_owned(), names: names.to_vec() };
        self
    }

    #[inline(never)]
    fn done(self) -> Choice {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_and_codes_are_unique() {
        let mut keys: Vec<&str> = choices().iter().map(|choice| choice.key.as_str()).collect();
        keys.sort_unstable();
        let all = keys.len();
        keys.dedup();
        assert_eq!(keys.len(), all);
        let mut codes: Vec<u16> = choices().iter().map(|choice| choice.code).collect();
        codes.sort_unstable();
        codes.dedup();
        assert_eq!(codes.len(), all);
    }

    #[test]
    fn every_choice_has_help_a_source_and_a_default_in_range() {
        for choice in choices() {
            assert!(choice.help.len() > 10, "{} has no help", choice.key);
            assert!(!choice.source.document.is_empty(), "{} has no source", choice.key);
            match (&choice.kind, &choice.default) {
                (Kind::Pick(options), Value::Pick(index)) => assert!(*index < options.len()),
                (Kind::Number { min, max, presets, .. }, Value::Number(value)) => {
                    assert!(min <= value && value <= max, "{}", choice.key);
                    assert!(
                        presets.iter().all(|preset| *min <= preset.value && preset.value <= *max),
                        "{}",
                        choice.key
                    );
                }
                (Kind::Number { optional, min, max, presets, .. }, Value::Open) => {
                    assert!(*optional);
                    assert!(
                        presets.iter().all(|preset| *min <= preset.value && preset.value <= *max),
                        "{}",
                        choice.key
                    );
                }
                (Kind::Switch, Value::Switch(_))
                | (Kind::Text { .. }, Value::Text(_))
                | (Kind::Points { .. }, Value::Points(_)) => {}
                _ => panic!("{}: default of another kind", choice.key),
            }
        }
    }

    #[test]
    fn every_condition_names_a_pick_and_its_options() {
        for entry in choices() {
            let (keys, names) = match &entry.when {
                When::Always => continue,
                When::Is { key, names } | When::IsNot { key, names } => (vec![key.clone()], names),
                When::AnyIs { keys, names } => (keys.clone(), names),
            };
            for key in &keys {
                let other = &choices()[choice(key).unwrap_or_else(|| panic!("{}: no {key}", entry.key))];
                let Kind::Pick(options) = &other.kind else { panic!("{key} is not a pick") };
                for name in names {
                    assert!(options.iter().any(|option| option.name == *name), "{}: {name}", entry.key);
                }
            }
        }
    }

    #[test]
    fn settings_of_a_method_have_an_effect_when_some_panel_is_made_by_it() {
        use crate::design::Design;
        let applies = |design: &Design, key: &str| design.applies(choice(key).unwrap());
        let all = |design: &Design| {
            ["hand.kerf", "router.tabs", "laser.lettering", "machine.accuracy"].map(|key| applies(design, key))
        };
        let mut design = Design::default();
        assert_eq!(all(&design), [true, false, false, false]);
        design.set_json("method.top", &"laser".into()).unwrap();
        assert_eq!(all(&design), [true, false, true, true]);
        design.set_json("method", &"router".into()).unwrap();
        assert_eq!(all(&design), [false, true, true, true]);
        assert!(applies(&design, "file.hairline"));
    }
}
