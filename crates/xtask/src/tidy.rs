//! The house rules that a machine can see in the text of the files.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Result, bail};

use crate::commands;
use crate::count::Count;
use crate::workspace::Workspace;

/// A file longer than this is worth a look at whether it holds one idea or several.
const LONG_FILE: usize = 420;

/// Checks every file of the project.
pub fn stage(workspace: &Workspace, _: &mut Count) -> Result<()> {
    let listed = commands::output(
        Command::new("git")
            .args(["ls-files", "-z", "--cached", "--others", "--exclude-standard"])
            .current_dir(&workspace.root),
    )?;
    let mut wrong = 0;
    let mut checked = 0;
    for name in listed.split('\0').filter(|name| !name.is_empty()) {
        // Pictures and the like are no text; a file just deleted is still listed.
        let Ok(text) = std::fs::read_to_string(workspace.root.join(name)) else { continue };
        checked += 1;
        for line in complaints(name, &text) {
            println!("{line}");
            wrong += 1;
        }
        for target in broken_links(&workspace.root, name, &text) {
            println!("{name}: the link to {target} leads nowhere");
            wrong += 1;
        }
        let lines = text.lines().count();
        if lines > LONG_FILE && is_source(name) {
            println!("{name}: {lines} lines (only a warning): one idea or several?");
        }
    }
    println!("{checked} files read");
    if wrong > 0 { bail!("{wrong} against the house rules") } else { Ok(()) }
}

fn ending(name: &str) -> &str {
    Path::new(name).extension().and_then(|ending| ending.to_str()).unwrap_or_default()
}

fn is_source(name: &str) -> bool {
    matches!(ending(name), "rs" | "js" | "mjs" | "py" | "css" | "html")
}

/// Text others wrote, or that a package manager writes.
fn is_foreign(name: &str) -> bool {
    name.starts_with("LICENSE") || name == "Cargo.lock" || name.ends_with("package-lock.json")
}

/// What is wrong with one file, one line each.
fn complaints(name: &str, text: &str) -> Vec<String> {
    let mut wrong = Vec::new();
    let opening: &[&str] = match ending(name) {
        "rs" => &["//!"],
        "js" | "mjs" => &["//", "/*"],
        "py" => &["\"\"\""],
        "css" => &["/*"],
        _ => &[],
    };
    if !opening.is_empty() && !opening.iter().any(|start| text.starts_with(start)) {
        wrong.push(format!("{name}: must open with {} and say what the file is for", opening[0]));
    }
    let core = name.starts_with("crates/panelwright/src/");
    for (number, line) in text.lines().enumerate() {
        let mut say = |what: &str| wrong.push(format!("{name}:{}: {what}", number + 1));
        if line.starts_with("<<<<<<< ") || line.starts_with(">>>>>>> ") {
            say("an unfinished merge");
        }
        if name != "Cargo.lock" && registry_hosts().iter().any(|host| line.contains(host)) {
            say("names a package registry's host");
        }
        if is_foreign(name) {
            continue;
        }
        if machine_paths().iter().any(|path| line.contains(path)) {
            say("holds an absolute path of one machine");
        }
        let words = line.to_lowercase();
        if forbidden_words().iter().any(|word| has_word(&words, word)) {
            say("a word that files of this project do not use");
        }
        if ending(name) == "rs" && unfinished().iter().any(|mark| line.contains(mark)) {
            say("unfinished");
        }
        if core && impure().iter().any(|module| line.contains(module)) {
            say("the core touches no file, clock, thread, network or environment");
        }
    }
    wrong
}

/// Whether the text holds the word with no letter before or after it.
fn has_word(text: &str, word: &str) -> bool {
    text.match_indices(word).any(|(at, _)| {
        let before = text[..at].chars().next_back();
        let after = text[at + word.len()..].chars().next();
        !before.is_some_and(char::is_alphanumeric) && !after.is_some_and(char::is_alphanumeric)
    })
}

// The lists are put together from pieces, or this file would be its own first finding.

fn registry_hosts() -> [String; 5] {
    [["crates", "io"], ["npmjs", "org"], ["pypi", "org"], ["pythonhosted", "org"], ["debian", "org"]]
        .map(|parts| parts.join("."))
}

fn machine_paths() -> [String; 3] {
    ["work", "root", "home"].map(|folder| format!("/{folder}/"))
}

fn forbidden_words() -> [String; 4] {
    [["tran", "script"], ["seed ", "document"], ["iss", "ue"], ["iss", "ues"]].map(|parts| parts.concat())
}

fn unfinished() -> [String; 3] {
    ["todo", "unimplemented", "dbg"].map(|name| format!("{name}!("))
}

fn impure() -> [String; 6] {
    ["fs", "time", "thread", "net", "env", "process"].map(|name| format!("std::{name}"))
}

/// Relative links of a Markdown file that lead to no file.
fn broken_links(root: &Path, name: &str, text: &str) -> Vec<String> {
    if ending(name) != "md" {
        return Vec::new();
    }
    let folder = root.join(Path::new(name).parent().unwrap_or(Path::new("")));
    text.split("](")
        .skip(1)
        .filter_map(|rest| rest.split(')').next())
        .map(|target| target.split('#').next().unwrap_or_default())
        .filter(|target| !target.is_empty() && !target.contains("://"))
        .filter(|target| !folder.join(PathBuf::from(target)).exists())
        .map(str::to_owned)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clean_file_is_let_be() {
        assert!(complaints("crates/a/src/lib.rs", "//! Says what it is.\n\nfn tissue() {}\n").is_empty());
        assert!(complaints("web/main.js", "// Says what it is.\n").is_empty());
        assert!(complaints("Cargo.lock", &format!("source = \"{}\"\n", registry_hosts()[0])).is_empty());
    }

    #[test]
    fn each_rule_sees_its_breach() {
        let core = "crates/panelwright/src/x.rs";
        for (name, line) in [
            ("README.md", format!("https://static.{}/x", registry_hosts()[0])),
            ("tests/browser/package-lock.json", format!("https://registry.{}/x", registry_hosts()[1])),
            ("justfile", format!("cd {}thing", machine_paths()[0])),
            ("README.md", format!("See {} 7.", forbidden_words()[2])),
            (core, format!("//! x\nfn a() {{ {}) }}", unfinished()[0])),
            (core, format!("//! x\nuse {}::File;", impure()[0])),
            (core, "fn undocumented() {}".to_owned()),
            ("web/view.js", "let a = 1;".to_owned()),
            ("tests/test_a.py", "import os".to_owned()),
            ("README.md", "<<<<<<< ours".to_owned()),
        ] {
            assert_eq!(complaints(name, &line).len(), 1, "{name}: {line}");
        }
    }

    #[test]
    fn a_link_must_lead_somewhere() {
        let root = Path::new(env!("CARGO_MANIFEST_DIR"));
        let text = "[here](Cargo.toml#a) [there](src/none.rs) [up](#up) [far](https://example.test/)";
        assert_eq!(broken_links(root, "NOTES.md", text), ["src/none.rs"]);
    }
}
