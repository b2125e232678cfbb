//! The rows of the rules about screws, and about what nobody has measured.

use kurbo::Point;

use super::fixture::Fixture;
use super::limits::{Row, with};
use crate::design::{FanSide, Material, SupplyKind, Wall};
use crate::dimensions::source::Confidence;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::Purpose;
use crate::parts::PartKind;
use crate::solid::Aabb;

/// A screw upward through the floor in free space.
fn screw(length: f64, obstacle: f64) -> Fixture {
    with(|fixture| {
        fixture.screw("x", [130.0, 160.0, 0.0], [0.0, 0.0, 1.0], length, &["floor"]);
        let solid = Aabb::new([125.0, 155.0, obstacle], [135.0, 165.0, obstacle + 4.0]);
        fixture.add("obstacle", PartKind::Drive, vec![solid]);
    })
}

/// A screw from inside into the right panel, its point `left` under the face.
fn point_under_face(left: f64) -> Fixture {
    with(|fixture| {
        let outside = fixture.arrangement.case.outside_mm[0];
        let head = [outside - 12.0, 60.0, 150.0];
        fixture.screw("x", head, [1.0, 0.0, 0.0], 12.0 - left, &["right"]);
    })
}

fn screws() -> Vec<Row> {
    vec![
        ("screw-length", Blocks, "none sold", "floor", |over| {
            with(|f| {
                let screw = f.screw("x", [130.0, 160.0, 0.0], [0.0, 0.0, 1.0], 8.0, &["floor"]);
                screw.length_mm = (over <= 0.0).then_some(8.0);
            })
        }),
        ("screw-length", Blocks, "too short", "floor", |over| {
            with(|f| f.screw("x", [130.0, 160.0, 0.0], [0.0, 0.0, 1.0], 8.0, &["floor"]).least_mm = 8.0 + over)
        }),
        ("screw-length", Blocks, "too long", "floor", |over| {
            with(|f| f.screw("x", [130.0, 160.0, 0.0], [0.0, 0.0, 1.0], 8.0, &["floor"]).most_mm = Some(8.0 - over))
        }),
        ("screw-points-out", Blocks, "out of the face", "right", |over| point_under_face(-over)),
        ("screw-points-out", Caution, "near the face", "right", |over| point_under_face(1.0 - over)),
        ("screw-hits-part", Blocks, "a part", "obstacle", |over| screw(15.0 + over, 15.0)),
        ("screw-hits-part", Caution, "just before a part", "obstacle", |over| screw(14.0 + over, 15.0)),
        ("screw-hits-part", Blocks, "from the side", "obstacle", |over| {
            let mut f = screw(20.0, 10.0);
            f.part("obstacle").bodies[0].min[0] = 131.5 - over;
            f
        }),
        ("screw-hits-part", Blocks, "another panel", "front", |over| {
            with(|f| {
                f.screw("x", [150.0, 16.0, 160.0], [0.0, -1.0, 0.0], 10.0 + over, &["bracket"]);
            })
        }),
        ("screw-hits-screw", Blocks, "side by side", "y", |over| {
            with(|f| {
                f.screw("x", [130.0, 160.0, 0.0], [0.0, 0.0, 1.0], 12.0, &["floor"]);
                f.screw("y", [133.0 - over, 160.0, 0.0], [0.0, 0.0, 1.0], 12.0, &["floor"]);
            })
        }),
        ("screw-hits-screw", Blocks, "crossing", "y", |over| {
            with(|f| {
                f.screw("x", [130.0, 160.0, 0.0], [0.0, 0.0, 1.0], 20.0, &["floor"]);
                f.screw("y", [120.0, 163.0 - over, 12.0], [1.0, 0.0, 0.0], 20.0, &["floor"]);
            })
        }),
    ]
}

fn unknowns() -> Vec<Row> {
    vec![
        ("supply-holes-unknown", Note, "SFX", "supply", |over| {
            with(|f| f.spec.supply.kind = if over > 0.0 { SupplyKind::Sfx } else { SupplyKind::FullSize })
        }),
        ("supply-holes-unknown", Note, "SFX measured", "supply", |over| {
            with(|f| {
                f.spec.supply.kind = SupplyKind::Sfx;
                f.spec.supply.holes = if over > 0.0 { Vec::new() } else { vec![[6.0, 6.0]] };
            })
        }),
        ("supply-fan-unknown", Note, "not looked up", "supply", |over| {
            with(|f| f.spec.supply.fan_side = if over > 0.0 { FanSide::Unknown } else { FanSide::None })
        }),
        ("fan-holes-unknown", Note, "200 mm", "fan-1", |over| {
            with(|f| f.arrangement.fans[0].spacing_mm = if over > 0.0 { None } else { Some(105.0) })
        }),
        ("jack-hole-unknown", Note, "brick", "jack", |over| {
            with(|f| {
                f.spec.supply.kind = SupplyKind::Brick;
                f.spec.supply.jack_hole_mm = if over > 0.0 { None } else { Some(8.0) };
            })
        }),
        ("socket-assumed", Note, "not measured", "cooler", |over| {
            with(|f| {
                f.spec.board.socket_from_rear_mm = Some(75.0);
                f.spec.board.socket_from_right_mm = (over <= 0.0).then_some(79.0);
            })
        }),
        ("sheet-not-measured", Note, "not measured", "", |over| {
            with(|f| f.spec.sheet.measured_mm = (over <= 0.0).then_some(6.0))
        }),
        ("hole-from-memory", Note, "a fan's hole", "right/a", |over| {
            with(|f| {
                let hole = f.hole(Wall::Right, "a", Purpose::FanScrew, Point::new(100.0, 100.0), 4.3);
                if over > 0.0 {
                    hole.source.confidence = Confidence::FromMemory;
                }
            })
        }),
        ("material", Caution, "acrylic", "", |over| {
            with(|f| f.spec.sheet.material = if over > 0.0 { Material::Acrylic } else { Material::Fibreboard })
        }),
        ("material", Note, "plywood", "", |over| {
            with(|f| f.spec.sheet.material = if over > 0.0 { Material::Plywood } else { Material::Fibreboard })
        }),
    ]
}

pub(super) fn rows() -> Vec<Row> {
    let mut rows = screws();
    rows.extend(unknowns());
    rows
}
