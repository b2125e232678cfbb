//! `cargo xtask bench`: times natively and in the browser, and sizes, against their budgets.
//!
//! A bench is a program that prints, among what else it says, one JSON object a line:
//! `{"bench": "full recompute", "p50_ms": 1.2, "p95_ms": 1.9, "budget_ms": 4.0}`, the budget
//! (for the 95th percentile) only where there is one.

use std::process::Command;

use anyhow::{Result, bail};

use crate::setup::{Need, Setup};
use crate::sizes::Sizes;
use crate::workspace::Workspace;
use crate::{browser, commands, dist};

/// One measured thing.
#[derive(Debug, PartialEq)]
struct Timed {
    name: String,
    p50_ms: f64,
    p95_ms: f64,
    budget_ms: Option<f64>,
}

impl Timed {
    fn within(&self) -> bool {
        self.budget_ms.is_none_or(|budget| self.p95_ms <= budget)
    }
}

/// Measures and prints a table; `false` when something is over its budget.
pub fn command(workspace: &Workspace) -> Result<bool> {
    let mut timed = Vec::new();
    if workspace.has_crate("panelwright-bench") {
        timed.extend(measure("native", workspace.cargo().args(["run", "--release", "--package=panelwright-bench"]))?);
    } else {
        println!("There is no native bench (crates/panelwright-bench).");
    }
    let mut setup = Setup::new(workspace);
    setup.install_packages(&[Need::WasmTarget, Need::NodeModules, Need::Chromium, Need::Python].into());
    match setup.have(Need::Python) {
        Ok(()) => timed.extend(measure("native", &mut against_ezdxf(workspace)?)?),
        Err(missing) => println!("SKIPPED: nothing to compare the DXF writer with: {missing}"),
    }
    let npm = setup.have(Need::NodeModules);
    if let Err(missing) = setup.have(Need::Python) {
        println!("SKIPPED: layouts are not compared with another packer: {missing}");
    } else {
        commands::run(workspace.cargo().args(["build", "--release", "--package=panelwright-cli"]))?;
        let mut command = Command::new(workspace.python());
        command.arg("tests/outside/bench_stock.py").current_dir(&workspace.root);
        command.env("PANELWRIGHT_BIN", workspace.target.join("release/panelwright"));
        timed.extend(measure("native", &mut command)?);
    }
    dist::assemble(workspace)?;
    if let Err(missing) = npm.and_then(|()| setup.have(Need::Chromium)) {
        println!("SKIPPED: nothing is measured in the browser: {missing}");
    } else if workspace.browser_tests().join("bench.mjs").is_file() {
        timed.extend(measure("browser", &mut browser::script(workspace, "bench.mjs"))?);
    } else {
        println!("There is no bench in the browser (tests/browser/bench.mjs).");
    }

    println!("\n{:<44} {:>9} {:>9} {:>9}", "bench", "p50 ms", "p95 ms", "budget");
    for one in &timed {
        let budget = one.budget_ms.map_or(String::new(), |budget| format!("{budget:.1}"));
        let verdict = if one.within() { "" } else { "OVER" };
        let line = format!("{:<44} {:>9.3} {:>9.3} {budget:>9} {verdict}", one.name, one.p50_ms, one.p95_ms);
        println!("{}", line.trim_end());
    }
    let sizes = Sizes::of(&workspace.dist())?;
    print!("\n{}", sizes.table());
    Ok(timed.iter().all(Timed::within) && sizes.within())
}

/// The program that times our DXF writer and another's on the same contours, one after the other on this machine.
fn against_ezdxf(workspace: &Workspace) -> Result<Command> {
    commands::run(workspace.cargo().args(["build", "--release", "--package=panelwright-bench"]))?;
    let mut command = Command::new(workspace.python());
    command.arg("tests/outside/bench_dxf.py").arg(workspace.target.join("release/panelwright-bench"));
    command.current_dir(&workspace.root);
    Ok(command)
}

fn measure(place: &str, command: &mut Command) -> Result<Vec<Timed>> {
    let (fine, printed) = commands::tee(command)?;
    let timed = read(place, &printed);
    if !fine || timed.is_empty() {
        bail!("the {place} bench failed or measured nothing");
    }
    Ok(timed)
}

fn read(place: &str, printed: &str) -> Vec<Timed> {
    let objects = printed.lines().filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok());
    objects
        .filter_map(|object| {
            Some(Timed {
                name: format!("{} ({place})", object["bench"].as_str()?),
                p50_ms: object["p50_ms"].as_f64()?,
                p95_ms: object["p95_ms"].as_f64()?,
                budget_ms: object["budget_ms"].as_f64(),
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_a_bench_prints_and_holds_it_to_its_budget() {
        let printed = "warming up\n{\"bench\":\"recompute\",\"p50_ms\":1,\"p95_ms\":4.5,\"budget_ms\":4}\n{\"other\":1}\n\
                       {\"bench\":\"pdf\",\"p50_ms\":1,\"p95_ms\":9}\n";
        let timed = read("native", printed);
        assert_eq!(timed.len(), 2);
        assert_eq!(timed[0].name, "recompute (native)");
        assert!(!timed[0].within());
        assert!(timed[1].within());
    }
}
