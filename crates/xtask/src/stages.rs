//! `cargo xtask test`: the stages, from the quickest to the slowest, and what came of each.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::process::Command;
use std::sync::OnceLock;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};

use crate::browser::{self, Profile};
use crate::count::Count;
use crate::setup::{Need, Setup};
use crate::workspace::Workspace;
use crate::{commands, dist, tidy, wasm};

/// One stage of the tests.
struct Stage {
    name: &'static str,
    what: &'static str,
    needs: &'static [Need],
    /// Whether the project has anything for this stage.
    exists: fn(&Workspace) -> bool,
    run: fn(&Workspace, &mut Count) -> Result<()>,
}

const STAGES: [Stage; 9] = [
    Stage { name: "tidy", what: "house rules a machine can see", needs: &[], exists: always, run: tidy::stage },
    Stage { name: "fmt", what: "Rust is formatted", needs: &[], exists: always, run: fmt },
    Stage { name: "clippy", what: "Rust without warnings", needs: &[Need::WasmTarget], exists: always, run: clippy },
    Stage { name: "doc", what: "documentation without warnings", needs: &[], exists: always, run: doc },
    Stage { name: "unit", what: "Rust tests", needs: &[], exists: always, run: unit },
    Stage {
        name: "types",
        what: "type check of the page",
        needs: &[Need::WasmTarget, Need::NodeModules],
        exists: always,
        run: types,
    },
    Stage {
        name: "wasm",
        what: "the core in the browser",
        needs: &[Need::WasmTarget, Need::Chromium],
        exists: always,
        run: wasm_tests,
    },
    Stage {
        name: "outside",
        what: "checks by other programs",
        needs: &[Need::Python, Need::PdfReaders, Need::WasmTarget],
        exists: |workspace| !python_tests(workspace).is_empty(),
        run: outside,
    },
    Stage {
        name: "page",
        what: "the page as a visitor uses it",
        needs: &[Need::WasmTarget, Need::NodeModules, Need::Chromium, Need::PdfReaders],
        exists: |workspace| !page_tests(workspace).is_empty(),
        run: page,
    },
];

/// What came of a stage.
enum Outcome {
    Passed,
    Failed(String),
    Skipped(String),
    NotReached,
}

struct Report {
    name: &'static str,
    outcome: Outcome,
    count: Count,
    time: Duration,
}

/// Runs the named stages, or all; `false` when something failed.
pub fn command(workspace: &Workspace, arguments: &[String]) -> Result<bool> {
    let mut keep_going = false;
    let mut named = BTreeSet::new();
    for argument in arguments {
        match argument.as_str() {
            "--list" => {
                for stage in &STAGES {
                    println!("{:<8} {}", stage.name, stage.what);
                }
                return Ok(true);
            }
            "--keep-going" => keep_going = true,
            name if STAGES.iter().any(|stage| stage.name == name) => {
                named.insert(name);
            }
            other => {
                let names = STAGES.map(|stage| stage.name).join(", ");
                bail!("there is no stage `{other}`; the stages are {names}");
            }
        }
    }
    let chosen: Vec<&Stage> = STAGES
        .iter()
        .filter(|stage| if named.is_empty() { (stage.exists)(workspace) } else { named.contains(stage.name) })
        .collect();

    let mut setup = Setup::new(workspace);
    setup.install_packages(&chosen.iter().flat_map(|stage| stage.needs).copied().collect());
    let mut reports = Vec::new();
    let mut stop = false;
    for stage in chosen {
        let report = if stop { Report::not_reached(stage) } else { run(workspace, &mut setup, stage) };
        stop = stop || (matches!(report.outcome, Outcome::Failed(_)) && !keep_going);
        reports.push(report);
    }
    let strict = std::env::var("CI").is_ok_and(|value| !value.is_empty() && value != "0" && value != "false");
    Ok(close(&reports, strict))
}

fn run(workspace: &Workspace, setup: &mut Setup<'_>, stage: &Stage) -> Report {
    println!("\n== {}: {}", stage.name, stage.what);
    let start = Instant::now();
    let mut count = Count::default();
    let missing: Vec<String> = stage.needs.iter().filter_map(|need| setup.have(*need).err()).collect();
    let outcome = if missing.is_empty() {
        match (stage.run)(workspace, &mut count) {
            Ok(()) => Outcome::Passed,
            Err(error) => Outcome::Failed(format!("{error:#}")),
        }
    } else {
        Outcome::Skipped(missing.join("; "))
    };
    Report { name: stage.name, outcome, count, time: start.elapsed() }
}

impl Report {
    fn not_reached(stage: &Stage) -> Self {
        Self { name: stage.name, outcome: Outcome::NotReached, count: Count::default(), time: Duration::ZERO }
    }

    /// Its tests; a stage that counts none counts as one test itself.
    fn tests(&self) -> Count {
        let mut count = self.count;
        match &self.outcome {
            Outcome::Passed if count.total() == 0 => count.passed = 1,
            Outcome::Failed(_) => count.failed = count.failed.max(1),
            Outcome::Skipped(_) | Outcome::NotReached => count.skipped += 1,
            Outcome::Passed => {}
        }
        count
    }
}

/// Prints the table and the closing line; `true` when all is well.
fn close(reports: &[Report], strict: bool) -> bool {
    let mut all = Count::default();
    println!("\n{:<8} {:<12} {:>6} {:>8}", "stage", "result", "tests", "seconds");
    for report in reports {
        let (word, why) = match &report.outcome {
            Outcome::Passed => ("passed", ""),
            Outcome::Failed(why) => ("FAILED", why.as_str()),
            Outcome::Skipped(why) => ("SKIPPED", why.as_str()),
            Outcome::NotReached => ("not reached", ""),
        };
        let tests = match report.count.total() {
            0 => String::new(),
            total => total.to_string(),
        };
        let line = format!("{:<8} {word:<12} {tests:>6} {:>8.1}  {why}", report.name, report.time.as_secs_f64());
        println!("{}", line.trim_end());
        all += report.tests();
    }
    if all.skipped > 0 {
        println!("\n{} SKIPPED: what was skipped is not tested.", all.skipped);
    }
    let failed = all.failed > 0 || (strict && all.skipped > 0);
    if strict && all.skipped > 0 {
        println!("CI is set, so a skip counts as a failure.");
    }
    println!("\n{} passed, {} failed, {} skipped", all.passed, all.failed, all.skipped);
    !failed
}

/// Runs a test program in the open and counts its tests.
fn tests(command: &mut Command, count: &mut Count) -> Result<()> {
    let (fine, printed) = commands::tee(command)?;
    *count += Count::read(&printed);
    if fine { Ok(()) } else { bail!("it failed; its own words are above") }
}

fn always(_: &Workspace) -> bool {
    true
}

fn fmt(workspace: &Workspace, _: &mut Count) -> Result<()> {
    commands::run(workspace.cargo().args(["fmt", "--all", "--check"]))
}

fn clippy(workspace: &Workspace, _: &mut Count) -> Result<()> {
    commands::run(workspace.cargo().args(["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"]))?;
    let mut boundary = workspace.cargo();
    boundary.args(["clippy", "--package=panelwright-wasm", "--all-targets", "--target", wasm::TARGET]);
    // One of its tests holds a file that only the stage `wasm` makes; to be read for warnings any file will do.
    boundary.env("PANELWRIGHT_NATIVE_DIGESTS", workspace.root.join("README.md")).args(["--", "-D", "warnings"]);
    commands::run(&mut boundary)
}

fn doc(workspace: &Workspace, _: &mut Count) -> Result<()> {
    commands::run(workspace.cargo().args(["doc", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
}

fn unit(workspace: &Workspace, count: &mut Count) -> Result<()> {
    tests(workspace.cargo().args(["test", "--workspace", "--exclude=xtask"]), count)?;
    // In its own profile, or everything it is made of would be built a second time.
    tests(workspace.cargo().args(["test", "--package=xtask", "--profile=tool"]), count)
}

fn types(workspace: &Workspace, _: &mut Count) -> Result<()> {
    wasm::lay_types(workspace)?;
    for settings in ["tsconfig.json", "tsconfig.worker.json"] {
        let settings = workspace.web().join(settings);
        if settings.exists() {
            commands::run(Command::new(workspace.npm_program("tsc")).arg("--project").arg(settings))?;
        }
    }
    Ok(())
}

fn wasm_tests(workspace: &Workspace, count: &mut Count) -> Result<()> {
    commands::run(workspace.cargo().args([
        "build",
        "--package=xtask",
        "--profile=tool",
        "--features=wasm-test-runner",
        "--bin=wasm-test-runner",
    ]))?;
    let chromium = browser::chromium().context("no Chromium")?;
    let driver = browser::driver().context("no chromedriver")?;
    let profile = Profile::new(workspace)?;
    let mut command = workspace.cargo();
    command
        .args(["test", "--package=panelwright-wasm", "--tests", "--target", wasm::TARGET])
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", workspace.target.join("tool/wasm-test-runner"))
        .env("PANELWRIGHT_NATIVE_DIGESTS", native_digests(workspace)?)
        .env("CHROMEDRIVER", driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", profile.webdriver_file(&chromium)?)
        .env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "60")
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300");
    tests(&mut command, count)?;
    if count.total() == 0 {
        bail!("no test ran in the browser");
    }
    Ok(())
}

/// Digests of the files of some designs, as the native program makes them; a test holds the page's module to them.
fn native_digests(workspace: &Workspace) -> Result<PathBuf> {
    commands::run(workspace.cargo().args(["build", "--package=panelwright-cli"]))?;
    let output = Command::new(workspace.target.join("debug/panelwright")).arg("digests").output()?;
    if !output.status.success() {
        bail!("`panelwright digests` failed");
    }
    let file = workspace.target.join("native-digests.txt");
    std::fs::write(&file, output.stdout)?;
    Ok(file)
}

fn outside(workspace: &Workspace, count: &mut Count) -> Result<()> {
    built_page(workspace)?;
    let mut command = Command::new(workspace.python());
    command.args(["-m", "pytest", "-q", "-rs", "-p", "no:cacheprovider", "tests"]);
    tests(with_what_was_built(workspace, &mut command)?, count)
}

fn page(workspace: &Workspace, count: &mut Count) -> Result<()> {
    built_page(workspace)?;
    let mut command = Command::new("node");
    command.args(["--test", "--test-reporter=spec", "--test-timeout=180000"]).args(page_tests(workspace));
    tests(with_what_was_built(workspace, &mut command)?, count)
}

/// The page, put together once however many stages look at it.
fn built_page(workspace: &Workspace) -> Result<()> {
    static BUILT: OnceLock<()> = OnceLock::new();
    if BUILT.get().is_none() {
        dist::assemble(workspace)?;
        BUILT.get_or_init(|| ());
    }
    Ok(())
}

/// Tells a test program where the command line tool, the page and the browser are.
fn with_what_was_built<'a>(workspace: &Workspace, command: &'a mut Command) -> Result<&'a mut Command> {
    if workspace.has_crate("panelwright-cli") {
        commands::run(workspace.cargo().args(["build", "--package=panelwright-cli"]))?;
        command.env("PANELWRIGHT_BIN", workspace.target.join("debug/panelwright"));
    }
    if let Some(chromium) = browser::chromium() {
        command.env("CHROMIUM", chromium);
    }
    Ok(command.env("PANELWRIGHT_DIST", workspace.dist()).current_dir(&workspace.root))
}

fn python_tests(workspace: &Workspace) -> Vec<PathBuf> {
    test_files(workspace, |name| name.starts_with("test_") && name.ends_with(".py"))
}

fn page_tests(workspace: &Workspace) -> Vec<PathBuf> {
    test_files(workspace, |name| name.ends_with(".test.mjs"))
}

/// The test files of one kind, relative to the project.
fn test_files(workspace: &Workspace, belongs: impl Fn(&str) -> bool) -> Vec<PathBuf> {
    let files = dist::files_below(&workspace.root.join("tests")).unwrap_or_default();
    files
        .into_iter()
        .filter(|file| !file.components().any(|part| part.as_os_str() == "node_modules"))
        .filter(|file| file.file_name().is_some_and(|name| belongs(&name.to_string_lossy())))
        .map(|file| PathBuf::from("tests").join(file))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn report(outcome: Outcome, passed: usize, failed: usize, skipped: usize) -> Report {
        Report { name: "x", outcome, count: Count { passed, failed, skipped }, time: Duration::ZERO }
    }

    #[test]
    fn a_skip_fails_only_where_it_must() {
        let skipped = [report(Outcome::Passed, 3, 0, 0), report(Outcome::Skipped("no browser".into()), 0, 0, 0)];
        assert!(close(&skipped, false));
        assert!(!close(&skipped, true));
        let inside = [report(Outcome::Passed, 3, 0, 1)];
        assert!(close(&inside, false));
        assert!(!close(&inside, true));
    }

    #[test]
    fn a_stage_that_fails_without_counting_is_one_failure() {
        let broken = report(Outcome::Failed("does not compile".into()), 2, 0, 0);
        assert_eq!(broken.tests(), Count { passed: 2, failed: 1, skipped: 0 });
        assert!(!close(&[broken], false));
        assert_eq!(report(Outcome::Passed, 0, 0, 0).tests().passed, 1);
    }
}
