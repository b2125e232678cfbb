//! Fasteners: every screw with the stack it goes through, its sold length and where it stands.

use crate::dimensions::source::Source;

/// One screw (or bolt) in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Screw {
    /// Unique name.
    pub id: String,
    /// Group it is counted with: same text, same screw.
    pub what: String,
    /// Thread as written: `M3`, `#6-32`.
    pub thread: &'static str,
    /// Major diameter.
    pub diameter_mm: f64,
    /// Under the head, in the case frame.
    pub head_at: [f64; 3],
    /// Unit direction from head to point.
    pub direction: [f64; 3],
    /// What is clamped between head and thread, mm.
    pub clamped_mm: f64,
    /// Length under the head that the joint needs at least.
    pub least_mm: f64,
    /// Length under the head that the joint takes at most; `None`: no limit but what stands in the way.
    pub most_mm: Option<f64>,
    /// Sold length chosen; `None` when no sold length lies between least and most.
    pub length_mm: Option<f64>,
    /// Whether a nut is on its end.
    pub nut: bool,
    /// Washers on it.
    pub washers: u8,
    /// What it joins: ids of panels and parts.
    pub joins: Vec<String>,
    /// Where its limits come from.
    pub source: Source,
}

/// A line of the shopping list: one kind of screw, nut, washer, bracket, standoff or foot, and how many.
#[derive(Clone, Debug, PartialEq)]
pub struct Fastener {
    /// What to buy, and for screws what for: `M3 screw of the supply`.
    pub what: String,
    /// How many.
    pub count: usize,
    /// Length; for screws under the head. `None` where length means nothing, or no sold length fits.
    pub length_mm: Option<f64>,
    /// What they join: ids of panels and parts.
    pub joins: Vec<String>,
}

impl Fastener {
    /// A line of the list.
    pub fn new<S: Into<String>>(
        what: impl Into<String>,
        count: usize,
        length_mm: Option<f64>,
        joins: impl IntoIterator<Item = S>,
    ) -> Self {
        Self { what: what.into(), count, length_mm, joins: joins.into_iter().map(Into::into).collect() }
    }
}

/// How a nut of a thread is listed.
#[must_use]
pub fn nut_name(thread: &str) -> String {
    format!("{thread} nut")
}

/// How a washer of a thread is listed.
#[must_use]
pub fn washer_name(thread: &str) -> String {
    format!("{thread} washer")
}

/// The shopping list: screws with their nuts and washers, then everything else, each kind once.
///
/// Order: as first met; screws, then nuts, washers, and the rest.
#[must_use]
pub fn shopping_list(screws: &[Screw], others: &[Fastener]) -> Vec<Fastener> {
    let mut list: Vec<Fastener> = Vec::new();
    for screw in screws {
        add(&mut list, &screw.what, 1, screw.length_mm, &screw.joins);
    }
    for screw in screws.iter().filter(|screw| screw.nut) {
        add(&mut list, &nut_name(screw.thread), 1, None, &screw.joins);
    }
    for screw in screws.iter().filter(|screw| screw.washers > 0) {
        add(&mut list, &washer_name(screw.thread), usize::from(screw.washers), None, &screw.joins);
    }
    for other in others {
        add(&mut list, &other.what, other.count, other.length_mm, &other.joins);
    }
    list
}

fn add(list: &mut Vec<Fastener>, what: &str, count: usize, length_mm: Option<f64>, joins: &[String]) {
    if count == 0 {
        return;
    }
    match list.iter_mut().find(|line| line.length_mm == length_mm && line.what == what) {
        Some(line) => {
            line.count += count;
            for id in joins {
                if !line.joins.contains(id) {
                    line.joins.push(id.clone());
                }
            }
        }
        None => list.push(Fastener::new(what, count, length_mm, joins.iter().cloned())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_counts_each_kind_once_with_its_nuts_and_washers() {
        let screw = |length: f64, joins: &str| Screw {
            id: String::new(),
            what: "M3 screw".to_owned(),
            thread: "M3",
            diameter_mm: 3.0,
            head_at: [0.0; 3],
            direction: [0.0, 0.0, 1.0],
            clamped_mm: 6.0,
            least_mm: 9.9,
            most_mm: None,
            length_mm: Some(length),
            nut: true,
            washers: 2,
            joins: vec!["floor".to_owned(), joins.to_owned()],
            source: Source::common_practice("", ""),
        };
        let others = [Fastener::new("M3 nut", 3, None, ["top"]), Fastener::new("Pad", 0, None, ["floor"])];
        let list = shopping_list(&[screw(12.0, "a"), screw(12.0, "b"), screw(16.0, "a")], &others);
        let lines: Vec<(&str, usize, Option<f64>)> =
            list.iter().map(|line| (line.what.as_str(), line.count, line.length_mm)).collect();
        assert_eq!(
            lines,
            [("M3 screw", 2, Some(12.0)), ("M3 screw", 1, Some(16.0)), ("M3 nut", 6, None), ("M3 washer", 6, None)]
        );
        assert_eq!(list[0].joins, ["floor", "a", "b"]);
    }
}
