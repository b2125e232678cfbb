//! Free room: what stands nearest in a direction.

use super::scene::{Scene, face, outward};
use super::words;
use crate::design::Wall;
use crate::parts::Part;
use crate::solid::{Aabb, TOUCH_MM};

/// What stands in the way.
#[derive(Clone, Debug)]
pub(super) struct Obstacle<'a> {
    /// Its id.
    pub id: &'a str,
    /// What people call it.
    pub name: String,
    /// Position of its near face along the way's axis.
    pub at: f64,
    /// The part; `None` for a panel.
    pub part: Option<&'a Part>,
    /// Middle of the near face where it faces the looker.
    pub point: [f64; 3],
    /// Share of the looker's cross-section it stands before, 0 to 1.
    pub share: f64,
}

/// A look along an axis of the case.
#[derive(Clone, Copy, Debug)]
pub(super) struct Look {
    /// Box whose cross-section is looked along.
    pub section: Aabb,
    /// The panel looked towards; it always counts.
    pub toward: Wall,
    /// A part counts when its near face lies here or further on.
    pub start: f64,
    /// Whether a part that reaches across `start` counts too, as if it began there.
    pub straddle: bool,
    /// Smallest share of the cross-section an obstacle must stand before to count, 0 to 1. A bracket's corner in the
    /// room of a cable is not worth a word, a wall across half of it is.
    pub share: f64,
}

impl<'a> Scene<'a> {
    /// The nearest thing on the way, of the panel and the parts that `counts` names.
    pub fn nearest(&self, look: &Look, counts: impl Fn(&Part) -> bool) -> Option<Obstacle<'a>> {
        let (axis, sense) = outward(look.toward);
        let mut nearest: Option<Obstacle<'a>> = None;
        let mut take = |candidate: Obstacle<'a>| {
            if nearest.as_ref().is_none_or(|known| (known.at - candidate.at) * sense > 0.0) {
                nearest = Some(candidate);
            }
        };
        if let Some(sheet) = self.sheet(look.toward) {
            let at = face(&sheet.solid, axis, -sense);
            let mut point = look.section.centre();
            point[axis] = at;
            let name = words::the_panel(look.toward).to_owned();
            take(Obstacle { id: look.toward.name(), name, at, part: None, point, share: 1.0 });
        }
        for (part, bounds) in self.case.parts.iter().zip(&self.bounds) {
            if (face(bounds, axis, sense) - look.start) * sense <= TOUCH_MM || !counts(part) {
                continue;
            }
            for solid in &part.bodies {
                let mut at = face(solid, axis, -sense);
                if (at - look.start) * sense < -TOUCH_MM {
                    if !look.straddle || (face(solid, axis, sense) - look.start) * sense <= TOUCH_MM {
                        continue;
                    }
                    at = look.start;
                }
                let Some((share, mut point)) = covered(&look.section, solid, axis) else { continue };
                if share + 1e-9 < look.share {
                    continue;
                }
                point[axis] = at;
                take(Obstacle { id: &part.id, name: words::part(part), at, part: Some(part), point, share });
            }
        }
        nearest
    }
}

/// A keep-clear zone and what it really has: the way it lies in, how deep it is, what ends it and after how far.
#[derive(Clone, Debug)]
pub(super) struct ZoneRoom<'a> {
    /// The panel the zone reaches towards.
    pub toward: Wall,
    /// Depth wanted.
    pub wanted: f64,
    /// Depth there is.
    pub free: f64,
    /// What ends it.
    pub by: Obstacle<'a>,
}

/// The panel towards which a zone lies beside its part's bodies; `None` when it surrounds them.
pub(super) fn direction(part: &Part, zone: &Aabb) -> Option<Wall> {
    let bounds = part.bounds();
    [Wall::Left, Wall::Right, Wall::Front, Wall::Back, Wall::Floor, Wall::Top].into_iter().find(|wall| {
        let (axis, sense) = outward(*wall);
        (face(zone, axis, -sense) - face(&bounds, axis, sense)) * sense >= -TOUCH_MM
    })
}

impl<'a> Scene<'a> {
    /// How much of a zone is free before the nearest thing that covers `share` of it; `None` when all of it is, or
    /// when it lies in no one direction.
    pub fn zone_room(&self, part: &Part, zone: &Aabb, share: f64) -> Option<ZoneRoom<'a>> {
        let toward = direction(part, zone)?;
        let (axis, sense) = outward(toward);
        let start = face(zone, axis, -sense);
        let wanted = (face(zone, axis, sense) - start) * sense;
        // Two zones may share room: only bodies and panels end one.
        let look = Look { section: *zone, toward, start, straddle: true, share };
        let by = self.nearest(&look, |other| other.id != part.id)?;
        let free = ((by.at - start) * sense).max(0.0);
        // A zone that begins beyond its panel (a plug outside) is not ended by it.
        let beyond = by.part.is_none() && (by.at - start) * sense < -TOUCH_MM;
        (!beyond && free < wanted - TOUCH_MM).then_some(ZoneRoom { toward, wanted, free, by })
    }
}

/// Share of `section`'s cross-section along `axis` that `solid` stands before, and the middle of that share.
fn covered(section: &Aabb, solid: &Aabb, axis: usize) -> Option<(f64, [f64; 3])> {
    let depths = section.overlap_by_axis(solid);
    let size = section.size();
    let mut share = 1.0;
    let mut point = section.centre();
    for across in (0..3).filter(|across| *across != axis) {
        if depths[across] <= TOUCH_MM {
            return None;
        }
        share *= depths[across] / size[across];
        point[across] = (section.min[across].max(solid.min[across]) + section.max[across].min(solid.max[across])) / 2.0;
    }
    Some((share, point))
}
