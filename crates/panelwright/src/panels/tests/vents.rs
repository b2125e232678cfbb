//! Vents in their panels.

use kurbo::Rect;
use serde_json::json;

use super::*;

fn vents<'a>(worked: &'a Worked, wall: Wall, purpose: &str) -> Vec<&'a Feature> {
    let start = format!("vent-{purpose}-");
    panel(worked, wall).features.iter().filter(|feature| feature.id.starts_with(&start)).collect()
}

fn around(features: &[&Feature]) -> Rect {
    let first = features[0].contour.bbox();
    features.iter().fold(first, |all, feature| all.union(feature.contour.bbox()))
}

/// The component side of a card looks to the left (CEM 3.0, section 9.2).
#[test]
fn the_cards_vent_is_in_the_left_panel_beside_the_card() {
    let spec = spec(&[]);
    let arrangement = arrange(&spec);
    let worked = work_out(&spec, &arrangement);
    let slots = vents(&worked, Wall::Left, "card");
    assert!(slots.len() > 20);
    let card = arrangement.parts.iter().find(|part| part.id == "card").unwrap().bounds();
    let depth = arrangement.case.outside_mm[1];
    let field = around(&slots);
    // Seen from the left, u runs from the back to the front.
    assert!(field.x0 >= depth - card.max[1] && field.x1 <= depth - card.min[1]);
    assert!(field.y0 >= card.min[2] - 1e-9 && field.y1 <= card.max[2] + 1e-9);
    // Round ends: 6 wide, so (L - 6) 6 + 28.27.
    let area: f64 = slots.iter().map(|slot| (slot.contour.bbox().height() - 6.0) * 6.0 + 28.274_333_882).sum();
    let open: f64 = slots.iter().map(|slot| slot.contour.area()).sum();
    assert!((open - area).abs() < 1e-4);
    let all = |wall| panel(&worked, wall).features.iter().filter(|feature| feature.purpose == Purpose::Vent).count();
    assert_eq!([all(Wall::Left), all(Wall::Front)], [slots.len(), 0]);
}

#[test]
fn the_coolers_vent_is_above_one_that_blows_down_and_beside_one_that_blows_out() {
    let at = |air: &str, wall: Wall| {
        let flat = [
            ("cooler.air", json!(air)),
            ("cooler.height", json!(60)),
            ("fan1.size", json!("none")),
            ("card.kind", json!("none")),
            ("supply.kind", json!("brick")),
        ];
        let spec = spec(&flat);
        let arrangement = arrange(&spec);
        let cooler = arrangement.parts.iter().find(|part| part.id == "cooler").unwrap().bodies[0];
        let worked = work_out(&spec, &arrangement);
        let found = vents(&worked, wall, "cooler");
        assert!(!found.is_empty(), "{air}");
        let frame = panel(&worked, wall).frame;
        (frame.to_case(around(&found).center(), 0.0), cooler)
    };
    let (above, cooler) = at("down", Wall::Top);
    assert!((above[0] - cooler.centre()[0]).abs() < 15.0 && (above[1] - cooler.centre()[1]).abs() < 15.0);
    let (beside, cooler) = at("back", Wall::Right);
    assert!(beside[1] < cooler.min[1], "before its front face");
    let (beside, cooler) = at("right", Wall::Left);
    assert!((beside[1] - cooler.centre()[1]).abs() < 20.0);
}

#[test]
fn the_supplys_vent_waits_until_the_side_of_its_fan_is_known() {
    let count = |side: &str, wall: Wall| {
        let spec = spec(&[
            ("supply.pose", json!("end-front")),
            ("supply.fan_side", json!(side)),
            ("size.rule", json!("smallest")),
        ]);
        vents(&work_out(&spec, &arrange(&spec)), wall, "supply").len()
    };
    for wall in [Wall::Left, Wall::Right, Wall::Front, Wall::Top] {
        assert_eq!(count("unknown", wall), 0);
    }
    assert!(count("lower", Wall::Front) > 10, "on end before the board its lower side looks to the front");
    assert_eq!(count("upper", Wall::Front), 0);
}

/// A region of 50 x 30 about (100, 90), rounds of 5 with a web of 2.5: rows 6.495 apart: 4; 7, 6, 7, 6 rounds.
#[test]
fn a_region_is_the_makers_to_give() {
    let worked = worked(&[
        ("vent_extra.pattern", json!("rounds")),
        ("vent_extra.panel", json!("front")),
        ("vent_extra.across", json!(100)),
        ("vent_extra.up", json!(90)),
        ("vent_extra.width", json!(50)),
        ("vent_extra.height", json!(30)),
        ("vent_extra.size", json!(5)),
        ("vent_extra.web", json!(2.5)),
    ]);
    let rounds = vents(&worked, Wall::Front, "extra");
    assert_eq!(rounds.len(), 7 + 6 + 7 + 6);
    let field = around(&rounds);
    assert!((field.center() - Point::new(100.0, 90.0)).hypot() < 1e-6);
    assert!(rounds.iter().all(|round| round.diameter_mm == Some(5.0) && round.key.is_some()));
}

/// Far outside the panel nothing is cut; half outside, what lies on the panel.
#[test]
fn a_region_past_the_edge_is_clipped() {
    let at = |across: f64| {
        let worked = worked(&[
            ("vent_extra.pattern", json!("slots")),
            ("vent_extra.panel", json!("right")),
            ("vent_extra.across", json!(across)),
            ("vent_extra.up", json!(100)),
            ("vent_extra.width", json!(120)),
        ]);
        vents(&worked, Wall::Right, "extra").len()
    };
    let (inside, half, outside) = (at(200.0), at(297.0), at(400.0));
    assert!(inside > half && half > 0 && outside == 0, "{inside} {half} {outside}");
}

/// Openings near a button are left out; the others keep their web.
#[test]
fn a_vent_over_a_button_leaves_openings_out() {
    let around_button = |button: &str| {
        worked(&[
            ("button.wall", json!(button)),
            ("button.across", json!(100)),
            ("button.up", json!(100)),
            ("vent_extra.pattern", json!("slots")),
            ("vent_extra.panel", json!("front")),
            ("vent_extra.across", json!(100)),
            ("vent_extra.up", json!(100)),
            ("vent_extra.width", json!(90)),
            ("vent_extra.height", json!(50)),
        ])
    };
    let (free, crowded) = (around_button("none"), around_button("front"));
    let (all, left) = (vents(&free, Wall::Front, "extra"), vents(&crowded, Wall::Front, "extra"));
    assert!(left.len() < all.len() && !left.is_empty());
    let button = feature(&crowded, Wall::Front, "button-counterbore");
    assert!(left.iter().all(|slot| slot.contour.distance_to(&button.contour) >= 6.0 - 1e-9));
}

/// 2 mm rounds with a web of 1 on 600 x 600 would be tens of thousands.
#[test]
fn the_web_grows_until_the_number_of_openings_is_one_a_hand_can_make() {
    let worked = worked(&[
        ("vent_extra.pattern", json!("rounds")),
        ("vent_extra.panel", json!("right")),
        ("vent_extra.width", json!(600)),
        ("vent_extra.height", json!(600)),
        ("vent_extra.size", json!(2)),
        ("vent_extra.web", json!(1)),
    ]);
    let rounds = vents(&worked, Wall::Right, "extra");
    assert!((200..=500).contains(&rounds.len()), "{}", rounds.len());
    let nearest = |a: &Feature| {
        let others = rounds.iter().filter(|b| b.id != a.id);
        others.map(|b| (b.centre - a.centre).hypot()).fold(f64::INFINITY, f64::min)
    };
    assert!(rounds.iter().all(|round| nearest(round) >= 3.0));
}
