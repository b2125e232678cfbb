//! Chromium, as every test and measurement starts it.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde_json::json;

use crate::commands;
use crate::workspace::Workspace;

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
