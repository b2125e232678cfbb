//! Choices about what goes inside: board, card, cooler, supply, drives, fans, button and connectors.

use super::{DRIVES, Entry, FANS, MAKER, MEMORY, PRACTICE, published};
use crate::design::choice::{Choice, Group, Kind, Value};

const FAN_SIZES: &[(&str, &str)] = &[
    ("none", "none"),
    ("40", "40 mm"),
    ("50", "50 mm"),
    ("60", "60 mm"),
    ("70", "70 mm"),
    ("80", "80 mm"),
    ("92", "92 mm"),
    ("120", "120 mm"),
    ("140", "140 mm"),
    ("200", "200 mm"),
];

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
    list.extend(board());
    list.extend(card());
    list.extend(cooler());
    list.extend(supply());
    list.extend(drives());
    list.extend(fans());
    list.extend(front());
    list
}

fn board() -> Vec<Choice> {
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

fn card() -> Vec<Choice> {
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

fn cooler() -> Vec<Choice> {
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

fn supply() -> Vec<Choice> {
    let group = Group::Supply;
    let brick = &["brick"];
    vec![
        Entry::pick(
            70,
            "supply.kind",
            group,
            "Supply",
            &[
                ("full-size", "full-size (150 × 86)"),
                ("sfx", "SFX"),
                ("sfx-l", "SFX-L"),
                ("tfx", "TFX"),
                ("flex", "Flex"),
                ("brick", "external brick"),
            ],
        )
        .help("The power supply that turns mains into the board's voltages.", published("published size lists", "face and depth by type"))
        .done(),
        Entry::open_mm(71, "supply.depth", group, "Depth of the supply", [80.0, 260.0], 0.1)
            .presets(&[("100", 100.0), ("130", 130.0), ("140", 140.0), ("150", 150.0), ("160", 160.0), ("180", 180.0)])
            .help("From the face with the mains inlet to the inner end, without plugs. Open: the type's usual depth.", MEMORY)
            .unless("supply.kind", brick)
            .done(),
        Entry::open_mm(72, "supply.face_width", group, "Width of its face, measured", [30.0, 200.0], 0.1)
            .help("The face with the mains inlet, its long side. Open: the type's published width.", MAKER)
            .unless("supply.kind", brick)
            .done(),
        Entry::open_mm(73, "supply.face_height", group, "Height of its face, measured", [30.0, 120.0], 0.1)
            .help("The face with the mains inlet, its short side. Open: the type's published height.", MAKER)
            .unless("supply.kind", brick)
            .done(),
        Entry::pick(
            74,
            "supply.pose",
            group,
            "The supply stands",
            &[
                ("auto", "where the case stays smallest"),
                ("end-front", "on end, in front of the board"),
                ("end-beside", "on end, right of the board"),
                ("back-flat", "at the back, lying flat"),
                ("back-tall", "at the back, on its side"),
            ],
        )
        .help("On end, the mains inlet faces the floor: right-angle plug and tall feet.", PRACTICE)
        .unless("supply.kind", brick)
        .done(),
        Entry::switch(75, "supply.turned", group, "Turned by half a turn", false)
            .help("Turns the supply about the middle of its face; its holes, inlet and fan go with it.", PRACTICE)
            .unless("supply.kind", brick)
            .done(),
        Entry::pick(
            76,
            "supply.fan_side",
            group,
            "Its large fan is on",
            &[
                ("unknown", "not looked up yet"),
                ("upper", "the long side next to the two level holes"),
                ("lower", "the other long side"),
                ("none", "no large fan: air goes end to end"),
            ],
        )
        .help("Look at your supply, face towards you, the pair of level holes on top.", MEMORY)
        .unless("supply.kind", brick)
        .done(),
        Entry::new(
            77,
            "supply.holes",
            group,
            "Holes in its face, measured",
            Kind::Points { max: 8, limit_mm: 200.0 },
            Value::Points(Vec::new()),
        )
        .help(
            "Each centre from the lower left corner of the face, seen from outside. Only the full-size pattern is published.",
            MAKER,
        )
        .unless("supply.kind", brick)
        .done(),
        Entry::new(
            81,
            "supply.opening",
            group,
            "Opening for its inlet and air, measured",
            Kind::Points { max: 2, limit_mm: 200.0 },
            Value::Points(Vec::new()),
        )
        .help(
            "Two opposite corners, from the lower left corner of the face as its holes. None: as large as the screws leave \
             sheet around them; without screws nothing is cut.",
            MAKER,
        )
        .unless("supply.kind", brick)
        .done(),
        Entry::mm(78, "supply.cable_room", group, "Room for cables at its inner end", [0.0, 120.0], 0.5, 45.0)
            .presets(&[("tight, 30", 30.0), ("45", 45.0), ("modular, 60", 60.0)])
            .help("Fixed leads need about 30, modular plugs up to 60.", MEMORY)
            .unless("supply.kind", brick)
            .done(),
        Entry::pick(
            79,
            "supply.plug",
            group,
            "Mains plug",
            &[("right-angle", "right-angle"), ("straight", "straight")],
        )
        .help("The plug needs its room outside the wall; below the floor only a right-angle one is low enough.", MEMORY)
        .unless("supply.kind", brick)
        .done(),
        Entry::open_mm(80, "supply.jack_hole", group, "Hole for the brick's jack", [4.0, 30.0], 0.1)
            .presets(&[("M8, 8", 8.0), ("M11, 11.2", 11.2), ("M12, 12.2", 12.2)])
            .help("Measure the thread of the jack. Open: nothing is drilled.", MEMORY)
            .when("supply.kind", brick)
            .done(),
    ]
}

fn drives() -> Vec<Choice> {
    let group = Group::Drives;
    let mut list = Vec::new();
    for index in 1..=DRIVES {
        let code = 100 + 32 * (index as u16 - 1);
        let key = |name: &str| format!("drive{index}.{name}");
        let kind = key("kind");
        let none = &["none"];
        let first = if index == 1 { "2.5" } else { "none" };
        list.extend([
            Entry::pick(
                code,
                &kind,
                group,
                &format!("Drive {index}"),
                &[("none", "none"), ("2.5", "2.5 in"), ("3.5", "3.5 in")],
            )
            .default_pick(first)
            .help(
                "Width, length and hole pattern follow from it.",
                published("SFF-8201 and SFF-8301", "dimension tables"),
            )
            .done(),
            Entry::open_mm(code + 1, &key("height"), group, "Its height", [4.8, 45.0], 0.1)
                .presets(&[
                    ("5", 5.0),
                    ("7", 7.0),
                    ("9.5", 9.5),
                    ("12.7", 12.7),
                    ("15", 15.0),
                    ("19.05", 19.05),
                    ("26.1", 26.1),
                    ("42", 42.0),
                ])
                .help(
                    "Open: 7 mm for a 2.5 in drive, 26.1 mm for a 3.5 in drive.",
                    published("SFF-8201 and SFF-8301", "height tables"),
                )
                .unless(&kind, none)
                .done(),
            Entry::pick(
                code + 2,
                &key("place"),
                group,
                "It lies",
                &[("below", "below the board"), ("floor", "on the floor"), ("back", "on the back")],
            )
            .default_pick(if index <= 2 { "below" } else { "floor" })
            .help("Up to two 2.5 in drives fit below a board on 25 mm standoffs.", PRACTICE)
            .unless(&kind, none)
            .done(),
            Entry::count(code + 3, &key("washers"), group, "Washers under it", [0.0, 12.0], 2.0)
                .help("At least two, so that its plugs are not bent against the sheet.", PRACTICE)
                .unless(&kind, none)
                .done(),
            Entry::pick(
                code + 4,
                &key("plug"),
                group,
                "Its plugs are",
                &[("straight", "straight"), ("right-angle", "right-angle")],
            )
            .help("Decides the room behind its connector.", MEMORY)
            .unless(&kind, none)
            .done(),
            Entry::open_mm(code + 5, &key("across"), group, "Its left edge from the left wall", [0.0, 600.0], 0.1)
                .help(
                    "Inside the case, seen from the front (on the back: seen from inside). Open: the first free place.",
                    MAKER,
                )
                .unless(&kind, none)
                .done(),
            Entry::open_mm(
                code + 6,
                &key("along"),
                group,
                "Its near edge from the front wall or the floor",
                [0.0, 600.0],
                0.1,
            )
            .help(
                "On the floor: from the front wall inside. On the back: from the floor up. Open: the first free place.",
                MAKER,
            )
            .unless(&kind, none)
            .done(),
        ]);
    }
    list
}

fn fans() -> Vec<Choice> {
    let group = Group::Fans;
    let mut list = Vec::new();
    for index in 1..=FANS {
        let code = 320 + 32 * (index as u16 - 1);
        let key = |name: &str| format!("fan{index}.{name}");
        let size = key("size");
        let none = &["none"];
        list.extend([
            Entry::pick(code, &size, group, &format!("Fan {index}"), FAN_SIZES)
                .default_pick(if index == 1 { "120" } else { "none" })
                .help(
                    "Frame size. Holes follow from it; those of a 200 mm fan must be measured.",
                    published("published fan drawings", "hole spacing by frame"),
                )
                .done(),
            Entry::pick(
                code + 1,
                &key("wall"),
                group,
                "On the",
                &[
                    ("back", "back"),
                    ("front", "front"),
                    ("left", "left"),
                    ("right", "right"),
                    ("top", "top"),
                    ("floor", "floor"),
                ],
            )
            .help("The panel it is screwed to, inside.", MAKER)
            .unless(&size, none)
            .done(),
            Entry::mm(code + 2, &key("thickness"), group, "Its thickness", [6.0, 60.0], 0.1, 25.0)
                .presets(&[("10", 10.0), ("15", 15.0), ("20", 20.0), ("25", 25.0), ("38", 38.0)])
                .help("Depth of the frame.", MEMORY)
                .unless(&size, none)
                .done(),
            Entry::pick(code + 3, &key("air"), group, "It blows", &[("out", "out"), ("in", "in")])
                .help("Into the case or out of it.", MAKER)
                .unless(&size, none)
                .done(),
            Entry::open_mm(code + 4, &key("across"), group, "Its centre from the panel's left edge", [0.0, 700.0], 0.1)
                .help("Seen from outside. Open: a clear place near the middle.", MAKER)
                .unless(&size, none)
                .done(),
            Entry::open_mm(code + 5, &key("up"), group, "Its centre from the panel's lower edge", [0.0, 700.0], 0.1)
                .help(
                    "Seen from outside (top and floor: from the front edge). Open: a clear place near the middle.",
                    MAKER,
                )
                .unless(&size, none)
                .done(),
            Entry::open_mm(code + 6, &key("spacing"), group, "Its hole spacing, measured", [20.0, 190.0], 0.1)
                .presets(&[("105", 105.0), ("124.5", 124.5), ("154", 154.0), ("170", 170.0)])
                .help("Between neighbouring holes. Open: the published spacing of its frame size.", MAKER)
                .unless(&size, none)
                .done(),
        ]);
    }
    list
}

fn front() -> Vec<Choice> {
    let group = Group::Front;
    let place: &[(&str, &str)] = &[("front", "front"), ("top", "top"), ("none", "none")];
    let none = &["none"];
    vec![
        Entry::pick(540, "button.wall", group, "Power button on the", place)
            .help("A momentary button that starts and stops the computer.", MAKER)
            .done(),
        Entry::pick(
            541,
            "button.size",
            group,
            "Its mounting size",
            &[("12", "12 mm"), ("16", "16 mm"), ("19", "19 mm"), ("22", "22 mm"), ("30", "30 mm")],
        )
        .default_pick("16")
        .help("The nominal hole of the button.", published("panel switch data sheets", "mounting hole"))
        .unless("button.wall", none)
        .done(),
        Entry::mm(542, "button.depth", group, "Its depth behind the panel", [8.0, 80.0], 0.1, 28.0)
            .help("With its leads bent away.", MEMORY)
            .unless("button.wall", none)
            .done(),
        Entry::mm(543, "button.grip", group, "Thickest sheet it clamps", [1.0, 20.0], 0.1, 3.2)
            .help(
                "Many buttons clamp 3.2 mm at most; thicker sheet gets a counterbore on the inside.",
                published("panel switch data sheets", "16 mm series, panel thickness"),
            )
            .unless("button.wall", none)
            .done(),
        Entry::open_mm(544, "button.across", group, "Its centre from the panel's left edge", [0.0, 700.0], 0.1)
            .help("Seen from outside. Open: a clear place.", MAKER)
            .unless("button.wall", none)
            .done(),
        Entry::open_mm(545, "button.up", group, "Its centre from the panel's lower edge", [0.0, 700.0], 0.1)
            .help("Seen from outside (top: from the front edge). Open: a clear place.", MAKER)
            .unless("button.wall", none)
            .done(),
        Entry::pick(550, "ports.wall", group, "Connectors on the", place)
            .default_pick("none")
            .help("Lead-in connectors for the user of the computer.", MAKER)
            .done(),
        Entry::count(551, "ports.usb_a", group, "USB-A sockets", [0.0, 4.0], 2.0)
            .help("Each a window for the plug and two screw holes.", MEMORY)
            .unless("ports.wall", none)
            .done(),
        Entry::count(552, "ports.usb_c", group, "USB-C sockets", [0.0, 4.0], 1.0)
            .help(
                "Each a window the size of the plug's body.",
                published("USB-C receptacle drawings", "mouth and shell, second hand"),
            )
            .unless("ports.wall", none)
            .done(),
        Entry::count(553, "ports.audio", group, "Audio jacks", [0.0, 2.0], 0.0)
            .help("3.5 mm, threaded.", MEMORY)
            .unless("ports.wall", none)
            .done(),
        Entry::open_mm(554, "ports.across", group, "Middle of the row from the panel's left edge", [0.0, 700.0], 0.1)
            .help("Seen from outside. Open: a clear place.", MAKER)
            .unless("ports.wall", none)
            .done(),
        Entry::open_mm(555, "ports.up", group, "Middle of the row from the panel's lower edge", [0.0, 700.0], 0.1)
            .help("Seen from outside (top: from the front edge). Open: a clear place.", MAKER)
            .unless("ports.wall", none)
            .done(),
    ]
}
