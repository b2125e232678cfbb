//! The public list of sizes and their sources as data: what `panelwright sources --json` prints.

use serde::Serialize;

use crate::dimensions::catalogue;

/// One published size.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SourceEntry {
    /// The family of parts.
    pub group: &'static str,
    /// What is measured.
    pub name: String,
    /// The value with its unit.
    pub value: String,
    /// The document, the place in it, and how far it can be trusted, in words.
    pub source: String,
    /// The document with its edition.
    pub document: &'static str,
    /// Figure, table or section.
    pub place: &'static str,
    /// How far it can be trusted.
    pub confidence: &'static str,
}

/// Every size the tables hold, in their order.
#[must_use]
pub fn source_list() -> Vec<SourceEntry> {
    catalogue::all()
        .into_iter()
        .map(|entry| SourceEntry {
            group: entry.group,
            name: entry.name,
            value: entry.value,
            source: entry.source.cite(),
            document: entry.source.document,
            place: entry.source.place,
            confidence: entry.source.confidence.label(),
        })
        .collect()
}
