//! What panels and their edges are called in sentences, on templates, pictures and in files alike.

use super::{Edge, Panel};
use crate::design::{Joint, Wall};

/// A panel's name, as a title has it: `Left panel`.
#[must_use]
pub const fn label(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor => "Floor",
        Wall::Back => "Back",
        Wall::Left => "Left panel",
        Wall::Right => "Right panel",
        Wall::Front => "Front",
        Wall::Top => "Top",
    }
}

/// The same inside a sentence: `the left panel`.
#[must_use]
pub const fn the_panel(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor => "the floor",
        Wall::Back => "the back",
        Wall::Left => "the left panel",
        Wall::Right => "the right panel",
        Wall::Front => "the front",
        Wall::Top => "the top",
    }
}

/// What "up" on the page means.
#[must_use]
pub const fn up(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor | Wall::Top => "towards the back",
        _ => "up",
    }
}

/// From where the panel is seen, and where its left and right lie.
#[must_use]
pub const fn seen_from(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor => "seen from below: your left is the case's right",
        Wall::Top => "seen from above: left is the case's left",
        Wall::Back => "seen from behind: your left is the case's right",
        Wall::Left => "seen from the left: your right is the case's front",
        Wall::Right => "seen from the right: your left is the case's front",
        Wall::Front => "seen from the front: left is the case's left",
    }
}

/// What an edge meets, as written along it.
#[must_use]
pub fn edge_words(panel: &Panel, edge: Edge) -> String {
    panel.edges.iter().find(|joint| joint.edge == edge).map_or_else(String::new, |joint| {
        let other = the_panel(joint.meets);
        match (joint.joint, joint.runs_through) {
            (None, _) => format!("slides along {other}"),
            (Some(Joint::Finger), _) => format!("fingers with {other}"),
            (Some(Joint::Tab), true) => format!("slots for the tabs of {other}"),
            (Some(Joint::Tab), false) => format!("tabs into {other}"),
            (Some(Joint::Rebate), true) => format!("rebate for the edge of {other}"),
            (Some(Joint::Rebate), false) => format!("into the rebate of {other}"),
            (Some(Joint::Brackets | Joint::Blocks), true) => format!("covers the edge of {other}"),
            (Some(Joint::Brackets | Joint::Blocks), false) => format!("against the inside of {other}"),
        }
    })
}
