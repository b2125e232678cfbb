//! A list as rows and columns, before it is written as CSV, printed, or shown.

use serde::Serialize;

use crate::drawing::number::format_number;

/// A list as rows and columns.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Table {
    /// Name in files: `shopping`.
    pub name: &'static str,
    /// What people call it.
    pub title: &'static str,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows, each with a cell for every column.
    pub rows: Vec<Vec<Cell>>,
    /// What is worth knowing beside it; not in the CSV.
    pub notes: Vec<String>,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Column {
    /// What stands above it, with the unit.
    pub title: String,
    /// Whether it holds numbers, which stand to the right.
    pub numbers: bool,
}

/// A cell. The page gets a text, a number, or nothing.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Cell {
    /// Words.
    Text(String),
    /// A number, already rounded to what is shown.
    Number(f64),
    /// A sum of money.
    Money(f64),
    /// Nothing known or nothing to say.
    Empty,
}

/// Decimals that any number in a list may have: square metres to a square centimetre.
const MOST_DECIMALS: u8 = 4;

impl Table {
    /// An empty table; a column whose title starts with `#` holds numbers.
    pub(super) fn new(name: &'static str, title: &'static str, columns: &[&str]) -> Self {
        let columns = columns
            .iter()
            .map(|title| Column { title: title.trim_start_matches('#').to_owned(), numbers: title.starts_with('#') })
            .collect();
        Self { name, title, columns, rows: Vec::new(), notes: Vec::new() }
    }
}

impl Cell {
    /// Words.
    pub(super) fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// A number with at most so many decimals.
    pub(super) fn number(value: f64, decimals: u8) -> Self {
        let scale = f64::from(10_u32.pow(u32::from(decimals.min(MOST_DECIMALS))));
        Self::Number(libm::round(value * scale) / scale)
    }

    /// A whole number.
    pub(super) fn count(count: usize) -> Self {
        Self::Number(count as f64)
    }

    /// A sum, or nothing where no price is known.
    pub(super) fn money(sum: Option<f64>) -> Self {
        sum.map_or(Self::Empty, |sum| Self::Money(libm::round(sum * 100.0) / 100.0))
    }

    /// As it is printed.
    #[must_use]
    pub fn shown(&self) -> String {
        match self {
            Self::Text(text) => text.clone(),
            Self::Number(value) => format_number(*value, MOST_DECIMALS),
            Self::Money(value) => money(*value),
            Self::Empty => String::new(),
        }
    }
}

/// A sum with two decimals always: `12.50`.
pub(super) fn money(value: f64) -> String {
    let mut text = format_number(value, 2);
    let decimals = text.find('.').map(|point| text.len() - point - 1);
    match decimals {
        None => text.push_str(".00"),
        Some(1) => text.push('0'),
        Some(_) => {}
    }
    text
}
