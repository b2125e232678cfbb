//! A bracket at a place along its corner, with the holes and screws of its two legs.

use super::bench::Bench;
use super::corner::Corner;
use super::fixing::{self, LegHole};
use super::lane::Lane;
use super::site::Site;
use crate::fastening::Screw;
use crate::parts::Carrier;

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

    /// Where it could be moved to between two positions.
    pub fn lane<'a>(&self, bench: &'a Bench, site: &Site, range: [f64; 2], carrier: Carrier) -> Lane<'a> {
        Lane::new(bench, site, self, range, carrier)
    }
}
