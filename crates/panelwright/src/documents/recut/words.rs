//! What a change is called.

use std::fmt::Write as _;

use kurbo::Vec2;

use super::{Added, MOVED_MM, Recut, TrimEdge};
use crate::drawing::number::format_number;
use crate::panels::{Edge, Feature};

/// Notches, fingers or slots of the old outline would stay open.
pub(super) const OUTLINE_GONE: &str = "Its outline has sheet where the old one has none.";

/// The outline is cut deeper somewhere.
pub(super) const OUTLINE_DEEPER: &str = "Cut its outline deeper, as the new template shows.";

/// Lines of one kind that are told singly: more are counted, for nobody reads on (common practice).
const SINGLY: usize = 6;

pub(super) fn mm(value: f64) -> String {
    format_number(value, 2)
}

/// Another width or height.
pub(super) fn size(old: [f64; 2], new: [f64; 2]) -> String {
    let [[old_w, old_h], [w, h]] = [old.map(mm), new.map(mm)];
    format!("It measures {w} × {h} mm instead of {old_w} × {old_h}.")
}

pub(super) fn thickness(old: f64, new: f64) -> String {
    format!("Its sheet is {} mm thick instead of {}.", mm(new), mm(old))
}

pub(super) fn grown(edge: Edge, by: f64) -> String {
    format!("It reaches {} mm further at its {} edge.", mm(by), edge.name())
}

pub(super) fn trimmed(trim: &TrimEdge) -> String {
    format!("Take {} mm off its {} edge.", mm(trim.by_mm), trim.edge)
}

pub(super) fn notch(feature: &Feature) -> String {
    format!("Cut into its edge: {}.", feature.why)
}

/// Old holes that the new panel does not have.
pub(super) fn lost(features: &[&&Feature], new: &[Feature], by: Vec2) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for feature in features {
        let line = match new.iter().find(|other| other.id == feature.id) {
            Some(other) => {
                let way = other.centre + by - feature.centre;
                if way.hypot() > MOVED_MM {
                    format!("{} moves by {} mm.", feature.why, mm(way.hypot()))
                } else {
                    let [before, after] = [feature, other].map(measures);
                    if before == after {
                        format!("{} has another size or depth.", feature.why)
                    } else {
                        format!("{} is {after} instead of {before}.", feature.why)
                    }
                }
            }
            None => format!("{} is no longer wanted; its place would stay open.", feature.why),
        };
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    shortened(lines)
}

/// How wide and deep a feature is: `Ø 25 mm, 3.2 mm deep`.
fn measures(feature: &Feature) -> String {
    let wide = match feature.diameter_mm {
        Some(diameter) => format!("Ø {} mm", mm(diameter)),
        None => {
            let bounds = feature.contour.bbox();
            format!("{} × {} mm", mm(bounds.width()), mm(bounds.height()))
        }
    };
    match feature.blind {
        Some((depth, _)) => format!("{wide}, {} mm deep", mm(depth)),
        None => wide,
    }
}

/// What is to be drilled and cut.
pub(super) fn added(list: &[Added]) -> Vec<String> {
    let lines = list
        .iter()
        .map(|added| {
            let verb = match (added.enlarges, added.letter.is_some()) {
                (true, _) if added.deepens => "Deepen",
                (true, _) => "Enlarge",
                (false, true) => "Drill",
                (false, false) => "Cut",
            };
            let depth = added.depth_mm.map(|depth| format!(", {} mm deep", mm(depth))).unwrap_or_default();
            let letter = added.letter.as_ref().map(|letter| format!(" {letter}")).unwrap_or_default();
            let size = added.diameter_mm.map(|diameter| format!(" Ø {} mm", mm(diameter))).unwrap_or_default();
            let [x, y] = added.centre_mm.map(mm);
            format!("{verb}{letter}{size}{depth} at {x}, {y}: {}.", added.why)
        })
        .collect();
    shortened(lines)
}

fn shortened(mut lines: Vec<String>) -> Vec<String> {
    if lines.len() > SINGLY + 1 {
        let more = lines.len() - SINGLY;
        lines.truncate(SINGLY);
        lines.push(format!("And {more} more like these."));
    }
    lines
}

/// The comparison for people.
#[must_use]
pub fn report(recut: &Recut) -> String {
    let mut text = String::new();
    // Writing to a String cannot fail.
    let _ = writeln!(text, "From design {} to design {}.\n", recut.old, recut.new);
    for panel in &recut.panels {
        let _ = writeln!(text, "{}: {}", panel.label, panel.verdict.name());
        for line in &panel.why {
            let _ = writeln!(text, "    {line}");
        }
    }
    if !recut.cover.is_empty() {
        text.push_str("\nFilm and paint; panels that stay are covered anew:\n");
    }
    for line in &recut.cover {
        let _ = writeln!(text, "    {line}");
    }
    if recut.fasteners.is_empty() {
        text.push_str("\nFasteners: unchanged\n");
    } else {
        text.push_str("\nFasteners:\n");
    }
    for change in &recut.fasteners {
        let length = change.length_mm.map(|length| format!(", {} mm", mm(length))).unwrap_or_default();
        let _ = writeln!(text, "    {}{length}: {} -> {}", change.what, change.old, change.new);
    }
    text
}
