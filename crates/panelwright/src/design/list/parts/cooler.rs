//! Choices about the cooler on the processor.

use super::super::{Entry, MEMORY, PRACTICE};
use crate::design::choice::{Choice, Group};

pub(super) fn list() -> Vec<Choice> {
    let group = Group::Cooler;
    let none = &["none"];
    vec![
        Entry::pick(50, "cooler.kind", group, "Cooler", &[("none", "none"), ("tower", "tower"), ("flat", "flat")])
            .default_pick("tower")
            .help("A tower blows along the board, a flat cooler down on it.", MEMORY)
            .done(),
        Entry::mm(51, "cooler.height", group, "Height of the cooler", [20.0, 200.0], 0.1, 158.0)
            .presets(&[("37", 37.0), ("47", 47.0), ("67", 67.0), ("125", 125.0), ("158", 158.0), ("165", 165.0)])
            .help("Above the processor, as its maker states it.", MEMORY)
            .unless("cooler.kind", none)
            .done(),
        Entry::mm(52, "cooler.width", group, "Width, across the board", [30.0, 180.0], 0.1, 125.0)
            .help("Left to right, seen with the rear connectors at the back.", MEMORY)
            .unless("cooler.kind", none)
            .done(),
        Entry::mm(53, "cooler.depth", group, "Depth, front to back", [30.0, 180.0], 0.1, 80.0)
            .help("With its fan.", MEMORY)
            .unless("cooler.kind", none)
            .done(),
        Entry::mm(54, "cooler.under", group, "Free height under its fins", [0.0, 100.0], 0.1, 42.0)
            .help("Above the top face of the board; the memory may stand under it.", MEMORY)
            .unless("cooler.kind", none)
            .done(),
        Entry::pick(
            55,
            "cooler.air",
            group,
            "Its air goes",
            &[
                ("back", "to the back"),
                ("front", "to the front"),
                ("left", "to the left"),
                ("right", "to the right"),
                ("down", "down on the board"),
                ("up", "up"),
                ("none", "no fan"),
            ],
        )
        .help("A cooler that blows down takes its air from above and needs a gap there.", PRACTICE)
        .unless("cooler.kind", none)
        .done(),
    ]
}
