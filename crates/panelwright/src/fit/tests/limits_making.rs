//! The rows of the rules about joints and methods.

use kurbo::{Point, Rect};

use super::fixture::Fixture;
use super::limits::Row;
use crate::design::{Joint, Material, Method, Seam, Spec, Wall};
use crate::drawing::Contour;
use crate::fastening::Screw;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::{FeatureKind, Purpose};

pub(super) fn of(change: impl FnOnce(&mut Spec)) -> Fixture {
    let mut spec = Fixture::new(&[]).spec;
    spec.making.method_of = [Method::Router; 6];
    change(&mut spec);
    Fixture::of(spec)
}

fn joined(spec: &mut Spec, joint: Joint) {
    spec.making.joints.seams[Seam::LeftFront as usize].joint = joint;
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        ("joint-beyond-method", Blocks, "a laser's rebate", "left", |over| {
            of(|spec| {
                joined(spec, Joint::Rebate);
                spec.making.method_of[Wall::Left as usize] = if over > 0.0 { Method::Laser } else { Method::Router };
            })
        }),
        ("joint-beyond-method", Note, "fingers by hand", "front", |over| {
            of(|spec| {
                joined(spec, Joint::Finger);
                spec.making.method_of[Wall::Front as usize] = if over > 0.0 { Method::Hand } else { Method::Router };
            })
        }),
        ("rebate-leaves", Blocks, "half of a thin sheet", "left", |over| {
            of(|spec| {
                joined(spec, Joint::Rebate);
                spec.sheet.measured_mm = Some(4.0 - 2.0 * over);
            })
        }),
        ("finger-width", Caution, "as asked", "left", |over| {
            let mut fixture = of(|spec| {
                joined(spec, Joint::Finger);
                spec.making.finger_mm = Some(6.0);
            });
            // 33 fingers between the floor's level and the underside of the top.
            fixture.arrangement.case.outside_mm[2] = 33.0 * (6.0 - over) + 6.0;
            fixture
        }),
        ("fingers-press", Blocks, "acrylic", "left", |over| {
            of(|spec| {
                joined(spec, Joint::Finger);
                spec.sheet.material = Material::Acrylic;
                spec.making.play_of = [-over; 6];
            })
        }),
        ("fingers-press", Caution, "fibreboard", "left", |over| {
            of(|spec| {
                joined(spec, Joint::Finger);
                spec.making.play_of = [-0.1 - over; 6];
            })
        }),
        ("joint-corners-round", Caution, "a gap as deep as the sheet is thick", "left", |over| {
            // Relief across a right angle starts √2 of its radius, 1.05 times the cutter's, from the corner; into the
            // long wall of the gap both ends together need 4.2 radii, more than 14 mm.
            let cutter_mm = 2.0 * 6.0 / (1.05 * core::f64::consts::SQRT_2) + over;
            let mut fixture = of(|spec| spec.making.router.cutter_mm = cutter_mm);
            let panel = fixture.panel(Wall::Left);
            let [w, h] = panel.size_mm;
            let gap = Rect::new(0.0, 86.0, 6.0, 100.0);
            let corners =
                [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h), (0.0, 100.0), (6.0, 100.0), (6.0, 86.0), (0.0, 86.0)];
            panel.outline = Contour::polygon(corners);
            panel.joint_gaps.push(gap);
            fixture
        }),
        ("stock-gap", Blocks, "a cutter", "left", |over| {
            of(|spec| {
                spec.stock.straight = false;
                spec.making.router.cutter_mm = 4.0;
                spec.stock.gap_mm = 4.0 - over;
            })
        }),
        ("stock-gap", Blocks, "one panel by a laser, the others by hand", "left", |over| {
            of(|spec| {
                spec.stock.straight = false;
                spec.making.method_of = [Method::Hand; 6];
                spec.making.method_of[Wall::Left as usize] = Method::Laser;
                spec.making.hand.kerf_mm = 0.2;
                spec.making.laser.kerf_mm = Some(0.4);
                spec.stock.gap_mm = 0.4 - over;
            })
        }),
        ("stock-gap", Caution, "a saw", "left", |over| {
            of(|spec| {
                spec.stock.straight = true;
                spec.making.hand.kerf_mm = 1.5;
                spec.stock.gap_mm = 1.5 - over;
            })
        }),
        ("glue-area", Caution, "a short rebate", "left", |over| {
            let mut fixture = of(|spec| joined(spec, Joint::Rebate));
            // 100 N from 0.65 N/mm² over 6 + 3 mm, a quarter relied on.
            fixture.arrangement.case.inside_mm[2] = 400.0 / (9.0 * 0.65) - over;
            fixture
        }),
        ("corner-open", Caution, "a ring", "top", |over| {
            of(|spec| {
                let seams = &mut spec.making.joints.seams;
                seams[Seam::LeftTop as usize].through = Wall::Top;
                seams[Seam::LeftTop as usize].covered = Wall::Left;
                if over > 0.0 {
                    seams[Seam::FrontTop as usize].through = Wall::Front;
                    seams[Seam::FrontTop as usize].covered = Wall::Top;
                }
            })
        }),
        ("saw-reach", Caution, "an opening", "right/a", |over| {
            let mut fixture = of(|spec| {
                spec.making.method_of = [Method::Hand; 6];
                spec.making.hand.frame_mm = 60.0 - over;
            });
            // Its right edge lies 60 mm inside the left edge of the panel, and further from all others.
            let contour = Contour::rect(50.0, 80.0, 60.0, 90.0);
            fixture.feature(Wall::Right, "a", FeatureKind::Opening, Purpose::FanOpening, contour);
            fixture
        }),
        ("saw-reach", Note, "drilled out", "right/a", |over| {
            let mut fixture = of(|spec| {
                spec.making.method_of = [Method::Hand; 6];
                spec.making.hand.frame_mm = 60.0 - over;
                spec.making.hand.chain_mm = Some(5.0);
            });
            let contour = Contour::rect(50.0, 80.0, 60.0, 90.0);
            fixture.feature(Wall::Right, "a", FeatureKind::Opening, Purpose::FanOpening, contour);
            fixture
        }),
        ("blade-entry", Caution, "a fret saw's hole", "right/a", |over| {
            let mut fixture = of(|spec| spec.making.method_of = [Method::Hand; 6]);
            // 3 mm for the blade and 0.8 mm of air on both sides.
            let contour = Contour::rect(50.0, 80.0, 90.0, 84.6 - over);
            fixture.feature(Wall::Right, "a", FeatureKind::Opening, Purpose::Port, contour);
            fixture
        }),
        ("blade-entry", Caution, "the saw's cut", "right/a", |over| {
            let mut fixture = of(|spec| {
                spec.making.method_of = [Method::Hand; 6];
                spec.making.hand.kerf_mm = 3.0;
            });
            let contour = Contour::slot(50.0, 80.0, 90.0, 80.0, 3.0 - over);
            fixture.feature(Wall::Right, "a", FeatureKind::Vent, Purpose::Vent, contour);
            fixture
        }),
        ("tab-height", Caution, "as the sheet", "left", |over| {
            of(|spec| spec.making.router.tab_height_mm = 6.0 + over)
        }),
        ("tab-height", Note, "too thin", "left", |over| of(|spec| spec.making.router.tab_height_mm = 1.5 - over)),
        ("sleeve-jams", Note, "by hand, class c", "left", |over| {
            of(|spec| {
                spec.making.method_of = [Method::Hand; 6];
                // Four edges of ±1.2, the cell of ISO 2768-1 class c for 120 to 400 mm: ±2.4 likely.
                spec.sleeve.clearance_mm = 1.2 - over;
            })
        }),
        ("sleeve-jams", Caution, "by hand, closer than close", "left", |over| {
            of(|spec| {
                spec.making.method_of = [Method::Hand; 6];
                spec.sleeve.clearance_mm = 0.3 - over;
            })
        }),
        ("sleeve-jams", Caution, "router, class m", "left", |over| {
            // The same of class m: ±0.5 on four edges.
            of(|spec| spec.sleeve.clearance_mm = 0.5 - over)
        }),
        ("hole-play", Note, "a drive's hole", "floor/a", |over| {
            let mut fixture = of(|spec| {
                // Half of 0.4 is what an M3 screw in a hole of 3.4 leaves: δ = 0.4 / (4√2), worked example F-7.
                spec.making.machine_accuracy_mm = Some(0.4 / (4.0 * core::f64::consts::SQRT_2) + over);
            });
            let at = Point::new(60.0, 60.0);
            fixture.hole(Wall::Floor, "a", Purpose::DriveScrew, at, 3.4);
            let panel = fixture.panel(Wall::Floor);
            let head_at = panel.frame.to_case(at, 0.0);
            let direction = panel.frame.out.map(|part| -part);
            fixture.screws.push(Screw {
                id: "screw-a".to_owned(),
                what: "screw of the drive".to_owned(),
                thread: "M3",
                diameter_mm: 3.0,
                head_at,
                direction,
                clamped_mm: 6.0,
                least_mm: 6.0,
                most_mm: None,
                length_mm: Some(8.0),
                nut: false,
                washers: 0,
                joins: vec!["floor".to_owned(), "drive-1".to_owned()],
                source: super::fixture::SOURCE,
            });
            fixture
        }),
        ("cannot-be-cut", Note, "corners left round", "right/a", |over| {
            let mut fixture = of(|spec| {
                spec.making.router.relief = crate::design::Relief::None;
                spec.making.router.cutter_mm = 4.0;
            });
            let contour = Contour::rounded_rect(50.0, 80.0, 90.0, 100.0, 2.0 - over);
            fixture.feature(Wall::Right, "a", FeatureKind::Opening, Purpose::Port, contour);
            fixture
        }),
        ("laser-material", Caution, "film", "", |over| {
            of(|spec| {
                spec.making.method_of = [Method::Laser; 6];
                spec.sheet.film_out_mm = over.max(0.0);
            })
        }),
        ("laser-material", Caution, "unknown sheet", "", |over| {
            of(|spec| {
                spec.making.method_of = [Method::Laser; 6];
                spec.sheet.material = if over > 0.0 { Material::Other } else { Material::Plywood };
            })
        }),
        ("laser-material", Note, "acrylic", "", |over| {
            of(|spec| {
                spec.making.method_of = [Method::Laser; 6];
                spec.sheet.material = if over > 0.0 { Material::Acrylic } else { Material::Plywood };
            })
        }),
        ("cannot-be-cut", Blocks, "an opening", "right/a", |over| {
            let mut fixture = of(|_| {});
            let contour = Contour::rect(50.0, 80.0, 53.18 - over, 100.0);
            fixture.feature(Wall::Right, "a", FeatureKind::Opening, Purpose::Vent, contour);
            fixture
        }),
        ("cannot-be-cut", Note, "a hole", "right/a", |over| {
            let mut fixture = of(|_| {});
            // A cutter is not run round a circle of a hundredth: five hundredths either side of the limit.
            fixture.hole(Wall::Right, "a", Purpose::BracketScrew, Point::new(50.0, 80.0), 3.18 - 5.0 * over);
            fixture
        }),
    ]
}
