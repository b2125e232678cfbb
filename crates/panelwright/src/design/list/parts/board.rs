//! Choices about the main board, its standoffs, memory and processor.

use super::super::{Entry, MAKER, MEMORY, published};
use crate::design::choice::{Choice, Group};

pub(super) fn list() -> Vec<Choice> {
    let group = Group::Board;
    vec![
        Entry::pick(
            10,
            "board.form",
            group,
            "Board",
            &[
                ("mini-itx", "Mini-ITX"),
                ("mini-dtx", "Mini-DTX"),
                ("dtx", "DTX"),
                ("flexatx", "FlexATX"),
                ("microatx", "microATX"),
                ("atx", "ATX"),
            ],
        )
        .help(
            "The size and the hole pattern of the main board.",
            published("ATX Specification 2.2, microATX 1.2, Mini-ITX Addendum 1.1", "outline and hole figures"),
        )
        .done(),
        Entry::open_mm(11, "board.depth", group, "Depth of the board, measured", [120.0, 345.0], 0.1)
            .help("From the rear edge to the front edge. Many boards are shallower than their standard allows.", MAKER)
            .done(),
        Entry::mm(12, "board.standoff", group, "Standoff height", [6.35, 60.0], 0.05, 25.0)
            .presets(&[("least, 6.35", 6.35), ("10", 10.0), ("15", 15.0), ("drives below, 25", 25.0), ("30", 30.0)])
            .help(
                "From the floor to the underside of the board. 6.35 at least; 25 leaves room for a 2.5 in drive.",
                published("ATX Specification 2.2", "section 3.4.2 for the least; 25 is common practice"),
            )
            .done(),
        Entry::mm(13, "board.memory_height", group, "Height of the memory", [18.0, 80.0], 0.1, 34.0)
            .presets(&[("plain, 34", 34.0), ("with spreader, 45", 45.0), ("tall, 56", 56.0)])
            .help("Above the top face of the board, seated.", MEMORY)
            .done(),
        Entry::pick(
            14,
            "board.memory_side",
            group,
            "Memory stands",
            &[("right", "right of the processor, front to back"), ("front", "in front of the processor, across")],
        )
        .help("As seen with the rear connectors at the back.", MEMORY)
        .done(),
        Entry::open_mm(
            15,
            "board.socket_from_right",
            group,
            "Processor centre from the right edge",
            [30.0, 200.0],
            0.1,
        )
        .presets(&[("79", 79.0), ("85", 85.0)])
        .help(
            "Measure from the board's right edge (seen with the rear connectors at the back). No standard fixes it.",
            MEMORY,
        )
        .done(),
        Entry::open_mm(16, "board.socket_from_rear", group, "Processor centre from the rear edge", [30.0, 200.0], 0.1)
            .presets(&[("75", 75.0), ("85", 85.0)])
            .help("Measure from the edge with the rear connectors. No standard fixes it.", MEMORY)
            .done(),
        Entry::switch(17, "board.m2_below", group, "M.2 card on the underside", false)
            .help("Takes room under the board where a drive could lie.", MEMORY)
            .done(),
        Entry::pick(
            18,
            "board.io_opening",
            group,
            "Rear connector opening",
            &[("open", "left open"), ("rebate", "with a rebate for the shield")],
        )
        .help(
            "A shield clips to sheet of 0.94 to 1.32 mm only. Leave the opening open, or rout its border down to that.",
            published("ATX Specification 2.2", "figure 4"),
        )
        .done(),
    ]
}
