//! The closest call: where the sleeve passes nearest to what is inside it.

use super::finding::{Finding, Severity};
use super::scene::{Scene, face, outward};
use super::{Case, words};
use crate::design::Wall;
use crate::parts::{Carrier, PartKind};

/// The nearest part to a panel of the sleeve: `(part, panel, spare)`.
fn nearest(scene: &Scene) -> Option<(String, Wall, f64)> {
    let kinds = [
        PartKind::Board,
        PartKind::Memory,
        PartKind::Cooler,
        PartKind::Card,
        PartKind::Supply,
        PartKind::Drive,
        PartKind::Fan,
    ];
    let mut least: Option<(String, Wall, f64)> = None;
    for wall in [Wall::Left, Wall::Right, Wall::Front, Wall::Top] {
        let Some(inside) = scene.inside(wall) else { continue };
        let (axis, sense) = outward(wall);
        for (part, bounds) in scene.case.parts.iter().zip(&scene.bounds) {
            if part.carrier == Carrier::Sleeve || !kinds.contains(&part.kind) {
                continue;
            }
            let spare = (inside - face(bounds, axis, sense)) * sense;
            if least.as_ref().is_none_or(|(.., known)| spare < *known) {
                least = Some((words::part(part), wall, spare));
            }
        }
    }
    least
}

/// One sentence for the margin when all is well, or what is to be done first; `findings` are those of the same case.
///
/// `Nothing stands in the way. Closest call: card to front, 4.2 mm.`
#[must_use]
pub fn closest(case: &Case, findings: &[Finding]) -> String {
    let blocks = findings.iter().filter(|finding| finding.severity == Severity::Blocks).count();
    let first = match blocks {
        0 => "Nothing stands in the way.".to_owned(),
        1 => "One thing stands in the way.".to_owned(),
        many => format!("{many} things stand in the way."),
    };
    match nearest(&Scene::new(case)) {
        Some((part, wall, spare)) if spare >= 0.0 => {
            let bare = |name: &str| name.strip_prefix("the ").unwrap_or(name).to_owned();
            format!("{first} Closest call: {} to {}, {}.", bare(&part), bare(words::the_panel(wall)), words::mm(spare))
        }
        _ => first,
    }
}
