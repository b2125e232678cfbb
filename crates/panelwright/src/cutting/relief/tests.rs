//! Relief against plane geometry: entries, bulges and areas of worked examples.

use core::f64::consts::PI;

use super::*;

const R: f64 = 3.175;

fn pocket(width: f64, height: f64) -> Contour {
    Contour::rect(0.0, 0.0, width, height)
}

/// A triangle with the angle `degrees` at the origin and long walls, the one after it longer.
fn wedge(degrees: f64) -> Contour {
    let turn = degrees.to_radians();
    Contour::polygon([(0.0, 0.0), (100.0, 0.0), (90.0 * libm::cos(turn), 90.0 * libm::sin(turn))])
}

#[test]
fn bulge_and_entries_follow_the_opening_angle() {
    for (degrees, entry, bulge) in [
        (60.0, 1.732_051, 1.732_051),
        (90.0, core::f64::consts::SQRT_2, 1.0),
        (120.0, 1.0, 0.577_350),
        (135.0, 0.765_367, 0.414_214),
    ] {
        let relieved = relieve(&wedge(degrees), Void::Inside, R, Relief::Diagonal);
        let vertices = relieved.contour.vertices();
        let bend = vertices.iter().position(|v| (libm::hypot(v.at.x, v.at.y) - entry * R).abs() < 1e-5).unwrap();
        assert!((vertices[bend].bulge - bulge).abs() < 1e-6, "{degrees} {vertices:?}");
        // The arc runs through the corner itself.
        assert!(relieved.contour.distance_to_point(Point::ORIGIN) < 1e-9);
        assert!(relieved.faults.is_empty() && relieved.contour.is_simple());
    }
}

#[test]
fn diagonal_relief_of_a_quarter_inch_cutter() {
    let relieved = relieve(&pocket(60.0, 40.0), Void::Inside, R, Relief::Diagonal);
    assert_eq!(relieved.circles.len(), 4);
    let contour = &relieved.contour;
    assert!((contour.area() - 2400.0 - 4.0 * 5.753_984).abs() < 1e-5);
    assert!((contour.bbox().x0 + 0.929_936).abs() < 1e-5);
    let arcs: Vec<_> = contour
        .segments()
        .filter_map(|segment| match segment {
            Segment::Arc(arc) => Some(arc),
            Segment::Line { .. } => None,
        })
        .collect();
    assert_eq!(arcs.len(), 4);
    for arc in arcs {
        assert!((arc.radius_mm - R).abs() < 1e-9 && (arc.sweep - PI).abs() < 1e-12);
    }
    let near = contour.segments().find_map(|segment| match segment {
        Segment::Arc(arc) if arc.centre.x < 10.0 && arc.centre.y < 10.0 => Some(arc),
        _ => None,
    });
    let arc = near.unwrap();
    assert!((arc.centre.x - 2.245_064).abs() < 1e-5 && (arc.centre.y - 2.245_064).abs() < 1e-5);
    assert!((arc.to.x - 4.490_128).abs() < 1e-5 && arc.to.y.abs() < 1e-12);
    // Without relief it would have left this much along the bisector.
    assert!((residue_mm(R, PI / 2.0) - 1.315_128).abs() < 1e-5);
}

#[test]
fn relief_along_an_edge_goes_past_the_longer_wall_only() {
    for (width, height, extra) in [(60.0, 40.0, (0.0, R)), (40.0, 60.0, (R, 0.0))] {
        let relieved = relieve(&pocket(width, height), Void::Inside, R, Relief::AlongEdge);
        let contour = &relieved.contour;
        assert!((contour.area() - 2400.0 - 4.0 * 15.834_609).abs() < 1e-5, "{}", contour.area());
        let bounds = contour.bbox();
        assert!((bounds.x0 + extra.0).abs() < 1e-9 && (bounds.y0 + extra.1).abs() < 1e-9, "{bounds:?}");
        assert!(contour.is_simple());
    }
    // Slanting corners: the circle still touches one wall at the corner.
    for degrees in [50.0, 75.0, 110.0, 140.0] {
        let relieved = relieve(&wedge(degrees), Void::Inside, R, Relief::AlongEdge);
        let touches = relieved.contour.segments().any(|segment| match segment {
            Segment::Arc(arc) => {
                let turn = degrees.to_radians();
                let normal = Vec2::new(libm::sin(turn), -libm::cos(turn)) * R;
                (arc.centre.to_vec2() - normal).hypot() < 1e-9 && (arc.radius_mm - R).abs() < 1e-9
            }
            Segment::Line { .. } => false,
        });
        assert!(touches && relieved.contour.is_simple(), "{degrees}");
    }
}

#[test]
fn outlines_are_relieved_in_their_concave_corners() {
    let l = Contour::polygon([(0.0, 0.0), (60.0, 0.0), (60.0, 20.0), (20.0, 20.0), (20.0, 50.0), (0.0, 50.0)]);
    let relieved = relieve(&l, Void::Outside, R, Relief::Diagonal);
    assert_eq!(relieved.circles.len(), 1);
    // Material on the left of a counter-clockwise outline: the arc turns right.
    assert!(relieved.contour.vertices().iter().any(|vertex| vertex.bulge == -1.0));
    assert!((relieved.contour.area() - 1800.0 + 5.753_984).abs() < 1e-5);
    // The same walked the other way gives the same.
    let other = relieve(&l.reversed(), Void::Outside, R, Relief::Diagonal);
    assert!((other.contour.area() + relieved.contour.area()).abs() < 1e-9);
}

#[test]
fn short_walls_are_relieved_along_the_longer_one_or_not_at_all() {
    // Two diagonal reliefs need 2·sqrt(2)·r = 8.98 mm of a wall.
    let enough = relieve(&pocket(60.0, 8.99), Void::Inside, R, Relief::Diagonal);
    assert!(enough.faults.is_empty() && enough.contour.segments().all(|s| s.bbox().width() < 60.0));
    let slot = relieve(&pocket(60.0, 8.97), Void::Inside, R, Relief::Diagonal);
    assert!(slot.faults.is_empty() && slot.circles.len() == 4);
    assert!((slot.contour.area() - 60.0 * 8.97 - 4.0 * 15.834_609).abs() < 1e-5, "into the long walls");
    let small = relieve(&pocket(9.0, 8.0), Void::Inside, R, Relief::Diagonal);
    assert_eq!((small.circles.len(), small.faults.len()), (0, 4));
    assert!(small.faults.iter().all(|(_, fault)| matches!(fault, CornerFault::WallTooShort { .. })));
    assert_eq!(small.contour, pocket(9.0, 8.0));
}

#[test]
fn round_corners_need_none_unless_they_are_too_tight() {
    let wide = relieve(&Contour::rounded_rect(0.0, 0.0, 60.0, 40.0, R), Void::Inside, R, Relief::Diagonal);
    assert_eq!((wide.circles.len(), wide.faults.len()), (0, 0));
    let tight = relieve(&Contour::rounded_rect(0.0, 0.0, 60.0, 40.0, 2.0), Void::Inside, R, Relief::Diagonal);
    assert_eq!(tight.faults.len(), 4);
    assert!(matches!(tight.faults[0].1, CornerFault::TooTight { radius_mm } if (radius_mm - 2.0).abs() < 1e-9));
    // An arch: a half circle on a straight sill meets it in two corners with a curved wall.
    let sill = |y: f64, bulge: f64| Vertex { at: Point::new(if bulge == 0.0 { 0.0 } else { 40.0 }, y), bulge };
    let arch = relieve(&Contour::new(vec![sill(0.0, 0.0), sill(0.0, 0.6)]), Void::Inside, R, Relief::Diagonal);
    assert_eq!(arch.faults.iter().filter(|(_, fault)| *fault == CornerFault::Curved).count(), 2);
    assert_eq!(relieve(&Contour::circle(0.0, 0.0, 30.0), Void::Inside, R, Relief::Diagonal).circles.len(), 0);
}
