//! Choices about the case itself: size, sheet, sleeve, hardware, feet, vents, templates.

use super::{Entry, MAKER, MEMORY, PRACTICE, published};
use crate::design::choice::{Choice, Group};

const PAPERS: &[(&str, &str)] =
    &[("a4", "A4"), ("a3", "A3"), ("letter", "Letter"), ("legal", "Legal"), ("tabloid", "Tabloid")];

/// Papers that templates can be printed on: also those of a plotter. Appended only.
const TEMPLATE_PAPERS: &[(&str, &str)] = &[
    ("a4", "A4"),
    ("a3", "A3"),
    ("letter", "Letter"),
    ("legal", "Legal"),
    ("tabloid", "Tabloid"),
    ("a1", "A1, plotter"),
    ("a0", "A0, plotter"),
];

/// Sides of sheets as shops and dealers sell them (trade sizes; 48 and 96 in in the last two).
const SHEET_SIDES: &[(&str, f64)] = &[
    ("405", 405.0),
    ("600", 600.0),
    ("610", 610.0),
    ("1220", 1220.0),
    ("1525", 1525.0),
    ("2050", 2050.0),
    ("2070", 2070.0),
    ("2440", 2440.0),
    ("2800", 2800.0),
    ("48 in, 1219", 1219.0),
    ("96 in, 2438", 2438.0),
];

pub(super) fn list() -> Vec<Choice> {
    let mut list = size();
    list.extend(sheet());
    list.extend(sleeve());
    list.extend(hardware());
    list.extend(feet());
    list.extend(vents());
    list.extend(templates());
    list
}

fn size() -> Vec<Choice> {
    let group = Group::Size;
    let given = &["given"];
    let length = |code, key, label| {
        Entry::mm(code, key, group, label, [80.0, 700.0], 0.5, 300.0)
            .help("Outside, without feet and screw heads.", MAKER)
            .when("size.rule", given)
            .done()
    };
    vec![
        Entry::pick(
            600,
            "size.rule",
            group,
            "The case is",
            &[
                ("paper", "with no panel larger than a paper"),
                ("smallest", "as small as the parts allow"),
                ("given", "this size outside"),
            ],
        )
        .help("Decides the outside size; the parts keep their places.", MAKER)
        .done(),
        Entry::pick(601, "size.paper", group, "No panel larger than", PAPERS)
            .help(
                "A panel of the paper's own size can be cut along the paper.",
                published("ISO 216; ANSI paper sizes", "A4 210 × 297, Letter 215.9 × 279.4"),
            )
            .when("size.rule", &["paper"])
            .done(),
        length(602, "size.width", "Outside width"),
        length(603, "size.depth", "Outside depth"),
        length(604, "size.height", "Outside height"),
    ]
}

fn sheet() -> Vec<Choice> {
    let group = Group::Sheet;
    let layer = |code, key, label, most, help| {
        Entry::mm(code, key, group, label, [0.0, most], 0.01, 0.0).help(help, PRACTICE).done()
    };
    vec![
        Entry::pick(
            620,
            "sheet.material",
            group,
            "Sheet",
            &[
                ("fibreboard", "fibreboard"),
                ("plywood", "plywood"),
                ("acrylic", "acrylic"),
                ("hardboard", "hardboard"),
                ("other", "other sheet"),
            ],
        )
        .help(
            "Decides how much its thickness may vary and which cautions are shown.",
            published("EN 622-1, EN 622-5, ISO 7823", "thickness tolerance"),
        )
        .done(),
        Entry::mm(621, "sheet.nominal", group, "Thickness as sold", [2.0, 18.0], 0.1, 6.0)
            .presets(&[("3", 3.0), ("4", 4.0), ("5", 5.0), ("6", 6.0), ("6.5", 6.5), ("9", 9.0), ("12", 12.0)])
            .help("What the label says.", PRACTICE)
            .done(),
        Entry::open_mm(622, "sheet.measured", group, "Thickness, measured", [1.5, 19.0], 0.01)
            .help(
                "Measure your own sheet in a few places and take the middle. Every panel is worked out from it.",
                PRACTICE,
            )
            .done(),
        Entry::open_mm(623, "sheet.varies", group, "It varies by ±", [0.0, 1.5], 0.01)
            .help(
                "How far your sheet strays from that. Open: what its standard allows.",
                published("EN 622-1", "thickness ±0.2 up to 19 mm"),
            )
            .done(),
        Entry::mm(624, "sheet.cut", group, "You cut to ±", [0.05, 2.0], 0.05, 0.3)
            .presets(&[("machine, 0.2", 0.2), ("filed to the line, 0.3", 0.3), ("sawn, 0.5", 0.5), ("1.2", 1.2)])
            .help(
                "How far a finished edge of hand work strays from its line. Left at 0.3, the usual accuracy of the method \
                 counts, unless you say under Making that this figure is your own.",
                PRACTICE,
            )
            .done(),
        layer(625, "sheet.film_out", "Film on outside faces", 1.0, "Wrap or veneer on the faces seen from outside."),
        layer(626, "sheet.film_in", "Film on inside faces", 1.0, "Film on the faces that slide along the chassis."),
        layer(627, "sheet.paint_out", "Paint on outside faces", 1.0, "A built-up coat is 0.05 to 0.15 mm."),
        layer(628, "sheet.paint_in", "Paint on inside faces", 1.0, "A built-up coat is 0.05 to 0.15 mm."),
        layer(629, "sheet.paint_edges", "Paint on cut edges", 1.0, "Cut edges of the chassis slide along the sleeve."),
        Entry::mm(630, "stock.width", group, "Sheet as bought, width", [100.0, 4000.0], 1.0, 1220.0)
            .presets(SHEET_SIDES)
            .help("A panel larger than the sheet cannot be cut from it.", PRACTICE)
            .done(),
        Entry::mm(631, "stock.height", group, "Sheet as bought, height", [100.0, 4000.0], 1.0, 610.0)
            .presets(SHEET_SIDES)
            .help("A panel larger than the sheet cannot be cut from it.", PRACTICE)
            .done(),
    ]
}

fn sleeve() -> Vec<Choice> {
    let group = Group::Sleeve;
    vec![
        Entry::mm(650, "sleeve.clearance", group, "Running clearance, each side", [0.0, 3.0], 0.05, 0.5)
            .presets(&[("close, 0.3", 0.3), ("easy, 0.5", 0.5), ("loose, 1.0", 1.0)])
            .help(
                "Air between chassis and sleeve on each face that slides, after films and paint. Left at 0.5, what the \
                 making needs counts, unless you say below that this figure is your own.",
                PRACTICE,
            )
            .done(),
        Entry::pick(
            655,
            "sleeve.clearance_by",
            group,
            "That clearance is",
            &[("method", "by the making, or as stated"), ("own", "your own figure")],
        )
        .help(
            "By hand 0.5: front and top are filed to the chassis. With machines as much as their edges are likely to \
             stray, from 0.3, which is close, to 1.0, which is loose.",
            PRACTICE,
        )
        .done(),
        Entry::pick(
            651,
            "sleeve.corners",
            group,
            "Which panels run through",
            &[("sides", "left and right, the others between"), ("face", "front and top, over left and right")],
        )
        .help("Who covers whose edges at the corners; it changes which panels come out largest.", PRACTICE)
        .done(),
        Entry::pick(
            652,
            "sleeve.join",
            group,
            "Its panels are joined by",
            &[("brackets", "corner brackets"), ("glue", "glue")],
        )
        .help("Glued: try the sleeve on before the glue dries.", PRACTICE)
        .done(),
        Entry::pick(653, "sleeve.slide", group, "It comes off", &[("up", "upward"), ("forward", "forward")])
            .help("The straight way on which the sleeve is taken off.", PRACTICE)
            .done(),
        Entry::switch(654, "sleeve.side_screws", group, "Also held at the sides", false)
            .help("Two more screws, through left and right; they show.", PRACTICE)
            .done(),
    ]
}

fn hardware() -> Vec<Choice> {
    let group = Group::Hardware;
    vec![
        Entry::pick(670, "hardware.thread", group, "Screws", &[("m3", "M3"), ("m4", "M4")])
            .help("For brackets and captive nuts.", published("ISO 273", "clearance holes"))
            .done(),
        Entry::pick(
            671,
            "hardware.fit",
            group,
            "Holes are",
            &[("fine", "fine"), ("medium", "medium"), ("coarse", "coarse")],
        )
        .default_pick("medium")
        .help(
            "How much larger than the screw the holes are drilled.",
            published("ISO 273", "series fine, medium, coarse"),
        )
        .done(),
        Entry::mm(672, "bracket.leg", group, "Bracket: length of each leg", [8.0, 40.0], 0.1, 20.0)
            .help("From the outside of the corner to the end of a leg.", MEMORY)
            .done(),
        Entry::mm(673, "bracket.width", group, "Bracket: width", [6.0, 40.0], 0.1, 15.0)
            .help("Measure yours.", MEMORY)
            .done(),
        Entry::mm(674, "bracket.thickness", group, "Bracket: thickness", [0.5, 5.0], 0.1, 1.5)
            .help("Measure yours.", MEMORY)
            .done(),
        Entry::mm(675, "bracket.hole", group, "Bracket: hole from the corner", [4.0, 35.0], 0.1, 13.0)
            .help("From the outside of the corner to the centre of the hole in either leg.", MEMORY)
            .done(),
        Entry::mm(676, "captive.leg", group, "Captive-nut bracket: length of each leg", [8.0, 40.0], 0.1, 16.0)
            .help("The bracket that holds the sleeve; a nut is fixed in one leg.", MEMORY)
            .done(),
        Entry::mm(677, "captive.width", group, "Captive-nut bracket: width", [6.0, 40.0], 0.1, 12.0)
            .help("Measure yours.", MEMORY)
            .done(),
        Entry::mm(678, "captive.thickness", group, "Captive-nut bracket: thickness", [0.5, 5.0], 0.1, 1.5)
            .help("Measure yours.", MEMORY)
            .done(),
        Entry::mm(679, "captive.hole", group, "Captive-nut bracket: hole from the corner", [4.0, 35.0], 0.1, 9.0)
            .help("From the outside of the corner to the centre of the nut.", MEMORY)
            .done(),
        Entry::pick(
            680,
            "bracket.screws",
            group,
            "Sleeve brackets are screwed",
            &[("through", "through the panel, with nuts"), ("inside", "from inside, with short screws")],
        )
        .help("Short screws do not show. They hold less and must not come through the face.", PRACTICE)
        .done(),
        Entry::open_mm(681, "bracket.short_screw", group, "Length of the short screws", [2.0, 30.0], 0.5)
            .presets(&[("6", 6.0), ("8", 8.0), ("10", 10.0)])
            .help("Open: the longest sold that stays 1 mm inside the face.", PRACTICE)
            .when("bracket.screws", &["inside"])
            .done(),
    ]
}

fn feet() -> Vec<Choice> {
    let group = Group::Feet;
    let none = &["none"];
    vec![
        Entry::pick(
            700,
            "feet.kind",
            group,
            "Feet",
            &[("bolts", "M6 bolts through the floor"), ("pads", "pads"), ("spikes", "M6 spikes"), ("none", "none")],
        )
        .help(
            "Bolts set the height; pads are short: screwed, or stuck on where they are too low for a screw.",
            PRACTICE,
        )
        .done(),
        Entry::mm(701, "feet.height", group, "Their height", [2.0, 80.0], 0.5, 40.0)
            .presets(&[("pads, 10", 10.0), ("25", 25.0), ("inlet below, 40", 40.0)])
            .help("Free height under the floor.", PRACTICE)
            .unless("feet.kind", none)
            .done(),
        Entry::mm(702, "feet.inset", group, "Their centre from the floor's edges", [6.0, 120.0], 0.5, 18.0)
            .help("Further out stands steadier.", PRACTICE)
            .unless("feet.kind", none)
            .done(),
    ]
}

fn vents() -> Vec<Choice> {
    let group = Group::Vents;
    let mut list = Vec::new();
    let kinds: [(&str, &str, &str, u16); 4] = [
        ("vent_card", "Vent beside the card", "slots", 720),
        ("vent_supply", "Vent before the supply", "slots", 740),
        ("vent_cooler", "Vent before the cooler", "slots", 760),
        ("vent_extra", "One more vent", "none", 780),
    ];
    for (name, label, first, code) in kinds {
        let key = |field: &str| format!("{name}.{field}");
        let pattern = key("pattern");
        let none = &["none"];
        list.extend([
            Entry::pick(
                code,
                &pattern,
                group,
                label,
                &[("none", "none"), ("slots", "slots"), ("rounds", "staggered rounds")],
            )
            .default_pick(first)
            .help("Openings for air, with a web between them that is never thinner than you say.", PRACTICE)
            .done(),
            Entry::pick(
                code + 1,
                &key("panel"),
                group,
                "On the",
                &[
                    ("auto", "panel next to it"),
                    ("left", "left"),
                    ("right", "right"),
                    ("front", "front"),
                    ("top", "top"),
                    ("back", "back"),
                    ("floor", "floor"),
                ],
            )
            .help("The panel the vent is cut in.", MAKER)
            .unless(&pattern, none)
            .done(),
            Entry::open_mm(code + 2, &key("across"), group, "Middle from the panel's left edge", [0.0, 700.0], 0.1)
                .help("Seen from outside. Open: in front of what breathes there.", MAKER)
                .unless(&pattern, none)
                .done(),
            Entry::open_mm(code + 3, &key("up"), group, "Middle from the panel's lower edge", [0.0, 700.0], 0.1)
                .help(
                    "Seen from outside (top and floor: from the front edge). Open: in front of what breathes there.",
                    MAKER,
                )
                .unless(&pattern, none)
                .done(),
            Entry::open_mm(code + 4, &key("width"), group, "Width of the region", [10.0, 600.0], 0.5)
                .help("Open: the size of what breathes there.", MAKER)
                .unless(&pattern, none)
                .done(),
            Entry::open_mm(code + 5, &key("height"), group, "Height of the region", [10.0, 600.0], 0.5)
                .help("Open: the size of what breathes there.", MAKER)
                .unless(&pattern, none)
                .done(),
            Entry::mm(code + 6, &key("size"), group, "Width of a slot, or a round's diameter", [2.0, 30.0], 0.1, 6.0)
                .help("A drill's diameter is the easiest: drill the ends, saw between.", PRACTICE)
                .unless(&pattern, none)
                .done(),
            Entry::mm(code + 7, &key("web"), group, "Web between openings, at least", [1.0, 30.0], 0.1, 6.0)
                .help("The sheet's own thickness or more is safe in fibreboard; 2 mm is the least.", PRACTICE)
                .unless(&pattern, none)
                .done(),
        ]);
    }
    list
}

fn templates() -> Vec<Choice> {
    let group = Group::Templates;
    vec![
        Entry::pick(800, "template.paper", group, "Print on", TEMPLATE_PAPERS)
            .help(
                "The paper in your printer.",
                published("ISO 216; ANSI paper sizes", "A4 210 × 297, Letter 215.9 × 279.4"),
            )
            .done(),
        Entry::mm(801, "template.margin", group, "Your printer leaves a margin of", [3.0, 25.0], 0.5, 10.0)
            .presets(&[("6", 6.0), ("10", 10.0), ("15", 15.0)])
            .help("Most printers cannot print the outer 3 to 6 mm, some 12 to 15 mm at one end.", PRACTICE)
            .done(),
        Entry::pick(
            802,
            "template.full",
            group,
            "A panel of the paper's own size",
            &[("ticks", "one page, corner and edge ticks"), ("tiles", "on several pages")],
        )
        .help("One page is placed by its printed centre lines, never by the edge of the paper.", PRACTICE)
        .done(),
        Entry::mm(803, "template.overlap", group, "Pages overlap by", [5.0, 30.0], 1.0, 10.0)
            .help("Where a panel needs several pages.", PRACTICE)
            .done(),
    ]
}
