//! The rows of the rules about the card and how it is held.

use super::fixture::Fixture;
use super::limits::{Row, bounds, with};
use crate::design::Wall;
use crate::drawing::Contour;
use crate::fit::Severity::{Blocks, Caution, Note};
use crate::panels::{Face, FeatureKind, Purpose};
use crate::parts::PartKind;
use crate::solid::Aabb;

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

/// One slot, and a hollow in the back, so deep, that ends so far above the tongue's tip.
fn hollow(deep: f64, above: f64) -> Fixture {
    let mut fixture = Fixture::new(&[("card.slots", 1.into())]);
    let place = fixture.arrangement.board;
    let low = fixture.flat(Wall::Back, place.to_case([1.57 - 7.15 + 5.5, -12.27, -10.19 + above]));
    let high = fixture.flat(Wall::Back, place.to_case([1.57 - 7.15 - 5.5, -12.27, 4.3]));
    let shape = Contour::rect(low.x, low.y, high.x, high.y);
    let feature = fixture.feature(Wall::Back, "hollow", FeatureKind::Rebate, Purpose::TongueRelief, shape);
    feature.blind = Some((deep, Face::Inside));
    fixture
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        ("card-length", Blocks, "the front", "front", |over| with(|f| f.part("card").bodies[0].min[1] = 6.0 - over)),
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
        // The tongue's end stands 0.33 into the back: 12.6 of the bracket's figures, 12.27 of the board's.
        ("tongue-bend", Note, "shallow hollow", "card-bracket", |over| hollow(0.33 - over, 0.0)),
        ("tongue-bend", Note, "hollow ends above the tip", "card-bracket", |over| hollow(1.0, over)),
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
