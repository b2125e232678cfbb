//! The sleeve construction: the six plain panels, where they lie, and what their edges meet.
//!
//! ```text
//!      seen from the right, cut through the middle            seen from above, sleeve.corners = sides
//!
//!        +--------------- top ---------------+                  +--+------- back --------+--+
//!        +--+                              +-+                  |  |                     |  |
//!        |  |                              | |                  |  |                     |  |
//!     front |                              | back            left  |                     |  right
//!        |  |                              | |                  |  |                     |  |
//!        |  |________ floor _______________| |                  |  +------- front -------+  |
//!        +--+------------------------------+-+                  +--+---------------------+--+
//! ```
//!
//! Back and floor are narrower than the sleeve's inside by the gap on each side that slides.

use super::outline;
use super::panel::{Assembly, Edge, EdgeJoint, Panel};
use crate::arrangement::CaseSize;
use crate::design::{Corners, Spec, Wall};

/// All panels, in the order floor, back, left, right, front, top.
pub(super) const WALLS: [Wall; 6] = [Wall::Floor, Wall::Back, Wall::Left, Wall::Right, Wall::Front, Wall::Top];

/// What people call a panel.
pub(super) const fn label(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor => "Floor",
        Wall::Back => "Back",
        Wall::Left => "Left panel",
        Wall::Right => "Right panel",
        Wall::Front => "Front",
        Wall::Top => "Top",
    }
}

/// The assembly a panel belongs to.
pub(super) const fn assembly(wall: Wall) -> Assembly {
    match wall {
        Wall::Floor | Wall::Back => Assembly::Chassis,
        _ => Assembly::Sleeve,
    }
}

/// The six panels without features.
pub(super) fn panels(spec: &Spec, case: &CaseSize) -> Vec<Panel> {
    let sides = spec.sleeve.corners == Corners::Sides;
    WALLS
        .iter()
        .map(|wall| {
            let (size_mm, frame) = case.panel(*wall, sides);
            Panel {
                wall: *wall,
                label: label(*wall),
                assembly: assembly(*wall),
                thickness_mm: case.thickness_mm,
                size_mm,
                frame,
                outline: outline::with_notches(size_mm, &[]),
                edges: edges(*wall, sides),
                features: Vec::new(),
            }
        })
        .collect()
}

/// What each edge meets, as seen from outside.
fn edges(wall: Wall, sides: bool) -> Vec<EdgeJoint> {
    use Edge::{Left, Lower, Right, Upper};
    let joint =
        |edge, meets, runs_through| EdgeJoint { edge, meets, runs_through, fixed: assembly(wall) == assembly(meets) };
    match wall {
        Wall::Left => vec![
            joint(Left, Wall::Back, true),
            joint(Right, Wall::Front, sides),
            joint(Lower, Wall::Floor, true),
            joint(Upper, Wall::Top, sides),
        ],
        Wall::Right => vec![
            joint(Left, Wall::Front, sides),
            joint(Right, Wall::Back, true),
            joint(Lower, Wall::Floor, true),
            joint(Upper, Wall::Top, sides),
        ],
        Wall::Front => vec![
            joint(Left, Wall::Left, !sides),
            joint(Right, Wall::Right, !sides),
            joint(Lower, Wall::Floor, true),
            joint(Upper, Wall::Top, false),
        ],
        Wall::Top => vec![
            joint(Left, Wall::Left, !sides),
            joint(Right, Wall::Right, !sides),
            joint(Lower, Wall::Front, true),
            joint(Upper, Wall::Back, true),
        ],
        Wall::Back => vec![
            joint(Left, Wall::Right, false),
            joint(Right, Wall::Left, false),
            joint(Lower, Wall::Floor, true),
            joint(Upper, Wall::Top, false),
        ],
        Wall::Floor => vec![
            joint(Left, Wall::Right, false),
            joint(Right, Wall::Left, false),
            joint(Lower, Wall::Front, false),
            joint(Upper, Wall::Back, false),
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of two panels that meet, exactly one runs through, and both say the same about being fixed.
    #[test]
    fn the_two_sides_of_every_joint_agree() {
        for sides in [true, false] {
            for wall in WALLS {
                for joint in edges(wall, sides) {
                    let other = edges(joint.meets, sides);
                    let back = other.iter().find(|other| other.meets == wall).unwrap();
                    assert_ne!(joint.runs_through, back.runs_through, "{wall:?} {:?} {sides}", joint.meets);
                    assert_eq!(joint.fixed, back.fixed);
                }
            }
        }
    }
}
