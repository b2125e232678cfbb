//! Choices about the power supply, its face, and its plug.

use super::super::{Entry, MAKER, MEMORY, PRACTICE, published};
use crate::design::choice::{Choice, Group, Kind, Value};

pub(super) fn list() -> Vec<Choice> {
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
                ("upper", "the long side by the level holes"),
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
