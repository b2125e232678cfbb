//! Reading a design from what was given: a file, a link, or standard input.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use panelwright::design::{Design, MOST_BYTES, looks_like_link, read_file_bytes, read_link};

use crate::failure::Failure;

const STANDARD_INPUT: &str = "standard input";

/// The design that `given` names: `-`, a file, or a link. What stands in a file or comes from standard input may
/// itself be a link.
pub fn design(given: &str) -> Result<Design, Failure> {
    if given == "-" || Path::new(given).exists() {
        let (bytes, place) = bytes(given)?;
        return match std::str::from_utf8(&bytes) {
            Ok(text) if looks_like_link(text) => read_link(text).map_err(|error| Failure::Link { place, error }),
            _ => read_file_bytes(&bytes).map_err(|problems| Failure::Design { place, problems }),
        };
    }
    if looks_like_link(given) {
        return read_link(given).map_err(|error| Failure::Link { place: "the link".to_owned(), error });
    }
    Err(Failure::NoSuchDesign { given: given.to_owned() })
}

/// The design of a link given as such, or of one that comes from standard input.
pub fn link(given: &str) -> Result<Design, Failure> {
    if given != "-" {
        return read_link(given).map_err(|error| Failure::Link { place: "the link".to_owned(), error });
    }
    let (bytes, place) = bytes(given)?;
    read_link(&String::from_utf8_lossy(&bytes)).map_err(|error| Failure::Link { place, error })
}

/// The bytes of a file or of standard input, with what to call the place. Never more than a design file may have, and
/// one: that one too many is what the core then complains about.
fn bytes(given: &str) -> Result<(Vec<u8>, String), Failure> {
    let place = if given == "-" { STANDARD_INPUT } else { given }.to_owned();
    let mut bytes = Vec::new();
    let most = MOST_BYTES as u64 + 1;
    let read = if given == "-" {
        io::stdin().lock().take(most).read_to_end(&mut bytes)
    } else {
        File::open(given).and_then(|file| file.take(most).read_to_end(&mut bytes))
    };
    match read {
        Ok(_) => Ok((bytes, place)),
        Err(error) => Err(Failure::Read { place, error }),
    }
}
