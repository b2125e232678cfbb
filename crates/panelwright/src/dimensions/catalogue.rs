//! The public list of sizes and sources, made from the very tables that the code uses.

use super::source::Source;
use crate::drawing::number::format_number;

/// One line of the public list: what, how much, and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The family of parts: boards, cards, supplies and so on.
    pub group: &'static str,
    /// What is measured.
    pub name: String,
    /// The value with its unit, as shown.
    pub value: String,
    /// Where it stands.
    pub source: Source,
}

impl Entry {
    /// Fills the holes of `pattern` with `numbers`: `{}` takes the next one, `{*}` all of them.
    #[inline(never)]
    pub(super) fn new(
        group: &'static str,
        name: impl Into<String>,
        pattern: &str,
        numbers: &[f64],
        source: Source,
    ) -> Self {
        Self { group, name: name.into(), value: filled(pattern, numbers), source }
    }
}

/// Every size the tables hold, grouped by the kind of part, in the order of the tables.
#[must_use]
pub fn all() -> Vec<Entry> {
    let mut out = Vec::new();
    super::boards::entries(&mut out);
    super::cards::entries(&mut out);
    super::supplies::entries(&mut out);
    super::drives::entries(&mut out);
    super::fans::entries(&mut out);
    super::coolers::entries(&mut out);
    super::connectors::entries(&mut out);
    super::plugs::entries(&mut out);
    super::fasteners::entries(&mut out);
    super::standoffs::entries(&mut out);
    super::sheets::entries(&mut out);
    super::acrylic_holes::entries(&mut out);
    super::hand_work::entries(&mut out);
    super::stability::entries(&mut out);
    super::laser_kerf::entries(&mut out);
    super::router_work::entries(&mut out);
    super::method_limits::entries(&mut out);
    super::joints::entries(&mut out);
    super::margins::entries(&mut out);
    super::paper::entries(&mut out);
    out
}

/// Puts numbers into a pattern. A count that does not match leaves braces or numbers over, which
/// the tests look for.
fn filled(pattern: &str, numbers: &[f64]) -> String {
    let shown: Vec<String> = numbers.iter().map(|number| format_number(*number, 6)).collect();
    if pattern.contains("{*}") {
        return pattern.replace("{*}", &shown.join(", "));
    }
    let mut out = pattern.to_owned();
    for number in &shown {
        out = if out.contains("{}") { out.replacen("{}", number, 1) } else { format!("{out} {{{number}}}") };
    }
    out
}
