//! A bracket's way along its corner: what could bar it there, sorted out once for all its places.
//!
//! A bracket that is moved along its corner changes along that one axis only. What misses one of its boxes along the two
//! others misses it at every place; what meets it there bars one stretch of the corner. So all solids of the case are
//! looked at once, and a place is then tried against a few stretches and the few features beside its line.
//!
//! Invariant: the answer for a place is the one that [`Site`] and the sheet give for the bracket's boxes there, to the
//! last bit: only what cannot matter is left out, nothing is rounded or widened.

use kurbo::Point;

use super::bench::Bench;
use super::corner::Corner;
use super::fixing::{self, Fixing};
use super::panel::Panel;
use super::seat::Seat;
use super::sheet::{self, Across, Land, Spot};
use super::site::{self, Near, Site};
use crate::parts::Carrier;
use crate::solid::{Aabb, TOUCH_MM, larger, smaller};

/// Where along its corner a bracket could go.
pub(super) struct Lane<'a> {
    /// Whether something stands in its way at every place alike.
    barred: bool,
    tracks: Vec<Track>,
    /// Its legs among the room for plugs, cables and air.
    zones: Vec<Track>,
    grounds: [Ground<'a>; 2],
}

/// A box that moves along the corner, and the stretches of it that others have.
struct Track {
    /// From the bracket's middle to the box's ends.
    half: f64,
    /// How much more than the box is to be clear before and after it: air, or the sleeve's way.
    more: [f64; 2],
    taken: Vec<[f64; 2]>,
}

impl Track {
    /// The track of a box along an axis among others that it meets, if any, across that axis.
    fn new(solid: &Aabb, axis: usize, half: f64, more: [f64; 2], others: &[Aabb]) -> Option<Self> {
        let meets =
            |other: &&Aabb| (0..3).all(|across| across == axis || solid.overlap_along(other, across) > TOUCH_MM);
        let taken: Vec<[f64; 2]> =
            others.iter().filter(meets).map(|other| [other.min[axis], other.max[axis]]).collect();
        (!taken.is_empty()).then_some(Self { half, more, taken })
    }

    fn is_free(&self, at: f64) -> bool {
        let (from, to) = (at - self.half - self.more[0], at + self.half + self.more[1]);
        self.taken.iter().all(|[start, end]| smaller(to, *end) - larger(from, *start) <= TOUCH_MM)
    }
}

impl<'a> Lane<'a> {
    /// The lane of a bracket between two positions.
    pub fn new(bench: &'a Bench, site: &Site, seat: &Seat, range: [f64; 2], carrier: Carrier) -> Self {
        let case = &bench.arrangement.case;
        let Seat { corner, holes, screws } = seat;
        let axis = corner.axis();
        let legs = corner.legs(case);
        let inner = [0, 1].map(|index| fixing::inner_rooms(bench, corner, index, &screws[index]));
        // Screws that hold the sleeve are out before it moves, so heads only stand.
        let outer = [0, 1].map(|index| fixing::outer_room(bench, corner, index, &screws[index]));
        let meet =
            inner[0].iter().any(|one| inner[1].iter().any(|other| corner.along(*one).overlaps(&corner.along(*other))));
        // A short screw that no shop sells, or that would come through the face, holds nothing.
        let unsold =
            holes.iter().zip(screws).any(|(hole, screw)| hole.fixing == Fixing::Short && screw.length_mm.is_none());
        let half = |solid: &Aabb| solid.size()[axis] / 2.0;
        let moving: Vec<(Aabb, f64)> = legs
            .iter()
            .map(|leg| (*leg, corner.size.width_mm / 2.0))
            .chain(inner.iter().flatten().map(|room| (*room, half(room))))
            .collect();
        let standing: Vec<(Aabb, f64)> = outer.iter().flatten().map(|room| (*room, half(room))).collect();
        // Everything the bracket and its screws come through between the two positions.
        let rod = moving.iter().chain(&standing).map(|(solid, half)| {
            let mut stretch = *solid;
            stretch.min[axis] = range[0] - half;
            stretch.max[axis] = range[1] + half;
            stretch
        });
        let rod = rod.reduce(|all, next| all.union(&next)).unwrap_or(legs[0]);
        let Near { bodies, sheets, ahead, zones, way } = site.near(&rod, carrier);
        let mut tracks = Vec::new();
        for (solid, half) in moving.iter().chain(&standing) {
            let air = site::AIR_MM;
            tracks.extend(Track::new(&solid.grown(air), axis, *half, [air; 2], &bodies));
            tracks.extend(Track::new(solid, axis, *half, [0.0; 2], &sheets));
        }
        for (solid, half) in &moving {
            let swept = solid.swept(way.0, way.1);
            let more = if way.0 == axis { [(-way.1).max(0.0), way.1.max(0.0)] } else { [0.0; 2] };
            tracks.extend(Track::new(&swept, axis, *half, more, &ahead));
        }
        let zones = moving[..2].iter().filter_map(|(leg, half)| Track::new(leg, axis, *half, [0.0; 2], &zones));
        Self {
            barred: meet || unsold,
            tracks,
            zones: zones.collect(),
            grounds: [0, 1].map(|index| {
                let panel = bench.panel(corner.walls[index]);
                let land = fixing::land(bench, holes[index].fixing);
                Ground::new(panel, corner, legs[index], corner.hole(case, index), land)
            }),
        }
    }

    /// Whether the bracket has room at a place, at rest and while the sleeve comes off, and its screws lie on sound
    /// sheet.
    pub fn is_free(&self, at: f64) -> bool {
        !self.barred
            && self.tracks.iter().all(|track| track.is_free(at))
            && self.grounds.iter().all(|ground| ground.is_sound(at))
    }

    /// Whether its legs stay out of the room for plugs, cables and air.
    pub fn is_uncrowded(&self, at: f64) -> bool {
        self.zones.iter().all(|track| track.is_free(at))
    }
}

/// The sheet under one leg.
struct Ground<'a> {
    panel: &'a Panel,
    axis: usize,
    leg: Aabb,
    half: f64,
    hole: [f64; 3],
    land: Land,
    /// Features that the leg, and those that the washer, could come upon.
    under_leg: Vec<Spot<'a>>,
    under_washer: Vec<Spot<'a>>,
}

impl<'a> Ground<'a> {
    fn new(panel: &'a Panel, corner: &Corner, leg: Aabb, hole: [f64; 3], washer: f64) -> Self {
        let (axis, half) = (corner.axis(), corner.size.width_mm / 2.0);
        let land = Land::new(panel, washer);
        let mut ground = Self { panel, axis, leg, half, hole, land, under_leg: Vec::new(), under_washer: Vec::new() };
        // The panel's direction across the corner.
        let across = if panel.frame.u[axis] == 0.0 { Across::X } else { Across::Y };
        let (shadow, centre) = (panel.frame.shadow(&leg), ground.centre(corner.at));
        for spot in sheet::spots(panel) {
            if spot.could_be_covered(shadow, across) {
                ground.under_leg.push(spot);
            }
            if ground.land.could_meet(centre, &spot, across) {
                ground.under_washer.push(spot);
            }
        }
        ground
    }

    fn centre(&self, at: f64) -> Point {
        let mut hole = self.hole;
        hole[self.axis] = at;
        self.panel.frame.to_panel(hole).0
    }

    fn is_sound(&self, at: f64) -> bool {
        let mut leg = self.leg;
        leg.min[self.axis] = at - self.half;
        leg.max[self.axis] = at + self.half;
        let (shadow, centre) = (self.panel.frame.shadow(&leg), self.centre(at));
        self.land.lies_on_sheet(centre)
            && self.under_leg.iter().all(|spot| !spot.is_covered(shadow))
            && self.under_washer.iter().all(|spot| self.land.is_clear_of(centre, spot))
    }
}
