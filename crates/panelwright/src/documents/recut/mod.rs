//! Recut: what a new design means for a case that is built already. Each panel is unchanged, or wants more holes, or is
//! trimmed, or must be made again; and which fasteners change.
//!
//! Only wood that is there can be worked on: an old panel serves when everything that is gone from it is also gone from
//! the new one. Nothing is called unchanged when a hole moved by more than [`MOVED_MM`].

mod cover;
mod overlay;
mod panel;
mod same;
#[cfg(test)]
mod tests;
mod words;

use serde::Serialize;

use super::layout::to_json;
use crate::Build;
use crate::design::Wall;

pub use overlay::{overlay, overlay_svg};
pub use words::report;

/// A hole, edge or line that moved by more than this has moved, mm (a tenth of what careful hand work keeps).
pub const MOVED_MM: f64 = 0.05;

/// What becomes of an old panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// As it is.
    Unchanged,
    /// More holes or openings; nothing else.
    DrillMore,
    /// Smaller, or its outline cut deeper; perhaps more holes as well.
    Trim,
    /// Made again.
    Recut,
}

impl Verdict {
    /// The word used in files and lists.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Unchanged => "unchanged",
            Self::DrillMore => "drill more",
            Self::Trim => "trim",
            Self::Recut => "recut",
        }
    }
}

/// A hole or opening that an old panel wants besides those it has.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Added {
    /// Its name on the new panel.
    pub id: String,
    /// Letter in the new hole key, when it is drilled.
    pub letter: Option<String>,
    /// Diameter, when it is round.
    pub diameter_mm: Option<f64>,
    /// Its centre on the new panel, seen from outside.
    pub centre_mm: [f64; 2],
    /// How deep it goes, when it does not go through.
    pub depth_mm: Option<f64>,
    /// Whether it makes something larger that is there already.
    pub enlarges: bool,
    /// Whether it makes something deeper that is there already and is as wide.
    pub deepens: bool,
    /// Why it is there.
    pub why: String,
}

/// How much comes off an edge.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TrimEdge {
    /// The edge, seen from outside.
    pub edge: &'static str,
    /// How much.
    pub by_mm: f64,
}

/// What becomes of one panel.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanelChange {
    /// Its name in files.
    pub panel: &'static str,
    /// What people call it.
    pub label: &'static str,
    /// The verdict.
    pub verdict: Verdict,
    /// Why, in words; empty when unchanged.
    pub why: Vec<String>,
    /// Holes and openings to add.
    pub added: Vec<Added>,
    /// What comes off which edge.
    pub trims: Vec<TrimEdge>,
    /// Where the new panel's lower left corner lies on the old one.
    pub new_on_old_mm: [f64; 2],
}

impl PanelChange {
    /// The same panel made again for this reason, too.
    fn recut(mut self, why: &str) -> Self {
        if self.verdict != Verdict::Recut {
            self.why.clear();
        }
        self.why.insert(0, why.to_owned());
        self.verdict = Verdict::Recut;
        self.trims.clear();
        self.added.clear();
        self.new_on_old_mm = [0.0; 2];
        self
    }
}

/// A fastener whose number changes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FastenerChange {
    /// What, with the words of `build.json`.
    pub what: String,
    /// Length.
    pub length_mm: Option<f64>,
    /// How many the old case has.
    pub old: usize,
    /// How many the new one has.
    pub new: usize,
}

/// What changes from one design to another.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Recut {
    /// Fingerprint of the old design.
    pub old: String,
    /// Fingerprint of the new design.
    pub new: String,
    /// One entry a panel.
    pub panels: Vec<PanelChange>,
    /// Film and paint that change, in words; panels that stay are covered anew.
    pub cover: Vec<String>,
    /// Fasteners that change.
    pub fasteners: Vec<FastenerChange>,
}

impl Recut {
    /// Whether neither a panel nor its cover nor a fastener changes.
    #[must_use]
    pub fn nothing(&self) -> bool {
        self.fasteners.is_empty()
            && self.cover.is_empty()
            && self.panels.iter().all(|panel| panel.verdict == Verdict::Unchanged)
    }

    /// As JSON.
    #[must_use]
    pub fn json(&self) -> String {
        // Field names are fixed words, so there always is a text.
        to_json(self).unwrap_or_default()
    }
}

/// Compares two cases that are worked out.
#[must_use]
pub fn compare(old: &Build, new: &Build) -> Recut {
    let other = cover::material(&old.spec.sheet, &new.spec.sheet);
    let panel = |wall| {
        let change = panel::compare(old.panel(wall)?, new.panel(wall)?);
        Some(match &other {
            Some(why) => change.recut(why),
            None => change,
        })
    };
    Recut {
        old: old.fingerprint.clone(),
        new: new.fingerprint.clone(),
        panels: Wall::ALL.into_iter().filter_map(panel).collect(),
        cover: cover::changes(&old.spec.sheet, &new.spec.sheet),
        fasteners: fasteners(old, new),
    }
}

fn fasteners(old: &Build, new: &Build) -> Vec<FastenerChange> {
    let mut out: Vec<FastenerChange> = old
        .fasteners
        .iter()
        .map(|line| FastenerChange { what: line.what.clone(), length_mm: line.length_mm, old: line.count, new: 0 })
        .collect();
    for line in &new.fasteners {
        match out.iter_mut().find(|other| other.what == line.what && other.length_mm == line.length_mm) {
            Some(change) => change.new = line.count,
            None => {
                out.push(FastenerChange { what: line.what.clone(), length_mm: line.length_mm, old: 0, new: line.count })
            }
        }
    }
    out.retain(|change| change.old != change.new);
    out
}
