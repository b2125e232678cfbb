//! The marks of a template: centre crosses, blade-entry holes, bars, ticks, register crosses.

use kurbo::{Point, Rect, Vec2};

use crate::dimensions::hand_work::{Saw, blade_hole};
use crate::panels::{Feature, FeatureKind, Purpose};

/// Length of the check bars, mm.
pub const BAR_MM: f64 = 100.0;

/// A blade-entry hole: centre and diameter, in the panel's frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeHole {
    /// Centre.
    pub centre: Point,
    /// Drill.
    pub diameter_mm: f64,
}

/// Air between a blade-entry hole and the line to saw, mm (common practice: half a saw cut and a hair).
const AIR_MM: f64 = 0.8;

/// Holes in which a saw blade starts an opening: two in opposite corners, as large as the opening takes.
///
/// Slots of vents need none of their own: their round ends are drilled. Notches start at the edge.
#[must_use]
pub fn blade_holes(feature: &Feature) -> Vec<BladeHole> {
    let sawn = matches!(feature.kind, FeatureKind::Opening) && feature.blind.is_none() && !feature.notch;
    if !sawn || feature.purpose == Purpose::Vent {
        return Vec::new();
    }
    let bounds = feature.contour.bbox();
    [Saw::Coping, Saw::Fret]
        .iter()
        .map(|saw| entries(feature, bounds, blade_hole(*saw).get()))
        .find(|holes| !holes.is_empty())
        .unwrap_or_default()
}

fn entries(feature: &Feature, bounds: Rect, diameter: f64) -> Vec<BladeHole> {
    let radius = diameter / 2.0;
    let middle = bounds.center();
    let mut out: Vec<BladeHole> = Vec::new();
    for corner in [Point::new(bounds.x0, bounds.y1), Point::new(bounds.x1, bounds.y0)] {
        // From the corner towards the middle until the hole lies inside the line.
        let way: Vec2 = middle - corner;
        let steps = 40;
        let found = (0..=steps)
            .map(|step| corner + way * (f64::from(step) / f64::from(steps)))
            .find(|at| feature.contour.contains(*at) && feature.contour.distance_to_point(*at) >= radius + AIR_MM);
        let Some(centre) = found else { continue };
        if out.iter().all(|other: &BladeHole| (other.centre - centre).hypot() > diameter * 1.5) {
            out.push(BladeHole { centre, diameter_mm: diameter });
        }
    }
    out
}
