//! Starting other programs.

use std::io::{BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

/// Runs a command in the open; an error when it fails.
pub fn run(command: &mut Command) -> Result<()> {
    announce(command);
    let status = command.status().with_context(|| format!("{} does not start", shown(command)))?;
    if !status.success() {
        bail!("{} failed ({status})", shown(command));
    }
    Ok(())
}

/// Runs a command quietly and gives what it printed; an error when it fails.
pub fn output(command: &mut Command) -> Result<String> {
    let output =
        command.stderr(Stdio::inherit()).output().with_context(|| format!("{} does not start", shown(command)))?;
    if !output.status.success() {
        bail!("{} failed ({})", shown(command), output.status);
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// Whether a command runs and succeeds; what it prints is not shown.
pub fn succeeds(command: &mut Command) -> bool {
    command.stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok_and(|status| status.success())
}

/// Runs a command in the open and also gives what it printed, and whether it succeeded.
pub fn tee(command: &mut Command) -> Result<(bool, String)> {
    announce(command);
    let mut child =
        command.stdout(Stdio::piped()).spawn().with_context(|| format!("{} does not start", shown(command)))?;
    let mut printed = String::new();
    if let Some(stdout) = child.stdout.take() {
        let mut reader = BufReader::new(stdout);
        let mut line = Vec::new();
        while reader.read_until(b'\n', &mut line)? > 0 {
            std::io::stdout().write_all(&line)?;
            printed.push_str(&String::from_utf8_lossy(&line));
            line.clear();
        }
    }
    Ok((child.wait()?.success(), printed))
}

/// The first of these programs that is on the path.
pub fn find(names: &[&str]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    names
        .iter()
        .find_map(|name| std::env::split_paths(&path).map(|folder| folder.join(name)).find(|file| file.is_file()))
}

fn announce(command: &Command) {
    println!("$ {}", shown(command));
    // The command writes to the same place: what was said before it must come before it.
    let _ = std::io::stdout().flush();
}

/// A command as one would type it, with the program's name alone.
fn shown(command: &Command) -> String {
    let program = PathBuf::from(command.get_program());
    let name = program.file_name().unwrap_or(command.get_program()).to_string_lossy().into_owned();
    let arguments = command.get_args().map(|argument| argument.to_string_lossy().into_owned());
    std::iter::once(name).chain(arguments).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_shown_is_also_given_back() {
        let (fine, printed) = tee(Command::new("sh").args(["-c", "echo one; echo two; exit 3"])).unwrap();
        assert!(!fine);
        assert_eq!(printed, "one\ntwo\n");
    }
}
