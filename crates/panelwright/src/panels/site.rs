//! Whether a bracket has room where it is to go: among parts and panels, and on the way of the sleeve.

use super::bench::Bench;
use super::panel::Assembly;
use crate::design::{Slide, Wall};
use crate::dimensions::fasteners::{Thread, nut, pan_head, sharp_corners_mm, washer};
use crate::fastening::Screw;
use crate::parts::{Carrier, Part};
use crate::solid::{Aabb, by_axis};

/// Air between a bracket and a part, mm (common practice: brackets are bent by hand and holes drilled to half a
/// millimetre).
pub(super) const AIR_MM: f64 = 0.4;

/// Everything a bracket could hit.
pub(super) struct Site {
    /// Bodies of parts: what stands on the chassis, what hangs in the sleeve.
    parts: [Vec<Aabb>; 2],
    /// Sheets of chassis and sleeve.
    sheets: [Vec<Aabb>; 2],
    /// Screws that are out before the sleeve moves.
    loose: Vec<Aabb>,
    /// Room kept clear for plugs, cables and air.
    zones: Vec<Aabb>,
    /// Axis and way of the sleeve when it comes off.
    way: (usize, f64),
}

const fn side(carrier: Carrier) -> usize {
    match carrier {
        Carrier::Chassis => 0,
        Carrier::Sleeve => 1,
    }
}

impl Site {
    pub fn new(bench: &Bench) -> Self {
        let [_, depth, height] = bench.arrangement.case.outside_mm;
        // Beyond the case's own length it is off.
        let way = match bench.spec.sleeve.slide {
            Slide::Up => (2, height * 2.0),
            Slide::Forward => (1, -depth * 2.0),
        };
        let mut site =
            Self { parts: Default::default(), sheets: Default::default(), loose: Vec::new(), zones: Vec::new(), way };
        for part in &bench.arrangement.parts {
            site.add(part);
            site.zones.extend(part.keep_clear.iter().map(|keep| keep.zone));
        }
        for screw in &bench.screws {
            let sleeve = screw.joins.iter().any(|id| {
                bench.panels.iter().any(|panel| panel.assembly == Assembly::Sleeve && panel.id() == id.as_str())
            });
            site.parts[usize::from(sleeve)].extend(screw_solids(screw));
        }
        for panel in &bench.panels {
            let sheet = panel.frame.plate(panel.size_mm, panel.thickness_mm);
            site.sheets[usize::from(panel.assembly == Assembly::Sleeve)].push(sheet);
        }
        site
    }

    /// Takes a placed part into account from now on.
    pub fn add(&mut self, part: &Part) {
        self.parts[side(part.carrier)].extend_from_slice(&part.bodies);
    }

    /// Takes a placed screw into account; one that holds the sleeve is out before the sleeve moves.
    pub fn add_screw(&mut self, screw: &Screw, carrier: Carrier, holds_the_sleeve: bool) {
        let list = if holds_the_sleeve { &mut self.loose } else { &mut self.parts[side(carrier)] };
        list.extend(screw_solids(screw));
    }

    /// Whether solids hit nothing where they are.
    pub fn is_free_at_rest(&self, solids: &[Aabb]) -> bool {
        solids.iter().all(|solid| {
            let grown = solid.grown(AIR_MM);
            self.parts.iter().flatten().chain(&self.loose).all(|other| !other.overlaps(&grown))
                && self.sheets.iter().flatten().all(|other| !other.overlaps(solid))
        })
    }

    /// Whether solids carried by one assembly hit nothing, at rest and while the sleeve comes off.
    pub fn is_free(&self, solids: &[Aabb], carrier: Carrier) -> bool {
        let own = side(carrier);
        let (axis, way) = self.way_of(own);
        self.is_free_at_rest(solids)
            && solids.iter().all(|solid| {
                let swept = solid.swept(axis, way);
                self.parts[1 - own].iter().chain(&self.sheets[1 - own]).all(|other| !other.overlaps(&swept))
            })
    }

    /// What anything carried by one assembly could hit as long as it stays within `rod`, at rest and while the sleeve
    /// comes off.
    pub fn near(&self, rod: &Aabb, carrier: Carrier) -> Near {
        let own = side(carrier);
        let (axis, way) = self.way_of(own);
        let (grown, swept) = (rod.grown(AIR_MM), rod.swept(axis, way));
        let among = |all: &mut dyn Iterator<Item = &Aabb>, room: &Aabb| -> Vec<Aabb> {
            all.filter(|other| other.overlaps(room)).copied().collect()
        };
        Near {
            bodies: among(&mut self.parts.iter().flatten().chain(&self.loose), &grown),
            sheets: among(&mut self.sheets.iter().flatten(), rod),
            ahead: among(&mut self.parts[1 - own].iter().chain(&self.sheets[1 - own]), &swept),
            zones: among(&mut self.zones.iter(), rod),
            way: (axis, way),
        }
    }

    /// Axis and way of what an assembly carries, seen from the other, when the sleeve comes off.
    fn way_of(&self, own: usize) -> (usize, f64) {
        let (axis, way) = self.way;
        (axis, if own == 1 { way } else { -way })
    }
}

/// What a part of the case could hit.
pub(super) struct Near {
    /// Parts and screws; they want air.
    pub bodies: Vec<Aabb>,
    pub sheets: Vec<Aabb>,
    /// What the other assembly carries, on the way past it.
    pub ahead: Vec<Aabb>,
    /// Room kept clear for plugs, cables and air.
    pub zones: Vec<Aabb>,
    /// Axis and way along which the two assemblies part.
    pub way: (usize, f64),
}

impl Near {
    /// Whether a solid within the rod hits nothing, at rest and while the sleeve comes off.
    pub fn is_free(&self, solid: &Aabb) -> bool {
        let (grown, swept) = (solid.grown(AIR_MM), solid.swept(self.way.0, self.way.1));
        self.bodies.iter().all(|other| !other.overlaps(&grown))
            && self.sheets.iter().all(|other| !other.overlaps(solid))
            && self.ahead.iter().all(|other| !other.overlaps(&swept))
    }
}

/// The shank of a screw and its nut, as boxes around them.
pub(super) fn screw_solids(screw: &Screw) -> Vec<Aabb> {
    let length = screw.length_mm.unwrap_or(screw.least_mm);
    let thread = Thread::ALL.into_iter().find(|thread| thread.label() == screw.thread);
    let under = thread.map_or(0.0, |thread| f64::from(screw.washers) * washer(thread).thickness_mm);
    let mut out = vec![along(screw, [0.0, length], screw.diameter_mm / 2.0)];
    if let Some(thread) = thread.filter(|_| screw.nut) {
        let nut = nut(thread);
        let from = under + screw.clamped_mm;
        out.push(along(screw, [from, from + nut.height_mm], sharp_corners_mm(nut.flats_mm) / 2.0));
    }
    out
}

/// The head of a screw with its washers, as a box around them.
pub(super) fn head_solid(screw: &Screw) -> Option<Aabb> {
    let thread = Thread::ALL.into_iter().find(|thread| thread.label() == screw.thread)?;
    let head = pan_head(thread);
    let under = f64::from(screw.washers) * washer(thread).thickness_mm;
    Some(along(screw, [-head.height_mm, under], head.diameter_mm.max(washer(thread).outside_mm) / 2.0))
}

/// A box around a stretch of a screw's axis, counted from under its head.
fn along(screw: &Screw, [from, to]: [f64; 2], radius: f64) -> Aabb {
    let at = |way: f64| by_axis(|axis| screw.head_at[axis] + screw.direction[axis] * way);
    let mut solid = Aabb::new(at(from), at(to));
    for axis in (0..3).filter(|axis| screw.direction[*axis] == 0.0) {
        solid.min[axis] -= radius;
        solid.max[axis] += radius;
    }
    solid
}

/// From where a screw in a panel is driven, in words.
pub(super) const fn driven_from(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor => "from below",
        Wall::Back => "from behind",
        Wall::Left => "from the left",
        Wall::Right => "from the right",
        Wall::Front => "from the front",
        Wall::Top => "from above",
    }
}
