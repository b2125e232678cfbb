//! Holding tabs: where bridges keep a part in its sheet until it is cut free.
//!
//! ```text
//!       +--+                  mark, outside the outline: as long as the tool stays up
//!   ----+  +---------         the outline itself stays closed; the machine's program
//!        part                 lifts the cutter between the mark's ends
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
    /// Sheet left standing from the underside, mm; 1.5 to 2 is common practice.
    pub height_mm: f64,
    /// Distance of a tab's end from a corner, mm.
    pub from_corner_mm: f64,
}

impl Default for TabRule {
    /// 4, 5 mm wide, 1.5 mm high, 15 mm from corners (common practice).
    fn default() -> Self {
        Self { count: 4, width_mm: 5.0, height_mm: 1.5, from_corner_mm: 15.0 }
    }
}

/// Tabs of a part.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tabs {
    /// Middle of each, on the outline, and the direction out of the part.
    pub at: Vec<(Point, Vec2)>,
    /// Whether some had to go on an edge that meets another panel.
    pub on_mating_edge: bool,
    /// Whether some had to go beside a hole, an opening or a recess.
    pub beside_cut: bool,
}

/// How far the mark of a tab stands out of the path, mm: less than the usual trim of a sheet.
pub const MARK_MM: f64 = 3.0;

/// A straight stretch of the outline: where it starts, its direction, and where along it the middle of a tab may be.
struct Stretch {
    from: Point,
    unit: Vec2,
    mating: bool,
    /// From, to, mm along it.
    free: Vec<[f64; 2]>,
    /// The same with holes and recesses beside it left out.
    clear: Vec<[f64; 2]>,
}

/// Places the tabs of a panel: evenly over the straight stretches that leave room for one, clear of holes, openings and
/// recesses by the sheet's thickness, on edges that are not pressed against another panel when there are such.
#[must_use]
pub fn tabs(panel: &Panel, rule: TabRule) -> Tabs {
    let room = rule.width_mm + 2.0 * rule.from_corner_mm;
    let stretches: Vec<Stretch> = panel
        .outline
        .segments()
        .filter_map(|segment| match segment {
            Segment::Line { from, to } if segment.length_mm() >= room => {
                let length = segment.length_mm();
                let unit = (to - from) / length;
                let free = vec![[room / 2.0, length - room / 2.0]];
                let clear = clear_of_cuts(panel, rule, from, unit, free[0]);
                Some(Stretch { from, unit, mating: is_mating(panel, from, unit), free, clear })
            }
            _ => None,
        })
        .collect();
    // The best there is: a tab on a mating edge is cleaned away, one beside a hole may break into it.
    for (mating, beside_cut) in [(false, false), (true, false), (false, true), (true, true)] {
        let usable: Vec<(Point, Vec2, [f64; 2])> = stretches
            .iter()
            .filter(|stretch| mating || !stretch.mating)
            .flat_map(|stretch| {
                let ranges = if beside_cut { &stretch.free } else { &stretch.clear };
                ranges.iter().map(|range| (stretch.from, stretch.unit, *range))
            })
            .collect();
        let at = spread(&usable, rule.count, room);
        if !at.is_empty() {
            return Tabs { at, on_mating_edge: mating, beside_cut };
        }
    }
    Tabs::default()
}

/// Evenly over all ranges together.
fn spread(usable: &[(Point, Vec2, [f64; 2])], wanted: usize, room: f64) -> Vec<(Point, Vec2)> {
    let whole: f64 = usable.iter().map(|(_, _, [low, high])| high - low).sum();
    let mut at = Vec::new();
    for index in 0..if usable.is_empty() { 0 } else { wanted } {
        let mut along_all = whole * (index as f64 + 0.5) / wanted as f64;
        for (from, unit, [low, high]) in usable {
            if along_all <= high - low {
                at.push((*from + *unit * (low + along_all), Vec2::new(unit.y, -unit.x)));
                break;
            }
            along_all -= high - low;
        }
    }
    at.dedup_by(|a, b| (a.0 - b.0).hypot2() < room * room / 4.0);
    at
}

/// What is left of a range along an edge beside features that come nearer to it than the sheet is thick.
fn clear_of_cuts(panel: &Panel, rule: TabRule, from: Point, unit: Vec2, range: [f64; 2]) -> Vec<[f64; 2]> {
    let clear = panel.thickness_mm;
    let inward = Vec2::new(-unit.y, unit.x);
    let mut left = vec![range];
    for feature in &panel.features {
        let bounds = feature.contour.bbox();
        let corners = [(bounds.x0, bounds.y0), (bounds.x1, bounds.y0), (bounds.x1, bounds.y1), (bounds.x0, bounds.y1)]
            .map(|corner| Point::from(corner) - from);
        let least = |way: Vec2| corners.iter().map(|corner| corner.dot(way)).fold(f64::INFINITY, f64::min);
        if least(inward) >= clear {
            continue;
        }
        let taken = [least(unit) - clear - rule.width_mm / 2.0, -least(-unit) + clear + rule.width_mm / 2.0];
        left = left
            .into_iter()
            .flat_map(|[low, high]| [[low, high.min(taken[0])], [low.max(taken[1]), high]])
            .filter(|[low, high]| low <= high)
            .collect();
    }
    left
}

/// Whether a stretch lies on an edge whose cut face is pressed against the panel it meets.
fn is_mating(panel: &Panel, from: Point, along: Vec2) -> bool {
    panel.edges.iter().any(|joint| {
        joint.fixed()
            && (!joint.runs_through || joint.joint == Some(Joint::Finger))
            && lies_on(panel, joint.edge, from, along)
    })
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

/// The mark of a tab: from one of its ends on `path`, the contour that is cut, outwards, along, and back to the other
/// end, `length_mm` further.
#[must_use]
pub fn mark(path: &Contour, at: Point, out: Vec2, length_mm: f64) -> Vec<Point> {
    let foot = at + out * path.distance_to_point(at);
    let half = Vec2::new(-out.y, out.x) * (length_mm / 2.0);
    vec![foot - half, foot - half + out * MARK_MM, foot + half + out * MARK_MM, foot + half]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;
    use crate::{Build, design::Design};

    #[test]
    fn a_tab_leaves_the_sheets_thickness_to_every_cut() {
        let mut beside = 0;
        for seed in 0..60 {
            let build = Build::of(&sample::design(seed, false));
            for panel in &build.panels {
                let found = tabs(panel, TabRule::default());
                if found.beside_cut {
                    beside += 1;
                    continue;
                }
                for (at, out) in &found.at {
                    let along = Vec2::new(-out.y, out.x);
                    for feature in &panel.features {
                        for step in -10..=10 {
                            let on_tab = *at + along * (0.25 * f64::from(step));
                            let apart = feature.contour.distance_to_point(on_tab);
                            assert!(apart > panel.thickness_mm - 1e-6, "{seed} {} {} {apart}", panel.id(), feature.id);
                        }
                    }
                }
            }
        }
        assert!(beside < 30, "{beside} panels without a clear place");
    }

    #[test]
    fn a_hole_at_an_edge_moves_the_tab_aside() {
        let mut panel = Build::of(&Design::default()).panels.remove(2);
        panel.features.clear();
        let rule = TabRule { count: 1, ..TabRule::default() };
        let before = tabs(&panel, rule).at[0];
        // A hole two millimetres inside the edge, right at the tab.
        let mut hole = Build::of(&Design::default()).panels.remove(0).features.remove(0);
        let centre = before.0 - before.1 * 4.0;
        hole.contour = Contour::circle(centre.x, centre.y, 2.0);
        panel.features.push(hole);
        let after = tabs(&panel, rule);
        assert!(!after.beside_cut && (after.at[0].0 - before.0).hypot() > 2.0);
        // The mark is as long as the tool stays up, and starts and ends on the path.
        let line = mark(&panel.outline, before.0, before.1, 8.0);
        assert!(((line[3] - line[0]).hypot() - 8.0).abs() < 1e-9);
        assert!(panel.outline.distance_to_point(line[0]) < 1e-9 && panel.outline.distance_to_point(line[3]) < 1e-9);
    }
}
