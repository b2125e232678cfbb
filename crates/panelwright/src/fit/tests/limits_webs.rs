//! The rows of the rules about the sheet left between cuts.

use kurbo::Point;

use super::fixture::Fixture;
use super::limits::{Row, with};
use super::limits_making::of;
use crate::design::{Material, Method, Wall};
use crate::drawing::Contour;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::{Face, FeatureKind, Purpose};

/// A round hole on the right panel, which is empty, with a web to its left edge.
fn web(fixture: &mut Fixture, web: f64) {
    fixture.hole(Wall::Right, "a", Purpose::BracketScrew, Point::new(2.0 + web, 80.0), 4.0);
}

/// The same in acrylic of 6 mm, the hole of some diameter.
fn acrylic(diameter: f64, web: f64) -> Fixture {
    with(|fixture| {
        fixture.spec.sheet.material = Material::Acrylic;
        let middle = Point::new(diameter / 2.0 + web, 80.0);
        fixture.hole(Wall::Right, "a", Purpose::BracketScrew, middle, diameter);
    })
}

fn square(fixture: &mut Fixture, id: &str, x: f64) {
    let contour = Contour::rect(x, 80.0, x + 10.0, 90.0);
    fixture.feature(Wall::Right, id, FeatureKind::Opening, Purpose::Vent, contour);
}

fn aperture(fixture: &mut Fixture, web: f64) {
    let contour = Contour::rect(web, 80.0, web + 10.0, 90.0);
    fixture.feature(Wall::Right, "io", FeatureKind::Opening, Purpose::IoAperture, contour);
}

fn two_holes(web: f64) -> Fixture {
    with(|fixture| {
        fixture.hole(Wall::Right, "a", Purpose::BracketScrew, Point::new(50.0, 80.0), 4.0);
        fixture.hole(Wall::Right, "b", Purpose::BracketScrew, Point::new(50.0, 84.0 + web), 4.0);
    })
}

fn hole_and_opening(web: f64) -> Fixture {
    with(|fixture| {
        square(fixture, "b", 50.0);
        fixture.hole(Wall::Right, "a", Purpose::BracketScrew, Point::new(48.0 - web, 85.0), 4.0);
    })
}

fn two_openings(web: f64) -> Fixture {
    with(|fixture| {
        square(fixture, "a", 50.0);
        square(fixture, "b", 60.0 + web);
    })
}

/// A round hole with a web to the edge of a panel made by a method.
fn made(method: Method, web: f64) -> Fixture {
    let mut fixture = of(|spec| spec.making.method_of = [method; 6]);
    fixture.hole(Wall::Right, "a", Purpose::BracketScrew, Point::new(2.0 + web, 80.0), 4.0);
    fixture
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        // One and a half sheets of 6 mm from the hole's middle; two diameters of 5 mm.
        ("hole-to-edge", Caution, "acrylic, by thickness", "right/a", |over| acrylic(4.0, 9.0 - 2.0 - over)),
        ("hole-to-edge", Caution, "acrylic, by diameter", "right/a", |over| acrylic(5.0, 10.0 - 2.5 - over)),
        ("hole-to-edge", Blocks, "1", "right/a", |over| with(|f| web(f, 1.0 - over))),
        ("hole-to-edge", Caution, "2", "right/a", |over| with(|f| web(f, 2.0 - over))),
        ("hole-to-edge", Note, "thickness", "right/a", |over| with(|f| web(f, 6.0 - over))),
        ("opening-to-edge", Blocks, "1", "right/a", |over| with(|f| square(f, "a", 1.0 - over))),
        ("opening-to-edge", Caution, "2", "right/a", |over| with(|f| square(f, "a", 2.0 - over))),
        ("opening-to-edge", Note, "thickness", "right/a", |over| with(|f| square(f, "a", 6.0 - over))),
        ("aperture-to-edge", Blocks, "1", "right/io", |over| with(|f| aperture(f, 1.0 - over))),
        ("aperture-to-edge", Caution, "2", "right/io", |over| with(|f| aperture(f, 2.0 - over))),
        ("aperture-to-edge", Caution, "shield's border", "right/io", |over| {
            with(|f| {
                f.spec.board.io_opening = crate::design::IoOpening::Rebate;
                aperture(f, 2.54 - over);
            })
        }),
        ("hole-to-hole", Blocks, "1", "right/a", |over| two_holes(1.0 - over)),
        ("hole-to-hole", Caution, "2", "right/a", |over| two_holes(2.0 - over)),
        ("hole-to-hole", Note, "thickness", "right/a", |over| two_holes(6.0 - over)),
        ("hole-to-opening", Blocks, "1", "right/a", |over| hole_and_opening(1.0 - over)),
        ("hole-to-opening", Caution, "2", "right/a", |over| hole_and_opening(2.0 - over)),
        ("hole-to-opening", Note, "thickness", "right/a", |over| hole_and_opening(6.0 - over)),
        ("opening-to-opening", Blocks, "1", "right/a", |over| two_openings(1.0 - over)),
        ("opening-to-opening", Caution, "2", "right/a", |over| two_openings(2.0 - over)),
        ("opening-to-opening", Note, "thickness", "right/a", |over| two_openings(6.0 - over)),
        ("recess-meets-opening", Caution, "counterbore", "right/a", |over| {
            with(|f| {
                square(f, "a", 50.0);
                let recess = Contour::rect(60.0 - over, 82.0, 70.0, 88.0);
                let recess = f.feature(Wall::Right, "r", FeatureKind::Counterbore, Purpose::PortCounterbore, recess);
                recess.blind = Some((3.0, Face::Inside));
            })
        }),
        ("opening-over-edge", Caution, "floor's edge", "floor", |over| {
            with(|f| {
                let vent = Contour::rect(100.0, 6.0 - over, 106.0, 40.0);
                f.feature(Wall::Right, "vent-1", FeatureKind::Vent, Purpose::Vent, vent);
            })
        }),
        ("hole-to-edge", Blocks, "router: as thin as a tab", "right/a", |over| made(Method::Router, 1.5 - over)),
        ("hole-to-edge", Blocks, "laser: burnt away", "right/a", |over| made(Method::Laser, 0.5 - over)),
        ("hole-to-edge", Note, "laser: the sheet's thickness", "right/a", |over| made(Method::Laser, 6.0 - over)),
        ("hole-to-edge", Blocks, "by hand, cut to ±0.8", "right/a", |over| {
            let mut fixture = of(|spec| {
                spec.making.method_of = [Method::Hand; 6];
                spec.making.own_accuracy_mm = Some(0.8);
            });
            fixture.hole(Wall::Right, "a", Purpose::BracketScrew, Point::new(3.6 - over, 80.0), 4.0);
            fixture
        }),
    ]
}
