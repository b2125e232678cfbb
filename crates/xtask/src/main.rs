//! `cargo xtask COMMAND`: builds the page, serves it, tests everything, measures.
//!
//! One file per thing it knows how to do; nothing here is part of what a visitor gets.

mod bench;
mod browser;
mod commands;
mod count;
mod dist;
mod serve;
mod setup;
mod shrink;
mod sizes;
mod stages;
mod tidy;
mod wasm;
mod workspace;

use std::process::ExitCode;

use anyhow::{Context, Result, bail};

use wasm::Names;
use workspace::Workspace;

const HELP: &str = "\
cargo xtask COMMAND

  serve [--port N]   build the page and serve it on this machine; prints the address
  test [STAGE...]    set up what the tests need, then run them (all, or only the named stages)
       [--keep-going]  go on after a stage that failed
       [--list]        print the stages
  dist               leave the page in dist/, ready for any static host; prints what is loaded
       [--names]       with the names of functions in the modules, for a profiler
  screenshot         take the README's picture of the page anew
  bench              measure times and sizes against their budgets
  help               this text
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match run(&arguments) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

/// Carries out one command; `false` when it ran and something it checks is wrong.
fn run(arguments: &[String]) -> Result<bool> {
    let Some((command, rest)) = arguments.split_first() else {
        print!("{HELP}");
        return Ok(false);
    };
    match (command.as_str(), rest) {
        ("help" | "--help" | "-h", _) => {
            print!("{HELP}");
            Ok(true)
        }
        ("serve", []) => serve::command(&Workspace::find()?, None).map(|()| true),
        ("serve", [flag, port]) if flag == "--port" => {
            let port = port.parse().with_context(|| format!("--port {port}: it must be 0 to 65535"))?;
            serve::command(&Workspace::find()?, Some(port)).map(|()| true)
        }
        ("test", rest) => stages::command(&Workspace::find()?, rest),
        ("dist", []) => dist::command(&Workspace::find()?, Names::Removed).map(|()| true),
        ("dist", [flag]) if flag == "--names" => dist::command(&Workspace::find()?, Names::Kept).map(|()| true),
        ("screenshot", []) => browser::screenshot(&Workspace::find()?).map(|()| true),
        ("bench", []) => bench::command(&Workspace::find()?),
        _ => bail!("`{}` is not understood\n\n{HELP}", arguments.join(" ")),
    }
}
