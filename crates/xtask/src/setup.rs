//! What the tests need beside Rust, and how each need is met: Debian packages when root on a
//! Debian-like system, a local Python environment, npm packages from a lock file.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::process::Command;

use crate::workspace::Workspace;
use crate::{browser, commands, wasm};

/// The oldest Node that the browser tests' packages run on.
const LEAST_NODE: u32 = 20;

/// One thing a stage of the tests needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Need {
    /// Rust's standard library for wasm.
    WasmTarget,
    /// Chromium and the program that drives it.
    Chromium,
    /// Outside readers of our PDF files.
    PdfReaders,
    /// Python with the packages of `tests/requirements.txt`.
    Python,
    /// Node with the packages of `tests/browser/package-lock.json`.
    NodeModules,
}

impl Need {
    /// The Debian packages that meet it, when they are not there yet.
    fn missing_packages(self) -> &'static [&'static str] {
        let (there, packages): (bool, &[&str]) = match self {
            Self::WasmTarget => (true, &[]),
            // A browser without any font draws no letters.
            Self::Chromium => (
                browser::chromium().is_some() && browser::driver().is_some(),
                &["chromium", "chromium-driver", "fonts-dejavu-core"],
            ),
            Self::PdfReaders => (
                ["pdfinfo", "pdftoppm", "pdftocairo", "qpdf"].iter().all(|name| commands::find(&[name]).is_some()),
                &["poppler-utils", "qpdf"],
            ),
            Self::Python => (
                commands::succeeds(Command::new("python3").args(["-c", "import venv, ensurepip"])),
                &["python3", "python3-venv"],
            ),
            Self::NodeModules => {
                (commands::find(&["node"]).is_some() && commands::find(&["npm"]).is_some(), &["nodejs", "npm"])
            }
        };
        if there { &[] } else { packages }
    }
}

/// Meets needs, each at most once.
#[derive(Debug)]
pub struct Setup<'a> {
    workspace: &'a Workspace,
    met: BTreeMap<Need, Result<(), String>>,
}

impl<'a> Setup<'a> {
    /// Nothing met yet.
    pub fn new(workspace: &'a Workspace) -> Self {
        Self { workspace, met: BTreeMap::new() }
    }

    /// Installs, in one go, the Debian packages that these needs miss, when that can be done here.
    pub fn install_packages(&mut self, needs: &BTreeSet<Need>) {
        let packages: BTreeSet<&str> = needs.iter().flat_map(|need| need.missing_packages()).copied().collect();
        if packages.is_empty() {
            return;
        }
        let list = packages.iter().copied().collect::<Vec<_>>().join(" ");
        if commands::find(&["apt-get"]).is_none() {
            println!("Missing here; install what your system calls: {list}");
            return;
        }
        if !is_root() {
            println!("Missing here; as root: apt-get install {list}");
            return;
        }
        let update = commands::run(Command::new("apt-get").args(["update", "--quiet"]));
        let install = commands::run(
            Command::new("apt-get")
                .args(["install", "--yes", "--quiet", "--no-install-recommends"])
                .args(&packages)
                .env("DEBIAN_FRONTEND", "noninteractive"),
        );
        // What did not come is told by the stage that misses it.
        for error in [update, install].into_iter().filter_map(Result::err) {
            eprintln!("{error:#}");
        }
    }

    /// Meets a need, or says in one line what is missing.
    pub fn have(&mut self, need: Need) -> Result<(), String> {
        if let Some(met) = self.met.get(&need) {
            return met.clone();
        }
        let met = self.meet(need);
        self.met.insert(need, met.clone());
        met
    }

    fn meet(&self, need: Need) -> Result<(), String> {
        let missing = need.missing_packages();
        if !missing.is_empty() {
            return Err(format!("missing: {} (Debian's names)", missing.join(", ")));
        }
        match need {
            Need::WasmTarget => wasm::ensure_target().map_err(|error| format!("{error:#}")),
            Need::Chromium | Need::PdfReaders => Ok(()),
            Need::Python => self.python(),
            Need::NodeModules => match node_version() {
                Some(major) if major >= LEAST_NODE => self.node_modules(),
                _ => Err(format!("missing: Node {LEAST_NODE} or later")),
            },
        }
    }

    /// The local Python environment, made anew when it does not run and filled anew when the
    /// list of packages has changed.
    fn python(&self) -> Result<(), String> {
        let list = self.workspace.root.join("tests/requirements.txt");
        let stamp = self.workspace.root.join(".venv/installed.txt");
        let python = self.workspace.python();
        let runs = commands::succeeds(Command::new(&python).arg("--version"));
        if runs && same_text(&list, &stamp) {
            return Ok(());
        }
        let fill = || -> anyhow::Result<()> {
            if !runs {
                let folder = self.workspace.root.join(".venv");
                commands::run(Command::new("python3").args(["-m", "venv", "--clear"]).arg(folder))?;
            }
            commands::run(Command::new(&python).args(["-m", "pip", "install", "--quiet", "--requirement"]).arg(&list))?;
            fs::copy(&list, &stamp)?;
            Ok(())
        };
        fill().map_err(|error| format!("the Python packages cannot be installed: {error:#}"))
    }

    /// The npm packages, exactly those of the lock file.
    fn node_modules(&self) -> Result<(), String> {
        let folder = self.workspace.browser_tests();
        let lock = folder.join("package-lock.json");
        let stamp = folder.join("node_modules/.installed.json");
        if same_text(&lock, &stamp) {
            return Ok(());
        }
        let fill = || -> anyhow::Result<()> {
            let flags = ["ci", "--no-audit", "--no-fund", "--ignore-scripts"];
            commands::run(Command::new("npm").args(flags).current_dir(&folder))?;
            fs::copy(&lock, &stamp)?;
            Ok(())
        };
        fill().map_err(|error| format!("the npm packages cannot be installed: {error:#}"))
    }
}

fn same_text(one: &Path, other: &Path) -> bool {
    matches!((fs::read(one), fs::read(other)), (Ok(one), Ok(other)) if one == other)
}

/// The first number of Node's version.
fn node_version() -> Option<u32> {
    let version = commands::output(Command::new("node").arg("--version")).ok()?;
    version.trim().trim_start_matches('v').split('.').next()?.parse().ok()
}

fn is_root() -> bool {
    commands::output(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}
