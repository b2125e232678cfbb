//! Whatever shares space is named: random boxes, openings and panels, looked at a second time by sampling points.

use kurbo::Point;

use super::fixture::Fixture;
use crate::design::Wall;
use crate::drawing::Contour;
use crate::fit::{Finding, Severity};
use crate::panels::{FeatureKind, Purpose};
use crate::parts::PartKind;
use crate::sample::Random;
use crate::solid::Aabb;

fn blocks_both(found: &[Finding], one: &str, other: &str) -> bool {
    let names = |finding: &Finding, id: &str| finding.about.iter().any(|about| about == id);
    found.iter().any(|f| f.severity == Severity::Blocks && names(f, one) && names(f, other))
}

fn random_box(random: &mut Random, within: [f64; 3]) -> Aabb {
    let corner = within.map(|length| random.hundredths(-4.0, length));
    let size = [0, 1, 2].map(|_| random.hundredths(1.0, 60.0));
    Aabb::new(corner, [0, 1, 2].map(|axis| corner[axis] + size[axis]))
}

const KINDS: [PartKind; 8] = [
    PartKind::Drive,
    PartKind::Supply,
    PartKind::Fan,
    PartKind::Bracket,
    PartKind::Card,
    PartKind::Cooler,
    PartKind::Memory,
    PartKind::CardBracket,
];

/// A case full of random boxes and openings.
fn jumble(seed: u64) -> Fixture {
    let mut random = Random::new(seed);
    let mut fixture = Fixture::new(&[]);
    let outside = fixture.arrangement.case.outside_mm;
    for index in 0..6 {
        let solid = random_box(&mut random, outside);
        let kind = KINDS[random.below(KINDS.len())];
        fixture.add(&format!("box-{index}"), kind, vec![solid]);
    }
    let purposes = [Purpose::CardWindow, Purpose::SupplyOpening, Purpose::FanOpening, Purpose::Vent];
    for index in 0..6 {
        let wall = [Wall::Back, Wall::Left, Wall::Front, Wall::Top][random.below(4)];
        let [w, h] = fixture.panel(wall).size_mm;
        let (x, y) = (random.hundredths(1.0, w - 80.0), random.hundredths(1.0, h - 80.0));
        let (a, b) = (random.hundredths(5.0, 79.0), random.hundredths(5.0, 79.0));
        let contour = if random.chance(50) {
            Contour::rect(x, y, x + a, y + b)
        } else {
            Contour::circle(x + 40.0, y + 40.0, a / 2.0)
        };
        let purpose = purposes[random.below(purposes.len())];
        fixture.feature(wall, &format!("opening-{index}"), FeatureKind::Opening, purpose, contour);
    }
    fixture
}

#[test]
fn any_two_solids_that_share_space_are_named_by_a_finding_that_blocks() {
    let mut pairs = 0;
    for seed in 0..300 {
        let fixture = jumble(seed);
        let found = fixture.check();
        for (index, one) in fixture.parts.iter().enumerate() {
            for other in &fixture.parts[index + 1..] {
                // Looked at by lengths, not by the crate's own test of two boxes.
                let share = one.bodies.iter().any(|a| {
                    other.bodies.iter().any(|b| {
                        (0..3).all(|axis| a.min[axis] + 0.001 < b.max[axis] && b.min[axis] + 0.001 < a.max[axis])
                    })
                });
                if share {
                    pairs += 1;
                    assert!(blocks_both(&found, &one.id, &other.id), "seed {seed}: {} and {}", one.id, other.id);
                }
            }
        }
    }
    assert!(pairs > 500, "{pairs}");
}

/// Which openings a part may pass, written down a second time.
fn may_pass(purpose: Purpose, kind: PartKind) -> bool {
    match kind {
        PartKind::Supply => purpose == Purpose::SupplyOpening,
        PartKind::Fan => purpose == Purpose::FanOpening,
        PartKind::CardBracket => matches!(purpose, Purpose::CardWindow | Purpose::TongueRelief),
        PartKind::Shelf => purpose == Purpose::CardWindow,
        PartKind::Board => purpose == Purpose::IoAperture,
        _ => false,
    }
}

#[test]
fn any_part_in_the_sheet_of_a_panel_is_named_by_a_finding_that_blocks() {
    let mut crossings = 0;
    for seed in 0..100 {
        let fixture = jumble(seed);
        let found = fixture.check();
        for part in &fixture.parts {
            for panel in &fixture.panels {
                let in_sheet = part.bodies.iter().any(|body| {
                    sampled(body).into_iter().any(|point| {
                        let (at, out) = panel.frame.to_panel(point);
                        let [w, h] = panel.size_mm;
                        let within =
                            -5.9 < out && out < -0.1 && 0.1 < at.x && at.x < w - 0.1 && 0.1 < at.y && at.y < h - 0.1;
                        within && is_sheet(panel, at, part.kind)
                    })
                });
                if in_sheet {
                    crossings += 1;
                    assert!(blocks_both(&found, &part.id, panel.id()), "seed {seed}: {} in {}", part.id, panel.id());
                }
            }
        }
    }
    assert!(crossings > 100, "{crossings}");
}

/// Whether a point of a panel is sheet for a part of a kind, a tenth of a millimetre away from any outline.
fn is_sheet(panel: &crate::panels::Panel, at: Point, kind: PartKind) -> bool {
    panel.outline.contains(at)
        && !panel.features.iter().any(|feature| {
            feature.blind.is_none()
                && feature.purpose != Purpose::Button
                && may_pass(feature.purpose, kind)
                && (feature.contour.contains(at) || feature.contour.distance_to_point(at) < 0.1)
        })
}

/// A grid of points inside a box, with its corners drawn in a little.
fn sampled(body: &Aabb) -> Vec<[f64; 3]> {
    let steps = |axis: usize| {
        let (min, max) = (body.min[axis] + 0.01, body.max[axis] - 0.01);
        (0..=9).map(move |step| min + (max - min) * f64::from(step) / 9.0).collect::<Vec<_>>()
    };
    let (xs, ys, zs) = (steps(0), steps(1), steps(2));
    xs.iter().flat_map(|x| ys.iter().flat_map(|y| zs.iter().map(|z| [*x, *y, *z]))).collect()
}

#[test]
fn a_part_passes_through_its_own_opening_and_no_other() {
    let through = |purpose| {
        let mut fixture = Fixture::new(&[]);
        let hole = Contour::rect(100.0, 60.0, 140.0, 100.0);
        fixture.feature(Wall::Left, "hole", FeatureKind::Opening, purpose, hole);
        let frame = fixture.panel(Wall::Left).frame;
        let solid =
            Aabb::new(frame.to_case(Point::new(105.0, 65.0), -5.0), frame.to_case(Point::new(135.0, 95.0), -1.0));
        fixture.add("box", PartKind::Fan, vec![solid]);
        blocks_both(&fixture.check(), "box", "left")
    };
    assert!(!through(Purpose::FanOpening));
    assert!(through(Purpose::Vent));
}

#[test]
fn a_web_between_two_openings_is_never_overlooked() {
    let mut fixture = Fixture::new(&[]);
    for (id, x) in [("one", 100.0), ("two", 120.5)] {
        let hole = Contour::rect(x, 60.0, x + 20.0, 100.0);
        fixture.feature(Wall::Left, id, FeatureKind::Opening, Purpose::FanOpening, hole);
    }
    let frame = fixture.panel(Wall::Left).frame;
    let solid = Aabb::new(frame.to_case(Point::new(105.0, 65.0), -5.0), frame.to_case(Point::new(135.0, 95.0), -1.0));
    fixture.add("box", PartKind::Fan, vec![solid]);
    assert!(blocks_both(&fixture.check(), "box", "left"));
}
