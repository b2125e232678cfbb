//! Holding tabs: where bridges keep a part in its sheet until it is cut free.
//!
//! ```text
//!        |      |            marks, outside the outline, each at the middle of a tab;
//!   -----+------+-----       the outline itself stays closed, and the machine's program
//!        part                lifts the cutter there
//! ```

use kurbo::{Point, Vec2};

use crate::design::Joint;
use crate::drawing::{Contour, Segment};
use crate::panels::{Edge, Panel};

/// How tabs are made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TabRule {
    /// How many; 3 to 5 a part are common practice.
    pub count: usize,
    /// Width along the edge, mm; 4 to 6 is common practice.
    pub width_mm: f64,
    /// Distance of a tab's end from a corner, mm.
    pub from_corner_mm: f64,
}

impl Default for TabRule {
    /// 4, 5 mm wide, 15 mm from corners (common practice).
    fn default() -> Self {
        Self { count: 4, width_mm: 5.0, from_corner_mm: 15.0 }
    }
}

/// Tabs of a part.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tabs {
    /// Middle of each, on the outline, and the direction out of the part.
    pub at: Vec<(Point, Vec2)>,
    /// Whether some had to go on an edge that meets another panel.
    pub on_mating_edge: bool,
}

/// Length of the mark of a tab, mm.
pub const MARK_MM: f64 = 4.0;

/// Places the tabs of a panel: evenly over the straight stretches that leave room for one, on edges that are not
/// pressed against another panel when there are such.
#[must_use]
pub fn tabs(panel: &Panel, rule: TabRule) -> Tabs {
    let room = rule.width_mm + 2.0 * rule.from_corner_mm;
    let stretches: Vec<(Point, Vec2, f64)> = panel
        .outline
        .segments()
        .filter_map(|segment| match segment {
            Segment::Line { from, to } if segment.length_mm() >= room => Some((from, to - from, segment.length_mm())),
            _ => None,
        })
        .collect();
    // An edge that does not run through presses its cut face against the panel it meets.
    let mating = |from: Point, along: Vec2| {
        panel.edges.iter().any(|joint| {
            joint.fixed()
                && (!joint.runs_through || joint.joint == Some(Joint::Finger))
                && lies_on(panel, joint.edge, from, along)
        })
    };
    let free: Vec<_> = stretches.iter().copied().filter(|(from, along, _)| !mating(*from, *along)).collect();
    let on_mating_edge = free.is_empty() && !stretches.is_empty();
    let usable = if free.is_empty() { stretches } else { free };
    let spread: f64 = usable.iter().map(|(_, _, length)| length - room).sum();
    let wanted = if usable.is_empty() { 0 } else { rule.count };
    let mut at = Vec::new();
    for index in 0..wanted {
        let mut along_all = spread * (index as f64 + 0.5) / wanted as f64;
        for (from, along, length) in &usable {
            let here = length - room;
            if along_all <= here {
                let unit = *along / *length;
                let middle = *from + unit * (room / 2.0 + along_all);
                at.push((middle, Vec2::new(unit.y, -unit.x)));
                break;
            }
            along_all -= here;
        }
    }
    at.dedup_by(|a, b| (a.0 - b.0).hypot2() < room * room / 4.0);
    Tabs { at, on_mating_edge }
}

fn lies_on(panel: &Panel, edge: Edge, from: Point, along: Vec2) -> bool {
    let bounds = panel.outline.bbox();
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    match edge {
        Edge::Left => near(along.x, 0.0) && near(from.x, bounds.x0),
        Edge::Right => near(along.x, 0.0) && near(from.x, bounds.x1),
        Edge::Lower => near(along.y, 0.0) && near(from.y, bounds.y0),
        Edge::Upper => near(along.y, 0.0) && near(from.y, bounds.y1),
    }
}

/// The mark of a tab: a short line from `path`, the contour that is cut, outwards.
#[must_use]
pub fn mark(path: &Contour, at: Point, out: Vec2) -> Vec<Point> {
    let start = at + out * path.distance_to_point(at);
    vec![start, start + out * MARK_MM]
}
