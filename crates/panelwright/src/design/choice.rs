//! One choice: everything the page, the command line, the link and the validation need to know of it.

use crate::dimensions::source::Source;
use crate::drawing::number::{MOST_DECIMALS, format_number};

/// One thing the maker may choose.
#[derive(Clone, Debug)]
pub struct Choice {
    /// Name in files and on the command line, `group.name`; never changes once released.
    pub key: String,
    /// Number in links; never changes and is never used again once released.
    pub code: u16,
    /// What the page calls it.
    pub label: String,
    /// Where the page shows it.
    pub group: Group,
    /// What values it takes.
    pub kind: Kind,
    /// The value of a design that does not name this choice.
    pub default: Value,
    /// One sentence of help.
    pub help: String,
    /// Where its default, presets or range come from.
    pub source: Source,
    /// When it has an effect.
    pub when: When,
}

/// The groups the page opens, in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name is the label")]
pub enum Group {
    Design,
    Board,
    Card,
    Cooler,
    Supply,
    Drives,
    Fans,
    Front,
    Size,
    Sheet,
    Sleeve,
    Hardware,
    Feet,
    Vents,
    Templates,
    Making,
    Joints,
    Stock,
    Prices,
}

impl Group {
    /// Every group in the order of the page.
    pub const ALL: [Self; 19] = [
        Self::Design,
        Self::Board,
        Self::Card,
        Self::Cooler,
        Self::Supply,
        Self::Drives,
        Self::Fans,
        Self::Front,
        Self::Size,
        Self::Sheet,
        Self::Sleeve,
        Self::Hardware,
        Self::Feet,
        Self::Vents,
        Self::Templates,
        Self::Making,
        Self::Joints,
        Self::Stock,
        Self::Prices,
    ];

    /// One lower-case word for lists and links within the page.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Design => "design",
            Self::Board => "board",
            Self::Card => "card",
            Self::Cooler => "cooler",
            Self::Supply => "supply",
            Self::Drives => "drives",
            Self::Fans => "fans",
            Self::Front => "front",
            Self::Size => "size",
            Self::Sheet => "sheet",
            Self::Sleeve => "sleeve",
            Self::Hardware => "hardware",
            Self::Feet => "feet",
            Self::Vents => "vents",
            Self::Templates => "templates",
            Self::Making => "making",
            Self::Joints => "joints",
            Self::Stock => "stock",
            Self::Prices => "prices",
        }
    }

    /// What the page calls it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Design => "Design",
            Self::Board => "Board",
            Self::Card => "Card",
            Self::Cooler => "Cooler",
            Self::Supply => "Supply",
            Self::Drives => "Drives",
            Self::Fans => "Fans",
            Self::Front => "Button and connectors",
            Self::Size => "Size of the case",
            Self::Sheet => "Sheet and finish",
            Self::Sleeve => "Sleeve",
            Self::Hardware => "Brackets and screws",
            Self::Feet => "Feet",
            Self::Vents => "Vents",
            Self::Templates => "Templates",
            Self::Making => "How it is made",
            Self::Joints => "Joints",
            Self::Stock => "Sheets to cut from",
            Self::Prices => "Prices and pace",
        }
    }
}

/// What values a choice takes.
#[derive(Clone, Debug)]
pub enum Kind {
    /// One of the named options.
    Pick(Vec<PickOption>),
    /// A number, kept to 0.01; `optional` may be left open (the tool then uses a published or stated size, or asks).
    Number {
        /// Unit of the number.
        unit: Unit,
        /// Smallest value.
        min: f64,
        /// Largest value.
        max: f64,
        /// Step of the control on the page (values between steps are allowed for lengths).
        step: f64,
        /// Values worth one click.
        presets: Vec<Preset>,
        /// May be left open.
        optional: bool,
    },
    /// Yes or no.
    Switch,
    /// A short line of text.
    Text {
        /// Most characters.
        max_chars: usize,
    },
    /// Measured points (mm), each `x, y`; empty when not measured.
    Points {
        /// Most points.
        max: usize,
        /// Largest coordinate; the smallest is 0.
        limit_mm: f64,
    },
}

/// One option of a pick. Its place in the list is its number in links: append, never reorder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PickOption {
    /// Name in files.
    pub name: &'static str,
    /// What the page calls it.
    pub label: &'static str,
}

/// A named value of a number.
#[derive(Clone, Debug, PartialEq)]
pub struct Preset {
    /// What the page calls it.
    pub label: String,
    /// The value.
    pub value: f64,
}

/// Unit of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// A plain count: whole numbers only.
    Count,
    /// A sum of the maker's money.
    Money,
    /// Minutes of work.
    Minutes,
}

impl Unit {
    /// How it is written after a number; empty for counts.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Count | Self::Money => "",
            Self::Minutes => "min",
        }
    }
}

/// A value of a choice.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Left open.
    Open,
    /// A number, a multiple of 0.01.
    Number(f64),
    /// Index into the pick's options.
    Pick(usize),
    /// Yes or no.
    Switch(bool),
    /// Text.
    Text(String),
    /// Measured points, mm, multiples of 0.01.
    Points(Vec<[f64; 2]>),
}

/// When a choice has an effect: always, or when another choice has one of some values.
#[derive(Clone, Debug, PartialEq)]
pub enum When {
    /// Always.
    Always,
    /// When the pick `key` is one of `names`.
    Is {
        /// The other choice.
        key: String,
        /// Names of its options.
        names: Vec<&'static str>,
    },
    /// When any of the picks `keys` is one of `names`.
    AnyIs {
        /// The other choices.
        keys: Vec<String>,
        /// Names of their options.
        names: Vec<&'static str>,
    },
    /// When the pick `key` is none of `names`.
    IsNot {
        /// The other choice.
        key: String,
        /// Names of its options.
        names: Vec<&'static str>,
    },
}

impl Choice {
    /// The allowed values in words, for messages: `20 to 180 mm`, `one of none, tower`.
    #[must_use]
    pub fn allowed(&self) -> String {
        match &self.kind {
            Kind::Pick(options) => {
                let names: Vec<&str> = options.iter().map(|option| option.name).collect();
                format!("one of {}", names.join(", "))
            }
            Kind::Number { unit, min, max, optional, .. } => {
                let unit = match unit {
                    Unit::Mm => " mm",
                    Unit::Count => ", whole",
                    Unit::Money => "",
                    Unit::Minutes => " min",
                };
                let open = if *optional { ", or null to leave it open" } else { "" };
                let [min, max] = [min, max].map(|end| format_number(*end, MOST_DECIMALS));
                format!("{min} to {max}{unit}{open}")
            }
            Kind::Switch => "true or false".to_owned(),
            Kind::Text { max_chars } => format!("one line of text of at most {max_chars} characters"),
            Kind::Points { max, limit_mm } => {
                format!("at most {max} points [x, y], each 0 to {} mm", format_number(*limit_mm, 2))
            }
        }
    }
}
