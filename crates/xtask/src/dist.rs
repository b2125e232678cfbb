//! The page as a static host gets it: `web/` with the wasm module beside it, and for the
//! service worker a list of the files and a version made from their bytes.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use serde_json::json;

use crate::setup::{Need, Setup};
use crate::shrink;
use crate::sizes::Sizes;
use crate::wasm::{self, MODULES, Module, Names};
use crate::workspace::Workspace;

/// The line of `web/sw.js` that is filled in when the page is put together.
const WORKER_LINE: &str = "const BUILD = ";

/// `cargo xtask dist`.
pub fn command(workspace: &Workspace, names: Names) -> Result<()> {
    if let Err(missing) = Setup::new(workspace).have(Need::NodeModules) {
        println!("Scripts and styles are left as they are, so the page is larger than it could be: {missing}");
    }
    lay_out(workspace, &wasm::build(workspace, names)?)?;
    print!("{}", Sizes::of(&workspace.dist())?.table());
    println!("The page is in {}", workspace.relative(&workspace.dist()).display());
    Ok(())
}

/// Builds the modules and puts the page together.
pub fn assemble(workspace: &Workspace) -> Result<()> {
    lay_out(workspace, &wasm::build(workspace, Names::Removed)?)
}

/// Puts the page together around modules that are already built.
pub fn lay_out(workspace: &Workspace, bindings: &Path) -> Result<()> {
    let dist = workspace.dist();
    // Emptied, not removed: a server may be standing in it.
    fs::create_dir_all(&dist)?;
    for entry in fs::read_dir(&dist)? {
        let path = entry?.path();
        if path.is_dir() { fs::remove_dir_all(path)? } else { fs::remove_file(path)? }
    }
    for file in files_below(&workspace.web())? {
        if belongs_on_the_host(&file) {
            copy(&workspace.web().join(&file), &dist.join(&file))?;
        }
    }
    for Module { name, .. } in &MODULES {
        for file in [format!("{name}.js"), format!("{name}_bg.wasm")] {
            copy(&bindings.join(&file), &dist.join("wasm").join(&file))?;
        }
    }
    shrink::texts(workspace, &dist)?;
    list_files(&dist)
}

/// Type check settings and notes stay with the sources.
fn belongs_on_the_host(file: &Path) -> bool {
    let name = file.file_name().unwrap_or_default().to_string_lossy();
    let stays =
        name.starts_with('.') || name.starts_with("tsconfig") || name.ends_with(".d.ts") || name.ends_with(".md");
    !stays
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    if let Some(folder) = to.parent() {
        fs::create_dir_all(folder)?;
    }
    fs::copy(from, to).with_context(|| format!("{} cannot be copied", from.display()))?;
    Ok(())
}

/// Writes `files.json` and fills in the service worker's line: what to keep for use without a
/// network, and a version that changes when any byte of it does.
fn list_files(dist: &Path) -> Result<()> {
    let mut names = Vec::new();
    let mut hash = Fnv::default();
    for file in files_below(dist)? {
        let name = slashed(&file);
        // The worker must never keep itself.
        if name == "sw.js" {
            continue;
        }
        hash.add(name.as_bytes());
        hash.add(&fs::read(dist.join(&file))?);
        names.push(name);
    }
    let build = json!({ "version": format!("{:016x}", hash.0), "files": names }).to_string();
    fs::write(dist.join("files.json"), &build)?;
    let worker = dist.join("sw.js");
    if worker.is_file() {
        let text = fs::read_to_string(&worker)?;
        fs::write(&worker, fill_worker(&text, &build)?)?;
    }
    Ok(())
}

/// The service worker's text with its one line filled in.
fn fill_worker(text: &str, build: &str) -> Result<String> {
    let mut filled = String::new();
    let mut lines = 0;
    for line in text.lines() {
        if line.starts_with(WORKER_LINE) {
            lines += 1;
            writeln!(filled, "{WORKER_LINE}{build};")?;
        } else {
            writeln!(filled, "{line}")?;
        }
    }
    if lines != 1 {
        bail!("web/sw.js must have one line that starts with `{WORKER_LINE}`, it has {lines}");
    }
    Ok(filled)
}

/// Every file below a folder, relative to it, in the order of their names.
pub fn files_below(folder: &Path) -> Result<Vec<PathBuf>> {
    fn walk(folder: &Path, below: &Path, files: &mut Vec<PathBuf>) -> Result<()> {
        for entry in fs::read_dir(folder).with_context(|| format!("{} cannot be read", folder.display()))? {
            let entry = entry?;
            let path = below.join(entry.file_name());
            if entry.file_type()?.is_dir() {
                walk(&entry.path(), &path, files)?;
            } else {
                files.push(path);
            }
        }
        Ok(())
    }
    let mut files = Vec::new();
    walk(folder, Path::new(""), &mut files)?;
    files.sort();
    Ok(files)
}

/// A path as addresses write it.
pub fn slashed(path: &Path) -> String {
    path.components().map(|part| part.as_os_str().to_string_lossy()).collect::<Vec<_>>().join("/")
}

/// FNV-1a, 64 bits (Fowler, Noll and Vo's published constants): tells two builds apart, no more.
struct Fnv(u64);

impl Default for Fnv {
    fn default() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
}

impl Fnv {
    fn add(&mut self, bytes: &[u8]) {
        // The length keeps one file's end apart from the next one's start.
        for byte in bytes.iter().copied().chain((bytes.len() as u64).to_le_bytes()) {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worker_gets_its_list_and_nothing_else_changes() {
        let filled = fill_worker("// a worker\nconst BUILD = {};\nself.x = BUILD;\n", "{\"version\":\"1\"}").unwrap();
        assert_eq!(filled, "// a worker\nconst BUILD = {\"version\":\"1\"};\nself.x = BUILD;\n");
        assert!(fill_worker("// no line to fill\n", "{}").is_err());
    }

    #[test]
    fn the_version_follows_every_byte_and_name() {
        let version = |files: &[(&str, &str)]| {
            let mut hash = Fnv::default();
            for (name, text) in files {
                hash.add(name.as_bytes());
                hash.add(text.as_bytes());
            }
            hash.0
        };
        let base = version(&[("a", "xy"), ("b", "z")]);
        assert_eq!(base, version(&[("a", "xy"), ("b", "z")]));
        assert_ne!(base, version(&[("a", "x"), ("b", "z")]));
        assert_ne!(base, version(&[("a", "x"), ("yb", "z")]));
        // The published check value of FNV-1a for no bytes at all is its starting value.
        assert_eq!(Fnv::default().0, 0xcbf2_9ce4_8422_2325);
    }

    #[test]
    fn settings_stay_home() {
        for name in ["tsconfig.json", "wasm/panelwright.d.ts", ".hidden", "notes.md"] {
            assert!(!belongs_on_the_host(Path::new(name)), "{name}");
        }
        for name in ["index.html", "view/case.js", "icons/icon.svg", "sw.js"] {
            assert!(belongs_on_the_host(Path::new(name)), "{name}");
        }
    }
}
