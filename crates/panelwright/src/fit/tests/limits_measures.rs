//! The rows of the rules about measures that the maker enters: brackets, board, slot, supply, fan, feet, sheet, vents.

use kurbo::Rect;

use super::fixture::Fixture;
use super::limits::Row;
use super::limits_making::of;
use crate::design::{BoardForm, Joint, Method, Relief, Seam, Spec, VentFor, Wall};
use crate::drawing::Contour;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::{FeatureKind, NoVent, Purpose, VentLeftOut};
use crate::parts::PartKind;
use crate::solid::Aabb;

fn spec(change: impl FnOnce(&mut Spec)) -> Fixture {
    of(|spec| {
        spec.making.method_of = [Method::Hand; 6];
        change(spec);
    })
}

/// One corner bracket and one captive-nut bracket, and what is changed of them.
fn brackets(change: impl FnOnce(&mut Spec)) -> Fixture {
    let mut fixture = spec(change);
    let body = Aabb::new([120.0, 120.0, 185.0], [130.0, 130.0, 190.0]);
    fixture.add("bracket-x", PartKind::Bracket, vec![body]);
    fixture.add("captive-x", PartKind::CaptiveNut, vec![body]);
    fixture
}

fn board(form: BoardForm, depth: f64) -> Fixture {
    spec(|spec| {
        spec.board.form = form;
        spec.board.depth_mm = Some(depth);
    })
}

fn fan(size: &str, spacing: f64) -> Fixture {
    Fixture::new(&[("fan1.size", size.into()), ("fan1.spacing", spacing.into())])
}

/// Feet in a square about the middle of the case, a depth of `inward` to each edge.
fn feet(inward: f64) -> Fixture {
    let mut fixture = spec(|_| {});
    let [width, depth, _] = fixture.arrangement.case.outside_mm;
    let (x, y) = (width / 2.0, depth / 2.0);
    let far = 60.0;
    fixture.arrangement.feet =
        vec![[x - inward, y - far], [x + far, y - far], [x + far, y + far], [x - inward, y + far]];
    fixture
}

/// Half the height of the case and its feet, by the tangent of so many degrees.
fn base(tangent: f64) -> f64 {
    let fixture = spec(|_| {});
    (fixture.arrangement.case.outside_mm[2] / 2.0 + fixture.spec.feet.height_mm) * tangent
}

/// Fingers of a router between left and top, without relief.
fn fingers(relief: Relief, cutter: f64) -> Fixture {
    of(|spec| {
        spec.making.joints.seams[Seam::LeftTop as usize].joint = Joint::Finger;
        spec.making.router.relief = relief;
        spec.making.router.cutter_mm = cutter;
    })
}

/// Two square openings of a router's panel, corner to corner, with 4 mm of sheet across and up between their corners.
fn relieved(cutter: f64) -> Fixture {
    let mut fixture = of(|spec| {
        spec.making.router.relief = Relief::Diagonal;
        spec.making.router.cutter_mm = cutter;
    });
    for (id, at) in [("a", 50.0), ("b", 74.0)] {
        let contour = Contour::rect(at, at, at + 20.0, at + 20.0);
        fixture.feature(Wall::Right, id, FeatureKind::Opening, Purpose::Port, contour);
    }
    fixture
}

fn left_out(why: Option<NoVent>) -> Fixture {
    let mut fixture = spec(|_| {});
    let area = Rect::new(20.0, 20.0, 60.0, 60.0);
    fixture.left_out.extend(why.map(|why| VentLeftOut {
        purpose: VentFor::Extra,
        wall: Wall::Back,
        wanted: area,
        free: area,
        opening_mm: 6.0,
        why,
    }));
    fixture
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        // M3: a nut of 2.4 on a leg of 1.5, and half of 5.5 across flats, 6.351 across corners.
        ("bracket-hole", Blocks, "nuts of both legs", "bracket-x", |over| {
            brackets(|spec| spec.hardware.bracket.hole_mm = 7.0754 - over)
        }),
        ("bracket-hole", Blocks, "off the leg", "bracket-x", |over| {
            brackets(|spec| spec.hardware.bracket.hole_mm = 20.0 - 1.7 + over)
        }),
        ("bracket-hole", Caution, "washer over the end", "bracket-x", |over| {
            brackets(|spec| spec.hardware.bracket.hole_mm = 20.0 - 3.5 + over)
        }),
        // Without a second nut the washer of 7 beside a leg of 1.5 decides.
        ("bracket-hole", Blocks, "a captive nut's washer", "captive-x", |over| {
            brackets(|spec| spec.hardware.captive.hole_mm = 5.0 - over)
        }),
        ("bracket-hole", Blocks, "a captive nut off the leg", "captive-x", |over| {
            brackets(|spec| spec.hardware.captive.leg_mm = 9.0 + 1.7 - over)
        }),
        // A cutter of 2 r leaves r (√2 - 1) in a square corner; a stroke of the file is 0.05.
        ("joint-corners-round", Blocks, "left round", "top", |over| {
            fingers(Relief::None, 2.0 * (0.05 + over) / (core::f64::consts::SQRT_2 - 1.0))
        }),
        ("joint-corners-round", Blocks, "relieved or not", "left", |over| {
            fingers(if over > 0.0 { Relief::None } else { Relief::Along }, 3.18)
        }),
        // 4 √2 between the corners; each circle reaches its corner and goes no further that way.
        ("opening-to-opening", Note, "corner relief, nominal", "right/a", |over| {
            let mut fixture = relieved(0.02);
            fixture.panel(Wall::Right).features[1].contour = Contour::rect(
                70.0 + 6.0 / core::f64::consts::SQRT_2 - over,
                70.0 + 6.0 / core::f64::consts::SQRT_2 - over,
                100.0,
                100.0,
            );
            fixture
        }),
        ("feet-base", Blocks, "10 degrees", "floor", |over| feet(base(0.176_327) - over)),
        ("feet-base", Caution, "15 degrees", "floor", |over| feet(base(0.267_949) - over)),
        // Hole J, 154.94 from row C and 165.10 from the rear edge, and half of 3.96: beyond it the row is drilled.
        ("board-support", Blocks, "no front row", "board", |over| {
            board(
                BoardForm::MiniItx,
                154.94 + 10.16 + crate::dimensions::boards::HOLE_DIAMETER.get() / 2.0 - over + 1e-3,
            )
        }),
        // The largest FlexATX stands out 190.5 - 10.16 - 154.94.
        ("board-support", Caution, "the front row left out", "board", |over| {
            board(BoardForm::Atx, 10.16 + 154.94 + 25.4 + over)
        }),
        ("standoff-sold", Note, "a hair longer", "board", |over| {
            spec(|spec| spec.board.standoff_mm = 25.0 + over.max(0.0))
        }),
        ("card-slot", Blocks, "Mini-DTX", "card", |over| {
            spec(|spec| {
                spec.board.form = BoardForm::MiniDtx;
                if let Some(card) = &mut spec.card {
                    card.slot = if over > 0.0 { 2 } else { 1 };
                }
            })
        }),
        ("card-slot", Caution, "FlexATX: texts disagree", "card", |over| {
            spec(|spec| {
                spec.board.form = BoardForm::FlexAtx;
                if let Some(card) = &mut spec.card {
                    card.slot = if over > 0.0 { 3 } else { 2 };
                }
            })
        }),
        // 6-32 is 3.505 thick.
        ("supply-cut-off-face", Blocks, "a hole", "supply", |over| {
            spec(|spec| spec.supply.holes = vec![[3.505 / 2.0 - over, 40.0], [100.0, 40.0]])
        }),
        ("supply-cut-off-face", Blocks, "the opening", "supply", |over| {
            spec(|spec| spec.supply.opening = Some([[20.0, 20.0], [150.0 + over, 60.0]]))
        }),
        // 114 of air and a hole of 4.5 on the diagonal.
        ("fan-spacing", Blocks, "in its air", "fan-1", |over| fan("120", 118.5 / core::f64::consts::SQRT_2 - over)),
        ("fan-spacing", Blocks, "beside its frame", "fan-1", |over| fan("120", 120.0 - 4.5 + over)),
        ("fan-spacing", Blocks, "200 mm, nearer than any seen", "fan-1", |over| fan("200", 110.0 - over)),
        ("fan-spacing", Caution, "200 mm, in its air", "fan-1", |over| {
            fan("200", 194.5 / core::f64::consts::SQRT_2 - over)
        }),
        ("sheet-not-as-sold", Note, "±0.2", "", |over| spec(|spec| spec.sheet.measured_mm = Some(6.2 + over))),
        ("sheet-not-as-sold", Caution, "beyond every tolerance", "", |over| {
            // Cast acrylic: 0.4 and a tenth.
            spec(|spec| spec.sheet.measured_mm = Some(5.0 - over))
        }),
        ("vent-not-cut", Caution, "taken", "back", |over| left_out((over > 0.0).then_some(NoVent::Taken))),
        ("blade-hole", Note, "a slot", "right/a", |over| {
            let mut fixture = spec(|_| {});
            let contour = Contour::slot(50.0, 80.0, 90.0, 80.0, 8.0 - over);
            fixture.feature(Wall::Right, "a", FeatureKind::Vent, Purpose::Vent, contour);
            fixture
        }),
        ("blade-hole", Note, "an opening", "right/a", |over| {
            let mut fixture = spec(|_| {});
            // 8 mm for the blade and 0.8 mm of air on both sides.
            let contour = Contour::rect(50.0, 80.0, 90.0, 89.6 - over);
            fixture.feature(Wall::Right, "a", FeatureKind::Opening, Purpose::Port, contour);
            fixture
        }),
    ]
}
