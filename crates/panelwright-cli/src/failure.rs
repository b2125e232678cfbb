//! Why a run failed: what, where, and what would be right.

use std::io;
use std::path::PathBuf;

use panelwright::design::fingerprint::FingerprintError;
use panelwright::design::{DesignError, DesignErrors, LinkError};
use panelwright::documents::kits::KitError;
use panelwright::documents::pack::PackError;

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
    #[error("{given}: there is no such file, and it is no link (a link has a # and then a 1): {error}")]
    NoSuchDesign {
        /// What was given.
        given: String,
        /// Why it is no link.
        error: LinkError,
    },
    /// A zip or folder that is no pack.
    #[error("{place}: {error}")]
    Pack {
        /// The zip or folder.
        place: String,
        /// What is wrong with it.
        error: PackError,
    },
    /// A folder with more in it than a pack has.
    #[error("{place}: more files, or larger ones, than a pack has; give the folder of the pack itself")]
    TooMuch {
        /// The folder.
        place: String,
    },
    /// A file made from a design, where a design is wanted.
    #[error("{place}: made from design {fingerprint}, but the design itself is not in it; give its design.json")]
    NoDesignInIt {
        /// The file.
        place: String,
        /// What it bears.
        fingerprint: String,
    },
    /// Kits that cannot be worked on.
    #[error("{0}")]
    Kits(#[from] KitError),
    /// A sheet on the command line that is none.
    #[error("--sheet {given}: must be WIDTHxHEIGHT in mm, then :COUNT, then @MATERIAL, such as 1220x610:5@fibreboard")]
    Sheet {
        /// What was given.
        given: String,
    },
    /// What was typed is no fingerprint, and no file either.
    #[error("{error}; and there is no such file")]
    Fingerprint {
        /// What is wrong with it.
        error: FingerprintError,
    },
    /// A test piece that measures what it cannot.
    #[error("{measured} mm: the pieces of the kerf test piece measure less than 100 mm together, and 90 mm at least")]
    Kerf {
        /// What was given.
        measured: f64,
    },
    /// Two designs from one standard input.
    #[error("standard input holds one design; name a file or a link for the other")]
    Twice,
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
    /// A value on the command line that its choice does not take.
    #[error("{option}: {error}")]
    Option {
        /// The option.
        option: &'static str,
        /// What is wrong with it.
        error: DesignError,
    },
    /// A file of the pack that is there already.
    #[error("{}: there already; give another folder, or --force to replace the files of the pack", place.display())]
    Exists {
        /// The file.
        place: PathBuf,
    },
    /// A file where a folder should be, or the other way round.
    #[error("{}: in the way; give another folder", place.display())]
    InTheWay {
        /// What is in the way.
        place: PathBuf,
    },
    /// A result that cannot be written.
    #[error("{}: cannot be written: {error}", place.display())]
    Write {
        /// The file or folder.
        place: PathBuf,
        /// What the system says.
        error: io::Error,
    },
    /// A job of rectangles that cannot be worked on.
    #[error("standard input: {what}")]
    Job {
        /// What is wrong with it.
        what: String,
    },
    /// Data that could not be put into words.
    #[error("the result cannot be written as JSON: {0}")]
    Json(#[from] serde_json::Error),
}

impl Failure {
    /// The exit code that tells what kind of failure it is.
    pub const fn exit_code(&self) -> u8 {
        match self {
            Self::Write { .. } | Self::Json(_) => NOT_WRITTEN,
            _ => WRONG_INPUT,
        }
    }
}

fn lines(place: &str, problems: &DesignErrors) -> String {
    let lines: Vec<String> = problems.iter().map(|problem| format!("{place}: {problem}")).collect();
    lines.join("\n")
}
