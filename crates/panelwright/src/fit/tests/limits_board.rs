//! The rows of the rules about what stands on the board and hangs below it: cooler, memory, standoffs, drives.

use super::fixture::Fixture;
use super::limits::{Row, bounds, with};
use crate::design::{CoolerAir, Wall};
use crate::drawing::Contour;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::{Face, FeatureKind, Purpose};
use crate::parts::PartKind;
use crate::solid::Aabb;

fn rebate(left: f64) -> Fixture {
    with(|fixture| {
        let ring = Contour::rect(20.0, 20.0, 60.0, 40.0);
        let feature = fixture.feature(Wall::Back, "io-rebate", FeatureKind::Rebate, Purpose::ShieldRebate, ring);
        feature.blind = Some((6.0 - left, Face::Outside));
    })
}

/// A drive 4 mm below the board, so far to the right of the processor's middle.
fn beside_socket(right: f64, measured: bool) -> Fixture {
    with(|fixture| {
        let spec = &mut fixture.spec.board;
        if measured {
            (spec.socket_from_right_mm, spec.socket_from_rear_mm) = (Some(79.0), Some(75.0));
        }
        let [x, y, z] = fixture.arrangement.board.to_case([163.83 - 79.0 + right, 75.0 - 10.16, -4.0]);
        fixture.part("drive-1").bodies = vec![Aabb::new([x, y - 20.0, z - 7.0], [x + 20.0, y + 20.0, z])];
    })
}

fn plugs_of_drive(distance: f64) -> Fixture {
    with(|fixture| {
        let zone = fixture.part("drive-1").keep_clear[0].zone;
        let body = bounds(fixture, "drive-1");
        let toward = if zone.max[1] <= body.min[1] + 1e-9 { Wall::Front } else { Wall::Back };
        fixture.block(body, toward, distance);
    })
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        ("cooler-under-top", Blocks, "top", "top", |over| {
            with(|f| {
                let top = f.inside(Wall::Top);
                f.part("cooler").bodies[0].max[2] = top + over;
            })
        }),
        ("cooler-under-top", Caution, "air goes back", "top", |over| {
            with(|f| {
                let top = f.inside(Wall::Top);
                f.part("cooler").bodies[0].max[2] = top - 2.0 + over;
            })
        }),
        ("cooler-under-top", Caution, "air from above", "top", |over| {
            with(|f| {
                f.spec.cooler.as_mut().unwrap().air = CoolerAir::Down;
                let top = f.inside(Wall::Top);
                f.part("cooler").bodies[0].max[2] = top - 10.16 + over;
            })
        }),
        ("cooler-under-top", Blocks, "a part above", "obstacle", |over| {
            with(|f| {
                let cooler = bounds(f, "cooler");
                f.block(cooler, Wall::Top, -over);
            })
        }),
        ("memory-height", Blocks, "fins", "cooler", |over| {
            with(|f| {
                let fins = f.part("cooler").bodies[0].min[2];
                f.part("memory").bodies[0].max[2] = fins + over;
            })
        }),
        ("memory-height", Caution, "gap to the fins", "cooler", |over| {
            with(|f| {
                let fins = f.part("cooler").bodies[0].min[2];
                f.part("memory").bodies[0].max[2] = fins - 1.0 + over;
            })
        }),
        ("memory-height", Blocks, "top", "top", |over| {
            with(|f| {
                f.remove("cooler");
                let top = f.inside(Wall::Top);
                f.part("memory").bodies[0].max[2] = top + over;
            })
        }),
        ("standoff-least", Blocks, "6.35", "board", |over| with(|f| f.arrangement.board.origin[2] = 6.0 + 6.35 - over)),
        ("metal-under-board", Caution, "6.35", "bracket-x", |over| {
            with(|f| {
                let solid = Aabb::new([125.0, 150.0, 6.0], [135.0, 160.0, 31.0 - 6.35 + over]);
                f.add("bracket-x", PartKind::Bracket, vec![solid]);
            })
        }),
        ("metal-under-board", Blocks, "leads", "bracket-x", |over| {
            with(|f| {
                let solid = Aabb::new([125.0, 150.0, 6.0], [135.0, 160.0, 31.0 - 2.49 + over]);
                f.add("bracket-x", PartKind::Bracket, vec![solid]);
            })
        }),
        ("shield-does-not-clip", Note, "too thick", "back/io-aperture", |over| rebate(1.32 + over)),
        ("shield-does-not-clip", Note, "too thin", "back/io-aperture", |over| rebate(0.94 - over)),
        ("drive-under-board", Blocks, "leads", "drive-1", |over| {
            with(|f| f.part("drive-1").bodies[0].max[2] = 31.0 - 2.49 + over)
        }),
        ("drive-under-board", Caution, "backplate", "drive-1", |over| {
            with(|f| f.part("drive-1").bodies[0].max[2] = 31.0 - 5.08 + over)
        }),
        // AM4's holes, 54 by 90: 45 mm to either side of a processor whose place is known.
        ("drive-under-board", Caution, "backplate of a measured socket", "drive-1", |over| {
            beside_socket(45.0 - over, true)
        }),
        // On Mini-ITX the socket may lie 5 mm further to the right.
        ("drive-under-board", Caution, "backplate of a socket somewhere", "drive-1", |over| {
            beside_socket(50.0 - over, false)
        }),
        // Standoff H's square of 10.16 mm and the 54 mm that every backplate has.
        ("standoff-at-socket", Caution, "measured from the wrong edge", "standoff-H", |over| {
            with(|f| {
                f.spec.board.socket_from_right_mm = Some(163.83 - 27.0 - 5.08 + over);
                f.spec.board.socket_from_rear_mm = Some(154.94 + 10.16);
            })
        }),
        ("drive-under-board", Blocks, "M.2 below", "board", |over| {
            let mut f = Fixture::new(&[("board.m2_below", true.into())]);
            let card = f.part("board").bodies[2];
            let drive =
                Aabb { min: [card.min[0], card.min[1], 7.0], max: [card.max[0], card.max[1], card.min[2] + over] };
            f.part("drive-1").bodies[0] = drive;
            f
        }),
        ("drive-washers", Caution, "two washers", "drive-1", |over| {
            with(|f| f.spec.drives[0].washers = if over > 0.0 { 1 } else { 2 })
        }),
        ("drive-plugs", Caution, "plug and bend", "obstacle", |over| plugs_of_drive(40.0 - over)),
        ("drive-plugs", Blocks, "the plug alone", "obstacle", |over| plugs_of_drive(20.0 - over)),
        ("drive-holes", Note, "7 mm", "drive-1", |over| with(|f| f.spec.drives[0].height_mm = 7.0 - over)),
    ]
}
