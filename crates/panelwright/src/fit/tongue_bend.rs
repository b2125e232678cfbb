//! The bent end of the tongue of a card's bracket: it reaches into the back.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{Method, Wall};
use crate::dimensions::boards::REAR_WALL_INNER_Y;
use crate::dimensions::cards::{TONGUE_BEND_LENGTH, TONGUE_RELIEF, TONGUE_TIP_OUTER_Y};
use crate::panels::{Face, Purpose};
use crate::parts::PartKind;
use crate::solid::TOUCH_MM;

pub(super) const TONGUE_BEND: Rule = Rule {
    name: "tongue-bend",
    what: "A hollow in the back takes the end of the tongue of the card's bracket, which bends outward.",
    source: TONGUE_TIP_OUTER_Y.source(),
    look: tongue_bend,
};

/// How far the tongue's end reaches into the back, mm.
const REACH_MM: f64 = REAR_WALL_INNER_Y.get() - TONGUE_TIP_OUTER_Y.get();

fn tongue_bend(scene: &Scene, found: &mut Vec<Finding>) {
    let (Some(bracket), Some(back)) = (scene.first(PartKind::CardBracket), scene.sheet(Wall::Back)) else { return };
    // The bodies of the bracket that reach lowest are its tongues.
    let tip = bracket.bounds().min[2];
    let area = back.panel.sound();
    let bare = bracket.bodies.iter().filter(|body| body.min[2] < tip + TOUCH_MM).find(|tongue| {
        let mut end = back.shadow(tongue);
        end.y1 = end.y0 + TONGUE_BEND_LENGTH.get();
        let end = end.intersect(area);
        end.width() > TOUCH_MM
            && end.height() > TOUCH_MM
            && !back.with_purpose(Purpose::TongueRelief).any(|shape| {
                let deep = matches!(shape.feature.blind, Some((deep, Face::Inside)) if deep >= REACH_MM - TOUCH_MM);
                deep && shape.bounds.inflate(TOUCH_MM, TOUCH_MM).contains_rect(end)
            })
    });
    let Some(tongue) = bare else { return };
    let why = if scene.case.spec.making.method(Wall::Back) == Method::Laser {
        "a laser cuts no hollow for it"
    } else {
        "its sheet is too thin for a hollow there"
    };
    found.push(
        TONGUE_BEND
            .note(format!(
                "The end of the card bracket's tongue bends {} into the back, and {why}.",
                words::short(REACH_MM)
            ))
            .with_mm(0.0, REACH_MM)
            .with_remedy(format!(
                "Scrape a hollow {} deep behind the tongue, or bend its end straight with pliers.",
                words::limit(TONGUE_RELIEF.get())
            ))
            .with_about([bracket.id.as_str(), back.id()])
            .with_at([tongue.centre()[0], tongue.max[1], tongue.min[2]]),
    );
}
