//! Reading what was given: a design from a file, a link, a pack or standard input; or any file of a pack.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;

use panelwright::design::{Design, looks_like_link, read_file_bytes, read_link};
use panelwright::documents::pack::{
    DESIGN_FILE, MOST_ENTRIES, MOST_UNPACKED, OpenedPack, Stamp, open_files, read_pack, stamp,
};

use crate::failure::Failure;
use crate::make::File as Named;

const STANDARD_INPUT: &str = "standard input";

/// How every zip file with something in it begins (APPNOTE 6.3.10, 4.3.7).
const ZIP: &[u8] = b"PK\x03\x04";

/// What was given.
pub enum Given {
    /// A design by itself.
    Design(Box<Design>),
    /// A pack, as zip or folder.
    Pack(Box<OpenedPack>),
    /// Another file of a pack, which says whose it is.
    Stamped {
        /// What to call it.
        place: String,
        /// What it says.
        stamp: Stamp,
    },
}

/// The design that `given` names: `-`, a file, a link, or a pack. What stands in a file or comes from standard input
/// may itself be a link.
pub fn design(given: &str) -> Result<Design, Failure> {
    match anything(given)? {
        Given::Design(design) => Ok(*design),
        Given::Pack(pack) => Ok(pack.design),
        Given::Stamped { place, stamp } => {
            Err(Failure::NoDesignInIt { place, fingerprint: stamp.fingerprints.join(", ") })
        }
    }
}

/// Whatever `given` names, looked at for what it is.
pub fn anything(given: &str) -> Result<Given, Failure> {
    let path = Path::new(given);
    if given != "-" && path.is_dir() {
        let files = folder(path)?;
        let opened = open_files(&files).map_err(|error| Failure::Pack { place: given.to_owned(), error })?;
        return Ok(Given::Pack(Box::new(opened)));
    }
    if given != "-" && !path.exists() {
        return match read_link(given) {
            Ok(design) => Ok(Given::Design(Box::new(design))),
            Err(error) if looks_like_link(given) => Err(Failure::Link { place: "the link".to_owned(), error }),
            Err(error) => Err(Failure::NoSuchDesign { given: given.to_owned(), error }),
        };
    }
    let (bytes, place) = bytes(given)?;
    if bytes.starts_with(ZIP) {
        let opened = read_pack(&bytes).map_err(|error| Failure::Pack { place, error })?;
        return Ok(Given::Pack(Box::new(opened)));
    }
    // A drawing may hold an address, which looks like a link: what bears a fingerprint is no link that failed.
    let stamped = |place: String, failure: &dyn Fn(String) -> Failure| {
        let stamp = stamp(&place, &bytes);
        if stamp.fingerprints.is_empty() { Err(failure(place)) } else { Ok(Given::Stamped { place, stamp }) }
    };
    if let Ok(text) = std::str::from_utf8(&bytes)
        && looks_like_link(text)
    {
        return match read_link(text) {
            Ok(design) => Ok(Given::Design(Box::new(design))),
            Err(error) => stamped(place, &|place| Failure::Link { place, error: error.clone() }),
        };
    }
    match read_file_bytes(&bytes) {
        Ok(design) => Ok(Given::Design(Box::new(design))),
        Err(problems) => stamped(place, &|place| Failure::Design { place, problems: problems.clone() }),
    }
}

/// The files of a folder and of those in it, by their names within it. Links to elsewhere are not followed.
fn folder(top: &Path) -> Result<Vec<Named>, Failure> {
    let mut files = Vec::new();
    let mut left = MOST_UNPACKED as u64;
    let mut folders = vec![String::new()];
    let failed = |path: &Path, error| Failure::Read { place: path.display().to_string(), error };
    // Where no design lies in it or one folder below, it is no pack, and nothing else is read.
    let inner = fs::read_dir(top).map_err(|error| failed(top, error))?.flatten().map(|entry| entry.path());
    if !inner.chain([top.to_owned()]).any(|folder| folder.join(DESIGN_FILE).is_file()) {
        return Ok(files);
    }
    while let Some(within) = folders.pop() {
        let path = top.join(&within);
        let mut entries: Vec<fs::DirEntry> =
            fs::read_dir(&path).and_then(Iterator::collect).map_err(|error| failed(&path, error))?;
        entries.sort_by_key(fs::DirEntry::file_name);
        for entry in entries {
            let name = format!("{within}{}", entry.file_name().to_string_lossy());
            let kind = entry.file_type().map_err(|error| failed(&entry.path(), error))?;
            if kind.is_dir() {
                folders.push(format!("{name}/"));
            } else if kind.is_file() {
                let mut bytes = Vec::new();
                let read = File::open(entry.path()).and_then(|file| file.take(left + 1).read_to_end(&mut bytes));
                read.map_err(|error| failed(&entry.path(), error))?;
                if bytes.len() as u64 > left || files.len() >= MOST_ENTRIES {
                    return Err(Failure::TooMuch { place: top.display().to_string() });
                }
                left -= bytes.len() as u64;
                files.push((name, bytes));
            }
        }
    }
    Ok(files)
}

/// The bytes of a file or of standard input, with what to call the place. Never more than the largest pack may have, and
/// one: that one too many is what the core then complains about.
fn bytes(given: &str) -> Result<(Vec<u8>, String), Failure> {
    let place = if given == "-" { STANDARD_INPUT } else { given }.to_owned();
    let mut bytes = Vec::new();
    let mut read = |from: &mut dyn Read| from.take(MOST_UNPACKED as u64 + 1).read_to_end(&mut bytes);
    let done = if given == "-" {
        read(&mut io::stdin().lock())
    } else {
        File::open(given).and_then(|mut file| read(&mut file))
    };
    match done {
        Ok(_) => Ok((bytes, place)),
        Err(error) => Err(Failure::Read { place, error }),
    }
}
