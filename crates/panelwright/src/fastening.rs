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
