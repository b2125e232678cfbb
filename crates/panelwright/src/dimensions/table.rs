//! How a module states its sizes: one line makes both the constant and its entry in the list.
//!
//! Invariant: a number is written once. The list of sources is made from the constants and rows
//! that the rest of the code uses, so it can neither lag behind nor disagree.

use super::catalogue::Entry;
use super::source::{Source, Sourced};

/// One line of a `sizes!` table as the list of sources shows it.
///
/// It is data, not code: hundreds of calls that make the entries would weigh more in the page's module than the
/// entries themselves.
pub(super) struct Row {
    pub label: &'static str,
    pub pattern: &'static str,
    /// In the order in which the pattern shows them.
    pub numbers: &'static [f64],
    pub source: Source,
}

impl Sourced<f64> {
    pub(super) const fn numbers(&'static self) -> &'static [f64] {
        std::slice::from_ref(self.get_ref())
    }
}

impl<const N: usize> Sourced<[f64; N]> {
    pub(super) const fn numbers(&'static self) -> &'static [f64] {
        self.get_ref()
    }
}

impl Sourced<&'static [f64]> {
    pub(super) const fn numbers(&'static self) -> &'static [f64] {
        self.get()
    }
}

/// Puts the rows of a table into the list.
pub(super) fn list(out: &mut Vec<Entry>, group: &'static str, rows: &[Row]) {
    for row in rows {
        out.push(Entry::new(group, row.label, row.pattern, row.numbers, row.source));
    }
}

/// Defines `Sourced` constants and `fn size_entries`, which lists them.
///
/// Each line: `NAME: type = value, "what it is", "pattern", source;`. The pattern holds one `{}`
/// for each number, or `{*}` for a list of any length.
macro_rules! sizes {
    (group $group:literal; $($(#[$meta:meta])* $name:ident : $ty:ty = $value:expr, $label:literal, $pattern:literal, $source:expr;)+) => {
        $(
            #[doc = concat!($label, ".")]
            $(#[$meta])*
            pub const $name: $crate::dimensions::source::Sourced<$ty> =
                $crate::dimensions::source::Sourced::new($value, $source);
        )+

        /// Lists the single sizes of this file.
        fn size_entries(out: &mut Vec<$crate::dimensions::catalogue::Entry>) {
            const ROWS: &[$crate::dimensions::table::Row] = &[$(
                $crate::dimensions::table::Row {
                    label: $label,
                    pattern: $pattern,
                    numbers: $name.numbers(),
                    source: $name.source(),
                },
            )+];
            $crate::dimensions::table::list(out, $group, ROWS);
        }
    };
}

pub(super) use sizes;
