//! What the design on the bench means for a case built already.

use panelwright::Build;
use panelwright::design::{Design, read_file, read_link};
use panelwright::documents::recut::{self, FastenerChange, PanelChange, Verdict};
use panelwright::drawing::{SvgOptions, svg};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Workbench;
use crate::workbench::plain;

/// What becomes of every panel; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
pub struct Comparison {
    old: String,
    new: String,
    panels: Vec<Change>,
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

#[wasm_bindgen]
impl Workbench {
    /// What becomes of each panel of a case built from an older design file, with pictures.
    ///
    /// # Errors
    /// What is wrong with the file.
    #[wasm_bindgen(unchecked_return_type = "Comparison")]
    pub fn recut_from_file(&self, text: &str) -> Result<JsValue, JsError> {
        plain(&Comparison::of(&read_file(text)?, self.build()))
    }

    /// The same for the link of an older design.
    ///
    /// # Errors
    /// What is wrong with the link.
    #[wasm_bindgen(unchecked_return_type = "Comparison")]
    pub fn recut_from_link(&self, text: &str) -> Result<JsValue, JsError> {
        plain(&Comparison::of(&read_link(text)?, self.build()))
    }
}

impl Comparison {
    /// From an older design to what is on the bench.
    pub fn of(old: &Design, new: &Build) -> Self {
        let old = Build::of(old);
        let found = recut::compare(&old, new);
        let panels = found.panels.into_iter().map(|change| Change {
            panel: change.panel,
            label: change.label,
            verdict: change.verdict,
            picture: picture(&old, new, &change).unwrap_or_default(),
            why: change.why,
        });
        Self { old: found.old, new: found.new, panels: panels.collect(), fasteners: found.fasteners }
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
