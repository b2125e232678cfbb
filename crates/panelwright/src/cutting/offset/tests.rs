//! Offsets against areas from plane geometry (Steiner's formula and its mitred kin), and against themselves.

use core::f64::consts::PI;

use cavalier_contours::polyline::{PlineOffsetOptions, PlineSource, PlineSourceMut, Polyline};
use proptest::prelude::*;

use super::*;

fn l_shape() -> Contour {
    Contour::polygon([(0.0, 0.0), (60.0, 0.0), (60.0, 20.0), (20.0, 20.0), (20.0, 50.0), (0.0, 50.0)])
}

fn triangle() -> Contour {
    Contour::polygon([(0.0, 0.0), (40.0, 0.0), (0.0, 30.0)])
}

fn area(contour: &Contour, outward_mm: f64, joins: Joins) -> f64 {
    let grown = offset(contour, outward_mm, joins).unwrap();
    assert!(grown.is_simple() && grown.area() > 0.0);
    grown.area()
}

#[test]
fn areas_follow_steiner() {
    let rect = Contour::rect(0.0, 0.0, 100.0, 60.0);
    for (contour, outward_mm, joins, expected) in [
        (&rect, 2.0, Joins::Round, 6_652.566_371),
        (&rect, 2.0, Joins::Sharp, 6656.0),
        (&rect, -2.0, Joins::Sharp, 5376.0),
        (&rect, 0.1, Joins::Sharp, 6032.04),
        (&triangle(), 2.0, Joins::Round, 852.566_371),
        (&triangle(), 2.0, Joins::Sharp, 864.0),
        (&triangle(), -2.0, Joins::Round, 384.0),
        (&l_shape(), 3.0, Joins::Sharp, 2496.0),
        (&l_shape(), -3.0, Joins::Sharp, 1176.0),
        (&l_shape(), 3.0, Joins::Round, 2_486.342_917),
        // w h - (4 - pi) r^2 with every measure grown.
        (&Contour::rounded_rect(0.0, 0.0, 100.0, 60.0, 5.0), 0.1, Joins::Sharp, 100.2 * 60.2 - (4.0 - PI) * 5.1 * 5.1),
        (&Contour::slot(0.0, 0.0, 16.0, 0.0, 4.0), -0.5, Joins::Round, 16.0 * 3.0 + PI * 2.25),
    ] {
        let found = area(contour, outward_mm, joins);
        assert!((found - expected).abs() < 1e-6 * 10.0, "{found} {expected} {outward_mm} {joins:?}");
    }
}

#[test]
fn a_sharp_rectangle_stays_one_of_four_corners() {
    let grown = offset(&Contour::rect(0.0, 0.0, 100.0, 60.0), 0.1, Joins::Sharp).unwrap();
    assert_eq!(grown.vertices().len(), 4);
    let bounds = grown.bbox();
    assert!((bounds.x0 + 0.1).abs() < 1e-9 && (bounds.x1 - 100.1).abs() < 1e-9);
    assert!((bounds.y0 + 0.1).abs() < 1e-9 && (bounds.y1 - 60.1).abs() < 1e-9);
}

#[test]
fn what_is_narrower_than_twice_the_distance_vanishes() {
    assert_eq!(offset(&triangle(), -10.0, Joins::Round), Err(Lost::Vanished));
    assert_eq!(offset(&triangle(), -12.0, Joins::Round), Err(Lost::Vanished));
    assert_eq!(offset(&Contour::circle(3.0, 4.0, 1.5), -1.5, Joins::Round), Err(Lost::Vanished));
    assert_eq!(offset(&Contour::rect(0.0, 0.0, 50.0, 3.0), -1.6, Joins::Sharp), Err(Lost::Vanished));
    assert!(offset(&Contour::rect(0.0, 0.0, 50.0, 3.0), -1.4, Joins::Sharp).is_ok());
}

/// Two edges that all but run on: moved inward they cross so near to their ends that the crossing is hardly one.
#[test]
fn edges_that_hardly_turn_are_offset_whatever_is_left_of_their_crossing() {
    for (inward_mm, hundredths) in [1.2, 10.0].into_iter().flat_map(|by| (1..2000).map(move |apart| (by, apart))) {
        let apart_mm = stretches::SHORT_MM * f64::from(hundredths) / 100.0;
        // Ends that far inside a turn of as many radians lie that far apart.
        let rise = 50.0 * apart_mm / inward_mm;
        let plate = Contour::polygon([(0.0, 0.0), (50.0, 0.0), (100.0, rise), (100.0, 50.0), (0.0, 50.0)]);
        for joins in [Joins::Sharp, Joins::Round] {
            let inner = offset(&plate, -inward_mm, joins).unwrap_or_else(|lost| panic!("{apart_mm}: {lost:?}"));
            // Steiner's formula for inward offsets, all but right angles.
            let expected = plate.area() - inward_mm * plate.length_mm() + 4.0 * inward_mm * inward_mm;
            assert!((inner.area() - expected).abs() < 0.02, "{inward_mm} {apart_mm}: {} {expected}", inner.area());
        }
    }
}

#[test]
fn a_dumb_bell_splits() {
    let bell = Contour::polygon([
        (0.0, 0.0),
        (20.0, 0.0),
        (20.0, 9.0),
        (40.0, 9.0),
        (40.0, 0.0),
        (60.0, 0.0),
        (60.0, 20.0),
        (40.0, 20.0),
        (40.0, 11.0),
        (20.0, 11.0),
        (20.0, 20.0),
        (0.0, 20.0),
    ]);
    assert_eq!(offset(&bell, -1.5, Joins::Sharp), Err(Lost::Split(2)));
    assert!(offset(&bell, -0.9, Joins::Sharp).is_ok());
    let bow = Contour::polygon([(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)]);
    assert_eq!(offset(&bow, -0.1, Joins::Sharp), Err(Lost::Crossing));
}

#[test]
fn circles_stay_circles_and_directions_are_kept() {
    let hole = offset(&Contour::circle(10.0, 20.0, 1.7), -0.1, Joins::Sharp).unwrap();
    assert_eq!(hole.as_circle().map(|(at, _)| at), Some(Point::new(10.0, 20.0)));
    assert!((hole.as_circle().unwrap().1 * 2.0 - 3.2).abs() < 1e-9);
    for contour in [Contour::circle(0.0, 0.0, 5.0), l_shape()] {
        let back = offset(&contour.reversed(), 1.0, Joins::Sharp).unwrap();
        assert!((back.area() + offset(&contour, 1.0, Joins::Sharp).unwrap().area()).abs() < 1e-9);
    }
}

#[test]
fn more_than_a_half_circle_is_taken() {
    // A keyhole: three quarters of a circle on a square stem.
    let bulge = libm::tan(3.0 * PI / 8.0);
    let key = Contour::new(vec![
        Vertex { at: Point::new(0.0, 0.0), bulge: 0.0 },
        Vertex { at: Point::new(10.0, 0.0), bulge: 0.0 },
        Vertex { at: Point::new(10.0, 20.0), bulge },
        Vertex { at: Point::new(0.0, 20.0), bulge: 0.0 },
    ]);
    let grown = offset(&key, 1.0, Joins::Sharp).unwrap();
    assert!(key.segments().all(|segment| (grown.distance_to_point(segment.from()) - 1.0).abs() < 0.42));
    let (mine, theirs) = (key.bbox(), grown.bbox());
    assert!((theirs.y1 - mine.y1 - 1.0).abs() < 1e-6 && (theirs.x0 - mine.x0 + 1.0).abs() < 1e-6);
}

/// A convex polygon: points on an ellipse, at least 8° apart.
fn convex() -> impl Strategy<Value = Contour> {
    (3_usize..12, 20.0..200.0_f64, 20.0..200.0_f64, prop::collection::vec(0.2..1.0_f64, 12)).prop_map(
        |(count, wide, high, steps)| {
            let whole: f64 = steps[..count].iter().sum();
            let mut angle = 0.0;
            Contour::polygon(steps[..count].iter().map(|step| {
                angle += 2.0 * PI * step / whole;
                (wide * libm::cos(angle), high * libm::sin(angle))
            }))
        },
    )
}

/// A rectangle with teeth on its upper edge, like a finger joint with notches between.
fn toothed() -> impl Strategy<Value = Contour> {
    (1_usize..8, 4.0..30.0_f64, 3.0..12.0_f64, 10.0..90.0_f64).prop_map(|(count, pitch, deep, high)| {
        let mut points = vec![(0.0, 0.0), (pitch * (2 * count + 1) as f64, 0.0)];
        for tooth in (0..=count).rev() {
            let left = pitch * (2 * tooth) as f64;
            points.extend([(left + pitch, high + deep), (left, high + deep)]);
            if tooth > 0 {
                points.extend([(left, high), (left - pitch, high)]);
            }
        }
        Contour::polygon(points)
    })
}

fn same(a: &Contour, b: &Contour) -> bool {
    let close = |from: &Contour, to: &Contour| from.vertices().iter().all(|v| to.distance_to_point(v.at) < 1e-4);
    close(a, b) && close(b, a) && (a.area() - b.area()).abs() < 1e-3
}

/// A star of straight lines and arcs, with sharp and blunt corners to both sides; not always simple.
fn star() -> impl Strategy<Value = Contour> {
    prop::collection::vec((10.0..60.0_f64, 0.3..1.0_f64, -0.6..0.6_f64, any::<bool>()), 4..14).prop_map(|corners| {
        let whole: f64 = corners.iter().map(|(_, step, _, _)| step).sum();
        let mut angle = 0.0;
        let vertex = |(far, step, bulge, straight): &(f64, f64, f64, bool)| {
            angle += 2.0 * PI * step / whole;
            let at = Point::new(far * libm::cos(angle), far * libm::sin(angle));
            Vertex { at, bulge: if *straight { 0.0 } else { *bulge } }
        };
        Contour::new(corners.iter().map(vertex).collect())
    })
}

/// The areas of the loops at a distance, the smallest first; without specks, on which rounding decides.
fn areas(loops: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut areas: Vec<f64> = loops.map(f64::abs).filter(|area| *area > 1e-4).collect();
    areas.sort_by(f64::total_cmp);
    areas
}

fn ours(contour: &Contour, outward_mm: f64) -> Option<Vec<f64>> {
    let segments: Vec<Segment> = contour.clone().counter_clockwise().segments().collect();
    let found = loops(&segments, &stretches(&segments, outward_mm), outward_mm.abs())?;
    Some(areas(found.iter().map(Contour::area)))
}

/// The same by `cavalier_contours`, a general library for contours of lines and arcs.
fn theirs(contour: &Contour, outward_mm: f64) -> Vec<f64> {
    let mut line = Polyline::new_closed();
    for segment in contour.clone().counter_clockwise().segments() {
        match segment {
            Segment::Line { from, .. } => line.add(from.x, from.y, 0.0),
            Segment::Arc(arc) if arc.bulge().abs() <= 1.0 => line.add(arc.from.x, arc.from.y, arc.bulge()),
            Segment::Arc(arc) => {
                // It takes arcs of at most a half circle.
                let (middle, half) = (arc.point_at(0.5), libm::tan(arc.sweep / 8.0));
                line.add(arc.from.x, arc.from.y, half);
                line.add(middle.x, middle.y, half);
            }
        }
    }
    // Positive is to the left of the way there: inward.
    let found = line.parallel_offset_opt(-outward_mm, &PlineOffsetOptions::default());
    areas(found.iter().map(PlineSource::area))
}

fn alike(ours: &[f64], theirs: &[f64]) -> bool {
    // It calls points 0.00001 mm apart equal: a few such steps along edges of hundreds of mm.
    ours.len() == theirs.len() && ours.iter().zip(theirs).all(|(a, b)| (a - b).abs() < 0.02)
}

#[test]
fn contours_of_whole_designs_are_offset_as_by_a_general_library() {
    let (mut tried, mut loops) = (0, 0);
    for seed in 0..60 {
        for panel in crate::Build::of(&crate::sample::design(seed, true)).panels {
            let features = panel.features.iter().map(|feature| &feature.contour);
            for contour in features.chain([&panel.outline]).filter(|one| one.as_circle().is_none() && one.is_simple()) {
                for outward_mm in [-3.0, -1.5, -0.1, 0.1, 1.5, 3.0] {
                    let found = ours(contour, outward_mm).expect("every way closes");
                    let expected = theirs(contour, outward_mm);
                    assert!(alike(&found, &expected), "{found:?} {expected:?} {outward_mm} {contour:?}");
                    tried += 1;
                    loops += found.len();
                }
            }
        }
    }
    assert!(tried > 5000 && loops > 4000, "{tried} {loops}");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn outward_and_back_is_the_polygon_again(polygon in convex(), by in 0.05..8.0_f64) {
        for joins in [Joins::Sharp, Joins::Round] {
            let grown = offset(&polygon, by, joins).unwrap();
            prop_assert!(grown.is_simple());
            prop_assert!(grown.area() > polygon.area());
            let back = offset(&grown, -by, joins).unwrap();
            prop_assert!(same(&back, &polygon), "{polygon:?} {back:?}");
        }
        let round = offset(&polygon, by, Joins::Round).unwrap().area();
        let steiner = polygon.area() + polygon.length_mm() * by + PI * by * by;
        prop_assert!((round - steiner).abs() < 1e-4, "{round} {steiner}");
    }

    #[test]
    fn the_nominal_outline_comes_back_from_the_compensated_one(polygon in toothed(), kerf in 0.05..0.5_f64) {
        let path = offset(&polygon, kerf / 2.0, Joins::Sharp).unwrap();
        prop_assert!(path.is_simple());
        prop_assert_eq!(path.vertices().len(), polygon.vertices().len());
        let back = offset(&path, -kerf / 2.0, Joins::Sharp).unwrap();
        prop_assert!(same(&back, &polygon), "{:?} {:?}", polygon, back);
        // A hole of the same form, made smaller.
        let path = offset(&polygon, -kerf / 2.0, Joins::Sharp).unwrap();
        let back = offset(&path, kerf / 2.0, Joins::Sharp).unwrap();
        prop_assert!(same(&back, &polygon));
    }

    #[test]
    fn stars_are_offset_as_by_a_general_library(star in star(), by in 0.05..12.0_f64, inward in any::<bool>()) {
        prop_assume!(star.is_simple());
        let outward_mm = if inward { -by } else { by };
        let found = ours(&star, outward_mm);
        let expected = theirs(&star, outward_mm);
        prop_assert!(found.as_ref().is_some_and(|found| alike(found, &expected)), "{:?} {:?}", found, expected);
    }

    #[test]
    fn area_grows_with_the_distance(polygon in toothed(), less in 0.05..0.9_f64, more in 1.0..1.9_f64) {
        let areas: Vec<f64> = [-more, -less, less, more]
            .into_iter()
            .filter_map(|by| offset(&polygon, by, Joins::Sharp).ok())
            .map(|contour| contour.area())
            .collect();
        prop_assert!(areas.len() >= 2);
        prop_assert!(areas.windows(2).all(|pair| pair[0] < pair[1]));
    }
}
