//! What makes scripts and styles smaller: esbuild, brought by npm. Without it the page is the same, only larger.
//!
//! The modules are left as the compiler made them: `wasm-opt -Oz` takes 9 % off their bytes, but what is left is packed
//! less well, so that 5 % more would be loaded; in speed there is no difference (measured).

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::Result;

use crate::commands;
use crate::dist::{files_below, slashed};
use crate::workspace::Workspace;

/// The scripts that are loaded by name; everything they import becomes part of them.
const ENTRIES: [&str; 2] = ["modules/main.js", "modules/workshop/worker.js"];

/// Parts of the page that `modules/later.js` loads when they are first wanted. Each brings its own copy of the few small
/// things it shares with the page, so that the page itself stays one script.
const LATER: [&str; 4] =
    ["modules/later/kerf.js", "modules/later/kits.js", "modules/later/papers.js", "modules/later/prints.js"];

/// The one style sheet the page names; what it imports becomes part of it.
const STYLE: &str = "styles/page.css";

/// Shrinks the scripts and styles of a page that is laid out, in place.
pub fn texts(workspace: &Workspace, dist: &Path) -> Result<()> {
    let tool = workspace.npm_program("esbuild");
    if !tool.exists() {
        return Ok(());
    }
    let esbuild = || {
        let mut command = Command::new(&tool);
        command.current_dir(dist).args(["--minify", "--log-level=warning", "--allow-overwrite", "--outdir=."]);
        command
    };
    // In the page's own scripts first: their imports are gone afterwards.
    let later = LATER.map(|name| format!("--external:*/{}", name.trim_start_matches("modules/")));
    for entries in [&ENTRIES[..], &LATER] {
        commands::run(esbuild().args(entries).args(&later).args([
            "--bundle",
            "--outbase=.",
            "--format=esm",
            "--target=es2022",
            "--charset=utf8",
            "--external:*/wasm/panelwright.js",
            "--external:*/wasm/workshop.js",
        ]))?;
    }
    commands::run(esbuild().args([STYLE, "--bundle", "--outbase=.", "--charset=utf8", "--external:*.woff2"]))?;
    let mut rest = Vec::new();
    for file in files_below(dist)? {
        let name = slashed(&file);
        let whole = name == STYLE || ENTRIES.contains(&name.as_str()) || LATER.contains(&name.as_str());
        if (name.starts_with("modules/") || name.starts_with("styles/")) && !whole {
            fs::remove_file(dist.join(&file))?;
        } else if name.starts_with("wasm/") && name.ends_with(".js") {
            rest.push(name);
        }
    }
    // Folders that held nothing but parts of the entries.
    for folder in fs::read_dir(dist.join("modules"))?.filter_map(Result::ok) {
        // One that is not empty stays.
        let _ = fs::remove_dir(folder.path());
    }
    commands::run(esbuild().args(rest).args(["--outbase=.", "--charset=utf8"]))
}
