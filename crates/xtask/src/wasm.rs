//! The core as a wasm module with its bindings for the page.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::commands;
use crate::workspace::Workspace;

/// The target the page's module is built for.
pub const TARGET: &str = "wasm32-unknown-unknown";

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

/// Builds the module and its bindings; gives the folder with `panelwright.js`,
/// `panelwright_bg.wasm` and `panelwright.d.ts`.
pub fn build(workspace: &Workspace) -> Result<PathBuf> {
    ensure_target()?;
    commands::run(workspace.cargo().args([
        "build",
        "--package=panelwright-wasm",
        "--lib",
        "--target",
        TARGET,
        "--profile=wasm-release",
    ]))?;
    let module = workspace.target.join(TARGET).join("wasm-release/panelwright_wasm.wasm");
    let bindings = workspace.target.join("page-bindings");
    Bindgen::new()
        .input_path(&module)
        .out_name("panelwright")
        .web(true)?
        .typescript(true)
        // The page need not say where the module lies: it lies beside its bindings.
        .omit_default_module_path(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(&bindings)
        .context("the wasm module takes no bindings")?;
    Ok(bindings)
}

/// Lays the bindings' types where the page's type check looks for them.
pub fn lay_types(workspace: &Workspace) -> Result<()> {
    let bindings = build(workspace)?;
    let folder = workspace.root.join(".types/wasm");
    std::fs::create_dir_all(&folder)?;
    std::fs::copy(bindings.join("panelwright.d.ts"), folder.join("panelwright.d.ts"))?;
    Ok(())
}
