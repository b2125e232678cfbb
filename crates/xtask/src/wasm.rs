//! The core as two wasm modules with their bindings for the page.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::commands;
use crate::workspace::Workspace;

/// The target the page's module is built for.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// The profile the page's modules are built in: one for both, so that what they share is compiled once.
const PROFILE: &str = "page";

/// Adds the wasm target to the toolchain when it is missing.
pub fn ensure_target() -> Result<()> {
    if has_target() {
        return Ok(());
    }
    commands::run(Command::new("rustup").args(["target", "add", TARGET]))
        .context("the wasm target is missing and rustup cannot add it")
}

/// Whether the toolchain has the standard library for wasm.
fn has_target() -> bool {
    commands::output(Command::new("rustc").args(["--print", "target-libdir", "--target", TARGET]))
        .is_ok_and(|folder| PathBuf::from(folder.trim()).is_dir())
}

/// A module of the page: a feature of `panelwright-wasm`.
#[derive(Debug)]
pub struct Module {
    feature: &'static str,
    /// What its files begin with: `NAME.js`, `NAME_bg.wasm`, `NAME.d.ts`.
    pub name: &'static str,
}

/// What the page loads first, and what it loads beside the page when that stands.
pub const MODULES: [Module; 2] =
    [Module { feature: "workbench", name: "panelwright" }, Module { feature: "workshop", name: "workshop" }];

/// Whether the modules carry the names of their functions: only a profiler reads them.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Names {
    /// For a profiler.
    Kept,
    /// For visitors.
    Removed,
}

/// Builds the modules and their bindings; gives the folder they are in.
pub fn build(workspace: &Workspace, names: Names) -> Result<PathBuf> {
    ensure_target()?;
    let bindings = workspace.target.join("page-bindings");
    for Module { feature, name } in &MODULES {
        commands::run(workspace.cargo().args([
            "build",
            "--package=panelwright-wasm",
            "--lib",
            "--target",
            TARGET,
            "--profile",
            PROFILE,
            "--no-default-features",
            "--features",
            feature,
        ]))?;
        Bindgen::new()
            .input_path(workspace.target.join(TARGET).join(PROFILE).join("panelwright_wasm.wasm"))
            .out_name(name)
            .web(true)?
            .typescript(true)
            // The page need not say where the module lies: it lies beside its bindings.
            .omit_default_module_path(false)
            .remove_name_section(names == Names::Removed)
            .remove_producers_section(true)
            .generate(&bindings)
            .with_context(|| format!("the wasm module {name} takes no bindings"))?;
    }
    Ok(bindings)
}

/// Lays the bindings' types where the page's type check looks for them.
pub fn lay_types(workspace: &Workspace) -> Result<()> {
    let bindings = build(workspace, Names::Removed)?;
    let folder = workspace.root.join(".types/wasm");
    std::fs::create_dir_all(&folder)?;
    for Module { name, .. } in &MODULES {
        let types = format!("{name}.d.ts");
        std::fs::copy(bindings.join(&types), folder.join(&types))?;
    }
    Ok(())
}
