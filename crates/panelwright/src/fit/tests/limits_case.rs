//! The rows of the rules about solids, sleeve, sizes and paper.

use kurbo::Point;

use super::fixture::{Fixture, SOURCE};
use super::limits::{Row, bounds, of_spec, with};
use crate::design::{SizeRule, Slide, Wall};
use crate::drawing::Contour;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::{FeatureKind, Purpose};
use crate::parts::{Carrier, KeepClear, PartKind};
use crate::solid::Aabb;

/// Cut to ±0.3 by the maker's own word.
fn clearance(mm: f64) -> Fixture {
    of_spec(|spec| {
        spec.making.own_accuracy_mm = Some(0.3);
        spec.sleeve.clearance_mm = mm;
    })
}

/// A bracket of the sleeve with a part above it that overhangs by `over`.
fn overhang(over: f64, slide: Slide) -> Fixture {
    with(|fixture| {
        fixture.spec.sleeve.slide = slide;
        let bracket = Aabb::new([120.0, 120.0, 185.0], [130.0, 130.0, 190.0]);
        fixture.add("bracket-x", PartKind::Bracket, vec![bracket]).carrier = Carrier::Sleeve;
        let (mut min, mut max) = ([130.0 - over, 120.0, 195.0], [140.0, 130.0, 200.0]);
        if slide == Slide::Forward {
            (min, max) = ([130.0 - over, 110.0, 185.0], [140.0, 115.0, 190.0]);
        }
        fixture.add("obstacle", PartKind::Drive, vec![Aabb::new(min, max)]);
    })
}

/// So many panels with two slots each, and no other opening for air.
fn air_ways(vented: usize) -> Fixture {
    with(|fixture| {
        let open = [Purpose::Vent, Purpose::FanOpening, Purpose::SupplyOpening];
        for panel in &mut fixture.panels {
            panel.features.retain(|feature| !open.contains(&feature.purpose));
        }
        for wall in [Wall::Left, Wall::Top].into_iter().take(vented) {
            for across in [40.0, 60.0] {
                let slot = Contour::slot(across, 60.0, across, 90.0, 6.0);
                fixture.feature(wall, "vent-extra", FeatureKind::Vent, Purpose::Vent, slot);
            }
        }
    })
}

fn given(change: impl FnOnce(&mut Fixture)) -> Fixture {
    with(|fixture| {
        fixture.spec.size = SizeRule::Given(fixture.arrangement.case.outside_mm);
        change(fixture);
    })
}

fn solids() -> Vec<Row> {
    vec![
        ("keep-clear", Caution, "room of a fan", "obstacle", |over| {
            with(|f| {
                let fan = bounds(f, "memory");
                let mut zone = fan;
                (zone.min[2], zone.max[2]) = (fan.max[2], fan.max[2] + 7.0);
                let keep = KeepClear { zone, purpose: "a hand", source: SOURCE };
                f.part("memory").keep_clear.push(keep);
                f.block(fan, Wall::Top, 7.0 - over);
            })
        }),
        ("bracket-without-place", Blocks, "the only one of its joint", "left", |over| {
            with(|f| {
                if over > 0.0 {
                    f.unplaced("bracket-left-front-1", [Wall::Left, Wall::Front]);
                }
            })
        }),
        ("bracket-without-place", Caution, "one of two", "left", |over| {
            with(|f| {
                let solid = Aabb::new([20.0, 100.0, 100.0], [21.0, 101.0, 101.0]);
                f.add("bracket-left-front-2", PartKind::Bracket, vec![solid]);
                if over > 0.0 {
                    f.unplaced("bracket-left-front-1", [Wall::Left, Wall::Front]);
                }
            })
        }),
        ("bracket-without-place", Note, "one of three", "left", |over| {
            with(|f| {
                for id in ["bracket-left-front-2", "bracket-left-front-3"] {
                    f.add(id, PartKind::Bracket, vec![Aabb::new([20.0, 100.0, 100.0], [21.0, 101.0, 101.0])]);
                }
                if over > 0.0 {
                    f.unplaced("bracket-left-front-1", [Wall::Left, Wall::Front]);
                }
            })
        }),
        ("air-ways", Caution, "one way and another", "cooler", |over| air_ways(1 + usize::from(over <= 0.0))),
        ("air-ways", Caution, "shut, and open on two panels", "cooler", |over| {
            air_ways(if over > 0.0 { 0 } else { 2 })
        }),
        ("part-overlaps-part", Blocks, "any two", "obstacle", |over| {
            with(|f| {
                let supply = bounds(f, "supply");
                f.block(supply, Wall::Left, -over);
            })
        }),
        ("bracket-hits-part", Blocks, "bracket", "supply", |over| {
            with(|f| {
                let supply = bounds(f, "supply");
                f.block(supply, Wall::Left, -over).kind = PartKind::Bracket;
            })
        }),
        ("part-crosses-panel", Blocks, "supply into floor", "floor", |over| {
            with(|f| f.part("supply").bodies[0].min[2] = 6.0 - over)
        }),
        ("part-crosses-panel", Blocks, "tab beside its window", "back", |over| {
            with(|f| {
                let window = f.panel(Wall::Back).features.iter().find(|hole| hole.id == "card-window").unwrap();
                let edge = window.contour.bbox().x0;
                let right = f.panel(Wall::Back).frame.to_case(Point::new(edge, 0.0), 0.0)[0];
                f.part("card-bracket").bodies[1].max[0] = right + over;
            })
        }),
        ("part-outside-case", Blocks, "above the top", "top", |over| {
            with(|f| {
                let height = f.arrangement.case.outside_mm[2];
                let solid = Aabb::new([100.0, 100.0, height + over - 4.0], [110.0, 110.0, height + over]);
                f.add("obstacle", PartKind::Drive, vec![solid]);
                f.panels.retain(|panel| panel.wall != Wall::Top);
            })
        }),
        ("part-outside-case", Caution, "a tongue above the table", "card-bracket", |over| tongue_out(40.0, over)),
        ("part-outside-case", Blocks, "a tongue that reaches the table", "card-bracket", |over| {
            tongue_out(2.0, 1.0 + over)
        }),
    ]
}

/// A card's bracket whose tongue comes so far out below the floor of a case on feet of some height.
fn tongue_out(feet_mm: f64, below_mm: f64) -> Fixture {
    with(|f| {
        f.spec.feet.height_mm = feet_mm;
        f.panels.retain(|panel| panel.wall != Wall::Floor);
        let bodies = &mut f.part("card-bracket").bodies;
        if let Some(lowest) = bodies.iter_mut().min_by(|a, b| a.min[2].total_cmp(&b.min[2])) {
            lowest.min[2] = -below_mm;
        }
    })
}

fn panels() -> Vec<Row> {
    vec![
        ("sleeve-path", Blocks, "upward", "bracket-x", |over| overhang(over, Slide::Up)),
        ("sleeve-path", Blocks, "forward", "bracket-x", |over| overhang(over, Slide::Forward)),
        ("sleeve-path", Blocks, "a screw's end", "Screw", |over| {
            let mut f = overhang(-5.0, Slide::Up);
            // Its side just reaches under the obstacle: radius 1.5.
            f.screw("Screw", [133.5 + over, 125.0, 190.0], [0.0, 0.0, -1.0], 4.0, &["bracket-x"]);
            f
        }),
        // Cut to ±0.3 on four edges: ±0.6 likely, ±1.2 at worst, over twice the clearance.
        ("sleeve-jams", Caution, "likely", "left", |over| clearance(0.3 - over)),
        ("sleeve-jams", Note, "at worst", "left", |over| clearance(0.6 - over)),
        ("sleeve-jams", Caution, "paint forgotten", "left", |over| {
            with(|f| {
                f.spec.making.own_accuracy_mm = Some(0.3);
                f.spec.sheet.finish_in_mm = 0.2 + over;
            })
        }),
        // Thickness ±0.4 on two sheets as well: √(4·0.09 + 2·0.16) = 0.8246 likely.
        ("sleeve-jams", Caution, "front over the sides", "left", |over| {
            of_spec(|spec| {
                spec.making.own_accuracy_mm = Some(0.3);
                spec.sleeve.corners = crate::design::Corners::Face;
                spec.sheet.varies_mm = Some(0.4);
                spec.sleeve.clearance_mm = 0.824_621_125 / 2.0 - over;
            })
        }),
        ("sleeve-rattles", Note, "1 mm a side", "left", |over| clearance(1.0 + over)),
        ("panel-on-paper", Blocks, "A4, long side", "left", |over| {
            with(|f| f.panel(Wall::Left).size_mm = [210.0, 297.0 + over])
        }),
        ("panel-on-paper", Blocks, "A4, short side", "left", |over| {
            with(|f| f.panel(Wall::Left).size_mm = [297.0, 210.0 + over])
        }),
        ("panel-on-stock", Blocks, "long side", "left", |over| {
            with(|f| f.panel(Wall::Left).size_mm = [1220.0 + over, 600.0])
        }),
        ("panel-on-stock", Blocks, "short side", "left", |over| {
            with(|f| f.panel(Wall::Left).size_mm = [610.0 + over, 1200.0])
        }),
        ("stock-side-missing", Note, "a width without a height", "", |over| {
            let height = if over > 0.0 { serde_json::Value::Null } else { 300.into() };
            Fixture::new(&[("stock2.width", 600.into()), ("stock2.height", height)])
        }),
        ("stock-side-missing", Note, "a number without a size", "", |over| {
            let count = if over > 0.0 { 2.into() } else { serde_json::Value::Null };
            Fixture::new(&[("stock3.count", count)])
        }),
        ("printer-scale", Caution, "too short across", "", |over| {
            with(|f| f.spec.template.printer.across_mm = Some(97.0 - over))
        }),
        ("printer-scale", Caution, "too long down", "", |over| {
            with(|f| f.spec.template.printer.down_mm = Some(103.0 + over))
        }),
        ("size-too-small", Blocks, "width", "left", |over| given(|f| f.part("card").bodies[0].min[0] = 6.0 - over)),
        ("size-too-small", Blocks, "depth", "front", |over| given(|f| f.part("card").bodies[0].min[1] = 6.0 - over)),
        ("size-too-small", Blocks, "height", "top", |over| {
            given(|f| {
                let top = f.inside(Wall::Top);
                f.part("cooler").bodies[0].max[2] = top + over;
            })
        }),
    ]
}

pub(super) fn rows() -> Vec<Row> {
    let mut rows = solids();
    rows.extend(panels());
    rows
}
