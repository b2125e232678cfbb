//! A right-angle bracket in the corner of two panels: its legs and its holes.

use crate::arrangement::CaseSize;
use crate::design::{BracketSize, Wall};
use crate::solid::Aabb;

/// A bracket with one leg on (or drawn to) each of two panels that meet at a right angle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    pub walls: [Wall; 2],
    /// Gap between each leg and its panel's inside face, mm.
    pub gaps: [f64; 2],
    pub size: BracketSize,
    /// How much is filed off the end of the second leg, mm.
    pub filed_mm: f64,
    /// Middle of the bracket along the corner, case frame.
    pub at: f64,
}

impl Corner {
    /// The axis along the corner.
    pub const fn axis(&self) -> usize {
        axis_along(self.walls)
    }

    /// Outside of the bracket's own corner along the axis of one of its walls, and the inward sense there.
    fn corner(&self, case: &CaseSize, index: usize) -> (usize, f64, f64) {
        let (axis, sense, face) = case.inner(self.walls[index]);
        (axis, sense, face + sense * self.gaps[index])
    }

    /// The legs: the first on the first wall, the second on the second.
    pub fn legs(&self, case: &CaseSize) -> [Aabb; 2] {
        [0, 1].map(|index| {
            let (own, own_sense, own_at) = self.corner(case, index);
            let (other, other_sense, other_at) = self.corner(case, 1 - index);
            let mut low = [0.0; 3];
            let mut high = [0.0; 3];
            low[own] = own_at;
            high[own] = own_at + own_sense * self.size.thickness_mm;
            low[other] = other_at;
            let filed = if index == 1 { self.filed_mm } else { 0.0 };
            high[other] = other_at + other_sense * (self.size.leg_mm - filed);
            let along = self.axis();
            low[along] = self.at - self.size.width_mm / 2.0;
            high[along] = self.at + self.size.width_mm / 2.0;
            Aabb::new(low, high)
        })
    }

    /// A box made for the bracket at another place along its corner, moved here.
    pub fn along(&self, mut room: Aabb) -> Aabb {
        let axis = self.axis();
        let half = room.size()[axis] / 2.0;
        room.min[axis] = self.at - half;
        room.max[axis] = self.at + half;
        room
    }

    /// Centre of the hole for one of its walls, on that wall's inside face.
    pub fn hole(&self, case: &CaseSize, index: usize) -> [f64; 3] {
        let (own, _, face) = case.inner(self.walls[index]);
        let (other, sense, at) = self.corner(case, 1 - index);
        let mut point = [0.0; 3];
        point[own] = face;
        point[other] = at + sense * self.size.hole_mm;
        point[self.axis()] = self.at;
        point
    }
}

/// The axis along the corner of two panels.
pub(super) const fn axis_along(walls: [Wall; 2]) -> usize {
    const fn normal(wall: Wall) -> usize {
        match wall {
            Wall::Left | Wall::Right => 0,
            Wall::Front | Wall::Back => 1,
            Wall::Floor | Wall::Top => 2,
        }
    }
    3 - normal(walls[0]) - normal(walls[1])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Legs of 20, 15 wide, 1.5 thick, hole 13 from the corner, where floor and back of 6 mm meet (depth 297).
    #[test]
    fn a_bracket_lies_in_its_corner_and_its_holes_are_where_the_bag_says() {
        let case = CaseSize::example(true);
        let size = BracketSize { leg_mm: 20.0, width_mm: 15.0, thickness_mm: 1.5, hole_mm: 13.0 };
        let corner = Corner { walls: [Wall::Floor, Wall::Back], gaps: [0.0, 0.0], size, filed_mm: 0.0, at: 100.0 };
        let [floor, back] = corner.legs(&case);
        assert_eq!((floor.min, floor.max), ([92.5, 271.0, 6.0], [107.5, 291.0, 7.5]));
        assert_eq!((back.min, back.max), ([92.5, 289.5, 6.0], [107.5, 291.0, 26.0]));
        assert_eq!(corner.hole(&case, 0), [100.0, 278.0, 6.0]);
        assert_eq!(corner.hole(&case, 1), [100.0, 291.0, 19.0]);
        // Drawn to the back across a gap of 0.5: the leg and the hole on the floor's side move forward.
        let corner = Corner { gaps: [0.0, 0.5], ..corner };
        assert_eq!(corner.hole(&case, 0), [100.0, 277.5, 6.0]);
        assert_eq!(corner.legs(&case)[1].max[1], 290.5);
    }
}
