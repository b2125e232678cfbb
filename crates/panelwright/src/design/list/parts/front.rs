//! Choices about the power button and the connectors.

use super::super::{Entry, MAKER, MEMORY, published};
use crate::design::choice::{Choice, Group};

pub(super) fn list() -> Vec<Choice> {
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
