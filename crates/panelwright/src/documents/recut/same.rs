//! Whether two shapes are the same, and whether one lies within another.

use kurbo::{Point, Vec2};

use super::MOVED_MM;
use crate::drawing::Contour;
use crate::panels::{Face, Feature};

/// Two depths or drills within this are the same, mm: finer than drills come.
const SAME_SIZE_MM: f64 = 0.01;

/// How far apart shapes are looked at along their lines, mm: no web between two cuts is
/// thinner (2 mm in 6 mm fibreboard, common practice).
const STEP_MM: f64 = 2.0;

/// Whether two outlines agree, the second moved by `by`. Both come from the same program, so the same shape has the same
/// corners in the same order; what has not is taken for another.
pub(super) fn same_contour(one: &Contour, other: &Contour, by: Vec2) -> bool {
    let (a, b) = (one.vertices(), other.vertices());
    a.len() == b.len()
        && a.iter().zip(b).enumerate().all(|(index, (first, second))| {
            let chord = (a[(index + 1) % a.len()].at - first.at).hypot();
            // An arc's rise over its chord is bulge times half the chord.
            let rise = (first.bulge - second.bulge).abs() * chord / 2.0;
            near(first.at, second.at + by) && rise <= MOVED_MM
        })
}

fn near(one: Point, other: Point) -> bool {
    (one - other).hypot() <= MOVED_MM
}

/// Whether two features are the same cut, the second moved by `by`.
pub(super) fn same_feature(old: &Feature, new: &Feature, by: Vec2) -> bool {
    let depth = match (old.blind, new.blind) {
        (None, None) => true,
        (Some((a, one)), Some((b, other))) => one == other && (a - b).abs() <= SAME_SIZE_MM,
        _ => false,
    };
    let drill = match (old.diameter_mm, new.diameter_mm) {
        (Some(a), Some(b)) => (a - b).abs() <= SAME_SIZE_MM && near(old.centre, new.centre + by),
        (None, None) => same_contour(&old.contour, &new.contour, by),
        _ => false,
    };
    depth && drill
}

/// Points along an outline, no farther apart than a step.
pub(super) fn along(contour: &Contour, by: Vec2) -> Vec<Point> {
    let corners = contour.flatten(MOVED_MM / 5.0);
    let mut out = Vec::new();
    for (index, from) in corners.iter().enumerate() {
        let to = corners[(index + 1) % corners.len()];
        let pieces = f64::ceil((to - *from).hypot() / STEP_MM).max(1.0) as usize;
        out.extend((0..pieces).map(|piece| from.lerp(to, piece as f64 / pieces as f64) + by));
    }
    out
}

/// Whether a shape lies within another, the other moved by `by`; lines may touch.
pub(super) fn within(inner: &Contour, outer: &Contour, by: Vec2) -> bool {
    along(inner, Vec2::ZERO).into_iter().all(|point| {
        let point = point - by;
        outer.contains(point) || outer.distance_to_point(point) <= MOVED_MM
    })
}

/// Whether a shape lies outside another, the other moved by `by`; lines may touch.
pub(super) fn outside(shape: &Contour, outline: &Contour, by: Vec2) -> bool {
    along(shape, Vec2::ZERO).into_iter().all(|point| {
        let point = point - by;
        !outline.contains(point) || outline.distance_to_point(point) <= MOVED_MM
    })
}

/// Whether what an old feature took away, a new one (moved by `by`) takes away as well.
pub(super) fn swallowed(old: &Feature, new: &Feature, by: Vec2) -> bool {
    let deep = match (old.blind, new.blind) {
        (_, None) => true,
        (None, Some(_)) => false,
        (Some((a, one)), Some((b, other))) => one == other && b >= a - SAME_SIZE_MM,
    };
    deep && within(&old.contour, &new.contour, by)
}

/// Whether a feature is cut from the face people see.
pub(super) fn shows(feature: &Feature) -> bool {
    !matches!(feature.blind, Some((_, Face::Inside)))
}
