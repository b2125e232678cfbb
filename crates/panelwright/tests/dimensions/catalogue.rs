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
