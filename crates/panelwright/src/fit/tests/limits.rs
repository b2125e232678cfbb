//! Both sides of every limit: a rule speaks when its value is a hundredth of a millimetre past the limit and not when
//! it is a hundredth before it.

use kurbo::Point;

use super::fixture::Fixture;
use super::{limits_making, limits_measures, limits_webs};
use crate::design::{CoolerAir, FanSide, Material, PlugShape, SizeRule, Slide, SupplyKind, Wall};
use crate::dimensions::source::Confidence;
use crate::drawing::Contour;
use crate::fit::{RULES, Severity};
use crate::panels::{Face, FeatureKind, Purpose};
use crate::parts::{Carrier, KeepClear, PartKind};
use crate::solid::Aabb;

use Severity::{Blocks, Caution, Note};

/// A rule, the weight of its finding, what the row is about, an id the finding must name, and a case whose value lies
/// `over` past the limit (before it, when negative).
pub(super) type Row = (&'static str, Severity, &'static str, &'static str, fn(f64) -> Fixture);

fn default() -> Fixture {
    Fixture::new(&[])
}

pub(super) fn with(change: impl FnOnce(&mut Fixture)) -> Fixture {
    let mut fixture = default();
    change(&mut fixture);
    fixture
}

fn bounds(fixture: &mut Fixture, id: &str) -> Aabb {
    fixture.part(id).bounds()
}

fn of_spec(change: impl FnOnce(&mut crate::design::Spec)) -> Fixture {
    let mut spec = default().spec;
    change(&mut spec);
    Fixture::of(spec)
}

/// One slot, one window of a width about its plug.
fn window(width: f64) -> Fixture {
    let mut fixture = Fixture::new(&[("card.slots", 1.into())]);
    let place = fixture.arrangement.board;
    let middle = fixture.flat(Wall::Back, place.to_case([1.57 - 7.165, -12.27, 54.0]));
    let half = width / 2.0;
    let window = fixture.panel(Wall::Back).features.iter_mut().find(|feature| feature.id == "card-window").unwrap();
    window.contour = Contour::rect(middle.x - half, middle.y - 55.0, middle.x + half, middle.y + 90.0);
    fixture
}

fn rebate(left: f64) -> Fixture {
    with(|fixture| {
        let ring = Contour::rect(20.0, 20.0, 60.0, 40.0);
        let feature = fixture.feature(Wall::Back, "io-rebate", FeatureKind::Rebate, Purpose::ShieldRebate, ring);
        feature.blind = Some((6.0 - left, Face::Outside));
    })
}

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

fn rows() -> Vec<Row> {
    let mut rows = cards();
    rows.extend(inside());
    rows.extend(panels());
    rows.extend(screws());
    rows.extend(unknowns());
    rows
}

fn cards() -> Vec<Row> {
    vec![
        ("card-length", Blocks, "front panel", "front", |over| with(|f| f.part("card").bodies[0].min[1] = 6.0 - over)),
        ("card-length", Caution, "air", "front", |over| with(|f| f.part("card").bodies[0].min[1] = 7.0 - over)),
        ("card-length", Blocks, "a part in its way", "obstacle", |over| {
            with(|f| {
                let card = bounds(f, "card");
                f.block(card, Wall::Front, -over);
            })
        }),
        ("card-height", Blocks, "top", "top", |over| {
            with(|f| {
                f.remove("button");
                let top = f.inside(Wall::Top);
                f.part("card").bodies[0].max[2] = top + over;
            })
        }),
        ("card-height", Caution, "air", "top", |over| {
            with(|f| {
                f.remove("button");
                let top = f.inside(Wall::Top);
                f.part("card").bodies[0].max[2] = top - 1.0 + over;
            })
        }),
        ("card-height", Blocks, "a part above it", "obstacle", |over| {
            with(|f| {
                // Taller than the standard: a standard card would clear the part.
                f.part("card").bodies[0].max[2] += 10.0;
                let card = bounds(f, "card");
                f.block(card, Wall::Top, -over);
            })
        }),
        ("card-thickness", Blocks, "left panel", "left", |over| with(|f| f.part("card").bodies[0].min[0] = 6.0 - over)),
        ("card-thickness", Caution, "air", "left", |over| with(|f| f.part("card").bodies[0].min[0] = 7.0 - over)),
        ("card-plug-room", Caution, "plug and bend", "obstacle", |over| {
            with(|f| {
                let card = bounds(f, "card");
                f.block(card, Wall::Top, 36.0 - over);
            })
        }),
        ("card-plug-room", Blocks, "the plug alone", "obstacle", |over| {
            with(|f| {
                let card = bounds(f, "card");
                f.block(card, Wall::Top, 10.7 - over);
            })
        }),
        ("card-air", Caution, "closed panel", "left", |over| with(|f| f.part("card").bodies[0].min[0] = 16.0 - over)),
        ("card-air", Caution, "panel with vents", "left", |over| {
            with(|f| {
                f.part("card").bodies[0].min[0] = 9.0 - over;
                let vent = Contour::rect(100.0, 80.0, 106.0, 130.0);
                f.feature(Wall::Left, "vent-card-1", FeatureKind::Vent, Purpose::Vent, vent);
            })
        }),
        ("card-tongue", Blocks, "floor", "floor", |over| {
            with(|f| f.part("card-bracket").bodies[2].min[2] = 6.0 - over)
        }),
        ("card-tongue-held", Caution, "leg too short", "card-bracket", |over| {
            with(|f| {
                let tongue = f.part("card-bracket").bodies[2];
                let leg = Aabb::new(
                    [tongue.min[0] + 4.0, tongue.min[1] - 2.0, 6.0],
                    [tongue.max[0] + 8.0, tongue.min[1] - 0.5, tongue.min[2] + 3.0 - over],
                );
                f.add("bracket-t", PartKind::Bracket, vec![leg]);
            })
        }),
        ("card-tongue-held", Caution, "leg beside the tongue", "card-bracket", |over| {
            with(|f| {
                let tongue = f.part("card-bracket").bodies[2];
                let leg = Aabb::new(
                    [tongue.max[0] - 3.0 + over, tongue.min[1] - 2.0, 6.0],
                    [tongue.max[0] + 8.0, tongue.min[1] - 0.5, tongue.min[2] + 5.0],
                );
                f.add("bracket-t", PartKind::Bracket, vec![leg]);
            })
        }),
        // The tongue's tip lies 10.19 below the board, whose top face lies 1.57 above its underside.
        ("card-tab", Blocks, "closed window", "back", |over| with(|f| f.cut_window(Some(10.19 + 1.57 - over)))),
        ("card-hold", Caution, "no hold", "card-bracket", |over| {
            with(|f| {
                let hold = if over > 0.0 { crate::design::CardHold::None } else { crate::design::CardHold::Tie };
                f.spec.card.as_mut().unwrap().hold = hold;
            })
        }),
        ("card-hold", Caution, "tab off its shelf", "shelf", |over| {
            with(|f| f.part("shelf").bodies.iter_mut().for_each(|body| *body = body.moved([0.0, 0.0, -0.52 - over])))
        }),
        ("display-plug-window", Blocks, "6 mm sheet", "back", |over| window(20.0 - over)),
    ]
}

fn inside() -> Vec<Row> {
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
        ("keep-clear", Caution, "room of a fan", "obstacle", |over| {
            with(|f| {
                let fan = bounds(f, "memory");
                let mut zone = fan;
                (zone.min[2], zone.max[2]) = (fan.max[2], fan.max[2] + 7.0);
                let keep = KeepClear { zone, purpose: "a hand", source: super::fixture::SOURCE };
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
    ]
}

fn plugs_of_drive(distance: f64) -> Fixture {
    with(|fixture| {
        let zone = fixture.part("drive-1").keep_clear[0].zone;
        let body = bounds(fixture, "drive-1");
        let toward = if zone.max[1] <= body.min[1] + 1e-9 { Wall::Front } else { Wall::Back };
        fixture.block(body, toward, distance);
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

fn all_rows() -> impl Iterator<Item = Row> {
    rows().into_iter().chain(limits_making::rows()).chain(limits_measures::rows()).chain(limits_webs::rows())
}

fn given(change: impl FnOnce(&mut Fixture)) -> Fixture {
    with(|fixture| {
        fixture.spec.size = SizeRule::Given(fixture.arrangement.case.outside_mm);
        change(fixture);
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

#[test]
fn each_rule_speaks_just_past_its_limit_and_not_just_before_it() {
    let mut wrong = Vec::new();
    for (rule, severity, what, id, case) in all_rows() {
        for over in [-0.01, 0.01] {
            let found = case(over).check();
            let speaks = found.iter().any(|finding| {
                finding.rule == rule
                    && finding.severity == severity
                    && (id.is_empty() || finding.about.iter().any(|about| about == id))
            });
            if speaks != (over > 0.0) {
                let said: Vec<_> = found.iter().map(|finding| (finding.rule, finding.severity.name())).collect();
                wrong.push(format!("{rule} ({what}) at {over}: {said:?}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_rule_has_its_limits_tested() {
    let rows: Vec<Row> = all_rows().collect();
    let missing: Vec<&str> =
        RULES.iter().map(|rule| rule.name).filter(|name| !rows.iter().any(|row| row.0 == *name)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}
