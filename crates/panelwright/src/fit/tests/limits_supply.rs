//! The rows of the rules about supply, fans and what sits in the front.

use kurbo::Point;

use super::fixture::Fixture;
use super::limits::{Row, bounds, with};
use crate::design::{PlugShape, Wall};
use crate::drawing::Contour;
use crate::fit::Severity::{Blocks, Caution};
use crate::panels::{Face, FeatureKind, Purpose};
use crate::parts::PartKind;

fn counterbore(left: f64) -> Fixture {
    with(|fixture| {
        for feature in &mut fixture.panel(Wall::Front).features {
            if feature.purpose == Purpose::ButtonCounterbore {
                feature.blind = Some((6.0 - left, Face::Inside));
            }
        }
    })
}

fn ports(change: impl FnOnce(&mut Fixture)) -> Fixture {
    let mut fixture = Fixture::new(&[("ports.wall", "front".into()), ("ports.usb_c", 0.into())]);
    fixture.parts.retain(|part| part.kind != PartKind::Port || part.id == "port-usb-a-1");
    change(&mut fixture);
    fixture
}

fn behind_port(distance: f64) -> Fixture {
    ports(|fixture| {
        let mut section = bounds(fixture, "port-usb-a-1");
        let inside = fixture.inside(Wall::Front);
        section.max[1] = inside;
        fixture.block(section, Wall::Back, distance);
    })
}

fn above_supply(distance: f64) -> Fixture {
    with(|fixture| {
        fixture.remove("button");
        let supply = bounds(fixture, "supply");
        fixture.block(supply, Wall::Top, distance);
    })
}

fn floor_vent(feet: f64) -> Fixture {
    with(|fixture| {
        let vent = Contour::rect(100.0, 130.0, 106.0, 150.0);
        fixture.feature(Wall::Floor, "vent-1", FeatureKind::Vent, Purpose::Vent, vent);
        fixture.spec.feet.height_mm = feet;
    })
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        ("supply-inlet-feet", Blocks, "right-angle", "supply", |over| with(|f| f.spec.feet.height_mm = 25.0 - over)),
        ("supply-inlet-feet", Caution, "right-angle", "supply", |over| with(|f| f.spec.feet.height_mm = 30.0 - over)),
        ("supply-inlet-feet", Blocks, "straight", "supply", |over| {
            with(|f| {
                f.spec.supply.plug = PlugShape::Straight;
                f.spec.feet.height_mm = 60.0 - over;
            })
        }),
        ("supply-inlet-feet", Caution, "straight", "supply", |over| {
            with(|f| {
                f.spec.supply.plug = PlugShape::Straight;
                f.spec.feet.height_mm = 65.0 - over;
            })
        }),
        ("supply-cables", Blocks, "least", "obstacle", |over| above_supply(30.0 - over)),
        ("supply-cables", Caution, "wanted", "obstacle", |over| above_supply(45.0 - over)),
        ("supply-air", Caution, "fan", "obstacle", |over| {
            with(|f| {
                f.arrangement.supply.as_mut().unwrap().fan_towards = Some([0.0, -1.0, 0.0]);
                let mut supply = bounds(f, "supply");
                supply.min[1] += 5.0;
                f.part("supply").bodies[0] = supply;
                f.block(supply, Wall::Front, 12.7 - over);
            })
        }),
        ("fan-gap", Caution, "a part before it", "obstacle", |over| {
            with(|f| {
                f.remove("cooler");
                let fan = bounds(f, "fan-1");
                f.block(fan, Wall::Front, 10.0 - over);
            })
        }),
        ("floor-opening-feet", Caution, "low feet", "floor", |over| floor_vent(10.0 - over)),
        ("floor-opening-feet", Blocks, "no feet", "floor", |over| floor_vent((-over).max(0.0))),
        ("button-depth", Blocks, "a part behind it", "obstacle", |over| {
            with(|f| {
                let inside = f.inside(Wall::Front);
                let mut section = f.part("button").bodies[0];
                section.max[1] = inside;
                f.block(section, Wall::Back, 28.0 - over);
            })
        }),
        ("button-grip", Blocks, "too thick", "button", |over| counterbore(3.2 + over)),
        ("button-grip", Caution, "too thin", "button", |over| counterbore(2.0 - over)),
        ("front-connector-depth", Blocks, "the connector", "obstacle", |over| behind_port(20.0 - over)),
        ("front-connector-depth", Caution, "its lead", "obstacle", |over| behind_port(50.0 - over)),
        ("connector-in-thick-sheet", Caution, "audio jack", "front/port-audio-1", |over| {
            ports(|f| {
                let at = Point::new(100.0, 100.0);
                f.hole(Wall::Front, "port-audio-1", Purpose::Port, at, 6.2);
                let recess = f.hole(Wall::Front, "port-audio-1-counterbore", Purpose::PortCounterbore, at, 12.0);
                recess.blind = Some((3.5 - over, Face::Inside));
            })
        }),
        ("connector-in-thick-sheet", Caution, "USB-C window", "front/port-usb-c-1", |over| {
            ports(|f| {
                let window = Contour::rect(100.0, 100.0, 112.0, 106.0 - over);
                f.feature(Wall::Front, "port-usb-c-1", FeatureKind::Opening, Purpose::Port, window);
            })
        }),
    ]
}
