//! The order in which contours are cut, and what must not be in it twice.
//!
//! The smallest first: a small piece is still held by the whole sheet while it is cut. Among equals always the nearest
//! next, so that a field of vents is walked, not jumped over.

use kurbo::Point;

use super::panel::Cut;
use crate::drawing::{Contour, Vertex};
use crate::sorting::{sort_by, sort_by_key};

/// Two contours nearer than this everywhere are the same cut, mm: a digit below what a file says.
const SAME_CUT_MM: f64 = 1e-4;

/// A contour without stretches that have no length; `None` when nothing is left to cut.
#[must_use]
pub fn tidy(contour: &Contour) -> Option<Contour> {
    let near = |a: Point, b: Point| (a - b).hypot2() < SAME_CUT_MM * SAME_CUT_MM;
    let mut kept: Vec<Vertex> = Vec::with_capacity(contour.vertices().len());
    for vertex in contour.vertices() {
        match kept.last_mut() {
            Some(last) if near(last.at, vertex.at) => last.bulge = vertex.bulge,
            _ => kept.push(*vertex),
        }
    }
    while kept.len() > 1 && near(kept[0].at, kept[kept.len() - 1].at) {
        kept.pop();
    }
    (kept.len() > 1).then(|| Contour::new(kept))
}

/// Leaves out cuts that repeat an earlier one.
pub(super) fn without_repeats(cuts: Vec<Cut>) -> Vec<Cut> {
    let mut by_left: Vec<(f64, usize)> = cuts.iter().map(|cut| cut.contour.bbox().x0).zip(0..).collect();
    sort_by(&mut by_left, |a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut repeats = vec![false; cuts.len()];
    for (place, (left, first)) in by_left.iter().enumerate() {
        for (_, second) in by_left[place + 1..].iter().take_while(|(other, _)| other - left <= SAME_CUT_MM) {
            if same(&cuts[*first].contour, &cuts[*second].contour) {
                repeats[*first.max(second)] = true;
            }
        }
    }
    cuts.into_iter().zip(repeats).filter(|(_, repeats)| !repeats).map(|(cut, _)| cut).collect()
}

fn same(a: &Contour, b: &Contour) -> bool {
    let (mine, theirs) = (a.bbox(), b.bbox());
    let near = |x: f64, y: f64| (x - y).abs() <= SAME_CUT_MM;
    if !(near(mine.y0, theirs.y0) && near(mine.x1, theirs.x1) && near(mine.y1, theirs.y1)) {
        return false;
    }
    let all_on = |from: &Contour, to: &Contour| {
        from.segments().all(|segment| to.distance_to_point(segment.from()) <= SAME_CUT_MM)
    };
    near(a.length_mm(), b.length_mm()) && all_on(a, b) && all_on(b, a)
}

/// The smallest first; among equally large ones the nearest to the last. Starts from the lower left corner.
pub(super) fn in_order(cuts: Vec<Cut>) -> Vec<Cut> {
    let mut left: Vec<(i64, Point, Cut)> = cuts
        .into_iter()
        .map(|cut| {
            let bounds = cut.contour.bbox();
            // Size by the box in steps of 0.01 mm, so that rounding makes no order.
            let size = libm::round((bounds.width() + bounds.height()) * 100.0) as i64;
            (size, bounds.center(), cut)
        })
        .collect();
    sort_by_key(&mut left, |(size, _, _)| *size);
    let mut ordered = Vec::with_capacity(left.len());
    let mut here = Point::ORIGIN;
    let mut rest = left.into_iter().peekable();
    while let Some(first) = rest.next() {
        let size = first.0;
        let mut alike = vec![first];
        while let Some(next) = rest.next_if(|next| next.0 == size) {
            alike.push(next);
        }
        while !alike.is_empty() {
            let mut nearest = 0;
            for index in 1..alike.len() {
                if (alike[index].1 - here).hypot2() < (alike[nearest].1 - here).hypot2() {
                    nearest = index;
                }
            }
            let (_, centre, cut) = alike.swap_remove(nearest);
            here = centre;
            ordered.push(cut);
        }
    }
    ordered
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(name: &str, contour: Contour) -> Cut {
        Cut { of: name.to_owned(), contour }
    }

    fn names(cuts: &[Cut]) -> Vec<&str> {
        cuts.iter().map(|cut| cut.of.as_str()).collect()
    }

    #[test]
    fn the_smallest_first_then_the_nearest() {
        let ordered = in_order(vec![
            cut("window", Contour::rect(0.0, 0.0, 50.0, 50.0)),
            cut("far", Contour::circle(90.0, 0.0, 2.0)),
            cut("middle", Contour::circle(40.0, 0.0, 2.0)),
            cut("near", Contour::circle(10.0, 0.0, 2.0)),
            cut("tiny", Contour::circle(100.0, 0.0, 1.0)),
        ]);
        assert_eq!(names(&ordered), ["tiny", "far", "middle", "near", "window"]);
    }

    #[test]
    fn what_is_there_twice_is_cut_once() {
        let square = Contour::rect(0.0, 0.0, 10.0, 10.0);
        let turned = Contour::polygon([(10.0, 10.0), (0.0, 10.0), (0.0, 0.0), (10.0, 0.0)]);
        let kept = without_repeats(vec![
            cut("first", square.clone()),
            cut("circle", Contour::circle(5.0, 5.0, 5.0)),
            cut("again", turned.reversed()),
            cut("moved", square.translate(kurbo::Vec2::new(0.001, 0.0))),
        ]);
        assert_eq!(names(&kept), ["first", "circle", "moved"]);
    }

    #[test]
    fn stretches_without_length_are_left_out() {
        let mut points = vec![(0.0, 0.0), (10.0, 0.0), (10.0, 0.000_01), (10.0, 10.0), (0.0, 0.0)];
        assert_eq!(tidy(&Contour::polygon(points.clone())).unwrap().vertices().len(), 3);
        points.truncate(1);
        assert!(tidy(&Contour::polygon(points)).is_none());
    }
}
