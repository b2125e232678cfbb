//! A design: one value for every choice, each known and inside its range.

use serde_json::Value as Json;

use super::choice::{Choice, Kind, Unit, Value, When};
use super::list::{choice, choices};
use crate::drawing::number::{MOST_DECIMALS, format_number};
use crate::json::to_text;

/// What the maker chose. Every value is of its choice's kind and inside its range.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    values: Vec<Value>,
}

/// Input that is not a design: what was given, where, and what would be right.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum DesignError {
    /// A key no choice has.
    #[error("there is no choice {key:?}{}", near.as_ref().map_or(String::new(), |near| format!("; did you mean {near:?}?")))]
    UnknownKey {
        /// The key as given.
        key: String,
        /// The key most like it, when one is near.
        near: Option<String>,
    },
    /// A value of the wrong kind or outside its range.
    #[error("{key}: {given} is not allowed; it must be {allowed}")]
    BadValue {
        /// The choice's key.
        key: String,
        /// The value as given.
        given: String,
        /// The allowed values in words.
        allowed: String,
    },
    /// A key given more than once.
    #[error("{key} is given more than once; keep one of its values")]
    DuplicateKey {
        /// The key.
        key: String,
    },
    /// Text that is not a design file.
    #[error("this is not a design file: {reason}")]
    NotADesign {
        /// What is wrong with it, and where.
        reason: String,
    },
}

impl Default for Design {
    fn default() -> Self {
        Self { values: choices().iter().map(|choice| choice.default.clone()).collect() }
    }
}

/// Rounds to the 0.01 that designs keep, without a negative zero.
pub(crate) fn hundredths(value: f64) -> f64 {
    let rounded = libm::round(value * 100.0) / 100.0;
    if rounded == 0.0 { 0.0 } else { rounded }
}

impl Design {
    /// The value of the choice at `index` of [`choices`]; [`Value::Open`] past the end.
    #[must_use]
    pub fn value(&self, index: usize) -> &Value {
        self.values.get(index).unwrap_or(&Value::Open)
    }

    /// The value of a choice by key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&Value> {
        choice(key).map(|index| &self.values[index])
    }

    /// Takes a value for one choice.
    ///
    /// # Errors
    /// An unknown key, or a value of the wrong kind or outside its range; the design is then unchanged.
    pub fn set(&mut self, key: &str, value: Value) -> Result<(), DesignError> {
        let index = choice(key).ok_or_else(|| unknown(key))?;
        let entry = &choices()[index];
        let value = checked(entry, value)?;
        self.values[index] = value;
        Ok(())
    }

    /// Takes a value written as JSON: a number, an option's name, `true`, text, `[[x, y], …]`, or null for open.
    ///
    /// ```
    /// use panelwright::design::Design;
    /// let mut design = Design::default();
    /// design.set_json("cooler.height", &165.into()).unwrap();
    /// let error = design.set_json("cooler.height", &900.into()).unwrap_err();
    /// assert_eq!(error.to_string(), "cooler.height: 900 is not allowed; it must be 20 to 200 mm");
    /// ```
    ///
    /// # Errors
    /// As [`Design::set`].
    pub fn set_json(&mut self, key: &str, json: &Json) -> Result<(), DesignError> {
        let index = choice(key).ok_or_else(|| unknown(key))?;
        let entry = &choices()[index];
        let value = from_json(entry, json).ok_or_else(|| bad(entry, to_text(json)))?;
        self.set(key, value)
    }

    /// The value of the choice at `index` as JSON.
    #[must_use]
    pub fn json(&self, index: usize) -> Json {
        to_json(&choices()[index], self.value(index))
    }

    /// The places of all choices whose value is not their default.
    #[must_use]
    pub fn changed(&self) -> Vec<usize> {
        choices()
            .iter()
            .enumerate()
            .filter(|(index, choice)| self.values[*index] != choice.default)
            .map(|(index, _)| index)
            .collect()
    }

    /// Whether a choice has an effect in this design.
    #[must_use]
    pub fn applies(&self, index: usize) -> bool {
        match &choices()[index].when {
            When::Always => true,
            When::Is { key, names } => self.holds(key, names, true),
            When::AnyIs { keys, names } => keys.iter().any(|key| self.holds(key, names, true)),
            When::IsNot { key, names } => self.holds(key, names, false),
        }
    }

    /// Whether a pick that has an effect is one of some options, or none of them when that is `wanted`.
    fn holds(&self, key: &str, names: &[&str], wanted: bool) -> bool {
        let Some(other) = choice(key) else { return true };
        let (Kind::Pick(options), Value::Pick(picked)) = (&choices()[other].kind, &self.values[other]) else {
            return true;
        };
        let is = options.get(*picked).is_some_and(|option| names.contains(&option.name));
        is == wanted && self.applies(other)
    }
}

/// JSON of a value (see [`Design::set_json`]).
#[must_use]
pub(crate) fn to_json(entry: &Choice, value: &Value) -> Json {
    match value {
        Value::Open => Json::Null,
        Value::Number(number) => plain(*number),
        Value::Pick(index) => match &entry.kind {
            Kind::Pick(options) => options.get(*index).map_or(Json::Null, |option| Json::from(option.name)),
            _ => Json::Null,
        },
        Value::Switch(on) => Json::from(*on),
        Value::Text(text) => Json::from(text.clone()),
        Value::Points(points) => points.iter().map(|point| Json::from_iter(point.iter().copied().map(plain))).collect(),
    }
}

/// A number as people write it: whole ones without a decimal point.
fn plain(number: f64) -> Json {
    if f64::trunc(number) == number { Json::from(number as i64) } else { Json::from(number) }
}

fn from_json(entry: &Choice, json: &Json) -> Option<Value> {
    match &entry.kind {
        Kind::Pick(options) => {
            let name = json.as_str()?;
            options.iter().position(|option| option.name == name).map(Value::Pick)
        }
        Kind::Number { .. } if json.is_null() => Some(Value::Open),
        Kind::Number { .. } => json.as_f64().map(Value::Number),
        Kind::Switch => json.as_bool().map(Value::Switch),
        Kind::Text { .. } => json.as_str().map(|text| Value::Text(text.to_owned())),
        Kind::Points { .. } => {
            let mut points = Vec::new();
            for point in json.as_array()? {
                let [x, y] = point.as_array()?.as_slice() else { return None };
                points.push([x.as_f64()?, y.as_f64()?]);
            }
            Some(Value::Points(points))
        }
    }
}

fn checked(entry: &Choice, value: Value) -> Result<Value, DesignError> {
    let fail = |given: String| Err(bad(entry, given));
    match (&entry.kind, value) {
        (Kind::Pick(options), Value::Pick(index)) if index < options.len() => Ok(Value::Pick(index)),
        (Kind::Number { optional: true, .. }, Value::Open) => Ok(Value::Open),
        (Kind::Number { min, max, unit, .. }, Value::Number(number)) => {
            let rounded = hundredths(number);
            let whole = *unit != Unit::Count || f64::trunc(rounded) == rounded;
            // Compared unrounded: a value outside the range is never rounded into it.
            if number.is_finite() && *min <= number && number <= *max && whole {
                Ok(Value::Number(rounded))
            } else {
                fail(if number.is_finite() { format_number(number, MOST_DECIMALS) } else { "no number".to_owned() })
            }
        }
        (Kind::Switch, Value::Switch(on)) => Ok(Value::Switch(on)),
        (Kind::Text { max_chars }, Value::Text(text)) => {
            if text.chars().count() <= *max_chars && !text.chars().any(char::is_control) {
                Ok(Value::Text(text))
            } else {
                fail(to_text(&text))
            }
        }
        (Kind::Points { max, limit_mm }, Value::Points(points)) => {
            let fits = |number: f64| number.is_finite() && (0.0..=*limit_mm).contains(&number);
            if points.len() <= *max && points.iter().flatten().all(|number| fits(*number)) {
                Ok(Value::Points(points.into_iter().map(|point| point.map(hundredths)).collect()))
            } else {
                fail(to_text(&points))
            }
        }
        (_, other) => fail(to_text(&to_json(entry, &other))),
    }
}

fn bad(entry: &Choice, given: String) -> DesignError {
    DesignError::BadValue { key: entry.key.clone(), given, allowed: entry.allowed() }
}

fn unknown(key: &str) -> DesignError {
    let near = choices()
        .iter()
        .map(|choice| (distance(key, &choice.key), &choice.key))
        .min()
        .filter(|(distance, _)| *distance <= 4)
        .map(|(_, key)| key.clone());
    DesignError::UnknownKey { key: key.to_owned(), near }
}

/// Edit distance between two short words (Levenshtein), for "did you mean".
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, x) in a.chars().take(64).enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, y) in b.iter().enumerate() {
            let change = diagonal + usize::from(x != *y);
            diagonal = row[j + 1];
            row[j + 1] = change.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_outside_its_range_changes_nothing_and_names_key_value_and_range() {
        let mut design = Design::default();
        let before = design.clone();
        let error = design.set_json("board.standoff", &2.into()).unwrap_err();
        assert_eq!(error.to_string(), "board.standoff: 2 is not allowed; it must be 6.35 to 60 mm");
        assert_eq!(design, before);
        assert!(design.set_json("board.form", &"mega".into()).unwrap_err().to_string().contains("one of mini-itx"));
    }

    #[test]
    fn an_unknown_key_names_the_nearest() {
        let error = Design::default().set_json("cooler.heigth", &100.into()).unwrap_err();
        assert_eq!(error.to_string(), "there is no choice \"cooler.heigth\"; did you mean \"cooler.height\"?");
    }

    #[test]
    fn a_choice_applies_only_where_those_before_it_do() {
        let mut design = Design::default();
        let plug = choice("card.plug").unwrap();
        let thickness = choice("card.thickness").unwrap();
        assert!(design.applies(thickness) && design.applies(plug));
        design.set_json("card.kind", &"none".into()).unwrap();
        assert!(!design.applies(thickness));
        assert!(!design.applies(plug), "its condition's own condition fails");
    }
}
