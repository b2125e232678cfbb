//! Outlines: a rectangle, and what is left of it when notches and the gaps of joints are cut from its edges.

use core::ops::Range;

use kurbo::{Point, Rect};

use crate::drawing::Contour;
use crate::solid::within;
use crate::sorting::sort_by;

/// Two edges nearer than this are one edge, mm: far below anything a saw can do.
const SAME_MM: f64 = 1e-9;

/// A rectangle `[width, height]` without the rectangles `gone`, as one outline, counter-clockwise; of several pieces
/// the largest.
///
/// The rectangles cut the plane into a grid; the outline runs between the cells that stay and those that went.
pub(super) fn without(size: [f64; 2], gone: &[Rect]) -> Contour {
    let whole = Rect::new(0.0, 0.0, size[0], size[1]);
    let gone: Vec<Rect> = gone
        .iter()
        .map(|rect| rect.intersect(whole))
        .filter(|rect| rect.width() > SAME_MM && rect.height() > SAME_MM)
        .collect();
    if gone.is_empty() {
        return Contour::rect(0.0, 0.0, size[0], size[1]);
    }
    let xs = lines(size[0], gone.iter().flat_map(|rect| [rect.x0, rect.x1]));
    let ys = lines(size[1], gone.iter().flat_map(|rect| [rect.y0, rect.y1]));
    let (columns, rows) = (xs.len() - 1, ys.len() - 1);
    let mut stays = vec![true; columns * rows];
    for rect in &gone {
        let across = between(&xs, [rect.x0, rect.x1]);
        for row in between(&ys, [rect.y0, rect.y1]) {
            stays[row * columns..][across.clone()].fill(false);
        }
    }
    let is_sheet = |column: i64, row: i64| {
        (0..columns as i64).contains(&column)
            && (0..rows as i64).contains(&row)
            && stays[row as usize * columns + column as usize]
    };
    let mut loops: Vec<Vec<Point>> = Vec::new();
    let mut seen = vec![false; columns * rows];
    // A loop starts at the lower edge of a cell with nothing below it and walks with the sheet on its left.
    for start in 0..columns * rows {
        let (column, row) = ((start % columns) as i64, (start / columns) as i64);
        if seen[start] || !is_sheet(column, row) || is_sheet(column, row - 1) {
            continue;
        }
        let mut points = Vec::new();
        let (first, mut at, mut way) = ((column, row), (column, row), (1_i64, 0_i64));
        loop {
            if way == (1, 0) && at.0 < columns as i64 && at.1 < rows as i64 {
                seen[at.1 as usize * columns + at.0 as usize] = true;
            }
            points.push(Point::new(xs[at.0 as usize], ys[at.1 as usize]));
            at = (at.0 + way.0, at.1 + way.1);
            // The cells ahead on the left and on the right of the way.
            let (ahead_left, ahead_right) = match way {
                (1, 0) => (is_sheet(at.0, at.1), is_sheet(at.0, at.1 - 1)),
                (0, 1) => (is_sheet(at.0 - 1, at.1), is_sheet(at.0, at.1)),
                (-1, 0) => (is_sheet(at.0 - 1, at.1 - 1), is_sheet(at.0 - 1, at.1)),
                _ => (is_sheet(at.0, at.1 - 1), is_sheet(at.0 - 1, at.1 - 1)),
            };
            way = match (ahead_left, ahead_right) {
                // Pieces that touch in a corner only are two pieces: turn left before turning right.
                (false, _) => (-way.1, way.0),
                (true, true) => (way.1, -way.0),
                (true, false) => way,
            };
            if at == first && way == (1, 0) {
                break;
            }
        }
        loops.push(points);
    }
    loops
        .into_iter()
        .map(tidy)
        .max_by(|a, b| a.area().total_cmp(&b.area()))
        .unwrap_or_else(|| Contour::rect(0.0, 0.0, size[0], size[1]))
}

/// Which stretches between the lines of the grid have their middle in a range.
fn between(lines: &[f64], [from, to]: [f64; 2]) -> Range<usize> {
    let middles = |limit: f64| (1..lines.len()).take_while(|end| (lines[end - 1] + lines[*end]) / 2.0 < limit).count();
    middles(from)..middles(to)
}

/// The lines of the grid along one axis, each once, in order.
fn lines(end: f64, cuts: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut lines: Vec<f64> = [0.0, end].into_iter().chain(cuts).collect();
    sort_by(&mut lines, f64::total_cmp);
    lines.dedup_by(|a, b| *a - *b < SAME_MM);
    lines
}

/// Steps `[from, to, floor]` of a notch in the upper edge, as rectangles.
pub(super) fn of_steps(size: [f64; 2], steps: &[[f64; 3]]) -> Vec<Rect> {
    steps.iter().map(|[from, to, floor]| Rect::new(*from, floor.max(0.0), *to, size[1])).collect()
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
    ends.extend(steps.iter().flat_map(|step| [within(step[0], 0.0, width), within(step[1], 0.0, width)]));
    sort_by(&mut ends, f64::total_cmp);
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
    let mut index = 0;
    while index < points.len() && points.len() > 3 {
        let count = points.len();
        let before = points[(index + count - 1) % count];
        let after = points[(index + 1) % count];
        let here = points[index];
        if (here - before).cross(after - here).abs() < SAME_MM {
            points.remove(index);
            // Its neighbours have another neighbour now.
            index = if index + 1 == count { 0 } else { index.saturating_sub(1) };
        } else {
            index += 1;
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
        let outline = without([100.0, 120.0], &of_steps([100.0, 120.0], &steps));
        // 100 x 120 less 20 x 70 and the two shoulders of 10 x 30.
        assert_eq!(outline.area(), 12_000.0 - 1_400.0 - 600.0);
        let notch = notch_shape([100.0, 120.0], &steps).unwrap();
        assert_eq!(notch.area(), 2_000.0);
        assert!(outline.is_simple() && notch.is_simple());
    }

    #[test]
    fn a_notch_past_the_edge_takes_the_corner_away() {
        let outline = without([100.0, 50.0], &of_steps([100.0, 50.0], &[[-10.0, 20.0, 30.0]]));
        assert_eq!(
            corners(&outline),
            [(0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (20.0, 50.0), (20.0, 30.0), (0.0, 30.0)]
        );
        assert!(notch_shape([100.0, 50.0], &[[10.0, 20.0, 50.0]]).is_none());
        assert!(notch_shape([100.0, 50.0], &[[-20.0, -10.0, 10.0]]).is_none());
    }

    #[test]
    fn without_notches_it_is_the_rectangle() {
        assert_eq!(corners(&without([3.0, 2.0], &[])), [(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)]);
    }

    /// Fingers along two edges that meet in a corner, and a corner taken away; the area is counted by hand.
    #[test]
    fn gaps_on_several_edges_leave_one_simple_outline() {
        let gone = [
            Rect::new(0.0, 10.0, 6.0, 20.0),
            Rect::new(0.0, 30.0, 6.0, 50.0),
            Rect::new(20.0, 44.0, 40.0, 50.0),
            Rect::new(94.0, 0.0, 100.0, 50.0),
        ];
        let outline = without([100.0, 50.0], &gone);
        assert_eq!(outline.area(), 5000.0 - 60.0 - 120.0 - 120.0 - 300.0);
        assert!(outline.is_simple());
        assert_eq!(outline.vertices().len(), 14);
    }

    /// Of two pieces that touch in a corner only, the larger stays.
    #[test]
    fn a_piece_cut_off_is_dropped() {
        let outline = without([10.0, 10.0], &[Rect::new(0.0, 4.0, 4.0, 10.0), Rect::new(4.0, 0.0, 10.0, 4.0)]);
        assert_eq!(outline.area(), 36.0);
    }
}
