//! Joined panels touch and never share room; nothing of a corner is left empty.

use kurbo::Point;

use crate::build::Build;
use crate::design::{Design, Joint, Wall};
use crate::panels::{Face, Panel};
use crate::sample::Random;

const SLEEVE: [Wall; 4] = [Wall::Left, Wall::Right, Wall::Front, Wall::Top];

fn has(panel: &Panel, at: [f64; 3]) -> bool {
    let (point, w) = panel.frame.to_panel(at);
    let t = panel.thickness_mm;
    if w >= 0.0 || w <= -t || !panel.outline.contains(point) {
        return false;
    }
    panel.features.iter().filter(|feature| !feature.notch).all(|feature| {
        let reaches = match feature.blind {
            None => true,
            Some((depth, Face::Inside)) => w < depth - t,
            Some((depth, Face::Outside)) => w > -depth,
        };
        !(reaches && feature.contour.contains(point))
    })
}

fn design(random: &mut Random) -> Design {
    let mut design = Design::default();
    let mut set = |key: &str, value: serde_json::Value| design.set_json(key, &value).unwrap();
    set("size.rule", "smallest".into());
    set("sheet.nominal", [3.0, 4.0, 6.0, 9.0][random.below(4)].into());
    set("sleeve.corners", ["sides", "face"][random.below(2)].into());
    set("joint.play", 0.0.into());
    for seam in ["left_front", "right_front", "left_top", "right_top", "front_top"] {
        set(&format!("joint.{seam}"), ["brackets", "blocks", "rebate", "finger", "tab"][random.below(5)].into());
        let (one, other) = seam.split_once('_').unwrap();
        set(&format!("through.{seam}"), ["auto", one, other][random.below(3)].into());
    }
    set("joint.floor_back", ["brackets", "blocks", "rebate", "finger"][random.below(4)].into());
    design
}

#[test]
fn points_of_the_corners_belong_to_one_panel_each() {
    let mut random = Random::new(7);
    let (mut shared, mut empty, mut tried) = (Vec::new(), Vec::new(), 0);
    for round in 0..150 {
        let design = design(&mut random);
        let build = Build::of(&design);
        let case = build.size();
        let t = case.thickness_mm;
        for seam in case.joints.seams {
            let walls = seam.seam.walls();
            let axis = super::super::corner::axis_along(walls);
            for _ in 0..200 {
                let mut at = [0.0; 3];
                let (low, high) =
                    [(Wall::Left, Wall::Right), (Wall::Front, Wall::Back), (Wall::Floor, Wall::Top)][axis];
                at[axis] = random.hundredths(case.inner(low).2 + 2.0, case.inner(high).2 - 2.0) + 0.003;
                for wall in walls {
                    let (across, sense, inner) = case.inner(wall);
                    at[across] = inner - sense * (random.hundredths(0.0, t - 0.01) + 0.003);
                }
                let owners: Vec<Wall> =
                    build.panels.iter().filter(|panel| has(panel, at)).map(|panel| panel.wall).collect();
                tried += 1;
                if owners.len() > 1 {
                    shared.push((round, seam.seam, seam.joint, owners.clone(), at));
                }
                if owners.is_empty() && seam.joint != Joint::Tab {
                    // A hole of some part may lie there, but nothing else.
                    let holed = walls.iter().any(|wall| {
                        let panel = build.panel(*wall).unwrap();
                        let (point, _) = panel.frame.to_panel(at);
                        panel.features.iter().any(|feature| {
                            feature.blind.is_none() && feature.contour.bbox().inflate(0.01, 0.01).contains(point)
                        })
                    });
                    if !holed {
                        empty.push((round, seam.seam, seam.joint, at));
                    }
                }
            }
        }
        // The three walls around each corner, where three panels meet.
        for side in [Wall::Left, Wall::Right] {
            for _ in 0..60 {
                let mut at = [0.0; 3];
                for wall in [side, Wall::Front, Wall::Top] {
                    let (across, sense, inner) = case.inner(wall);
                    at[across] = inner - sense * (random.hundredths(0.0, t - 0.01) + 0.003);
                }
                let owners: Vec<Wall> =
                    SLEEVE.into_iter().filter(|wall| has(build.panel(*wall).unwrap(), at)).collect();
                if owners.len() > 1 {
                    shared.push((round, crate::design::Seam::FrontTop, Joint::Tab, owners, at));
                }
            }
        }
    }
    assert!(tried > 100_000);
    assert!(shared.is_empty(), "{} shared, first {:?}", shared.len(), &shared[..shared.len().min(4)]);
    assert!(empty.is_empty(), "{} empty, first {:?}", empty.len(), &empty[..empty.len().min(4)]);
}

/// With play, mating flanks stand apart by just that, counted on a cut through the middle of the corner.
#[test]
fn fingers_have_the_play_asked_for() {
    for play in [0.0, 0.2, -0.1] {
        let mut design = Design::default();
        for (key, value) in [("joint.left_front", "finger"), ("size.rule", "smallest")] {
            design.set_json(key, &value.into()).unwrap();
        }
        design.set_json("joint.play", &play.into()).unwrap();
        let build = Build::of(&design);
        let edges = |wall: Wall| -> Vec<f64> {
            let panel = build.panel(wall).unwrap();
            let x = if wall == Wall::Left { panel.size_mm[0] } else { 0.0 };
            let mut found: Vec<f64> = panel
                .outline
                .vertices()
                .iter()
                .filter(|vertex| (vertex.at.x - x).abs() < 1e-6)
                .map(|vertex| vertex.at.y)
                .collect();
            found.sort_by(f64::total_cmp);
            found
        };
        let (left, front) = (edges(Wall::Left), edges(Wall::Front));
        // Left has both ends: 0, then pairs of flanks.
        assert!(left.len() > 4 && front.len() == left.len() - 2, "{left:?} {front:?}");
        for (own, other) in left[1..left.len() - 1].chunks(2).zip(front.chunks(2)) {
            let (gap, finger) = (own[1] - own[0], other[1] - other[0]);
            assert!((gap - finger - play).abs() < 1e-9, "{gap} {finger} {play}");
        }
    }
}

/// Rebate: half of 6 mm deep, 6 mm and the play wide, along the whole of the covered panel; the panel reaches in by it.
#[test]
fn a_rebate_takes_half_the_sheet() {
    let mut design = Design::default();
    for (key, value) in [("joint.left_front", "rebate"), ("size.rule", "smallest")] {
        design.set_json(key, &value.into()).unwrap();
    }
    design.set_json("joint.play", &0.1.into()).unwrap();
    let build = Build::of(&design);
    let left = build.panel(Wall::Left).unwrap();
    let rebate = left.features.iter().find(|feature| feature.id == "rebate-front").unwrap();
    assert_eq!(rebate.blind, Some((3.0, Face::Inside)));
    let bounds = rebate.contour.bbox();
    assert!((bounds.width() - 6.1).abs() < 1e-9 && (bounds.x1 - left.size_mm[0]).abs() < 1e-9);
    let front = build.panel(Wall::Front).unwrap();
    let corner = front.frame.to_case(Point::ZERO, 0.0);
    assert!((corner[0] - 3.0).abs() < 1e-9);
    assert!((bounds.height() - front.size_mm[1]).abs() < 1e-9);
}
