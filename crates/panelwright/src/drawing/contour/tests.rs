//! Contours against worked figures: areas and lengths of known shapes, the bulge of the DXF reference, chord counts.
//!
//! Worked figures are from plane geometry (shoelace, circular segment, sagitta), computed outside this program.

use core::f64::consts::PI;

use kurbo::{ParamCurveNearest, PathSeg, Point, Shape, Vec2};

use super::*;

#[track_caller]
fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "found {found}, expected {expected} within {within}");
}

fn polygon(points: &[(f64, f64)]) -> Contour {
    Contour::polygon(points.iter().copied())
}

#[test]
fn areas_and_lengths_are_those_worked_by_hand() {
    let stepped = polygon(&[(0., 0.), (40., 0.), (40., 30.), (25., 30.), (25., 10.), (0., 10.)]);
    let corner = polygon(&[(0., 0.), (60., 0.), (60., 20.), (20., 20.), (20., 50.), (0., 50.)]);
    for (shape, area, length) in [
        (stepped, 700.0, 140.0),
        (corner, 1800.0, 220.0),
        (Contour::rounded_rect(0., 0., 100., 60., 5.), 5978.539816, 311.415927),
        (Contour::slot(2., 2., 18., 2., 4.), 76.566371, 44.566371),
        (Contour::circle(0., 0., 58.), 10_568.317686, 364.424748),
    ] {
        near(shape.area(), area, 1e-5);
        near(shape.length_mm(), length, 1e-5);
        near(shape.reversed().area(), -area, 1e-5);
        near(shape.mirror_x(3.7).area(), area, 1e-5);
        near(shape.translate(Vec2::new(-1000.5, 333.25)).area(), area, 1e-5);
        near(shape.quarter_turns(3).area(), area, 1e-5);
        assert!(shape.is_simple());
        // The same answers by another road: the cubic curves, measured by the curve library.
        near(shape.to_path().area(), area, CURVE_TOLERANCE_MM * length);
        near(shape.to_path().perimeter(1e-6), length, 2.0 * PI * CURVE_TOLERANCE_MM);
    }
    let plate = Contour::rect(0., 0., 100., 60.);
    let hole = Contour::circle(50., 30., 10.);
    near(plate.area() - hole.area(), 5685.840735, 1e-5);
    near(plate.length_mm() + hole.length_mm(), 382.831853, 1e-5);
}

#[test]
fn bulges_follow_the_dxf_reference() {
    for (degrees, bulge) in [
        (30.0_f64, 0.131652),
        (45., 0.198912),
        (60., 0.267949),
        (90., 0.414214),
        (120., 0.577350),
        (180., 1.0),
        (270., 2.414214),
    ] {
        let arc = Arc::from_bulge(Point::ZERO, Point::new(10., 0.), bulge).unwrap();
        // Six decimals of bulge are 4·0.5e-6 rad of sweep.
        near(arc.sweep.to_degrees(), degrees, 1.2e-4);
        near(arc.bulge(), bulge, 1e-9);
    }
    for (bulge, radius, centre, degrees, rise) in [
        (0.414214, 7.071068, (5., 5.), 90.0, 2.071068),
        (-0.414214, 7.071068, (5., -5.), -90.0, 2.071068),
        (1.0, 5.0, (5., 0.), 180.0, 5.0),
        (0.5, 6.25, (5., 3.75), 106.260205, 2.5),
        (2.414214, 7.071068, (5., -5.), 270.0, 12.071068),
    ] {
        let arc = Arc::from_bulge(Point::ZERO, Point::new(10., 0.), bulge).unwrap();
        near(arc.radius_mm, radius, 1e-5);
        near(arc.centre.x, centre.0, 1e-5);
        near(arc.centre.y, centre.1, 1e-5);
        // Six decimals of bulge are 4·0.5e-6 rad of sweep.
        near(arc.sweep.to_degrees(), degrees, 1.2e-4);
        // A left turn bends to the right of its chord, here below it.
        near(arc.point_at(0.5).y, -rise * f64::signum(bulge), 1e-5);
        near(length(arc.point_at(1.0) - arc.to), 0.0, 1e-9);
    }
    let quarter = 0.414_213_56;
    let corners = [
        (5., 0., 0.),
        (95., 0., 1.),
        (100., 5., 0.),
        (100., 55., 1.),
        (95., 60., 0.),
        (5., 60., 1.),
        (0., 55., 0.),
        (0., 5., 1.),
    ];
    let rounded = Contour::new(corners.map(|(x, y, b)| Vertex { at: Point::new(x, y), bulge: b * quarter }).to_vec());
    near(rounded.area(), 5978.539816, 1e-5);
    near(rounded.length_mm(), 311.415927, 1e-5);
}

#[test]
fn chord_counts_keep_the_stated_tolerance() {
    for (radius, tolerance, count, actual) in
        [(60., 0.05, 77, 0.049932), (60., 0.01, 173, 0.009893), (3., 0.05, 18, 0.045577), (2.5, 0.01, 36, 0.009513)]
    {
        assert_eq!(chords_for_circle(radius, tolerance), count);
        let points = Contour::circle(1., 2., radius).flatten(tolerance);
        assert_eq!(points.len(), count);
        let inside = radius - length(points[0].midpoint(points[1]) - Point::new(1., 2.));
        near(inside, actual, 1e-5);
    }
    let chords = Contour::polygon(Contour::circle(0., 0., 60.).flatten(0.05));
    near(PI * 3600. - chords.area(), 12.546853, 1e-5);
    // Silly tolerances still end.
    assert!(Contour::circle(0., 0., 60.).flatten(0.0).len() <= 4096);
    assert!(Contour::circle(0., 0., 60.).flatten(1e9).len() >= 3);
}

#[test]
fn cubics_stay_within_the_stated_distance_of_the_arc() {
    for radius in [1.5, 10.0, 58.0, 100.0, 1000.0] {
        let path = Contour::circle(0., 0., radius).to_path();
        let worst = path
            .segments()
            .filter_map(|segment| match segment {
                PathSeg::Cubic(cubic) => Some(cubic),
                _ => None,
            })
            .flat_map(|cubic| (0..=200).map(move |step| kurbo::ParamCurve::eval(&cubic, f64::from(step) / 200.)))
            .map(|point| (length(point - Point::ZERO) - radius).abs())
            .fold(0.0, f64::max);
        assert!(worst <= CURVE_TOLERANCE_MM, "radius {radius}: {worst}");
        assert!(worst > 0.0);
    }
}

#[test]
fn boxes_are_tight_around_arcs() {
    let slot = Contour::slot(10., 10., 10., 30., 6.).bbox();
    assert_eq!((slot.x0, slot.y0, slot.x1, slot.y1), (7., 7., 13., 33.));
    let lens = Contour::new(vec![
        Vertex { at: Point::new(0., 0.), bulge: 0.5 },
        Vertex { at: Point::new(10., 0.), bulge: 0.0 },
    ]);
    near(lens.bbox().y0, -2.5, 1e-12);
    near(lens.bbox().y1, 0.0, 1e-12);
}

#[test]
fn inside_and_outside_are_told_apart_on_a_fine_grid() {
    let notched = Contour::new(vec![
        Vertex { at: Point::new(0., 0.), bulge: 0.0 },
        Vertex { at: Point::new(40., 0.), bulge: 0.3 },
        Vertex { at: Point::new(40., 30.), bulge: 0.0 },
        Vertex { at: Point::new(30., 30.), bulge: -1.0 },
        Vertex { at: Point::new(10., 30.), bulge: 0.0 },
        Vertex { at: Point::new(0., 30.), bulge: -2.0 },
    ]);
    let mut inside = 0;
    for shape in [
        notched,
        Contour::circle(20., 15., 10.),
        Contour::slot(5., 5., 30., 22., 7.),
        Contour::rounded_rect(3., 3., 33., 27., 6.),
    ] {
        let path = shape.to_path();
        for x in -20..120 {
            for y in -20..90 {
                // Points that meet vertices and arc ends exactly are part of it, save those on the outline itself.
                let point = Point::new(f64::from(x) / 2., f64::from(y) / 2.);
                if shape.distance_to_point(point) < 0.002 {
                    continue;
                }
                assert_eq!(shape.contains(point), path.winding(point) != 0, "{point:?} of {shape:?}");
                inside += usize::from(shape.contains(point));
            }
        }
    }
    assert!(inside > 3000);
    assert!(Contour::circle(0., 0., 5.).contains(Point::ZERO));
}

#[test]
fn distances_agree_with_fine_sampling() {
    let shapes = [
        Contour::rect(0., 0., 20., 10.),
        Contour::circle(40., 5., 4.),
        Contour::circle(40., 5., 2.),
        Contour::slot(2., 22., 30., 40., 5.),
        Contour::rounded_rect(-30., -30., 80., 80., 12.),
        Contour::slot(30., 5., 36., 5., 2.),
        polygon(&[(12., 12.), (28., 18.), (9., 20.)]),
    ];
    for (index, one) in shapes.iter().enumerate() {
        for two in &shapes[index + 1..] {
            let exact = one.distance_to(two);
            assert_eq!(exact, two.distance_to(one));
            let mut sampled = f64::INFINITY;
            for point in Contour::polygon(one.flatten(1e-4)).to_path().flatten_points(0.05) {
                for segment in two.to_path().segments() {
                    sampled = sampled.min(f64::sqrt(segment.nearest(point, 1e-6).distance_sq));
                }
            }
            // Half a sampling step where they cross; its square over twice the distance where they do not.
            near(exact, sampled, if exact == 0.0 { 0.025 } else { 0.002 });
        }
    }
    near(Contour::circle(0., 0., 5.).distance_to(&Contour::circle(20., 0., 3.)), 12.0, 1e-12);
    near(Contour::circle(0., 0., 5.).distance_to(&Contour::circle(0., 0., 3.)), 2.0, 1e-12);
    near(Contour::circle(0., 0., 5.).distance_to(&Contour::circle(1., 0., 3.)), 1.0, 1e-12);
    near(Contour::circle(0., 7., 5.).distance_to(&Contour::rect(-50., -9., 50., 0.)), 2.0, 1e-12);
    assert_eq!(Contour::circle(0., 0., 5.).distance_to(&Contour::circle(6., 0., 3.)), 0.0);
}

/// Points along a polygon's lines, at most `step` apart.
trait Sampled {
    fn flatten_points(&self, step: f64) -> Vec<Point>;
}

impl Sampled for BezPath {
    fn flatten_points(&self, step: f64) -> Vec<Point> {
        let mut points = Vec::new();
        for segment in self.segments() {
            if let PathSeg::Line(line) = segment {
                let count = f64::ceil(length(line.p1 - line.p0) / step).max(1.0) as i32;
                points.extend((0..count).map(|index| line.p0.lerp(line.p1, f64::from(index) / f64::from(count))));
            }
        }
        points
    }
}

#[test]
fn contours_that_cross_or_touch_themselves_are_found() {
    assert!(!polygon(&[(0., 0.), (10., 10.), (10., 0.), (0., 10.)]).is_simple());
    assert!(!polygon(&[(0., 0.), (10., 0.), (5., 0.), (5., 5.)]).is_simple(), "folded back on itself");
    assert!(!polygon(&[(0., 0.), (10., 0.), (10., 5.), (5., 0.), (0., 5.)]).is_simple(), "touching");
    assert!(!polygon(&[(0., 0.), (10., 0.)]).is_simple());
    let deep = |bulge| {
        Contour::new(vec![
            Vertex { at: Point::new(0., 0.), bulge: 0.0 },
            Vertex { at: Point::new(20., 0.), bulge: 0.0 },
            Vertex { at: Point::new(20., 12.), bulge },
            Vertex { at: Point::new(0., 12.), bulge: 0.0 },
        ])
    };
    assert!(deep(-1.0).is_simple(), "a round notch that leaves 2 mm");
    assert!(!deep(-1.3).is_simple(), "a round notch through the far side");
    assert!(Contour::circle(0., 0., 1.).is_simple());
    assert!(!Contour::circle(0., 0., 0.).is_simple());
}

#[test]
fn circles_are_known_as_circles() {
    assert_eq!(Contour::circle(3., 4., 5.).as_circle(), Some((Point::new(3., 4.), 5.)));
    assert_eq!(Contour::slot(3., 4., 3., 4., 10.).as_circle(), Some((Point::new(3., 4.), 5.)));
    assert_eq!(Contour::slot(3., 4., 3.1, 4., 10.).as_circle(), None);
    assert_eq!(Contour::rect(0., 0., 1., 1.).as_circle(), None);
    assert_eq!(Contour::polygon(Vec::<Point>::new()).as_circle(), None);
}

#[test]
fn path_data_keeps_arcs() {
    assert_eq!(
        Contour::circle(10., 20., 5.).to_path_data(),
        "M15 20A5 5 0 0 1 10 25A5 5 0 0 1 5 20A5 5 0 0 1 10 15A5 5 0 0 1 15 20Z"
    );
    assert_eq!(Contour::rect(0., 0., 12.5, 4.).to_path_data(), "M0 0L12.5 0L12.5 4L0 4Z");
}

fn length(vector: Vec2) -> f64 {
    super::segment::length(vector)
}
