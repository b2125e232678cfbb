//! Chromium, as every test and measurement starts it.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::json;

use crate::setup::{Need, Setup};
use crate::workspace::Workspace;
use crate::{commands, dist};

/// Flags for a browser that shows no window, asks no host and keeps nothing. The browser tests
/// read the same file.
const FLAGS: &str = include_str!("../../../tests/browser/chromium-flags.json");

/// The browser.
pub fn chromium() -> Option<PathBuf> {
    std::env::var_os("CHROMIUM").map(PathBuf::from).or_else(|| commands::find(&["chromium", "chromium-browser"]))
}

/// The program that drives it for the wasm tests.
pub fn driver() -> Option<PathBuf> {
    std::env::var_os("CHROMEDRIVER").map(PathBuf::from).or_else(|| commands::find(&["chromedriver"]))
}

/// A script of `tests/browser`, told where the page and the browser are.
pub fn script(workspace: &Workspace, name: &str) -> Command {
    let mut command = Command::new("node");
    command
        .arg(workspace.browser_tests().join(name))
        .env("PANELWRIGHT_DIST", workspace.dist())
        .current_dir(&workspace.root);
    if let Some(chromium) = chromium() {
        command.env("CHROMIUM", chromium);
    }
    command
}

/// Takes the README's picture of the page anew.
pub fn screenshot(workspace: &Workspace) -> Result<()> {
    let mut setup = Setup::new(workspace);
    let needs = [Need::WasmTarget, Need::NodeModules, Need::Chromium];
    setup.install_packages(&needs.into());
    for need in needs {
        setup.have(need).map_err(anyhow::Error::msg)?;
    }
    dist::assemble(workspace)?;
    commands::run(script(workspace, "screenshot.mjs").arg("examples/page.png"))
}

/// A folder for the browser's own files, new for each run and gone after it.
#[derive(Debug)]
pub struct Profile {
    folder: PathBuf,
}

impl Profile {
    /// Makes the folder.
    pub fn new(workspace: &Workspace) -> Result<Self> {
        let folder = workspace.target.join(format!("chromium-{}", std::process::id()));
        std::fs::create_dir_all(&folder)?;
        Ok(Self { folder })
    }

    /// Writes what the wasm test runner must know of the browser; gives the file.
    pub fn webdriver_file(&self, chromium: &Path) -> Result<PathBuf> {
        let mut flags: Vec<String> = serde_json::from_str(FLAGS).context("chromium-flags.json")?;
        flags.push(format!("--user-data-dir={}", self.folder.join("data").display()));
        let options = json!({ "goog:chromeOptions": { "binary": chromium, "args": flags } });
        let file = self.folder.join("webdriver.json");
        std::fs::write(&file, serde_json::to_vec_pretty(&options)?)?;
        Ok(file)
    }
}

impl Drop for Profile {
    fn drop(&mut self) {
        // The browser may still be closing; what is left lies in the target folder.
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}
