//! Outlines: a rectangle, and what is left of it when notches run in from its upper edge.

use kurbo::Point;

use crate::drawing::Contour;

/// Two edges nearer than this are one edge, mm: far below anything a saw can do.
const SAME_MM: f64 = 1e-9;

/// A rectangle `[width, height]` with steps `[from, to, floor]` cut away above their floor; counter-clockwise.
pub(super) fn with_notches(size: [f64; 2], steps: &[[f64; 3]]) -> Contour {
    let [width, height] = size;
    let mut points = vec![Point::ZERO, Point::new(width, 0.0)];
    points.extend(skyline(size, steps).into_iter().rev().flat_map(|[from, to, top]| {
        let top = top.min(height);
        [Point::new(to, top), Point::new(from, top)]
    }));
    tidy(points)
}

/// The part of the steps that lies on the panel, as one shape; `None` when nothing of them does.
///
/// Steps of one notch touch each other, so the shape is in one piece.
pub(super) fn notch_shape(size: [f64; 2], steps: &[[f64; 3]]) -> Option<Contour> {
    let height = size[1];
    let cut: Vec<[f64; 3]> = skyline(size, steps).into_iter().filter(|[_, _, top]| *top < height - SAME_MM).collect();
    let (first, last) = (cut.first()?, cut.last()?);
    let mut points = vec![Point::new(first[0], height)];
    points.extend(cut.iter().flat_map(|[from, to, top]| [Point::new(*from, *top), Point::new(*to, *top)]));
    points.push(Point::new(last[1], height));
    Some(tidy(points))
}

/// Height of the upper edge over each stretch of the width, from left to right.
fn skyline(size: [f64; 2], steps: &[[f64; 3]]) -> Vec<[f64; 3]> {
    let [width, height] = size;
    let mut ends: Vec<f64> = vec![0.0, width];
    ends.extend(steps.iter().flat_map(|step| [step[0].clamp(0.0, width), step[1].clamp(0.0, width)]));
    ends.sort_by(f64::total_cmp);
    ends.windows(2)
        .filter(|pair| pair[1] - pair[0] > SAME_MM)
        .map(|pair| {
            let middle = (pair[0] + pair[1]) / 2.0;
            let over = steps.iter().filter(|step| step[0] < middle && middle < step[1]).map(|step| step[2]);
            [pair[0], pair[1], over.fold(height, f64::min).max(0.0)]
        })
        .collect()
}

/// Leaves out points that repeat their neighbour or lie on the straight line through their neighbours.
fn tidy(mut points: Vec<Point>) -> Contour {
    let mut changed = true;
    while changed && points.len() > 3 {
        changed = false;
        for index in 0..points.len() {
            let count = points.len();
            let before = points[(index + count - 1) % count];
            let after = points[(index + 1) % count];
            let here = points[index];
            if (here - before).cross(after - here).abs() < SAME_MM {
                points.remove(index);
                changed = true;
                break;
            }
        }
    }
    Contour::polygon(points)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn corners(contour: &Contour) -> Vec<(f64, f64)> {
        contour.vertices().iter().map(|vertex| (vertex.at.x, vertex.at.y)).collect()
    }

    #[test]
    fn a_stepped_notch_leaves_what_is_under_it() {
        let steps = [[40.0, 60.0, 50.0], [30.0, 70.0, 90.0]];
        let outline = with_notches([100.0, 120.0], &steps);
        // 100 x 120 less 20 x 70 and the two shoulders of 10 x 30.
        assert_eq!(outline.area(), 12_000.0 - 1_400.0 - 600.0);
        let notch = notch_shape([100.0, 120.0], &steps).unwrap();
        assert_eq!(notch.area(), 2_000.0);
        assert!(outline.is_simple() && notch.is_simple());
    }

    #[test]
    fn a_notch_past_the_edge_takes_the_corner_away() {
        let outline = with_notches([100.0, 50.0], &[[-10.0, 20.0, 30.0]]);
        assert_eq!(
            corners(&outline),
            [(0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (20.0, 50.0), (20.0, 30.0), (0.0, 30.0)]
        );
        assert!(notch_shape([100.0, 50.0], &[[10.0, 20.0, 50.0]]).is_none());
        assert!(notch_shape([100.0, 50.0], &[[-20.0, -10.0, 10.0]]).is_none());
    }

    #[test]
    fn without_notches_it_is_the_rectangle() {
        assert_eq!(corners(&with_notches([3.0, 2.0], &[])), [(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)]);
    }
}
