//! Supplies against the lists and models.

use super::near;
use panelwright::dimensions::fasteners::{Fit, Thread, clearance_hole};
use panelwright::dimensions::source::Confidence;
use panelwright::dimensions::supplies::*;

#[test]
fn faces_and_depths() {
    for (kind, expected) in [
        (SupplyKind::Atx, [150.0, 86.0, 140.0]),
        (SupplyKind::Sfx, [125.0, 63.5, 100.0]),
        (SupplyKind::SfxL, [125.0, 63.5, 130.0]),
        (SupplyKind::Tfx, [85.0, 65.0, 175.0]),
        (SupplyKind::FlexAtx, [81.5, 40.5, 150.0]),
    ] {
        let found = size(kind).expect("listed");
        assert_eq!([found.face_width_mm, found.face_height_mm, found.depth_mm], expected);
    }
    assert_eq!(size(SupplyKind::Brick), None);
}

#[test]
fn the_full_size_pattern_and_its_half_turn() {
    let place = |hole: &SupplyHole| [hole.x_mm, hole.y_mm];
    let upright = holes(SupplyKind::Atx).expect("known");
    assert_eq!(upright.iter().map(place).collect::<Vec<_>>(), [[6.0, 80.0], [144.0, 80.0], [6.0, 16.0], [120.0, 6.0]]);
    near(upright[1].x_mm - upright[0].x_mm, 138.0, 1e-9);
    near(upright[0].y_mm - upright[2].y_mm, 64.0, 1e-9);
    near(upright[3].x_mm - upright[2].x_mm, 114.0, 1e-9);
    near(upright[1].y_mm - upright[3].y_mm, 74.0, 1e-9);
    let face = size(SupplyKind::Atx).expect("listed");
    let turned = turned_holes(SupplyKind::Atx).expect("known");
    for (hole, back) in upright.iter().zip(turned) {
        assert_eq!(place(back), [face.face_width_mm - hole.x_mm, face.face_height_mm - hole.y_mm]);
    }
    let both = holes_both_ways(SupplyKind::Atx).expect("known");
    assert_eq!(both.len(), 8);
    // No two of the eight holes run into each other.
    let drill = clearance_hole(thread().get(), Fit::Coarse).get();
    for (index, a) in both.iter().enumerate() {
        for b in &both[index + 1..] {
            let (x, y) = (a.x_mm - b.x_mm, a.y_mm - b.y_mm);
            assert!((x * x + y * y).sqrt() > drill + 2.0);
        }
    }
    assert_eq!(thread().get(), Thread::Unc6_32);
}

#[test]
fn nothing_is_drilled_for_supplies_of_unknown_pattern() {
    for kind in SupplyKind::ALL {
        let known = kind == SupplyKind::Atx;
        assert_eq!(holes(kind).is_some(), known);
        assert_eq!(turned_holes(kind).is_some(), known);
        assert_eq!(holes_both_ways(kind).is_some(), known);
        let recalled = recalled_holes(kind);
        assert_eq!(recalled.is_some(), matches!(kind, SupplyKind::Sfx | SupplyKind::SfxL));
        for hole in recalled.unwrap_or_default() {
            assert_eq!(hole.source.confidence, Confidence::FromMemory);
        }
    }
    let sfx = recalled_holes(SupplyKind::Sfx).expect("recalled");
    near(sfx[1].x_mm - sfx[0].x_mm, 113.0, 1e-9);
    near(sfx[2].y_mm - sfx[0].y_mm, 25.7, 1e-9);
    near(sfx[4].y_mm - sfx[0].y_mm, 51.5, 1e-9);
    near(sfx[4].y_mm + 6.0, 63.5, 1e-9);
}

#[test]
fn air_cables_and_plug() {
    near(AIR_GAP.get(), 0.5 * 25.4, 1e-9);
    assert_eq!(CABLE_ROOM.get(), [30.0, 60.0]);
    assert_eq!(HARNESS_LENGTH.get(), [250.0, 280.0]);
    assert_eq!(mains_plug_room(PlugShape::Straight).get(), [60.0, 65.0]);
    assert_eq!(mains_plug_room(PlugShape::RightAngle).get(), [25.0, 30.0]);
    assert_eq!(DEPTHS_ATX.get(), [100.0, 140.0, 160.0, 180.0, 230.0]);
}
