//! Openings that hold other panels: on request, a small panel is cut from what falls out of a large opening.

use kurbo::{Point, Rect as Bounds};

use crate::Build;
use crate::cutting::inside_up;
use crate::design::Method;
use crate::drawing::Contour;
use crate::panels::{FeatureKind, Panel};
use crate::stock::Rect;

/// Smaller rectangles hold no panel of any case, mm: far below the least side a case can have.
const LEAST_MM: f64 = 20.0;

/// Halvings when a rectangle is fitted into an opening: to a thousandth of a millimetre in the largest.
const HALVINGS: usize = 24;

/// The rectangles in a panel's openings that other panels may be cut from, from the panel's lower left corner as it lies
/// when it is cut. Each keeps the gap between panels, and a router's cutter at least, from the edge of its opening and
/// from whatever else is cut there.
#[must_use]
pub fn openings(build: &Build, panel: &Panel) -> Vec<Rect> {
    let (stock, making) = (&build.spec.stock, &build.spec.making);
    // A saw that starts at a drilled hole leaves nothing worth keeping.
    let by_hand = build.panels.iter().any(|panel| making.method(panel.wall) == Method::Hand);
    if !stock.openings || stock.straight || by_hand {
        return Vec::new();
    }
    let (over, width) = (inside_up(&build.spec, panel), panel.size_mm[0]);
    let keep = stock.gap_mm.max(stock.cutter_mm);
    let through = panel.features.iter().filter(|feature| feature.kind == FeatureKind::Opening);
    through
        .filter(|feature| feature.blind.is_none() && !feature.notch)
        .filter_map(|feature| {
            let room = within(&feature.contour, keep)?;
            let near = room.inflate(keep, keep);
            let others = panel.features.iter().filter(|other| other.id != feature.id);
            others.map(|other| other.contour.bbox()).all(|other| !other.overlaps(near)).then_some(room)
        })
        .map(|room| {
            // As the panel lies when it is cut: with its inside up it is seen mirrored.
            let [x0, x1] = if over { [width - room.x1, width - room.x0] } else { [room.x0, room.x1] };
            let room = Bounds { x0, x1, ..room };
            // Inward to whole thousandths, in which sheets are laid.
            let [x, y] = [room.x0, room.y0].map(|at| f64::ceil(at * 1000.0 - 1e-6) / 1000.0);
            let size = |from: f64, to: f64| f64::floor((to - from) * 1000.0 + 1e-6) / 1000.0;
            Rect { x, y, width: size(x, room.x1), height: size(y, room.y1) }
        })
        .collect()
}

/// The largest rectangle of the opening's own proportions about its middle that keeps so far from its edge.
fn within(opening: &Contour, keep: f64) -> Option<Bounds> {
    let bounds = opening.bbox();
    let (centre, half) = (bounds.center(), [bounds.width() / 2.0 - keep, bounds.height() / 2.0 - keep]);
    let scaled = |share: f64| {
        let [x, y] = half.map(|half| half * share);
        Bounds::new(centre.x - x, centre.y - y, centre.x + x, centre.y + y)
    };
    let fits = |share: f64| {
        let rect = scaled(share);
        let edge = Contour::rect(rect.x0, rect.y0, rect.x1, rect.y1);
        opening.contains(Point::new(rect.x0, rect.y0)) && edge.distance_to(opening) >= keep - 1e-9
    };
    if half.iter().any(|half| 2.0 * half < LEAST_MM) || !opening.contains(centre) {
        return None;
    }
    let mut share = [0.0, 1.0];
    if fits(1.0) {
        share[0] = 1.0;
    } else {
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(share[0], share[1]);
            share[usize::from(!fits(middle))] = middle;
        }
    }
    let rect = scaled(share[0]);
    (rect.width().min(rect.height()) >= LEAST_MM).then_some(rect)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    #[test]
    fn rectangles_in_openings_are_those_worked_by_hand() {
        // A rectangle less the gap on every side; the square in a circle of radius 60 less 9: 102 / sqrt 2 = 72.125.
        let rect = within(&Contour::rect(10.0, 10.0, 110.0, 60.0), 9.0).unwrap();
        assert!((rect.x0 - 19.0).abs() < 1e-9 && (rect.y1 - 51.0).abs() < 1e-9, "{rect:?}");
        let square = within(&Contour::circle(0.0, 0.0, 60.0), 9.0).unwrap();
        assert!((square.width() - 72.125).abs() < 1e-3 && (square.height() - 72.125).abs() < 1e-3, "{square:?}");
        assert!(within(&Contour::rect(0.0, 0.0, 100.0, 37.0), 9.0).is_none());
        // An L whose middle is not in it offers nothing.
        let corner = [(0.0, 0.0), (200.0, 0.0), (200.0, 50.0), (50.0, 50.0), (50.0, 200.0), (0.0, 200.0)];
        assert!(within(&Contour::polygon(corner), 9.0).is_none());
    }

    #[test]
    fn only_on_request_and_only_where_a_machine_cuts() {
        let found = |choices: &[(&str, serde_json::Value)]| {
            let mut design = Design::default();
            for (key, value) in choices {
                design.set_json(key, value).unwrap();
            }
            let build = Build::of(&design);
            build.panels.iter().map(|panel| openings(&build, panel).len()).sum::<usize>()
        };
        assert_eq!(found(&[("method", "laser".into())]), 0);
        assert_eq!(found(&[("method", "hand".into()), ("stock.openings", true.into())]), 0);
        assert!(found(&[("method", "laser".into()), ("stock.openings", true.into())]) > 0);
        let straight = [("method", "laser".into()), ("stock.openings", true.into()), ("stock.cuts", "straight".into())];
        assert_eq!(found(&straight), 0);
    }
}
