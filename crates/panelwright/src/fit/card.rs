//! The card: its length, height and thickness in the case, its plug, and its air.
//!
//! Measures: length from the bracket end of its board, height above the board's top face, thickness from datum V (the
//! component face of its board), as in [`crate::dimensions::cards`].

use super::finding::Finding;
use super::mend::{Remedy, least};
use super::plugs::{PLUG_SHARE, PlugWords, short_of_room};
use super::room::{Look, Obstacle};
use super::rule::Rule;
use super::scene::{Scene, face, outward};
use super::words;
use crate::design::{CardKind, CardPlug, CardSpec, Wall};
use crate::dimensions::cards::{self, CardHeight};
use crate::dimensions::fans::GRILLE_GAP;
use crate::dimensions::plugs::POWER_PLUG_STANDS_OUT;
use crate::dimensions::source::{Source, Sourced};
use crate::panels::FeatureKind;
use crate::parts::{self, Part, PartKind};
use crate::solid::TOUCH_MM;

const CEM: &str = "PCI Express Card Electromechanical Specification 3.0";

/// Air wanted around a card that is let down beside panels cut by hand, mm.
const CARD_AIR: Sourced<f64> = Sourced::new(
    1.0,
    Source::common_practice("Workshop custom", "two edges cut to ±0.3 mm and the card's own tolerance"),
);

/// Air wanted between the fans of a card and a panel with vents in front of them, mm.
const AIR_BEFORE_VENT: Sourced<f64> =
    Sourced::new(3.0, Source::common_practice("Workshop custom", "fans close behind open slots"));

pub(super) const CARD_LENGTH: Rule = Rule {
    name: "card-length",
    what: "The card ends before the front panel and before any part in front of it.",
    source: Source::published(CEM, "figure 9-2"),
    look: card_length,
};

pub(super) const CARD_HEIGHT: Rule = Rule {
    name: "card-height",
    what: "The card ends below the top and below any part above it.",
    source: Source::published(CEM, "figure 9-26"),
    look: card_height,
};

pub(super) const CARD_THICKNESS: Rule = Rule {
    name: "card-thickness",
    what: "The card's cooler ends before the left panel and before any part beside it.",
    source: Source::published(CEM, "figures 9-1, 9-11 and 9-12"),
    look: card_thickness,
};

pub(super) const CARD_PLUG_ROOM: Rule = Rule {
    name: "card-plug-room",
    what: "The card's power plug goes in, and its cable has room to bend.",
    source: Source::published(CEM, "figure 8-8"),
    look: card_plug_room,
};

pub(super) const CARD_AIR_RULE: Rule = Rule {
    name: "card-air",
    what: "The fans of a card of two slots or more have air before them.",
    source: GRILLE_GAP.source(),
    look: card_air,
};

/// The card as chosen and as placed.
fn card<'a>(scene: &Scene<'a>) -> Option<(&'a CardSpec, &'a Part)> {
    Some((scene.case.spec.card.as_ref()?, scene.first(PartKind::Card)?))
}

fn not_its_own(part: &Part) -> bool {
    !matches!(part.kind, PartKind::Card | PartKind::CardBracket | PartKind::Shelf)
}

/// One of the card's three sizes against the room for it.
struct Size<'a> {
    rule: &'static Rule,
    toward: Wall,
    /// What the card is when there is too little room: `too long`.
    too: &'a str,
    /// The fixed end the size counts from, along the way's axis.
    from: f64,
    /// A part counts from here on.
    start: f64,
    /// Adds another card that would do, smaller by so much.
    other: &'a dyn Fn(Remedy, f64) -> Remedy,
}

fn size(scene: &Scene, part: &Part, size: &Size, found: &mut Vec<Finding>) {
    let (axis, sense) = outward(size.toward);
    let bounds = part.bounds();
    let needed = (face(&bounds, axis, sense) - size.from) * sense;
    let look = Look { section: bounds, toward: size.toward, start: size.start, straddle: false, share: 0.0 };
    let Some(by) = scene.nearest(&look, not_its_own) else { return };
    let room = (by.at - size.from) * sense;
    let spare = room - needed;
    let finding = if spare < -TOUCH_MM {
        let text = match by.part {
            None => format!("The card is {} {} for {}.", words::short(-spare), size.too, by.name),
            Some(_) => format!("The card is {} {}: {} is in its way.", words::short(-spare), size.too, by.name),
        };
        size.rule.blocks(text).with_mm(room, needed)
    } else if spare < CARD_AIR.get() - TOUCH_MM {
        size.rule
            .caution(format!(
                "Only {} between the card and {}; {} lets it down without scraping.",
                words::mm(spare.max(0.0)),
                by.name,
                words::limit(CARD_AIR.get())
            ))
            .with_mm(room, needed + CARD_AIR.get())
            .with_source(CARD_AIR.source())
    } else {
        return;
    };
    // What ends the finding altogether, its caution included.
    let remedy = remedy(scene, &by, size, CARD_AIR.get() - spare);
    found.push(finding.with_mends(remedy).with_about([part.id.as_str(), by.id]).with_at(by.point));
}

fn remedy(scene: &Scene, by: &Obstacle, size: &Size, missing: f64) -> Remedy {
    let remedy = Remedy::new().room(scene, by, size.toward, missing);
    let remedy = if scene.keeps(by, size.toward) { (size.other)(remedy, missing) } else { remedy };
    remedy.otherwise("take a smaller card in a case of a given size")
}

fn card_length(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((spec, part)) = card(scene) else { return };
    let from = part.bounds().max[1];
    let other = |remedy: Remedy, missing: f64| {
        remedy.at_most("card.length", spec.length_mm - missing, |length| format!("take a card of {length} or less"))
    };
    let length = Size {
        rule: &CARD_LENGTH,
        toward: Wall::Front,
        too: "too long",
        from,
        // What the shortest card meets, no other card clears.
        start: from - least("card.length"),
        other: &other,
    };
    size(scene, part, &length, found);
}

fn card_height(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((spec, part)) = card(scene) else { return };
    let from = scene.board_top();
    let standard = cards::card_top_above_board(parts::card::table_height(spec.kind)).get();
    let low = cards::card_top_above_board(CardHeight::LowProfile).get();
    let other = |remedy: Remedy, missing: f64| match spec.above_mm - missing {
        above if above >= 0.0 => remedy.at_most("card.above", above, |above| {
            format!("take a card that stands {above} or less above the standard's top edge")
        }),
        above if spec.kind == CardKind::Standard && low - standard <= above => {
            remedy.pick("card.kind", "low-profile", "take a low-profile card")
        }
        _ => remedy,
    };
    let height =
        Size { rule: &CARD_HEIGHT, toward: Wall::Top, too: "too high", from, start: from + standard, other: &other };
    size(scene, part, &height, found);
}

fn card_thickness(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((spec, part)) = card(scene) else { return };
    let from = part.bounds().max[0] - cards::SOLDER_SIDE.get() - cards::CARD_THICKNESS.get();
    let other = |remedy: Remedy, missing: f64| {
        remedy.at_most("card.thickness", parts::card::thickness(spec) - missing, |thickness| {
            format!("take a card of {thickness} thickness or less")
        })
    };
    let thickness = Size {
        rule: &CARD_THICKNESS,
        toward: Wall::Left,
        too: "too thick",
        from,
        start: from - least("card.thickness"),
        other: &other,
    };
    size(scene, part, &thickness, found);
}

/// What of a power plug stands out of its socket, mm: less, and the plug itself does not go in.
const fn plug_itself(plug: CardPlug) -> Sourced<f64> {
    match plug {
        CardPlug::SixPin | CardPlug::EightPin => POWER_PLUG_STANDS_OUT,
        CardPlug::SixteenPin => {
            Sourced::new(10.0, Source::common_practice("Workshop custom", "16-pin plug of 10 to 15 mm"))
        }
    }
}

fn card_plug_room(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((spec, part)) = card(scene) else { return };
    for keep in &part.keep_clear {
        let Some(room) = scene.zone_room(part, &keep.zone, PLUG_SHARE) else { continue };
        let missing = room.wanted - room.free;
        let remedy =
            Remedy::new().room(scene, &room.by, room.toward, missing).otherwise("take a card whose plug is elsewhere");
        let say = PlugWords {
            stuck: "The card's power plug does not go in",
            alone: "the plug alone stands out",
            has: "The card's power cable has",
            wants: "plug and bend want",
        };
        found.push(
            short_of_room(&CARD_PLUG_ROOM, &room, plug_itself(spec.plug), keep.source, &say)
                .with_mends(remedy)
                .with_about([part.id.as_str(), room.by.id]),
        );
    }
}

fn card_air(scene: &Scene, found: &mut Vec<Finding>) {
    let Some((spec, part)) = card(scene) else { return };
    if spec.slots < 2 {
        return;
    }
    let bounds = part.bounds();
    let start = bounds.min[0];
    let look = Look { section: bounds, toward: Wall::Left, start, straddle: false, share: 0.25 };
    let Some(by) = scene.nearest(&look, not_its_own) else { return };
    let free = start - by.at;
    let vented = by.part.is_none() && has_vent(scene, Wall::Left, &bounds);
    let (needed, source) = if vented {
        (AIR_BEFORE_VENT.get(), AIR_BEFORE_VENT.source())
    } else {
        (GRILLE_GAP.get()[0], GRILLE_GAP.source())
    };
    if free < -TOUCH_MM || free >= needed - TOUCH_MM {
        return;
    }
    let before = if vented { "with vents" } else { "without vents there" };
    let what = if by.part.is_none() { format!("{} {before}", by.name) } else { by.name.clone() };
    let with_vent = !vented && by.part.is_none() && free >= AIR_BEFORE_VENT.get() - TOUCH_MM;
    let vent = with_vent.then(|| "cut a vent beside the card".to_owned());
    let remedy = Remedy::new().room(scene, &by, Wall::Left, needed - free).say_if(vent);
    // A thinner card has the room that it leaves.
    let remedy = if scene.keeps(&by, Wall::Left) {
        let most = parts::card::thickness(spec) - (needed - free);
        remedy.at_most("card.thickness", most, |thickness| format!("take a card of {thickness} thickness or less"))
    } else {
        remedy
    };
    found.push(
        CARD_AIR_RULE
            .caution(format!(
                "The card's fans have {} to {what}; they want {} of air.",
                words::mm(free.max(0.0)),
                words::limit(needed)
            ))
            .with_mm(free, needed)
            .with_mends(remedy.otherwise("take a thinner card"))
            .with_about([part.id.as_str(), by.id])
            .with_at(by.point)
            .with_source(source),
    );
}

/// Whether a panel has vent openings in front of a box.
pub(super) fn has_vent(scene: &Scene, wall: Wall, solid: &crate::solid::Aabb) -> bool {
    scene.sheet(wall).is_some_and(|sheet| {
        let shadow = sheet.shadow(solid);
        sheet.shapes.iter().any(|shape| {
            let meet = shape.bounds.intersect(shadow);
            shape.feature.kind == FeatureKind::Vent && meet.width() > 0.0 && meet.height() > 0.0
        })
    })
}
