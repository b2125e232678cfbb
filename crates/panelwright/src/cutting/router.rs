//! What a round cutter can and cannot follow: openings it does not enter, gaps it does not reach.

use core::f64::consts::PI;

use super::offset::{Joins, Lost, offset};
use super::relief::Void;
use crate::drawing::{Contour, Segment};

/// What a cutter makes of a contour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// All of it, save the rounding in its inside corners.
    Whole,
    /// A round hole no wider than the cutter: drill it.
    Drill,
    /// Not at all, or only in pieces.
    Not(Lost),
    /// It leaves this much standing besides the rounding of inside corners, mm².
    Partly(f64),
}

/// A hole up to this much wider than the cutter is plunged, not milled, mm: there is no path left to go around.
const PLUNGE_MM: f64 = 0.01;

/// Least area that counts as left standing, mm²: a tenth of a millimetre square, and the rounding of many corners.
const LEAST_LEFT_MM2: f64 = 0.05;

/// Whether a cutter of radius `radius_mm` is too wide to go around in a hole, which is then drilled.
pub(super) fn is_drilled(hole: &Contour, radius_mm: f64) -> bool {
    hole.as_circle().is_some_and(|(_, hole)| hole <= radius_mm + PLUNGE_MM / 2.0)
}

/// What a cutter of radius `radius_mm` makes of `contour` with the void on that side.
///
/// The middle of the cutter can be everywhere inside the void moved in by the radius; what it cuts is that moved out
/// again (an opening, in the words of mathematical morphology).
#[must_use]
pub fn reach(contour: &Contour, void: Void, radius_mm: f64) -> Reach {
    follow(contour, void, radius_mm).0
}

/// The same, and the path of the cutter's middle where there is one.
pub(super) fn follow(contour: &Contour, void: Void, radius_mm: f64) -> (Reach, Result<Contour, Lost>) {
    let into_void = if void == Void::Inside { -radius_mm } else { radius_mm };
    let path = offset(contour, into_void, Joins::Round);
    if void == Void::Inside && contour.as_circle().is_some() {
        return (if is_drilled(contour, radius_mm) { Reach::Drill } else { Reach::Whole }, path);
    }
    let reach = match path.as_ref().map_err(|lost| *lost).and_then(|path| offset(path, -into_void, Joins::Round)) {
        Err(lost) => Reach::Not(lost),
        Ok(cut) => {
            let standing = (cut.area().abs() - contour.area().abs()).abs() - rounding_mm2(contour, void, radius_mm);
            if standing > LEAST_LEFT_MM2 { Reach::Partly(standing) } else { Reach::Whole }
        }
    };
    (reach, path)
}

/// What the cutter leaves in inside corners and in curves tighter than itself, mm²; an upper bound where walls are
/// shorter than the rounding.
///
/// Between two straight walls r²(cot(φ/2) - (π - φ)/2); in an arc of radius q < r between tangents that less the same
/// with q (plane geometry).
fn rounding_mm2(contour: &Contour, void: Void, radius_mm: f64) -> f64 {
    let void_left = (contour.area() > 0.0) == (void == Void::Inside);
    let walked = if void_left { contour.clone() } else { contour.reversed() };
    let segments: Vec<Segment> = walked.segments().collect();
    let left_in = |turn: f64, radius: f64| radius * radius * (libm::tan(turn / 2.0) - turn / 2.0);
    let corners = segments.iter().zip(segments.iter().cycle().skip(1)).map(|(before, after)| {
        let (arriving, leaving) = (before.heading_to(), after.heading_from());
        let turn = libm::atan2(arriving.cross(leaving), arriving.dot(leaving));
        if turn > 1e-6 && turn < PI - 1e-3 { left_in(turn, radius_mm) } else { 0.0 }
    });
    let curves = segments.iter().map(|segment| match segment {
        Segment::Arc(arc) if arc.sweep > 0.0 && arc.sweep < PI && arc.radius_mm < radius_mm => {
            left_in(arc.sweep, radius_mm) - left_in(arc.sweep, arc.radius_mm)
        }
        _ => 0.0,
    });
    corners.chain(curves).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cutting::relief::{Relief, relieve};

    const R: f64 = 3.175;

    #[test]
    fn slots_narrower_than_the_cutter_are_not_reached() {
        let slot = |width| Contour::slot(0.0, 0.0, 40.0, 0.0, width);
        assert_eq!(reach(&slot(6.3), Void::Inside, R), Reach::Not(Lost::Vanished));
        assert_eq!(reach(&slot(6.6), Void::Inside, R), Reach::Whole);
        let window = |height| Contour::rect(0.0, 0.0, 40.0, height);
        assert_eq!(reach(&window(6.3), Void::Inside, R), Reach::Not(Lost::Vanished));
        assert_eq!(reach(&window(20.0), Void::Inside, R), Reach::Whole);
        let tight = Contour::rounded_rect(0.0, 0.0, 40.0, 20.0, 1.0);
        assert_eq!(reach(&tight, Void::Inside, R), Reach::Whole);
    }

    #[test]
    fn small_holes_are_drilled() {
        for (diameter, expected) in [(3.4, Reach::Drill), (6.35, Reach::Drill), (6.4, Reach::Whole)] {
            assert_eq!(reach(&Contour::circle(0.0, 0.0, diameter / 2.0), Void::Inside, R), expected, "{diameter}");
        }
    }

    #[test]
    fn a_narrow_gap_in_an_outline_is_left_standing() {
        let notched = |gap: f64| {
            Contour::polygon([
                (0.0, 0.0),
                (100.0, 0.0),
                (100.0, 50.0),
                (50.0 + gap, 50.0),
                (50.0 + gap, 30.0),
                (50.0, 30.0),
                (50.0, 50.0),
                (0.0, 50.0),
            ])
        };
        match reach(&notched(5.0), Void::Outside, R) {
            // Nearly all of 5 x 20 stays; the cutter's rim dips a little into the mouth.
            Reach::Partly(left) => assert!((80.0..100.0).contains(&left), "{left}"),
            other => panic!("{other:?}"),
        }
        assert_eq!(reach(&notched(10.0), Void::Outside, R), Reach::Whole);
        let relieved = relieve(&notched(10.0), Void::Outside, R * 1.05, Relief::Diagonal);
        assert_eq!(reach(&relieved.contour, Void::Outside, R), Reach::Whole);
    }
}
