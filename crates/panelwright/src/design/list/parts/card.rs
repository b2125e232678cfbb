//! Choices about the card, its plug, and how it is held.

use super::super::{Entry, PRACTICE, published};
use crate::design::choice::{Choice, Group};

pub(super) fn list() -> Vec<Choice> {
    let group = Group::Card;
    let cem = |place| published("PCI Express Card Electromechanical Specification 3.0", place);
    let none = &["none"];
    vec![
        Entry::pick(
            30,
            "card.kind",
            group,
            "Card",
            &[("none", "no card"), ("low-profile", "low profile"), ("standard", "standard height")],
        )
        .default_pick("standard")
        .help("The height of its bracket decides window, tab and tongue.", cem("figures 9-5 and 9-9"))
        .done(),
        Entry::mm(31, "card.length", group, "Length of the card", [80.0, 400.0], 0.1, 267.0)
            .presets(&[("half, 167.65", 167.65), ("241.3", 241.3), ("267", 267.0), ("full, 312", 312.0)])
            .help("From the bracket end of the circuit board to the far end, cooler and all.", cem("figure 9-2"))
            .unless("card.kind", none)
            .done(),
        Entry::mm(32, "card.above", group, "Height above the standard top edge", [0.0, 80.0], 0.1, 0.0)
            .presets(&[("none", 0.0), ("10", 10.0), ("25", 25.0)])
            .help("How far the card or its cooler stands above the standard's top edge.", cem("table 9-1"))
            .unless("card.kind", none)
            .done(),
        Entry::count(33, "card.slots", group, "Slots it takes", [1.0, 4.0], 2.0)
            .help("Width of the bracket in slots.", cem("figures 9-1, 9-11 and 9-12"))
            .unless("card.kind", none)
            .done(),
        Entry::open_mm(34, "card.thickness", group, "Thickness, measured", [5.0, 120.0], 0.1)
            .help(
                "From the component face of the circuit board to the outside of the cooler; open: the standard's limit.",
                cem("figures 9-1, 9-11 and 9-12"),
            )
            .unless("card.kind", none)
            .done(),
        Entry::count(35, "card.slot", group, "In slot", [1.0, 7.0], 1.0)
            .help("Counted from the processor.", published("ATX Specification 2.2", "figure 3"))
            .unless("card.kind", none)
            .done(),
        Entry::pick(36, "card.plug_at", group, "Power plug", &[("none", "none"), ("top", "on top"), ("end", "at the end")])
            .default_pick("top")
            .help("Where the card takes its power.", cem("section 1.7 and table 8-2"))
            .unless("card.kind", none)
            .done(),
        Entry::pick(
            37,
            "card.plug",
            group,
            "Kind of plug",
            &[("6-pin", "6-pin"), ("8-pin", "8-pin"), ("16-pin", "16-pin")],
        )
        .default_pick("8-pin")
        .help("Decides the room for plug and cable bend.", cem("figures 8-6 and 8-8"))
        .unless("card.plug_at", none)
        .done(),
        Entry::pick(
            38,
            "card.window",
            group,
            "Window in the back",
            &[("edge", "run out to the top edge"), ("closed", "closed above the tab")],
        )
        .help("The card's tab reaches outward; a window closed too low stops the card on its way down.", PRACTICE)
        .unless("card.kind", none)
        .done(),
        Entry::mm(39, "card.headroom", group, "Room above the tab in a closed window", [0.0, 60.0], 0.1, 14.0)
            .help("The card is lifted this far, moved back, and let down into its slot.", PRACTICE)
            .when("card.window", &["closed"])
            .done(),
        Entry::pick(
            40,
            "card.hold",
            group,
            "The tab is held by",
            &[("shelf", "a screw shelf"), ("tie", "a tie through two holes"), ("none", "nothing")],
        )
        .help("A card without a hold at its top leans out of its slot.", PRACTICE)
        .unless("card.kind", none)
        .done(),
    ]
}
