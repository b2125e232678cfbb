//! What a pack says, and every paper of it that is saved singly, before anything else: that its design is blocked, or
//! that its sheets do not suffice. Who reads only the first lines of one file must not cut in vain.

use super::sheets::STOCK_RULE;
use crate::fit::{Finding, Severity};

/// What stands first in every document of a design with these findings; empty when nothing is to be said.
#[must_use]
pub fn warnings(findings: &[Finding]) -> Vec<String> {
    blocked(findings).into_iter().chain(short(findings).map(|finding| finding.text.clone())).collect()
}

/// The findings that say that the sheets do not suffice.
pub fn short(findings: &[Finding]) -> impl Iterator<Item = &Finding> {
    findings.iter().filter(|finding| finding.rule == STOCK_RULE)
}

/// That something blocks the design, and how much.
#[must_use]
pub fn blocked(findings: &[Finding]) -> Option<String> {
    match blocking(findings).count() {
        0 => None,
        1 => Some("Do not cut yet: 1 finding blocks this design.".to_owned()),
        count => Some(format!("Do not cut yet: {count} findings block this design.")),
    }
}

/// The findings that block.
pub fn blocking(findings: &[Finding]) -> impl Iterator<Item = &Finding> {
    findings.iter().filter(|finding| finding.severity == Severity::Blocks)
}
