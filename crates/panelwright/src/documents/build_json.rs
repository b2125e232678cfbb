//! `build.json` and `findings.json`: everything that was worked out, for other programs.
//!
//! Described field by field by `schema/build.schema.json`. Lengths are mm, written to 0.0001; boxes and points are in
//! the case frame, paths and centres in their panel's frame (see [`crate::solid`]); path data keeps arcs as arcs, with
//! y up, so that a counter-clockwise arc has its sweep flag set.
//!
//! The types here are twins of the core's own: those may change, the names in the file stay.

mod fasteners;
mod number;
mod panels;
mod parts;

use serde::Serialize;

use self::fasteners::{FastenerEntry, ScrewEntry};
use self::number::{Number, Numbers, numbers};
use self::panels::PanelEntry;
use self::parts::PartEntry;
use super::layout::to_json;
use crate::Build;
use crate::fit::{Finding, Mend, Severity};

/// The format of both files.
const FORMAT: u8 = 1;

#[derive(Serialize)]
struct BuildDocument<'a> {
    format: u8,
    program: &'static str,
    fingerprint: &'a str,
    title: &'a str,
    case: CaseEntry,
    parts: Vec<PartEntry<'a>>,
    panels: Vec<PanelEntry<'a>>,
    fasteners: Vec<FastenerEntry<'a>>,
    screws: Vec<ScrewEntry<'a>>,
    findings: Vec<FindingEntry<'a>>,
}

#[derive(Serialize)]
struct CaseEntry {
    outside_mm: Numbers,
    inside_mm: Numbers,
    thickness_mm: Number,
    gap_mm: Number,
    volume_l: Number,
    sheet_mm2: Number,
}

#[derive(Serialize)]
struct FindingsDocument<'a> {
    format: u8,
    program: &'static str,
    fingerprint: &'a str,
    title: &'a str,
    counts: CountsEntry,
    findings: Vec<FindingEntry<'a>>,
}

#[derive(Serialize)]
struct CountsEntry {
    blocks: usize,
    caution: usize,
    note: usize,
}

#[derive(Serialize)]
struct FindingEntry<'a> {
    rule: &'a str,
    severity: &'static str,
    text: &'a str,
    remedy: &'a str,
    mends: Vec<serde_json::Map<String, serde_json::Value>>,
    measured: Option<Number>,
    needed: Option<Number>,
    unit: &'a str,
    about: &'a [String],
    at_mm: Option<Numbers>,
    source: String,
}

/// The program and its version, as files name it.
const PROGRAM: &str = concat!("panelwright ", env!("CARGO_PKG_VERSION"));

/// The text of `build.json`; the same build gives the same bytes.
#[must_use]
pub fn build_json(build: &Build) -> String {
    let case = build.size();
    let document = BuildDocument {
        format: FORMAT,
        program: PROGRAM,
        fingerprint: &build.fingerprint,
        title: &build.spec.title,
        case: CaseEntry {
            outside_mm: numbers(case.outside_mm),
            inside_mm: numbers(case.inside_mm),
            thickness_mm: Number(case.thickness_mm),
            gap_mm: Number(case.gap_mm),
            volume_l: Number(build.volume_l()),
            sheet_mm2: Number(build.sheet_mm2()),
        },
        parts: build.parts.iter().map(parts::entry).collect(),
        panels: build.panels.iter().map(panels::entry).collect(),
        fasteners: build.fasteners.iter().map(fasteners::fastener).collect(),
        screws: build.screws.iter().map(fasteners::screw).collect(),
        findings: build.findings.iter().map(finding).collect(),
    };
    written(&document)
}

/// The text of `findings.json`, also what `panelwright check --json` prints.
#[must_use]
pub fn findings_json(build: &Build) -> String {
    let count = |severity| build.findings.iter().filter(|finding| finding.severity == severity).count();
    written(&FindingsDocument {
        format: FORMAT,
        program: PROGRAM,
        fingerprint: &build.fingerprint,
        title: &build.spec.title,
        counts: CountsEntry {
            blocks: count(Severity::Blocks),
            caution: count(Severity::Caution),
            note: count(Severity::Note),
        },
        findings: build.findings.iter().map(finding).collect(),
    })
}

fn written(document: &impl Serialize) -> String {
    // Field names are fixed words, so these documents always have a text.
    to_json(document).unwrap_or_default()
}

fn finding(finding: &Finding) -> FindingEntry<'_> {
    FindingEntry {
        rule: finding.rule,
        severity: finding.severity.name(),
        text: &finding.text,
        remedy: &finding.remedy,
        mends: finding.mends.iter().map(Mend::json).collect(),
        measured: finding.measured.map(Number),
        needed: finding.needed.map(Number),
        unit: finding.unit,
        about: &finding.about,
        at_mm: finding.at.map(numbers),
        source: finding.source.cite(),
    }
}
