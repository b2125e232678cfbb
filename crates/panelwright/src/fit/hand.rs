//! Work by hand: whether the saw reaches what it has to cut.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::cutting::{frame_needed_mm, is_sawn};
use crate::design::Method;
use crate::dimensions::hand_work::{Saw, throat};
use crate::dimensions::source::Source;
use crate::panels::{Edge, Feature};
use crate::solid::TOUCH_MM;
use crate::sorting::sort_by;

pub(super) const SAW_REACH: Rule = Rule {
    name: "saw-reach",
    what: "The saw's frame reaches every line that is sawn by hand, from one edge of the panel or another.",
    source: Source::derived(
        "Geometry of the design",
        "distance of each line from the nearest edge; depth of the frame",
    ),
    look: saw_reach,
};

/// The frame goes around an edge of the bare panel; before assembly all four are free.
const EDGES: [Edge; 4] = [Edge::Left, Edge::Right, Edge::Lower, Edge::Upper];

fn saw_reach(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    let frame = making.hand.frame_mm;
    for sheet in scene.sheets.iter().filter(|sheet| making.method(sheet.wall()) == Method::Hand) {
        let mut far: Vec<(&Feature, f64)> = sheet
            .panel
            .features
            .iter()
            .filter(|feature| is_sawn(feature))
            .map(|feature| (feature, frame_needed_mm(&feature.contour, sheet.panel.size_mm, &EDGES)))
            .filter(|(_, needed)| *needed > frame + TOUCH_MM)
            .collect();
        sort_by(&mut far, |a, b| b.1.total_cmp(&a.1));
        let Some((worst, needed)) = far.first() else { continue };
        let lines = if far.len() == 1 { "An opening".to_owned() } else { format!("{} openings", far.len()) };
        let verb = if far.len() == 1 { "lies" } else { "lie" };
        let fret = throat(Saw::Fret).map_or(0.0, |sourced| sourced.get());
        let saw = if *needed <= fret { "a fret saw" } else { "a saw" };
        let ids = far.iter().map(|(feature, _)| format!("{}/{}", sheet.id(), feature.id));
        found.push(
            SAW_REACH
                .caution(format!(
                    "{lines} in {} {verb} up to {} from the nearest edge; the saw's frame reaches {}.",
                    words::panel(sheet.wall()),
                    words::at_least(*needed),
                    words::limit(frame)
                ))
                .with_mm(frame, *needed)
                .with_remedy(format!(
                    "Take {saw} with a frame of {} or a jigsaw, drill a chain of holes along the line, or make the \
                     opening smaller.",
                    words::at_least(*needed)
                ))
                .with_about(std::iter::once(sheet.id().to_owned()).chain(ids))
                .with_at(sheet.panel.frame.to_case(worst.centre, 0.0)),
        );
    }
}
