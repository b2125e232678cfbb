//! Work by hand: holes that pass a saw's blade, how far its frame must reach, what is drilled, and in which order.

use kurbo::{Point, Rect, Vec2};

use super::chain::{FRAME_EDGES, drill_chain, opening_holes};
use crate::design::HandSpec;
use crate::dimensions::hand_work::{Saw, blade_hole};
use crate::drawing::{Contour, Segment};
use crate::panels::{Edge, Feature, FeatureKind, Panel};
use crate::solid::{larger, smaller};
use crate::sorting::sort_by;

/// A blade-entry hole: centre and diameter, in the panel's frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeHole {
    /// Centre.
    pub centre: Point,
    /// Drill.
    pub diameter_mm: f64,
}

/// Air between a blade-entry hole and the line to saw, mm (common practice: half a saw cut and a hair).
pub const BLADE_AIR_MM: f64 = 0.8;
/// A line that turns by less than this is followed without stopping, radians (about 25 degrees; common practice).
const GENTLE: f64 = 0.44;
/// A rounded end that turns by nearly half a turn is no corner: a blade that starts there follows both sides, radians.
const NEARLY_HALF_TURN: f64 = 3.0;
/// Entry holes of one opening lie at least so many of their diameters apart: nearer ones would run into each other
/// (common practice).
const APART: f64 = 1.5;
/// Steps in which a hole is moved away from its corner, mm: what a drill strays (common practice).
const STEP_MM: f64 = 0.25;
/// Most such steps: two metres, more than any panel is wide.
const MOST_STEPS: f64 = 8000.0;
const HAIR_MM: f64 = 1e-9;

/// Whether a feature is cut out with a saw from a hole of its own: an opening through the sheet that reaches no edge.
/// Vents need none: their round ends are drilled. Notches start at the edge.
#[must_use]
pub fn is_sawn_out(feature: &Feature) -> bool {
    feature.kind == FeatureKind::Opening && feature.blind.is_none() && !feature.notch
}

/// Holes in which the blade starts and turns: one at each corner of an opening that the blade cannot turn in, at least
/// one in all, `entry_mm` wide or as much less as the opening needs. Empty for what is not sawn out.
///
/// A blade turns in a hole of its own entry; a rounded corner of that radius or more is simply followed.
#[must_use]
pub fn blade_holes(feature: &Feature, entry_mm: f64) -> Vec<BladeHole> {
    if !is_sawn_out(feature) {
        return Vec::new();
    }
    // What no hole of the maker's saw goes into is left to a finer one.
    let finer = [Saw::Coping, Saw::Fret].map(|saw| blade_hole(saw).get());
    let sizes = [entry_mm].into_iter().chain(finer.into_iter().filter(|size| *size < entry_mm));
    for diameter_mm in sizes {
        let mut holes: Vec<BladeHole> = Vec::new();
        let mut starts = tight_corners(&feature.contour, diameter_mm / 2.0);
        if starts.is_empty() {
            let bounds = feature.contour.bbox();
            starts.push((Point::new(bounds.x1, bounds.y0), bounds.center() - Point::new(bounds.x1, bounds.y0)));
        }
        for (corner, inward) in starts {
            let far = |other: &BladeHole, at: Point| (other.centre - at).hypot() > APART * diameter_mm;
            if let Some(centre) = nestle(&feature.contour, corner, inward, diameter_mm / 2.0)
                && holes.iter().all(|other| far(other, centre))
            {
                holes.push(BladeHole { centre, diameter_mm });
            }
        }
        if !holes.is_empty() {
            return holes;
        }
    }
    Vec::new()
}

/// Corners of an opening that a blade cannot turn in, each with the way inward.
fn tight_corners(contour: &Contour, turns_mm: f64) -> Vec<(Point, Vec2)> {
    let segments: Vec<Segment> = contour.segments().collect();
    let mut out = Vec::new();
    for (index, segment) in segments.iter().enumerate() {
        if let Segment::Arc(arc) = segment
            && arc.sweep > GENTLE
            && arc.sweep < NEARLY_HALF_TURN
            && arc.radius_mm < turns_mm - HAIR_MM
        {
            out.push((arc.point_at(0.5), arc.centre - arc.point_at(0.5)));
        }
        let next = &segments[(index + 1) % segments.len()];
        let (before, after) = (way_at(segment, true), way_at(next, false));
        let turn = libm::atan2(before.cross(after), before.dot(after));
        if turn > GENTLE {
            let corner = match segment {
                Segment::Line { to, .. } => *to,
                Segment::Arc(arc) => arc.to,
            };
            out.push((corner, after - before));
        }
    }
    out
}

/// The direction of a segment at its end or start, of length 1.
fn way_at(segment: &Segment, end: bool) -> Vec2 {
    let way = match segment {
        Segment::Line { from, to } => *to - *from,
        Segment::Arc(arc) => {
            let out = if end { arc.to - arc.centre } else { arc.from - arc.centre };
            Vec2::new(-out.y, out.x) * if arc.sweep > 0.0 { 1.0 } else { -1.0 }
        }
    };
    let length = f64::sqrt(way.hypot2());
    if length > 0.0 { way / length } else { way }
}

/// The place nearest to a corner, along the way inward, where a hole keeps its air to the line.
fn nestle(contour: &Contour, corner: Point, inward: Vec2, radius: f64) -> Option<Point> {
    let length = f64::sqrt(inward.hypot2());
    if length <= 0.0 {
        return None;
    }
    let way = inward / length;
    let bounds = contour.bbox();
    let most = bounds.width() + bounds.height();
    let steps = f64::ceil(most / STEP_MM).clamp(1.0, MOST_STEPS) as usize;
    (0..=steps)
        .map(|index| corner + way * (index as f64 * STEP_MM))
        .find(|at| contour.contains(*at) && contour.distance_to_point(*at) >= radius + BLADE_AIR_MM)
}

/// How deep a saw's frame must be to follow a line: the greatest distance of any of its points from the nearest of the
/// panel's edges that the frame can come from. Exact for lines and arcs. 0 for no edges.
#[must_use]
pub fn frame_needed_mm(contour: &Contour, panel_mm: [f64; 2], edges: &[Edge]) -> f64 {
    let [w, h] = panel_mm;
    let from = |edge: &Edge, at: Point| match edge {
        Edge::Left => at.x,
        Edge::Right => w - at.x,
        Edge::Lower => at.y,
        Edge::Upper => h - at.y,
    };
    let depth = |at: Point| edges.iter().map(|edge| from(edge, at)).fold(f64::INFINITY, f64::min).max(0.0);
    // The nearest edge changes only on these lines (a x + b y = c), so that the deepest point of a segment is an end of
    // it, an extreme of an arc, or where it crosses one of them.
    let changes = [(2.0, 0.0, w), (0.0, 2.0, h), (1.0, -1.0, 0.0), (1.0, 1.0, h), (1.0, 1.0, w), (1.0, -1.0, w - h)];
    let mut deepest: f64 = 0.0;
    for segment in contour.segments() {
        // No point of the segment can be deeper than its rectangle reaches: most segments are done with here.
        let bounds = segment.bbox();
        let ends = [Point::new(bounds.x0, bounds.y0), Point::new(bounds.x1, bounds.y1)];
        let reach =
            edges.iter().map(|edge| larger(from(edge, ends[0]), from(edge, ends[1]))).fold(f64::INFINITY, smaller);
        if reach <= deepest {
            continue;
        }
        let mut at = vec![segment.from(), segment.to()];
        match &segment {
            Segment::Line { from, to } => {
                for (a, b, c) in changes {
                    let (first, second) = (a * from.x + b * from.y - c, a * to.x + b * to.y - c);
                    if first * second < 0.0 {
                        at.push(from.lerp(*to, first / (first - second)));
                    }
                }
            }
            Segment::Arc(arc) => {
                let mut on = |way: Vec2| {
                    if arc.spans(way) {
                        at.push(arc.centre + way * arc.radius_mm);
                    }
                };
                for way in [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)] {
                    on(Vec2::from(way));
                }
                for (a, b, c) in changes {
                    let norm = f64::sqrt(a * a + b * b);
                    let normal = Vec2::new(a, b) / norm;
                    let off = (c - a * arc.centre.x - b * arc.centre.y) / norm / arc.radius_mm;
                    if off.abs() < 1.0 {
                        let along = Vec2::new(-normal.y, normal.x) * f64::sqrt(1.0 - off * off);
                        on(normal * off + along);
                        on(normal * off - along);
                    }
                }
            }
        }
        deepest = at.into_iter().map(depth).filter(|depth| depth.is_finite()).fold(deepest, f64::max);
    }
    deepest
}

/// Whether a saw follows a feature's line: what goes through and is not merely drilled.
#[must_use]
pub fn is_sawn(feature: &Feature) -> bool {
    feature.blind.is_none()
        && match feature.kind {
            FeatureKind::Opening => true,
            FeatureKind::Vent => slot_ends(feature).len() == 2,
            _ => false,
        }
}

/// Where a vent is drilled: the centres of a slot's round ends, or of a round vent.
#[must_use]
pub fn slot_ends(feature: &Feature) -> Vec<Point> {
    let bounds = feature.contour.bbox();
    let reach = (bounds.width() - bounds.height()).abs() / 2.0;
    if reach < 1e-6 {
        return vec![feature.centre];
    }
    let along = if bounds.width() >= bounds.height() { Vec2::new(1.0, 0.0) } else { Vec2::new(0.0, 1.0) };
    vec![feature.centre - along * reach, feature.centre + along * reach]
}

/// One drill: its diameter and how many holes it makes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drill {
    /// Diameter.
    pub diameter_mm: f64,
    /// Holes that go through.
    pub through: usize,
    /// Holes to a depth.
    pub blind: usize,
}

/// Every drill of a panel, the thinnest first: holes, ends of vents, blade entries and chains.
#[must_use]
pub fn drill_list(panel: &Panel, hand: &HandSpec) -> Vec<Drill> {
    let mut drills: Vec<Drill> = Vec::new();
    let mut drill = |diameter_mm: f64, count: usize, blind: bool| {
        let index = drills.iter().position(|known| (known.diameter_mm - diameter_mm).abs() < 1e-6);
        let index = index.unwrap_or_else(|| {
            drills.push(Drill { diameter_mm, through: 0, blind: 0 });
            drills.len() - 1
        });
        *(if blind { &mut drills[index].blind } else { &mut drills[index].through }) += count;
    };
    for feature in &panel.features {
        let Rect { x0, y0, x1, y1 } = feature.contour.bbox();
        let slim = (x1 - x0).min(y1 - y0);
        match (feature.kind, feature.diameter_mm) {
            (FeatureKind::Hole, diameter) => drill(diameter.unwrap_or(slim), 1, feature.blind.is_some()),
            (FeatureKind::Counterbore, Some(diameter)) => drill(diameter, 1, true),
            (FeatureKind::Vent, _) => {
                let chain = drill_chain(panel, feature, hand);
                drill(slim, if chain.is_empty() { slot_ends(feature).len() } else { chain.len() }, false);
            }
            _ => opening_holes(panel, feature, hand).iter().for_each(|hole| drill(hole.diameter_mm, 1, false)),
        }
    }
    sort_by(&mut drills, |a, b| a.diameter_mm.total_cmp(&b.diameter_mm));
    drills
}

/// The order in which a panel is cut by hand, after drilling.
#[derive(Clone, Debug, PartialEq)]
pub struct HandOrder {
    /// Vents, openings, then notches: indices into the panel's features. Inside before outside; of each, the deepest
    /// inside the panel first, while the sheet around it is still whole.
    pub inside: Vec<usize>,
    /// The outside edges, the shortest first: the longest holds the panel to the rest of its sheet to the end.
    pub edges: [Edge; 4],
}

/// The order of cuts of a panel.
#[must_use]
pub fn hand_order(panel: &Panel) -> HandOrder {
    let depth = |index: &usize| frame_needed_mm(&panel.features[*index].contour, panel.size_mm, &FRAME_EDGES);
    let stage = |index: &usize| match &panel.features[*index] {
        feature if feature.notch => 2,
        feature if feature.kind == FeatureKind::Vent => 0,
        _ => 1,
    };
    let mut inside: Vec<usize> = (0..panel.features.len()).filter(|index| is_sawn(&panel.features[*index])).collect();
    sort_by(&mut inside, |a, b| stage(a).cmp(&stage(b)).then(depth(b).total_cmp(&depth(a))).then(a.cmp(b)));
    let [w, h] = panel.size_mm;
    let edges = if h <= w + HAIR_MM {
        [Edge::Left, Edge::Right, Edge::Lower, Edge::Upper]
    } else {
        [Edge::Lower, Edge::Upper, Edge::Left, Edge::Right]
    };
    HandOrder { inside, edges }
}

#[cfg(test)]
mod tests;
