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
