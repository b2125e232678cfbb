//! What a finished design means for a case built already.

use panelwright::Build;
use panelwright::design::Design;
use panelwright::documents::recut::{self, FastenerChange, PanelChange, Verdict};
use panelwright::drawing::{SvgOptions, svg};
use serde::Serialize;

/// What becomes of every panel; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
pub(super) struct Comparison {
    old: String,
    new: String,
    panels: Vec<Change>,
    cover: Vec<String>,
    fasteners: Vec<FastenerChange>,
}

#[derive(Debug, Serialize)]
struct Change {
    panel: &'static str,
    label: &'static str,
    verdict: Verdict,
    why: Vec<String>,
    /// Old and new over each other; empty where there is nothing to see.
    picture: String,
}

impl Comparison {
    /// From an older design to the finished one.
    pub(super) fn of(old: &Design, new: &Build) -> Self {
        let old = Build::of(old);
        let found = recut::compare(&old, new);
        let panels = found.panels.into_iter().map(|change| Change {
            panel: change.panel,
            label: change.label,
            verdict: change.verdict,
            picture: picture(&old, new, &change).unwrap_or_default(),
            why: change.why,
        });
        Self {
            old: found.old,
            new: found.new,
            panels: panels.collect(),
            cover: found.cover,
            fasteners: found.fasteners,
        }
    }
}

fn picture(old: &Build, new: &Build, change: &PanelChange) -> Option<String> {
    if change.verdict == Verdict::Unchanged {
        return None;
    }
    let before = old.panels.iter().find(|panel| panel.id() == change.panel)?;
    let after = new.panels.iter().find(|panel| panel.id() == change.panel)?;
    Some(svg(&recut::overlay(before, after, change), &SvgOptions::for_page(format!("recut-{}-", change.panel))))
}
