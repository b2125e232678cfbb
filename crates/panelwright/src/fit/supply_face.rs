//! Holes and opening of a supply that lie off its face: a wrong measure, and nothing is drilled for it.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::dimensions::source::Source;
use crate::parts::supply::{hole_inset_mm, holes, off_face_mm};
use crate::solid::TOUCH_MM;

pub(super) const SUPPLY_CUT_OFF_FACE: Rule = Rule {
    name: "supply-cut-off-face",
    what: "Screw holes and opening of the supply lie on its face.",
    source: Source::derived("Size of the supply's face", "a screw's thread lies wholly on it"),
    look: supply_cut_off_face,
};

fn supply_cut_off_face(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(place) = scene.case.arrangement.supply else { return };
    let spec = &scene.case.spec.supply;
    let [width, height, _] = place.size_mm;
    let inset = hole_inset_mm();
    let told = |what: String, off: f64, from: f64| {
        let finding = SUPPLY_CUT_OFF_FACE
            .blocks(format!(
                "{what} lies {} off the supply's face of {} × {}, and is left out.",
                words::short(off),
                words::bare(width),
                words::mm(height)
            ))
            .with_mm(-off, 0.0);
        let range = |side: f64| format!("{} to {}", words::bare_at_least(from), words::at_most(side - from));
        finding
            .with_remedy(format!(
                "Measure again from the face's lower left corner, seen from outside: {} across, {} up. Or measure the face.",
                range(width),
                range(height)
            ))
            .with_about(["supply", place.wall.name()])
            .with_at(place.face.to_case(kurbo::Point::new(width / 2.0, height / 2.0), 0.0))
    };
    for (index, (at, _)) in holes(spec).into_iter().enumerate() {
        let off = off_face_mm([width, height], at, inset);
        if off > TOUCH_MM {
            found.push(told(format!("Hole {} of the supply", index + 1), off, inset));
        }
    }
    let corners = spec.opening.iter().flatten();
    let off = corners.map(|at| off_face_mm([width, height], *at, 0.0)).fold(0.0, f64::max);
    if off > TOUCH_MM {
        found.push(told("The opening of the supply".to_owned(), off, 0.0));
    }
}
