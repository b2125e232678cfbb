//! Choices about what goes inside: board, card, cooler, supply, drives, fans, button and connectors.

mod board;
mod card;
mod cooler;
mod drives;
mod fans;
mod front;
mod supply;

use super::{Entry, MAKER};
use crate::design::choice::{Choice, Group, Kind, Value};

pub(super) fn list() -> Vec<Choice> {
    let mut list = vec![
        Entry::new(
            1,
            "design.title",
            Group::Design,
            "Name of the design",
            Kind::Text { max_chars: 60 },
            Value::Text(String::new()),
        )
        .help("Printed on every template and put into every file.", MAKER)
        .done(),
    ];
    list.extend(board::list());
    list.extend(card::list());
    list.extend(cooler::list());
    list.extend(supply::list());
    list.extend(drives::list());
    list.extend(fans::list());
    list.extend(front::list());
    list
}
