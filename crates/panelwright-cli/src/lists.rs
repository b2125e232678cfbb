//! The lists of choices and of sources, for people and as JSON.

use std::fmt::Write as _;

use panelwright::documents::{choice_list::choice_list, source_list::source_list};

use crate::failure::Failure;

/// Every choice, one a line under its group: key, default, allowed values, label.
pub fn choices() -> String {
    let list = choice_list();
    let widest = list.iter().map(|entry| entry.key.chars().count()).max().unwrap_or(0);
    let mut text = String::new();
    let mut group = "";
    for entry in &list {
        if entry.group != group {
            let gap = if group.is_empty() { "" } else { "\n" };
            group = entry.group;
            let _ = writeln!(text, "{gap}{}", entry.group_label);
        }
        let key = entry.key;
        let _ = writeln!(text, "  {key:widest$}  {}; {} [{}]", entry.label, entry.allowed, entry.default);
    }
    text
}

/// Every choice with all that is known of it.
pub fn choices_json() -> Result<String, Failure> {
    Ok(serde_json::to_string_pretty(&choice_list())? + "\n")
}

/// Every published size, one a line under its group: what, how much, where it stands.
pub fn sources() -> String {
    let mut text = String::new();
    let mut group = "";
    for entry in source_list() {
        if entry.group != group {
            let gap = if group.is_empty() { "" } else { "\n" };
            group = entry.group;
            let _ = writeln!(text, "{gap}{group}");
        }
        let _ = writeln!(text, "  {}: {}  [{}]", entry.name, entry.value, entry.source);
    }
    text
}

/// Every published size with its source.
pub fn sources_json() -> Result<String, Failure> {
    Ok(serde_json::to_string_pretty(&source_list())? + "\n")
}
