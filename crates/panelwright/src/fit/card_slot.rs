//! The slot a card is said to be in.

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use crate::dimensions::boards::{BoardForm, slot_count};
use crate::dimensions::source::{Confidence, Source};
use crate::parts::PartKind;
use crate::parts::board::table_form;

pub(super) const CARD_SLOT: Rule = Rule {
    name: "card-slot",
    what: "The board has the slot that the card is to go into.",
    source: Source::published("ATX Specification 2.2", "section 3.3.1"),
    look: card_slot,
};

fn card_slot(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = scene.case.spec;
    let (Some(card), Some(part)) = (spec.card.as_ref(), scene.first(PartKind::Card)) else { return };
    let form = table_form(spec.board.form);
    let slots = slot_count(form);
    let (asked, has) = (u32::from(card.slot) + 1, slots.get());
    if asked <= has {
        return;
    }
    // Where texts disagree about a form, the maker may know better.
    let doubtful = slots.source().confidence == Confidence::FromMemory;
    let severity = if doubtful { Severity::Caution } else { Severity::Blocks };
    let (count, which) = match has {
        1 => ("one slot".to_owned(), "slot 1".to_owned()),
        _ => (format!("{has} slots"), format!("a slot from 1 to {has}")),
    };
    found.push(
        CARD_SLOT
            .finds(
                severity,
                format!(
                    "The card is to go into slot {asked}, but a {} board has {count}. It is shown in slot {has}.",
                    BoardForm::label(form)
                ),
            )
            .with_counts(asked as usize, has as usize)
            .with_remedy(format!("Choose {which}, or a board with more slots."))
            .with_about([part.id.as_str(), "board"])
            .with_at(part.bounds().centre())
            .with_source(slots.source()),
    );
}
