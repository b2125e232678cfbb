//! Choices about the making: method and tools, joints, stock, printer, prices.

use super::{Entry, MAKER, MEMORY, PRACTICE, published};
use crate::design::choice::{Choice, Group, Unit};

/// Panels that may be made by a method of their own, with their codes.
const METHOD_OF: [(&str, &str, u16); 6] = [
    ("floor", "Floor", 831),
    ("back", "Back", 832),
    ("left", "Left panel", 833),
    ("right", "Right panel", 834),
    ("front", "Front", 835),
    ("top", "Top", 836),
];

/// A corner where two panels are fixed to each other: name, words, and the two panels as options.
type Corner = (&'static str, &'static str, [(&'static str, &'static str); 2]);

const CORNERS: [Corner; 6] = [
    ("left_front", "Left to front", [("left", "left"), ("front", "front")]),
    ("right_front", "Right to front", [("right", "right"), ("front", "front")]),
    ("left_top", "Left to top", [("left", "left"), ("top", "top")]),
    ("right_top", "Right to top", [("right", "right"), ("top", "top")]),
    ("front_top", "Front to top", [("front", "front"), ("top", "top")]),
    ("floor_back", "Floor to back", [("floor", "floor"), ("back", "back")]),
];

pub(super) fn list() -> Vec<Choice> {
    let mut list = methods();
    list.extend(hand());
    list.extend(router());
    list.extend(laser());
    list.extend(joints());
    list.extend(stock());
    list.extend(printer());
    list.extend(prices());
    list
}

fn methods() -> Vec<Choice> {
    let group = Group::Making;
    let all = &[("hand", "by hand"), ("router", "with a router"), ("laser", "with a laser")];
    let mut list = vec![
        Entry::pick(830, "method", group, "Panels are made", all)
            .help("Sets accuracy, joints, corners and what the files hold; each panel may have its own.", PRACTICE)
            .done(),
    ];
    for (name, label, code) in METHOD_OF {
        let mut options = vec![("same", "as the others")];
        options.extend(all);
        list.push(
            Entry::pick(code, &format!("method.{name}"), group, &format!("{label} is made"), &options)
                .help("A single panel may be made in another way than the rest.", MAKER)
                .done(),
        );
    }
    list.push(
        Entry::pick(
            838,
            "accuracy",
            group,
            "How true they are cut",
            &[("method", "as the method is, or as stated"), ("own", "by hand as the sheet's figure says")],
        )
        .help(
            "By hand ISO 2768-1, class c, until you state your own figure beside the sheet; machines class m.",
            published("ISO 2768-1", "table 1; classes by method are workshop custom"),
        )
        .done(),
    );
    list.push(
        Entry::open_mm(837, "machine.accuracy", group, "A machine is accurate to ±", [0.02, 2.0], 0.01)
            .help("Open: ISO 2768-1, class m, by the length cut.", published("ISO 2768-1", "table 1, class m"))
            .when_made(&["router", "laser"])
            .done(),
    );
    list
}

fn hand() -> Vec<Choice> {
    let group = Group::Making;
    vec![
        Entry::mm(840, "hand.entry", group, "Hole to pass the saw blade", [1.0, 20.0], 0.5, 8.0)
            .presets(&[("fret saw, 3", 3.0), ("coping saw, 8", 8.0), ("jigsaw, 12", 12.0)])
            .help("Each opening gets one, inside its line, at each corner the blade cannot turn in.", PRACTICE)
            .when_made(&["hand"])
            .done(),
        Entry::mm(841, "hand.frame", group, "Depth of the saw's frame", [50.0, 1000.0], 1.0, 127.0)
            .presets(&[("102", 102.0), ("127", 127.0), ("152", 152.0), ("fret saw, 300", 300.0), ("no frame", 1000.0)])
            .help("From the blade to the frame: how far inside an edge the saw can cut.", PRACTICE)
            .when_made(&["hand"])
            .done(),
        Entry::mm(842, "hand.kerf", group, "Width of the saw cut", [0.2, 4.0], 0.1, 1.0)
            .presets(&[("fret, 0.5", 0.5), ("coping, 1.0", 1.0), ("panel saw, 1.5", 1.5), ("table saw, 3.2", 3.2)])
            .help("What a straight cut through the sheet takes away.", PRACTICE)
            .when_made(&["hand"])
            .done(),
        Entry::switch(843, "hand.marking", group, "Add tables for marking out", false)
            .help(
                "Every centre and corner as two distances from two edges, for those who do not glue paper on.",
                PRACTICE,
            )
            .when_made(&["hand"])
            .done(),
        Entry::switch(844, "hand.chain", group, "Drill a chain where the saw does not reach", false)
            .help("Hole beside hole inside the line, on the templates and in the list of drills; then file.", PRACTICE)
            .when_made(&["hand"])
            .done(),
        Entry::mm(845, "hand.chain_drill", group, "Drill of such a chain", [2.0, 12.0], 0.5, 5.0)
            .presets(&[("4", 4.0), ("5", 5.0), ("6", 6.0)])
            .help("Slots are drilled as wide as they are.", PRACTICE)
            .when_made(&["hand"])
            .done(),
    ]
}

fn router() -> Vec<Choice> {
    let group = Group::Making;
    vec![
        Entry::mm(850, "router.cutter", group, "Cutter, diameter", [0.5, 12.7], 0.01, 3.18)
            .presets(&[("2", 2.0), ("1/8 in, 3.18", 3.18), ("6", 6.0), ("1/4 in, 6.35", 6.35)])
            .help("Decides the smallest slot and the corners a cutter leaves round.", PRACTICE)
            .when_made(&["router"])
            .done(),
        Entry::pick(
            851,
            "router.relief",
            group,
            "Inside corners",
            &[("diagonal", "relieved across the corner"), ("along", "relieved along one edge"), ("none", "left round")],
        )
        .help("A round cutter leaves a fillet; what must go into the corner needs it relieved.", PRACTICE)
        .done(),
        Entry::count(852, "router.tabs", group, "Holding tabs on each panel", [0.0, 8.0], 4.0)
            .help("Bridges that keep the panel in its sheet until the end.", PRACTICE)
            .when_made(&["router"])
            .done(),
        Entry::mm(853, "router.tab_width", group, "Width of a holding tab", [2.0, 15.0], 0.5, 5.0)
            .help("4 to 6 mm is usual.", PRACTICE)
            .when_made(&["router"])
            .done(),
        Entry::mm(854, "router.tab_height", group, "Height of a holding tab", [0.5, 6.0], 0.1, 1.5)
            .help("From the underside; 1.5 to 2 mm is usual. The files mark each tab and say how high it is.", PRACTICE)
            .when_made(&["router"])
            .done(),
        Entry::switch(855, "router.compensated", group, "Files follow the cutter's centre", false)
            .help("Off: the panel's own lines; the machine's program moves the cutter aside.", PRACTICE)
            .when_made(&["router"])
            .done(),
    ]
}

fn laser() -> Vec<Choice> {
    let group = Group::Making;
    vec![
        Entry::open_mm(860, "laser.kerf", group, "Width of the beam's cut", [0.0, 1.0], 0.01)
            .help(
                "Open: a published average for the material and thickness. Better: cut the kerf test piece, which lies \
                 beside the cutting files and in the pack, and measure it: it says how.",
                published("workshop kerf table", "average by material and thickness"),
            )
            .when_made(&["laser"])
            .done(),
        Entry::switch(861, "laser.compensated", group, "Files allow for the beam", true)
            .help("Off: the panel's own lines, for a machine whose program allows for the beam.", PRACTICE)
            .when_made(&["laser"])
            .done(),
        Entry::switch(862, "laser.lettering", group, "Engrave names and letters", true)
            .help(
                "On a layer of its own, on the inside face: name, which way is up, and each hole's letter. Such a file is \
                 drawn as seen from inside.",
                MAKER,
            )
            .when_made(&["laser"])
            .done(),
        Entry::switch(863, "file.hairline", group, "Cut lines as hairlines", true)
            .help("In SVG files: 0.01 mm wide, which some machines need in order to cut.", PRACTICE)
            .done(),
    ]
}

fn joints() -> Vec<Choice> {
    let group = Group::Joints;
    let kinds = &[
        ("auto", "as the method suggests"),
        ("brackets", "butt, with corner brackets"),
        ("blocks", "butt, glued to locating blocks"),
        ("rebate", "rebate, glued"),
        ("finger", "fingers, glued"),
        ("tab", "tabs in slots, glued"),
    ];
    let mut list = Vec::new();
    for (index, (name, label, walls)) in CORNERS.iter().enumerate() {
        let code = 870 + 2 * index as u16;
        let kind = format!("joint.{name}");
        // A tab wants sheet beyond its slot; below the floor there is none.
        let kinds = if *name == "floor_back" { &kinds[..5] } else { &kinds[..] };
        list.push(
            Entry::pick(code, &kind, group, label, kinds)
                .help(
                    "By hand: brackets, or glue as chosen for the sleeve. Router: rebate, in thin sheet as by hand. Laser: fingers.",
                    PRACTICE,
                )
                .done(),
        );
        if *name != "floor_back" {
            list.push(
                Entry::pick(
                    code + 1,
                    &format!("through.{name}"),
                    group,
                    "Runs through there",
                    &[("auto", "as chosen for the sleeve"), walls[0], walls[1]],
                )
                .help("Which of the two covers the other's edge.", PRACTICE)
                .done(),
            );
        }
    }
    list.extend([
        Entry::open_mm(890, "joint.finger", group, "Width of a finger or tab", [2.0, 80.0], 0.5)
            .help("Open: about three times the sheet's thickness.", PRACTICE)
            .done(),
        Entry::open_mm(891, "joint.play", group, "Play of fingers and tabs", [-0.3, 1.0], 0.01)
            .help("Altogether; below 0 they press. Open: by material and by the looser of both panels' methods. Acrylic must never press.", PRACTICE)
            .done(),
        Entry::mm(892, "joint.block", group, "Locating block, thickness", [5.0, 30.0], 0.5, 12.0)
            .presets(&[("10", 10.0), ("12", 12.0), ("15", 15.0), ("20", 20.0)])
            .help("Square strip of wood glued into the corner.", PRACTICE)
            .done(),
    ]);
    list
}

fn stock() -> Vec<Choice> {
    let group = Group::Stock;
    let count = |code, key: &str, label| {
        Entry::open(code, key, group, label, Unit::Count, [0.0, 999.0], 1.0).help("Open: as many as it takes.", MAKER)
    };
    let mut list = vec![count(900, "stock.count", "How many of the sheet above").done()];
    for (number, code) in [(2, 901), (3, 904)] {
        let key = |field: &str| format!("stock{number}.{field}");
        let side = |code, field: &str, label: &str| {
            Entry::open_mm(code, &key(field), group, label, [50.0, 4000.0], 1.0)
                .help(
                    "Another sheet or an offcut you have. Open: none. The fewest sheets are taken, then the least of \
                     them; to use these up first, state fewer of the sheet above.",
                    MAKER,
                )
                .done()
        };
        list.extend([
            side(code, "width", &format!("Sheet {number}, width")),
            side(code + 1, "height", &format!("Sheet {number}, height")),
            Entry::open(
                code + 2,
                &key("count"),
                group,
                &format!("How many of sheet {number}"),
                Unit::Count,
                [0.0, 999.0],
                1.0,
            )
            .help("Open: a single one.", MAKER)
            .done(),
        ]);
    }
    list.extend([
        Entry::mm(907, "stock.trim", group, "Trim off each edge of a sheet", [0.0, 30.0], 0.5, 5.0)
            .help("Edges of a bought sheet are rarely square and clean; 5 to 10 mm is usual.", PRACTICE)
            .done(),
        Entry::open_mm(908, "stock.gap", group, "Between panels", [0.0, 30.0], 0.1)
            .help(
                "Open: the saw's cut, or the cutter and 3 mm, or 2 mm for a laser; the most that any panel's tool needs.",
                PRACTICE,
            )
            .done(),
        Entry::pick(
            909,
            "stock.cuts",
            group,
            "The sheet is cut",
            &[
                ("auto", "as the method suggests"),
                ("straight", "straight across, edge to edge"),
                ("free", "along any line"),
            ],
        )
        .help("Saws cut straight across; routers and lasers go anywhere.", PRACTICE)
        .done(),
        Entry::pick(
            910,
            "stock.grain",
            group,
            "Grain or face direction",
            &[
                ("none", "none: panels may be turned"),
                ("width", "along the sheet's width"),
                ("height", "along its height"),
            ],
        )
        .help("With a direction, panels keep upright to it.", PRACTICE)
        .done(),
        Entry::count(911, "kit.count", group, "Cases to make", [1.0, 500.0], 1.0)
            .help("Sheets and lists are worked out for this many.", MAKER)
            .done(),
        Entry::switch(912, "stock.openings", group, "Openings may hold small panels", false)
            .help("Another design's small panels may be cut from this one's openings. Router and laser only.", MAKER)
            .done(),
    ]);
    list
}

fn printer() -> Vec<Choice> {
    let group = Group::Templates;
    let bar = |code, key, label| {
        Entry::open_mm(code, key, group, label, [80.0, 120.0], 0.01)
            .help(
                "Print the test page, measure its bar of 100 mm and say what you read. Open: no correction.",
                PRACTICE,
            )
            .done()
    };
    vec![
        bar(930, "printer.across", "The bar across measures"),
        bar(931, "printer.down", "The bar down the page measures"),
    ]
}

fn prices() -> Vec<Choice> {
    let group = Group::Prices;
    let price = |code, key: &str, label: &str| {
        Entry::open(code, key, group, label, Unit::Money, [0.0, 100_000.0], 0.01)
            .help("What you pay. Open: left out of the total.", MAKER)
            .done()
    };
    let pack = |code, key: &str, label: &str| {
        Entry::open(code, key, group, label, Unit::Count, [1.0, 5000.0], 1.0).help("Open: sold singly.", MAKER).done()
    };
    let minutes = |code, key: &str, label: &str| {
        Entry::open(code, key, group, label, Unit::Minutes, [0.0, 600.0], 0.1)
            .help("Your own pace. Open: no time is worked out.", MAKER)
            .done()
    };
    let mut list = vec![
        Entry::text(940, "price.currency", group, "Currency", 4).help("Written before every sum.", MAKER).done(),
        price(941, "price.sheet", "One sheet, as bought"),
        price(942, "price.film", "Film, each square metre"),
        price(943, "price.glue", "Glue, a bottle"),
        price(944, "price.paint", "Edge paint, a tin"),
    ];
    let bought = [
        ("bracket", "corner brackets"),
        ("captive", "captive-nut brackets"),
        ("screw", "screws"),
        ("nut", "nuts"),
        ("washer", "washers"),
        ("standoff", "standoffs"),
        ("foot", "feet"),
        ("fan", "fans"),
    ];
    for (index, (name, label)) in bought.iter().enumerate() {
        let code = 945 + 2 * index as u16;
        list.push(price(code, &format!("price.{name}"), &format!("A pack of {label}")));
        list.push(pack(code + 1, &format!("pack.{name}"), &format!("In a pack of {label}")));
    }
    list.extend([
        Entry::count(965, "spare.small", group, "Spare screws, nuts, washers of each kind", [0.0, 50.0], 2.0)
            .help("They roll under the bench.", PRACTICE)
            .done(),
        Entry::count(966, "spare.film", group, "Film wasted, in percent", [0.0, 100.0], 15.0)
            .help("Overlaps, trimming and one spoilt piece.", MEMORY)
            .done(),
        minutes(967, "rate.cut", "Minutes for a metre of cut"),
        minutes(968, "rate.hole", "Minutes for a hole"),
        minutes(969, "rate.opening", "Minutes for an opening, besides its cut"),
        minutes(970, "rate.panel", "Minutes for a panel, besides all that"),
    ]);
    list
}
