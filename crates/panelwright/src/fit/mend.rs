//! What would mend a finding: the ways in words, and the changes of the design behind those that name a number.
//!
//! A way that names a number names a choice of the list and a value that can be entered; the sentence is written from
//! that value, so that word and number never differ. What can be mended only by something no choice stands for is said
//! without a number, and what cannot be entered is not said at all.

use super::finding::Finding;
use super::words;
use crate::design::{Design, DesignError, Kind, Value, choice, choices, to_json};
use crate::drawing::number::format_number;

/// A change of the design that clears a finding by itself: choices and the values they then have.
#[derive(Clone, Debug, PartialEq)]
pub struct Mend {
    /// Keys of choices with their new values.
    pub choices: Vec<(String, Value)>,
}

impl Mend {
    /// Makes the change.
    ///
    /// # Errors
    /// When a value cannot be entered; a mend of a finding never has such a value.
    pub fn apply(&self, design: &mut Design) -> Result<(), DesignError> {
        self.choices.iter().try_for_each(|(key, value)| design.set(key, value.clone()))
    }
}

impl Mend {
    /// The choices as a design file writes them: keys with their values.
    pub fn written(&self) -> impl Iterator<Item = (&str, serde_json::Value)> {
        let entry = |key: &str| choice(key).map(|place| &choices()[place]);
        self.choices.iter().filter_map(move |(key, value)| Some((key.as_str(), to_json(entry(key)?, value))))
    }

    /// The same as one object.
    pub(crate) fn json(&self) -> serde_json::Map<String, serde_json::Value> {
        self.written().map(|(key, value)| (key.to_owned(), value)).collect()
    }
}

/// The value of a pick by the option's name.
pub(super) fn pick(key: &str, name: &str) -> Option<(String, Value)> {
    let Kind::Pick(options) = &choices()[choice(key)?].kind else { return None };
    let place = options.iter().position(|option| option.name == name)?;
    Some((key.to_owned(), Value::Pick(place)))
}

/// The names of a pick's options.
pub(super) fn options(key: &str) -> impl Iterator<Item = &'static str> {
    let options = match choice(key).map(|place| &choices()[place].kind) {
        Some(Kind::Pick(options)) => &options[..],
        _ => &[],
    };
    options.iter().map(|option| option.name)
}

/// Least and greatest value of a choice.
fn range(key: &str) -> Option<[f64; 2]> {
    match choices()[choice(key)?].kind {
        Kind::Number { min, max, .. } => Some([min, max]),
        _ => None,
    }
}

/// The least number that can be entered for a choice.
pub(super) fn least(key: &str) -> f64 {
    range(key).map_or(0.0, |[min, _]| min)
}

/// The greatest number that can be entered for a choice.
pub(super) fn most(key: &str) -> f64 {
    range(key).map_or(0.0, |[_, max]| max)
}

/// Guards sums of tenths against being rounded a whole step too far.
const HAIR_MM: f64 = 1e-6;

/// The least tenth that is `least` or more and can be entered.
pub(super) fn enter_at_least(key: &str, least: f64) -> Option<f64> {
    let [min, max] = range(key)?;
    let value = (f64::ceil(least * 10.0 - HAIR_MM) / 10.0).max(min);
    // The end of the range need not be a whole tenth.
    (value <= max).then_some(value)
}

/// The greatest tenth that is `most` or less and can be entered.
pub(super) fn enter_at_most(key: &str, most: f64) -> Option<f64> {
    let [min, max] = range(key)?;
    let value = (f64::floor(most * 10.0 + HAIR_MM) / 10.0).min(max);
    (value >= min).then_some(value)
}

/// A value in words as it is entered: `213.4 mm`.
pub(super) fn entered(value: f64) -> String {
    format!("{} mm", format_number(value, 2))
}

/// The ways to mend a finding, the likeliest first.
#[derive(Debug, Default)]
pub(super) struct Remedy {
    ways: Vec<String>,
    mends: Vec<Mend>,
}

impl Remedy {
    pub fn new() -> Self {
        Self::default()
    }

    /// A way in words, without a number.
    pub fn say(mut self, words: impl Into<String>) -> Self {
        self.ways.push(words.into());
        self
    }

    /// A way in words, when there is one.
    pub fn say_if(self, words: Option<String>) -> Self {
        match words {
            Some(words) => self.say(words),
            None => self,
        }
    }

    /// Ways of another remedy, after these.
    pub fn and(mut self, other: Self) -> Self {
        self.ways.extend(other.ways);
        self.mends.extend(other.mends);
        self
    }

    /// The last resort: said when nothing else is.
    pub fn otherwise(self, words: &str) -> Self {
        if self.ways.is_empty() { self.say(words) } else { self }
    }

    /// A way with the change behind it.
    pub fn mend(mut self, words: impl Into<String>, choices: Vec<(String, Value)>) -> Self {
        self.ways.push(words.into());
        self.mends.push(Mend { choices });
        self
    }

    /// Another option of a pick.
    pub fn pick(self, key: &str, name: &str, words: &str) -> Self {
        match pick(key, name) {
            Some(change) => self.mend(words, vec![change]),
            None => self,
        }
    }

    /// A number that must be `least` or more; left out when it cannot be entered.
    pub fn at_least(self, key: &str, least: f64, words: impl Fn(String) -> String) -> Self {
        match enter_at_least(key, least) {
            Some(value) => self.mend(words(entered(value)), vec![(key.to_owned(), Value::Number(value))]),
            None => self,
        }
    }

    /// A number that must be `most` or less; left out when it cannot be entered.
    pub fn at_most(self, key: &str, most: f64, words: impl Fn(String) -> String) -> Self {
        match enter_at_most(key, most) {
            Some(value) => self.mend(words(entered(value)), vec![(key.to_owned(), Value::Number(value))]),
            None => self,
        }
    }

    /// The sentence: `Give an outside width of 214 mm or more, or take a cooler of 154.6 mm or less.`
    fn sentence(&self) -> String {
        if self.ways.is_empty() { String::new() } else { words::capital(&format!("{}.", self.ways.join(", or "))) }
    }
}

impl Finding {
    pub(super) fn with_mends(mut self, remedy: Remedy) -> Self {
        self.remedy = remedy.sentence();
        self.mends = remedy.mends;
        self
    }
}
