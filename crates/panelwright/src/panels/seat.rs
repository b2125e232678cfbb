//! A bracket at a place along its corner, with the holes and screws of its two legs.

use kurbo::Point;

use super::bench::Bench;
use super::corner::Corner;
use super::fixing::{self, Fixing, LegHole};
use super::lane::Lane;
use super::site::Site;
use crate::design::Material;
use crate::fastening::Screw;
use crate::parts::{Carrier, holes};
use crate::solid::TOUCH_MM;

/// A bracket at a place, before it is taken.
pub(super) struct Seat {
    pub corner: Corner,
    pub holes: [LegHole; 2],
    pub screws: [Screw; 2],
}

impl Seat {
    /// The seat of a bracket with its name and holes.
    pub fn new(bench: &Bench, id: &str, corner: Corner, holes: [LegHole; 2]) -> Self {
        let screws = [0, 1].map(|index| fixing::screw(bench, &corner, index, &holes[index], id));
        Self { corner, holes, screws }
    }

    /// The same, moved along its corner.
    pub fn moved(mut self, at: f64) -> Self {
        let axis = self.corner.axis();
        self.corner.at = at;
        for screw in &mut self.screws {
            screw.head_at[axis] = at;
        }
        self
    }

    /// Whether at a place along its corner its holes are as far from the ends of their panels as the sheet wants.
    pub fn is_far_from_ends(&self, bench: &Bench, at: f64) -> bool {
        if bench.spec.sheet.material != Material::Acrylic {
            return true;
        }
        let axis = self.corner.axis();
        let wanted = holes::from_edge_mm(bench.spec, bench.clearance(fixing::thread(bench))).unwrap_or(0.0) - TOUCH_MM;
        (0..2).filter(|index| self.holes[*index].fixing != Fixing::Short).all(|index| {
            let panel = bench.panel(self.corner.walls[index]);
            let sound = panel.sound();
            let ends = [(sound.x0, sound.y0), (sound.x1, sound.y1)]
                .map(|(x, y)| panel.frame.to_case(Point::new(x, y), 0.0)[axis]);
            ends.into_iter().all(|end| (at - end).abs() >= wanted)
        })
    }

    /// Where it could be moved to between two positions.
    pub fn lane<'a>(&self, bench: &'a Bench, site: &Site, range: [f64; 2], carrier: Carrier) -> Lane<'a> {
        Lane::new(bench, site, self, range, carrier)
    }
}
