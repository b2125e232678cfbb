//! Reading a zip file: the counterpart of `zip.rs`, for packs that come back from mail, disks and other programs.
//!
//! Source of the format: APPNOTE 6.3.10, sections 4.3.7 (local header), 4.3.12 (central directory), 4.3.16 (its end).
//! The list at the end is what counts; of the headers before each entry only their lengths are used. Every entry is
//! checked by its length and its CRC-32.
//!
//! # Guarantees
//! Whatever the bytes, this ends with the entries or with a [`ZipError`]; memory stays below [`MOST_UNPACKED`] and a
//! little. No name leads out of the pack: absolute names and `..` are refused.

use thiserror::Error;

use crate::design::crc32;

/// The most entries that are read: a pack has about sixty.
pub const MOST_ENTRIES: usize = 4_000;

/// The most bytes of all entries together, unpacked: a pack of a hundred sheets stays far below.
pub const MOST_UNPACKED: usize = 256 << 20;

/// Length of the end record without its remark, and of one entry of the list and of a local header without names.
const END: usize = 22;
const LISTED: usize = 46;
const LOCAL: usize = 30;

/// The longest remark that may follow the end record (4.3.16: its length has two bytes).
const MOST_REMARK: usize = 0xffff;

/// Ways of packing (4.4.5) that are read: as it is, and deflated.
const STORED: u16 = 0;
const DEFLATED: u16 = 8;

/// Bit 0 of the flags (4.4.4): the entry is encrypted.
const ENCRYPTED: u16 = 1;

/// What stands where only a zip64 record has room for the number (4.4.1.4).
const ZIP64: usize = 0xffff_ffff;

/// Why bytes are no zip file that is read here.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ZipError {
    /// No end record: another kind of file, or cut off.
    #[error("this is no zip file, or its end is missing: download or copy it again")]
    NoEnd,
    /// The list of entries does not lie where the end record says, or does not read.
    #[error("the list of files in the zip is damaged near byte {0}")]
    List(usize),
    /// A zip of several parts, or of the kind for more than 4 GB.
    #[error("the zip is split in parts or of the kind for more than 4 GB, which a pack never is")]
    Kind,
    /// More than [`MOST_ENTRIES`].
    #[error("the zip holds {0} files; a pack has at most {MOST_ENTRIES}")]
    TooMany(usize),
    /// More than [`MOST_UNPACKED`].
    #[error("the files of the zip are more than {} MB together, unpacked", MOST_UNPACKED >> 20)]
    TooLarge,
    /// An entry that needs a password.
    #[error("{0}: needs a password")]
    Encrypted(String),
    /// An entry packed in a way that is not read here.
    #[error("{name}: packed in a way that is not read here ({method}); pack the files again as an ordinary zip")]
    Method {
        /// The entry.
        name: String,
        /// The number of the way.
        method: u16,
    },
    /// Bytes that do not unpack to what the list says.
    #[error("{0}: damaged; its bytes do not unpack to what they were")]
    Damaged(String),
    /// A name that is no text, or leads out of the folder.
    #[error("the zip holds a file whose name is no plain path within it: {0}")]
    Name(String),
    /// Two entries of one name: which one counts is anybody's guess.
    #[error("{0}: twice in the zip")]
    Twice(String),
}

/// Names and bytes of every file in a zip, in the order of its list; folders are left out.
///
/// ```
/// use panelwright::documents::pack::{read_zip, zip};
/// let files = vec![("lists/parts.csv".to_owned(), b"1,2".to_vec())];
/// assert_eq!(read_zip(&zip(&files)).unwrap(), files);
/// ```
///
/// # Errors
/// What is wrong with the bytes, and where.
pub fn read_zip(bytes: &[u8]) -> Result<Vec<(String, Vec<u8>)>, ZipError> {
    let end = end_record(bytes).ok_or(ZipError::NoEnd)?;
    let damaged = ZipError::List(end);
    let [disk, first_disk, here, count] = [4, 6, 8, 10].map(|at| word(bytes, end + at).unwrap_or(0));
    let size = long(bytes, end + 12).ok_or(damaged.clone())?;
    let start = long(bytes, end + 16).ok_or(damaged)?;
    if disk != 0 || first_disk != 0 || here != count || size == ZIP64 || start == ZIP64 {
        return Err(ZipError::Kind);
    }
    let count = usize::from(count);
    if count > MOST_ENTRIES {
        return Err(ZipError::TooMany(count));
    }
    let mut files: Vec<(String, Vec<u8>)> = Vec::new();
    let mut names = std::collections::BTreeSet::new();
    let mut left = MOST_UNPACKED;
    let mut at = start;
    for _ in 0..count {
        let entry = Entry::listed(bytes, at)?;
        at = entry.next;
        if entry.name.ends_with('/') {
            continue;
        }
        let unpacked = entry.unpack(bytes, left)?;
        left -= unpacked.len();
        if !names.insert(entry.name.clone()) {
            return Err(ZipError::Twice(entry.name));
        }
        files.push((entry.name, unpacked));
    }
    if at > end { Err(ZipError::List(end)) } else { Ok(files) }
}

/// One line of the list.
struct Entry {
    name: String,
    flags: u16,
    method: u16,
    crc: u32,
    packed: usize,
    size: usize,
    /// Where its local header stands.
    local: usize,
    /// Where the next line of the list begins.
    next: usize,
}

impl Entry {
    fn listed(bytes: &[u8], at: usize) -> Result<Self, ZipError> {
        let read = || {
            let marked = bytes.get(at..at.checked_add(4)?)? == b"PK\x01\x02";
            let names = at.checked_add(LISTED)?;
            let [name, extra, remark] = [28, 30, 32].map(|field| word(bytes, at + field));
            let after_name = names.checked_add(usize::from(name?))?;
            let next = after_name.checked_add(usize::from(extra?))?.checked_add(usize::from(remark?))?;
            bytes.get(at..next)?;
            let entry = Self {
                name: String::new(),
                flags: word(bytes, at + 8)?,
                method: word(bytes, at + 10)?,
                crc: long(bytes, at + 16)? as u32,
                packed: long(bytes, at + 20)?,
                size: long(bytes, at + 24)?,
                local: long(bytes, at + 42)?,
                next,
            };
            marked.then_some((entry, &bytes[names..after_name]))
        };
        let (entry, name) = read().ok_or(ZipError::List(at))?;
        Ok(Self { name: plain(name)?, ..entry })
    }

    /// The bytes of the entry, at most `most`.
    fn unpack(&self, bytes: &[u8], most: usize) -> Result<Vec<u8>, ZipError> {
        if self.flags & ENCRYPTED != 0 {
            return Err(ZipError::Encrypted(self.name.clone()));
        }
        if self.size > most {
            return Err(ZipError::TooLarge);
        }
        let packed = self.packed_bytes(bytes).ok_or_else(|| ZipError::Damaged(self.name.clone()))?;
        let unpacked = match self.method {
            STORED => Some(packed.to_vec()),
            DEFLATED => miniz_oxide::inflate::decompress_to_vec_with_limit(packed, self.size).ok(),
            method => return Err(ZipError::Method { name: self.name.clone(), method }),
        };
        unpacked
            .filter(|unpacked| unpacked.len() == self.size && crc32(unpacked) == self.crc)
            .ok_or_else(|| ZipError::Damaged(self.name.clone()))
    }

    fn packed_bytes<'a>(&self, bytes: &'a [u8]) -> Option<&'a [u8]> {
        let header = bytes.get(self.local..self.local.checked_add(LOCAL)?)?;
        if !header.starts_with(b"PK\x03\x04") {
            return None;
        }
        let names = usize::from(word(header, 26)?) + usize::from(word(header, 28)?);
        let from = self.local.checked_add(LOCAL + names)?;
        bytes.get(from..from.checked_add(self.packed)?)
    }
}

/// Where the end record stands: the last one whose remark ends with the file.
fn end_record(bytes: &[u8]) -> Option<usize> {
    let last = bytes.len().checked_sub(END)?;
    let first = last.saturating_sub(MOST_REMARK);
    (first..=last).rev().find(|&at| {
        bytes[at..].starts_with(b"PK\x05\x06")
            && word(bytes, at + 20).is_some_and(|remark| at + END + usize::from(remark) == bytes.len())
    })
}

/// A name as a plain path within the pack.
fn plain(name: &[u8]) -> Result<String, ZipError> {
    let wrong = || ZipError::Name(String::from_utf8_lossy(name).chars().take(80).collect());
    // Some programs write their own system's separator.
    let text = std::str::from_utf8(name).map_err(|_| wrong())?.replace('\\', "/");
    let leads_out = text.starts_with('/') || text.contains(':') || text.split('/').any(|part| part == "..");
    if text.is_empty() || leads_out || text.chars().any(char::is_control) { Err(wrong()) } else { Ok(text) }
}

fn word(bytes: &[u8], at: usize) -> Option<u16> {
    let two = bytes.get(at..at.checked_add(2)?)?;
    Some(u16::from_le_bytes([two[0], two[1]]))
}

fn long(bytes: &[u8], at: usize) -> Option<usize> {
    let four = bytes.get(at..at.checked_add(4)?)?;
    Some(u32::from_le_bytes([four[0], four[1], four[2], four[3]]) as usize)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::documents::pack::zip;

    fn sample() -> Vec<(String, Vec<u8>)> {
        let long: Vec<u8> = (0..5_000_u32).flat_map(|number| (number * number).to_le_bytes()).collect();
        vec![
            ("README.txt".to_owned(), b"Design ABCD2345\n".to_vec()),
            ("cut/left.dxf".to_owned(), long),
            ("empty".to_owned(), Vec::new()),
        ]
    }

    /// A zip with one entry as it is and a remark, byte for byte by sections 4.3.7, 4.3.12 and 4.3.16.
    #[test]
    fn an_entry_that_is_not_deflated_and_a_remark_are_read() {
        let crc = crc32(b"abc").to_le_bytes();
        let mut header = vec![10, 0, 0, 0, 0, 0, 0, 0, 33, 0];
        header.extend(crc);
        header.extend([3, 0, 0, 0, 3, 0, 0, 0, 1, 0, 0, 0]);
        let local = [b"PK\x03\x04".as_slice(), &header, b"x", b"abc"].concat();
        let list = [b"PK\x01\x02\x14\0".as_slice(), &header, &[0; 14], b"x"].concat();
        let end = [b"PK\x05\x06\0\0\0\0\x01\0\x01\0".as_slice(), &[47, 0, 0, 0], &[34, 0, 0, 0], b"\x02\0hi"].concat();
        let whole = [local, list, end].concat();
        assert_eq!(read_zip(&whole).unwrap(), [("x".to_owned(), b"abc".to_vec())]);
        let mut encrypted = whole.clone();
        encrypted[34 + 8] = 1;
        assert_eq!(read_zip(&encrypted), Err(ZipError::Encrypted("x".to_owned())));
        let mut other = whole.clone();
        other[34 + 10] = 14;
        assert_eq!(read_zip(&other), Err(ZipError::Method { name: "x".to_owned(), method: 14 }));
        let mut large = whole.clone();
        large[34 + 24..34 + 28].copy_from_slice(&[0xf0; 4]);
        assert_eq!(read_zip(&large), Err(ZipError::TooLarge));
        let mut wrong = whole;
        wrong[32] = b'd';
        assert_eq!(read_zip(&wrong), Err(ZipError::Damaged("x".to_owned())));
    }

    #[test]
    fn names_that_lead_out_and_names_twice_are_refused() {
        for name in ["../x", "/x", "a/../../x", "c:x", "a\u{7}", ""] {
            let made = zip(&[(name.to_owned(), b"1".to_vec())]);
            assert!(matches!(read_zip(&made), Err(ZipError::Name(_))), "{name}");
        }
        let one = ("x".to_owned(), b"1".to_vec());
        assert_eq!(read_zip(&zip(&[one.clone(), one])), Err(ZipError::Twice("x".to_owned())));
    }

    #[test]
    fn what_is_no_zip_or_cut_off_is_said_to_be() {
        let whole = zip(&sample());
        assert_eq!(read_zip(b""), Err(ZipError::NoEnd));
        assert_eq!(read_zip(b"%PDF-1.7 and so on, for more than an end record"), Err(ZipError::NoEnd));
        for length in 0..whole.len() {
            assert!(read_zip(&whole[..length]).is_err(), "{length}");
        }
    }

    proptest! {
        #[test]
        fn files_come_back_as_they_went_in(files in prop::collection::btree_map("[a-z]{1,9}(/[a-z]{1,9})?", prop::collection::vec(any::<u8>(), 0..300), 0..8)) {
            let files: Vec<(String, Vec<u8>)> = files.into_iter().collect();
            prop_assert_eq!(read_zip(&zip(&files)).unwrap(), files);
        }

        /// Whatever happens to the bytes, it ends, and no file is handed out with other contents than it had.
        #[test]
        fn damage_never_passes_for_contents(changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..12)) {
            let files = sample();
            let mut bytes = zip(&files);
            for (at, value) in changes {
                let at = at.index(bytes.len());
                bytes[at] = value;
            }
            if let Ok(read) = read_zip(&bytes) {
                for (name, contents) in read {
                    let same = files.iter().any(|(_, known)| *known == contents);
                    prop_assert!(same, "{} has other contents", name);
                }
            }
        }

        #[test]
        fn any_bytes_come_to_an_end(bytes in prop::collection::vec(any::<u8>(), 0..400), tail in any::<bool>()) {
            let mut bytes = bytes;
            if tail {
                // With an end record, so that the list is looked for.
                bytes.extend(b"PK\x05\x06\0\0\0\0\x03\0\x03\0");
                bytes.extend([9, 0, 0, 0, 2, 0, 0, 0, 0, 0]);
            }
            prop_assert!(read_zip(&bytes).is_err());
        }
    }
}
