//! Choices about the drives.

use super::super::{DRIVES, Entry, MAKER, MEMORY, PRACTICE, published};
use crate::design::choice::{Choice, Group};

pub(super) fn list() -> Vec<Choice> {
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
