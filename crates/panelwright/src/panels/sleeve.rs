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
use super::words::label;
use crate::arrangement::CaseSize;
use crate::design::Wall;

/// The assembly a panel belongs to.
pub(super) const fn assembly(wall: Wall) -> Assembly {
    match wall {
        Wall::Floor | Wall::Back => Assembly::Chassis,
        _ => Assembly::Sleeve,
    }
}

/// The six panels without features.
pub(super) fn panels(case: &CaseSize) -> Vec<Panel> {
    Wall::ALL
        .iter()
        .map(|wall| {
            let (size_mm, frame) = case.panel(*wall);
            Panel {
                wall: *wall,
                label: label(*wall),
                assembly: assembly(*wall),
                thickness_mm: case.thickness_mm,
                size_mm,
                frame,
                outline: outline::without(size_mm, &[]),
                edges: edges(*wall, case),
                joint_gaps: Vec::new(),
                features: Vec::new(),
            }
        })
        .collect()
}

/// What each edge meets, as seen from outside: left, right, lower, upper.
const fn neighbours(wall: Wall) -> [Wall; 4] {
    match wall {
        Wall::Left => [Wall::Back, Wall::Front, Wall::Floor, Wall::Top],
        Wall::Right => [Wall::Front, Wall::Back, Wall::Floor, Wall::Top],
        Wall::Front => [Wall::Left, Wall::Right, Wall::Floor, Wall::Top],
        Wall::Top => [Wall::Left, Wall::Right, Wall::Front, Wall::Back],
        Wall::Back => [Wall::Right, Wall::Left, Wall::Floor, Wall::Top],
        Wall::Floor => [Wall::Right, Wall::Left, Wall::Front, Wall::Back],
    }
}

fn edges(wall: Wall, case: &CaseSize) -> Vec<EdgeJoint> {
    let t = case.thickness_mm;
    [Edge::Left, Edge::Right, Edge::Lower, Edge::Upper]
        .into_iter()
        .zip(neighbours(wall))
        .map(|(edge, meets)| match case.joints.between(wall, meets) {
            Some(seam) => EdgeJoint {
                edge,
                meets,
                runs_through: seam.through == wall,
                joint: Some(seam.joint),
                taken_mm: case.joints.extent_mm(wall, meets, t),
            },
            // The sleeve slides over the edges of the chassis.
            None => {
                let covers = assembly(wall) == Assembly::Sleeve;
                let taken_mm = if covers { t + case.gap_mm } else { 0.0 };
                EdgeJoint { edge, meets, runs_through: covers, joint: None, taken_mm }
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of two panels that meet, exactly one runs through, and both say the same about being fixed.
    #[test]
    fn the_two_sides_of_every_joint_agree() {
        for sides in [true, false] {
            let case = CaseSize::example(sides);
            for wall in Wall::ALL {
                for joint in edges(wall, &case) {
                    let other = edges(joint.meets, &case);
                    let back = other.iter().find(|other| other.meets == wall).unwrap();
                    assert_ne!(joint.runs_through, back.runs_through, "{wall:?} {:?} {sides}", joint.meets);
                    assert_eq!(joint.fixed(), back.fixed());
                }
            }
        }
    }
}
