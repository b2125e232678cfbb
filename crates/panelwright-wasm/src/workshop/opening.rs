//! What a file is that a maker brings: a design, a link, a pack, or a file that bears a fingerprint.

use panelwright::Build;
use panelwright::design::fingerprint::fingerprint;
use panelwright::design::{Design, Spec, looks_like_link, read_file_bytes, read_link, write_file, write_link};
use panelwright::documents::pack::{self, DESIGN_FILE, OpenedPack, Verdict};
use serde::Serialize;
use wasm_bindgen::JsError;

/// Longest text that is taken for a link, bytes: no design's comes near it.
const LONGEST_LINK: usize = 100_000;

/// How every zip begins.
const ZIP: &[u8] = b"PK";

/// What some editors put in front of a text (RFC 3629, section 6).
const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

/// What a file is; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
#[serde(tag = "is", rename_all = "lowercase")]
pub(super) enum LookedAt {
    Design(OpenedDesign),
    Pack(Box<OpenedPack>),
    Marked(Marked),
}

#[derive(Debug, Serialize)]
pub(super) struct OpenedDesign {
    title: String,
    design_file: String,
    link: String,
    fingerprint: String,
}

/// A file that bears a fingerprint, held against the design at hand.
#[derive(Debug, Serialize)]
pub(super) struct Marked {
    verdict: Verdict,
    fingerprints: Vec<String>,
    made_by: Option<String>,
    other_version: bool,
}

/// Says what a file is, and whether it belongs to the design at hand when it is a marked one.
pub(super) fn look_at(build: &Build, name: &str, bytes: &[u8]) -> Result<LookedAt, JsError> {
    if bytes.starts_with(ZIP) {
        return Ok(LookedAt::Pack(Box::new(pack::read_pack(bytes)?)));
    }
    if !pack::stamp(name, bytes).fingerprints.is_empty() {
        return marked(build, name, bytes);
    }
    // What is called a design file is one that may be broken: then what is wrong with it is said.
    let text = bytes.strip_prefix(BYTE_ORDER_MARK).unwrap_or(bytes).trim_ascii_start();
    if text.starts_with(b"{") || name.to_ascii_lowercase().ends_with(".json") {
        return Ok(LookedAt::Design(OpenedDesign::of(&read_file_bytes(bytes)?)));
    }
    match std::str::from_utf8(bytes) {
        Ok(text) if bytes.len() < LONGEST_LINK && looks_like_link(text) => {
            Ok(LookedAt::Design(OpenedDesign::of(&read_link(text)?)))
        }
        _ => Err(JsError::new(
            "this is no design file, no pack and no link, and it bears no fingerprint: it is no file of Panelwright, or was changed since",
        )),
    }
}

/// Opens the file together with the design at hand, as if both lay in one folder.
fn marked(build: &Build, name: &str, bytes: &[u8]) -> Result<LookedAt, JsError> {
    // In a folder of its own, whatever it is called, it is not taken for the design.
    let files =
        [(DESIGN_FILE.to_owned(), write_file(&build.design).into_bytes()), (format!("brought/{name}"), bytes.to_vec())];
    let mut opened = pack::open_files(&files)?;
    let OpenedPack { made_by, other_version, .. } = opened;
    opened
        .files
        .pop()
        .map(|file| {
            let (verdict, fingerprints) = (file.verdict, file.fingerprints);
            LookedAt::Marked(Marked { verdict, fingerprints, made_by, other_version })
        })
        .ok_or_else(|| JsError::new("this file cannot be read"))
}

impl OpenedDesign {
    fn of(design: &Design) -> Self {
        Self {
            title: Spec::of(design).title,
            design_file: write_file(design),
            link: write_link(design),
            fingerprint: fingerprint(design),
        }
    }
}
