//! Panelwright from a shell: the same core as the page.
//!
//! Results go to standard output, talk and errors to standard error. Exit codes stand in [`args`]. A reader that
//! closes the pipe early (`panelwright choices | head`) has had enough: that is no error.

mod args;
mod check;
mod failure;
mod input;
mod kits;
mod lay;
mod lists;
mod make;
mod opened;
mod output;
mod pack;

use std::process::ExitCode;

use clap::Parser;
use panelwright::design::{write_file, write_link};
use panelwright::documents::kerf_test::{self, KERF_KEY};
use panelwright::documents::{self, build_json, recut};
use panelwright::drawing::number::format_number;
use panelwright::{Build, sample};

use args::{Arguments, Task};
use failure::Failure;

fn main() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(message) => {
            // Help and version are asked for; everything else is wrong input.
            let code = if message.use_stderr() { args::WRONG_INPUT } else { 0 };
            let _ = message.print();
            return ExitCode::from(code);
        }
    };
    match run(&arguments.task) {
        Ok(code) => ExitCode::from(code),
        Err(failure) => {
            // When standard error is closed too, the exit code still tells.
            let _ = output::talk(&failure.to_string());
            ExitCode::from(failure.exit_code())
        }
    }
}

/// Does what was asked and gives the exit code.
fn run(task: &Task) -> Result<u8, Failure> {
    match task {
        Task::Make { design, out, zip, paper, force } => {
            let mut design = input::design(design)?;
            if let Some(paper) = paper {
                design = make::on_paper(design, paper).map_err(|error| Failure::Option { option: "--paper", error })?;
            }
            let build = make::checked(&design);
            let files = documents::pack::files(&build);
            let mut gone = Vec::new();
            let mut names: Vec<String> = Vec::new();
            if let Some(out) = out {
                gone = pack::write_whole(out, &files, *force)?;
                names.extend(files.iter().map(|(name, _)| format!("{}\n", out.join(name).display())));
            }
            if let Some(file) = zip {
                make::single(file, &documents::pack::zip(&files), *force)?;
                names.push(format!("{}\n", file.display()));
            }
            output::print(&names.concat())?;
            // Talk, not a result: a closed standard error changes nothing.
            let _ = output::talk(&format!("design {}: {}", build.fingerprint, check::summary(&build)));
            let _ = output::talk(&make::aside(&build, &gone));
        }
        Task::TestPage { paper, out, force } => {
            make::test_page(paper, out, *force)?;
            output::print(&format!("{}\n", out.display()))?;
        }
        Task::Kerf { measured } => {
            let kerf = kerf_test::kerf(*measured).ok_or(Failure::Kerf { measured: *measured })?;
            let kerf = format_number(kerf, 2);
            output::print(&format!("{kerf} mm: set {KERF_KEY} to {kerf}\n"))?;
        }
        Task::Check { design, json } => {
            let build = make::checked(&input::design(design)?);
            output::print(&if *json { build_json::findings_json(&build) } else { check::report(&build) })?;
            return Ok(if build.blocked() { args::BLOCKED } else { 0 });
        }
        Task::Compare { old, new, json, out, force } => {
            if old == "-" && new == "-" {
                return Err(Failure::Twice);
            }
            let [old, new] = [Build::of(&input::design(old)?), Build::of(&input::design(new)?)];
            let change = recut::compare(&old, &new);
            if let Some(out) = out {
                pack::write(out, &make::overlays(&old, &new, &change), *force)?;
            }
            output::print(&if *json { change.json() } else { recut::report(&change) })?;
            return Ok(if change.nothing() { 0 } else { args::CHANGED });
        }
        Task::Link { design, base } => {
            let link = write_link(&input::design(design)?);
            output::print(&format!("{base}#{link}\n"))?;
        }
        Task::Open { given, json } => return opened::open(given, *json),
        Task::Kits { kits, sheet, most, steps, json, out, force } => {
            let found = kits::found(kits, sheet, *most, *steps)?;
            if let Some(out) = out {
                pack::write(out, &found.files(), *force)?;
            }
            let answer = found.answer();
            output::print(&if *json { serde_json::to_string_pretty(&answer)? + "\n" } else { found.report() })?;
            return Ok(if answer.rounds == 0 { args::NO_PLACE } else { 0 });
        }
        Task::CheckPrints { design, prints, json } => return opened::check_prints(design, prints, *json),
        Task::Samples { from, count, wild } => {
            for seed in *from..from.saturating_add(*count) {
                let design = sample::design(seed, *wild);
                let chosen = write_file(&design).replace('\n', " ");
                let build = build_json::build_json(&Build::of(&design)).replace('\n', " ");
                output::print(&format!("{{\"seed\": {seed}, \"design\": {chosen}, \"build\": {build}}}\n"))?;
            }
        }
        Task::Digests => output::print(&panelwright::same_bytes::digests())?,
        Task::Lay => lay::lay()?,
        Task::Choices { json } => output::print(&if *json { lists::choices_json()? } else { lists::choices() })?,
        Task::Sources { json } => output::print(&if *json { lists::sources_json()? } else { lists::sources() })?,
    }
    Ok(0)
}
