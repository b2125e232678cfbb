//! The list of choices as data: what `panelwright choices --json` prints and the page makes its controls from.

use serde::Serialize;
use serde_json::Value as Json;

use crate::design::{Choice, Design, Kind, When, choices};

/// One choice.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChoiceEntry {
    /// Name in files.
    pub key: &'static str,
    /// Number in links.
    pub code: u16,
    /// What the page calls it.
    pub label: &'static str,
    /// Group, one lower-case word.
    pub group: &'static str,
    /// What the page calls the group.
    pub group_label: &'static str,
    /// What values it takes.
    pub kind: KindEntry,
    /// The allowed values in words.
    pub allowed: String,
    /// Its default as a design file writes it.
    pub default: Json,
    /// One sentence of help.
    pub help: &'static str,
    /// Where its default, presets or range come from.
    pub source: String,
    /// How far the source can be trusted.
    pub confidence: &'static str,
    /// When it has an effect; null: always.
    pub when: Option<WhenEntry>,
}

/// What values a choice takes.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "type", rename_all = "lowercase")]
#[allow(missing_docs, reason = "fields are those of the choice's own kind")]
pub enum KindEntry {
    /// One of some options.
    Pick { options: Vec<OptionEntry> },
    /// A number.
    Number { unit: &'static str, min: f64, max: f64, step: f64, presets: Vec<PresetEntry>, optional: bool },
    /// Yes or no.
    Switch,
    /// A line of text.
    Text { max_chars: usize },
    /// Measured points.
    Points { max: usize, limit_mm: f64 },
}

/// One option of a pick.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct OptionEntry {
    /// Name in files.
    pub name: &'static str,
    /// What the page calls it.
    pub label: &'static str,
}

/// A value worth one click.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PresetEntry {
    /// What the page calls it.
    pub label: &'static str,
    /// The value.
    pub value: f64,
}

/// The condition of a choice: the pick `key`, or one of the picks `or`, is (or is not) one of `names`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WhenEntry {
    /// The other choice.
    pub key: &'static str,
    /// More of them: one is enough.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub or: Vec<&'static str>,
    /// Options of it.
    pub names: Vec<&'static str>,
    /// Whether it must be one of them, or none of them.
    pub is: bool,
}

/// Every choice in the order of the page.
#[must_use]
pub fn choice_list() -> Vec<ChoiceEntry> {
    let defaults = Design::default();
    choices().iter().enumerate().map(|(index, choice)| entry(choice, defaults.json(index))).collect()
}

fn entry(choice: &'static Choice, default: Json) -> ChoiceEntry {
    ChoiceEntry {
        key: &choice.key,
        code: choice.code,
        label: &choice.label,
        group: choice.group.name(),
        group_label: choice.group.label(),
        kind: kind(&choice.kind),
        allowed: choice.allowed(),
        default,
        help: &choice.help,
        source: choice.source.cite(),
        confidence: choice.source.confidence.label(),
        when: match &choice.when {
            When::Always => None,
            When::Is { key, names } => Some(WhenEntry { key, or: Vec::new(), names: names.clone(), is: true }),
            When::AnyIs { keys, names } => keys.split_first().map(|(key, rest)| {
                let or = rest.iter().map(String::as_str).collect();
                WhenEntry { key, or, names: names.clone(), is: true }
            }),
            When::IsNot { key, names } => Some(WhenEntry { key, or: Vec::new(), names: names.clone(), is: false }),
        },
    }
}

fn kind(kind: &'static Kind) -> KindEntry {
    match kind {
        Kind::Pick(options) => KindEntry::Pick {
            options: options.iter().map(|option| OptionEntry { name: option.name, label: option.label }).collect(),
        },
        Kind::Number { unit, min, max, step, presets, optional } => KindEntry::Number {
            unit: unit.symbol(),
            min: *min,
            max: *max,
            step: *step,
            presets: presets.iter().map(|preset| PresetEntry { label: &preset.label, value: preset.value }).collect(),
            optional: *optional,
        },
        Kind::Switch => KindEntry::Switch,
        Kind::Text { max_chars } => KindEntry::Text { max_chars: *max_chars },
        Kind::Points { max, limit_mm } => KindEntry::Points { max: *max, limit_mm: *limit_mm },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_choice_is_listed_with_its_default_as_a_file_writes_it() {
        let list = choice_list();
        assert_eq!(list.len(), choices().len());
        for entry in &list {
            let mut design = Design::default();
            design.set_json(entry.key, &entry.default).unwrap();
            assert_eq!(design, Design::default(), "{}", entry.key);
        }
        let json = serde_json::to_value(&list).unwrap();
        let height = json.as_array().unwrap().iter().find(|entry| entry["key"] == "cooler.height").unwrap();
        assert_eq!(height["kind"]["type"], "number");
        assert_eq!(height["kind"]["unit"], "mm");
        assert_eq!(height["default"], 158);
        assert_eq!(height["group"], "cooler");
        assert_eq!(height["when"], serde_json::json!({"key": "cooler.kind", "names": ["none"], "is": false}));
    }
}
