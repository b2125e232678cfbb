//! Writing to standard output and standard error.

use std::io::{self, Write};
use std::path::PathBuf;

use crate::failure::Failure;

/// Prints a result. A reader that has closed the pipe has had enough, which is no failure.
pub fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            Err(Failure::Write { place: PathBuf::from("standard output"), error })
        }
        _ => Ok(()),
    }
}

/// Says something to the person at the shell, on standard error, each line with the program's name.
pub fn talk(text: &str) -> io::Result<()> {
    let mut err = io::stderr().lock();
    text.lines().try_for_each(|line| writeln!(err, "panelwright: {line}"))
}
