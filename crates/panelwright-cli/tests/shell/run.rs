//! Running the program.

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// What a run gave.
#[derive(Debug)]
pub struct Done {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// Runs the program with arguments and nothing on standard input.
pub fn run(arguments: &[&str]) -> Done {
    run_with(arguments, b"")
}

/// Runs the program with arguments and bytes on standard input.
pub fn run_with(arguments: &[&str], given: &[u8]) -> Done {
    let mut child = Command::new(env!("CARGO_BIN_EXE_panelwright"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // The program need not read what it is given.
    let _ = child.stdin.take().unwrap().write_all(given);
    let output = child.wait_with_output().unwrap();
    Done {
        code: output.status.code().unwrap(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

impl Done {
    /// The printed result of a run that went well and said nothing.
    #[track_caller]
    pub fn printed(self) -> String {
        assert_eq!((self.code, self.err.as_str()), (0, ""), "{}", self.out);
        self.out
    }

    /// What a run said that failed with `code` and printed nothing.
    #[track_caller]
    pub fn failed(self, code: i32) -> String {
        assert_eq!((self.code, self.out.as_str()), (code, ""), "{}", self.err);
        assert!(self.err.lines().all(|line| line.starts_with("panelwright: ")), "{}", self.err);
        self.err
    }
}

/// An empty folder of this test's own.
pub fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// A file with this text in a folder, and its name for the command line.
pub fn file(folder: &std::path::Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}
