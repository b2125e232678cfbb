//! The result of arranging: sizes of the case and the place of each part, in the case frame, mm.

use kurbo::Point;

use super::needs::{Needs, Room};
use crate::design::{Joints, Wall};
use crate::parts::{BoardPlace, DrivePlace, Part, PortKind, SupplyPlace};
use crate::solid::{PanelFrame, larger, minus};

/// The sizes every panel follows from. `[width, depth, height]` along x, y, z.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CaseSize {
    /// Outside, without feet, screw heads and films.
    pub outside_mm: [f64; 3],
    /// Inside the closed case: between left and right, front and back, floor and top, sheet faces.
    pub inside_mm: [f64; 3],
    /// Sheet thickness.
    pub thickness_mm: f64,
    /// Gap on each face that slides: running clearance and the finishes on both faces.
    pub gap_mm: f64,
    /// How the panels are joined, which decides how far each reaches.
    pub joints: Joints,
}

/// Everything in its place. Hardware (brackets, captive nuts) comes later, with the panels.
#[derive(Clone, Debug, PartialEq)]
pub struct Arrangement {
    /// Sizes of the case.
    pub case: CaseSize,
    /// Where the inside faces would have to be in a case of a given size (rear frame, without what hangs on them):
    /// from this follows which size moves a panel how far.
    pub needs: Needs,
    /// Where the inside faces are (rear frame).
    pub room: Room,
    /// Placed parts: board, memory, cooler, card, card-bracket, shelf, supply, drives, fans, button, ports, jack,
    /// standoffs, feet.
    pub parts: Vec<Part>,
    /// The board.
    pub board: BoardPlace,
    /// The card.
    pub card: Option<CardPlace>,
    /// The supply; `None` for an external brick.
    pub supply: Option<SupplyPlace>,
    /// Drives in the order of the design.
    pub drives: Vec<DrivePlace>,
    /// Fans in the order of the design.
    pub fans: Vec<FanPlace>,
    /// Centre of the power button on its panel.
    pub button: Option<WallPlace>,
    /// Front connectors.
    pub ports: Vec<(PortKind, WallPlace)>,
    /// The jack of an external brick, on the back.
    pub jack: Option<WallPlace>,
    /// Centres of the feet on the floor: case x, y.
    pub feet: Vec<[f64; 2]>,
    /// Where the screw shelf of the card's tab is screwed to the back, in the back's frame.
    pub shelf_screws: Vec<Point>,
}

/// Where the card's slot is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CardPlace {
    /// Slot on the board, 0 = nearest the processor.
    pub slot: u8,
    /// Bracket width in slots.
    pub slots: u8,
}

/// A fan in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FanPlace {
    /// Number in the design.
    pub number: usize,
    /// Panel and centre.
    pub at: WallPlace,
    /// Frame size.
    pub size_mm: f64,
    /// Hole spacing when known.
    pub spacing_mm: Option<f64>,
}

/// A place on a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallPlace {
    /// The panel.
    pub wall: Wall,
    /// The point in the panel's own frame (seen from outside).
    pub centre: Point,
}

impl CaseSize {
    /// The longest outside size, mm.
    #[must_use]
    pub fn longest_mm(&self) -> f64 {
        self.outside_mm.into_iter().fold(0.0, larger)
    }

    /// The inside face of a wall: axis, inward sense along it, and position, in the case frame.
    #[must_use]
    pub fn inner(&self, wall: Wall) -> (usize, f64, f64) {
        let t = self.thickness_mm;
        let [w, d, h] = self.outside_mm;
        let shell = self.joints.shell_mm(wall, t);
        match wall {
            Wall::Left => (0, 1.0, shell),
            Wall::Right => (0, -1.0, w - shell),
            Wall::Front => (1, 1.0, shell),
            Wall::Back => (1, -1.0, d - t),
            Wall::Floor => (2, 1.0, t),
            Wall::Top => (2, -1.0, h - shell),
        }
    }

    /// Width and height of a panel's bounding box, and its frame in the case, for the sleeve construction.
    ///
    /// The floor and the back are `gap` smaller than the sleeve's inside on each face that slides; the back runs down
    /// past the floor's edge. At each corner of the sleeve one panel runs through and covers the other's edge, and the
    /// joint decides how far that other reaches into it.
    #[must_use]
    pub fn panel(&self, wall: Wall) -> ([f64; 2], PanelFrame) {
        let [_, d, _] = self.outside_mm;
        let t = self.thickness_mm;
        let g = self.gap_mm;
        let at = |wall: Wall| self.inner(wall).2;
        let (left, right, front, top) = (at(Wall::Left), at(Wall::Right), at(Wall::Front), at(Wall::Top));
        let past = |wall: Wall, other: Wall| self.joints.extent_mm(wall, other, t);
        let frame = |origin, u, v, out| PanelFrame { origin, u, v, out };
        let (x, y, z) = ([1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]);
        let side = |wall: Wall| (front - past(wall, Wall::Front), top + past(wall, Wall::Top));
        let across = |wall: Wall| (left - past(wall, Wall::Left), right + past(wall, Wall::Right));
        match wall {
            Wall::Left => {
                let (from, height) = side(wall);
                ([d - from, height], frame([left - t, d, 0.0], minus(y), z, minus(x)))
            }
            Wall::Right => {
                let (from, height) = side(wall);
                ([d - from, height], frame([right + t, from, 0.0], y, z, x))
            }
            Wall::Front => {
                let (from, to) = across(wall);
                ([to - from, top + past(wall, Wall::Top)], frame([from, front - t, 0.0], x, z, minus(y)))
            }
            Wall::Top => {
                let (from, to) = across(wall);
                let near = front - past(wall, Wall::Front);
                ([to - from, d - near], frame([from, near, top + t], x, y, z))
            }
            Wall::Back => ([right - left - 2.0 * g, top - g], frame([right - g, d, 0.0], minus(x), z, y)),
            Wall::Floor => {
                let near = front + g;
                let size = [right - left - 2.0 * g, d - t - near + past(wall, Wall::Back)];
                (size, frame([right - g, near, 0.0], minus(x), y, minus(z)))
            }
        }
    }
}

#[cfg(test)]
impl CaseSize {
    /// A case of 6 mm sheet with butt joints, the sides running through or not, to try the panels' rules on.
    pub(crate) fn example(sides: bool) -> Self {
        Self {
            outside_mm: [222.0, 297.0, 210.0],
            inside_mm: [210.0, 285.0, 198.0],
            thickness_mm: 6.0,
            gap_mm: 0.5,
            joints: Joints::butt(sides),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solid::Aabb;

    /// The six sheets, as solids, touch or leave the gap and never share space; their outside is the case's.
    #[test]
    fn panels_never_overlap_and_fill_the_outside_box() {
        for sides in [true, false] {
            let case = CaseSize::example(sides);
            let sheet = |wall: Wall| {
                let (size, frame) = case.panel(wall);
                frame.plate(size, 6.0)
            };
            let solids: Vec<Aabb> = Wall::ALL.map(sheet).to_vec();
            for (i, a) in solids.iter().enumerate() {
                for b in &solids[i + 1..] {
                    assert!(!a.overlaps(b), "{a:?} {b:?}");
                }
            }
            let all = solids.iter().fold(solids[0], |all, solid| all.union(solid));
            assert_eq!(all, Aabb::new([0.0; 3], case.outside_mm));
        }
    }
}
