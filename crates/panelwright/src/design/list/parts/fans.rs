//! Choices about the fans.

use super::super::{Entry, FANS, MAKER, MEMORY, published};
use crate::design::choice::{Choice, Group};

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
