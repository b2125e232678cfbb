//! The public list holds everything once, with a source for each line.

use panelwright::dimensions::catalogue::all;
use std::collections::BTreeSet;

#[test]
fn every_entry_says_what_how_much_and_where_it_stands() {
    let entries = all();
    assert!(entries.len() > 250, "only {} entries", entries.len());
    for entry in &entries {
        assert!(!entry.group.trim().is_empty(), "{entry:?}");
        assert!(!entry.name.trim().is_empty(), "{entry:?}");
        assert!(!entry.value.trim().is_empty(), "{entry:?}");
        assert!(!entry.source.document.trim().is_empty(), "{entry:?}");
        assert!(!entry.source.place.trim().is_empty(), "{entry:?}");
    }
}

#[test]
fn no_value_shows_an_unfilled_place_or_a_rounding_trace() {
    for entry in all() {
        assert!(!entry.value.contains(['{', '}']), "numbers and pattern disagree: {entry:?}");
        assert!(!entry.value.contains("NaN") && !entry.value.contains("inf"), "{entry:?}");
        let longest = entry.value.split(|c: char| !c.is_ascii_digit()).map(str::len).max().unwrap_or(0);
        assert!(longest <= 6, "{entry:?}");
    }
}

#[test]
fn nothing_is_listed_twice() {
    let mut seen = BTreeSet::new();
    for entry in all() {
        assert!(seen.insert((entry.group, entry.name.clone())), "listed twice: {} / {}", entry.group, entry.name);
    }
}

#[test]
fn groups_are_contiguous() {
    let mut closed = BTreeSet::new();
    let mut current = "";
    for entry in all() {
        if entry.group != current {
            assert!(closed.insert(entry.group), "{} comes twice", entry.group);
            current = entry.group;
        }
    }
}

#[test]
fn lines_read_as_they_should() {
    let entries = all();
    for (group, name, value, citation) in [
        ("boards", "Hole F from hole C", "x = 157.48, y = 22.86 mm", "ATX Specification 2.2, figure 3 (published)"),
        (
            "boards",
            "Mini-ITX mounting holes",
            "C F H J",
            "Mini-ITX Addendum 1.1, page 5: four holes shared with microATX (published)",
        ),
        (
            "boards",
            "I/O aperture across, from hole C",
            "x = 7.52 to 166.27 mm",
            "ATX Specification 2.2, figures 3 and 4: 5.196 inches from hole A, 6.250 wide (derived)",
        ),
        (
            "cards",
            "Slot 3: centre, window, screw",
            "x = -59.39, -73.175 to -59.925, -57.335 mm",
            "PCI Express Card Electromechanical Specification 3.0, figures 9-3, 9-20 and 9-22 (derived)",
        ),
        (
            "supplies",
            "ATX (full size): hole 4",
            "120, 6 mm",
            "Three public part models of an ATX supply, four holes, agreeing within 0.7 mm (published)",
        ),
        ("drives", "3.5 inch drive: bottom hole 6", "a = 98.43, b = 117.48 mm", "SFF-8301 1.6, figure 4-1 (published)"),
        (
            "fans",
            "Fan 50: hole in the panel",
            "4.3 mm",
            "Trade sizes, panel holes for fan screws (from memory: measure yours)",
        ),
        (
            "fasteners",
            "M3: clearance hole, fine / medium / coarse",
            "3.2 / 3.4 / 3.6 mm",
            "ISO 273, table of clearance holes, reprinted (published)",
        ),
        ("fasteners", "Screw of 10 mm: shortest piece", "9.71 mm", "ISO 4762, table of lengths (published)"),
        (
            "fasteners",
            "Screw of 60 mm: shortest piece",
            "59.4 mm",
            "ISO 286-1, grade js15 on the length (from memory: measure yours)",
        ),
        ("sheets", "General tolerance c, coarse: 30 to 120 mm", "±0.8 mm", "ISO 2768-1, table 1 (published)"),
    ] {
        let found = entries.iter().find(|entry| entry.group == group && entry.name == name);
        let found = found.unwrap_or_else(|| panic!("{group} / {name} is not listed"));
        assert_eq!(found.value, value);
        assert_eq!(found.source.cite(), citation);
    }
}

#[test]
fn unknown_sizes_are_absent() {
    for entry in all() {
        assert!(!entry.name.starts_with("Fan 200: hole spacing"), "{entry:?}");
        let drilled = entry.name.starts_with("TFX: hole") || entry.name.starts_with("Flex ATX: hole");
        assert!(!drilled, "{entry:?}");
    }
}
