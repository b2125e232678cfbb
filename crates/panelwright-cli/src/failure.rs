//! Why a run failed: what, where, and what would be right.

use std::io;
use std::path::PathBuf;

use panelwright::design::{DesignErrors, LinkError};

use crate::args::{NOT_WRITTEN, WRONG_INPUT};

/// Why a run failed.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// A file that cannot be read.
    #[error("{place}: {error}")]
    Read {
        /// The file, or "standard input".
        place: String,
        /// What the system says.
        error: io::Error,
    },
    /// Neither a file nor a link.
    #[error("{given}: there is no such file, and it is no link (a link has a # and then a 1)")]
    NoSuchDesign {
        /// What was given.
        given: String,
    },
    /// A design file with problems, one line each.
    #[error("{}", lines(place, problems))]
    Design {
        /// The file, or "standard input".
        place: String,
        /// Its problems.
        problems: DesignErrors,
    },
    /// A link that does not open.
    #[error("{place}: {error}")]
    Link {
        /// Where the link came from.
        place: String,
        /// What is wrong with it.
        error: LinkError,
    },
    /// A result that cannot be written.
    #[error("{}: cannot be written: {error}", place.display())]
    Write {
        /// The file or folder.
        place: PathBuf,
        /// What the system says.
        error: io::Error,
    },
    /// Data that could not be put into words.
    #[error("the result cannot be written as JSON: {0}")]
    Json(#[from] serde_json::Error),
}

impl Failure {
    /// The exit code that tells what kind of failure it is.
    pub const fn exit_code(&self) -> u8 {
        match self {
            Self::Read { .. } | Self::NoSuchDesign { .. } | Self::Design { .. } | Self::Link { .. } => WRONG_INPUT,
            Self::Write { .. } | Self::Json(_) => NOT_WRITTEN,
        }
    }
}

fn lines(place: &str, problems: &DesignErrors) -> String {
    let lines: Vec<String> = problems.iter().map(|problem| format!("{place}: {problem}")).collect();
    lines.join("\n")
}
