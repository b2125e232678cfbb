//! Where things are.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::commands;

/// The folders every command works in.
#[derive(Debug)]
pub struct Workspace {
    /// The top of the project.
    pub root: PathBuf,
    /// Where cargo puts what it builds.
    pub target: PathBuf,
}

impl Workspace {
    /// Finds the project this xtask was started in.
    pub fn find() -> Result<Self> {
        // Cargo sets it for the process it runs; the compiled-in one is for a binary started by hand.
        let package = std::env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let root = package.ancestors().nth(2).context("xtask is not at crates/xtask")?.to_owned();
        let metadata = commands::output(
            Command::new(cargo()).args(["metadata", "--no-deps", "--format-version", "1"]).current_dir(&root),
        )?;
        let metadata: serde_json::Value = serde_json::from_str(&metadata)?;
        let target = metadata["target_directory"].as_str().context("cargo names no target folder")?.into();
        Ok(Self { root, target })
    }

    /// The page's sources.
    pub fn web(&self) -> PathBuf {
        self.root.join("web")
    }

    /// The page as a static host gets it.
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// The browser tests and the npm packages.
    pub fn browser_tests(&self) -> PathBuf {
        self.root.join("tests/browser")
    }

    /// A program npm installed.
    pub fn npm_program(&self, name: &str) -> PathBuf {
        self.browser_tests().join("node_modules/.bin").join(name)
    }

    /// The local Python.
    pub fn python(&self) -> PathBuf {
        self.root.join(".venv/bin/python")
    }

    /// Whether the workspace has this crate.
    pub fn has_crate(&self, name: &str) -> bool {
        self.root.join("crates").join(name).join("Cargo.toml").is_file()
    }

    /// A cargo command in the project.
    pub fn cargo(&self) -> Command {
        let mut command = Command::new(cargo());
        command.current_dir(&self.root);
        command
    }

    /// A path as the project's own files would name it.
    pub fn relative<'a>(&self, path: &'a Path) -> &'a Path {
        path.strip_prefix(&self.root).unwrap_or(path)
    }
}

fn cargo() -> std::ffi::OsString {
    std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into())
}
